"""The working, as somebody with a pencil would write it."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from math import gcd

from ..head import Head
from ..positions import dial_set
from ..setup import Gearing, Setup
from ..work import Angles, Arc, Stepped, Work
from .dials import lines_text, reading_told
from .figures import KEPT, KEPT_FOR_AN_ANSWER, angle_text, counted, mixed, seconds_text

LONGEST = 10**9
"""Figures past this are not written out: a pencil would not either."""


def working(work: Work, head: Head, setup: Setup) -> list[str]:
    """Lines of arithmetic that lead to the setup.

    >>> from dividing.indexing.solving import solve
    >>> from dividing.indexing.work import Divisions
    >>> found = solve(Divisions(28), Head())
    >>> working(found.work, found.head, found.setups[1])
    ['40/28 = 1 3/7', '3/7 = 9/21']
    """
    if isinstance(work, Angles):
        return _list_working(work, head, setup)
    if setup.method == "direct":
        return _direct(work, setup)
    if setup.method == "dial":
        return [*_crank(work, head, setup.every), *_dial(work, head, setup)]
    lines = _crank(work, head, setup.every)
    if setup.method == "nearest":
        return lines + _grid(head, setup)
    if setup.method == "compound":
        return lines + _compound(head, setup)
    if setup.method == "differential":
        return lines + _differential(work, head, setup)
    return lines + _plain(setup, head.ratio * work.step)


def _crank(work: Stepped, head: Head, every: int) -> list[str]:
    """Crank turns for one move: R/N, or the angle over the degrees of one crank turn."""
    if not isinstance(work, Arc):
        return [_crank_of(head.ratio, every, work.count)]
    step, turn = work.step, Fraction(360, head.ratio)
    crank = head.ratio * step
    per_turn = mixed(turn.numerator, turn.denominator)
    lines = [f"One crank turn = 360°/{head.ratio} = {per_turn}°"]
    if crank.denominator > LONGEST:
        return [*lines, f"{angle_text(step)} is {float(crank):.6f} crank turns"]
    degrees = step * 360
    wanted = mixed(degrees.numerator, degrees.denominator)
    if degrees.denominator > 1:
        lines.append(f"{angle_text(step)} = {wanted}°")
    return [*lines, f"{wanted} ÷ {per_turn} = {mixed(crank.numerator, crank.denominator)}"]


@lru_cache(maxsize=KEPT_FOR_AN_ANSWER)
def _crank_of(ratio: int, every: int, count: int) -> str:
    over = ratio * every
    first = f"{every} × {ratio}/{count}" if every > 1 else f"{over}/{count}"
    made = mixed(over, count)
    return f"{first} turn of the crank" if made == first else f"{first} = {made}"


def _direct(work: Stepped, setup: Setup) -> list[str]:
    move = setup.move
    assert move is not None and move.holes is not None
    if isinstance(work, Arc):
        hole = Fraction(360, move.circle)
        return [
            f"One space = 360°/{move.circle} = {mixed(hole.numerator, hole.denominator)}°",
            f"{angle_text(work.step)} ÷ {mixed(hole.numerator, hole.denominator)}° = {counted(move.holes, 'space')}",
        ]
    over = f"{work.every} × {move.circle}/{work.count}" if work.every > 1 else f"{move.circle}/{work.count}"
    return [f"{over} = {counted(move.holes, 'space')}"]


def _plain(setup: Setup, crank: Fraction) -> list[str]:
    move = setup.move
    assert move is not None
    if not move.holes:
        return []
    rest = crank.numerator % crank.denominator
    if crank.denominator == move.circle:
        return []
    return [f"{rest}/{crank.denominator} = {move.holes}/{move.circle}"]


def _compound(head: Head, setup: Setup) -> list[str]:
    move, second = setup.move, setup.second
    assert move is not None and second is not None and second.holes is not None
    turns = f"{move.turns} + " if move.turns else ""
    sign = "+" if second.holes > 0 else "-"
    total = move.crank + second.crank
    lines = [
        f"{turns}{move.holes}/{move.circle} {sign} {abs(second.holes)}/{second.circle} "
        f"= {mixed(total.numerator, total.denominator)}"
    ]
    return lines if setup.exact else [*lines, _miss(setup)]


def _differential(work: Stepped, head: Head, setup: Setup) -> list[str]:
    move, gearing = setup.move, setup.gearing
    assert move is not None and gearing is not None
    step = work.step if setup.every == work.every else work.step * setup.every
    over, under = step.numerator, step.denominator
    spaces, circle = (move.turns or 0) * move.circle + (move.holes or 0), move.circle
    crank = mixed(spaces, circle)
    lines = [f"Crank move chosen: {crank} turn"]
    train, motion = _train(gearing)
    exact = setup.accuracy.exact
    if over <= LONGEST:
        moves = under if over == 1 else mixed(under, over)
        per_turn = mixed(spaces * under, circle * over)
        lines.append(f"Such moves in one spindle turn: {moves} × {crank} = {per_turn} crank turns")
        rest = motion if exact else mixed(head.ratio * circle * over - spaces * under, circle * over)
        lines.append(f"{head.ratio} - {per_turn} = {rest}: the plate turns {gearing.plate} the crank")
    lines.append(train)
    if not exact:
        lines.append(_miss(setup))
    return lines


@lru_cache(maxsize=KEPT)
def _train(gearing: Gearing) -> tuple[str, str]:
    """The line of the train, and the plate turns that it makes in one spindle turn, below 0 against the crank."""
    spindle, worm = gearing.spindle, gearing.worm
    if gearing.stud is None:
        made, train = f"{spindle}/{worm}", mixed(spindle, worm)
    else:
        first, second = gearing.stud
        made, train = f"({spindle} × {first})/({worm} × {second})", mixed(spindle * first, worm * second)
    sign = "-" if gearing.plate == "against" else ""
    return made if made == train else f"{made} = {train}", f"{sign}{train}"


def _grid(head: Head, setup: Setup) -> list[str]:
    move, second = setup.move, setup.second
    assert move is not None
    if move.plate is None:
        return [f"{move.circle} holes round the spindle, nothing between them", _miss(setup)]
    if second is None:
        return [_apart(head.ratio * move.circle), _miss(setup)]
    grid = move.circle * second.circle // gcd(move.circle, second.circle)
    return [
        f"Circles {move.circle} and {second.circle} together make every 1/{grid} of a crank turn",
        _miss(setup),
    ]


@lru_cache(maxsize=KEPT)
def _apart(places: int) -> str:
    return f"Holes stand {angle_text(Fraction(1, places))} of the spindle apart, so half of that at most"


def _dial(work: Stepped, head: Head, setup: Setup) -> list[str]:
    one = dial_set(work.step, head)
    turns, beyond = divmod(work.step * head.ratio, 1)
    exact = angle_text(beyond / head.ratio)
    if head.dial and head.dial.divisions is not None:
        exact = lines_text(beyond * head.dial.divisions)
    rounded_up = f"{counted(one.turns, 'turn')} and " if one.turns > turns else ""
    lines = [f"{counted(turns, 'turn')} and {exact}, set to {rounded_up}{reading_told(one, head)}"]
    return lines if setup.exact else [*lines, _miss(setup)]


def _list_working(work: Angles, head: Head, setup: Setup) -> list[str]:
    if setup.method == "direct":
        assert setup.move is not None
        return [f"Every angle is a whole number of spaces on the direct circle of {setup.move.circle}"]
    if setup.exact:
        return [f"Each angle × {head.ratio}/360 gives its crank turns from zero, and all come out exactly"]
    return [
        f"Each angle × {head.ratio}/360 gives its crank turns from zero, taken to the nearest place",
        _miss(setup),
    ]


def _miss(setup: Setup) -> str:
    return f"Off by {seconds_text(setup.accuracy.worst)} at the worst position"
