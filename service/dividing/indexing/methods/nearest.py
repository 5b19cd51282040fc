"""Nearest hole: each position at the hole nearest its own place, worked from zero, so that errors never add up.

On a circle of c holes at ratio R the spindle has R c places a turn, 1/(R c) apart. A position lies between two of
them and so at most half that distance from the nearer: 360/(2 R c) degrees. With two circles of one plate the places
are 1/(R lcm) apart, a far finer grid, but then both moves differ at every cut.
"""

from __future__ import annotations

from ..accuracy import accuracy
from ..bounds import SETUPS_MOST
from ..grids import finest
from ..head import Head
from ..setup import Declined, Move, Rounded, SecondMove, Setup
from ..work import Work

NEVER_EXACT = Declined("nearest", "Not needed: an exact setting exists.")


def exact(work: Work, head: Head, most: int = SETUPS_MOST) -> Declined:
    """Never: what one hole makes exactly is plain indexing."""
    return NEVER_EXACT


def approximate(work: Work, head: Head) -> tuple[Setup, ...] | Declined:
    """The best one circle, and the best two circles of one plate where they come nearer.

    >>> from dividing.indexing.work import Divisions
    >>> [setup.move.circle for setup in approximate(Divisions(127), Head())]
    [47, 49]
    """
    if not head.plates:
        return _on_the_direct_plate(work, head)
    one = _one_circle(work, head)
    two = _two_circles(work, head)
    return (two, one) if two and two.accuracy.worst < one.accuracy.worst else (one,)


def _one_circle(work: Work, head: Head) -> Setup:
    points = finest(work, [head.ratio * circle for circle, _ in head.circles])
    assert points is not None
    circle = points // head.ratio
    return _setup(work, points, Move(None, None, circle, head.plate_of[circle]))


def _two_circles(work: Work, head: Head) -> Setup | None:
    points = finest(work, [head.ratio * grid for grid in head.pairs_by_lcm])
    if points is None:
        return None
    _, first, second, plate = head.pairs_by_lcm[points // head.ratio][0]
    return _setup(work, points, Move(None, None, first, plate), SecondMove(None, second))


def _on_the_direct_plate(work: Work, head: Head) -> tuple[Setup, ...] | Declined:
    if head.dial or not head.direct_circles:
        return Declined("nearest", "This head has no index plates; its dial is set instead.")
    points = finest(work, head.direct_ranked)
    assert points is not None
    return (_setup(work, points, Move(None, None, points, None)),)


def _setup(work: Work, points: int, move: Move, second: SecondMove | None = None) -> Setup:
    spacing = Rounded(points)
    return Setup("nearest", spacing, accuracy(work, spacing), move, second, every=work.every)
