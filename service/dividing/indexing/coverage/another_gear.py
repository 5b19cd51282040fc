"""Which gaps one more change gear would close, for each size of it.

A train that holds the new gear t holds one or three of the gears owned besides. Where t drives it is t a/b, with a/b
made by the others alone; where t is driven it is the other way up. So what the others make is listed once, for every t.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from itertools import combinations
from math import gcd

from ..bounds import PLATE_MOTION_MOST
from ..head import Head
from ..trains import Ratio
from .another_circle import points_most
from .gaps import by_points
from .geared import by_driven, directions, trains


def closed_by_gear(gaps: Collection[int], head: Head, gears: range) -> dict[int, set[int]]:
    """The gaps that come out exactly with each of `gears` besides those owned.

    >>> closed_by_gear((59,), Head(change_gears=(24, 32, 40)), range(47, 50))
    {47: set(), 48: {59}, 49: set()}
    """
    if not (gears and gaps and head.plates and head.change_gears):
        return {teeth: set() for teeth in gears}
    closing = _Closing(gaps, head)
    as_idler = closing.as_idler()
    return {teeth: closing.in_trains(teeth) | as_idler for teeth in gears}


class _Closing:
    """What a head with one gear more would close; what has been found for a motion of the plate is kept."""

    def __init__(self, gaps: Collection[int], head: Head) -> None:
        circles = [circle for circle, _ in head.circles]
        self._head = head
        self._wanted = by_points(gaps, points_most(head.ratio, head.largest_circle))
        self._on_circles = by_driven(circles)
        self._others = {kind: others(head.change_gears, kind) for kind in (2, 4)}
        self._found: dict[tuple[int, Ratio], frozenset[int]] = {}

    def as_idler(self) -> set[int]:
        """Gaps closed by any gear at all, since trains that lack an idler then have one."""
        closed: set[int] = set()
        for kind, ratios in trains(self._head).items():
            for sign in set(self._signs(kind, more=1)) - set(self._signs(kind, more=0)):
                closed.update(*(self._closed(sign, ratio) for ratio in ratios))
        return closed

    def in_trains(self, teeth: int) -> set[int]:
        """Gaps closed by trains that hold a gear of `teeth`."""
        closed: set[int] = set()
        for kind, made in self._others.items():
            signs = self._signs(kind, more=1)
            for ratio in self._ratios(teeth, made) if signs else ():
                for sign in signs:
                    closed |= self._closed(sign, ratio)
        return closed

    def _signs(self, kind: int, *, more: int) -> tuple[int, ...]:
        return directions(self._head.idlers, gears=kind, owned=len(self._head.change_gears) + more)

    def _ratios(self, teeth: int, made: Iterable[Ratio]) -> Iterator[Ratio]:
        """The trains that bring the pin to a hole in few enough turns and keep the plate within its bound."""
        for over, under in made:
            shared = gcd(teeth, under)
            drivers, driven = teeth // shared * over, under // shared
            if driven in self._on_circles and drivers <= PLATE_MOTION_MOST * driven:
                yield drivers, driven
            if drivers in self._on_circles and driven <= PLATE_MOTION_MOST * drivers:
                yield driven, drivers

    def _closed(self, sign: int, ratio: Ratio) -> frozenset[int]:
        key = (sign, ratio)
        if key not in self._found:
            self._found[key] = frozenset(self._looked_up(sign * ratio[0], ratio[1]))
        return self._found[key]

    def _looked_up(self, drivers: int, driven: int) -> Iterator[int]:
        passed = self._head.ratio * driven - drivers
        for turns, times in self._on_circles.get(driven, ()):
            for gap in self._wanted.get(times * passed, ()):
                if gap > turns or turns == 1:
                    yield gap


def others(gears: Iterable[int], kind: int) -> set[Ratio]:
    """What the other gears of a train of `kind` gears make of it, in lowest terms, where the new one drives: one gear
    driven, or one that drives beside two that are driven.

    >>> sorted(others((24, 32, 40), 4))
    [(1, 30), (3, 160), (5, 96)]
    """
    owned = tuple(gears)
    if kind == 2:
        return {(1, teeth) for teeth in owned}
    places = range(len(owned))
    found = (
        (owned[drives], owned[one] * owned[two])
        for one, two in combinations(places, 2)
        for drives in places
        if drives not in (one, two)
    )
    return {(over // gcd(over, under), under // gcd(over, under)) for over, under in found}
