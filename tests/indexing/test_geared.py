"""The table of what a head reaches with its plate geared: the same as going through every circle, only quicker."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest

from dividing.indexing.geared import Geared, geared_plate, has_table, lowest, rank
from dividing.indexing.head import TWELVE_GEARS, Head, Idlers
from dividing.indexing.setup import Gearing

HEADS = {
    "the usual one": Head(change_gears=TWELVE_GEARS),
    "another plate mounted": Head(mounted_plate=3, change_gears=TWELVE_GEARS),
    "60 to 1 and few gears": Head(ratio=60, change_gears=(24, 32, 48, 100)),
    "5 to 1, the plate may stop or run back": Head(ratio=5, change_gears=TWELVE_GEARS),
    "1 to 1": Head(ratio=1, plates=((7, 12),), change_gears=(20, 40, 60)),
    "other idlers": Head(change_gears=TWELVE_GEARS, idlers=Idlers(0, 1, 1, 2)),
    "a gear too few for its idlers": Head(change_gears=(24, 48, 64)),
}


def slowly(head: Head, count: int) -> set[tuple[int, int, Fraction]]:
    """Circle, spaces of one move and plate motion, for every move that some train of the gears makes divide truly."""
    table = geared_plate(head).trains
    found = set()
    for circle, _ in head.circles:
        for spaces in range(1, (head.ratio + 6) * circle // count + 1):
            motion = head.ratio - count * Fraction(spaces, circle)
            if motion and abs(motion) <= 6 and table.gearing(motion.numerator, motion.denominator):
                found.add((circle, spaces, motion))
    return found


class TestDividing:
    @pytest.mark.parametrize("name", HEADS)
    def test_it_holds_every_move_that_a_train_makes_true_and_no_other(self, name: str) -> None:
        head = HEADS[name]
        plate = geared_plate(head)
        for count in range(2, 200):
            found = plate.dividing(count)
            assert {(one.circle, one.spaces // count, one.gearing.motion) for one in found} == slowly(head, count)
            assert all(one.spaces % count == 0 for one in found)

    def test_best_first(self) -> None:
        plate = geared_plate(HEADS["the usual one"])
        for count in range(2, 400):
            ranks = [one.rank for one in plate.dividing(count)]
            assert ranks == sorted(ranks)

    @pytest.mark.parametrize("count", [2, 3, 999_983, 1_000_000])
    def test_a_huge_ratio_is_looked_through_by_its_motions(self, count: int) -> None:
        head = Head(ratio=10_000, plates=((7, 10),), direct_circles=(), change_gears=(20, 40, 60))
        assert {(one.circle, one.spaces // count) for one in geared_plate(head).dividing(count)} == {
            (circle, spaces) for circle, spaces, _ in slowly(head, count)
        }


class TestByHand:
    # 10 to 1 with a circle of 4 on the mounted plate and one of 6 beside it; 20, 30 and 40 teeth, one of them always
    # the idler, so that the plate turns with the crank only, by 1/2, 2/3, 3/4, 4/3, 3/2 or 2. Of these the circle of 4
    # has all but the thirds whole and goes 40 spaces less 2, 3, 6, 8; that of 6 all but 3/4 and goes 60 less 3, 4, 8,
    # 9, 12.
    SMALL = Head(ratio=10, plates=((4,), (6,)), direct_circles=(), change_gears=(40, 20, 30))
    HALF, TWO_THIRDS = Gearing(20, 40, None, 1, "with"), Gearing(20, 30, None, 1, "with")
    THREE_QUARTERS, FOUR_THIRDS = Gearing(30, 40, None, 1, "with"), Gearing(40, 30, None, 1, "with")
    ONE_AND_A_HALF, TWO = Gearing(30, 20, None, 1, "with"), Gearing(40, 20, None, 1, "with")
    ON_FOUR = ((4, 1, 38, (19, 2), HALF), (4, 1, 37, (37, 4), THREE_QUARTERS), (4, 1, 34, (17, 2), ONE_AND_A_HALF),
               (4, 1, 32, (8, 1), TWO))  # fmt: skip
    ON_SIX = ((6, 2, 57, (19, 2), HALF), (6, 2, 56, (28, 3), TWO_THIRDS), (6, 2, 52, (26, 3), FOUR_THIRDS),
              (6, 2, 51, (17, 2), ONE_AND_A_HALF), (6, 2, 48, (8, 1), TWO))  # fmt: skip

    # The mounted plate first, then the slower plate.
    @pytest.mark.parametrize("count", [1, 2, 3, 4, 7, 8, 11, 13, 17, 19, 32, 37, 48, 57, 58, 1_000_000])
    def test_whatever_divides_the_spaces_of_one_turn(self, count: int) -> None:
        plate = geared_plate(self.SMALL)
        told = [one for one in (*self.ON_FOUR, *self.ON_SIX) if one[2] % count == 0]
        assert [one[1:] for one in plate.dividing(count)] == told
        assert [one[1:] for one in plate.dividing(count)] == told, "asked for again"

    def test_each_stands_by_its_rank(self) -> None:
        found = geared_plate(self.SMALL).dividing(1)
        assert [one.rank for one in found] == [rank(one.gearing, one.circle, one.plate, self.SMALL) for one in found]

    def test_with_another_idler_the_plate_turns_back_too(self) -> None:
        # 17 teeth come into no motion of whole spaces. 20 over 40 makes 40 - 2 spaces and, turned back, 40 + 2; 40 over
        # 20 makes 40 - 8, the fewest, and 40 + 8, the most.
        more = Head(ratio=10, plates=((4,),), direct_circles=(), change_gears=(17, 20, 30, 40))
        half_back, twice_back = Gearing(20, 40, None, 2, "against"), Gearing(40, 20, None, 2, "against")
        for count, told in (
            (19, (4, 1, 38, (19, 2), self.HALF)),
            (21, (4, 1, 42, (21, 2), half_back)),
            (32, (4, 1, 32, (8, 1), self.TWO)),
            (48, (4, 1, 48, (12, 1), twice_back)),
        ):
            assert [one[1:] for one in geared_plate(more).dividing(count)] == [told]

    def test_a_plate_that_would_stop_the_crank_or_run_ahead_of_it_divides_nothing(self) -> None:
        # At 1 to 1 a circle of 2 would go 2 - 1 spaces with 1/2, 2 - 3 with 3/2 and 2 - 4 with 2.
        quick = Head(ratio=1, plates=((2,),), direct_circles=(), change_gears=(20, 30, 40))
        assert [one[1:] for one in geared_plate(quick).dividing(1)] == [(2, 1, 1, (1, 2), self.HALF)]
        # With 3/3 it would stand still: 30 over 30 and an idler of 20.
        still = Head(ratio=1, plates=((2,),), direct_circles=(), change_gears=(20, 30, 30))
        assert geared_plate(still).dividing(1) == []

    def test_gears_that_fit_no_circle_divide_nothing(self) -> None:
        # 24 over 100 is 6/25, the other way up 25/6: nothing whole on 20 holes.
        none = Head(plates=((20,),), change_gears=(24, 24, 100), idlers=Idlers(2, 3, 1, 2))
        assert geared_plate(none).dividing(1) == []


class TestRank:
    SIMPLE, AGAINST = Gearing(24, 48, None, 1, "with"), Gearing(24, 48, None, 2, "against")
    FOUR = Gearing(72, 48, (64, 24), 0, "with")
    TIGHT = Gearing(24, 28, (100, 24), 0, "with")
    BARE, CROWDED = Gearing(24, 48, None, 0, "with"), Gearing(24, 48, None, 4, "with")
    SIX, SLOW, SLOWER = Gearing(60, 10, None, 1, "with"), Gearing(10, 200, None, 1, "with"), FOUR._replace(spindle=10)
    # 39,204 over 39,203 and 39,601 over 39,600: less than a millionth of a turn between them.
    ALIKE = (Gearing(198, 199, (198, 197), 0, "with"), Gearing(199, 200, (199, 198), 0, "with"))
    ALL = (SIMPLE, AGAINST, FOUR, TIGHT, BARE, CROWDED, SIX, SLOW, SLOWER, *ALIKE)

    def test_it_keeps_the_order_of_choosing(self) -> None:
        # Gears, a train that clears, plate and idlers to change, the plate to change, larger circle, slower plate.
        choices = [(each, circle, plate) for each in self.ALL for circle in (2, 3, 257, 399, 400) for plate in (1, 2)]

        def order(choice: tuple[Gearing, int, int]) -> tuple[bool, bool, int, bool, int, Fraction]:
            gearing, circle, plate = choice
            tight = gearing in (self.TIGHT, self.SLOWER)
            change = plate != 1
            return gearing.stud is not None, tight, change + gearing.idlers, change, -circle, gearing.train

        in_order = sorted(choices, key=order)
        ranks = [rank(*choice, Head()) for choice in in_order]
        assert ranks == sorted(ranks)
        for (one, first), (other, second) in pairwise(zip(in_order, ranks, strict=True)):
            assert (first == second) == (order(one) == order(other)), (one, other)

    def test_the_mounted_plate_is_that_of_the_head(self) -> None:
        assert rank(self.SIMPLE, 20, 2, Head(mounted_plate=2)) == rank(self.SIMPLE, 20, 1, Head())


class TestWhoHasATable:
    @pytest.mark.parametrize(
        ("head", "has"),
        [
            (Head(change_gears=TWELVE_GEARS), True),
            (Head(change_gears=tuple(range(20, 36))), True),
            (Head(change_gears=tuple(range(20, 37))), False),
            (Head(plates=(tuple(range(2, 42)),)), True),
            (Head(plates=(tuple(range(2, 43)),)), False),
            (Head(plates=((400, 399, 398, 397), (396, 10))), True),
            (Head(plates=((400, 399, 398, 397), (396, 11))), False),
        ],
    )
    def test_heads_of_usual_size(self, head: Head, has: bool) -> None:
        assert has_table(head) is has


def test_a_crank_move_is_named_in_lowest_terms() -> None:
    assert (lowest(40, 28), lowest(7, 7)) == ((10, 7), (1, 1))
    # 10^18 + 9 is odd, and no float.
    assert (lowest(2 * 10**18 + 18, 4), lowest(4, 2 * 10**18 + 18)) == ((10**18 + 9, 2), (2, 10**18 + 9))
    assert Geared(0, 20, 1, 40, lowest(40, 20), TestRank.SIMPLE).crank == (2, 1)
