"""The trains between table screw and head that cut a helix, from the gears owned, nearest lead first.

A lead L is to the lead of the machine M = ratio x lead of the screw as the driven gears to the drivers:

    L / M = worm x second stud / (first stud x screw)

The screw's gear drives the second gear on the stud, the first gear on the stud drives the one on the worm.
Two gears are worm / screw. Source: A Practical Treatise on Milling and Milling Machines, 1914, p. 62.

A train clears when each pair reaches past the other's shaft: a + b > c + 15 and c + d > b + 15, a driving b
and c driving d (common practice). Idlers (common practice): a right-hand helix takes one between two gears
and none with four; one more reverses the hand.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from itertools import combinations, groupby, islice
from math import prod
from typing import Protocol

from .sizes import Number, in_millimetres

SOURCE = "A Practical Treatise on Milling and Milling Machines, 1914, p. 62"
HANDS = ("right", "left")
CLEARANCE = 15
"""Teeth by which a pair must reach past the other pair's shaft."""

Pair = tuple[int, ...]


class Screw(Protocol):
    """A table screw: its lead and the unit of it."""

    @property
    def lead(self) -> Fraction:
        """How far one turn moves the table."""

    @property
    def unit(self) -> str:
        """ "mm" or "in"."""


class GearedHead(Protocol):
    """What a helix needs of the head."""

    @property
    def ratio(self) -> int:
        """Crank turns in one spindle turn."""

    @property
    def change_gears(self) -> tuple[int, ...]:
        """Teeth of each gear owned."""

    @property
    def screw(self) -> Screw | None:
        """The table screw, if it is known."""


@dataclass(frozen=True, slots=True)
class LeadTrain:
    """One order of gears. The first on the `stud` drives the worm's gear, the screw's gear drives the second.

    >>> train = LeadTrain(worm=48, stud=(32, 24), screw=100)
    >>> train.ratio * 10, train.clears
    (Fraction(18, 5), True)
    """

    worm: int
    screw: int
    stud: tuple[int, int] | None = None

    @property
    def ratio(self) -> Fraction:
        """Driven over drivers: the lead over the lead of the machine."""
        first, second = self.stud or (1, 1)
        return Fraction(self.worm * second, first * self.screw)

    @property
    def clears(self) -> bool:
        """Whether the pairs pass each other's shafts (common practice); two gears with idlers always do."""
        if self.stud is None:
            return True
        first, second = self.stud
        return self.screw + second > first + CLEARANCE and first + self.worm > second + CLEARANCE

    def idlers(self, hand: str) -> int:
        """Idlers for a hand, on the usual construction.

        >>> LeadTrain(24, 48).idlers("right"), LeadTrain(48, 100, (32, 24)).idlers("left")
        (1, 1)
        """
        return (0 if self.stud else 1) + (hand == "left")

    @property
    def gears(self) -> int:
        """How many gears it takes, idlers apart."""
        return 4 if self.stud else 2


def lead_of_machine(ratio: int, screw: Screw, unit: str) -> Fraction:
    """The lead that equal gears give, in the unit asked for; inches and millimetres are converted exactly.

    >>> from dividing.indexing.head import Screw
    >>> lead_of_machine(40, Screw(Fraction(1, 4), "in"), "mm")
    Fraction(254, 1)
    >>> lead_of_machine(40, Screw(Fraction(5), "mm"), "in")
    Fraction(1000, 127)
    """
    lead = Fraction(in_millimetres(screw.lead, screw.unit)) * ratio
    return lead / Fraction(127, 5) if unit == "in" else lead


def nearest_ratios(gears: tuple[int, ...], wanted: Number, limit: int = 5, hand: str = "right") -> tuple[Fraction, ...]:
    """The ratios of driven to drivers nearest to the one wanted, from two or four gears, nearest first.

    Each gear is one physical gear, and the idlers for the hand come from those left over. Equally near, the
    smaller ratio comes first. Empty with too few gears.

    >>> nearest_ratios((24, 24, 48, 48, 72), Fraction(3, 4), limit=3)
    (Fraction(3, 4), Fraction(2, 3), Fraction(1, 2))
    """
    target, owned = Fraction(wanted), tuple(sorted(gears))
    found = {ratio for size in _sizes(owned, hand) for ratio in _near(owned, target, size, limit)}
    return tuple(sorted(found, key=lambda ratio: (abs(ratio - target), ratio))[:limit])


def trains(gears: tuple[int, ...], ratio: Fraction, hand: str = "right") -> tuple[LeadTrain, ...]:
    """Every order of gears with exactly this ratio: two gears first, then what clears, larger gears first.

    >>> [(train.worm, train.stud, train.screw) for train in trains((24, 32, 48, 100), Fraction(9, 25))]
    [(48, (32, 24), 100), (48, (100, 24), 32), (24, (32, 48), 100), (24, (100, 48), 32)]
    """
    owned = tuple(sorted(gears))
    return tuple(
        sorted({train for size in _sizes(owned, hand) for train in _orders(owned, ratio, size)}, key=_preference)
    )


def _preference(train: LeadTrain) -> tuple[int, bool, int, int, int]:
    first, second = train.stud or (0, 0)
    return train.gears, not train.clears, -(train.worm + train.screw + first + second), -train.worm, first


def _sizes(owned: Pair, hand: str) -> list[int]:
    # One or two gears on each side, where enough gears are left for the idlers of that hand.
    reverse = hand == "left"
    return [size for size, idlers in ((1, 1 + reverse), (2, 0 + reverse)) if 2 * size + idlers <= len(owned)]


@lru_cache(maxsize=64)
def _products(gears: Pair, size: int) -> tuple[tuple[int, ...], tuple[tuple[int, Pair], ...]]:
    # Sets of one or two gears in the order of their product, each once however often its teeth are owned.
    ranked = tuple(sorted((prod(pair), pair) for pair in set(combinations(gears, size))))
    return tuple(product for product, _ in ranked), ranked


def _near(gears: Pair, target: Fraction, size: int, limit: int) -> Iterator[Fraction]:
    """For each set of drivers the nearest driven sets on either side: the nearest of all are among them."""
    products, ranked = _products(gears, size)
    owned = Counter(gears)
    for bottom, drivers in ranked:
        place = bisect_left(products, target * bottom)
        for way in (ranked[place:], reversed(ranked[:place])):
            reached = (product for product, driven in way if _available(drivers + driven, owned))
            for top, _ in islice(groupby(reached), limit):
                yield Fraction(top, bottom)


def _orders(gears: Pair, ratio: Fraction, size: int) -> Iterator[LeadTrain]:
    products, ranked = _products(gears, size)
    owned = Counter(gears)
    for bottom, drivers in ranked:
        top = ratio * bottom
        for _, driven in ranked[bisect_left(products, top) : bisect_right(products, top)]:
            if _available(drivers + driven, owned):
                yield from _arranged(driven, drivers)


def _available(train: Pair, owned: Counter[int]) -> bool:
    return all(train.count(teeth) <= owned[teeth] for teeth in train)


def _arranged(driven: Pair, drivers: Pair) -> Iterator[LeadTrain]:
    if len(driven) == 1:
        yield LeadTrain(driven[0], drivers[0])
        return
    for worm, second in (driven, driven[::-1]):
        for first, screw in (drivers, drivers[::-1]):
            yield LeadTrain(worm, screw, (first, second))
