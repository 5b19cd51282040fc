"""Two instances behind nginx: is a question lost when they are restarted by turns, or when one is killed?

    PYTHONPATH=service python -m tests.load.behind_nginx [--questions 10000]

Needs nginx (Debian's nginx-light); the ports stand in nginx.conf. For a rolling restart one instance is told to stop
(TERM), goes when it has answered, and is started anew; the other has its turn when the first is healthy and nginx has
tried it again, and so on while the questions last. Then one instance is killed outright (-9) with all its workers and
stays away for half of the questions.
"""

from __future__ import annotations

import argparse
import os
import signal
import socket
import subprocess
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from tests.load.callers import Tally, asking
from tests.load.instance import started
from tests.running import Service

CONFIGURATION = Path(__file__).with_name("nginx.conf")
FRONT, INSTANCES = 8460, (8461, 8462)
CALLERS = 16
# Longer than nginx leaves out an instance that has failed (fail_timeout): else both would be out at once.
SEEN_AGAIN_SECONDS = 3


@contextmanager
def nginx() -> Iterator[None]:
    """The balancer, with its files in a folder that goes with it."""
    with tempfile.TemporaryDirectory() as folder:
        # Workers of nginx give up root's rights and must still get at the folder.
        Path(folder).chmod(0o755)
        balancer = subprocess.Popen(["nginx", "-p", folder, "-c", str(CONFIGURATION)])
        try:
            wait_for_listener(FRONT)
            yield
        finally:
            balancer.send_signal(signal.SIGQUIT)
            balancer.wait(20)


def wait_for_listener(port: int) -> None:
    for _ in range(200):
        with suppress(ConnectionRefusedError), socket.create_connection(("127.0.0.1", port), timeout=5):
            return
        time.sleep(0.05)
    raise SystemExit(f"Nothing listens at port {port}.")


def asked(tally: Tally) -> int:
    return tally.answered + tally.lost.total()


def rolling(running: list[Service], questions: int) -> tuple[Tally, int]:
    """Restart the instances by turns while the questions last."""
    restarts = 0
    with asking(FRONT, CALLERS, questions) as tally:
        while asked(tally) < questions:
            place = restarts % 2
            running[place].stop()
            running[place] = started(INSTANCES[place], "--workers", "1")
            restarts += 1
            time.sleep(SEEN_AGAIN_SECONDS)
    return tally, restarts


def killed(running: list[Service], questions: int) -> Tally:
    """Kill one instance after a quarter of the questions and bring it back for the last quarter."""
    with asking(FRONT, CALLERS, questions) as tally:
        while asked(tally) < questions / 4:
            time.sleep(0.05)
        os.killpg(running[0].process.pid, signal.SIGKILL)
        running[0].process.wait(20)
        while asked(tally) < questions * 3 / 4:
            time.sleep(0.05)
        running[0] = started(INSTANCES[0], "--workers", "1")
    return tally


def main() -> int:
    """Run both and print a line for each; the exit status says whether anything was lost."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--questions", type=int, default=10_000)
    chosen = parser.parse_args()
    running = [started(port, "--workers", "1") for port in INSTANCES]
    try:
        with nginx():
            restarted, restarts = rolling(running, chosen.questions // 2)
            print(f"{restarts} restarts by turns: {restarted}", flush=True)
            routed_round = killed(running, chosen.questions // 2)
            print(f"one of two instances killed for half of the time: {routed_round}")
    finally:
        for service in running:
            service.stop()
    return 1 if restarted.lost or routed_round.lost else 0


if __name__ == "__main__":
    raise SystemExit(main())
