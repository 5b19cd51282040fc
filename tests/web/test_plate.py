"""/v1/plate: an index plate drilled on the head that will use it."""

from __future__ import annotations

from math import pi
from typing import Any

import pytest
from flask.testing import FlaskClient

from tests.web.test_openapi import problems_of

ADDRESS = "/v1/plate"
TABLE = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"graduation": "0°01'"}}
FIXTURE = {"ratio": 1, "plates": [], "direct_circles": [36]}
HUNDRED = {"plates": [list(range(2, 102))], "direct_circles": []}


def ask(client: FlaskClient, question: dict[str, Any]) -> dict[str, Any]:
    response = client.post(ADDRESS, json=question)
    assert response.status_code == 200, response.text
    told: dict[str, Any] = response.json
    return told


class TestAPlateForDivisions:
    def test_a_hundred_and_two_at_forty_need_fifty_one_holes(self, client: FlaskClient) -> None:
        told = ask(client, {"divisions": 102, "circles": 1, "circle_diameter": 150, "hole_diameter": 6, "unit": "mm"})
        assert (told["holes"], told["on_plate"]) == (51, None)
        assert told["needed"] == {
            "divisions": 102,
            "holes": 51,
            "multiples": [51, 102, 153, 204, 255, 306, 357],
            "working": [
                "40/102 = 20/51",
                "A circle of 51 holes or a multiple of 51 makes whole spaces of it.",
            ],
        }
        assert told["setup"]["method"] == "nearest"
        assert told["setup"]["positions"] is None
        # 25/51 of a place of 1/1960 turn; a fortieth of it is left; 324.13" on a circle of 150 mm.
        error = 25 / 51 / 1960
        assert told["error"]["worst_seconds"] == pytest.approx(error * 1_296_000, abs=1e-4)
        assert told["error"]["at_circle"] == pytest.approx(error * pi * 150)
        assert told["left_in_work"] == {
            "divisions": 102,
            "move": {"turns": 0, "holes": 20, "circle": 51, "sector_holes": 21},
            "at_most": False,
            "worst_seconds": pytest.approx(error * 1_296_000 / 40, abs=1e-4),
            "single_pitch_seconds": pytest.approx(10.3721, abs=1e-4),
            "total_pitch_seconds": pytest.approx(2 * error * 1_296_000 / 40, abs=1e-4),
        }
        assert told["hole_fits"] is True
        assert "not divided" in told["notes"][1]
        assert len(told["notes"]) == 5

    def test_the_head_with_the_plate_divides_it_and_so_does_the_link(self, client: FlaskClient) -> None:
        for divisions in (102, 127, 51, 365, 254):
            told = ask(client, {"divisions": divisions})
            setup = client.post("/v1/solve", json={"work": {"divisions": divisions}, "head": told["head"]}).json
            best = setup["setups"][0]
            assert (best["method"], best["exact"], best["move"]["plate"]) == ("plain", True, 4)
            move = told["left_in_work"]["move"]
            assert {name: best["move"][name] for name in move} == move
            same = client.get("/v1/solve?" + told["link"].removeprefix("/#")).json
            assert same["setups"] == setup["setups"]

    def test_a_circle_that_the_head_has_is_named(self, client: FlaskClient) -> None:
        told = ask(client, {"divisions": 28, "head": {"ratio": 60}})
        # 60/28 = 2 1/7: seven holes; the head has 21 but no 7.
        assert (told["holes"], told["on_plate"]) == (7, None)
        assert 28 not in told["divides"]["new"]
        told = ask(client, {"divisions": 49})
        assert (told["on_plate"], told["divides"]["new"]) == (3, [])
        assert told["head"]["plates"] == [
            [15, 16, 17, 18, 19, 20], [21, 23, 27, 29, 31, 33], [37, 39, 41, 43, 47, 49],
        ]  # fmt: skip


