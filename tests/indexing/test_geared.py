"""The table of what a head reaches with its plate geared: the same as going through every circle, only quicker."""

from __future__ import annotations

from fractions import Fraction

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


class TestRank:
    SIMPLE, AGAINST = Gearing(24, 48, None, 1, "with"), Gearing(24, 48, None, 2, "against")
    FOUR = Gearing(72, 48, (64, 24), 0, "with")
    TIGHT = Gearing(24, 28, (100, 24), 0, "with")

    # Each row: what is chosen sooner, what later, by circle and plate on a head with plate 1 mounted.
    @pytest.mark.parametrize(
        ("sooner", "later"),
        [
            ((SIMPLE, 15, 3), (FOUR, 49, 1)),
            ((FOUR, 15, 3), (TIGHT, 49, 1)),
            ((SIMPLE, 15, 1), (AGAINST, 20, 1)),
            ((SIMPLE, 15, 1), (SIMPLE, 49, 3)),
            ((SIMPLE, 20, 1), (SIMPLE, 15, 1)),
            ((AGAINST, 15, 1), (SIMPLE, 49, 3)),
            ((Gearing(24, 48, None, 1, "with"), 20, 1), (Gearing(48, 24, None, 1, "with"), 20, 1)),
        ],
    )
    def test_fewer_things_to_change_come_first(
        self, sooner: tuple[Gearing, int, int], later: tuple[Gearing, int, int]
    ) -> None:
        assert rank(*sooner, Head()) < rank(*later, Head())


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
    assert Geared(0, 20, 1, 40, lowest(40, 20), TestRank.SIMPLE).crank == (2, 1)
