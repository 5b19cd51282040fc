"""Which circle lets every position come nearest its place: by hand, and against trying every hole."""

from __future__ import annotations

from fractions import Fraction
from random import Random

import pytest

from dividing.indexing.angles import Angle
from dividing.indexing.grids import PLACES_TRIED, finest
from dividing.indexing.work import Angles, Arc, Divisions, Work
from tests.second.holes import nearest_holes, worst_of_divisions


def arc(step: str, count: int) -> Arc:
    return Arc(Angle(Fraction(step)), count)


def a_list(*turns: str) -> Angles:
    return Angles(tuple(Angle(Fraction(each)) for each in turns))


def tried(work: Work, points: int) -> Fraction:
    """The worst distance, every position put in its nearest hole."""
    if isinstance(work, Divisions):
        return worst_of_divisions(work.count, points)
    places = [angle.turns for angle in work.angles] if isinstance(work, Angles) else [
        cut * work.angle.turns for cut in range(work.count)
    ]  # fmt: skip
    return max(abs(hole - place) for hole, place in zip(nearest_holes(places, points), places, strict=True))


class TestTheFinest:
    @pytest.mark.parametrize(
        ("work", "grids", "best"),
        [
            (Divisions(127), [800, 1960], 1960),
            # 51 = 3 x 17: a third of 1/680 is more than 25/51 of 1/1960.
            (Divisions(51), [680, 1960], 1960),
            # Exact on the coarser one.
            (Divisions(17), [1960, 680], 680),
            # Both exact: the first.
            (Divisions(4), [24, 8], 24),
            (Divisions(4), [8, 24], 8),
            (arc("1/17", 3), [1960, 680], 680),
            (a_list("0", "1/17"), [1960, 680], 680),
            (a_list("0", "1/8"), [24, 8], 24),
            # Halves and one place: the first of the two is half a turn off, and still the best.
            (Divisions(2), [1], 1),
            (arc("1/2", 2), [1], 1),
            # 24/7 = 3 3/7 and 6 6/7 of 1/24, 3/168 at worst; 25/7 = 3 4/7 and 7 1/7 of 1/25, 3/175.
            (arc("1/7", 3), [24, 25], 25),
            (a_list("1/7", "2/7"), [25, 24], 25),
            # A list of one is half a place of 1/24 off; on 25 it is 1/48 x 25 = 25/48, so 23/48 of 1/25.
            (a_list("1/48"), [24, 25], 25),
            # 10^20 = 2 and 10^20 + 1 = 3 to the modulus 7: three sevenths of a place either way.
            (Divisions(7), [10**20, 10**20 + 1], 10**20 + 1),
            (Divisions(4), [], None),
            (arc("1/4", 2), [], None),
        ],
    )
    def test_by_hand(self, work: Work, grids: list[int], best: int | None) -> None:
        assert finest(work, grids) == best

    def test_is_the_first_of_the_best_whatever_the_work(self) -> None:
        chance = Random(127)  # noqa: S311 - the same every time, no secrets
        for _ in range(300):
            grids = [chance.randint(1, 200) for _ in range(chance.randint(1, 8))]
            step = Fraction(chance.randint(1, 90), 90)
            works: list[Work] = [
                Divisions(chance.randint(1, 300)),
                Arc(Angle(step), chance.randint(2, 12)),
                Angles(tuple(Angle(step * times) for times in range(chance.randint(1, 12)))),
            ]
            for work in works:
                distances = [tried(work, points) for points in grids]
                assert finest(work, grids) == grids[distances.index(min(distances))], (work, grids)

    def test_for_very_many_positions_only_the_finest_grids_are_tried(self) -> None:
        # 20,000 positions on the plates of 11 circles are more than are worked through: ten grids are.
        assert PLACES_TRIED == 200_000
        work = arc("1/40000", 20_000)
        finer = [40_001 + place for place in range(10)]
        assert finest(work, [40_000, *finer[:9]]) == 40_000
        # With ten finer ones beside it the grid that is exact is not looked at.
        assert finest(work, [40_000, *finer]) in finer
        # A grid is told by its number of places: the same number twice is one grid.
        assert finest(work, [40_000, *finer[:9], *finer[:9]]) == 40_000
