"""Which gaps one more change gear would close, for each size of it.

A train that holds the new gear t holds one or three of the gears owned besides. Where t drives it is t a/b, with a/b
made by the others alone; where t is driven it is the other way up. So what the others make is listed once, for every t.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from itertools import combinations
from math import gcd
from typing import Literal

from ..bounds import PLATE_MOTION_MOST
from ..head import Head
from ..trains import Ratio
from .gaps import Gaps, Points
from .geared import by_driven, directions, trains

Kind = Literal[2, 4]
KINDS: tuple[Kind, ...] = (2, 4)
TRIED_TOGETHER = 16
"""Gears whose trains are looked at in one go."""


def closed_by_gear(gaps: Collection[int], head: Head, gears: range) -> dict[int, set[int]]:
    """The gaps that come out exactly with each of `gears` besides those owned.

    >>> closed_by_gear((59,), Head(change_gears=(24, 32, 40)), range(47, 50))
    {47: set(), 48: {59}, 49: set()}
    """
    closed: dict[int, set[int]] = {teeth: set() for teeth in gears}
    if not gaps:
        return closed
    left = Gaps(gaps, ratio=head.ratio, circle=head.largest_circle)
    as_idler = _as_idler(left, head)
    for kind in KINDS:
        for teeth, numbers in _in_trains(left, head, gears, kind):
            closed[teeth] |= numbers | as_idler
    return closed


def _as_idler(gaps: Gaps, head: Head) -> set[int]:
    """Gaps closed by any gear at all, since trains that lack an idler then have one."""
    owned = len(head.change_gears)
    closed: set[int] = set()
    for kind, ratios in trains(tuple(sorted(head.change_gears)), head.idlers).items():
        before, after = (directions(head.idlers, gears=kind, owned=count) for count in (owned, owned + 1))
        closed.update(*gaps.closed_by(_passed(head, ratios, set(after) - set(before))).values())
    return closed


def _in_trains(gaps: Gaps, head: Head, gears: range, kind: Kind) -> Iterator[tuple[int, set[int]]]:
    """The gaps closed by trains of two or of four that hold each gear. The same ratio comes with many gears, so none
    is looked at twice."""
    signs = directions(head.idlers, gears=kind, owned=len(head.change_gears) + 1)
    if not signs:
        return
    made, wanted = others(head.change_gears, kind), by_driven(_circles(head))
    looked_at: set[Ratio] = set()
    serving: dict[Ratio, set[int]] = {}
    for start in range(0, len(gears), TRIED_TOGETHER):
        together = {teeth: _ratios(teeth, made, wanted) for teeth in gears[start : start + TRIED_TOGETHER]}
        new = set().union(*together.values()) - looked_at
        serving |= gaps.closed_by(_passed(head, new, signs))
        looked_at |= new
        for teeth, ratios in together.items():
            yield teeth, set().union(*(serving[ratio] for ratio in ratios & serving.keys()))


def _passed(head: Head, ratios: Iterable[Ratio], signs: Collection[int]) -> Iterator[Points[Ratio]]:
    """The points of each ratio in each of the directions, on every circle."""
    if not signs:
        return
    ways = by_driven(_circles(head))
    for ratio in ratios:
        drivers, driven = ratio
        turned = head.ratio * driven
        passing = [places for sign in signs if (places := turned - sign * drivers) > 0]
        for turns, times in ways.get(driven, ()):
            yield ratio, turns, [times * places for places in passing]


def _circles(head: Head) -> list[int]:
    return [circle for circle, _ in head.circles]


def _ratios(teeth: int, made: Mapping[int, Collection[int]], wanted: Collection[int]) -> set[Ratio]:
    """The trains that hold a gear of `teeth` and keep the plate within its bound, where what is driven is wanted."""
    found: set[Ratio] = set()
    for under, overs in made.items():
        shared = gcd(teeth, under)
        times, driven = teeth // shared, under // shared
        most, least = PLATE_MOTION_MOST * driven, -(-driven // PLATE_MOTION_MOST)
        products = [times * over for over in overs]
        if driven in wanted:
            found.update([(drivers, driven) for drivers in products if drivers <= most])
        found.update([(driven, drivers) for drivers in products if drivers in wanted and drivers >= least])
    return found


def others(gears: Sequence[int], kind: Kind) -> dict[int, set[int]]:
    """What the other gears of a train of two or four make of it where the new one drives: one gear driven, or one that
    drives beside two that are driven. By what is driven, the drivers, in lowest terms.

    >>> others((24, 32, 40), 4)
    {96: {5}, 30: {1}, 160: {3}}
    """
    if kind == 2:
        return {teeth: {1} for teeth in gears}
    found: dict[int, set[int]] = {}
    for one, two in combinations(range(len(gears)), 2):
        driven = gears[one] * gears[two]
        for drives in {*gears[:one], *gears[one + 1 : two], *gears[two + 1 :]}:
            shared = gcd(drives, driven)
            found.setdefault(driven // shared, set()).add(drives // shared)
    return found
