"""Which circle lets every position come nearest its place: by hand, and against trying every hole."""

from __future__ import annotations

from fractions import Fraction
from random import Random

import pytest

from dividing.indexing.angles import Angle
from dividing.indexing.grids import PLACES_TRIED, finest, worst_distance
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


class TestTheWorstDistance:
    @pytest.mark.parametrize(
        ("work", "points", "worst"),
        [
            (Divisions(7), 24, "3/168"),  # 24/7 = 3 3/7: three sevenths of a place of 1/24
            (Divisions(6), 24, "0"),
            (Divisions(2), 3, "1/6"),
            (Divisions(1), 3, "0"),
            (arc("1/7", 2), 24, "3/168"),
            (arc("1/7", 4), 24, "3/168"),  # 3 3/7, 6 6/7, 10 2/7
            (arc("1/8", 3), 24, "0"),
            (a_list("0", "1/48"), 24, "1/48"),
            (a_list("1/3", "9/8"), 24, "0"),
            (a_list("1/5", "1/3"), 24, "1/120"),  # 4 4/5, a fifth of 1/24
        ],
    )
    def test_by_hand(self, work: Work, points: int, worst: str) -> None:
        assert Fraction(*worst_distance(work, points)) == Fraction(worst)

    def test_for_every_number_on_every_grid(self) -> None:
        for count in range(1, 50):
            for points in range(1, 60):
                work = Divisions(count)
                assert Fraction(*worst_distance(work, points)) == tried(work, points)

    def test_for_angles_and_lists(self) -> None:
        chance = Random(51)  # noqa: S311 - the same every time, no secrets
        for _ in range(300):
            parts = chance.randint(2, 400)
            step = Fraction(chance.randint(1, parts), parts)
            points = chance.randint(1, 300)
            works: list[Work] = [
                Arc(Angle(step), chance.randint(2, 20)),
                Angles(tuple(Angle(step * times) for times in range(chance.randint(1, 20)))),
            ]
            for work in works:
                assert Fraction(*worst_distance(work, points)) == tried(work, points)


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
            (Divisions(4), [], None),
            (arc("1/4", 2), [], None),
        ],
    )
    def test_by_hand(self, work: Work, grids: list[int], best: int | None) -> None:
        assert finest(work, grids) == best

    def test_is_the_first_of_the_best_whatever_the_work(self) -> None:
        chance = Random(127)  # noqa: S311 - the same every time, no secrets
        for _ in range(300):
            grids = [chance.randint(2, 200) for _ in range(chance.randint(1, 8))]
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
