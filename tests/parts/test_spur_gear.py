"""Spur gears: what goes together, what is warned of, and what cannot be."""

from __future__ import annotations

from fractions import Fraction
from math import pi
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.form_cutters import form_cutter
from dividing.parts.spur_gear import spur_gear
from tests.parts.figures import names, size, told, value


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
        # 2 / sin^2(20 degrees) = 17.1; with 12 teeth the shift needed is 1 - 12/17.1 = 0.298.
        assert spur_gear(teeth=12, module=2, unit="mm").cautions == (
            "12 teeth at 20° are undercut by a rack-shaped cutter; from 18 teeth, or with a profile shift of 0.298 or "
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
