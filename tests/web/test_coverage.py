"""/v1/coverage: what a head does with a range of numbers, and what to own next."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from typing import Any

import pytest
from flask.testing import FlaskClient

from dividing import __version__
from tests.second.holes import SET_I, worst_of_divisions
from tests.web.test_openapi import problems_of

ADDRESS = "/v1/coverage"
GEARS = [24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100]
GEARED = {"change_gears": GEARS}
TABLE = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"graduation": "0°01'"}}
WHOLE = "Give a whole number, such as 40."


def ask(client: FlaskClient, question: dict[str, Any]) -> dict[str, Any]:
    response = client.post(ADDRESS, json=question)
    assert response.status_code == 200, response.text
    told: dict[str, Any] = response.json
    return told


def refused(client: FlaskClient, question: Any) -> list[tuple[str, str]]:
    response = client.post(ADDRESS, json=question)
    assert response.status_code == 422, response.text
    assert response.content_type == "application/problem+json"
    return [(error["pointer"], error["detail"]) for error in response.json["errors"]]


class TestTheNumbers:
    def test_each_stands_in_its_place_with_its_method(self, client: FlaskClient) -> None:
        # 51 is made by two moves; 53 divides nothing that set I makes at 40 to 1.
        told = ask(client, {"from": 50, "to": 53})
        exact = {"exact": True, "every": 1, "worst_seconds": 0.0, "within_tolerance": None}
        nothing = {"method": None, "exact": False, "every": None, "worst_seconds": None, "within_tolerance": None}
        assert (told["from"], told["to"]) == (50, 53)
        assert told["numbers"] == [
            {"divisions": 50, "method": "plain", **exact},
            {"divisions": 51, "method": "compound", **exact},
            {"divisions": 52, "method": "plain", **exact},
            {"divisions": 53, **nothing},
        ]
        assert told["counts"] == {"direct": 0, "plain": 2, "differential": 0, "compound": 1, "dial": 0}
        assert (told["exact"], told["within"], told["gaps"]) == (3, 0, [53])
        assert told["service_version"] == __version__

    @pytest.mark.parametrize("head", [{}, GEARED, TABLE, {"ratio": 60, "change_gears": [24, 32, 48, 64]}])
    def test_each_is_as_solve_answers_it(self, client: FlaskClient, head: dict[str, Any]) -> None:
        told = ask(client, {"from": 2, "to": 400, "head": head})
        for found in [*told["numbers"][1::23], *(told["numbers"][gap - 2] for gap in told["gaps"][::23])]:
            question = {"work": {"divisions": found["divisions"]}, "head": head, "limit": 1}
            first = client.post("/v1/solve", json=question).json["setups"][0]
            assert found["exact"] == first["exact"]
            if found["exact"]:
                assert (found["method"], found["every"]) == (first["method"], first["every"])

    @pytest.mark.parametrize("head", [{}, GEARED, TABLE])
    @pytest.mark.parametrize("tolerance", [None, {"angle": "0°00'07\""}])
    def test_counts_add_up(self, client: FlaskClient, head: dict[str, Any], tolerance: Any) -> None:
        question = {"from": 2, "to": 300, "head": head, **({"tolerance": tolerance} if tolerance else {})}
        told = ask(client, question)
        numbers = told["numbers"]
        by_method = Counter(each["method"] for each in numbers if each["exact"])
        assert {method: count for method, count in told["counts"].items() if count} == by_method
        assert sum(told["counts"].values()) == told["exact"]
        assert told["exact"] + told["within"] + len(told["gaps"]) == len(numbers) == 299
        within = [each["divisions"] for each in numbers if each["within_tolerance"] or each["exact"]]
        assert told["gaps"] == [each["divisions"] for each in numbers if each["divisions"] not in set(within)]

    def test_several_spaces_a_move_are_told(self, client: FlaskClient) -> None:
        # (13/33)/(40 - 301/132) = 4/383: four spaces a move; with one space 383 is the first that is not exact.
        assert Fraction(13, 33) / (40 - Fraction(301, 132)) == Fraction(4, 383)
        told = ask(client, {"from": 382, "to": 383, "head": GEARED})
        assert [(each["method"], each["every"]) for each in told["numbers"]] == [
            ("differential", 1),
            ("differential", 4),
        ]


class TestATolerance:
    def test_what_is_near_enough_is_no_gap(self, client: FlaskClient) -> None:
        # Two circles at the nearest holes: 53 divisions on the finest grid of two circles of one plate, 47 and 49.
        worst = worst_of_divisions(53, 40 * 47 * 49) * 1_296_000
        told = ask(client, {"from": 53, "to": 53, "tolerance": {"angle": "0°00'08\""}})
        found = told["numbers"][0]
        assert (found["method"], found["exact"], found["within_tolerance"]) == ("nearest", False, True)
        assert found["worst_seconds"] == pytest.approx(float(worst), abs=1e-4)
        assert (told["exact"], told["within"], told["gaps"]) == (0, 1, [])

    def test_what_is_not_is_told_with_its_error(self, client: FlaskClient) -> None:
        told = ask(client, {"from": 53, "to": 54, "tolerance": {"angle": "0°00'00.5\""}})
        found = told["numbers"]
        assert (found[0]["method"], found[0]["within_tolerance"]) == ("nearest", False)
        assert (found[1]["method"], found[1]["exact"], found[1]["within_tolerance"]) == ("plain", True, True)
        assert (told["exact"], told["within"], told["gaps"]) == (1, 0, [53])

    def test_a_length_at_the_rim_serves(self, client: FlaskClient) -> None:
        tolerance = {"at_rim": 0.02, "diameter": 120}
        assert ask(client, {"from": 50, "to": 60, "tolerance": tolerance})["gaps"] == []

    def test_only_what_would_be_exact_counts_for_the_next(self, client: FlaskClient) -> None:
        told = ask(client, {"from": 53, "to": 53, "tolerance": {"angle": "0°00'00.5\""}})
        assert [each["circle"] for each in told["next"]["circles"]] == [53, 106, 159, 212, 265]


class TestWhatToOwn:
    def test_a_circle_with_what_it_closes(self, client: FlaskClient) -> None:
        # 102 at 40 to 1 needs a multiple of 102/2 = 51 holes.
        told = ask(client, {"from": 102, "to": 102, "head": {"plates": [list(SET_I[0][:2])]}})
        assert told["next"]["circles"][0] == {"circle": 51, "closes": 1, "numbers": [102]}
        assert told["next"]["gears"] == []

    def test_what_is_told_is_so_on_the_head_that_has_it(self, client: FlaskClient) -> None:
        head: dict[str, Any] = {"plates": [[15, 16, 17, 18, 19, 20]], "change_gears": [24, 32, 40, 48]}
        question = {"from": 2, "to": 250, "head": head}
        told = ask(client, question)
        assert len(told["next"]["circles"]) == len(told["next"]["gears"]) == 5
        for found in told["next"]["circles"]:
            with_it = {**head, "plates": [*head["plates"], [found["circle"]]]}
            left = ask(client, {**question, "head": with_it, "additions": False})["gaps"]
            assert set(told["gaps"]) - set(left) == set(found["numbers"])
            assert found["closes"] == len(found["numbers"])
        for found in told["next"]["gears"]:
            with_it = {**head, "change_gears": [*head["change_gears"], found["gear"]]}
            left = ask(client, {**question, "head": with_it, "additions": False})["gaps"]
            assert set(told["gaps"]) - set(left) == set(found["numbers"])

    def test_it_may_be_left_out(self, client: FlaskClient) -> None:
        question = {"from": 2, "to": 60}
        without = ask(client, {**question, "additions": False})
        assert without["next"] is None
        assert {**without, "next": 0} == {**ask(client, question), "next": 0}


class TestRefusals:
    @pytest.mark.parametrize(
        ("question", "errors"),
        [
            ({}, [("#/from", "This field is needed."), ("#/to", "This field is needed.")]),
            ({"from": 9, "to": 5}, [("#/to", "The last number comes before the first, 9; give 9 or more.")]),
            (
                {"from": 0, "to": 10_001},
                [
                    ("#/from", "The first number is a whole number from 1 to 10,000."),
                    ("#/to", "The last number is a whole number from 1 to 10,000."),
                ],
            ),
            ({"from": "2", "to": 9}, [("#/from", "Give a whole number without quotes: 2.")]),
            ({"from": 2, "to": True}, [("#/to", WHOLE)]),
            (
                {"from": 2, "to": 9, "step": 2},
                [("#/step", 'There is no field "step" here; the fields are from, to, head, tolerance, additions.')],
            ),
            ({"from": 2, "to": 9, "additions": 1}, [("#/additions", "Give true or false.")]),
            ({"from": 2, "to": 9, "head": {"ratio": 0}},
             [("#/head/ratio", "The ratio is a whole number of crank turns, 1 to 10,000.")]),
            ({"from": 2, "to": 9, "tolerance": {"angle": "-1°"}},
             [("#/tolerance/angle", "A tolerance is an angle above 0.")]),
        ],
    )  # fmt: skip
    def test_what_cannot_be_swept(
        self, client: FlaskClient, question: dict[str, Any], errors: list[tuple[str, str]]
    ) -> None:
        assert refused(client, question) == errors

    def test_a_long_range_held_against_a_tolerance_is_split(self, client: FlaskClient) -> None:
        head = {"plates": [list(range(70, 168))], "direct_circles": []}
        question = {"from": 1, "to": 10_000, "head": head, "tolerance": {"angle": "0°01'"}}
        response = client.post(ADDRESS, json=question)
        assert response.status_code == 422
        assert response.json["type"] == "/docs#problem-too-much-work"
        assert response.json["detail"].endswith("or leave the tolerance out.")
        assert ask(client, {**question, "tolerance": None, "additions": False})["to"] == 10_000

    def test_what_to_own_is_left_out_where_it_costs_too_much(self, client: FlaskClient) -> None:
        head = {"ratio": 9_999, "plates": [list(range(301, 331))], "change_gears": list(range(101, 124))}
        question = {"from": 1, "to": 10_000, "head": head}
        response = client.post(ADDRESS, json=question)
        assert response.status_code == 422
        assert response.json["type"] == "/docs#problem-too-much-work"
        assert response.json["detail"].endswith("Set additions to false, or ask for fewer numbers.")
        assert ask(client, {**question, "additions": False})["next"] is None


@pytest.mark.parametrize("question", [{"from": 1, "to": 60}, {"from": 50, "to": 60, "tolerance": {"angle": "1'"}},
                                      {"from": 2, "to": 9, "head": TABLE, "additions": False}])  # fmt: skip
def test_an_answer_is_as_it_is_described(client: FlaskClient, question: dict[str, Any]) -> None:
    assert problems_of("CoverageOut", ask(client, question)) == []
