"""The lead of an answer: figures that agree with one another, and what the operator is told."""

from __future__ import annotations

from fractions import Fraction
from math import atan, degrees, pi
from typing import Any

import pytest

from dividing.indexing.head import TWELVE_GEARS, Head, Screw
from dividing.parts.lead_block import HELIX_REASON, lead_block, lead_cautions

METRIC = Head(change_gears=TWELVE_GEARS, screw=Screw(Fraction(5), "mm"))
INCHES = Head(change_gears=TWELVE_GEARS, screw=Screw(Fraction(1, 4), "in"))
HAND = (
    "Turn the crank by hand and watch the table and the work before cutting: if the helix would not be right-hand, "
    "add or take away one idler. The size of an idler changes nothing but the hand."
)


def ratio_of(gearing: dict[str, Any]) -> Fraction:
    first, second = gearing["first_stud"] or 1, gearing["second_stud"] or 1
    return Fraction(gearing["worm"] * second, first * gearing["screw"])


@pytest.mark.parametrize("head", [METRIC, INCHES], ids=["metric screw", "inch screw"])
@pytest.mark.parametrize("unit", ["mm", "in"])
@pytest.mark.parametrize("lead", [Fraction(3), Fraction(21, 2), Fraction(144), 728.2909, 1999.5])
def test_gears_screw_and_ratio_give_the_lead_that_is_stated(head: Head, unit: str, lead: float) -> None:
    block: Any = lead_block(lead, 40, unit, "right", head)
    assert head.screw is not None
    machine = head.ratio * head.screw.millimetres / (Fraction("25.4") if unit == "in" else 1)
    assert block["lead_of_machine"] == pytest.approx(float(machine))
    for found in [block, *block["others"], *({**block, "gearing": gears} for gears in block["orders"])]:
        achieved = float(ratio_of(found["gearing"]) * machine)
        assert found["achieved"] == pytest.approx(achieved)
        assert found["error"] == pytest.approx(achieved - float(lead), abs=1e-9)
        assert found["error_percent"] == pytest.approx((achieved / float(lead) - 1) * 100, abs=1e-9)
        assert found["helix_angle"] == pytest.approx(degrees(atan(pi * 40 / achieved)))
    errors = [abs(found["error"]) for found in (block, *block["others"])]
    assert errors == sorted(errors)


def test_an_exact_lead_has_no_error() -> None:
    block: Any = lead_block(Fraction(144), 40, "mm", "right", METRIC)
    assert (block["error"], block["angle_error"]) == (0, 0)


@pytest.mark.parametrize("hand", ["right", "left"])
def test_the_idlers_follow_the_hand(hand: str) -> None:
    block: Any = lead_block(Fraction(200), 40, "mm", hand, METRIC)
    assert block["gearing"]["idlers"] == (1 if hand == "right" else 2)
    assert block["gearing"]["first_stud"] is None


class TestWhatIsMissing:
    @pytest.mark.parametrize(
        ("head", "sentence"),
        [
            (None, "Give the table screw (head.screw) and the change gears to have the lead gearing worked out."),
            (Head(), "Give the table screw (head.screw) and the change gears to have the lead gearing worked out."),
            (
                Head(screw=Screw(Fraction(5), "mm")),
                "Give the change gears that you own (head.change_gears) to have the lead gearing worked out.",
            ),
            (
                Head(screw=Screw(Fraction(5), "mm"), change_gears=(24, 48)),
                "Too few change gears for a right-hand helix: a train takes two or four, and its idlers.",
            ),
        ],
    )
    def test_it_is_asked_for(self, head: Head | None, sentence: str) -> None:
        block = lead_block(Fraction(144), 40, "mm", "right", head)
        assert block["gearing"] is None
        assert lead_cautions(block, 20, "right", head) == (HELIX_REASON, sentence)


class TestCautions:
    def test_the_reason_against_other_methods_and_the_hand_always_stand_there(self) -> None:
        block = lead_block(Fraction(72), 40, "mm", "right", METRIC)
        assert lead_cautions(block, 20, "right", METRIC) == (HELIX_REASON, HAND)
        assert HELIX_REASON == (
            "While a helix is cut the table screw drives the plate through the change gears and the worm stays in "
            "mesh, so compound, differential, dial and direct indexing cannot be combined with it."
        )

    def test_a_steep_helix_is_cut_with_the_head_of_the_machine_swivelled(self) -> None:
        block = lead_block(Fraction(72), 40, "mm", "right", METRIC)
        assert lead_cautions(block, 60.2, "right", METRIC)[1] == (
            "Few tables swivel past 45°: at this helix angle swivel the cutter head instead."
        )

    def test_a_lead_out_of_reach_says_how_far(self) -> None:
        block = lead_block(Fraction(4000), 40, "mm", "right", METRIC)
        # The longest train of the twelve: 100 x 86 / (24 x 24) x 200 mm.
        assert lead_cautions(block, 2, "right", METRIC)[2] == (
            "The nearest lead these gears give is 2986.111 mm, -25.3 % off: own other gears."
        )

    def test_a_short_lead_goes_to_the_spindle(self) -> None:
        block: Any = lead_block(Fraction(5), 40, "mm", "right", METRIC, starts=4)
        assert block["by_spindle"]["achieved"] == 5
        assert lead_cautions(block, 80, "right", METRIC)[-1] == (
            "So short a lead is geared straight to the spindle, with the worm out of mesh: 24 on the spindle gives "
            "5.000 mm. Index by slipping 6 of its teeth at a time; try the hand."
        )

    def test_gears_that_may_foul_the_studs_are_said_so(self) -> None:
        head = Head(change_gears=(10, 11, 12, 13), screw=Screw(Fraction(5), "mm"))
        block = lead_block(Fraction(200 * 65, 66), 40, "mm", "right", head)
        assert lead_cautions(block, 20, "right", head)[-1] == (
            "No order of these gears is sure to clear the studs: try the fit, or take one of the other leads."
        )
