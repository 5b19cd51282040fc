"""How many holes a plate needs, and what it divides, against trying every number of holes and divisions."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.head import SET_ONE, Head
from dividing.indexing.plate_making.counts import (
    divided_by,
    head_with,
    holes_needed,
    holes_to_drill,
    multiples,
    newly_divided,
    plate_with,
    working,
)
from tests.indexing.refusals import faults_of
from tests.second.holes import plain_settings

RATIOS = (1, 5, 30, 40, 60, 72, 90)


class TestHolesNeeded:
    @pytest.mark.parametrize(
        ("divisions", "ratio", "holes"),
        [
            (102, 40, 51),  # 40/102 = 20/51
            (127, 40, 127),
            (81, 40, 81),
            (365, 40, 73),  # 40/365 = 8/73
            (125, 60, 25),  # 60/125 = 12/25
            (400, 40, 10),
            (28, 40, 7),
            (20, 40, 1),
            (1, 40, 1),
            (64, 90, 32),  # 90/64 = 1 13/32
        ],
    )
    def test_by_hand(self, divisions: int, ratio: int, holes: int) -> None:
        assert holes_needed(divisions, ratio) == holes

    @pytest.mark.parametrize("ratio", RATIOS)
    def test_is_the_smallest_circle_that_makes_whole_spaces(self, ratio: int) -> None:
        for divisions in range(1, 130):
            crank = Fraction(ratio, divisions)
            smallest = next(holes for holes in range(1, 131) if plain_settings(crank, ((holes,),)))
            assert holes_needed(divisions, ratio) == smallest

    @pytest.mark.parametrize(("divisions", "holes"), [(102, 51), (16000, 400), (80, 2), (399, 399)])
    def test_a_plate_is_drilled_with_the_fewest_that_serve(self, divisions: int, holes: int) -> None:
        assert holes_to_drill(divisions, 40) == holes

    @pytest.mark.parametrize(
        ("divisions", "ratio", "sentence"),
        [
            (20, 40, "No plate is needed for 20 divisions: a move is 2 whole turns of the crank."),
            (40, 40, "No plate is needed for 40 divisions: a move is 1 whole turn of the crank."),
            (1, 72, "No plate is needed for 1 division: a move is 72 whole turns of the crank."),
            (
                401,
                40,
                "401 divisions at 40:1 need a circle of 401 holes or a multiple; a circle has at most 400. "
                "Use gears or the nearest hole.",
            ),
            (
                1_000_000,
                90,
                "1,000,000 divisions at 90:1 need a circle of 100,000 holes or a multiple; a circle has at most 400. "
                "Use gears or the nearest hole.",
            ),
        ],
    )
    def test_none_to_drill_is_a_refusal_that_says_why(self, divisions: int, ratio: int, sentence: str) -> None:
        assert faults_of(lambda: holes_to_drill(divisions, ratio)) == [(("divisions",), sentence)]

    def test_the_working_is_written_as_on_paper(self) -> None:
        serves = "A circle of {0} holes or a multiple of {0} makes whole spaces of it."
        assert working(102, 40) == ["40/102 = 20/51", serves.format(51)]
        assert working(127, 40) == ["40/127", serves.format(127)]
        assert working(64, 90) == ["90/64 = 1 13/32", serves.format(32)]


class TestWhatACircleDivides:
    def test_multiples_end_with_the_largest_circle(self) -> None:
        assert multiples(51) == (51, 102, 153, 204, 255, 306, 357)
        assert multiples(200) == (200, 400)
        assert multiples(399) == (399,)
        assert multiples(1) == tuple(range(1, 401))

    @pytest.mark.parametrize("ratio", RATIOS)
    def test_every_number_that_comes_out_in_whole_spaces_and_no_other(self, ratio: int) -> None:
        for holes in (2, 7, 20, 51, 97):
            tried = [
                count for count in range(1, ratio * holes + 1) if plain_settings(Fraction(ratio, count), ((holes,),))
            ]
            assert list(divided_by(holes, ratio)) == tried

    def test_numbers_past_the_limit_of_divisions_are_left_out(self) -> None:
        # 10,000 x 400 = 4,000,000: its divisors above a million are 4, 2, 4/3 ... million; 1,000,000 is the last kept.
        assert divided_by(400, 10_000)[-2:] == (800_000, 1_000_000)

    def test_new_ones_are_those_that_the_head_has_no_circle_for(self) -> None:
        head = Head()
        for holes in (51, 127, 22, 49):
            old = {
                count
                for count in divided_by(holes, 40)
                if plain_settings(Fraction(40, count), SET_ONE) or 24 % count == 0
            }
            assert set(newly_divided(holes, head)) == set(divided_by(holes, 40)) - old
        assert newly_divided(49, head) == ()

    def test_what_the_direct_plate_divides_is_not_new(self) -> None:
        bare = Head(ratio=1, plates=((5,),), direct_circles=(24,))
        assert newly_divided(36, bare) == (9, 18, 36)


class TestTheHeadWithItsPlate:
    def test_the_plate_is_the_last_and_mounted(self) -> None:
        head = head_with(51, Head())
        assert head is not None
        assert (head.plates, head.mounted_plate) == ((*SET_ONE, (51,)), 4)
        assert plate_with(51, head) == 4

    def test_a_table_without_plates_gets_its_first(self) -> None:
        head = head_with(97, Head(plates=()))
        assert head is not None
        assert (head.plates, head.mounted_plate) == (((97,),), 1)

    def test_a_circle_that_is_there_already_is_not_drilled_again(self) -> None:
        assert plate_with(33, Head()) == 2
        assert head_with(33, Head(mounted_plate=3)) == Head(mounted_plate=3)

    def test_a_head_that_is_full_takes_none(self) -> None:
        hundred = Head(plates=(tuple(range(2, 102)),), direct_circles=())
        one_fewer = Head(plates=(tuple(range(2, 101)),), direct_circles=())
        many_holes = Head(plates=(tuple(range(351, 383)),), direct_circles=())
        # 351 + ... + 382 = 32 x 366.5 = 11,728 holes, and 273 more are past 12,000; 272 more are not.
        assert head_with(397, hundred) is None
        assert head_with(397, one_fewer) is not None
        assert head_with(273, many_holes) is None
        assert head_with(272, many_holes) is not None
