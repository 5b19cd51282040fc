"""Slips made on purpose, forwards, the way people make them: a right setup in, one that is spoiled by one slip out.

Whether the slip can be told from what was made is not decided here: an exercise is kept only if the verifier, which
goes the other way, names this slip first.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple, TypeAlias

from ..head import Head
from ..verifying import Claim, GearingClaim
from ..verifying.slips_of_angle import misread
from ..verifying.slips_of_number import COMMON_RATIOS
from ..work import Arc, Divisions
from .chance import Chance
from .exercise import KindName


class Right(NamedTuple):
    """A setup that is right, and the work that it makes."""

    work: Divisions | Arc
    head: Head
    claim: Claim
    written: str = ""


Spoil: TypeAlias = Callable[[Right, Chance], Claim | None]
"""The setup with one slip in it, or None where that slip cannot be made with it."""


def counted_the_pin_hole(right: Right, chance: Chance) -> Claim | None:
    """The pin's own hole counted as the first; where only one space is moved, the holes between the arms."""
    holes = right.claim.holes
    if not holes:
        return None
    return replace(right.claim, holes=holes - 1 if holes > 1 else holes + 1)


def whole_turns_forgotten(right: Right, chance: Chance) -> Claim | None:
    """Only the part of a turn."""
    claim = right.claim
    part = claim.holes or (claim.reading and claim.reading.turns) or claim.divisions
    return replace(claim, turns=0) if claim.turns and part else None


def fraction_upside_down(right: Right, chance: Chance) -> Claim | None:
    """Divisions over ratio."""
    return _set(1 / (right.head.ratio * right.work.step), right.head, chance)


def other_ratio(right: Right, chance: Chance) -> Claim | None:
    """Worked for a head that stands elsewhere in the shop."""
    ratio = chance.picked([ratio for ratio in COMMON_RATIOS[:6] if ratio != right.head.ratio])
    return _set(ratio * right.work.step, right.head, chance)


def other_circle(right: Right, chance: Chance) -> Claim | None:
    """The right spaces on a circle that stands beside the right one on the plates."""
    claim, head = right.claim, right.head
    circles = head.direct_ranked if claim.method == "direct" else sorted(head.plate_of)
    others = [circle for circle in circles if circle != claim.circle and circle > claim.holes > 0]
    return replace(claim, circle=chance.picked(others)) if others else None


def circle_on_no_plate(right: Right, chance: Chance) -> Claim | None:
    """The right part of a turn on a circle that the shop does not have."""
    claim, head = right.claim, right.head
    if not claim.holes or not claim.circle:
        return None
    have = head.direct_circles if claim.method == "direct" else tuple(head.plate_of)
    part = Fraction(claim.holes, claim.circle)
    missing = [times for times in range(1, 9) if part.denominator * times not in have and part.denominator * times > 9]
    if not missing:
        return None
    times = chance.picked(missing[:3])
    return replace(claim, holes=part.numerator * times, circle=part.denominator * times)


