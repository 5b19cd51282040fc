"""Sector arms: the move, the number or the angle, and a circle that serves."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import Head
from dividing.indexing.practice import Task
from dividing.indexing.practice.chance import Chance
from dividing.indexing.practice.kinds import sector_arms
from dividing.indexing.verifying import Claim
from dividing.indexing.work import Arc, Divisions
from tests.indexing.practice.by_second import leaves_a_part, minutes_served, plain_numbers
from tests.second.holes import plain_settings


@pytest.mark.parametrize("level", [1, 2])
def test_every_number_that_leaves_a_part_of_a_turn_may_be_asked(level: int) -> None:
    head, asked = Head(), list(sector_arms.tasks(Head(), level, Chance(1)))
    numbers = {count for count in plain_numbers(head, level) if leaves_a_part(head, count)}
    assert {task.work.cuts for task in asked} == numbers
    for task in asked:
        moves = plain_settings(Fraction(40, task.work.cuts), head.plates)
        claims = {one.circle: Claim("plain", one.turns, one.holes, one.circle) for one in moves}
        claim = claims[task.circle] if level == 1 else None
        assert task == Task("sector_arms", level, Divisions(task.work.cuts), circle=task.circle, claim=claim)
        assert task.circle in claims


@pytest.mark.parametrize("head", [Head(), Head(ratio=80)])
def test_every_angle_that_leaves_a_part_of_a_turn_may_be_asked(head: Head) -> None:
    # At 80:1 a turn is 4 degrees 30', which needs no arms.
    one_turn = Fraction(1, head.ratio)
    texts = {text for text in minutes_served(head) if parse_angle(text).turns % one_turn}
    asked = list(sector_arms.tasks(head, 3, Chance(1)))
    assert {task.written for task in asked} == texts
    for task in asked:
        assert task == Task("sector_arms", 3, Arc(parse_angle(task.written)), task.written, circle=task.circle)
        assert task.circle in head.plate_of
        assert (task.work.step / one_turn * (task.circle or 0)).denominator == 1


def test_any_circle_that_serves_may_be_given() -> None:
    # 40/28 = 1 3/7.
    given = {
        task.circle for seed in range(20) for task in sector_arms.tasks(Head(), 2, Chance(seed)) if task.work.cuts == 28
    }
    assert given == {21, 49}
