"""What a batch costs: each item by itself, then all together, before the first is begun."""

from __future__ import annotations

from typing import Any

import pytest

from dividing.indexing.head import TWELVE_GEARS
from dividing.web import costing
from dividing.web.batch_costing import LOADED, answering, check, in_line
from dividing.web.problems import TOO_MUCH_WORK, Problem
from dividing.web.schemas.solve import SOLVE_IN, Question

GEARED = {"change_gears": list(TWELVE_GEARS)}


def question(work: dict[str, Any], **more: Any) -> Question:
    asked: Question = SOLVE_IN.load({"work": work, **more})
    return asked


class TestAnItem:
    @pytest.mark.parametrize("work", [{"divisions": 28}, {"divisions": 360}, {"angle": "15°30'", "count": 9}])
    def test_that_a_circle_serves_costs_no_table(self, work: dict[str, Any]) -> None:
        asked = question(work)
        assert answering(asked) == in_line(asked)
        assert answering(question(work, positions=True)) > in_line(asked)

    @pytest.mark.parametrize(
        "work",
        [
            {"divisions": 127},
            {"angles": ["0", "90"]},
            {"angle": "0.35 rad", "count": 9},
        ],
    )
    def test_that_none_is_sure_to_serve_costs_its_table(self, work: dict[str, Any]) -> None:
        asked = question(work)
        assert answering(asked) == costing.answering(asked) + LOADED > in_line(asked)

    def test_where_plain_indexing_is_not_asked_for_no_circle_is_sure_to_serve(self) -> None:
        asked = question({"divisions": 28}, methods=["compound"])
        assert answering(asked) == costing.answering(asked) + LOADED

    def test_with_gears_to_try_in_blocks_costs_more(self) -> None:
        without, owned = question({"divisions": 383}), question({"divisions": 383}, head=GEARED)
        searched = costing.solving(owned.work, owned.head) + 383 * costing.PER_CUT + LOADED
        assert in_line(owned) == searched > in_line(without)
        # Where a circle serves, no train is looked for in blocks.
        served = question({"divisions": 360}, head=GEARED)
        assert in_line(served) == costing.solving(served.work, served.head) + LOADED


class TestAllTogether:
    def test_up_to_two_seconds_are_given(self) -> None:
        check([])
        check([0.5, 0.5, 1.0])

    @pytest.mark.parametrize(
        ("seconds", "total", "parts"),
        [
            ([1.0, 1.1], "2.1", 2),  # 2.1/2 x 1.2 = 1.26
            ([0.01] * 500, "5.0", 3),  # 5/2 x 1.2 = 3.0, a little less in decimals of two
            ([4.0, 4.0], "8.0", 5),  # 8/2 x 1.2 = 4.8
        ],
    )
    def test_more_is_refused_with_how_to_split_it(self, seconds: list[float], total: str, parts: int) -> None:
        with pytest.raises(Problem) as refusal:
            check(seconds)
        assert refusal.value.kind is TOO_MUCH_WORK
        assert refusal.value.detail == (
            f"This batch would take about {total} seconds of work; 2 are given. Split it into {parts} batches."
        )
