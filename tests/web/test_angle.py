"""/v1/angle: the contract's example and its refusals."""

from __future__ import annotations

from math import isclose, pi, sin, tan
from typing import Any

import pytest
from flask.testing import FlaskClient


def ask(client: FlaskClient, question: dict[str, Any]) -> dict[str, Any]:
    response = client.post("/v1/angle", json=question)
    assert response.status_code == 200, response.text
    told: dict[str, Any] = response.json
    return told


def test_a_crank_move_becomes_its_angle_in_every_form(client: FlaskClient) -> None:
    told = ask(client, {"crank": {"turns": 4, "holes": 3, "circle": 18}, "diameter": 100, "sine_bar": 5})
    assert list(told) == [
        "angle",
        "radians",
        "gon",
        "crank",
        "arc",
        "chord",
        "rise_per_100",
        "sine_bar_height",
        "service_version",
    ]
    assert told["angle"] == {"degrees": 37.5, "dms": "37°30'00.00\"", "turns": "5/48"}
    assert told["crank"] == {
        "turns": "25/6",
        "settings": [{"turns": 4, "holes": 3, "circle": 18, "plate": 1}],
        "nearest": None,
    }
    angle = 37.5 * pi / 180
    for name, value in {
        "radians": angle,
        "gon": 37.5 / 0.9,
        "arc": 50 * angle,
        "chord": 100 * sin(angle / 2),
        "rise_per_100": 100 * tan(angle),
        "sine_bar_height": 5 * sin(angle),
    }.items():
        assert isclose(told[name], value, rel_tol=1e-12), name


def test_lengths_are_null_unless_asked_for_and_defined(client: FlaskClient) -> None:
    told = ask(client, {"angle": 90})
    assert [told[name] for name in ("arc", "chord", "rise_per_100", "sine_bar_height")] == [None] * 4
    assert ask(client, {"angle": 100, "sine_bar": 5})["sine_bar_height"] is None


def test_an_angle_that_no_circle_makes_has_a_nearest_setting(client: FlaskClient) -> None:
    crank = ask(client, {"angle": "1'"})["crank"]
    assert crank["settings"] == []
    assert list(crank["nearest"]) == ["turns", "holes", "circle", "plate", "error_seconds"]
    # A whole hole of the finest circle is 360 degrees / (40 x 49); the nearest is never further than half of it.
    assert abs(crank["nearest"]["error_seconds"]) <= 360 * 3600 / 40 / 49 / 2


def test_a_head_without_plates_turns_whole_turns(client: FlaskClient) -> None:
    head = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"divisions": 100}}
    assert ask(client, {"angle": 8, "head": head})["crank"]["settings"] == [
        {"turns": 2, "holes": 0, "circle": None, "plate": None}
    ]


@pytest.mark.parametrize(
    ("question", "errors"),
    [
        ({}, [("#", "Give exactly one of angle and crank.")]),
        ({"angle": 1, "crank": {"turns": 1}}, [("#/crank", "Give exactly one of angle and crank.")]),
        ({"crank": {}}, [("#/crank/turns", "This field is needed.")]),
        (
            {"crank": {"turns": 1, "holes": 3}},
            [("#/crank/circle", "Name the circle on which the spaces are counted.")],
        ),
        ({"crank": {"turns": 1, "holes": 1, "circle": 1}}, [("#/crank/circle", "A circle has 2 to 400 holes.")]),
        ({"crank": {"turns": 10**12}}, [("#/crank/turns", "Give at most 12 figures.")]),
        (
            {"crank": {"turns": 0, "holes": -(10**12), "circle": 20}},
            [("#/crank/holes", "Give at most 12 figures.")],
        ),
        ({"crank": {"turns": 40001}}, [("#/crank/turns", "The move may turn the spindle 1,000 times at most.")]),
        (
            {"angle": "37°75'"},
            [("#/angle", 'Stopped at character 4 of "37°75\'": expected minutes below 60.')],
        ),
        (
            {"angle": "22", "diameter": -1, "sine_bar": "5", "x": 1},
            [
                ("#/diameter", "Give a length above 0 and at most 1,000,000."),
                ("#/sine_bar", "Give a number without quotes: 5."),
                ("#/x", 'There is no field "x" here; the fields are angle, crank, head, diameter, sine_bar.'),
            ],
        ),
    ],
)
def test_what_cannot_be_converted_is_refused(
    client: FlaskClient, question: dict[str, Any], errors: list[tuple[str, str]]
) -> None:
    response = client.post("/v1/angle", json=question)
    assert response.status_code == 422
    assert [(error["pointer"], error["detail"]) for error in response.json["errors"]] == errors


@pytest.mark.parametrize(
    ("query", "question"),
    [
        ("angle=37.5", {"angle": "37.5"}),
        ("turns=4&holes=3&circle=18&diameter=100", {"crank": {"turns": 4, "holes": 3, "circle": 18}, "diameter": 100}),
        ("angle=1/7 turn&ratio=90&plates=21,24", {"angle": "1/7 turn", "head": {"ratio": 90, "plates": [[21, 24]]}}),
    ],
)
def test_a_query_converts_the_same(client: FlaskClient, query: str, question: dict[str, Any]) -> None:
    assert client.get(f"/v1/angle?{query}").json == ask(client, question)


def test_words_of_solving_are_not_words_of_converting(client: FlaskClient) -> None:
    response = client.get("/v1/angle?divisions=7")
    assert response.status_code == 422
    assert response.json["errors"][0]["parameter"] == "divisions"
