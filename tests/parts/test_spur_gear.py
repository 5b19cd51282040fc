"""Spur gears: what goes together, what is warned of, and what cannot be."""

from __future__ import annotations

from fractions import Fraction
from math import cos, pi, radians, sin, tan
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.form_cutters import form_cutter
from dividing.parts.gear_sizes import gear_drawing
from dividing.parts.involute import Toothing
from dividing.parts.spur_gear import module_from_outside, spur_gear
from tests.parts.figures import names, size, told, value
from tests.parts.generated import solved

TWENTY = radians(20)
INV = tan(TWENTY) - TWENTY


def test_a_gear_is_told_whole() -> None:
    part = spur_gear(teeth=30, module=2, unit="mm")
    # The pins touch where tan y - y = pin / (m z cos a) + inv a - π / 2z.
    lean = 3.456 / (60 * cos(TWENTY)) + INV - pi / 60
    pins = 60 * cos(TWENTY) / cos(solved(lambda angle: tan(angle) - angle - lean, 0, 1)) + 3.456
    assert [(size.name, size.value, size.unit) for size in part.sizes] == [
        ("Module", 2, "mm"),
        ("Diametral pitch", pytest.approx(12.7), ""),
        ("Outside diameter", 64, "mm"),
        ("Pitch diameter", 60, "mm"),
        ("Root diameter", 55, "mm"),
        ("Base diameter", pytest.approx(60 * cos(TWENTY)), "mm"),
        ("Addendum", 2, "mm"),
        ("Dedendum", 2.5, "mm"),
        ("Whole depth", 4.5, "mm"),
        ("Tooth thickness along the pitch circle", pytest.approx(pi), "mm"),
        ("Chordal thickness", pytest.approx(60 * sin(radians(3))), "mm"),
        ("Chordal addendum", pytest.approx(2 + 30 * (1 - cos(radians(3)))), "mm"),
        # z a / 180 + 1/2 = 3.83: four teeth, three pitches and a half along the base circle and the involute.
        ("Span over 4 teeth", pytest.approx(2 * cos(TWENTY) * (pi * 3.5 + 30 * INV)), "mm"),
        ("Diameter of the pins", pytest.approx(3.456), "mm"),
        ("Over two pins", pytest.approx(pins), "mm"),
        ("Form cutter", 4, ""),
    ]
    assert (part.kind, part.unit, part.divisions) == ("spur_gear", "mm", 30)
    assert (part.rim, part.pitch_circle, part.cautions) == (64, 60, ())
    assert (part.tilt, part.lead, part.methods) == (None, None, None)
    assert part.drawing == gear_drawing(Toothing(30, 2.0, TWENTY))


def test_inches_and_a_pin_of_ones_own_go_all_the_way_through() -> None:
    part = spur_gear(teeth=24, diametral_pitch=8, unit="in", pin=Fraction("0.216"))
    assert [size.unit for size in part.sizes] == ["mm", "", *["in"] * 13, ""]
    assert (part.unit, value(part, "Module"), value(part, "Pitch diameter")) == ("in", pytest.approx(3.175), 3)
    assert value(part, "Diameter of the pins") == 0.216
    dull = spur_gear(teeth=12, diametral_pitch=8, unit="in", profile_shift=Fraction("0.8"))
    assert "in thick at the tip" in dull.cautions[0]


class TestFromTheOutside:
    # Da / (z + 2): 45 / 30 is a module of 1.5; 3 1/4 / 26 is an eighth of an inch.
    @pytest.mark.parametrize(
        ("teeth", "outside", "unit", "module"),
        [(28, 45, "mm", Fraction(3, 2)), (24, Fraction(13, 4), "in", Fraction("3.175"))],
    )
    def test_a_gear_to_copy_gives_its_module(
        self, teeth: int, outside: int | Fraction, unit: str, module: Fraction
    ) -> None:
        assert module_from_outside(teeth=teeth, outside_diameter=outside, unit=unit) == module
        copied = spur_gear(teeth=teeth, outside_diameter=outside, unit=unit)
        assert copied == spur_gear(teeth=teeth, module=module, unit=unit)
        assert value(copied, "Outside diameter") == pytest.approx(float(outside))


@pytest.mark.parametrize("teeth", [12, 17, 24, 73, 135])
@pytest.mark.parametrize("depth", ["2.25", "2.157", "2.166"])
class TestTheBlank:
    def test_the_depth_is_the_convention_that_is_named(self, teeth: int, depth: str) -> None:
        part = spur_gear(teeth=teeth, module=2, whole_depth=depth, unit="mm")
        whole = size(part, "Whole depth")
        assert whole.value == pytest.approx(2 * float(depth))
        assert whole.note == f"{depth} m = {depth} / P, the convention chosen"
        assert value(part, "Outside diameter") - value(part, "Root diameter") == pytest.approx(2 * whole.value)
        assert value(part, "Addendum") + value(part, "Dedendum") == pytest.approx(whole.value)

    def test_teeth_and_spaces_fill_the_pitch_circle(self, teeth: int, depth: str) -> None:
        part = spur_gear(teeth=teeth, module=2, whole_depth=depth, unit="mm")
        round_it = 2 * teeth * value(part, "Tooth thickness along the pitch circle")
        assert round_it == pytest.approx(pi * value(part, "Pitch diameter"))


