"""Which plate to mount: every number for which it matters is asked, and none besides."""

from __future__ import annotations

import pytest

from dividing.indexing.head import Head
from dividing.indexing.practice import Task
from dividing.indexing.practice.chance import Chance
from dividing.indexing.practice.kinds import which_plate
from dividing.indexing.work import Divisions
from tests.indexing.practice.by_second import leaves_a_part, numbers_of_none, plain_numbers


@pytest.mark.parametrize("level", [1, 2, 3])
def test_every_number_that_leaves_a_part_of_a_turn_may_be_asked(level: int) -> None:
    numbers = {count for count in plain_numbers(Head(), level) if leaves_a_part(Head(), count)}
    asked = set(which_plate.tasks(Head(), level, Chance(1)))
    assert asked == {Task("which_plate", level, Divisions(count)) for count in numbers}


@pytest.mark.parametrize(("level", "most"), [(2, 200), (3, 1000)])
def test_every_number_that_no_circle_serves_may_be_asked_as_one_that_has_none(level: int, most: int) -> None:
    numbers = numbers_of_none(Head(), most)
    asked = set(which_plate.nones(Head(), level, Chance(4)))
    assert asked == {Task("which_plate", level, Divisions(count), none=True) for count in numbers}
