"""The question of /v1/coverage on the wire."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar

from marshmallow import Schema

from dividing.indexing import bounds
from dividing.indexing.coverage import range_faults
from dividing.indexing.faults import Refused
from dividing.indexing.head import Head
from dividing.indexing.setup import Tolerance

from .answers import VERSION
from .base import Request
from .fields import Whole, YesNo
from .head import DEFAULT_HEAD, HeadField, nested
from .out import METHODS, Told, flag, integer, many, number, one, text
from .work import ToleranceIn

_NUMBER = {"minimum": 1, "maximum": bounds.COVERAGE_MOST}
_NUMBERS: dict[str, Any] = {"items": {"type": "integer"}}


@dataclass(frozen=True, slots=True)
class Range:
    """What is asked: the numbers from `first` to `last`, on which head, how closely, and whether to say what to own."""

    first: int
    last: int
    head: Head
    tolerance: Tolerance | None
    additions: bool


# "from" is a word of Python's own, so the fields of that name are given in a dictionary; those of a schema's base stand
# first in it.
class FirstIn(Request):
    """Where a range of numbers begins."""

    class Meta(Request.Meta):
        include: ClassVar[dict[str, Any]] = {
            "from": Whole("The first number of divisions.", json=_NUMBER, required=True),
        }


class FirstOut(Schema):
    """Where a range of numbers begins."""

    class Meta:
        include: ClassVar[dict[str, Any]] = {"from": integer("The first number of divisions.")}


class CoverageIn(FirstIn):
    """A range of numbers, and the head that should divide them."""

    to = Whole("The last number of divisions.", json=_NUMBER, required=True)
    head = HeadField()
    tolerance = nested(
        ToleranceIn,
        "The largest permitted error of any position. With it, numbers that are not exact are solved too, and those "
        "whose best setup keeps it are no gaps.",
        load_default=None,
    )
    additions = YesNo(
        "Whether to look for the circles and change gears that would close most gaps.",
        json={"default": True},
        load_default=True,
    )

    def make(self, given: dict[str, Any]) -> Range:
        """The question."""
        faults = range_faults(given["from"], given["to"])
        if faults:
            raise Refused(faults)
        return Range(given["from"], given["to"], given["head"], given["tolerance"], given["additions"])

    def _unasked(self) -> dict[str, Any]:
        return {"from": 1, "to": bounds.COVERAGE_MOST, "head": DEFAULT_HEAD, "tolerance": None, "additions": True}


class CoveredOut(Schema):
    """One number and how it is divided."""

    divisions = integer("The number of divisions.")
    method = text("The method of the first setup that /v1/solve gives; null where nothing is exact and no tolerance "
                  "was given.", null=True, enum=[*METHODS, None])  # fmt: skip
    exact = flag("Whether every position comes out with no error at all.")
    every = integer("Spaces per move of that setup; null where the method is.", null=True)
    worst_seconds = number("The largest error of any position in seconds of arc; null where the method is.", null=True)
    within_tolerance = flag("Whether every position keeps the tolerance; null without one.", null=True)


class CountsOut(Schema):
    """How many numbers each method is the first to make exactly."""

    direct = integer("By the direct plate.")
    plain = integer("By a move on one circle.")
    differential = integer("With the plate geared, in blocks of several spaces too.")
    compound = integer("By two moves on two circles.")
    dial = integer("By the dial.")


class CircleOut(Schema):
    """A circle to own next."""

    circle = integer("Its holes.")
    closes = integer("How many gaps it closes.")
    numbers = Told("array", "The gaps that it closes, in rising order.", **_NUMBERS)


class GearOut(Schema):
    """A change gear to own next."""

    gear = integer("Its teeth.")
    closes = integer("How many gaps it closes.")
    numbers = Told("array", "The gaps that it closes, in rising order.", **_NUMBERS)


class ToOwnOut(Schema):
    """What to own next. Each stands for itself: what two of them close together is not the sum."""

    circles = many(CircleOut, "Circles, at most five, the one that closes most gaps first, of equal ones the one with "
                              "fewer holes.")  # fmt: skip
    gears = many(GearOut, "Change gears, at most five, the one that closes most gaps first, of equal ones the one with "
                          "fewer teeth.")  # fmt: skip


class CoverageOut(FirstOut):
    """What the head does with each number of the range."""

    to = integer("The last number of divisions.")
    numbers = many(CoveredOut, "Every number of the range, in order.")
    counts = one(CountsOut, "How many numbers come out exactly, by the first method that makes them so.")
    exact = integer("How many numbers come out exactly.")
    within = integer("How many are not exact but keep the tolerance.")
    gaps = Told("array", "The numbers that are neither, in rising order.", **_NUMBERS)
    next = one(ToOwnOut, "What to own next; null where it was not asked for.", null=True)
    service_version = text(VERSION)


COVERAGE_IN = CoverageIn()
