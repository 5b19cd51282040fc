"""Differential indexing: every number that a train makes and nothing simpler."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.head import TWELVE_GEARS, Head, Idlers
from dividing.indexing.practice import Task
from dividing.indexing.practice.chance import Chance
from dividing.indexing.practice.kinds import differential
from dividing.indexing.work import Divisions
from tests.indexing.practice.by_second import hard_numbers, shelf
from tests.indexing.practice.classes import GEARED, HEADS
from tests.second.gears import MOST_PLATE_TURNS, exact_differentials

SHORT_OF_GEARS = Head(plates=((15, 21, 49),), change_gears=(24, 28, 32))


@pytest.fixture(autouse=True)
def _worked_anew() -> None:
    differential._counts.cache_clear()


@pytest.mark.parametrize("head", [GEARED, HEADS[2], SHORT_OF_GEARS])
@pytest.mark.parametrize(("level", "most"), [(1, 150), (2, 400), (3, 400)])
def test_every_number_that_a_train_makes_may_be_asked(head: Head, level: int, most: int) -> None:
    trains = shelf(head.change_gears)
    made = set()
    for count in hard_numbers(head, most):
        found = exact_differentials(head.ratio, Fraction(1, count), head.plates, trains)
        by_two = any(trains.is_simple(one.plate_turns) for one in found)
        if count >= 20 and found and by_two == (level < 3):
            made.add(count)
    tasks = list(differential.tasks(head, level, Chance(1)))
    assert set(tasks) == {Task("differential", level, Divisions(count, fixed=True)) for count in made}
    assert all(differential.key(task, head) for task in tasks[:40])


def test_twelve_gears_reach_383_by_no_train() -> None:
    # With one space a move; the number is known as the first that set I and the common gears do not reach.
    head = Head(change_gears=TWELVE_GEARS)
    asked = {task.work.cuts for level in (2, 3) for task in differential.tasks(head, level, Chance(1))}
    assert 383 not in asked
    assert {382, 381, 127} <= asked


@pytest.mark.parametrize(
    ("head", "gears", "holes"),
    [
        # With one idler the plate goes with the crank: 24/28, 32/24 and 32/28 of a turn are 18, 28 and 24 of 21 holes.
        (Head(plates=((21,),), change_gears=(24, 28, 32)), 2, {840 - 18, 840 - 28, 840 - 24}),
        # With two gears left over for idlers it goes either way: 24/28 and 100/28 are 6 and 25 of 7 holes.
        (Head(plates=((7,),), change_gears=(24, 28, 86, 100)), 2, {280 - 6, 280 + 6, 280 - 25, 280 + 25}),
        # Without an idler four gears turn it with the crank: (24 x 28)/(32 x 48) = 7/16 and (28 x 48)/(24 x 32) = 7/4.
        (Head(plates=((16,),), change_gears=(24, 28, 32, 48)), 4, {640 - 7, 640 - 28}),
        # As many turns as the crank, and more: the pin passes no hole, or passes them backwards.
        (Head(ratio=1, plates=((20,),), direct_circles=(), change_gears=(24, 24, 48)), 2, {20 - 10}),
        # Half a turn of two holes.
        (Head(ratio=1, plates=((2,),), direct_circles=(), change_gears=(24, 28, 48)), 2, {1}),
    ],
)
def test_holes_that_the_pin_passes_in_a_turn_of_the_spindle(head: Head, gears: int, holes: set[int]) -> None:
    assert differential.passed(head, gears=gears) == holes


@pytest.mark.parametrize(("gears", "trains"), [(2, shelf(TWELVE_GEARS).simple), (4, shelf(TWELVE_GEARS).compound)])
def test_holes_passed_are_those_of_every_train_that_can_be_hung(gears: int, trains: set[Fraction]) -> None:
    hung = [train for train in trains if abs(train) <= MOST_PLATE_TURNS]
    passed = {(40 - train) * circle for train in hung for circle in GEARED.plate_of}
    wanted = {holes for holes in passed if holes.denominator == 1}
    assert differential.passed(GEARED, gears=gears) == wanted


def test_a_head_that_needs_no_idler_takes_no_third_gear() -> None:
    # Two gears alone turn the plate of this head against the crank.
    head = Head(plates=((7,),), change_gears=(24, 28), idlers=Idlers(simple_with=1, simple_against=0))
    assert differential.passed(head, gears=2) == {280 + 6}
