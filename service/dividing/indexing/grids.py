"""Which of several grids of places round the spindle lets every position of the work come nearest its own.

A grid is `points`, the number of places in one spindle turn: ratio x circle for one circle, ratio x lcm for two
circles, ratio x dial readings for a dial, the holes of a direct plate for itself.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import gcd

from .work import Angles, Arc, Divisions, Work

PLACES_TRIED = 200_000
"""Positions times grids that are worked through before only the finest grids are looked at."""

Distance = tuple[int, int]
"""A magnitude as (numerator, denominator), in turns of the spindle, not reduced."""


def finest(work: Work, grids: Iterable[int]) -> int | None:
    """The first of `grids` with the smallest worst distance; None when there is no grid.

    For many positions on many grids only the finest grids are tried: a distance is at most half a place.

    >>> finest(Divisions(127), [40 * 20, 40 * 49])
    1960
    """
    if isinstance(work, Divisions):
        return _finest_for(work.count, grids)
    best, least = None, (1, 1)
    fractions = _fractions(work)
    for points in _affordable(list(grids), len(fractions)):
        if isinstance(work, Arc):
            distance = _farthest_alike(fractions, points, least)
        else:
            distance = _farthest(fractions, points, least)
        if distance[0] * least[1] < least[0] * distance[1]:
            best, least = points, distance
    return best


def _finest_for(count: int, grids: Iterable[int]) -> int | None:
    """For equal divisions by the closed form (see `accuracy`): it is asked of every pair of circles."""
    best, least, its_whole = None, 1, 1
    for points in grids:
        parts = count // gcd(points, count)
        half, whole = parts // 2, parts * points
        if half * its_whole < least * whole:
            best, least, its_whole = points, half, whole
    return best


def _affordable(grids: list[int], positions: int) -> list[int]:
    kept = set(sorted(set(grids), reverse=True)[: PLACES_TRIED // positions])
    return [points for points in grids if points in kept]


def _fractions(work: Arc | Angles) -> list[tuple[int, int]]:
    if isinstance(work, Angles):
        return [(place.numerator, place.denominator) for place in work.places]
    over, under = work.step.numerator, work.step.denominator
    return [(cut * over % under, under) for cut in range(work.count)]


def _farthest(fractions: list[tuple[int, int]], points: int, enough: Distance) -> Distance:
    """The largest distance in turns; a look that cannot beat `enough` any more is given up."""
    most, over = 0, 1
    for numerator, denominator in fractions:
        short = numerator * points % denominator
        short = min(short, denominator - short)
        if short * over > most * denominator:
            most, over = short, denominator
            if most * enough[1] >= enough[0] * over * points:
                break
    return (most, over * points)


def _farthest_alike(fractions: list[tuple[int, int]], points: int, enough: Distance) -> Distance:
    """The same for fractions that have one denominator: only whole numbers are compared."""
    under = fractions[0][1]
    most, least, last = 0, under, -(-enough[0] * under * points // enough[1])
    for numerator, _ in fractions:
        short = numerator * points % under
        if most < short < least:
            most = min(short, under - short)
            least = under - most
            if most >= last:
                break
    return (most, under * points)
