"""/v1/verify: verdicts and slips on the wire."""

from __future__ import annotations

from typing import Any

import pytest
from flask.testing import FlaskClient

from dividing.indexing.head import TWELVE_GEARS

GEARED = {"change_gears": list(TWELVE_GEARS)}
IN_DIVISIONS = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"divisions": 100}}


def ask(client: FlaskClient, question: dict[str, Any]) -> dict[str, Any]:
    response = client.post("/v1/verify", json=question)
    assert response.status_code == 200, response.text
    told: dict[str, Any] = response.json
    return told


def test_a_hole_counted_too_many_is_told_and_corrected(client: FlaskClient) -> None:
    claim = {"method": "plain", "turns": 1, "holes": 20, "circle": 49}
    told = ask(client, {"work": {"divisions": 28}, "claim": claim})
    assert list(told) == ["verdict", "makes", "error", "why", "likely_slips", "right", "service_version"]
    assert told["verdict"] == "off"
    # (1 + 20/49)/40 of a turn each: 1960/69 of them go round.
    assert (told["makes"]["step"]["turns"], told["makes"]["divisions"]) == ("69/1960", "1960/69")
    slip = told["likely_slips"][0]
    assert slip["slip"] == "counted_the_pin_hole"
    assert slip["corrected"] == {
        "method": "plain",
        "turns": 1,
        "holes": 21,
        "circle": 49,
        "second": None,
        "gearing": None,
        "reading": None,
    }
    assert told["right"]["move"] == {"turns": 1, "holes": 21, "circle": 49, "plate": 3, "sector_holes": 22}


def test_where_a_helix_is_cut_the_direct_plate_cannot_be_used(client: FlaskClient) -> None:
    helix = {"kind": "helix", "starts": 3, "diameter": 20, "lead": 100, "hand": "left", "unit": "mm"}
    told = ask(client, {"work": {"part": helix}, "claim": {"method": "direct", "holes": 8, "circle": 24}})
    assert (told["verdict"], told["makes"]["divisions"]) == ("cannot_be_set", "3")
    assert told["why"] == [
        "While a helix is cut the table screw drives the plate through the change gears and the worm stays in mesh, so "
        "compound, differential, dial and direct indexing cannot be combined with it."
    ]
    assert told["right"]["method"] == "plain"


VERDICTS: list[tuple[dict[str, Any], str]] = [
    ({"work": {"divisions": 28}, "claim": {"method": "plain", "turns": 1, "holes": 9, "circle": 21}}, "exact"),
    ({"work": {"divisions": 28}, "claim": {"method": "plain", "turns": 1, "holes": 10, "circle": 22}}, "cannot_be_set"),
    ({"work": {"divisions": 8}, "claim": {"method": "direct", "holes": 3, "circle": 24}}, "exact"),
    ({"work": {"divisions": 127}, "claim": {"method": "nearest", "circle": 49}}, "off"),
    (
        {"work": {"divisions": 127}, "claim": {"method": "nearest", "circle": 49}, "tolerance": {"angle": "6'"}},
        "within_tolerance",
    ),
    (
        {"work": {"divisions": 9}, "head": IN_DIVISIONS, "claim": {"method": "dial", "turns": 10, "reading": "0"}},
        "exact",
    ),
    (
        {"work": {"divisions": 36}, "head": IN_DIVISIONS, "claim": {"method": "dial", "turns": 2, "reading": 50}},
        "exact",
    ),
    (
        {
            "work": {"divisions": 73},
            "head": GEARED,
            "claim": {
                "method": "differential",
                "turns": 0,
                "holes": 10,
                "circle": 18,
                "gearing": {"spindle": 40, "worm": 72, "stud": None, "idlers": 2, "plate": "against"},
            },
        },
        "exact",
    ),
]


@pytest.mark.parametrize(("question", "verdict"), VERDICTS)
def test_a_claim_has_its_verdict(client: FlaskClient, question: dict[str, Any], verdict: str) -> None:
    told = ask(client, question)
    assert told["verdict"] == verdict
    assert bool(told["why"]) is (verdict == "cannot_be_set")


@pytest.mark.parametrize("divisions", [28, 51, 73, 8, 127])
def test_every_setup_that_is_exact_is_verified_as_such(client: FlaskClient, divisions: int) -> None:
    question = {"work": {"divisions": divisions}, "head": GEARED}
    for setup in client.post("/v1/solve", json={**question, "limit": 20}).json["setups"]:
        claim = {"method": setup["method"], **{name: setup["move"][name] for name in ("turns", "holes", "circle")}}
        if setup["second_move"]:
            claim["second"] = {name: setup["second_move"][name] for name in ("holes", "circle")}
        if setup["gearing"]:
            claim["gearing"] = {name: value for name, value in setup["gearing"].items() if name != "train"}
        told = ask(client, {**question, "claim": claim})
        assert told["verdict"] == "exact"
        assert told["likely_slips"] == []


