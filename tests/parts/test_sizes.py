"""Sizes: as many decimals as are worth printing, and units that convert exactly."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.sizes import Size, in_millimetres, in_unit, one_of, shown, snapped
from tests.parts.figures import told


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (24, "mm", "24.000 mm"),
        (0.26964, "in", "0.2696 in"),
        (77.86954, "degrees", "77.8695°"),
        (28, "", "28"),
        (26.8328, "", "26.833"),
        (-0.5, "mm", "-0.500 mm"),
    ],
)
def test_a_size_reads_as_the_shop_writes_it(value: float, unit: str, text: str) -> None:
    assert shown(value, unit) == text
    assert Size("A size", value, unit, "as given").text == text


def test_an_error_keeps_the_decimals_that_show_it() -> None:
    assert Size("Error", 0.0043, "mm", "as given", digits=5).text == "0.00430 mm"


@pytest.mark.parametrize("length", [Fraction(1, 64), Fraction(1, 4), Fraction(10), Fraction(355, 113)])
def test_inches_to_millimetres_and_back_lose_nothing(length: Fraction) -> None:
    assert in_unit(in_millimetres(length, "in"), "in") == length
    assert in_millimetres(length, "in") == length * 254 / 10
    assert in_millimetres(length, "mm") == in_unit(length, "mm") == length


def test_dust_of_a_sine_is_wiped_off() -> None:
    assert str(snapped(-1e-17)) == "0.0"
    assert snapped(12.3456789) == 12.3456789


def test_of_several_ways_to_say_it_exactly_one_is_wanted() -> None:
    assert one_of(lead=None, helix_angle=0) == "helix_angle"
    for given, path, sentence in (
        ({"lead": None, "helix_angle": None}, (), "Give lead or helix_angle."),
        ({"lead": 1, "helix_angle": 2}, ("helix_angle",), "Give lead or helix_angle, and only one of them."),
    ):
        with pytest.raises(Refused) as refusal:
            one_of(**given)
        assert told(refusal.value) == [(path, sentence)]
