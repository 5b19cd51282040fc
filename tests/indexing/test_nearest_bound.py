"""Nearest hole: errors never add up, and none is ever more than half a hole, 360/(2 R c) degrees."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.accuracy import accuracy
from dividing.indexing.angles import Angle
from dividing.indexing.head import Head
from dividing.indexing.methods import nearest
from dividing.indexing.setup import Declined, Rounded, Setup
from dividing.indexing.work import Angles, Arc, Divisions, Work
from tests.second.errors import seconds
from tests.second.holes import SET_I, SET_II, Plates, nearest_holes, worst_of_divisions

PLATE_SETS = pytest.mark.parametrize("plates", [SET_I, SET_II], ids=["set I", "set II"])
RATIOS = pytest.mark.parametrize("ratio", [5, 40, 60, 72, 90, 2160])


def answers(work: Work, head: Head) -> tuple[Setup, ...]:
    found = nearest.approximate(work, head)
    assert not isinstance(found, Declined)
    return found


def half_a_hole(setup: Setup, ratio: int) -> Fraction:
    """Half the distance of two neighbouring places, in turns, on the circle or circles named."""
    assert setup.move is not None
    if setup.second is None:
        return Fraction(1, 2 * ratio * setup.move.circle)
    common = next(
        places
        for places in range(setup.move.circle, setup.move.circle * setup.second.circle + 1)
        if places % setup.move.circle == 0 and places % setup.second.circle == 0
    )
    return Fraction(1, 2 * ratio * common)


class TestNoErrorIsMoreThanHalfAHole:
    @PLATE_SETS
    @RATIOS
    def test_for_the_numbers_to_five_hundred(self, plates: Plates, ratio: int) -> None:
        head = Head(ratio=ratio, plates=plates)
        for count in range(2, 501):
            for setup in answers(Divisions(count), head):
                assert setup.accuracy.worst <= half_a_hole(setup, ratio), count
                assert setup.accuracy.closing == 0, count

    @PLATE_SETS
    def test_for_every_circle_by_itself(self, plates: Plates) -> None:
        for circle in [circle for face in plates for circle in face]:
            for count in range(2, 301):
                assert accuracy(Divisions(count), Rounded(40 * circle)).worst <= Fraction(1, 80 * circle)

    @RATIOS
    def test_for_a_list_of_angles(self, ratio: int) -> None:
        head = Head(ratio=ratio)
        for first in range(7, 700, 11):
            work = Angles(tuple(Angle(Fraction(first * place, 1009)) for place in range(5)))
            for setup in answers(work, head):
                assert setup.accuracy.worst <= half_a_hole(setup, ratio)

    @RATIOS
    def test_for_features_of_an_angle(self, ratio: int) -> None:
        head = Head(ratio=ratio)
        for parts in range(101, 140):
            for setup in answers(Arc(Angle(Fraction(7, parts)), 12), head):
                assert setup.accuracy.worst <= half_a_hole(setup, ratio)


class TestTheBoundIsReached:
    def test_on_49_at_40_to_1_half_a_hole_is_330_6_seconds(self) -> None:
        # Computed: 360 degrees over 2 x 40 x 49. Twice as many divisions as places lie half a hole off.
        assert round(seconds(Fraction(1, 2 * 40 * 49)), 1) == 330.6
        assert accuracy(Divisions(2 * 40 * 49), Rounded(40 * 49)).worst == Fraction(1, 2 * 40 * 49)

    def test_on_47_and_49_at_40_to_1_it_is_7_03_seconds(self) -> None:
        assert round(seconds(Fraction(1, 2 * 40 * 47 * 49)), 2) == 7.03
        setup = answers(Divisions(127), Head(plates=((47, 49),)))[0]
        assert half_a_hole(setup, 40) == Fraction(1, 2 * 40 * 47 * 49)

    @pytest.mark.parametrize("grid", [600, 1960, 92_120])
    def test_never_passed_whatever_the_number(self, grid: int) -> None:
        for count in range(2, 400):
            stated = accuracy(Divisions(count), Rounded(grid)).worst
            assert stated == worst_of_divisions(count, grid) <= Fraction(1, 2 * grid)


class TestErrorsNeverAddUp:
    @pytest.mark.parametrize("count", [127, 383, 997])
    def test_each_position_is_as_near_as_its_own_hole(self, count: int) -> None:
        for setup in answers(Divisions(count), Head()):
            assert isinstance(setup.spacing, Rounded)
            wanted = [Fraction(division, count) for division in range(count)]
            made = nearest_holes(wanted, setup.spacing.points)
            worst = max(abs(here - there) for here, there in zip(made, wanted, strict=True))
            assert setup.accuracy.worst == worst
