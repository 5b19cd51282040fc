"""Bevel gears: cones held to triangles drawn in the plane of the axis, and pairs to cones that roll on each other."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from math import atan, cos, degrees, hypot, pi, radians, sin, tan
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.bevel_gear import bevel_gear
from dividing.parts.sizes import Size
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


def near(figure: float) -> Any:
    return pytest.approx(figure)


MATHEMATICS, PRACTICE = "general mathematics", "common practice"
CUTTERS = (
    "Modern Machine-Shop Practice (Joshua Rose), table of eight involute cutters; No. 8 ends at 13 by common practice"
)
OUT = "a tenth of the tooth's thickness at the large end; correct after a trial"
BACK = "brings the small end back to the middle of the cutter"
DEPTH = "2.25 m = 2.25 / P, the convention chosen"
OTHER_WAY = "go by this range: many module cutters are numbered the other way"
ADDENDUM, DEDENDUM = degrees(atan(2 / 50)), degrees(atan(2.5 / 50))


def told_of(sine: float, cosine: float, teeth: int, cutter: Size) -> list[Size]:
    """One gear of module 2 whose cone distance is 50 and whose face a third of that, named as the mate's are."""
    angle = degrees(atan(sine / cosine))
    return [
        Size("pitch diameter", 2 * teeth, "mm", MATHEMATICS),
        Size("outside diameter", near(2 * teeth + 4 * cosine), "mm", MATHEMATICS),
        Size("apex to the edge of the large end, along the axis", near(50 * cosine - 2 * sine), "mm", MATHEMATICS),
        Size("whole depth at the large end", 4.5, "mm", PRACTICE, DEPTH),
        Size("pitch angle", near(angle), "degrees", MATHEMATICS),
        Size("face angle", near(angle + ADDENDUM), "degrees", MATHEMATICS),
        Size("root angle", near(angle - DEDENDUM), "degrees", MATHEMATICS, "set the head to this"),
        Size("formative teeth", near(teeth / cosine), "", MATHEMATICS, "z / cos of the pitch angle, for the cutter"),
        cutter,
        # The tooth is π thick at the large end, and the small end has two thirds of the pitch radius.
        Size("offset of the cutter to start with", near(pi / 10), "mm", PRACTICE, OUT),
        Size(
            "roll of the blank that goes with it",
            near(degrees(pi / 10 / (teeth * 2 / 3))),
            "degrees",
            MATHEMATICS,
            BACK,
        ),
    ]


def renamed(sizes: list[Size], name: Callable[[str], str]) -> list[Size]:
    return [replace(size, name=name(size.name)) for size in sizes]


class TestToldWhole:
    # 30 and 40 teeth at a right angle: a triangle of 3, 4 and 5.
    def test_a_pair_has_the_sizes_of_both_and_of_each(self) -> None:
        part = bevel_gear(teeth=30, mate=40, module=2, unit="mm")
        # 30 / 0.8 = 37.5 formative teeth, 40 / 0.6 = 66.7.
        third = Size("form cutter", 3, "", CUTTERS, f"for 35 to 54 teeth; {OTHER_WAY} (there No. 6)")
        second = Size("form cutter", 2, "", CUTTERS, f"for 55 to 134 teeth; {OTHER_WAY} (there No. 7)")
        both = [
            Size("Cone distance", near(50), "mm", MATHEMATICS, "apex to the pitch circle of the large end"),
            Size("Face width", near(50 / 3), "mm", PRACTICE, "not above a third of the cone distance"),
            Size("Module at the large end", 2, "mm", MATHEMATICS, "always in millimetres"),
            Size("Module at the small end", near(4 / 3), "mm", MATHEMATICS),
            Size("Diametral pitch at the large end", near(12.7), "", MATHEMATICS),
            Size("Angle of addendum", near(ADDENDUM), "degrees", MATHEMATICS),
            Size("Angle of dedendum", near(DEDENDUM), "degrees", MATHEMATICS),
        ]
        gear = renamed(told_of(0.6, 0.8, 30, third), lambda name: name[0].upper() + name[1:])
        mate = renamed(told_of(0.8, 0.6, 40, second), lambda name: f"Mate: {name}")
        assert list(part.sizes) == both + gear + mate

    def test_the_rest_of_it_too(self) -> None:
        part = bevel_gear(teeth=30, mate=40, module=2, unit="mm")
        assert (part.kind, part.unit, part.divisions) == ("bevel_gear", "mm", 30)
        assert (part.rim, part.pitch_circle) == (near(60 + 4 * 0.8), 60)
        assert part.tilt == near(degrees(atan(3 / 4)) - DEDENDUM)
        assert part.methods == ("direct", "plain", "compound", "dial", "nearest")
        assert part.methods_reason == (
            "With the spindle tilted the gears from spindle to plate do not mesh, so differential indexing is out."
        )
        assert part.cautions == ALWAYS
        assert part.drawing == {
            "members": [
                {
                    "teeth": teeth,
                    "cone_distance": near(50),
                    "face": near(50 / 3),
                    "pitch_angle": near(angle),
                    "face_angle": near(angle + ADDENDUM),
                    "root_angle": near(angle - DEDENDUM),
                }
                for teeth, angle in ((30, degrees(atan(3 / 4))), (40, degrees(atan(4 / 3))))
            ]
        }

    def test_inches_go_all_the_way_through(self) -> None:
        part = bevel_gear(teeth=30, mate=40, diametral_pitch=10, unit="in", face=Fraction("0.5"))
        assert [size.unit for size in part.sizes if size.unit not in ("degrees", "")] == [
            *["in"] * 2, *["mm"] * 2, *["in"] * 5, *["in"] * 5,
        ]  # fmt: skip
        # Tenths of an inch are 2.54 mm; half an inch from a cone distance of 2.5 in leaves four fifths.
        assert value(part, "Cone distance") == near(2.5)
        assert value(part, "Module at the large end") == near(2.54)
        assert value(part, "Module at the small end") == near(2.54 * 0.8)
        assert value(part, "Face width") == 0.5
        assert part.unit == "in"

    def test_the_depth_is_the_convention_that_is_named(self) -> None:
        part = bevel_gear(teeth=30, mate=40, module=2, whole_depth="2.157", unit="mm")
        depth = next(size for size in part.sizes if size.name == "Whole depth at the large end")
        assert (depth.value, depth.note) == (near(4.314), "2.157 m = 2.157 / P, the convention chosen")
        assert depth.source == "US Navy training course 14345, AIV-2"
        assert value(part, "Angle of dedendum") == near(degrees(atan(2.314 / 50)))


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


