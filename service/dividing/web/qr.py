"""/qr.svg: a setup's link as a QR code, for a routing sheet."""

from __future__ import annotations

import io

from flask import Blueprint, Response, request

from dividing.indexing.bounds import SETUPS_MOST
from dividing.indexing.faults import Fault, Refused

from . import query
from .exchange import lasting
from .limits import QR_LONGEST
from .operations import Operation
from .problems import OUR_FAULT, WRONG_FIELD, Problem
from .query_words import PAGE_WORDS
from .schemas.solve import SOLVE_IN

blueprint = Blueprint("qr", __name__)

SVG = "image/svg+xml"


@blueprint.get("/qr.svg")
def qr_code() -> Response:
    """The code of the page's link with the same query, at the address under which the service was called."""
    asked = query.read(request.query_string, PAGE_WORDS)
    chosen = _chosen(asked.pop("setup", None))
    question = SOLVE_IN.load(asked)
    return lasting(drawn(request.host_url.rstrip("/") + query.link(asked, question.head) + chosen), SVG)


def _chosen(setup: object) -> str:
    """What the page puts behind its link when another way than the first was chosen."""
    if setup is None or setup == 1:
        return ""
    if not isinstance(setup, int) or not 1 <= setup <= SETUPS_MOST:
        raise Refused([Fault(("setup",), f"The chosen setup is a whole number from 1 to {SETUPS_MOST}.")])
    return f"&setup={setup}"


def drawn(link: str) -> bytes:
    """The code as a picture that stands alone: dark on white, so that it reads on a dark page too."""
    if len(link) > QR_LONGEST:
        sentence = (
            f"The link has {len(link):,} characters; a code of more than {QR_LONGEST:,} does not read. Leave words out."
        )
        raise Problem(WRONG_FIELD, sentence, [])
    # Loaded when somebody asks for a code: it would take a thirtieth of a worker's memory before that.
    import segno

    out = io.BytesIO()
    segno.make(link, error="m", micro=False, boost_error=False).save(
        out, kind="svg", scale=4, border=4, light="#fff", dark="#000"
    )
    return out.getvalue()


OPERATIONS = (
    Operation(
        "qr", "get", "/qr.svg", "The QR code of a setup's link",
        "The page's link with the same query, as a picture for a routing sheet. The question is checked as for "
        "solving.",
        words=PAGE_WORDS, example="divisions=28", content=SVG, lasting=True, problems=(WRONG_FIELD, OUR_FAULT),
    ),
)  # fmt: skip
