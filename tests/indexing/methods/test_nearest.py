"""The nearest hole by hand: one circle, two circles, or the direct plate of a fixture."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.accuracy import accuracy
from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import Dial, Head
from dividing.indexing.methods import nearest
from dividing.indexing.setup import Declined, Move, Rounded, SecondMove, Setup
from dividing.indexing.work import Angles, Arc, Divisions, Work
from tests.indexing.as_told import setups

ONE_CIRCLE = Head(plates=((49,),))
FIXTURE = Head(ratio=1, plates=(), direct_circles=(24, 36))


@pytest.mark.parametrize(
    ("work", "head", "ways"),
    [
        # 47 x 49 = 2,303 at 40:1, and 49 alone.
        (Divisions(127), Head(), [(47, 49, 92_120), (49, None, 1_960)]),
        (Divisions(127), ONE_CIRCLE, [(49, None, 1_960)]),
        # The stop pin reaches the circle of 20 only: with 19 before it, 380.
        (Divisions(127), Head(plates=((18, 19, 20),), stop_circles=(20,)), [(19, 20, 15_200), (20, None, 800)]),
        # Two circles with all their holes in common come no nearer than the larger alone.
        (Divisions(127), Head(plates=((10, 20),)), [(20, None, 800)]),
        # A list of positions, and features at an angle that no fraction tells.
        (
            Angles((Angle(Fraction(0)), Angle(Fraction(1, 127)))),
            Head(plates=((20, 21),)),
            # 40/127 of a turn is 6.30 spaces of 20 and 6.61 of 21: 20 comes nearer.
            [(20, 21, 16_800), (20, None, 800)],
        ),
        (Arc(parse_angle("0.35 rad"), 2), ONE_CIRCLE, [(49, None, 1_960)]),
        # On a fixture the pin goes into the direct plate.
        (Divisions(35), FIXTURE, [(36, None, 36)]),
        (Divisions(47), FIXTURE, [(36, None, 36)]),
    ],
)
def test_the_nearest_way_and_one_circle_beside_it(
    work: Work, head: Head, ways: list[tuple[int, int | None, int]]
) -> None:
    found = setups(nearest.approximate(work, head))
    told = [
        (setup.move.circle if setup.move else None, setup.second.circle if setup.second else None, setup.spacing)
        for setup in found
    ]
    assert told == [(first, second, Rounded(points)) for first, second, points in ways]
    assert [setup.accuracy.worst for setup in found] == sorted(setup.accuracy.worst for setup in found)


def test_no_move_is_the_same_so_none_is_named_but_the_spaces_per_move_are() -> None:
    work, grid, circle = Divisions(127, every=9), Rounded(92_120), Rounded(1_960)
    assert nearest.approximate(work, Head()) == (
        Setup("nearest", grid, accuracy(work, grid), Move(None, None, 47, 3), SecondMove(None, 49), every=9),
        Setup("nearest", circle, accuracy(work, circle), Move(None, None, 49, 3), every=9),
    )
    direct = Rounded(36)
    assert nearest.approximate(Divisions(35), FIXTURE) == (
        Setup("nearest", direct, accuracy(Divisions(35), direct), Move(None, None, 36, None)),
    )


def test_the_circle_is_named_by_a_whole_number() -> None:
    (setup,) = setups(nearest.approximate(Divisions(127), ONE_CIRCLE))
    assert str(setup.move) == "Move(turns=None, holes=None, circle=49, plate=1)"


@pytest.mark.parametrize(
    "head",
    [
        Head(ratio=90, plates=(), dial=Dial(divisions=100)),
        Head(ratio=90, plates=(), direct_circles=(), dial=Dial(divisions=100)),
    ],
)
def test_a_table_is_set_by_its_dial(head: Head) -> None:
    reason = "This head has no index plates; its dial is set instead."
    assert nearest.approximate(Divisions(7), head) == Declined("nearest", reason)


def test_what_one_hole_makes_exactly_is_plain_indexing() -> None:
    assert nearest.exact(Divisions(28), Head()) == Declined("nearest", "Not needed: an exact setting exists.")
