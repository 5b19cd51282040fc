"""What a plate leaves in the work: the plate drilled and used by hand, and the spindle read at every cut."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.head import SET_ONE, Head
from dividing.indexing.plate_making.counts import divided_by
from dividing.indexing.plate_making.drilling import drilling
from dividing.indexing.plate_making.left import Left, left_in, left_in_any_work
from tests.indexing.as_told import hung
from tests.second.errors import on_finished_work, seconds
from tests.second.head import DividingHead
from tests.second.plate import Told, divided, drilled

# Two holes of three on a circle of four at 1:1 lie a twelfth of a turn off: 1/3 at 1/4, 2/3 at 3/4.
ROUGH = Head(ratio=1, plates=((4,),), direct_circles=())
HEADS = {
    "40 with set I": Head(),
    "60 with a plate of two circles": Head(ratio=60, plates=((20, 21),), direct_circles=()),
    "5 with the third plate": Head(ratio=5, plates=SET_ONE[2:], direct_circles=()),
    "one to one": ROUGH,
}
HOLES = {ROUGH: (2, 3, 4)}
"""As many as the head has places for."""
EVERY_HEAD = pytest.mark.parametrize("head", HEADS.values(), ids=HEADS.keys())


def holes_by_hand(holes: int, head: Head, circles: int) -> list[Fraction]:
    plate = drilling(holes, head, circles=circles)
    move, second = plate.setup.move, plate.setup.second
    assert move is not None
    rows = [Told(row.division, row.turns, row.holes or 0, row.second_holes or 0) for row in plate.rows]
    return drilled(
        DividingHead(head.ratio, hung(plate.setup, ())),
        rows,
        circle=move.circle,
        second=second.circle if second else None,
        direct=move.plate is None,
    )


class TestByHand:
    def test_fifty_one_holes_for_a_hundred_and_two(self) -> None:
        # 51 holes on a circle of 49 at 40:1: the worst stands 25/51 of a place of 1/1960 off, 324.13".
        plate = drilling(51, Head(), circles=1)
        assert plate.setup.accuracy.worst == Fraction(25, 51 * 1960)
        left = left_in(102, plate)
        assert left.worst == Fraction(25, 51 * 1960 * 40)
        assert round(seconds(left.worst), 2) == 8.10
        assert left.move is not None
        assert (left.move.turns, left.move.holes, left.move.circle, left.move.sector_holes) == (0, 20, 51, 21)

    def test_three_holes_on_four_at_one_to_one(self) -> None:
        plate = drilling(3, ROUGH)
        twelfth = Fraction(1, 12)
        assert plate.errors == (0, -twelfth, twelfth)
        left = left_in(3, plate)
        assert (left.worst, left.single_pitch, left.total_pitch) == (twelfth, 2 * twelfth, 2 * twelfth)
        assert left.divisions == 3
        assert not left.at_most

    def test_whole_turns_come_back_to_the_first_hole_and_carry_nothing(self) -> None:
        left = left_in(20, drilling(51, Head(), circles=1))
        assert left.move is not None
        assert (left.move.turns, left.move.holes, left.move.sector_holes) == (2, 0, None)
        assert (left.worst, left.single_pitch, left.total_pitch) == (0, 0, 0)

    def test_an_exact_plate_leaves_nothing(self) -> None:
        plate = drilling(51, Head())
        assert left_in(102, plate).worst == left_in_any_work(plate).total_pitch == 0

    def test_the_plate_that_has_the_circle_is_named(self) -> None:
        left = left_in(28, drilling(49, Head()))
        assert left.move is not None
        assert left.move.plate == 3


class TestAgainstDividingByHand:
    @EVERY_HEAD
    @pytest.mark.parametrize("circles", [1, 2])
    def test_the_figures_are_those_of_the_cuts(self, head: Head, circles: int) -> None:
        for holes in HOLES.get(head, (2, 3, 7, 11, 22, 51, 53, 97)):
            plate = drilling(holes, head, circles=circles)
            by_hand = holes_by_hand(holes, head, circles)
            for divisions in divided_by(holes, head.ratio):
                if divisions > 600:
                    break
                cuts = divided(divisions, head.ratio, by_hand)
                ideal = [Fraction(cut, divisions) for cut in range(divisions)]
                slow = on_finished_work(cuts, ideal, closes=True)
                left = left_in(divisions, plate)
                assert left.worst == slow.worst, (holes, divisions)
                assert left.single_pitch == slow.single_pitch, (holes, divisions)
                assert left.total_pitch == slow.total_pitch, (holes, divisions)

    @EVERY_HEAD
    def test_no_work_is_off_by_more_than_the_limits_and_some_work_reaches_them(self, head: Head) -> None:
        for holes in HOLES.get(head, (3, 7, 22, 51, 53)):
            plate = drilling(holes, head, circles=1)
            limits = left_in_any_work(plate)
            works: list[Left] = [left_in(count, plate) for count in divided_by(holes, head.ratio)]
            assert limits.at_most
            assert (limits.divisions, limits.move) == (None, None)
            assert max(work.worst for work in works) == limits.worst
            assert max(work.total_pitch for work in works) == limits.total_pitch
            assert max(work.single_pitch for work in works) <= limits.single_pitch

    def test_only_the_plates_part_is_divided(self) -> None:
        for ratio in (5, 40, 90):
            plate = drilling(53, Head(ratio=ratio, plates=SET_ONE[:1]), circles=1)
            assert left_in_any_work(plate).worst * ratio == max(map(abs, plate.errors))
