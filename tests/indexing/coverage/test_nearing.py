"""Gaps held against a tolerance are what solving makes of them."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.coverage import Way, coverage, nearest
from dividing.indexing.head import Head
from dividing.indexing.setup import Tolerance
from dividing.indexing.solving import solve
from dividing.indexing.work import Divisions
from tests.indexing.coverage.heads import HEADS

SECOND = Fraction(1, 1_296_000)
AT_RIM = Tolerance(at_rim=Fraction(1, 100), diameter=Fraction(300))


@pytest.mark.parametrize("name", HEADS)
@pytest.mark.parametrize("tolerance", [Tolerance(angle=5 * SECOND), Tolerance(angle=60 * SECOND), AT_RIM])
def test_every_way_is_that_of_the_first_setup(name: str, tolerance: Tolerance) -> None:
    head = HEADS[name]
    found = nearest(coverage(50, 74, head), head, tolerance)
    for number in range(50, 75):
        setup, way = solve(Divisions(number), head, limit=1).setups[0], found.ways[number]
        assert (way.method, way.every, way.worst) == (setup.method, setup.every, setup.accuracy.worst)
        assert way.exact == setup.exact


@pytest.mark.parametrize("seconds", [1, 7, 20, 330])
def test_gaps_are_the_numbers_outside_the_tolerance(seconds: int) -> None:
    head = Head(plates=((17, 20), (49,)))
    found = nearest(coverage(2, 200, head), head, Tolerance(angle=seconds * SECOND))
    worst = {number: solve(Divisions(number), head, limit=1).setups[0].accuracy.worst for number in found.numbers}
    assert found.gaps == tuple(number for number in found.numbers if worst[number] > seconds * SECOND)
    assert all(way.within == (number not in found.gaps) for number, way in found.ways.items())


def test_a_tolerance_is_kept_at_its_very_boundary() -> None:
    # The one circle of 49 at 40 to 1 has 1,960 places: 53 divisions come out at worst 26/53 of one.
    head, worst = Head(plates=((49,),)), Fraction(26, 53 * 1_960)
    found = coverage(53, 53, head)
    kept = nearest(found, head, Tolerance(angle=worst))
    assert (kept.ways, kept.gaps) == ({53: Way("nearest", 1, worst, within=True)}, ())
    missed = nearest(found, head, Tolerance(angle=worst - Fraction(1, 10**12)))
    assert (missed.ways, missed.gaps) == ({53: Way("nearest", 1, worst, within=False)}, (53,))


def test_where_everything_is_exact_nothing_is_solved_and_all_is_within() -> None:
    head = Head()
    found = nearest(coverage(2, 50, head), head, Tolerance(angle=SECOND))
    assert (found.gaps, {way.within for way in found.ways.values()}) == ((), {True})
