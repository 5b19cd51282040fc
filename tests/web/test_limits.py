"""Each limit that is published is kept: at it a question is answered, one past it refused by its name."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any, NamedTuple

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from dividing.web.openapi import LIMITS


class Limit(NamedTuple):
    """What is published, a question of any size, and what is said of one that is a size too large."""

    most: int
    ask: Callable[[FlaskClient, int], TestResponse]
    told: str
    status: int = 422


def asking(path: str, question: Callable[[int], dict[str, Any]]) -> Callable[[FlaskClient, int], TestResponse]:
    return lambda client, size: client.post(path, json=question(size))


def solving(work: Callable[[int], dict[str, Any]]) -> Callable[[FlaskClient, int], TestResponse]:
    return asking("/v1/solve", lambda size: {"work": work(size), "limit": 1})


def on_a_head(head: Callable[[int], dict[str, Any]]) -> Callable[[FlaskClient, int], TestResponse]:
    return asking("/v1/solve", lambda size: {"work": {"divisions": 2}, "head": {"direct_circles": [], **head(size)}})


def filled_up(path: str, question: dict[str, Any]) -> Callable[[FlaskClient, int], TestResponse]:
    """The question with blanks behind it, to so many bytes."""
    body = json.dumps(question).encode()
    return lambda client, size: client.post(path, data=body.ljust(size), content_type="application/json")


def in_a_long_query(client: FlaskClient, size: int) -> TestResponse:
    return client.get("/v1/solve?" + "divisions=28&methods=plain".ljust(size, "+"))


TOO_LARGE = "The body is larger than 64 KiB (1 MiB for a batch). Split the question."
ITEM = {"work": {"divisions": 28}}
HELD = {
    "body_bytes": Limit(65_536, filled_up("/v1/solve", ITEM), TOO_LARGE, 413),
    "batch_bytes": Limit(1_048_576, filled_up("/v1/solve/batch", {"items": [ITEM]}), TOO_LARGE, 413),
    "batch_items": Limit(
        500,
        asking("/v1/solve/batch", lambda size: {"items": [ITEM] * size}),
        "A batch has 1 to 500 items, not 501. Split it.",
    ),
    "query_characters": Limit(
        8_192, in_a_long_query, "The query is longer than 8,192 characters; send the question as a body."
    ),
    "divisions": Limit(
        1_000_000,
        solving(lambda size: {"divisions": size}),
        "Divisions are a whole number from 1 to 1,000,000.",
    ),
    "angles": Limit(
        2_000,
        solving(lambda size: {"angles": [str(place / 10) for place in range(size)]}),
        "Give at most 2,000 angles; these are 2,001.",
    ),
    "ratio": Limit(
        10_000,
        on_a_head(lambda size: {"ratio": size}),
        "The ratio is a whole number of crank turns, 1 to 10,000.",
    ),
    "circles": Limit(
        100,
        on_a_head(lambda size: {"plates": [[*range(20, 119)]], "direct_circles": [*range(20, size - 79)]}),
        "A head may have 100 circles in all; give fewer.",
    ),
    "holes_of_a_circle": Limit(
        400, on_a_head(lambda size: {"plates": [[size]]}), "A circle has 2 to 400 holes, not 401."
    ),
    "holes_in_all": Limit(
        12_000,
        on_a_head(lambda size: {"plates": [[400]] * 29 + [[size - 29 * 400 - 2, 2]]}),
        "All circles together may have 12,000 holes; give fewer circles.",
    ),
    "gears": Limit(24, on_a_head(lambda size: {"change_gears": [24] * size}), "Give at most 24 gears; these are 25."),
    "teeth_of_a_gear": Limit(
        200, on_a_head(lambda size: {"change_gears": [size]}), "A change gear has 10 to 200 teeth."
    ),
    "position_rows": Limit(
        20_000,
        asking("/v1/solve", lambda size: {"work": {"divisions": size}, "limit": 1, "positions": True}),
        "Positions are given for at most 20,000 cuts; this work has 20,001. Leave them out.",
    ),
    "setups": Limit(
        100,
        asking("/v1/solve", lambda size: {**ITEM, "limit": size}),
        "The limit is a number of setups from 1 to 100.",
    ),
    "angle_characters": Limit(
        64,
        solving(lambda size: {"angle": "9.".ljust(size, "0")}),
        f'Stopped at character 65 of "9.{"0" * 62}…": expected no more than 64 characters.',
    ),
    "exponent": Limit(
        9,
        solving(lambda size: {"angle": f"1e-{size}"}),
        'Stopped at character 3 of "1e-10": expected an exponent from -9 to 9.',
    ),
    "coverage_to": Limit(
        10_000,
        asking("/v1/coverage", lambda size: {"from": 9_990, "to": size}),
        "The last number is a whole number from 1 to 10,000.",
    ),
    "practice_exercises": Limit(
        60,
        asking("/v1/practice", lambda size: {"seed": 1, "count": size, "kinds": ["plain"]}),
        "A sheet has 1 to 60 exercises.",
    ),
    "practice_seed": Limit(
        999_999_999,
        asking("/v1/practice", lambda size: {"seed": size, "count": 1}),
        "The seed is a whole number from 0 to 999,999,999.",
    ),
}


@pytest.mark.parametrize("limit", HELD.values(), ids=HELD)
def test_at_the_limit_a_question_is_answered(client: FlaskClient, limit: Limit) -> None:
    response = limit.ask(client, limit.most)
    assert response.status_code == 200, response.text


@pytest.mark.parametrize("limit", HELD.values(), ids=HELD)
def test_one_past_it_is_refused_by_its_name(client: FlaskClient, limit: Limit) -> None:
    response = limit.ask(client, limit.most + 1)
    assert (response.status_code, response.json["detail"]) == (limit.status, limit.told)


def test_every_limit_that_is_published_is_held() -> None:
    # No question is nested so deep, and seconds are estimated: the edges of both stand with json_in and costing.
    elsewhere = {"nesting": 32, "seconds_of_work": 2}
    assert {name: limit.most for name, limit in HELD.items()} | elsewhere == LIMITS
