"""A sheet of exercises on the wire, and what was answered to it."""

from __future__ import annotations

from typing import Any

import pytest
from marshmallow import ValidationError

from dividing.indexing.head import Head
from dividing.indexing.practice import Wanted
from dividing.web.schemas.practice import MARK_IN, PRACTICE_IN


@pytest.mark.parametrize(
    ("given", "wanted"),
    [
        # Twelve exercises of the first level, of all kinds that the head can do.
        ({"seed": 7}, Wanted(7, 12, Head(), None, 1, 1)),
        (
            {"seed": 0, "count": 3, "level": 3, "kinds": ["dial", "plain"], "head": {"ratio": 60}, "generator": 1},
            Wanted(0, 3, Head(ratio=60), ("dial", "plain"), 3, 1),
        ),
    ],
)
def test_a_sheet_is_asked_for_by_its_seed(given: dict[str, Any], wanted: Wanted) -> None:
    assert PRACTICE_IN.load(given) == wanted
    asked = MARK_IN.load({**given, "claims": []})
    assert (asked.wanted, asked.answers) == (wanted, {})


def test_answers_are_known_by_the_number_of_their_exercise() -> None:
    claims = [{"number": 3, "none": True}, {"number": 1, "claim": {"turns": 2}, "slip": None}]
    answers = MARK_IN.load({"seed": 7, "claims": claims}).answers
    assert list(answers) == [3, 1]
    assert (answers[3]["none"], answers[3]["claim"]) == (True, None)
    assert (answers[1]["none"], answers[1]["claim"]["turns"], answers[1]["claim"]["holes"]) == (False, 2, None)


@pytest.mark.parametrize(
    ("given", "told"),
    [
        # Which exercises there are cannot be told while their count is wrong.
        (
            {"seed": 7, "count": "20", "claims": [{"number": 13}]},
            {"count": ["Give a whole number without quotes: 20."]},
        ),
        (
            {"seed": 7, "count": 3, "level": 0, "claims": [{"number": 3}, {"number": 4}]},
            {
                "level": ["The level is 1, 2 or 3."],
                "claims": {1: {"number": ["The sheet has exercises 1 to 3."]}},
            },
        ),
    ],
)
def test_answers_are_held_against_the_sheet(given: dict[str, Any], told: dict[str, Any]) -> None:
    with pytest.raises(ValidationError) as refusal:
        MARK_IN.load(given)
    assert refusal.value.messages == told
