"""A range is costed once its gaps are known, before they are solved or anything is added."""

from __future__ import annotations

from typing import Any

import pytest

from dividing.indexing.head import SET_ONE, TWELVE_GEARS, Head
from dividing.web.coverage_costing import additions, check, nearest
from dividing.web.problems import TOO_MUCH_WORK, Problem
from dividing.web.schemas.coverage import COVERAGE_IN, Range

GEARED = Head(change_gears=TWELVE_GEARS)
GAPS = tuple(range(1_001, 1_101))


def asked(**more: Any) -> Range:
    question: Range = COVERAGE_IN.load({"from": 1, "to": 10_000, **more})
    return question


class TestNearest:
    def test_twice_the_gaps_cost_twice(self) -> None:
        assert nearest(GAPS * 2, Head()) == pytest.approx(2 * nearest(GAPS, Head()))
        assert nearest((), GEARED) == 0

    def test_gears_and_pairs_of_circles_cost_more(self) -> None:
        one = Head(plates=((49,),))
        assert nearest(GAPS, one) < nearest(GAPS, Head()) < nearest(GAPS, GEARED)

    def test_larger_numbers_leave_fewer_trains_to_try(self) -> None:
        assert nearest((9_973,), GEARED) < nearest((997,), GEARED)


class TestAdditions:
    @pytest.mark.parametrize(("gaps", "head"), [((), GEARED), (GAPS, Head())])
    def test_without_gaps_or_gears_they_cost_next_to_nothing(self, gaps: tuple[int, ...], head: Head) -> None:
        assert additions(gaps, head) < 0.001

    def test_more_gears_circles_or_gaps_never_cost_less(self) -> None:
        fewer = Head(change_gears=TWELVE_GEARS[:6])
        smaller = Head(plates=SET_ONE[:1], change_gears=TWELVE_GEARS)
        assert additions(GAPS, fewer) < additions(GAPS, GEARED)
        assert additions(GAPS, smaller) < additions(GAPS, GEARED)
        assert additions(GAPS[:10], GEARED) < additions(GAPS, GEARED)

    def test_at_a_high_ratio_the_gaps_are_held_against_what_is_gathered(self) -> None:
        high = Head(ratio=9_000, change_gears=TWELVE_GEARS)
        assert additions(GAPS * 10, high) > 2 * additions(GAPS * 10, GEARED)


class TestRefusals:
    def test_up_to_two_seconds_are_given(self) -> None:
        check(asked(), GAPS)
        check(asked(tolerance={"angle": "1'"}), GAPS)

    def test_a_tolerance_is_what_costs(self) -> None:
        question = asked(tolerance={"angle": "1'"}, additions=False)
        seconds = nearest(GAPS * 100, question.head)
        with pytest.raises(Problem) as caught:
            check(question, GAPS * 100)
        assert caught.value.kind is TOO_MUCH_WORK
        assert caught.value.detail == (
            f"This would take about {seconds:.1f} seconds of work; 2 are given. "
            "Split the range into 3 parts, or leave the tolerance out."
        )
        check(asked(additions=False), GAPS * 100)

    def test_additions_are_what_costs(self) -> None:
        head = {"ratio": 9_999, "change_gears": list(range(101, 124)), "plates": [list(range(371, 401))]}
        question = asked(head=head)
        seconds = additions(GAPS * 90, question.head)
        with pytest.raises(Problem) as caught:
            check(question, GAPS * 90)
        assert caught.value.detail == (
            f"This would take about {seconds:.1f} seconds of work; 2 are given. "
            "Set additions to false, or ask for fewer numbers."
        )
        check(asked(head=head, additions=False), GAPS * 90)
