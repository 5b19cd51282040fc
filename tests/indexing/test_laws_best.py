"""No number is left without the best that the head allows: the first answer against all slow ways together."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import cache

import pytest

from dividing.indexing.bounds import EVERY_TRIED
from dividing.indexing.head import TWELVE_GEARS, Head
from dividing.indexing.heads import SET_TWO
from dividing.indexing.solving import solve
from dividing.indexing.work import Divisions
from tests.second.gears import Shelf, exact_differentials, nearest_differential
from tests.second.holes import (
    CompoundTable,
    Plates,
    block_moves,
    direct_settings,
    places_of_two_circles,
    plain_settings,
    worst_of_divisions,
)
from tests.second.ranges import NUMBERS

HEADS = pytest.mark.parametrize(
    "head",
    [
        Head(),
        Head(change_gears=TWELVE_GEARS),
        Head(ratio=60, plates=SET_TWO, change_gears=(24, 24, 44, 72)),
        Head(ratio=90, plates=((20, 21), (12, 18, 49)), direct_circles=()),
    ],
    ids=["40, set I", "40, set I, twelve gears", "60, set II, four gears", "90, odd plates"],
)


@cache
def shelf(gears: tuple[int, ...]) -> Shelf:
    return Shelf(gears)


@cache
def two_circles(plates: Plates) -> tuple[CompoundTable, frozenset[int]]:
    return CompoundTable(plates), frozenset(places_of_two_circles(plates))


def is_exact(count: int, head: Head) -> bool:
    """Some way is exact, over one space a move or over several."""
    crank = Fraction(head.ratio, count)
    if direct_settings(Fraction(1, count), head.direct_circles) or plain_settings(crank, head.plates):
        return True
    if two_circles(head.plates)[0].exact(crank):
        return True
    blocks = (Fraction(spaces, count) for spaces in block_moves(count, min(EVERY_TRIED, count - 1)))
    return any(exact_differentials(head.ratio, step, head.plates, shelf(head.change_gears)) for step in blocks)


def worst_of_each_way(count: int, head: Head) -> Iterator[Fraction]:
    """The worst error that each way leaves at best."""
    table, grids = two_circles(head.plates)
    for places in {circle for face in head.plates for circle in face} | grids:
        yield worst_of_divisions(count, head.ratio * places)
    for spaces in block_moves(count, min(EVERY_TRIED, count - 1)):
        step = Fraction(spaces, count)
        yield (count - 1) * abs(table.nearest(head.ratio * step).move / head.ratio - step)
        geared = nearest_differential(head.ratio, step, head.plates, shelf(head.change_gears))
        if geared is not None:
            yield (count - 1) * abs(geared.spindle_move(head.ratio) - step)


@HEADS
def test_the_first_answer_is_exact_wherever_any_way_is(head: Head) -> None:
    differing = [count for count in NUMBERS if solve(Divisions(count), head).setups[0].exact != is_exact(count, head)]
    assert differing == []


@HEADS
def test_no_way_leaves_less_than_the_first_answer_where_none_is_exact(head: Head) -> None:
    inexact = [count for count in NUMBERS if not is_exact(count, head)]
    for count in inexact[:: max(1, len(inexact) // 20)]:
        first = solve(Divisions(count), head).setups[0]
        assert first.accuracy.worst <= min(worst_of_each_way(count, head)), count


@HEADS
def test_exact_answers_stand_before_the_others_and_those_by_their_worst_error(head: Head) -> None:
    for count in NUMBERS:
        worst = [setup.accuracy.worst for setup in solve(Divisions(count), head, limit=100).setups]
        assert worst == sorted(worst), count
