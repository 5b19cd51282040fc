"""A seed stands for one sheet, for ever and wherever it is drawn."""

from __future__ import annotations

import os
import subprocess
import sys
from collections import Counter
from fractions import Fraction
from pathlib import Path

import pytest

from dividing.indexing.head import Dial, Head
from dividing.indexing.practice import KIND_NAMES, Exercise, KindName, Wanted, sheet
from tests.indexing.practice.by_second import check
from tests.indexing.practice.classes import GEARED, HEADS
from tests.indexing.practice.frozen import FIRST, SECOND, SEED, THIRD, Row
from tests.indexing.refusals import faults_of

DRAWN = """
from tests.indexing.practice.classes import exercises
for head, exercise in exercises(range(0, 48), 9):
    print(exercise)
"""


def asked(seed: int, count: int = 9, head: Head = GEARED, **more: object) -> tuple[Exercise, ...]:
    return sheet(Wanted(seed, count, head, **more)).exercises  # type: ignore[arg-type]


@pytest.mark.parametrize(("level", "rows"), [(1, FIRST), (2, SECOND), (3, THIRD)])
def test_a_sheet_worked_by_hand_is_what_it_was(level: int, rows: list[Row]) -> None:
    drawn = asked(SEED, level=level)
    assert [(one.task.kind, one.question, one.key.claim) for one in drawn] == rows
    for exercise in drawn:
        check(exercise, GEARED)


@pytest.mark.parametrize("hash_seed", ["0", "1", "4242"])
def test_a_seed_draws_the_same_in_every_process(hash_seed: str) -> None:
    root = Path(__file__).resolve().parents[3]
    path = os.pathsep.join((str(root), str(root / "service")))
    environment = {**os.environ, "PYTHONHASHSEED": hash_seed, "PYTHONPATH": path}
    printed = subprocess.run(
        [sys.executable, "-c", DRAWN], env=environment, capture_output=True, text=True, check=True
    ).stdout
    from tests.indexing.practice.classes import exercises

    assert printed == "".join(f"{exercise}\n" for _, exercise in exercises(range(48), 9))


@pytest.mark.parametrize("head", HEADS)
def test_a_longer_sheet_begins_with_the_shorter_one(head: Head) -> None:
    for level in (1, 2, 3):
        assert asked(5, 7, head, level=level) == asked(5, 20, head, level=level)[:7]


def test_seeds_and_levels_draw_sheets_of_their_own() -> None:
    sheets = {tuple(one.question for one in asked(seed, level=level)) for seed in range(40) for level in (1, 2, 3)}
    assert len(sheets) == 120
    by_plain = [{one.question for one in asked(3, 20, Head(), kinds=("plain",), level=level)} for level in (1, 2, 3)]
    assert not by_plain[0] & by_plain[1]
    assert not by_plain[0] & by_plain[2]


@pytest.mark.parametrize("head", HEADS)
def test_the_kinds_come_round_in_turn(head: Head) -> None:
    made = sheet(Wanted(11, 30, head))
    kinds = [one.task.kind for one in made.exercises]
    each = len(made.kinds)
    for first in range(0, 30 - each, each):
        assert sorted(kinds[first : first + each]) == sorted(made.kinds)
    assert [one.number for one in made.exercises] == list(range(1, 31))


def test_the_order_of_the_kinds_changes_from_seed_to_seed() -> None:
    assert len({asked(seed)[0].task.kind for seed in range(60)}) == len(KIND_NAMES)


@pytest.mark.parametrize("level", [1, 2, 3])
def test_no_work_comes_twice_on_a_sheet_while_there_is_other(level: int) -> None:
    for seed in range(20):
        works = Counter(one.task.work for one in asked(seed, 18, level=level))
        assert max(works.values()) == 1, works


def test_where_there_is_no_other_work_it_comes_again() -> None:
    # A plate of seven holes in one turn of the crank: sevenths, and nothing else.
    sevenths = Head(ratio=1, plates=((7,),), direct_circles=())
    drawn = asked(1, 4, sevenths, kinds=("plain",))
    assert [one.task.work.cuts for one in drawn] == [7, 7, 7, 7]


