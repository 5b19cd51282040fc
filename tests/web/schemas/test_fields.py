"""Fields are read strictly, exactly and in one go."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from marshmallow import ValidationError

from dividing.indexing.angles import Angle
from dividing.web import json_in
from dividing.web.schemas import fields
from dividing.web.schemas.fields import AngleIn, AnglesIn, Length, ListsOfWholes, Whole, Wholes, YesNo, whole


@pytest.mark.parametrize(
    ("value", "number"),
    [
        (73, 73),
        (-5, -5),
        (Decimal("73.0"), 73),
        (Decimal("7.3E+1"), 73),
        (Decimal("0.0"), 0),
        (Decimal("73.5"), None),
        (Decimal("1E+30"), None),
        (Decimal("1E-30"), None),
        (json_in.OUT_OF_RANGE, None),
        ("73", None),
        (True, None),
        (None, None),
        ([73], None),
        (73.0, None),
    ],
)
def test_a_whole_number_is_one_by_its_text(value: Any, number: int | None) -> None:
    assert whole(value) == number


PARTED = "Give a whole number in figures alone, without a mark between thousands and without decimals."


@pytest.mark.parametrize(
    ("value", "sentence"),
    [
        ("73", "Give a whole number without quotes: 73."),
        (" -5 ", "Give a whole number without quotes: -5."),
        ("007", "Give a whole number, such as 40."),
        ("--5", "Give a whole number, such as 40."),
        ("73.0", "Give a whole number, such as 40."),
        *((f"1{mark}000", PARTED) for mark in " ,.'\u2019\u00a0\u202f"),
        ("-12.345.678", PARTED),
        ("1,00", "Give a whole number, such as 40."),
        ("1000,000", "Give a whole number, such as 40."),
        ("\u0667\u0663", "Give a whole number, such as 40."),
        ("1" * 13, "Give a whole number, such as 40."),
        (True, "Give a whole number, such as 40."),
        (Decimal("73.5"), "Give a whole number without decimals, and no longer than 24 digits."),
    ],
)
def test_quotes_are_spoken_of_only_where_they_are_all_that_is_wrong(value: Any, sentence: str) -> None:
    with pytest.raises(ValidationError) as refusal:
        Whole("A number.").deserialize(value)
    assert refusal.value.messages == [sentence]


@pytest.mark.parametrize(
    ("value", "sentence"),
    [
        ("true", "Give true or false, without quotes."),
        ("false", "Give true or false, without quotes."),
        ("yes", "Give true or false."),
        ("True", "Give true or false."),
        (1, "Give true or false."),
        (0, "Give true or false."),
        ([], "Give true or false."),
    ],
)
def test_true_and_false_are_no_other_words_and_no_figures(value: Any, sentence: str) -> None:
    with pytest.raises(ValidationError) as refusal:
        YesNo("Whether.").deserialize(value)
    assert refusal.value.messages == [sentence]


@given(st.integers(-(10**20), 10**20), st.integers(0, 3))
def test_a_whole_number_may_carry_noughts(number: int, noughts: int) -> None:
    text = f"{number}.{'0' * noughts}" if noughts else str(number)
    assert whole(json_in.read(text.encode())) == number


LENGTHS: list[tuple[Any, Fraction | str]] = [
    (1, Fraction(1)),
    (Decimal("0.02"), Fraction(1, 50)),
    (1_000_000, Fraction(1_000_000)),
    (0, "Give a length above 0 and at most 1,000,000."),
    (-1, "Give a length above 0 and at most 1,000,000."),
    (1_000_001, "Give a length above 0 and at most 1,000,000."),
    ("1", "Give a number without quotes: 1."),
    (" -12.50 ", "Give a number without quotes: -12.50."),
    ("", "Give a number, such as 12.5."),
    ("12,5", "Give a number, such as 12.5."),
    ("1.5 mm", "Give a number, such as 12.5."),
    ("1.", "Give a number, such as 12.5."),
    ("\u0661", "Give a number, such as 12.5."),
    ("1" * 13, "Give a number, such as 12.5."),
    (True, "Give a number, such as 12.5."),
    (None, "Give a value here, or leave the field out."),
    (
        json_in.OUT_OF_RANGE,
        'Stopped at character 1 of "1E+999999": expected a number of at most 64 digits, with an exponent of at most 9.',
    ),
]


@pytest.mark.parametrize(("value", "expected"), LENGTHS)
def test_a_length_is_an_exact_number_above_nought(value: Any, expected: Fraction | str) -> None:
    field = Length("A length.")
    if isinstance(expected, Fraction):
        assert field.deserialize(value) == expected
        return
    with pytest.raises(ValidationError) as refusal:
        field.deserialize(value)
    assert refusal.value.messages == [expected]


@pytest.mark.parametrize("value", [45, Decimal("45.0"), "45", "45°", "1/8 turn", "50 gon"])
def test_an_angle_comes_in_any_notation(value: Any) -> None:
    assert AngleIn("An angle.").deserialize(value) == Angle(Fraction(1, 8))


def test_each_wrong_angle_of_a_list_is_told_by_its_place() -> None:
    with pytest.raises(ValidationError) as refusal:
        AnglesIn("Angles.", most=5).deserialize(["1", "x", 3, None])
    assert set(refusal.value.messages) == {1, 3}


def test_a_list_too_long_is_not_looked_at() -> None:
    with pytest.raises(ValidationError) as refusal:
        AnglesIn("Angles.", most=2).deserialize(["x", "x", "x"])
    assert refusal.value.messages == ["Give at most 2 angles; these are 3."]


WHOLES = Wholes("Circles.", most=3, what="circles", json={})
LISTS: list[tuple[Any, Any]] = [
    ([], ()),
    ([24], (24,)),
    ([24, Decimal("30.0")], (24, 30)),
    ([1, "2", True], {1: ["Give a whole number without quotes: 2."], 2: ["Give a whole number, such as 40."]}),
    ([1, 2, 3, 4], ["Give at most 3 circles; these are 4."]),
    ("24", ["Give a list of circles, such as [24, 30]."]),
    ({"a": 1}, ["Give a list of circles, such as [24, 30]."]),
]


@pytest.mark.parametrize(("value", "expected"), LISTS)
def test_a_list_of_whole_numbers_is_looked_at_as_one(value: Any, expected: Any) -> None:
    if isinstance(expected, tuple):
        assert WHOLES.deserialize(value) == expected
        return
    with pytest.raises(ValidationError) as refusal:
        WHOLES.deserialize(value)
    assert refusal.value.messages == expected


def test_a_long_list_costs_no_call_for_each_number(monkeypatch: pytest.MonkeyPatch) -> None:
    calls = []
    monkeypatch.setattr(fields, "whole", calls.append)
    field = ListsOfWholes("Plates.", most=10_000, what="circles", json={})
    assert len(field.deserialize([list(range(10_000))] * 3)) == 3
    assert not calls
