"""The working, as somebody with a pencil writes it."""

from __future__ import annotations

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import Head
from dividing.indexing.wording import working
from dividing.indexing.work import Angles, Arc, Divisions
from tests.indexing.wording.asked import ARC, GEARED, LIST, MARKS, TABLE, USUAL, Asked, asked

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
        ["90/84 = 1 1/14", "1 turn and 4 2/7 divisions, set to 4", 'Off by 102.86" at the worst position'],
    ),
    (asked(LIST), ["Each angle × 40/360 gives its crank turns from zero, and all come out exactly"]),
]


@pytest.mark.parametrize(("told", "lines"), LINES, ids=[lines[-1] for _, lines in LINES])
def test_the_working_leads_to_the_setup(told: Asked, lines: list[str]) -> None:
    assert working(*told) == lines


def test_an_angle_in_radians_is_worked_in_decimals() -> None:
    # 0.35 rad = 20.0535...°, over 9° 2.228169 turns.
    lines = working(*asked(Arc(parse_angle("0.35 rad")), USUAL))
    assert lines[1] == "20°03'12.68\" is 2.228169 crank turns"


def test_two_circles_are_told_as_the_grid_that_they_make() -> None:
    # 47 x 49 = 2303.
    assert working(*asked(73, place=0))[1] == "Circles 47 and 49 together make every 1/2303 of a crank turn"


def test_a_list_on_two_circles_has_no_one_move_to_work() -> None:
    # 40/51 and 40/3 of a turn on 15 and 17: each position has two moves of its own.
    places = Angles(tuple(parse_angle(text) for text in ("0", "1/51 turn", "1/3 turn")))
    assert working(*asked(places, Head(plates=((15, 17),)), "compound")) == [
        "Each angle × 40/360 gives its crank turns from zero, and all come out exactly"
    ]
