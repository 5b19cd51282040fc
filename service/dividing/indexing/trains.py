"""Every train that a set of change gears can make between spindle and plate, made once per set and remembered.

A simple train is spindle gear over worm-side gear. A train of four is (spindle x first on stud) over (worm side x
second on stud). Each gear owned is one physical gear: a tooth count is used no more often than it is owned, and the
idlers are gears out of the same box.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Collection
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from itertools import chain
from math import gcd
from typing import Literal, NamedTuple

from .bounds import PLATE_MOTION_MOST
from .gear_pairs import Box, Ratio, Train
from .head import Idlers
from .setup import Gearing

__all__ = ["MOTIONS_KEPT", "Direction", "Ratio", "Rising", "TrainTable", "train_table"]

MOTIONS_KEPT = 1024
"""Sets of motions that a table keeps, one for each denominator asked for."""

Direction = Literal["with", "against"]


class Rising(NamedTuple):
    """Motions of the plate in rising order as decimals; the first `against` of them turn against the crank, and
    `ratios` are those of the others."""

    decimals: list[float]
    ratios: list[Ratio]
    against: int

    def exact(self, place: int) -> Ratio:
        """The motion at a place of `decimals`, drivers below 0 against the crank."""
        if place >= self.against:
            return self.ratios[place - self.against]
        drivers, driven = self.ratios[self.against - 1 - place]
        return -drivers, driven


@dataclass(frozen=True)
class TrainTable:
    """The best train for each ratio that the gears owned can make, and all motions in order for finding the nearest."""

    simple: dict[Ratio, Train]
    compound: dict[Ratio, None]
    box: Box
    idlers: Idlers
    owned: int
    reached: dict[int, dict[int, Ratio]] = field(default_factory=dict, compare=False, repr=False)
    """Answers of `motions_over` so far."""
    ready: dict[Ratio, Gearing | None] = field(default_factory=dict, compare=False, repr=False)
    """Answers of `gearing` so far, for motions that some train makes: the same few thousand are asked for again."""

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
        found: defaultdict[int, list[int]] = defaultdict(list)
        for drivers, driven in chain(self.simple, self.compound):
            found[driven].append(drivers)
        return found

    def gearing(self, drivers: int, driven: int) -> Gearing | None:
        """The gears for a plate motion of drivers/driven in lowest terms, negative against the crank.

        >>> train_table((24, 28, 32, 40, 48), Idlers()).gearing(-12, 7)
        Gearing(spindle=48, worm=28, stud=None, idlers=2, plate='against')
        """
        motion = (drivers, driven)
        if motion in self.ready:
            return self.ready[motion]
        if (abs(drivers), driven) not in self.simple and (abs(drivers), driven) not in self.compound:
            return None
        self.ready[motion] = hung = self._hung(drivers, driven)
        return hung

    def _hung(self, drivers: int, driven: int) -> Gearing | None:
        direction: Direction = "with" if drivers > 0 else "against"
        ratio = (abs(drivers), driven)
        train = self.simple.get(ratio) if self.reaches(2, direction) else None
        if train is None and self.reaches(4, direction) and ratio in self.compound:
            train = self.box.train(ratio)
        if train is None:
            return None
        spindle, worm, first, second = train
        stud = (first, second) if first else None
        return Gearing(spindle, worm, stud, self.idlers.needed(gears=4 if stud else 2, direction=direction), direction)

    def reaches(self, gears: int, direction: Direction) -> bool:
        """Whether enough gears are owned for such a train and the idlers that it takes."""
        return gears + self.idlers.needed(gears=gears, direction=direction) <= self.owned

    def rising(self, kind: int) -> Rising:
        """The motions of trains of `kind` gears, 2 or 4, in rising order.

        The decimals only say where to look. Two trains differ by 1/(40,000 x 40,000) at least, far more than a float is
        off, so their order is the true one and the nearest motion stands beside the place where one would stand.
        """
        return self._simple_motions if kind == 2 else self._compound_motions

    @cached_property
    def _simple_motions(self) -> Rising:
        return self._motions(2, self.simple)

    @cached_property
    def _compound_motions(self) -> Rising:
        return self._motions(4, self.compound)

    def _motions(self, kind: int, trains: Collection[Ratio]) -> Rising:
        """Positive with the crank, as far as idlers allow."""
        ratios = sorted(trains, key=lambda ratio: ratio[0] / ratio[1])
        decimals = [drivers / driven for drivers, driven in ratios]
        minus = [-decimal for decimal in reversed(decimals)] if self.reaches(kind, "against") else []
        return Rising(minus + decimals if self.reaches(kind, "with") else minus, ratios, len(minus))


@lru_cache(maxsize=8)
def train_table(gears: tuple[int, ...], idlers: Idlers) -> TrainTable:
    """The table for the gears owned, in rising order; plate motion is kept within 6 turns.

    >>> len(train_table((24, 28, 32), Idlers()).simple)
    6
    """
    box = Box.of(gears)
    return TrainTable(_simple(gears), box.ratios(), box, idlers, len(gears))


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
