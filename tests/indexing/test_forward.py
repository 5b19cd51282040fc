"""Every answer is put on a head and turned: it gives the steps, the positions and the errors stated."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import SET_ONE, TWELVE_GEARS, Dial, Head, Idlers
from dividing.indexing.heads import SET_TWO
from dividing.indexing.positions import Row, rows
from dividing.indexing.setup import Even, Setup
from dividing.indexing.solving import solve
from dividing.indexing.work import Angles, Arc, Divisions, Work
from tests.indexing.as_told import hung, indexed_once
from tests.second.errors import on_finished_work
from tests.second.head import DividingHead

FEW_GEARS = (24, 28, 32, 40, 48, 100)
DEGREES_AND_MINUTES = Dial(graduation=Fraction(1, 21600))

HEADS = {
    "40 with set I": Head(),
    "40 with set I and twelve gears": Head(change_gears=TWELVE_GEARS),
    "60 with set II and a few gears": Head(ratio=60, plates=SET_TWO, change_gears=FEW_GEARS),
    "90 with set I, stop pin on three circles": Head(ratio=90, stop_circles=(20, 33, 49)),
    "72 with gears that turn the plate the other way": Head(
        ratio=72, plates=SET_ONE, change_gears=FEW_GEARS, idlers=Idlers(2, 1, 1, 0)
    ),
    "5 with odd plates": Head(ratio=5, plates=((12, 18, 20, 24), (7, 49, 50)), direct_circles=(36, 14)),
    "a single plate of two circles": Head(ratio=30, plates=((20, 21),), direct_circles=()),
    "a table by its dial in degrees": Head(
        ratio=90, plates=(), direct_circles=(), dial=Dial(Fraction(1, 21600), Fraction(1, 129600))
    ),
    "a table by its dial of fifty divisions": Head(ratio=80, plates=(), dial=Dial(divisions=50)),
    "a table with plates and a dial": Head(ratio=120, dial=DEGREES_AND_MINUTES),
    "a fixture of 36 holes": Head(ratio=1, plates=(), direct_circles=(36,)),
}
EVERY_HEAD = pytest.mark.parametrize("head", HEADS.values(), ids=HEADS.keys())

NUMBERS = [*range(2, 31), 51, 53, 57, 73, 81, 96, 97, 106, 127, 131, 210, 383]
BLOCKS = [(7, 3), (24, 5), (53, 5), (73, 2), (106, 5), (127, 9), (251, 12)]
ARCS = [("37°30'", 3), ("10", 36), ("61°15'20\"", 4), ("1/7 turn", 7), ("1/73 turn", 5), ("100", 18)]
LISTS = [
    ["0", "22.5", "61°15'"],
    ["0", "90", "45", "300", "12°12'12\""],
    ["10", "1/7 turn", "359.99", "0"],
    ["0.35 rad", "25 gon", "2 rad"],
    ["0", "30", "150", "330"],
]


def works() -> Iterator[Work]:
    for count in NUMBERS:
        yield Divisions(count)
    for count, every in BLOCKS:
        yield Divisions(count, every)
    for angle, features in ARCS:
        yield Arc(parse_angle(angle), features)
    for angles in LISTS:
        yield Angles(tuple(parse_angle(angle) for angle in angles))
    yield Arc(Angle(Fraction(1, 3)), 3)
    yield Arc(parse_angle("0.35 rad"), 6)


WORKS = list(works())


def answers(head: Head) -> Iterator[tuple[Work, Setup]]:
    for work in WORKS:
        for setup in solve(work, head, limit=100).setups:
            yield work, setup


def set_up(head: Head, setup: Setup) -> DividingHead:
    usual = head.idlers.simple_with % 2 == 1
    return DividingHead(head.ratio, hung(setup, head.change_gears, even_meshes_with=usual))


def in_order_of_cutting(work: Work, setup: Setup) -> list[Fraction]:
    """Where the cuts should lie, in turns of the spindle, when each move passes the spaces named."""
    if isinstance(work, Angles):
        return [angle.turns for angle in work.angles]
    if isinstance(work, Arc):
        return [cut * work.angle.turns for cut in range(work.count)]
    return [Fraction(cut * setup.every, work.count) for cut in range(work.count)]


def goes_round(work: Work) -> bool:
    return not isinstance(work, Arc) or work.count * work.angle.turns >= 1


def comes_home(work: Work) -> bool:
    return not isinstance(work, Arc) or (work.count * work.angle.turns).denominator == 1


class TestOneMoveRepeated:
    @EVERY_HEAD
    def test_turns_the_spindle_by_the_step_and_leaves_the_errors_stated(self, head: Head) -> None:
        for work, setup in answers(head):
            if not isinstance(setup.spacing, Even):
                continue
            standing = set_up(head, setup)
            made = []
            for _ in range(work.cuts):
                made.append(standing.spindle)
                indexed_once(standing, setup)
            assert made[1] == setup.spacing.step, (work, setup)
            wanted = in_order_of_cutting(work, setup)
            slow = on_finished_work(made, wanted, closes=goes_round(work), home=standing.spindle)
            stated = setup.accuracy
            assert stated.worst == slow.worst, (work, setup)
            assert stated.single_pitch == slow.single_pitch, (work, setup)
            assert stated.total_pitch == slow.total_pitch, (work, setup)
            assert stated.step in (None, setup.spacing.step - wanted[1]), (work, setup)
            if comes_home(work):
                assert stated.closing == slow.closing, (work, setup)

    @EVERY_HEAD
    def test_is_called_exact_when_every_cut_lies_where_it_should(self, head: Head) -> None:
        for work, setup in answers(head):
            if isinstance(setup.spacing, Even):
                standing = set_up(head, setup)
                indexed_once(standing, setup)
                wanted = in_order_of_cutting(work, setup)[1]
                assert setup.exact == (work.rational and standing.spindle == wanted), (work, setup)


class TestTheScheduleOfCuts:
    @EVERY_HEAD
    def test_brings_the_spindle_where_each_row_says(self, head: Head) -> None:
        for work, setup in answers(head):
            standing = set_up(head, setup)
            for row in rows(work, head, setup):
                follow(standing, head, setup, row)
                assert standing.spindle % 1 == row.reached % 1, (work, setup, row)
                assert (row.reached - row.place - row.error).denominator == 1, (work, setup, row)

    @EVERY_HEAD
    def test_has_every_cut_once_where_it_should_lie(self, head: Head) -> None:
        for work, setup in answers(head):
            told = list(rows(work, head, setup))
            assert [row.cut for row in told] == list(range(1, work.cuts + 1)), (work, setup)
            wanted = in_order_of_cutting(work, setup)
            assert [row.place % 1 for row in told] == [place % 1 for place in wanted], (work, setup)
            assert sorted(row.division for row in told) == list(range(work.cuts)), (work, setup)

    @EVERY_HEAD
    def test_leaves_the_errors_stated(self, head: Head) -> None:
        for work, setup in answers(head):
            told = list(rows(work, head, setup))
            slow = on_finished_work(
                [row.place + row.error for row in told], [row.place for row in told], closes=goes_round(work)
            )
            stated = setup.accuracy
            assert (stated.worst, stated.single_pitch, stated.total_pitch) == slow[:3], (work, setup)

    @EVERY_HEAD
    def test_names_the_hole_in_which_the_pin_then_stands(self, head: Head) -> None:
        for work, setup in answers(head):
            if setup.move is None or setup.move.plate is None:
                continue
            standing = set_up(head, setup)
            for row in rows(work, head, setup):
                follow(standing, head, setup, row)
                assert row.hole == standing.pin_hole(setup.move.circle), (work, setup, row)

    @EVERY_HEAD
    def test_offers_the_start_hole_as_a_check_only_where_the_pin_is_back_in_it(self, head: Head) -> None:
        for work, setup in answers(head):
            if setup.move is None or setup.move.plate is None:
                continue
            standing = set_up(head, setup)
            for row in rows(work, head, setup):
                before = standing.spindle
                follow(standing, head, setup, row)
                back = standing.pin_hole(setup.move.circle) == 0
                if setup.second is None:
                    moved = standing.spindle != before and row.holes != 0
                    assert row.free_check == (back and moved), (work, setup, row)
                else:
                    assert back or not row.free_check, (work, setup, row)

    @EVERY_HEAD
    def test_sets_the_dial_within_one_turn(self, head: Head) -> None:
        for work, setup in answers(head):
            for row in rows(work, head, setup):
                if row.dial is not None:
                    assert 0 <= row.dial.units < head.dial_units, (work, row)


def follow(standing: DividingHead, head: Head, setup: Setup, row: Row) -> None:
    """Do what one row of the schedule says."""
    if row.dial is not None:
        standing.turn_to_dial(row.dial.turns, Fraction(row.dial.units), head.dial_units)
    elif setup.move is not None and setup.move.plate is None:
        standing.turn_direct(row.holes or 0, setup.move.circle)
    elif setup.move is not None:
        standing.turn_crank(row.turns, row.holes or 0, setup.move.circle)
        if setup.second is not None and row.second_holes:
            standing.turn_plate_and_crank(row.second_holes, setup.second.circle)
