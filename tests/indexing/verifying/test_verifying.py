"""A claim held against its work: verdict, what it makes, its errors, and the setup beside it."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import TWELVE_GEARS, Head
from dividing.indexing.setup import NO_ERROR, MethodName, Move, Tolerance
from dividing.indexing.verifying import Claim, GearingClaim, SecondClaim, as_set, verify
from dividing.indexing.work import Angles, Arc, Divisions, Work
from tests.indexing.refusals import faults_of
from tests.second.errors import on_finished_work
from tests.second.holes import nearest_holes

GEARED = Head(change_gears=TWELVE_GEARS)
FIXTURE = Head(ratio=1, plates=(), direct_circles=(36,))
LIST = Angles((Angle(Fraction(0)), Angle(Fraction(1, 7))))
MINUTE = Fraction(1, 21600)


class TestAMethodThatTheWorkForbids:
    BARRED: Mapping[MethodName, str] = {"direct": "The worm stays in mesh.", "compound": "The plate is in use."}

    @pytest.mark.parametrize(
        ("work", "claim", "why"),
        [
            (Divisions(3), Claim("direct", 0, 8, 24), ["The worm stays in mesh."]),
            (Divisions(3), Claim("plain", 13, 6, 18), []),
            (Divisions(69), Claim("compound", 0, 21, 23, SecondClaim(-11, 33)), ["The plate is in use."]),
            # The nearest hole on two circles takes the same second move.
            (Divisions(73), Claim("nearest", 0, 0, 47, SecondClaim(0, 49)), ["The plate is in use."]),
            (
                Divisions(3),
                Claim("direct", 0, 12, 36),
                ["The worm stays in mesh.", "The direct plate has no circle of 36 holes."],
            ),
        ],
    )
    def test_cannot_be_set_and_the_reason_comes_first(self, work: Work, claim: Claim, why: list[str]) -> None:
        found = verify(work, Head(), claim, barred=self.BARRED)
        assert found.why == tuple(why)
        assert (found.verdict == "cannot_be_set") == bool(why)

    def test_is_not_gone_round_by_the_nearest_hole_of_the_direct_plate(self) -> None:
        found = verify(Divisions(7), FIXTURE, Claim("nearest", circle=36), barred=self.BARRED)
        assert (found.verdict, found.why, found.right) == ("cannot_be_set", ("The worm stays in mesh.",), None)

    def test_is_not_what_is_shown_beside_it(self) -> None:
        # 40/3 = 13 1/3 turns, 6 of 18.
        found = verify(Divisions(3), Head(), Claim("direct", 0, 8, 24), barred=self.BARRED)
        assert found.right is not None
        assert (found.right.method, found.right.move) == ("plain", Move(13, 6, 18, 1))

    def test_corrects_no_slip(self) -> None:
        # Three of 24 make eight parts; two of 24 would make twelve, but not on this work.
        claim = Claim("direct", 0, 3, 24)
        assert [slip.slip for slip in verify(Divisions(12), Head(), claim).likely_slips] == ["counted_the_pin_hole"]
        assert verify(Divisions(12), Head(), claim, barred=self.BARRED).likely_slips == ()


class TestTheVerdict:
    @pytest.mark.parametrize(
        ("work", "head", "claim", "verdict", "divisions", "why"),
        [
            (Divisions(28), Head(), Claim("plain", 1, 21, 49), "exact", "28", []),
            (Divisions(28), Head(), Claim("plain", 1, 20, 49), "off", "1960/69", []),
            (Divisions(28), Head(), Claim("plain", 0, 0, 49), "off", None, []),
            (
                Divisions(28),
                Head(),
                Claim("plain", 1, 3, 7),
                "cannot_be_set",
                "28",
                ["No plate of this head has a circle of 7 holes."],
            ),
            (Divisions(69), Head(), Claim("compound", 0, 21, 23, SecondClaim(-11, 33)), "exact", "69", []),
            (Divisions(8), Head(), Claim("direct", 0, 3, 24), "exact", "8", []),
            # 5 plate turns with the crank at 5:1: the spindle never moves.
            (
                Divisions(73),
                Head(ratio=5, change_gears=(24, 120, 30)),
                Claim("differential", 0, 12, 21, gearing=GearingClaim(120, 24, None, 1)),
                "cannot_be_set",
                None,
                ["With this train the crank would not turn the spindle at all."],
            ),
            (Divisions(127), Head(), Claim("nearest", circle=49), "off", None, []),
            (LIST, Head(), Claim("nearest", circle=21), "exact", None, []),
        ],
    )
    def test_by_hand(
        self, work: Work, head: Head, claim: Claim, verdict: str, divisions: str | None, why: list[str]
    ) -> None:
        found = verify(work, head, claim)
        assert found.why == tuple(why)
        assert found.verdict == verdict
        assert found.divisions == (None if divisions is None else Fraction(divisions))

    @pytest.mark.parametrize(
        ("tolerance", "verdict"),
        [
            # 127 on 49: the worst lies 63/127 of 1/1960 turn off, 5.46 minutes.
            (Tolerance(angle=5 * MINUTE), "off"),
            (Tolerance(angle=Fraction(63, 127 * 1960)), "within_tolerance"),
            (Tolerance(angle=6 * MINUTE), "within_tolerance"),
            (Tolerance(diameter=Fraction(100)), "off"),
            (None, "off"),
        ],
    )
    def test_a_tolerance_is_kept_up_to_its_bound(self, tolerance: Tolerance | None, verdict: str) -> None:
        assert verify(Divisions(127), Head(), Claim("nearest", circle=49), tolerance=tolerance).verdict == verdict

    def test_no_move_makes_an_angle_in_radians_exactly(self) -> None:
        angle = parse_angle("0.35 rad")
        found = verify(Arc(angle, 3), Head(), Claim("plain", 2, 11, 49))
        assert found.verdict == "off"
        assert found.error is not None
        assert found.error.step is None


class TestTheErrors:
    @pytest.mark.parametrize(
        ("head", "claim", "places"),
        [
            (Head(), Claim("nearest", circle=49), 1_960),
            (Head(), Claim("nearest", circle=47, second=SecondClaim(0, 49)), 92_120),
            (Head(), Claim("nearest", circle=15, second=SecondClaim(0, 20)), 2_400),  # lcm 60
            # On a fixture the pin is in the direct plate, and the spindle has as many places as that has holes.
            (FIXTURE, Claim("nearest", circle=36), 36),
            (Head(plates=(), direct_circles=(36,)), Claim("nearest", circle=36), 36),
            # With plates the circle is looked for on them, though the direct plate has one of 24 too.
            (Head(), Claim("nearest", circle=24), 960),
        ],
    )
    def test_of_the_nearest_hole_are_those_of_all_its_places(self, head: Head, claim: Claim, places: int) -> None:
        ideal = [Fraction(cut, 127) for cut in range(127)]
        slow = on_finished_work(nearest_holes(ideal, places), ideal, closes=True)
        error = verify(Divisions(127), head, claim).error
        assert error is not None
        assert (error.worst, error.single_pitch, error.total_pitch) == slow[:3]

    def test_of_one_move_add_up(self) -> None:
        # 1/28 wanted, 69/1960 made: 1/1960 short.
        error = verify(Divisions(28), Head(), Claim("plain", 1, 20, 49)).error
        assert error is not None
        assert (error.step, error.closing) == (Fraction(-1, 1960), Fraction(-28, 1960))

    def test_of_a_right_claim_are_none(self) -> None:
        assert verify(Divisions(28), Head(), Claim("plain", 1, 21, 49)).error is NO_ERROR


def test_a_list_of_angles_is_checked_by_its_circle_only() -> None:
    sentence = 'A list of angles has no one move to check; claim a circle with the method "nearest".'
    assert faults_of(lambda: verify(LIST, Head(), Claim("plain", 1, 21, 49))) == [(("claim", "method"), sentence)]
    found = verify(LIST, Head(), Claim("nearest", circle=20))
    assert (found.verdict, found.likely_slips, found.step) == ("off", (), None)


def test_the_right_setup_stands_beside_the_claim() -> None:
    found = verify(Divisions(73), GEARED, Claim("plain", 0, 12, 21))
    assert found.right is not None
    assert found.right.exact
    assert [slip.slip for slip in found.likely_slips][:1] == ["gears_left_off"]


class TestTheWorkAsItIsSet:
    # 60 - 127/3 x 4/3 = 32/9 = 64/24 x 32/24: three divisions of 127 at a time.
    THREE = Claim("differential", 1, 6, 18, gearing=GearingClaim(64, 24, (32, 24), 0))

    def test_a_geared_plate_may_move_several_divisions_at_a_time(self) -> None:
        assert as_set(Divisions(127), Head(60), self.THREE) == Divisions(127, 3)

    @pytest.mark.parametrize(
        ("work", "head", "claim"),
        [
            (Divisions(127, 3), Head(60), THREE),
            (Divisions(127, fixed=True), Head(60), THREE),
            (Divisions(126), Head(60), THREE),  # 126 x 3/127 is no whole number
            (Arc(Angle(Fraction(1, 127)), 127), Head(60), THREE),
            # 40 - 73 x 12/21 = -12/7 = -48/28: one division at a time.
            (Divisions(73), Head(), Claim("differential", 0, 12, 21, gearing=GearingClaim(48, 28, None, 2))),
            # 30/(40 - 10) = 1 turn at a time.
            (Divisions(3), Head(), Claim("differential", 30, gearing=GearingClaim(100, 10, None, 1))),
            # 15/(40 - 10) = 1/2, two of four, and misses the odd ones.
            (Divisions(4), Head(), Claim("differential", 15, gearing=GearingClaim(100, 10, None, 1))),
            (Divisions(28), Head(), Claim("plain", 4, 14, 49)),
            (Divisions(28), Head(), Claim("differential", 4, 14, 49)),
            # 40 - 40: the crank turns nothing.
            (Divisions(28), Head(), Claim("differential", 1, gearing=GearingClaim(400, 10, None, 1))),
        ],
    )
    def test_otherwise_it_stays(self, work: Work, head: Head, claim: Claim) -> None:
        assert as_set(work, head, claim) is work
