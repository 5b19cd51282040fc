"""Figures as a person writes them."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.wording.figures import angle_text, counted, mixed, seconds_text, turns_and_spaces

SECOND = Fraction(1, 1_296_000)


@pytest.mark.parametrize(
    ("numerator", "denominator", "written"),
    [(40, 28, "1 3/7"), (3, 7, "3/7"), (-10, 18, "-5/9"), (-41, 9, "-4 5/9"), (80, 40, "2"), (0, 5, "0")],
)
def test_a_fraction_has_its_whole_part_in_front(numerator: int, denominator: int, written: str) -> None:
    assert mixed(numerator, denominator) == written


@pytest.mark.parametrize(
    ("turns", "holes", "said"),
    [
        (1, 21, "1 turn and 21 spaces"),
        (2, 1, "2 turns and 1 space"),
        (0, 12, "12 spaces"),
        (5, 0, "5 turns"),
        (0, 0, "0 turns"),
    ],
)
def test_a_move_is_said_in_turns_and_spaces(turns: int, holes: int, said: str) -> None:
    assert turns_and_spaces(turns, holes) == said


@pytest.mark.parametrize(("number", "said"), [(0, "0 idlers"), (1, "1 idler"), (2, "2 idlers")])
def test_one_is_no_plural(number: int, said: str) -> None:
    assert counted(number, "idler") == said


@pytest.mark.parametrize(
    ("turns", "written"),
    [
        (Fraction(1, 4), "90°"),
        (Fraction(1, 16), "22°30'"),
        (Fraction(1, 7), "51°25'42.86\""),
        (30 * SECOND, "0°00'30.00\""),
        (Fraction(0), "0°"),
    ],
)
def test_an_angle_says_no_empty_minutes(turns: Fraction, written: str) -> None:
    assert angle_text(turns) == written


@pytest.mark.parametrize(
    ("turns", "written"),
    [
        (SECOND / 3, '0.33"'),
        (-SECOND * 12, '12.00"'),
        (SECOND / 1000, 'less than 0.01"'),
        (SECOND * 49 / 10_000, 'less than 0.01"'),
        (SECOND * 51 / 10_000, '0.01"'),
        (SECOND * 3599, '3599.00"'),
        (SECOND * 3600, "1°00'00.00\""),
        (-SECOND * 5400, "1°30'00.00\""),
    ],
)
def test_an_error_is_told_by_its_size(turns: Fraction, written: str) -> None:
    assert seconds_text(turns) == written
