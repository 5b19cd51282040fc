"""Slips with the train, each undone by hand."""

from __future__ import annotations

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import TWELVE_GEARS, Head, Idlers
from dividing.indexing.verifying.case import Case, Undone
from dividing.indexing.verifying.claims import Claim, GearingClaim
from dividing.indexing.verifying.slips_of_gears import (
    drivers_and_driven_swapped,
    gear_used_twice,
    gears_left_off,
    idlers_off_by_one,
)
from dividing.indexing.work import Arc, Divisions

GEARED = Head(change_gears=TWELVE_GEARS)


def row(gearing: GearingClaim | None, holes: int = 12, circle: int = 21) -> Claim:
    return Claim("differential", 0, holes, circle, gearing=gearing)


class TestGearsLeftOff:
    @pytest.mark.parametrize("claim", [Claim("plain", 0, 12, 21), row(None)], ids=["as plain", "as differential"])
    def test_the_train_that_belongs_to_the_move_is_told(self, claim: Claim) -> None:
        # 40 - 73 x 12/21 = -12/7 = -48/28.
        assert list(gears_left_off(Case(Divisions(73), GEARED, claim))) == [
            Undone(
                row(GearingClaim(48, 28, None, 2)),
                "This crank move needs gears to the plate. With the plate at rest it makes 70 divisions; hang 48 on "
                "the spindle, 28 on the worm side and 2 idlers, so that the plate turns against the crank, and it "
                "makes 73 divisions.",
            )
        ]

    def test_a_move_that_makes_no_whole_number_is_told_with_it(self) -> None:
        # 40/(10/19) = 76; on 18 with 11 spaces 65 5/11. 40 - 65 x 11/18 = 5/18: no train of the twelve.
        # 40 - 64 x 11/18 = 8/9 = 64/72.
        (undone,) = gears_left_off(Case(Divisions(64), GEARED, Claim("plain", 0, 11, 18)))
        assert undone.explanation == (
            "This crank move needs gears to the plate. With the plate at rest it makes 65 5/11 divisions; hang 64 "
            "on the spindle, 72 on the worm side and 1 idler, so that the plate turns with the crank, and it makes 64 "
            "divisions."
        )

    def test_two_gears_are_enough_on_a_head_that_takes_no_idler_between_them(self) -> None:
        case = Case(Divisions(73), Head(change_gears=(28, 48), idlers=Idlers(1, 0)), Claim("plain", 0, 12, 21))
        (undone,) = gears_left_off(case)
        assert undone.claim == row(GearingClaim(48, 28, None, 0))
        assert "28 on the worm side and no idler, so that" in undone.explanation

    def test_an_angle_is_told_in_degrees(self) -> None:
        # A seventy-third of a turn asked for as an angle.
        case = Case(Arc(parse_angle("1/73 turn"), 5), GEARED, Claim("plain", 0, 12, 21))
        (undone,) = gears_left_off(case)
        assert undone.explanation == (
            # 360/70 = 5°8'34.29", 360/73 = 4°55'53.42".
            "This crank move needs gears to the plate. With the plate at rest it turns the work through "
            "5°08'34.29\"; hang 48 on the spindle, 28 on the worm side and 2 idlers, so that the plate turns against "
            "the crank, and it turns the work through 4°55'53.42\"."
        )

    def test_with_several_divisions_a_move_likewise(self) -> None:
        # 40 - 73/2 x 8/7 = -12/7: two divisions of 73 are 9°51'46.85", and 8/7 of a turn are 10°17'8.57".
        (undone,) = gears_left_off(Case(Divisions(73, 2), GEARED, Claim("plain", 1, 3, 21)))
        assert undone.explanation == (
            "This crank move needs gears to the plate. With the plate at rest it turns the work through "
            "10°17'08.57\"; hang 48 on the spindle, 28 on the worm side and 2 idlers, so that the plate turns against "
            "the crank, and it turns the work through 9°51'46.85\"."
        )

    @pytest.mark.parametrize(
        ("divisions", "head", "claim"),
        [
            (70, GEARED, Claim("plain", 0, 12, 21)),  # right without gears
            (73, Head(), Claim("plain", 0, 12, 21)),  # no gears to hang
            (73, GEARED, Claim("plain", 0, 0, 21)),  # no move
            (73, Head(ratio=5, change_gears=(24, 120, 30)), Claim("plain", 0, 0, 21)),  # nor with a train of the ratio
            (73, GEARED, row(GearingClaim(48, 28, None, 1))),  # gears are named
            (73, GEARED, Claim("direct", 0, 1, 24)),
            (500, GEARED, Claim("plain", 0, 12, 21)),  # the plate would have to turn far too fast
        ],
    )
    def test_is_not_seen_elsewhere(self, divisions: int, head: Head, claim: Claim) -> None:
        assert list(gears_left_off(Case(Divisions(divisions), head, claim))) == []


