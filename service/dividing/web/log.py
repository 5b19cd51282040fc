"""A line of JSON for every request: enough to see what the service does, nothing of what was asked.

The route is told as its template, never as the address that was called, and neither query nor body nor any
header of the client but the request id.
"""

from __future__ import annotations

import os
import traceback
from collections.abc import Callable
from contextlib import suppress

import orjson

from dividing import __version__

Sink = Callable[[bytes], object]
_METHODS = frozenset({"GET", "HEAD", "POST", "OPTIONS", "PUT", "PATCH", "DELETE"})
_STANDARD_OUTPUT = 1


def to_standard_output(line: bytes) -> None:
    """Hand a line to the system in one piece, so that lines of several threads and workers never mix."""
    # A log that nobody takes any more is no reason to refuse an answer.
    with suppress(OSError):
        os.write(_STANDARD_OUTPUT, line)


def fault_of_ours(error: BaseException) -> str:
    """What went wrong and where, without the error's own words: they may repeat what was asked."""
    return f"{type(error).__name__}\n{''.join(traceback.format_tb(error.__traceback__)).rstrip()}"


def line(*, route: str | None, method: str, status: int, seconds: float, request_id: str) -> bytes:
    """What is told of one request; `route` is the template of its rule, None where nothing is at its address.

    >>> line(route="/health", method="GET", status=200, seconds=0.0012, request_id="7").startswith(b'{"route":"/h')
    True
    """
    told = {
        "route": route,
        "method": method if method in _METHODS else "other",
        "status": status,
        "ms": round(seconds * 1000, 2),
        "request_id": request_id,
        "version": __version__,
    }
    return orjson.dumps(told, option=orjson.OPT_APPEND_NEWLINE)
