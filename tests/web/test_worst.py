"""The costliest questions that are answered make a bounded number of function calls, cold: a count, and not a time.

`tests/bench/worst_requests.py` goes through all of them by processor time; here stand the worst that it found.
"""

from __future__ import annotations

import json

import pytest
from flask.testing import FlaskClient

from tests.web import worst
from tests.web.calls import calls_of

GREAT = "100 circles, 24 gears"
ROWS = [
    f"solve 20,000 small angles, {GREAT}, ",
    f"solve 19,997, {GREAT}, its rows",
    f"locate 20,000 small angles, {GREAT}",
    f"locate 19,997, {GREAT}",
    f"verify nearest, 20,000 small angles, {GREAT}",
    f"solve 2,000 angles, {GREAT}, ",
    f"solve 2,000 angles in radians, {GREAT}, ",
    f"solve a bolt circle, {GREAT}",
    f"solve a dial, {GREAT}",
    "solve 19,997, a table with a dial, its rows",
    f"solve 20,000 angles of 64 figures, {GREAT}, its rows",
    f"practice, {GREAT}",
    f"coverage 2 to 10,000, {GREAT}",
]
"""Thousands of rows or angles."""
SEARCHES = [
    f"solve nearly a whole turn, {GREAT}, ",
    f"solve 6.2 rad, {GREAT}, ",
    f"verify plain, nearly a whole turn, {GREAT}",
    f"locate 6.2 rad, {GREAT}",
    f"solve 2 divisions, {GREAT}, trains and two moves, all setups",
    f"solve 997, {GREAT}, ",
    f"solve a helix, {GREAT}",
    f"plate of 397, {GREAT}",
    "a batch of 12 on the great head",
]
"""A great head gone through for a few figures."""
CALLS_MOST = {**dict.fromkeys(ROWS, 1_000_000), **dict.fromkeys(SEARCHES, 700_000)}
QUESTIONS = {name: (address, question) for name, address, question in worst.questions()}


@pytest.mark.parametrize(("name", "most"), CALLS_MOST.items(), ids=CALLS_MOST)
def test_the_costliest_questions_make_no_more_calls_than_they_did(client: FlaskClient, name: str, most: int) -> None:
    client.get("/ready")
    address, question = QUESTIONS[name]
    body = json.dumps(question).encode()
    worst.forget()
    answer, calls = calls_of(lambda: client.post(address, data=body, content_type="application/json"))
    assert answer.status_code == 200, answer.text[:300]
    assert calls <= most


def test_what_is_forgotten_is_looked_for_anew(client: FlaskClient) -> None:
    address, question = QUESTIONS[f"solve 997, {GREAT}, "]
    body = json.dumps(question).encode()
    counted = []
    for cold in (True, False, True):
        if cold:
            worst.forget()
        counted.append(calls_of(lambda: client.post(address, data=body, content_type="application/json"))[1])
    assert counted[1] < counted[0] / 5
    assert counted[2] > counted[1] * 5
