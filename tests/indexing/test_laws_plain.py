"""Plain indexing finds every setting there is and no other: all of it against every hole tried in turn."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle
from dividing.indexing.head import Head
from dividing.indexing.methods import direct, plain
from dividing.indexing.setup import Setup
from dividing.indexing.work import Arc, Divisions, Work
from tests.indexing.as_told import first_move, setups
from tests.second.holes import SET_I, SET_II, PlainSetting, Plates, direct_settings, plain_settings

PLATE_SETS = pytest.mark.parametrize("plates", [SET_I, SET_II], ids=["set I", "set II"])
RATIOS = pytest.mark.parametrize("ratio", [40, 60, 72, 90])


def as_second_method_says(setup: Setup) -> PlainSetting:
    turns, holes, circle = first_move(setup)
    assert setup.move is not None
    return PlainSetting(turns, holes, *((circle, setup.move.plate) if holes else (None, None)))


def settings(work: Work, head: Head) -> list[PlainSetting]:
    return [as_second_method_says(setup) for setup in setups(plain.exact(work, head))]


class TestEverySettingIsFoundAndNoOther:
    @PLATE_SETS
    @RATIOS
    def test_for_every_number_from_two_to_a_thousand(self, plates: Plates, ratio: int) -> None:
        head = Head(ratio=ratio, plates=plates)
        differing = [
            count
            for count in range(2, 1001)
            if set(settings(Divisions(count), head)) != plain_settings(Fraction(ratio, count), plates)
        ]
        assert differing == []

    @PLATE_SETS
    @RATIOS
    def test_for_every_block_move_of_the_numbers_to_sixty(self, plates: Plates, ratio: int) -> None:
        head = Head(ratio=ratio, plates=plates)
        blocks = [Divisions(count, every=every) for count in range(2, 61) for every in blocks_of(count)]
        differing = [work for work in blocks if set(settings(work, head)) != plain_settings(ratio * work.step, plates)]
        assert differing == []

    @PLATE_SETS
    @RATIOS
    def test_for_every_third_of_a_degree_round_the_circle(self, plates: Plates, ratio: int) -> None:
        head = Head(ratio=ratio, plates=plates)
        angles = [Fraction(thirds, 1080) for thirds in range(1, 1081)]
        differing = [
            str(angle * 360)
            for angle in angles
            if set(settings(Arc(Angle(angle)), head)) != plain_settings(ratio * angle, plates)
        ]
        assert differing == []


class TestNoSettingIsGivenTwice:
    @PLATE_SETS
    def test_not_even_a_move_of_whole_turns_for_which_any_circle_serves(self, plates: Plates) -> None:
        head = Head(plates=plates)
        for count in range(2, 1001):
            found = settings(Divisions(count), head)
            assert len(found) == len(set(found)), count


class TestTheDirectPlate:
    @pytest.mark.parametrize("circles", [(24,), (36,), (14, 20, 24), (24, 30, 36, 60)])
    def test_gives_the_settings_of_every_hole_tried_for_the_numbers_to_a_hundred(
        self, circles: tuple[int, ...]
    ) -> None:
        head = Head(direct_circles=circles)
        for count in range(2, 101):
            found = [first_move(setup)[1:] for setup in setups(direct.exact(Divisions(count), head))]
            assert set(found) == direct_settings(Fraction(1, count), circles), count
            assert len(found) == len(set(found)), count


def blocks_of(count: int) -> list[int]:
    return [every for every in range(2, count) if Fraction(every, count).denominator == count]
