"""/openapi.json and /docs: the description for programs and, made from the same, for people.

What makes the description is loaded when it is first asked for: a worker starts quicker and smaller without.
"""

from __future__ import annotations

from pathlib import Path

from flask import Blueprint, Response

from .docs_page import page
from .exchange import JSON, lasting

blueprint = Blueprint("docs", __name__)

_STYLE = Path(__file__).with_name("docs.css")


@blueprint.get("/openapi.json")
def openapi() -> Response:
    """The description for programs."""
    from .openapi import written

    return lasting(written(), JSON)


@blueprint.get("/docs")
def docs() -> Response:
    """The description for people."""
    from .openapi import description

    return lasting(page(description()).encode(), "text/html; charset=utf-8")


@blueprint.get("/docs/style.css")
def style() -> Response:
    """How it looks."""
    return lasting(_STYLE.read_bytes(), "text/css; charset=utf-8")
