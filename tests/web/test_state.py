"""/health and /ready: whether the service is up, and whether it solves."""

from __future__ import annotations

from typing import Any

import pytest
from flask.testing import FlaskClient

from dividing import __version__
from dividing.web import state

# 40/28 = 1 3/7: one turn, and three sevenths of 49 spaces are 21, between arms over 22 holes.
RIGHT = {"turns": 1, "holes": 21, "circle": 49, "plate": 3, "sector_holes": 22}


def solves(monkeypatch: pytest.MonkeyPatch, move: dict[str, Any]) -> list[dict[str, Any]]:
    """From now on whatever is asked is answered with this move; gives what was asked."""
    asked: list[dict[str, Any]] = []
    monkeypatch.setattr(state, "solved", lambda question: (asked.append(question), {"setups": [{"move": move}]})[1])
    return asked


@pytest.mark.parametrize(("path", "status"), [("/health", "ok"), ("/ready", "ready")])
def test_a_service_that_is_well_says_so_with_its_version(client: FlaskClient, path: str, status: str) -> None:
    response = client.get(path)
    assert (response.status_code, response.json) == (200, {"status": status, "version": __version__})


def test_ready_asks_for_28_divisions_and_knows_the_answer(
    client: FlaskClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = solves(monkeypatch, RIGHT)
    assert client.get("/ready").status_code == 200
    assert asked == [{"work": {"divisions": 28}}]


@pytest.mark.parametrize(
    "wrong", [{"turns": 0}, {"holes": 20}, {"circle": 47}, {"plate": 2}, {"sector_holes": 21}], ids=str
)
def test_a_service_that_solves_wrongly_is_up_but_not_ready(
    client: FlaskClient, monkeypatch: pytest.MonkeyPatch, wrong: dict[str, int]
) -> None:
    solves(monkeypatch, {**RIGHT, **wrong})
    response = client.get("/ready")
    assert (response.status_code, response.json) == (503, {"status": "wrong", "version": __version__})
    assert client.head("/ready").status_code == 503
    assert client.get("/health").status_code == 200


def test_a_service_that_cannot_solve_is_up_but_not_ready(client: FlaskClient, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(state, "solved", lambda _: 1 // 0)
    assert client.get("/ready").status_code == 500
    assert client.get("/health").status_code == 200
