"""One request from memory, one answer into memory, by gunicorn's own parser and writer."""

from datetime import timedelta
from time import monotonic
from typing import Any

from gunicorn import util
from gunicorn.http import get_parser, wsgi
from gunicorn.http.errors import InvalidHeader, NoMoreData
from gunicorn.workers.base import Worker

from dividing.web.headers import SECURITY
from dividing.web.server.caller import Caller, Message

CHECKED = frozenset(SECURITY)


class Outbox:
    """Stands in for the socket where gunicorn writes an answer: one answer, one send."""

    def __init__(self) -> None:
        self._pieces: list[bytes] = []

    def sendall(self, data: bytes) -> None:
        self._pieces.append(bytes(data))

    def send(self, data: bytes) -> int:
        self.sendall(data)
        return len(data)

    def gettimeout(self) -> float:
        return 0.0

    def start_over(self) -> None:
        self._pieces.clear()

    def contents(self) -> bytes:
        return b"".join(self._pieces)


class Letter(wsgi.Response):  # type: ignore[misc]  # gunicorn has no type hints
    """gunicorn's answer, which does not look at every time through the headers that stand in all of ours."""

    def process_headers(self, headers: list[tuple[str, str]]) -> None:
        super().process_headers([header for header in headers if header not in CHECKED])
        self.headers += [header for header in headers if header in CHECKED]


def exchange(worker: Worker, caller: Caller, message: Message) -> tuple[bytes, bool]:
    """The bytes to send, and whether the connection can serve another request after them."""
    outbox = Outbox()
    began = monotonic()
    try:
        parser = get_parser(worker.cfg, message.pieces(), caller.address)
        request = next(parser)
        response, environ = wsgi.create(request, outbox, caller.address, caller.server, worker.cfg, Letter)
        _check_host(environ, request.version)
        _apply(worker, environ, response)
        if worker.cfg.statsd_host:
            worker.log.access(response, request, environ, timedelta(seconds=monotonic() - began))
        # The parser must have read exactly the bytes that were counted, or the next request would start in
        # the wrong place.
        stays = message.is_whole and not response.should_close() and parser.finish_body()
        return outbox.contents(), bool(stays and not parser.unreader.take_buffered())
    except StopIteration:
        return b"", False
    except NoMoreData:
        # The bytes end before a request does; gunicorn would call it a fault of ours.
        return refusal(400, "Bad Request"), False
    except Exception as fault:  # noqa: BLE001  # whatever it is, this caller gets an answer and the thread lives
        outbox.start_over()
        # It would log the address that was asked for, which is the client's own affair: so it is not told.
        worker.handle_error(None, outbox, caller.address, fault)
        return outbox.contents(), False


def refusal(status: int, reason: str) -> bytes:
    """The server's own refusal of what never became a request."""
    outbox = Outbox()
    util.write_error(outbox, status, reason, "")
    return outbox.contents()


def _check_host(environ: dict[str, Any], version: tuple[int, int]) -> None:
    """RFC 9112, section 3.2, which gunicorn lets pass."""
    if "HTTP_HOST" not in environ and version >= (1, 1):
        raise InvalidHeader("Host is missing")


def _apply(worker: Worker, environ: dict[str, Any], response: Any) -> None:
    environ["wsgi.multithread"] = True
    if not worker.alive:
        response.force_close()
    body = worker.wsgi(environ, response.start_response)
    try:
        for piece in body:
            response.write(piece)
        response.close()
    finally:
        if hasattr(body, "close"):
            body.close()
