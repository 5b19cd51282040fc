"""/v1/locate: where the head can be standing."""

from __future__ import annotations

from typing import Any

import pytest
from flask.testing import FlaskClient


def ask(client: FlaskClient, question: dict[str, Any]) -> dict[str, Any]:
    response = client.post("/v1/locate", json=question)
    assert response.status_code == 200, response.text
    told: dict[str, Any] = response.json
    return told


def test_a_hole_and_a_rough_reading_find_the_cut(client: FlaskClient) -> None:
    # 21 spaces a cut on 49: after three moves the pin is in 63 - 49 = hole 14, at 3/28 of a turn, 38.57 degrees.
    told = ask(client, {"work": {"divisions": 28}, "seen": {"hole": 14, "spindle": "40°"}})
    assert [each["cut"] for each in told["candidates"]] == [4]
    found = told["candidates"][0]
    assert (found["hole"], found["scale"], found["hole_agrees"]) == (14, "38°34'", True)
    assert found["off_degrees"] == pytest.approx(40 - 360 * 3 / 28)
    assert (found["next"]["cut"], found["next"]["turns"], found["next"]["hole"]) == (5, 1, 35)
    assert told["setup"]["move"]["circle"] == 49


def test_the_setup_in_use_may_be_told(client: FlaskClient) -> None:
    setup = {"method": "plain", "circle": 21, "turns": 1, "holes": 9}
    told = ask(client, {"work": {"divisions": 28}, "setup": setup, "seen": {"hole": 9, "spindle": 12}})
    assert told["setup"]["move"]["circle"] == 21
    assert [each["cut"] for each in told["candidates"]] == [2]


def test_without_a_second_move_one_circle_is_meant(client: FlaskClient) -> None:
    # At 60:1 a division of 351 is 6 2/3 places of 39, so a third of one is the worst; with 49 it is 326 2/3 of theirs.
    question = {"work": {"divisions": 351}, "head": {"ratio": 60}, "seen": {"spindle": 0}}
    told = ask(client, {**question, "setup": {"method": "nearest", "circle": 39}})
    assert (told["setup"]["move"]["circle"], told["setup"]["second_move"]) == (39, None)
    both = {"method": "nearest", "circle": 39, "second": {"holes": None, "circle": 49}}
    told = ask(client, {**question, "setup": both})
    assert told["setup"]["second_move"]["circle"] == 49


def test_what_is_not_told_may_be_anything_where_only_two_circles_serve(client: FlaskClient) -> None:
    # 40/51 = 12/18 + 2/17.
    setup = {"method": "compound", "circle": 18}
    told = ask(client, {"work": {"divisions": 51}, "setup": setup, "seen": {"spindle": 0}})
    assert told["setup"]["second_move"]["circle"] == 17


@pytest.mark.parametrize("divisions", [28, 51, 127])
def test_a_setup_of_an_answer_is_found_again(client: FlaskClient, divisions: int) -> None:
    for setup in client.post("/v1/solve", json={"work": {"divisions": divisions}, "limit": 8}).json["setups"]:
        told = {
            "method": setup["method"],
            **{name: setup["move"][name] for name in ("turns", "holes", "circle", "plate")},
        }
        if setup["second_move"]:
            told["second"] = {name: setup["second_move"][name] for name in ("holes", "circle")}
        found = ask(client, {"work": {"divisions": divisions}, "setup": told, "seen": {"spindle": 0}})
        assert found["setup"]["summary"] == setup["summary"]


GEARED = {"change_gears": [24, 28, 48, 56]}
OWN: list[tuple[dict[str, Any], dict[str, Any], tuple[int, int]]] = [
    # 40/51 = 2/17 + 12/18, the smaller move first; after three moves the pin is in hole 6, at 3/51 of a turn, 21.2°.
    (
        {"work": {"divisions": 51}, "seen": {"hole": 6, "spindle": 21}},
        {"method": "compound", "turns": 0, "holes": 2, "circle": 17, "second": {"holes": 12, "circle": 18}},
        (4, 8),
    ),
    # 40 - 73 x 12/21 = -48/28; after two moves the pin is in 24 - 21 = hole 3, at 2/73, 9.9°.
    (
        {"work": {"divisions": 73}, "head": GEARED, "seen": {"hole": 3, "spindle": 10}},
        {"method": "differential", "holes": 12, "circle": 21, "gearing": {"spindle": 48, "worm": 28, "idlers": 2}},
        (3, 15),
    ),
    # 40/8 = 5 turns, on whichever circle.
    (
        {"work": {"divisions": 8}, "seen": {"hole": 0, "spindle": 90}},
        {"method": "plain", "turns": 5, "holes": 0, "circle": 49, "plate": 3},
        (3, 0),
    ),
]


