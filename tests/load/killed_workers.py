"""A worker is killed (-9) every second: which questions fail, and do the next ones succeed?

    PYTHONPATH=service python -m tests.load.killed_workers [--seconds 30] [--port 8460]

What a worker was answering, and what it had let in, goes with it; so at most the sixteen callers' open questions can
fail at each kill. After each kill eight new callers ask once: all of them must have their answer.
"""

from __future__ import annotations

import argparse
import os
import signal
import time

from tests.load.callers import Caller, Tally, asking
from tests.load.instance import started, workers

CALLERS = 16
NEXT = 8


def ask_next(port: int) -> Tally:
    """New callers, one question each, with nobody killed meanwhile."""
    tally = Tally()
    for number in range(NEXT):
        Caller(port, tally, kept=False).ask(28 + number)
    return tally


def main() -> int:
    """Kill, ask, and print one line; the exit status says whether a question failed that should not."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--seconds", type=int, default=30)
    parser.add_argument("--port", type=int, default=8460)
    chosen = parser.parse_args()
    service = started(chosen.port, "--workers", "2")
    most_at_once = next_answered = 0
    try:
        with asking(chosen.port, CALLERS) as tally:
            for kills in range(chosen.seconds):
                time.sleep(0.8)
                lost = tally.lost.total()
                os.kill(workers(service.process.pid)[kills % 2], signal.SIGKILL)
                time.sleep(0.2)
                next_answered += ask_next(chosen.port).answered
                most_at_once = max(most_at_once, tally.lost.total() - lost)
    finally:
        service.stop()
    print(f"{chosen.seconds} workers killed: {tally}; at most {most_at_once} lost at one kill;"
          f" of the {NEXT * chosen.seconds} questions asked next {next_answered} answered")
    return 0 if next_answered == NEXT * chosen.seconds and most_at_once <= CALLERS else 1


if __name__ == "__main__":
    raise SystemExit(main())
