"""Sizes that every involute gear has, by hand, and what is refused or warned of."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from math import acos, cos, pi, radians, sin, tan
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.form_cutters import SOURCE
from dividing.parts.gear_sizes import (
    DEPTHS,
    METRIC,
    NAVY,
    blank_sizes,
    check_tooth,
    check_tooth_fields,
    cutter_cautions,
    cutter_sizes,
    depth_words,
    gear_drawing,
    measuring_sizes,
    module_in_unit,
    pitch_sizes,
    tooth_cautions,
)
from dividing.parts.involute import Toothing, inv
from dividing.parts.sizes import MATHEMATICS, RECALLED, Size, shown
from tests.parts.figures import told

TWENTY = radians(20)
SPUR = Toothing(24, 3.0, TWENTY)
HELICAL = Toothing(24, 3.0, TWENTY, helix=radians(15))


def near(figure: float | None) -> Any:
    return pytest.approx(figure)


def by_name(sizes: list[Size]) -> dict[str, float]:
    return {size.name: size.value for size in sizes}


class TestThePitch:
    @pytest.mark.parametrize(
        ("unit", "module", "diametral_pitch", "length"),
        [
            ("mm", 3, None, 3.0),
            ("in", Fraction(254, 10), None, 1.0),
            ("in", None, 8, 0.125),
            ("mm", None, 8, 3.175),
        ],
    )
    def test_either_way_it_is_the_module_in_the_unit_asked_for(
        self, unit: str, module: int | Fraction | None, diametral_pitch: int | None, length: float
    ) -> None:
        assert module_in_unit(unit, module, diametral_pitch) == pytest.approx(length)

    @pytest.mark.parametrize(
        ("module", "diametral_pitch", "path", "sentence"),
        [
            (None, None, (), "Give module or diametral_pitch."),
            (3, 8, ("diametral_pitch",), "Give module or diametral_pitch, and only one of them."),
        ],
    )
    def test_one_of_the_two_is_given(
        self, module: int | None, diametral_pitch: int | None, path: tuple[str, ...], sentence: str
    ) -> None:
        with pytest.raises(Refused) as refusal:
            module_in_unit("mm", module, diametral_pitch)
        assert told(refusal.value) == [(path, sentence)]

    def test_both_are_told_on_helical_teeth_square_to_the_tooth(self) -> None:
        millimetres, per_inch = "always in millimetres", "25.4 / module"
        assert pitch_sizes(SPUR, "mm") == [
            Size("Module", 3, "mm", MATHEMATICS, millimetres),
            Size("Diametral pitch", near(25.4 / 3), "", MATHEMATICS, per_inch),
        ]
        assert pitch_sizes(Toothing(24, 0.125, TWENTY, helix=radians(15)), "in") == [
            Size("Normal module", near(3.175), "mm", MATHEMATICS, millimetres),
            Size("Normal diametral pitch", near(8), "", MATHEMATICS, per_inch),
        ]


class TestTheBlank:
    def test_of_twenty_four_teeth_of_module_three(self) -> None:
        assert blank_sizes(SPUR, "mm", "a note", "a source") == [
            Size("Outside diameter", 78, "mm", NAVY),  # m (z + 2)
            Size("Pitch diameter", 72, "mm", NAVY),
            Size("Root diameter", 64.5, "mm", MATHEMATICS),  # 78 - 2 x 6.75
            Size("Base diameter", near(72 * cos(TWENTY)), "mm", MATHEMATICS),
            Size("Addendum", 3, "mm", NAVY),
            Size("Dedendum", 3.75, "mm", "a source"),
            Size("Whole depth", 6.75, "mm", "a source", "a note"),  # 2.25 m
            Size(
                "Tooth thickness along the pitch circle",
                near(3 * pi / 2),
                "mm",
                MATHEMATICS,
                "an arc; normal to the tooth",
            ),
        ]

    def test_of_helical_teeth_has_its_diameters_from_the_metric_tables(self) -> None:
        outside, pitch = blank_sizes(HELICAL, "in", "", "")[:2]
        # d = z m / cos b
        assert outside == Size("Outside diameter", near(72 / cos(radians(15)) + 6), "in", METRIC)
        assert pitch == Size("Pitch diameter", near(72 / cos(radians(15))), "in", METRIC)

    def test_a_shift_moves_the_tooth_outwards_and_keeps_its_depth(self) -> None:
        shifted = by_name(blank_sizes(Toothing(24, 3.0, TWENTY, shift=0.5), "mm", "", ""))
        assert (shifted["Addendum"], shifted["Dedendum"], shifted["Whole depth"]) == (4.5, 2.25, 6.75)

    @pytest.mark.parametrize("convention", list(DEPTHS))
    def test_the_convention_of_the_depth_is_named_with_its_source(self, convention: str) -> None:
        note = f"{convention} m = {convention} / P, the convention chosen"
        assert depth_words(convention) == (note, DEPTHS[convention][1])


CALIPER = "gear-tooth caliper, set to the chordal addendum"
PLATES = "plate calipers or micrometer with discs"
# The usual pin of 1.728 modules is too small for these, whose spaces are wide at the tip.
WIDE = Toothing(12, 3.0, TWENTY, shift=0.8)
# So far inwards that their flanks end below the base circle.
SUNK = Toothing(24, 3.0, TWENTY, shift=-3.0)
# So far that a pin which touches near the pitch circle would not stand proud of the tips.
LOW = Toothing(38, 3.0, radians(16), helix=radians(45), shift=-1.7)


class TestMeasuring:
    def test_a_spur_gear_is_measured_by_caliper_span_and_pins(self) -> None:
        # z a/180 + 1/2 = 3.17: three teeth. d sin(90/z) is the chord at the pitch circle.
        assert measuring_sizes(SPUR, "mm", None) == [
            Size("Chordal thickness", near(72 * sin(radians(90 / 24))), "mm", METRIC, CALIPER),
            Size("Chordal addendum", near(3 + 36 * (1 - cos(radians(90 / 24)))), "mm", METRIC),
            Size("Span over 3 teeth", near(SPUR.span(3)), "mm", MATHEMATICS, PLATES),
            Size("Diameter of the pins", near(1.728 * 3), "mm", RECALLED),
            Size("Over two pins", near(SPUR.over_pins(1.728 * 3)), "mm", MATHEMATICS, "in opposite spaces"),
        ]

    def test_a_helical_gear_has_balls_and_a_width_that_the_span_needs(self) -> None:
        chord, height = HELICAL.chordal()
        width = HELICAL.span(3) * sin(HELICAL.base_helix)
        assert measuring_sizes(HELICAL, "in", None) == [
            Size("Chordal thickness", near(chord), "in", METRIC, CALIPER),
            Size("Chordal addendum", near(height), "in", METRIC),
            Size("Span over 3 teeth", near(HELICAL.span(3)), "in", MATHEMATICS, PLATES),
            Size("Face width that the span needs", near(width), "in", MATHEMATICS, "and a little more"),
            Size("Diameter of the balls", near(1.728 * 3), "in", RECALLED),
            Size("Over two balls", near(HELICAL.over_pins(1.728 * 3)), "in", MATHEMATICS, "in opposite spaces"),
        ]

    @pytest.mark.parametrize(
        ("teeth", "where"), [(26, "in opposite spaces"), (27, "in the two spaces most nearly opposite")]
    )
    def test_an_odd_number_of_teeth_has_no_opposite_space(self, teeth: int, where: str) -> None:
        over = measuring_sizes(Toothing(teeth, 3.0, TWENTY), "mm", None)[-1]
        assert (over.name, over.note) == ("Over two pins", where)

    def test_a_pin_of_ones_own_is_used_and_need_not_be_the_usual(self) -> None:
        assert measuring_sizes(SPUR, "mm", 5)[-2:] == [
            Size("Diameter of the pins", 5, "mm", "as given"),
            Size("Over two pins", near(SPUR.over_pins(5.0)), "mm", MATHEMATICS, "in opposite spaces"),
        ]

    def test_where_the_usual_pin_does_not_seat_one_is_worked_out(self) -> None:
        assert WIDE.over_pins(1.728 * 3) is None
        pin, over = measuring_sizes(WIDE, "mm", None)[-2:]
        ideal = WIDE.ideal_pin()
        assert ideal is not None
        assert pin == Size("Diameter of the pins", near(ideal), "mm", MATHEMATICS)
        assert over.value == near(WIDE.over_pins(ideal))

    def test_what_a_pin_or_the_jaws_cannot_touch_is_left_out(self) -> None:
        assert [size.name for size in measuring_sizes(SUNK, "mm", None)] == ["Chordal thickness", "Chordal addendum"]
        assert not [size for size in measuring_sizes(LOW, "mm", None) if "balls" in size.name]
        # Three threads at 65° would be spanned all three, which leaves no space between them for the jaws.
        worm = Toothing(3, 3.0, TWENTY, helix=radians(65))
        assert worm.span_teeth() == 3
        assert not [size for size in measuring_sizes(worm, "mm", None) if size.name.startswith(("Span", "Face"))]

    # Touching on the pitch circle: 72 cos 20° (tan(20° + 90°/24) - tan 20°) = 5.145.
    @pytest.mark.parametrize(
        ("gear", "pin", "advice"),
        [
            (SPUR, 1, "try one near 5.145 mm."),
            (SPUR, 60, "try one near 5.145 mm."),
            (SUNK, 5, "try another."),
            (LOW, 5, "try another."),
        ],
    )
    def test_a_pin_that_does_not_seat_is_refused_with_one_that_does(
        self, gear: Toothing, pin: int, advice: str
    ) -> None:
        with pytest.raises(Refused) as refusal:
            measuring_sizes(gear, "mm", pin)
        sentence = f"A pin of {pin}.000 mm does not seat on the flanks of this tooth: {advice}"
        assert told(refusal.value) == [(("pin",), sentence)]


class TestWhatCannotBe:
    @pytest.mark.parametrize(
        ("make", "path", "sentence"),
        [
            (
                lambda: check_tooth(Toothing(2, 3.0, TWENTY)),
                "teeth",
                "Teeth of this depth would meet in the axis: 2 teeth are too few.",
            ),
            (
                # 2 (2 + 2 x 1.25) outside, twice 4.5 deep
                lambda: check_tooth(Toothing(2, 2.0, TWENTY, shift=0.25)),
                "teeth",
                "Teeth of this depth would meet in the axis: 2 teeth are too few.",
            ),
            (
                # Without a pressure angle the base circle is the pitch circle, where these teeth end.
                lambda: check_tooth(Toothing(24, 3.0, 0.0, shift=-1.0)),
                "profile_shift",
                "The teeth end below the base circle and have no flank: give a larger profile_shift.",
            ),
            (
                lambda: check_tooth(Toothing(60, 3.0, radians(20), shift=-3.0)),
                "profile_shift",
                "The teeth end below the base circle and have no flank: give a larger profile_shift.",
            ),
            (
                lambda: check_tooth(Toothing(12, 3.0, TWENTY, shift=1.5), "addendum"),
                "addendum",
                "The teeth come to a point below the outside diameter: give a smaller addendum.",
            ),
            (
                lambda: check_tooth_fields(0, "2.25"),
                "pressure_angle",
                "A pressure angle is above 0° and at most 45°.",
            ),
            (
                lambda: check_tooth_fields(46, "2.25"),
                "pressure_angle",
                "A pressure angle is above 0° and at most 45°.",
            ),
            (
                lambda: check_tooth_fields(20, "2.2"),
                "whole_depth",
                'Give one of "2.25", "2.157", "2.166".',
            ),
        ],
    )
    def test_is_refused(self, make: Callable[[], None], path: str, sentence: str) -> None:
        with pytest.raises(Refused) as refusal:
            make()
        assert told(refusal.value) == [((path,), sentence)]

    def test_a_usual_tooth_is_not(self) -> None:
        for teeth in range(8, 200):
            check_tooth(Toothing(teeth, 3.0, TWENTY))
        check_tooth(Toothing(3, 1.0, TWENTY))  # 5 outside, twice 2.25 deep: half a millimetre is left
        check_tooth_fields(0.5, "2.157")
        check_tooth_fields(45, "2.157")


class TestCautions:
    # 2 cos b / sin² of the transverse pressure angle: 17.1 teeth at 20°, 8 at 30°. At 20° and a helix of 30° the
    # transverse angle is 22.796°, and 11.5 teeth will do.
    @pytest.mark.parametrize(
        ("gear", "said"),
        [
            (Toothing(12, 3.0, TWENTY), ("12 teeth at 20°", 18, "0.299")),  # 1 - 12/17.097 = 0.2981, told up
            (Toothing(12, 3.0, TWENTY, shift=0.2), ("12 teeth at 20°", 14, "0.299")),  # 0.8 x 17.1 = 13.7
            (Toothing(6, 3.0, radians(30)), ("6 teeth at 30°", 8, "0.250")),
            # 1 - 10/11.538 = 0.1333
            (Toothing(10, 3.0, TWENTY, helix=radians(30)), ("10 teeth at 20° in the normal plane", 12, "0.134")),
            # An addendum of 0.8 modules: 13.678 teeth, 0.8 (1 - 10/13.678) = 0.2151; shifted by 0.16,
            # 0.8 x 13.678 = 10.9.
            (Toothing(10, 3.0, TWENTY, shift=0.16, addendum=0.8), ("10 teeth at 20°", 11, "0.216")),
        ],
    )
    def test_few_teeth_are_undercut(self, gear: Toothing, said: tuple[str, int, str]) -> None:
        these, teeth, shift = said
        assert tooth_cautions(gear, "mm")[0] == (
            f"{these} are undercut by a rack-shaped cutter; from {teeth} teeth, or with a profile shift of {shift} or "
            f"more, they are not."
        )

    @pytest.mark.parametrize(
        "gear",
        [
            Toothing(18, 3.0, TWENTY),
            Toothing(8, 3.0, radians(30)),
            Toothing(12, 3.0, TWENTY, shift=1 - 6 * sin(TWENTY) ** 2),  # the very shift that is needed
            Toothing(14, 3.0, TWENTY, shift=0.2),
            Toothing(12, 3.0, TWENTY, helix=radians(30)),
        ],
    )
    def test_enough_teeth_or_shift_are_not(self, gear: Toothing) -> None:
        assert not [caution for caution in tooth_cautions(gear, "mm") if "undercut" in caution]

    @pytest.mark.parametrize(("unit", "shift", "helix"), [("mm", 0.7, 0), ("in", 0.7, 0), ("mm", 0.8, 20)])
    def test_a_tip_thinner_than_a_fifth_of_the_module_is_warned_of(self, unit: str, shift: float, helix: int) -> None:
        gear = Toothing(12, 3.0, TWENTY, helix=radians(helix), shift=shift)
        # s_a = d_a ((π/2 + 2 x tan a) / z + inv a_t - inv a_a), here square to the tooth.
        at_tip = acos(gear.base / gear.tip)
        angle = (pi / 2 + 2 * shift * tan(TWENTY)) / 12 + inv(gear.transverse_pressure) - inv(at_tip)
        tip = gear.tip * angle * cos(radians(helix))
        assert 0 < tip < 0.6
        assert tooth_cautions(gear, unit) == [
            f"The tooth is only {shown(tip, unit)} thick at the tip: a hardened gear may chip there."
        ]

    def test_a_usual_tooth_is_warned_of_nothing(self) -> None:
        assert tooth_cautions(SPUR, "mm") == tooth_cautions(HELICAL, "mm") == []

    def test_below_twelve_teeth_there_is_no_form_cutter(self) -> None:
        none = ["No form cutter of the usual sets is made for fewer than 12 teeth: generate these teeth."]
        assert (cutter_sizes(11.5), cutter_cautions(11.5)) == ([], none)
        note = "for 12 to 13 teeth; go by this range: many module cutters are numbered the other way (there No. 1)"
        assert cutter_sizes(12) == [Size("Form cutter", 8, "", SOURCE, note)]
        assert cutter_cautions(12) == []


def test_the_drawing_has_the_circles_and_a_flank_from_root_to_tip() -> None:
    assert gear_drawing(SPUR) == {
        "teeth": 24,
        "outside": 78,
        "pitch": 72,
        "base": near(72 * cos(TWENTY)),
        "root": 64.5,
        "flank": [[radius, angle] for radius, angle in SPUR.flank()],
    }
