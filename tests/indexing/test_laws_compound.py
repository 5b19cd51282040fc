"""Compound indexing and the nearest hole on two circles, against every hole of every pair tried in turn."""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from random import Random

import pytest

from dividing.indexing.angles import Angle
from dividing.indexing.bounds import EVERY_TRIED
from dividing.indexing.head import Head
from dividing.indexing.methods import compound, nearest
from dividing.indexing.setup import Declined, Even, Setup
from dividing.indexing.work import Arc, Divisions
from tests.indexing.as_told import both_moves, first_move, second_move, setups
from tests.second.holes import (
    SET_I,
    SET_II,
    CompoundTable,
    Plates,
    block_moves,
    places_of_two_circles,
    worst_of_divisions,
)
from tests.second.ranges import NUMBERS

ODD_PLATES: Plates = ((12, 18, 20, 24, 36, 40), (15, 30), (7, 49, 50))

PLATE_SETS = pytest.mark.parametrize(
    "plates", [SET_I, SET_II, ODD_PLATES], ids=["set I", "set II", "circles with factors in common"]
)
RATIOS = pytest.mark.parametrize("ratio", [40, 60, 90])


@cache
def table(plates: Plates, stop_circles: tuple[int, ...] | None = None) -> CompoundTable:
    return CompoundTable(plates, stop_circles)


class TestExact:
    @PLATE_SETS
    @RATIOS
    def test_the_same_numbers_come_out_on_the_same_pairs_of_circles(self, plates: Plates, ratio: int) -> None:
        head = Head(ratio=ratio, plates=plates)
        for count in NUMBERS:
            found = [as_pair(setup) for setup in setups(compound.exact(Divisions(count), head))]
            slow = {
                (made.plate, frozenset((made.circle, made.second_circle)))
                for made in table(plates).exact(Fraction(ratio, count))
            }
            assert set(found) == slow, count
            assert len(found) == len(slow), count

    @PLATE_SETS
    @RATIOS
    def test_the_two_moves_make_the_step_and_both_are_moves(self, plates: Plates, ratio: int) -> None:
        head = Head(ratio=ratio, plates=plates)
        for count in NUMBERS:
            for setup in setups(compound.exact(Divisions(count), head)):
                assert both_moves(setup) == Fraction(ratio, count)
                _, holes, _ = first_move(setup)
                back_or_on, second_circle = second_move(setup)
                assert holes
                assert 0 < abs(back_or_on) < second_circle

    @PLATE_SETS
    def test_angles_of_every_third_of_a_degree(self, plates: Plates) -> None:
        head = Head(plates=plates)
        differing = [
            str(angle * 360)
            for angle in (Fraction(thirds, 1080) for thirds in range(1, 1081))
            if bool(setups(compound.exact(Arc(Angle(angle)), head))) != bool(table(plates).exact(40 * angle))
        ]
        assert differing == []

    def test_the_stop_pin_reaches_the_second_circle(self) -> None:
        stops = (20, 33, 49)
        head = Head(stop_circles=stops)
        for count in NUMBERS:
            found = setups(compound.exact(Divisions(count), head))
            assert bool(found) == bool(table(SET_I, stops).exact(Fraction(40, count))), count
            assert {second_move(setup)[1] for setup in found} <= set(stops), count


class TestNearestStep:
    @PLATE_SETS
    @RATIOS
    @pytest.mark.parametrize("every", [1, 5])
    def test_over_so_many_spaces_none_comes_nearer(self, plates: Plates, ratio: int, every: int) -> None:
        head = Head(ratio=ratio, plates=plates)
        for count in NUMBERS[:: 1 if every == 1 else 5]:
            if every < count and Fraction(every, count).denominator == count:
                is_as_near(Divisions(count, every), head, off_by_the_slow_way(count, every, plates, ratio))

    @PLATE_SETS
    @RATIOS
    def test_nor_over_any_of_the_spaces_tried_unasked(self, plates: Plates, ratio: int) -> None:
        head = Head(ratio=ratio, plates=plates)
        for count in NUMBERS[::10]:
            blocks = block_moves(count, min(EVERY_TRIED, count - 1))
            slow = min(off_by_the_slow_way(count, spaces, plates, ratio) for spaces in blocks)
            is_as_near(Divisions(count), head, slow)

    def test_on_plates_that_nobody_has_heard_of(self) -> None:
        chance = Random(1915)  # noqa: S311 - the same plates every time
        for _ in range(60):
            plates = tuple(
                tuple(sorted(chance.sample(range(10, 60), chance.randint(2, 4)))) for _ in range(chance.randint(1, 2))
            )
            ratio = chance.choice((5, 40, 60, 90))
            for count in chance.sample(range(2, 200), 40):
                head = Head(ratio=ratio, plates=plates)
                is_as_near(Divisions(count, 1), head, off_by_the_slow_way(count, 1, plates, ratio))

    @PLATE_SETS
    def test_the_step_stated_is_what_the_two_moves_make(self, plates: Plates) -> None:
        head = Head(plates=plates)
        for count in NUMBERS:
            for setup in setups(compound.approximate(Divisions(count), head)):
                assert step(setup) * 40 == both_moves(setup), count


class TestNearestHole:
    @PLATE_SETS
    @RATIOS
    def test_no_circle_and_no_pair_of_circles_leaves_less(self, plates: Plates, ratio: int) -> None:
        head = Head(ratio=ratio, plates=plates)
        circles = {circle for face in plates for circle in face}
        for count in NUMBERS[::5]:
            grids = circles | places_of_two_circles_once(plates)
            slow = min(worst_of_divisions(count, ratio * places) for places in grids)
            assert best_of(nearest.approximate(Divisions(count), head)) <= slow, count

    @PLATE_SETS
    @RATIOS
    def test_no_circle_alone_leaves_less_than_the_one_named(self, plates: Plates, ratio: int) -> None:
        head = Head(ratio=ratio, plates=plates)
        circles = {circle for face in plates for circle in face}
        for count in NUMBERS:
            found = setups(nearest.approximate(Divisions(count), head))
            one = [setup.accuracy.worst for setup in found if setup.second is None]
            assert min(one) <= min(worst_of_divisions(count, ratio * circle) for circle in circles), count


def off_by_the_slow_way(count: int, spaces: int, plates: Plates, ratio: int) -> Fraction:
    """How far off the nearest two moves are, of every hole of every pair."""
    return abs(table(plates).nearest(Fraction(spaces * ratio, count)).move / ratio - Fraction(spaces, count))


def is_as_near(work: Divisions, head: Head, slow: Fraction) -> None:
    """None of ours is farther off; where even the nearest would lose count of the divisions, none need be told."""
    found = setups(compound.approximate(work, head))
    keeps_count = 2 * work.count**2 * slow < 1
    assert found or not keeps_count, (work, head)
    if found:
        assert min(abs(step(setup) - Fraction(setup.every, work.count)) for setup in found) <= slow, (work, head)


def as_pair(setup: Setup) -> tuple[int | None, frozenset[int]]:
    assert setup.move is not None
    assert setup.second is not None
    return (setup.move.plate, frozenset((setup.move.circle, setup.second.circle)))


def step(setup: Setup) -> Fraction:
    assert isinstance(setup.spacing, Even)
    return setup.spacing.step


def best_of(answer: tuple[Setup, ...] | Declined) -> Fraction:
    return min(setup.accuracy.worst for setup in setups(answer))


@cache
def places_of_two_circles_once(plates: Plates) -> set[int]:
    return places_of_two_circles(plates)
