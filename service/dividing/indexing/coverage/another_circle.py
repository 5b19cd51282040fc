"""Which gaps one more circle would close, for each size of it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from math import gcd

from ..bounds import PLATE_MOTION_MOST
from ..head import Head
from .gaps import by_points
from .geared import TURNS_MOST, Passings, falling_in, passings


def closed_by_circle(gaps: Collection[int], head: Head, circles: range) -> dict[int, set[int]]:
    """The gaps that come out exactly with each of `circles` by itself: plainly, or with the gears owned.

    >>> closed_by_circle((53, 59), Head(), range(52, 55))
    {52: set(), 53: {53}, 54: set()}
    """
    closed: dict[int, set[int]] = {circle: set() for circle in circles}
    if not circles or not gaps:
        return closed
    for gap in gaps:
        part = gap // gcd(gap, head.ratio)
        for circle in range(part, circles[-1] + 1, part):
            if circle in closed:
                closed[circle].add(gap)
    given = passings(head) if len(head.change_gears) > 1 else {}
    if given:
        wanted = by_points(gaps, points_most(head.ratio, circles[-1]))
        for circle, already in closed.items():
            already.update(_with_gears(circle, given, wanted))
    return closed


def points_most(ratio: int, circle: int) -> int:
    """The most places that the pin passes on a circle in as many turns as are tried."""
    return (ratio + PLATE_MOTION_MOST) * circle * TURNS_MOST


def _with_gears(circle: int, given: Passings, wanted: Mapping[int, list[int]]) -> Iterable[int]:
    for turns in range(1, TURNS_MOST + 1):
        for times, driven in falling_in(circle, turns):
            for places in given.get(driven, ()):
                for gap in wanted.get(times * places, ()):
                    if gap > turns or turns == 1:
                        yield gap
