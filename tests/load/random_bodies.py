"""Random bodies and queries against the application, in this process: no fault of ours, and all as described.

    python -m tests.load.random_bodies [--count 200000] [--seed 1] [--held-to 20]

Two in three are right questions of every operation with something changed: a value, a name, a key left out or put in,
a number made long, a list made longer. The others are right questions with bytes changed, cut or put in, and bytes at
random. An answer of 500 and more, a line of an error in the log, a status or content type that the description does
not tell, and one in `--held-to` answers that is not as its schema says are counted as faults and printed.
"""

from __future__ import annotations

import argparse
import io
import json
import logging
import sys
import time
from collections import Counter
from collections.abc import Callable, Iterator
from copy import deepcopy
from itertools import islice
from random import Random
from typing import Any, NamedTuple
from urllib.parse import quote

from jsonschema import Draft202012Validator

from dividing.web.app import create_app
from dividing.web.openapi import description
from tests.web import hostile
from tests.web.questions import kind_of, questions, written

SPEC = description()
COMPONENTS = {"components": SPEC["components"]}
VALUES: list[Any] = [
    None, True, False, 0, 1, -1, 2, 7, 24, 28, 40, 49, 100, 127, 399, 400, 401, 9_999, 20_000, 20_001, 999_983, 10**6,
    10**24, 0.5, 1e-9, 1e308, "", "x", "28", "22°30'", "1/7 turn", "0.35 rad", "0°01'", "359.99", "-5", "1/0", "½", "٧",
    "\x00", "\u202e", "é" * 65, "direct", "plain", "differential", "compound", "dial", "nearest", "mm", "in", [], [[]],
    [1, 2, 3], [[15, 16], [21, 23]], ["0", "22.5"], {}, {"x": 1}, {"divisions": 73}, {"divisions": 100},
]  # fmt: skip
KINDS = ["application/json", "application/json", "application/json", "text/csv", "text/plain", "", "application/x+json"]
GARBAGE = [
    b"\x00",
    b"\xff",
    b'"',
    b"{",
    b"[",
    b"}",
    b"]",
    b",",
    b":",
    b"\\",
    b"NaN",
    b"1e999",
    b"\xed\xa0\x80",
    b"9" * 99,
]
FAULTS_SHOWN = 20


class Request(NamedTuple):
    method: str
    path: str
    query: str
    body: bytes
    kind: str


class Answer(NamedTuple):
    status: int
    kind: str
    body: bytes


class Errors(logging.Handler):
    """Counts what the service logs as an error: a traceback that no caller sees."""

    def __init__(self) -> None:
        super().__init__(logging.ERROR)
        self.told: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.told.append(self.format(record))


def requests_of(chance: Random) -> Iterator[Request]:
    """Requests without end."""
    asked = questions()
    posed = [(path, body) for path, body in asked if body is not None]
    addresses = [path for path, body in asked if body is None and path != "/docs"]
    while True:
        way = chance.random()
        if way < 0.1:
            path, _, query = chance.choice(addresses).partition("?")
            yield Request("GET", path, changed_query(query, chance), b"", "")
            continue
        path, body = chance.choice(posed)
        kind = kind_of(body) if chance.random() < 0.97 else chance.choice(KINDS)
        if way < 0.75 and not isinstance(body, str):
            body = deepcopy(body)
            for _ in range(chance.choice((1, 1, 1, 2, 3))):
                change(body, chance)
            yield Request("POST", path, "", written(body), kind)
        elif way < 0.95:
            yield Request("POST", path, "", spoilt(written(body), chance), kind)
        else:
            yield Request("POST", path, "", chance.randbytes(chance.choice((1, 10, 100, 1000))), kind)


def change(body: Any, chance: Random) -> None:
    """Change one place of the body, at any depth."""
    places = list(places_of(body))
    if not places:
        return
    inside, key = chance.choice(places)
    way = chance.randrange(6)
    if way == 0:
        del inside[key]
    elif way == 1 and isinstance(inside, dict):
        inside[chance.choice(("x", "", "work", "head", "kind", "angle", "count", "every", "é"))] = inside[key]
    elif way == 2 and isinstance(inside, list):
        inside.extend([inside[key]] * chance.choice((1, 10, 100)))
    elif way == 3 and type(inside[key]) in (int, float):
        inside[key] = inside[key] * chance.choice((-1, 0, 2, 3, 10, 1.5, 0.1, 10**6)) + chance.choice((-1, 0, 0, 1))
    else:
        inside[key] = deepcopy(chance.choice(VALUES))


def places_of(body: Any) -> Iterator[tuple[Any, Any]]:
    """Every place of a body, as what holds it and the key there."""
    keys: Any = body if isinstance(body, dict) else range(len(body)) if isinstance(body, list) else ()
    for key in list(keys):
        yield body, key
        yield from places_of(body[key])


