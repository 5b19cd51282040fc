"""What a pupil fills in: the places of each kind, which lead into a claim, and the names of the slips."""

from __future__ import annotations

from dataclasses import fields

import pytest

from dividing.indexing.practice import KIND_NAMES, ArmsClaim, KindName, PlateClaim
from dividing.indexing.practice.blanks import BLANKS, SLIP_LABELS
from dividing.indexing.verifying import Claim, GearingClaim, SecondClaim

TURNS, SPACES, CIRCLE = ("turns", "Whole turns"), ("holes", "Spaces"), ("circle", "Holes of the circle")
MOVE = [TURNS, SPACES, ("circle", "Holes of the circle (none for whole turns alone)")]
PLACES: list[tuple[KindName, list[tuple[str, str]], set[str]]] = [
    ("plain", MOVE, {"circle"}),
    ("angular", MOVE, {"circle"}),
    ("direct", [SPACES, CIRCLE], set()),
    ("which_plate", [("plate", "Plate, counted from 1"), CIRCLE], set()),
    ("sector_arms", [("sector_holes", "Holes between the arms")], set()),
    ("compound", [TURNS, SPACES, CIRCLE,
                  ("second.holes", "Spaces of the second move (below 0: the opposite way)"),
                  ("second.circle", "Holes of the second circle")], set()),
    ("differential", [*MOVE,
                      ("gearing.spindle", "Gear on the spindle"),
                      ("gearing.stud.0", "First gear on the stud, if there is one"),
                      ("gearing.stud.1", "Second gear on the stud, if there is one"),
                      ("gearing.worm", "Gear on the worm side"),
                      ("gearing.idlers", "Idlers")], {"circle", "gearing.stud.0", "gearing.stud.1"}),
    ("dial", [TURNS, ("reading", "Reading of the dial")], set()),
    ("find_the_slip", [("slip", "The slip")], set()),
]  # fmt: skip


@pytest.mark.parametrize(("kind", "places", "optional"), PLACES)
def test_each_place_says_what_belongs_there(kind: KindName, places: list[tuple[str, str]], optional: set[str]) -> None:
    assert [(blank.field, blank.label) for blank in BLANKS[kind]] == places
    assert {blank.field for blank in BLANKS[kind] if blank.optional} == optional


def test_each_place_leads_into_a_claim() -> None:
    known = {field.name for claim in (Claim, PlateClaim, ArmsClaim) for field in fields(claim)} | {"slip"}
    known |= {f"second.{field.name}" for field in fields(SecondClaim)}
    known |= {f"gearing.{field.name}" for field in fields(GearingClaim)} | {"gearing.stud.0", "gearing.stud.1"}
    assert {blank.field for kind in KIND_NAMES for blank in BLANKS[kind]} <= known


def test_slips_are_called_by_what_went_wrong() -> None:
    assert SLIP_LABELS == {
        "counted_the_pin_hole": "The hole that the pin is in was counted",
        "whole_turns_forgotten": "The whole turns were forgotten",
        "fraction_upside_down": "The fraction stands upside down",
        "circle_on_no_plate": "The circle is on none of the plates",
        "other_circle": "The spaces belong to another circle",
        "other_ratio": "It was worked for a head of another ratio",
        "neighbouring_count": "It is one division more or one less than wanted",
        "minutes_read_as_decimals": "Minutes were read as decimals of a degree, or the other way about",
        "rounded_step_added_up": "The step was rounded, and the rounding adds up",
        "second_move_wrong_way": "The second move goes the wrong way",
        "drivers_and_driven_swapped": "Drivers and driven are changed about",
        "idlers_off_by_one": "There is one idler too few or too many",
        "gear_used_twice": "One gear is needed in two places",
        "gears_left_off": "The gears were left off",
    }
