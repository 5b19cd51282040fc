"""The same question gives the same bytes: whatever seed Python hashes with, and whichever worker answers."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import requests
from flask.testing import FlaskClient

from tests.running import ROOT, Service, running
from tests.web.questions import answers, kind_of, questions, written
from tests.web.wrong_types import SPEC

WORKERS = 3


def asked_under(seed: str) -> list[list[Any]]:
    """All answers of a process of its own that hashes with this seed."""
    paths = os.pathsep.join([str(ROOT / "service"), str(ROOT)])
    surroundings = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": paths}
    command = [sys.executable, "-m", "tests.web.questions"]
    told = subprocess.run(command, env=surroundings, capture_output=True, check=True, cwd=ROOT)
    found: list[list[Any]] = json.loads(told.stdout)
    return found


def test_every_operation_is_asked(client: FlaskClient) -> None:
    assert {address.partition("?")[0] for address, _ in questions()} >= set(SPEC["paths"])
    statuses = Counter(status for _, status, _ in answers(client))
    assert set(statuses) == {200, 404, 422}
    assert statuses[200] > 50


def test_the_same_question_gives_the_same_bytes_under_three_hash_seeds(client: FlaskClient) -> None:
    told = [asked_under(seed) for seed in ("0", "1", "random")]
    assert told[0] == told[1] == told[2] == [list(each) for each in answers(client)]


def workers_of(service: Service) -> list[int]:
    """The processes that answer, once all of them are there."""
    children = Path(f"/proc/{service.process.pid}/task/{service.process.pid}/children")
    end = time.monotonic() + 20
    while time.monotonic() < end:
        found = [int(child) for child in children.read_text().split()]
        if len(found) == WORKERS:
            return found
        time.sleep(0.05)
    raise AssertionError(f"There are not {WORKERS} workers: {service.printed()}")


@contextmanager
def only(worker: int, workers: list[int]) -> Iterator[None]:
    """This worker answers; the others stand still meanwhile."""
    others = [other for other in workers if other != worker]
    for other in others:
        os.kill(other, signal.SIGSTOP)
    try:
        yield
    finally:
        for other in others:
            os.kill(other, signal.SIGCONT)


def all_answers(base: str) -> list[tuple[str, int, bytes]]:
    found = []
    for address, body in questions():
        # A connection of its own each time, so that it is not one that another worker holds.
        headers = {"X-Request-ID": "same", "Content-Type": kind_of(body), "Connection": "close"}
        method, data = ("GET", None) if body is None else ("POST", written(body))
        answer = requests.request(method, base + address, data=data, headers=headers, timeout=60)
        found.append((address, answer.status_code, answer.content))
    return found


def test_the_same_question_gives_the_same_bytes_from_each_worker() -> None:
    told = []
    with running("--workers", str(WORKERS)) as (base, service):
        workers = workers_of(service)
        for worker in workers:
            with only(worker, workers):
                told.append(all_answers(base))
    assert len(told) == WORKERS
    assert told[0] == told[1] == told[2]
