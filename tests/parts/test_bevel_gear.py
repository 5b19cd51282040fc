"""Bevel gears: cones held to triangles drawn in the plane of the axis, and pairs to cones that roll on each other."""

from __future__ import annotations

from math import cos, hypot, radians, sin, tan
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.bevel_gear import bevel_gear
from tests.parts.figures import names, told, value

PAIRS = [(24, 48, 90), (20, 20, 90), (15, 40, 75), (30, 31, 110), (17, 60, 60)]


@pytest.mark.parametrize(("teeth", "mate", "shafts"), PAIRS)
class TestAPair:
    def test_the_pitch_cones_roll_without_slip(self, teeth: int, mate: int, shafts: int) -> None:
        part = bevel_gear(teeth=teeth, mate=mate, shaft_angle=shafts, module=3, unit="mm")
        one, other = value(part, "Pitch angle"), value(part, "Mate: pitch angle")
        assert one + other == pytest.approx(shafts)
        # Points of both pitch circles at the common cone distance: radii as the teeth.
        assert sin(radians(one)) / sin(radians(other)) == pytest.approx(teeth / mate)
        assert value(part, "Cone distance") * sin(radians(other)) == pytest.approx(
            value(part, "Mate: pitch diameter") / 2
        )

    def test_tip_and_bottom_lines_run_to_the_apex(self, teeth: int, mate: int, shafts: int) -> None:
        part = bevel_gear(teeth=teeth, mate=mate, shaft_angle=shafts, module=3, unit="mm")
        for prefix in ("", "Mate: "):
            named = (lambda name: name) if not prefix else (lambda name: f"Mate: {name[0].lower()}{name[1:]}")
            pitch = radians(value(part, named("Pitch angle")))
            cone = value(part, "Cone distance")
            # From the pitch point, square to the pitch line: a module out to the tip, the rest of the depth in.
            x, y = cone * cos(pitch), cone * sin(pitch)
            tip = (x - 3 * sin(pitch), y + 3 * cos(pitch))
            dedendum = value(part, named("Whole depth at the large end")) - 3
            bottom = (x + dedendum * sin(pitch), y - dedendum * cos(pitch))
            assert tan(radians(value(part, named("Face angle")))) == pytest.approx(tip[1] / tip[0])
            assert tan(radians(value(part, named("Root angle")))) == pytest.approx(bottom[1] / bottom[0])
            assert value(part, named("Outside diameter")) == pytest.approx(2 * tip[1])
            edge = value(part, named("Apex to the edge of the large end, along the axis"))
            assert edge == pytest.approx(tip[0])

    def test_the_formative_gear_is_the_back_cone_unrolled(self, teeth: int, mate: int, shafts: int) -> None:
        part = bevel_gear(teeth=teeth, mate=mate, shaft_angle=shafts, module=3, unit="mm")
        pitch = radians(value(part, "Pitch angle"))
        x, y = value(part, "Cone distance") * cos(pitch), value(part, "Cone distance") * sin(pitch)
        # The back cone's own apex lies on the axis, square to the pitch line.
        back = hypot(y, x + y * tan(pitch) - x)
        assert value(part, "Formative teeth") == pytest.approx(2 * back / 3)


class TestAlone:
    def test_a_pitch_angle_does_without_the_mate(self) -> None:
        pair = bevel_gear(teeth=24, mate=48, diametral_pitch=8, unit="in")
        alone = bevel_gear(teeth=24, pitch_angle=value(pair, "Pitch angle"), diametral_pitch=8, unit="in")
        assert alone.tilt == pytest.approx(pair.tilt)
        assert not [name for name in names(alone) if name.startswith("Mate")]

    def test_the_small_end_is_smaller_by_the_face(self) -> None:
        part = bevel_gear(teeth=30, mate=30, module=4, face=20, unit="mm")
        cone = value(part, "Cone distance")
        assert value(part, "Module at the small end") == pytest.approx(4 * (cone - 20) / cone)

    def test_the_roll_brings_the_small_end_back_under_the_cutter(self) -> None:
        part = bevel_gear(teeth=30, mate=30, module=4, face=20, unit="mm")
        radius = 30 * value(part, "Module at the small end") / 2
        rolled = radius * radians(value(part, "Roll of the blank that goes with it"))
        assert rolled == pytest.approx(value(part, "Offset of the cutter to start with"))


class TestCautions:
    def test_a_long_face_is_warned_of(self) -> None:
        part = bevel_gear(teeth=30, mate=30, module=4, face=30, unit="mm")
        assert part.cautions[-1] == (
            "The small end gets thin when the face is above a third of the cone distance, here 28.284 mm."
        )

    def test_a_gear_too_small_for_a_form_cutter_is_told(self) -> None:
        part = bevel_gear(teeth=9, mate=40, module=2, unit="mm")
        assert part.cautions[-1] == (
            "No form cutter of the usual sets is made for fewer than 12 teeth: generate these teeth."
        )

    @pytest.mark.parametrize(
        ("given", "path", "sentence"),
        [
            ({"mate": 20, "pitch_angle": 45}, "pitch_angle", "Give mate or pitch_angle, and only one of them."),
            ({}, None, "Give mate or pitch_angle."),
            (
                {"mate": 90, "shaft_angle": 150},
                "shaft_angle",
                "At this shaft angle one gear would be a crown or internal gear: give a smaller one.",
            ),
            ({"pitch_angle": 90}, "pitch_angle", "A pitch angle lies between 0° and 90°, neither included."),
            (
                {"mate": 30, "face": 90},
                "face",
                "The face reaches past the apex: the cone distance is only 63.640 mm.",
            ),
            ({"mate": 20, "shaft_angle": 0}, "shaft_angle", "A shaft angle is above 0° and at most 179°."),
            (
                {"pitch_angle": 4},
                "teeth",
                "The root angle of 30 teeth comes below 0°: give more teeth.",
            ),
        ],
    )
    def test_impossible_cones_are_refused(self, given: dict[str, Any], path: str | None, sentence: str) -> None:
        teeth = 2 if given.get("pitch_angle") == 4 else 30
        with pytest.raises(Refused) as refusal:
            bevel_gear(teeth=teeth, module=3, unit="mm", **given)
        assert told(refusal.value) == [((path,) if path else (), sentence.replace("30 teeth", f"{teeth} teeth"))]
