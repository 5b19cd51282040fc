"""One angle in every form that the shop uses: radians, gon, crank turns, settings of the head, lengths.

The crank turns that make an angle are the ratio of the head times the turns of the spindle. Below zero the
crank goes the other way, and turns and spaces are both below zero.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from . import bounds
from .angles import LARGEST_TURNS, PI, Angle, rounded, seconds
from .faults import Fault, refuse_if_any
from .head import Head
from .sines import cosine, sine


@dataclass(frozen=True, slots=True)
class Setting:
    """Whole crank turns, then spaces on a circle of a plate; no circle on a head that has none."""

    turns: int
    holes: int
    circle: int | None
    plate: int | None


@dataclass(frozen=True, slots=True)
class Nearest:
    """The setting that comes nearest, and what it makes less what was wanted, in turns of the spindle."""

    setting: Setting
    error: Fraction

    @property
    def error_seconds(self) -> float:
        """The error in seconds of arc."""
        return seconds(self.error)


@dataclass(frozen=True, slots=True)
class Conversion:
    """An angle in every form. `crank` is None for an angle in radians; lengths come in the unit given.

    `settings` holds every exact setting, mounted plate first and then larger circles; `nearest` stands in its
    place where there is none. `rise_per_100` and the lengths are None where not asked for or not defined.
    """

    angle: Angle
    radians: float
    gon: float
    crank: Fraction | None
    settings: tuple[Setting, ...]
    nearest: Nearest | None
    arc: float | None
    chord: float | None
    rise_per_100: float | None
    sine_bar_height: float | None


def convert(
    angle: Angle, head: Head, *, diameter: Fraction | None = None, sine_bar: Fraction | None = None
) -> Conversion:
    """Give an angle in every form on this head, with lengths where a diameter or a sine bar is given.

    >>> found = convert(Angle(Fraction(5, 48)), Head(), diameter=Fraction(100))
    >>> str(found.crank), found.settings, round(found.chord, 4)
    ('25/6', (Setting(turns=4, holes=3, circle=18, plate=1),), 32.1439)
    """
    settings = exact_settings(angle, head)
    return Conversion(
        angle,
        radians=angle.radians,
        gon=angle.gon,
        crank=angle.turns * head.ratio if angle.rational else None,
        settings=settings,
        nearest=None if settings else nearest_setting(angle, head),
        arc=None if diameter is None else arc(angle, diameter),
        chord=None if diameter is None else chord(angle, diameter),
        rise_per_100=rise_per_100(angle),
        sine_bar_height=None if sine_bar is None else sine_bar_height(angle, sine_bar),
    )


def crank_angle(head: Head, *, turns: int, holes: int = 0, circle: int | None = None) -> Angle:
    """Give the angle that a crank move makes on this head, whether or not the head has that circle.

    >>> crank_angle(Head(), turns=4, holes=3, circle=18).degrees
    Fraction(75, 2)
    """
    faults = []
    if circle is None and holes:
        faults.append(Fault(("circle",), "Name the circle on which the spaces are counted."))
    if circle is not None and not bounds.HOLES_LEAST <= circle <= bounds.HOLES_MOST:
        faults.append(Fault(("circle",), f"A circle has {bounds.HOLES_LEAST} to {bounds.HOLES_MOST} holes."))
    refuse_if_any(faults)
    spindle = (turns + Fraction(holes, circle or 1)) / head.ratio
    if abs(spindle) > LARGEST_TURNS:
        faults.append(Fault(("turns",), f"The move may turn the spindle {LARGEST_TURNS:,} times at most."))
    refuse_if_any(faults)
    return Angle(spindle)


def exact_settings(angle: Angle, head: Head) -> tuple[Setting, ...]:
    """Give every setting that makes the angle exactly, in the order of the head's circles.

    Whole turns are one setting, given on the first circle since any circle serves.

    >>> exact_settings(Angle(Fraction(1, 28)), Head())
    (Setting(turns=1, holes=21, circle=49, plate=3), Setting(turns=1, holes=9, circle=21, plate=2))
    """
    crank = angle.turns * head.ratio
    if not angle.rational:
        return ()
    if crank.denominator == 1:
        circle, plate = head.circles[0] if head.circles else (None, None)
        return (Setting(crank.numerator, 0, circle, plate),)
    return tuple(
        _setting(int(crank * circle), circle, plate)
        for circle, plate in head.circles
        if circle % crank.denominator == 0
    )


def nearest_setting(angle: Angle, head: Head) -> Nearest | None:
    """Give the setting with the least error, the first circle of several; None on a head without circles.

    >>> found = nearest_setting(Angle(Fraction(1, 900)), Head())
    >>> found.setting, found.error_seconds
    (Setting(turns=0, holes=1, circle=23, plate=2), -31.3043)
    """
    crank = angle.turns * head.ratio
    tried = []
    for circle, plate in head.circles:
        spaces = rounded(crank.numerator * circle, crank.denominator)
        error = (Fraction(spaces, circle) - crank) / head.ratio
        tried.append(Nearest(_setting(spaces, circle, plate), error))
    return min(tried, key=lambda near: abs(near.error), default=None)


def _setting(spaces: int, circle: int, plate: int) -> Setting:
    """Spaces counted from the start as whole turns and the spaces left, both the same way round."""
    way = -1 if spaces < 0 else 1
    turns, holes = divmod(abs(spaces), circle)
    return Setting(way * turns, way * holes, circle, plate)


def arc(angle: Angle, diameter: Fraction) -> float:
    """Give the length along the rim that the angle covers, never below zero.

    >>> arc(Angle(Fraction(-1, 4)), Fraction(100))
    78.53981633974483
    """
    return float(diameter * PI * abs(angle.turns))


def chord(angle: Angle, diameter: Fraction) -> float:
    """Give the straight distance between the two ends of the angle on the rim, never below zero.

    >>> chord(Angle(Fraction(1, 6)), Fraction(100))
    50.0
    """
    return float(diameter * abs(sine(angle.turns / 2)))


def rise_per_100(angle: Angle) -> float | None:
    """Give the rise of the angle in a run of 100, below zero for a fall; None at 90°, where there is no run.

    >>> rise_per_100(Angle(Fraction(1, 8))), rise_per_100(Angle(Fraction(1, 4)))
    (100.0, None)
    """
    run = cosine(angle.turns)
    return float(100 * sine(angle.turns) / run) if run else None


def sine_bar_height(angle: Angle, length: Fraction) -> float | None:
    """Give the height of the blocks under a sine bar of this length; None for an angle outside 0° to 90°.

    >>> sine_bar_height(Angle(Fraction(1, 12)), Fraction(5))
    2.5
    """
    return float(length * sine(angle.turns)) if 0 <= angle.turns <= Fraction(1, 4) else None
