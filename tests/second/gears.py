"""Every train that the gears on the shelf can make, and every differential setting that uses one."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import permutations
from math import gcd
from typing import NamedTuple

from tests.second.holes import Plates

TWELVE_GEARS = (24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100)
USUAL_IDLERS = {"simple": {"with": 1, "against": 2}, "compound": {"with": 0, "against": 1}}
MOST_PLATE_TURNS = 6


class DifferentialSetting(NamedTuple):
    """So many spaces of one circle at every index, while the plate makes ``plate_turns`` a spindle turn."""

    plate: int
    circle: int
    spaces: int
    plate_turns: Fraction

    def spindle_move(self, ratio: int) -> Fraction:
        """Turns of the spindle at every index."""
        return Fraction(self.spaces, self.circle) / (ratio - self.plate_turns)


class Shelf:
    """The signed train values that the gears owned can make, with two gears and with four.

    A train is put together from physical gears, each used once, with as many of the gears left over
    as it needs idlers.
    """

    def __init__(self, gears: Sequence[int], idlers: Mapping[str, Mapping[str, int]] = USUAL_IDLERS) -> None:
        self.simple: set[Fraction] = set()
        self.compound: set[Fraction] = set()
        for way, sign in (("with", 1), ("against", -1)):
            if len(gears) >= 2 + idlers["simple"][way]:
                self.simple |= {Fraction(sign * spindle, worm) for spindle, worm in permutations(gears, 2)}
            if len(gears) >= 4 + idlers["compound"][way]:
                values = {(a * c, b * d) for a, b, c, d in permutations(gears, 4)}
                self.compound |= {Fraction(sign * over, under) for over, under in values}
        self.trains = sorted(train for train in self.simple | self.compound if abs(train) <= MOST_PLATE_TURNS)
        self.known = {(train.numerator, train.denominator) for train in self.trains}
        self.known_simple = {(train.numerator, train.denominator) for train in self.simple}

    def is_simple(self, plate_turns: Fraction) -> bool:
        """Two gears are enough."""
        return (plate_turns.numerator, plate_turns.denominator) in self.known_simple


def crank_moves(ratio: int, step: Fraction, plates: Plates) -> Iterator[tuple[int, int, int]]:
    """Every (plate, circle, spaces) for which the plate would turn no more than it may.

    A spindle move ``step`` with a crank move f wants s = ratio - f/step plate turns per spindle turn.
    """
    least, most = (ratio - MOST_PLATE_TURNS) * step, (ratio + MOST_PLATE_TURNS) * step
    for plate, circles in enumerate(plates, start=1):
        for circle in circles:
            first = max(1, -(-least.numerator * circle // least.denominator))
            last = most.numerator * circle // most.denominator
            for spaces in range(first, last + 1):
                yield plate, circle, spaces


def exact_differentials(ratio: int, step: Fraction, plates: Plates, shelf: Shelf) -> list[DifferentialSetting]:
    """Every exact setting with the plate geared (a plate that stands still is plain indexing)."""
    found = []
    for plate, circle, spaces in crank_moves(ratio, step, plates):
        over = ratio * circle * step.numerator - spaces * step.denominator
        under = circle * step.numerator
        common = gcd(over, under)
        if (over // common, under // common) in shelf.known:
            found.append(DifferentialSetting(plate, circle, spaces, Fraction(over, under)))
    return found


def nearest_differential(ratio: int, step: Fraction, plates: Plates, shelf: Shelf) -> DifferentialSetting | None:
    """The setting whose spindle move comes nearest to ``step``; None without gears."""
    best: tuple[Fraction, DifferentialSetting] | None = None
    for plate, circle, spaces in crank_moves(ratio, step, plates):
        turned = Fraction(spaces, circle)
        at = bisect_left(shelf.trains, ratio - turned / step)
        for train in shelf.trains[max(0, at - 1) : at + 1]:
            if train >= ratio:
                continue
            setting = DifferentialSetting(plate, circle, spaces, train)
            off = abs(setting.spindle_move(ratio) - step)
            if best is None or off < best[0]:
                best = (off, setting)
    return None if best is None else best[1]
