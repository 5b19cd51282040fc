"""A line of JSON for every request: enough to see what the service does, nothing of what was asked.

The route is told as its template, never as the address that was called, and neither query nor body nor any header of
the client but the request id.
"""

from __future__ import annotations

import logging
import sys

import orjson

from dividing import __version__

_log = logging.getLogger("dividing.requests")


def set_up() -> None:
    """Send the lines to standard output, bare, unless somebody has said where they should go."""
    if not _log.handlers:
        handler = logging.StreamHandler(sys.stdout)
        handler.setFormatter(_BARE)
        _log.addHandler(handler)
        _log.propagate = False
        _log.setLevel(logging.INFO)


def write(*, route: str | None, method: str, status: int, seconds: float, request_id: str) -> None:
    """Log one request; `route` is the template of its rule, None where nothing is kept at its address."""
    line = {
        "route": route,
        "method": method if method in _METHODS else "other",
        "status": status,
        "ms": round(seconds * 1000, 2),
        "request_id": request_id,
        "version": __version__,
    }
    _log.info(orjson.dumps(line).decode())


class _Bare(logging.Formatter):
    def format(self, record: logging.LogRecord) -> str:
        return record.getMessage()


_BARE = _Bare()
_METHODS = frozenset({"GET", "HEAD", "POST", "OPTIONS", "PUT", "PATCH", "DELETE"})
