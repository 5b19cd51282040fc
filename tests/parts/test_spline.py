"""Splined shafts: sizes held to keys and cutters laid out as points."""

from __future__ import annotations

from math import atan2, cos, degrees, hypot, pi, radians, sin, sqrt

import pytest

from dividing.indexing.faults import Refused
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
]


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
            ({"teeth": 1, "major": 28, "minor": 23, "width": 6}, "teeth", "A splined shaft has 2 keys or more."),
            (
                {"teeth": 6, "major": 23, "minor": 28, "width": 6},
                "minor",
                "The bottom of the spaces lies outside the keys: give a minor smaller than the major.",
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
                {"teeth": 18, "form": "involute", "module": 2, "major": 35},
                "major",
                "The pitch diameter, 36.000 mm, must lie between minor and major.",
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
