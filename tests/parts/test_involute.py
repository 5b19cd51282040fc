"""Involute teeth: formulas against flanks unwound point by point and measured as a caliper and pins would."""

from __future__ import annotations

from math import atan, cos, hypot, pi, radians, sin, sqrt, tan

import pytest

from dividing.parts.involute import USUAL_PIN, Toothing, inv
from tests.parts.generated import Flank, over_teeth, over_two_pins, solved, unwound

SPUR = [
    Toothing(teeth, module, radians(angle), shift=shift)
    for teeth, module, angle, shift in (
        (12, 2.0, 20, 0.3),
        (17, 2.5, 20, 0.0),
        (24, 3.0, 20, 0.4),
        (25, 1.0, 14.5, 0.0),
        (33, 0.125, 14.5, 0.0),
        (60, 4.0, 20, -0.25),
        (97, 1.5, 25, 0.1),
        (150, 1.0, 20, 0.0),
    )
]
HELICAL = [
    Toothing(teeth, module, radians(20), helix=radians(helix), shift=shift)
    for teeth, module, helix, shift in ((16, 5.0, 25, 0.2), (30, 2.0, 15, 0.0), (41, 3.0, 30, 0.1), (55, 1.0, 45, 0.0))
]
SHIFTED = [
    Toothing(teeth, module, radians(angle), helix=radians(helix), shift=shift)
    for teeth, module, angle, helix, shift in (
        (90, 1.0, 20, 40, 0.6),
        (61, 2.0, 25, 35, -0.5),
        (120, 1.5, 14.5, 20, 1.0),
        (200, 1.0, 20, 10, 0.9),
        (40, 2.0, 20, 0, 0.9),
        (75, 2.0, 30, 45, 0.5),
        *((teeth, 2.0, 30, 0, 0.9) for teeth in range(40, 46)),
    )
]
SHORT = Toothing(6, 3.0, radians(20), shift=1.0, addendum=0.3)
"""Six teeth shifted far outwards and turned down before they come to a point: a pin's centre stands at 65°."""


def transverse_flank(gear: Toothing) -> Flank:
    """The flank seen along the axis, built from first figures: pressure angle and thickness of that plane."""
    pitch = gear.teeth * gear.module / cos(gear.helix)
    pressure = atan(tan(gear.pressure) / cos(gear.helix))
    thickness = gear.module * (pi / 2 + 2 * gear.shift * tan(gear.pressure)) / cos(gear.helix)
    return Flank(base=pitch * cos(pressure), pitch=pitch, thickness=thickness)


def lean_on_the_base(gear: Toothing) -> float:
    """Helix angle on the base cylinder, from the lead: the same lead runs round a smaller circle."""
    pitch = gear.teeth * gear.module / cos(gear.helix)
    lead = pi * pitch / tan(gear.helix) if gear.helix else None
    base = pitch * cos(atan(tan(gear.pressure) / cos(gear.helix)))
    return atan(pi * base / lead) if lead else 0.0


def touching_at(gear: Toothing, diameter: float) -> float:
    """The pin or ball that touches both flanks of a space on this circle.

    Its centre lies on the unwound string, drawn on past the flank, where that meets the middle of the space.
    """
    flank, lean = transverse_flank(gear), lean_on_the_base(gear)
    half_space = pi / gear.teeth - (pi / 2 - flank.turn)

    def pin(centre: float) -> float:
        return 2 * flank.base * (tan(centre) - centre + half_space) * cos(lean)

    def touches(centre: float) -> float:
        return 2 * hypot(flank.base, flank.base * tan(centre) - pin(centre) / 2 * cos(lean))

    return pin(solved(lambda centre: touches(centre) - diameter, 0.01, 1.5))


class TestTheInvoluteFunction:
    @pytest.mark.parametrize("degrees", [5, 14.5, 20, 25, 30, 45, 60])
    def test_it_is_the_polar_angle_of_an_unwound_string(self, degrees: float) -> None:
        # A string unwound by tan(a) ends where the pressure angle is a.
        x, y = unwound(1.0, tan(radians(degrees)))
        assert inv(radians(degrees)) == pytest.approx(atan(y / x), abs=1e-12)
        assert hypot(x, y) == pytest.approx(1 / cos(radians(degrees)))


