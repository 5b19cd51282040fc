"""/openapi.json and /docs: the description for programs and, made from the same, for people without a network."""

from __future__ import annotations

from flask import Blueprint, Response

from .exchange import JSON, lasting
from .openapi import written

blueprint = Blueprint("docs", __name__)


@blueprint.get("/openapi.json")
def openapi() -> Response:
    """The description for programs."""
    return lasting(written(), JSON)
