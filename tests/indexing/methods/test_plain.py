"""Plain and angular indexing by hand: which circles serve, in which order, and why none does."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import Dial, Head
from dividing.indexing.methods import plain
from dividing.indexing.setup import NO_ERROR, Declined, Even, Move, Rounded, Setup
from dividing.indexing.work import Angles, Arc, Divisions, Stepped, Work
from tests.indexing.as_told import setups

TABLE = Head(ratio=90, plates=(), dial=Dial(divisions=100))


def a_list(*turns: str) -> Angles:
    return Angles(tuple(Angle(Fraction(each)) for each in turns))


@pytest.mark.parametrize(
    ("work", "head", "moves"),
    [
        # 40/28 = 1 3/7: multiples of 7 are 49 and 21.
        (Divisions(28), Head(), [(1, 21, 49), (1, 9, 21)]),
        # The plate that is mounted comes first, though its circle is the smaller.
        (Divisions(28), Head(mounted_plate=2), [(1, 9, 21), (1, 21, 49)]),
        # 40/6 = 6 2/3 on every multiple of 3.
        (
            Divisions(6),
            Head(plates=((15, 16, 18),)),
            [(6, 12, 18), (6, 10, 15)],
        ),
        # Whole turns are one setting, on the first circle.
        (Divisions(20), Head(), [(2, 0, 20)]),
        (Divisions(1), Head(), [(40, 0, 20)]),
        # 40 x 3/7 = 17 1/7.
        (Divisions(7, every=3), Head(), [(17, 7, 49), (17, 3, 21)]),
        # 15.5/9 = 1 13/18.
        (Arc(parse_angle("15°30'"), 3), Head(), [(1, 13, 18)]),
        # The same circle on two plates is told once, on the one that is mounted.
        (Divisions(28), Head(plates=((21,), (21, 49)), mounted_plate=2), [(1, 21, 49), (1, 9, 21)]),
    ],
)
def test_every_circle_that_serves_best_first(work: Stepped, head: Head, moves: list[tuple[int, int, int]]) -> None:
    told = [
        Setup("plain", Even(work.step), NO_ERROR, Move(*move, head.plate_of[move[-1]]), every=work.every)
        for move in moves
    ]
    assert list(setups(plain.exact(work, head))) == told
    assert list(setups(plain.exact(work, head, 1))) == told[:1]


def test_holes_are_counted_in_whole_numbers() -> None:
    assert str(setups(plain.exact(Divisions(28), Head()))[0].move) == "Move(turns=1, holes=21, circle=49, plate=3)"


def test_a_circle_that_stands_on_the_mounted_plate_is_used_there() -> None:
    (*_, last) = setups(plain.exact(Divisions(28), Head(plates=((21,), (21, 49)), mounted_plate=2)))
    assert last.move == Move(1, 9, 21, 2)


def test_a_list_has_a_move_of_its_own_for_every_position() -> None:
    # 40 x 1/7 = 5 5/7, 40 x 1/3 = 13 1/3: a multiple of 21.
    setup = Setup("plain", Rounded(840), NO_ERROR, Move(None, None, 21, 2))
    assert plain.exact(a_list("0", "1/7", "1/3"), Head()) == (setup,)
    # 40 x 1/8 is a matter of whole turns, and one circle is named; 40 x 1/28 of every multiple of 7.
    whole, (larger, smaller) = plain.exact(a_list("1/8"), Head()), setups(plain.exact(a_list("1/28"), Head()))
    assert whole == (Setup("plain", Rounded(800), NO_ERROR, Move(None, None, 20, 1)),)
    assert (larger.spacing, smaller.spacing) == (Rounded(40 * 49), Rounded(40 * 21))


@pytest.mark.parametrize(
    ("work", "head", "reason"),
    [
        (Divisions(28), TABLE, "This head has no index plates."),
        (
            Arc(parse_angle("0.35 rad"), 2),
            Head(),
            "An angle in radians is no whole number of holes on any circle.",
        ),
        (Divisions(73), Head(), "No circle on these plates is a multiple of 73."),
        (Divisions(102), Head(), "No circle on these plates is a multiple of 51."),
        (a_list("1/77", "1/13"), Head(), "No circle on these plates is a multiple of 1,001."),
        # 40 x 1/40,000,000,000 is 1/1,000,000,000 of a crank turn, the next angle less.
        (a_list("1/40000000000"), Head(), "No circle on these plates is a multiple of 1,000,000,000."),
        (a_list("1/40000000040"), Head(), "No circle on these plates is a multiple of a number so large."),
        (
            a_list("1/999999937", "1/7"),
            Head(),
            "No circle on these plates is a multiple of a number so large.",
        ),
    ],
)
def test_why_it_gives_nothing(work: Work, head: Head, reason: str) -> None:
    assert plain.exact(work, head) == Declined("plain", reason)


def test_it_never_comes_near_since_its_error_would_add_up() -> None:
    reason = "A plain move that is not exact would add its error up from cut to cut."
    assert plain.approximate(Divisions(73), Head()) == Declined("plain", reason)


@pytest.mark.parametrize(
    ("work", "ratio", "holes"),
    [
        (Divisions(28), 40, 7),
        (Divisions(102), 40, 51),
        (Divisions(20), 40, 1),
        (Divisions(9, every=2), 40, 9),
        (Arc(parse_angle("1/6"), 2), 90, 24),  # 1/2160 of a turn, 90 of them a crank turn
        (a_list("1/7", "1/3", "1/2"), 40, 21),
        (a_list("0"), 40, 1),
        # 999,999,937 is a prime of its own: the sum is left as it is once it is above a thousand million.
        (a_list("1/999999937", "1/7"), 40, 6_999_999_559),
        (a_list("1/999999937", "1/7", "1/11"), 40, 6_999_999_559),
        (a_list("1/1000000000", "1/7"), 1, 7_000_000_000),
    ],
)
def test_of_which_number_a_circle_must_be_a_multiple(work: Work, ratio: int, holes: int) -> None:
    assert plain.common_denominator(work, ratio) == holes
