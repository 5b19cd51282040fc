"""A pupil's claim for each slip: the slip is named first, and the claim without it is exact."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import TWELVE_GEARS, Dial, Head
from dividing.indexing.verifying import Claim, GearingClaim, SecondClaim, verify
from dividing.indexing.work import Arc, Divisions

GEARED = Head(change_gears=TWELVE_GEARS)
TABLE = Head(90, (), direct_circles=(), dial=Dial(Fraction(1, 21600), Fraction(1, 129600)))
TRAIN = GearingClaim(48, 28, None, 2)
# 48/24 x 48/24 = 72/24 x 64/48 = 4, and 40 - 66 x 12/18 = -4.
SHELF = Head(change_gears=(24, 28, 48, 64, 72))

# (slip, work, head, claim, what the explanation says with its figures, the claim without the slip)
MADE = [
    # 40/28 = 1 21/49.
    ("counted_the_pin_hole", Divisions(28), Head(), Claim("plain", 1, 20, 49),
     "You moved 20 spaces where 21 are wanted: the hole that the pin is in was counted as the first. It is not "
     "counted; the arms embrace 22 holes for 21 spaces.", Claim("plain", 1, 21, 49)),
    ("counted_the_pin_hole", Divisions(28), Head(), Claim("plain", 1, 22, 49),
     "22 is the number of holes between the arms, the pin's own hole included; the move is 21 spaces.",
     Claim("plain", 1, 21, 49)),
    ("whole_turns_forgotten", Divisions(28), Head(), Claim("plain", 0, 21, 49),
     "The part of a turn is right, but you have no whole turn where 1 turn belongs before it. Write the improper "
     "fraction as a mixed number and keep its whole part.", Claim("plain", 1, 21, 49)),
    # 40/(12/21) = 70, and 40 - 73 x 12/21 = -12/7 = -48/28.
    ("gears_left_off", Divisions(73), GEARED, Claim("plain", 0, 12, 21),
     "This crank move needs gears to the plate. With the plate at rest it makes 70 divisions; hang 48 on the "
     "spindle, 28 on the worm side and 2 idlers, so that the plate turns against the crank, and it makes 73 "
     "divisions.",
     Claim("differential", 0, 12, 21, gearing=TRAIN)),
    # 360/7 = 12 x 4 + 3 3/7 degrees; 3°26' is 2/7 of a minute more, 120 seconds over seven cuts.
    ("rounded_step_added_up", Divisions(7), TABLE, Claim("dial", 12, reading=parse_angle("3°26'")),
     'The step is rounded by 17.14"; added up over 7 cuts it closes 0°02\' off. Work every position from zero and '
     "round only what you set: k times the exact step, 12 turns and 3 3/7°.",
     Claim("dial", 12, reading=parse_angle("24/7"))),
    # 21/23 - 11/33 = 40/69.
    ("second_move_wrong_way", Divisions(69), Head(), Claim("compound", 0, 21, 23, SecondClaim(11, 33)),
     "Both moves have the right size, but the second has to go against the first: 11 spaces back on 33, with the sign "
     "-. Always make it in the same order, after the first.", Claim("compound", 0, 21, 23, SecondClaim(-11, 33))),
    ("second_move_wrong_way", Divisions(69), Head(), Claim("compound", 0, 11, 33, SecondClaim(-21, 23)),
     "The smaller part of a turn comes off the larger: first 21 spaces on 23, then 11 spaces back on 33. As you have "
     "it the work goes back.", Claim("compound", 0, 21, 23, SecondClaim(-11, 33))),
    ("idlers_off_by_one", Divisions(73), GEARED,
     Claim("differential", 0, 12, 21, gearing=GearingClaim(48, 28, None, 1)),
     "The gears are right, but with 1 idler the plate turns the wrong way. It must turn against the crank, which "
     "takes 2 here. Turn the crank and watch the plate before you cut.",
     Claim("differential", 0, 12, 21, gearing=TRAIN)),
    ("drivers_and_driven_swapped", Divisions(73), GEARED,
     Claim("differential", 0, 12, 21, gearing=GearingClaim(28, 48, None, 2)),
     "Drivers and driven are changed about. The spindle drives: 48 on the spindle, 28 on the worm side, a train of "
     "12/7, not 7/12.", Claim("differential", 0, 12, 21, gearing=TRAIN)),
    ("gear_used_twice", Divisions(66), SHELF,
     Claim("differential", 0, 12, 18, gearing=GearingClaim(48, 24, (48, 24), 1)),
     "The train is right in figures, but it uses the gear of 48 teeth more often than you own it. 64 on the spindle, "
     "72 and 24 on the stud, 48 on the worm side and 1 idler make the same 4.",
     Claim("differential", 0, 12, 18, gearing=GearingClaim(64, 48, (72, 24), 1))),
    ("circle_on_no_plate", Divisions(28), Head(), Claim("plain", 1, 3, 7),
     "The fraction is right, but no plate has a circle of 7 holes; take the same part of a turn as 21 on 49.",
     Claim("plain", 1, 21, 49)),
    # 28/40 = 14/20.
    ("fraction_upside_down", Divisions(28), Head(), Claim("plain", 0, 14, 20),
     "The fraction stands upside down. It is ratio over divisions, 40/28, not divisions over ratio: 1 3/7 turns.",
     Claim("plain", 1, 21, 49)),
    # 60/28 = 2 7/49.
    ("other_ratio", Divisions(28), Head(), Claim("plain", 2, 7, 49),
     "This move is right on a head of 60:1. Yours is 40:1: 40 crank turns make one turn of the spindle.",
     Claim("plain", 1, 21, 49)),
    # 15.30/9 = 1.7 = 1 14/20, and 15.5/9 = 1 13/18.
    ("minutes_read_as_decimals", Arc(parse_angle("15°30'")), Head(), Claim("plain", 1, 14, 20),
     "You took 15°30' for 15.30°. A degree has 60 minutes: 15°30' is 15 1/2°, and 0.01° is 36 seconds.",
     Claim("plain", 1, 13, 18)),
    # 40/27 = 1 13/27.
    ("neighbouring_count", Divisions(28), Head(), Claim("plain", 1, 13, 27),
     "This move makes 27 divisions, not 28. 28 divisions have 28 marks and 28 spaces round the work; count the "
     "spaces.", Claim("plain", 1, 21, 49)),
    ("other_circle", Divisions(28), Head(), Claim("plain", 1, 21, 47),
     "21 spaces would be right on the circle of 49; on 47 the same count is another part of a turn. Keep the spaces "
     "and the circle together: 21/49, not 21/47.", Claim("plain", 1, 21, 49)),
]


@pytest.mark.parametrize(("slip", "work", "head", "claim", "explanation", "right"), MADE, ids=[row[0] for row in MADE])
def test_the_slip_is_named_first_and_without_it_the_claim_is_exact(
    slip: str, work: Divisions | Arc, head: Head, claim: Claim, explanation: str, right: Claim
) -> None:
    first = verify(work, head, claim).likely_slips[0]
    assert (first.slip, first.explanation, first.corrected) == (slip, explanation, right)
    assert verify(work, head, first.corrected).verdict == "exact"


@pytest.mark.parametrize(
    "claim", [Claim("plain", 1, 21, 49), Claim("plain", 1, 5, 49), Claim("nearest", circle=49)], ids=str
)
def test_a_right_claim_and_one_that_no_slip_explains_are_given_none(claim: Claim) -> None:
    assert verify(Divisions(28), Head(), claim).likely_slips == ()