def neighbouring_count(right: Right, chance: Chance) -> Claim | None:
    """Marks counted for spaces: one division more, or one less."""
    work, head = right.work, right.head
    if not isinstance(work, Divisions) or work.count < 4:
        return None
    count = work.count + (1 if chance.one_in(2) else -1)
    if right.claim.method != "direct":
        return _set(Fraction(head.ratio, count), head, chance)
    circles = [circle for circle in head.direct_ranked if circle % count == 0]
    return Claim("direct", holes=circles[0] // count, circle=circles[0]) if circles else None


def minutes_read_as_decimals(right: Right, chance: Chance) -> Claim | None:
    """15 degrees 30 minutes worked as 15.30 degrees, or 15.30 degrees as 15 degrees 30 minutes."""
    read = [_set(turns * right.head.ratio, right.head, chance) for turns, _ in misread(right.work.step)]
    return next((claim for claim in read if claim), None)


def rounded_step_added_up(right: Right, chance: Chance) -> Claim | None:
    """The reading of one step, rounded to what the dial shows, as if it could be added up."""
    readings = right.head.ratio * right.work.step * right.head.dial_units
    return right.claim if readings.denominator > 1 else None


def second_move_wrong_way(right: Right, chance: Chance) -> Claim | None:
    """The same spaces the other way."""
    second = right.claim.second
    return replace(right.claim, second=replace(second, holes=-second.holes)) if second else None


def drivers_and_driven_swapped(right: Right, chance: Chance) -> Claim | None:
    """Each gear in the place of its partner."""
    gearing = right.claim.gearing
    if gearing is None or gearing.spindle == gearing.worm:
        return None
    stud = gearing.stud and (gearing.stud[1], gearing.stud[0])
    return replace(right.claim, gearing=replace(gearing, spindle=gearing.worm, worm=gearing.spindle, stud=stud))


def idlers_off_by_one(right: Right, chance: Chance) -> Claim | None:
    """An idler too many, or one too few."""
    gearing = right.claim.gearing
    if gearing is None:
        return None
    idlers = gearing.idlers + (1 if chance.one_in(2) or not gearing.idlers else -1)
    return replace(right.claim, gearing=replace(gearing, idlers=idlers))


def gear_used_twice(right: Right, chance: Chance) -> Claim | None:
    """A train of four that is right in figures, with one gear in two places that is owned only once."""
    gearing, head = right.claim.gearing, right.head
    if gearing is None:
        return None
    owned, train = Counter(head.change_gears), gearing.train
    way = "with" if gearing.motion(head) > 0 else "against"
    for spindle in chance.turned(sorted(owned)):
        for first in owned:
            for worm in owned:
                second = spindle * first / (worm * train)
                gears = (spindle, worm, first, int(second))
                if second.denominator == 1 and _one_too_many(gears, owned) and spindle != second and first != worm:
                    idlers = head.idlers.needed(gears=4, direction=way)
                    twice = GearingClaim(spindle, worm, (first, int(second)), idlers)
                    return replace(right.claim, gearing=twice)
    return None


def gears_left_off(right: Right, chance: Chance) -> Claim | None:
    """The crank move of a row with gears, used without them."""
    return replace(right.claim, method="plain", gearing=None) if right.claim.gearing else None


def _one_too_many(gears: tuple[int, ...], owned: Counter[int]) -> bool:
    return all(owned[teeth] for teeth in gears) and (Counter(gears) - owned).total() == 1


def _set(crank: Fraction, head: Head, chance: Chance) -> Claim | None:
    """A crank move on one of the circles that have it."""
    turns, part = divmod(crank, 1)
    circles = [circle for circle in sorted(head.plate_of) if circle % part.denominator == 0]
    if not circles:
        return None
    circle = chance.picked(circles)
    return Claim("plain", turns=int(turns), holes=int(part * circle), circle=circle)


class Spoiler(NamedTuple):
    """A slip: from which level it is asked, of which kinds of right setup it is made, and how."""

    level: int
    kinds: tuple[KindName, ...]
    spoil: Spoil


SPOILERS: Mapping[str, Spoiler] = {
    "counted_the_pin_hole": Spoiler(1, ("plain", "direct"), counted_the_pin_hole),
    "whole_turns_forgotten": Spoiler(1, ("plain", "dial"), whole_turns_forgotten),
    "fraction_upside_down": Spoiler(1, ("plain",), fraction_upside_down),
    "circle_on_no_plate": Spoiler(1, ("plain", "direct"), circle_on_no_plate),
    "other_circle": Spoiler(2, ("plain", "direct"), other_circle),
    "other_ratio": Spoiler(2, ("plain",), other_ratio),
    "neighbouring_count": Spoiler(2, ("plain", "direct"), neighbouring_count),
    "minutes_read_as_decimals": Spoiler(2, ("angular",), minutes_read_as_decimals),
    "rounded_step_added_up": Spoiler(2, ("dial",), rounded_step_added_up),
    "second_move_wrong_way": Spoiler(3, ("compound",), second_move_wrong_way),
    "drivers_and_driven_swapped": Spoiler(3, ("differential",), drivers_and_driven_swapped),
    "idlers_off_by_one": Spoiler(3, ("differential",), idlers_off_by_one),
    "gear_used_twice": Spoiler(3, ("differential",), gear_used_twice),
    "gears_left_off": Spoiler(3, ("differential",), gears_left_off),
}
"""Every slip that the verifier knows, the simplest first."""


def slips_at(level: int) -> tuple[str, ...]:
    """The slips that an exercise of this level may hold, which are also those to choose from.

    >>> slips_at(1)
    ('counted_the_pin_hole', 'whole_turns_forgotten', 'fraction_upside_down', 'circle_on_no_plate')
    """
    return tuple(slip for slip, spoiler in SPOILERS.items() if spoiler.level <= level)
