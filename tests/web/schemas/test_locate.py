"""What the head shows, on the wire: a hole of a circle, a reading, and how far that may be off."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from marshmallow import ValidationError

from dividing.indexing.locating import Seen
from dividing.web.schemas.locate import SeenIn

HOLE = {"hole": ["Count the hole from 0, the start hole, up to 399."]}
GIVE = {"give": ["The reading may be off by 0° to 360°."]}


@pytest.mark.parametrize(
    ("given", "seen"),
    [
        # A reading that is not told closer may be off by 2 degrees.
        ({"spindle": 90}, Seen(Fraction(1, 4), None, Fraction(2, 360))),
        ({"spindle": "90°", "hole": None, "give": 0}, Seen(Fraction(1, 4), None, Fraction(0))),
        ({"spindle": 0, "hole": 0, "give": "360°"}, Seen(Fraction(0), 0, Fraction(1))),
        ({"spindle": "-1°", "hole": 399}, Seen(Fraction(-1, 360), 399, Fraction(2, 360))),
    ],
)
def test_what_is_seen_is_read_in_turns(given: dict[str, Any], seen: Seen) -> None:
    assert SeenIn().load(given) == seen


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({"hole": 3}, {"spindle": ["This field is needed."]}),
        ({"spindle": 0, "hole": -1}, HOLE),
        ({"spindle": 0, "hole": 400}, HOLE),
        ({"spindle": 0, "give": "-0°01'"}, GIVE),
        ({"spindle": 0, "give": "360°01'"}, GIVE),
        ({"spindle": 0, "hole": 400, "give": 361}, {**HOLE, **GIVE}),
    ],
)
def test_what_no_head_shows_is_refused(given: dict[str, Any], told: dict[str, Any]) -> None:
    with pytest.raises(ValidationError) as refusal:
        SeenIn().load(given)
    assert refusal.value.messages == told
