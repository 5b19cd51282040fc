"""Dials: every line in its class, every number in its place."""

from __future__ import annotations

from fractions import Fraction
from math import pi
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.dial import dial
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
    ],
)
def test_what_is_missing_is_asked_for(given: dict[str, Any], path: str, sentence: str) -> None:
    with pytest.raises(Refused) as refusal:
        dial(unit="mm", **given)
    assert told(refusal.value) == [((path,), sentence)]
