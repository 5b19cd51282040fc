"""What a head reaches with its plate geared, sorted by the spaces that the crank goes while the spindle turns once.

With N divisions of h spaces each on a circle of c holes the crank goes V = N h spaces in a spindle turn, and the plate
must make R - V/c turns meanwhile. Which train makes that depends on c and V, not on N: so it is written down once a
head, and a number of divisions looks only at its own multiples among the V.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import lru_cache
from math import gcd
from typing import NamedTuple

from . import bounds
from .gear_pairs import Ratio, clears
from .head import Head
from .setup import Gearing
from .trains import TrainTable, train_table

CIRCLES_MOST, HOLES_MOST, GEARS_MOST = 40, 2_000, 16
"""A head with more gets no such table: it would be large, and few heads have so many."""


class Geared(NamedTuple):
    """So many `spaces` of a circle in one spindle turn, and the train that they take. `crank` is spaces over circle in
    lowest terms; the smaller `rank`, the sooner a careful operator would choose it."""

    rank: int
    circle: int
    plate: int
    spaces: int
    crank: Ratio
    gearing: Gearing


@dataclass(frozen=True, slots=True)
class GearedPlate:
    """All of a head's `Geared`, by their spaces; those of one number of spaces are made when they are first met."""

    head: Head
    trains: TrainTable
    motions: dict[int, list[tuple[int, int, Ratio]]]
    """By spaces: circles, their plates, and the motions of the plate that some train makes."""
    least: int
    most: int
    ready: dict[int, tuple[Geared, ...]] = field(default_factory=dict)

    def dividing(self, count: int) -> list[Geared]:
        """Whatever makes `count` equal divisions, best first.

        >>> from .head import TWELVE_GEARS
        >>> best = geared_plate(Head(change_gears=TWELVE_GEARS)).dividing(127)[0]
        >>> best.spaces // 127, best.circle, str(best.gearing.train)
        (6, 18, '7/3')
        """
        motions, first = self.motions, -(-self.least // count) * count
        if (self.most - first) // count < len(motions):
            fitting = [spaces for spaces in range(first, self.most + 1, count) if spaces in motions]
        else:
            fitting = [spaces for spaces in motions if spaces % count == 0]
        found: list[Geared] = []
        for spaces in fitting:
            found += self.ready[spaces] if spaces in self.ready else self._made(spaces)
        found.sort()
        return found

    def _made(self, spaces: int) -> tuple[Geared, ...]:
        made = tuple(
            Geared(rank(gearing, circle, plate, self.head), circle, plate, spaces, lowest(spaces, circle), gearing)
            for circle, plate, motion in self.motions[spaces]
            if (gearing := self.trains.gearing(*motion))
        )
        self.ready[spaces] = made
        return made


@lru_cache(maxsize=8)
def geared_plate(head: Head) -> GearedPlate:
    """The table of a head that has plates and gears."""
    trains = trains_of(head)
    motions: dict[int, list[tuple[int, int, Ratio]]] = {}
    for circle, plate in head.circles:
        for parts, (drivers, driven) in trains.motions_over(circle).items():
            for spaces, motion in (
                (head.ratio * circle - parts, (drivers, driven)),
                (head.ratio * circle + parts, (-drivers, driven)),
            ):
                if spaces > 0:
                    motions.setdefault(spaces, []).append((circle, plate, motion))
    return GearedPlate(head, trains, motions, min(motions, default=1), max(motions, default=0))


@lru_cache(maxsize=32)
def has_table(head: Head) -> bool:
    """Whether a head is small enough for such a table."""
    return (
        len(head.change_gears) <= GEARS_MOST and len(head.circles) <= CIRCLES_MOST and head.holes_in_all <= HOLES_MOST
    )


def trains_of(head: Head) -> TrainTable:
    """The trains that the head's change gears make."""
    return train_table(tuple(sorted(head.change_gears)), head.idlers)


def rank(gearing: Gearing, circle: int, plate: int, head: Head) -> int:
    """One number for the order of choosing. Fewer things to change first: gears, then a train that clears, plate and
    idlers, then the larger circle, then the slower plate."""
    spindle, worm, stud, idlers, _ = gearing
    first, second = stud or (1, 1)
    change = plate != head.mounted_plate
    fits = stud is None or clears((spindle, worm, first, second))
    order = ((stud is not None) << 1 | (not fits)) << 4 | (change + idlers)
    order = (order << 1 | change) << 9 | (bounds.HOLES_MOST - circle)
    return order << 40 | (spindle * first << 32) // (worm * second)


def lowest(over: int, under: int) -> Ratio:
    """A fraction in lowest terms.

    >>> lowest(40, 28)
    (10, 7)
    """
    shared = gcd(over, under)
    return over // shared, under // shared
