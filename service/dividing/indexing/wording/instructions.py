"""What to do at the machine, in order. "Spaces" are moved; the hole that the pin is in is not counted."""

from __future__ import annotations

from functools import lru_cache

from ..head import Head
from ..positions import dial_set
from ..setup import Gearing, Move, SecondMove, Setup
from ..work import Angles, Divisions, Work
from .dials import reading_told
from .figures import KEPT, KEPT_FOR_AN_ANSWER, counted, turns_and_spaces

COUNT_AGAIN = "Move the sector arms on to the pin after every move, before you cut."
NOT_COUNTED = "The hole that the pin is in is not counted."


ANY_CIRCLE = "Set the crank pin to any circle of the plate that is mounted; whole turns need no arms."
WITHDRAW = "Withdraw the stop pin behind the plate, or the train will lock."
DIRECTION_TEST = {
    way: f"Before cutting, turn the crank and watch the plate: it must turn {way} the crank. "
    "If it does not, take one idler out or put one more in."
    for way in ("with", "against")
}


def instructions(work: Work, head: Head, setup: Setup) -> list[str]:
    """Steps in order, from mounting the plate to the last cut.

    >>> from dividing.indexing.solving import solve
    >>> from dividing.indexing.work import Divisions
    >>> found = solve(Divisions(20), Head())
    >>> instructions(found.work, found.head, found.setups[0])[1]
    'For each cut turn the crank 2 turns and let the pin drop back in the same hole.'
    """
    steps = _STEPS[setup.method](work, head, setup)
    steps.append(_round_the_work(work, setup))
    return steps


def _direct(work: Work, head: Head, setup: Setup) -> list[str]:
    move = setup.move
    assert move is not None
    circle = f"the direct circle of {move.circle} holes"
    spaces = "by the spaces of the schedule" if move.holes is None else counted(move.holes, "space")
    if head.worm_disengages:
        steps = ["Take the worm out of mesh.", f"For each cut turn the spindle {spaces} on {circle}."]
    else:
        free = "Latch the crank pin up; the worm stays in mesh, so it is the crank that turns the spindle."
        steps = [free, f"For each cut turn the crank until the direct pin has gone on {spaces} on {circle}."]
    return steps if move.holes is None else [*steps, "Seat the direct pin fully."]


def _plain(work: Work, head: Head, setup: Setup) -> list[str]:
    move = setup.move
    assert move is not None
    steps = [_pin_on(move, head)]
    if move.holes is None:
        return [*steps, "For each cut turn the crank by the turns and spaces of the schedule."]
    if not move.holes:
        return [
            ANY_CIRCLE,
            f"For each cut turn the crank {counted(move.turns or 0, 'turn')} and let the pin drop back in the "
            f"same hole.",
        ]
    return [*steps, *_arms_and_move(move)]


def _compound(work: Work, head: Head, setup: Setup) -> list[str]:
    move, second = setup.move, setup.second
    assert move is not None and second is not None
    steps = [_pin_on(move, head), f"Set the stop pin behind the plate in the circle of {second.circle}."]
    if move.holes is None or second.holes is None:
        return [
            *steps,
            "For each cut make both moves of the schedule, the crank first, always in that order.",
        ]
    return [
        *steps,
        f"First move: crank {turns_and_spaces(move.turns or 0, move.holes)} on the circle of {move.circle}, "
        f"arms over {move.sector_holes} holes. {NOT_COUNTED}",
        f"Second move: withdraw the stop pin and turn plate and crank together {_way(second)} on the circle of "
        f"{second.circle}; "
        "seat the stop pin.",
        "Make both moves for each cut, always in that order, or backlash enters.",
        COUNT_AGAIN,
    ]


def _differential(work: Work, head: Head, setup: Setup) -> list[str]:
    move, gearing = setup.move, setup.gearing
    assert move is not None and gearing is not None
    return [
        _pin_on(move, head),
        _hang_gears(gearing),
        WITHDRAW,
        DIRECTION_TEST[gearing.plate],
        *(_arms_and_move(move) if move.holes else [f"For each cut turn the crank {counted(move.turns or 0, 'turn')}."]),
    ]


