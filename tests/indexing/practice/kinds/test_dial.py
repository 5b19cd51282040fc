"""Setting by the dial: positions that fall where their level has them, and what the dial reads there."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import Dial, Head
from dividing.indexing.practice import Task
from dividing.indexing.practice.chance import Chance
from dividing.indexing.practice.kinds import dial
from dividing.indexing.setup import Tolerance
from dividing.indexing.verifying import Claim
from dividing.indexing.work import Arc, Divisions
from tests.indexing.practice.classes import HEADS

TEN_SECONDS, LINES = HEADS[4], HEADS[5]
DEGREES = Head(plates=(), dial=Dial(Fraction(1, 360)))


def finest(head: Head) -> Fraction:
    """The smallest reading, in turns of the work."""
    assert head.dial is not None
    return head.dial.vernier or head.dial.graduation or Fraction(1, head.ratio * (head.dial.divisions or 1))


@pytest.mark.parametrize("head", [TEN_SECONDS, LINES, DEGREES])
def test_the_first_step_falls_on_a_line(head: Head) -> None:
    assert head.dial is not None
    line = head.dial.graduation or finest(head)
    numbers = {count for count in range(2, 61) if (Fraction(1, count) / line).denominator == 1}
    asked = set(dial.tasks(head, 1, Chance(3)))
    assert asked == {Task("dial", 1, Divisions(count), position=(1, count)) for count in numbers}


@pytest.mark.parametrize("head", [TEN_SECONDS, LINES, DEGREES])
@pytest.mark.parametrize("level", [2, 3])
def test_later_positions_are_read_exactly_at_level_2_and_not_at_level_3(head: Head, level: int) -> None:
    places = {
        (position, count)
        for count in range(2, 101)
        for position in range(2, count)
        if ((Fraction(position, count) / finest(head)).denominator == 1) == (level == 2)
    }
    asked = {task for seed in range(30) for task in dial.tasks(head, level, Chance(seed))}
    found = {task.position for task in asked}
    assert found <= places
    assert {count for _, count in places} == {task.position[1] for task in asked if task.position}
    assert {(position, count) for position, count in places if count < 8} <= found
    for task in asked:
        assert task.position is not None
        assert task == Task("dial", level, Arc(Angle(Fraction(*task.position))), position=task.position)


@pytest.mark.parametrize(
    ("place", "head", "claim"),
    [
        # 90/7 = 12 6/7 turns: of 4 degrees they leave 3 degrees 25' 42.9", of 100 lines 85.7.
        (Fraction(1, 7), TEN_SECONDS, Claim("dial", 12, reading=parse_angle("3°25'40\""))),
        (Fraction(1, 7), Head(90, (), dial=Dial(divisions=100)), Claim("dial", 12, divisions=Fraction(86))),
        # 80/7 = 11 3/7 turns: of 9 degrees they leave 3.86.
        (Fraction(2, 7), DEGREES, Claim("dial", 11, reading=parse_angle("4°"))),
    ],
)
def test_a_place_is_set_to_the_nearest_reading(place: Fraction, head: Head, claim: Claim) -> None:
    assert dial.dial_claim(place, head) == claim


@pytest.mark.parametrize(
    ("head", "angle"),
    [
        (TEN_SECONDS, parse_angle('5"')),
        (DEGREES, parse_angle("30'")),
        # 72 x 100 lines in a turn of the work.
        (LINES, Angle(Fraction(1, 14_400))),
    ],
)
def test_half_of_the_finest_reading_may_be_lost(head: Head, angle: Angle) -> None:
    assert dial.half_a_reading(head) == Tolerance(angle=angle.turns)
