"""Angular errors on the part: arcs on the rim and on the pitch circle, whatever the unit."""

from __future__ import annotations

from fractions import Fraction
from math import hypot, pi, radians, sin

import pytest

from dividing.parts.carry import at_rim, carried, grade, pitch_limits
from dividing.parts.end_teeth import end_teeth
from dividing.parts.flats import flats
from dividing.parts.spur_gear import spur_gear


@pytest.mark.parametrize("seconds", [0.38, 7.03, 330.6])
@pytest.mark.parametrize("diameter", [3.0, 120.0, 1000.0])
def test_a_small_arc_is_as_long_as_its_chord(seconds: float, diameter: float) -> None:
    angle = radians(seconds / 3600)
    chord = hypot(diameter / 2 * sin(angle), diameter / 2 * (1 - (1 - sin(angle) ** 2) ** 0.5))
    assert at_rim(seconds, diameter) == pytest.approx(chord, rel=1e-6)


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_a_gear_has_its_pitch_deviations_on_the_pitch_circle(unit: str) -> None:
    gear = spur_gear(teeth=50, diametral_pitch=Fraction("12.7"), unit=unit)
    sizes = {size.name: size for size in carried(gear, worst=20, single_pitch=10, total_pitch=40)}
    factor = 1 if unit == "mm" else 25.4
    second = 2 * pi / 360 / 3600
    assert sizes["Single pitch deviation f_p"].value * factor == pytest.approx(10 * second * 50)
    assert sizes["Total cumulative pitch deviation F_p"].value * factor == pytest.approx(40 * second * 50)
    assert sizes["Largest error at the rim"].value * factor == pytest.approx(20 * second * 52)
    assert sizes["Single pitch deviation f_p"].source == "ISO 1328-1 (definition)"


def test_flats_have_a_rim_and_no_pitch() -> None:
    sizes = carried(flats(sides=6, across_flats=24, unit="mm"), worst=3600, single_pitch=0, total_pitch=0)
    assert [size.name for size in sizes] == ["Largest error at the rim"]


def test_a_part_without_a_diameter_has_nothing_to_carry_to() -> None:
    assert carried(end_teeth(teeth=12, form="end_mill", cutter_angle=70), worst=1, single_pitch=1, total_pitch=1) == ()


@pytest.mark.parametrize("best", range(9))
def test_the_grade_is_the_first_whose_limits_hold_both_errors(best: int) -> None:
    single, total = pitch_limits(diameter=100, module=2, grade=best)
    assert grade(diameter=100, module=2, single_pitch=single, total_pitch=total) == best
    worse = grade(diameter=100, module=2, single_pitch=single * 1.001, total_pitch=total)
    assert worse == (best + 1 if best < 8 else None)
    assert grade(diameter=100, module=2, single_pitch=0, total_pitch=total * 1.001) == (best + 1 if best < 8 else None)


def test_a_gear_too_rough_for_any_grade_has_none() -> None:
    gear = spur_gear(teeth=50, module=2, unit="mm")
    # 1,000 seconds on 100 mm are 485 micrometres; grade 8 leaves 16 x 5.94 + 45 = 140 for one pitch.
    sizes = [size.name for size in carried(gear, worst=1000, single_pitch=1000, total_pitch=1000)]
    assert "Single pitch deviation f_p" in sizes
    assert not any(name.startswith("Grade") for name in sizes)
    assert grade(diameter=100, module=2, single_pitch=485, total_pitch=485) is None