class TestTheCutter:
    @pytest.mark.parametrize("teeth", [*range(12, 60), 134, 135, 300])
    def test_its_range_stands_beside_the_number(self, teeth: int) -> None:
        cutter = size(spur_gear(teeth=teeth, module=2, unit="mm"), "Form cutter")
        found = form_cutter(teeth)
        assert found is not None
        assert found.lowest <= teeth <= (found.highest or teeth)
        assert cutter.value == found.number
        assert cutter.note == (
            f"for {found.teeth}; go by this range: many module cutters are numbered the other way "
            f"(there No. {9 - found.number})"
        )

    def test_the_ranges_leave_no_gap(self) -> None:
        cutters = [cutter for teeth in range(12, 400) if (cutter := form_cutter(teeth))]
        assert len(cutters) == 388
        assert [cutter.number for cutter in cutters] == sorted((c.number for c in cutters), reverse=True)


class TestCautions:
    def test_few_teeth_are_undercut(self) -> None:
        # 2 / sin^2(20 degrees) = 17.1; with 12 teeth the shift needed is 1 - 12/17.1 = 0.2981.
        assert spur_gear(teeth=12, module=2, unit="mm").cautions == (
            "12 teeth at 20° are undercut by a rack-shaped cutter; from 18 teeth, or with a profile shift of 0.299 or "
            "more, they are not.",
        )
        assert spur_gear(teeth=18, module=2, unit="mm").cautions == ()
        assert spur_gear(teeth=12, module=2, profile_shift=Fraction("0.3"), unit="mm").cautions == ()

    def test_fewer_than_twelve_have_no_form_cutter(self) -> None:
        part = spur_gear(teeth=10, module=2, profile_shift=Fraction("0.45"), unit="mm")
        assert "Form cutter" not in names(part)
        assert part.cautions[-1] == (
            "No form cutter of the usual sets is made for fewer than 12 teeth: generate these teeth."
        )

    def test_a_thin_tip_is_warned_of(self) -> None:
        part = spur_gear(teeth=12, module=2, profile_shift=Fraction("0.8"), unit="mm")
        thin = [caution for caution in part.cautions if caution.startswith("The tooth is only")]
        assert len(thin) == 1
        assert thin[0].endswith("thick at the tip: a hardened gear may chip there.")


class TestRefusals:
    @pytest.mark.parametrize(
        ("given", "path", "sentence"),
        [
            ({}, None, "Give module, diametral_pitch or outside_diameter."),
            (
                {"module": 2, "diametral_pitch": 8},
                "diametral_pitch",
                "Give module, diametral_pitch or outside_diameter, and only one of them.",
            ),
            (
                {"module": 2, "outside_diameter": 52},
                "outside_diameter",
                "Give module, diametral_pitch or outside_diameter, and only one of them.",
            ),
            ({"module": 2, "pressure_angle": 0}, "pressure_angle", "A pressure angle is above 0° and at most 45°."),
            (
                {"module": 2, "profile_shift": 3},
                "profile_shift",
                "The teeth come to a point below the outside diameter: give a smaller profile_shift.",
            ),
            (
                {"module": 2, "profile_shift": -3},
                "profile_shift",
                "The teeth end below the base circle and have no flank: give a larger profile_shift.",
            ),
            (
                # Touching on the pitch circle: 48 cos 20° (tan(20° + 90°/24) - tan 20°) = 3.430.
                {"module": 2, "pin": 9},
                "pin",
                "A pin of 9.000 mm does not seat on the flanks of this tooth: try one near 3.430 mm.",
            ),
        ],
    )
    def test_a_gear_that_cannot_be_is_told(self, given: dict[str, Any], path: str | None, sentence: str) -> None:
        with pytest.raises(Refused) as refusal:
            spur_gear(teeth=24, unit="mm", **given)
        assert told(refusal.value) == [((path,) if path else (), sentence)]

    def test_two_teeth_would_meet_in_the_axis(self) -> None:
        with pytest.raises(Refused) as refusal:
            spur_gear(teeth=2, module=2, pressure_angle=40, profile_shift=0, unit="mm")
        assert told(refusal.value) == [(("teeth",), "Teeth of this depth would meet in the axis: 2 teeth are too few.")]
