"""Differential indexing by hand: the moves tried, the trains hung, and why none serves."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from math import ceil, floor, gcd

import pytest

from dividing.indexing.accuracy import accuracy
from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import TWELVE_GEARS, Head, Idlers
from dividing.indexing.methods import differential
from dividing.indexing.setup import NO_ERROR, Declined, Even, Gearing, Move, Setup
from dividing.indexing.work import Angles, Arc, Divisions, Stepped, Work
from tests.indexing.as_told import crank, first_move, motion, setups
from tests.indexing.coverage.second_way import shelf_of

GEARED = Head(change_gears=TWELVE_GEARS)
RADIANS = parse_angle("0.35 rad")


class TestExact:
    @pytest.mark.parametrize("divisions", [51, 53, 73, 96, 127, 271, 382])
    def test_the_plate_turns_by_what_the_crank_leaves(self, divisions: int) -> None:
        for setup in setups(differential.exact(Divisions(divisions), GEARED)):
            # A division is f/(R - s) of a turn.
            assert crank(setup) / (40 - motion(setup)) == Fraction(1, divisions)

    def test_the_mounted_plate_and_two_gears_come_before_others(self) -> None:
        for mounted in (1, 2, 3):
            head = Head(change_gears=TWELVE_GEARS, mounted_plate=mounted)
            found = setups(differential.exact(Divisions(73), head))
            assert found[0].move is not None
            assert found[0].gearing is not None
            assert (found[0].move.plate, found[0].gearing.stud) == (mounted, None)

    def test_no_more_are_told_than_are_wanted_and_each_move_once(self) -> None:
        counts = set()
        for divisions in range(51, 75):
            found = setups(differential.exact(Divisions(divisions), GEARED))
            assert len(found) == len({crank(setup) for setup in found})
            assert setups(differential.exact(Divisions(divisions), GEARED, 1)) == found[:1]
            counts.add(len(found))
        assert max(counts) == differential.SETTINGS_MOST

    def test_two_gears_without_a_third_for_the_idler_hang_nothing(self) -> None:
        # A simple train wants an idler to turn the plate with the crank, and two to turn it against.
        bare = Head(change_gears=(24, 48))
        assert differential.exact(Divisions(51), bare) == differential.NO_TRAIN


class TestWholeSetupsByHand:
    # 10 to 1 with a circle of 4 on the mounted plate and one of 6; of 20, 30 and 40 teeth one is always the idler, so
    # the plate turns with the crank only, by 1/2, 2/3, 3/4, 4/3, 3/2 or 2: 10 - N h/c is one of these.
    SMALL = Head(ratio=10, plates=((4,), (6,)), direct_circles=(), change_gears=(40, 20, 30))
    MORE = Head(ratio=10, plates=((4,),), direct_circles=(), change_gears=(17, 20, 30, 40))
    HALF, TWO, TWO_THIRDS = (Gearing(*pair, None, 1, "with") for pair in ((20, 40), (40, 20), (20, 30)))
    SIX_TURNS, SIX_BACK = replace(MORE, change_gears=(10, 60, 199, 199)), Gearing(60, 10, None, 2, "against")
    THREE_QUARTERS, TWO_BACK = Gearing(30, 40, None, 1, "with"), Gearing(40, 20, None, 2, "against")

    @pytest.mark.parametrize(
        ("work", "head", "told"),
        [
            # 38 of 4 and 57 of 6 are both half a turn: told once, on the mounted plate.
            (Divisions(19), SMALL, [(Move(0, 2, 4, 1), HALF)]),
            (Divisions(19), replace(SMALL, mounted_plate=2), [(Move(0, 3, 6, 2), HALF)]),
            (Divisions(38), SMALL, [(Move(0, 1, 4, 1), HALF)]),
            # 8 x 7/6 = 56/6; 56 of 6 is on the other plate only.
            (Divisions(7), SMALL, [(Move(1, 2, 6, 2), TWO_THIRDS)]),
            # 32 of 4 and 48 of 6 are a whole turn: told once, on the first circle. 56 of 6 has the slower plate.
            (Divisions(8), SMALL, [(Move(1, 0, 4, 1), TWO), (Move(1, 1, 6, 2), TWO_THIRDS)]),
            # Turned back: 10 + 2 = 12 x 1.
            (Divisions(12), MORE, [(Move(1, 0, 4, 1), TWO_BACK)]),
            # Over two spaces: 10 - 19/2 x 4/4 = 1/2 and 10 - 111/2 x 1/6 = 3/4.
            (Divisions(19, every=2), SMALL, [(Move(1, 0, 4, 1), HALF)]),
            (Divisions(111, every=2), SMALL, [(Move(0, 1, 6, 2), THREE_QUARTERS)]),
            # 2 holes are too few for 111: 16 turns of the crank, 32 spaces of them, would do 32 x 2 of 111.
            (Divisions(111, every=2), replace(SMALL, plates=((2,), (6,))), [(Move(0, 1, 6, 2), THREE_QUARTERS)]),
            # 10 - 39/2 x 1/2 = 1/4.
            (
                Divisions(39, every=2),
                Head(ratio=10, plates=((2,),), change_gears=(20, 60, 80)),
                [(Move(0, 1, 2, 1), Gearing(20, 80, None, 1, "with"))],
            ),
            # Six turns back are the most: 64 x 1/4 = 10 + 6.
            (Divisions(64), SIX_TURNS, [(Move(0, 1, 4, 1), SIX_BACK)]),
            (Divisions(64), replace(SIX_TURNS, change_gears=(10, 60, *[199] * 15)), [(Move(0, 1, 4, 1), SIX_BACK)]),
            # An angle of 2/19 of a turn is the same move, one of 1/19 half of it.
            (Arc(Angle(Fraction(2, 19)), 3), SMALL, [(Move(1, 0, 4, 1), HALF)]),
            (Arc(Angle(Fraction(1, 19)), 3), SMALL, [(Move(0, 2, 4, 1), HALF)]),
        ],
    )
    def test_exactly(self, work: Stepped, head: Head, told: list[tuple[Move, Gearing]]) -> None:
        spacing = Even(work.step)
        found = [Setup("differential", spacing, NO_ERROR, move, None, train, work.every) for move, train in told]
        assert list(setups(differential.exact(work, head))) == found
        assert list(setups(differential.exact(work, head, 1))) == found[:1]

    @pytest.mark.parametrize("mounted", [1, 2])
    def test_a_head_without_a_table_is_gone_through_circle_by_circle(self, mounted: int) -> None:
        # 17 gears are too many for a table; the added ones, all alike, only come after the others.
        usual = replace(self.SMALL, mounted_plate=mounted)
        many = replace(usual, change_gears=(20, 30, 40, *[199] * 14))
        for divisions in (7, 8, 19, 38):
            few, found = (differential.exact(Divisions(divisions), head) for head in (usual, many))
            assert [setup for setup in setups(found) if setup in setups(few)] == list(setups(few)) != []


class TestAgainstEveryTrainOnEveryHole:
    """Few gears and small circles, so that all can be tried in fractions."""

    HEADS: Mapping[str, Head] = {
        "two gears": Head(ratio=10, plates=((4,), (6,)), change_gears=(20, 40), idlers=Idlers(0, 1, 0, 1)),
        "three": Head(ratio=10, plates=((4, 6),), change_gears=(40, 20, 30)),
        "four": Head(ratio=40, plates=((5, 6), (7,)), change_gears=(24, 28, 44, 100)),
        "five": Head(ratio=9, plates=((5,), (4,)), change_gears=(20, 24, 30, 44, 70)),
        "the plate ahead of the crank": Head(ratio=3, plates=((4, 5),), change_gears=(20, 24, 30, 44, 110)),
        "ratio 1": Head(ratio=1, plates=((6, 10),), change_gears=(24, 28, 48, 48)),
    }

    @pytest.mark.parametrize("name", HEADS)
    @pytest.mark.parametrize("every", [1, 2])
    def test_each_number_exact_or_near(self, name: str, every: int) -> None:
        head = self.HEADS[name]
        shelf = shelf_of(head, head.change_gears)
        for count in range(every + 1, 50, 2 * every):
            work = Divisions(count, every, fixed=True)
            two, four = (every_setting(head, work, motions) for motions in (shelf.simple, shelf.compound))
            exact = {(move, turns) for move, turns, off in (*two, *four) if off == 0}
            told = [(crank(setup), motion(setup)) for setup in setups(differential.exact(work, head))]
            assert set(told) == exact if len(exact) < 12 else set(told) < exact, count
            nearest = [least(four), least(two)] if least(four) < least(two) else [least(two)]
            near = setups(differential.approximate(work, head))
            assert [setup.accuracy.worst for setup in near] == [
                (count - 1) * off for off in nearest if 2 * count**2 * off < 1
            ], count
            for setup in near:
                spacing = Even(crank(setup) / (head.ratio - motion(setup)))
                move = Move(*first_move(setup), head.plate_of[first_move(setup)[-1]])
                told_as = Setup("differential", spacing, accuracy(work, spacing), move, None, setup.gearing, every)
                assert setup == told_as, count

    @pytest.mark.parametrize("name", ["two gears", "three", "ratio 1"])
    def test_several_spaces_a_move_are_told_where_they_come_nearer(self, name: str) -> None:
        head = self.HEADS[name]
        shelf = shelf_of(head, head.change_gears)
        for count in (7, 13, 23, 29, 41, 59):
            worst: list[Fraction] = []
            for every in (k for k in range(1, min(12, count - 1) + 1) if gcd(k, count) == 1):
                for motions in (shelf.simple, shelf.compound):
                    off = least(every_setting(head, Divisions(count, every), motions))
                    if 2 * count**2 * off < 1 and (count - 1) * off < min(worst, default=Fraction(1)):
                        worst.append((count - 1) * off)
            near = setups(differential.approximate(Divisions(count), head))
            assert [setup.accuracy.worst for setup in near] == worst[::-1], count


Setting = tuple[Fraction, Fraction, Fraction]
"""(crank turns, turns of the plate, how far off the spindle then is)"""


def every_setting(head: Head, work: Divisions, motions: set[Fraction]) -> list[Setting]:
    """Every hole at which the plate would turn six times at most, with every motion that the trains give it."""
    return [
        (Fraction(holes, circle), motion, abs(Fraction(holes, circle) / (head.ratio - motion) - work.step))
        for circle, _ in head.circles
        for holes in range(
            max(1, ceil((head.ratio - 6) * circle * work.step)), floor((head.ratio + 6) * circle * work.step) + 1
        )
        for motion in motions
        if abs(motion) <= 6 and motion < head.ratio
    ]


def least(settings: list[Setting]) -> Fraction:
    """How far off the nearest of them is; a whole turn where there is none."""
    return min((off for *_, off in settings), default=Fraction(1))


class TestWhyItGivesNothing:
    @pytest.mark.parametrize(
        ("work", "head", "exact", "near"),
        [
            (
                Angles((Angle(Fraction(1, 73)),)),
                GEARED,
                "Unequal angles have no constant move to gear the plate for.",
                "Unequal angles have no constant move to gear the plate for.",
            ),
            (
                Divisions(73),
                Head(plates=(), change_gears=TWELVE_GEARS),
                "This head has no index plates to gear.",
                "This head has no index plates to gear.",
            ),
            (
                Divisions(73),
                Head(change_gears=(24,)),
                "No change gears are given for this head.",
                "No change gears are given for this head.",
            ),
            (
                Arc(RADIANS, 2),
                Head(),
                "No change gears are given for this head.",
                "No change gears are given for this head.",
            ),
            (
                Divisions(383),
                GEARED,
                "No train of the gears you own moves the plate just right for any circle.",
                None,
            ),
            (Arc(RADIANS, 2), GEARED, "An angle in radians comes out exactly with no train.", None),
            # A crank that goes less than one space of the largest circle: 46 x 49 is less than 2,255.
            (
                Divisions(2_255, fixed=True),
                GEARED,
                "No train of the gears you own moves the plate just right for any circle.",
                "No train of the gears you own comes near enough to keep the count of divisions.",
            ),
        ],
    )
    def test_in_one_sentence(self, work: Work, head: Head, exact: str, near: str | None) -> None:
        assert differential.exact(work, head) == Declined("differential", exact)
        if near is None:
            assert setups(differential.approximate(work, head))
        else:
            assert differential.approximate(work, head) == Declined("differential", near)


class TestTries:
    def test_every_space_that_keeps_the_plate_within_six_turns(self) -> None:
        head = Head(ratio=10, plates=((4,), (3, 4)))
        # f from (10 - 6)/5 to (10 + 6)/5 crank turns: 4 to 12 quarters (whole turns among them), thirds without them.
        told = [(circle, spaces) for circle, _, spaces, _ in differential.tries(Divisions(5), head)]
        assert told == [(4, spaces) for spaces in range(4, 13)] + [(3, spaces) for spaces in (4, 5, 7, 8)]

    def test_the_motion_wanted_is_what_the_crank_leaves(self) -> None:
        for divisions in (7, 73, 127):
            for circle, _, spaces, (over, under) in differential.tries(Divisions(divisions), Head()):
                assert Fraction(over, under) == 40 - divisions * Fraction(spaces, circle)
                assert abs(Fraction(over, under)) <= 6

    def test_a_head_too_coarse_has_none(self) -> None:
        # 46 spindle turns' worth of 49 holes are 2,254 spaces.
        assert list(differential.tries(Divisions(2_255), Head())) == []
        assert list(differential.tries(Divisions(2_254), Head())) != []

    @pytest.mark.parametrize(
        ("plates", "tried"),
        [
            # Nearly a whole turn: 12 plate turns of 835 holes are the 10,000 tries that are made.
            (((400, 300), (200, 100)), {400, 300}),
            (((400, 300), (100, 35)), {400, 300, 100, 35}),
            # 400, 300 and 135 are 835 by themselves.
            (((400, 300), (135, 20)), {400, 300, 135}),
            # The same circles on a second plate are the same tries.
            (((400, 399), (400, 399)), {400, 399}),
        ],
    )
    def test_a_wide_step_is_looked_for_on_the_largest_circles(
        self, plates: tuple[tuple[int, ...], ...], tried: set[int]
    ) -> None:
        wide = Arc(parse_angle("359"), 2)
        assert {circle for circle, *_ in differential.tries(wide, Head(plates=plates))} == tried

    def test_blocks_begin_where_the_crank_moves_a_space(self) -> None:
        # 46 x 49 = 2,254: nine times that is 20,286, eight times 18,032.
        assert [blocks.every for blocks in differential.in_blocks(Divisions(20_000), Head())] == [9, 11]
        assert list(differential.in_blocks(Angles((Angle(Fraction(1, 3)),)), Head())) == []


class TestNear:
    @pytest.mark.parametrize(
        ("work", "head", "step", "move", "gearing"),
        [
            # With the crank's whole turn the plate should make 40 - 37 = 3 turns; 34 over 10 makes 3 2/5.
            (
                Divisions(37, fixed=True),
                Head(plates=((4,),), change_gears=(10, 34), idlers=Idlers(0, 1, 0, 1)),
                Fraction(5, 183),
                Move(1, 0, 4, 1),
                Gearing(34, 10, None, 0, "with"),
            ),
            # At 1 to 1 a plate of 19 over 20 leaves a twentieth of 1/61: twenty times as much of a turn.
            (
                Divisions(3, fixed=True),
                Head(ratio=1, plates=((61,),), change_gears=(19, 20), idlers=Idlers(0, 1, 0, 1)),
                Fraction(20, 61),
                Move(0, 1, 61, 1),
                Gearing(19, 20, None, 0, "with"),
            ),
        ],
    )
    def test_by_hand(self, work: Divisions, head: Head, step: Fraction, move: Move, gearing: Gearing) -> None:
        setup = Setup("differential", Even(step), accuracy(work, Even(step)), move, None, gearing)
        assert differential.approximate(work, head) == (setup,)

    def test_a_plate_that_turns_as_the_crank_does_divides_nothing(self) -> None:
        head = Head(ratio=1, plates=((20,),), change_gears=(20, 20), idlers=Idlers(0, 1, 0, 1))
        assert differential.approximate(Divisions(7, fixed=True), head) == differential.NO_NEAR_TRAIN

    def test_the_nearest_is_told_first_and_each_beats_the_next(self) -> None:
        for divisions in (383, 401, 787):
            found = setups(differential.approximate(Divisions(divisions, fixed=True), GEARED))
            worst = [setup.accuracy.worst for setup in found]
            assert worst == sorted(set(worst))

    def test_the_error_told_is_that_of_the_move_and_train(self) -> None:
        for setup in setups(differential.approximate(Divisions(383, fixed=True), GEARED)):
            assert setup.accuracy.step == crank(setup) / (40 - motion(setup)) - Fraction(1, 383)


class TestTrainsThatCannotBeUsed:
    def test_a_train_without_its_second_idler_turns_the_plate_one_way_only(self) -> None:
        # 40 - 41/3 x 126/41 = -2 = -48/24 would want two idlers, and three gears leave one.
        few = Head(change_gears=(24, 48, 64))
        enough = Head(change_gears=(24, 48, 64, 72))
        work = Divisions(41, every=3)
        assert any(motion(setup) < 0 for setup in setups(differential.exact(work, enough)))
        assert all(motion(setup) > 0 for setup in setups(differential.exact(work, few)))

    def test_a_head_too_coarse_for_an_angle_tries_nothing(self) -> None:
        # Two of 9,017 parts: 46 x 49 x 2 is less.
        assert differential.exact(Arc(Angle(Fraction(2, 4_511)), 2), GEARED) == differential.NO_TRAIN
        # For two of 4,001 the circle of 49 has one space, 46 x 98 being more, and those below 44 have none.
        small = Arc(Angle(Fraction(2, 4_001)), 2)
        assert {circle for circle, *_ in differential.tries(small, GEARED)} == {47, 49}
        assert all(setup.move and setup.move.circle > 43 for setup in setups(differential.exact(small, GEARED)))

    def test_no_train_may_turn_the_plate_as_fast_as_the_crank_or_faster(self) -> None:
        # At 2:1 a train of 2 or more leaves the crank nothing to turn the spindle by.
        quick = Head(ratio=2, change_gears=(24, 24, 48, 72, 30, 50), plates=((17, 20),))
        for divisions in (2, 3, 7, 11, 13, 19, 23, 29):
            for setup in setups(differential.approximate(Divisions(divisions, fixed=True), quick)):
                assert motion(setup) < 2
