"""/v1/heads: ready-made heads to start from."""

from __future__ import annotations

from flask import Blueprint, Response

from dividing.indexing.heads import READY_MADE

from .answers.heads import ready_heads
from .exchange import lasting_answer

blueprint = Blueprint("heads", __name__)


@blueprint.get("/v1/heads")
def heads() -> Response:
    """All of them, each described by its figures."""
    return lasting_answer(ready_heads(READY_MADE))
