"""Leads too short for the worm: geared to the spindle, indexed by slipping teeth."""

from __future__ import annotations

from fractions import Fraction
from itertools import permutations

import pytest

from dividing.indexing.head import TWELVE_GEARS, Screw
from dividing.parts.short_lead import by_spindle, teeth_per_index

SCREW = Screw(Fraction(5), "mm")


def hung(gears: tuple[int, ...]) -> Fraction:
    """Driven over drivers of (spindle, screw) or (spindle, second stud, first stud, screw)."""
    if len(gears) == 2:
        return Fraction(gears[0], gears[1])
    return Fraction(gears[0] * gears[1], gears[2] * gears[3])


@pytest.mark.parametrize("starts", range(1, 13))
def test_slipped_all_round_the_work_stands_where_it_began(starts: int) -> None:
    slipped = teeth_per_index(72, starts)
    assert slipped is None if 72 % starts else slipped is not None and slipped * starts == 72


@pytest.mark.parametrize("lead", ["1.2", "2.5", "3.7", "5", "9.99"])
@pytest.mark.parametrize("starts", [1, 2, 3, 8])
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
