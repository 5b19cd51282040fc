"""What all kinds have: why a head cannot do them, their keys and how these are worked, what a question gives away."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import TWELVE_GEARS, Head
from dividing.indexing.practice import KIND_NAMES, ArmsClaim, Key, KindName, PlateClaim, Task
from dividing.indexing.practice.chance import Chance
from dividing.indexing.practice.exercise import AnyClaim
from dividing.indexing.practice.kinds import KINDS
from dividing.indexing.verifying import Claim
from dividing.indexing.work import Arc, Divisions
from tests.indexing.practice.classes import GEARED, HEADS

NO_PLATES = "This head has no index plates."
WITHOUT: list[tuple[KindName, Head, str]] = [
    *((kind, Head(plates=(), change_gears=TWELVE_GEARS), NO_PLATES)
      for kind in KIND_NAMES if kind not in ("direct", "dial", "find_the_slip")),
    ("direct", Head(direct_circles=()), "This head has no direct plate."),
    ("compound", Head(plates=((15,), (16,))), "No plate of this head has two circles that can be used together."),
    ("differential", Head(), "No change gears are given for this head."),
    ("dial", Head(), "This head has no dial."),
]  # fmt: skip


@pytest.mark.parametrize(("kind", "head", "reason"), WITHOUT)
def test_what_a_head_lacks_is_told(kind: KindName, head: Head, reason: str) -> None:
    assert KINDS[kind].reason(head) == reason


@pytest.mark.parametrize("kind", KIND_NAMES)
def test_a_head_that_has_all_lacks_nothing(kind: KindName) -> None:
    assert KINDS[kind].reason(GEARED) is None


@pytest.mark.parametrize("kind", ["angular", "sector_arms", "compound", "differential", "dial", "find_the_slip"])
def test_these_always_have_an_answer(kind: str) -> None:
    assert list(KINDS[kind].nones(GEARED, 3, Chance(1))) == []  # type: ignore[index]


TABLE = HEADS[4]
FORGOTTEN = (
    "The part of a turn is right, but you have no whole turn where 1 turn belongs before it. Write the improper "
    "fraction as a mixed number and keep its whole part."
)
KEYS: list[tuple[Task, Head, AnyClaim | None, str, tuple[str, ...]]] = [
    (Task("plain", 1, Divisions(28)), Head(), Claim("plain", 1, 21, 49),
     "Plate 3, circle 49: 1 turn and 21 spaces, arms over 22 holes", ("40/28 = 1 3/7", "3/7 = 21/49")),
    (Task("plain", 2, Divisions(51), none=True), Head(), None,
     "No circle serves.", ("No circle on these plates is a multiple of 51.",)),
    # 37 1/2 degrees are 4 turns of 9 and a sixth.
    (Task("angular", 2, Arc(parse_angle("37°30'")), "37°30'"), Head(), Claim("plain", 4, 3, 18),
     "Plate 1, circle 18: 4 turns and 3 spaces, arms over 4 holes",
     ("One crank turn = 360°/40 = 9°", "37°30' = 37 1/2°", "37 1/2 ÷ 9 = 4 1/6", "1/6 = 3/18")),
    (Task("direct", 1, Divisions(8)), Head(), Claim("direct", 0, 3, 24),
     "Direct plate, circle 24: 3 spaces", ("24/8 = 3 spaces",)),
    (Task("direct", 2, Divisions(7), none=True), Head(), None,
     "No circle serves.", ("The direct plate has 24 holes, not a multiple of 7.",)),
    (Task("which_plate", 1, Divisions(28)), Head(), PlateClaim(3, 49), "Plate 3, circle 49",
     ("40/28 = 1 3/7", "3/7 = 21/49", "Circles that serve: 21 on plate 2, 49 on plate 3.")),
    (Task("which_plate", 2, Divisions(51), none=True), Head(), None,
     "No circle serves.", ("No circle on these plates is a multiple of 51.",)),
    (Task("sector_arms", 2, Divisions(28), circle=21), Head(), ArmsClaim(10), "The arms stand over 10 holes",
     ("40/28 = 1 3/7", "3/7 = 9/21", "9 spaces and the hole that the pin is in: 9 + 1 = 10 holes")),
    # 38 parts on 19: one space.
    (Task("sector_arms", 2, Divisions(38), circle=19), Head(), ArmsClaim(2), "The arms stand over 2 holes",
     ("40/38 = 1 1/19", "1 space and the hole that the pin is in: 1 + 1 = 2 holes")),
    # 2/7 of 360 are 102 6/7 degrees, 25 turns of 4 and 2 degrees 51' 25.7", to ten seconds 30".
    (Task("dial", 3, Arc(Angle(Fraction(2, 7))), position=(2, 7)), TABLE,
     Claim("dial", 25, reading=parse_angle("2°51'30\"")), "By the dial: 25 turns and 2°51'30\" from zero",
     ("One crank turn = 360°/90 = 4°", "102°51'25.71\" = 102 6/7°", "102 6/7 ÷ 4 = 25 5/7",
      "25 turns and 2°51'25.71\", set to 2°51'30\"", 'Off by 4.29" at the worst position')),
    (Task("find_the_slip", 1, Divisions(28), claim=Claim("plain", 0, 21, 49), slip="whole_turns_forgotten"), Head(),
     Claim("plain", 1, 21, 49), "1 turn and 21 spaces on the circle of 49",
     (FORGOTTEN, "40/28 = 1 3/7", "3/7 = 21/49")),
    # 30 parts at 90:1 are three turns; 5/15 is 30/90 upside down, and three turns need no circle.
    (Task("find_the_slip", 1, Divisions(30), claim=Claim("plain", 0, 5, 15), slip="fraction_upside_down"),
     Head(ratio=90), Claim("plain", 3), "3 turns",
     ("The fraction stands upside down: 15/5, not 5/15.", "90/30 = 3")),
]  # fmt: skip


@pytest.mark.parametrize(("task", "head", "claim", "summary", "working"), KEYS)
def test_the_key_says_how_it_is_worked(
    task: Task, head: Head, claim: AnyClaim | None, summary: str, working: tuple[str, ...]
) -> None:
    reason = working[0] if task.none else None
    assert KINDS[task.kind].key(task, head) == Key(claim, summary, working, slip=task.slip, reason=reason)


@pytest.mark.parametrize(
    ("kind", "level", "count", "head", "hint"),
    [
        ("compound", 1, 51, GEARED, "Plate 1, circles 18 and 17 serve."),
        ("compound", 2, 51, GEARED, "Plate 1 serves."),
        ("compound", 3, 51, GEARED, ""),
        # 101 x 8/20 = 40 2/5.
        ("differential", 1, 101, GEARED, "Take a crank move of 8 spaces on the circle of 20."),
        ("differential", 2, 101, GEARED, ""),
        # 53 x 1 3/21 = 60 4/7, and 60 - 60 4/7 = -32/56.
        ("differential", 1, 53, HEADS[2], "Take a crank move of 1 turn and 3 spaces on the circle of 21."),
    ],
)
def test_the_first_levels_give_something_away(kind: KindName, level: int, count: int, head: Head, hint: str) -> None:
    key = KINDS[kind].key(Task(kind, level, Divisions(count, fixed=True)), head)
    assert key is not None
    assert key.hint == hint


def test_a_task_that_cannot_be_set_has_no_key() -> None:
    usual = Head()
    assert KINDS["plain"].key(Task("plain", 1, Divisions(51)), usual) is None
    assert KINDS["plain"].key(Task("plain", 2, Divisions(28), none=True), usual) is None
    assert KINDS["which_plate"].key(Task("which_plate", 1, Divisions(51)), usual) is None
    assert KINDS["sector_arms"].key(Task("sector_arms", 1, Divisions(28), circle=20), usual) is None
    assert KINDS["sector_arms"].key(Task("sector_arms", 1, Divisions(20), circle=20), usual) is None
    assert KINDS["compound"].key(Task("compound", 1, Divisions(127)), usual) is None
    # 93 takes circles of the second plate, and level 1 keeps to the first.
    assert KINDS["compound"].key(Task("compound", 1, Divisions(93)), usual) is None
    assert KINDS["compound"].key(Task("compound", 2, Divisions(93)), usual) is not None
    assert KINDS["differential"].key(Task("differential", 2, Divisions(51)), usual) is None
    assert KINDS["differential"].key(Task("differential", 2, Divisions(51), none=True), usual) is None
    # 51 needs two gears, so it is no exercise in four.
    assert KINDS["differential"].key(Task("differential", 3, Divisions(51)), GEARED) is None
    assert KINDS["dial"].key(Task("dial", 1, Divisions(8), position=(1, 8)), usual) is None
