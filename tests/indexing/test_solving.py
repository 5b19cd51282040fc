"""The order of choosing, what is told of the methods that give nothing, and what happens when nothing is exact."""

from __future__ import annotations

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.bounds import SETUPS_MOST
from dividing.indexing.faults import Refused
from dividing.indexing.head import TWELVE_GEARS, Dial, Head
from dividing.indexing.heads import MINUTE, READY_MADE
from dividing.indexing.setup import MethodName
from dividing.indexing.solving import Solution, solve
from dividing.indexing.work import Angles, Arc, Divisions, Work

GEARED = Head(change_gears=TWELVE_GEARS)


def reasons(found: Solution) -> dict[str, str]:
    return {no.method: no.reason for no in found.declined}


class TestOrder:
    # The rule: direct, plain on the mounted plate, plain on another, differential, compound; the larger circle first.
    @pytest.mark.parametrize(
        ("divisions", "head", "first"),
        [
            (8, Head(), ("direct", 24)),
            (28, Head(), ("plain", 49)),
            (28, Head(mounted_plate=2), ("plain", 21)),
            (64, Head(), ("plain", 16)),
            (51, GEARED, ("differential", 20)),
            (51, Head(), ("compound", 18)),
        ],
    )
    def test_a_careful_operator_would_begin_with(self, divisions: int, head: Head, first: tuple[str, int]) -> None:
        setup = solve(Divisions(divisions), head).setups[0]
        assert setup.move is not None
        assert (setup.method, setup.move.circle) == first

    def test_compound_follows_differential_where_both_are_exact(self) -> None:
        methods = [setup.method for setup in solve(Divisions(51), GEARED, limit=50).setups]
        assert set(methods) == {"differential", "compound"}
        assert methods == sorted(methods, key=["differential", "compound"].index)

    @pytest.mark.parametrize("divisions", [59, 101, 127, 383, 1009, 10_007])
    def test_approximate_setups_stand_by_their_worst_error(self, divisions: int) -> None:
        worst = [setup.accuracy.worst for setup in solve(Divisions(divisions), Head()).setups]
        assert len(worst) > 1
        assert worst == sorted(worst)
        assert worst[0] > 0

    def test_the_limit_cuts_the_list_from_its_end(self) -> None:
        every = solve(Divisions(73), GEARED, limit=SETUPS_MOST).setups
        assert solve(Divisions(73), GEARED, limit=2).setups == every[:2]


class TestReasons:
    def test_each_method_that_gives_nothing_says_why(self) -> None:
        assert reasons(solve(Divisions(73), Head())) == {
            "direct": "The direct plate has 24 holes, not a multiple of 73.",
            "plain": "No circle on these plates is a multiple of 73.",
            "differential": "No change gears are given for this head.",
            "dial": "This head has no dial.",
        }

    def test_what_nobody_would_do_beside_a_plain_move_is_not_needed(self) -> None:
        told = reasons(solve(Divisions(28), GEARED))
        assert told["differential"] == told["compound"] == "Not needed: plain indexing is exact."

    def test_but_it_is_worked_out_when_it_is_asked_for(self) -> None:
        setups = solve(Divisions(28), GEARED, methods=["differential"]).setups
        assert all(setup.exact and setup.gearing for setup in setups)

    def test_methods_that_cannot_serve_are_refused_with_each_reason(self) -> None:
        with pytest.raises(Refused) as refused:
            solve(Divisions(73), Head(), methods=["direct", "plain"])
        assert str(refused.value) == (
            "Nothing serves with these methods. Direct: The direct plate has 24 holes, not a multiple of 73. "
            "Plain: No circle on these plates is a multiple of 73. Allow other methods, or change the head."
        )

    @pytest.mark.parametrize("limit", [0, -1, SETUPS_MOST + 1])
    def test_a_limit_out_of_bounds_is_named(self, limit: int) -> None:
        with pytest.raises(Refused, match=r"^The limit is a number of setups from 1 to 100\.$"):
            solve(Divisions(28), Head(), limit=limit)

    def test_a_barred_method_is_left_out_with_its_reason(self) -> None:
        barred: dict[MethodName, str] = {"direct": "The worm must stay in mesh."}
        found = solve(Divisions(8), Head(), barred=barred)
        assert found.setups[0].method == "plain"
        assert reasons(found)["direct"] == "The worm must stay in mesh."

    def test_where_the_plate_is_in_use_no_position_is_reached_on_two_circles(self) -> None:
        barred: dict[MethodName, str] = {"compound": "The train to the plate is in use."}
        for work in (Divisions(53), Angles((parse_angle("0"), parse_angle("10.1")))):
            setups = solve(work, Head(), barred=barred).setups
            assert [setup.method for setup in setups] == ["nearest"]
            assert setups[0].second is None


class TestSeveralSpacesAMove:
    # 383 with 13 spaces on 33 and (86 x 28)/(44 x 24) = 301/132: (13/33)/(40 - 301/132) = 4/383.
    def test_383_comes_out_exactly_with_four_spaces_a_move(self) -> None:
        setup = solve(Divisions(383), GEARED).setups[0]
        assert (setup.method, setup.every, setup.exact) == ("differential", 4, True)

    def test_it_does_not_when_one_space_a_move_is_asked_for(self) -> None:
        setups = solve(Divisions(383, 1, fixed=True), GEARED).setups
        assert not any(setup.exact for setup in setups)
        assert {setup.every for setup in setups} == {1}

    @pytest.mark.parametrize("divisions", range(2, 383))
    def test_no_number_that_one_space_makes_is_cut_in_blocks(self, divisions: int) -> None:
        setup = solve(Divisions(divisions), GEARED, limit=1).setups[0]
        assert (setup.every, setup.exact) == (1, True)


class TestAlwaysAnAnswer:
    WORKS: tuple[Work, ...] = (
        Divisions(1),
        Divisions(7),
        Divisions(997),
        Divisions(1_000_000),
        Arc(parse_angle("37°30'"), 3),
        Arc(parse_angle("0.35 rad"), 5),
        Angles((parse_angle("0"), parse_angle("22.5"), parse_angle("61°15'"))),
        Angles((parse_angle("1 rad"),)),
    )
    ODD: tuple[Head, ...] = (
        Head(ratio=5, plates=((7,),), direct_circles=()),
        Head(ratio=2160, plates=(), direct_circles=(), dial=Dial(divisions=60)),
        Head(ratio=90, plates=(), direct_circles=(), dial=Dial(graduation=MINUTE)),
    )

    @pytest.mark.parametrize("work", WORKS, ids=str)
    @pytest.mark.parametrize("head", [*(ready.head for ready in READY_MADE), *ODD], ids=str)
    def test_every_head_has_some_setup_for_every_work(self, work: Work, head: Head) -> None:
        assert solve(work, head).setups
