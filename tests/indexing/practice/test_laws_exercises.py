"""Every exercise of a thousand seeds, on many heads and at every level, solved by the second method."""

from __future__ import annotations

from collections import Counter

import pytest

from dividing.indexing.practice import KIND_NAMES, Exercise
from tests.indexing.practice.by_second import check
from tests.indexing.practice.classes import exercises

SEEDS = 1000
EACH = 3


@pytest.mark.parametrize("hundred", range(0, SEEDS, 100))
def test_every_exercise_is_solved_by_trying_every_hole_and_turning_the_head(hundred: int) -> None:
    for head, exercise in exercises(range(hundred, hundred + 100), EACH):
        check(exercise, head)


def many(seeds: range) -> list[Exercise]:
    return [exercise for _, exercise in exercises(seeds, 9)]


def test_each_kind_is_among_them_often_enough_to_count() -> None:
    kinds = Counter(exercise.task.kind for exercise in many(range(160)))
    assert set(kinds) == set(KIND_NAMES)
    assert min(kinds.values()) >= 40, kinds


def test_no_answer_is_meant_where_the_question_leaves_it_open_and_nowhere_else() -> None:
    asked = many(range(160))
    open_ones = [exercise for exercise in asked if exercise.may_be_none]
    none = [exercise for exercise in open_ones if exercise.task.none]
    assert 0.1 < len(none) / len(open_ones) < 0.4
    for exercise in asked:
        assert (exercise.key.claim is None) == exercise.task.none
        assert exercise.may_be_none == exercise.question.endswith(" If nothing serves, say so.")
        assert not exercise.task.none or exercise.may_be_none
        assert bool(exercise.key.reason) == exercise.task.none