class TestSpan:
    @pytest.mark.parametrize("gear", SPUR)
    def test_a_caliper_over_unwound_teeth_reads_the_span(self, gear: Toothing) -> None:
        teeth = gear.span_teeth()
        reading, radius = over_teeth(transverse_flank(gear), gear.teeth, teeth)
        assert gear.span(teeth) == pytest.approx(reading, abs=1e-7)
        assert gear.span_touches_at(teeth) == pytest.approx(2 * radius, abs=1e-4)

    @pytest.mark.parametrize("gear", HELICAL)
    def test_on_helical_teeth_it_reads_square_to_the_tooth(self, gear: Toothing) -> None:
        teeth = gear.span_teeth()
        reading, _ = over_teeth(transverse_flank(gear), gear.teeth, teeth)
        assert gear.span(teeth) == pytest.approx(reading * cos(lean_on_the_base(gear)), abs=1e-7)

    @pytest.mark.parametrize("gear", SPUR + HELICAL)
    def test_the_jaws_touch_the_flank_between_base_and_tip(self, gear: Toothing) -> None:
        assert gear.base < gear.span_touches_at(gear.span_teeth()) < gear.tip

    @pytest.mark.parametrize("gear", SPUR + HELICAL + SHIFTED)
    def test_one_tooth_more_or_less_touches_further_from_the_shifted_pitch_circle(self, gear: Toothing) -> None:
        flank, number, lean = transverse_flank(gear), gear.span_teeth(), lean_on_the_base(gear)
        circle = gear.teeth * gear.module / cos(gear.helix) + 2 * gear.shift * gear.module
        # What the shifted pitch circle cuts off from a tangent of the base circle. The caliper lies across helical
        # teeth: it reads the flanks' distance times the cosine of their lean, and seen along the axis that again.
        wanted = sqrt(circle**2 - (2 * flank.base) ** 2)
        off = {
            teeth: abs(over_teeth(flank, gear.teeth, teeth)[0] * cos(lean) ** 2 - wanted)
            for teeth in (number - 1, number, number + 1)
        }
        assert min(off, key=off.__getitem__) == number

    def test_two_teeth_are_spanned_at_least(self) -> None:
        # Five teeth of 20°: 5 x 20/180 + 1/2 is one; shifted three modules inwards they end within the base circle.
        assert Toothing(5, 2.0, radians(20)).span_teeth() == 2
        assert Toothing(24, 3.0, radians(20), shift=-3.0).span_teeth() == 2

    @pytest.mark.parametrize("teeth", range(8, 201))
    @pytest.mark.parametrize("angle", [14.5, 20.0])
    def test_without_shift_the_number_is_nearest_to_the_rule_of_the_shop(self, teeth: int, angle: float) -> None:
        rule = teeth * angle / 180 + 0.5
        number = Toothing(teeth, 1.0, radians(angle)).span_teeth()
        # The exact rule has tan(a) - inv(a) = a in it, so the two agree to the rounding of a tie.
        assert number == 2 if rule < 1.5 else abs(number - rule) <= 0.5 + 1e-9


class TestPins:
    @pytest.mark.parametrize("gear", [*SPUR, *HELICAL, SHORT])
    def test_it_seats_as_long_as_it_touches_below_the_tip(self, gear: Toothing) -> None:
        assert gear.over_pins(touching_at(gear, gear.tip * (1 - 1e-6))) is not None
        assert gear.over_pins(touching_at(gear, gear.tip * (1 + 1e-6))) is None

    @pytest.mark.parametrize("gear", [*SPUR, SHORT])
    def test_pins_between_unwound_flanks_read_the_same(self, gear: Toothing) -> None:
        pin = USUAL_PIN * gear.module
        if gear.over_pins(pin) is None:
            pin = gear.ideal_pin() or 0.0
        reading, _ = over_two_pins(transverse_flank(gear), gear.teeth, pin)
        assert gear.over_pins(pin) == pytest.approx(reading, abs=1e-6)

    @pytest.mark.parametrize("gear", HELICAL)
    def test_balls_between_helical_flanks_read_the_same(self, gear: Toothing) -> None:
        pin = USUAL_PIN * gear.module
        # A ball touches square to the flank: seen along the axis it reaches as far as a pin 1/cos thicker.
        seen = pin / cos(lean_on_the_base(gear))
        reading, _ = over_two_pins(transverse_flank(gear), gear.teeth, seen)
        assert gear.over_pins(pin) == pytest.approx(reading - seen + pin, abs=1e-6)

    @pytest.mark.parametrize("gear", [*SPUR, SHORT])
    def test_the_ideal_pin_touches_near_the_shifted_pitch_circle(self, gear: Toothing) -> None:
        pin = gear.ideal_pin()
        assert pin is not None
        _, radius = over_two_pins(transverse_flank(gear), gear.teeth, pin)
        assert 2 * radius == pytest.approx(gear.pitch + 2 * gear.shift * gear.module, abs=1e-4 * gear.module)

    def test_a_pin_that_falls_in_or_stays_out_is_no_measure(self) -> None:
        gear = SPUR[2]
        assert gear.over_pins(1.0 * gear.module) is None
        assert gear.over_pins(4.0 * gear.module) is None


