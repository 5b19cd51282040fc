"""Numbers that are not exact, held against a tolerance: each by the setup that comes nearest."""

from __future__ import annotations

from dataclasses import replace

from ..head import Head
from ..setup import Tolerance
from ..solving import solve
from ..tolerances import within
from ..work import Divisions
from .sweeping import Coverage, Way


def nearest(found: Coverage, head: Head, tolerance: Tolerance) -> Coverage:
    """The same range with a way for every number: where none is exact, that of the best setup that `solve` gives. The
    gaps that are left are the numbers whose way does not keep the tolerance.

    What is not exact is solved, number by number, so this costs as much as solving those.

    >>> from fractions import Fraction
    >>> from dividing.indexing.coverage import coverage
    >>> nearest(coverage(53, 54, Head()), Head(), Tolerance(angle=Fraction(1, 21600))).gaps
    ()
    """
    exact = {way: replace(way, within=True) for way in set(found.ways.values())}
    ways = {number: exact[way] for number, way in found.ways.items()}
    near = {number: _nearest(number, head, tolerance) for number in found.gaps}
    gaps = tuple(number for number, way in near.items() if not way.within)
    return Coverage(found.numbers, ways | near, gaps)


def _nearest(number: int, head: Head, tolerance: Tolerance) -> Way:
    setup = solve(Divisions(number), head, limit=1).setups[0]
    return Way(setup.method, setup.every, setup.accuracy.worst, within(setup.accuracy, tolerance))
