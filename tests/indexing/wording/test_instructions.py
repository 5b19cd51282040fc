"""What to do at the machine, in order."""

from __future__ import annotations

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import TWELVE_GEARS, Head, Idlers
from dividing.indexing.wording import instructions
from dividing.indexing.work import Angles, Arc, Divisions
from tests.indexing.wording.asked import ARC, FIXTURE, GEARED, IN_MESH, LIST, MARKS, TABLE, Asked, asked

COUNT_AGAIN = "Move the sector arms on to the pin after every move, before you cut."
NOT_COUNTED = "The hole that the pin is in is not counted."
IN_ORDER = "Make both moves for each cut, always in that order, or backlash enters."
BOTH_OF_SCHEDULE = "For each cut make both moves of the schedule, the crank first, always in that order."
DIAL_TO_ZERO = "Set dial and table to zero, coming up to it in the direction in which you will index."
BY_THE_SCHEDULE = "Set each position by the schedule, worked from zero; never add up a rounded step."
LATCHED = "Latch the crank pin up; the worm stays in mesh, so it is the crank that turns the spindle."
HOME = "after the last move the work is back where it began."
SCALE = "check each against the degree scale on the spindle nose."
ONE_ROUND = "a whole turn brings the work back where it began."
ONE_ON_SCALE = "check it against the degree scale on the spindle nose."
ONE = Angles((parse_angle("37°30'"),))
LOCK = "Withdraw the stop pin behind the plate, or the train will lock."
STEPS: list[tuple[Asked, list[str]]] = [
    (
        asked(28),
        [
            "Mount plate 3 and set the crank pin to its circle of 49.",
            f"Set the sector arms to embrace 22 holes, which is 21 spaces. {NOT_COUNTED}",
            "For each cut turn the crank 1 turn and 21 spaces.",
            COUNT_AGAIN,
            f"28 cuts; {HOME}",
        ],
    ),
    (
        asked(20),
        [
            "Set the crank pin to any circle of the plate that is mounted; whole turns need no arms.",
            "For each cut turn the crank 2 turns and let the pin drop back in the same hole.",
            f"20 cuts; {HOME}",
        ],
    ),
    (
        asked(8),
        [
            "Take the worm out of mesh.",
            "For each cut turn the spindle 3 spaces on the direct circle of 24 holes.",
            "Seat the direct pin fully.",
            f"8 cuts; {HOME}",
        ],
    ),
    (
        asked(8, IN_MESH),
        [
            LATCHED,
            "For each cut turn the crank until the direct pin has gone on 3 spaces on the direct circle of 24 holes.",
            "Seat the direct pin fully.",
            f"8 cuts; {HOME}",
        ],
    ),
    (
        asked(73, GEARED),
        [
            "Set the crank pin to the circle of 18 on the plate that is mounted.",
            "Hang the gears: 40 on the spindle, 72 on the worm side, 2 idlers between.",
            LOCK,
            "Before cutting, turn the crank and watch the plate: it must turn against the crank. If it does not, take "
            "one idler out or put one more in.",
            f"Set the sector arms to embrace 11 holes, which is 10 spaces. {NOT_COUNTED}",
            "For each cut turn the crank 10 spaces.",
            COUNT_AGAIN,
            f"73 cuts; {HOME}",
        ],
    ),
    (
        asked(51),
        [
            "Set the crank pin to the circle of 18 on the plate that is mounted.",
            "Set the stop pin behind the plate in the circle of 17.",
            f"First move: crank 12 spaces on the circle of 18, arms over 13 holes. {NOT_COUNTED}",
            "Second move: withdraw the stop pin and turn plate and crank together 2 spaces the same way on the circle "
            "of 17; seat the stop pin.",
            IN_ORDER,
            COUNT_AGAIN,
            f"51 cuts; {HOME}",
        ],
    ),
    (
        asked(7, TABLE),
        [
            DIAL_TO_ZERO,
            "The second position is 12 turns and 3°25'40\" from zero.",
            BY_THE_SCHEDULE,
            f"7 cuts; {HOME}",
        ],
    ),
    (
        asked(7, FIXTURE),
        [
            "Take the worm out of mesh.",
            "For each cut turn the spindle by the spaces of the schedule on the direct circle of 36 holes.",
            f"7 cuts; {HOME}",
        ],
    ),
    (
        asked(LIST),
        [
            "Set the crank pin to the circle of 18 on the plate that is mounted.",
            "Set the stop pin behind the plate in the circle of 20.",
            BOTH_OF_SCHEDULE,
            f"3 cuts in all; {SCALE}",
        ],
    ),
    # A plain dial of 60: a sixth is 15 whole turns.
    (
        asked(6, MARKS),
        [DIAL_TO_ZERO, "The second position is 15 turns and 0 lines from zero.", BY_THE_SCHEDULE, f"6 cuts; {HOME}"],
    ),
    (asked(LIST, TABLE), [DIAL_TO_ZERO, BY_THE_SCHEDULE, f"3 cuts in all; {SCALE}"]),
    # A whole turn of the work leads back to zero: no second position is to be set.
    (
        asked(Arc(parse_angle("360")), TABLE),
        [DIAL_TO_ZERO, "Make every cut at zero: a whole turn leads back there.", f"2 cuts in all; {SCALE}"],
    ),
    *[
        (asked(1, head), [DIAL_TO_ZERO, "Make the cut at zero: a whole turn leads back there.", f"1 cut; {ONE_ROUND}"])
        for head in (TABLE, MARKS)
    ],
    # Forty crank turns, or every hole of the direct plate, make the one turn of the work.
    (
        asked(1, method="plain"),
        [
            "Set the crank pin to any circle of the plate that is mounted; whole turns need no arms.",
            "For each cut turn the crank 40 turns and let the pin drop back in the same hole.",
            f"1 cut; {ONE_ROUND}",
        ],
    ),
    (
        asked(1, method="direct"),
        [
            "Take the worm out of mesh.",
            "For each cut turn the spindle 24 spaces on the direct circle of 24 holes.",
            "Seat the direct pin fully.",
            f"1 cut; {ONE_ROUND}",
        ],
    ),
    (asked(ONE, TABLE), [DIAL_TO_ZERO, BY_THE_SCHEDULE, f"1 cut in all; {ONE_ON_SCALE}"]),
    # 37°30' is 4 3/18 crank turns; of 37°30'07" no circle of 36 makes an exact part.
    (
        asked(ONE, Head(plates=((36,),))),
        [
            "Set the crank pin to the circle of 36 on the plate that is mounted.",
            "For each cut turn the crank by the turns and spaces of the schedule.",
            f"1 cut in all; {ONE_ON_SCALE}",
        ],
    ),
    (
        asked(Angles((parse_angle("37°30'07\""),)), Head(plates=((36,),)), "nearest"),
        [
            "Set the crank pin to the circle of 36 on the plate that is mounted.",
            "For each cut turn the crank by the turns and spaces of the schedule.",
            f"1 cut in all; {ONE_ON_SCALE}",
        ],
    ),
    # 11/33 + 1/21 = 8/21 = 40/105.
    (
        asked(105, method="compound"),
        [
            "Mount plate 2 and set the crank pin to its circle of 33.",
            "Set the stop pin behind the plate in the circle of 21.",
            f"First move: crank 11 spaces on the circle of 33, arms over 12 holes. {NOT_COUNTED}",
            "Second move: withdraw the stop pin and turn plate and crank together 1 space the same way on the circle "
            "of 21; seat the stop pin.",
            IN_ORDER,
            COUNT_AGAIN,
            f"105 cuts; {HOME}",
        ],
    ),
    # 22/33 - 2/23 = 40/69.
    (
        asked(69, method="compound"),
        [
            "Mount plate 2 and set the crank pin to its circle of 33.",
            "Set the stop pin behind the plate in the circle of 23.",
            f"First move: crank 22 spaces on the circle of 33, arms over 23 holes. {NOT_COUNTED}",
            "Second move: withdraw the stop pin and turn plate and crank together 2 spaces the opposite way on the "
            "circle of 23; seat the stop pin.",
            IN_ORDER,
            COUNT_AGAIN,
            f"69 cuts; {HOME}",
        ],
    ),
    # 1 4/20 + 2/15 = 1 1/3.
    (
        asked(30, method="compound"),
        [
            "Set the crank pin to the circle of 20 on the plate that is mounted.",
            "Set the stop pin behind the plate in the circle of 15.",
            f"First move: crank 1 turn and 4 spaces on the circle of 20, arms over 5 holes. {NOT_COUNTED}",
            "Second move: withdraw the stop pin and turn plate and crank together 2 spaces the same way on the circle "
            "of 15; seat the stop pin.",
            IN_ORDER,
            COUNT_AGAIN,
            f"30 cuts; {HOME}",
        ],
    ),
    # 40 - 38 = 2 = 48/24, with the crank.
    (
        asked(38, Head(plates=((20,),), change_gears=TWELVE_GEARS), "differential"),
        [
            "Set the crank pin to the circle of 20 on the plate that is mounted.",
            "Hang the gears: 48 on the spindle, 24 on the worm side, 1 idler between.",
            LOCK,
            "Before cutting, turn the crank and watch the plate: it must turn with the crank. If it does not, take one "
            "idler out or put one more in.",
            "For each cut turn the crank 1 turn.",
            f"38 cuts; {HOME}",
        ],
    ),
    (
        asked(Angles(tuple(map(parse_angle, ("0", "15", "75")))), IN_MESH),
        [
            LATCHED,
            "For each cut turn the crank until the direct pin has gone on by the spaces of the schedule on the "
            "direct circle of 24 holes.",
            f"3 cuts in all; {SCALE}",
        ],
    ),
    # 40/1000 = 1/25: on any circle but 15 and 20 up to 12/25 of a space off, so least on the largest.
    (
        asked(1000, method="nearest", place=1),
        [
            "Mount plate 3 and set the crank pin to its circle of 49.",
            "For each cut turn the crank by the turns and spaces of the schedule: they differ from cut to cut.",
            f"1,000 cuts; {HOME}",
        ],
    ),
    (
        asked(127),
        [
            "Mount plate 3 and set the crank pin to its circle of 47.",
            "Set the stop pin behind the plate in the circle of 49.",
            BOTH_OF_SCHEDULE,
            f"127 cuts; {HOME}",
        ],
    ),
]


