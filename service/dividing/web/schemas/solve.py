"""The question of /v1/solve on the wire."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from dividing.indexing import bounds
from dividing.indexing.faults import Fault, Refused, refuse_if_any
from dividing.indexing.head import Head
from dividing.indexing.setup import METHOD_NAMES, MethodName, Tolerance
from dividing.indexing.solving import LIMIT_USUAL
from dividing.indexing.work import Divisions, Work

from .base import Request
from .fields import Whole, Words, YesNo
from .head import DEFAULT_HEAD, HeadField, nested
from .work import ToleranceIn, WorkField


@dataclass(frozen=True, slots=True)
class Question:
    """What is asked: the work, the head it is done on, and what the answer should hold."""

    work: Work
    head: Head
    tolerance: Tolerance | None
    methods: tuple[MethodName, ...] | None
    limit: int
    positions: bool


def every_field() -> Whole:
    """Spaces per move, wherever work is asked about."""
    return Whole(
        "Spaces per move, for block indexing: a whole number that shares no factor with the divisions.",
        json={"minimum": 1, "default": 1},
        load_default=1,
    )


class SolveIn(Request):
    """A question: what is to be divided, on which head, how closely."""

    work = WorkField("What is to be divided.", required=True)
    head = HeadField()
    tolerance = nested(ToleranceIn, "The largest permitted error of any position.", load_default=None)
    methods = Words("Keep to these methods; left out, all of them.", METHOD_NAMES, load_default=None)
    limit = Whole(
        "Setups in the answer at most.",
        json={"minimum": 1, "maximum": bounds.SETUPS_MOST, "default": LIMIT_USUAL},
        load_default=LIMIT_USUAL,
    )
    positions = YesNo("Whether to give a row for every cut.", json={"default": False}, load_default=False)
    every = every_field()

    def make(self, given: dict[str, Any]) -> Question:
        """The question."""
        faults = [*_limit_faults(given["limit"]), *every_faults(given)]
        if given["positions"] and "work" in given:
            faults += _row_faults(given["work"])
        refuse_if_any(faults)
        work = in_blocks(given["work"], given["every"])
        return Question(
            work, given["head"], given["tolerance"], given["methods"], given["limit"], given["positions"]
        )

    def _unasked(self) -> dict[str, Any]:
        return {
            "head": DEFAULT_HEAD,
            "limit": LIMIT_USUAL,
            "positions": False,
            "every": 1,
            "tolerance": None,
            "methods": None,
        }


def _limit_faults(limit: int) -> list[Fault]:
    if 1 <= limit <= bounds.SETUPS_MOST:
        return []
    return [Fault(("limit",), f"The limit is a number of setups from 1 to {bounds.SETUPS_MOST}.")]


def _row_faults(work: Work) -> list[Fault]:
    if work.cuts <= bounds.ROWS_MOST:
        return []
    sentence = f"Positions are given for at most {bounds.ROWS_MOST:,} cuts; this work has {work.cuts:,}. Leave them out."
    return [Fault(("positions",), sentence)]


def every_faults(given: dict[str, Any]) -> tuple[Fault, ...]:
    """What is wrong with the spaces per move for the work given, if work is given."""
    try:
        if given["every"] != 1 and "work" in given:
            in_blocks(given["work"], given["every"])
    except Refused as refused:
        return refused.faults
    return ()


def in_blocks(work: Work, every: int) -> Work:
    """The work cut `every` spaces at a time."""
    if every == 1:
        return work
    if not isinstance(work, Divisions):
        raise Refused([Fault(("every",), "Spaces per move are for equal divisions; leave the field out.")])
    return replace(work, every=every)


SOLVE_IN = SolveIn()
