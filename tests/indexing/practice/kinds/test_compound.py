"""Compound indexing: every number that two circles make and one does not."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.head import Head
from dividing.indexing.practice import Task
from dividing.indexing.practice.chance import Chance
from dividing.indexing.practice.kinds import compound
from dividing.indexing.work import Divisions
from tests.indexing.practice.by_second import hard_numbers, two_circles
from tests.indexing.practice.classes import HEADS


@pytest.mark.parametrize("head", [Head(), HEADS[3]])
@pytest.mark.parametrize(("level", "most"), [(1, 100), (2, 200), (3, 400)])
def test_every_number_that_two_circles_make_may_be_asked(head: Head, level: int, most: int) -> None:
    plates = head.plates if level > 1 else (head.plates[head.mounted_plate - 1],)
    table = two_circles(plates, head.stop_circles)
    made = {count for count in hard_numbers(head, most) if table.exact(Fraction(head.ratio, count))}
    tasks = set(compound.tasks(head, level, Chance(1)))
    assert tasks == {Task("compound", level, Divisions(count, fixed=True)) for count in made}
    assert all(compound.key(task, head) for task in tasks)
