"""What a view needs at its two ends: the question as it came, and the answer as it goes."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from hashlib import blake2b
from typing import TYPE_CHECKING, Any

import orjson
from flask import Response, request
from werkzeug.datastructures import Headers
from werkzeug.exceptions import PreconditionFailed

from . import json_in
from .body import read_body
from .limits import BODY_MOST
from .problems import WRONG_CONTENT, Problem
from .query import read
from .query_words import QueryWord

if TYPE_CHECKING:
    from _typeshed.wsgi import StartResponse, WSGIEnvironment

JSON = "application/json"
FRESH_FOR = 3600
"""Seconds for which a client may keep an answer: it changes only with the service's version, which the ETag holds."""


class Finished(Response):
    """An answer that is complete as it stands, with its length: nothing is worked out anew when it goes."""

    def __call__(self, environ: WSGIEnvironment, start_response: StartResponse) -> Iterable[bytes]:
        """Hand it to the server."""
        if environ["REQUEST_METHOD"] == "HEAD":
            return super().__call__(environ, start_response)
        start_response(self.status, self.headers.to_wsgi_list())
        return self.response  # type: ignore[return-value]  # the bytes that it was made with, in a list


def asked_in_body(limit: int = BODY_MOST) -> Any:
    """The JSON value of the body."""
    # The usual header is compared as it came: Flask's view of it costs as much as reading the question.
    if request.environ.get("CONTENT_TYPE") != JSON:
        _check_content()
    return json_in.read(read_body(request, limit))


def asked_in_query(words: Mapping[str, QueryWord]) -> dict[str, Any]:
    """The query in the body's form."""
    return read(request.query_string, words)


def answer(told: Any) -> Response:
    """The answer to a question that came in a body."""
    data = orjson.dumps(told)
    return Finished([data], headers=Headers([("Content-Type", JSON), ("Content-Length", str(len(data)))]))


def lasting_answer(told: Any) -> Response:
    """The answer to a question in the address: it may be kept, and asked after by its ETag."""
    return lasting(orjson.dumps(told), JSON)


def lasting(data: bytes, content_type: str, fresh_for: int = FRESH_FOR) -> Response:
    """Bytes that a client may keep, with a strong ETag; 304 when the client has them already.

    Who asks for another answer than this one (If-Match) is refused.
    """
    response = Response(data, content_type=content_type)
    response.set_etag(blake2b(data, digest_size=16).hexdigest())
    response.headers["Cache-Control"] = f"public, max-age={fresh_for}"
    response.make_conditional(request)
    if response.status_code == 412:
        raise PreconditionFailed
    return response


def _check_content() -> None:
    """JSON by any of its names, in UTF-8."""
    kind = request.mimetype
    if kind != JSON and not (kind.startswith("application/") and kind.endswith("+json")):
        shown = f"not as {kind}" if kind.isascii() and 0 < len(kind) <= 64 else "not without a type"
        raise Problem(WRONG_CONTENT, f"Send the body as JSON, with the header Content-Type: {JSON}, {shown}.")
    charset = request.mimetype_params.get("charset", "utf-8").lower()
    if charset not in ("utf-8", "utf8", "us-ascii"):
        raise Problem(
            WRONG_CONTENT,
            "Send the body in UTF-8, the one encoding of JSON; leave charset out of the header.",
        )
