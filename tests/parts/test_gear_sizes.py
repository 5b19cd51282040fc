"""Sizes that every involute gear has, by hand, and what is refused or warned of."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from math import cos, pi, radians, sin

import pytest

from dividing.indexing.faults import Refused
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
from dividing.parts.involute import Toothing
from dividing.parts.sizes import Size
from tests.parts.figures import told

TWENTY = radians(20)
SPUR = Toothing(24, 3.0, TWENTY)
HELICAL = Toothing(24, 3.0, TWENTY, helix=radians(15))


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
        assert by_name(pitch_sizes(SPUR, "mm")) == {"Module": 3.0, "Diametral pitch": pytest.approx(25.4 / 3)}
        inch = Toothing(24, 0.125, TWENTY, helix=radians(15))
        assert by_name(pitch_sizes(inch, "in")) == {
            "Normal module": pytest.approx(3.175),
            "Normal diametral pitch": pytest.approx(8),
        }


class TestTheBlank:
    def test_of_twenty_four_teeth_of_module_three(self) -> None:
        sizes = blank_sizes(SPUR, "mm", "a note", "a source")
        assert by_name(sizes) == {
            "Outside diameter": 78.0,  # m (z + 2)
            "Pitch diameter": 72.0,
            "Root diameter": 64.5,  # 78 - 2 x 6.75
            "Base diameter": pytest.approx(72 * cos(TWENTY)),
            "Addendum": 3.0,
            "Dedendum": 3.75,
            "Whole depth": 6.75,  # 2.25 m
            "Tooth thickness along the pitch circle": pytest.approx(3 * pi / 2),
        }
        assert [size.source for size in sizes[:2]] == [NAVY, NAVY]
        assert [size.source for size in blank_sizes(HELICAL, "mm", "", "")[:2]] == [METRIC, METRIC]

    def test_a_shift_moves_the_tooth_outwards_and_keeps_its_depth(self) -> None:
        shifted = by_name(blank_sizes(Toothing(24, 3.0, TWENTY, shift=0.5), "mm", "", ""))
        assert (shifted["Addendum"], shifted["Dedendum"], shifted["Whole depth"]) == (4.5, 2.25, 6.75)

    @pytest.mark.parametrize("convention", list(DEPTHS))
    def test_the_convention_of_the_depth_is_named_with_its_source(self, convention: str) -> None:
        note = f"{convention} m = {convention} / P, the convention chosen"
        assert depth_words(convention) == (note, DEPTHS[convention][1])


class TestMeasuring:
    def test_a_spur_gear_is_measured_by_caliper_span_and_pins(self) -> None:
        sizes = by_name(measuring_sizes(SPUR, "mm", None))
        # z a/180 + 1/2 = 3.17: three teeth. d sin(90/z) is the chord at the pitch circle.
        assert sizes["Chordal thickness"] == pytest.approx(72 * sin(radians(90 / 24)))
        assert sizes["Chordal addendum"] == pytest.approx(3 + 36 * (1 - cos(radians(90 / 24))))
        assert set(sizes) >= {"Span over 3 teeth", "Diameter of the pins", "Over two pins"}
        assert sizes["Diameter of the pins"] == pytest.approx(1.728 * 3)

    def test_a_helical_gear_has_balls_and_a_width_that_the_span_needs(self) -> None:
        sizes = by_name(measuring_sizes(HELICAL, "mm", None))
        (span,) = [value for name, value in sizes.items() if name.startswith("Span over")]
        assert sizes["Face width that the span needs"] == pytest.approx(span * sin(HELICAL.base_helix))
        assert "Over two balls" in sizes

    def test_an_odd_number_of_teeth_has_no_opposite_space(self) -> None:
        for teeth, where in ((24, "in opposite spaces"), (25, "in the two spaces most nearly opposite")):
            (over,) = [
                size
                for size in measuring_sizes(Toothing(teeth, 3.0, TWENTY), "mm", None)
                if size.name == "Over two pins"
            ]
            assert over.note == where

    def test_a_pin_of_ones_own_is_used_and_need_not_be_the_usual(self) -> None:
        sizes = by_name(measuring_sizes(SPUR, "mm", 5))
        assert sizes["Diameter of the pins"] == 5
        assert sizes["Over two pins"] == pytest.approx(SPUR.over_pins(5.0))

    @pytest.mark.parametrize("pin", [1, 60])
    def test_a_pin_that_does_not_seat_is_refused_with_one_that_does(self, pin: int) -> None:
        with pytest.raises(Refused) as refusal:
            measuring_sizes(SPUR, "mm", pin)
        ideal = SPUR.ideal_pin()
        assert ideal is not None
        sentence = f"A pin of {pin}.000 mm does not seat on the flanks of this tooth: try one near {ideal:.3f} mm."
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
        check_tooth_fields(45, "2.157")


class TestCautions:
    def test_undercut_begins_below_seventeen_and_a_half_teeth(self) -> None:
        # 2/sin^2(20) = 17.1 teeth; for 12 a shift of 1 - 12/17.1 = 0.298.
        assert tooth_cautions(Toothing(12, 3.0, TWENTY), "mm") == [
            "12 teeth at 20° are undercut by a rack-shaped cutter; from 18 teeth, or with a profile shift of 0.298 or "
            "more, they are not."
        ]
        assert tooth_cautions(Toothing(18, 3.0, TWENTY), "mm") == []
        assert tooth_cautions(Toothing(12, 3.0, TWENTY, shift=0.3), "mm") == []

    def test_a_tip_thinner_than_a_fifth_of_the_module_is_warned_of(self) -> None:
        gear = Toothing(12, 3.0, TWENTY, shift=0.7)
        tip = gear.half_angle(gear.tip) * gear.tip
        assert 0 < tip < 0.6
        assert tooth_cautions(gear, "mm") == [
            f"The tooth is only {tip:.3f} mm thick at the tip: a hardened gear may chip there."
        ]

    def test_below_twelve_teeth_there_is_no_form_cutter(self) -> None:
        none = ["No form cutter of the usual sets is made for fewer than 12 teeth: generate these teeth."]
        assert (cutter_sizes(11.5), cutter_cautions(11.5)) == ([], none)
        assert ([size.value for size in cutter_sizes(12)], cutter_cautions(12)) == ([8], [])


def test_the_drawing_has_the_circles_and_a_flank_from_root_to_tip() -> None:
    drawing = gear_drawing(SPUR)
    circles = {name: drawing[name] for name in ("teeth", "outside", "pitch", "root")}
    assert circles == {"teeth": 24, "outside": 78.0, "pitch": 72.0, "root": 64.5}
    flank = drawing["flank"]
    assert isinstance(flank, list)
    first, last = flank[0], flank[-1]
    assert isinstance(first, list)
    assert isinstance(last, list)
    assert (first[0], last[0]) == (pytest.approx(64.5 / 2), pytest.approx(39))


def test_teeth_between_which_no_pin_seats_are_measured_without_pins() -> None:
    # Shifted so far inwards that their flanks end below the pitch circle.
    sunk = Toothing(24, 3.0, TWENTY, shift=-3.0)
    assert sunk.ideal_pin() is None
    assert not [size for size in measuring_sizes(sunk, "mm", None) if "pins" in size.name]
    with pytest.raises(Refused) as refusal:
        measuring_sizes(sunk, "mm", 5)
    sentence = "A pin of 5.000 mm does not seat on the flanks of this tooth: try another."
    assert told(refusal.value) == [(("pin",), sentence)]
