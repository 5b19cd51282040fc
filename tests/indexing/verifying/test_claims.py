"""A claim can be wrong and absurd, but it can be read; what cannot even be read is refused, each field by its name."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle
from dividing.indexing.faults import Path
from dividing.indexing.head import TWELVE_GEARS, Dial, Head, Idlers
from dividing.indexing.setup import Gearing
from dividing.indexing.solving import solve
from dividing.indexing.verifying.claims import (
    Claim,
    GearingClaim,
    SecondClaim,
    claim_of,
    gearing_claim,
    with_turns,
)
from dividing.indexing.work import Divisions
from tests.indexing.refusals import faults_of
from tests.second.head import Train

TABLE = Head(90, (), direct_circles=(), dial=Dial(Fraction(1, 21600), Fraction(1, 129600)))
GEARED = Head(change_gears=TWELVE_GEARS)
CIRCLE = (("circle",), "Say on which circle the spaces are counted.")
TRAIN = GearingClaim(48, 28)


def angle(turns: str) -> Angle:
    return Angle(Fraction(turns))


class TestTheCrank:
    @pytest.mark.parametrize(
        ("claim", "turns"),
        [
            (Claim("plain", 1, 21, 49), "10/7"),
            (Claim("plain", 0, 12, 21), "4/7"),
            (Claim("plain", 3), "3"),
            (Claim("plain", 0, 50, 49), "50/49"),  # more spaces than the circle has: absurd, but it can be read
            (Claim("direct", 0, 3, 24), "1/8"),
            (Claim("compound", 0, 10, 15, SecondClaim(-2, 17)), "2/3"),  # the first move alone
            (Claim("dial", 12), "12"),
        ],
    )
    def test_counts_whole_turns_and_spaces(self, claim: Claim, turns: str) -> None:
        assert claim.crank == Fraction(turns)

    def test_other_whole_turns_leave_the_rest(self) -> None:
        assert with_turns(Claim("plain", 0, 21, 49), 1) == Claim("plain", 1, 21, 49)


class TestWhatCannotBeRead:
    @pytest.mark.parametrize(
        ("make", "faults"),
        [
            (lambda: Claim("plain", -1, 1, 20), [(("turns",), "Whole turns lie between 0 and 1,000,000.")]),
            (lambda: Claim("plain", 1_000_001), [(("turns",), "Whole turns lie between 0 and 1,000,000.")]),
            (lambda: Claim("plain", 0, -1, 20), [(("holes",), "Spaces lie between 0 and 1,000,000.")]),
            (lambda: Claim("plain", 0, 1, 0), [(("circle",), "The holes of a circle lie between 1 and 10,000.")]),
            (lambda: Claim("plain", 0, 1, 10_001), [(("circle",), "The holes of a circle lie between 1 and 10,000.")]),
            (lambda: Claim("plain", 0, 1), [CIRCLE]),
            (lambda: Claim("differential", 0, 1), [CIRCLE]),
            (lambda: Claim("direct"), [CIRCLE]),
            (lambda: Claim("nearest"), [CIRCLE]),
            (
                lambda: Claim("compound"),
                [CIRCLE, (("second",), "Compound indexing has a second move; give its holes and circle.")],
            ),
            (
                lambda: Claim("plain", 0, 1, 20, SecondClaim(1, 19)),
                [(("second",), "Only compound indexing has a second move; leave it out.")],
            ),
            (
                lambda: Claim("compound", 0, 1, 20, SecondClaim(-1_000_001, 0)),
                [
                    (("second", "holes"), "Spaces of the second move lie between -1,000,000 and 1,000,000."),
                    (("second", "circle"), "The holes of a circle lie between 1 and 10,000."),
                ],
            ),
            (
                lambda: Claim("plain", 0, 1, 20, gearing=TRAIN),
                [(("gearing",), "Only differential indexing has gears to the plate; leave them out.")],
            ),
            (
                lambda: Claim("differential", 0, 1, 20, gearing=GearingClaim(0, 1001, (0, 1001), 11)),
                [
                    (("gearing", "spindle"), "The teeth of a gear lie between 1 and 1,000."),
                    (("gearing", "worm"), "The teeth of a gear lie between 1 and 1,000."),
                    (("gearing", "stud", 0), "The teeth of a gear lie between 1 and 1,000."),
                    (("gearing", "stud", 1), "The teeth of a gear lie between 1 and 1,000."),
                    (("gearing", "idlers"), "Idlers lie between 0 and 10."),
                ],
            ),
            (
                lambda: Claim("differential", 0, 1, 20, gearing=GearingClaim(24, 48, None, -1)),
                [(("gearing", "idlers"), "Idlers lie between 0 and 10.")],
            ),
            (
                lambda: Claim("plain", 1, reading=angle("1/100")),
                [(("reading",), "Only a dial has a reading; leave it out.")],
            ),
            (
                lambda: Claim("plain", 1, divisions=Fraction(5)),
                [(("reading",), "Only a dial has a reading; leave it out.")],
            ),
            (
                lambda: Claim("dial", 1, reading=angle("0"), divisions=Fraction(0)),
                [(("reading",), "Give the dial's reading either as an angle or in divisions, not both.")],
            ),
            (
                lambda: Claim("dial", 1, reading=angle("-1/1000000")),
                [(("reading",), "A dial's reading lies between 0° and 360°.")],
            ),
            (lambda: Claim("dial", 1, reading=angle("1001/1000")), [
                (("reading",), "A dial's reading lies between 0° and 360°.")
            ]),
            (
                lambda: Claim("dial", 1, divisions=Fraction(-1, 2)),
                [(("divisions",), "A dial's divisions lie between 0 and 1,000,000.")],
            ),
            (
                lambda: Claim("dial", 1, divisions=Fraction(1_000_001)),
                [(("divisions",), "A dial's divisions lie between 0 and 1,000,000.")],
            ),
        ],
    )  # fmt: skip
    def test_is_refused_with_what_to_change(self, make: Callable[[], object], faults: list[tuple[Path, str]]) -> None:
        assert faults_of(make) == faults

    @pytest.mark.parametrize(
        "make",
        [
            lambda: Claim("plain", 1_000_000, 1_000_000, 10_000),
            lambda: Claim("plain"),
            lambda: Claim("differential", 3, gearing=TRAIN),
            lambda: Claim("differential", 0, 1, 20, gearing=GearingClaim(1, 1000, (1, 1000), 10)),
            lambda: Claim("compound", 0, 0, 1, SecondClaim(-1_000_000, 10_000)),
            lambda: Claim("nearest", circle=49, second=SecondClaim(0, 47)),
            lambda: Claim("dial", 0, reading=angle("1")),
            lambda: Claim("dial", 0, divisions=Fraction(1_000_000)),
            lambda: Claim("dial"),
            lambda: Claim("dial", 1, 5),
        ],
    )
    def test_what_lies_on_its_bound_can_be_read(self, make: Callable[[], Claim]) -> None:
        assert make().crank >= 0


class TestTheTrainClaimed:
    @pytest.mark.parametrize(
        ("train", "size", "gears"),
        [
            (GearingClaim(48, 28), "12/7", (48, 28)),
            (GearingClaim(72, 48, (64, 24)), "4", (72, 64, 24, 48)),
            (GearingClaim(24, 24, (24, 24)), "1", (24, 24, 24, 24)),
        ],
    )
    def test_is_drivers_over_driven(self, train: GearingClaim, size: str, gears: tuple[int, ...]) -> None:
        assert train.train == Fraction(size)
        assert train.gears == gears

    @pytest.mark.parametrize("usual", [True, False], ids=["usual construction", "the other construction"])
    @pytest.mark.parametrize("stud", [None, (64, 24)])
    def test_turns_the_plate_as_the_teeth_push_it_round(self, stud: tuple[int, int] | None, usual: bool) -> None:
        head = Head(idlers=Idlers() if usual else Idlers(2, 1, 1, 0))
        for idlers in range(11):
            claimed = GearingClaim(72, 48, stud, idlers)
            hung = Train(72, 48, stud, [30] * idlers, even_meshes_with=usual)
            assert claimed.motion(head) == hung.plate_per_spindle, idlers

    def test_of_a_setup_is_that_setups(self) -> None:
        assert gearing_claim(Gearing(72, 48, (64, 24), 1, "against")) == GearingClaim(72, 48, (64, 24), 1)


class TestTheClaimOfASetup:
    @pytest.mark.parametrize(
        ("head", "divisions", "claim"),
        [
            (Head(), 8, Claim("direct", 0, 3, 24)),
            (Head(), 28, Claim("plain", 1, 21, 49)),
            (Head(), 20, Claim("plain", 2, 0, 20)),
            # 40/51 = 12/18 + 2/17.
            (Head(), 51, Claim("compound", 0, 12, 18, SecondClaim(2, 17))),
            # 40 - 73 x 10/18 = -5/9 = -40/72.
            (GEARED, 73, Claim("differential", 0, 10, 18, gearing=GearingClaim(40, 72, None, 2))),
            # The spindle of 90:1 makes a seventh of a turn in 12 6/7 turns: 12 turns and 6/7 of 4 degrees.
            (TABLE, 7, Claim("dial", 12, reading=Angle(Fraction(6, 7 * 90)))),
            # Two circles for the nearest hole, each place a move of its own.
            (Head(), 127, Claim("nearest", 0, 0, 47, SecondClaim(0, 49))),
        ],
    )
    def test_says_what_the_setup_says(self, head: Head, divisions: int, claim: Claim) -> None:
        work = Divisions(divisions)
        assert claim_of(solve(work, head).setups[0], work.step, head.ratio) == claim

    def test_of_a_dial_without_a_step_stands_at_zero(self) -> None:
        setup = solve(Divisions(7), TABLE).setups[0]
        assert claim_of(setup, None, 90) == Claim("dial", 0, reading=Angle(Fraction(0)))
