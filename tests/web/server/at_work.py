"""A worker at work in a thread of the test's own process, and what is said to it."""

import io
import os
import socket
import threading
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from typing import Any

from gunicorn.config import Config
from werkzeug.exceptions import HTTPException
from werkzeug.wrappers import Request, Response

from dividing.web.body import read_body
from dividing.web.server.worker import PatientWorker

LIMIT = 64 * 1024
HEALTH = b"GET /health HTTP/1.1\r\nHost: shop\r\n\r\n"
POST = b"POST /echo HTTP/1.1\r\nHost: shop\r\n"
CHUNKED = POST + b"Transfer-Encoding: chunked\r\n\r\n"
BIG = b"x" * 3_000_000
Address = tuple[str, int]


def application(environ: dict[str, Any], start: Callable[..., Any]) -> Iterable[bytes]:
    """Gives back the body; /big is more than a socket takes at once, /fault is a fault of ours, /scheme tells https."""
    request = Request(environ)
    if request.path == "/fault":
        raise ZeroDivisionError
    if request.path == "/scheme":
        return Response(request.scheme)(environ, start)
    try:
        body = BIG if request.path == "/big" else read_body(request, LIMIT) or b"ok"
    except HTTPException as refusal:
        return Response(f"refused {refusal.code}", status=refusal.code)(environ, start)
    return Response(body)(environ, start)


class Silence:
    """gunicorn's log, unread."""

    def __getattr__(self, level: str) -> Callable[..., None]:
        return lambda *words: None  # noqa: ARG005


@contextmanager
def at_work(
    before: Callable[[PatientWorker, Address], object] | None = None, **settings: Any
) -> Iterator[tuple[PatientWorker, Address]]:
    """A worker in a thread of this process, so that its waits can be shortened; `before` is done before it begins."""
    cfg = Config()
    for name, value in {"graceful_timeout": 10, **settings}.items():
        cfg.set(name, value)
    listener = socket.create_server(("127.0.0.1", 0))
    worker = PatientWorker(1, os.getppid(), [listener], None, 60, cfg, Silence())
    worker.wsgi, worker.PIPE = application, os.pipe()
    for end in worker.PIPE:
        os.set_blocking(end, False)
    where = listener.getsockname()
    loop = threading.Thread(target=worker.run)
    try:
        if before is not None:
            before(worker, where)
        loop.start()
        yield worker, where
    finally:
        tell_to_stop(worker)
        loop.join(timeout=20)
        assert not loop.is_alive(), "The worker did not stop."
        wait_for_crew()
        close_all(worker)
        assert not worker.callers, "The worker left somebody standing."


def tell_to_stop(worker: PatientWorker) -> None:
    """What the worker does itself when it is sent TERM."""
    worker.alive = False
    os.write(worker.PIPE[1], b"\0")


def wait_for_crew() -> None:
    """A process ends with its threads; here they would go on, with pipes that belong to somebody else by then."""
    for thread in threading.enumerate():
        if thread.name.startswith("solving-"):
            thread.join(timeout=20)
            assert not thread.is_alive(), "A thread of the worker did not stop."


def close_all(worker: PatientWorker) -> None:
    worker.tmp.close()
    worker.selector.close()
    for end in worker.PIPE:
        os.close(end)
    for caller in worker.callers:
        caller.sock.close()


def say(address: tuple[str, int], *words: bytes) -> bytes:
    """All that the service says to these words until it hangs up."""
    with socket.create_connection(address, timeout=20) as caller:
        for word in words:
            caller.sendall(word)
        return read_to_end(caller)


def read_to_end(caller: socket.socket) -> bytes:
    heard = io.BytesIO()
    while data := caller.recv(65536):
        heard.write(data)
    return heard.getvalue()


def closing(request: bytes) -> bytes:
    return request.replace(b"Host: shop\r\n", b"Host: shop\r\nConnection: close\r\n", 1)
