"""Splined shafts: sizes held to keys and cutters laid out as points."""

from __future__ import annotations

from math import atan, atan2, cos, degrees, hypot, pi, radians, sin, sqrt
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.gear_sizes import blank_sizes, gear_drawing, measuring_sizes, pitch_sizes
from dividing.parts.involute import Toothing
from dividing.parts.sizes import MATHEMATICS, Part, Size
from dividing.parts.spline import spline, widest_cutter
from tests.parts.figures import names, told, value

SHAFTS = [
    (4, 28, 23, 6),
    (6, 28, 23, 6),
    (8, 42, 36, 7),
    (10, 72, 62, 9),
    (16, 60, 52, 5),
    (20, 125, 112, 7),
    (5, 40, 30, 8),
    # The top of the next key stands just below and just above the foot of this one: 34.54 is level.
    (6, 34.4, 23, 6),
    (6, 34.7, 23, 6),
]
LEANING: dict[str, Any] = {"teeth": 8, "major": 29, "minor": 14.8, "width": 4.8}
TWO_PASSES = (
    "Cut one side of all the keys, then set over and cut the other side of all; measure the first key before going "
    "round.",
)
FIT = ("Standards fix the clearance and the fit of involute splines: take major, minor and limits from the drawing.",)


def near(figure: float) -> Any:
    return pytest.approx(figure)


def known(*sizes: tuple[str, float, str]) -> list[Size]:
    """Sizes that are general mathematics, in millimetres or degrees, without a note."""
    return [Size(name, near(value), unit, MATHEMATICS) for name, value, unit in sizes]


def reaches_into_the_next_key(teeth: int, major: float, minor: float, width: float, cutter: float) -> bool:
    """Whether any point of the next key's side or top lies under a cutter set beside an upright key."""
    foot = sqrt((minor / 2) ** 2 - (width / 2) ** 2)
    top = sqrt((major / 2) ** 2 - (width / 2) ** 2)
    turn = 2 * pi / teeth
    points = [(-width / 2, foot + (top - foot) * step / 2000) for step in range(2001)]
    points += [(-width / 2 + width * step / 200, top) for step in range(201)]
    for side, along in points:
        x, y = side * cos(turn) + along * sin(turn), along * cos(turn) - side * sin(turn)
        if y > foot + 1e-9 and width / 2 < x < width / 2 + cutter - 1e-9:
            return True
    return False


