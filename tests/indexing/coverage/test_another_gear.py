"""Which gaps a change gear more closes: by hand, and by every train that it can stand in."""

from __future__ import annotations

import pytest

from dividing.indexing import coverage
from dividing.indexing.coverage.another_gear import Kind, closed_by_gear, others
from dividing.indexing.head import Head, Idlers
from tests.indexing.coverage.second_way import divided, passed

GEARS = range(10, 201)
NONE_NEEDED = Idlers(0, 1, 0, 1)


@pytest.mark.parametrize(
    ("gaps", "head", "gears", "closed"),
    [
        # 59 at 40 to 1 on 18 holes with 12 of them: 40 - 59 x 12/18 = 2/3 = 32/48, and 40 the idler.
        ((59,), Head(change_gears=(24, 32, 40)), range(47, 50), {47: set(), 48: {59}, 49: set()}),
        (
            (7, 13, 17, 19, 29, 37, 47),
            Head(ratio=10, plates=((4,),), direct_circles=(), change_gears=(20, 30)),
            range(40, 70, 10),
            {
                # Any gear is the idler that 20 and 30 lack: 4 x (10 - 2/3) = 112/3 and 4 x (10 - 3/2) = 34.
                # With 40: 4 x 9 1/2 = 38, 4 x 9 1/4 = 37 and 4 x 8 2/3 = 104/3.
                40: {7, 13, 17, 19, 37},
                # With 50: 4 x 9 2/5 = 188/5; 4 x 9 3/5 = 192/5.
                50: {7, 17, 47},
                # With 60: 4 x 9 2/3 = 116/3, 4 x 7 = 28, 4 x 9 1/2 = 38.
                60: {7, 17, 19, 29},
            },
        ),
        # Four gears: 30 x 50 over 20 x 70 is 15/14, and 14 x (10 - 15/14) = 125.
        (
            (125,),
            Head(ratio=10, plates=((14,),), direct_circles=(), change_gears=(20, 30, 50)),
            range(69, 72),
            {69: set(), 70: {125}, 71: set()},
        ),
        # Whatever it is, a fourth gear is the second idler of 30 over 20 against the crank: 14 x (10 + 3/2) = 161.
        (
            (23,),
            Head(ratio=10, plates=((14,),), direct_circles=(), change_gears=(20, 30, 50)),
            range(199, 201),
            {199: {23}, 200: {23}},
        ),
        # Six turns of the plate are the most, whichever gear is new: 7 x (10 - 6) = 28, and 10 x (10 - 6.1) = 39.
        ((28,), Head(ratio=10, plates=((7,),), change_gears=(60,), idlers=NONE_NEEDED), range(10, 11), {10: {28}}),
        ((28,), Head(ratio=10, plates=((7,),), change_gears=(10,), idlers=NONE_NEEDED), range(60, 61), {60: {28}}),
        ((39,), Head(ratio=10, plates=((10,),), change_gears=(61,), idlers=NONE_NEEDED), range(10, 11), {10: set()}),
        ((39,), Head(ratio=10, plates=((10,),), change_gears=(10,), idlers=NONE_NEEDED), range(61, 62), {61: set()}),
        # At 1 to 1 with 19 over 20 the pin passes 60/20 = 3 places, with 20 over 20 none.
        (
            (3,),
            Head(ratio=1, plates=((60,),), change_gears=(20,), idlers=NONE_NEEDED),
            range(19, 21),
            {19: {3}, 20: set()},
        ),
        ((), Head(change_gears=(24, 32)), range(10, 12), {10: set(), 11: set()}),
        ((59,), Head(change_gears=(24, 32)), range(10, 10), {}),
        ((59,), Head(), range(48, 49), {48: set()}),
        ((59,), Head(plates=(), change_gears=(24, 32, 40)), range(48, 49), {48: set()}),
    ],
)
@pytest.mark.parametrize("listed", [0, 300_000], ids=["gathered", "looked up"])
def test_gaps_by_hand(
    gaps: tuple[int, ...],
    head: Head,
    gears: range,
    closed: dict[int, set[int]],
    listed: int,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(coverage.gaps, "LISTED_MOST", listed)
    assert closed_by_gear(gaps, head, gears) == closed


@pytest.mark.parametrize(
    "head",
    [
        Head(ratio=10, plates=((4, 9), (14,)), change_gears=(20, 30)),
        Head(ratio=40, plates=((20,),), change_gears=(24, 86)),
        Head(ratio=60, plates=((20,),), change_gears=(24,), idlers=NONE_NEEDED),
        Head(ratio=3, plates=((15, 16),), change_gears=(10, 20, 20, 60), idlers=Idlers(2, 1, 1, 0)),
        Head(ratio=90, plates=((49,),), change_gears=(24, 32, 44)),
        Head(ratio=5, plates=((60,),), change_gears=(24, 32, 44), idlers=Idlers(3, 4, 1, 2)),
    ],
    ids=lambda head: f"{head.ratio} to 1",
)
def test_gears_close_what_all_trains_with_them_make(head: Head) -> None:
    circles = [circle for face in head.plates for circle in face]
    already = divided(range(2, 400, 3), passed(head, circles, head.change_gears))
    gaps = [number for number in range(2, 400, 3) if number not in already]
    closed = closed_by_gear(gaps, head, GEARS)
    for teeth in GEARS[::3]:
        assert closed[teeth] == divided(gaps, passed(head, circles, (*head.change_gears, teeth))), teeth


@pytest.mark.parametrize(
    ("gears", "kind", "made"),
    [
        ((24, 32, 40), 2, {24: {1}, 32: {1}, 40: {1}}),
        # 40/(24 x 32) = 5/96, 32/(24 x 40) = 1/30, 24/(32 x 40) = 3/160.
        ((24, 32, 40), 4, {96: {5}, 30: {1}, 160: {3}}),
        ((24, 32), 4, {}),
        # 20/(20 x 30) = 1/30, 30/(20 x 20) = 3/40.
        ((20, 20, 30), 4, {30: {1}, 40: {3}}),
        # 50 and 60 over 20 x 30, 30 and 60 over 20 x 50, 30 and 50 over 20 x 60, 20 and 60 over 30 x 50, 20 and 50
        # over 30 x 60, 20 and 30 over 50 x 60.
        (
            (20, 30, 50, 60),
            4,
            {12: {1}, 10: {1}, 100: {1, 3}, 50: {3}, 40: {1}, 24: {1}, 75: {1}, 25: {1}, 90: {1}, 36: {1}, 150: {1}},
        ),
    ],
)
def test_what_the_other_gears_make_of_a_train(gears: tuple[int, ...], kind: Kind, made: dict[int, set[int]]) -> None:
    assert others(gears, kind) == made
