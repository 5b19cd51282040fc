"""What a range of numbers costs, once its gaps are known: to sweep it takes no time to speak of, but gaps that are held
against a tolerance are solved one by one, and what to own next is found by trying everything.

The times were measured on a small machine with heads of 4 to 23 gears, 18 to 98 circles and ratios to 10,000.
"""

from __future__ import annotations

from collections.abc import Collection
from math import ceil, comb

from dividing.indexing.bounds import HOLES_MOST, PLATE_MOTION_MOST
from dividing.indexing.coverage.gaps import LISTED_MOST, Gaps
from dividing.indexing.coverage.geared import divisors
from dividing.indexing.coverage.sieve import STRIP
from dividing.indexing.head import Head
from dividing.indexing.work import Divisions, blocks_to_try

from .costing import BASE, PER_TRAIN
from .limits import SECONDS_OF_WORK
from .problems import TOO_MUCH_WORK, Problem
from .schemas.coverage import Range

PER_GAP = 0.000_3
PER_GRID = 0.000_001_8
"""Two circles' grid held against a step, in blocks of several spaces too."""
PER_TRIPLE = 0.000_000_4
"""Three gears owned put together with a new one."""
PER_LISTED = 0.000_000_6
"""A number that a gap divides."""
PER_POINT = (0.000_000_3, 0.000_000_7)
"""A point looked up among such numbers, or gathered to be held against the gaps."""
PER_GAP_AND_STRIP = 0.000_000_4
PER_STRIDE = 0.000_000_003
PASSES = 30
POINTS_MOST = 1_600_000
NEW_GEARS = 191


def check(asked: Range, gaps: Collection[int]) -> None:
    """Refuse a range that would take too long, with how to split it."""
    solving = nearest(gaps, asked.head) if asked.tolerance else 0.0
    if solving > SECONDS_OF_WORK:
        parts = ceil(solving / SECONDS_OF_WORK * 1.2)
        raise _too_much(solving, f"Split the range into {parts} parts, or leave the tolerance out.")
    seconds = solving + (additions(gaps, asked.head) if asked.additions else 0.0)
    if seconds > SECONDS_OF_WORK:
        raise _too_much(seconds, "Set additions to false, or ask for fewer numbers.")


def _too_much(seconds: float, advice: str) -> Problem:
    sentence = f"This would take about {seconds:.1f} seconds of work; {SECONDS_OF_WORK:.0f} are given. {advice}"
    return Problem(TOO_MUCH_WORK, sentence)


def nearest(gaps: Collection[int], head: Head) -> float:
    """Seconds to solve the gaps.

    >>> nearest((53, 59), Head()) < 0.01
    True
    """
    each = PER_GAP + PER_GRID * len(head.pairs_by_lcm)
    if not (head.plates and len(head.change_gears) > 1):
        return each * len(gaps)
    trains = PER_TRAIN * 2 * PLATE_MOTION_MOST * sum(map(sum, head.plates))
    return sum(each + trains * (1 + sum(blocks_to_try(Divisions(gap)))) / gap for gap in gaps)


def additions(gaps: Collection[int], head: Head) -> float:
    """Seconds to find what to own next.

    >>> additions((53, 59), Head()) < 0.01
    True
    """
    owned = len(head.change_gears)
    if not (gaps and owned):
        return BASE
    triples = NEW_GEARS * owned * comb(owned - 1, 2)
    reached = sum(len(divisors(circle)) for circle, _ in head.circles)
    return (
        BASE
        + PER_TRIPLE * triples
        + _held(gaps, head.ratio, HOLES_MOST, min(600 * owned**3, POINTS_MOST))
        + _held(gaps, head.ratio, head.largest_circle, min(triples * reached // 80, POINTS_MOST))
    )


def _held(gaps: Collection[int], ratio: int, circle: int, points: int) -> float:
    """Seconds to hold so many points against the gaps."""
    left = Gaps(gaps, ratio=ratio, circle=circle)
    if left.listed <= LISTED_MOST:
        return PER_LISTED * left.listed + PER_POINT[0] * points
    strides = PER_GAP_AND_STRIP * len(gaps) * (1 + left.points_most // STRIP) + PER_STRIDE * left.listed
    return PER_POINT[1] * points + PASSES * strides
