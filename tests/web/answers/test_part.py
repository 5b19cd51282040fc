"""A size of the part as it goes out: to as many decimals as are worth printing, its text beside it."""

from __future__ import annotations

from math import copysign

import pytest

from dividing.parts import Size
from dividing.parts.sizes import MATHEMATICS
from dividing.web.answers.part import size_out


@pytest.mark.parametrize(
    ("value", "unit", "digits", "told", "text"),
    [
        # 24 across flats: 24 x 2 / sqrt 3 = 27.71281 across corners.
        (27.71281, "mm", None, 27.713, "27.713 mm"),
        (27.71281, "in", None, 27.7128, "27.7128 in"),
        (77.869541, "degrees", None, 77.8695, "77.8695°"),
        (4, "", None, 4.0, "4"),
        (26.83, "", None, 26.83, "26.830"),
        (0.0000123, "mm", 6, 0.000012, "0.000012 mm"),
    ],
)
def test_a_size_is_rounded_to_what_is_worth_printing(
    value: float, unit: str, digits: int | None, told: float, text: str
) -> None:
    out = size_out(Size("Across corners", value, unit, MATHEMATICS, "Sharp corners.", digits))
    assert out == {
        "name": "Across corners",
        "value": told,
        "unit": unit,
        "source": "general mathematics",
        "note": "Sharp corners.",
        "text": text,
    }


def test_a_size_that_rounds_to_nothing_is_not_minus_nought() -> None:
    assert copysign(1, size_out(Size("x", -0.0001, "mm", MATHEMATICS))["value"]) == 1
