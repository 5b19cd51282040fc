"""A setup in one line, as it stands on a routing sheet."""

from __future__ import annotations

from functools import lru_cache

from ..head import Head
from ..positions import dial_set
from ..setup import Gearing, Move, Setup
from ..work import Angles, Work
from .dials import reading_told
from .figures import KEPT, counted, seconds_text, turns_and_spaces


def summary(work: Work, head: Head, setup: Setup) -> str:
    """The move in one line: plate, circle, turns and spaces, arms, gears, and how far off when it is not exact.

    >>> from dividing.indexing.solving import solve
    >>> from dividing.indexing.work import Divisions
    >>> found = solve(Divisions(28), Head())
    >>> summary(found.work, found.head, found.setups[0])
    'Plate 3, circle 49: 1 turn and 21 spaces, arms over 22 holes'
    """
    move = setup.move
    if move and move.plate and move.holes and setup.second is None:
        line = _one_circle(move)
    else:
        line = _move_line(work, head, setup)
    if setup.gearing:
        line += _gears(setup.gearing)
    if setup.every > 1:
        line += f"; {setup.every} divisions a move, {setup.every} laps"
    return line if setup.accuracy.exact else f"{line}; not exact, {seconds_text(setup.accuracy.worst)} at worst"


def _move_line(work: Work, head: Head, setup: Setup) -> str:
    move = setup.move
    if move is None:
        return _dial_line(work, head)
    if move.holes is None:
        return f"{_place(move, setup)}: a move of its own for every cut, see the schedule"
    if setup.second:
        return f"{_place(move, setup)}: {_first(move)}, then {_second(setup)}"
    if move.plate is None:
        return f"Direct plate, circle {move.circle}: {counted(move.holes, 'space')}"
    return f"{counted(move.turns or 0, 'turn')}, pin back in the same hole of any circle"


@lru_cache(maxsize=KEPT)
def _one_circle(move: Move) -> str:
    spaces = turns_and_spaces(move.turns or 0, move.holes or 0)
    return f"Plate {move.plate}, circle {move.circle}: {spaces}, arms over {move.sector_holes} holes"


@lru_cache(maxsize=KEPT)
def _gears(gearing: Gearing) -> str:
    stud = f", stud {gearing.stud[0]} and {gearing.stud[1]}" if gearing.stud else ""
    return f"; spindle {gearing.spindle}{stud}, worm {gearing.worm}, {counted(gearing.idlers, 'idler')}"


def _place(move: Move, setup: Setup) -> str:
    name = "Direct plate" if move.plate is None else f"Plate {move.plate}"
    if setup.second:
        return f"{name}, circles {move.circle} and {setup.second.circle}"
    return f"{name}, circle {move.circle}"


def _first(move: Move) -> str:
    return f"crank {turns_and_spaces(move.turns or 0, move.holes or 0)} on {move.circle}"


def _second(setup: Setup) -> str:
    assert setup.second is not None and setup.second.holes is not None
    way = "forward" if setup.second.holes > 0 else "back"
    return f"plate and crank {counted(abs(setup.second.holes), 'space')} {way} on {setup.second.circle}"


def _dial_line(work: Work, head: Head) -> str:
    if isinstance(work, Angles):
        return "By the dial, every position worked from zero, see the schedule"
    one = dial_set(work.step, head)
    return (
        f"By the dial: {counted(one.turns, 'turn')} and {reading_told(one, head)} a step, worked from zero at every cut"
    )
