"""A setup in one line, for a routing sheet."""

from __future__ import annotations

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import TWELVE_GEARS, Head
from dividing.indexing.wording import summary
from dividing.indexing.work import Arc, Divisions
from tests.indexing.wording.asked import ARC, FIXTURE, GEARED, LIST, MARKS, TABLE, Asked, asked

LINES: list[tuple[Asked, str]] = [
    # 40/28 = 1 3/7 = 1 21/49; 40/20 = 2; 24/8 = 3; 37.5/9 = 4 1/6 = 4 3/18.
    (asked(28), "Plate 3, circle 49: 1 turn and 21 spaces, arms over 22 holes"),
    (asked(20), "2 turns, pin back in the same hole of any circle"),
    (asked(40), "1 turn, pin back in the same hole of any circle"),
    (asked(8), "Direct plate, circle 24: 3 spaces"),
    (asked(24), "Direct plate, circle 24: 1 space"),
    (asked(ARC), "Plate 1, circle 18: 4 turns and 3 spaces, arms over 4 holes"),
    # 40 - 73 x 10/18 = -5/9 = 40/72, against the crank.
    (asked(73, GEARED), "Plate 1, circle 18: 10 spaces, arms over 11 holes; spindle 40, worm 72, 2 idlers"),
    # (13/33)/(40 - 301/132) = 4/383.
    (
        asked(383, GEARED),
        "Plate 2, circle 33: 13 spaces, arms over 14 holes; spindle 86, stud 28 and 24, worm 44, 0 idlers; "
        "4 divisions a move, 4 laps",
    ),
    # 12/18 + 2/17 = 40/51.
    (asked(51), "Plate 1, circles 18 and 17: crank 12 spaces on 18, then plate and crank 2 spaces forward on 17"),
    # 90/7 = 12 6/7 turns, 6/7 of 4° = 3°25'42.86", to 10 seconds 3°25'40"; 6/7 of 60 marks = 51.43.
    (
        asked(7, TABLE),
        "By the dial: 12 turns and 3°25'40\" a step, worked from zero at every cut; not exact, 4.29\" at worst",
    ),
    (asked(6, MARKS), "By the dial: 15 turns and 0 lines a step, worked from zero at every cut"),
    (asked(LIST, TABLE), "By the dial, every position worked from zero, see the schedule"),
    (asked(LIST), "Plate 1, circles 18 and 20: a move of its own for every cut, see the schedule"),
    # 1 + 4/20 + 2/15 = 1 1/3, 22/33 - 2/23 = 40/69 and 11/33 + 1/21 = 8/21 = 40/105.
    (
        asked(30, method="compound"),
        "Plate 1, circles 20 and 15: crank 1 turn and 4 spaces on 20, then plate and crank 2 spaces forward on 15",
    ),
    (
        asked(69, method="compound"),
        "Plate 2, circles 33 and 23: crank 22 spaces on 33, then plate and crank 2 spaces back on 23",
    ),
    (
        asked(105, method="compound"),
        "Plate 2, circles 33 and 21: crank 11 spaces on 33, then plate and crank 1 space forward on 21",
    ),
    # 6 x 40/61 = 3 57/61; 3 + 42/47 + 2/49 is 1/(61 x 2303) more at each of 60 moves.
    (
        asked(61, method="compound"),
        "Plate 3, circles 47 and 49: crank 3 turns and 42 spaces on 47, then plate and crank 2 spaces forward on 49; "
        '6 divisions a move, 6 laps; not exact, 13.84" at worst',
    ),
    # 40 - 38 = 2 = 48/24.
    (
        asked(38, Head(plates=((20,),), change_gears=TWELVE_GEARS), "differential"),
        "1 turn, pin back in the same hole of any circle; spindle 48, worm 24, 1 idler",
    ),
    # 360° over the 4° of a crank turn.
    *[
        (asked(work, TABLE), "By the dial: 90 turns and 0°00'00\" a step, worked from zero at every cut")
        for work in (1, Arc(parse_angle("360")))
    ],
    # 3 x 40/28 = 4 2/7 = 4 14/49.
    (
        asked(Divisions(28, every=3)),
        "Plate 3, circle 49: 4 turns and 14 spaces, arms over 15 holes; 3 divisions a move, 3 laps",
    ),
    # 36/73 of 1/1960 turn.
    (
        asked(73, method="nearest", place=1),
        'Plate 3, circle 49: a move of its own for every cut, see the schedule; not exact, 326.08" at worst',
    ),
    # Half of 36 holes falls between: 3/7 of 10° off.
    (
        asked(7, FIXTURE),
        "Direct plate, circle 36: a move of its own for every cut, see the schedule; "
        "not exact, 4°17'08.57\" at worst",
    ),
]


@pytest.mark.parametrize(("told", "line"), LINES, ids=[line for _, line in LINES])
def test_a_setup_is_told_in_one_line(told: Asked, line: str) -> None:
    assert summary(*told) == line
