"""What every answer carries in its headers, and the one place where a request gets its id and its line in the log.

It wraps the application from outside, so that a refusal, a file and an answer are treated alike, and the headers cost
a request next to nothing.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from secrets import token_hex
from time import perf_counter
from typing import TYPE_CHECKING, Any

from .log import Sink, line, to_standard_output

if TYPE_CHECKING:
    from _typeshed.wsgi import StartResponse, WSGIApplication, WSGIEnvironment

REQUEST_ID = re.compile(r"[A-Za-z0-9._-]{1,64}", re.ASCII)
POLICY = "default-src 'self'; base-uri 'none'; object-src 'none'; frame-ancestors 'none'; form-action 'self'"
SECURITY: tuple[tuple[str, str], ...] = (
    ("Content-Security-Policy", POLICY),
    ("X-Content-Type-Options", "nosniff"),
    ("Referrer-Policy", "no-referrer"),
    ("Permissions-Policy", "camera=(), geolocation=(), microphone=(), payment=(), usb=()"),
    ("Cross-Origin-Opener-Policy", "same-origin"),
    ("Cross-Origin-Resource-Policy", "same-origin"),
)
# With other origins let in, their pages have to be able to load what they ask for.
_FOR_OTHERS = {"Cross-Origin-Resource-Policy": "cross-origin"}
_ASKED_BEFORE = (
    ("Access-Control-Allow-Methods", "GET, HEAD, POST, OPTIONS"),
    ("Access-Control-Allow-Headers", "Content-Type, If-None-Match, X-Request-ID"),
    ("Access-Control-Max-Age", "3600"),
)
_SHOWN_TO_OTHERS = ("Access-Control-Expose-Headers", "ETag, X-Request-ID")


class Edge:
    """The application with its headers, request ids and log; `origins` may ask from other pages ("*": any)."""

    def __init__(
        self, app: WSGIApplication, *, origins: frozenset[str] = frozenset(), sink: Sink = to_standard_output
    ) -> None:
        self.app = app
        self.sink = sink
        self.origins = origins
        security = {**dict(SECURITY), **(_FOR_OTHERS if origins else {})}
        self.security = list(security.items())

    def __call__(self, environ: WSGIEnvironment, start_response: StartResponse) -> Iterable[bytes]:
        """Answer one request."""
        began = perf_counter()
        request_id = environ.get("HTTP_X_REQUEST_ID", "")
        if not REQUEST_ID.fullmatch(request_id):
            request_id = token_hex(8)
        environ["dividing.request_id"] = request_id
        told, rule = "", None

        def start(status: str, headers: list[tuple[str, str]], exc_info: Any = None) -> Any:
            nonlocal told, rule
            # Flask takes its request away again before it returns.
            told, rule = status, environ["werkzeug.request"].url_rule
            headers += self.security
            headers.append(("X-Request-ID", request_id))
            if self.origins:
                headers += self._for_others(environ)
            return start_response(status, headers, exc_info)

        body = self.app(environ, start)
        seconds = perf_counter() - began
        method = environ["REQUEST_METHOD"]
        route = None if rule is None else rule.rule
        self.sink(line(route=route, method=method, status=int(told[:3]), seconds=seconds, request_id=request_id))
        return body

    def _for_others(self, environ: WSGIEnvironment) -> list[tuple[str, str]]:
        headers = [("Vary", "Origin")]
        origin = environ.get("HTTP_ORIGIN", "")
        if "*" in self.origins or origin in self.origins:
            headers += [
                ("Access-Control-Allow-Origin", "*" if "*" in self.origins else origin),
                _SHOWN_TO_OTHERS,
            ]
            if environ["REQUEST_METHOD"] == "OPTIONS":
                headers += _ASKED_BEFORE
        return headers
