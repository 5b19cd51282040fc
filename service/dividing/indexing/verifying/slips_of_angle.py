"""Slips with degrees: minutes taken for hundredths, and a rounded step added up."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from ..accuracy import comes_home
from ..angles import Angle
from ..wording.figures import angle_text, counted, mixed, seconds_text
from ..work import Work
from .case import Case, Undone
from .claims import Claim
from .making import makes

SECOND = Fraction(1, 1_296_000)
MINUTE = 60 * SECOND
ROUNDED_TO = (60 * MINUTE, MINUTE, SECOND)
"""Places to which a reading is rounded by hand, beside the dial's own."""


def misread(turns: Fraction) -> Iterator[tuple[Fraction, str]]:
    """What an angle becomes when minutes are read as decimals or decimals as minutes, with the way it was written.

    >>> [written for _, written in misread(Fraction(31, 720))]
    ['15.30°', "15°50'", "15°05'"]
    """
    degrees = turns * 360
    whole = int(degrees)
    minutes = (degrees - whole) * 60
    over = (minutes - int(minutes)) * 60
    if minutes and over.denominator == 1:
        read = Fraction(int(minutes), 100) + Fraction(int(over), 10_000)
        yield (whole + read) / 360, f"{whole}.{int(minutes):02}{f'{int(over):02}' if over else ''}°"
        if not over and minutes < 10:
            yield (whole + Fraction(int(minutes), 10)) / 360, f"{whole}.{int(minutes)}°"
    for places in (100, 10):
        decimal = (degrees - whole) * places
        if decimal and decimal.denominator == 1 and decimal < 60:
            yield (whole + Fraction(int(decimal), 60)) / 360, f"{whole}°{int(decimal):02}'"


def minutes_read_as_decimals(case: Case) -> Iterator[Undone]:
    """Degrees and minutes read as a decimal number of degrees, or the other way about."""
    claim = case.claim
    made = makes(claim, case.head)
    for read, written in misread(case.wanted):
        if made is not None and made == read:
            yield from (Undone(right, _explain(case.wanted, written)) for right in case.right_claims())
    if claim.method == "dial" and claim.reading:
        exact = case.wanted - Fraction(claim.turns, case.head.ratio)
        if exact > 0:
            for read, written in misread(exact):
                if read == claim.reading.turns:
                    yield Undone(replace(claim, reading=Angle(exact)), _explain(exact, written))


def _explain(angle: Fraction, written: str) -> str:
    degrees = angle * 360
    if written.endswith("'"):
        given = f"{float(degrees)}°"
        return f"You took {given} for {written}. A degree has 60 minutes, not 100: {given} is {angle_text(angle)}."
    return (
        f"You took {angle_text(angle)} for {written}. A degree has 60 minutes: {angle_text(angle)} is "
        f"{mixed(degrees.numerator, degrees.denominator)}°, and 0.01° is 36 seconds."
    )


def rounded_step_added_up(case: Case) -> Iterator[Undone]:
    """A dial reading rounded once and then added at every cut."""
    claim = case.claim
    made = makes(claim, case.head)
    if claim.method != "dial" or made is None or made == case.wanted:
        return
    off = abs(made - case.wanted)
    if any(off <= place / 2 for place in _places(case) if made % place == 0 or _on_reading(claim, place)):
        right = _exact_claim(case)
        yield Undone(
            right,
            f"The step is rounded by {_off_text(off)}{_added_up(case.work, off)}. Work every position from zero "
            f"and round only what you set: k times the exact step, {_exact_text(right)}.",
        )


def _added_up(work: Work, off: Fraction) -> str:
    """What becomes of a rounded step; between two features there is only one."""
    if comes_home(work):
        return f"; added up over {work.cuts} cuts it closes {_off_text(work.cuts * off)} off"
    moves = work.cuts - 1
    return f"; added up over {moves} moves it leaves the last cut {_off_text(moves * off)} off" if moves > 1 else ""


def _off_text(off: Fraction) -> str:
    return seconds_text(off) if off < MINUTE else angle_text(off)


def _places(case: Case) -> tuple[Fraction, ...]:
    if not case.head.dial_units:
        return ()
    own = Fraction(1, case.head.ratio * case.head.dial_units)
    return (own,) if case.claim.divisions is not None else (own, *ROUNDED_TO)


def _on_reading(claim: Claim, place: Fraction) -> bool:
    return claim.reading is not None and (claim.reading.turns / place).denominator == 1


def _exact_claim(case: Case) -> Claim:
    turns, beyond = divmod(case.crank_wanted, 1)
    if case.claim.divisions is not None:
        return replace(case.claim, turns=int(turns), divisions=beyond * case.head.dial_units)
    return replace(case.claim, turns=int(turns), reading=Angle(beyond / case.head.ratio))


def _exact_text(claim: Claim) -> str:
    turns, divisions = f"{counted(claim.turns, 'turn')} and " if claim.turns else "", claim.divisions
    if divisions is not None:
        return f"{turns}{mixed(divisions.numerator, divisions.denominator)} divisions"
    assert claim.reading is not None
    degrees = claim.reading.turns * 360
    return f"{turns}{mixed(degrees.numerator, degrees.denominator)}°"
