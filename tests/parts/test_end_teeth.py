"""End teeth: the tilt held to the line in which two cut planes meet, found by vectors."""

from __future__ import annotations

from math import acos, atan, atan2, cos, degrees, radians, sin, sqrt
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.end_teeth import end_teeth
from dividing.parts.sizes import Part, Size
from tests.parts.figures import told, value

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


METHODS = ("direct", "plain", "compound", "dial", "nearest")
LOW = "The spindle stands only 34.4° above the table: make sure that head and work clear the arbor."
LAND = "Set the face of the teeth to the centre line first, and stop when a narrow land is left."
TRIAL = "Cut a trial pair first: both halves must be cut at the same tilt to fit."
DEPTH = "Depth at the outside, grooves running out in the axis"
HEIGHT = "Height of the teeth at the outside, cut to a point in the axis"
# In each row the tangent is that of 45°, and the cotangent that of 60°: the cosine of the tilt is 1/√3.
TILT: Any = pytest.approx(degrees(acos(1 / sqrt(3))))
BOTTOM: Any = pytest.approx(90 - degrees(acos(1 / sqrt(3))))
# The cotangent of that tilt is 1/√2, so the bottoms fall by 30/√2 on a radius of 30.
FALL: Any = pytest.approx(30 / sqrt(2))
BOTH: Any = pytest.approx(60 / sqrt(2))


class TestTold:
    @pytest.mark.parametrize(
        ("form", "teeth", "cutter", "formula", "name", "height", "caution"),
        [
            ("end_mill", 8, 60, "tan(360°/N) × cot of the cutter angle", DEPTH, FALL, LAND),
            ("side_mill", 8, 60, "tan(360°/N) × cot of the cutter angle", DEPTH, FALL, LAND),
            ("saw_tooth", 4, 60, "tan(180°/N) × cot of the cutter angle", HEIGHT, BOTH, TRIAL),
            ("v_clutch", 2, 120, "tan(90°/N) × cot of half the cutter angle", HEIGHT, BOTH, TRIAL),
        ],
    )
    def test_tilted_teeth_are_told_whole(
        self, form: str, teeth: int, cutter: int, formula: str, name: str, height: Any, caution: str
    ) -> None:
        assert end_teeth(form=form, teeth=teeth, cutter_angle=cutter, outer=60, unit="in") == Part(
            "end_teeth",
            "in",
            (
                Size("Spindle above the table", TILT, "degrees", "general mathematics", f"cos of it = {formula}"),
                Size("Bottom of the grooves from square to the axis", BOTTOM, "degrees", "general mathematics"),
                Size(name, height, "in", "general mathematics"),
            ),
            divisions=teeth,
            tilt=TILT,
            methods=METHODS,
            methods_reason="With the spindle tilted the gears from spindle to plate do not mesh, so differential "
            "indexing is out.",
            cautions=(caution,),
            rim=60,
            drawing={"form": form, "teeth": teeth, "tilt": TILT, "cutter_angle": cutter},
        )

    def test_no_lengths_are_needed(self) -> None:
        part = end_teeth(form="saw_tooth", teeth=4, cutter_angle=60)
        assert [size.unit for size in part.sizes] == ["degrees", "degrees"]
        assert (part.unit, part.rim) == ("mm", None)

    def test_a_low_spindle_is_warned_of(self) -> None:
        # tan 72° cot 75° = 3.0777 / 3.7321 = 0.8247, the cosine of 34.4°.
        assert end_teeth(teeth=5, form="end_mill", cutter_angle=75).cautions == (LOW, LAND)

    @pytest.mark.parametrize(("tilt", "count"), [(44.5, 2), (45.5, 1)])
    def test_low_is_below_forty_five_degrees(self, tilt: float, count: int) -> None:
        cutter = degrees(atan(1 / cos(radians(tilt))))  # eight teeth: tan 45° cot c is to be the cosine of the tilt
        assert len(end_teeth(teeth=8, form="side_mill", cutter_angle=cutter).cautions) == count


