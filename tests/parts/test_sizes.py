"""Sizes: as many decimals as are worth printing, and units that convert exactly."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.sizes import (
    Size,
    check_range,
    check_word,
    decimals,
    in_millimetres,
    in_unit,
    one_of,
    refused,
    shown,
    snapped,
)
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


@pytest.mark.parametrize(
    ("value", "unit", "places"),
    [(24, "mm", 3), (24, "in", 4), (24, "degrees", 4), (24, "", 0), (Fraction(24), "", 0), (Fraction(1, 3), "", 3)],
)
def test_a_thousandth_of_a_millimetre_and_a_tenth_of_a_thou_are_worth_printing(
    value: int | Fraction, unit: str, places: int
) -> None:
    assert decimals(value, unit) == places
    assert Size("A size", float(value), unit, "as given").places == places


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
    assert snapped(-0.00000000149) == -0.000000001


def test_a_refusal_points_to_its_field() -> None:
    assert told(refused("Give more teeth.", "teeth")) == [(("teeth",), "Give more teeth.")]
    assert told(refused("Give a smaller one.", "angles", 3)) == [(("angles", 3), "Give a smaller one.")]
    assert told(refused("Give the table screw.")) == [((), "Give the table screw.")]


def test_a_word_is_one_of_those_that_are_known() -> None:
    check_word("right", "hand", ("right", "left"))
    check_word("left", "hand", ("right", "left"))
    with pytest.raises(Refused) as refusal:
        check_word("Left", "hand", ("right", "left"))
    assert told(refusal.value) == [(("hand",), 'Give one of "right", "left".')]


@pytest.mark.parametrize("value", [0, -1, 45.001, 180])
def test_an_angle_out_of_its_range_is_told_the_range(value: float) -> None:
    with pytest.raises(Refused) as refusal:
        check_range(value, "pressure_angle", 0, 45, "A pressure angle")
    assert told(refusal.value) == [(("pressure_angle",), "A pressure angle is above 0° and at most 45°.")]


@pytest.mark.parametrize("value", [0.001, Fraction(41, 2), 45])
def test_an_angle_within_its_range_passes(value: float) -> None:
    check_range(value, "pressure_angle", 0, 45, "A pressure angle")


def test_of_several_ways_to_say_it_one_is_named() -> None:
    assert one_of(lead=None, helix_angle=0) == "helix_angle"


ONE, BOTH = "Give module, pitch or outside.", "Give module, pitch or outside, and only one of them."


@pytest.mark.parametrize(
    ("given", "path", "sentence"),
    [
        ({"lead": None, "helix_angle": None}, (), "Give lead or helix_angle."),
        ({"lead": 1, "helix_angle": 2}, ("helix_angle",), "Give lead or helix_angle, and only one of them."),
        ({"module": None, "pitch": None, "outside": None}, (), ONE),
        ({"module": None, "pitch": 8, "outside": 3}, ("outside",), BOTH),
        ({"module": 3, "pitch": 8, "outside": 3}, ("pitch",), BOTH),
    ],
)
def test_of_several_ways_to_say_it_exactly_one_is_wanted(
    given: dict[str, int | None], path: tuple[str, ...], sentence: str
) -> None:
    with pytest.raises(Refused) as refusal:
        one_of(**given)
    assert told(refusal.value) == [(path, sentence)]
