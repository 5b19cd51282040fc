"""A question to be solved: what was left out is as usual, and all that is wrong is told of what can be judged."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from marshmallow import ValidationError

from dividing.indexing.head import Head
from dividing.indexing.setup import Tolerance
from dividing.indexing.work import Divisions
from dividing.web.schemas.solve import SOLVE_IN, Question

WORK = {"work": {"divisions": 28}}
RATIO = "The ratio is a whole number of crank turns, 1 to 10,000."


@pytest.mark.parametrize(
    ("given", "question"),
    [
        (WORK, Question(Divisions(28), Head(), None, None, 5, False)),
        (
            {**WORK, "head": {"ratio": 60}, "every": 5, "limit": Decimal("2.0"), "positions": True},
            Question(Divisions(28, every=5), Head(ratio=60), None, None, 2, True),
        ),
        (
            {**WORK, "methods": ["compound", "plain"], "tolerance": {"angle": "1'"}},
            Question(Divisions(28), Head(), Tolerance(angle=Fraction(1, 21600)), ("compound", "plain"), 5, False),
        ),
    ],
)
def test_what_is_left_out_is_as_usual(given: dict[str, Any], question: Question) -> None:
    assert SOLVE_IN.load(given) == question


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({}, {"work": ["This field is needed."]}),
        (
            {**WORK, "limit": 0, "every": 7, "head": {"ratio": 0}},
            {
                "limit": ["The limit is a number of setups from 1 to 100."],
                "every": ["7 spaces a move would miss divisions: 7 and 28 share the factor 7."],
                "head": {"ratio": [RATIO]},
            },
        ),
        # Of spaces a move and of rows nothing can be said while the work is wrong.
        (
            {"work": {"divisions": 0}, "every": 7, "positions": True},
            {"work": {"divisions": ["Divisions are a whole number from 1 to 1,000,000."]}},
        ),
        # Nor of a part while the head is wrong that it is made on.
        (
            {
                "work": {"part": {"kind": "flats", "sides": 2, "across_flats": 9, "unit": "mm"}},
                "head": {"ratio": 0},
            },
            {"head": {"ratio": [RATIO]}},
        ),
        (
            {"work": {"divisions": 20_001}, "positions": True, "methods": []},
            {
                "positions": [
                    "Positions are given for at most 20,000 cuts; this work has 20,001. Leave them out.",
                ],
                "methods": ["Give a list of one to 6 of: direct, plain, differential, compound, dial, nearest."],
            },
        ),
    ],
)
def test_all_that_is_wrong_is_told_as_far_as_it_can_be_judged(given: dict[str, Any], told: dict[str, Any]) -> None:
    with pytest.raises(ValidationError) as refusal:
        SOLVE_IN.load(given)
    assert refusal.value.messages == told
