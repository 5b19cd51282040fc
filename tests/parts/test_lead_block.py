"""The lead of an answer: figures that agree with one another, and what the operator is told."""

from __future__ import annotations

from fractions import Fraction
from math import atan, degrees, pi
from typing import Any

import pytest

from dividing.indexing.head import TWELVE_GEARS, Head, Screw
from dividing.parts.lead_block import HELIX_REASON, lead_block, lead_cautions
from dividing.parts.lead_gearing import trains
from dividing.parts.short_lead import by_spindle

METRIC = Head(change_gears=TWELVE_GEARS, screw=Screw(Fraction(5), "mm"))
INCHES = Head(change_gears=TWELVE_GEARS, screw=Screw(Fraction(1, 4), "in"))
HAND = (
    "Turn the crank by hand and watch the table and the work before cutting: if the helix would not be right-hand, "
    "add or take away one idler. The size of an idler changes nothing but the hand."
)
STEEP = "Few tables swivel past 45°: at this helix angle swivel the cutter head instead."
THREE = Head(change_gears=(24, 48, 72), screw=Screw(Fraction(5), "mm"))
NOTHING_KNOWN = {
    "gearing": None,
    "train": None,
    "achieved": None,
    "error": None,
    "error_percent": None,
    "angle_error": None,
    "lead_of_machine": None,
    "orders": [],
    "others": [],
    "by_spindle": None,
}


def near(figure: float) -> Any:
    return pytest.approx(figure)


def pair(worm: int, screw: int) -> dict[str, Any]:
    return {"worm": worm, "first_stud": None, "second_stud": None, "screw": screw, "idlers": 1, "clears": True}


class TestToldWhole:
    def test_from_three_gears(self) -> None:
        # At 100/π the circumference is 100, so a lead of 100 makes 45°. The machine's lead is 200.
        block = lead_block(Fraction(100), 100 / pi, "mm", "right", THREE)
        steeper, longer = degrees(atan(Fraction(3, 2))), degrees(atan(Fraction(3, 4)))
        rest = [
            (pair(24, 72), "1/3", 200 / 3, steeper),
            (pair(48, 72), "2/3", 400 / 3, longer),
            (pair(72, 48), "3/2", 300, degrees(atan(1 / 3))),
            (pair(48, 24), "2", 400, degrees(atan(1 / 4))),
        ]
        assert block == {
            "wanted": 100,
            "unit": "mm",
            "hand": "right",
            "gearing": pair(24, 48),
            "train": "1/2",
            "achieved": 100,
            "error": 0,
            "error_percent": 0,
            "helix_angle": near(45),
            "angle_error": 0,
            "lead_of_machine": 200,
            "orders": [pair(24, 48)],
            "others": [
                {
                    "gearing": gears,
                    "train": train,
                    "achieved": near(achieved),
                    "error": near(achieved - 100),
                    "error_percent": near(achieved - 100),
                    "helix_angle": near(angle),
                    "angle_error": near(angle - 45),
                }
                for gears, train, achieved, angle in rest
            ],
            "by_spindle": None,
        }

    def test_four_gears_on_two_studs(self) -> None:
        five = Head(change_gears=(24, 32, 40, 48, 100), screw=Screw(Fraction(5), "mm"))
        block: Any = lead_block(Fraction(72), 40, "mm", "left", five)
        # 72/200 = 9/25: 24 x 48 over 32 x 100. A left hand takes one idler, the 40 that is left.
        assert block["hand"] == "left"
        assert block["gearing"] == {
            "worm": 48,
            "first_stud": 32,
            "second_stud": 24,
            "screw": 100,
            "idlers": 1,
            "clears": True,
        }
        # 32 + 24 is not above 100 + 15, nor 32 + 24 above 48 + 15.
        assert [(gears["worm"], gears["first_stud"], gears["clears"]) for gears in block["orders"]] == [
            (48, 32, True),
            (48, 100, False),
            (24, 32, False),
            (24, 100, False),
        ]

    def test_a_left_hand_takes_one_idler_more_where_enough_gears_are_left(self) -> None:
        # Four gears make a left-hand pair with two idlers; 24 x 32 over 48 x 32 would leave none.
        four = Head(change_gears=(24, 32, 32, 48), screw=Screw(Fraction(5), "mm"))
        left: Any = lead_block(Fraction(100), 40, "mm", "left", four)
        assert left["gearing"] == {**pair(24, 48), "idlers": 2}
        assert left["orders"] == [left["gearing"]]
        assert lead_block(Fraction(100), 40, "mm", "left", THREE)["gearing"] is None

    @pytest.mark.parametrize("head", [None, Head()])
    def test_without_a_screw_only_the_angle_is_known(self, head: Head | None) -> None:
        assert lead_block(Fraction(100), 100 / pi, "in", "left", head) == {
            **NOTHING_KNOWN,
            "wanted": 100,
            "unit": "in",
            "hand": "left",
            "helix_angle": near(45),
        }

    def test_without_gears_the_lead_of_the_machine_too(self) -> None:
        block = lead_block(Fraction(100), 100 / pi, "mm", "right", Head(screw=THREE.screw))
        assert block == {
            **NOTHING_KNOWN,
            "wanted": 100,
            "unit": "mm",
            "hand": "right",
            "helix_angle": near(45),
            "lead_of_machine": 200,
        }

    def test_twelve_orders_and_four_other_leads_are_shown_at_most(self) -> None:
        # 24/48 and its like: 28/56, 32/64, and pairs of pairs.
        block: Any = lead_block(Fraction(100), 40, "mm", "right", METRIC)
        every = trains(TWELVE_GEARS, Fraction(1, 2))
        assert len(every) > 12
        assert [(gears["worm"], gears["screw"]) for gears in block["orders"]] == [
            (train.worm, train.screw) for train in every[:12]
        ]
        assert len(block["others"]) == 4


