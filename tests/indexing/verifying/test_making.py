"""What a claim really makes, held to a head turned by hand, and each reason why it cannot be set."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle
from dividing.indexing.head import SET_ONE, TWELVE_GEARS, Dial, Head
from dividing.indexing.verifying.claims import Claim, GearingClaim, SecondClaim
from dividing.indexing.verifying.making import makes, why_not
from tests.second.head import DividingHead, Train

GEARED = Head(change_gears=TWELVE_GEARS)
IN_DEGREES = Head(90, (), direct_circles=(), dial=Dial(Fraction(1, 21600)))
IN_DIVISIONS = Head(90, (), direct_circles=(), dial=Dial(divisions=100))
FIXTURE = Head(ratio=1, plates=(), direct_circles=(36,))


def geared(spindle: int, worm: int, stud: tuple[int, int] | None = None, idlers: int = 1) -> Claim:
    return Claim("differential", 0, 12, 21, gearing=GearingClaim(spindle, worm, stud, idlers))


class TestWhatItMakes:
    @pytest.mark.parametrize(
        ("claim", "head", "step"),
        [
            (Claim("plain", 1, 20, 49), Head(), "69/1960"),
            (Claim("plain", 0, 0, 49), Head(), "0"),
            (Claim("direct", 0, 5, 24), Head(), "5/24"),
            (Claim("compound", 0, 21, 23, SecondClaim(-11, 33)), Head(), "1/69"),
            (Claim("compound", 0, 21, 23, SecondClaim(11, 33)), Head(), "43/1380"),  # 21/23 + 1/3 = 86/69
            # 40 + 12/7 = 292/7, and 12/21 of it goes 73 times round.
            (geared(48, 28, idlers=2), GEARED, "1/73"),
            (geared(48, 28, idlers=1), GEARED, "1/67"),  # 40 - 12/7 = 268/7
            (Claim("differential", 0, 12, 21), GEARED, "1/70"),
            (Claim("dial", 12, reading=Angle(Fraction(1, 105))), IN_DEGREES, "1/7"),
            (Claim("dial", 12, divisions=Fraction(40)), IN_DIVISIONS, "31/225"),  # 12.4 of 90 turns
            # No divisions to read on a head without a dial: the turns alone are left.
            (Claim("dial", 12, divisions=Fraction(40)), Head(), "3/10"),
            (Claim("dial", 3), IN_DEGREES, "1/30"),
        ],
    )
    def test_by_hand(self, claim: Claim, head: Head, step: str) -> None:
        assert makes(claim, head) == Fraction(step)

    def test_the_nearest_hole_is_no_one_move(self) -> None:
        assert makes(Claim("nearest", circle=49), Head()) is None

    def test_a_train_that_locks_the_spindle_makes_nothing(self) -> None:
        # 40 plate turns a spindle turn with the crank: the pin never passes a hole.
        assert makes(geared(1000, 25), Head()) is None

    def claims(self) -> Iterator[Claim]:
        for turns in (0, 1, 3):
            for holes, circle in ((0, 20), (7, 20), (12, 21), (48, 49), (30, 20)):
                yield Claim("plain", turns, holes, circle)
                yield Claim("direct", turns, holes, circle)
                for second in (SecondClaim(2, 17), SecondClaim(-11, 33), SecondClaim(0, 16)):
                    yield Claim("compound", turns, holes, circle, second)
                for stud in (None, (64, 24)):
                    for idlers in range(4):
                        train = GearingClaim(72, 48, stud, idlers)
                        yield Claim("differential", turns, holes, circle, gearing=train)

    @pytest.mark.parametrize("ratio", [5, 40, 90])
    def test_what_the_spindle_does_when_the_claim_is_followed(self, ratio: int) -> None:
        for claim in self.claims():
            gearing = claim.gearing
            train = gearing and Train(gearing.spindle, gearing.worm, gearing.stud, [30] * gearing.idlers)
            head = DividingHead(ratio, train or None)
            assert claim.circle is not None
            if claim.method == "direct":
                head.turn_direct(claim.turns * claim.circle + claim.holes, claim.circle)
            else:
                head.turn_crank(claim.turns, claim.holes, claim.circle)
            if claim.second:
                head.turn_plate_and_crank(claim.second.holes, claim.second.circle)
            assert makes(claim, Head(ratio=ratio)) == head.spindle, claim

    def test_what_the_table_does_when_the_dial_is_set(self) -> None:
        for turns in (0, 1, 12):
            for minutes in (0, 1, 30, 239):
                table = DividingHead(90)
                table.turn_to_dial(turns, Fraction(minutes, 60))
                told = Claim("dial", turns, reading=Angle(Fraction(minutes, 21600)))
                assert makes(told, IN_DEGREES) == table.spindle
            for lines in (0, 1, 99):
                table = DividingHead(90)
                table.turn_to_dial(turns, Fraction(lines), 100)
                assert makes(Claim("dial", turns, divisions=Fraction(lines)), IN_DIVISIONS) == table.spindle


class TestWhyItCannotBeSet:
    @pytest.mark.parametrize(
        ("claim", "head", "reasons"),
        [
            (Claim("dial", 3), Head(), ["This head has no dial."]),
            (
                Claim("dial", 3, divisions=Fraction(4)),
                IN_DEGREES,
                ["The dial of this head reads in degrees, not in plain divisions."],
            ),
            (
                Claim("dial", 3, reading=Angle(Fraction(1, 360))),
                IN_DIVISIONS,
                ["The dial of this head has plain divisions, no degrees."],
            ),
            # One turn of the dial is 4 degrees, or 100 divisions.
            (
                Claim("dial", 3, reading=Angle(Fraction(4, 360))),
                IN_DEGREES,
                ["The reading is a whole turn of the dial or more; one turn is 4°."],
            ),
            (
                Claim("dial", 3, divisions=Fraction(100)),
                IN_DIVISIONS,
                ["The reading is a whole turn of the dial or more; one turn is 100 divisions."],
            ),
            (Claim("direct", 0, 3, 24), IN_DEGREES, ["This head has no direct plate."]),
            (Claim("direct", 0, 3, 36), Head(), ["The direct plate has no circle of 36 holes."]),
            (Claim("direct", 0, 1, 1), Head(), ["The direct plate has no circle of 1 hole."]),
            (Claim("plain", 0, 1, 1), Head(), ["No plate of this head has a circle of 1 hole."]),
            (Claim("plain", 1, 3, 20), IN_DEGREES, ["This head has no index plates."]),
            (Claim("nearest", circle=35), FIXTURE, ["This head has no index plates."]),
            (Claim("nearest", circle=36), Head(), ["No plate of this head has a circle of 36 holes."]),
            (Claim("plain", 0, 12, 22), Head(), ["No plate of this head has a circle of 22 holes."]),
            (
                Claim("compound", 0, 12, 22, SecondClaim(1, 24)),
                Head(),
                [
                    "No plate of this head has a circle of 22 holes.",
                    "No plate of this head has a circle of 24 holes.",
                ],
            ),
            (
                Claim("compound", 0, 12, 20, SecondClaim(1, 20)),
                Head(),
                ["Both moves are on the same circle, which is plain indexing."],
            ),
            (
                Claim("compound", 0, 12, 20, SecondClaim(1, 21)),
                Head(),
                ["Circles 20 and 21 are not on one plate, so plate and pin cannot use both."],
            ),
            (
                Claim("compound", 0, 12, 20, SecondClaim(1, 19)),
                Head(stop_circles=(20,)),
                ["The stop pin does not reach the circle of 19."],
            ),
            (geared(47, 28), GEARED, ["You own no change gear of 47 teeth."]),
            (geared(48, 48), GEARED, ["The gear of 48 teeth is used twice and you own 1."]),
            (geared(24, 24, (24, 48)), GEARED, ["The gear of 24 teeth is used 3 times and you own 2."]),
            (
                geared(47, 48, (48, 29)),
                GEARED,
                [
                    "You own no change gear of 47 teeth.",
                    "The gear of 48 teeth is used twice and you own 1.",
                    "You own no change gear of 29 teeth.",
                ],
            ),
            (
                geared(48, 28, idlers=2),
                Head(change_gears=(28, 48, 32)),
                ["The train with its 2 idlers takes more gears than the 3 you own."],
            ),
            (
                geared(48, 28, idlers=1),
                Head(change_gears=(28, 48)),
                ["The train with its 1 idler takes more gears than the 2 you own."],
            ),
            # 100 x 86 over 24 x 24 is nearly 15.
            (
                geared(100, 24, (86, 24)),
                GEARED,
                ["The plate would turn more than 6 times per spindle turn."],
            ),
            # At 5:1 a plate that makes 5 turns with the crank leaves it nothing to turn.
            (
                geared(120, 24),
                Head(ratio=5, change_gears=(24, 120, 30)),
                ["With this train the crank would not turn the spindle at all."],
            ),
            (
                Claim("differential", 0, 12, 22, gearing=GearingClaim(47, 28)),
                GEARED,
                [
                    "No plate of this head has a circle of 22 holes.",
                    "You own no change gear of 47 teeth.",
                ],
            ),
        ],
    )
    def test_each_reason_is_told(self, claim: Claim, head: Head, reasons: list[str]) -> None:
        assert why_not(claim, head) == reasons

    @pytest.mark.parametrize(
        ("claim", "head"),
        [
            (Claim("plain", 1, 21, 49), Head()),
            (Claim("plain", 3), Head()),
            (Claim("plain", 3, 0, 22), Head()),  # whole turns: any circle serves, even one that is not there
            (Claim("direct", 0, 3, 24), Head()),
            (Claim("nearest", circle=36), FIXTURE),
            (Claim("nearest", circle=49, second=SecondClaim(0, 47)), Head()),
            (Claim("compound", 0, 21, 23, SecondClaim(-11, 33)), Head()),
            (Claim("compound", 0, 12, 20, SecondClaim(1, 19)), Head(stop_circles=(19,))),
            (geared(48, 28, idlers=2), GEARED),
            (geared(24, 24), GEARED),
            # 86 x 40 over 24 x 24 is 5.97 and 72 x 48 over 24 x 24 just the six turns allowed.
            (geared(86, 24, (40, 24)), GEARED),
            (geared(72, 24, (48, 24)), GEARED),
            (Claim("dial", 3, reading=Angle(Fraction(4, 360) - Fraction(1, 10**9))), IN_DEGREES),
            (Claim("dial", 3, divisions=Fraction(9999, 100)), IN_DIVISIONS),
            (Claim("dial", 3, reading=Angle(Fraction(0))), IN_DIVISIONS),
            (Claim("dial", 3), IN_DEGREES),
        ],
        ids=str,
    )
    def test_nothing_is_said_where_it_can(self, claim: Claim, head: Head) -> None:
        assert why_not(claim, head) == []

    def test_of_all_circles_of_the_head_only_those_of_one_plate_go_together(self) -> None:
        circles = [circle for face in SET_ONE for circle in face]
        for first in circles:
            for second in circles:
                together = any(first in face and second in face for face in SET_ONE) and first != second
                claim = Claim("compound", 0, 1, first, SecondClaim(1, second))
                assert (why_not(claim, Head()) == []) == together
