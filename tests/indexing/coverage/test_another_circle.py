"""Which gaps a circle more closes: by hand, and by every train that the gears can make."""

from __future__ import annotations

import pytest

from dividing.indexing.coverage.another_circle import closed_by_circle
from dividing.indexing.head import TWELVE_GEARS, Head, Idlers
from tests.indexing.coverage.second_way import divided, passed

# Two gears and one idler of 20, 30 and 40 teeth: 1/2, 2/3, 3/4, 4/3, 3/2 or 2 turns of the plate, with the crank only.
THREE_GEARS = Head(ratio=10, plates=((60,),), direct_circles=(), change_gears=(40, 20, 30))


@pytest.mark.parametrize(
    ("gaps", "head", "circles", "closed"),
    [
        ((53, 59), Head(), range(52, 55), {52: set(), 53: {53}, 54: set()}),
        # 40/102 = 20/51: every multiple of 51.
        ((102,), Head(), range(50, 53), {50: set(), 51: {102}, 52: set()}),
        ((102,), Head(), range(152, 154), {152: set(), 153: {102}}),
        ((102,), Head(), range(101, 102), {101: set()}),
        # 40/20 is two whole turns, on any circle.
        ((20,), Head(), range(2, 4), {2: {20}, 3: {20}}),
        ((), Head(), range(2, 4), {2: set(), 3: set()}),
        ((53,), Head(), range(2, 2), {}),
        (
            (13, 17, 19, 37, 57, 95, 111),
            THREE_GEARS,
            range(2, 6),
            {
                2: {13, 17, 19, 37},  # 2 x 52/6 = 52/3, 2 x 17/2, 2 x 19/2, 2 x 37/4 = 37/2
                3: {13, 17, 19, 37, 57, 111},  # 3 x 26/3, 3 x 17/2 = 51/2, 3 x 19/2 = 57/2, 3 x 37/4 = 111/4
                4: {13, 17, 19, 37},  # 4 x 26/3 = 104/3, 4 x 17/2, 4 x 19/2, 4 x 37/4
                5: {13, 17, 19, 37, 95},  # 5 x 26/3 = 130/3, 5 x 17/2 = 85/2, 5 x 19/2 = 95/2, 5 x 37/4 = 185/4
            },
        ),
        # Two gears and no idler: 1/2 with the crank, 38 spaces of 4, and 2 with it.
        (
            (19,),
            Head(ratio=10, plates=(), change_gears=(20, 40), idlers=Idlers(0, 1, 0, 1)),
            range(3, 5),
            {3: {19}, 4: {19}},
        ),
        # Twelve turns are tried, not thirteen: 2 x (10 - 25/24) = 215/12, 2 x (10 - 27/26) = 233/13.
        ((43,), Head(ratio=10, plates=(), change_gears=(24, 25), idlers=Idlers(0, 1, 0, 1)), range(2, 3), {2: {43}}),
        ((233,), Head(ratio=10, plates=(), change_gears=(26, 27), idlers=Idlers(0, 1, 0, 1)), range(2, 3), {2: set()}),
        # Against the crank: 3 x (10 + 35/36) = 395/12 and 395 = 5 x 79, more than a circle of 2 ever passes.
        (
            (79,),
            Head(ratio=10, plates=(), change_gears=(35, 36), idlers=Idlers(1, 0, 1, 0)),
            range(2, 4),
            {2: set(), 3: {79}},
        ),
        ((19,), Head(ratio=10, plates=(), change_gears=(20,), idlers=Idlers(0, 1, 0, 1)), range(4, 5), {4: set()}),
    ],
)
def test_gaps_by_hand(gaps: tuple[int, ...], head: Head, circles: range, closed: dict[int, set[int]]) -> None:
    assert closed_by_circle(gaps, head, circles) == closed


@pytest.mark.parametrize(
    "head",
    [
        THREE_GEARS,
        Head(ratio=40, change_gears=(24, 28, 44, 86)),
        Head(ratio=3, plates=((7,),), change_gears=(10, 20, 30, 50, 60), idlers=Idlers(2, 1, 1, 0)),
        Head(ratio=2_160, plates=((400,),), change_gears=TWELVE_GEARS[1:5]),
    ],
    ids=lambda head: f"{head.ratio} to 1",
)
def test_circles_close_what_plain_moves_and_all_trains_make(head: Head) -> None:
    gaps = range(2, 400, 3)
    closed = closed_by_circle(gaps, head, range(2, 120))
    for circle in range(2, 120, 9):
        made = {(head.ratio * circle, 1)} | passed(head, (circle,), head.change_gears)
        assert closed[circle] == divided(gaps, made), circle
