"""One instance of the service for a run by hand: on its own socket, or on one that outlives it."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
import time
from pathlib import Path

from tests.running import ROOT, Service

# A parent that hands a socket on as systemd does: as descriptor 3, told in two variables.
HAND_ON = (
    "import os, sys; os.dup2(int(sys.argv[1]), 3);"
    "os.environ.update(LISTEN_PID=str(os.getpid()), LISTEN_FDS='1');"
    "os.execv(sys.executable, [sys.executable, '-m', 'dividing', *sys.argv[2:]])"
)


def started(port: int, *arguments: str) -> Service:
    """An instance that answers at this port."""
    service = Service("--bind", f"127.0.0.1:{port}", *arguments)
    service.wait_until_healthy(f"http://127.0.0.1:{port}")
    if not workers(service.process.pid):
        raise SystemExit(f"Another service answers at port {port}.")
    return service


def on_kept_socket(listener: socket.socket, *arguments: str) -> subprocess.Popen[bytes]:
    """An instance that answers on a socket of its parent's."""
    command = [sys.executable, "-c", HAND_ON, str(listener.fileno()), *arguments]
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "service")}
    return subprocess.Popen(command, env=environment, pass_fds=[listener.fileno()], stdout=subprocess.DEVNULL)


def workers(master: int) -> list[int]:
    """The process ids of an instance's workers, as they are now."""
    return [int(word) for word in Path(f"/proc/{master}/task/{master}/children").read_text().split()]


def memory(process: int) -> tuple[int, int]:
    """KiB that a process holds in all, and its share of what it has in common with others (RSS and PSS)."""
    lines = Path(f"/proc/{process}/smaps_rollup").read_text().splitlines()
    sizes = {line.split(":")[0]: int(line.split()[1]) for line in lines if line.endswith("kB")}
    return sizes["Rss"], sizes["Pss"]


def wait_for_other_workers(master: int, before: list[int], seconds: float = 30) -> None:
    """Until none of the workers of before is left."""
    end = time.monotonic() + seconds
    while set(workers(master)) & set(before):
        if time.monotonic() > end:
            raise SystemExit("A worker did not stop.")
        time.sleep(0.05)