def test_what_is_solved_unasked_with_several_divisions_a_move_is_exact(client: FlaskClient) -> None:
    # 60 - 127/3 x 4/3 = 32/9 = 64/24 x 32/24.
    question = {"work": {"divisions": 127}, "head": {"ratio": 60, "change_gears": [24, 24, 32, 64]}}
    train = {"spindle": 64, "worm": 24, "stud": [32, 24], "idlers": 0}
    claim = {"method": "differential", "turns": 1, "holes": 6, "circle": 18, "gearing": train}
    told = ask(client, {**question, "claim": claim})
    assert (told["verdict"], told["makes"]["step"]["turns"], told["likely_slips"]) == ("exact", "3/127", [])
    assert told["right"]["every"] == 3
    # One at a time was asked for, and this is not.
    assert ask(client, {**question, "every": 1, "claim": claim})["verdict"] == "off"


REFUSED: list[tuple[dict[str, Any], list[str]]] = [
    ({}, ["#/work", "#/claim"]),
    ({"work": {"divisions": 28}, "claim": {}}, ["#/claim/method"]),
    (
        {"work": {"divisions": 0}, "claim": {"method": "plain", "turns": -1, "holes": "9", "circle": 0, "x": 1}},
        ["#/work/divisions", "#/claim/holes", "#/claim/x", "#/claim/turns", "#/claim/circle"],
    ),
    ({"work": {"divisions": 51}, "claim": {"method": "compound", "holes": 1, "circle": 15}}, ["#/claim/second"]),
    (
        {
            "work": {"divisions": 51},
            "claim": {"method": "compound", "holes": 1, "circle": 15, "second": {"holes": None, "circle": 17}},
        },
        ["#/claim/second/holes"],
    ),
    (
        {
            "work": {"divisions": 51},
            "claim": {"method": "plain", "holes": 1, "circle": 15, "second": {"holes": 1, "circle": 17}},
        },
        ["#/claim/second"],
    ),
    (
        {
            "work": {"divisions": 51},
            "claim": {
                "method": "differential",
                "holes": 1,
                "circle": 15,
                "gearing": {"spindle": 24, "worm": 0, "stud": [24]},
            },
        },
        ["#/claim/gearing/stud"],
    ),
    ({"work": {"divisions": 7}, "claim": {"method": "dial", "turns": 1, "reading": "x"}}, ["#/claim/reading"]),
    ({"work": {"divisions": 7}, "claim": {"method": "dial", "turns": 1, "reading": []}}, ["#/claim/reading"]),
    ({"work": {"divisions": 7}, "claim": {"method": "dial", "turns": 1, "reading": "400°"}}, ["#/claim/reading"]),
    (
        {"work": {"divisions": 7}, "head": IN_DIVISIONS, "claim": {"method": "dial", "turns": 1, "reading": -1}},
        ["#/claim/reading"],
    ),
    ({"work": {"angles": [0, 1]}, "claim": {"method": "plain", "turns": 1}}, ["#/claim/method"]),
]


@pytest.mark.parametrize(("question", "pointers"), REFUSED)
def test_a_claim_that_cannot_be_read_is_refused(
    client: FlaskClient, question: dict[str, Any], pointers: list[str]
) -> None:
    response = client.post("/v1/verify", json=question)
    assert response.status_code == 422
    assert sorted(error["pointer"] for error in response.json["errors"]) == sorted(pointers)


def test_a_reading_in_radians_makes_no_exact_number_of_divisions(client: FlaskClient) -> None:
    table = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"graduation": "0°01'"}}
    claim = {"method": "dial", "turns": 12, "reading": "0.06 rad"}
    told = ask(client, {"work": {"divisions": 7}, "head": table, "claim": claim})
    assert (told["makes"]["step"]["turns"], told["makes"]["divisions"]) == (None, None)


def test_a_reading_counts_what_the_dial_counts(client: FlaskClient) -> None:
    claim = {"method": "dial", "turns": 12, "reading": "86"}
    in_lines = ask(client, {"work": {"divisions": 7}, "head": IN_DIVISIONS, "claim": claim})
    # 12 turns and 86 of 100 lines at 90:1.
    assert in_lines["makes"]["step"]["turns"] == "643/4500"
