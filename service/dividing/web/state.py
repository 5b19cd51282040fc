"""/health and /ready: whether the service is up, and whether it gives the right answer to a case that is known."""

from __future__ import annotations

from flask import Blueprint, Response

from dividing import __version__

from .exchange import answer
from .operations import Operation
from .schemas.answers import StateOut
from .solve import solved

blueprint = Blueprint("state", __name__)

_KNOWN = {"work": {"divisions": 28}}
# 40/28 = 1 3/7 turns: 21 spaces on the circle of 49.
_MOVE = {"turns": 1, "holes": 21, "circle": 49, "plate": 3, "sector_holes": 22}


@blueprint.get("/health")
def health() -> Response:
    """The process answers."""
    return answer({"status": "ok", "version": __version__})


@blueprint.get("/ready")
def ready() -> Response:
    """The process solves 28 divisions at 40:1 as anyone can check by hand."""
    right = solved(_KNOWN)["setups"][0]["move"] == _MOVE
    response = answer({"status": "ready" if right else "wrong", "version": __version__})
    response.status_code = 200 if right else 503
    return response


OPERATIONS = (
    Operation(
        "health", "get", "/health", "Whether the service is up", "Answers as soon as the process does.",
        answered=StateOut, answer=lambda _: {"status": "ok", "version": __version__},
    ),
    Operation(
        "ready", "get", "/ready", "Whether the service solves", "Solves one case that anyone can check by hand.",
        answered=StateOut, answer=lambda _: {"status": "ready", "version": __version__}, other_status=503,
    ),
)  # fmt: skip
