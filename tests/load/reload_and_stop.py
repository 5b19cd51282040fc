"""Twenty thousand questions across reloads and stops: is every one answered?

    PYTHONPATH=service python -m tests.load.reload_and_stop [--questions 20000] [--port 8460]

First the workers are begun anew again and again (HUP). Then the whole service is stopped (TERM) and started again and
again on a socket that outlives it, as under systemd's socket activation: whoever calls while nobody serves waits in
the socket's queue. Every other caller keeps its connection. A question that gets no answer is lost; it is not asked
a second time.
"""

from __future__ import annotations

import argparse
import signal
import socket
import time

from tests.load.callers import Tally, asking
from tests.load.instance import on_kept_socket, started, wait_for_other_workers, workers

CALLERS = 16


def across_reloads(port: int, questions: int) -> tuple[Tally, int]:
    """HUP every second while the questions last."""
    service = started(port, "--workers", "2")
    times = 0
    try:
        with asking(port, CALLERS, questions) as tally:
            while tally.answered + tally.lost.total() < questions:
                before = workers(service.process.pid)
                service.process.send_signal(signal.SIGHUP)
                wait_for_other_workers(service.process.pid, before)
                times += 1
                time.sleep(0.5)
    finally:
        service.stop()
    return tally, times


def wait_for_answers(tally: Tally) -> None:
    """Until the instance has answered for a second."""
    before = tally.answered
    for _ in range(300):
        time.sleep(0.1)
        if tally.answered > before:
            break
    time.sleep(1)


def across_stops(port: int, questions: int) -> tuple[Tally, int]:
    """TERM and a new start on the same socket while the questions last."""
    times = 0
    with socket.create_server(("127.0.0.1", port), backlog=2048) as listener:
        service = on_kept_socket(listener, "--workers", "2")
        try:
            with asking(port, CALLERS, questions) as tally:
                while tally.answered + tally.lost.total() < questions:
                    wait_for_answers(tally)
                    service.send_signal(signal.SIGTERM)
                    if service.wait(20) != 0:
                        raise SystemExit("An instance did not start or did not stop well.")
                    service = on_kept_socket(listener, "--workers", "2")
                    times += 1
        finally:
            service.terminate()
            service.wait(20)
    return tally, times


def main() -> int:
    """Run both and print a line for each; the exit status says whether anything was lost."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--questions", type=int, default=20_000)
    parser.add_argument("--port", type=int, default=8460)
    chosen = parser.parse_args()
    reloads, times = across_reloads(chosen.port, chosen.questions // 2)
    print(f"across {times} reloads (HUP): {reloads}", flush=True)
    stops, times = across_stops(chosen.port, chosen.questions - chosen.questions // 2)
    print(f"across {times} stops (TERM) and starts on a kept socket: {stops}")
    return 1 if reloads.lost or stops.lost else 0


if __name__ == "__main__":
    raise SystemExit(main())
