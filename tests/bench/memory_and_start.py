"""What a worker holds in memory and what a start takes, against a bare Flask service under the same server.

    python tests/bench/memory_and_start.py [--starts 7] [--questions 3000] [--port 8470]

The bare service is one Flask view that parses the body and returns a fixed document, with nothing of ours loaded but
the worker. Both are started by turns, one worker each. Told are: from the command to the first answer, as time on the
clock and as processor time of the whole service (the machine is noisy, so that counts); and what the worker holds, RSS
(all of it) and PSS (its share), after the first answer and after so many different questions.
"""

from __future__ import annotations

import argparse
import http.client
import json
import os
import statistics
import subprocess
import sys
import time
from pathlib import Path
from typing import Any, NamedTuple

SERVICE = Path(__file__).resolve().parents[2] / "service"
sys.path.insert(0, str(SERVICE))
TICKS = os.sysconf("SC_CLK_TCK")
DOCUMENT = b'{"setups":[],"filler":"' + b"x" * 2400 + b'"}'


class Start(NamedTuple):
    """What one start of a service cost, and what its worker held then and later (KiB)."""

    seconds: float
    cpu: float
    rss: int
    pss: int
    rss_later: int
    pss_later: int


def serve_bare(port: int) -> None:
    """The bare service in the foreground."""
    from dividing.web.serve import Server

    class Bare(Server):
        def load(self) -> Any:
            from flask import Flask, Response, request

            app = Flask("bare", static_folder=None)

            @app.route("/health")
            @app.post("/v1/solve")
            def view() -> Response:
                if request.method == "POST":
                    json.loads(request.get_data())
                return Response(DOCUMENT, content_type="application/json")

            return app

    Bare(("127.0.0.1", port), 1).run()


def command(kind: str, port: int) -> list[str]:
    """How the service of this kind is started."""
    if kind == "bare":
        return [sys.executable, __file__, "--serve-bare", "--port", str(port)]
    return [sys.executable, "-m", "dividing", "--workers", "1", "--bind", f"127.0.0.1:{port}"]


def cpu(process: int) -> float:
    """Seconds of processor time that a process has used."""
    fields = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / TICKS


def held(process: int) -> tuple[int, int]:
    """RSS and PSS of a process in KiB."""
    lines = Path(f"/proc/{process}/smaps_rollup").read_text().splitlines()
    sizes = {line.split(":")[0]: int(line.split()[1]) for line in lines if line.endswith("kB")}
    return sizes["Rss"], sizes["Pss"]


def first_answer(port: int) -> http.client.HTTPConnection:
    """A connection on which the service has answered for the first time."""
    for _ in range(4000):
        connection = http.client.HTTPConnection("127.0.0.1", port, timeout=20)
        try:
            connection.request("GET", "/health")
            connection.getresponse().read()
        except OSError:
            connection.close()
            time.sleep(0.005)
        else:
            return connection
    raise SystemExit("A service did not start.")


def ask(connection: http.client.HTTPConnection, questions: int) -> None:
    """So many questions, each number to 1,000 in turn."""
    for step in range(questions):
        body = json.dumps({"work": {"divisions": 1 + 577 * step % 1000}})
        connection.request("POST", "/v1/solve", body, {"Content-Type": "application/json"})
        connection.getresponse().read()


def start(kind: str, port: int, questions: int) -> Start:
    """Start one service, measure, and stop it."""
    began = time.monotonic()
    service = subprocess.Popen(
        command(kind, port), env={**os.environ, "PYTHONPATH": str(SERVICE)}, stdout=subprocess.DEVNULL
    )
    try:
        connection = first_answer(port)
        seconds = time.monotonic() - began
        (worker,) = map(int, Path(f"/proc/{service.pid}/task/{service.pid}/children").read_text().split())
        spent = cpu(service.pid) + cpu(worker)
        early = held(worker)
        ask(connection, questions)
        late = held(worker)
        connection.close()
    finally:
        service.terminate()
        service.wait(20)
    return Start(seconds, spent, *early, *late)


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--starts", type=int, default=7)
    parser.add_argument("--questions", type=int, default=3000)
    parser.add_argument("--port", type=int, default=8470)
    parser.add_argument("--serve-bare", action="store_true")
    chosen = parser.parse_args()
    if chosen.serve_bare:
        serve_bare(chosen.port)
        return
    turns = [(start("ours", chosen.port, chosen.questions), start("bare", chosen.port, chosen.questions))
             for _ in range(chosen.starts)]
    for name, unit, divisor in (("seconds", "s to the first answer", 1), ("cpu", "s of processor time to it", 1),
                                ("rss", "MiB of RSS then", 1024), ("pss", "MiB of PSS then", 1024),
                                ("rss_later", "MiB of RSS after the questions", 1024),
                                ("pss_later", "MiB of PSS after them", 1024)):
        ours, bare = (statistics.median(getattr(turn[place], name) for turn in turns) / divisor for place in (0, 1))
        print(f"{ours:8.2f} {unit}, {bare:.2f} bare, ratio {ours / bare:.2f}")


if __name__ == "__main__":
    main()
