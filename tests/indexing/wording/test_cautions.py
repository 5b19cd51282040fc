"""What to watch with each setup."""

from __future__ import annotations

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import Head
from dividing.indexing.setup import Gearing
from dividing.indexing.wording import GENERAL, cautions
from dividing.indexing.wording.cautions import BOTH_MOVES, DIFFERENTIAL_MEANS, FIT, GUARD, SPOILED, TOO_COARSE, WORM_OUT
from dividing.indexing.work import Arc
from tests.indexing.wording.asked import FIXTURE, GEARED, IN_MESH, TABLE, Asked, asked

CASES: list[tuple[Asked, list[str]]] = [
    (asked(28), []),
    (asked(8), [WORM_OUT]),
    (asked(8, IN_MESH), []),
    (asked(51), [BOTH_MOVES]),
    (asked(73, GEARED), [DIFFERENTIAL_MEANS, GUARD]),
    (asked(7, TABLE), ["Not exact: a position is up to 4.29\" off; the errors do not add up."]),
    (
        asked(7, FIXTURE),
        [SPOILED, "Not exact: a position is up to 4°17'08.57\" off; the errors do not add up."],
    ),
    (
        asked(1_000_000, Head(direct_circles=()), "nearest", 1),
        # Half a space of 49 at 40:1: 1296000/(2 x 1960).
        [SPOILED, "Not exact: a position is up to 330.61\" off; the errors do not add up.", TOO_COARSE],
    ),
]


@pytest.mark.parametrize(("told", "watched"), CASES)
def test_each_setup_brings_its_own_cautions(told: Asked, watched: list[str]) -> None:
    assert cautions(*told) == watched


def test_an_even_move_that_is_not_exact_says_how_it_closes() -> None:
    # 9 x 40/106 = 3.396226415 and 2 + 38/41 + 23/49 = 3.396217023: 9.392e-6 turns short a move, 106 times over 40.
    told = asked(106, method="compound", place=0)
    assert cautions(*told)[-1] == (
        "Not exact: a position is up to 31.95\" off, and the last space closes 32.25\" short of full circle."
    )


def test_an_even_move_for_an_angle_says_that_it_adds_up() -> None:
    told = asked(Arc(parse_angle("0.35 rad"), 3), method="compound")
    assert cautions(*told)[-1] == (
        "Not exact: a position is up to 0.70\" off, since the error of one move adds up from cut to cut."
    )


@pytest.mark.parametrize(
    ("gearing", "clear"),
    [
        # 72 + 24 > 64 + 15 and 64 + 48 > 24 + 15, but 24 + 24 is not above 100 + 15.
        (Gearing(72, 48, (64, 24), 1, "against"), True),
        (Gearing(24, 28, (100, 24), 0, "with"), False),
    ],
)
def test_a_train_that_may_not_clear_is_to_be_tried_first(gearing: Gearing, *, clear: bool) -> None:
    work, head, setup = asked(73, GEARED)
    assert (FIT in cautions(work, head, setup._replace(gearing=gearing))) == (not clear)


def test_the_general_cautions_defer_to_the_maker_and_the_shop() -> None:
    assert GENERAL[0] == (
        "The machine maker's and the shop's rules, local codes and qualified supervision come first."
    )
