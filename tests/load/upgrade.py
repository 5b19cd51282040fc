"""A new version takes the place of the old one again and again (USR2, then TERM): is every question answered?

    PYTHONPATH=service python -m tests.load.upgrade [--questions 10000] [--port 8460]

On USR2 a second service begins from what lies on the disk now, on the socket of the first. When it has its workers the
first is told to stop, answers whoever is there, and goes. A question that gets no answer is lost; it is not asked a
second time.
"""

from __future__ import annotations

import argparse
import os
import signal
import time
from contextlib import suppress
from pathlib import Path

from tests.load.callers import Tally, asking
from tests.load.instance import started, workers

CALLERS, WORKERS = 16, 2


def successor(master: int, seconds: float = 30) -> int:
    """Begin a second service beside this one; its process id, once it has its workers."""
    before = set(workers(master))
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        # Not heeded until it has noticed that the one before it is gone, nor once it has a successor.
        os.kill(master, signal.SIGUSR2)
        time.sleep(0.25)
        # Whichever child has as many children of its own is no worker.
        for child in set(workers(master)) - before:
            with suppress(FileNotFoundError):
                if len(workers(child)) == WORKERS:
                    return child
    raise SystemExit("No second service began.")


def stop(master: int, seconds: float = 20) -> None:
    """TERM, and wait until it is gone; it need not be a child of ours."""
    os.kill(master, signal.SIGTERM)
    end = time.monotonic() + seconds
    while is_there(master):
        if time.monotonic() > end:
            raise SystemExit("A service did not stop.")
        time.sleep(0.05)


def is_there(process: int) -> bool:
    """Whether it runs; one that is over and waited for by nobody does not."""
    try:
        return Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()[0] != "Z"
    except FileNotFoundError:
        return False


def across_upgrades(port: int, questions: int) -> tuple[Tally, int]:
    """A successor every second while the questions last."""
    service = started(port, "--workers", str(WORKERS))
    master, times = service.process.pid, 0
    try:
        with asking(port, CALLERS, questions) as tally:
            while tally.answered + tally.lost.total() < questions:
                old, master = master, successor(master)
                time.sleep(0.5)
                stop(old)
                times += 1
                time.sleep(0.5)
    finally:
        stop(master)
        service.process.wait(20)
        service.output.close()
    return tally, times


def main() -> int:
    """Run it and print a line; the exit status says whether anything was lost."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--questions", type=int, default=10_000)
    parser.add_argument("--port", type=int, default=8460)
    chosen = parser.parse_args()
    upgrades, times = across_upgrades(chosen.port, chosen.questions)
    print(f"across {times} upgrades (USR2, TERM): {upgrades}")
    return 1 if upgrades.lost else 0


if __name__ == "__main__":
    raise SystemExit(main())
