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


INDEXING = "from the indexing alone"
NOTE = "best grade whose pitch limits the indexing leaves open; the machine, cutter and blank add their own"
GEARS = "Elements of Metric Gear Technology, table 15-1 (JIS B 1702-1976)"


@pytest.mark.parametrize(("unit", "factor", "digits"), [("mm", 1, 5), ("in", 25.4, 6)])
def test_every_line_of_a_gear_says_what_it_is_and_whose_formula(unit: str, factor: float, digits: int) -> None:
    gear = spur_gear(teeth=50, diametral_pitch=Fraction("12.7"), unit=unit)  # module 2: 100 mm, and 104 outside
    lines = carried(gear, worst=20, single_pitch=36, total_pitch=144)
    assert [(line.name, line.unit, line.source, line.note, line.digits) for line in lines] == [
        ("Largest error at the rim", unit, "general mathematics", INDEXING, digits),
        ("Single pitch deviation f_p", unit, "ISO 1328-1 (definition)", INDEXING, digits),
        ("Total cumulative pitch deviation F_p", unit, "ISO 1328-1 (definition)", INDEXING, digits),
        ("Grade by pitch, JIS B 1702-1976", "", GEARS, NOTE, None),
    ]
    # 36" on 100 mm are 8.73 micrometres, 144" 34.9. At 100 mm and module 2 the table is entered with 5.94: grade 2
    # allows 1 x 5.94 + 2.8 = 8.74 and 4 x 5.94 + 11.2 = 35.0, grade 1 only 6.2 and 24.6.
    microns = [line.value * factor * 1000 for line in lines[1:3]]
    assert microns == pytest.approx([8.727, 34.907], abs=0.001)
    assert lines[3].value == 2


# A second on 100 mm is 0.242407 micrometres, and grade 2 allows 8.7416 and 34.966: 36.06" and 144.25". One error is at
# that limit, the other is nothing: each alone decides.
@pytest.mark.parametrize(
    ("single", "total", "best"), [(36.03, 0, 2), (36.09, 0, 3), (0, 144.2, 2), (0, 144.3, 3), (0, 0, 0), (-36.09, 0, 3)]
)
def test_either_error_alone_decides_the_grade(single: float, total: float, best: int) -> None:
    gear = spur_gear(teeth=50, module=2, unit="mm")
    assert carried(gear, worst=0, single_pitch=single, total_pitch=total)[-1].value == best


def test_a_gear_so_far_off_has_no_grade() -> None:
    gear = spur_gear(teeth=50, module=2, unit="mm")
    lines = carried(gear, worst=3600, single_pitch=3600, total_pitch=3600)
    assert [line.name for line in lines] == [
        "Largest error at the rim", "Single pitch deviation f_p", "Total cumulative pitch deviation F_p",
    ]  # fmt: skip
