"""Helical gears: both planes agree, and the lead gearing follows the head."""

from __future__ import annotations

from fractions import Fraction
from math import atan, cos, degrees, pi, radians, sin, tan
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.indexing.head import TWELVE_GEARS, Head, Screw
from dividing.parts.gear_sizes import METRIC, gear_drawing
from dividing.parts.helical_gear import helical_gear
from dividing.parts.involute import Toothing
from dividing.parts.lead_block import HELIX_REASON
from dividing.parts.sizes import MATHEMATICS, Size
from tests.parts.figures import told, value

HEAD = Head(change_gears=TWELVE_GEARS, screw=Screw(Fraction(5), "mm"))


@pytest.mark.parametrize("helix", [5, 15, 22.5, 30, 45])
class TestBothPlanes:
    def test_the_same_gear_given_in_either_plane_has_the_same_flanks(self, helix: float) -> None:
        normal = helical_gear(teeth=30, module=2, helix_angle=helix, hand="right", unit="mm")
        squeeze = cos(radians(helix))
        transverse = helical_gear(
            teeth=30,
            module=2 / squeeze,
            plane="transverse",
            pressure_angle=value(normal, "Transverse pressure angle"),
            helix_angle=helix,
            hand="right",
            unit="mm",
        )
        for name in ("Pitch diameter", "Base diameter", "Lead", "Formative teeth", "Normal pressure angle"):
            assert value(transverse, name) == pytest.approx(value(normal, name))
        thickness = "Tooth thickness along the pitch circle"
        assert value(transverse, thickness) == pytest.approx(value(normal, thickness))

    def test_the_helix_unrolled_is_the_long_side_of_a_triangle(self, helix: float) -> None:
        part = helical_gear(teeth=30, module=2, helix_angle=helix, hand="left", unit="mm")
        assert tan(radians(helix)) == pytest.approx(pi * value(part, "Pitch diameter") / value(part, "Lead"))

    def test_only_plain_indexing_goes_with_the_lead(self, helix: float) -> None:
        part = helical_gear(teeth=30, module=2, helix_angle=helix, hand="left", unit="mm", head=HEAD)
        assert part.methods == ("plain", "nearest")
        assert part.cautions[0] == part.methods_reason
        assert part.lead is not None
        assert part.lead["gearing"] is not None


def near(figure: float) -> Any:
    return pytest.approx(figure)


# cos 30° = √3/2 and sin 30° = 1/2, so 20 teeth of module 2 have a pitch circle of 80/√3 and a lead of 80 π.
THIRTY: dict[str, Any] = {"teeth": 20, "module": 2, "helix_angle": 30, "hand": "left", "unit": "mm"}


