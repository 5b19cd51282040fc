"""Heads that classes work on, and their sheets."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from dividing.indexing.head import TWELVE_GEARS, Dial, Head
from dividing.indexing.heads import SET_TWO
from dividing.indexing.practice import Exercise, Wanted, sheet

HALF_MINUTES = Dial(Fraction(1, 21600), Fraction(1, 43200))
GEARED = Head(change_gears=TWELVE_GEARS, dial=HALF_MINUTES)
HEADS = [
    GEARED,
    Head(plates=SET_TWO, direct_circles=(24, 30, 36)),
    Head(ratio=60, mounted_plate=2, change_gears=TWELVE_GEARS),
    Head(ratio=90, direct_circles=(), stop_circles=(20, 33, 49)),
    Head(ratio=90, plates=(), direct_circles=(), dial=Dial(Fraction(1, 21600), Fraction(1, 129600))),
    Head(ratio=72, plates=(), direct_circles=(60,), dial=Dial(divisions=100)),
    Head(ratio=1, plates=(), direct_circles=(36,)),
    Head(ratio=5, plates=((28, 33),), mounted_plate=1, direct_circles=(), change_gears=(24, 24, 28)),
]


def exercises(seeds: range, count: int) -> Iterator[tuple[Head, Exercise]]:
    """The exercises of many seeds, the heads and the levels taken in turn."""
    for seed in seeds:
        head = HEADS[seed % len(HEADS)]
        for exercise in sheet(Wanted(seed, count, head, level=1 + seed // len(HEADS) % 3)).exercises:
            yield head, exercise