class TestToldWhole:
    def test_four_keys_and_a_cutter(self) -> None:
        # Corners of triangles: 12 and 35 give 37, half the major; 12 and 16 give 20, half the minor.
        part = spline(teeth=4, major=74, minor=40, width=24, cutter=5, unit="mm")
        top, foot = 2 * degrees(atan(12 / 35)), 2 * degrees(atan(12 / 16))
        sizes = [
            *known(
                ("Angle from key to key", 90, "degrees"),
                ("Angle of a key at the top", top, "degrees"),
                ("Angle of a space at the top", 90 - top, "degrees"),
                ("Angle of a space at the bottom", 90 - foot, "degrees"),
                ("Diameter over the keys", 74, "mm"),
                ("Depth of the spaces", 17, "mm"),
                ("Height of a key's side", 19, "mm"),
            ),
            Size("Width of a key", 24, "mm", MATHEMATICS, "micrometer over both sides"),
            # From (12, 16) to (16, 12).
            *known(("Chord of a space at the bottom", 4 * sqrt(2), "mm"), ("Over opposite bottoms", 40, "mm")),
            Size("Side of the cutter from the centre line", 12, "mm", MATHEMATICS, "first one way, then the other"),
            *known(("Middle of the cutter from the centre line", 14.5, "mm")),
            Size("Cross-feed between the two passes", 29, "mm", MATHEMATICS, "key width + cutter thickness"),
        ]
        assert part == Part(
            "spline",
            "mm",
            tuple(sizes),
            divisions=4,
            cautions=TWO_PASSES,
            rim=74,
            drawing={"form": "straight", "teeth": 4, "major": 74, "minor": 40, "width": 24},
        )

    def test_an_odd_number_of_keys_in_inches(self) -> None:
        part = spline(teeth=3, major=74, minor=40, width=24, unit="in")
        assert [(size.name, size.text) for size in part.sizes] == [
            ("Angle from key to key", "120.0000°"),
            ("Angle of a key at the top", "37.8493°"),  # tan of a half = 12/35
            ("Angle of a space at the top", "82.1507°"),
            ("Angle of a space at the bottom", "46.2602°"),  # 120° less 2 x 36.8699°
            ("Diameter over the keys", "74.0000 in"),
            ("Depth of the spaces", "17.0000 in"),
            ("Height of a key's side", "19.0000 in"),
            ("Width of a key", "24.0000 in"),
            ("Chord of a space at the bottom", "15.7128 in"),  # 40 sin(23.1301°): 40 (0.8 √3/2 - 0.6/2)
            ("Top of a key to the bottom opposite", "57.0000 in"),
            ("Side of the cutter from the centre line", "12.0000 in"),
        ]
        assert part.unit == "in"

    @pytest.mark.parametrize("unit", ["mm", "in"])
    def test_where_the_next_key_stands_in_the_way_the_cutter_is_limited(self, unit: str) -> None:
        # Half the keys' width is 2.4, their feet stand at 7 (2.4, 7, 7.4), their tops at 14.3 (2.4, 14.3, 14.5), and
        # the next key leans by 45°: 7 - 2.4 √½ - 2.4 √½ - 2.4.
        limit = Size("Cutter must be thinner than", near(4.6 - 2.4 * sqrt(2)), unit, MATHEMATICS)
        part = spline(**LEANING, cutter=1.2, unit=unit)
        assert part.sizes[-3:] == (
            limit,
            Size("Middle of the cutter from the centre line", near(3), unit, MATHEMATICS),
            Size("Cross-feed between the two passes", near(6), unit, MATHEMATICS, "key width + cutter thickness"),
        )
        assert spline(**LEANING, unit=unit).sizes[-1] == limit

    @pytest.mark.parametrize(
        ("given", "over", "under", "note", "source"),
        [
            ({}, 38, 34, "stub teeth, half a module each way", "recalled"),
            ({"major": 37.8, "minor": 33}, 37.8, 33, "from major and minor", MATHEMATICS),
            ({"major": 37.8}, 37.8, 34, "from major and minor", MATHEMATICS),
            ({"minor": 33}, 38, 33, "from major and minor", MATHEMATICS),
        ],
    )
    def test_involute_teeth(self, given: dict[str, float], over: float, under: float, note: str, source: str) -> None:
        # Eighteen teeth of module 2: 36 at the pitch circle.
        gear = Toothing(18, 2.0, radians(30), addendum=(over - 36) / 4, depth=(over - under) / 4)
        assert spline(form="involute", teeth=18, module=2, pin=3.5, unit="mm", **given) == Part(  # type: ignore[arg-type]
            "spline",
            "mm",
            (*pitch_sizes(gear, "mm"), *blank_sizes(gear, "mm", note, source), *measuring_sizes(gear, "mm", 3.5)),
            divisions=18,
            cautions=FIT,
            rim=over,
            pitch_circle=36,
            drawing={"form": "involute", **gear_drawing(gear)},
        )

    def test_involute_teeth_in_inches(self) -> None:
        gear = Toothing(18, 0.1, radians(20), addendum=0.5, depth=1.0)
        part = spline(form="involute", teeth=18, diametral_pitch=10, pressure_angle=20, unit="in")
        assert part.unit == "in"
        told_as = [(size.name, near(size.value), size.unit) for size in part.sizes]
        blank = blank_sizes(gear, "in", "", "")
        assert told_as == [
            (size.name, size.value, size.unit)
            for size in (*pitch_sizes(gear, "in"), *blank, *measuring_sizes(gear, "in", None))
        ]


