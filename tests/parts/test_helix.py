"""Helices: three ways to give one lead."""

from __future__ import annotations

from fractions import Fraction
from math import atan, degrees, pi, sqrt
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.indexing.head import TWELVE_GEARS, Head, Screw
from dividing.parts.helix import helix, square_lead
from dividing.parts.lead_block import lead_block, lead_cautions
from dividing.parts.sizes import MATHEMATICS, Part, Size
from tests.parts.figures import size, told, value

HEAD = Head(change_gears=TWELVE_GEARS, screw=Screw(Fraction(5), "mm"))
ROSE = "Modern Machine-Shop Practice (Joshua Rose), on fig. 1978"
HOBS = "Turning and Boring (F. D. Jones), spiral-fluted hob"


def near(figure: float) -> Any:
    return pytest.approx(figure)


def test_it_is_told_whole() -> None:
    # At 30° from the axis the lead is √3 times the circumference.
    part = helix(starts=4, diameter=40, unit="mm", hand="left", helix_angle=30, head=HEAD)
    wanted = value(part, "Lead")
    block = lead_block(wanted, 40, "mm", "left", HEAD, 4)
    assert part == Part(
        "helix",
        "mm",
        (
            Size("Lead", near(40 * pi * sqrt(3)), "mm", ROSE),
            Size("From start to start along the axis", near(10 * pi * sqrt(3)), "mm", MATHEMATICS, "lead / starts"),
            Size("Helix angle", near(30), "degrees", ROSE, "from the axis: tan = π d / lead"),
            Size("Table angle", near(30), "degrees", MATHEMATICS, "swivel to this, the way the hand asks"),
            Size("From start to start round the work", near(10 * pi), "mm", MATHEMATICS, "π d / starts"),
        ),
        divisions=4,
        lead=block,
        methods=("plain", "nearest"),
        methods_reason=(
            "While a helix is cut the table screw drives the plate through the change gears and the worm stays in "
            "mesh, so compound, differential, dial and direct indexing cannot be combined with it."
        ),
        cautions=lead_cautions(block, 30, "left", HEAD),
        rim=40,
        drawing={"starts": 4, "diameter": 40, "lead": wanted, "hand": "left"},
    )


def test_a_short_lead_of_several_starts_is_slipped_at_the_spindle() -> None:
    part = helix(starts=4, diameter=40, unit="mm", hand="right", lead=Fraction(5), head=HEAD)
    assert part.lead is not None
    # 24 on the spindle and 24 on the screw of 5 mm; 24 has four parts of 6 teeth.
    assert part.lead["by_spindle"]["teeth_per_index"] == 6
    # tan = π 40/5: above 87°, so the table does not swivel to it.
    assert "Few tables swivel past 45°: at this helix angle swivel the cutter head instead." in part.cautions


def test_what_the_head_lacks_is_asked_for() -> None:
    part = helix(starts=4, diameter=40, unit="mm", hand="right", lead=144, head=Head(screw=HEAD.screw))
    assert part.cautions[1:] == (
        "Give the change gears that you own (head.change_gears) to have the lead gearing worked out.",
    )


@pytest.mark.parametrize(
    ("given", "lead", "source"),
    [
        ({"lead": 144}, "5.6693 in", "as given"),
        # tan 45° = 1: the circumference of 40 mm, 125.664 mm.
        ({"helix_angle": 45}, "4.9474 in", ROSE),
        # 125.664²/6 = 2631.894 mm.
        ({"thread_lead": 6}, "103.6179 in", HOBS),
    ],
)
def test_the_lead_comes_from_whichever_is_given(given: dict[str, int], lead: str, source: str) -> None:
    lengths = {name: figure if name == "helix_angle" else figure / Fraction("25.4") for name, figure in given.items()}
    part = helix(starts=2, diameter=40 / Fraction("25.4"), hand="right", unit="in", **lengths)
    assert (size(part, "Lead").text, size(part, "Lead").source) == (lead, source)
    assert [each.unit for each in part.sizes] == ["in", "in", "degrees", "degrees", "in"]
    assert part.unit == "in"


@pytest.mark.parametrize("angle", [Fraction(1, 2), Fraction(179, 2)])
def test_any_angle_short_of_a_right_one_will_do(angle: Fraction) -> None:
    part = helix(starts=2, diameter=25, helix_angle=angle, hand="right", unit="mm")
    assert value(part, "Helix angle") == pytest.approx(float(angle))


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
        ({"helix_angle": 0}, "helix_angle", "A helix angle lies between 0° and 90° from the axis, neither included."),
        ({"helix_angle": 90}, "helix_angle", "A helix angle lies between 0° and 90° from the axis, neither included."),
        (
            {"helix_angle": 20, "thread_lead": 5},
            "thread_lead",
            "Give lead, helix_angle or thread_lead, and only one of them.",
        ),
        ({"lead": 5, "hand": "up"}, "hand", 'Give one of "right", "left".'),
    ],
)
def test_one_of_the_three_is_needed(given: dict[str, Any], path: str | None, sentence: str) -> None:
    with pytest.raises(Refused) as refusal:
        helix(**{"starts": 2, "diameter": 25, "hand": "left", "unit": "mm", **given})
    assert told(refusal.value) == [((path,) if path else (), sentence)]
