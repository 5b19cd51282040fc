"""Every cut of a setup, one row each, worked from zero: what to turn, where the pin, the dial and the scale then stand.

`hole` counts from 0, the start hole; `turns` are whole crank turns since the cut before and `holes` the spaces after
them. A cut after which the pin is back in its start hole is a free check of the count.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from itertools import accumulate, chain, count, pairwise, repeat
from math import gcd
from typing import NamedTuple

from .head import Head
from .methods.compound import Pair, moves_of
from .setup import Even, Move, SecondMove, Setup
from .work import Angles, Arc, Divisions, Stepped, Work

Part = tuple[int, int]
"""A part of a turn as (numerator, denominator), not reduced: a table of thousands of rows is printed from these."""
_NOTHING: Part = (0, 1)


class DialSet(NamedTuple):
    """Whole handwheel turns from zero and the exact reading beyond them, a part of a turn of the spindle; `units` is
    the reading to set, in the smallest readings of the dial. A reading that rounds up to the whole dial is set as 0 of
    the next turn, and the exact reading then lies a little below zero."""

    turns: int
    reading_of: Part
    units: int

    @property
    def reading(self) -> Fraction:
        """The exact reading, in turns of the spindle."""
        return Fraction(*self.reading_of)


class Row(NamedTuple):
    """One cut; its places and error are parts of a turn of the spindle."""

    cut: int
    division: int
    place_of: Part
    reached_of: Part
    error_of: Part
    turns: int
    holes: int | None
    hole: int | None
    second_holes: int | None
    second_hole: int | None
    dial: DialSet | None
    free_check: bool

    @property
    def place(self) -> Fraction:
        """Where the cut should stand round the work, from 0 up to 1; an arc counts its laps."""
        return Fraction(*self.place_of)

    @property
    def reached(self) -> Fraction:
        """Where the spindle then is, laps counted."""
        return Fraction(*self.reached_of)

    @property
    def error(self) -> Fraction:
        """How far that is off, less whole turns."""
        return Fraction(*self.error_of)


class _Cranks(NamedTuple):
    """What the hand does for each cut, and where it leaves the pins or the dial: a column each."""

    turns: Iterable[int]
    holes: Iterable[int | None] = repeat(None)
    hole: Iterable[int | None] = repeat(None)
    second_holes: Iterable[int | None] = repeat(None)
    second_hole: Iterable[int | None] = repeat(None)
    dial: Iterable[DialSet | None] = repeat(None)


def rows(work: Work, head: Head, setup: Setup) -> Iterator[Row]:
    """The schedule of cuts, in the order of cutting.

    >>> from dividing.indexing.solving import solve
    >>> from dividing.indexing.work import Divisions
    >>> found = solve(Divisions(28), Head())
    >>> [(row.cut, row.hole, row.free_check) for row in rows(found.work, found.head, found.setups[0])][6:9]
    [(7, 28, False), (8, 0, True), (9, 21, False)]
    """
    return _even(_as_cut(work, setup), setup) if isinstance(setup.spacing, Even) else _rounded(work, head, setup)


def dial_set(place: Fraction, head: Head) -> DialSet:
    """How the dial is set for a place in turns of the spindle from zero.

    >>> from dividing.indexing.head import Dial
    >>> table = Head(ratio=90, plates=(), dial=Dial(graduation=Fraction(1, 21600)))
    >>> dial_set(Fraction(1, 7), table)
    DialSet(turns=12, reading_of=(6, 630), units=206)
    """
    return _dial_set(place.numerator, place.denominator, head.ratio, head.dial_units)


def _dial_set(over: int, under: int, ratio: int, per_turn: int) -> DialSet:
    turns, units = divmod((2 * over * ratio * per_turn + under) // (2 * under), per_turn)
    return DialSet(turns, (over * ratio - turns * under, ratio * under), units)


def _as_cut(work: Work, setup: Setup) -> Stepped:
    """The work with the spaces per move that the setup takes."""
    assert not isinstance(work, Angles)
    return Divisions(work.count, setup.every) if isinstance(work, Divisions) else work


def _even(work: Stepped, setup: Setup) -> Iterator[Row]:
    assert isinstance(setup.spacing, Even) and setup.move is not None
    step, miss = setup.spacing.step, setup.spacing.step - work.step
    cuts = range(work.cuts)
    reached = ((cut * step.numerator, step.denominator) for cut in cuts)
    errors = ((cut * miss.numerator, miss.denominator) for cut in cuts) if miss else repeat(_NOTHING)
    cranks, checks = _same_again(cuts, setup.move, setup.second)
    return map(Row, count(1), map(work.division, cuts), _places(work), reached, errors, *cranks, checks)


def _same_again(cuts: range, move: Move, second: SecondMove | None) -> tuple[_Cranks, list[bool]]:
    """The move at every cut but the first, and whether it brings all pins back to their start holes."""
    spaces = move.holes or 0
    turns, holes = chain((0,), repeat(move.turns or 0)), chain((0,), repeat(spaces))
    hole = [cut * spaces % move.circle for cut in cuts]
    if second is None:
        return _Cranks(turns, holes, hole), [bool(cut and spaces) and not pin for cut, pin in enumerate(hole)]
    beyond = second.holes or 0
    second_hole = [cut * beyond % second.circle for cut in cuts]
    checks = [bool(cut and spaces) and not hole[cut] and not second_hole[cut] for cut in cuts]
    return _Cranks(turns, holes, hole, chain((0,), repeat(beyond)), second_hole), checks


def _rounded(work: Work, head: Head, setup: Setup) -> Iterator[Row]:
    assert not isinstance(setup.spacing, Even)
    points = setup.spacing.points
    places = _places(work)
    # The nearest point of the grid, halves taken forward as in `rounding_error`.
    nearest = [(2 * over * points + under) // (2 * under) for over, under in places]
    # A cut at a time, as the rows are asked for: a table holds no more than it needs.
    reached = ((point, points) for point in nearest)
    errors = (
        (point * under - over * points, under * points)
        for point, (over, under) in zip(nearest, places, strict=True)
    )  # fmt: skip
    indexes = [point % points for point in nearest]
    if setup.move is None:
        cranks, back = _by_dial(places, head)
    else:
        cranks, back = _by_holes(indexes, points, head, setup.move, setup.second)
    # A check only where the cut before it stood elsewhere.
    moved = (there != here for there, here in pairwise([indexes[0], *indexes]))
    checks = [home and gone for home, gone in zip(back, moved, strict=True)]
    return map(Row, count(1), map(work.division, range(work.cuts)), places, reached, errors, *cranks, checks)


def _places(work: Work) -> list[Part]:
    """Where each cut should stand, in lowest terms."""
    if isinstance(work, Angles):
        return [(place.numerator, place.denominator) for place in work.places]
    over, under = work.step.numerator, work.step.denominator
    laps = isinstance(work, Arc)
    shares = [gcd(cut, under) for cut in range(work.cuts)]
    return [
        (cut // share * over if laps else cut // share * over % (under // share), under // share)
        for cut, share in enumerate(shares)
    ]


def _by_dial(places: list[Part], head: Head) -> tuple[_Cranks, list[bool]]:
    """The dial is back and says so where it stands at zero anywhere but at the start."""
    ratio, per_turn = head.ratio, head.dial_units
    turns, dials, back = [], [], []
    before, before_under = _NOTHING
    for reached, under in places:
        over = reached % under
        apart, whole = (over * before_under - before * under) % (under * before_under), under * before_under
        turns.append(apart * ratio // whole)
        dials.append(setting := _dial_set(over, under, ratio, per_turn))
        back.append(not setting.units and bool(reached))
        before, before_under = over, under
    return _Cranks(turns, dial=dials), back


def _by_holes(
    indexes: list[int], points: int, head: Head, move: Move, second: SecondMove | None
) -> tuple[_Cranks, list[bool]]:
    """The pins are back and say so where spaces have brought them there: whole turns do not."""
    apart = [(here - there) % points for there, here in pairwise([0, *indexes])]
    moves = {forward: _hole_moves(forward, move, second, points // head.ratio) for forward in set(apart)}
    firsts, seconds = [moves[forward][0] for forward in apart], [moves[forward][1] for forward in apart]
    circle = move.circle
    turns, holes = [first // circle for first in firsts], [first % circle for first in firsts]
    hole = [on % circle for on in accumulate(firsts)]
    if second is None:
        return _Cranks(turns, holes, hole), [not pin and bool(spaces) for pin, spaces in zip(hole, holes, strict=True)]
    second_hole = [on % second.circle for on in accumulate(seconds)]
    back = [
        not (pin or other) and bool(spaces or beyond)
        for pin, other, spaces, beyond in zip(hole, second_hole, holes, seconds, strict=True)
    ]
    return _Cranks(turns, holes, hole, seconds, second_hole), back


def _hole_moves(forward: int, move: Move, second: SecondMove | None, grid: int) -> tuple[int, int]:
    """Spaces on the first circle (whole turns included) and on the second that go `forward` places of the grid."""
    if second is None or not forward:
        return forward, 0
    pair: Pair = (grid, move.circle, second.circle, move.plate or 0)
    moves = moves_of(pair, forward)
    if moves:
        return moves
    if forward * move.circle % grid == 0:
        return forward * move.circle // grid, 0
    turns, spaces = divmod(forward * second.circle // grid, second.circle)
    return turns * move.circle, spaces