class TestStraightKeys:
    @pytest.mark.parametrize(("teeth", "major", "minor", "width"), SHAFTS)
    def test_the_angles_and_chord_are_those_of_the_corners(
        self, teeth: int, major: float, minor: float, width: float
    ) -> None:
        part = spline(teeth=teeth, major=major, minor=minor, width=width, unit="mm")
        foot = sqrt((minor / 2) ** 2 - (width / 2) ** 2)
        top = sqrt((major / 2) ** 2 - (width / 2) ** 2)
        turn = 2 * pi / teeth
        # The right foot of one key and the left foot of the next.
        ours = (width / 2, foot)
        next_foot = (-width / 2 * cos(turn) + foot * sin(turn), foot * cos(turn) + width / 2 * sin(turn))
        assert value(part, "Chord of a space at the bottom") == pytest.approx(
            hypot(ours[0] - next_foot[0], ours[1] - next_foot[1])
        )
        assert value(part, "Angle of a key at the top") == pytest.approx(2 * degrees(atan2(width / 2, top)))
        between = degrees(turn) - 2 * degrees(atan2(width / 2, foot))
        assert value(part, "Angle of a space at the bottom") == pytest.approx(between)
        assert value(part, "Height of a key's side") == pytest.approx(top - foot)
        assert part.divisions == teeth

    @pytest.mark.parametrize(("teeth", "major", "minor", "width"), SHAFTS)
    def test_the_widest_cutter_just_misses_the_next_key(
        self, teeth: int, major: float, minor: float, width: float
    ) -> None:
        widest = widest_cutter(teeth=teeth, major=major, minor=minor, width=width)
        if widest is None:
            assert not reaches_into_the_next_key(teeth, major, minor, width, 10 * major)
        else:
            assert not reaches_into_the_next_key(teeth, major, minor, width, widest * 0.999)
            assert reaches_into_the_next_key(teeth, major, minor, width, widest * 1.02)

    def test_two_keys_are_enough(self) -> None:
        part = spline(teeth=2, major=74, minor=40, width=24, unit="mm")
        assert value(part, "Angle of a space at the top") == pytest.approx(180 - 2 * degrees(atan(12 / 35)))

    def test_two_passes_leave_the_key_between_them(self) -> None:
        part = spline(teeth=6, major=28, minor=23, width=6, cutter=5, unit="mm")
        side = value(part, "Side of the cutter from the centre line")
        middle = value(part, "Middle of the cutter from the centre line")
        assert 2 * side == 6
        assert middle - side == pytest.approx(5 / 2)
        assert value(part, "Cross-feed between the two passes") == pytest.approx(2 * middle)

    def test_odd_counts_are_measured_from_a_key_to_the_bottom_opposite(self) -> None:
        part = spline(teeth=5, major=40, minor=30, width=8, unit="mm")
        assert value(part, "Top of a key to the bottom opposite") == 35
        assert "Over opposite bottoms" not in names(part)


class TestInvoluteTeeth:
    def test_without_diameters_they_are_stub_teeth(self) -> None:
        part = spline(form="involute", teeth=18, module=2, unit="mm")
        assert value(part, "Outside diameter") == pytest.approx(38)
        assert value(part, "Root diameter") == pytest.approx(34)
        assert value(part, "Base diameter") == pytest.approx(36 * cos(radians(30)))
        assert value(part, "Chordal thickness") == pytest.approx(36 * sin(radians(90 / 18)))

    def test_diameters_from_the_drawing_are_kept(self) -> None:
        part = spline(form="involute", teeth=18, module=2, major=37.8, minor=33, unit="mm")
        assert value(part, "Outside diameter") == pytest.approx(37.8)
        assert value(part, "Root diameter") == pytest.approx(33)
        assert value(part, "Whole depth") == pytest.approx(2.4)


