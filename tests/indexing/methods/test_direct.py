"""Direct indexing by hand: the larger circle first, and why the direct plate serves no better."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import Head
from dividing.indexing.methods import direct
from dividing.indexing.setup import NO_ERROR, Declined, Even, Move, Rounded, Setup
from dividing.indexing.work import Angles, Arc, Divisions, Stepped, Work
from tests.indexing.as_told import setups

THREE_CIRCLES = Head(direct_circles=(24, 36, 30))


def a_list(*turns: str) -> Angles:
    return Angles(tuple(Angle(Fraction(each)) for each in turns))


@pytest.mark.parametrize(
    ("work", "head", "moves"),
    [
        (Divisions(8), Head(), [(3, 24)]),
        (Divisions(1), Head(), [(24, 24)]),
        (Divisions(6), THREE_CIRCLES, [(6, 36), (5, 30), (4, 24)]),
        (Divisions(5), THREE_CIRCLES, [(6, 30)]),
        (Divisions(8, every=3), Head(), [(9, 24)]),
        (Arc(parse_angle("75"), 3), Head(), [(5, 24)]),
        (Arc(parse_angle("360"), 2), Head(), [(24, 24)]),
    ],
)
def test_the_move_on_every_circle_that_serves(work: Stepped, head: Head, moves: list[tuple[int, int]]) -> None:
    told = [
        Setup("direct", Even(work.step), NO_ERROR, Move(0, holes, circle, None), every=work.every)
        for holes, circle in moves
    ]
    assert list(setups(direct.exact(work, head))) == told


def test_no_more_are_told_than_are_wanted() -> None:
    assert [setup.move for setup in setups(direct.exact(Divisions(6), THREE_CIRCLES, 1))] == [Move(0, 6, 36, None)]


def test_a_list_has_a_move_of_its_own_for_every_position() -> None:
    setup = Setup("direct", Rounded(24), NO_ERROR, Move(None, None, 24, None))
    assert direct.exact(a_list("0", "1/8", "5/12"), Head()) == (setup,)


@pytest.mark.parametrize(
    ("work", "head", "reason"),
    [
        (Divisions(8), Head(direct_circles=()), "This head has no direct plate."),
        (
            Arc(parse_angle("0.35 rad"), 2),
            Head(),
            "An angle in radians is no whole number of holes on any circle.",
        ),
        (Divisions(7), Head(), "The direct plate has 24 holes, not a multiple of 7."),
        (Divisions(28), THREE_CIRCLES, "The direct plate has 36 or 30 or 24 holes, not a multiple of 28."),
        (a_list("1/7", "1/11"), Head(), "The direct plate has 24 holes, not a multiple of 77."),
        (a_list("1/1000000000"), Head(), "The direct plate has 24 holes, not a multiple of 1,000,000,000."),
        (a_list("1/1000000001"), Head(), "The direct plate has 24 holes, not a multiple of a number so large."),
        (
            a_list("1/999999937", "1/7"),
            Head(),
            "The direct plate has 24 holes, not a multiple of a number so large.",
        ),
    ],
)
def test_why_it_gives_nothing(work: Work, head: Head, reason: str) -> None:
    assert direct.exact(work, head) == Declined("direct", reason)


def test_it_never_comes_near() -> None:
    assert direct.approximate(Divisions(7), Head()) == Declined("direct", "A direct plate is too coarse to come near.")
