"""Straight scales: the crank's move held to every hole of every circle, and the screw to its own lead."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.indexing.head import Dial, Head, Screw
from dividing.parts.dial import dial
from dividing.parts.graduating import best_move
from tests.parts.figures import told, value

METRIC = Head(screw=Screw(Fraction(5), "mm"))
SPACINGS = [Fraction(text) for text in ("0.0218", "0.5", "1", "1.27", "2.54", "3.3", "22/7", "5")]


@pytest.mark.parametrize("spacing", SPACINGS)
@pytest.mark.parametrize("ratio", [40, 60, 90])
def test_no_hole_of_any_circle_comes_nearer(spacing: Fraction, ratio: int) -> None:
    head = Head(ratio=ratio)
    per_turn = Fraction(5, ratio)
    move = best_move(spacing / per_turn, per_turn, head.circles)
    assert move is not None
    assert (move.turns + Fraction(move.holes, move.circle)) * per_turn - spacing == move.error
    nearest = min(
        abs(Fraction(holes, circle) * per_turn - spacing)
        for circle, _ in head.circles
        for holes in range(int(spacing / per_turn * circle) - 1, int(spacing / per_turn * circle) + 3)
    )
    assert abs(move.error) == nearest


@pytest.mark.parametrize(("unit", "factor"), [("mm", Fraction(1)), ("in", Fraction("25.4"))])
def test_the_spindle_turns_with_the_screw(unit: str, factor: Fraction) -> None:
    part = dial(form="linear", divisions=20, spacing=Fraction(1, 10), unit=unit, head=METRIC)
    assert part.step is not None
    assert part.step * 5 == Fraction(1, 10) * factor
    assert part.count == 21
    assert value(part, "Table travel in one crank turn") == pytest.approx(float(Fraction(5, 40) / factor))
    assert [row["travel"] for row in part.schedule][::10] == pytest.approx([0, 1, 2])
    assert part.methods == ("plain", "nearest")


def test_an_inexact_move_is_not_to_be_repeated() -> None:
    part = dial(form="linear", divisions=100, spacing=Fraction("0.37"), unit="mm", head=METRIC)
    error = value(part, "Error of one space")
    assert value(part, "Error at the last line, if every move is repeated") == pytest.approx(100 * error)
    assert part.cautions[1].startswith("Repeating 2 turns and ")
    assert part.cautions[1].endswith(
        f"adds up to {100 * error:+.6f} mm at the last line: work every line from zero instead."
    )


def test_an_exact_move_needs_no_warning() -> None:
    part = dial(form="linear", divisions=100, spacing=Fraction("0.5"), unit="mm", head=METRIC)
    assert value(part, "Error of one space") == 0
    assert part.cautions == (
        "Gear the spindle to the table screw one to one, hold the ruling tool still, and check by a scale now and "
        "then: the screw's own error goes into the scale.",
    )


def ask(**given: Any) -> None:
    dial(form="linear", divisions=10, unit="mm", **given)


@pytest.mark.parametrize(
    ("given", "path", "sentence"),
    [
        (
            {"spacing": 1, "head": Head()},
            None,
            "Give the table screw (head.screw): the head is geared to it to rule a straight scale.",
        ),
        (
            {"spacing": 6, "head": METRIC},
            "spacing",
            "Spaces past one turn of the table screw (5.000 mm) are set on the screw's own dial.",
        ),
    ],
)
def test_what_this_head_cannot_rule_is_refused(given: dict[str, Any], path: str | None, sentence: str) -> None:
    with pytest.raises(Refused) as refusal:
        ask(**given)
    assert told(refusal.value) == [((path,) if path else (), sentence)]


def test_a_table_without_plates_rules_by_its_screw_and_dial() -> None:
    bare = Head(plates=(), dial=Dial(divisions=100), screw=Screw(Fraction(5), "mm"))
    part = dial(form="linear", divisions=10, spacing=Fraction("0.37"), unit="mm", head=bare)
    assert [size.name for size in part.sizes] == [
        "From line to line",
        "Length of the scale",
        "Table travel in one crank turn",
        "Crank turns for one space",
    ]
    assert len(part.cautions) == 1
