"""`python -m dividing`: starts the service under gunicorn and says where to open it."""

import ctypes
import dataclasses
import gc
import os
import socket
import sys
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any

from gunicorn.app.base import BaseApplication

from dividing import __version__
from dividing.web.options import Address, Options, read_options

# An address of RFC 5737, set apart for documents: asking for the way to it sends nothing.
NOWHERE = ("192.0.2.1", 9)
# glibc's malloc.h.
M_ARENA_MAX, M_MMAP_THRESHOLD, M_TRIM_THRESHOLD = -8, -3, -1
GIVEN_BACK = 128 * 1024
"""Bytes from which a piece of memory goes back to the system as soon as it is free: glibc begins so, but raises this
with every larger piece that it meets, and after one long table keeps the room of it for good."""
NOT_TO_THE_INTERNET = "Do not open it to the internet."
PRICE_OF_PLAIN_HTTP = (
    "Over plain http a tablet does not keep the page for use without a network, does not hold its screen on and does"
    " not copy with a button; whoever is on the same network can read along and change what passes; start it with"
    f" --certfile or put a proxy with TLS in front where that matters. {NOT_TO_THE_INTERNET}"
)


PIECES_BEFORE_COLLECTING = 10_000
"""Lists, dictionaries and the like made and still there before the collector looks through the newest of them."""


class Server(BaseApplication):  # type: ignore[misc]  # gunicorn has no type hints
    """The application under gunicorn, with settings from here alone: no file and no variable changes them."""

    def __init__(self, bind: Address, workers: int, **more: Any) -> None:
        self.options = Options(bind, workers, **more)
        super().__init__()

    def load_config(self) -> None:
        for name, value in settings(self.options).items():
            self.cfg.set(name, value)

    def load(self) -> Any:
        from dividing.web.app import create_app

        keep_memory_small()
        application = create_app()
        # What lives as long as the service need not be looked through again at every collection. An answer has no
        # cycles: while it is made the collector looks through its newest pieces, and seldom through all of them.
        gc.collect()
        gc.freeze()
        gc.set_threshold(PIECES_BEFORE_COLLECTING, 20, 20)
        return application


def settings(options: Options) -> dict[str, Any]:
    """gunicorn's settings, each with the reason for it."""
    return {
        **dataclasses.asdict(options),
        "bind": _written(options.bind),
        "statsd_host": options.statsd_host and _written(options.statsd_host),
        "worker_class": "dividing.web.server.worker.PatientWorker",
        # For each worker; below the usual 1,024 open files of a process.
        "worker_connections": 600,
        # Loaded once and shared, so that a fault shows at the start and workers start fast and small.
        "preload_app": True,
        "timeout": 60,
        "graceful_timeout": 10,
        # A link that holds a setup is a long one; more than this is no setup.
        "limit_request_line": 8190,
        "limit_request_fields": 64,
        "limit_request_field_size": 8190,
        # Its control socket needs a disk that can be written.
        "control_socket_disable": True,
        "worker_tmp_dir": memory_folder(),
        # The application writes the log; gunicorn's own lines repeat what the client sent.
        "loglevel": "error",
        # A caller's word for where the service is mounted is nobody's to give.
        "forwarder_headers": "",
        # A worker that was killed cannot leave its place itself.
        "child_exit": lambda _, worker: worker.place.leave(),
        "when_ready": lambda _: print(greeting(options), flush=True),
    }


def keep_memory_small() -> None:
    """Let all threads take their memory from one pool, since they run by turns and sixteen pools only take room, and
    give large pieces back."""
    # Elsewhere than with glibc there are no such settings, and nothing to do.
    with suppress(OSError, AttributeError, TypeError):
        library = ctypes.CDLL(None)
        library.mallopt(M_ARENA_MAX, 1)
        library.mallopt(M_MMAP_THRESHOLD, GIVEN_BACK)
        library.mallopt(M_TRIM_THRESHOLD, GIVEN_BACK)


def memory_folder() -> str | None:
    """Where a worker leaves its sign of life: in memory if it can, since the disk may be read-only."""
    folder = Path("/dev/shm")  # noqa: S108  # gunicorn makes its own unguessable name there
    return str(folder) if os.access(folder, os.W_OK) else None


def greeting(options: Options) -> str:
    """What stands in the terminal once the service answers."""
    bind, workers = options.bind, options.workers
    scheme = "https" if options.certfile else "http"
    lines = [f"Dividing {__version__} answers at {scheme}://{_written((_openable(bind[0]), bind[1]))}"
             f" with {workers} worker{'s' * (workers > 1)}. Ctrl-C stops it."]
    if _is_for_this_machine_only(bind[0]):
        lines.append(f"Only this machine reaches it. To let the shop's tablets in, start it with"
                     f" --bind 0.0.0.0:{bind[1]} and open {shop_address(bind[1], scheme)} on the tablet.")
    else:
        lines.append(f"On a tablet in the shop open {shop_address(bind[1], scheme)}.")
    return "\n".join([*lines, NOT_TO_THE_INTERNET if options.certfile else PRICE_OF_PLAIN_HTTP])


def shop_address(port: int, scheme: str = "http") -> str:
    """This machine's address on its network, as a tablet would open it; found without sending anything."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(NOWHERE)
            host = probe.getsockname()[0]
        except OSError:
            host = socket.gethostname()
    return f"{scheme}://{host}:{port}"


def is_handed_a_socket() -> bool:
    """Whether whoever started us listens already and leaves us its socket, as systemd does; gunicorn takes it up."""
    return os.environ.get("LISTEN_PID") == str(os.getpid()) or "GUNICORN_FD" in os.environ


def why_not_free(bind: Address) -> str:
    """Why nothing can be served at this address, or an empty text if it can."""
    family = socket.AF_INET6 if ":" in bind[0] else socket.AF_INET
    with socket.socket(family) as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind(bind)
        except OSError as fault:
            return (f"Nothing can be served at {_written(bind)}: {fault.strerror}."
                    " Choose another address with --bind.")
    return ""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the service until it is told to stop; gives the exit status."""
    options = read_options(arguments)
    if not is_handed_a_socket() and (reason := why_not_free(options.bind)):
        print(reason, file=sys.stderr)
        return 1
    Server(**vars(options)).run()
    return 0


def _is_for_this_machine_only(host: str) -> bool:
    return host in ("localhost", "::1") or host.startswith("127.")


def _openable(host: str) -> str:
    return {"0.0.0.0": "127.0.0.1", "::": "::1"}.get(host, host)  # noqa: S104  # names them, binds nothing


def _written(address: Address) -> str:
    host, port = address
    return f"[{host}]:{port}" if ":" in host else f"{host}:{port}"
