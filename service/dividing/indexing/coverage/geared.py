"""What a geared plate adds: the motions that the trains give it, and the places that the pin then passes."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from functools import cache, lru_cache
from itertools import product
from math import gcd
from typing import Literal

from ..bounds import EVERY_TRIED, PLATE_MOTION_MOST
from ..head import Head, Idlers
from ..trains import Ratio, train_table
from .sieve import Strips, marked

Passings = Mapping[int, Collection[int]]
"""Places of a circle of q holes that the pin passes in one turn of the spindle, R q - n for a plate that makes n/q
turns in it, in lowest terms and below 0 against the crank: for each q, those of all motions."""
TURNS_MOST = EVERY_TRIED
"""Spaces a move, and so turns of the spindle, that are tried."""
REMEMBERED_MOST = 1 << 16
"""Places up to which the marks of a head are remembered; those of a greater one would take too much room."""
_DIRECTIONS: tuple[tuple[Literal["with", "against"], int], ...] = (("with", 1), ("against", -1))


def directions(idlers: Idlers, *, gears: int, owned: int) -> tuple[int, ...]:
    """Which ways a train of 2 or 4 `gears` can turn the plate with the idlers that are left: 1 with the crank, -1
    against it.

    >>> directions(Idlers(), gears=2, owned=3), directions(Idlers(), gears=2, owned=4)
    ((1,), (1, -1))
    """
    needed = ((idlers.needed(gears=gears, direction=direction), sign) for direction, sign in _DIRECTIONS)
    return tuple(sign for count, sign in needed if gears + count <= owned)


@lru_cache(maxsize=8)
def passings(ratio: int, change_gears: tuple[int, ...], idlers: Idlers) -> Passings:
    """What the pin passes with every motion that the gears owned, in rising order, can give the plate; made once and
    remembered.

    >>> passings(40, (24, 28, 32, 48), Idlers())[7]
    (264, 268, 271, 272, 274, 276, 286, 288, 292)
    """
    found: defaultdict[int, set[int]] = defaultdict(set)
    for gears, ratios in trains(change_gears, idlers).items():
        signs = directions(idlers, gears=gears, owned=len(change_gears))
        for driven, all_drivers in _by_driven(ratios if signs else ()).items():
            turned = ratio * driven
            places = [turned - sign * drivers for sign in signs for drivers in all_drivers]
            found[driven].update(places if ratio > PLATE_MOTION_MOST else filter(_some, places))
    return {driven: tuple(sorted(places)) for driven, places in found.items()}


def _some(places: int) -> bool:
    """Whether the pin passes any at all: at a low ratio the plate may run as fast as the crank, or ahead of it."""
    return places > 0


def _by_driven(ratios: Iterable[Ratio]) -> dict[int, list[int]]:
    found: defaultdict[int, list[int]] = defaultdict(list)
    for drivers, driven in ratios:
        found[driven].append(drivers)
    return found


def trains(change_gears: tuple[int, ...], idlers: Idlers) -> dict[Literal[2, 4], Collection[Ratio]]:
    """What trains of 2 and of 4 gears make, before idlers are counted; the gears are given in rising order."""
    table = train_table(change_gears, idlers)
    return {2: table.simple, 4: table.compound}


def points_in(turns: int, circles: Iterable[int], given: Passings) -> list[int]:
    """The places that the pin passes in `turns` turns of the spindle, for each circle and motion that bring it to a
    hole then and not before. Some may stand there twice.

    >>> points_in(1, [21], {7: [40 * 7 - 6]})
    [822]
    """
    ways = {way for circle in circles for way in falling_in(circle, turns) if way[1] in given}
    return [times * places for times, driven in ways for places in given[driven]]


@cache
def falling_in(circle: int, turns: int) -> tuple[tuple[int, int], ...]:
    """Which motions bring the pin to a hole of `circle` in `turns` turns of the spindle and not before: as (times,
    driven), where the pin then passes `times` (R driven - drivers) places of it.

    With a motion of n/q and g = gcd(c, q), c (R - n/q) = (c/g)(R q - n)/(q/g): the turns are q/g.

    >>> falling_in(21, 2)
    ((21, 2), (7, 6), (3, 14), (1, 42))
    """
    return tuple((circle // shared, shared * turns) for shared in divisors(circle) if gcd(circle // shared, turns) == 1)


@cache
def divisors(circle: int) -> tuple[int, ...]:
    """What divides the holes of a circle, in rising order."""
    return tuple(part for part in range(1, circle + 1) if circle % part == 0)


def strips_in(turns: int, head: Head) -> Strips:
    """The points that the pin passes in `turns` turns of the spindle on the plates and with the gears of a head. Those
    of an ordinary head are made once and remembered.

    >>> from dividing.indexing.coverage.sieve import dividing
    >>> dividing((53, 59), strips_in(1, Head(change_gears=(24, 32, 40, 48))))
    {59}
    """
    if not head.plates or len(head.change_gears) < 2:
        return ()
    circles = tuple(circle for circle, _ in head.circles)
    few = points_most(head.ratio, head.largest_circle, turns) <= REMEMBERED_MOST
    make = _remembered if few else _strips
    return make(turns, circles, head.ratio, tuple(sorted(head.change_gears)), head.idlers)


def _strips(
    turns: int, circles: tuple[int, ...], ratio: int, change_gears: tuple[int, ...], idlers: Idlers
) -> list[tuple[int, bytearray]]:
    return list(marked(points_in(turns, circles, passings(ratio, change_gears, idlers))))


_remembered = lru_cache(maxsize=8 * TURNS_MOST)(_strips)


def points_most(ratio: int, circle: int, turns: int) -> int:
    """The most places that the pin passes on a circle in so many turns of the spindle, however the plate turns.

    >>> points_most(40, 49, 12)
    27048
    """
    return (ratio + PLATE_MOTION_MOST) * circle * turns


def by_driven(circles: Iterable[int]) -> dict[int, list[tuple[int, int]]]:
    """For every circle and number of turns, (turns, times) by what is driven; see `falling_in`."""
    found: dict[int, list[tuple[int, int]]] = {}
    for circle, turns in product(circles, range(1, TURNS_MOST + 1)):
        for times, driven in falling_in(circle, turns):
            found.setdefault(driven, []).append((turns, times))
    return found
