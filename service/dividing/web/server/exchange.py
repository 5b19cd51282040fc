"""One request from memory, one answer into memory, by gunicorn's own parser and writer."""

from typing import Any

from gunicorn import util
from gunicorn.http import get_parser, wsgi
from gunicorn.workers.base import Worker

from dividing.web.server.caller import Caller, Message


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


def exchange(worker: Worker, caller: Caller, message: Message) -> tuple[bytes, bool]:
    """The bytes to send, and whether the connection can serve another request after them."""
    outbox = Outbox()
    request = None
    try:
        parser = get_parser(worker.cfg, message.pieces(), caller.address)
        request = next(parser)
        response, environ = wsgi.create(request, outbox, caller.address, caller.server, worker.cfg)
        _apply(worker, environ, response)
        # The parser must have read exactly the bytes that were counted, or the next request would start in
        # the wrong place.
        stays = message.is_whole and not response.should_close() and parser.finish_body()
        return outbox.contents(), bool(stays and not parser.unreader.take_buffered())
    except StopIteration:
        return b"", False
    except Exception as fault:  # noqa: BLE001  # whatever it is, this caller gets an answer and the thread lives
        outbox.start_over()
        worker.handle_error(request, outbox, caller.address, fault)
        return outbox.contents(), False


def refusal(status: int, reason: str) -> bytes:
    """The server's own refusal of what never became a request."""
    outbox = Outbox()
    util.write_error(outbox, status, reason, "")
    return outbox.contents()


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
