"""Trains out of a box of gears: each gear once, idlers out of the same box, shafts cleared where they can be."""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from fractions import Fraction
from itertools import permutations

import pytest

from dividing.indexing.gear_pairs import clears
from dividing.indexing.head import TWELVE_GEARS, Idlers
from dividing.indexing.setup import Gearing
from dividing.indexing.trains import MOTIONS_KEPT, Rising, train_table

BOXES = [
    TWELVE_GEARS,
    (24, 24, 24, 48),
    (20, 30, 40, 50, 60, 90),
    (17, 23, 29, 31, 37),
    (24, 100),
    (10, 10, 200, 200),
    (10, 11, 60, 67),  # 60 over 10 is the most that a plate may turn, 67 over 11 is more
]


def two(gears: tuple[int, ...]) -> set[Fraction]:
    return {Fraction(one, other) for one, other in permutations(gears, 2) if one <= 6 * other}


def four(gears: tuple[int, ...]) -> dict[Fraction, bool]:
    """Every train of four, and whether some order of it clears."""
    found: dict[Fraction, bool] = {}
    for a, b, c, d in permutations(gears, 4):
        # a drives b, c drives d.
        if a * c <= 6 * b * d:
            fits = a + b > c + 15 and c + d > b + 15
            ratio = Fraction(a * c, b * d)
            found[ratio] = found.get(ratio, False) or fits
    return found


@pytest.mark.parametrize("gears", BOXES, ids=str)
class TestAgainstEveryOrderOfTheGears:
    def test_the_same_simple_trains(self, gears: tuple[int, ...]) -> None:
        table = train_table(tuple(sorted(gears)), Idlers())
        assert {Fraction(*ratio) for ratio in table.simple} == two(gears)

    def test_the_same_trains_of_four(self, gears: tuple[int, ...]) -> None:
        table = train_table(tuple(sorted(gears)), Idlers())
        assert {Fraction(*ratio) for ratio in table.compound} == set(four(gears))

    def test_one_that_clears_is_taken_wherever_there_is_one(self, gears: tuple[int, ...]) -> None:
        table = train_table(tuple(sorted(gears)), Idlers())
        fits = four(gears)
        for ratio in table.compound:
            train = table.box.train(ratio)
            assert clears(train) == fits[Fraction(*ratio)], (ratio, train)

    def test_each_train_makes_its_ratio_with_gears_that_are_owned(self, gears: tuple[int, ...]) -> None:
        table = train_table(tuple(sorted(gears)), Idlers())
        trains = [*table.simple.items(), *((ratio, table.box.train(ratio)) for ratio in table.compound)]
        for ratio, (spindle, worm, first, second) in trains:
            assert Fraction(*ratio) == Fraction(spindle * (first or 1), worm * (second or 1))
            used = Counter(teeth for teeth in (spindle, worm, first, second) if teeth)
            assert not used - Counter(gears)

    def test_motions_over_a_denominator_are_those_that_come_out_whole(self, gears: tuple[int, ...]) -> None:
        table = train_table(tuple(sorted(gears)), Idlers())
        every = two(gears) | set(four(gears))
        # 3^40 is more than a float tells to the last figure.
        for under in (1, 18, 49, 86, 360, 3**40):
            wanted = {int(ratio * under) for ratio in every if (ratio * under).denominator == 1}
            assert set(table.motions_over(under)) == wanted


class TestWhatIsHung:
    @pytest.mark.parametrize(
        ("gears", "idlers", "motion", "hung"),
        [
            ((24, 28, 32, 40, 48), Idlers(), (12, 7), Gearing(48, 28, None, 1, "with")),
            ((24, 28, 32, 40, 48), Idlers(), (-12, 7), Gearing(48, 28, None, 2, "against")),
            # 24/48, 28/56 and 32/64 are alike; the smallest gears want the least room.
            (TWELVE_GEARS, Idlers(), (1, 2), Gearing(24, 48, None, 1, "with")),
            (TWELVE_GEARS, Idlers(), (-1, 1), Gearing(24, 24, None, 2, "against")),
            # 30 x 50 over 20 x 70 clears in one order, 50 driving 20 and 30 driving 70.
            ((20, 30, 50, 70), Idlers(), (15, 14), Gearing(50, 70, (30, 20), 0, "with")),
            ((20, 24, 30, 50, 70), Idlers(), (-15, 14), Gearing(50, 70, (30, 20), 1, "against")),
            ((20, 24, 30, 50, 70), Idlers(1, 2, 1, 0), (15, 14), Gearing(50, 70, (30, 20), 1, "with")),
            # 20 over 40 would want three idlers, and four gears leave two: 20 x 30 over 30 x 40 wants none.
            ((20, 30, 30, 40), Idlers(3, 2, 0, 1), (1, 2), Gearing(20, 40, (30, 30), 0, "with")),
            ((20, 30, 30, 40), Idlers(3, 2, 0, 1), (-1, 2), Gearing(20, 40, None, 2, "against")),
            # 17 comes into no train of these.
            ((20, 30, 50, 70), Idlers(), (17, 14), None),
        ],
    )
    def test_each_gear_has_its_place(
        self, gears: tuple[int, ...], idlers: Idlers, motion: tuple[int, int], hung: Gearing | None
    ) -> None:
        table = train_table(gears, idlers)
        assert table.gearing(*motion) == hung
        assert table.gearing(*motion) == hung, "asked for again"

    @pytest.mark.parametrize("gears", BOXES, ids=str)
    def test_what_is_hung_turns_the_plate_as_it_was_asked_to(self, gears: tuple[int, ...]) -> None:
        table = train_table(gears, Idlers())
        for drivers, driven in {*table.simple, *table.compound}:
            for signed in (drivers, -drivers):
                hung = table.gearing(signed, driven)
                assert hung is None or hung.motion == Fraction(signed, driven)


