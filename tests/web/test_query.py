"""The query form: the same question in a link, read and written."""

from __future__ import annotations

import json
from typing import Any
from urllib.parse import quote

import pytest
from flask.testing import FlaskClient

from dividing.indexing.head import TWELVE_GEARS
from dividing.web.limits import QUERY_LONGEST

SAME: list[tuple[str, dict[str, Any]]] = [
    ("divisions=28", {"work": {"divisions": 28}}),
    ("divisions=28.0", {"work": {"divisions": 28}}),
    ("angle=37°30'&count=3", {"work": {"angle": "37°30'", "count": 3}}),
    ("angle=22,5", {"work": {"angle": "22,5"}}),
    ("angles=0,22.5,61°15'", {"work": {"angles": ["0", "22.5", "61°15'"]}}),
    (
        'part={"kind":"flats","sides":"6","across_flats":"24.5","unit":"mm"}',
        {"work": {"part": {"kind": "flats", "sides": 6, "across_flats": 24.5, "unit": "mm"}}},
    ),
    ("divisions=28&ratio=60", {"work": {"divisions": 28}, "head": {"ratio": 60}}),
    (
        "divisions=7&plates=15,16/21,23&mounted_plate=2",
        {"work": {"divisions": 7}, "head": {"plates": [[15, 16], [21, 23]], "mounted_plate": 2}},
    ),
    (
        "divisions=8&plates=&direct_circles=24,30",
        {"work": {"divisions": 8}, "head": {"plates": [], "direct_circles": [24, 30]}},
    ),
    ("divisions=7&direct_circles=", {"work": {"divisions": 7}, "head": {"direct_circles": []}}),
    (
        "divisions=73&change_gears=24,24,28,32,40,44,48,56,64,72,86,100",
        {"work": {"divisions": 73}, "head": {"change_gears": list(TWELVE_GEARS)}},
    ),
    ("divisions=127&tolerance=0°01'", {"work": {"divisions": 127}, "tolerance": {"angle": "0°01'"}}),
    (
        "divisions=127&at_rim=0.02&diameter=120",
        {"work": {"divisions": 127}, "tolerance": {"at_rim": 0.02, "diameter": 120}},
    ),
    (
        "divisions=51&methods=plain,compound&every=2&limit=1",
        {"work": {"divisions": 51}, "methods": ["plain", "compound"], "every": 2, "limit": 1},
    ),
    ("divisions=6&positions=true&limit=1", {"work": {"divisions": 6}, "positions": True, "limit": 1}),
    (
        "divisions=7&ratio=90&plates=&direct_circles=&dial=0°01'/0°00'10\"",
        {
            "work": {"divisions": 7},
            "head": {
                "ratio": 90,
                "plates": [],
                "direct_circles": [],
                "dial": {"graduation": "0°01'", "vernier": "0°00'10\""},
            },
        },
    ),
    (
        "divisions=7&ratio=90&plates=&dial=100",
        {"work": {"divisions": 7}, "head": {"ratio": 90, "plates": [], "dial": {"divisions": 100}}},
    ),
    (
        "divisions=51&stop_circles=17,20&worm_disengages=false&idlers=0,1,1,2&screw=0.25 in",
        {
            "work": {"divisions": 51},
            "head": {
                "stop_circles": [17, 20],
                "worm_disengages": False,
                "screw": {"lead": 0.25, "unit": "in"},
                "idlers": {"simple": {"with": 0, "against": 1}, "compound": {"with": 1, "against": 2}},
            },
        },
    ),
]


def encoded(query: str) -> str:
    return quote(query, safe="=&,/")


@pytest.mark.parametrize(("query", "body"), SAME)
def test_a_query_is_the_question_of_the_body(client: FlaskClient, query: str, body: dict[str, Any]) -> None:
    by_query, by_body = client.get(f"/v1/solve?{encoded(query)}"), client.post("/v1/solve", json=body)
    assert by_query.status_code == 200, by_query.text
    assert by_query.data == by_body.data


@pytest.mark.parametrize(("query", "body"), SAME)
def test_the_link_in_an_answer_asks_the_same(client: FlaskClient, query: str, body: dict[str, Any]) -> None:
    told = client.post("/v1/solve", json=body).json
    assert told["link"].startswith("/#")
    again = client.get("/v1/solve?" + told["link"][2:])
    assert again.json["work"] == told["work"]
    assert again.json["link"] == told["link"]
    strip = [{**setup, "positions": None} for setup in told["setups"]]
    assert [{**setup, "positions": None} for setup in again.json["setups"]] == strip, query