def spoilt(data: bytes, chance: Random) -> bytes:
    """The bytes with some changed, cut away or put in."""
    for _ in range(chance.choice((1, 1, 2, 5))):
        at, end = sorted((chance.randrange(len(data) + 1), chance.randrange(len(data) + 1)))
        put = chance.choice((*GARBAGE, *hostile.VALUES.values(), data[at:end], bytes([chance.randrange(256)])))
        data = data[:at] + put + data[chance.choice((at, at, at + 1, end)) :]
    return data[: chance.choice((100, 1_000, 65_536, 70_000))]


def changed_query(query: str, chance: Random) -> str:
    words = query.split("&") if query else []
    for _ in range(chance.choice((0, 1, 2))):
        value = chance.choice(VALUES)
        value = value if isinstance(value, str) else json.dumps(value)
        names = (
            "divisions",
            "angle",
            "angles",
            "ratio",
            "plates",
            "part",
            "methods",
            "dial",
            "screw",
            "turns",
            "x",
            "",
        )
        words.append(f"{chance.choice(names)}={quote(value)}")
    return "&".join(words) if chance.random() < 0.9 else quote(spoilt("&".join(words).encode(), chance), safe="&=%")


def asker(app: Callable[..., Any]) -> Callable[[Request], Answer]:
    """Asks the application as a server would."""

    def ask(request: Request) -> Answer:
        told: list[Any] = []
        environ = {
            "REQUEST_METHOD": request.method, "PATH_INFO": request.path, "SCRIPT_NAME": "",
            "QUERY_STRING": request.query, "SERVER_NAME": "127.0.0.1", "SERVER_PORT": "80",
            "SERVER_PROTOCOL": "HTTP/1.1", "HTTP_HOST": "shop", "wsgi.url_scheme": "http", "wsgi.version": (1, 0),
            "wsgi.input": io.BytesIO(request.body), "wsgi.errors": sys.stderr, "CONTENT_TYPE": request.kind,
            "CONTENT_LENGTH": str(len(request.body)) if request.method == "POST" else "",
        }  # fmt: skip
        body = b"".join(app(environ, lambda status, headers, *_: told.extend((status, dict(headers)))))
        return Answer(int(told[0][:3]), told[1].get("Content-Type", ""), body)

    return ask


def faults_of(request: Request, answer: Answer, *, held: bool) -> list[str]:
    """What the description does not tell of this answer."""
    if answer.status >= 500:
        return [f"status {answer.status}"]
    if request.path not in SPEC["paths"]:
        return []
    responses = SPEC["paths"][request.path][request.method.lower()]["responses"]
    if str(answer.status) not in responses:
        return [f"status {answer.status} is not described"]
    content = _resolved(responses[str(answer.status)]).get("content", {})
    kind = answer.kind.partition(";")[0]
    if kind not in content:
        return [f"content type {answer.kind} is not described"]
    if not held or not kind.endswith("json"):
        return []
    schema = {**content[kind]["schema"], **COMPONENTS}
    return [
        f"{error.json_path}: {error.message[:200]}"
        for error in Draft202012Validator(schema).iter_errors(json.loads(answer.body))
    ]


def _resolved(told: Any) -> Any:
    return SPEC["components"]["responses"][told["$ref"].rpartition("/")[2]] if "$ref" in told else told


class Tally:
    """What came of a run so far."""

    def __init__(self) -> None:
        self.statuses: Counter[int] = Counter()
        self.asked = self.held = self.faults = 0
        self.slowest = 0.0

    def add(self, request: Request, answer: Answer, found: list[str], spent: float) -> None:
        self.asked += 1
        self.statuses[answer.status] += 1
        self.slowest = max(self.slowest, spent)
        self.faults += bool(found)
        if found and self.faults <= FAULTS_SHOWN:
            print(f"{request}\n  {answer.status} {answer.body[:300]!r}\n  {found}", flush=True)

    def __str__(self) -> str:
        statuses = ", ".join(f"{count:,} x {status}" for status, count in sorted(self.statuses.items()))
        return (
            f"{self.asked:,} requests: {statuses}; {self.held:,} answers held to the description; "
            f"slowest {self.slowest * 1000:.0f} ms; {self.faults} faults"
        )


def run(count: int, seed: int, held_to: int) -> Tally:
    errors, tally = Errors(), Tally()
    logging.getLogger("dividing").addHandler(errors)
    logging.getLogger("dividing").propagate = False
    ask = asker(create_app(sink=len))
    chance = Random(seed)  # noqa: S311  # the same requests each time
    for request in islice(requests_of(chance), count):
        began = time.process_time()
        answer = ask(request)
        spent = time.process_time() - began
        held = tally.asked % held_to == 0
        tally.held += held
        tally.add(request, answer, faults_of(request, answer, held=held) + errors.told, spent)
        errors.told = []
        if tally.asked % 20_000 == 0:
            print(tally, flush=True)
    return tally


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--count", type=int, default=200_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--held-to", type=int, default=20)
    given = parser.parse_args()
    began = time.process_time()
    tally = run(given.count, given.seed, given.held_to)
    print(f"{tally}; {time.process_time() - began:.0f} s of processor time")
    sys.exit(1 if tally.faults else 0)


if __name__ == "__main__":
    main()
