"""/v1/heads: ready-made heads to start from."""

from __future__ import annotations

import pytest
from flask.testing import FlaskClient

from dividing.indexing.heads import READY_MADE


@pytest.mark.parametrize("place", range(len(READY_MADE)), ids=[ready.id for ready in READY_MADE])
def test_a_ready_made_head_can_be_sent_with_a_question_as_it_is(client: FlaskClient, place: int) -> None:
    told = client.get("/v1/heads").json["heads"][place]
    assert (told["id"], told["title"]) == (READY_MADE[place].id, READY_MADE[place].title)
    answer = client.post("/v1/solve", json={"work": {"divisions": 2}, "head": told["head"]})
    assert answer.status_code == 200


def test_each_is_told_once(client: FlaskClient) -> None:
    told = client.get("/v1/heads").json["heads"]
    assert len({head["id"] for head in told}) == len(told) == len(READY_MADE)
    assert len({str(head["head"]) for head in told}) == len(told)
