"""A sheet is costed before its first exercise is drawn: so much for each exercise, and for each answer to be marked."""

from __future__ import annotations

import pytest

from dividing.indexing.practice import Wanted
from dividing.web import costing
from dividing.web.practice_costing import check
from dividing.web.problems import TOO_MUCH_WORK, Problem


def takes(monkeypatch: pytest.MonkeyPatch, seconds: float) -> None:
    """A search takes so long on whatever head."""
    monkeypatch.setattr(costing, "solving", lambda *_: seconds)


# An exercise costs 0.012 s and one search, an answer 2.2 searches; 2 s are given.
@pytest.mark.parametrize(
    ("seconds", "count", "answers"),
    [
        (0.000, 60, 60),  # 60 x 0.012 = 0.72
        (0.020, 60, 0),  # 60 x 0.032 = 1.92
        (0.100, 17, 0),  # 17 x 0.112 = 1.904
        (0.100, 12, 2),  # 12 x 0.112 + 2 x 0.22 = 1.784
    ],
)
def test_what_takes_less_than_is_given_is_made(
    monkeypatch: pytest.MonkeyPatch, seconds: float, count: int, answers: int
) -> None:
    takes(monkeypatch, seconds)
    check(Wanted(seed=1, count=count), answers)


@pytest.mark.parametrize(
    ("seconds", "count", "answers", "told"),
    [
        (0.022, 60, 0, "2.0"),  # 60 x 0.034 = 2.04
        (0.100, 18, 0, "2.0"),  # 18 x 0.112 = 2.016
        (0.100, 12, 12, "4.0"),  # 12 x 0.112 + 12 x 0.22 = 3.984
        (3.000, 1, 0, "3.0"),
    ],
)
def test_what_takes_more_is_refused_with_how_to_split_it(
    monkeypatch: pytest.MonkeyPatch, seconds: float, count: int, answers: int, told: str
) -> None:
    takes(monkeypatch, seconds)
    with pytest.raises(Problem) as refusal:
        check(Wanted(seed=1, count=count), answers)
    assert refusal.value.kind is TOO_MUCH_WORK
    assert refusal.value.detail == (
        f"This sheet would take about {told} seconds of work; 2 are given. "
        "Ask for fewer exercises, or give the head fewer circles and gears."
    )