class TestAPlateByItsHoles:
    def test_limits_are_told_for_any_work(self, client: FlaskClient) -> None:
        told = ask(client, {"holes": 51, "circles": 1})
        left, error = told["left_in_work"], told["error"]
        assert (told["needed"], told["link"], left["divisions"], left["move"]) == (None, None, None, None)
        assert left["at_most"] is True
        assert left["worst_seconds"] == pytest.approx(error["worst_seconds"] / 40, abs=1e-4)
        assert left["total_pitch_seconds"] == pytest.approx(error["total_pitch_seconds"] / 40, abs=1e-4)
        assert error["at_circle"] is None
        assert (told["sizes"], told["hole_fits"]) == ([], None)
        assert {(row["x"], row["y"]) for row in told["schedule"]} == {(None, None)}

    def test_it_may_be_drilled_on_any_head(self, client: FlaskClient) -> None:
        for head in ({}, TABLE, FIXTURE, {"ratio": 60}):
            told = ask(client, {"holes": 35, "head": head})
            assert len(told["schedule"]) == 35
            assert not problems_of("PlateOut", told)
            again = client.post(ADDRESS, json={"holes": 35, "head": told["head"]}).json
            assert again["on_plate"] == len(told["head"]["plates"])
            assert again["head"] == told["head"]

    def test_a_head_that_takes_no_more_circles_gets_no_plate(self, client: FlaskClient) -> None:
        for question in ({"holes": 400}, {"divisions": 16000}):
            told = ask(client, {**question, "head": HUNDRED})
            assert (told["head"], told["link"]) == (None, None)

    def test_coordinates_go_with_the_holes_even_in_blocks(self, client: FlaskClient) -> None:
        gears = [24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100]
        told = ask(client, {"holes": 383, "head": {"change_gears": gears}, "circle_diameter": 200, "unit": "mm"})
        plain = ask(client, {"holes": 383, "circle_diameter": 200, "unit": "mm"})
        assert told["setup"]["every"] > 1
        by_division = {row["division"]: (row["x"], row["y"]) for row in told["schedule"]}
        assert by_division == {row["division"]: (row["x"], row["y"]) for row in plain["schedule"]}

    def test_the_smallest_circle_is_told_for_a_hole(self, client: FlaskClient) -> None:
        told = ask(client, {"holes": 6, "hole_diameter": 4, "unit": "in"})
        # Six holes: the chord is the radius, and 4 + 2 in are wanted from centre to centre.
        assert [(size["name"], size["text"]) for size in told["sizes"]] == [
            ("Smallest circle for these holes", "12.0000 in")
        ]
        assert told["hole_fits"] is None


@pytest.mark.parametrize(
    ("question", "pointer", "sentence"),
    [
        ({}, "#", "Give exactly one of holes and divisions."),
        ({"holes": 51, "divisions": 102}, "#", "Give exactly one of holes and divisions."),
        ({"holes": 1}, "#/holes", "A circle has 2 to 400 holes, not 1."),
        ({"holes": 401}, "#/holes", "A circle has 2 to 400 holes, not 401."),
        ({"holes": "51"}, "#/holes", "Give a whole number without quotes: 51."),
        ({"divisions": 0}, "#/divisions", "Divisions are a whole number from 1 to 1,000,000."),
        ({"divisions": 1_000_001}, "#/divisions", "Divisions are a whole number from 1 to 1,000,000."),
        (
            {"divisions": 20},
            "#/divisions",
            "No plate is needed for 20 divisions: a move is 2 whole turns of the crank.",
        ),
        (
            {"divisions": 997},
            "#/divisions",
            "997 divisions at 40:1 need a circle of 997 holes or a multiple; a circle has at most 400. Use gears or "
            "the nearest hole.",
        ),
        ({"holes": 51, "circles": 3}, "#/circles", "Give 1 or 2: how many circles of the head a hole may take."),
        ({"holes": 51, "circle_diameter": 9}, "#/unit", 'Say in which unit the lengths are: "mm" or "in".'),
        ({"holes": 51, "hole_diameter": 9}, "#/unit", 'Say in which unit the lengths are: "mm" or "in".'),
        ({"holes": 51, "x": 1}, "#/circle_diameter", "Coordinates need the diameter of the circle."),
        (
            {"holes": 6, "circle_diameter": 60, "hole_diameter": 31, "unit": "mm"},
            "#/hole_diameter",
            "Holes of 31.000 mm meet: their centres are 30.000 mm apart. Give fewer or smaller holes, or a larger "
            "circle.",
        ),
        (
            {"holes": 37, "head": FIXTURE},
            "#/head",
            "This head has 36 places round the plate, too few for 37 holes. Drill fewer holes, or drill them on "
            "another head.",
        ),
        (
            {"holes": 51, "colour": "red"},
            "#/colour",
            'There is no field "colour" here; the fields are holes, divisions, head, circles, circle_diameter, '
            "hole_diameter, unit, start, sense, zero, x, y.",
        ),
    ],
)
def test_what_cannot_be_made_is_refused(
    client: FlaskClient, question: dict[str, Any], pointer: str, sentence: str
) -> None:
    response = client.post(ADDRESS, json=question)
    assert response.status_code == 422
    assert response.json["errors"] == [{"pointer": pointer, "detail": sentence}]