class TestToldWhole:
    def test_every_size_stands_in_its_place(self) -> None:
        part = helical_gear(**THIRTY)
        transverse = degrees(atan(tan(radians(20)) / cos(radians(30))))
        assert [size.name for size in part.sizes] == [
            "Normal module", "Normal diametral pitch", "Outside diameter", "Pitch diameter", "Root diameter",
            "Base diameter", "Addendum", "Dedendum", "Whole depth", "Tooth thickness along the pitch circle",
            "Transverse module", "Normal pressure angle", "Transverse pressure angle", "Helix angle", "Lead",
            "Table angle", "Formative teeth", "Chordal thickness", "Chordal addendum", "Span over 4 teeth",
            "Face width that the span needs", "Diameter of the balls", "Over two balls", "Form cutter",
        ]  # fmt: skip
        assert part.sizes[10:17] == (
            Size("Transverse module", near(4 / 3**0.5), "mm", METRIC, "normal module / cos of the helix angle"),
            Size("Normal pressure angle", near(20), "degrees", METRIC),
            Size("Transverse pressure angle", near(transverse), "degrees", METRIC),
            Size("Helix angle", near(30), "degrees", MATHEMATICS, "from the axis, at the pitch circle"),
            Size("Lead", near(80 * pi), "mm", MATHEMATICS, "π z m / sin of the helix angle"),
            Size("Table angle", near(30), "degrees", MATHEMATICS, "swivel to this, the way the hand asks"),
            Size(
                "Formative teeth",
                near(160 / 3**1.5),  # 20 / (√3/2)³
                "",
                METRIC,
                "z / cos³ of the helix angle, for the choice of the cutter",
            ),
        )
        assert value(part, "Whole depth") == 4.5
        assert value(part, "Form cutter") == 4  # 30.8 formative teeth: 26 to 34

    def test_inches_go_all_the_way_through(self) -> None:
        part = helical_gear(teeth=20, diametral_pitch=8, helix_angle=30, hand="left", unit="in", pin=Fraction("0.22"))
        units = [size.unit for size in part.sizes]
        assert units == ["mm", "", *["in"] * 8, "mm", *["degrees"] * 3, "in", "degrees", "", *["in"] * 6, ""]
        assert value(part, "Normal module") == near(3.175)
        assert value(part, "Transverse module") == near(3.175 / cos(radians(30)))
        assert value(part, "Lead") == near(20 * pi / 8 / sin(radians(30)))
        assert value(part, "Diameter of the balls") == 0.22
        assert part.unit == "in"
        assert part.lead is not None
        assert part.lead["unit"] == "in"
        sharp = helical_gear(
            teeth=12, diametral_pitch=8, helix_angle=20, hand="left", unit="in", profile_shift=Fraction("0.8")
        )
        assert "in thick at the tip" in sharp.cautions[0]

    def test_the_rest_of_it_too(self) -> None:
        part = helical_gear(**THIRTY, head=HEAD)
        assert (part.kind, part.unit, part.divisions) == ("helical_gear", "mm", 20)
        assert (part.rim, part.pitch_circle) == (near(80 / 3**0.5 + 4), near(80 / 3**0.5))
        assert part.methods_reason == HELIX_REASON
        assert part.drawing == {
            **gear_drawing(Toothing(20, 2.0, atan(tan(radians(20))), radians(30))),
            "helix_angle": 30,
            "hand": "left",
        }
        assert part.lead is not None
        assert (part.lead["wanted"], part.lead["hand"]) == (near(80 * pi), "left")
        assert part.lead["helix_angle"] == pytest.approx(30, abs=0.1)

    @pytest.mark.parametrize(
        ("head", "sentence"),
        [
            (
                HEAD,
                "Turn the crank by hand and watch the table and the work before cutting: if the helix would not be "
                "left-hand, add or take away one idler. The size of an idler changes nothing but the hand.",
            ),
            (
                Head(screw=Screw(Fraction(5), "mm")),
                "Give the change gears that you own (head.change_gears) to have the lead gearing worked out.",
            ),
            (None, "Give the table screw (head.screw) and the change gears to have the lead gearing worked out."),
        ],
    )
    def test_what_is_said_of_the_lead_follows_the_head(self, head: Head | None, sentence: str) -> None:
        assert helical_gear(**THIRTY, head=head).cautions == (HELIX_REASON, sentence)

    def test_few_and_steep_teeth_are_warned_of(self) -> None:
        cautions = helical_gear(teeth=3, module=2, helix_angle=50, hand="left", unit="mm").cautions
        # The tangent in the transverse plane is tan 20° / cos 50° = 0.56624, its sine squared 0.24278: from
        # 2 cos 50° / 0.24278 = 5.295 teeth on all is well, and 1 - 3 / 5.295 = 0.4334. Three teeth are 11.3 formative.
        assert cautions[:3] == (
            "3 teeth at 20° in the normal plane are undercut by a rack-shaped cutter; from 6 teeth, or with a profile "
            "shift of 0.434 or more, they are not.",
            "No form cutter of the usual sets is made for fewer than 12 teeth: generate these teeth.",
            HELIX_REASON,
        )
        assert cautions[3] == "Few tables swivel past 45°: at this helix angle swivel the cutter head instead."

    def test_a_lead_too_short_for_the_worm_is_indexed_by_the_teeth_of_the_spindle_gear(self) -> None:
        # The lead is 9 π 0.2 / sin 60° = 6.53 mm; the least that four gears give through the worm is
        # 200 x 24 x 24 / (100 x 86) = 13.4.
        lead = helical_gear(teeth=9, module=Fraction(1, 5), helix_angle=60, hand="right", unit="mm", head=HEAD).lead
        assert lead is not None
        train: Any = lead["by_spindle"]
        assert train["spindle"] == 9 * train["teeth_per_index"]


