"""Involute teeth made by unwinding a string from the base circle, and measured as a caliper and pins would.

Nothing here uses the involute function or the formulas of the service: the flank is a list of points, turned until it
has the thickness wanted on the pitch circle.
"""

from __future__ import annotations

from collections.abc import Callable
from math import atan2, cos, hypot, pi, sin

Point = tuple[float, float]


def unwound(base_radius: float, roll: float) -> Point:
    """The end of a string unwound by `roll` radians from a circle."""
    return (
        base_radius * (cos(roll) + roll * sin(roll)),
        base_radius * (sin(roll) - roll * cos(roll)),
    )


def solved(target: Callable[[float], float], low: float, high: float) -> float:
    """Where a rising function is zero, by halving."""
    for _ in range(200):
        middle = (low + high) / 2
        if target(middle) < 0:
            low = middle
        else:
            high = middle
    return (low + high) / 2


class Flank:
    """The right flank of the tooth that stands on the y axis, as seen along the axis.

    `thickness` is the arc of the tooth on the pitch circle.
    """

    def __init__(self, *, base: float, pitch: float, thickness: float) -> None:
        self.base = base / 2
        at_pitch = solved(lambda roll: hypot(*unwound(self.base, roll)) - pitch / 2, 0.0, 3.0)
        x, y = unwound(self.base, at_pitch)
        # The string's end must stand at half the tooth's angle to the right of the y axis.
        self.turn = pi / 2 - thickness / pitch - atan2(y, x)

    def at(self, roll: float, turned: float = 0.0) -> Point:
        """A point of the flank; `turned` clockwise, in radians, to where another tooth stands."""
        x, y = unwound(self.base, roll)
        angle = self.turn - turned
        return x * cos(angle) - y * sin(angle), x * sin(angle) + y * cos(angle)

    def points(self, low: float, high: float, count: int, turned: float = 0.0) -> list[Point]:
        """So many points between two rolls."""
        return [self.at(low + (high - low) * step / (count - 1), turned) for step in range(count)]


def over_teeth(flank: Flank, teeth: int, span: int) -> tuple[float, float]:
    """Between parallel jaws over `span` teeth standing evenly about the y axis, and the radius at which they touch."""
    turned = pi * (span - 1) / teeth
    low, high = 0.0, 3.0
    # The jaw is parallel to the y axis, so it touches where the flank reaches furthest to the right.
    for _ in range(6):
        points = flank.points(low, high, 401, turned)
        best = max(range(len(points)), key=lambda index: points[index][0])
        step = (high - low) / 400
        low, high = max(0.0, low + step * (best - 1)), low + step * (best + 1)
    x, y = flank.at((low + high) / 2, turned)
    return 2 * x, hypot(x, y)


def over_two_pins(flank: Flank, teeth: int, pin: float) -> tuple[float, float]:
    """Over two pins in spaces as nearly opposite as can be, and the radius at which they touch the flanks.

    The space to the right of the tooth is turned onto the y axis: a pin there touches this flank on its left.
    """
    turned = -pi / teeth

    def nearest(height: float) -> tuple[float, float]:
        low, high = 0.0, 3.0
        for _ in range(6):
            points = flank.points(low, high, 101, turned)
            away = [hypot(x, y - height) for x, y in points]
            best = min(range(len(points)), key=away.__getitem__)
            step = (high - low) / 100
            low, high = max(0.0, low + step * (best - 1)), low + step * (best + 1)
        x, y = flank.at((low + high) / 2, turned)
        return hypot(x, y - height), hypot(x, y)

    centre = solved(lambda height: nearest(height)[0] - pin / 2, flank.base, 3 * flank.base)
    bent = cos(pi / 2 / teeth) if teeth % 2 else 1.0
    return 2 * centre * bent + pin, nearest(centre)[1]
