"""Every hole of every circle, tried one after another: plain, direct, compound, and the nearest hole.

A *wanted* move is in turns of the crank (for the direct plate, in turns of the spindle).
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from itertools import permutations
from math import gcd
from typing import NamedTuple

Plates = tuple[tuple[int, ...], ...]

SET_I: Plates = (
    (15, 16, 17, 18, 19, 20),
    (21, 23, 27, 29, 31, 33),
    (37, 39, 41, 43, 47, 49),
)
SET_II: Plates = (
    (24, 25, 28, 30, 34, 37, 38, 39, 41, 42, 43),
    (46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66),
)


class PlainSetting(NamedTuple):
    """A crank move; whole turns alone are one setting, on no plate and no circle."""

    turns: int
    holes: int
    circle: int | None
    plate: int | None


class CompoundSetting(NamedTuple):
    """A crank move on one circle, then plate and crank together on another of the same plate."""

    plate: int
    turns: int
    holes: int
    circle: int
    second_holes: int
    second_circle: int

    @property
    def move(self) -> Fraction:
        """The whole move in turns of the crank."""
        second = Fraction(self.second_holes, self.second_circle)
        return self.turns + Fraction(self.holes, self.circle) + second


def plain_settings(wanted: Fraction, plates: Plates) -> set[PlainSetting]:
    """Every exact crank move for ``wanted``."""
    turns, over, parts = wanted.numerator // wanted.denominator, wanted.numerator, wanted.denominator
    left = over - turns * parts
    if left == 0:
        return {PlainSetting(turns, 0, None, None)}
    found = set()
    for plate, circles in enumerate(plates, start=1):
        for circle in circles:
            for holes in range(1, circle):
                if holes * parts == left * circle:
                    found.add(PlainSetting(turns, holes, circle, plate))
    return found


def direct_settings(wanted: Fraction, circles: Iterable[int]) -> set[tuple[int, int]]:
    """Every (holes, circle) of the direct plate that moves the spindle by exactly ``wanted``."""
    return {
        (holes, circle)
        for circle in circles
        for holes in range(1, circle + 1)
        if holes * wanted.denominator == wanted.numerator * circle
    }


class CompoundTable:
    """All that any two circles of one plate can do within a turn, found by putting the pin in every hole.

    For every ordered pair of circles: the sum of the two moves in parts of 1/(A*B) turn, whole turns
    left out, and the two moves that make it. Both moves are moves: where one of them stays in its hole,
    or goes round by whole turns, the other alone is plain indexing.
    """

    def __init__(self, plates: Plates, stop_circles: Sequence[int] | None = None) -> None:
        self.pairs: dict[tuple[int, int, int], dict[int, tuple[int, int]]] = {}
        for plate, circles in enumerate(plates, start=1):
            for first, second in permutations(circles, 2):
                if stop_circles is None or second in stop_circles:
                    sums: dict[int, tuple[int, int]] = {}
                    for holes in range(1, first):
                        for on in range(1, second):
                            sums.setdefault((holes * second + on * first) % (first * second), (holes, on))
                    self.pairs[plate, first, second] = sums
        self.sorted_sums = {pair: sorted(sums) for pair, sums in self.pairs.items()}

    def _setting(self, pair: tuple[int, int, int], parts: int, wanted: Fraction) -> CompoundSetting:
        """The two moves that make so many parts, with the whole turns that come nearest to ``wanted``."""
        plate, first, second = pair
        holes, on = self.pairs[pair][parts]
        choices = [
            CompoundSetting(plate, turns, holes, first, way, second)
            for way in (on, on - second)
            for turns in range(int(wanted) - 1, int(wanted) + 3)
            if turns >= 0
        ]
        return min(choices, key=lambda setting: abs(setting.move - wanted))

    def exact(self, wanted: Fraction) -> list[CompoundSetting]:
        """One exact compound move for every ordered pair of circles that has any."""
        found = []
        for pair in self.pairs:
            whole = pair[1] * pair[2]
            parts, left = divmod(wanted.numerator * whole, wanted.denominator)
            if left == 0 and parts % whole in self.pairs[pair]:
                found.append(self._setting(pair, parts % whole, wanted))
        return found

    def nearest(self, wanted: Fraction) -> CompoundSetting:
        """The compound move that comes nearest to ``wanted``, of all pairs of circles."""
        over, under = (wanted % 1).numerator, wanted.denominator
        best_off, best_whole, best = 1, 1, None
        for pair, sums in self.sorted_sums.items():
            # All in parts of 1/(under * whole) turn, so that whole numbers do.
            whole = pair[1] * pair[2]
            at = bisect_left(sums, -(-over * whole // under))
            for parts in (sums[at - 1], sums[at % len(sums)]):
                off = abs(parts * under - over * whole)
                off = min(off, whole * under - off)
                if best is None or off * best_whole < best_off * whole:
                    best_off, best_whole, best = off, whole, (pair, parts)
        assert best is not None
        return self._setting(*best, wanted)


def nearest_holes(positions: Iterable[Fraction], grid: int) -> list[Fraction]:
    """For every position (in turns) the nearest of ``grid`` even places; of two as near, the one ahead."""
    nearest = []
    for position in positions:
        below = position.numerator * grid // position.denominator
        places = (Fraction(below + 1, grid), Fraction(below, grid))
        nearest.append(min(places, key=lambda place: abs(place - position)))
    return nearest


def worst_of_divisions(divisions: int, grid: int) -> Fraction:
    """The worst error, in turns, when every division is put at its nearest of ``grid`` even places."""
    farthest = 0
    for division in range(divisions):
        past = division * grid % divisions
        farthest = max(farthest, min(past, divisions - past))
    return Fraction(farthest, divisions * grid)


def places_of_two_circles(plates: Plates, stop_circles: Sequence[int] | None = None) -> set[int]:
    """How many places in a crank turn any two circles of one plate make between them, tried hole by hole."""
    counts = set()
    for first, second, sums in _pairs_of_holes(plates, stop_circles):
        # They are evenly spaced, or the count would not be the whole truth.
        assert sorted(sums) == list(range(0, first * second, first * second // len(sums)))
        counts.add(len(sums))
    return counts


def _pairs_of_holes(plates: Plates, stop_circles: Sequence[int] | None) -> Iterator[tuple[int, int, set[int]]]:
    for circles in plates:
        for first, second in permutations(circles, 2):
            if stop_circles is None or second in stop_circles:
                whole = first * second
                yield (
                    first,
                    second,
                    {(one * second + other * first) % whole for one in range(first) for other in range(second)},
                )


def block_moves(divisions: int, up_to: int) -> list[int]:
    """Every number of spaces a move that still reaches each division once."""
    return [spaces for spaces in range(1, up_to + 1) if gcd(spaces, divisions) == 1]
