"""The question of /v1/plate on the wire."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from dividing.indexing import bounds
from dividing.indexing.faults import Fault, Refused
from dividing.indexing.head import Head
from dividing.indexing.plate_making.counts import holes_to_drill
from dividing.parts.bolt_circle import CHOICES
from dividing.parts.bolt_circle import FIELDS as COORDINATES

from .base import Request
from .fields import Length, Whole, Word
from .head import DEFAULT_HEAD, HeadField
from .part import UNITS, Degrees, Figure

_PLACING = ("start", "sense", "zero", "x", "y")


@dataclass(frozen=True, slots=True)
class PlateAsked:
    """A plate to be made: its holes, the divisions that it is for (if told), on which head, with how many circles.

    `unit` stands wherever `circle` or `hole`, its diameters, do; `placing` says how the coordinates are counted.
    """

    holes: int
    divisions: int | None
    head: Head
    circles: int
    circle: Fraction | None
    hole: Fraction | None
    unit: str | None
    placing: dict[str, Any]


class PlateIn(Request):
    """A plate to be drilled on this head: by its holes, or by the divisions that it is for."""

    holes = Whole(
        "Holes of the plate. Give them or `divisions`.",
        json={"minimum": bounds.HOLES_LEAST, "maximum": bounds.HOLES_MOST},
        load_default=None,
    )
    divisions = Whole(
        "Divisions that the plate is for, instead of its holes: the fewest holes that serve are taken.",
        json={"minimum": 1, "maximum": bounds.DIVISIONS_MOST},
        load_default=None,
    )
    head = HeadField()
    circles = Whole(
        "How many circles of the head a hole may take: 1 for one move a hole, 2 for two where that is nearer.",
        json={"minimum": 1, "maximum": 2, "default": 2},
        load_default=2,
    )
    circle_diameter = Length("Diameter of the circle on which the holes lie; with it come coordinates and hole sizes.")
    hole_diameter = Length("Diameter of a hole, to be held against its neighbours.")
    unit = Word("The unit of the lengths; needed with any.", UNITS)
    start = Degrees(COORDINATES["start"])
    sense = Word(COORDINATES["sense"], CHOICES["sense"])
    zero = Word(COORDINATES["zero"], CHOICES["zero"])
    x = Figure(COORDINATES["x"])
    y = Figure(COORDINATES["y"])

    leans_on = {"divisions": "head"}

    def make(self, given: dict[str, Any]) -> PlateAsked:
        """The plate asked for, its holes counted."""
        faults = _faults(given)
        holes = given["holes"]
        if holes is None and given["divisions"] is not None:
            try:
                holes = _holes_for(given["divisions"], given["head"])
            except Refused as refused:
                faults += refused.faults
        if faults:
            raise Refused(faults)
        return PlateAsked(
            holes,
            given["divisions"],
            given["head"],
            given["circles"],
            given.get("circle_diameter"),
            given.get("hole_diameter"),
            given.get("unit"),
            {name: given[name] for name in _PLACING if name in given},
        )

    def _unasked(self) -> dict[str, Any]:
        return {"holes": None, "divisions": None, "head": DEFAULT_HEAD, "circles": 2}


def _faults(given: dict[str, Any]) -> list[Fault]:
    faults = []
    if (given["holes"] is None) == (given["divisions"] is None):
        faults.append(Fault((), "Give exactly one of holes and divisions."))
    if given["holes"] is not None and not bounds.HOLES_LEAST <= given["holes"] <= bounds.HOLES_MOST:
        sentence = f"A circle has {bounds.HOLES_LEAST} to {bounds.HOLES_MOST} holes, not {given['holes']:,}."
        faults.append(Fault(("holes",), sentence))
    if given["circles"] not in (1, 2):
        faults.append(Fault(("circles",), "Give 1 or 2: how many circles of the head a hole may take."))
    if {"circle_diameter", "hole_diameter"} & given.keys() and "unit" not in given:
        faults.append(Fault(("unit",), 'Say in which unit the lengths are: "mm" or "in".'))
    if "circle_diameter" not in given and given.keys() & set(_PLACING):
        faults.append(Fault(("circle_diameter",), "Coordinates need the diameter of the circle."))
    return faults


def _holes_for(divisions: int, head: Head) -> int:
    if 1 <= divisions <= bounds.DIVISIONS_MOST:
        return holes_to_drill(divisions, head.ratio)
    sentence = f"Divisions are a whole number from 1 to {bounds.DIVISIONS_MOST:,}."
    raise Refused([Fault(("divisions",), sentence)])


PLATE_IN = PlateIn()
