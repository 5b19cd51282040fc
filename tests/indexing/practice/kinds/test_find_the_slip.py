"""Find the slip: which setups are spoiled, and what of them is told."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import Head
from dividing.indexing.practice import Task
from dividing.indexing.practice.chance import Chance
from dividing.indexing.practice.kinds import find_the_slip
from dividing.indexing.practice.spoiling import SPOILERS, slips_at
from dividing.indexing.verifying import Claim
from dividing.indexing.work import Arc, Divisions
from tests.indexing.practice.by_second import leaves_a_part, plain_numbers
from tests.indexing.practice.classes import GEARED

ALWAYS_TOLD = ("counted_the_pin_hole", "whole_turns_forgotten")


def claim(task: Task) -> Claim:
    assert task.claim is not None
    return task.claim


@pytest.mark.parametrize("level", [1, 2, 3])
def test_every_slip_of_the_level_is_made_of_few_setups_and_then_those_that_can_be_told_of_many(level: int) -> None:
    tasks = list(find_the_slip.tasks(GEARED, level, Chance(2)))
    assert {(task.kind, task.level, task.none) for task in tasks} == {("find_the_slip", level, False)}
    made = Counter(task.slip for task in tasks)
    assert set(made) == set(slips_at(level))
    for slip in set(made) - set(ALWAYS_TOLD):
        assert made[slip] <= 6 * len(SPOILERS[slip].kinds)
    for slip in ALWAYS_TOLD:
        methods = Counter(claim(task).method for task in tasks if task.slip == slip)
        assert set(methods) == set(SPOILERS[slip].kinds)
        assert all(count <= 6 + 120 for count in methods.values())
    # Every circle and number of level 1, and then of level 2, is more than a sheet has exercises.
    assert made["counted_the_pin_hole"] > 60


@pytest.mark.parametrize(("level", "first"), [(1, 1), (2, 2), (3, 2)])
def test_easy_numbers_are_spoiled_first_at_level_1_and_last_beyond(level: int, first: int) -> None:
    spoiled = [
        task.work.cuts
        for task in find_the_slip.tasks(GEARED, level, Chance(2))
        if task.slip == "counted_the_pin_hole" and claim(task).method == "plain"
    ]
    numbers = {each: {n for n in plain_numbers(GEARED, each) if leaves_a_part(GEARED, n)} for each in (1, 2)}
    # Where a number comes twice, the second time is among those that can always be told.
    last = list(dict.fromkeys(reversed(spoiled)))[::-1]
    assert set(last) <= numbers[1] | numbers[2]
    assert set(last[: len(numbers[first])]) == numbers[first]
    assert set(last) > numbers[first]


@pytest.mark.parametrize("seed", range(4))
def test_two_moves_that_are_spoiled_are_those_of_level_1_first(seed: int) -> None:
    # 10/15 + 2/17 = 40/51, 7/19 + 6/18 = 40/57 and 3/18 + 4/16 = 40/96; no other number to 100 takes two circles of
    # plate 1.
    moves = [task for task in find_the_slip.tasks(GEARED, 3, Chance(seed)) if task.slip == "second_move_wrong_way"]
    assert {task.work.cuts for task in moves[:3]} == {51, 57, 96}
    assert len(moves) == 6


def test_positions_between_two_readings_are_spoiled_after_those_that_are_read_exactly() -> None:
    # The dial reads half minutes, 43,200 in a turn of the work.
    by_dial = [task for task in find_the_slip.tasks(GEARED, 1, Chance(2)) if claim(task).method == "dial"]
    between = [(task.work.step * 43_200).denominator > 1 for task in by_dial]
    assert any(between)
    assert between == sorted(between)


def test_an_angle_is_told_as_it_was_written() -> None:
    tasks = list(find_the_slip.tasks(GEARED, 2, Chance(2)))
    for task in tasks:
        if isinstance(task.work, Divisions) or claim(task).method == "dial":
            assert not task.written
        else:
            assert task.work == Arc(parse_angle(task.written))
    assert {"'" in task.written for task in tasks if task.slip == "minutes_read_as_decimals"} == {True}


def test_a_rounded_step_is_the_dial_s_reading_of_one() -> None:
    # 40 turns of 9 degrees, read to half a minute: 43,200 readings round the work, 1,080 in a turn.
    tasks = [task for task in find_the_slip.tasks(GEARED, 2, Chance(2)) if task.slip == "rounded_step_added_up"]
    assert len(tasks) == 6
    for task in tasks:
        assert isinstance(task.work, Divisions)
        turns, beyond = divmod(round(Fraction(43_200, task.work.count)), 1080)
        assert task.claim == Claim("dial", turns, reading=Angle(Fraction(beyond, 43_200)))


def test_slips_of_what_the_head_lacks_are_not_made() -> None:
    tasks = list(find_the_slip.tasks(Head(plates=(), direct_circles=(24, 30)), 3, Chance(1)))
    assert {claim(task).method for task in tasks} == {"direct"}
    assert {task.slip for task in tasks} <= {slip for slip, one in SPOILERS.items() if "direct" in one.kinds}


@pytest.mark.parametrize(
    ("claim", "slip"),
    [
        (Claim("plain", 1, 21, 49), "counted_the_pin_hole"),  # nothing is wrong with it
        (Claim("plain", 1, 20, 49), "other_circle"),  # another slip is likelier
        (Claim("plain", 1, 5, 16), "other_circle"),  # no slip explains it
    ],
)
def test_a_slip_that_cannot_be_told_is_not_asked(claim: Claim, slip: str) -> None:
    assert find_the_slip.key(Task("find_the_slip", 1, Divisions(28), claim=claim, slip=slip), Head()) is None