class TestChordal:
    @pytest.mark.parametrize("gear", SPUR)
    def test_the_caliper_rests_on_the_tip_and_touches_on_the_pitch_circle(self, gear: Toothing) -> None:
        half = gear.thickness / gear.pitch
        chord, height = gear.chordal()
        assert chord == pytest.approx(gear.pitch * sin(half), abs=1e-9)
        assert height == pytest.approx(gear.tip / 2 - gear.pitch / 2 * cos(half), abs=1e-9)


class TestFlank:
    @pytest.mark.parametrize("gear", SPUR + HELICAL)
    def test_the_drawn_flank_lies_on_the_unwound_one(self, gear: Toothing) -> None:
        flank = transverse_flank(gear)
        for radius, half in gear.flank()[1:]:
            if radius * 2 > gear.base * 1.0001:
                roll = ((radius / flank.base) ** 2 - 1) ** 0.5
                x, y = flank.at(roll)
                assert atan(x / y) == pytest.approx(half, abs=1e-9)

    def test_it_runs_from_root_to_tip(self) -> None:
        gear = SPUR[1]
        assert gear.flank()[0][0] == gear.root / 2
        assert gear.flank()[-1][0] == gear.tip / 2

    def test_below_the_base_circle_it_is_drawn_straight_towards_the_axis(self) -> None:
        # Seventeen teeth of module 2.5: the root, 36.25, lies within the base circle, 42.5 cos 20° = 39.94.
        root, base, *rest = SPUR[1].flank()
        assert (root[0], base[0], len(rest)) == (18.125, pytest.approx(21.25 * cos(radians(20))), 8)
        assert root[1] == base[1]

    def test_outside_the_base_circle_it_is_involute_all_along(self) -> None:
        # Sixty teeth of module 4, shifted by -1/4: the root, 228, lies outside the base circle, 240 cos 20° = 225.5.
        radii = [radius for radius, _ in SPUR[5].flank()]
        # Root 240 - 2 x 4 (1.25 + 0.25) = 228, outside 240 + 2 x 4 x 0.75 = 246: eight equal steps of the radius.
        assert radii == pytest.approx([114 + step * 9 / 8 for step in range(9)])


class TestUndercut:
    @pytest.mark.parametrize("angle", [14.5, 20.0, 25.0])
    @pytest.mark.parametrize("teeth", range(6, 45))
    def test_a_rack_undercuts_when_its_tip_passes_the_foot_on_the_line_of_action(
        self, teeth: int, angle: float
    ) -> None:
        # The foot of the perpendicular from the centre onto the line of action, seen from the pitch point.
        radius, slope = teeth / 2, radians(angle)
        along = radius * sin(slope)
        below = along * sin(slope)
        assert (teeth < Toothing(teeth, 1.0, slope).least_unshifted) == (below < 1)


class TestPinsThatCannotBe:
    def test_a_tooth_without_flank_at_the_shifted_pitch_circle_has_no_ideal_pin(self) -> None:
        # Inwards so far that 24 cos(20) is more than 24 - 6 teeth; outwards so far that the flanks turn past a quarter.
        assert Toothing(24, 3.0, radians(20), shift=-3.0).ideal_pin() is None
        assert Toothing(5, 3.0, radians(20), shift=5.0).ideal_pin() is None

    @pytest.mark.parametrize("teeth", [18, 24, 60])
    @pytest.mark.parametrize("beside", [1e-6, 1e-7, 1e-8, 1e-9, 1e-10])
    def test_a_pin_that_touches_on_the_base_circle_sinks_below_the_tip(self, teeth: int, beside: float) -> None:
        gear = Toothing(teeth, 3.0, radians(20))
        # Its centre stands on the involute that begins a hair beside the middle of the space.
        pin = (beside - inv(radians(20)) + pi / 2 / teeth) * teeth * 3.0 * cos(radians(20))
        assert pin > 0
        assert gear.over_pins(pin) is None
