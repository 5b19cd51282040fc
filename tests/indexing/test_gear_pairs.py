"""Two pairs of gears out of one box: what they make together, and which train is hung for it."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from itertools import accumulate, permutations

import pytest

from dividing.indexing.bounds import PLATE_MOTION_MOST, TEETH_LEAST, TEETH_MOST
from dividing.indexing.gear_pairs import Box, Train, clears
from dividing.indexing.head import TWELVE_GEARS

BOXES = [
    TWELVE_GEARS,
    (24, 24, 24, 48),
    (24, 24, 48, 48),
    (20, 30, 40, 50, 60, 90),
    (17, 23, 29, 31),
    (24, 100),
    # 10 x 10 over 200 x 200 and the like clear in no order.
    (10, 10, 12, 190, 200, 200),
    (10, 104, 105, 200),
]


def every_order(gears: tuple[int, ...]) -> dict[Fraction, list[Train]]:
    """All trains of four different gears of the box, whatever their order, by what they make."""
    found: dict[Fraction, list[Train]] = {}
    for spindle, worm, first, second in set(permutations(gears, 4)):
        made = Fraction(spindle * first, worm * second)
        if made <= 6:
            found.setdefault(made, []).append((spindle, worm, first, second))
    return found


def order_of_choosing(train: Train) -> tuple[bool, tuple[int, int], tuple[int, int], int, int]:
    """What clears first, then the fewest driving teeth, the fewest driven, and the smaller on spindle and stud."""
    spindle, worm, first, second = train
    drivers, driven = (spindle + first, min(spindle, first)), (worm + second, min(worm, second))
    return not clears(train), drivers, driven, spindle, second


@pytest.mark.parametrize("gears", BOXES, ids=str)
class TestABox:
    def test_its_ratios_are_those_of_every_order_of_its_gears(self, gears: tuple[int, ...]) -> None:
        assert {Fraction(*ratio) for ratio in Box.of(tuple(sorted(gears))).ratios()} == set(every_order(gears))

    def test_a_train_is_one_of_them_and_clears_where_one_does(self, gears: tuple[int, ...]) -> None:
        box, slow = Box.of(tuple(sorted(gears))), every_order(gears)
        for ratio in box.ratios():
            train = box.train(ratio)
            assert train in slow[Fraction(*ratio)]
            assert clears(train) == any(map(clears, slow[Fraction(*ratio)]))

    def test_of_those_that_clear_the_smallest_gears_are_taken_and_the_smaller_hung_first(
        self, gears: tuple[int, ...]
    ) -> None:
        box = Box.of(tuple(sorted(gears)))
        for ratio, trains in every_order(gears).items():
            assert box.train((ratio.numerator, ratio.denominator)) == min(trains, key=order_of_choosing)

    def test_no_gear_is_used_twice(self, gears: tuple[int, ...]) -> None:
        box = Box.of(tuple(sorted(gears)))
        for ratio in box.ratios():
            train = box.train(ratio)
            assert train is not None
            assert not Counter(train) - Counter(gears)


def test_what_a_box_does_not_make_has_no_train() -> None:
    assert Box.of((20, 30, 40, 60)).train((7, 5)) is None
    # 40 x 40 over 20 x 80 would need a second gear of 40.
    assert Box.of((20, 40, 60, 80)).train((1, 1)) is None


def test_trains_by_hand() -> None:
    # 30 x 50 over 20 x 70 clears only as 50 driving 20 and 30 driving 70: 50 + 20 > 30 + 15 and 30 + 70 > 20 + 15.
    assert Box.of((20, 30, 50, 70)).train((15, 14)) == (50, 70, 30, 20)
    # 10 x 10 over 200 x 200 cannot clear: 10 + 200 is no more than 200 + 15.
    assert Box.of((10, 10, 200, 200)).train((1, 400)) == (10, 200, 10, 200)


def test_six_turns_of_the_plate_are_made_and_none_more() -> None:
    # 60 x 40 over 20 x 20 and nothing above it; 61 x 40 over 20 x 20 is more.
    assert max(Fraction(*ratio) for ratio in Box.of((20, 20, 40, 60)).ratios()) == 6
    assert (61, 10) not in Box.of((20, 20, 40, 61)).ratios()


def test_a_pair_with_fewer_teeth_than_another_keeps_the_bound_over_it() -> None:
    sizes = range(TEETH_LEAST, TEETH_MOST + 1)
    in_order = sorted((one + other, one, one * other) for one in sizes for other in sizes if one <= other)
    largest = accumulate((product for *_, product in in_order), max)
    assert all(before <= PLATE_MOTION_MOST * product for before, (*_, product) in zip(largest, in_order, strict=True))


@pytest.mark.parametrize(
    ("train", "whether"),
    [
        ((24, 48, 0, 0), True),
        ((72, 48, 64, 24), True),  # 72 + 24 > 64 + 15 and 64 + 48 > 24 + 15
        ((24, 24, 100, 28), False),  # 24 + 28 < 100 + 15
        ((40, 20, 30, 25), True),  # 65 > 45 and 50 > 40
        ((40, 20, 50, 25), False),  # 65 is no more than 50 + 15
        ((60, 20, 24, 29), False),  # 24 + 20 is no more than 29 + 15
    ],
)
def test_pairs_clear_each_others_shafts(train: Train, whether: bool) -> None:
    assert clears(train) is whether
