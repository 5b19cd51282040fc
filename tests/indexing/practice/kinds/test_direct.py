"""Direct indexing: divisions and angles that the plate on the spindle has, and such as it has not."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import Head
from dividing.indexing.practice import Task
from dividing.indexing.practice.chance import Chance
from dividing.indexing.practice.kinds import direct
from dividing.indexing.work import Arc, Divisions
from tests.second.holes import direct_settings

TWO = Head(direct_circles=(24, 30))


def turns(level: int, *texts: str, none: bool = False) -> set[Task]:
    """Exercises that turn the work through an angle."""
    return {Task("direct", level, Arc(parse_angle(text)), text, none=none) for text in texts}


def divisions(level: int, *counts: int, none: bool = False) -> set[Task]:
    """Exercises that divide the work."""
    return {Task("direct", level, Divisions(count), none=none) for count in counts}


def degrees(*, served: bool) -> list[str]:
    """Whole degrees that a hole of either circle serves, or those that none does."""
    return [f"{angle}°" for angle in range(1, 181) if bool(direct_settings(Fraction(angle, 360), (24, 30))) == served]


@pytest.mark.parametrize("level", [1, 2, 3])
def test_divisions_and_angles_of_the_direct_plate_are_asked(level: int) -> None:
    counts = divisions(level, 2, 3, 4, 5, 6, 8, 10, 12, 15, 24, 30)
    asked = list(direct.tasks(TWO, level, Chance(2)))
    assert set(asked) == counts | turns(level, *degrees(served=True))
    first = [isinstance(task.work, Divisions) for task in asked]
    assert first in (sorted(first), sorted(first, reverse=True))
    assert first[0] or level > 1


def test_divisions_come_first_on_one_in_three_of_the_later_sheets() -> None:
    first = [next(direct.tasks(TWO, 2, Chance(seed))).work for seed in range(900)]
    assert 265 < sum(isinstance(work, Divisions) for work in first) < 335


def without(level: int) -> tuple[set[Task], set[Task]]:
    """Divisions and angles that neither circle has; at level 3 those that share a factor with one, and those halfway
    between two holes of 24, 15 degrees apart (halfway on 30 are whole degrees)."""
    counts = [count for count in range(2, 61) if not direct_settings(Fraction(1, count), (24, 30))]
    if level == 2:
        return divisions(2, *counts, none=True), turns(2, *degrees(served=False), none=True)
    near = [count for count in counts if any(count % factor == 0 for factor in (2, 3, 5))]
    halfway = ("7°30'", "22°30'", "37°30'", "52°30'", "67°30'", "82°30'")
    return divisions(3, *near, none=True), turns(3, *halfway, none=True)


@pytest.mark.parametrize("level", [2, 3])
def test_what_the_direct_plate_does_not_have_is_asked_angles_first_on_half_of_the_sheets(level: int) -> None:
    counts, angles = without(level)
    with_angles = 0
    for seed in range(200):
        asked = list(direct.nones(TWO, level, Chance(seed)))
        of_angles, others = asked[: -len(counts)], asked[-len(counts) :]
        assert set(others) == counts
        assert set(of_angles) in (set(), angles)
        with_angles += bool(of_angles)
    assert 85 < with_angles < 115


def test_halves_are_not_on_an_odd_circle() -> None:
    asked = set(direct.nones(Head(direct_circles=(15,)), 2, Chance(1)))
    assert divisions(2, 2, 4, 6, none=True) <= asked
    assert not divisions(2, 3, 5, 15, none=True) & asked
