"""Lead gearing: held to every way of hanging the gears owned, tried one after another."""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dividing.indexing.head import TWELVE_GEARS, Head, Screw
from dividing.parts.lead_gearing import LeadTrain, lead_of_machine, nearest_ratios, trains

MACHINE = 200
LEADS = [Fraction(10) + Fraction(1990 * step, 199) for step in range(200)]
"""Two hundred leads from 10 to 2,000 mm."""

Order = tuple[int, ...]


@cache
def hung_every_way(gears: Order, idlers_simple: int, idlers_compound: int) -> dict[Fraction, set[Order]]:
    """Ratio to every order of gears, (worm, screw) or (worm, second stud, first stud, screw); idlers are left over."""
    found: dict[Fraction, set[Order]] = {}
    if len(gears) >= 2 + idlers_simple:
        for worm, screw in permutations(gears, 2):
            found.setdefault(Fraction(worm, screw), set()).add((worm, screw))
    if len(gears) >= 4 + idlers_compound:
        for worm, second, first, screw in permutations(gears, 4):
            found.setdefault(Fraction(worm * second, first * screw), set()).add((worm, second, first, screw))
    return found


def order(train: LeadTrain) -> Order:
    if train.stud is None:
        return train.worm, train.screw
    return train.worm, train.stud[1], train.stud[0], train.screw


class TestTheTwelveGears:
    @pytest.mark.parametrize("lead", LEADS, ids=float)
    def test_the_nearest_lead_is_the_nearest_of_all_ways(self, lead: Fraction) -> None:
        every = hung_every_way(TWELVE_GEARS, 1, 0)
        wanted = lead / MACHINE
        ranked = sorted(every, key=lambda ratio: (abs(ratio - wanted), ratio))[:5]
        assert nearest_ratios(TWELVE_GEARS, wanted) == tuple(ranked)

    @pytest.mark.parametrize("lead", LEADS[::20], ids=float)
    def test_every_order_of_the_gears_is_given_once(self, lead: Fraction) -> None:
        every = hung_every_way(TWELVE_GEARS, 1, 0)
        for ratio in nearest_ratios(TWELVE_GEARS, lead / MACHINE):
            found = [order(train) for train in trains(TWELVE_GEARS, ratio)]
            assert len(found) == len(set(found))
            assert set(found) == every[ratio]


class TestAnyGears:
    @given(
        gears=st.lists(st.integers(10, 200), min_size=0, max_size=7).map(tuple),
        wanted=st.fractions(Fraction(1, 50), 50, max_denominator=10**6),
        hand=st.sampled_from(["right", "left"]),
    )
    def test_the_search_misses_nothing(self, gears: Order, wanted: Fraction, hand: str) -> None:
        every = hung_every_way(gears, *((1, 0) if hand == "right" else (2, 1)))
        ranked = sorted(every, key=lambda ratio: (abs(ratio - wanted), ratio))[:3]
        found = nearest_ratios(gears, wanted, 3, hand)
        assert found == tuple(ranked)
        for ratio in found:
            assert {order(train) for train in trains(gears, ratio, hand)} == every[ratio]

    def test_the_same_gear_twice_needs_two_of_it(self) -> None:
        assert Fraction(1, 4) not in nearest_ratios((24, 48, 72, 96), Fraction(1, 4), 1)[1:]
        assert trains((24, 24, 48, 48), Fraction(1, 4)) == (LeadTrain(24, 48, (48, 24)),)

    def test_the_orders_of_a_few_gears_by_hand(self) -> None:
        # A half: two gears; 28 x 32 over 56 x 32 would need a second 32.
        assert [order(train) for train in trains((24, 28, 32, 48, 56, 64), Fraction(1, 2))][:3] == [
            (32, 64),
            (28, 56),
            (24, 48),
        ]
        # 9/25: only 32 and 24 on the stud pass both shafts; of the rest 48 on the worm comes first.
        assert trains((24, 32, 48, 100), Fraction(9, 25)) == (
            LeadTrain(48, 100, (32, 24)),
            LeadTrain(48, 32, (100, 24)),
            LeadTrain(24, 100, (32, 48)),
            LeadTrain(24, 32, (100, 48)),
        )

    def test_of_ratios_equally_near_the_smaller_comes_first_and_five_are_given(self) -> None:
        # A third and two thirds are a sixth from a half.
        thirds = Fraction(1, 3), Fraction(2, 3)
        assert nearest_ratios((24, 48, 72), Fraction(1, 2)) == (Fraction(1, 2), *thirds, Fraction(3, 2), Fraction(2))

    def test_all_four_gears_on_the_studs_leave_no_idler_for_a_left_hand(self) -> None:
        gears, half = (24, 32, 32, 48), Fraction(1, 2)
        assert {order(train) for train in trains(gears, half)} == {
            (24, 48),
            *((24, 32, first, screw) for first, screw in ((32, 48), (48, 32))),
            *((32, 24, first, screw) for first, screw in ((32, 48), (48, 32))),
        }
        assert trains(gears, half, "left") == (LeadTrain(24, 48),)

    def test_a_right_hand_is_meant_where_none_is_named(self) -> None:
        # Three gears leave one idler, which a left hand takes two of.
        assert nearest_ratios((24, 48, 72), 1, hand="left") == ()
        assert nearest_ratios((24, 48, 72), 1, 1) == nearest_ratios((24, 48, 72), 1, 1, "right") == (Fraction(2, 3),)
        assert trains((24, 48, 72), Fraction(1, 2)) == (LeadTrain(24, 48),)
        assert trains((24, 48, 72), Fraction(1, 2), "left") == ()

    @pytest.mark.parametrize("ratio", [Fraction(9, 25), Fraction(1, 2), Fraction(1), Fraction(7, 4), Fraction(12, 7)])
    def test_two_gears_come_first_what_clears_before_what_does_not_and_the_larger_before_the_smaller(
        self, ratio: Fraction
    ) -> None:
        found = trains(TWELVE_GEARS, ratio)
        ranks = [(len(order(train)), not train.clears, -sum(order(train)), -train.worm) for train in found]
        assert len(set(ranks)) > 2
        assert ranks == sorted(ranks)

    def test_a_wanted_lead_with_pi_in_it_is_taken_as_it_is(self) -> None:
        assert nearest_ratios(TWELVE_GEARS, 3.14159265358979, 1) == (Fraction(22, 7),)


