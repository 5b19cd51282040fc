"""What a question costs, estimated before it is begun, so that no request holds a worker for long.

Nearly all questions cost a millisecond. What can cost more is counted here, with the time that one of it took when
measured on a small machine: trains held against crank moves, places looked at on grids, and rows of positions.
"""

from __future__ import annotations

from functools import lru_cache

from dividing.indexing.bounds import PLATE_MOTION_MOST, ROWS_MOST
from dividing.indexing.grids import PLACES_TRIED
from dividing.indexing.head import Head
from dividing.indexing.methods.differential import TRIES_MOST
from dividing.indexing.work import Angles, Divisions, Work

from .limits import SECONDS_OF_WORK
from .problems import TOO_MUCH_WORK, Problem
from .schemas.locate import LostCount
from .schemas.solve import Question
from .schemas.verify import Check

BASE = 0.000_5
PER_MOVE = 0.000_000_5
PER_TRAIN = 0.000_004
PER_PLACE = 0.000_001_5
PER_CUT = 0.000_015
PER_ROW = 0.000_045
SOLVED_TO_VERIFY = 2.2
"""How often the search is gone through when a claim is held against it."""


def solving(work: Work, head: Head, methods: tuple[str, ...] | None = None) -> float:
    """Seconds to find the setups.

    >>> solving(Divisions(28), Head()) < 0.01
    True
    """
    seconds = BASE
    if not isinstance(work, Angles) and len(head.change_gears) > 1 and _may("differential", methods):
        tries = 2 * PLATE_MOTION_MOST * head.holes_in_all * float(work.step)
        seconds += PER_MOVE * tries + PER_TRAIN * min(tries, TRIES_MOST)
    if not isinstance(work, Divisions):
        circles = sum(map(len, head.plates))
        seconds += PER_PLACE * min(work.cuts * circles**2, PLACES_TRIED) + PER_CUT * work.cuts
    return seconds


def answering(question: Question) -> float:
    """Seconds to find the setups and to write them with their positions."""
    work = question.work
    rows = work.cuts * question.limit if question.positions else work.cuts
    written = min(rows, ROWS_MOST) * PER_ROW if question.positions or work.cuts <= ROWS_MOST else 0.0
    return solving(work, question.head, question.methods) + written


@lru_cache(maxsize=32)
def _divisions_at_most(head: Head) -> float:
    """Seconds that no number of divisions takes longer than on this head, with all rows that an answer may have."""
    return solving(Divisions(1), head) + ROWS_MOST * PER_ROW


def check(question: Question) -> None:
    """Refuse a question that would take too long, with how to split it."""
    if isinstance(question.work, Divisions) and _divisions_at_most(question.head) <= SECONDS_OF_WORK:
        return
    advice = "Ask without positions, or keep to fewer methods or circles."
    _refuse_above(answering(question), advice)


def check_claim(claim: Check) -> None:
    """The same for a claim to be verified, which is held against several solved questions."""
    seconds = SOLVED_TO_VERIFY * solving(claim.work, claim.head)
    _refuse_above(seconds, "Give the head only the plates and gears that the claim uses.")


def check_search(lost: LostCount) -> None:
    """The same for a lost count, where every cut is looked at."""
    methods = (lost.setup["method"],) if lost.setup else None
    seconds = solving(lost.work, lost.head, methods) + PER_CUT * lost.work.cuts
    _refuse_above(seconds, "Give the head only the plates and gears in use, or split the work.")


def check_drilling(work: Divisions, head: Head) -> None:
    """The same for a plate to be drilled, which is solved for an exact setup and, where there is none, once more."""
    blocks = PER_CUT * work.cuts if head.change_gears else 0.0
    seconds = 2 * solving(work, head) + blocks + PER_ROW * work.cuts
    _refuse_above(seconds, "Give the head only the plates and gears in use.")


def _may(method: str, methods: tuple[str, ...] | None) -> bool:
    return methods is None or method in methods


def _refuse_above(seconds: float, advice: str) -> None:
    if seconds > SECONDS_OF_WORK:
        sentence = f"This would take about {seconds:.1f} seconds of work; {SECONDS_OF_WORK:.0f} are given. {advice}"
        raise Problem(TOO_MUCH_WORK, sentence)
