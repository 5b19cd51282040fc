"""The schedule of cuts, row by row as worked by hand; laws over whole ranges stand in test_forward."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.accuracy import accuracy
from dividing.indexing.angles import Angle
from dividing.indexing.head import Dial, Head
from dividing.indexing.positions import Row, dial_set, rows
from dividing.indexing.setup import Even, Gearing, Move, Rounded, SecondMove, Setup, Spacing
from dividing.indexing.work import Angles, Arc, Divisions, Work

MINUTES = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(Fraction(1, 21600)))
FIFTY = Head(ratio=80, plates=(), direct_circles=(), dial=Dial(divisions=50))
SMALL = Head(ratio=2, plates=((4,),), direct_circles=())
PAIR = Head(ratio=1, plates=((2, 3),), direct_circles=())
PAIR_TWO = Head(ratio=2, plates=((2, 3),), direct_circles=())


def setup(work: Work, spacing: Spacing, move: Move | None, second: SecondMove | None = None) -> Setup:
    method = "dial" if move is None else "nearest"
    return Setup(method, spacing, accuracy(work, spacing), move, second, every=work.every)


def even(work: Divisions | Arc, move: Move, second: SecondMove | None = None, step: Fraction | None = None) -> Setup:
    return setup(work, Even(step or work.step), move, second)


def on_holes(told: list[Row]) -> list[tuple[int, int | None, int | None]]:
    return [(row.turns, row.holes, row.hole) for row in told]


def on_both(told: list[Row]) -> list[tuple[int | None, ...]]:
    return [(row.turns, row.holes, row.hole, row.second_holes, row.second_hole) for row in told]


def a_list(*turns: str) -> Angles:
    return Angles(tuple(Angle(Fraction(each)) for each in turns))


class TestWhereTheCutsShouldStand:
    @pytest.mark.parametrize(
        ("work", "divisions", "places"),
        [
            (Divisions(4), [0, 1, 2, 3], ["0", "1/4", "1/2", "3/4"]),
            (Divisions(4, every=3), [0, 3, 2, 1], ["0", "3/4", "1/2", "1/4"]),
            (Divisions(1), [0], ["0"]),
            (Arc(Angle(Fraction(3, 8)), 4), [0, 1, 2, 3], ["0", "3/8", "3/4", "9/8"]),  # an arc counts its laps
            (a_list("5/4", "0", "1/3"), [0, 1, 2], ["1/4", "0", "1/3"]),  # a list does not
        ],
    )
    def test_in_the_order_of_cutting(self, work: Work, divisions: list[int], places: list[str]) -> None:
        told = list(rows(work, SMALL, setup(work, Rounded(8), Move(None, None, 4, 1))))
        assert [row.cut for row in told] == list(range(1, work.cuts + 1))
        assert [row.division for row in told] == divisions
        assert [row.place for row in told] == [Fraction(place) for place in places]


class TestTheSameMoveAgain:
    def test_twenty_eight_on_forty_nine(self) -> None:
        # 1 turn and 21 spaces: 21, 42, 63 - 49 = 14, 35, 56 - 49 = 7, 28, 49 - 49 = 0.
        work = Divisions(28)
        told = list(rows(work, Head(), even(work, Move(1, 21, 49, 3))))
        assert on_holes(told)[:9] == [
            (0, 0, 0), (1, 21, 21), (1, 21, 42), (1, 21, 14), (1, 21, 35), (1, 21, 7), (1, 21, 28), (1, 21, 0),
            (1, 21, 21),
        ]  # fmt: skip
        assert [row.cut for row in told if row.free_check] == [8, 15, 22]
        assert [row.place for row in told[:3]] == [0, Fraction(1, 28), Fraction(2, 28)]
        assert {row.error for row in told} == {0}

    def test_whole_turns_come_back_to_their_hole_and_check_nothing(self) -> None:
        work = Divisions(20)
        told = list(rows(work, Head(), even(work, Move(2, 0, 20, 1))))
        assert on_holes(told) == [(0, 0, 0), *[(2, 0, 0)] * 19]
        assert not any(row.free_check for row in told)

    def test_three_spaces_a_move_go_round_three_times(self) -> None:
        # 40 x 3/7 = 17 turns and 3 on 21; divisions 0 3 6 2 5 1 4.
        work = Divisions(7, every=3)
        told = list(rows(work, Head(), even(work, Move(17, 3, 21, 2))))
        assert [row.division for row in told] == [0, 3, 6, 2, 5, 1, 4]
        assert [row.hole for row in told] == [0, 3, 6, 9, 12, 15, 18]
        assert [row.place for row in told] == [Fraction(part, 7) for part in (0, 3, 6, 2, 5, 1, 4)]
        # The spindle itself goes on: after three moves it has made 9/7 of a turn.
        assert told[3].reached == Fraction(9, 7)

    def test_the_setup_says_how_many_spaces_a_move_has(self) -> None:
        work = Divisions(7)
        blocks = Setup("plain", Even(Fraction(3, 7)), accuracy(work, Even(work.step)), Move(17, 3, 21, 2), every=3)
        assert [row.division for row in rows(work, Head(), blocks)] == [0, 3, 6, 2, 5, 1, 4]

    def test_two_moves_are_counted_on_their_own_circles(self) -> None:
        # 40/51 = 12/18 + 2/17.
        work = Divisions(51)
        told = list(rows(work, Head(), even(work, Move(0, 12, 18, 1), SecondMove(2, 17))))
        assert on_both(told)[:4] == [(0, 0, 0, 0, 0), (0, 12, 12, 2, 2), (0, 12, 6, 2, 4), (0, 12, 0, 2, 6)]
        # The first pin is back every third cut, both never before the work is done.
        assert not any(row.free_check for row in told)

    def test_a_second_move_backwards_is_counted_backwards(self) -> None:
        # 40/69 = 21/23 - 11/33.
        work = Divisions(69)
        told = list(rows(work, Head(), even(work, Move(0, 21, 23, 2), SecondMove(-11, 33))))
        assert on_both(told)[:4] == [(0, 0, 0, 0, 0), (0, 21, 21, -11, 22), (0, 21, 19, -11, 11), (0, 21, 17, -11, 0)]

    def test_whole_turns_are_told_beside_two_moves(self) -> None:
        # 40/20 = 2 = 1 10/20 + 8/16.
        work = Arc(Angle(Fraction(1, 20)), 3)
        told = list(rows(work, Head(), even(work, Move(1, 10, 20, 1), SecondMove(8, 16))))
        assert on_both(told) == [(0, 0, 0, 0, 0), (1, 10, 10, 8, 8), (1, 10, 0, 8, 0)]

    def test_both_pins_back_at_once_are_a_check(self) -> None:
        # 1/2 + 2/4 on one plate: back after two moves.
        work = Arc(Angle(Fraction(1, 40)), 5)
        told = list(rows(work, Head(), even(work, Move(0, 10, 20, 1), SecondMove(8, 16))))
        assert [row.free_check for row in told] == [False, False, True, False, True]

    def test_gears_do_not_change_how_holes_are_counted(self) -> None:
        work = Divisions(73)
        geared = even(work, Move(0, 12, 21, 2))._replace(gearing=Gearing(48, 28, None, 2, "against"))
        told = list(rows(work, Head(), geared))
        assert [row.hole for row in told[:8]] == [0, 12, 3, 15, 6, 18, 9, 0]

    def test_the_error_of_a_step_adds_up(self) -> None:
        # An eighth for a seventh is 1/56 short each time.
        work = Divisions(7)
        told = list(rows(work, Head(), even(work, Move(5, 0, 20, 1), step=Fraction(1, 8))))
        assert [row.error for row in told] == [Fraction(-cut, 56) for cut in range(7)]
        assert [row.reached for row in told] == [Fraction(cut, 8) for cut in range(7)]

    def test_on_the_direct_plate(self) -> None:
        work = Divisions(8)
        told = list(rows(work, Head(), even(work, Move(0, 3, 24, None))))
        assert on_holes(told)[:3] == [(0, 0, 0), (0, 3, 3), (0, 3, 6)]


class TestTheNearestHole:
    def test_three_on_a_circle_of_four_at_one_to_one(self) -> None:
        # 4/3 lies nearest hole 1, 8/3 nearest hole 3.
        work = Divisions(3)
        head = Head(ratio=1, plates=((4,),), direct_circles=())
        told = list(rows(work, head, setup(work, Rounded(4), Move(None, None, 4, 1))))
        assert on_holes(told) == [(0, 0, 0), (0, 1, 1), (0, 2, 3)]
        assert [row.error for row in told] == [0, Fraction(-1, 12), Fraction(1, 12)]
        assert [row.reached for row in told] == [0, Fraction(1, 4), Fraction(3, 4)]

    def test_a_place_midway_between_two_holes_goes_to_the_one_ahead(self) -> None:
        work = a_list("1/16", "15/16")
        told = list(rows(work, SMALL, setup(work, Rounded(8), Move(None, None, 4, 1))))
        assert [row.error for row in told] == [Fraction(1, 16), Fraction(1, 16)]
        # The second is hole 0 of the next turn of the spindle.
        assert told[1].reached == 1
        assert [row.hole for row in told] == [1, 0]

    def test_positions_in_any_order_are_reached_forwards(self) -> None:
        # Eight places: 0, 4, back to 2 by going on 6, and 2 again without a move.
        work = a_list("0", "1/2", "1/4", "1/4")
        told = list(rows(work, SMALL, setup(work, Rounded(8), Move(None, None, 4, 1))))
        assert on_holes(told) == [(0, 0, 0), (1, 0, 0), (1, 2, 2), (0, 0, 2)]
        assert not any(row.free_check for row in told)

    def test_back_in_the_start_hole_by_spaces_is_a_check(self) -> None:
        # 2 spaces, then 1 turn and 2: hole 0.
        work = a_list("0", "1/4", "1")
        told = list(rows(work, SMALL, setup(work, Rounded(8), Move(None, None, 4, 1))))
        assert on_holes(told) == [(0, 0, 0), (0, 2, 2), (1, 2, 0)]
        assert [row.free_check for row in told] == [False, False, True]
        # The same where the first position is 2 spaces on.
        work = a_list("1/4", "1")
        told = list(rows(work, SMALL, setup(work, Rounded(8), Move(None, None, 4, 1))))
        assert [row.free_check for row in told] == [False, True]

    def test_on_the_direct_plate_there_are_no_turns(self) -> None:
        work = Divisions(5)
        told = list(rows(work, Head(ratio=1, plates=(), direct_circles=(36,)),
                         setup(work, Rounded(36), Move(None, None, 36, None))))  # fmt: skip
        # 7.2, 14.4, 21.6, 28.8.
        assert on_holes(told) == [(0, 0, 0), (0, 7, 7), (0, 7, 14), (0, 8, 22), (0, 7, 29)]

    def test_two_circles_take_whichever_moves_make_the_distance(self) -> None:
        # Six places on 2 and 3; quarters lie nearest 0, 2 (1 1/2 goes ahead), 3, 5. Two places are one space on 3;
        # one place is 1/2 - 1/3.
        work = Divisions(4)
        told = list(rows(work, PAIR, setup(work, Rounded(6), Move(None, None, 2, 1), SecondMove(None, 3))))
        assert on_both(told) == [(0, 0, 0, 0, 0), (0, 0, 0, 1, 1), (0, 1, 1, -1, 0), (0, 0, 1, 1, 1)]
        assert [row.error for row in told] == [0, Fraction(1, 12), 0, Fraction(1, 12)]

    def test_two_circles_with_whole_turns(self) -> None:
        # Twelve places at 2:1: half a turn of the crank on 2; a turn and a third on 3; then two thirds to go home.
        work = a_list("0", "1/4", "11/12", "1/4")
        told = list(rows(work, PAIR_TWO, setup(work, Rounded(12), Move(None, None, 2, 1), SecondMove(None, 3))))
        # 3 places on: 1 space on 2. 8 on: 1 turn and 1 space on 3. 4 on: 2 spaces on 3.
        assert on_both(told) == [(0, 0, 0, 0, 0), (0, 1, 1, 0, 0), (1, 0, 1, 1, 1), (0, 0, 1, 2, 0)]
        assert {type(figure) for row in on_both(told) for figure in row} == {int}

    def test_both_pins_back_by_spaces_are_a_check(self) -> None:
        work = a_list("0", "1/3", "1")
        told = list(rows(work, PAIR, setup(work, Rounded(6), Move(None, None, 2, 1), SecondMove(None, 3))))
        assert on_both(told)[1:] == [(0, 0, 0, 1, 1), (0, 0, 0, 2, 0)]
        assert [row.free_check for row in told] == [False, False, True]


class TestTheDial:
    @pytest.mark.parametrize(
        ("head", "place", "turns", "units", "reading"),
        [
            # 90/7 = 12 6/7 turns of 4 degrees; 6/7 x 240 = 205.7 minutes.
            (MINUTES, "1/7", 12, 206, "1/105"),
            (MINUTES, "0", 0, 0, "0"),
            (MINUTES, "1/90", 1, 0, "0"),
            (MINUTES, "1/43200", 0, 1, "1/43200"),  # half a minute goes forward
            (FIFTY, "1/7", 11, 21, "3/560"),  # 80/7 = 11 3/7; 3/7 x 50 = 21.4
            # 80 x 100/127 = 62.9921 turns; 49.6 divisions round up to the next turn, a little past the place.
            (FIFTY, "100/127", 63, 0, "-1/10160"),
        ],
    )
    def test_is_set_to_its_nearest_reading_from_zero(
        self, head: Head, place: str, turns: int, units: int, reading: str
    ) -> None:
        found = dial_set(Fraction(place), head)
        assert (found.turns, found.reading, found.units) == (turns, Fraction(reading), units)

    def test_no_place_is_set_farther_off_than_half_a_reading(self) -> None:
        for head in (MINUTES, FIFTY):
            for cut in range(360):
                place = Fraction(cut, 359)
                setting = dial_set(place, head)
                assert 0 <= setting.units < head.dial_units
                reached = Fraction(setting.turns * head.dial_units + setting.units, head.ratio * head.dial_units)
                assert abs(reached - place) * head.ratio * head.dial_units <= Fraction(1, 2)
                assert Fraction(setting.turns, head.ratio) + setting.reading == place

    def test_every_position_is_worked_from_zero(self) -> None:
        work = Divisions(7)
        told = list(rows(work, MINUTES, setup(work, Rounded(21600), None)))
        assert [row.dial and row.dial[::2] for row in told] == [
            (0, 0), (12, 206), (25, 171), (38, 137), (51, 103), (64, 69), (77, 34),
        ]  # fmt: skip
        assert [row.turns for row in told] == [0, *[12] * 6]
        assert {(row.holes, row.hole, row.second_holes, row.second_hole) for row in told} == {(None,) * 4}
        # 12 x 240 + 206 minutes are 1/75,600 of a turn past a seventh.
        assert told[1].error == Fraction(1, 75600)

    def test_past_a_whole_turn_of_the_spindle_it_counts_from_zero_again(self) -> None:
        # 90 x 3/8 = 33 3/4 turns, 67 1/2, and 101 1/4 less 90; a turn is 240 minutes.
        work = Arc(Angle(Fraction(3, 8)), 4)
        told = list(rows(work, MINUTES, setup(work, Rounded(21600), None)))
        assert [row.dial and row.dial[::2] for row in told] == [(0, 0), (33, 180), (67, 120), (11, 60)]
        assert [row.turns for row in told] == [0, 33, 33, 33]

    def test_at_zero_it_checks_the_count(self) -> None:
        work = Divisions(60)
        told = list(rows(work, MINUTES, setup(work, Rounded(21600), None)))
        # 1 1/2 turns a cut: the dial is at 0 every second time.
        assert [row.free_check for row in told[:5]] == [False, False, True, False, True]

    def test_at_zero_after_a_whole_turn_it_checks_the_count(self) -> None:
        # 120 degrees are 30 turns of 4: the dial is at 0 every time, the fourth time after a whole turn of the table.
        work = Arc(Angle(Fraction(1, 3)), 4)
        told = list(rows(work, MINUTES, setup(work, Rounded(21600), None)))
        assert [row.free_check for row in told] == [False, True, True, True]
        assert [(row.turns, row.dial and row.dial.turns) for row in told] == [(0, 0), (30, 30), (30, 60), (30, 0)]

    def test_a_position_again_or_at_zero_checks_nothing(self) -> None:
        work = a_list("1/90", "1/90", "0")
        told = list(rows(work, MINUTES, setup(work, Rounded(21600), None)))
        assert [row.free_check for row in told] == [False, False, False]
        # From 4 degrees back to 0 the handwheel goes on 89 turns.
        assert [row.turns for row in told] == [1, 0, 89]


def test_features_at_an_angle_are_numbered_as_they_stand() -> None:
    work = Arc(Angle(Fraction(1, 8)), 3)
    told = list(rows(work, Head(), even(work, Move(5, 0, 20, 1))))
    assert [(row.cut, row.division, row.place) for row in told] == [
        (1, 0, 0), (2, 1, Fraction(1, 8)), (3, 2, Fraction(1, 4)),
    ]  # fmt: skip
