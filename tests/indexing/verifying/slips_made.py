"""Slips made on purpose: a right setup in, the claims out that somebody would bring who made one slip with it.

Every slip is made the way people make it, forwards; the verifier has to find the way back.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction
from functools import cache, lru_cache
from itertools import product
from math import gcd

from dividing.indexing.angles import Angle
from dividing.indexing.head import Head
from dividing.indexing.methods import compound, differential, direct, plain
from dividing.indexing.setup import Declined, Setup
from dividing.indexing.verifying import Claim, GearingClaim, SecondClaim
from dividing.indexing.work import Arc, Divisions
from tests.second.gears import Shelf, exact_differentials
from tests.second.head import Train
from tests.second.holes import Plates

Stepped = Divisions | Arc
Made = Iterator[Claim]

OTHER_RATIOS = (40, 60, 72, 80, 90, 120)


def right_claims(work: Stepped, head: Head) -> list[Claim]:
    """Every right setup of every method, as a claim."""
    found: list[Claim] = []
    for method in (direct, plain, compound, differential):
        answer = method.exact(work, head)
        found += [] if isinstance(answer, Declined) else map(as_claim, answer)
    found += [longer for claim in found for longer in the_other_way_round(claim)]
    return found + list(dial_claims(work.step, head))


def the_other_way_round(claim: Claim) -> Made:
    """The same compound setting with the second move made up to a whole turn the other way."""
    second = claim.second
    if second:
        turn = -1 if second.holes > 0 else 1
        if claim.turns - turn >= 0:
            holes = second.holes + turn * second.circle
            yield replace(claim, turns=claim.turns - turn, second=replace(second, holes=holes))


def as_claim(setup: Setup) -> Claim:
    """What a setup says, in a pupil's hand."""
    move, second, gearing = setup.move, setup.second, setup.gearing
    assert move is not None
    return Claim(
        setup.method,
        turns=move.turns or 0,
        holes=move.holes or 0,
        circle=move.circle,
        second=SecondClaim(second.holes or 0, second.circle) if second else None,
        gearing=GearingClaim(gearing.spindle, gearing.worm, gearing.stud, gearing.idlers) if gearing else None,
    )


def dial_claims(step: Fraction, head: Head) -> Made:
    """Turns and reading of one step, exact."""
    if head.dial is None:
        return
    turns, beyond = divmod(step * head.ratio, 1)
    if head.dial.divisions:
        yield Claim("dial", turns=int(turns), divisions=beyond * head.dial.divisions)
    else:
        yield Claim("dial", turns=int(turns), reading=Angle(beyond / head.ratio))


def settings(crank: Fraction, head: Head) -> tuple[Claim, ...]:
    """Every plain setting of so many crank turns that the plates have."""
    return settings_on(crank, head.plates)


@lru_cache(maxsize=64)
def settings_on(crank: Fraction, plates: Plates) -> tuple[Claim, ...]:
    """The same, worked once for each piece of work."""
    turns, part = divmod(crank, 1)
    circles = [circle for face in plates for circle in face if circle % part.denominator == 0]
    return tuple(Claim("plain", int(turns), int(part * circle), circle) for circle in circles)


def counted_the_pin_hole(_work: Stepped, _head: Head, right: Claim) -> Made:
    """One space short, the pin's own hole having been counted; or all the holes between the arms, one long."""
    if right.holes + right.turns > 1 and right.holes:
        yield replace(right, holes=right.holes - 1)
    if right.holes:
        yield replace(right, holes=right.holes + 1)
    if right.second:
        way = 1 if right.second.holes > 0 else -1
        for spaces in (right.second.holes - way, right.second.holes + way):
            if spaces:
                yield replace(right, second=replace(right.second, holes=spaces))


def whole_turns_forgotten(_work: Stepped, _head: Head, right: Claim) -> Made:
    """Only the part of a turn."""
    if right.turns and (right.holes or right.reading or right.divisions):
        yield replace(right, turns=0)


def fraction_upside_down(_work: Stepped, head: Head, right: Claim) -> Made:
    """Divisions over ratio, or the circle's holes over the spaces."""
    if right.method == "plain":
        yield from settings(1 / (right.turns + Fraction(right.holes, right.circle or 1)), head)
        if right.holes > 1 and right.circle:
            yield replace(right, holes=right.circle, circle=right.holes)


def other_ratio(work: Stepped, head: Head, right: Claim) -> Made:
    """Worked for a head that stands elsewhere in the shop."""
    for ratio in OTHER_RATIOS:
        if ratio != head.ratio and right.method != "dial":
            yield from settings(ratio * work.step, head)
            if right.method == "compound":
                yield from compound_at(ratio, work, head)


@lru_cache(maxsize=12)
def compound_at(ratio: int, work: Stepped, head: Head) -> tuple[Claim, ...]:
    """The compound settings for a head that stands elsewhere in the shop."""
    answer = compound.exact(work, replace(head, ratio=ratio))
    return () if isinstance(answer, Declined) else tuple(map(as_claim, answer))


def other_circle(_work: Stepped, head: Head, right: Claim) -> Made:
    """The right spaces on the wrong circle."""
    if right.method == "dial" or not right.holes:
        return
    circles = head.direct_circles if right.method == "direct" else [hole for face in head.plates for hole in face]
    for circle in circles:
        if circle != right.circle:
            yield replace(right, circle=circle)


