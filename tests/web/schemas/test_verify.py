"""A claim with the work that it was made for; all that is wrong is told of what can be judged."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from marshmallow import ValidationError

from dividing.indexing.head import Head
from dividing.indexing.setup import Tolerance
from dividing.indexing.verifying import Claim
from dividing.indexing.work import Divisions
from dividing.web.schemas.verify import VERIFY_IN, Check

WORK = {"work": {"divisions": 28}}
CLAIM = {"claim": {"method": "plain", "turns": 1, "holes": 21, "circle": 49}}
IN_DEGREES = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"graduation": "0°01'"}}
NO_SUCH = ["Divisions are a whole number from 1 to 1,000,000."]


@pytest.mark.parametrize(
    ("more", "check"),
    [
        ({}, Check(Divisions(28), Head(), None, Claim("plain", 1, 21, 49))),
        (
            {"every": 3, "head": {"ratio": 60}, "tolerance": {"angle": "0°00'01\""}},
            Check(
                Divisions(28, every=3),
                Head(ratio=60),
                Tolerance(angle=Fraction(1, 1_296_000)),
                Claim("plain", 1, 21, 49),
            ),
        ),
    ],
)
def test_what_is_left_out_is_as_usual(more: dict[str, Any], check: Check) -> None:
    assert VERIFY_IN.load({**WORK, **CLAIM, **more}) == check


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({}, {"work": ["This field is needed."], "claim": ["This field is needed."]}),
        (
            {"work": {"divisions": 0}, "claim": {"method": "plain", "holes": 3}},
            {
                "work": {"divisions": NO_SUCH},
                "claim": {"circle": ["Say on which circle the spaces are counted."]},
            },
        ),
        # A reading is judged once the head is known and right, and then at once with the rest.
        (
            {**WORK, "every": 28, "head": IN_DEGREES, "claim": {"method": "dial", "reading": "361°"}},
            {
                "every": ["Spaces per move lie between 1 and 27 for 28 divisions."],
                "claim": {"reading": ["A dial's reading lies between 0° and 360°."]},
            },
        ),
        (
            {**WORK, "every": 28, "head": {"ratio": 0}, "claim": {"method": "dial", "reading": "361°"}},
            {
                "every": ["Spaces per move lie between 1 and 27 for 28 divisions."],
                "head": {"ratio": ["The ratio is a whole number of crank turns, 1 to 10,000."]},
            },
        ),
        # Half a claim keeps nothing else from being told.
        (
            {**WORK, "every": 28, "claim": {"method": "plain", "turns": 1, "holes": "9"}},
            {
                "every": ["Spaces per move lie between 1 and 27 for 28 divisions."],
                "claim": {"holes": ["Give a whole number without quotes: 9."]},
            },
        ),
    ],
)
def test_all_that_is_wrong_is_told_as_far_as_it_can_be_judged(given: dict[str, Any], told: dict[str, Any]) -> None:
    with pytest.raises(ValidationError) as refusal:
        VERIFY_IN.load(given)
    assert refusal.value.messages == told
