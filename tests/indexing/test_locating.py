"""Lost count on 28 divisions at 40:1, 1 turn and 21 spaces on 49: the pin comes to 0, 21, 42, 14, 35, 7, 28 and 0."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.head import Dial, Head
from dividing.indexing.locating import Seen, locate
from dividing.indexing.setup import NO_ERROR, Even, Move, Rounded, Setup
from dividing.indexing.work import Divisions
from tests.indexing.refusals import faults_of

WORK = Divisions(28)
SETUP = Setup("plain", Even(Fraction(1, 28)), NO_ERROR, Move(1, 21, 49, 3))


# The cuts stand 360/28 = 12.86 degrees apart. (reading, hole, give) in degrees; (cut, whether the hole agrees).
@pytest.mark.parametrize(
    ("reading", "hole", "give", "found"),
    [
        # Cut 4 stands at 38.57, 1.43 off; its hole is 14.
        (40, 14, 2, [(4, True)]),
        (40, 5, 2, [(4, False)]),
        (45, 14, 2, []),
        # 45 lies midway between 38.57 and 51.43.
        (45, None, 7, [(4, True), (5, True)]),
        # Hole 0 comes at 0, 90, 180 and 270 degrees: 100, 10, 80 and 170 off.
        (100, 0, 180, [(8, True), (15, True), (1, True), (22, True)]),
        (359, 0, 2, [(1, True)]),
        # 27 x 21 = 567 = 11 x 49 + 28, at 347.14.
        (347, 28, 1, [(28, True)]),
    ],
)
def test_the_right_hole_first_then_the_nearest_reading(
    reading: int, hole: int | None, give: int, found: list[tuple[int, bool]]
) -> None:
    seen = Seen(Fraction(reading, 360), hole, Fraction(give, 360))
    assert [(one.row.cut, one.hole_agrees) for one in locate(WORK, Head(), SETUP, seen)] == found


def test_the_scale_is_so_far_off_and_the_next_cut_follows() -> None:
    # 40 - 270/7 = 10/7 degrees.
    (one,) = locate(WORK, Head(), SETUP, Seen(Fraction(40, 360), 14))
    assert one.off == Fraction(10, 7) / 360
    assert one.next is not None
    assert (one.next.cut, one.next.hole) == (5, 35)


def test_after_the_last_cut_comes_no_other() -> None:
    (one,) = locate(WORK, Head(), SETUP, Seen(Fraction(347, 360), 28))
    assert one.next is None


def test_twenty_are_told_at_most() -> None:
    assert len(locate(WORK, Head(), SETUP, Seen(Fraction(0), None, Fraction(1, 2)))) == 20


def test_a_dial_shows_no_hole_to_disagree() -> None:
    table = Head(90, (), direct_circles=(), dial=Dial(divisions=100))
    setup = Setup("dial", Rounded(9000), NO_ERROR, None)
    found = locate(Divisions(7), table, setup, Seen(Fraction(103, 360), 3))
    assert [(one.row.cut, one.hole_agrees) for one in found] == [(3, True)]


def test_a_schedule_too_long_to_search_is_refused() -> None:
    assert faults_of(lambda: locate(Divisions(20_001), Head(), SETUP, Seen(Fraction(0)))) == [
        (("work",), "A schedule of more than 20,000 cuts is too long to search; split the work.")
    ]


@pytest.mark.parametrize("hole", [49, 60])
def test_a_hole_that_the_circle_does_not_have_is_refused(hole: int) -> None:
    assert faults_of(lambda: locate(WORK, Head(), SETUP, Seen(Fraction(0), hole))) == [
        (("seen", "hole"), f"The circle of 49 has no hole {hole}: count from 0, the start hole, to 48.")
    ]
    assert locate(WORK, Head(), SETUP, Seen(Fraction(0), 48))[0].hole_agrees is False


def test_whole_turns_serve_on_a_circle_of_any_size() -> None:
    whole = Setup("plain", Even(Fraction(1, 4)), NO_ERROR, Move(10, 0, 20, 1))
    (one,) = locate(Divisions(4), Head(), whole, Seen(Fraction(1, 4), 30))
    assert (one.row.cut, one.hole_agrees) == (2, False)


def cuts_seen(work: Divisions, seen: Seen) -> list[int]:
    """The cuts that are found with one space a move on a circle of as many holes."""
    setup = Setup("plain", Even(work.step), NO_ERROR, Move(1, 0, 20, 1))
    return [one.row.cut for one in locate(work, Head(), setup, seen)]


def test_a_reading_as_far_off_as_is_given_is_still_near_enough() -> None:
    # The cuts of four divisions stand at 0, 90, 180 and 270 degrees.
    degree = Fraction(1, 360)
    assert cuts_seen(Divisions(4), Seen(92 * degree, None, 2 * degree)) == [2]
    assert cuts_seen(Divisions(4), Seen(88 * degree, None, 2 * degree)) == [2]
    assert cuts_seen(Divisions(4), Seen(92 * degree + Fraction(1, 10**9), None, 2 * degree)) == []
    assert cuts_seen(Divisions(1), Seen(degree, None, 2 * degree)) == [1]


def test_the_last_cut_but_one_still_has_a_next() -> None:
    setup = Setup("plain", Even(Fraction(1, 4)), NO_ERROR, Move(10, 0, 20, 1))
    found = locate(Divisions(4), Head(), setup, Seen(Fraction(1, 2), None, Fraction(1, 4)))
    following = {one.row.cut: one.next.cut if one.next else None for one in found}
    assert following == {2: 3, 3: 4, 4: None}


def test_a_schedule_of_20_000_cuts_is_searched() -> None:
    assert cuts_seen(Divisions(20_000), Seen(Fraction(1, 2), None, Fraction(0))) == [10_001]
