"""Leads too short for the worm: geared to the spindle, indexed by slipping teeth."""

from __future__ import annotations

from fractions import Fraction
from itertools import permutations, product

import pytest

from dividing.indexing.head import TWELVE_GEARS, Screw
from dividing.parts.short_lead import by_spindle, teeth_per_index

SCREW = Screw(Fraction(5), "mm")


def hung(gears: tuple[int, ...]) -> Fraction:
    """Driven over drivers of (spindle, screw) or (spindle, second stud, first stud, screw)."""
    if len(gears) == 2:
        return Fraction(gears[0], gears[1])
    return Fraction(gears[0] * gears[1], gears[2] * gears[3])


@pytest.mark.parametrize(
    ("unit", "lead"), [("mm", Fraction("1.8")), ("in", Fraction("1.8") / Fraction("25.4"))], ids=["mm", "in"]
)
@pytest.mark.parametrize(("starts", "slipped"), [(1, 48), (3, 16), (48, 1)])
def test_it_is_told_whole(unit: str, lead: Fraction, starts: int, slipped: int) -> None:
    # 1.8 of 5 mm is 9/25: 48 x 24 over 32 x 100.
    assert by_spindle(lead, starts, SCREW, unit, (24, 32, 48, 100)) == {
        "spindle": 48,
        "first_stud": 32,
        "second_stud": 24,
        "screw": 100,
        "teeth_per_index": slipped,
        "achieved": float(lead),
        "error": 0,
    }


def test_two_gears_have_no_stud_and_the_error_is_what_comes_less_what_is_wanted() -> None:
    # 24 over 48 of 5 mm is 2.5.
    assert by_spindle(Fraction("2.4"), 4, SCREW, "mm", (24, 48, 72)) == {
        "spindle": 24,
        "first_stud": None,
        "second_stud": None,
        "screw": 48,
        "teeth_per_index": 6,
        "achieved": 2.5,
        "error": pytest.approx(0.1),
    }


@pytest.mark.parametrize("starts", range(1, 13))
def test_slipped_all_round_the_work_stands_where_it_began(starts: int) -> None:
    slipped = teeth_per_index(72, starts)
    assert slipped is None if 72 % starts else slipped is not None and slipped * starts == 72
    assert slipped is None or isinstance(slipped, int)


# Of the twelve gears 25 starts can be slipped on the 100 alone: at a lead of 11 six others come nearer.
@pytest.mark.parametrize(("lead", "starts"), [*product(["1.2", "2.5", "3.7", "5", "9.99"], [1, 2, 3, 8]), ("11", 25)])
def test_no_other_order_with_such_a_gear_on_the_spindle_comes_nearer(lead: str, starts: int) -> None:
    found = by_spindle(Fraction(lead), starts, SCREW, "mm", TWELVE_GEARS)
    assert found is not None
    every = [
        abs(hung(gears) * 5 - Fraction(lead))
        for size in (2, 4)
        for gears in permutations(TWELVE_GEARS, size)
        if gears[0] % starts == 0
    ]
    assert abs(float(str(found["error"]))) == pytest.approx(float(min(every)), abs=1e-12)
    assert found["achieved"] == pytest.approx(float(lead) + float(str(found["error"])))


def test_without_a_gear_that_can_be_slipped_there_is_none() -> None:
    assert by_spindle(Fraction(3), 17, SCREW, "mm", TWELVE_GEARS) is None


def test_where_the_one_gear_that_can_be_slipped_is_far_from_the_lead_there_is_none() -> None:
    # Only 100 is a multiple of 25, and as the driven gear it makes a lead far longer than 0.4.
    assert by_spindle(Fraction("0.4"), 25, SCREW, "mm", TWELVE_GEARS) is None
