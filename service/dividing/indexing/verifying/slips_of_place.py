"""Slips in where the pin goes: a hole too few, turns left out, another circle, the second move the wrong way."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction

from ..wording.figures import counted
from .case import Case, Undone
from .claims import Claim, with_turns
from .making import makes


def counted_the_pin_hole(case: Case) -> Iterator[Undone]:
    """The hole that the pin is in was counted as the first, so the move is one space short (or, with the holes
    between the arms taken for spaces, one long)."""
    claim = case.claim
    if claim.circle and claim.method != "dial":
        yield from _one_hole(claim.holes, lambda holes: replace(claim, holes=holes))
    second = claim.second
    if second:
        size = abs(second.holes)
        sign = -1 if second.holes < 0 else 1
        yield from _one_hole(size, lambda holes: replace(claim, second=replace(second, holes=sign * holes)))


def _one_hole(holes: int, put: Callable[[int], Claim]) -> Iterator[Undone]:
    wanted = f"{holes + 1} {'are' if holes else 'is'} wanted"
    short = (
        f"You moved {counted(holes, 'space')} where {wanted}: the hole that the pin is in was counted as the first. "
        f"It is not counted; the arms embrace {holes + 2} holes for {counted(holes + 1, 'space')}."
    )
    yield Undone(put(holes + 1), short)
    if holes:
        long = (
            f"{holes} is the number of holes between the arms, the pin's own hole included; "
            f"the move is {counted(holes - 1, 'space')}."
        )
        yield Undone(put(holes - 1), long)


def whole_turns_forgotten(case: Case) -> Iterator[Undone]:
    """The part of a turn is right but whole turns are missing."""
    made = makes(case.claim, case.head)
    if made is None or case.claim.method == "direct":
        return
    per_turn = makes(with_turns(case.claim, case.claim.turns + 1), case.head)
    assert per_turn is not None
    missing = (case.wanted - made) / (per_turn - made)
    if missing.denominator == 1 and missing > 0:
        turns = case.claim.turns + missing.numerator
        said = "no whole turn" if not case.claim.turns else counted(case.claim.turns, "whole turn")
        belong = "belongs" if turns == 1 else "belong"
        yield Undone(
            with_turns(case.claim, turns),
            f"The part of a turn is right, but you have {said} where {counted(turns, 'turn')} {belong} before it. "
            f"Write the improper fraction as a mixed number and keep its whole part.",
        )


def other_circle(case: Case) -> Iterator[Undone]:
    """The spaces belong to another circle."""
    claim = case.claim
    circles = case.head.direct_circles if claim.method == "direct" else tuple(case.head.plate_of)
    for circle in circles:
        if claim.circle and claim.holes and circle != claim.circle and claim.method not in ("dial", "nearest"):
            yield Undone(replace(claim, circle=circle), _wrong_circle(claim.holes, claim.circle, circle))
        if claim.second and circle != claim.second.circle:
            second = replace(claim.second, circle=circle)
            yield Undone(replace(claim, second=second), _wrong_circle(abs(second.holes), claim.second.circle, circle))


def _wrong_circle(holes: int, claimed: int, right: int) -> str:
    return (
        f"{counted(holes, 'space')} would be right on the circle of {right}; on {claimed} the same count is "
        f"another part "
        f"of a turn. Keep the spaces and the circle together: {holes}/{right}, not {holes}/{claimed}."
    )


def circle_on_no_plate(case: Case) -> Iterator[Undone]:
    """The fraction is right, but the circle is on none of the plates."""
    claim = case.claim
    asked = [claim.circle, claim.second.circle if claim.second else None]
    have = case.head.direct_circles if claim.method == "direct" else tuple(case.head.plate_of)
    missing = [circle for circle in asked if circle and circle not in have]
    if claim.method == "dial" or not missing or makes(claim, case.head) != case.wanted:
        return
    plate = "direct plate" if claim.method == "direct" else "plate"
    said = f"The fraction is right, but no {plate} has a circle of {missing[0]} holes"
    for right in _same_fraction(case):
        yield Undone(right, f"{said}; take the same part of a turn as {right.holes} on {right.circle}.")
    for right in case.right_claims():
        yield Undone(right, f"{said}; set it another way.")


def _same_fraction(case: Case) -> Iterator[Claim]:
    claim = case.claim
    if claim.second or not claim.circle:
        return
    have = case.head.direct_circles if claim.method == "direct" else tuple(case.head.plate_of)
    for circle in have:
        spaces = Fraction(claim.holes, claim.circle) * circle
        if spaces.denominator == 1:
            yield replace(claim, circle=circle, holes=spaces.numerator)


def second_move_wrong_way(case: Case) -> Iterator[Undone]:
    """The second move was made the other way round."""
    second = case.claim.second
    if second and second.holes:
        right = replace(second, holes=-second.holes)
        way, forward, sign = ("the same way as", "forward", "+") if right.holes > 0 else ("against", "back", "-")
        yield Undone(
            replace(case.claim, second=right),
            f"Both moves have the right size, but the second has to go {way} the first: "
            f"{counted(abs(right.holes), 'space')} {forward} on {right.circle}, with the sign {sign}. "
            "Always make it in the same order, after the first.",
        )
