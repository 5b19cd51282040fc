"""Which gaps one more circle would close, for each size of it."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from math import gcd

from ..head import Head
from .gaps import Gaps, Points
from .geared import TURNS_MOST, passings, points_in


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
        for circle in range(part, circles.stop, part):
            if circle in closed:
                closed[circle].add(gap)
    if len(head.change_gears) > 1:
        with_gears = Gaps(gaps, ratio=head.ratio, circle=circles[-1]).closed_by(_geared(head, circles))
        for circle, numbers in with_gears.items():
            closed[circle] |= numbers
    return closed


def _geared(head: Head, circles: range) -> Iterator[Points[int]]:
    given = passings(head.ratio, tuple(sorted(head.change_gears)), head.idlers)
    for circle in circles:
        for turns in range(1, TURNS_MOST + 1):
            yield circle, turns, points_in(turns, (circle,), given)