def circle_on_no_plate(_work: Stepped, head: Head, right: Claim) -> Made:
    """The right part of a turn on a circle that the shop does not have."""
    if right.method not in ("plain", "direct", "differential") or not right.holes or not right.circle:
        return
    have = head.direct_circles if right.method == "direct" else {hole for face in head.plates for hole in face}
    part = Fraction(right.holes, right.circle)
    for times in range(1, 6):
        if part.denominator * times not in have and part.denominator * times > 1:
            yield replace(right, holes=part.numerator * times, circle=part.denominator * times)


def neighbouring_count(work: Stepped, head: Head, right: Claim) -> Made:
    """Marks counted for spaces: the setting of one division more, or one less."""
    if not isinstance(work, Divisions) or right.method == "dial":
        return
    for count in (work.count - 1, work.count + 1):
        if count > work.every and gcd(work.every, count) == 1:
            yield from settings(Fraction(head.ratio * work.every, count), head)
            answer = direct.exact(Divisions(count, work.every), head)
            yield from () if isinstance(answer, Declined) else map(as_claim, answer)


def minutes_read_as_decimals(work: Stepped, head: Head, right: Claim) -> Made:
    """15 degrees 30 minutes worked as 15.30 degrees, or 15.30 degrees as 15 degrees 30 minutes."""
    degrees, part = divmod(work.step * 360, 1)
    for size, read_as in ((60, 100), (100, 60)):
        figures = part * size
        if figures and figures.denominator == 1 and figures < read_as and isinstance(work, Arc):
            misread = (degrees + Fraction(figures, read_as)) / 360
            if right.reading:
                yield from dial_claims(misread, head)
            elif right.method != "dial":
                yield from settings(head.ratio * misread, head)


def second_move_wrong_way(_work: Stepped, _head: Head, right: Claim) -> Made:
    """The same spaces the other way."""
    if right.second:
        yield replace(right, second=replace(right.second, holes=-right.second.holes))


def drivers_and_driven_swapped(_work: Stepped, _head: Head, right: Claim) -> Made:
    """Each gear in the place of its partner."""
    gearing = right.gearing
    if gearing:
        stud = gearing.stud and (gearing.stud[1], gearing.stud[0])
        yield replace(right, gearing=replace(gearing, spindle=gearing.worm, worm=gearing.spindle, stud=stud))


def idlers_off_by_one(_work: Stepped, _head: Head, right: Claim) -> Made:
    """An idler too many, or one too few."""
    gearing = right.gearing
    if gearing:
        for idlers in (gearing.idlers + 1, gearing.idlers - 1):
            if idlers >= 0:
                yield replace(right, gearing=replace(gearing, idlers=idlers))


def gear_used_twice(_work: Stepped, head: Head, right: Claim) -> Made:
    """A train that is right in figures, with a gear in two places that is owned only once."""
    if right.gearing:
        with_crank = motion(right.gearing) > 0
        for spindle, worm, first, second in trains_with_a_gear_twice(head.change_gears)[right.gearing.train][:5]:
            idlers = head.idlers.needed(gears=4, direction="with" if with_crank else "against")
            yield replace(right, gearing=GearingClaim(spindle, worm, (first, second), idlers))


@cache
def trains_with_a_gear_twice(owned: tuple[int, ...]) -> dict[Fraction, list[tuple[int, int, int, int]]]:
    """Trains of four by their value: one gear is used once too often, every other as often as it is owned."""
    trains = defaultdict(list)
    for spindle, worm, first, second in product(sorted(set(owned)), repeat=4):
        too_many = Counter((spindle, worm, first, second)) - Counter(owned)
        if too_many.total() == 1 and spindle != second and first != worm:
            trains[Fraction(spindle * first, worm * second)].append((spindle, worm, first, second))
    return trains


def motion(gearing: GearingClaim) -> Fraction:
    """Which way and how far the plate goes on the usual construction."""
    return Train(gearing.spindle, gearing.worm, gearing.stud, [24] * gearing.idlers).plate_per_spindle


def gears_left_off(work: Stepped, head: Head, right: Claim) -> Made:
    """The crank move of a row with gears, any that can be made, used without them."""
    if right.gearing:
        yield from rows_with_gears(work.step, head.ratio, head.plates, head.change_gears)


@cache
def rows_with_gears(step: Fraction, ratio: int, plates: Plates, gears: tuple[int, ...]) -> tuple[Claim, ...]:
    """The crank move alone of every differential setting there is."""
    rows = exact_differentials(ratio, step, plates, shelf(gears))
    return tuple(Claim("plain", *divmod(row.spaces, row.circle), row.circle) for row in rows)


@cache
def shelf(gears: tuple[int, ...]) -> Shelf:
    """The trains that can be made, put together once."""
    return Shelf(gears)


def rounded_step_added_up(_work: Stepped, head: Head, right: Claim) -> Made:
    """The reading of one step rounded to what the dial shows."""
    if right.reading and head.dial:
        finest = Fraction(1, head.ratio * head.dial_units)
        yield replace(right, reading=Angle(round(right.reading.turns / finest) * finest))
    if right.divisions:
        yield replace(right, divisions=Fraction(round(right.divisions)))


SLIPS: dict[str, Callable[[Stepped, Head, Claim], Made]] = {
    made.__name__: made
    for made in (
        counted_the_pin_hole,
        whole_turns_forgotten,
        fraction_upside_down,
        other_ratio,
        other_circle,
        circle_on_no_plate,
        neighbouring_count,
        minutes_read_as_decimals,
        second_move_wrong_way,
        drivers_and_driven_swapped,
        idlers_off_by_one,
        gear_used_twice,
        gears_left_off,
        rounded_step_added_up,
    )
}
