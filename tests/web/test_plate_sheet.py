"""The drilling schedule as a sheet: the same figures as the answer, and nothing in it that a spreadsheet would run."""

from __future__ import annotations

import csv
import io
import re
from typing import Any

import pytest
from flask.testing import FlaskClient

COLUMNS = (
    "hole_number,degrees,dms,turns,spaces,circle,pin_hole,second_spaces,second_circle,second_pin_hole,dial_turns,"
    "dial_set,scale,error_seconds,x,y"
)
TABLE = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"graduation": "0°01'"}}
IN_DIVISIONS = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"divisions": 100}}
QUESTIONS: list[dict[str, Any]] = [
    {"holes": 127},
    {"holes": 127, "circles": 1},
    {"holes": 35, "circle_diameter": 100, "unit": "mm"},
    {"holes": 24},
    {"divisions": 102, "circle_diameter": 6, "unit": "in", "zero": "12 o'clock"},
    {"holes": 53, "head": TABLE},
    {"holes": 53, "head": IN_DIVISIONS},
]


def sheet(client: FlaskClient, question: dict[str, Any]) -> list[dict[str, str]]:
    response = client.post("/v1/plate", json=question, headers={"Accept": "text/csv"})
    assert response.status_code == 200, response.text
    assert response.content_type == "text/csv; charset=utf-8"
    assert response.data.startswith(b"\xef\xbb\xbf" + COLUMNS.encode() + b"\r\n")
    return list(csv.DictReader(io.StringIO(response.data.decode("utf-8-sig"), newline="")))


def as_cell(value: Any) -> str:
    return "" if value is None else str(value)


@pytest.mark.parametrize("question", QUESTIONS)
def test_each_line_says_what_the_answer_says(client: FlaskClient, question: dict[str, Any]) -> None:
    told = client.post("/v1/plate", json=question).json
    lines = sheet(client, question)
    assert len(lines) == told["holes"] == len(told["schedule"])
    for line, row in zip(lines, told["schedule"], strict=True):
        assert line["hole_number"] == str(row["cut"])
        assert float(line["degrees"]) == pytest.approx(row["angle"]["degrees"], abs=1e-6)
        assert (line["dms"], line["scale"]) == (row["angle"]["dms"], row["scale"])
        assert float(line["error_seconds"]) == row["error_seconds"]
        assert (line["spaces"], line["pin_hole"]) == (as_cell(row["holes"]), as_cell(row["hole"]))
        assert line["second_spaces"] == as_cell(row["second_holes"])
        assert line["second_pin_hole"] == as_cell(row["second_hole"])
        if row["dial"]:
            assert line["turns"] == line["circle"] == ""
            assert line["dial_turns"] == str(row["dial"]["turns"])
            assert line["dial_set"] == (row["dial"].get("set") or row["dial"]["divisions"])
        else:
            assert line["turns"] == str(row["turns"])
            assert line["circle"] == str(told["setup"]["move"]["circle"])
            assert line["dial_turns"] == line["dial_set"] == ""
        if row["x"] is None:
            assert line["x"] == line["y"] == ""
        else:
            places = 3 if question["unit"] == "mm" else 4
            for axis in "xy":
                assert float(line[axis]) == pytest.approx(row[axis], abs=0.51 * 10**-places)
                assert re.fullmatch(rf"-?[0-9]+\.[0-9]{{{places}}}", line[axis])


@pytest.mark.parametrize("question", QUESTIONS)
def test_no_cell_is_run_as_a_formula_or_taken_for_a_date(client: FlaskClient, question: dict[str, Any]) -> None:
    for line in sheet(client, question):
        for cell in line.values():
            assert not cell.startswith(("=", "+", "@", "\t"))
            assert not cell.startswith("-") or re.fullmatch(r"-[0-9]+(\.[0-9]+)?", cell)
            assert not re.search(r"[0-9]+/[0-9]+|e-", cell)


def test_a_quarter_point_has_no_minus_nothing(client: FlaskClient) -> None:
    lines = sheet(client, {"holes": 4, "circle_diameter": 100, "unit": "mm"})
    assert [(line["x"], line["y"]) for line in lines] == [
        ("50.000", "0.000"), ("0.000", "50.000"), ("-50.000", "0.000"), ("0.000", "-50.000"),
    ]  # fmt: skip


def test_two_circles_are_told_side_by_side(client: FlaskClient) -> None:
    # 40/51 = 12/18 + 2/17 of a turn: 204/306 + 36/306 = 240/306.
    second = sheet(client, {"holes": 51})[1]
    first = int(second["spaces"]) * int(second["second_circle"]) + int(second["second_spaces"]) * int(second["circle"])
    assert first * 51 == 40 * int(second["circle"]) * int(second["second_circle"])