class TestRefusals:
    @pytest.mark.parametrize(
        ("given", "path", "sentence"),
        [
            ({"teeth": 6}, "major", "Give the major and the minor and the width of straight keys."),
            ({"teeth": 6, "major": 28, "minor": 23}, "width", "Give the width of straight keys."),
            ({"teeth": 6, "major": 28}, "minor", "Give the minor and the width of straight keys."),
            ({"teeth": 6, "minor": 23, "width": 6}, "major", "Give the major of straight keys."),
            ({"teeth": 6, "form": "round"}, "form", 'Give one of "straight", "involute".'),
            ({"teeth": 1, "major": 28, "minor": 23, "width": 6}, "teeth", "A splined shaft has 2 keys or more."),
            (
                {"teeth": 6, "major": 23, "minor": 28, "width": 6},
                "minor",
                "The bottom of the spaces lies outside the keys: give a minor smaller than the major.",
            ),
            (
                {"teeth": 6, "major": 28, "minor": 28, "width": 6},
                "minor",
                "The bottom of the spaces lies outside the keys: give a minor smaller than the major.",
            ),
            (
                {"teeth": 6, "major": 28, "minor": 23, "width": 23},
                "width",
                "A key 23.000 mm wide does not fit on a minor diameter of 23.000 mm.",
            ),
            (
                {"teeth": 6, "major": 28, "minor": 23, "width": 23 * sin(pi / 6)},
                "width",
                "6 keys meet at the bottom of the spaces: give a width under 11.500 mm.",
            ),
            (
                {"teeth": 6, "major": 28, "minor": 23, "width": 24},
                "width",
                "A key 24.000 mm wide does not fit on a minor diameter of 23.000 mm.",
            ),
            (
                {"teeth": 6, "major": 28, "minor": 23, "width": 12},
                "width",
                "6 keys meet at the bottom of the spaces: give a width under 11.500 mm.",
            ),
            (
                {"teeth": 16, "major": 60, "minor": 52, "width": 5, "cutter": 6},
                "cutter",
                "A cutter 6.000 mm thick would cut into the next key: take one under 5.514 mm.",
            ),
            (
                {**LEANING, "cutter": widest_cutter(**LEANING)},
                "cutter",
                "A cutter 1.206 mm thick would cut into the next key: take one under 1.206 mm.",
            ),
            (
                {"teeth": 18, "form": "involute", "module": 2, "major": 35},
                "major",
                "The pitch diameter, 36.000 mm, must lie between minor and major.",
            ),
            (
                {"teeth": 18, "form": "involute", "module": 2, "major": 36},
                "major",
                "The pitch diameter, 36.000 mm, must lie between minor and major.",
            ),
            (
                {"teeth": 18, "form": "involute", "module": 2, "minor": 36},
                "minor",
                "The pitch diameter, 36.000 mm, must lie between minor and major.",
            ),
            (
                {"teeth": 18, "form": "involute", "module": 2, "major": 60},
                "major",
                "The teeth come to a point below the outside diameter: give a smaller major.",
            ),
            (
                {"teeth": 18, "form": "involute", "module": 2, "pressure_angle": 0},
                "pressure_angle",
                "A pressure angle is above 0° and at most 45°.",
            ),
            (
                {"teeth": 18, "form": "involute", "module": 2, "pressure_angle": 50},
                "pressure_angle",
                "A pressure angle is above 0° and at most 45°.",
            ),
            ({"teeth": 18, "form": "involute"}, None, "Give module or diametral_pitch."),
        ],
    )
    def test_what_cannot_be_cut_is_told(self, given: dict[str, object], path: str | None, sentence: str) -> None:
        with pytest.raises(Refused) as refusal:
            spline(unit="mm", **given)  # type: ignore[arg-type]
        assert told(refusal.value) == [((path,) if path else (), sentence)]
