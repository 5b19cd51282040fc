"""Slips in the figures that the working starts from: upside down, another ratio, one more or one less."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from math import gcd

from ..head import Head
from ..wording.figures import angle_text, counted, mixed
from ..work import Divisions
from .case import Case, Undone
from .claims import Claim
from .making import makes

COMMON_RATIOS = (40, 60, 72, 80, 90, 120, 30, 36, 20, 50, 100, 110, 180, 5, 360)
"""Ratios met on heads and tables, the usual ones first (common practice)."""


def fraction_upside_down(case: Case) -> Iterator[Undone]:
    """Divisions over ratio instead of ratio over divisions, or circle and spaces changed about."""
    claim = case.claim
    if claim.method not in ("plain", "direct", "differential", "compound"):
        return
    if claim.circle and claim.circle < claim.holes:
        swapped = replace(claim, holes=claim.circle, circle=claim.holes)
        yield Undone(
            swapped,
            f"You wrote {claim.holes} spaces on {claim.circle}; it is {claim.circle} spaces on {claim.holes}.",
        )
    elif claim.circle and 0 < claim.holes < claim.circle:
        whole, rest = divmod(claim.circle, claim.holes)
        yield Undone(
            replace(claim, turns=claim.turns + whole, holes=rest, circle=claim.holes),
            f"The fraction stands upside down: {claim.circle}/{claim.holes}, not {claim.holes}/{claim.circle}.",
        )
    if claim.method == "plain" and claim.crank * case.crank_wanted == 1:
        yield from _turned_over(case)
    if claim.method == "direct" and claim.crank * case.wanted == 1:
        yield from _turned_over(case)


def _turned_over(case: Case) -> Iterator[Undone]:
    said = f"The fraction stands upside down. It is {_right_way_up(case)}: {_turns(1 / case.claim.crank)}."
    yield from (Undone(claim, said) for claim in case.right_claims())


def _right_way_up(case: Case) -> str:
    work, plain = case.work, case.claim.method == "plain"
    if isinstance(work, Divisions):
        over = f"{case.head.ratio if plain else 1}/{work.count}"
        over = f"{work.every} × {over} for {work.every} divisions a move" if work.every > 1 else over
        one = "ratio" if plain else "one turn"
        return f"{one} over divisions, {over}, not divisions over {one}"
    turn = f"{angle_text(Fraction(1, case.head.ratio))} of one crank turn" if plain else "360° of one turn"
    return f"the angle over the {turn}, not the other way about"


def _turns(turns: Fraction) -> str:
    if turns == 1:
        return "1 turn"
    said = mixed(turns.numerator, turns.denominator)
    return f"{said} of a turn" if turns < 1 else f"{said} turns"


def other_ratio(case: Case) -> Iterator[Undone]:
    """Worked for a head of another ratio."""
    if case.claim.method == "direct":
        return
    for ratio in COMMON_RATIOS:
        if ratio != case.head.ratio and _made_at(case.claim, case.head, ratio) == case.wanted:
            said = (
                f"This move is right on a head of {ratio}:1. Yours is {case.head.ratio}:1: "
                f"{case.head.ratio} crank turns make one turn of the spindle.{_or_in_blocks(case)}"
            )
            yield from (Undone(claim, said) for claim in case.right_claims())


def _or_in_blocks(case: Case) -> str:
    """A move of several divisions that misses none may be meant so."""
    work, made = case.work, makes(case.claim, case.head)
    if not isinstance(work, Divisions) or work.every > 1 or made is None:
        return ""
    at_once = made * work.count
    if not (1 < at_once < work.count and at_once.denominator == 1 and gcd(at_once.numerator, work.count) == 1):
        return ""
    return f" Or is it meant as {at_once} divisions a move? Then say so: the work goes round {at_once} times."


def _made_at(claim: Claim, head: Head, ratio: int) -> Fraction | None:
    """What the claim would make if the head had that ratio; a dial in degrees reads the spindle's own degrees."""
    if claim.method == "dial":
        step = Fraction(claim.turns, ratio)
        if claim.reading:
            return step + claim.reading.turns if claim.turns and claim.reading.turns * ratio < 1 else None
        lines = claim.divisions or Fraction(0)
        return step + lines / (ratio * head.dial_units) if lines < head.dial_units else None
    made = makes(claim, head)
    if claim.gearing is None:
        return None if made is None else made * head.ratio / ratio
    room = ratio - claim.gearing.motion(head)
    return claim.crank / room if room else None


def neighbouring_count(case: Case) -> Iterator[Undone]:
    """One division more or one less: marks counted instead of the spaces between them."""
    work = case.work
    if not isinstance(work, Divisions):
        return
    made = makes(case.claim, case.head)
    for count in (work.count - 1, work.count + 1):
        if count > 0 and made == Fraction(work.every, count):
            made_text = f"makes {counted(count, 'division')}"
            if work.every > 1:
                made_text = f"is {work.every}/{count} of a turn, for {counted(count, 'division')}"
            said = (
                f"This move {made_text}, not {work.count}. {_marks_and_spaces(work.count)} "
                "round the work; count the spaces."
            )
            yield from (Undone(claim, said) for claim in case.right_claims())


def _marks_and_spaces(count: int) -> str:
    have = "has" if count == 1 else "have"
    return f"{counted(count, 'division')} {have} {counted(count, 'mark')} and {counted(count, 'space')}"
