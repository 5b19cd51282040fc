"""What a pupil has to fill in for each kind of exercise, and what stands beside it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from .exercise import KindName

SLIP_LABELS: Mapping[str, str] = {
    "counted_the_pin_hole": "The hole that the pin is in was counted",
    "whole_turns_forgotten": "The whole turns were forgotten",
    "fraction_upside_down": "The fraction stands upside down",
    "circle_on_no_plate": "The circle is on none of the plates",
    "other_circle": "The spaces belong to another circle",
    "other_ratio": "It was worked for a head of another ratio",
    "neighbouring_count": "It is one division more or one less than wanted",
    "minutes_read_as_decimals": "Minutes were read as decimals of a degree, or the other way about",
    "rounded_step_added_up": "The step was rounded, and the rounding adds up",
    "second_move_wrong_way": "The second move goes the wrong way",
    "drivers_and_driven_swapped": "Drivers and driven are changed about",
    "idlers_off_by_one": "There is one idler too few or too many",
    "gear_used_twice": "One gear is needed in two places",
    "gears_left_off": "The gears were left off",
}
"""What a slip is called where a pupil has to choose."""


@dataclass(frozen=True, slots=True)
class Blank:
    """A place to be filled in: the way to it in a claim, and what stands beside it."""

    field: str
    label: str
    optional: bool = False


_TURNS = Blank("turns", "Whole turns")
_HOLES = Blank("holes", "Spaces")
_CIRCLE = Blank("circle", "Holes of the circle")
_MOVE = (_TURNS, _HOLES, Blank("circle", "Holes of the circle (none for whole turns alone)", optional=True))
BLANKS: Mapping[KindName, tuple[Blank, ...]] = {
    "plain": _MOVE,
    "angular": _MOVE,
    "direct": (_HOLES, _CIRCLE),
    "which_plate": (Blank("plate", "Plate, counted from 1"), _CIRCLE),
    "sector_arms": (Blank("sector_holes", "Holes between the arms"),),
    "compound": (
        _TURNS,
        _HOLES,
        _CIRCLE,
        Blank("second.holes", "Spaces of the second move (below 0: the opposite way)"),
        Blank("second.circle", "Holes of the second circle"),
    ),
    "differential": (
        *_MOVE,
        Blank("gearing.spindle", "Gear on the spindle"),
        Blank("gearing.stud.0", "First gear on the stud, if there is one", optional=True),
        Blank("gearing.stud.1", "Second gear on the stud, if there is one", optional=True),
        Blank("gearing.worm", "Gear on the worm side"),
        Blank("gearing.idlers", "Idlers"),
    ),
    "dial": (_TURNS, Blank("reading", "Reading of the dial")),
    "find_the_slip": (Blank("slip", "The slip"),),
}
"""What is to be filled in for each kind."""
