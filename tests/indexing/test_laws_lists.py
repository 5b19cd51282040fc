"""Unequal spacing: one circle exact for every angle if there is one, else the best that any circle can do."""

from __future__ import annotations

from fractions import Fraction
from random import Random

import pytest

from dividing.indexing.angles import Angle
from dividing.indexing.head import Head
from dividing.indexing.methods import compound, direct, nearest, plain
from dividing.indexing.work import Angles
from tests.indexing.as_told import setups
from tests.second.holes import SET_I, SET_II, Plates, nearest_holes, places_of_two_circles

PLATE_SETS = pytest.mark.parametrize("plates", [SET_I, SET_II], ids=["set I", "set II"])
RATIOS = pytest.mark.parametrize("ratio", [40, 60, 90])
# Angles of whole parts of a turn that circles often have in common, and some that none has.
PARTS = [3, 7, 8, 15, 24, 49, 60, 72, 90, 120, 360, 1080, 1960, 2520, 3600, 21600]


def lists_of_angles(how_many: int) -> list[tuple[Fraction, ...]]:
    chance = Random(20_000)  # noqa: S311 - the same lists every time, no secrets
    found = []
    for _ in range(how_many):
        parts = chance.choice(PARTS) * chance.choice([1, 1, 1, 17, 40])
        found.append(tuple(Fraction(chance.randrange(parts), parts) for _ in range(chance.randint(1, 8))))
    return found


LISTS = lists_of_angles(300)


def work(places: tuple[Fraction, ...]) -> Angles:
    return Angles(tuple(Angle(place) for place in places))


def worst(places: tuple[Fraction, ...], grid: int) -> Fraction:
    return max(abs(made - place) for made, place in zip(nearest_holes(places, grid), places, strict=True))


class TestOneCircleForAll:
    @PLATE_SETS
    @RATIOS
    def test_is_found_wherever_there_is_one(self, plates: Plates, ratio: int) -> None:
        head = Head(ratio=ratio, plates=plates)
        for places in LISTS:
            told = [setup.move.circle for setup in setups(plain.exact(work(places), head)) if setup.move]
            slow = [circle for face in plates for circle in face if worst(places, ratio * circle) == 0]
            # Where every position is a matter of whole turns any circle serves, and one is named.
            assert set(told) <= set(slow), places
            whole = worst(places, ratio) == 0
            assert len(told) == (1 if whole else len(slow)), places

    @pytest.mark.parametrize("circles", [(24,), (14, 20, 24), (360, 49)])
    def test_on_the_direct_plate_too(self, circles: tuple[int, ...]) -> None:
        head = Head(direct_circles=circles)
        for places in LISTS:
            told = {setup.move.circle for setup in setups(direct.exact(work(places), head)) if setup.move}
            assert told == {circle for circle in circles if worst(places, circle) == 0}, places

    @PLATE_SETS
    @RATIOS
    def test_two_circles_are_found_wherever_two_will_do(self, plates: Plates, ratio: int) -> None:
        head = Head(ratio=ratio, plates=plates)
        grids = places_of_two_circles(plates)
        for places in LISTS:
            told = setups(compound.exact(work(places), head))
            assert bool(told) == any(worst(places, ratio * grid) == 0 for grid in grids), places


class TestTheNearestHoles:
    @PLATE_SETS
    @RATIOS
    def test_none_of_one_circle_or_two_leaves_less(self, plates: Plates, ratio: int) -> None:
        head = Head(ratio=ratio, plates=plates)
        circles = {circle for face in plates for circle in face}
        grids = places_of_two_circles(plates)
        for places in LISTS[::5]:
            told = setups(nearest.approximate(work(places), head))
            one = min(setup.accuracy.worst for setup in told if setup.second is None)
            assert one == min(worst(places, ratio * circle) for circle in circles), places
            best = min(setup.accuracy.worst for setup in told)
            assert best == min(worst(places, ratio * grid) for grid in circles | grids), places