class TestByTheSpindle:
    # Of 24, 48 and 72 the ratio nearest to a half is a half: 100 mm.
    @pytest.mark.parametrize(
        ("wanted", "through_the_spindle"),
        [
            (Fraction(100), False),
            (Fraction(10000, 101), False),  # 100 is just 1 % more
            (Fraction(10000, 102), True),
            (Fraction(10000, 99), False),  # 100 is just 1 % less
            (Fraction(10000, 98), True),
            (Fraction(199), True),
            (
                Fraction(200),
                False,
            ),  # the lead of the machine itself: the nearest, 133.3, is far off, but it is not short
            (Fraction(1000), False),
        ],
    )
    def test_only_a_lead_below_that_of_the_machine_and_more_than_one_per_cent_off(
        self, wanted: Fraction, through_the_spindle: bool
    ) -> None:
        block = lead_block(wanted, 40, "mm", "right", THREE)
        assert (block["by_spindle"] is not None) == through_the_spindle

    def test_one_start_is_meant_where_none_are_told(self) -> None:
        # Once round for the one start: all 24 teeth.
        assert lead_block(Fraction(5), 40, "mm", "right", METRIC)["by_spindle"]["teeth_per_index"] == 24

    def test_it_is_in_the_unit_of_the_lead_and_for_its_starts(self) -> None:
        block = lead_block(Fraction(1, 4), 1, "in", "right", INCHES, 7)
        # 28 and 56 have seven parts. There is one of each, so four gears make one to one, such as 28 x 64 over 32 x 56.
        found = block["by_spindle"]
        assert found == by_spindle(Fraction(1, 4), 7, Screw(Fraction(1, 4), "in"), "in", TWELVE_GEARS)
        assert (found["achieved"], found["teeth_per_index"] * 7) == (0.25, found["spindle"])


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
                "Too few change gears for a left-hand helix: a train takes two or four, and its idlers.",
            ),
        ],
    )
    def test_it_is_asked_for(self, head: Head | None, sentence: str) -> None:
        block = lead_block(Fraction(144), 40, "mm", "left", head)
        assert block["gearing"] is None
        assert lead_cautions(block, 45, "left", head) == (HELIX_REASON, sentence)
        assert lead_cautions(block, 45.5, "left", head) == (HELIX_REASON, STEEP, sentence)


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
        assert lead_cautions(block, 45, "right", METRIC) == (HELIX_REASON, HAND)
        assert lead_cautions(block, 45.5, "right", METRIC) == (HELIX_REASON, STEEP, HAND)

    def test_a_left_hand_is_told_so(self) -> None:
        block = lead_block(Fraction(72), 40, "mm", "left", METRIC)
        assert lead_cautions(block, 20, "left", METRIC) == (HELIX_REASON, HAND.replace("right", "left"))

    def test_one_per_cent_off_is_still_near(self) -> None:
        for wanted, more in (
            (Fraction(10000, 101), ()),
            (Fraction(20000, 203), ("The nearest lead these gears give is 100.000 mm, +1.5 % off: own other gears.",)),
        ):
            block = lead_block(wanted, 40, "mm", "right", THREE, 5)
            assert lead_cautions(block, 20, "right", THREE) == (HELIX_REASON, HAND, *more)

    def test_a_lead_out_of_reach_says_how_far(self) -> None:
        block = lead_block(Fraction(4000), 40, "mm", "right", METRIC)
        # The longest train of the twelve: 100 x 86 / (24 x 24) x 200 mm.
        assert lead_cautions(block, 2, "right", METRIC) == (
            HELIX_REASON,
            HAND,
            "The nearest lead these gears give is 2986.111 mm, -25.3 % off: own other gears.",
        )

    def test_a_short_lead_goes_to_the_spindle(self) -> None:
        block: Any = lead_block(Fraction(5), 40, "mm", "right", METRIC, starts=4)
        assert block["by_spindle"]["achieved"] == 5
        # The shortest train of the twelve: 24 x 24 / (86 x 100) x 200 mm.
        assert lead_cautions(block, 80, "right", METRIC) == (
            HELIX_REASON,
            STEEP,
            HAND,
            "The nearest lead these gears give is 13.395 mm, +167.9 % off: own other gears.",
            "So short a lead is geared straight to the spindle, with the worm out of mesh: 24 on the spindle gives "
            "5.000 mm. Index by slipping 6 of its teeth at a time; try the hand.",
        )

    def test_gears_that_may_foul_the_studs_are_said_so(self) -> None:
        head = Head(change_gears=(10, 11, 12, 13), screw=Screw(Fraction(5), "mm"))
        block = lead_block(Fraction(200 * 65, 66), 40, "mm", "right", head)
        assert lead_cautions(block, 20, "right", head)[-1] == (
            "No order of these gears is sure to clear the studs: try the fit, or take one of the other leads."
        )