@pytest.mark.parametrize(("told", "steps"), STEPS, ids=[steps[-1] for _, steps in STEPS])
def test_the_steps_stand_in_order(told: Asked, steps: list[str]) -> None:
    assert instructions(*told) == steps


def test_four_gears_are_named_by_their_places() -> None:
    # (86 x 28)/(44 x 24): 86 and 28 drive, 24 and 44 are driven.
    told = asked(383, GEARED)
    assert instructions(*told)[1] == (
        "Hang the gears: 86 on the spindle drives 24 on the stud; beside it on the stud 28 drives 44 on the worm side; "
        "no idler. On the stud 28 goes on first, 24 second."
    )


def test_where_the_head_takes_no_idler_none_is_hung() -> None:
    told = asked(73, Head(change_gears=TWELVE_GEARS, idlers=Idlers(simple_with=1, simple_against=0)))
    assert instructions(*told)[1] == "Hang the gears: 40 on the spindle, 72 on the worm side, no idler between."


def test_laps_are_counted_when_a_move_goes_over_several_divisions() -> None:
    laps = "laps; the count is only right when the last move brings you home."
    assert instructions(*asked(Divisions(28, every=3)))[-1] == f"28 cuts in 3 {laps}"
    assert instructions(*asked(Divisions(1000, every=3)))[-1] == f"1,000 cuts in 3 {laps}"


def test_an_arc_is_checked_against_the_scale() -> None:
    assert instructions(*asked(ARC))[-1] == f"3 cuts in all; {SCALE}"
    assert instructions(*asked(Arc(parse_angle("0°05'"), 1000)))[-1] == f"1,000 cuts in all; {SCALE}"


def test_a_list_on_one_circle_follows_the_schedule() -> None:
    told = asked(LIST, Head(plates=((36,),)))
    assert instructions(*told) == [
        "Set the crank pin to the circle of 36 on the plate that is mounted.",
        "For each cut turn the crank by the turns and spaces of the schedule.",
        f"3 cuts in all; {SCALE}",
    ]