class TestIdlersComeOutOfTheSameBox:
    # A simple train takes 1 idler with the crank and 2 against it, a train of four none and 1.
    @pytest.mark.parametrize(
        ("gears", "drivers", "reached"),
        [
            ((24, 48), 2, False),
            ((24, 28, 48), 2, True),
            ((24, 28, 48), -2, False),
            ((24, 28, 32, 48), -2, True),
        ],
    )
    def test_a_train_needs_its_idlers_too(self, gears: tuple[int, ...], drivers: int, *, reached: bool) -> None:
        assert (train_table(gears, Idlers()).gearing(drivers, 1) is not None) == reached

    def test_four_gears_turn_the_plate_one_way_only(self) -> None:
        table = train_table((20, 30, 50, 70), Idlers())
        # (30 x 50)/(20 x 70) = 15/14
        assert table.gearing(15, 14) is not None
        assert table.gearing(-15, 14) is None

    def test_a_head_built_the_other_way_takes_other_idlers(self) -> None:
        table = train_table((24, 28, 32, 48), Idlers(simple_with=2, simple_against=1))
        with_crank, against = table.gearing(2, 1), table.gearing(-2, 1)
        assert with_crank is not None
        assert against is not None
        assert (with_crank.idlers, against.idlers) == (2, 1)


def in_order(rising: Rising) -> list[Fraction]:
    return [Fraction(*rising.exact(place)) for place in range(len(rising.decimals))]


class TestNearest:
    @pytest.mark.parametrize("wanted", [(1, 3), (-7, 5), (355, 113), (59, 10)])
    @pytest.mark.parametrize("kind", [2, 4])
    def test_the_neighbours_hold_the_nearest_of_all(self, kind: int, wanted: tuple[int, int]) -> None:
        table = train_table(TWELVE_GEARS, Idlers())
        ratios = two(TWELVE_GEARS) if kind == 2 else set(four(TWELVE_GEARS))
        every = ratios | {-ratio for ratio in ratios}
        nearest = min(abs(ratio - Fraction(*wanted)) for ratio in every)
        rising = table.rising(kind)
        place = bisect_left(rising.decimals, wanted[0] / wanted[1])
        beside = [rising.exact(near) for near in (place - 1, place) if 0 <= near < len(rising.decimals)]
        assert min(abs(Fraction(*near) - Fraction(*wanted)) for near in beside) == nearest

    @pytest.mark.parametrize("kind", [2, 4])
    @pytest.mark.parametrize("gears", BOXES, ids=str)
    def test_they_stand_in_their_true_order(self, kind: int, gears: tuple[int, ...]) -> None:
        rising = train_table(gears, Idlers()).rising(kind)
        motions = in_order(rising)
        assert motions == sorted(motions)
        assert rising.decimals == [float(motion) for motion in motions]

    @pytest.mark.parametrize(
        ("gears", "kind", "motions"),
        [
            # Two gears and one idler for the plate to turn with the crank; none is left to turn it back.
            ((24, 32, 48), 2, ["1/2", "2/3", "3/4", "4/3", "3/2", "2"]),
            # Four gears want no idler to turn it with the crank, and one more to turn it back.
            ((20, 30, 50, 70), 4, ["6/35", "10/21", "14/15", "15/14", "21/10", "35/6"]),
            # Two alone drive nothing.
            ((24, 48), 2, []),
            ((24, 48), 4, []),
        ],
    )
    def test_only_motions_whose_idlers_are_owned_stand_in_the_list(
        self, gears: tuple[int, ...], kind: int, motions: list[str]
    ) -> None:
        assert in_order(train_table(gears, Idlers()).rising(kind)) == [Fraction(motion) for motion in motions]

    def test_with_the_idlers_the_other_way_round_the_plate_turns_back_only(self) -> None:
        rising = train_table((24, 32, 48), Idlers(simple_with=2, simple_against=1)).rising(2)
        assert in_order(rising) == sorted(-ratio for ratio in two((24, 32, 48)))


def test_more_denominators_than_are_remembered_are_answered_the_same() -> None:
    table = train_table((24, 32, 48), Idlers())
    first = dict(table.motions_over(18))
    for under in range(1, MOTIONS_KEPT + 10):
        table.motions_over(under)
        assert len(table.reached) <= MOTIONS_KEPT
    # 3/2, 4/3, 2/3, 1/2 and 2 of 18 parts.
    assert table.motions_over(18) == first
    assert sorted(first) == [9, 12, 24, 27, 36]
