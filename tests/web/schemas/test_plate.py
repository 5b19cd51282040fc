"""A plate on the wire: by its holes or by the divisions that it is for."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from marshmallow import ValidationError

from dividing.indexing.head import Head
from dividing.web.schemas.plate import PLATE_IN, PlateAsked


def asked(**given: Any) -> PlateAsked:
    nothing: dict[str, Any] = {"divisions": None, "head": Head(), "circles": 2, "circle": None, "hole": None}
    return PlateAsked(**{**nothing, "unit": None, "placing": {}, **given})


@pytest.mark.parametrize(
    ("given", "plate"),
    [
        ({"holes": 127}, asked(holes=127)),
        ({"holes": Decimal("127.0"), "circles": 1}, asked(holes=127, circles=1)),
        ({"holes": 51, "divisions": None}, asked(holes=51)),
        # 40/102 = 20/51, and at 60:1 60/102 = 10/17.
        ({"divisions": 102}, asked(holes=51, divisions=102)),
        ({"divisions": 102, "head": {"ratio": 60}}, asked(holes=17, divisions=102, head=Head(ratio=60))),
        (
            {"holes": 2, "circle_diameter": 150, "hole_diameter": Decimal("0.1"), "unit": "in"},
            asked(holes=2, circle=Fraction(150), hole=Fraction(1, 10), unit="in"),
        ),
        (
            {"holes": 400, "circle_diameter": 150, "unit": "mm", "start": "22°30'", "sense": "clockwise", "x": -1},
            asked(
                holes=400,
                circle=Fraction(150),
                unit="mm",
                placing={"start": Fraction(45, 2), "sense": "clockwise", "x": Fraction(-1)},
            ),
        ),
    ],
)
def test_its_holes_are_counted(given: dict[str, Any], plate: PlateAsked) -> None:
    assert PLATE_IN.load(given) == plate


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({}, {"_schema": ["Give exactly one of holes and divisions."]}),
        (
            {"divisions": 20, "circles": 0, "zero": "6 o'clock", "y": 1},
            {
                "divisions": ["No plate is needed for 20 divisions: a move is 2 whole turns of the crank."],
                "circles": ["Give 1 or 2: how many circles of the head a hole may take."],
                "zero": ["Give one of: 3 o'clock, 12 o'clock."],
            },
        ),
        # What divisions need cannot be told while their head is wrong.
        (
            {"divisions": 20, "head": {"ratio": 0}},
            {"head": {"ratio": ["The ratio is a whole number of crank turns, 1 to 10,000."]}},
        ),
        (
            {"holes": 401, "divisions": 20},
            {
                "_schema": ["Give exactly one of holes and divisions."],
                "holes": ["A circle has 2 to 400 holes, not 401."],
            },
        ),
        ({"holes": None}, {"_schema": ["Give exactly one of holes and divisions."]}),
        ({"holes": 51, "unit": None}, {"unit": ["Give a value here, or leave the field out."]}),
        (
            {"holes": 51, "hole_diameter": 0, "unit": "ft"},
            {
                "hole_diameter": ["Give a length above 0 and at most 1,000,000."],
                "unit": ["Give one of: mm, in."],
            },
        ),
    ],
)
def test_all_that_is_wrong_is_told(given: dict[str, Any], told: dict[str, Any]) -> None:
    with pytest.raises(ValidationError) as refusal:
        PLATE_IN.load(given)
    assert refusal.value.messages == told
