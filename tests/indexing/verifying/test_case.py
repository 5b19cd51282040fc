"""One claim held against its work: what is wanted, whether a claim is right, and which setup is shown beside it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import TWELVE_GEARS, Dial, Head
from dividing.indexing.setup import NO_ERROR, Even, Gearing, MethodName, Move, SecondMove, Setup
from dividing.indexing.verifying.case import Case
from dividing.indexing.verifying.claims import Claim, GearingClaim, SecondClaim
from dividing.indexing.work import Angles, Arc, Divisions, Work
from tests.second.head import DividingHead
from tests.second.holes import SET_I

GEARED = Head(change_gears=TWELVE_GEARS)
TABLE = Head(90, (), direct_circles=(), dial=Dial(Fraction(1, 21600)))
LIST = Angles((Angle(Fraction(0)), Angle(Fraction(1, 7))))
ANY = Claim("plain", 1, 21, 49)


def case(work: Work, claim: Claim = ANY, head: Head | None = None) -> Case:
    return Case(work, head or Head(), claim)


class TestWhatIsWanted:
    @pytest.mark.parametrize(
        ("work", "head", "spindle", "crank"),
        [
            (Divisions(28), Head(), "1/28", "10/7"),
            (Divisions(106, every=5), Head(), "5/106", "100/53"),
            (Arc(parse_angle("15°30'")), Head(), "31/720", "31/18"),
            (Divisions(7), TABLE, "1/7", "90/7"),
            (Divisions(1), TABLE, "1", "90"),
        ],
    )
    def test_in_turns_of_spindle_and_crank(self, work: Work, head: Head, spindle: str, crank: str) -> None:
        asked = case(work, head=head)
        assert (asked.wanted, asked.crank_wanted) == (Fraction(spindle), Fraction(crank))


class TestWhetherAClaimIsRight:
    @pytest.mark.parametrize(
        ("work", "head", "claim", "right"),
        [
            (Divisions(28), Head(), Claim("plain", 1, 21, 49), True),
            (Divisions(28), Head(), Claim("plain", 1, 9, 21), True),
            (Divisions(28), Head(), Claim("plain", 1, 20, 49), False),
            # The right part of a turn, on a circle that no plate has.
            (Divisions(28), Head(), Claim("plain", 1, 12, 28), False),
            (Divisions(69), Head(), Claim("compound", 0, 21, 23, SecondClaim(-11, 33)), True),
            (Divisions(69), Head(stop_circles=(23,)), Claim("compound", 0, 21, 23, SecondClaim(-11, 33)), False),
            (Divisions(73), GEARED, Claim("differential", 0, 12, 21, gearing=GearingClaim(48, 28, None, 2)), True),
            (Divisions(73), Head(), Claim("differential", 0, 12, 21, gearing=GearingClaim(48, 28, None, 2)), False),
            (Divisions(7), TABLE, Claim("dial", 12, reading=parse_angle("24/7")), True),
            (Divisions(7), TABLE, Claim("dial", 12, reading=parse_angle("3°26'")), False),
            (Arc(parse_angle("0.35 rad")), Head(), ANY, False),
            (LIST, Head(), Claim("nearest", circle=49), False),
        ],
    )
    def test_by_hand(self, work: Work, head: Head, claim: Claim, right: bool) -> None:
        assert case(work, head=head).is_right(claim) is right

    def test_a_plain_claim_is_right_when_as_many_moves_as_divisions_bring_the_spindle_round(self) -> None:
        for divisions in (3, 8, 20, 27, 28, 33, 49, 60):
            asked = case(Divisions(divisions))
            for circle in (15, 20, 21, 33, 49):
                for holes in range(circle):
                    turns = 40 // divisions
                    by_hand = DividingHead(40)
                    for _ in range(divisions):
                        by_hand.turn_crank(turns, holes, circle)
                    assert asked.is_right(Claim("plain", turns, holes, circle)) == (by_hand.spindle == 1)


def setup(
    method: MethodName,
    step: str,
    move: Move,
    second: SecondMove | None = None,
    gearing: Gearing | None = None,
    every: int = 1,
) -> Setup:
    return Setup(method, Even(Fraction(step)), NO_ERROR, move, second, gearing, every)


TRAIN = GearingClaim(48, 28, None, 2)


class TestTheClaimAsASetup:
    @pytest.mark.parametrize(
        ("work", "head", "claim", "same"),
        [
            (Divisions(28), Head(), Claim("plain", 1, 21, 49), setup("plain", "1/28", Move(1, 21, 49, 3))),
            (Divisions(8), Head(), Claim("plain", 5, 0, 49), setup("plain", "1/8", Move(5, 0, 49, 3))),
            (Divisions(28, 3), Head(), Claim("plain", 4, 14, 49),
             setup("plain", "3/28", Move(4, 14, 49, 3), every=3)),
            (Divisions(8), Head(), Claim("direct", 0, 3, 24), setup("direct", "1/8", Move(0, 3, 24, None))),
            # 40/51 = 12/18 + 2/17, in the order in which it is not solved.
            (Divisions(51), Head(), Claim("compound", 0, 2, 17, SecondClaim(12, 18)),
             setup("compound", "1/51", Move(0, 2, 17, 1), SecondMove(12, 18))),
            # 40 - 73 x 12/21 = -12/7 = -48/28, and 40 - 57 x 13/19 = 1.
            (Divisions(73), GEARED, Claim("differential", 0, 12, 21, gearing=TRAIN),
             setup("differential", "1/73", Move(0, 12, 21, 2), None, Gearing(48, 28, None, 2, "against"))),
            (Divisions(57), GEARED, Claim("differential", 0, 13, 19, gearing=GearingClaim(24, 24, None, 1)),
             setup("differential", "1/57", Move(0, 13, 19, 1), None, Gearing(24, 24, None, 1, "with"))),
            # The same circle on two plates: on the one that is mounted.
            (Divisions(20), Head(plates=((20, 21), (20, 19)), mounted_plate=2), Claim("plain", 2, 0, 20),
             setup("plain", "1/20", Move(2, 0, 20, 2))),
        ],
    )  # fmt: skip
    def test_is_itself_where_it_is_right(self, work: Work, head: Head, claim: Claim, same: Setup) -> None:
        asked = case(work, claim, head)
        assert asked.as_claimed() == same
        assert asked.right_setup() == same

    @pytest.mark.parametrize(
        ("work", "head", "claim"),
        [
            (Divisions(28), Head(), Claim("plain", 1, 20, 49)),
            (Divisions(28), Head(), Claim("plain", 1, 12, 28)),
            (Divisions(8), Head(), Claim("plain", 5)),
            (Divisions(8), Head(), Claim("plain", 5, 0, 22)),
            # As many spaces as the circle has, in either move, are whole turns.
            (Divisions(40), Head(), Claim("plain", 0, 49, 49)),
            (Divisions(20), Head(), Claim("compound", 1, 0, 17, SecondClaim(18, 18))),
            (Divisions(28), Head(), Claim("compound", 1, 21, 49, SecondClaim(0, 47))),
            (Divisions(1), Head(), Claim("direct", 1, 0, 24)),
            (Divisions(28), Head(), Claim("differential", 1, 21, 49)),
            (Divisions(28), Head(), Claim("nearest", circle=49)),
            (Divisions(9), TABLE, Claim("dial", 10)),
            (LIST, Head(), Claim("nearest", circle=49)),
        ],
    )
    def test_is_none_elsewhere(self, work: Work, head: Head, claim: Claim) -> None:
        assert case(work, claim, head).as_claimed() is None


class TestTheSetupShownBeside:
    @pytest.mark.parametrize(
        ("work", "head", "claim", "shown"),
        [
            # On the circle that was claimed, where that one serves.
            (Divisions(28), Head(), Claim("plain", 1, 20, 49), ("plain", 49)),
            (Divisions(28), Head(), Claim("plain", 1, 8, 21), ("plain", 21)),
            # It does not: the best by the same method.
            (Divisions(28), Head(), Claim("plain", 1, 8, 20), ("plain", 49)),
            # Direct indexing does 8 too, but a plain move was claimed: 40/8 is five turns on any circle.
            (Divisions(8), Head(), Claim("plain", 4), ("plain", 20)),
            # No plain move makes 51; the best of any method is compound.
            (Divisions(51), Head(), Claim("plain", 0, 39, 49), ("compound", 18)),
            # 127 is exact by none: the best there is, but by the circle claimed where that is in it.
            (Divisions(127), Head(), Claim("plain", 0, 6, 20), ("nearest", 47)),
            (Divisions(127), Head(), Claim("plain", 0, 15, 49), ("nearest", 49)),
            (Divisions(127), Head(), Claim("nearest", circle=49), ("nearest", 49)),
            # Nor do two moves make it.
            (Divisions(127), Head(), Claim("compound", 0, 1, 20, SecondClaim(1, 19)), ("nearest", 47)),
            # A third of a turn on 21, the sixth of the circles that make it.
            (Divisions(120), Head(), Claim("plain", 0, 6, 21), ("plain", 21)),
            (LIST, Head(), Claim("nearest", circle=21), ("plain", 21)),
            # Two circles make the same places in either order.
            (Divisions(127), Head(), Claim("nearest", circle=47, second=SecondClaim(0, 49)), ("nearest", 47)),
            (Divisions(127), Head(), Claim("nearest", circle=49, second=SecondClaim(0, 47)), ("nearest", 47)),
        ],
    )
    def test_is_the_nearest_to_the_claim(self, work: Work, head: Head, claim: Claim, shown: tuple[str, int]) -> None:
        setup = case(work, claim, head).right_setup()
        assert setup is not None
        assert setup.move is not None
        assert (setup.method, setup.move.circle) == shown

    @pytest.mark.parametrize("second", [SecondClaim(6, 18), SecondClaim(5, 15)], ids=str)
    def test_is_the_claim_itself_where_that_is_right(self, second: SecondClaim) -> None:
        # 40/57 = 7/19 + 1/3, and a third is had on 18 and on 15.
        shown = case(Divisions(57), Claim("compound", 0, 7, 19, second)).right_setup()
        assert shown is not None
        assert shown.second == SecondMove(second.holes, second.circle)

    def test_there_is_one_even_on_a_head_far_too_coarse(self) -> None:
        bare = Head(ratio=1, plates=((2,),), direct_circles=())
        setup = case(Divisions(1000), Claim("plain", 0, 1, 2), bare).right_setup()
        assert setup is not None
        assert setup.method == "nearest"

    def test_a_method_that_refuses_leaves_the_others(self) -> None:
        methods = [setup.method for setup in case(Divisions(51), Claim("direct", 0, 1, 24)).right_setups()]
        assert methods[0] == "compound"


class TestClaimsToCorrectTo:
    def test_those_on_the_circle_claimed_come_first(self) -> None:
        found = list(case(Divisions(28), Claim("plain", 1, 8, 21)).right_claims())
        assert found[0] == Claim("plain", 1, 9, 21)
        assert Claim("plain", 1, 21, 49) in found

    def test_on_a_dial_it_is_the_exact_reading(self) -> None:
        # A sixteenth of 90 turns is 5 5/8, and 5/8 of 4° is 2°30'.
        found = list(case(Divisions(16), Claim("dial", 5, reading=parse_angle("2.3")), TABLE).right_claims())
        assert set(found) == {Claim("dial", 5, reading=parse_angle("2.5"))}

    def test_each_is_right(self) -> None:
        for divisions in range(2, 130):
            for claim in (ANY, Claim("compound", 0, 1, 20, SecondClaim(1, 19)), Claim("direct", 0, 1, 24)):
                asked = case(Divisions(divisions), claim)
                for corrected in asked.right_claims():
                    assert asked.is_right(corrected), (divisions, corrected)

    def test_there_are_some_wherever_one_circle_serves(self) -> None:
        for divisions in range(2, 130):
            served = any(circle * 40 % divisions == 0 for plate in SET_I for circle in plate)
            if served:
                assert list(case(Divisions(divisions)).right_claims())

    def test_where_nothing_is_exact_there_are_none(self) -> None:
        assert list(case(Divisions(127)).right_claims()) == []