@pytest.mark.parametrize("head", HEADS)
def test_the_level_is_the_one_asked_for_while_the_head_has_it(head: Head) -> None:
    for level in (1, 2, 3):
        levels = {}
        for one in asked(2, 45, head, level=level):
            levels.setdefault(one.task.kind, set()).add(one.task.level)
        # One level for each kind; another than asked for only where the head has nothing there.
        assert all(len(found) == 1 for found in levels.values()), levels
        assert sum(found != {level} for found in levels.values()) <= 2 or head.plates == ((28, 33),), levels


def test_a_level_that_the_head_does_not_have_gives_way_to_the_next() -> None:
    # Sevenths in one turn: 7 is an easy number; nothing is left for levels 2 and 3.
    sevenths = Head(ratio=1, plates=((7,),), direct_circles=())
    for level in (1, 2, 3):
        answered = [one for one in asked(1, 12, sevenths, kinds=("plain",), level=level) if not one.task.none]
        assert {(one.task.level, one.task.work.cuts) for one in answered} <= {(1, 7)}


def test_of_the_other_levels_the_one_below_comes_first() -> None:
    # Three gears make no train of four, which is what level 3 asks for.
    three = Head(plates=((15, 21, 49),), change_gears=(24, 28, 32))
    assert {one.task.level for one in asked(1, 6, three, kinds=("differential",), level=3)} == {2}


LEFT_OUT: list[tuple[Head, dict[str, str]]] = [
    (Head(), {
        "differential": "No change gears are given for this head.",
        "dial": "This head has no dial.",
    }),
    (Head(plates=(), direct_circles=(), dial=Dial(Fraction(1, 360))), {
        **dict.fromkeys(("plain", "angular", "which_plate", "sector_arms", "compound", "differential"),
                        "This head has no index plates."),
        "direct": "This head has no direct plate.",
    }),
    (Head(plates=((15,), (16,)), change_gears=(24,)), {
        "compound": "No plate of this head has two circles that can be used together.",
        "differential": "No train of the gears you own makes a number that one circle does not make alone.",
        "dial": "This head has no dial.",
    }),
    # On circles of 10 and 20 two moves make nothing that 20 does not make alone; one idler is wanted and not owned.
    (Head(plates=((10, 20),), change_gears=(24, 28)), {
        "compound": "No two circles of one plate make a number that one of them does not make alone.",
        "differential": "No train of the gears you own makes a number that one circle does not make alone.",
        "dial": "This head has no dial.",
    }),
    # 8192 = 2 to the 13th: every number to 1,000 that a plate of two holes halves comes out in whole turns.
    (Head(8192, ((2,),), direct_circles=(12,)), {
        "which_plate": "Every number that these plates serve comes out in whole turns, on any circle.",
        "sector_arms": "Every number that these plates serve comes out in whole turns, which need no arms.",
        "compound": "No plate of this head has two circles that can be used together.",
        "differential": "No change gears are given for this head.",
        "dial": "This head has no dial.",
    }),
    # The same without a direct plate: in whole turns there is no hole to miscount and no part to turn upside down.
    (Head(8192, ((2,),), direct_circles=()), {
        "direct": "This head has no direct plate.",
        "which_plate": "Every number that these plates serve comes out in whole turns, on any circle.",
        "sector_arms": "Every number that these plates serve comes out in whole turns, which need no arms.",
        "compound": "No plate of this head has two circles that can be used together.",
        "differential": "No change gears are given for this head.",
        "dial": "This head has no dial.",
        "find_the_slip": "Whatever slip is made with the figures of this head, it cannot be told which it was.",
    }),
    # 11/360 of a turn is no number of degrees on a plate of eleven.
    (Head(1, ((11,),), direct_circles=()), {
        "angular": "There is nothing to ask about with the figures of this head.",
        "direct": "This head has no direct plate.",
        "compound": "No plate of this head has two circles that can be used together.",
        "differential": "No change gears are given for this head.",
        "dial": "This head has no dial.",
    }),
]  # fmt: skip


@pytest.mark.parametrize(("head", "reasons"), LEFT_OUT)
def test_what_a_head_cannot_do_is_not_asked(head: Head, reasons: dict[str, str]) -> None:
    wanted = Wanted(1, 20, head)
    made = sheet(wanted)
    assert made.wanted is wanted
    assert {no.kind: no.reason for no in made.left_out} == reasons
    assert set(made.kinds) == set(KIND_NAMES) - set(reasons)
    assert {one.task.kind for one in made.exercises} == set(made.kinds)


