"""End teeth: the tilt held to the line in which two cut planes meet, found by vectors."""

from __future__ import annotations

from math import atan2, cos, degrees, radians, sin, sqrt

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.end_teeth import TILTED_REASON, end_teeth
from tests.parts.figures import names, told, value

Vector = tuple[float, float, float]


def cross(a: Vector, b: Vector) -> Vector:
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def dot(a: Vector, b: Vector) -> float:
    return sum(x * y for x, y in zip(a, b, strict=True))


def turned(vector: Vector, axis: Vector, angle: float) -> Vector:
    """A vector turned about a unit axis."""
    side = cross(axis, vector)
    along = dot(axis, vector) * (1 - cos(angle))
    return tuple(  # type: ignore[return-value]
        v * cos(angle) + s * sin(angle) + a * along for v, s, a in zip(vector, side, axis, strict=True)
    )


def rise(line: Vector, axis: Vector) -> float:
    """How steeply a line leaves the plane square to the axis, outward, in degrees."""
    along = dot(line, axis)
    across = sqrt(dot(line, line) - along**2)
    return degrees(atan2(along, across))


def ridge(teeth: int, tilt: float, left: Vector, right: Vector) -> float:
    """The rise of the crest between two neighbouring cuts, from the spindle tilted by `tilt` degrees.

    The table is flat and the cutter runs along x. `left` and `right` are the normals of the cut's two walls; the crest
    is where the right wall of one cut meets the left wall of the next, all planes passing through the apex.
    """
    axis = (cos(radians(tilt)), 0.0, sin(radians(tilt)))
    line = cross(right, turned(left, axis, radians(-360 / teeth)))
    up = (-sin(radians(tilt)), 0.0, cos(radians(tilt)))
    middle = turned(up, axis, radians(-180 / teeth))
    return rise(line if dot(line, middle) > 0 else tuple(-x for x in line), axis)  # type: ignore[arg-type]


def walls(cutter: float, double: bool) -> tuple[Vector, Vector]:
    """Normals of the two walls of a groove along x: upright and inclined, or both inclined alike."""
    angle = radians(cutter / 2 if double else cutter)
    inclined = (0.0, cos(angle), -sin(angle))
    return ((0.0, cos(angle), sin(angle)) if double else (0.0, 1.0, 0.0)), inclined


CUTTERS = (50.0, 60.0, 70.0, 80.0, 85.0, 90.0)


def tilts(form: str, fewest: int) -> list[tuple[int, float, float]]:
    """Teeth, cutter and tilt wherever there is one."""
    found = []
    for teeth in range(fewest, 41):
        for cutter in CUTTERS if form == "v_clutch" else CUTTERS[:-1]:
            try:
                tilt = end_teeth(teeth=teeth, form=form, cutter_angle=cutter).tilt
            except Refused:
                continue
            assert tilt is not None
            if tilt < 1:  # The spindle lies flat and crests and axis are one line: nothing to tell apart.
                continue
            found.append((teeth, cutter, tilt))
    return found


class TestTilt:
    @pytest.mark.parametrize("form", ["end_mill", "side_mill"])
    def test_the_edges_of_a_mill_lie_square_to_its_axis(self, form: str) -> None:
        found = tilts(form, 5)
        assert len(found) > 100
        for teeth, cutter, tilt in found:
            upright, inclined = walls(cutter, double=False)
            assert ridge(teeth, tilt, upright, inclined) == pytest.approx(0, abs=1e-7)

    def test_the_crests_of_a_saw_tooth_clutch_rise_as_its_bottoms_fall(self) -> None:
        found = tilts("saw_tooth", 3)
        assert len(found) > 100
        for teeth, cutter, tilt in found:
            upright, inclined = walls(cutter, double=False)
            assert ridge(teeth, tilt, upright, inclined) == pytest.approx(90 - tilt, abs=1e-7)

    def test_the_crests_of_a_v_clutch_do_so_too(self) -> None:
        found = tilts("v_clutch", 2)
        assert len(found) > 100
        for teeth, cutter, tilt in found:
            left, right = walls(cutter, double=True)
            assert ridge(teeth, tilt, left, right) == pytest.approx(90 - tilt, abs=1e-7)

    @pytest.mark.parametrize("form", ["saw_tooth", "v_clutch"])
    def test_the_height_at_the_outside_is_from_bottom_to_crest(self, form: str) -> None:
        part = end_teeth(teeth=8, form=form, cutter_angle=75, outer=60, unit="mm")
        assert part.tilt is not None
        fall = 30 * sin(radians(90 - part.tilt)) / cos(radians(90 - part.tilt))
        assert value(part, "Height of the teeth at the outside, cut to a point in the axis") == pytest.approx(2 * fall)

    def test_a_tilted_head_cannot_be_geared_to_its_plate(self) -> None:
        part = end_teeth(teeth=12, form="end_mill", cutter_angle=70)
        assert part.methods == ("direct", "plain", "compound", "dial", "nearest")
        assert part.methods_reason == TILTED_REASON

    def test_a_low_spindle_is_warned_of(self) -> None:
        part = end_teeth(teeth=5, form="end_mill", cutter_angle=75)
        assert part.tilt is not None
        assert part.cautions[0] == (
            f"The spindle stands only {part.tilt:.1f}° above the table: make sure that head and work clear the arbor."
        )


