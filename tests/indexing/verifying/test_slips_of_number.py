"""Slips in the figures that the working starts from, each undone by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import TWELVE_GEARS, Dial, Head
from dividing.indexing.setup import MethodName
from dividing.indexing.verifying.case import Case, Undone
from dividing.indexing.verifying.claims import Claim, GearingClaim, SecondClaim
from dividing.indexing.verifying.slips_of_number import fraction_upside_down, neighbouring_count, other_ratio
from dividing.indexing.work import Arc, Divisions, Work

GEARED = Head(change_gears=TWELVE_GEARS)
TABLE = Head(90, (), direct_circles=(), dial=Dial(Fraction(1, 21600)))
LINES = Head(90, (), direct_circles=(), dial=Dial(divisions=100))


def case(work: Work, claim: Claim, head: Head | None = None) -> Case:
    return Case(work, head or Head(), claim)


class TestUpsideDown:
    def test_more_spaces_than_the_circle_has_are_the_circle(self) -> None:
        undone = list(fraction_upside_down(case(Divisions(28), Claim("plain", 1, 49, 21))))
        assert undone == [
            Undone(Claim("plain", 1, 21, 49), "You wrote 49 spaces on 21; it is 21 spaces on 49."),
        ]

    @pytest.mark.parametrize("second", [SecondClaim(-11, 33), None], ids=["of two moves", "with gears"])
    def test_of_a_move_that_is_not_alone_the_rest_stays(self, second: SecondClaim | None) -> None:
        method: MethodName = "compound" if second else "differential"
        gearing = None if second else GearingClaim(48, 28, None, 2)
        claim = Claim(method, 0, 23, 21, second, gearing)
        assert list(fraction_upside_down(case(Divisions(69), claim, GEARED))) == [
            Undone(Claim(method, 0, 21, 23, second, gearing), "You wrote 23 spaces on 21; it is 21 spaces on 23."),
        ]

    def test_fewer_are_turned_over_and_keep_their_whole_part(self) -> None:
        undone = list(fraction_upside_down(case(Divisions(15), Claim("plain", 0, 6, 16))))
        # 16/6 = 2 4/6; and 6/16 x 40/15 is 1, so the whole fraction is upside down: 40/15 = 2 2/3.
        assert undone[0] == Undone(Claim("plain", 2, 4, 6), "The fraction stands upside down: 16/6, not 6/16.")
        assert undone[1] == Undone(
            Claim("plain", 2, 12, 18),
            "The fraction stands upside down. It is ratio over divisions, 40/15, not divisions over ratio: 2 2/3 "
            "turns.",
        )

    def test_one_space_turned_over_is_whole_turns(self) -> None:
        assert list(fraction_upside_down(case(Divisions(7), Claim("plain", 0, 1, 8)))) == [
            Undone(Claim("plain", 8, 0, 1), "The fraction stands upside down: 8/1, not 1/8."),
        ]

    def test_for_an_angle_it_is_said_of_the_angle(self) -> None:
        # 13.5° is 1 1/2 turns; 2/3 of a turn was made.
        undone = list(fraction_upside_down(case(Arc(parse_angle("13.5"), 2), Claim("plain", 0, 12, 18))))
        assert undone[0].explanation == "The fraction stands upside down: 18/12, not 12/18."
        assert undone[1].explanation == (
            "The fraction stands upside down. It is the angle over the 9° of one crank turn, not the other way about: "
            "1 1/2 turns."
        )

    @pytest.mark.parametrize(
        ("work", "claim", "said"),
        [
            # 40/48 = 5/6; 48/40 = 1 1/5.
            (Divisions(48), Claim("plain", 1, 4, 20),
             "ratio over divisions, 40/48, not divisions over ratio: 5/6 of a turn."),
            # 3 x 40/28 = 4 2/7; 28/120 = 7/30.
            (Divisions(28, 3), Claim("plain", 0, 14, 60),
             "ratio over divisions, 3 × 40/28 for 3 divisions a move, not divisions over ratio: 4 2/7 turns."),
            # 8 divisions, 3 at a move: 3/8 of the spindle, 9 on 24; 8/3 was made.
            (Divisions(8, 3), Claim("direct", 2, 16, 24),
             "one turn over divisions, 3 × 1/8 for 3 divisions a move, not divisions over one turn: 3/8 of a turn."),
            (Divisions(1), Claim("direct", 0, 24, 24),
             "one turn over divisions, 1/1, not divisions over one turn: 1 turn."),
            # 45 degrees are an eighth of the spindle; eight turns were made.
            (Arc(parse_angle("45")), Claim("direct", 8, 0, 24),
             "the angle over the 360° of one turn, not the other way about: 1/8 of a turn."),
        ],
    )  # fmt: skip
    def test_the_right_way_up_is_told_with_its_figures(self, work: Work, claim: Claim, said: str) -> None:
        *_, last = fraction_upside_down(case(work, claim))
        assert last.explanation == f"The fraction stands upside down. It is {said}"

    def test_on_the_direct_plate(self) -> None:
        # Eight turns of the spindle for an eighth.
        undone = list(fraction_upside_down(case(Divisions(8), Claim("direct", 8, 0, 24))))
        assert undone[0] == Undone(
            Claim("direct", 0, 3, 24),
            "The fraction stands upside down. It is one turn over divisions, 1/8, not divisions over one turn: 1/8 of "
            "a turn.",
        )
        # 5/24 is another fraction than an eighth either way up: its figures alone can have changed places.
        assert list(fraction_upside_down(case(Divisions(8), Claim("direct", 0, 5, 24)))) == [
            Undone(Claim("direct", 4, 4, 5), "The fraction stands upside down: 24/5, not 5/24."),
        ]

    @pytest.mark.parametrize(
        ("work", "claim"),
        [
            (Divisions(7), Claim("dial", 12)),
            (Divisions(28), Claim("nearest", circle=49)),
            (Divisions(28), Claim("plain", 2)),
            (Divisions(28), Claim("plain", 2, 0, 49)),
            (Divisions(20), Claim("plain", 1, 22, 22)),  # a whole turn stands either way up
        ],
    )
    def test_is_not_seen_where_there_is_no_fraction(self, work: Work, claim: Claim) -> None:
        assert list(fraction_upside_down(case(work, claim))) == []


class TestAnotherRatio:
    @pytest.mark.parametrize(
        ("work", "head", "claim", "ratio"),
        [
            (Divisions(28), Head(), Claim("plain", 2, 7, 49), 60),  # 60/28 = 2 1/7
            (Divisions(28), Head(ratio=60), Claim("plain", 1, 21, 49), 40),
            # 60/51 = 1 3/17.
            (Divisions(51), Head(), Claim("compound", 1, 0, 15, SecondClaim(3, 17)), 60),
            # A sixteenth of 72 turns is 4 1/2: on a dial of 5° a turn 4 turns and 2°30'.
            (Divisions(16), TABLE, Claim("dial", 4, reading=parse_angle("2.5")), 72),
            # 72/45 = 1 3/5: 1 turn and 60 of 100 divisions.
            (Divisions(45), LINES, Claim("dial", 1, divisions=Fraction(60)), 72),
            (Divisions(72), LINES, Claim("dial", 1), 72),
            # 60 - 73 x 18/21 = -18/7: worked for 60:1 with a train of 18/7 = 72/28.
            (
                Divisions(73),
                GEARED,
                Claim("differential", 0, 18, 21, gearing=GearingClaim(72, 28, None, 2)),
                60,
            ),
        ],
    )
    def test_is_named(self, work: Work, head: Head, claim: Claim, ratio: int) -> None:
        undone = list(other_ratio(case(work, claim, head)))
        said = (
            f"This move is right on a head of {ratio}:1. Yours is {head.ratio}:1: {head.ratio} crank turns make one "
            "turn of the spindle."
        )
        assert {one.explanation for one in undone} == {said}

    @pytest.mark.parametrize(
        ("work", "head", "claim"),
        [
            (Divisions(28), Head(), Claim("plain", 1, 21, 49)),
            (Divisions(12), Head(), Claim("direct", 0, 3, 24)),  # 2/3 of it is right, but no crank is turned
            (Divisions(28), Head(), Claim("nearest", circle=49)),
            (Divisions(28), Head(), Claim("plain", 0, 5, 17)),
            # Right at 72:1, 10 2/7 turns of a dial of 5°, but this dial has no exact reading to correct to.
            (Divisions(7), TABLE, Claim("dial", 10, reading=parse_angle("10/7"))),
            # Without a turn the ratio says nothing: 61°15' are 61°15' on any head.
            (Arc(parse_angle("61°15'")), TABLE, Claim("dial", 0, reading=parse_angle("61°15'"))),
            # 120:1 would make it 90 degrees, but there a turn of the dial is 3.
            (Divisions(4), TABLE, Claim("dial", 29, reading=parse_angle("3"))),
            # 60/48 = 1 1/4 turns, but no dial of 100 divisions shows 125.
            (Divisions(48), LINES, Claim("dial", 0, divisions=Fraction(125))),
            # On a head without a dial its divisions say nothing.
            (Divisions(28), Head(), Claim("dial", 1, divisions=Fraction(3))),
            # With this train the crank turns nothing on a head of 5:1, and is wrong on the others.
            (
                Divisions(73),
                GEARED,
                Claim("differential", 0, 12, 21, gearing=GearingClaim(120, 24, None, 1)),
            ),
            # It locks the head at hand, and no other ratio makes it right.
            (
                Divisions(73),
                Head(ratio=5, change_gears=TWELVE_GEARS),
                Claim("differential", 0, 12, 21, gearing=GearingClaim(120, 24, None, 1)),
            ),
        ],
    )
    def test_is_not_seen_elsewhere(self, work: Work, head: Head, claim: Claim) -> None:
        assert list(other_ratio(case(work, claim, head))) == []


    @pytest.mark.parametrize(
        ("divisions", "claim", "every"),
        [
            (28, Claim("plain", 4, 14, 49), 3),  # 120/28 = 4 2/7
            (27, Claim("plain", 2, 26, 27), 2),  # 80/27 = 2 26/27
            (27, Claim("plain", 4, 12, 27), 0),  # 120/27 would miss two of three
            (27, Claim("plain", 2, 6, 27), 0),  # 60/27 is one and a half at a time
        ],
    )
    def test_a_move_of_several_divisions_may_be_meant(self, divisions: int, claim: Claim, every: int) -> None:
        asked = f" Or is it meant as {every} divisions a move? Then say so: the work goes round {every} times."
        first = next(other_ratio(case(Divisions(divisions), claim)))
        assert first.explanation.endswith(f"make one turn of the spindle.{asked if every else ''}")

    @pytest.mark.parametrize(
        ("work", "claim"),
        [
            (Arc(parse_angle("13.5")), Claim("plain", 2, 4, 16)),  # 60 x 13.5/360 = 2 1/4
            (Divisions(28, 3), Claim("plain", 6, 21, 49)),  # 60 x 3/28 = 6 3/7
        ],
    )
    def test_of_an_angle_or_of_several_asked_for_nothing_more_is_asked(self, work: Work, claim: Claim) -> None:
        first = next(other_ratio(case(work, claim)))
        assert first.explanation == (
            "This move is right on a head of 60:1. Yours is 40:1: 40 crank turns make one turn of the spindle."
        )

    def test_one_turn_for_each_division_is_no_block(self) -> None:
        # 60/3 = 20 turns on a head of 20:1 bring the work home at every move.
        first = next(other_ratio(case(Divisions(3), Claim("plain", 20), Head(ratio=20))))
        assert first.explanation.endswith("make one turn of the spindle.")


class TestOneMoreOrOneFewer:
    @pytest.mark.parametrize(
        ("divisions", "claim", "made", "has"),
        [
            (28, Claim("plain", 1, 13, 27), "27 divisions", "28 divisions have 28 marks and 28 spaces"),  # 40/27
            (28, Claim("plain", 1, 11, 29), "29 divisions", "28 divisions have 28 marks and 28 spaces"),
            (2, Claim("plain", 40), "1 division", "2 divisions have 2 marks and 2 spaces"),
            (1, Claim("plain", 20), "2 divisions", "1 division has 1 mark and 1 space"),
        ],
    )
    def test_is_told_by_marks_and_spaces(self, divisions: int, claim: Claim, made: str, has: str) -> None:
        undone = list(neighbouring_count(case(Divisions(divisions), claim)))
        said = f"This move makes {made}, not {divisions}. {has} round the work; count the spaces."
        assert {one.explanation for one in undone} == {said}

    def test_with_several_divisions_a_move_it_is_told_as_a_part_of_a_turn(self) -> None:
        # 3/27 is a ninth of a turn: 4 12/27 turns of the crank, so nine of them go round.
        undone = list(neighbouring_count(case(Divisions(28, 3), Claim("plain", 4, 12, 27))))
        said = (
            "This move is 3/27 of a turn, for 27 divisions, not 28. 28 divisions have 28 marks and 28 spaces round the "
            "work; count the spaces."
        )
        assert {one.explanation for one in undone} == {said}

    @pytest.mark.parametrize(
        ("work", "claim"),
        [
            (Divisions(28), Claim("plain", 1, 21, 49)),
            (Divisions(28), Claim("plain", 1, 10, 30)),  # thirty, two too many
            (Divisions(1), Claim("plain", 40)),
            (Divisions(1), Claim("nearest", circle=49)),
            (Arc(parse_angle("13.5"), 2), Claim("plain", 1, 13, 27)),
        ],
    )
    def test_is_not_seen_elsewhere(self, work: Work, claim: Claim) -> None:
        assert list(neighbouring_count(case(work, claim))) == []
