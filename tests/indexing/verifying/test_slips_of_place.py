"""Slips in where the pin goes, each undone by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import Dial, Head
from dividing.indexing.verifying.case import Case, Undone
from dividing.indexing.verifying.claims import Claim, GearingClaim, SecondClaim
from dividing.indexing.verifying.slips_of_place import (
    circle_on_no_plate,
    counted_the_pin_hole,
    other_circle,
    second_move_wrong_way,
    whole_turns_forgotten,
)
from dividing.indexing.work import Arc, Divisions

TABLE = Head(90, (), direct_circles=(), dial=Dial(Fraction(1, 21600)))
LINES = Head(90, (), direct_circles=(), dial=Dial(divisions=100))
SMALL = Head(plates=((20, 21),), direct_circles=(24, 30))


def case(divisions: int, claim: Claim, head: Head | None = None) -> Case:
    return Case(Divisions(divisions), head or Head(), claim)


def short(had: str, wanted: int, is_wanted: str = "are wanted", spaces: str = "spaces") -> str:
    return (
        f"You moved {had} where {wanted} {is_wanted}: the hole that the pin is in was counted as the first. It is not "
        f"counted; the arms embrace {wanted + 1} holes for {wanted} {spaces}."
    )


def long(had: int, wanted: str) -> str:
    return f"{had} is the number of holes between the arms, the pin's own hole included; the move is {wanted}."


class TestThePinHoleCounted:
    def test_one_space_more_or_one_fewer(self) -> None:
        assert list(counted_the_pin_hole(case(28, Claim("plain", 1, 20, 49)))) == [
            Undone(Claim("plain", 1, 21, 49), short("20 spaces", 21)),
            Undone(Claim("plain", 1, 19, 49), long(20, "19 spaces")),
        ]

    def test_one_space_is_one_and_none_has_none_fewer(self) -> None:
        assert list(counted_the_pin_hole(case(28, Claim("direct", 0, 1, 24)))) == [
            Undone(
                Claim("direct", 0, 2, 24),
                "You moved 1 space where 2 are wanted: the hole that the pin is in was counted as the first. It is not "
                "counted; count 2 holes on from it.",
            ),
            Undone(
                Claim("direct", 0, 0, 24),
                "1 is the number of holes counted, the pin's own hole included; no space is wanted.",
            ),
        ]
        assert list(counted_the_pin_hole(case(28, Claim("plain", 1, 0, 49)))) == [
            Undone(Claim("plain", 1, 1, 49), short("no space", 1, "is wanted", "space")),
        ]

    def test_the_direct_plate_has_no_arms(self) -> None:
        # 24/8 = 3 spaces.
        assert [one.explanation for one in counted_the_pin_hole(case(8, Claim("direct", 0, 4, 24)))] == [
            "You moved 4 spaces where 5 are wanted: the hole that the pin is in was counted as the first. It is not "
            "counted; count 5 holes on from it.",
            "4 is the number of holes counted, the pin's own hole included; the move is 3 spaces.",
        ]

    def test_as_many_spaces_as_the_circle_has_are_a_whole_turn(self) -> None:
        said = "the hole that the pin is in was counted as the first. It is not counted;"
        assert list(counted_the_pin_hole(case(20, Claim("plain", 1, 19, 20)))) == [
            Undone(
                Claim("plain", 2, 0, 20), f"You moved 19 spaces where 20 are wanted: {said} 20 spaces on 20 are 1 turn."
            ),
            Undone(Claim("plain", 1, 18, 20), long(19, "18 spaces")),
        ]
        assert list(counted_the_pin_hole(case(39, Claim("plain", 0, 39, 39)))) == [
            Undone(
                Claim("plain", 1, 1, 39),
                f"You moved 39 spaces where 40 are wanted: {said} 40 spaces on 39 are 1 turn and 1 space.",
            ),
            Undone(Claim("plain", 0, 38, 39), long(39, "38 spaces")),
        ]

    @pytest.mark.parametrize(
        ("second", "told"),
        [
            (-10, [(-11, short("10 spaces", 11)), (-9, long(10, "9 spaces"))]),
            (10, [(11, short("10 spaces", 11)), (9, long(10, "9 spaces"))]),
            (0, [(1, short("no space", 1, "is wanted", "space"))]),
        ],
    )
    def test_in_either_of_two_moves_and_the_second_keeps_its_way(
        self, second: int, told: list[tuple[int, str]]
    ) -> None:
        claim = Claim("compound", 0, 21, 23, SecondClaim(second, 33))
        assert list(counted_the_pin_hole(case(69, claim))) == [
            Undone(Claim("compound", 0, 22, 23, SecondClaim(second, 33)), short("21 spaces", 22)),
            Undone(Claim("compound", 0, 20, 23, SecondClaim(second, 33)), long(21, "20 spaces")),
            *(Undone(Claim("compound", 0, 21, 23, SecondClaim(holes, 33)), said) for holes, said in told),
        ]

    @pytest.mark.parametrize("claim", [Claim("dial", 12), Claim("dial", 12, 5, 20), Claim("plain", 2)])
    def test_where_no_hole_is_counted_none_was(self, claim: Claim) -> None:
        assert list(counted_the_pin_hole(case(28, claim))) == []


class TestWholeTurnsForgotten:
    @pytest.mark.parametrize(
        ("divisions", "head", "claim", "turns", "words"),
        [
            (28, Head(), Claim("plain", 0, 21, 49), 1, "no whole turn where 1 turn belongs"),
            (6, Head(), Claim("plain", 0, 12, 18), 6, "no whole turn where 6 turns belong"),
            (6, Head(), Claim("plain", 1, 12, 18), 6, "1 whole turn where 6 turns belong"),
            (6, Head(), Claim("plain", 2, 12, 18), 6, "2 whole turns where 6 turns belong"),
            # 90/16 = 5 turns of 4° and 2°30'.
            (16, TABLE, Claim("dial", 3, reading=parse_angle("2.5")), 5, "3 whole turns where 5 turns belong"),
            # 40/57 = 7/19 + 6/18 = 1 + 7/19 - 12/18.
            (57, Head(), Claim("compound", 0, 7, 19, SecondClaim(-12, 18)), 1, "no whole turn where 1 turn belongs"),
        ],
    )
    def test_are_put_before_the_part_of_a_turn(
        self, divisions: int, head: Head, claim: Claim, turns: int, words: str
    ) -> None:
        (undone,) = whole_turns_forgotten(case(divisions, claim, head))
        assert undone.claim.turns == turns
        assert undone.explanation == (
            f"The part of a turn is right, but you have {words} before it. Write the improper fraction as a mixed "
            "number and keep its whole part."
        )

    @pytest.mark.parametrize(
        ("divisions", "head", "claim", "turns", "words"),
        [
            (8, Head(), Claim("plain", 4), 5, "4 whole turns where 5 are wanted"),
            (40, Head(), Claim("plain"), 1, "no whole turn where 1 is wanted"),
            (9, TABLE, Claim("dial", 3), 10, "3 whole turns where 10 are wanted"),
            (9, TABLE, Claim("dial", 1, reading=parse_angle("0")), 10, "1 whole turn where 10 are wanted"),
        ],
    )
    def test_where_there_is_no_part_of_a_turn_none_is_called_right(
        self, divisions: int, head: Head, claim: Claim, turns: int, words: str
    ) -> None:
        (undone,) = whole_turns_forgotten(case(divisions, claim, head))
        assert undone.claim.turns == turns
        assert undone.explanation == f"You have {words}, and no part of a turn besides."

    @pytest.mark.parametrize(
        ("divisions", "head", "claim", "right", "words"),
        [
            # 360/48 = 7°30', of which a turn of the dial is 4°.
            (48, TABLE, Claim("dial", 0, reading=parse_angle("7.5")), Claim("dial", 1, reading=parse_angle("3.5")),
             "7°30' is 1 turn and 3°30'"),
            (48, TABLE, Claim("dial", 1, reading=parse_angle("8")), Claim("dial", 3, reading=parse_angle("0")),
             "8° is 2 turns"),
            # 90/48 = 1 7/8 turns of 100 divisions.
            (48, LINES, Claim("dial", 0, divisions=Fraction("375/2")), Claim("dial", 1, divisions=Fraction("175/2")),
             "187 1/2 divisions is 1 turn and 87 1/2 divisions"),
            (48, LINES, Claim("dial", 0, divisions=Fraction(101)), Claim("dial", 1, divisions=Fraction(1)),
             "101 divisions is 1 turn and 1 division"),
        ],
    )  # fmt: skip
    def test_are_taken_out_of_a_reading(
        self, divisions: int, head: Head, claim: Claim, right: Claim, words: str
    ) -> None:
        assert next(whole_turns_forgotten(case(divisions, claim, head))) == Undone(
            right, f"The reading holds whole turns of the dial: {words}. Count them with the turns."
        )

    def test_without_a_dial_a_reading_holds_none(self) -> None:
        assert list(whole_turns_forgotten(case(40, Claim("dial", 0, reading=parse_angle("9"))))) == []

    @pytest.mark.parametrize(
        "claim",
        [
            Claim("plain", 1, 21, 49),  # none is missing
            Claim("plain", 2, 21, 49),  # one too many
            Claim("plain", 0, 20, 49),  # the part is wrong
            Claim("direct", 0, 3, 24),
            Claim("nearest", circle=49),
            Claim("differential", 0, 12, 21, gearing=GearingClaim(1000, 25, None, 1)),  # a train that locks
        ],
    )
    def test_is_not_seen_elsewhere(self, claim: Claim) -> None:
        assert list(whole_turns_forgotten(case(28, claim))) == []

    def test_is_not_seen_of_a_whole_turn_of_the_spindle_itself(self) -> None:
        assert list(whole_turns_forgotten(case(1, Claim("direct", 0, 0, 24)))) == []


def on_another(holes: str, number: int, right: int, claimed: int) -> str:
    return (
        f"{holes} would be right on the circle of {right}; on {claimed} the same count is another part of a turn. Keep "
        f"the spaces and the circle together: {number}/{right}, not {number}/{claimed}."
    )


class TestAnotherCircle:
    def test_the_same_spaces_on_each_other_circle_of_the_plates(self) -> None:
        assert list(other_circle(case(28, Claim("plain", 1, 9, 20), SMALL))) == [
            Undone(Claim("plain", 1, 9, 21), on_another("9 spaces", 9, 21, 20)),
        ]

    def test_on_the_direct_plate_its_own_circles(self) -> None:
        assert list(other_circle(case(30, Claim("direct", 0, 1, 24), SMALL))) == [
            Undone(Claim("direct", 0, 1, 30), on_another("1 space", 1, 30, 24)),
        ]

    def test_either_of_two_moves(self) -> None:
        claim = Claim("compound", 0, 1, 20, SecondClaim(-2, 22))
        assert list(other_circle(case(28, claim, SMALL))) == [
            Undone(Claim("compound", 0, 1, 21, SecondClaim(-2, 22)), on_another("1 space", 1, 21, 20)),
            Undone(Claim("compound", 0, 1, 20, SecondClaim(-2, 21)), on_another("2 spaces", 2, 21, 22)),
            Undone(Claim("compound", 0, 1, 20, SecondClaim(-2, 20)), on_another("2 spaces", 2, 20, 22)),
            Undone(
                Claim("compound", 0, 1, 22, SecondClaim(-2, 20)),
                "The circles are changed about: the first move is 1 space on 22, the second 2 spaces on 20.",
            ),
        ]

    @pytest.mark.parametrize(
        ("holes", "second"),
        # Only one move is made, or it would go all the way round the other circle.
        [(0, SecondClaim(-20, 23)), (20, SecondClaim(0, 23)), (21, SecondClaim(1, 21)), (1, SecondClaim(22, 23))],
    )
    def test_circles_that_cannot_be_changed_about_are_not(self, holes: int, second: SecondClaim) -> None:
        undone = list(other_circle(case(28, Claim("compound", 0, holes, 22, second), SMALL)))
        assert not [one for one in undone if one.explanation.startswith("The circles")]

    def test_a_circle_of_no_more_holes_than_the_spaces_is_not_told(self) -> None:
        # 20 of 20 are a whole turn, which nobody counts out.
        assert [one.claim.circle for one in other_circle(case(28, Claim("plain", 1, 20, 49), SMALL))] == [21]
        second = Claim("compound", 0, 1, 22, SecondClaim(-20, 23))
        assert [one.claim.second for one in other_circle(case(28, second, SMALL))] == [
            SecondClaim(-20, 23), SecondClaim(-20, 21), SecondClaim(-20, 23), SecondClaim(-20, 22),
        ]  # fmt: skip

    @pytest.mark.parametrize(
        ("divisions", "every", "claim", "right", "said"),
        [
            # 40/28 = 1 12/28, and 12/28 = 21/49; in lowest terms 3/7.
            (28, 1, Claim("plain", 1, 12, 49), Claim("plain", 1, 21, 49),
             "The part of a turn is 12/28, but 12 on 49 is 12/49. Bring it to the circle that you use: 12/28 is 21 on "
             "49."),
            (28, 1, Claim("plain", 1, 3, 21), Claim("plain", 1, 9, 21),
             "The part of a turn is 3/7, but 3 on 21 is 3/21. Bring it to the circle that you use: 3/7 is 9 on 21."),
            # 47 has no sevenths.
            (28, 1, Claim("plain", 1, 3, 47), Claim("plain", 1, 21, 49),
             "The part of a turn is 3/7, but 3 on 47 is 3/47. Bring it to a circle that has it: 3/7 is 21 on 49."),
            # 3 x 40/28 = 4 8/28 = 4 2/7.
            (28, 3, Claim("plain", 4, 8, 49), Claim("plain", 4, 14, 49),
             "The part of a turn is 8/28, but 8 on 49 is 8/49. Bring it to the circle that you use: 8/28 is 14 on "
             "49."),
        ],
    )  # fmt: skip
    def test_a_numerator_is_brought_to_the_circle(
        self, divisions: int, every: int, claim: Claim, right: Claim, said: str
    ) -> None:
        undone = list(other_circle(Case(Divisions(divisions, every), Head(), claim)))
        assert next(one for one in undone if one.claim == right) == Undone(right, said)

    def test_of_an_angle_the_lowest_terms_are_brought_to_the_circle(self) -> None:
        # 13.5/9 = 1 1/2.
        undone = list(other_circle(Case(Arc(parse_angle("13.5")), Head(), Claim("plain", 1, 1, 18))))
        said = "The part of a turn is 1/2, but 1 on 18 is 1/18. Bring it to the circle that you use: 1/2 is 9 on 18."
        assert Undone(Claim("plain", 1, 9, 18), said) in undone

    @pytest.mark.parametrize(
        "claim",
        [
            Claim("plain", 1, 12, 28),  # on its own circle, which no plate has
            Claim("plain", 1, 11, 49),
            Claim("plain", 1),
        ],
    )
    def test_another_number_is_not_the_numerator(self, claim: Claim) -> None:
        said = [one.explanation for one in other_circle(case(28, claim))]
        assert not [one for one in said if one.startswith("The part of a turn")]

    def test_with_gears_or_two_moves_no_numerator_is_looked_for(self) -> None:
        # 3 x 7 = 21 of 49, but neither move is 12/28 of a turn by itself.
        claims = [
            Claim("differential", 1, 12, 49, gearing=GearingClaim(24, 48, None, 1)),
            Claim("compound", 1, 12, 49, SecondClaim(1, 47)),
        ]
        said = [one.explanation for claim in claims for one in other_circle(case(28, claim))]
        assert not [one for one in said if one.startswith("The part of a turn")]

    @pytest.mark.parametrize("claim", [Claim("plain", 2), Claim("plain", 2, 0, 20)])
    def test_whole_turns_are_right_on_any(self, claim: Claim) -> None:
        assert list(other_circle(case(28, claim, SMALL))) == []

    @pytest.mark.parametrize("claim", [Claim("nearest", 0, 3, 20), Claim("dial", 2, 3, 20)])
    def test_spaces_that_are_not_moved_belong_to_no_circle(self, claim: Claim) -> None:
        assert list(other_circle(case(28, claim, SMALL))) == []

    def test_a_head_without_circles_has_none(self) -> None:
        assert list(other_circle(case(28, Claim("plain", 1, 9, 20), TABLE))) == []


class TestACircleOnNoPlate:
    def test_the_same_part_of_a_turn_on_one_that_is(self) -> None:
        # 3/7 = 21/49 = 9/21; the larger circle first.
        undone = list(circle_on_no_plate(case(28, Claim("plain", 1, 3, 7))))
        said = "The fraction is right, but no plate has a circle of 7 holes"
        assert undone[:2] == [
            Undone(Claim("plain", 1, 21, 49), f"{said}; take the same part of a turn as 21 on 49."),
            Undone(Claim("plain", 1, 9, 21), f"{said}; take the same part of a turn as 9 on 21."),
        ]
        # Then the exact ones there are.
        assert Undone(Claim("plain", 1, 21, 49), f"{said}; set it another way.") in undone[2:]

    def test_on_the_direct_plate(self) -> None:
        undone = list(circle_on_no_plate(case(8, Claim("direct", 0, 1, 8))))
        assert undone[0] == Undone(
            Claim("direct", 0, 3, 24),
            "The fraction is right, but the direct plate has no circle of 8 holes; take the same part of a turn as 3 "
            "on 24.",
        )

    def test_a_circle_of_another_plate_is_none_of_the_direct_plate(self) -> None:
        # 4/20 of the spindle is a fifth, but the 20 is on an index plate, where a fifth is 8 turns of the crank.
        undone = list(circle_on_no_plate(case(5, Claim("direct", 0, 4, 20))))
        assert undone[0] == Undone(
            Claim("plain", 8, 0, 20),
            "The fraction is right, but the direct plate has no circle of 20 holes; set it another way.",
        )

    def test_of_two_moves_another_setup_is_told(self) -> None:
        # 40/51 = 24/36 + 2/17, and no plate has 36.
        undone = list(circle_on_no_plate(case(51, Claim("compound", 0, 24, 36, SecondClaim(2, 17)))))
        assert undone[0] == Undone(
            Claim("compound", 0, 12, 18, SecondClaim(2, 17)),
            "The fraction is right, but no plate has a circle of 36 holes; set it another way.",
        )

    def test_of_the_second_move_likewise(self) -> None:
        # 40/51 = 12/18 + 4/34.
        undone = list(circle_on_no_plate(case(51, Claim("compound", 0, 12, 18, SecondClaim(4, 34)))))
        assert undone[0] == Undone(
            Claim("compound", 0, 12, 18, SecondClaim(2, 17)),
            "The fraction is right, but no plate has a circle of 34 holes; set it another way.",
        )

    @pytest.mark.parametrize(
        "claim",
        [
            Claim("plain", 1, 21, 49),
            Claim("plain", 1, 2, 7),  # the fraction is wrong
            Claim("plain", 2),
            Claim("nearest", circle=7),
            Claim("dial", 2),
        ],
    )
    def test_is_not_seen_elsewhere(self, claim: Claim) -> None:
        assert list(circle_on_no_plate(case(28, claim))) == []

    def test_a_dial_has_no_circle(self) -> None:
        # 12 6/7 turns are 12 turns and 3 3/7°, whatever circle stands beside them.
        claim = Claim("dial", 12, 0, 7, reading=parse_angle("24/7"))
        both = replace(TABLE, plates=((49,),))
        assert list(circle_on_no_plate(case(7, claim, both))) == []


class TestTheSecondMove:
    @pytest.mark.parametrize(
        ("second", "way", "sign"),
        [
            (SecondClaim(11, 33), "against the first: 11 spaces back", "-"),
            (SecondClaim(-1, 33), "the same way as the first: 1 space forward", "+"),
        ],
    )
    def test_is_turned_about(self, second: SecondClaim, way: str, sign: str) -> None:
        *_, undone = second_move_wrong_way(case(69, Claim("compound", 0, 21, 23, second)))
        assert undone == Undone(
            Claim("compound", 0, 21, 23, SecondClaim(-second.holes, 33)),
            f"Both moves have the right size, but the second has to go {way} on 33, with the sign {sign}. Always make "
            "it in the same order, after the first.",
        )

    @pytest.mark.parametrize(
        ("claim", "right", "first", "then"),
        [
            # 40/69 = 21/23 - 11/33.
            (Claim("compound", 0, 11, 33, SecondClaim(-21, 23)), Claim("compound", 0, 21, 23, SecondClaim(-11, 33)),
             "21 spaces on 23", "11 spaces back on 33"),
            (Claim("compound", 0, 1, 20, SecondClaim(-1, 15)), Claim("compound", 0, 1, 15, SecondClaim(-1, 20)),
             "1 space on 15", "1 space back on 20"),
        ],
    )  # fmt: skip
    def test_takes_the_smaller_part_from_the_larger(self, claim: Claim, right: Claim, first: str, then: str) -> None:
        assert next(second_move_wrong_way(case(69, claim))) == Undone(
            right,
            f"The smaller part of a turn comes off the larger: first {first}, then {then}. As you have it the work "
            "goes back.",
        )

    @pytest.mark.parametrize(
        "claim",
        [
            Claim("compound", 0, 11, 33, SecondClaim(21, 23)),
            Claim("compound", 1, 11, 33, SecondClaim(-21, 23)),
            Claim("compound", 0, 0, 33, SecondClaim(-21, 23)),
        ],
    )
    def test_with_whole_turns_or_forward_nothing_was_taken_from_the_smaller(self, claim: Claim) -> None:
        assert [undone.claim.circle for undone in second_move_wrong_way(case(69, claim))] == [33]

    @pytest.mark.parametrize("claim", [Claim("plain", 1, 21, 49), Claim("compound", 0, 1, 20, SecondClaim(0, 21))])
    def test_where_there_is_none_nothing_is_turned(self, claim: Claim) -> None:
        assert list(second_move_wrong_way(case(28, claim))) == []
