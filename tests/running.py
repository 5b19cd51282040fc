"""The service run for real, as a process of its own, for the tests that need it."""

import os
import signal
import socket
import subprocess
import sys
import tempfile
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO

ROOT = Path(__file__).resolve().parent.parent


class Service:
    """One `python -m dividing` with these arguments."""

    def __init__(self, *arguments: str, python: str = sys.executable, **environment: str) -> None:
        # A file and not a pipe: nobody empties a pipe, and a full one would stop the service.
        self.output: IO[str] = tempfile.TemporaryFile("w+", encoding="utf-8")  # noqa: SIM115  # closed by `running`
        surroundings = {**os.environ, "PYTHONPATH": str(ROOT / "service"), "PYTHONUNBUFFERED": "1", **environment}
        self.process = subprocess.Popen(
            [python, "-m", "dividing", *arguments], env=surroundings,
            stdout=self.output, stderr=subprocess.STDOUT, start_new_session=True,
        )

    def printed(self) -> str:
        self.output.seek(0)
        return self.output.read()

    def wait_until_healthy(self, base: str, seconds: float = 30) -> None:
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            if self.process.poll() is not None:
                raise AssertionError(f"The service stopped by itself: {self.printed()}")
            try:
                with urllib.request.urlopen(base + "/health", timeout=2):
                    return
            except OSError:
                time.sleep(0.05)
        raise AssertionError(f"{base} did not answer within {seconds} s: {self.printed()}")

    def stop(self, how: signal.Signals = signal.SIGTERM) -> int:
        """Stop it as an operator would; gives the exit status."""
        try:
            if self.process.poll() is None:
                self.process.send_signal(how)
            return self.process.wait(timeout=20)
        except subprocess.TimeoutExpired:
            os.killpg(self.process.pid, signal.SIGKILL)
            raise AssertionError("The service did not stop within 20 s of being told to.") from None


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


@contextmanager
def running(*arguments: str, python: str = sys.executable, **environment: str) -> Iterator[tuple[str, Service]]:
    """The base address of a service on a free port, and the service itself; stopped at the end."""
    address = f"127.0.0.1:{free_port()}"
    service = Service("--bind", address, *arguments, python=python, **environment)
    try:
        service.wait_until_healthy(f"http://{address}")
        yield f"http://{address}", service
    finally:
        service.stop()
        service.output.close()
