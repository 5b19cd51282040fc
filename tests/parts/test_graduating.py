"""Straight scales: the crank's move held to every hole of every circle, and the screw to its own lead."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.indexing.head import Dial, Head, Screw
from dividing.parts.dial import dial
from dividing.parts.graduating import CrankMove, best_move
from dividing.parts.sizes import MATHEMATICS, Part, Size
from tests.parts.figures import told, value

METRIC = Head(screw=Screw(Fraction(5), "mm"))
TREATISE = "A Practical Treatise on Milling and Milling Machines, 1914, pp. 183-184"
GEAR_ONE_TO_ONE = (
    "Gear the spindle to the table screw one to one, hold the ruling tool still, and check by a scale now and then: "
    "the screw's own error goes into the scale."
)
SPACINGS = [Fraction(text) for text in ("0.0218", "0.5", "1", "1.27", "2.54", "3.3", "22/7", "5")]


def near(figure: float) -> Any:
    return pytest.approx(figure)


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


def test_of_circles_that_come_equally_near_the_first_is_taken() -> None:
    halves = ((16, 1), (18, 1), (20, 2))
    assert best_move(Fraction(5, 2), Fraction(1), halves) == CrankMove(2, 8, 16, 1, Fraction(0))
    assert best_move(Fraction(5, 2), Fraction(1), halves[::-1]) == CrankMove(2, 10, 20, 2, Fraction(0))


@pytest.mark.parametrize(
    ("turns", "holes", "text"),
    [
        (3, 20, "3 turns and 20 spaces on the circle of 41, plate 2"),
        (1, 1, "1 turn and 1 space on the circle of 41, plate 2"),
        (0, 1, "1 space on the circle of 41, plate 2"),
        (0, 7, "7 spaces on the circle of 41, plate 2"),
        (1, 0, "1 turn"),
        (2, 0, "2 turns"),
        (0, 0, "0 turns"),
    ],
)
def test_a_move_is_told_as_it_is_cranked(turns: int, holes: int, text: str) -> None:
    assert CrankMove(turns, holes, 41, 2, Fraction(0)).text == text


@pytest.mark.parametrize(("unit", "factor"), [("mm", Fraction(1)), ("in", Fraction("25.4"))])
def test_the_spindle_turns_with_the_screw(unit: str, factor: Fraction) -> None:
    part = dial(form="linear", divisions=20, spacing=Fraction(1, 10), unit=unit, head=METRIC)
    assert part.step is not None
    assert part.step * 5 == Fraction(1, 10) * factor
    assert part.count == 21
    assert value(part, "Table travel in one crank turn") == pytest.approx(float(Fraction(5, 40) / factor))
    assert [row["travel"] for row in part.schedule][::10] == pytest.approx([0, 1, 2])
    assert part.methods == ("plain", "nearest")


def test_a_scale_with_an_inexact_move_is_told_whole() -> None:
    part = dial(form="linear", divisions=2, spacing=Fraction("0.37"), label_every=2, unit="mm", head=METRIC)
    # One crank turn is 5/40 = 0.125 mm; 0.37 mm takes 2.96. The nearest of the plates' parts to 24/25 is 47/49, 1/1225
    # of a turn less: 0.125/1225 = 0.000102041 mm.
    move, off = "2 turns and 47 spaces on the circle of 49, plate 3", near(-0.125 / 1225)
    assert part == Part(
        "dial",
        "mm",
        (
            Size("From line to line", 0.37, "mm", "as given"),
            Size("Length of the scale", 0.74, "mm", MATHEMATICS),
            Size("Table travel in one crank turn", 0.125, "mm", TREATISE, "screw lead / ratio, gears one to one", 6),
            Size("Crank turns for one space", 2.96, "", TREATISE, "74/25", 6),
            Size("Space as it comes out", near(0.37 - 0.125 / 1225), "mm", MATHEMATICS, move, 7),
            Size("Error of one space", off, "mm", MATHEMATICS, "", 7),
            Size("Error at the last line, if every move is repeated", near(-0.25 / 1225), "mm", MATHEMATICS, "", 6),
        ),
        step=Fraction("0.074"),
        count=3,
        methods=("plain", "nearest"),
        methods_reason=(
            "The head is geared to the table screw to rule a straight scale, so only the crank and one circle of the "
            "plate are free to index with."
        ),
        cautions=(
            GEAR_ONE_TO_ONE,
            f"Repeating {move} adds up to -0.000204 mm at the last line: work every line from zero instead.",
        ),
        schedule=(
            {"line": 0, "class": "long", "number": "0", "travel": 0},
            {"line": 1, "class": "short", "number": None, "travel": 0.37},
            {"line": 2, "class": "long", "number": "2", "travel": 0.74},
        ),
        drawing={"form": "linear", "divisions": 2, "spacing": 0.37},
    )
    assert [size.text for size in part.sizes] == [
        "0.370 mm",
        "0.740 mm",
        "0.125000 mm",
        "2.960000",
        "0.3698980 mm",
        "-0.0001020 mm",
        "-0.000204 mm",
    ]


def test_an_exact_move_needs_no_warning() -> None:
    part = dial(form="linear", divisions=100, spacing=Fraction("0.5"), unit="mm", head=METRIC)
    assert value(part, "Error of one space") == 0
    assert part.cautions == (GEAR_ONE_TO_ONE,)


def test_an_error_that_adds_up_is_told_with_its_sign_and_unit() -> None:
    # 0.01 in at 0.00625 in a turn takes 1.6 turns; 1 10/16 are 0.025 of a turn more, 0.00015625 in, 32 times 0.005.
    plate = Head(plates=((16,),), screw=Screw(Fraction(1, 4), "in"))
    part = dial(form="linear", divisions=32, spacing=Fraction("0.01"), unit="in", head=plate)
    assert part.cautions[1] == (
        "Repeating 1 turn and 10 spaces on the circle of 16, plate 1 adds up to +0.005000 in at the last line: work "
        "every line from zero instead."
    )


def test_one_whole_turn_of_the_screw_is_still_ruled() -> None:
    part = dial(form="linear", divisions=3, spacing=5, unit="mm", head=METRIC)
    assert (part.step, value(part, "Crank turns for one space")) == (1, 40)


def ask(**given: Any) -> None:
    dial(form="linear", divisions=10, unit="mm", **given)


@pytest.mark.parametrize(
    ("given", "path", "sentence"),
    [
        (
            {"spacing": 1},
            None,
            "Give the table screw (head.screw): the head is geared to it to rule a straight scale.",
        ),
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