def test_everything_wrong_is_told_at_once(client: FlaskClient) -> None:
    response = client.post(ADDRESS, json={"holes": 0, "circles": 0, "circle_diameter": 9, "head": {"ratio": 0}})
    assert {error["pointer"] for error in response.json["errors"]} == {
        "#/holes", "#/circles", "#/head/ratio",
    }  # fmt: skip


class TestTheFormOfTheAnswer:
    @pytest.mark.parametrize(
        ("accept", "content"),
        [
            (None, "application/json"),
            ("*/*", "application/json"),
            ("application/json", "application/json"),
            ("text/csv", "text/csv; charset=utf-8"),
            ("text/csv, */*;q=0.5", "text/csv; charset=utf-8"),
            ("application/json;q=0.5, text/csv", "text/csv; charset=utf-8"),
            ("application/json, text/csv;q=0.5", "application/json"),
            ("text/csv;q=0", "application/json"),
            ("text/*", "application/json"),
            ("image/png", "application/json"),
        ],
    )
    def test_is_a_sheet_only_for_whoever_would_rather_have_one(
        self, client: FlaskClient, accept: str | None, content: str
    ) -> None:
        headers = {} if accept is None else {"Accept": accept}
        response = client.post(ADDRESS, json={"holes": 51}, headers=headers)
        assert response.content_type == content
        assert "Accept" in response.headers["Vary"]

    def test_a_sheet_has_a_name(self, client: FlaskClient) -> None:
        response = client.post(ADDRESS, json={"divisions": 102}, headers={"Accept": "text/csv"})
        assert response.headers["Content-Disposition"] == 'attachment; filename="plate-51.csv"'

    def test_a_refusal_stays_a_problem(self, client: FlaskClient) -> None:
        response = client.post(ADDRESS, json={"holes": 1}, headers={"Accept": "text/csv"})
        assert response.content_type == "application/problem+json"

    def test_the_same_question_gives_the_same_bytes(self, client: FlaskClient) -> None:
        for headers in ({}, {"Accept": "text/csv"}):
            first, second = (
                client.post(ADDRESS, json={"holes": 127, "circle_diameter": 99, "unit": "mm"}, headers=headers)
                for _ in range(2)
            )
            assert first.data == second.data

    @pytest.mark.parametrize("head", [{}, TABLE, {"change_gears": [24, 24, 28, 32, 40, 44]}])
    @pytest.mark.parametrize("more", [{}, {"circle_diameter": 120, "hole_diameter": 0.5, "unit": "mm"}])
    def test_is_as_described(self, client: FlaskClient, head: dict[str, Any], more: dict[str, Any]) -> None:
        for asked in ({"holes": 2}, {"holes": 127}, {"divisions": 365}, {"holes": 400, "circles": 1}):
            told = ask(client, {**asked, **more, "head": head})
            assert not problems_of("PlateOut", told)
