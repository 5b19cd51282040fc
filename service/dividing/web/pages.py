"""The page and its files, exactly as they are written in `frontend/`.

Each file at the top has a rule of its own and each folder one: a rule for everything would hide that an address exists
but takes another method.
"""

from __future__ import annotations

import mimetypes
from collections.abc import Iterator
from pathlib import Path

from flask import Blueprint, Response
from werkzeug.exceptions import NotFound
from werkzeug.security import safe_join
from werkzeug.utils import get_content_type

from .exchange import lasting
from .files import page_folder

FRESH_FOR = 60
"""Seconds; after that a browser asks again by ETag, so that an update reaches the shop within a minute."""

# A small machine may lack the system's table of types, and a module of another type is refused by browsers.
for _type, _ending in (
    ("text/javascript", ".js"),
    ("text/css", ".css"),
    ("image/svg+xml", ".svg"),
    ("application/manifest+json", ".webmanifest"),
):
    mimetypes.add_type(_type, _ending)


def make_blueprint() -> Blueprint:
    """The page's files as they lie on the disk now."""
    folder = page_folder()
    blueprint = Blueprint("pages", __name__)

    def send(name: str, inside: str = "") -> Response:
        place = safe_join(str(folder / inside), name)
        if place is None or not Path(place).is_file():
            raise NotFound
        kind = mimetypes.guess_type(place)[0] or "application/octet-stream"
        return lasting(Path(place).read_bytes(), get_content_type(kind, "utf-8"), FRESH_FOR)

    for number, (rule, fixed) in enumerate(_rules(folder)):
        blueprint.add_url_rule(rule, f"file-{number}", send, defaults=fixed, methods=["GET"])
    return blueprint


def _rules(folder: Path) -> Iterator[tuple[str, dict[str, str]]]:
    """Each rule with what is fixed of the file's place."""
    yield "/", {"name": "index.html"}
    for place in sorted(folder.iterdir()):
        if place.is_dir():
            yield f"/{place.name}/<path:name>", {"inside": place.name}
        elif not place.name.startswith("."):
            yield f"/{place.name}", {"name": place.name}