class TestClearing:
    @pytest.mark.parametrize(
        ("train", "clears"),
        [
            (LeadTrain(48, 100, (32, 24)), True),
            (LeadTrain(48, 32, (100, 24)), False),
            (LeadTrain(24, 100, (32, 48)), False),
            (LeadTrain(24, 48), True),
        ],
    )
    def test_each_pair_reaches_past_the_other_shaft(self, train: LeadTrain, clears: bool) -> None:
        assert train.clears is clears

    def test_fifteen_teeth_more_are_just_too_few(self) -> None:
        # a + b > c + 15: 40 + 25 against 50 + 15.
        assert not LeadTrain(60, 40, (50, 25)).clears
        assert LeadTrain(60, 41, (50, 25)).clears


class TestIdlers:
    @pytest.mark.parametrize(
        ("train", "right", "left"),
        [(LeadTrain(24, 48), 1, 2), (LeadTrain(48, 100, (32, 24)), 0, 1)],
    )
    def test_one_idler_reverses_the_hand(self, train: LeadTrain, right: int, left: int) -> None:
        # Every mesh reverses: right- and left-hand trains differ by one, whatever the number of gears.
        meshes = 1 if train.stud is None else 2
        assert (train.idlers("right"), train.idlers("left")) == (right, left)
        assert (meshes + right) % 2 != (meshes + left) % 2


class TestTheLeadOfTheMachine:
    @pytest.mark.parametrize("ratio", [5, 40, 60, 90])
    @pytest.mark.parametrize(("lead", "unit"), [("1/4", "in"), ("1/5", "in"), ("5", "mm"), ("6", "mm")])
    def test_millimetres_and_inches_are_the_same_length(self, ratio: int, lead: str, unit: str) -> None:
        screw = Screw(Fraction(lead), unit)
        inches, millimetres = lead_of_machine(ratio, screw, "in"), lead_of_machine(ratio, screw, "mm")
        assert inches * Fraction("25.4") == millimetres
        assert (inches if unit == "in" else millimetres) == ratio * Fraction(lead)

    def test_a_lead_asked_in_inches_takes_the_same_gears_as_in_millimetres(self) -> None:
        head = Head(change_gears=TWELVE_GEARS, screw=Screw(Fraction(5), "mm"))
        assert head.screw is not None
        for lead in LEADS[::7]:
            metric = nearest_ratios(TWELVE_GEARS, lead / lead_of_machine(40, head.screw, "mm"))
            inches = nearest_ratios(TWELVE_GEARS, lead / Fraction("25.4") / lead_of_machine(40, head.screw, "in"))
            assert metric == inches
