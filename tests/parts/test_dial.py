"""Dials: every line in its class, every number in its place."""

from __future__ import annotations

from fractions import Fraction
from math import pi
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.indexing.head import Head, Screw
from dividing.parts.dial import dial
from dividing.parts.sizes import Part, Size
from tests.parts.figures import told, value


@pytest.mark.parametrize("divisions", [10, 36, 50, 73, 100, 250, 360])
@pytest.mark.parametrize("label_every", [1, 5, 10, 25])
class TestEveryLine:
    def test_tenths_are_long_fifths_middle_and_a_number_stands_by_a_long_line(
        self, divisions: int, label_every: int
    ) -> None:
        part = dial(divisions=divisions, diameter=80, label_every=label_every, unit="mm")
        assert len(part.schedule) == divisions
        for line, row in enumerate(part.schedule):
            assert row["line"] == line
            assert (row["number"] is not None) == (line % label_every == 0)
            if row["number"] is not None:
                assert row["class"] == "long"
                assert row["number"] == str(line)
            elif line % 10 == 0:
                assert row["class"] == "long"
            else:
                assert row["class"] == ("short" if line % 5 else "middle")
            assert Fraction(str(row["turns"])) == Fraction(line, divisions)

    def test_the_lines_of_all_classes_are_all_lines(self, divisions: int, label_every: int) -> None:
        part = dial(divisions=divisions, diameter=80, label_every=label_every, unit="mm")
        classes = sum(value(part, f"Lines of the {kind} class") for kind in ("long", "middle", "short"))
        assert classes == divisions
        assert value(part, "Numbers to stamp") == -(-divisions // label_every)
        assert value(part, "From line to line on the rim") * divisions == pytest.approx(80 * pi)


def test_numbers_may_count_in_the_value_of_a_space() -> None:
    part = dial(divisions=250, diameter=60, label_every=25, label_value=Fraction("0.02"), unit="mm")
    assert [row["number"] for row in part.schedule if row["number"] is not None] == [
        "0", "0.5", "1", "1.5", "2", "2.5", "3", "3.5", "4", "4.5"
    ]  # fmt: skip


PITCH: Any = pytest.approx(pi * 60 / 20)


def row(line: int, kind: str, number: str | None = None) -> dict[str, Any]:
    """A line of a dial with twenty: a twentieth of a turn is 18°."""
    return {"line": line, "class": kind, "number": number, "turns": str(Fraction(line, 20)), "degrees": 18.0 * line}


def test_a_dial_is_told_whole() -> None:
    assert dial(divisions=20, diameter=60, unit="mm") == Part(
        "dial",
        "mm",
        (
            Size("Diameter of the rim", 60, "mm", "as given"),
            Size("From line to line on the rim", PITCH, "mm", "general mathematics", "π D / N"),
            Size("Angle from line to line", 18, "degrees", "general mathematics"),
            Size("Lines of the long class", 2, "", "general mathematics"),
            Size("Lines of the middle class", 2, "", "general mathematics"),
            Size("Lines of the short class", 16, "", "general mathematics"),
            Size("Numbers to stamp", 2, "", "general mathematics"),
        ),
        divisions=20,
        schedule=(
            row(0, "long", "0"), *(row(line, "short") for line in (1, 2, 3, 4)),
            row(5, "middle"), *(row(line, "short") for line in (6, 7, 8, 9)),
            row(10, "long", "10"), *(row(line, "short") for line in (11, 12, 13, 14)),
            row(15, "middle"), *(row(line, "short") for line in (16, 17, 18, 19)),
        ),
        rim=60,
        drawing={"diameter": 60, "divisions": 20, "label_every": 10},
    )  # fmt: skip


def test_a_straight_scale_has_a_line_at_either_end_and_its_numbers() -> None:
    inches = Head(screw=Screw(Fraction(1, 4), "in"))
    part = dial(
        form="linear", divisions=12, spacing=Fraction("0.05"), unit="in", label_every=5, label_value=2, head=inches
    )
    # 0.05 in of a screw of 0.25 in: a fifth of a turn; twelve spaces are 0.6 in.
    assert (part.unit, part.step, part.count, part.divisions) == ("in", Fraction(1, 5), 13, None)
    assert value(part, "Length of the scale") == pytest.approx(0.6)
    numbers = {0: "0", 5: "10", 10: "20"}
    assert part.schedule == tuple(
        {
            "line": line,
            "class": "long" if line in numbers else "short",
            "number": numbers.get(line),
            "travel": pytest.approx(0.05 * line),
        }
        for line in range(13)
    )


def test_a_straight_scale_is_numbered_as_a_dial_when_nothing_is_said() -> None:
    part = dial(form="linear", divisions=20, spacing=1, unit="mm", head=Head(screw=Screw(Fraction(5), "mm")))
    assert {row["line"]: row["number"] for row in part.schedule if row["number"]} == {0: "0", 10: "10", 20: "20"}
    assert [row["line"] for row in part.schedule if row["class"] == "middle"] == [5, 15]


def test_twenty_thousand_lines_are_allowed() -> None:
    assert len(dial(divisions=20_000, diameter=4000, unit="mm").schedule) == 20_000


def test_lines_just_half_a_millimetre_apart_can_still_be_read() -> None:
    assert dial(divisions=100, diameter=50 / pi, unit="mm").cautions == ()
    assert len(dial(divisions=100, diameter=49.9 / pi, unit="mm").cautions) == 1
    # 0.02 in are 0.508 mm, 0.019 in 0.483 mm.
    assert dial(divisions=100, diameter=2 / pi, unit="in").cautions == ()
    assert len(dial(divisions=100, diameter=1.9 / pi, unit="in").cautions) == 1


@pytest.mark.parametrize(
    ("divisions", "diameter", "unit", "label_every", "cautions"),
    [
        (100, 60, "mm", 10, ()),
        (
            125,
            60,
            "mm",
            10,
            ("125 lines are no whole number of 10s: the last number stands nearer to the zero than the rest.",),
        ),
        (
            72,
            60,
            "mm",
            6,
            ("72 is no multiple of 5: long and middle lines will not close evenly at the zero.",),
        ),
        (
            400,
            60,
            "mm",
            10,
            ("Lines 0.471 mm apart are hard to read with the naked eye: give a larger rim or fewer lines.",),
        ),
        (
            400,
            2,
            "in",
            10,
            ("Lines 0.0157 in apart are hard to read with the naked eye: give a larger rim or fewer lines.",),
        ),
    ],
)
def test_what_will_look_wrong_is_told_before(
    divisions: int, diameter: int, unit: str, label_every: int, cautions: tuple[str, ...]
) -> None:
    part = dial(divisions=divisions, diameter=diameter, unit=unit, label_every=label_every)
    assert part.cautions == cautions


@pytest.mark.parametrize(
    ("given", "path", "sentence"),
    [
        ({"divisions": 100}, "diameter", "Give the diameter of the dial's rim."),
        ({"divisions": 100, "form": "linear"}, "spacing", "Give the spacing of the lines of a straight scale."),
        ({"divisions": 20_001, "diameter": 60}, "divisions", "A dial may have up to 20,000 lines."),
        ({"divisions": 100, "form": "oval"}, "form", 'Give one of "round", "linear".'),
    ],
)
def test_what_is_missing_is_asked_for(given: dict[str, Any], path: str, sentence: str) -> None:
    with pytest.raises(Refused) as refusal:
        dial(unit="mm", **given)
    assert told(refusal.value) == [((path,), sentence)]
