"""Differential indexing against every train that the gears on the shelf can make, put together one by one."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from functools import cache

import pytest

from dividing.indexing.bounds import EVERY_TRIED
from dividing.indexing.head import Head, Idlers
from dividing.indexing.methods import differential
from dividing.indexing.setup import Declined, Even
from dividing.indexing.work import Divisions
from tests.indexing.as_told import crank, motion, setups
from tests.second.gears import (
    MOST_PLATE_TURNS,
    TWELVE_GEARS,
    USUAL_IDLERS,
    Shelf,
    exact_differentials,
    nearest_differential,
)
from tests.second.holes import SET_I, SET_II, Plates, block_moves
from tests.second.ranges import NUMBERS

THE_OTHER_WAY = {"simple": {"with": 2, "against": 1}, "compound": {"with": 1, "against": 0}}

PLATE_SETS = pytest.mark.parametrize("plates", [SET_I, SET_II], ids=["set I", "set II"])
RATIOS = pytest.mark.parametrize("ratio", [40, 60, 90])
# With few gears it counts whether one is left for an idler: two are no train at all, three only turn
# the plate one way, four have none left for the train of four to turn the other way.
BOXES = pytest.mark.parametrize(
    "gears",
    [TWELVE_GEARS, (24, 28, 32, 40, 48, 100), (24, 24, 44, 72), (32, 56, 86), (24, 48)],
    ids=lambda gears: f"{len(gears)} gears",
)


@cache
def shelf(gears: tuple[int, ...]) -> Shelf:
    return Shelf(gears)


class TestExact:
    @PLATE_SETS
    @RATIOS
    @BOXES
    def test_the_same_numbers_by_the_same_crank_moves(self, plates: Plates, ratio: int, gears: tuple[int, ...]) -> None:
        head = Head(ratio=ratio, plates=plates, change_gears=gears)
        for count in NUMBERS:
            found = [crank(setup) for setup in setups(differential.exact(Divisions(count), head))]
            slow = {
                Fraction(setting.spaces, setting.circle)
                for setting in exact_differentials(ratio, Fraction(1, count), plates, shelf(gears))
            }
            assert set(found) <= slow, count
            assert len(found) == min(len(slow), differential.SETTINGS_MOST), count

    @PLATE_SETS
    @pytest.mark.parametrize("every", [2, 3, 5])
    def test_over_several_spaces_too(self, plates: Plates, every: int) -> None:
        head = Head(plates=plates, change_gears=TWELVE_GEARS)
        for count in range(every + 1, 501):
            if Fraction(every, count).denominator == count:
                found = setups(differential.exact(Divisions(count, every), head))
                slow = exact_differentials(40, Fraction(every, count), plates, shelf(TWELVE_GEARS))
                assert bool(found) == bool(slow), count

    @PLATE_SETS
    def test_on_a_head_that_is_built_the_other_way(self, plates: Plates) -> None:
        for gears in ((24, 24, 44, 72), (32, 56, 86, 100, 40)):
            head = Head(plates=plates, change_gears=gears, idlers=Idlers(2, 1, 1, 0))
            other = Shelf(gears, THE_OTHER_WAY)
            for count in NUMBERS:
                found = setups(differential.exact(Divisions(count), head))
                assert bool(found) == bool(exact_differentials(40, Fraction(1, count), plates, other)), count

    @PLATE_SETS
    @RATIOS
    def test_two_gears_are_named_before_four_wherever_two_will_do(self, plates: Plates, ratio: int) -> None:
        head = Head(ratio=ratio, plates=plates, change_gears=TWELVE_GEARS)
        owned = shelf(TWELVE_GEARS)
        for count in NUMBERS:
            found = setups(differential.exact(Divisions(count), head))
            slow = exact_differentials(ratio, Fraction(1, count), plates, owned)
            if found:
                gearing = found[0].gearing
                assert gearing is not None
                assert (gearing.stud is None) == any(owned.is_simple(one.plate_turns) for one in slow), count


class TestEveryTrainNamed:
    @PLATE_SETS
    @RATIOS
    @BOXES
    def test_can_be_hung_from_the_gears_owned_and_turns_the_plate_just_so(
        self, plates: Plates, ratio: int, gears: tuple[int, ...]
    ) -> None:
        head = Head(ratio=ratio, plates=plates, change_gears=gears)
        owned = Counter(gears)
        for count in NUMBERS[::6]:
            exact = setups(differential.exact(Divisions(count), head))
            near = () if count % 12 else setups(differential.approximate(Divisions(count), head))
            for setup in exact:
                assert motion(setup) == ratio - count * crank(setup), count
            for setup in (*exact, *near):
                gearing = setup.gearing
                assert gearing is not None
                used = Counter((gearing.spindle, gearing.worm, *(gearing.stud or ())))
                assert not used - owned, count
                assert used.total() + gearing.idlers <= len(gears), count
                kind = "compound" if gearing.stud else "simple"
                assert gearing.idlers == USUAL_IDLERS[kind][gearing.plate], count
                assert 0 < abs(motion(setup)) <= MOST_PLATE_TURNS, count


class TestNearest:
    @PLATE_SETS
    @RATIOS
    @BOXES
    def test_no_train_on_any_circle_comes_nearer(self, plates: Plates, ratio: int, gears: tuple[int, ...]) -> None:
        head = Head(ratio=ratio, plates=plates, change_gears=gears)
        for count in NUMBERS[::8]:
            step = Fraction(1, count)
            if exact_differentials(ratio, step, plates, shelf(gears)):
                continue
            slow = nearest_differential(ratio, step, plates, shelf(gears))
            found = setups(differential.approximate(Divisions(count), head))
            if slow is None:
                assert found == (), count
                continue
            off = abs(slow.spindle_move(ratio) - step)
            # Where even the nearest would lose count of the divisions, none need be told.
            assert found or 2 * count**2 * off >= 1, count
            assert all(motion(setup) for setup in found), count
            assert min((setup.accuracy.worst for setup in found), default=Fraction(0)) <= (count - 1) * off, count

    @PLATE_SETS
    @pytest.mark.parametrize("gears", [(24, 24, 44, 72), (32, 56, 86)], ids=["4 gears", "3 gears"])
    def test_nor_over_any_of_the_spaces_tried_unasked(self, plates: Plates, gears: tuple[int, ...]) -> None:
        head = Head(plates=plates, change_gears=gears)
        for count in NUMBERS[100::20]:
            slow = []
            for spaces in block_moves(count, EVERY_TRIED):
                step = Fraction(spaces, count)
                near = nearest_differential(40, step, plates, shelf(gears))
                assert near is not None
                slow.append(abs(near.spindle_move(40) - step))
            found = setups(differential.approximate(Divisions(count), head))
            assert found or 2 * count**2 * min(slow) >= 1, count
            worst = min((setup.accuracy.worst for setup in found), default=Fraction(0))
            assert worst <= (count - 1) * min(slow), count

    @RATIOS
    def test_the_step_stated_is_that_of_the_crank_move_and_the_train(self, ratio: int) -> None:
        head = Head(ratio=ratio, change_gears=(24, 28, 32, 40, 48, 100))
        for count in NUMBERS[::8]:
            for setup in setups(differential.approximate(Divisions(count), head)):
                assert isinstance(setup.spacing, Even)
                assert setup.spacing.step == crank(setup) / (ratio - motion(setup)), count


class TestRefused:
    def test_without_gears_there_is_nothing_to_hang(self) -> None:
        assert differential.exact(Divisions(127), Head()) == Declined(
            "differential", "No change gears are given for this head."
        )
