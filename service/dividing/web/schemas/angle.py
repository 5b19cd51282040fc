"""The question of /v1/angle on the wire."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from dividing.indexing.angles import Angle
from dividing.indexing.converting import crank_angle
from dividing.indexing.faults import Fault, Refused
from dividing.indexing.head import Head

from .base import Request
from .fields import AngleIn, Length, Whole
from .head import HeadField, nested

_FIGURES_MOST = 12
_FARTHEST = 10**_FIGURES_MOST - 1


@dataclass(frozen=True, slots=True)
class AngleQuestion:
    """An angle to be put into every form, with the lengths asked for."""

    angle: Angle
    head: Head
    diameter: Fraction | None
    sine_bar: Fraction | None


class CrankIn(Request):
    """A crank move: whole turns, then spaces on a circle."""

    turns = Whole(
        "Whole crank turns; below 0 the other way.",
        required=True,
        json={"minimum": -_FARTHEST, "maximum": _FARTHEST},
    )
    holes = Whole(
        "Spaces after the whole turns; below 0 the other way.", load_default=0,
        json={"minimum": -_FARTHEST, "maximum": _FARTHEST, "default": 0},
    )  # fmt: skip
    circle = Whole(
        "The holes of the circle on which the spaces are counted.",
        load_default=None,
        json={"minimum": 2, "maximum": 400},
    )

    def make(self, given: dict[str, Any]) -> dict[str, Any]:
        """The move as the converter takes it."""
        faults = [
            Fault((name,), f"Give at most {_FIGURES_MOST} figures.")
            for name in ("turns", "holes")
            if name in given and abs(given[name]) > _FARTHEST
        ]
        if faults:
            raise Refused(faults)
        return given


class AngleQuestionIn(Request):
    """Exactly one of an angle and a crank move, to be put into every form."""

    angle = AngleIn("The angle, in any notation.")
    crank = nested(CrankIn, "The crank move that makes the angle.")
    head = HeadField()
    diameter = Length("A diameter, for the arc and the chord of the angle on it.", load_default=None)
    sine_bar = Length("The length of a sine bar, for the height of its blocks.", load_default=None)

    def make(self, given: dict[str, Any]) -> AngleQuestion:
        """The question."""
        return AngleQuestion(_angle(given), given["head"], given["diameter"], given["sine_bar"])


def _angle(given: dict[str, Any]) -> Angle:
    if ("angle" in given) == ("crank" in given):
        path = ("crank",) if "angle" in given else ()
        raise Refused([Fault(path, "Give exactly one of angle and crank.")])
    if "angle" in given:
        asked: Angle = given["angle"]
        return asked
    try:
        return crank_angle(given["head"], **given["crank"])
    except Refused as refused:
        raise Refused([fault.under("crank") for fault in refused.faults]) from None


ANGLE_IN = AngleQuestionIn()
