"""What the pin passes while the plate turns, counted turn by turn."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.coverage.geared import (
    TURNS_MOST,
    by_driven,
    directions,
    divisors,
    falling_in,
    passings,
    points_in,
    points_most,
    strips_in,
)
from dividing.indexing.head import TWELVE_GEARS, Head, Idlers
from tests.second.gears import Shelf

USUAL = Idlers()


@pytest.mark.parametrize(
    ("gears", "owned", "ways"),
    # Common practice: a simple train needs 1 idler with the crank and 2 against it, a compound one none and 1.
    [(2, 2, ()), (2, 3, (1,)), (2, 4, (1, -1)), (4, 3, ()), (4, 4, (1,)), (4, 5, (1, -1))],
)
def test_a_train_needs_its_idlers_out_of_the_same_box(gears: int, owned: int, ways: tuple[int, ...]) -> None:
    assert directions(USUAL, gears=gears, owned=owned) == ways


@pytest.mark.parametrize("gears", [(24, 28), (24, 28, 32), (24, 28, 32, 40), (20, 24, 24, 48, 100)])
@pytest.mark.parametrize("ratio", [1, 3, 40])
def test_passings_are_those_of_every_train(gears: tuple[int, ...], ratio: int) -> None:
    shelf = {motion for motion in Shelf(gears).trains if motion < ratio}
    told = passings(ratio, gears, USUAL)
    assert {ratio - Fraction(places, driven) for driven in told for places in told[driven]} == shelf


@pytest.mark.parametrize("circle", [20, 21, 49, 60])
def test_the_pin_is_back_at_a_hole_after_just_so_many_turns(circle: int) -> None:
    for driven in range(1, 100):
        for motion in (Fraction(1, driven), Fraction(-5, driven), Fraction(7, driven)):
            if motion.denominator == driven:
                passed = circle * (40 - motion)
                turns = passed.denominator
                times = {times for times, at in falling_in(circle, turns) if at == driven}
                assert {each * (40 * driven - motion.numerator) for each in times} == {passed.numerator}
                others = [falling_in(circle, other) for other in range(1, 101) if other != turns]
                assert all(driven != at for other in others for _, at in other)


def test_ways_by_what_is_driven_are_the_same_ways() -> None:
    told = {(turns, times, driven) for driven, ways in by_driven((20, 21)).items() for turns, times in ways}
    assert told == {
        (turns, times, driven)
        for circle in (20, 21)
        for turns in range(1, TURNS_MOST + 1)
        for times, driven in falling_in(circle, turns)
    }


def test_points_of_three_gears_by_hand() -> None:
    # 24, 40 and an idler: the plate turns 3/5 or 5/3 of a turn with the crank, on 15 holes 600 - 9 and 600 - 25.
    given = passings(40, (24, 40, 64), USUAL)
    assert {591, 575} <= set(points_in(1, (15,), given))
    # On 16 holes 3/5 of a turn brings the pin to a hole in five turns, when it has passed 5 x 640 - 48.
    assert 3_152 in points_in(5, (16,), given)
    assert 3_152 not in points_in(1, (16,), given)


@pytest.mark.parametrize("turns", [1, 7, 12])
def test_no_point_is_above_the_most(turns: int) -> None:
    head = Head(change_gears=TWELVE_GEARS)
    most = points_most(head.ratio, head.largest_circle, turns)
    for start, marks in strips_in(turns, head):
        assert start + len(marks) - 1 <= most
    assert most == 46 * 49 * turns


@pytest.mark.parametrize("head", [Head(), Head(change_gears=(24,)), Head(plates=(), change_gears=TWELVE_GEARS)])
def test_without_plates_or_two_gears_nothing_is_passed(head: Head) -> None:
    assert list(strips_in(1, head)) == []


def test_divisors_are_in_rising_order() -> None:
    assert [divisors(circle) for circle in (1, 7, 24)] == [(1,), (1, 7), (1, 2, 3, 4, 6, 8, 12, 24)]