class TestDriversAndDriven:
    def test_of_two_gears_change_places(self) -> None:
        case = Case(Divisions(73), GEARED, row(GearingClaim(28, 48, None, 2)))
        assert list(drivers_and_driven_swapped(case)) == [
            Undone(
                row(GearingClaim(48, 28, None, 2)),
                "Drivers and driven are changed about. The spindle drives: 48 on the spindle, 28 on the worm side, a "
                "train of 12/7, not 7/12.",
            )
        ]

    def test_of_four_gears_one_pair_may_have_changed_places(self) -> None:
        # 24 x 24/(28 x 32) = 9/14, 28 x 32/(24 x 24) = 14/9, 24 x 32/(28 x 24) = 8/7, 28 x 24/(24 x 32) = 7/8.
        case = Case(Divisions(73), GEARED, row(GearingClaim(24, 28, (24, 32), 0)))
        assert list(drivers_and_driven_swapped(case)) == [
            Undone(
                row(GearingClaim(28, 24, (32, 24), 0)),
                "Drivers and driven are changed about. The spindle drives: 28 on the spindle, 32 and 24 on the stud, "
                "24 on the worm side, a train of 14/9, not 9/14.",
            ),
            Undone(
                row(GearingClaim(24, 28, (32, 24), 0)),
                "The gears on the stud are changed about. The spindle drives: 24 on the spindle, 32 and 24 on the "
                "stud, 28 on the worm side, a train of 8/7, not 9/14.",
            ),
            Undone(
                row(GearingClaim(28, 24, (24, 32), 0)),
                "The gears on the spindle and on the worm side are changed about. The spindle drives: 28 on the "
                "spindle, 24 and 32 on the stud, 24 on the worm side, a train of 7/8, not 9/14.",
            ),
        ]

    def test_without_gears_there_are_none(self) -> None:
        assert list(drivers_and_driven_swapped(Case(Divisions(73), GEARED, row(None)))) == []


class TestIdlers:
    @pytest.mark.parametrize(
        ("stud", "idlers", "told"),
        [
            # A simple train takes one with the crank and two against it, ...
            (None, 0, [(1, "with")]),
            (None, 1, [(2, "against"), (0, "against")]),
            (None, 2, [(1, "with"), (3, "with")]),
            (None, 3, [(2, "against"), (4, "against")]),
            # ... a train of four none with it and one against it.
            ((64, 24), 0, [(1, "against")]),
            ((64, 24), 1, [(0, "with"), (2, "with")]),
            ((64, 24), 2, [(1, "against"), (3, "against")]),
        ],
    )
    @pytest.mark.parametrize(("spindle", "worm"), [(48, 28), (28, 100)], ids=["faster", "slower"])
    def test_one_more_or_one_fewer_what_the_head_takes_first(
        self, spindle: int, worm: int, stud: tuple[int, int] | None, idlers: int, told: list[tuple[int, str]]
    ) -> None:
        case = Case(Divisions(73), GEARED, row(GearingClaim(spindle, worm, stud, idlers)))
        had = {0: "without an idler", 1: "with 1 idler"}.get(idlers, f"with {idlers} idlers")
        assert list(idlers_off_by_one(case)) == [
            Undone(
                row(GearingClaim(spindle, worm, stud, right)),
                f"The gears are right, but {had} the plate turns the wrong way. It must turn {way} the crank, "
                f"which takes {right or 'none'} here. Turn the crank and watch the plate before you cut.",
            )
            for right, way in told
        ]

    def test_without_gears_there_are_none(self) -> None:
        assert list(idlers_off_by_one(Case(Divisions(73), GEARED, row(None)))) == []


class TestAGearUsedTwice:
    # 48/24 x 48/24 = 72/24 x 64/48 = 4, and 40 - 66 x 12/18 = -4.
    TWICE = row(GearingClaim(48, 24, (48, 24), 1), 12, 18)

    def test_another_train_of_the_same_size_is_told(self) -> None:
        case = Case(Divisions(66), Head(change_gears=(24, 28, 48, 64, 72)), self.TWICE)
        first = next(gear_used_twice(case))
        assert first == Undone(
            row(GearingClaim(64, 48, (72, 24), 1), 12, 18),
            "The train is right in figures, but it uses the gear of 48 teeth more often than you own it. 64 on the "
            "spindle, 72 and 24 on the stud, 48 on the worm side and 1 idler make the same 4.",
        )

    def test_a_simple_train_in_its_place_takes_other_idlers(self) -> None:
        # 48/24 x 24/24 = 2 = 48/24 with one 24 fewer; 40 - 57 x 2/3 = 2, with the crank.
        case = Case(Divisions(57), Head(change_gears=(24, 24, 48, 28)), row(GearingClaim(48, 24, (24, 24), 0), 12, 18))
        first = next(gear_used_twice(case))
        assert first.claim == row(GearingClaim(48, 24, None, 1), 12, 18)
        assert first.explanation.endswith("48 on the spindle, 24 on the worm side and 1 idler make the same 2.")

    def test_where_there_is_none_another_move_is_told(self) -> None:
        # With 24, 48 and 28 alone nothing makes 4; 66 is had by plain indexing on 33.
        case = Case(Divisions(66), Head(change_gears=(24, 28, 48)), self.TWICE)
        undone = list(gear_used_twice(case))
        said = (
            "The train is right in figures, but it uses the gear of 48 teeth more often than you own it. Take another "
            "move and train."
        )
        assert {one.explanation for one in undone} == {said}
        assert Undone(Claim("plain", 0, 20, 33), said) in undone

    @pytest.mark.parametrize(
        ("divisions", "gears", "claim"),
        [
            (66, (24, 24, 48, 48, 28), TWICE),  # each is owned as often as it is used
            (66, (28, 64, 72), TWICE),  # none of them is owned at all
            (67, (24, 28, 48, 64, 72), TWICE),  # the train is not right in figures
            (66, TWELVE_GEARS, row(None)),
        ],
    )
    def test_is_not_seen_elsewhere(self, divisions: int, gears: tuple[int, ...], claim: Claim) -> None:
        assert list(gear_used_twice(Case(Divisions(divisions), Head(change_gears=gears), claim))) == []
