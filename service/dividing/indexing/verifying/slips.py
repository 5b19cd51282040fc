"""Slips that people make. Each is undone; it explains a claim only when undoing it gives the wanted work exactly.

A slip is a function of the `Case` that yields what the claim would have been without it, with what a good instructor
would say to that pupil. Adding one means writing it and giving it its place, by likelihood, in `LIKELIEST_FIRST`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import TypeAlias

from .case import Case, Undone
from .claims import Claim
from .slips_of_angle import minutes_read_as_decimals, rounded_step_added_up
from .slips_of_gears import drivers_and_driven_swapped, gear_used_twice, gears_left_off, idlers_off_by_one
from .slips_of_number import fraction_upside_down, neighbouring_count, other_ratio
from .slips_of_place import (
    circle_on_no_plate,
    counted_the_pin_hole,
    other_circle,
    second_move_wrong_way,
    whole_turns_forgotten,
)

Undo: TypeAlias = Callable[[Case], Iterator[Undone]]

LIKELIEST_FIRST: dict[str, Undo] = {
    "counted_the_pin_hole": counted_the_pin_hole,
    "whole_turns_forgotten": whole_turns_forgotten,
    "gears_left_off": gears_left_off,
    "rounded_step_added_up": rounded_step_added_up,
    "second_move_wrong_way": second_move_wrong_way,
    "idlers_off_by_one": idlers_off_by_one,
    "drivers_and_driven_swapped": drivers_and_driven_swapped,
    "gear_used_twice": gear_used_twice,
    "circle_on_no_plate": circle_on_no_plate,
    "fraction_upside_down": fraction_upside_down,
    "other_ratio": other_ratio,
    "minutes_read_as_decimals": minutes_read_as_decimals,
    "neighbouring_count": neighbouring_count,
    "other_circle": other_circle,
}


@dataclass(frozen=True, slots=True)
class Slip:
    """A slip that explains the claim, what to say about it, and the claim without it, which is exact."""

    slip: str
    explanation: str
    corrected: Claim


def likely_slips(case: Case) -> list[Slip]:
    """Every slip that explains the claim, the likeliest first; none when the claim is right as it stands.

    >>> from dividing.indexing.head import Head
    >>> from dividing.indexing.work import Divisions
    >>> short = Case(Divisions(28), Head(), Claim("plain", turns=1, holes=20, circle=49))
    >>> [slip.slip for slip in likely_slips(short)]
    ['counted_the_pin_hole']
    """
    if case.claim.method == "nearest" or case.is_right(case.claim):
        return []
    found = []
    for name, undo in LIKELIEST_FIRST.items():
        undone = next((one for one in undo(case) if case.is_right(one.claim)), None)
        if undone:
            found.append(Slip(name, undone.explanation, replace(undone.claim)))
    return found
