"""The order of choosing, what is told of the methods that give nothing, and what happens when nothing is exact."""

from __future__ import annotations

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.bounds import SETUPS_MOST
from dividing.indexing.head import TWELVE_GEARS, Dial, Head, Idlers
from dividing.indexing.heads import MINUTE, READY_MADE
from dividing.indexing.setup import METHOD_NAMES, Gearing, MethodName, Move
from dividing.indexing.solving import Solution, solve
from dividing.indexing.work import Angles, Arc, Divisions, Work
from tests.indexing.refusals import faults_of

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

    def test_five_are_told_where_nobody_says_how_many(self) -> None:
        every = solve(Divisions(51), GEARED, limit=SETUPS_MOST).setups
        assert len(every) > 5
        assert solve(Divisions(51), GEARED).setups == every[:5]

    @pytest.mark.parametrize("limit", [1, SETUPS_MOST])
    def test_the_bounds_of_the_limit_serve(self, limit: int) -> None:
        assert 1 <= len(solve(Divisions(28), Head(), limit=limit).setups) <= limit

    # 4 at 40:1 is 3 x 2 on a direct plate of 24 and whole turns; 51 compound, since that is asked for, before the dial.
    @pytest.mark.parametrize(
        ("divisions", "head", "methods", "told"),
        [
            (4, Head(), None, ["direct", "plain"]),
            (4, GEARED, ["differential", "plain", "direct"], ["direct", "plain", "differential"]),
            (51, GEARED, ["compound"], ["compound"]),
            (51, GEARED, ["dial", "compound", "differential"], ["differential", "compound"]),
            (127, Head(), ["nearest"], ["nearest"]),
        ],
    )
    def test_methods_asked_for_stand_in_the_order_of_choosing(
        self, divisions: int, head: Head, methods: list[MethodName] | None, told: list[str]
    ) -> None:
        setups = solve(Divisions(divisions), head, methods=methods, limit=SETUPS_MOST).setups
        assert list(dict.fromkeys(setup.method for setup in setups)) == told

    @pytest.mark.parametrize("limit", [1, 2, 3, 12, 13])
    def test_a_list_is_as_long_as_it_may_be_whatever_methods_it_takes(self, limit: int) -> None:
        # 51 has more than twelve geared settings, of which twelve are told, and compound ones after them.
        every = solve(Divisions(51), GEARED, limit=SETUPS_MOST).setups
        assert solve(Divisions(51), GEARED, limit=limit).setups == every[:limit]
        assert [setup.method for setup in every[11:13]] == ["differential", "compound"]

    def test_the_question_comes_back_with_the_answer(self) -> None:
        work = Divisions(28)
        found = solve(work, GEARED)
        assert (found.work, found.head) == (work, GEARED)


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

    DIRECT_73 = "The direct plate has 24 holes, not a multiple of 73."
    PLAIN_73 = "No circle on these plates is a multiple of 73."
    NO_TWO = "No two circles of one plate make this step exactly."
    NO_DIAL, NO_GEARS = "This head has no dial.", "No change gears are given for this head."
    NEEDLESS = "Not needed: an exact setting exists."

    @pytest.mark.parametrize(
        ("divisions", "head", "told"),
        [
            # Direct indexing is exact, so is plain.
            (
                8,
                GEARED,
                [
                    ("differential", "Not needed: direct indexing is exact."),
                    ("compound", "Not needed: direct indexing is exact."),
                    ("dial", NO_DIAL),
                    ("nearest", "Not needed: direct indexing is exact."),
                ],
            ),
            (
                28,
                GEARED,
                [
                    ("direct", "The direct plate has 24 holes, not a multiple of 28."),
                    ("differential", "Not needed: plain indexing is exact."),
                    ("compound", "Not needed: plain indexing is exact."),
                    ("dial", NO_DIAL),
                    ("nearest", "Not needed: plain indexing is exact."),
                ],
            ),
            # Where only gears or two moves are exact nothing but the nearest hole is called needless.
            (
                73,
                GEARED,
                [
                    ("direct", DIRECT_73),
                    ("plain", PLAIN_73),
                    ("compound", "No two circles of one plate make this step exactly."),
                    ("dial", NO_DIAL),
                    ("nearest", "Not needed: an exact setting exists."),
                ],
            ),
            # Exact over four spaces a move.
            (
                383,
                GEARED,
                [
                    ("direct", "The direct plate has 24 holes, not a multiple of 383."),
                    ("plain", "No circle on these plates is a multiple of 383."),
                    ("compound", "No two circles of one plate make this step exactly."),
                    ("dial", NO_DIAL),
                    ("nearest", "Not needed: an exact setting exists."),
                ],
            ),
            # Nothing is exact: those that come near are told, the others say why they are not exact.
            (
                73,
                Head(),
                [("direct", DIRECT_73), ("plain", PLAIN_73), ("differential", NO_GEARS), ("dial", NO_DIAL)],
            ),
            (
                1_000_000,
                Head(plates=((49,),)),
                [
                    ("direct", "The direct plate has 24 holes, not a multiple of 1,000,000."),
                    ("plain", "No circle on these plates is a multiple of 25,000."),
                    ("differential", NO_GEARS),
                    ("compound", "No plate of this head has two circles."),
                    ("dial", NO_DIAL),
                ],
            ),
        ],
    )
    def test_all_of_them_in_the_order_of_choosing(
        self, divisions: int, head: Head, told: list[tuple[str, str]]
    ) -> None:
        assert [(no.method, no.reason) for no in solve(Divisions(divisions), head).declined] == told

    @pytest.mark.parametrize(
        ("methods", "told"),
        [
            (["plain", "compound", "nearest"], [("compound", NO_TWO), ("nearest", NEEDLESS)]),
            (["plain", "dial"], [("dial", NO_DIAL)]),
            (["plain"], []),
        ],
    )
    def test_only_methods_asked_for_say_why(self, methods: list[MethodName], told: list[tuple[str, str]]) -> None:
        # 40/28 = 1 3/7 on 21 alone, which leaves 22 no second move.
        found = solve(Divisions(28), Head(plates=((21, 22),)), methods=methods)
        assert [(no.method, no.reason) for no in found.declined] == told

    def test_a_table_without_plates_is_set_by_its_dial_alone(self) -> None:
        table = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(divisions=100))
        exact, near = solve(Divisions(125), table), solve(Divisions(7), table)
        assert ([setup.method for setup in exact.setups], [setup.method for setup in near.setups]) == (["dial"],) * 2
        reasons_told = {
            "direct": "This head has no direct plate.",
            "plain": "This head has no index plates.",
            "differential": "This head has no index plates to gear.",
            "compound": "No plate of this head has two circles.",
        }
        assert reasons(exact) == {**reasons_told, "nearest": "Not needed: an exact setting exists."}
        none = "This head has no index plates; its dial is set instead."
        assert reasons(near) == {**reasons_told, "nearest": none}

    def test_but_it_is_worked_out_when_it_is_asked_for(self) -> None:
        setups = solve(Divisions(28), GEARED, methods=["differential"]).setups
        assert all(setup.exact and setup.gearing for setup in setups)

    @pytest.mark.parametrize("limit", [0, -1, SETUPS_MOST + 1])
    def test_a_limit_out_of_bounds_is_named(self, limit: int) -> None:
        told = [(("limit",), "The limit is a number of setups from 1 to 100.")]
        assert faults_of(lambda: solve(Divisions(28), Head(), limit=limit)) == told

    @pytest.mark.parametrize(
        ("methods", "barred", "told"),
        [
            (
                ["plain", "direct"],
                {},
                f"Nothing serves with these methods. Direct: {DIRECT_73} Plain: {PLAIN_73} Allow other methods, or "
                "change the head.",
            ),
            (
                ["direct", "nearest"],
                {"nearest": "The spindle is clamped."},
                f"Nothing serves with these methods. Direct: {DIRECT_73} Nearest: The spindle is clamped. Allow other "
                "methods, or change the head.",
            ),
            (
                None,
                dict.fromkeys(METHOD_NAMES, "Out of use."),
                "Nothing serves on this head. Direct, plain, differential, compound, dial, nearest: Out of use. Change "
                "the head.",
            ),
        ],
    )
    def test_where_nothing_serves_each_reason_is_told(
        self, methods: list[MethodName] | None, barred: dict[MethodName, str], told: str
    ) -> None:
        asked = faults_of(lambda: solve(Divisions(73), Head(), methods=methods, barred=barred))
        assert asked == [(("methods",) if methods else ("head",), told)]

    def test_barred_methods_are_left_out_each_with_its_reason_in_its_place(self) -> None:
        barred: dict[MethodName, str] = {"compound": "The plate is clamped.", "direct": "The worm must stay in mesh."}
        found = solve(Divisions(8), Head(), barred=barred)
        assert {setup.method for setup in found.setups} == {"plain"}
        assert [(no.method, no.reason) for no in found.declined] == [
            ("direct", "The worm must stay in mesh."),
            ("differential", "Not needed: plain indexing is exact."),
            ("compound", "The plate is clamped."),
            ("dial", self.NO_DIAL),
            ("nearest", "Not needed: plain indexing is exact."),
        ]

    def test_a_method_that_is_barred_but_not_asked_for_says_nothing(self) -> None:
        found = solve(Divisions(8), Head(), methods=["plain"], barred={"direct": "The worm must stay in mesh."})
        assert found.declined == ()

    def test_where_the_plate_is_in_use_no_position_is_reached_on_two_circles(self) -> None:
        barred: dict[MethodName, str] = {"compound": "The train to the plate is in use."}
        for work in (Divisions(53), Angles((parse_angle("0"), parse_angle("10.1")))):
            setups = solve(work, Head(), barred=barred).setups
            assert [setup.method for setup in setups] == ["nearest"]
            assert setups[0].second is None

    def test_where_the_worm_stays_in_mesh_no_position_is_reached_on_the_direct_plate(self) -> None:
        fixture = Head(ratio=1, plates=(), direct_circles=(36,))
        assert [setup.method for setup in solve(Divisions(7), fixture).setups] == ["nearest"]
        asked = faults_of(lambda: solve(Divisions(7), fixture, barred={"direct": "The worm must stay in mesh."}))
        assert asked == [
            (
                ("head",),
                "Nothing serves on this head. Direct: The worm must stay in mesh. Plain: This head has no index "
                "plates. Differential: This head has no index plates to gear. Compound: No plate of this head has two "
                f"circles. Dial: {self.NO_DIAL} Change the head.",
            )
        ]


