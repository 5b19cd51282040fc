"""The working, as somebody with a pencil writes it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import TWELVE_GEARS, Dial, Head
from dividing.indexing.heads import MINUTE
from dividing.indexing.wording import working
from dividing.indexing.work import Angles, Arc, Divisions
from tests.indexing.wording.asked import ARC, FIXTURE, GEARED, LIST, MARKS, TABLE, USUAL, Asked, asked

BY_MINUTES = replace(TABLE, dial=Dial(graduation=MINUTE))
LINES: list[tuple[Asked, list[str]]] = [
    (asked(28, place=1), ["40/28 = 1 3/7", "3/7 = 9/21"]),
    (asked(20), ["40/20 = 2"]),
    (asked(49), ["40/49 turn of the crank"]),
    (asked(8), ["24/8 = 3 spaces"]),
    (asked(24), ["24/24 = 1 space"]),
    (asked(Divisions(8, every=3)), ["3 × 24/8 = 9 spaces"]),
    (asked(Divisions(28, every=3)), ["3 × 40/28 = 4 2/7", "2/7 = 14/49"]),
    (asked(Arc(parse_angle("45°"))), ["One space = 360°/24 = 15°", "45° ÷ 15° = 3 spaces"]),
    (asked(ARC), ["One crank turn = 360°/40 = 9°", "37°30' = 37 1/2°", "37 1/2 ÷ 9 = 4 1/6", "1/6 = 3/18"]),
    (
        asked(73, GEARED),
        [
            "40/73 turn of the crank",
            "Crank move chosen: 5/9 turn",
            "Such moves in one spindle turn: 73 × 5/9 = 40 5/9 crank turns",
            "40 - 40 5/9 = -5/9: the plate turns against the crank",
            "40/72 = 5/9",
        ],
    ),
    (asked(51), ["40/51 turn of the crank", "12/18 + 2/17 = 40/51"]),
    (
        asked(7, TABLE),
        [
            "90/7 = 12 6/7",
            "12 turns and 3°25'42.86\", set to 3°25'40\"",
            'Off by 4.29" at the worst position',
        ],
    ),
    # 90/84 = 1 1/14 turn, a fourteenth of 60 marks is 4 2/7; at worst 3/7 of a mark of 240".
    (
        asked(84, MARKS),
        ["90/84 = 1 1/14", "1 turn and 4 2/7 lines, set to 4 lines", 'Off by 102.86" at the worst position'],
    ),
    # 7.99° is 36" short of two turns, 3/20 of a mark of 4'; at the worst position three times that.
    (
        asked(Arc(parse_angle("7.99"), 5), MARKS),
        [
            "One crank turn = 360°/90 = 4°",
            "7°59'24.00\" = 7 99/100°",
            "7 99/100 ÷ 4 = 1 399/400",
            "1 turn and 59 17/20 lines, set to 2 turns and 0 lines",
            'Off by 108.00" at the worst position',
        ],
    ),
    (
        asked(Arc(parse_angle("7°59'40\""), 2), BY_MINUTES),
        [
            "One crank turn = 360°/90 = 4°",
            "7°59'40.00\" = 7 179/180°",
            "7 179/180 ÷ 4 = 1 719/720",
            "1 turn and 3°59'40.00\", set to 2 turns and 0°00'",
            'Off by 20.00" at the worst position',
        ],
    ),
    (asked(9, TABLE), ["90/9 = 10", "10 turns and 0°, set to 0°00'00\""]),
    # A whole turn of the work is ninety of the crank.
    (
        asked(Arc(parse_angle("360")), TABLE),
        ["One crank turn = 360°/90 = 4°", "360 ÷ 4 = 90", "90 turns and 0°, set to 0°00'00\""],
    ),
    (asked(1, TABLE), ["90/1 = 90", "90 turns and 0°, set to 0°00'00\""]),
    (
        asked(Arc(parse_angle("36")), Head(ratio=50, direct_circles=())),
        ["One crank turn = 360°/50 = 7 1/5°", "36 ÷ 7 1/5 = 5"],
    ),
    (asked(69, method="compound"), ["40/69 turn of the crank", "22/33 - 2/23 = 40/69"]),
    (asked(105, method="compound"), ["40/105 = 8/21", "11/33 + 1/21 = 8/21"]),
    # 4/20 + 2/15 = 20/60.
    (asked(30, method="compound"), ["40/30 = 1 1/3", "1 + 4/20 + 2/15 = 1 1/3"]),
    # 42 x 49 + 2 x 47 = 2152. One of 61 x 2303 too far at each of 60 moves.
    (
        asked(61, method="compound"),
        ["6 × 40/61 = 3 57/61", "3 + 42/47 + 2/49 = 3 2152/2303", 'Off by 13.84" at the worst position'],
    ),
    (
        asked(38, Head(plates=((20,),), change_gears=TWELVE_GEARS), "differential"),
        [
            "40/38 = 1 1/19",
            "Crank move chosen: 1 turn",
            "Such moves in one spindle turn: 38 × 1 = 38 crank turns",
            "40 - 38 = 2: the plate turns with the crank",
            "48/24 = 2",
        ],
    ),
    # 73/3 x 5/3 = 365/9.
    (
        asked(Divisions(73, every=3), GEARED),
        [
            "3 × 40/73 = 1 47/73",
            "Crank move chosen: 1 2/3 turn",
            "Such moves in one spindle turn: 24 1/3 × 1 2/3 = 40 5/9 crank turns",
            "40 - 40 5/9 = -5/9: the plate turns against the crank",
            "40/72 = 5/9",
        ],
    ),
    # Blocks of four that nobody asked for: 383/4 x 13/33 = 4979/132, and (86 x 28)/(44 x 24) = 301/132.
    (
        asked(383, GEARED),
        [
            "4 × 40/383 = 160/383",
            "Crank move chosen: 13/33 turn",
            "Such moves in one spindle turn: 95 3/4 × 13/33 = 37 95/132 crank turns",
            "40 - 37 95/132 = 2 37/132: the plate turns with the crank",
            "(86 × 28)/(44 × 24) = 2 37/132",
        ],
    ),
    # (2/39)/(40 + 108/301) = 301/236886: 786 times 1/(787 x 236886) too far at the last.
    (
        asked(787, GEARED, "differential"),
        [
            "40/787 turn of the crank",
            "Crank move chosen: 2/39 turn",
            "Such moves in one spindle turn: 787 × 2/39 = 40 14/39 crank turns",
            "40 - 40 14/39 = -14/39: the plate turns against the crank",
            "(24 × 72)/(56 × 86) = 108/301",
            'Off by 5.46" at the worst position',
        ],
    ),
    # 0.35/(2 pi) = 0.0557042301 and (2 7/27)/(40 + 24/43) = 0.0557042134 of a turn, twice over.
    (
        asked(Arc(parse_angle("0.35 rad"), 3), GEARED, "differential"),
        [
            "One crank turn = 360°/40 = 9°",
            "20°03'12.68\" is 2.228169 crank turns",
            "Crank move chosen: 2 7/27 turn",
            "48/86 = 24/43",
            'Off by 0.04" at the worst position',
        ],
    ),
    # 47 x 49 = 2303; 36/73 of 1/92120 turn.
    (
        asked(73),
        [
            "40/73 turn of the crank",
            "Circles 47 and 49 together make every 1/2303 of a crank turn",
            'Off by 6.94" at the worst position',
        ],
    ),
    # 15 and 20 make sixtieths: 1/127 of a turn is 18 114/127 of 2,400 places, 63/127 of one at the worst.
    (
        asked(127, Head(plates=((15, 20),)), "nearest"),
        [
            "40/127 turn of the crank",
            "Circles 15 and 20 together make every 1/60 of a crank turn",
            'Off by 267.87" at the worst position',
        ],
    ),
    # 1296000/1960 = 661.22; 36/73 of that.
    (
        asked(73, method="nearest", place=1),
        [
            "40/73 turn of the crank",
            "Holes stand 0°11'01.22\" of the spindle apart, so half of that at most",
            'Off by 326.08" at the worst position',
        ],
    ),
    (
        asked(7, FIXTURE),
        [
            "1/7 turn of the crank",
            "36 holes round the spindle, nothing between them",
            "Off by 4°17'08.57\" at the worst position",
        ],
    ),
    (asked(LIST), ["Each angle × 40/360 gives its crank turns from zero, and all come out exactly"]),
    # 22°30' is 84 3/8 of sixteen minutes and 61°15' 229 11/16: six minutes off at the worst.
    (
        asked(LIST, replace(BY_MINUTES, dial=Dial(graduation=16 * MINUTE))),
        [
            "Each angle × 90/360 gives its crank turns from zero, taken to the nearest place",
            'Off by 360.00" at the worst position',
        ],
    ),
    (
        asked(Angles(tuple(map(parse_angle, ("0", "15", "75"))))),
        ["Every angle is a whole number of spaces on the direct circle of 24"],
    ),
]


@pytest.mark.parametrize(("told", "lines"), LINES, ids=[lines[-1] for _, lines in LINES])
def test_the_working_leads_to_the_setup(told: Asked, lines: list[str]) -> None:
    assert working(*told) == lines


def test_an_angle_in_radians_is_worked_in_decimals() -> None:
    # 0.35 rad = 20.0535...°, over 9° 2.228169 turns.
    lines = working(*asked(Arc(parse_angle("0.35 rad")), USUAL))
    assert lines[1] == "20°03'12.68\" is 2.228169 crank turns"


def test_a_list_on_two_circles_has_no_one_move_to_work() -> None:
    # 40/51 and 40/3 of a turn on 15 and 17: each position has two moves of its own.
    places = Angles(tuple(parse_angle(text) for text in ("0", "1/51 turn", "1/3 turn")))
    assert working(*asked(places, Head(plates=((15, 17),)), "compound")) == [
        "Each angle × 40/360 gives its crank turns from zero, and all come out exactly"
    ]
