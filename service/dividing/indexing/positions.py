"""Every cut of a setup, one row each, worked from zero: what to turn, where the pin, the dial and the scale then stand.

`hole` counts from 0, the start hole; `turns` are whole crank turns since the cut before and `holes` the spaces after
them. A cut after which the pin is back in its start hole is a free check of the count.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import floor
from typing import NamedTuple

from .head import Head
from .methods.compound import Pair, moves_of
from .setup import Even, Move, SecondMove, Setup
from .work import Angles, Divisions, Stepped, Work


class DialSet(NamedTuple):
    """Whole handwheel turns from zero and the exact reading beyond them, in turns of the spindle; `units` is the
    reading to set, in the smallest readings of the dial. A reading that rounds up to the whole dial is set as 0 of the
    next turn, and the exact reading then lies a little below zero."""

    turns: int
    reading: Fraction
    units: int


Part = tuple[int, int]
"""A part of a turn as (numerator, denominator), not reduced: a table of thousands of rows is printed from these."""
_NOTHING: Part = (0, 1)


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


class _Crank(NamedTuple):
    """What the hand does for one cut, and where it leaves the pin."""

    turns: int
    holes: int | None = None
    hole: int | None = None
    second_holes: int | None = None
    second_hole: int | None = None
    dial: DialSet | None = None


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
    DialSet(turns=12, reading=Fraction(1, 105), units=206)
    """
    crank = place * head.ratio
    turns, units = divmod(floor(crank * head.dial_units + Fraction(1, 2)), head.dial_units)
    return DialSet(turns, (crank - turns) / head.ratio, units)


def _as_cut(work: Work, setup: Setup) -> Stepped:
    """The work with the spaces per move that the setup takes."""
    assert not isinstance(work, Angles)
    return Divisions(work.count, setup.every) if isinstance(work, Divisions) else work


def _even(work: Stepped, setup: Setup) -> Iterator[Row]:
    assert isinstance(setup.spacing, Even) and setup.move is not None
    step, miss = setup.spacing.step, setup.spacing.step - work.step
    move, second = setup.move, setup.second
    for cut, place in enumerate(_places(work)):
        crank = _same_again(cut, move, second)
        checks = bool(cut and move.holes) and not crank.hole and not crank.second_hole
        reached = (cut * step.numerator, step.denominator)
        error = (cut * miss.numerator, miss.denominator) if miss else _NOTHING
        yield Row(cut + 1, work.division(cut), place, reached, error, *crank, checks)


def _same_again(cut: int, move: Move, second: SecondMove | None) -> _Crank:
    holes = move.holes or 0
    hole = cut * holes % move.circle
    if second is None:
        return _Crank(move.turns or 0, holes, hole) if cut else _Crank(0, 0, 0)
    spaces = second.holes or 0
    if not cut:
        return _Crank(0, 0, 0, 0, 0)
    return _Crank(move.turns or 0, holes, hole, spaces, cut * spaces % second.circle)


def _rounded(work: Work, head: Head, setup: Setup) -> Iterator[Row]:
    assert not isinstance(setup.spacing, Even)
    points = setup.spacing.points
    places = _places(work)
    # The nearest point of the grid, halves taken forward as in `rounding_error`.
    nearest = [(2 * over * points + under) // (2 * under) for over, under in places]
    indexes = [point % points for point in nearest]
    cranks = _by_dial(places, head) if setup.move is None else _by_holes(indexes, points, head, setup)
    for cut, (place, point, crank) in enumerate(zip(places, nearest, cranks, strict=True)):
        over, under = place
        error = (point * under - over * points, under * points)
        # A check only where the cut before it stood elsewhere.
        checks = cut > 0 and indexes[cut] != indexes[cut - 1] and _back_at_start(crank, place)
        yield Row(cut + 1, work.division(cut), place, (point, points), error, *crank, checks)


def _places(work: Work) -> list[Part]:
    """Where each cut should stand, in the order of cutting; an arc counts its laps."""
    if isinstance(work, Divisions):
        return [(cut * work.every % work.count, work.count) for cut in range(work.count)]
    if isinstance(work, Angles):
        return [(place.numerator, place.denominator) for place in work.places]
    over, under = work.step.numerator, work.step.denominator
    return [(cut * over, under) for cut in range(work.count)]


def _back_at_start(crank: _Crank, place: Part) -> bool:
    """Whether the pin, or the dial, is back where it began and says something by it: whole turns do not."""
    if crank.dial:
        return crank.dial.units == 0 and bool(place[0])
    return crank.hole == 0 and not crank.second_hole and bool(crank.holes or crank.second_holes)


def _by_dial(places: list[Part], head: Head) -> Iterator[_Crank]:
    before = Fraction(0)
    for part in places:
        place = Fraction(*part) % 1
        yield _Crank(floor((place - before) % 1 * head.ratio), dial=dial_set(place, head))
        before = place


def _by_holes(indexes: list[int], points: int, head: Head, setup: Setup) -> Iterator[_Crank]:
    move, second = setup.move, setup.second
    assert move is not None
    circle = move.circle
    before = on_first = on_second = 0
    moved: dict[int, tuple[int, int, int, int]] = {}
    for index in indexes:
        forward = (index - before) % points
        if forward not in moved:
            spaces_of = _hole_moves(forward, move, second, points // head.ratio)
            moved[forward] = (*spaces_of, *(divmod(spaces_of[0], circle) if move.plate else (0, spaces_of[0])))
        first, spaces, turns, holes = moved[forward]
        on_first = (on_first + first) % circle
        if second is None:
            yield _Crank(turns, holes, on_first)
        else:
            on_second = (on_second + spaces) % second.circle
            yield _Crank(turns, holes, on_first, spaces, on_second)
        before = index


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
