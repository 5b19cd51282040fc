"""/v1/heads: ready-made heads to start from."""

from __future__ import annotations

from flask import Blueprint, Response

from dividing.indexing.heads import READY_MADE

from .answers.heads import ready_heads
from .exchange import lasting_answer
from .operations import Operation
from .schemas.answers import HeadsOut

blueprint = Blueprint("heads", __name__)


@blueprint.get("/v1/heads")
def heads() -> Response:
    """All of them, each described by its figures."""
    return lasting_answer(ready_heads(READY_MADE))


OPERATIONS = (
    Operation(
        "heads", "get", "/v1/heads", "Ready-made heads",
        "Heads to start from, described by their figures. Copy one, change what differs on yours, and send it with "
        "a question.",
        answered=HeadsOut, answer=lambda _: ready_heads(READY_MADE), lasting=True,
    ),
)  # fmt: skip