class TestNoTilt:
    @pytest.mark.parametrize(
        ("form", "teeth", "sentence"),
        [
            ("end_mill", 4, "Give 5 teeth or more for an end mill: no tilt cuts fewer."),
            ("side_mill", 4, "Give 5 teeth or more for a side mill: no tilt cuts fewer."),
            ("saw_tooth", 2, "Give 3 teeth or more for a saw-tooth clutch: no tilt cuts fewer."),
            ("v_clutch", 1, "Give 2 teeth or more for a V clutch: one is no division."),
            ("straight", 1, "Give 2 teeth or more for a straight clutch: one is no division."),
        ],
    )
    def test_too_few_teeth(self, form: str, teeth: int, sentence: str) -> None:
        with pytest.raises(Refused) as refusal:
            end_teeth(teeth=teeth, form=form, cutter_angle=80)
        assert told(refusal.value) == [(("teeth",), sentence)]
        assert end_teeth(teeth=teeth + 1, form=form, cutter_angle=120 if form == "v_clutch" else 80).divisions

    @pytest.mark.parametrize(
        ("form", "angle", "most"), [("end_mill", 0, 89), ("saw_tooth", 89.5, 89), ("v_clutch", 180, 179)]
    )
    def test_no_such_cutter(self, form: str, angle: float, most: int) -> None:
        with pytest.raises(Refused) as refusal:
            end_teeth(teeth=12, form=form, cutter_angle=angle)
        sentence = f"The angle of such a cutter is above 0° and at most {most}°."
        assert told(refusal.value) == [(("cutter_angle",), sentence)]
        assert end_teeth(teeth=12, form=form, cutter_angle=most).tilt is not None

    def test_an_unknown_form_is_told_which_are_known(self) -> None:
        with pytest.raises(Refused) as refusal:
            end_teeth(teeth=12, form="hirth", cutter_angle=60)
        sentence = 'Give one of "end_mill", "side_mill", "saw_tooth", "v_clutch", "straight".'
        assert told(refusal.value) == [(("form",), sentence)]

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
        assert end_teeth(teeth=6, form="end_mill", cutter_angle=60 - 1e-11).tilt == 0

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


UPRIGHT = "Straight flanks lie in planes through the axis: the spindle stands upright, without tilt."
ACROSS = "An odd count is cut right across: one pass makes a flank on each side of the centre."
NOT_ACROSS = "An even count must not be cut across: stop each pass before the tooth opposite. An odd count is quicker."


class TestStraightClutches:
    @pytest.mark.parametrize("teeth", range(3, 16, 2))
    def test_an_odd_count_is_cut_across(self, teeth: int) -> None:
        part = end_teeth(teeth=teeth, form="straight", outer=60, inner=30, unit="mm")
        assert part.tilt is None
        assert value(part, "Passes") == teeth
        # The flank opposite lies half a turn on: a whole odd number of half pitches, so a flank of the other hand.
        assert (180 / (180 / teeth)) % 2 == 1

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

    @pytest.mark.parametrize(
        ("teeth", "angle", "passes", "how", "widest", "narrowest", "caution"),
        [
            # 20 sin 60° and 30 sin 30°
            (3, 60, 3, "right across", 10 * sqrt(3), 15, ACROSS),
            # 20 sin 30° and 30 sin 15°, the latter (√6 - √2)/4
            (6, 30, 12, "one side of a space each", 10, 7.5 * (sqrt(6) - sqrt(2)), NOT_ACROSS),
        ],
    )
    def test_they_are_told_whole(
        self, teeth: int, angle: Any, passes: int, how: str, widest: Any, narrowest: Any, caution: str
    ) -> None:
        widest, narrowest = pytest.approx(widest), pytest.approx(narrowest)
        assert end_teeth(teeth=teeth, form="straight", outer=60, inner=40, unit="in") == Part(
            "end_teeth",
            "in",
            (
                Size("Angle of a tooth and of a space", angle, "degrees", "general mathematics"),
                Size("Passes", passes, "", "general mathematics", how),
                Size("Widest cutter", widest, "in", "general mathematics", "space at the inside, square to one flank"),
                Size("Narrowest cutter that leaves no ridge", narrowest, "in", "general mathematics"),
            ),
            divisions=teeth,
            methods=METHODS,
            methods_reason="With the spindle upright the gears from spindle to plate do not mesh, so differential "
            "indexing is out.",
            cautions=(UPRIGHT, caution),
            rim=60,
            drawing={"form": "straight", "teeth": teeth},
        )

    def test_a_wide_face_leaves_a_ridge(self) -> None:
        # 10 sin 30° at the inside, 40 sin 15° = 10.4 at the outside.
        part = end_teeth(teeth=6, form="straight", outer=80, inner=20, unit="mm")
        assert part.cautions == (
            UPRIGHT,
            NOT_ACROSS,
            "No cutter clears a space in two passes: one of 5.000 mm leaves a ridge.",
        )

    @pytest.mark.parametrize("inner", [20, 30])
    def test_an_inside_no_smaller_than_the_outside_is_refused(self, inner: int) -> None:
        with pytest.raises(Refused) as refusal:
            end_teeth(teeth=5, form="straight", outer=20, inner=inner, unit="mm")
        assert told(refusal.value) == [
            (("inner",), "The inside diameter of the teeth is smaller than the outside: check both.")
        ]

    @pytest.mark.parametrize(
        ("given", "names", "rim"),
        [
            ({}, [], None),
            ({"inner": 30}, ["Widest cutter"], None),
            ({"outer": 60}, ["Narrowest cutter that leaves no ridge"], 60),
        ],
    )
    def test_a_length_left_out_leaves_out_its_cutter(self, given: dict[str, Any], names: list[str], rim: Any) -> None:
        part = end_teeth(teeth=5, form="straight", **given)
        assert [size.name for size in part.sizes] == ["Angle of a tooth and of a space", "Passes", *names]
        assert (part.unit, part.rim, part.cautions) == ("mm", rim, (UPRIGHT, ACROSS))