@pytest.mark.parametrize(("question", "setup", "found"), OWN)
def test_a_setup_of_ones_own_serves_where_it_is_right(
    client: FlaskClient, question: dict[str, Any], setup: dict[str, Any], found: tuple[int, int]
) -> None:
    told = ask(client, {**question, "setup": setup})
    assert told["setup"]["move"]["circle"] == setup["circle"]
    assert [(each["cut"], each["next"]["hole"]) for each in told["candidates"]] == [found]


@pytest.mark.parametrize(
    ("divisions", "setup"),
    [
        (8, {"method": "plain", "turns": 5, "holes": 0, "circle": 49, "plate": 2}),  # 49 is on plate 3
        (51, {"method": "compound", "holes": 2, "circle": 17, "second": {"holes": 11, "circle": 18}}),
        (28, {"method": "plain", "turns": -1, "holes": 21, "circle": 49}),
        # One circle of 49 serves, and 47 with 49, but no 49 with 47.
        (127, {"method": "nearest", "circle": 49, "second": {"holes": None, "circle": 47}}),
        (127, {"method": "nearest", "circle": 49, "second": {"holes": 0, "circle": 47}}),
    ],
)
def test_one_that_is_not_right_does_not(client: FlaskClient, divisions: int, setup: dict[str, Any]) -> None:
    question = {"work": {"divisions": divisions}, "setup": setup, "seen": {"spindle": 0}}
    response = client.post("/v1/locate", json=question)
    assert response.status_code == 422
    assert [error["pointer"] for error in response.json["errors"]] == ["#/setup"]


def test_the_last_cut_has_no_next(client: FlaskClient) -> None:
    told = ask(client, {"work": {"divisions": 4}, "seen": {"spindle": "270°", "give": "1°"}})
    assert [(each["cut"], each["next"]) for each in told["candidates"]] == [(4, None)]


def test_where_nothing_fits_nothing_is_said(client: FlaskClient) -> None:
    assert ask(client, {"work": {"divisions": 4}, "seen": {"spindle": "45°", "give": 1}})["candidates"] == []


HELIX = {"kind": "helix", "starts": 3, "diameter": 20, "lead": 100, "hand": "left", "unit": "mm"}


def test_where_a_helix_is_cut_the_worm_stays_in_mesh(client: FlaskClient) -> None:
    # Three divide the direct plate's 24, yet the setup is plain: 40/3 = 13 1/3 turns.
    told = ask(client, {"work": {"part": HELIX}, "seen": {"spindle": "120°"}})
    assert (told["setup"]["method"], told["setup"]["move"]["turns"]) == ("plain", 13)
    assert [each["cut"] for each in told["candidates"]] == [2]


@pytest.mark.parametrize(
    ("question", "pointer", "start"),
    [
        (
            {"work": {"divisions": 73}, "setup": {"method": "plain"}},
            "#/setup/method",
            "Nothing serves with these methods. Plain: No circle on these plates is a multiple of 73.",
        ),
        (
            {"work": {"part": HELIX}, "setup": {"method": "direct"}},
            "#/setup/method",
            "Nothing serves with these methods. Direct: While a helix is cut",
        ),
        (
            {"work": {"part": HELIX}, "head": {"plates": []}},
            "#/head",
            "Nothing serves on this head. Direct, differential",
        ),
    ],
)
def test_where_nothing_serves_the_field_that_asked_is_told(
    client: FlaskClient, question: dict[str, Any], pointer: str, start: str
) -> None:
    (error,) = client.post("/v1/locate", json={"seen": {"spindle": 1}, **question}).json["errors"]
    assert (error["pointer"], error["detail"].startswith(start)) == (pointer, True)


@pytest.mark.parametrize(
    ("question", "pointer", "sentence"),
    [
        ({"seen": {}}, "#/seen/spindle", "This field is needed."),
        ({"seen": {"spindle": 1, "hole": -1}}, "#/seen/hole", "Count the hole from 0, the start hole, up to 399."),
        (
            {"seen": {"spindle": 1, "hole": 49}},
            "#/seen/hole",
            "The circle of 49 has no hole 49: count from 0, the start hole, to 48.",
        ),
        ({"seen": {"spindle": 1, "give": "-1°"}}, "#/seen/give", "The reading may be off by 0° to 360°."),
        (
            {"seen": {"spindle": 1}, "work": {"divisions": 20001}},
            "#/work",
            "A schedule of more than 20,000 cuts is too long to search; split the work.",
        ),
        (
            {"seen": {"spindle": 1}, "setup": {"method": "plain", "circle": 20}},
            "#/setup",
            "No such setup answers this work on this head. Give it as it was solved, or leave it out for the best one.",
        ),
    ],
)
def test_what_cannot_be_searched_is_refused(
    client: FlaskClient, question: dict[str, Any], pointer: str, sentence: str
) -> None:
    response = client.post("/v1/locate", json={"work": {"divisions": 28}, **question})
    assert response.status_code == 422
    assert response.json["errors"] == [{"pointer": pointer, "detail": sentence}]
