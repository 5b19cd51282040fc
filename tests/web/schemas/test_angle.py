"""An angle, or the crank move that makes it, with the lengths asked for."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from marshmallow import ValidationError

from dividing.indexing.angles import Angle
from dividing.indexing.head import Head
from dividing.web.schemas.angle import ANGLE_IN, AngleQuestion


@pytest.mark.parametrize(
    ("given", "question"),
    [
        ({"angle": "22.5"}, AngleQuestion(Angle(Fraction(1, 16)), Head(), None, None)),
        # (4 + 3/18)/40 = 25/240 of a turn.
        (
            {"crank": {"turns": 4, "holes": 3, "circle": 18}},
            AngleQuestion(Angle(Fraction(25, 240)), Head(), None, None),
        ),
        # Backwards, and on another head: -(2 + 1/20)/60.
        (
            {"crank": {"turns": -2, "holes": -1, "circle": 20}, "head": {"ratio": 60}},
            AngleQuestion(Angle(Fraction(-41, 1200)), Head(ratio=60), None, None),
        ),
        ({"crank": {"turns": 40_000}}, AngleQuestion(Angle(Fraction(1000)), Head(), None, None)),
        (
            {"angle": 0, "diameter": 100, "sine_bar": Decimal("2.5")},
            AngleQuestion(Angle(Fraction(0)), Head(), Fraction(100), Fraction(5, 2)),
        ),
    ],
)
def test_a_question_is_the_angle_that_it_asks_about(given: dict[str, Any], question: AngleQuestion) -> None:
    assert ANGLE_IN.load(given) == question


@pytest.mark.parametrize(
    ("crank", "told"),
    [
        ({"turns": -40_001}, {"turns": ["The move may turn the spindle 1,000 times at most."]}),
        ({"turns": 0, "holes": 1}, {"circle": ["Name the circle on which the spaces are counted."]}),
        ({"turns": 0, "holes": 1, "circle": 401}, {"circle": ["A circle has 2 to 400 holes."]}),
        # Twelve figures are looked at and found too many turns; the thirteenth is one figure too many.
        (
            {"turns": 999_999_999_999, "holes": 999_999_999_999, "circle": 20},
            {"turns": ["The move may turn the spindle 1,000 times at most."]},
        ),
        (
            {"turns": 1_000_000_000_000, "holes": -1_000_000_000_000, "circle": 20},
            {"turns": ["Give at most 12 figures."], "holes": ["Give at most 12 figures."]},
        ),
    ],
)
def test_a_move_that_is_none_is_refused_where_it_is_wrong(crank: dict[str, Any], told: dict[str, Any]) -> None:
    with pytest.raises(ValidationError) as refusal:
        ANGLE_IN.load({"crank": crank})
    assert refusal.value.messages == {"crank": told}
