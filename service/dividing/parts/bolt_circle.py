"""Holes on a circle: coordinates to cross-check the head on a readout, and chords for the calipers.

n holes on a circle of diameter D; hole k stands at start + k (360/n) degrees in the sense chosen.
"""

from __future__ import annotations

from fractions import Fraction
from math import cos, pi, radians, sin

from .sizes import MATHEMATICS, Number, Part, Plain, Size, check_word, refused, shown, snapped

FIELDS = {
    "holes": "Number of holes, from 1.",
    "diameter": "Diameter of the circle through the hole centres. Give it or `radius`.",
    "radius": "Radius of that circle, instead of the diameter.",
    "start": "Angle of the first hole from the zero, in the sense chosen (0).",
    "sense": '"anticlockwise" (usual) or "clockwise".',
    "zero": 'Where 0° lies: "3 o\'clock" (usual) or "12 o\'clock".',
    "x": "The centre's x on the readout (0).",
    "y": "The centre's y on the readout (0).",
    "hole_diameter": "Diameter of a hole, for measuring over and between the holes (optional).",
    "unit": '"mm" or "in".',
}
CHOICES = {"sense": ("anticlockwise", "clockwise"), "zero": ("3 o'clock", "12 o'clock")}
CHORDS_LISTED = 6
HOLES_MOST = 20_000


def bolt_circle(
    *,
    holes: int,
    unit: str,
    diameter: Number | None = None,
    radius: Number | None = None,
    start: Number = 0,
    sense: str = "anticlockwise",
    zero: str = "3 o'clock",
    x: Number = 0,
    y: Number = 0,
    hole_diameter: Number | None = None,
) -> Part:
    """The holes' coordinates (`schedule`), radius, diameter and chords. x runs right, y away from you.

    Raises `Refused` when diameter and radius are both missing or contradict, or when neighbouring holes meet.

    >>> part = bolt_circle(holes=4, unit="mm", diameter=100, x=10)
    >>> [(row["x"], row["y"]) for row in part.schedule]
    [(60.0, 0.0), (10.0, 50.0), (-40.0, 0.0), (10.0, -50.0)]
    """
    check_word(sense, "sense", CHOICES["sense"])
    check_word(zero, "zero", CHOICES["zero"])
    if holes > HOLES_MOST:
        raise refused(f"A bolt circle may have up to {HOLES_MOST:,} holes.", "holes")
    across = _diameter(diameter, radius)
    _check_web(holes, across, hole_diameter, unit)
    centre = (float(x), float(y))
    rows = tuple(_row(hole, holes, across, start, sense, zero, centre) for hole in range(holes))
    points: list[Plain] = [[row["x"], row["y"]] for row in rows]
    return Part(
        "bolt_circle",
        unit,
        (*_circle(across, unit), *_chords(holes, across, hole_diameter, unit)),
        divisions=holes,
        schedule=rows,
        rim=across,
        drawing={
            "diameter": across,
            "centre": [*centre],
            "holes": points,
            "hole_diameter": _plain(hole_diameter),
        },
    )


def _plain(value: Number | None) -> float | None:
    return None if value is None else float(value)


def _diameter(diameter: Number | None, radius: Number | None) -> float:
    if diameter is None:
        if radius is None:
            raise refused("Give the diameter or the radius of the bolt circle.", "diameter")
        return 2 * float(radius)
    if radius is not None and diameter != 2 * radius:
        raise refused("The radius is not half the diameter: give only one of them.", "radius")
    return float(diameter)


def _check_web(holes: int, across: float, hole: Number | None, unit: str) -> None:
    if hole is None or holes == 1:
        return
    chord = across * sin(pi / holes)
    if hole >= chord:
        sentence = f"Holes of {shown(hole, unit)} meet: their centres are {shown(chord, unit)} apart."
        raise refused(f"{sentence} Give fewer or smaller holes, or a larger circle.", "hole_diameter")


def _row(
    hole: int, holes: int, across: float, start: Number, sense: str, zero: str, centre: tuple[float, float]
) -> dict[str, Plain]:
    degrees = float(start) + hole * 360 / holes
    anticlockwise = degrees if sense == "anticlockwise" else -degrees
    # From the x axis, whichever way the drawing counts.
    direction = radians(anticlockwise + (90 if zero == "12 o'clock" else 0))
    return {
        "hole": hole + 1,
        "turns": str(Fraction(hole, holes)),
        "degrees": snapped(degrees % 360),
        "x": snapped(centre[0] + across / 2 * cos(direction)),
        "y": snapped(centre[1] + across / 2 * sin(direction)),
    }


def _circle(across: float, unit: str) -> tuple[Size, ...]:
    return (
        Size("Diameter of the bolt circle", across, unit, MATHEMATICS),
        Size("Radius of the bolt circle", across / 2, unit, MATHEMATICS),
    )


def _chords(holes: int, across: float, hole: Number | None, unit: str) -> list[Size]:
    widest = holes // 2
    spans = sorted({*range(1, min(widest, CHORDS_LISTED) + 1), *([widest] if widest else [])})
    found = []
    for span in spans:
        chord = across * sin(pi * span / holes)
        name = "to the next hole" if span == 1 else f"over {span} spaces"
        found.append(Size(f"Centre distance {name}", chord, unit, MATHEMATICS, "D sin(180° k/n)"))
        if hole is not None:
            found.append(Size(f"Outside of both holes, {name}", chord + float(hole), unit, MATHEMATICS))
            found.append(Size(f"Between both holes, {name}", chord - float(hole), unit, MATHEMATICS))
    return found