def test_module_shift_and_depth_may_be_meant_in_the_transverse_plane() -> None:
    part = helical_gear(
        teeth=30, module=2, plane="transverse", helix_angle=20, hand="left", unit="mm", whole_depth="2.157",
        profile_shift=Fraction(1, 4),
    )  # fmt: skip
    assert value(part, "Transverse pressure angle") == near(20)
    assert value(part, "Pitch diameter") == near(60)
    assert value(part, "Addendum") == near(2.5)  # 2 (1 + 1/4)
    assert value(part, "Outside diameter") == near(65)
    assert value(part, "Whole depth") == near(4.314)
    assert value(part, "Root diameter") == near(65 - 2 * 4.314)


# The tip of the rack lies h + x below its pitch line, in modules, and may reach down to the foot of the perpendicular
# from the gear's centre to the line of action, r sin² of the transverse pressure angle below the pitch point (first
# principles). In transverse modules r = z / 2, whatever the helix: x = 1 - 12 sin² 20° / 2 = 1 - 6 x 0.116978 = 0.2981,
# and 2 / 0.116978 = 17.1 teeth need none. In normal modules r = z / (2 cos 30°) and tan 20° / cos 30° = tan 22.796°:
# x = 1 - 10 x 0.150117 / 1.732051 = 0.1333, and 1.732051 / 0.150117 = 11.5 teeth need none.
@pytest.mark.parametrize(
    ("teeth", "plane", "least", "shift"), [(12, "transverse", 18, "0.299"), (10, "normal", 12, "0.134")]
)
def test_undercut_is_told_in_the_plane_in_which_the_gear_was_given(
    teeth: int, plane: str, least: int, shift: str
) -> None:
    asked: dict[str, Any] = {"module": 2, "plane": plane, "helix_angle": 30, "hand": "left", "unit": "mm"}
    assert helical_gear(teeth=teeth, **asked).cautions[0] == (
        f"{teeth} teeth at 20° in the {plane} plane are undercut by a rack-shaped cutter; from {least} teeth, or with "
        f"a profile shift of {shift} or more, they are not."
    )
    for part in (helical_gear(teeth=least, **asked), helical_gear(teeth=teeth, profile_shift=Fraction(shift), **asked)):
        assert not any("undercut" in caution for caution in part.cautions)
    scant = helical_gear(teeth=teeth, profile_shift=Fraction(shift) - Fraction(1, 1000), **asked)
    assert "undercut" in scant.cautions[0]


@pytest.mark.parametrize(
    ("given", "path", "sentence"),
    [
        ({"plane": "axial"}, "plane", 'Give one of "normal", "transverse".'),
        ({"hand": "up"}, "hand", 'Give one of "right", "left".'),
        ({"whole_depth": "2"}, "whole_depth", 'Give one of "2.25", "2.157", "2.166".'),
        ({"pressure_angle": 46}, "pressure_angle", "A pressure angle is above 0° and at most 45°."),
        ({"teeth": 1}, "teeth", "Teeth of this depth would meet in the axis: 1 teeth are too few."),
    ],
)
def test_what_cannot_be_is_refused(given: dict[str, Any], path: str, sentence: str) -> None:
    usual = {"teeth": 30, "module": 2, "helix_angle": 20, "hand": "left", "unit": "mm"}
    with pytest.raises(Refused) as refusal:
        helical_gear(**(usual | given))
    assert told(refusal.value) == [((path,), sentence)]


def test_a_helix_of_less_than_a_degree_is_one() -> None:
    part = helical_gear(teeth=30, module=2, helix_angle=Fraction(1, 2), hand="left", unit="mm")
    assert value(part, "Helix angle") == near(0.5)


@pytest.mark.parametrize("angle", [0, 90, -5])
def test_an_angle_without_a_helix_is_refused(angle: int) -> None:
    with pytest.raises(Refused) as refusal:
        helical_gear(teeth=30, module=2, helix_angle=angle, hand="left", unit="mm")
    assert told(refusal.value) == [
        (
            ("helix_angle",),
            "A helix angle lies between 0° and 90° from the axis; for straight teeth take a spur gear.",
        )
    ]
