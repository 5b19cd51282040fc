"""Two pairs of gears as a train of four: which pairs a box of change gears holds, and what two of them make together.

Whether a train of four meshes depends on the quadrant. As common practice each pair clears the other's shaft when
a + b > c + 15 and c + d > b + 15, a driving b and c driving d; trains that clear come first, and the operator
tries the fit.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from math import gcd
from typing import NamedTuple

from .bounds import PLATE_MOTION_MOST

SHAFT_ROOM = 15
"""Teeth by which a pair of gears must out-reach the gear beside it to clear its shaft (common practice)."""

Ratio = tuple[int, int]
"""A train as (drivers, driven) in lowest terms."""
Train = tuple[int, int, int, int]
"""(spindle, worm side, first on stud, second on stud); the stud gears are 0 in a simple train."""


class Pair(NamedTuple):
    """Two gears out of the box. `sizes` has a bit for each of their sizes, in the order in which the box has them."""

    small: int
    large: int
    product: int
    sizes: int


@dataclass(frozen=True, slots=True)
class Box:
    """The pairs of gears that a box holds, fewest teeth first. A large box makes tens of thousands of ratios: they are
    written down at once, and the train of one is looked for when it is to be hung."""

    pairs: tuple[Pair, ...]
    by_product: dict[int, list[Pair]]
    owned: Counter[int]
    single: int
    """The sizes of which only one gear is owned."""

    @staticmethod
    def of(gears: tuple[int, ...]) -> Box:
        """The box that holds these gears, each of them once."""
        owned = Counter(gears)
        sizes = sorted(owned)
        bits = {teeth: 1 << place for place, teeth in enumerate(sizes)}
        pairs = sorted(
            (
                Pair(small, large, small * large, bits[small] | bits[large])
                for place, small in enumerate(sizes)
                for large in sizes[place:]
                if small != large or owned[small] > 1
            ),
            key=lambda pair: (pair.small + pair.large, pair.small),
        )
        by_product: dict[int, list[Pair]] = {}
        for pair in pairs:
            by_product.setdefault(pair.product, []).append(pair)
        return Box(tuple(pairs), by_product, owned, sum(bits[teeth] for teeth in sizes if owned[teeth] == 1))

    def ratios(self) -> dict[Ratio, None]:
        """Whatever two pairs make with the plate's motion in its bound: the keys, in the order in which they were made,
        for going through tens of thousands of them in any other order takes the processor twice as long.

        >>> sorted(Box.of((20, 30, 40, 60)).ratios())
        [(1, 1), (1, 4), (4, 1), (4, 9), (9, 4)]
        """
        found: dict[Ratio, None] = {}
        for place, one in enumerate(self.pairs):
            product, sizes = one.product, one.sizes
            for other in self.pairs[place:]:
                shared = sizes & other.sizes
                if not shared or (not shared & self.single and self._both(one, other)):
                    below = other.product
                    divisor = gcd(product, below)
                    over, under = product // divisor, below // divisor
                    # The pair with fewer teeth makes 5.46 times another at most, 104 x 105 over 10 x 200.
                    found[over, under] = None
                    if under <= PLATE_MOTION_MOST * over:
                        found[under, over] = None
        return found

    def train(self, ratio: Ratio) -> Train | None:
        """The train of four for a ratio in lowest terms: one that clears where there is one, then the one whose driving
        gears have the fewest teeth, then the one whose driven gears have. The smaller driving gear goes on the spindle
        and the smaller driven one on the stud as far as that clears. None when the box has none.

        >>> box = Box.of((24, 48, 64, 72))
        >>> box.train((4, 1)), box.train((7, 9))
        ((64, 48, 72, 24), None)
        """
        first: Train | None = None
        for drivers, driven in self._making(ratio):
            for train in _orders(drivers, driven):
                if clears(train):
                    return train
                first = first or train
        return first

    def _making(self, ratio: Ratio) -> Iterator[tuple[Pair, Pair]]:
        for drivers in self.pairs:
            below, rest = divmod(drivers.product * ratio[1], ratio[0])
            if not rest and below in self.by_product:
                for driven in self.by_product[below]:
                    if self._both(drivers, driven):
                        yield drivers, driven

    def _both(self, one: Pair, other: Pair) -> bool:
        """Whether enough gears of each size are owned for both pairs at once."""
        used = (one.small, one.large, other.small, other.large)
        return all(used.count(teeth) <= self.owned[teeth] for teeth in used)


def clears(train: Train) -> bool:
    """Whether each pair of a train of four clears the other's shaft (common practice).

    >>> clears((72, 48, 64, 24)), clears((24, 24, 100, 28))
    (True, False)
    """
    spindle, worm, first, second = train
    return not first or (spindle + second > first + SHAFT_ROOM and first + worm > second + SHAFT_ROOM)


def _orders(drivers: Pair, driven: Pair) -> Iterator[Train]:
    for spindle, first in ((drivers.small, drivers.large), (drivers.large, drivers.small)):
        for second, worm in ((driven.small, driven.large), (driven.large, driven.small)):
            yield spindle, worm, first, second
