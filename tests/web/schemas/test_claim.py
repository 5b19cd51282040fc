"""A setup as somebody gives it: read as its method and the head mean it, or refused with what to change."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from marshmallow import ValidationError

from dividing.indexing.angles import Angle
from dividing.indexing.faults import Fault, Refused
from dividing.indexing.head import Dial, Head
from dividing.indexing.verifying import Claim, GearingClaim, SecondClaim
from dividing.web.schemas.claim import ClaimIn, claim_on

IN_DEGREES = Head(90, (), direct_circles=(), dial=Dial(Fraction(1, 21600)))
IN_DIVISIONS = Head(90, (), direct_circles=(), dial=Dial(divisions=100))
NOTHING = dict.fromkeys(("turns", "holes", "circle", "second", "gearing", "reading"))
TRAIN = {"spindle": 28, "worm": 24}


@pytest.mark.parametrize(
    ("given", "claim"),
    [
        ({"method": "plain", "turns": 1, "holes": 21, "circle": 49}, Claim("plain", 1, 21, 49)),
        ({"method": "plain", "turns": Decimal("2.0"), "circle": 20}, Claim("plain", 2, 0, 20)),
        ({**NOTHING, "method": "plain", "turns": 2}, Claim("plain", 2)),
        ({"method": "nearest", "circle": 49}, Claim("nearest", circle=49)),
        (
            {"method": "compound", "holes": 21, "circle": 23, "second": {"turns": 0, "holes": -11, "circle": 33}},
            Claim("compound", 0, 21, 23, SecondClaim(-11, 33)),
        ),
        (
            {"method": "differential", "holes": 4, "circle": 18, "gearing": TRAIN},
            Claim("differential", 0, 4, 18, gearing=GearingClaim(28, 24, None, 0)),
        ),
        (
            {
                "method": "differential",
                "holes": 4,
                "circle": 18,
                "gearing": {**TRAIN, "stud": [32, 24], "idlers": 1, "plate": "with"},
            },
            Claim("differential", 0, 4, 18, gearing=GearingClaim(28, 24, (32, 24), 1)),
        ),
    ],
)
def test_a_claim_is_read_with_what_was_left_out(given: dict[str, Any], claim: Claim) -> None:
    assert claim_on(Head(), ClaimIn().load(given)) == claim


@pytest.mark.parametrize(
    ("head", "reading", "claim"),
    [
        (IN_DEGREES, "3°25'40\"", Claim("dial", 12, reading=Angle(Fraction(12340, 1_296_000)))),
        (IN_DEGREES, Decimal("3.5"), Claim("dial", 12, reading=Angle(Fraction(7, 720)))),
        (IN_DEGREES, 3, Claim("dial", 12, reading=Angle(Fraction(1, 120)))),
        (IN_DIVISIONS, "86", Claim("dial", 12, divisions=Fraction(86))),
        (IN_DIVISIONS, "600/7", Claim("dial", 12, divisions=Fraction(600, 7))),
        (IN_DIVISIONS, Decimal("85.5"), Claim("dial", 12, divisions=Fraction(171, 2))),
        (IN_DIVISIONS, 86, Claim("dial", 12, divisions=Fraction(86))),
        (IN_DIVISIONS, None, Claim("dial", 12)),
    ],
)
def test_a_reading_counts_what_the_dial_has(head: Head, reading: object, claim: Claim) -> None:
    assert claim_on(head, ClaimIn().load({"method": "dial", "turns": 12, "reading": reading})) == claim


READING = 'Give the dial\'s reading, such as "3°25\'40\\"", or its lines on a dial without degrees.'


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({}, {"method": ["This field is needed."]}),
        ({"method": "spiral"}, {"method": ["Give one of: direct, plain, differential, compound, dial, nearest."]}),
        # All of it at once, and of each field whatever is wrong with it.
        (
            {"method": "plain", "turns": -1, "holes": "9", "circle": 0},
            {
                "turns": ["Whole turns lie between 0 and 1,000,000."],
                "holes": ["Give a whole number without quotes: 9."],
                "circle": ["The holes of a circle lie between 1 and 10,000."],
            },
        ),
        # What a method needs cannot be told while the method is wrong.
        ({"method": "spiral", "second": {"holes": 1, "circle": 20}, "turns": -1},
         {
             "method": ["Give one of: direct, plain, differential, compound, dial, nearest."],
             "turns": ["Whole turns lie between 0 and 1,000,000."],
         }),
        ({"method": "compound", "circle": 20}, {"second": ["Compound indexing has a second move; give its holes and "
                                                           "circle."]}),
        ({"method": "compound", "circle": 20, "second": {"holes": 1}},
         {"second": {"circle": ["This field is needed."]}}),
        ({"method": "compound", "circle": 20, "second": {"holes": None, "circle": 19}},
         {"second": {"holes": ["Give the spaces of the second move."]}}),
        ({"method": "plain", "gearing": TRAIN},
         {"gearing": ["Only differential indexing has gears to the plate; leave them out."]}),
        ({"method": "differential", "gearing": {**TRAIN, "stud": [32]}},
         {"gearing": {"stud": ["The stud carries two gears, first and second; give both, or null."]}}),
        ({"method": "differential", "gearing": {**TRAIN, "stud": [32, 24, 40]}},
         {"gearing": {"stud": ["Give at most 2 gears; these are 3."]}}),
        ({"method": "differential", "gearing": {**TRAIN, "plate": "sideways"}},
         {"gearing": {"plate": ["Give one of: with, against."]}}),
        ({"method": "dial", "reading": True}, {"reading": [READING]}),
        ({"method": "dial", "reading": ["3°"]}, {"reading": [READING]}),
        ({"method": "dial", "reading": {}}, {"reading": [READING]}),
        ({"method": "dial", "reading": "3" * 65}, {"reading": [READING]}),
    ],
)  # fmt: skip
def test_a_claim_that_cannot_be_read_is_refused_where_it_is_wrong(given: dict[str, Any], told: Any) -> None:
    with pytest.raises(ValidationError) as refusal:
        ClaimIn().load(given)
    assert refusal.value.messages == told


@pytest.mark.parametrize(
    ("head", "reading", "sentence"),
    [
        (IN_DEGREES, "3°61'", 'Stopped at character 3 of "3°61\'": expected minutes below 60.'),
        (IN_DEGREES, "361°", "A dial's reading lies between 0° and 360°."),
        (IN_DIVISIONS, -1, "A dial's divisions lie between 0 and 1,000,000."),
        (
            IN_DIVISIONS,
            "3°",
            'Stopped at character 2 of "3°": expected the end of the number. The dial of this head has plain '
            "divisions, no degrees.",
        ),
    ],
)
def test_a_reading_that_this_dial_does_not_have_is_refused(head: Head, reading: object, sentence: str) -> None:
    asked = ClaimIn().load({"method": "dial", "reading": reading})
    with pytest.raises(Refused) as refusal:
        claim_on(head, asked)
    assert refusal.value.faults == (Fault(("reading",), sentence),)
