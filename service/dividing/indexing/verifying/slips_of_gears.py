"""Slips with the train of differential indexing."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from ..setup import Gearing
from ..trains import train_table
from ..wording.figures import angle_text, counted, mixed
from ..work import Divisions
from .case import Case, Undone
from .claims import GearingClaim, gearing_claim
from .making import makes


def gears_left_off(case: Case) -> Iterator[Undone]:
    """A row of a differential table used as if it were plain indexing."""
    claim = case.claim
    bare = claim.method == "plain" or (claim.method == "differential" and claim.gearing is None)
    if not bare or not claim.crank or len(case.head.change_gears) < 2:
        return
    gearing = _train_for(case)
    if gearing is None:
        return
    train = gearing_claim(gearing)
    yield Undone(
        replace(claim, method="differential", gearing=train),
        f"This crank move needs gears to the plate. With the plate at rest it "
        f"{_made_text(case, claim.crank / case.head.ratio)}; hang {_with_idlers(train)}, so that the plate turns "
        f"{gearing.plate} the crank, and it {_made_text(case, case.wanted)}.",
    )


def _made_text(case: Case, step: Fraction) -> str:
    """What a move does for the work: how many divisions it makes where one is moved at a time, or how far it turns."""
    if isinstance(case.work, Divisions) and case.work.every == 1:
        made = 1 / step
        return f"makes {mixed(made.numerator, made.denominator)} {'division' if made == 1 else 'divisions'}"
    return f"turns the work through {angle_text(step)}"


def _train_for(case: Case) -> Gearing | None:
    """The train on this head that would make the claim's crank move right."""
    motion = case.head.ratio - case.claim.crank / case.wanted
    if not motion:
        return None
    table = train_table(tuple(sorted(case.head.change_gears)), case.head.idlers)
    return table.gearing(motion.numerator, motion.denominator)


def drivers_and_driven_swapped(case: Case) -> Iterator[Undone]:
    """Driving and driven gears in each other's places."""
    gearing = case.claim.gearing
    if gearing is None:
        return
    for changed, right in _changed_about(gearing):
        yield Undone(
            replace(case.claim, gearing=right),
            f"{changed} are changed about. The spindle drives: {_train_text(right)}, a train of {right.train}, "
            f"not {gearing.train}.",
        )


def _changed_about(gearing: GearingClaim) -> Iterator[tuple[str, GearingClaim]]:
    """The train with all its gears in their partners' places; a train of four with one pair of them, too."""
    ends = replace(gearing, spindle=gearing.worm, worm=gearing.spindle)
    if gearing.stud is None:
        yield "Drivers and driven", ends
        return
    stud = gearing.stud[1], gearing.stud[0]
    yield "Drivers and driven", replace(ends, stud=stud)
    yield "The gears on the stud", replace(gearing, stud=stud)
    yield "The gears on the spindle and on the worm side", ends


def idlers_off_by_one(case: Case) -> Iterator[Undone]:
    """One idler too few or too many, so that the plate turns the wrong way. What this head takes is told first."""
    gearing = case.claim.gearing
    if gearing is None:
        return
    gears, motion = len(gearing.gears), gearing.motion(case.head)
    had = f"with {counted(gearing.idlers, 'idler')}" if gearing.idlers else "without an idler"
    usual = case.head.idlers.needed(gears=gears, direction="against" if motion > 0 else "with")
    for idlers in sorted((gearing.idlers + 1, gearing.idlers - 1), key=lambda count: count != usual):
        if idlers >= 0:
            right = replace(gearing, idlers=idlers)
            way = "with" if right.motion(case.head) > 0 else "against"
            yield Undone(
                replace(case.claim, gearing=right),
                f"The gears are right, but {had} the plate turns the wrong way. "
                f"It must turn {way} the crank, which takes {idlers or 'none'} here. Turn the crank and watch the "
                f"plate before you cut.",
            )


def gear_used_twice(case: Case) -> Iterator[Undone]:
    """A train that needs one physical gear in two places."""
    gearing = case.claim.gearing
    if gearing is None or makes(case.claim, case.head) != case.wanted:
        return
    owned = Counter(case.head.change_gears)
    twice = [teeth for teeth, count in Counter(gearing.gears).items() if 0 < owned[teeth] < count]
    if not twice:
        return
    said = f"The train is right in figures, but it uses the gear of {twice[0]} teeth more often than you own it"
    same = _train_for(case)
    if same:
        train = gearing_claim(same)
        yield Undone(replace(case.claim, gearing=train), f"{said}. {_with_idlers(train)} make the same {train.train}.")
    for claim in case.right_claims():
        yield Undone(claim, f"{said}. Take another move and train.")


def _with_idlers(train: GearingClaim) -> str:
    return f"{_train_text(train)} and {counted(train.idlers, 'idler') if train.idlers else 'no idler'}"


def _train_text(train: GearingClaim) -> str:
    stud = f"{train.stud[0]} and {train.stud[1]} on the stud, " if train.stud else ""
    return f"{train.spindle} on the spindle, {stud}{train.worm} on the worm side"
