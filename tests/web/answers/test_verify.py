"""A claim goes out in the form in which it is asked, and asked again it says the same."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import Any

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import Dial, Head
from dividing.indexing.verifying import Claim, GearingClaim, SecondClaim
from dividing.web import json_in
from dividing.web.answers.heads import head_out
from dividing.web.answers.verify import claim_out
from dividing.web.schemas.verify import VERIFY_IN

IN_DEGREES = Head(90, (), direct_circles=(), dial=Dial(Fraction(1, 21600)))
IN_DIVISIONS = Head(90, (), direct_circles=(), dial=Dial(divisions=100))


def told(**given: Any) -> dict[str, Any]:
    nothing = {"turns": 0, "holes": 0, "circle": None, "second": None, "gearing": None, "reading": None}
    return {**nothing, **given}


CLAIMS: list[tuple[Claim, Head, dict[str, Any]]] = [
    (Claim("plain", 1, 21, 49), Head(), told(method="plain", turns=1, holes=21, circle=49)),
    (
        Claim("compound", 0, 21, 23, SecondClaim(-11, 33)),
        Head(),
        told(method="compound", holes=21, circle=23, second={"holes": -11, "circle": 33}),
    ),
    (
        Claim("differential", 0, 12, 21, gearing=GearingClaim(48, 28, None, 2)),
        Head(),
        told(
            method="differential",
            holes=12,
            circle=21,
            gearing={"spindle": 48, "worm": 28, "stud": None, "idlers": 2},
        ),
    ),
    (
        Claim("differential", 0, 4, 18, gearing=GearingClaim(28, 24, (32, 24), 0)),
        Head(),
        told(
            method="differential",
            holes=4,
            circle=18,
            gearing={"spindle": 28, "worm": 24, "stud": [32, 24], "idlers": 0},
        ),
    ),
    # A reading in degrees, minutes and seconds where it has them, else as a fraction that reads back exactly.
    (
        Claim("dial", 12, reading=parse_angle("3°25'40\"")),
        IN_DEGREES,
        told(method="dial", turns=12, reading="3°25'40\""),
    ),
    (
        Claim("dial", 12, reading=parse_angle("24/7")),
        IN_DEGREES,
        told(method="dial", turns=12, reading="1/105 turn"),
    ),
    # On a dial of 100 divisions 24/7 of its 4 degrees a turn are 85 5/7.
    (
        Claim("dial", 12, reading=parse_angle("24/7")),
        IN_DIVISIONS,
        told(method="dial", turns=12, reading="600/7"),
    ),
    (
        Claim("dial", 12, divisions=Fraction(600, 7)),
        IN_DIVISIONS,
        told(method="dial", turns=12, reading="600/7"),
    ),
    (Claim("dial", 3), IN_DEGREES, told(method="dial", turns=3)),
]


@pytest.mark.parametrize(("claim", "head", "out"), CLAIMS)
def test_it_says_what_the_claim_says(claim: Claim, head: Head, out: dict[str, Any]) -> None:
    assert claim_out(claim, head) == out


def test_asked_again_it_is_the_same_claim() -> None:
    for claim, head, _ in CLAIMS:
        if claim.reading and head is IN_DIVISIONS:
            continue  # a reading in degrees comes back in the divisions of the dial
        question = {"work": {"divisions": 28}, "head": head_out(head), "claim": claim_out(claim, head)}
        assert VERIFY_IN.load(json_in.read(json.dumps(question).encode())).claim == claim
