"""What to do at the machine, in order."""

from __future__ import annotations

import pytest

from dividing.indexing.head import Head
from dividing.indexing.wording import instructions
from dividing.indexing.wording.instructions import COUNT_AGAIN, NOT_COUNTED
from dividing.indexing.work import Divisions
from tests.indexing.wording.asked import ARC, FIXTURE, GEARED, IN_MESH, LIST, TABLE, Asked, asked

HOME = "after the last move the work is back where it began."
SCALE = "check each against the degree scale on the spindle nose."
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
            "Latch the crank pin up; the worm stays in mesh, so it is the crank that turns the spindle.",
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
            "Make both moves for each cut, always in that order, or backlash enters.",
            COUNT_AGAIN,
            f"51 cuts; {HOME}",
        ],
    ),
    (
        asked(7, TABLE),
        [
            "Set dial and table to zero, coming up to it in the direction in which you will index.",
            "The second position is 12 turns and 3°25'40\" from zero.",
            "Set each position by the schedule, worked from zero; never add up a rounded step.",
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
            "For each cut make both moves of the schedule, the crank first, always in that order.",
            f"3 cuts in all; {SCALE}",
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


def test_laps_are_counted_when_a_move_goes_over_several_divisions() -> None:
    told = asked(Divisions(28, every=3))
    assert instructions(*told)[-1] == "28 cuts in 3 laps; the count is only right when the last move brings you home."


def test_an_arc_is_checked_against_the_scale() -> None:
    assert instructions(*asked(ARC))[-1] == f"3 cuts in all; {SCALE}"


def test_a_list_on_one_circle_follows_the_schedule() -> None:
    told = asked(LIST, Head(plates=((36,),)))
    assert instructions(*told)[1] == "For each cut turn the crank by the turns and spaces of the schedule."


def test_the_nearest_hole_differs_from_cut_to_cut() -> None:
    told = asked(73, Head(plates=((49,),)))
    assert instructions(*told)[1] == (
        "For each cut turn the crank by the turns and spaces of the schedule: they differ from cut to cut."
    )
