"""Slips in where the pin goes: a hole too few, turns left out, another circle, the second move the wrong way."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction

from ..angles import Angle
from ..wording.figures import angle_text, counted, mixed, turns_and_spaces
from ..work import Divisions
from .case import Case, Undone
from .claims import Claim, SecondClaim, with_turns
from .making import makes


def counted_the_pin_hole(case: Case) -> Iterator[Undone]:
    """The hole that the pin is in was counted as the first, so the move is one space short (or, with the holes
    between the arms taken for spaces, one long)."""
    claim, second = case.claim, case.claim.second
    if claim.method == "direct":
        yield from _one_hole(claim.holes, None, lambda holes: replace(claim, holes=holes))
    elif claim.circle and claim.method != "dial":
        yield from _one_hole(claim.holes, claim.circle, lambda holes: _moved(claim, holes))
    if second:
        size = abs(second.holes)
        sign = -1 if second.holes < 0 else 1
        yield from _one_hole(
            size, second.circle, lambda holes: replace(claim, second=replace(second, holes=sign * holes))
        )


def _one_hole(holes: int, circle: int | None, put: Callable[[int], Claim]) -> Iterator[Undone]:
    """A space more and a space less, `put` in their place; `circle` is None on the direct plate, which has no arms."""
    had, wanted = counted(holes, "space") if holes else "no space", f"{holes + 1} {'are' if holes else 'is'} wanted"
    yield Undone(
        put(holes + 1),
        f"You moved {had} where {wanted}: the hole that the pin is in was counted as the first. It is not counted; "
        f"{_so_many(holes + 1, circle)}.",
    )
    if holes:
        between = "between the arms" if circle else "counted"
        move = f"the move is {counted(holes - 1, 'space')}" if holes > 1 else "no space is wanted"
        yield Undone(
            put(holes - 1), f"{holes} is the number of holes {between}, the pin's own hole included; {move}."
        )


def _so_many(spaces: int, circle: int | None) -> str:
    """How so many spaces are counted out."""
    if circle is None:
        return f"count {counted(spaces, 'hole')} on from it"
    if spaces >= circle:
        return f"{counted(spaces, 'space')} on {circle} are {turns_and_spaces(*divmod(spaces, circle))}"
    return f"the arms embrace {spaces + 1} holes for {counted(spaces, 'space')}"


def _moved(claim: Claim, holes: int) -> Claim:
    """The claim with other spaces; as many as its circle has are a whole turn."""
    assert claim.circle is not None
    turns, spaces = divmod(holes, claim.circle)
    return replace(claim, turns=claim.turns + turns, holes=spaces)


def whole_turns_forgotten(case: Case) -> Iterator[Undone]:
    """The part of a turn is right but whole turns are missing, or were left in a dial's reading."""
    yield from _turns_left_in_the_reading(case)
    made = makes(case.claim, case.head)
    if made is None or case.claim.method == "direct":
        return
    per_turn = makes(with_turns(case.claim, case.claim.turns + 1), case.head)
    assert per_turn is not None
    missing = (case.wanted - made) / (per_turn - made)
    if missing.denominator == 1 and missing > 0:
        turns = case.claim.turns + missing.numerator
        yield Undone(with_turns(case.claim, turns), _turns_missing(case.claim, turns))


def _turns_left_in_the_reading(case: Case) -> Iterator[Undone]:
    claim, dial = case.claim, case.head.dial
    if dial is None or (claim.reading is None and claim.divisions is None):
        return
    if claim.reading is not None:
        turn = Fraction(1, case.head.ratio)
        whole, rest = divmod(claim.reading.turns, turn)
        right = replace(claim, turns=claim.turns + whole, reading=Angle(rest))
        had, beyond = angle_text(claim.reading.turns), angle_text(rest)
    else:
        assert claim.divisions is not None
        whole, rest = divmod(claim.divisions, dial.divisions or 1)
        right = replace(claim, turns=claim.turns + whole, divisions=rest)
        had, beyond = _divisions(claim.divisions), _divisions(rest)
    if whole:
        turns = counted(whole, "turn") + (f" and {beyond}" if rest else "")
        said = f"The reading holds whole turns of the dial: {had} is {turns}. Count them with the turns."
        yield Undone(right, said)


def _divisions(count: Fraction) -> str:
    return f"{mixed(count.numerator, count.denominator)} {'division' if count == 1 else 'divisions'}"


