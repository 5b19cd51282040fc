"""The question of /v1/solve on the wire."""

from __future__ import annotations

from typing import Any, NamedTuple

from dividing.indexing import bounds
from dividing.indexing.faults import Fault, Refused
from dividing.indexing.head import Head
from dividing.indexing.setup import METHOD_NAMES, MethodName, Tolerance
from dividing.indexing.solving import LIMIT_USUAL
from dividing.indexing.work import Work
from dividing.parts import Part

from .base import Request
from .fields import Whole, Words, YesNo
from .head import DEFAULT_HEAD, HeadField, nested
from .work import ToleranceIn, WorkField, gathered


class Question(NamedTuple):
    """What is asked: the work, the head it is done on, and what the answer should hold."""

    work: Work
    head: Head
    tolerance: Tolerance | None
    methods: tuple[MethodName, ...] | None
    limit: int
    positions: bool
    part: Part | None = None


def every_field() -> Whole:
    """Spaces per move, wherever work is asked about."""
    return Whole(
        "Spaces per move, for block indexing: a whole number that shares no factor with the divisions. Left out it is "
        "1, and where nothing is exact with 1 a few more are tried; give 1 to keep to it.",
        json={"minimum": 1},
        load_default=None,
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

    leans_on = {"work": "head", "every": "work", "positions": "work"}

    def make(self, given: dict[str, Any]) -> Question:
        """The question."""
        faults = _limit_faults(given["limit"])
        asked = gathered(given, faults)
        if asked is not None and given["positions"]:
            faults += _row_faults(asked.work)
        if asked is None or faults:
            raise Refused(faults)
        return Question(
            asked.work,
            given["head"],
            given["tolerance"],
            given["methods"],
            given["limit"],
            given["positions"],
            asked.part,
        )

    def _unasked(self) -> dict[str, Any]:
        return {
            "head": DEFAULT_HEAD,
            "limit": LIMIT_USUAL,
            "positions": False,
            "every": None,
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
    sentence = (
        f"Positions are given for at most {bounds.ROWS_MOST:,} cuts; this work has {work.cuts:,}. Leave them out."
    )
    return [Fault(("positions",), sentence)]


SOLVE_IN = SolveIn()
