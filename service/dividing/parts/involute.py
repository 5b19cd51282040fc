"""The involute tooth, straight or helical: thicknesses and what calipers and pins read on it.

z teeth, m normal module, a pressure angle in the normal plane, b helix angle at the pitch circle (0: a spur
gear), x profile shift. A transverse quantity is one seen along the axis. A helical tooth is measured square
to itself, on the formative gear of z/cos^3(b) teeth.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import acos, atan, cos, pi, sin, sqrt, tan

USUAL_PIN = 1.728
"""Pin diameter over module in the usual tables for external teeth (recalled)."""
FLANK_STEPS = 8
"""Parts into which a drawn flank is split."""


def inv(angle: float) -> float:
    """The involute function, tan(angle) - angle, in radians.

    >>> from math import radians
    >>> round(inv(radians(20)), 6)
    0.014904
    """
    return tan(angle) - angle


@dataclass(frozen=True, slots=True)
class Toothing:
    """External involute teeth. Angles are radians; `addendum` and `depth` (whole) are in modules.

    >>> from math import radians
    >>> gear = Toothing(teeth=24, module=3.0, pressure=radians(20), shift=0.4)
    >>> gear.pitch, round(gear.span(4), 4)
    (72.0, 32.8266)
    """

    teeth: int
    module: float
    pressure: float
    helix: float = 0.0
    shift: float = 0.0
    addendum: float = 1.0
    depth: float = 2.25

    @property
    def transverse_pressure(self) -> float:
        """Pressure angle seen along the axis."""
        return atan(tan(self.pressure) / cos(self.helix))

    @property
    def base_helix(self) -> float:
        """Helix angle on the base cylinder: sin = sin(b) cos(a)."""
        return atan(tan(self.helix) * cos(self.transverse_pressure))

    @property
    def pitch(self) -> float:
        """Pitch diameter."""
        return self.teeth * self.module / cos(self.helix)

    @property
    def base(self) -> float:
        """Base-circle diameter."""
        return self.pitch * cos(self.transverse_pressure)

    @property
    def tip(self) -> float:
        """Outside diameter."""
        return self.pitch + 2 * self.module * (self.addendum + self.shift)

    @property
    def root(self) -> float:
        """Root diameter."""
        return self.tip - 2 * self.depth * self.module

    @property
    def formative(self) -> float:
        """Teeth of the gear whose tooth looks like this one seen square to the tooth."""
        return self.teeth / cos(self.helix) ** 3

    @property
    def thickness(self) -> float:
        """Thickness along the pitch circle, in the normal plane."""
        return self.module * (pi / 2 + 2 * self.shift * tan(self.pressure))

    @property
    def least_unshifted(self) -> float:
        """Teeth below which a rack-shaped cutter undercuts an unshifted gear."""
        return 2 * self.addendum * cos(self.helix) / sin(self.transverse_pressure) ** 2

    def chordal(self) -> tuple[float, float]:
        """Chordal thickness and chordal addendum, for the gear-tooth caliper.

        Source: Elements of Metric Gear Technology, tables 10-3 and 10-4.
        """
        formative_pitch = self.formative * self.module
        half = self.thickness / formative_pitch
        height = self.module * (self.addendum + self.shift)
        return formative_pitch * sin(half), height + formative_pitch / 2 * (1 - cos(half))

    def half_angle(self, diameter: float) -> float:
        """Half the angle, in radians, that a tooth fills at a diameter from the base circle up."""
        there = inv(acos(self.base / diameter))
        return self.thickness / cos(self.helix) / self.pitch + inv(self.transverse_pressure) - there

    def span(self, teeth: int) -> float:
        """Measurement over `teeth` teeth with plate calipers (the base tangent)."""
        reach = pi * (teeth - 0.5) + self.teeth * inv(self.transverse_pressure)
        return self.module * (cos(self.pressure) * reach + 2 * self.shift * sin(self.pressure))

    def span_teeth(self) -> int:
        """The number of teeth to span so that the jaws touch about half-way up, never less than 2."""
        spread = cos(self.helix) ** 2 + tan(self.pressure) ** 2
        part = self.shift / self.teeth
        slope = 1 + sin(self.helix) ** 2 / spread
        contact = slope * sqrt(max(0.0, spread * (1 / cos(self.helix) + 2 * part) ** 2 - 1))
        turns = (contact - inv(self.transverse_pressure) - 2 * part * tan(self.pressure)) / pi
        return max(2, int(self.teeth * turns + 1))

    def span_touches_at(self, teeth: int) -> float:
        """The diameter on which the jaws touch when they span `teeth` teeth."""
        return sqrt(self.base**2 + (self.span(teeth) * cos(self.base_helix)) ** 2)

    def over_pins(self, pin: float) -> float | None:
        """Measurement over two pins (on helical teeth balls) in opposite spaces; None when they do not seat.

        It seats when it touches the involute between base and tip and stands proud of the tip.
        """
        lean = pin / (self.teeth * self.module * cos(self.pressure)) + inv(self.transverse_pressure)
        lean += (2 * self.shift * tan(self.pressure) - pi / 2) / self.teeth
        if lean <= 0:
            return None
        centre = _inverse_involute(lean)
        touch = self.base / 2 * tan(centre) - pin / 2 * cos(self.base_helix)
        across = self.base / cos(centre)
        proud = across + pin > self.tip
        if touch < 0 or 4 * touch**2 + self.base**2 > self.tip**2 or not proud:
            return None
        return across * (cos(pi / 2 / self.teeth) if self.teeth % 2 else 1) + pin

    def ideal_pin(self) -> float | None:
        """The pin that touches near the pitch circle, or None when there is none for this tooth."""
        count, slack = self.formative, 2 * self.shift * tan(self.pressure)
        half_space = (pi / 2 - slack) / count - inv(self.pressure)
        ratio = count * cos(self.pressure) / (count + 2 * self.shift)
        if not 0 < ratio < 1:
            return None
        centre = tan(acos(ratio)) + half_space
        if centre >= pi / 2:
            return None
        return count * self.module * cos(self.pressure) * (inv(centre) + half_space)

    def flank(self) -> list[tuple[float, float]]:
        """One flank from root to tip for a drawing: (radius, half the tooth's angle in radians)."""
        low = max(self.base, self.root)
        steps = [low + (self.tip - low) * step / FLANK_STEPS for step in range(FLANK_STEPS + 1)]
        curve = [(diameter / 2, self.half_angle(diameter)) for diameter in steps]
        return [(self.root / 2, curve[0][1]), *curve] if self.root < self.base else curve


def _inverse_involute(value: float) -> float:
    # Newton's method on tan(y) - y = value, from above the root: convex, so it never overshoots and every step goes
    # down, until rounding is all that is left.
    angle = atan(value + pi / 2)
    while (step := (inv(angle) - value) / tan(angle) ** 2) > 1e-15:
        angle -= step
    return angle