def _nearest(work: Work, head: Head, setup: Setup) -> list[str]:
    move = setup.move
    assert move is not None
    if move.plate is None:
        return _direct(work, head, setup)
    if setup.second:
        return _compound(work, head, setup)
    differing = "" if work.cuts == 1 else ": they differ from cut to cut"
    return [_pin_on(move, head), f"For each cut turn the crank by the turns and spaces of the schedule{differing}."]


def _dial(work: Work, head: Head, setup: Setup) -> list[str]:
    steps = ["Set dial and table to zero, coming up to it in the direction in which you will index."]
    if not isinstance(work, Angles):
        if work.step == 1:
            cut = "the cut" if work.cuts == 1 else "every cut"
            return [*steps, f"Make {cut} at zero: a whole turn leads back there."]
        one = dial_set(work.step, head)
        steps.append(f"The second position is {counted(one.turns, 'turn')} and {reading_told(one, head)} from zero.")
    return [*steps, "Set each position by the schedule, worked from zero; never add up a rounded step."]


_STEPS = {
    "direct": _direct,
    "plain": _plain,
    "compound": _compound,
    "differential": _differential,
    "nearest": _nearest,
    "dial": _dial,
}


def _pin_on(move: Move, head: Head) -> str:
    return _pin(move.circle, None if move.plate == head.mounted_plate else move.plate)


@lru_cache(maxsize=KEPT)
def _pin(circle: int, to_mount: int | None) -> str:
    if to_mount is None:
        return f"Set the crank pin to the circle of {circle} on the plate that is mounted."
    return f"Mount plate {to_mount} and set the crank pin to its circle of {circle}."


@lru_cache(maxsize=KEPT)
def _arms_and_move(move: Move) -> tuple[str, ...]:
    assert move.holes is not None
    return (
        f"Set the sector arms to embrace {move.sector_holes} holes, which is {counted(move.holes, 'space')}. "
        f"{NOT_COUNTED}",
        f"For each cut turn the crank {turns_and_spaces(move.turns or 0, move.holes)}.",
        COUNT_AGAIN,
    )


def _way(second: SecondMove) -> str:
    assert second.holes is not None
    way = "the same way" if second.holes > 0 else "the opposite way"
    return f"{counted(abs(second.holes), 'space')} {way}"


@lru_cache(maxsize=KEPT)
def _hang_gears(gearing: Gearing) -> str:
    idlers = counted(gearing.idlers, "idler") if gearing.idlers else "no idler"
    if gearing.stud is None:
        return f"Hang the gears: {gearing.spindle} on the spindle, {gearing.worm} on the worm side, {idlers} between."
    first, second = gearing.stud
    return (
        f"Hang the gears: {gearing.spindle} on the spindle drives {second} on the stud; beside it on the stud "
        f"{first} drives "
        f"{gearing.worm} on the worm side; {idlers}. On the stud {first} goes on first, {second} second."
    )


def _round_the_work(work: Work, setup: Setup) -> str:
    if not isinstance(work, Divisions):
        made = "it" if work.cuts == 1 else "each"
        return f"{_cuts(work.cuts)} in all; check {made} against the degree scale on the spindle nose."
    return _all_round(work.cuts, setup.every)


@lru_cache(maxsize=KEPT_FOR_AN_ANSWER)
def _all_round(cuts: int, laps: int) -> str:
    if laps > 1:
        return f"{_cuts(cuts)} in {laps} laps; the count is only right when the last move brings you home."
    back = "a whole turn brings the work back" if cuts == 1 else "after the last move the work is back"
    return f"{_cuts(cuts)}; {back} where it began."


def _cuts(number: int) -> str:
    return "1 cut" if number == 1 else f"{number:,} cuts"