ALWAYS = (
    "Teeth milled with a form cutter are right at one end only: use a bevel-gear cutter thin enough for the small end, "
    "cut two trial spaces, and measure the tooth at both ends.",
    "If the tooth is right at the large end and too thick at the small end, make the offset smaller; if too thin, "
    "larger.",
)
NO_CUTTER = "No form cutter of the usual sets is made for fewer than 12 teeth: generate these teeth."


class TestCautions:
    # Cone distance 30 m / √2: a third of it is 28.284 mm for module 4 and 1.7678 in for a pitch of 4.
    @pytest.mark.parametrize(
        ("pitch", "unit", "face", "third"),
        [
            ({"module": 4}, "mm", 28.3, "28.284 mm"),
            ({"diametral_pitch": 4}, "in", 1.8, "1.7678 in"),
        ],
    )
    def test_a_long_face_is_warned_of(self, pitch: dict[str, int], unit: str, face: float, third: str) -> None:
        part = bevel_gear(teeth=30, mate=30, face=face, unit=unit, **pitch)
        long = f"The small end gets thin when the face is above a third of the cone distance, here {third}."
        assert part.cautions == (*ALWAYS, long)

    # Formative teeth: 9 / cos 12.7° = 9.2 and 40 / cos 77.3°; 8 / cos 45° = 11.3 in both gears.
    @pytest.mark.parametrize(("teeth", "mate"), [(9, 40), (40, 9), (8, 8)])
    def test_a_gear_too_small_for_a_form_cutter_is_told_once(self, teeth: int, mate: int) -> None:
        assert bevel_gear(teeth=teeth, mate=mate, module=2, unit="mm").cautions == (*ALWAYS, NO_CUTTER)

    @pytest.mark.parametrize("angle", [40, 75, Fraction(1, 2)])
    def test_any_pitch_angle_short_of_a_right_one_will_do(self, angle: int | Fraction) -> None:
        part = bevel_gear(teeth=300, pitch_angle=angle, module=2, unit="mm")
        assert value(part, "Pitch angle") == near(float(angle))

    def test_shafts_may_stand_at_nearly_any_angle(self) -> None:
        assert value(bevel_gear(teeth=30, mate=30, shaft_angle=179, module=2, unit="mm"), "Pitch angle") == near(89.5)
        part = bevel_gear(teeth=300, mate=300, shaft_angle=Fraction(3, 4), module=2, unit="mm")
        assert value(part, "Pitch angle") == near(0.375)

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
            ({"mate": 20, "shaft_angle": 180}, "shaft_angle", "A shaft angle is above 0° and at most 179°."),
            ({"pitch_angle": 0}, "pitch_angle", "A pitch angle lies between 0° and 90°, neither included."),
            ({"mate": 20, "whole_depth": "2"}, "whole_depth", 'Give one of "2.25", "2.157", "2.166".'),
            (
                # The mate of 60 teeth would stand at 90° exactly: 30 + 60 cos 120° is nothing.
                {"mate": 60, "shaft_angle": 120},
                "shaft_angle",
                "At this shaft angle one gear would be a crown or internal gear: give a smaller one.",
            ),
            ({"mate": 2}, "mate", "The root angle of 2 teeth comes below 0°: give more teeth."),
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
