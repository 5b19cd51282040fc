"""Whatever is sent, the answer is the 4xx that tells what to change, and the work that it makes is small."""

from __future__ import annotations

import json
from typing import Any

import pytest
from flask.testing import FlaskClient

from dividing.web.limits import ERRORS_MOST
from tests.web import hostile
from tests.web.calls import calls_of
from tests.web.malformed import JSON
from tests.web.wrong_types import BATCH, Wrong, fields_of, operations, types

MARKED = "here it is put"
CALLS_MOST = 10_000
"""Function calls that a refusal may make; an ordinary answer makes about 1,000 and the costliest 3,000,000."""
CALLS_A_BYTE_MOST = 60
"""The same where each of thousands of places is wrong, a byte of the body."""


def refused(client: FlaskClient, path: str, body: bytes, headers: dict[str, str] = JSON) -> Any:
    """The problem document of a refusal, once it is held to cost little."""
    answer, calls = calls_of(lambda: client.post(path, data=body, headers=headers))
    assert answer.content_type == "application/problem+json", answer.text
    assert 400 <= answer.status_code < 500
    assert calls < CALLS_MOST
    assert answer.json["status"] == answer.status_code
    return answer.json


@pytest.mark.parametrize("path", operations())
@pytest.mark.parametrize("body", hostile.BODIES.values(), ids=hostile.BODIES)
def test_a_body_that_is_no_json_is_400(client: FlaskClient, path: str, body: bytes) -> None:
    assert refused(client, path, body)["type"] == "/docs#problem-not-json"


@pytest.mark.parametrize("path", operations())
@pytest.mark.parametrize("body", hostile.SCALARS)
def test_a_body_that_is_no_object_is_422(client: FlaskClient, path: str, body: bytes) -> None:
    told = refused(client, path, body)
    assert told["errors"] == [{"pointer": "#", "detail": 'Give an object here: fields between "{" and "}".'}]


def test_one_mark_before_the_question_is_passed_over(client: FlaskClient) -> None:
    asked = [
        client.post("/v1/solve", data=body, headers=JSON) for body in (hostile.RIGHT, hostile.MARK + hostile.RIGHT)
    ]
    assert [answer.status_code for answer in asked] == [200, 200]
    assert asked[0].data == asked[1].data


@pytest.mark.parametrize("path", operations())
@pytest.mark.parametrize("coding", ["gzip", "deflate", "br", "zstd", "GZIP", "gzip, gzip", "identity, gzip", "x", ""])
@pytest.mark.parametrize("body", [hostile.RIGHT, hostile.BODIES["compressed, and not said so"]])
def test_a_compressed_body_is_415(client: FlaskClient, path: str, coding: str, body: bytes) -> None:
    told = refused(client, path, body, {**JSON, "Content-Encoding": coding})
    assert told["type"] == "/docs#problem-wrong-content-type"
    assert told["detail"] == "Send the body as it is, not compressed; leave Content-Encoding out."


def test_a_body_that_is_said_to_be_as_it_is_is_read(client: FlaskClient) -> None:
    headers = {**JSON, "Content-Encoding": "Identity"}
    assert client.post("/v1/solve", data=hostile.RIGHT, headers=headers).status_code == 200


# A ref is any text; the reading of a setup in use tells nothing that the work does not, and a pupil's may be wrong.
OPEN = {("/v1/solve/batch", "ref"), ("/v1/locate", "reading"), ("/v1/practice/mark", "reading")}


def closed_fields(path: str) -> list[Wrong]:
    """Each field of the operation that takes one value and not any text, with a stand-in for the value."""
    return [
        Wrong(path, place, beside, MARKED)
        for place, beside, schema in fields_of(path)
        if place and (path, place[-1]) not in OPEN and not types(schema) & {"array", "object"}
    ]


@pytest.mark.parametrize("path", operations())
@pytest.mark.parametrize("value", hostile.VALUES.values(), ids=hostile.VALUES)
def test_a_hostile_value_is_refused_at_its_place(client: FlaskClient, path: str, value: bytes) -> None:
    taken = []
    for field in closed_fields(path):
        answer = client.post(path, data=hostile.in_place_of(field.body(), MARKED, value), headers=JSON)
        told = answer.json["answers"][0].get("problem", {}) if path == BATCH else answer.json
        if told.get("status") != 422 or field.pointer not in [error["pointer"] for error in told.get("errors", ())]:
            taken.append((field.place, answer.status_code))
    assert taken == []


@pytest.mark.parametrize(
    "question",
    [
        {"work": {"angles": ["x"] * 2_000}},
        {"work": {"angles": ["7" * 5_000] * 10}},
        {"work": {"divisions": 28}, "head": {"plates": [["x"] * 100] * 100}},
        {"work": {"divisions": 28}, "head": {"plates": [[399] * 100] * 100}},
        {"work": {"divisions": 28}, **{f"field {number}": number for number in range(2_000)}},
        {"work": {"divisions": 28}, "head": {str(number): {} for number in range(2_000)}},
    ],
)
def test_thousands_of_wrong_fields_are_told_in_a_hundred_at_a_small_price(client: FlaskClient, question: Any) -> None:
    body = json.dumps(question).encode()
    answer, calls = calls_of(lambda: client.post("/v1/solve", data=body, headers=JSON))
    assert answer.status_code == 422
    assert len(answer.json["errors"]) <= ERRORS_MOST
    assert calls < CALLS_MOST + CALLS_A_BYTE_MOST * len(body)
