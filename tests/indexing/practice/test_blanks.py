"""What a pupil fills in: the places of each kind, which lead into a claim."""

from __future__ import annotations

from dataclasses import fields

import pytest

from dividing.indexing.practice import KIND_NAMES, ArmsClaim, KindName, PlateClaim
from dividing.indexing.practice.blanks import BLANKS
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