def _turns_missing(claim: Claim, turns: int) -> str:
    said = "no whole turn" if not claim.turns else counted(claim.turns, "whole turn")
    if not (claim.holes or claim.second or claim.divisions or (claim.reading and claim.reading.turns)):
        return f"You have {said} where {turns} {'is' if turns == 1 else 'are'} wanted, and no part of a turn besides."
    belong = "belongs" if turns == 1 else "belong"
    return (
        f"The part of a turn is right, but you have {said} where {counted(turns, 'turn')} {belong} before it. "
        f"Write the improper fraction as a mixed number and keep its whole part."
    )


def other_circle(case: Case) -> Iterator[Undone]:
    """The spaces belong to another circle."""
    claim = case.claim
    circles = case.head.direct_circles if claim.method == "direct" else tuple(case.head.plate_of)
    moves = claim.holes and claim.method not in ("dial", "nearest")
    for circle in circles:
        if claim.circle and moves and circle != claim.circle and circle > claim.holes:
            yield Undone(replace(claim, circle=circle), _wrong_circle(claim.holes, claim.circle, circle))
        if claim.second and circle != claim.second.circle and circle > abs(claim.second.holes):
            second = replace(claim.second, circle=circle)
            yield Undone(replace(claim, second=second), _wrong_circle(abs(second.holes), claim.second.circle, circle))
    yield from _circles_changed_about(claim)
    yield from _not_brought_to_the_circle(case)


def _circles_changed_about(claim: Claim) -> Iterator[Undone]:
    """The spaces of each of two moves on the circle of the other."""
    if not claim.circle or not claim.second:
        return
    first, second = claim.second.circle, replace(claim.second, circle=claim.circle)
    if 0 < claim.holes < first and 0 < abs(second.holes) < second.circle:
        yield Undone(
            replace(claim, circle=first, second=second),
            f"The circles are changed about: the first move is {counted(claim.holes, 'space')} on {first}, the second "
            f"{counted(abs(second.holes), 'space')} on {second.circle}.",
        )


def _not_brought_to_the_circle(case: Case) -> Iterator[Undone]:
    """The numerator of the part of a turn, taken for spaces on the circle at hand."""
    claim, part = case.claim, case.crank_wanted % 1
    if claim.method != "plain" or not claim.circle:
        return
    under = case.work.count if isinstance(case.work, Divisions) else part.denominator
    whole = part * under
    if whole != claim.holes:
        whole, under = Fraction(part.numerator), part.denominator
    if whole != claim.holes or not claim.holes or under == claim.circle:
        return
    written = f"{whole}/{under}"
    for circle in (claim.circle, *case.head.plate_of):
        spaces = part * circle
        if spaces.denominator == 1:
            on = "the circle that you use" if circle == claim.circle else "a circle that has it"
            yield Undone(
                replace(claim, holes=spaces.numerator, circle=circle),
                f"The part of a turn is {written}, but {whole} on {claim.circle} is {whole}/{claim.circle}. Bring it "
                f"to {on}: {written} is {spaces} on {circle}.",
            )


def _wrong_circle(holes: int, claimed: int, right: int) -> str:
    return (
        f"{counted(holes, 'space')} would be right on the circle of {right}; on {claimed} the same count is "
        f"another part of a turn. Keep the spaces and the circle together: {holes}/{right}, not {holes}/{claimed}."
    )


def circle_on_no_plate(case: Case) -> Iterator[Undone]:
    """The fraction is right, but the circle is on none of the plates."""
    claim = case.claim
    asked = [claim.circle, claim.second.circle if claim.second else None]
    have = case.head.direct_circles if claim.method == "direct" else tuple(case.head.plate_of)
    missing = [circle for circle in asked if circle and circle not in have]
    if claim.method == "dial" or not missing or makes(claim, case.head) != case.wanted:
        return
    has_none = "the direct plate has no circle" if claim.method == "direct" else "no plate has a circle"
    said = f"The fraction is right, but {has_none} of {counted(missing[0], 'hole')}"
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
    """The second move was made the other way round, or the larger part of a turn was taken from the smaller."""
    yield from _taken_from_the_smaller(case.claim)
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


def _taken_from_the_smaller(claim: Claim) -> Iterator[Undone]:
    second = claim.second
    if second and second.holes < 0 and claim.circle and claim.holes and not claim.turns:
        yield Undone(
            replace(claim, holes=-second.holes, circle=second.circle, second=SecondClaim(-claim.holes, claim.circle)),
            f"The smaller part of a turn comes off the larger: first {counted(-second.holes, 'space')} on "
            f"{second.circle}, then {counted(claim.holes, 'space')} back on {claim.circle}. As you have it the work "
            "goes back.",
        )
