"""The errors stated are those of the cuts themselves: worked out again from a plain list of positions."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import gcd

import pytest

from dividing.indexing.accuracy import accuracy
from dividing.indexing.angles import Angle
from dividing.indexing.setup import Accuracy, Even, Rounded, Spacing
from dividing.indexing.work import Angles, Arc, Divisions, Work
from tests.second.errors import Errors, on_finished_work
from tests.second.holes import block_moves, nearest_holes

STEPS_OFF = [Fraction(1, 100_000), Fraction(-1, 7919), Fraction(0)]


def figures(stated: Accuracy) -> Errors:
    return Errors(stated.worst, stated.single_pitch, stated.total_pitch, stated.closing)


def in_order(work: Divisions | Arc) -> list[Fraction]:
    """Where the cuts should lie, in turns of the spindle from zero."""
    return [cut * work.step for cut in range(work.cuts)]


def arcs(under: int, *, most: int) -> Iterator[Arc]:
    """Every step of so many parts, repeated to make 2 to `most` features."""
    for over in range(1, under):
        if gcd(over, under) == 1:
            yield from (Arc(Angle(Fraction(over, under)), count) for count in range(2, most + 1))


def of_even_cuts(work: Divisions | Arc, step: Fraction, *, closes: bool) -> Errors:
    made = [cut * step for cut in range(work.cuts)]
    return on_finished_work(made, in_order(work), closes=closes, home=work.cuts * step)


def of_cuts_in_nearest_holes(work: Work, grid: int, *, closes: bool) -> Errors:
    ideal = [angle.turns for angle in work.angles] if isinstance(work, Angles) else in_order(work)
    return on_finished_work(nearest_holes(ideal, grid), ideal, closes=closes, home=Fraction(0))


def differing(work: Work, spacing: Spacing, slow: Errors) -> bool:
    return figures(accuracy(work, spacing)) != slow


class TestOneMoveRepeated:
    @pytest.mark.parametrize("off", STEPS_OFF)
    def test_every_number_to_forty_in_every_order_of_cutting(self, off: Fraction) -> None:
        blocks = [Divisions(count, spaces) for count in range(2, 41) for spaces in block_moves(count, count - 1)]
        assert [
            work
            for work in blocks
            if differing(work, Even(work.step + off), of_even_cuts(work, work.step + off, closes=True))
        ] == []

    @pytest.mark.parametrize("off", STEPS_OFF)
    def test_features_that_do_not_go_all_the_way_round(self, off: Fraction) -> None:
        for count in range(2, 21):
            work = Arc(Angle(Fraction(1, 30)), count)
            stated = accuracy(work, Even(work.step + off))
            slow = of_even_cuts(work, work.step + off, closes=False)
            assert figures(stated)[:3] == slow[:3], count

    @pytest.mark.parametrize("off", STEPS_OFF)
    @pytest.mark.parametrize(("angle", "count"), [("1/8", 8), ("2/9", 9), ("3/16", 16), ("5/24", 24)])
    def test_features_that_close_the_circle(self, off: Fraction, angle: str, count: int) -> None:
        work = Arc(Angle(Fraction(angle)), count)
        slow = of_even_cuts(work, work.step + off, closes=True)
        assert figures(accuracy(work, Even(work.step + off))) == slow

    @pytest.mark.parametrize("off", STEPS_OFF)
    def test_features_that_go_round_and_stop_anywhere(self, off: Fraction) -> None:
        for under in range(2, 14):
            for work in arcs(under, most=under):
                stated = accuracy(work, Even(work.step + off))
                slow = of_even_cuts(work, work.step + off, closes=work.count * work.step >= 1)
                assert figures(stated)[:3] == slow[:3], work


class TestEveryPositionAtItsNearestHole:
    @pytest.mark.parametrize("grid", [24, 600, 40 * 49, 90 * 66, 40 * 47 * 49, 7919])
    def test_every_number_to_two_hundred(self, grid: int) -> None:
        numbers = [Divisions(count) for count in range(2, 201)]
        assert [
            work.count
            for work in numbers
            if differing(work, Rounded(grid), of_cuts_in_nearest_holes(work, grid, closes=True))
        ] == []

    @pytest.mark.parametrize("every", [2, 3, 5, 7])
    def test_the_order_of_cutting_makes_no_difference(self, every: int) -> None:
        for count in range(11, 120, 12):
            if Fraction(every, count).denominator == count:
                stated = accuracy(Divisions(count, every), Rounded(1960))
                assert figures(stated) == of_cuts_in_nearest_holes(Divisions(count), 1960, closes=True)

    @pytest.mark.parametrize("grid", [40 * 20, 40 * 49, 72 * 41])
    def test_unequal_angles_in_any_order(self, grid: int) -> None:
        places = [
            Fraction(0),
            Fraction(49, 288),
            Fraction(1, 16),
            Fraction(5, 7),
            Fraction(11, 13),
            Fraction(1, 3),
        ]
        for turn in range(len(places)):
            work = Angles(tuple(Angle(place) for place in places[turn:] + places[:turn]))
            assert figures(accuracy(work, Rounded(grid))) == of_cuts_in_nearest_holes(work, grid, closes=True)

    def test_features_of_an_angle(self) -> None:
        for seconds_of_arc in range(3601, 36000, 1237):
            work = Arc(Angle(Fraction(seconds_of_arc, 1296000)), 9)
            assert figures(accuracy(work, Rounded(1960))) == of_cuts_in_nearest_holes(work, 1960, closes=False)

    @pytest.mark.parametrize("grid", [1, 4, 9])
    def test_features_that_go_round_and_stop_anywhere(self, grid: int) -> None:
        for under in range(2, 14):
            for work in arcs(under, most=2 * under):
                slow = of_cuts_in_nearest_holes(work, grid, closes=work.count * work.step >= 1)
                assert figures(accuracy(work, Rounded(grid))) == slow, work
