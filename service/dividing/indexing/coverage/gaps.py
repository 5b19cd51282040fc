"""Which gaps are closed by each of many things that could be added.

Either side may be the larger by far. Where it takes few numbers to tell what the gaps divide, those are listed and the
points looked up among them; otherwise the points are gathered, so many at a time, and the gaps held against them.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from functools import cached_property
from typing import TypeVar

from .geared import TURNS_MOST, points_most
from .sieve import divided

LISTED_MOST = 300_000
GATHERED_MOST = 1 << 17
Thing = TypeVar("Thing")
Points = tuple[Thing, int, Iterable[int]]
"""(what is added, turns of the spindle, points that the pin passes in them)"""
Met = Iterator[tuple[Thing, int, int]]
"""(what is added, turns, a gap that divides one of the points)"""


class Gaps:
    """Gaps to be closed by moves at this ratio, on circles of so many holes at most.

    >>> Gaps((53, 59), ratio=40, circle=20).closed_by([("a", 1, [106, 120]), ("b", 1, [61])])
    {'a': {53}}
    """

    def __init__(self, numbers: Collection[int], *, ratio: int, circle: int) -> None:
        self._numbers = numbers
        self.points_most = points_most(ratio, circle, TURNS_MOST)
        """The most places that the pin passes, however the plate turns, in as many turns as are tried."""

    def closed_by(self, added: Iterable[Points[Thing]]) -> dict[Thing, set[int]]:
        """The gaps that each thing closes, with a move of as many spaces as there are turns. What closes none is left
        out."""
        closed: dict[Thing, set[int]] = {}
        for thing, turns, gap in self._looked_up(added) if self.listed <= LISTED_MOST else self._gathered(added):
            # Several spaces a move are fewer than there are divisions.
            if gap > turns or turns == 1:
                closed.setdefault(thing, set()).add(gap)
        return closed

    @cached_property
    def listed(self) -> int:
        """How many numbers it takes to tell what the gaps divide."""
        return sum(self.points_most // gap for gap in self._numbers)

    @cached_property
    def _dividing(self) -> dict[int, list[int]]:
        """The gaps that divide a number, by that number."""
        found: dict[int, list[int]] = {}
        for gap in self._numbers:
            for point in range(gap, self.points_most + 1, gap):
                found.setdefault(point, []).append(gap)
        return found

    def _looked_up(self, added: Iterable[Points[Thing]]) -> Met[Thing]:
        for thing, turns, points in added:
            for point in points:
                if point in self._dividing:
                    for gap in self._dividing[point]:
                        yield thing, turns, gap

    def _gathered(self, added: Iterable[Points[Thing]]) -> Met[Thing]:
        for waiting in _some_at_a_time(added):
            for gap, point in divided(self._numbers, waiting):
                for thing, turns in waiting[point]:
                    yield thing, turns, gap


def _some_at_a_time(added: Iterable[Points[Thing]]) -> Iterator[dict[int, list[tuple[Thing, int]]]]:
    """By point, what brings it: never many more than `GATHERED_MOST`, so that they do not fill the memory."""
    waiting: dict[int, list[tuple[Thing, int]]] = {}
    for thing, turns, points in added:
        for point in points:
            waiting.setdefault(point, []).append((thing, turns))
        if len(waiting) > GATHERED_MOST:
            yield waiting
            waiting = {}
    yield waiting
