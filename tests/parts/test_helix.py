"""Helices: three ways to give one lead."""

from __future__ import annotations

from math import atan, degrees, pi
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.helix import helix, square_lead
from tests.parts.figures import told, value


@pytest.mark.parametrize("lead", [3.2, 25.0, 90.0, 1500.0])
@pytest.mark.parametrize("starts", [1, 4, 7])
def test_a_lead_and_its_angle_are_one_question(lead: float, starts: int) -> None:
    by_lead = helix(starts=starts, diameter=25, lead=lead, hand="right", unit="mm")
    by_angle = helix(starts=starts, diameter=25, helix_angle=value(by_lead, "Helix angle"), hand="right", unit="mm")
    assert value(by_angle, "Lead") == pytest.approx(lead)
    assert value(by_lead, "From start to start along the axis") * starts == pytest.approx(lead)
    assert value(by_lead, "From start to start round the work") * starts == pytest.approx(25 * pi)
    assert by_lead.divisions == starts


@pytest.mark.parametrize("thread", [1.5, 6.0, 40.0])
def test_flutes_square_to_a_thread_make_a_right_angle_with_it(thread: float) -> None:
    lead = square_lead(diameter=60, thread_lead=thread)
    thread_angle, flute_angle = degrees(atan(pi * 60 / thread)), degrees(atan(pi * 60 / lead))
    assert thread_angle + flute_angle == pytest.approx(90)


@pytest.mark.parametrize(
    ("given", "path", "sentence"),
    [
        ({}, None, "Give lead, helix_angle or thread_lead."),
        ({"lead": 5, "helix_angle": 20}, "helix_angle", "Give lead, helix_angle or thread_lead, and only one of them."),
        ({"helix_angle": 90}, "helix_angle", "A helix angle lies between 0° and 90° from the axis, neither included."),
    ],
)
def test_one_of_the_three_is_needed(given: dict[str, Any], path: str | None, sentence: str) -> None:
    with pytest.raises(Refused) as refusal:
        helix(starts=2, diameter=25, hand="left", unit="mm", **given)
    assert told(refusal.value) == [((path,) if path else (), sentence)]
