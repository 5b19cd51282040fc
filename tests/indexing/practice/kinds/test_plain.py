"""Plain indexing: every number of its level is asked, and none besides."""

from __future__ import annotations

import pytest

from dividing.indexing.head import Head
from dividing.indexing.practice import Task
from dividing.indexing.practice.chance import Chance
from dividing.indexing.practice.kinds import plain
from dividing.indexing.work import Divisions
from tests.indexing.practice.by_second import numbers_of_none, plain_numbers
from tests.indexing.practice.classes import HEADS


@pytest.mark.parametrize("head", [Head(), HEADS[2]])
@pytest.mark.parametrize("level", [1, 2, 3])
def test_every_number_of_the_level_may_be_asked(head: Head, level: int) -> None:
    numbers = plain_numbers(head, level)
    assert set(plain.tasks(head, level, Chance(1))) == {Task("plain", level, Divisions(count)) for count in numbers}


@pytest.mark.parametrize(("level", "most"), [(2, 200), (3, 1000)])
def test_every_number_that_no_circle_serves_may_be_asked_as_one_that_has_none(level: int, most: int) -> None:
    numbers = numbers_of_none(Head(), most)
    asked = set(plain.nones(Head(), level, Chance(4)))
    assert asked == {Task("plain", level, Divisions(count), none=True) for count in numbers}
