"""What each kind may ask: all that the head can do at a level, and nothing else, by trying every hole."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle
from dividing.indexing.head import TWELVE_GEARS, Dial, Head
from dividing.indexing.practice import Task
from dividing.indexing.practice.chance import Chance
from dividing.indexing.practice.kinds import KINDS, compound, dial, differential, direct, find_the_slip
from dividing.indexing.verifying import Claim
from dividing.indexing.work import Arc, Divisions
from tests.indexing.practice.by_second import shelf, two_circles
from tests.indexing.practice.classes import GEARED, HEADS
from tests.second.gears import exact_differentials
from tests.second.holes import direct_settings, plain_settings

SHORT_OF_GEARS = Head(plates=((15, 21, 49),), change_gears=(24, 28, 32))


def hard(head: Head, most: int) -> list[int]:
    """Numbers that neither the direct plate nor one circle serves."""
    return [
        count
        for count in range(2, most + 1)
        if not plain_settings(Fraction(head.ratio, count), head.plates)
        and not direct_settings(Fraction(1, count), head.direct_circles)
    ]


def counts(tasks: list[Task]) -> set[int]:
    return {task.work.cuts for task in tasks}


@pytest.mark.parametrize("head", [GEARED, HEADS[2], SHORT_OF_GEARS])
@pytest.mark.parametrize(("level", "most"), [(1, 150), (2, 400), (3, 400)])
def test_every_number_that_a_train_makes_may_be_asked(head: Head, level: int, most: int) -> None:
    trains = shelf(head.change_gears)
    made = set()
    for count in hard(head, most):
        found = exact_differentials(head.ratio, Fraction(1, count), head.plates, trains)
        by_two = any(trains.is_simple(one.plate_turns) for one in found)
        if count >= 20 and found and by_two == (level < 3):
            made.add(count)
    tasks = list(differential.tasks(head, level, Chance(1)))
    assert counts(tasks) == made
    assert all(differential.key(task, head) for task in tasks[:40])


@pytest.mark.parametrize("head", [Head(), HEADS[3]])
@pytest.mark.parametrize(("level", "most"), [(1, 100), (2, 200), (3, 400)])
def test_every_number_that_two_circles_make_may_be_asked(head: Head, level: int, most: int) -> None:
    plates = head.plates if level > 1 else (head.plates[head.mounted_plate - 1],)
    table = two_circles(plates, head.stop_circles)
    made = {count for count in hard(head, most) if table.exact(Fraction(head.ratio, count))}
    tasks = list(compound.tasks(head, level, Chance(1)))
    assert counts(tasks) == made
    assert all(compound.key(task, head) for task in tasks)


def test_divisions_of_the_direct_plate_come_first_and_angles_after_them() -> None:
    tasks = list(direct.tasks(Head(), 1, Chance(2)))
    assert counts(tasks[:7]) == {2, 3, 4, 6, 8, 12, 24}
    assert sorted(task.work.step * 24 for task in tasks[7:]) == list(range(1, 13))


def test_angles_come_first_on_most_of_the_later_sheets() -> None:
    first = [next(direct.tasks(Head(), 2, Chance(seed))).work for seed in range(300)]
    assert 60 < sum(isinstance(work, Divisions) for work in first) < 140


@pytest.mark.parametrize("level", [2, 3])
def test_what_the_direct_plate_does_not_have_is_not_on_it(level: int) -> None:
    tasks = [task for seed in range(20) for task in direct.nones(Head(), level, Chance(seed))]
    assert {type(task.work) for task in tasks} == {Divisions, Arc}
    for task in tasks:
        assert not direct_settings(task.work.step, (24,))
        if level == 3 and isinstance(task.work, Divisions):
            # Near: 9 and 24 share a three.
            assert any(task.work.count % factor == 0 for factor in (2, 3))
        if level == 3 and isinstance(task.work, Arc):
            # Half a hole of 15 degrees.
            assert (task.work.step * 48).denominator == 1


@pytest.mark.parametrize("kind", ["plain", "which_plate"])
@pytest.mark.parametrize(("level", "most"), [(2, 200), (3, 1000)])
def test_every_number_that_no_circle_serves_may_be_asked_as_one_that_has_none(kind: str, level: int, most: int) -> None:
    tasks = list(KINDS[kind].nones(Head(), level, Chance(4)))  # type: ignore[index]
    assert counts(tasks) == {n for n in range(2, most + 1) if not plain_settings(Fraction(40, n), Head().plates)}
    assert all(KINDS[kind].key(task, Head()) for task in tasks[:50])  # type: ignore[index]


def test_an_angle_in_whole_turns_has_no_arms() -> None:
    # At 80:1 a turn is 4 degrees 30'.
    head = Head(ratio=80)
    tasks = list(KINDS["sector_arms"].tasks(head, 3, Chance(1)))
    assert len(tasks) > 100
    for task in tasks:
        assert (task.work.step * 80).denominator > 1
        assert task.circle is not None
        assert (task.work.step * 80 * task.circle).denominator == 1


@pytest.mark.parametrize("head", [HEADS[4], HEADS[5], Head(plates=(), dial=Dial(Fraction(1, 360)))])
def test_positions_of_the_dial_fall_where_their_level_has_them(head: Head) -> None:
    assert head.dial is not None
    line = head.dial.graduation or Fraction(1, head.ratio * (head.dial.divisions or 1))
    finest = head.dial.vernier or line
    on_lines = {count for count in range(2, 61) if (Fraction(1, count) / line).denominator == 1}
    assert counts(list(dial.tasks(head, 1, Chance(3)))) == on_lines
    for level in (2, 3):
        for seed in range(5):
            for task in dial.tasks(head, level, Chance(seed)):
                assert task.position is not None
                position, count = task.position
                assert 2 <= position < count <= 100
                assert task.work.step == Fraction(position, count)
                assert ((task.work.step / finest).denominator == 1) == (level == 2)


@pytest.mark.parametrize("kind", ["angular", "sector_arms", "compound", "differential", "dial", "find_the_slip"])
def test_these_always_have_an_answer(kind: str) -> None:
    assert list(KINDS[kind].nones(GEARED, 3, Chance(1))) == []  # type: ignore[index]


TABLE = HEADS[4]
KEYS: list[tuple[Task, Head, str, tuple[str, ...]]] = [
    (Task("plain", 1, Divisions(28)), Head(), "Plate 3, circle 49: 1 turn and 21 spaces, arms over 22 holes",
     ("40/28 = 1 3/7", "3/7 = 21/49")),
    (Task("plain", 2, Divisions(51), none=True), Head(), "No circle serves.",
     ("No circle on these plates is a multiple of 51.",)),
    (Task("direct", 2, Divisions(7), none=True), Head(), "No circle serves.",
     ("The direct plate has 24 holes, not a multiple of 7.",)),
    (Task("which_plate", 1, Divisions(28)), Head(), "Plate 3, circle 49",
     ("40/28 = 1 3/7", "3/7 = 21/49", "Circles that serve: 21 on plate 2, 49 on plate 3.")),
    (Task("sector_arms", 2, Divisions(28), circle=21), Head(), "The arms stand over 10 holes",
     ("40/28 = 1 3/7", "3/7 = 9/21", "9 spaces and the hole that the pin is in: 9 + 1 = 10 holes")),
    # 38 parts on 19: one space.
    (Task("sector_arms", 2, Divisions(38), circle=19), Head(), "The arms stand over 2 holes",
     ("40/38 = 1 1/19", "1 space and the hole that the pin is in: 1 + 1 = 2 holes")),
    # 2/7 of 360 are 102 6/7 degrees, 25 turns of 4 and 2 degrees 51' 25.7", to ten seconds 30".
    (Task("dial", 3, Arc(Angle(Fraction(2, 7))), position=(2, 7)), TABLE,
     "By the dial: 25 turns and 2°51'30\" from zero",
     ("One crank turn = 360°/90 = 4°", "102°51'25.71\" = 102 6/7°", "102 6/7 ÷ 4 = 25 5/7",
      "25 turns and 2°51'25.71\", set to 2°51'30\"", 'Off by 4.29" at the worst position')),
    (Task("find_the_slip", 1, Divisions(28), claim=Claim("plain", 0, 21, 49), slip="whole_turns_forgotten"), Head(),
     "1 turn and 21 spaces on the circle of 49",
     ("The part of a turn is right, but you have no whole turn where 1 turn belongs before it. Write the improper "
      "fraction as a mixed number and keep its whole part.", "40/28 = 1 3/7", "3/7 = 21/49")),
    # 30 parts at 90:1 are three turns; 5/15 is 30/90 upside down, and three turns need no circle.
    (Task("find_the_slip", 1, Divisions(30), claim=Claim("plain", 0, 5, 15), slip="fraction_upside_down"),
     Head(ratio=90), "3 turns", ("The fraction stands upside down: 15/5, not 5/15.", "90/30 = 3")),
]  # fmt: skip


@pytest.mark.parametrize(("task", "head", "summary", "working"), KEYS)
def test_the_key_says_how_it_is_worked(task: Task, head: Head, summary: str, working: tuple[str, ...]) -> None:
    key = KINDS[task.kind].key(task, head)
    assert key is not None
    assert (key.summary, key.working) == (summary, working)
    assert key.slip == task.slip
    assert (key.claim is None, key.reason) == (task.none, working[0] if task.none else None)


@pytest.mark.parametrize(
    ("task", "hint"),
    [
        (Task("compound", 1, Divisions(51, fixed=True)), "Plate 1, circles 18 and 17 serve."),
        (Task("compound", 2, Divisions(51, fixed=True)), "Plate 1 serves."),
        (Task("compound", 3, Divisions(51, fixed=True)), ""),
        # 101 x 8/20 = 40 2/5.
        (Task("differential", 1, Divisions(101, fixed=True)), "Take a crank move of 8 spaces on the circle of 20."),
        (Task("differential", 2, Divisions(101, fixed=True)), ""),
    ],
)
def test_the_first_levels_give_something_away(task: Task, hint: str) -> None:
    key = KINDS[task.kind].key(task, GEARED)
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
    # 51 needs two gears, so it is no exercise in four.
    assert KINDS["differential"].key(Task("differential", 3, Divisions(51)), GEARED) is None
    assert KINDS["dial"].key(Task("dial", 1, Divisions(8), position=(1, 8)), usual) is None


@pytest.mark.parametrize(
    ("claim", "slip"),
    [
        (Claim("plain", 1, 21, 49), "counted_the_pin_hole"),  # nothing is wrong with it
        (Claim("plain", 1, 20, 49), "other_circle"),  # another slip is likelier
        (Claim("plain", 1, 5, 16), "other_circle"),  # no slip explains it
    ],
)
def test_a_slip_that_cannot_be_told_is_not_asked(claim: Claim, slip: str) -> None:
    assert find_the_slip.key(Task("find_the_slip", 1, Divisions(28), claim=claim, slip=slip), Head()) is None


def test_twelve_gears_reach_383_by_no_train() -> None:
    # With one space a move; the number is known as the first that set I and the common gears do not reach.
    asked = counts(
        [task for level in (2, 3) for task in differential.tasks(Head(change_gears=TWELVE_GEARS), level, Chance(1))]
    )
    assert 383 not in asked
    assert {382, 381, 127} <= asked
