"""What a whole solve costs a worker, measured against the least that Flask can do.

    python tests/bench/solve_against_bare.py [--mixed] [--rounds 20] [--requests 400] [--port 18290]

Two services run at once under the same gunicorn settings, one worker each: ours, and one Flask view that parses the
same body with the standard library and returns a fixed document as long as our answer. They are asked by turns, over
one kept connection each, and the processor time of their workers is read before and after each turn. The questions
differ from request to request, so that nothing can be answered from memory: numbers that the usual head divides with
one move, or with --mixed every number to 1,000 on the usual head with twelve gears. Both ratios are printed: under
gunicorn, and in this process by calling the two applications alone.
"""

from __future__ import annotations

import argparse
import http.client
import io
import json
import os
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from itertools import cycle
from pathlib import Path
from typing import Any

SERVICE = Path(__file__).resolve().parents[2] / "service"
sys.path.insert(0, str(SERVICE))
TICKS = os.sysconf("SC_CLK_TCK")
CIRCLES = (15, 16, 17, 18, 19, 20, 21, 23, 27, 29, 31, 33, 37, 39, 41, 43, 47, 49)
GEARS = [24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100]
MIXED = "--mixed" in sys.argv


def questions() -> list[dict[str, Any]]:
    """Each question once, in an order that jumps about."""
    if MIXED:
        return [{"work": {"divisions": 1 + 577 * step % 1000}, "head": {"change_gears": GEARS}} for step in range(1000)]
    plain = (number for number in range(2, 400) if any(circle * 40 % number == 0 for circle in CIRCLES))
    return [{"work": {"divisions": number}} for number in plain]


def bodies() -> Iterator[bytes]:
    """Questions without end, each unlike the one before."""
    return cycle([json.dumps(question).encode() for question in questions()])


def bare_app(document: bytes) -> Any:
    """The least that a Flask service does with such a request."""
    from flask import Flask, Response, request

    app = Flask("bare", static_folder=None)

    @app.post("/v1/solve")
    def view() -> Response:
        json.loads(request.get_data())
        return Response(document, content_type="application/json")

    return app


def usual_document() -> bytes:
    """An answer of ours as long as they are on average."""
    from dividing.web.app import create_app

    client = create_app(sink=len).test_client()
    answers = [client.post("/v1/solve", json=question).data for question in questions()]
    usual = sum(map(len, answers)) / len(answers)
    return min(answers, key=lambda answer: abs(len(answer) - usual))


def serve(kind: str, port: int) -> None:
    """Run one of the two services in the foreground."""
    from dividing.web.serve import Server

    class Bare(Server):
        def load(self) -> Any:
            return bare_app(usual_document())

    (Server if kind == "ours" else Bare)(("127.0.0.1", port), 1).run()


class Service:
    """One of the two services with its worker and a connection that is kept."""

    def __init__(self, kind: str, port: int) -> None:
        command = [sys.executable, __file__, "--serve", kind, "--port", str(port), *["--mixed"] * MIXED]
        self.process = subprocess.Popen(command, stdout=subprocess.DEVNULL)
        self.port = port
        self.connection = self._connected()
        self.worker = self._worker()
        self.questions = bodies()

    def _worker(self) -> int:
        """The one worker; the master listens before it has begun its worker."""
        children = Path(f"/proc/{self.process.pid}/task/{self.process.pid}/children")
        for _ in range(100):
            if found := children.read_text().split():
                return int(found[0])
            time.sleep(0.1)
        self.process.terminate()
        raise SystemExit("A service started no worker.")

    def _connected(self) -> http.client.HTTPConnection:
        for _ in range(100):
            time.sleep(0.1)
            connection = http.client.HTTPConnection("127.0.0.1", self.port)
            try:
                connection.connect()
            except OSError:
                continue
            return connection
        raise SystemExit("A service did not start.")

    def cpu(self) -> float:
        """Seconds of processor time that the worker has used."""
        fields = Path(f"/proc/{self.worker}/stat").read_text().rpartition(")")[2].split()
        return (int(fields[11]) + int(fields[12])) / TICKS

    def ask(self, requests: int) -> float:
        """Ask so many questions; give what they cost the worker."""
        before = self.cpu()
        for _, body in zip(range(requests), self.questions, strict=False):
            self.connection.request("POST", "/v1/solve", body, {"Content-Type": "application/json"})
            reply = self.connection.getresponse()
            reply.read()
            assert reply.status == 200
        return self.cpu() - before

    def stop(self) -> None:
        self.connection.close()
        self.process.terminate()
        self.process.wait(20)


def under_gunicorn(rounds: int, requests: int, port: int) -> tuple[float, float]:
    """Milliseconds of worker time a request, ours and bare."""
    services = [Service("ours", port), Service("bare", port + 1)]
    try:
        for service in services:
            service.ask(requests)
        spent = [0.0, 0.0]
        for _ in range(rounds):
            for place, service in enumerate(services):
                spent[place] += service.ask(requests)
    finally:
        for service in services:
            service.stop()
    ours, bare = (seconds / (rounds * requests) * 1000 for seconds in spent)
    return ours, bare


def alone(rounds: int, requests: int) -> tuple[float, float]:
    """Milliseconds of this process a request, ours and bare, with no server around them."""
    from dividing.web.app import create_app

    apps = [_caller(create_app(sink=len)), _caller(bare_app(usual_document()))]
    questions = [bodies(), bodies()]
    spent = [0.0, 0.0]
    for turn in range(rounds + 1):
        for place, (app, question) in enumerate(zip(apps, questions, strict=True)):
            began = time.process_time()
            for _, body in zip(range(requests), question, strict=False):
                app(body)
            spent[place] += (time.process_time() - began) * bool(turn)
    ours, bare = (seconds / (rounds * requests) * 1000 for seconds in spent)
    return ours, bare


def _caller(app: Callable[..., Any]) -> Callable[[bytes], None]:
    def call(body: bytes) -> None:
        environ = {
            "REQUEST_METHOD": "POST",
            "PATH_INFO": "/v1/solve",
            "SCRIPT_NAME": "",
            "QUERY_STRING": "",
            "SERVER_NAME": "127.0.0.1",
            "SERVER_PORT": "80",
            "SERVER_PROTOCOL": "HTTP/1.1",
            "wsgi.url_scheme": "http",
            "wsgi.input": io.BytesIO(body),
            "wsgi.errors": sys.stderr,
            "wsgi.version": (1, 0),
            "CONTENT_TYPE": "application/json",
            "CONTENT_LENGTH": str(len(body)),
        }
        for _ in app(environ, lambda *_: None):
            pass

    return call


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--rounds", type=int, default=20)
    parser.add_argument("--requests", type=int, default=400)
    parser.add_argument("--port", type=int, default=18290)
    parser.add_argument("--mixed", action="store_true")
    parser.add_argument("--serve", choices=("ours", "bare"))
    chosen = parser.parse_args()
    if chosen.serve:
        serve(chosen.serve, chosen.port)
        return
    ours, bare = under_gunicorn(chosen.rounds, chosen.requests, chosen.port)
    print(f"under gunicorn: {ours:.3f} ms a solve, {bare:.3f} ms bare, ratio {ours / bare:.2f}")
    ours, bare = alone(chosen.rounds, chosen.requests)
    print(f"in one process: {ours:.3f} ms a solve, {bare:.3f} ms bare, ratio {ours / bare:.2f}")


if __name__ == "__main__":
    main()