def test_a_link_is_plain_to_read(client: FlaskClient) -> None:
    body = {"work": {"divisions": 73}, "head": {"ratio": 60, "plates": [[15, 16], [21]]}, "limit": 2}
    told = client.post("/v1/solve", json=body).json
    assert told["link"] == "/#divisions=73&limit=2&ratio=60&plates=15,16/21"


@pytest.mark.parametrize("field", ["every", "tolerance", "methods"])
def test_a_field_that_is_null_says_nothing_in_the_link(client: FlaskClient, field: str) -> None:
    told = client.post("/v1/solve", json={"work": {"divisions": 28}, field: None}).json
    assert told["link"] == "/#divisions=28"


def test_a_decimal_comma_in_a_list_becomes_a_point_in_its_link(client: FlaskClient) -> None:
    told = client.post("/v1/solve", json={"work": {"angles": ["0", "22,5"]}}).json
    assert told["link"] == "/#angles=0,22.5"


WORDS = (
    "divisions, angle, count, angles, part, tolerance, at_rim, diameter, every, methods, limit, positions, ratio, "
    "plates, mounted_plate, direct_circles, change_gears, stop_circles, worm_disengages, idlers, dial, screw"
)
REFUSED: list[tuple[str, list[dict[str, str]]]] = [
    (
        "division=28",
        [
            {
                "pointer": "#",
                "parameter": "division",
                "detail": f'"division": There is no such word; the words are {WORDS}.',
            }
        ],
    ),
    (
        "divisions=28&divisions=28",
        [{"pointer": "#", "parameter": "divisions", "detail": '"divisions": This word stands twice; give it once.'}],
    ),
    ("divisions=", [{"pointer": "#/work/divisions", "detail": "Give a whole number, such as 40."}]),
    ("divisions=x", [{"pointer": "#/work/divisions", "detail": "Give a whole number, such as 40."}]),
    (
        "divisions=7.5",
        [
            {
                "pointer": "#/work/divisions",
                "detail": "Give a whole number without decimals, and no longer than 24 digits.",
            }
        ],
    ),
    ("", [{"pointer": "#/work", "detail": "This field is needed."}]),
    ("limit=2", [{"pointer": "#/work", "detail": "This field is needed."}]),
    ("divisions=7&plates=15,x", [{"pointer": "#/head/plates/0/1", "detail": "Give a whole number, such as 40."}]),
    ("divisions=7&positions=yes", [{"pointer": "#/positions", "detail": "Give true or false."}]),
    ("part=x", [{"pointer": "#/work/part", "detail": 'Give an object here: fields between "{" and "}".'}]),
    ("part=[1]", [{"pointer": "#/work/part", "detail": 'Give an object here: fields between "{" and "}".'}]),
    (
        "divisions=7&idlers=1,2",
        [{"pointer": "#/head/idlers", "detail": 'Give an object here: fields between "{" and "}".'}],
    ),
]


@pytest.mark.parametrize(("query", "errors"), REFUSED)
def test_a_query_that_cannot_be_asked_is_refused_by_word(
    client: FlaskClient, query: str, errors: list[dict[str, str]]
) -> None:
    response = client.get(f"/v1/solve?{query}")
    assert response.status_code == 422
    assert response.json["errors"] == errors


@pytest.mark.parametrize(
    "query", ["x" * QUERY_LONGEST + "=1", "divisions=" + "1" * QUERY_LONGEST, "&" * (QUERY_LONGEST + 1)]
)
def test_a_query_too_long_is_sent_to_the_body(client: FlaskClient, query: str) -> None:
    response = client.get(f"/v1/solve?{query}")
    assert response.status_code == 422
    assert response.json["detail"] == "The query is longer than 8,192 characters; send the question as a body."


@pytest.mark.parametrize(
    "query", ["divisions=%ff", "angle=%c3%28", "angle=%00", "%ff=1", "divisions=١٢", "angle=%ed%a0%80"]
)
def test_bytes_that_are_no_text_are_refused(client: FlaskClient, query: str) -> None:
    assert client.get(f"/v1/solve?{query}").status_code == 422


def test_a_number_of_a_query_is_bounded_before_it_is_made(client: FlaskClient) -> None:
    response = client.get("/v1/solve?divisions=" + "9" * 65)
    assert json.loads(response.data)["errors"][0]["pointer"] == "#/work/divisions"
