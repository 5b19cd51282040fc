"""The blank of an index plate: where its holes stand on a readout, and which holes its circle takes.

n holes on a circle of diameter D: neighbours are D sin(180°/n) apart, and what is left between two holes of diameter d
is that less d. Coordinates and chords are those of any bolt circle.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import floor, pi, sin, sqrt

from dividing.indexing.wording.figures import mixed, seconds_text

from .bolt_circle import bolt_circle
from .sizes import MATHEMATICS, PLACES, PRACTICE, Number, Size, shown

WALL = Fraction(1, 2)
"""Metal between two holes, as a part of a hole's diameter. Common practice, no source."""
RULE = "at least half a hole's diameter of metal between neighbours"
STEPS = {"mm": (10, "rounded down to a whole tenth"), "in": (64, "rounded down to a whole 64th")}
WANDER = {"mm": 0.01, "in": 0.0005}
"""How far a drill may well wander; an example, to judge one's own by."""


@dataclass(frozen=True, slots=True)
class Blank:
    """A circle of holes to be drilled, as sizes; `points` are (x, y) in the order round the circle, if it has a size.

    `fits` is whether the hole asked for leaves the metal that `RULE` wants; None where no hole or no circle is told.
    """

    sizes: tuple[Size, ...] = ()
    points: tuple[tuple[float, float], ...] = ()
    fits: bool | None = None
    notes: tuple[str, ...] = ()


def blank(
    holes: int,
    unit: str,
    ratio: int,
    *,
    circle: Number | None = None,
    hole: Number | None = None,
    start: Number = 0,
    sense: str = "anticlockwise",
    zero: str = "3 o'clock",
    x: Number = 0,
    y: Number = 0,
) -> Blank:
    """The blank for so many holes on a circle of this diameter; with a hole and no circle, the circle that it needs.

    Raises `Refused` when neighbouring holes would meet (`hole_diameter`).

    >>> made = blank(51, "mm", 40, circle=150, hole=6)
    >>> made.points[0], made.fits, made.sizes[0].text
    ((75.0, 0.0), True, '6.156 mm')
    """
    if circle is None:
        return Blank() if hole is None else Blank((_smallest_circle(holes, hole, unit),))
    part = bolt_circle(
        holes=holes, unit=unit, diameter=circle, start=start, sense=sense, zero=zero, x=x, y=y, hole_diameter=hole
    )
    chord = float(circle) * sin(pi / holes)
    told = [*_largest(chord, unit)]
    if hole is not None:
        told.append(Size("Metal between neighbouring holes", chord - float(hole), unit, MATHEMATICS))
        told.append(_smallest_circle(holes, hole, unit))
    points = tuple((float(str(row["x"])), float(str(row["y"]))) for row in part.schedule)
    fits = None if hole is None else float(hole) <= chord / float(1 + WALL) * (1 + 1e-12)
    return Blank((*told, *part.sizes), points, fits, _notes(float(circle), unit, ratio))


def _largest(chord: float, unit: str) -> list[Size]:
    most = chord / float(1 + WALL)
    steps, rounding = STEPS[unit]
    drill = Fraction(floor(most * steps + 1e-9), steps)
    told = [Size("Largest hole that fits", most, unit, PRACTICE, RULE)]
    if drill:
        note = f"{mixed(drill.numerator, drill.denominator)} in, {rounding}" if unit == "in" else rounding
        told.append(Size("Largest drill for it", float(drill), unit, PRACTICE, note))
    return [*told, Size("Diameter at which holes would meet", chord, unit, MATHEMATICS, "D sin(180°/n)")]


def _smallest_circle(holes: int, hole: Number, unit: str) -> Size:
    across = float(hole) * float(1 + WALL) / sin(pi / holes)
    return Size("Smallest circle for these holes", across, unit, PRACTICE, RULE)


def _notes(across: float, unit: str, ratio: int) -> tuple[str, ...]:
    """What a length on the circle comes to in angle, on the plate and on the work."""
    wander, step = WANDER[unit], 10.0 ** -PLACES[unit]
    return (
        f"A hole that the drill puts {wander} {unit} off along the circle is {_off(wander, across, ratio)}.",
        f"Coordinates to {shown(step, unit)} alone put a hole up to {_off(step / sqrt(2), across, ratio)}.",
    )


def _off(length: float, across: float, ratio: int) -> str:
    turns = Fraction(length / (pi * across))
    return f"{seconds_text(turns)} off on the plate and {seconds_text(turns / ratio)} off on the work"
