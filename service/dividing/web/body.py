"""Reading a request's body: all of it, or a refusal that says why.

Werkzeug's own limit (`MAX_CONTENT_LENGTH`, 3.1.9) is not enough: `get_data` cuts a body that comes in chunks
at the limit without a word, so a long batch would be answered as a short one.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from gunicorn.http.errors import ParseException
from werkzeug.exceptions import BadRequest, RequestEntityTooLarge, RequestTimeout
from werkzeug.wrappers import Request
from werkzeug.wsgi import get_content_length

from .problems import WRONG_CONTENT, Problem

if TYPE_CHECKING:
    from _typeshed.wsgi import WSGIEnvironment

_PIECE = 64 * 1024
_AS_IT_IS = "identity"


def read_body(request: Request, limit: int) -> bytes:
    """The whole body, of `limit` bytes at most.

    Raises `RequestEntityTooLarge` when there is more, `RequestTimeout` when the rest does not come,
    `BadRequest` when the body breaks off or its chunks cannot be read, and `Problem` when it is compressed.
    """
    environ = request.environ
    if environ.get("HTTP_CONTENT_ENCODING", _AS_IT_IS).lower() != _AS_IT_IS:
        raise Problem(WRONG_CONTENT, "Send the body as it is, not compressed; leave Content-Encoding out.")
    length = get_content_length(environ) or 0
    if length > limit:
        raise RequestEntityTooLarge
    try:
        if length:
            return _read_told(environ, length)
        return _read_all(request, limit)
    except TimeoutError:
        raise RequestTimeout from None
    except (OSError, ParseException):
        raise BadRequest("The body broke off before its end, or its chunks cannot be read.") from None


def _read_told(environ: WSGIEnvironment, length: int) -> bytes:
    """A body whose length was told, in one piece."""
    body: bytes = environ["wsgi.input"].read(length)
    if len(body) < length:
        raise OSError("the caller sent less than was told")
    return body


def _read_all(request: Request, limit: int) -> bytes:
    body = bytearray()
    while piece := request.stream.read(min(_PIECE, limit + 1 - len(body))):
        body += piece
        if len(body) > limit:
            raise RequestEntityTooLarge
    return bytes(body)