@pytest.mark.parametrize(("seed", "level"), [(1, 1), (31, 2), (51, 3)])
def test_a_slip_that_is_hard_to_make_is_found_in_the_end(seed: int, level: int) -> None:
    # 9000 = 2 x 2 x 2 x 9 x 125 with a plate of five: nearly all comes out in whole turns. These seeds find no slip in
    # the order that chance gives them.
    stubborn = Head(9000, ((5,),), direct_circles=())
    for exercise in asked(seed, 2, stubborn, kinds=("find_the_slip",), level=level):
        check(exercise, stubborn)


def test_of_the_kinds_asked_for_those_that_can_be_are_asked() -> None:
    made = sheet(Wanted(1, 4, Head(), ("dial", "plain")))
    assert (made.kinds, [no.kind for no in made.left_out]) == (("plain",), ["dial"])


def test_a_head_that_can_do_none_of_them_is_told_why() -> None:
    kinds: tuple[KindName, ...] = ("dial", "differential")
    assert faults_of(lambda: sheet(Wanted(1, 4, Head(), kinds))) == [
        (
            ("kinds",),
            "This head can do none of the kinds asked for. dial: This head has no dial. differential: No change gears "
            "are given for this head. Ask for other kinds, or change the head.",
        )
    ]


SEED_FAULT = (("seed",), "The seed is a whole number from 0 to 999,999,999.")
COUNT_FAULT = (("count",), "A sheet has 1 to 60 exercises.")
LEVEL_FAULT = (("level",), "The level is 1, 2 or 3.")
GENERATOR_FAULT = (("generator",), "Exercises are drawn in one way so far; give 1, or nothing.")


@pytest.mark.parametrize(
    ("figures", "faults"),
    [
        ({"seed": -1}, [SEED_FAULT]),
        ({"seed": 1_000_000_000}, [SEED_FAULT]),
        ({"count": 0}, [COUNT_FAULT]),
        ({"count": 61}, [COUNT_FAULT]),
        ({"level": 0}, [LEVEL_FAULT]),
        ({"level": 4}, [LEVEL_FAULT]),
        ({"generator": 2}, [GENERATOR_FAULT]),
        (
            {"seed": -1, "count": 61, "level": 9, "generator": 0},
            [SEED_FAULT, COUNT_FAULT, LEVEL_FAULT, GENERATOR_FAULT],
        ),
    ],
)
def test_figures_out_of_bounds_are_refused_all_at_once(figures: dict[str, int], faults: list[object]) -> None:
    assert faults_of(lambda: Wanted(**{"seed": 1, **figures})) == faults  # type: ignore[arg-type]


@pytest.mark.parametrize("figures", [{"seed": 0}, {"seed": 999_999_999}, {"count": 1}, {"count": 60}, {"level": 3}])
def test_figures_on_their_bounds_are_taken(figures: dict[str, int]) -> None:
    wanted = Wanted(**{"seed": 1, **figures})  # type: ignore[arg-type]
    assert len(sheet(wanted).exercises) == figures.get("count", 12)


@pytest.mark.parametrize("level", [1, 2, 3])
def test_a_number_of_plain_indexing_is_as_hard_as_its_level(level: int) -> None:
    mounted = set(GEARED.plates[0])
    for exercise in asked(17, 60, GEARED, kinds=("plain",), level=level):
        count, parts = exercise.task.work.cuts, Fraction(40, exercise.task.work.cuts).denominator
        easy = count <= 60 and any(circle % parts == 0 for circle in mounted)
        assert easy == (level == 1)
        assert exercise.task.none <= (level > 1)
        assert count <= {1: 60, 2: 400, 3: 1000}[level]
        if level == 3 and not exercise.task.none:
            assert parts not in GEARED.plate_of


@pytest.mark.parametrize(("level", "mark"), [(1, "°"), (2, "'"), (3, ".")])
def test_an_angle_is_written_as_its_level_has_it(level: int, mark: str) -> None:
    for exercise in asked(4, 30, GEARED, kinds=("angular",), level=level):
        written = exercise.task.written
        assert mark in written
        assert ("'" in written, "." in written) == (level == 2, level == 3)
