"""An error against what the drawing allows, the exact boundary included."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.setup import NO_ERROR, Accuracy, Tolerance
from dividing.indexing.tolerances import at_rim, within

MINUTE = Fraction(1, 21600)
SECOND = Fraction(1, 1_296_000)


def off(worst: Fraction) -> Accuracy:
    nothing = Fraction(0)
    return Accuracy(None, worst, nothing, nothing, nothing)


@pytest.mark.parametrize(
    ("worst", "kept"),
    [(MINUTE, True), (MINUTE + SECOND / 10**30, False), (MINUTE - SECOND / 10**30, True), (Fraction(0), True)],
)
def test_an_angle_is_kept_up_to_its_very_boundary(worst: Fraction, kept: bool) -> None:
    assert within(off(worst), Tolerance(angle=MINUTE)) is kept


# A thousandth of a turn at diameter 100 is pi/10 = 0.314159265358979323846264... round the rim.
@pytest.mark.parametrize(
    ("allowed", "kept"),
    [("0.3142", True), ("0.31415926535897932385", True), ("0.31415926535897932384", False), ("0.3141", False)],
)
def test_a_length_at_the_rim_is_kept_up_to_pi_itself(allowed: str, kept: bool) -> None:
    tolerance = Tolerance(at_rim=Fraction(allowed), diameter=Fraction(100))
    assert within(off(Fraction(1, 1000)), tolerance) is kept


def test_what_is_exact_keeps_a_tolerance_of_nothing() -> None:
    assert within(NO_ERROR, Tolerance(at_rim=Fraction(0), diameter=Fraction(100))) is True


@pytest.mark.parametrize(
    "tolerance", [Tolerance(), Tolerance(diameter=Fraction(100)), Tolerance(at_rim=Fraction(1, 100))]
)
def test_nothing_is_said_without_a_tolerance(tolerance: Tolerance) -> None:
    assert within(off(MINUTE), tolerance) is None


def test_an_error_is_shown_at_the_rim_in_the_unit_of_the_diameter() -> None:
    # One second is pi/648000 = 4.848137e-6 radians; at radius 60 that is 0.000290888.
    assert at_rim(off(SECOND), Tolerance(diameter=Fraction(120))) == pytest.approx(0.000290888, rel=1e-5)
    assert at_rim(NO_ERROR, Tolerance(diameter=Fraction(120))) == 0
    assert at_rim(off(SECOND), Tolerance(angle=MINUTE)) is None
