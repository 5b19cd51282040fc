"""Every train that a set of change gears can make between spindle and plate, made once per set and remembered.

A simple train is spindle gear over worm-side gear. A train of four is (spindle x first on stud) over (worm side x
second on stud). Each gear owned is one physical gear: a tooth count is used no more often than it is owned, and the
idlers are gears out of the same box.

Whether a train of four meshes depends on the quadrant. As common practice each pair clears the other's shaft when
a + b > c + 15 and c + d > b + 15, a driving b and c driving d; trains that clear come first, and the operator
tries the fit.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from math import gcd
from typing import Literal

from .bounds import PLATE_MOTION_MOST
from .head import Idlers
from .setup import Gearing

SHAFT_ROOM = 15
"""Teeth by which a pair of gears must out-reach the gear beside it to clear its shaft (common practice)."""

MOTIONS_KEPT = 1024
"""Sets of motions that a table keeps, one for each denominator asked for."""

Direction = Literal["with", "against"]
Ratio = tuple[int, int]
"""A train as (drivers, driven) in lowest terms."""
Train = tuple[int, int, int, int]
"""(spindle, worm side, first on stud, second on stud); the stud gears are 0 in a simple train."""

SCALE = 1 << 64
"""Parts of a plate turn to which motions are put in order."""


@dataclass(frozen=True)
class TrainTable:
    """The best train for each ratio that the gears owned can make, and all motions in order for finding the nearest."""

    simple: dict[Ratio, Train]
    compound: dict[Ratio, Train]
    idlers: Idlers
    owned: int
    reached: dict[int, dict[int, Ratio]] = field(default_factory=dict, compare=False, repr=False)
    """Answers of `motions_over` so far."""
    ready: dict[Ratio, Gearing | None] = field(default_factory=dict, compare=False, repr=False)
    """Answers of `gearing` so far, for motions that some train makes: the same few thousand are asked for again."""

    @cached_property
    def known(self) -> frozenset[Ratio]:
        """Every ratio that some train makes, before idlers are counted."""
        return frozenset((*self.simple, *self.compound))

    def motions_over(self, under: int) -> dict[int, Ratio]:
        """Every motion that some train makes and that is a whole number of parts of 1/`under`: the number of parts, and
        the motion in lowest terms. The hot loop asks whether a number of parts is among them, and nothing else.

        >>> train_table((24, 28, 32), Idlers()).motions_over(14)
        {12: (6, 7), 16: (8, 7)}
        """
        if under not in self.reached:
            if len(self.reached) >= MOTIONS_KEPT:
                self.reached.clear()
            parts = {
                drivers * (under // driven): (drivers, driven)
                for driven, all_drivers in self._by_driven.items()
                if under % driven == 0
                for drivers in all_drivers
            }
            self.reached[under] = parts
        return self.reached[under]

    @cached_property
    def _by_driven(self) -> dict[int, list[int]]:
        found: dict[int, list[int]] = {}
        for drivers, driven in sorted(self.known):
            found.setdefault(driven, []).append(drivers)
        return found

    def gearing(self, drivers: int, driven: int) -> Gearing | None:
        """The gears for a plate motion of drivers/driven in lowest terms, negative against the crank.

        >>> train_table((24, 28, 32, 40, 48), Idlers()).gearing(-12, 7)
        Gearing(spindle=48, worm=28, stud=None, idlers=2, plate='against')
        """
        motion = (drivers, driven)
        if motion in self.ready:
            return self.ready[motion]
        if (abs(drivers), driven) not in self.known:
            return None
        self.ready[motion] = hung = self._hung(drivers, driven)
        return hung

    def _hung(self, drivers: int, driven: int) -> Gearing | None:
        direction: Direction = "with" if drivers > 0 else "against"
        ratio = (abs(drivers), driven)
        train = self.simple.get(ratio) if self.reaches(2, direction) else None
        if train is None and self.reaches(4, direction):
            train = self.compound.get(ratio)
        if train is None:
            return None
        spindle, worm, first, second = train
        stud = (first, second) if first else None
        return Gearing(spindle, worm, stud, self.idlers.needed(gears=4 if stud else 2, direction=direction), direction)

    def reaches(self, gears: int, direction: Direction) -> bool:
        """Whether enough gears are owned for such a train and the idlers that it takes."""
        return gears + self.idlers.needed(gears=gears, direction=direction) <= self.owned

    def rising(self, kind: int) -> tuple[list[int], list[Ratio]]:
        """The motions of trains of `kind` gears, 2 or 4, in rising order: in whole parts of 1/`SCALE`, and exact.

        Trains differ by far more than one part, so the nearest stands beside the place where a motion would be.
        """
        return self._simple_motions if kind == 2 else self._compound_motions

    @cached_property
    def _simple_motions(self) -> tuple[list[int], list[Ratio]]:
        return self._motions(2, self.simple)

    @cached_property
    def _compound_motions(self) -> tuple[list[int], list[Ratio]]:
        return self._motions(4, self.compound)

    def _motions(self, kind: int, trains: Collection[Ratio]) -> tuple[list[int], list[Ratio]]:
        """(scaled motions in rising order, the motions), positive with the crank, as far as idlers allow."""
        signed: list[Ratio] = []
        if self.reaches(kind, "with"):
            signed += trains
        if self.reaches(kind, "against"):
            signed += ((-drivers, driven) for drivers, driven in trains)
        rising = sorted((drivers * SCALE // driven, (drivers, driven)) for drivers, driven in signed)
        return [scaled for scaled, _ in rising], [ratio for _, ratio in rising]


@lru_cache(maxsize=8)
def train_table(gears: tuple[int, ...], idlers: Idlers) -> TrainTable:
    """The table for the gears owned, in rising order; plate motion is kept within 6 turns.

    >>> len(train_table((24, 28, 32), Idlers()).simple)
    6
    """
    return TrainTable(_simple(gears), _compound(gears), idlers, len(gears))


def clears(train: Train) -> bool:
    """Whether each pair of a train of four clears the other's shaft (common practice).

    >>> clears((72, 48, 64, 24)), clears((24, 24, 100, 28))
    (True, False)
    """
    spindle, worm, first, second = train
    return not first or (spindle + second > first + SHAFT_ROOM and first + worm > second + SHAFT_ROOM)


def _simple(gears: tuple[int, ...]) -> dict[Ratio, Train]:
    """Of equal trains the one with the smaller gears, which needs the least room."""
    owned = Counter(gears)
    trains: dict[Ratio, Train] = {}
    for spindle in sorted(owned):
        for worm in sorted(owned):
            if (spindle != worm or owned[worm] > 1) and spindle <= PLATE_MOTION_MOST * worm:
                shared = gcd(spindle, worm)
                trains.setdefault((spindle // shared, worm // shared), (spindle, worm, 0, 0))
    return trains


def _compound(gears: tuple[int, ...]) -> dict[Ratio, Train]:
    """Of equal trains one that clears, then the one whose driving gears have the fewest teeth."""
    owned = Counter(gears)
    pairs = _pairs(owned)
    trains: dict[Ratio, Train] = {}
    clearing: set[Ratio] = set()
    for drivers, product, teeth in pairs:
        for driven, below, _ in pairs:
            if product > PLATE_MOTION_MOST * below or not (teeth.isdisjoint(driven) or _enough(owned, drivers, driven)):
                continue
            shared = gcd(product, below)
            ratio = (product // shared, below // shared)
            if ratio not in clearing:
                _take(trains, clearing, ratio, drivers, driven)
    return trains


def _take(
    trains: dict[Ratio, Train],
    clearing: set[Ratio],
    ratio: Ratio,
    drivers: tuple[int, int],
    driven: tuple[int, int],
) -> None:
    one, two = drivers
    for spindle, first in ((one, two), (two, one)):
        for second, worm in (driven, driven[::-1]):
            if spindle + second > first + SHAFT_ROOM and first + worm > second + SHAFT_ROOM:
                trains[ratio] = (spindle, worm, first, second)
                clearing.add(ratio)
                return
    trains.setdefault(ratio, (one, driven[1], two, driven[0]))


def _pairs(owned: Counter[int]) -> list[tuple[tuple[int, int], int, frozenset[int]]]:
    """Pairs of gears as (teeth, product, tooth counts in it), fewest teeth first."""
    sizes = sorted(owned)
    found = [
        ((small, large), small * large, frozenset((small, large)))
        for place, small in enumerate(sizes)
        for large in sizes[place:]
        if small != large or owned[small] > 1
    ]
    return sorted(found, key=lambda pair: (sum(pair[0]), pair[0]))


def _enough(owned: Counter[int], *pairs: tuple[int, int]) -> bool:
    used = Counter(teeth for pair in pairs for teeth in pair)
    return all(owned[teeth] >= count for teeth, count in used.items())
