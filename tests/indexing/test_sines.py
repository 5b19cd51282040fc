"""Sines and cosines: known values, the laws they obey, and the floating ones beside them."""

from __future__ import annotations

import math
from decimal import Decimal, localcontext
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from dividing.indexing.sines import cosine, sine

TURNS = some.fractions(min_value=-3, max_value=3, max_denominator=10**6)
CLOSE = Fraction(1, 10**45)


def root(number: int) -> Fraction:
    with localcontext(prec=60):
        return Fraction(Decimal(number).sqrt())


@pytest.mark.parametrize(
    ("degrees", "known"),
    [
        (0, Fraction(0)),
        (15, (root(6) - root(2)) / 4),
        (18, (root(5) - 1) / 4),
        (30, Fraction(1, 2)),
        (45, root(2) / 2),
        (54, (root(5) + 1) / 4),
        (60, root(3) / 2),
        (75, (root(6) + root(2)) / 4),
        (90, Fraction(1)),
        (150, Fraction(1, 2)),
        (180, Fraction(0)),
        (210, Fraction(-1, 2)),
        (270, Fraction(-1)),
        (-30, Fraction(-1, 2)),
        (360, Fraction(0)),
    ],
)
def test_the_sines_of_the_regular_figures_are_their_roots(degrees: int, known: Fraction) -> None:
    assert abs(sine(Fraction(degrees, 360)) - known) < CLOSE
    assert abs(cosine(Fraction(90 - degrees, 360)) - known) < CLOSE


@pytest.mark.parametrize("quarters", range(-6, 7))
def test_what_is_nothing_is_exactly_nothing(quarters: int) -> None:
    assert (sine(Fraction(quarters, 4)) == 0) == (quarters % 2 == 0)
    assert (cosine(Fraction(quarters, 4)) == 0) == (quarters % 2 == 1)


@settings(deadline=None)
@given(TURNS)
def test_the_squares_add_to_one(turns: Fraction) -> None:
    assert abs(sine(turns) ** 2 + cosine(turns) ** 2 - 1) < 4 * CLOSE


@settings(deadline=None)
@given(TURNS, TURNS)
def test_the_sine_of_a_sum_is_made_of_its_parts(first: Fraction, second: Fraction) -> None:
    assert abs(sine(first + second) - sine(first) * cosine(second) - cosine(first) * sine(second)) < 4 * CLOSE


@settings(deadline=None)
@given(TURNS)
def test_the_floating_ones_agree(turns: Fraction) -> None:
    assert float(sine(turns)) == pytest.approx(math.sin(2 * math.pi * turns), abs=1e-13)
    assert float(cosine(turns)) == pytest.approx(math.cos(2 * math.pi * turns), abs=1e-13)