class TestSeveralSpacesAMove:
    def test_the_fewest_spaces_that_serve_and_nothing_else_are_told(self) -> None:
        # 10 to 1, circles of 4 and 6, one train of 20, 30 and 40 teeth with its idler: 111 places of 6 in two turns of
        # the spindle with 30 over 40 (10 - 3/4 = 37/4), 112 of 4 in three with 20 over 30 (10 - 2/3 = 28/3).
        head = Head(ratio=10, plates=((4,), (6,)), direct_circles=(), change_gears=(40, 20, 30))
        # 2/111 of 37/4 is 1/6, 3/112 of 28/3 is 1/4.
        for divisions, told in (
            (111, (2, True, Move(0, 1, 6, 2), Gearing(30, 40, None, 1, "with"))),
            (112, (3, True, Move(0, 1, 4, 1), Gearing(20, 30, None, 1, "with"))),
        ):
            (setup,) = solve(Divisions(divisions), head).setups
            assert (setup.every, setup.exact, setup.move, setup.gearing) == told

    def test_two_gears_that_want_no_idler_are_enough(self) -> None:
        # 2 x (10 - 25/24) = 215/12, and 215 is 5 x 43; 12/43 of 215/24 crank turns are 2 1/2.
        head = Head(ratio=10, plates=((2,),), direct_circles=(), change_gears=(24, 25), idlers=Idlers(0, 1, 0, 1))
        (setup,) = solve(Divisions(43), head).setups
        assert (setup.every, setup.exact, setup.move) == (12, True, Move(2, 1, 2, 1))

    def test_not_where_the_plate_may_not_be_geared(self) -> None:
        for asked in (
            solve(Divisions(383), GEARED, methods=["plain", "compound", "nearest"]),
            solve(Divisions(383), GEARED, barred={"differential": "The train cuts a helix."}),
        ):
            assert {setup.method for setup in asked.setups} == {"compound", "nearest"}
            assert not any(setup.exact for setup in asked.setups)

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