class TestNoTilt:
    @pytest.mark.parametrize(
        ("form", "teeth", "sentence"),
        [
            ("end_mill", 4, "No tilt cuts 4 teeth of an end mill: there must be 5 or more."),
            ("side_mill", 4, "No tilt cuts 4 teeth of a side mill: there must be 5 or more."),
            ("saw_tooth", 2, "No tilt cuts 2 teeth of a saw-tooth clutch: there must be 3 or more."),
            ("v_clutch", 1, "No tilt cuts 1 teeth of a V clutch: there must be 2 or more."),
        ],
    )
    def test_too_few_teeth(self, form: str, teeth: int, sentence: str) -> None:
        with pytest.raises(Refused) as refusal:
            end_teeth(teeth=teeth, form=form, cutter_angle=80)
        assert told(refusal.value) == [(("teeth",), sentence)]

    def test_a_blunt_cutter_is_told_which_would_do(self) -> None:
        # tan(360/6) cot 50 = 1.45; at 60 degrees it is just 1.
        with pytest.raises(Refused) as refusal:
            end_teeth(teeth=6, form="end_mill", cutter_angle=50)
        assert told(refusal.value) == [
            (
                ("cutter_angle",),
                "No tilt cuts 6 teeth of an end mill with a 50° cutter: take one of 60° or more, or more teeth.",
            )
        ]
        assert end_teeth(teeth=6, form="end_mill", cutter_angle=60).tilt == pytest.approx(0, abs=1e-5)

    @pytest.mark.parametrize("form", ["end_mill", "saw_tooth", "v_clutch"])
    def test_the_cutter_advised_does(self, form: str) -> None:
        for teeth in range(5, 12):
            with pytest.raises(Refused) as refusal:
                end_teeth(teeth=teeth, form=form, cutter_angle=5)
            advised = float(told(refusal.value)[0][1].split("take one of ")[1].split("°")[0])
            assert end_teeth(teeth=teeth, form=form, cutter_angle=advised).tilt is not None
            with pytest.raises(Refused):
                end_teeth(teeth=teeth, form=form, cutter_angle=advised - 0.11)

    def test_an_angle_is_needed(self) -> None:
        with pytest.raises(Refused) as refusal:
            end_teeth(teeth=12, form="v_clutch")
        assert told(refusal.value) == [(("cutter_angle",), "Give the angle of the cutter for a V clutch.")]


class TestStraightClutches:
    @pytest.mark.parametrize("teeth", range(3, 16, 2))
    def test_an_odd_count_is_cut_across(self, teeth: int) -> None:
        part = end_teeth(teeth=teeth, form="straight", outer=60, inner=30, unit="mm")
        assert part.tilt is None
        assert value(part, "Passes") == teeth
        # The flank opposite lies half a turn on: a whole odd number of half pitches, so a flank of the other hand.
        assert (180 / (180 / teeth)) % 2 == 1
        assert part.cautions[1].startswith("An odd count is cut right across")

    @pytest.mark.parametrize("teeth", [3, 4, 5, 6, 9, 12])
    def test_the_widest_cutter_just_reaches_the_far_flank_at_the_inside(self, teeth: int) -> None:
        part = end_teeth(teeth=teeth, form="straight", inner=30, unit="mm")
        # One side of the cutter on the flank along x; the far flank's inner corner stands half a pitch on.
        corner = (15 * cos(radians(180 / teeth)), 15 * sin(radians(180 / teeth)))
        assert value(part, "Widest cutter") == pytest.approx(corner[1])

    @pytest.mark.parametrize("teeth", [3, 4, 5, 6, 9, 12])
    def test_the_narrowest_meets_itself_in_the_middle_of_the_space(self, teeth: int) -> None:
        part = end_teeth(teeth=teeth, form="straight", outer=60, unit="mm")
        assert value(part, "Narrowest cutter that leaves no ridge") == pytest.approx(30 * sin(radians(90 / teeth)))

    def test_an_even_count_is_not_cut_across(self) -> None:
        part = end_teeth(teeth=6, form="straight", outer=60, inner=40, unit="mm")
        assert value(part, "Passes") == 12
        assert part.cautions == (
            "Straight flanks lie in planes through the axis: the spindle stands upright, without tilt.",
            "An even count must not be cut across: stop each pass before the tooth opposite. An odd count is quicker.",
        )

    def test_a_wide_face_leaves_a_ridge(self) -> None:
        part = end_teeth(teeth=6, form="straight", outer=80, inner=20, unit="mm")
        assert part.cautions[-1] == "No cutter clears a space in two passes: one of 5.000 mm leaves a ridge."

    def test_an_inside_larger_than_the_outside_is_refused(self) -> None:
        with pytest.raises(Refused) as refusal:
            end_teeth(teeth=5, form="straight", outer=20, inner=30, unit="mm")
        assert told(refusal.value) == [
            (("inner",), "The inside diameter of the teeth is smaller than the outside: check both.")
        ]

    def test_no_lengths_are_needed(self) -> None:
        assert names(end_teeth(teeth=5, form="straight")) == ["Angle of a tooth and of a space", "Passes"]
