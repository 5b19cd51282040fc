"""How the cost of a whole answer grows with what is asked: twice the holes, twice the circles, twice the rows, and a
number a thousand times as large.

    python tests/bench/growth.py [--rounds 15]

Each line compares two questions that take turns in one process; only processor time counts, and of the rounds the
middle one. Divisions are primes that no circle divides, so that every method is searched to its end.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from statistics import median
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "service"))

from dividing.indexing.head import TWELVE_GEARS
from dividing.web.app import create_app

PRIMES = (421, 431, 433, 439, 443, 449, 457, 461, 463, 467)
GEARS = list(TWELVE_GEARS)
EVEN = [[*range(40, 60, 2)], [*range(60, 80, 2)]]


def head(plates: Sequence[Sequence[int]], gears: Sequence[int] = ()) -> dict[str, Any]:
    """A head with such plates."""
    return {"plates": [list(face) for face in plates], "change_gears": list(gears)}


def solves(head: dict[str, Any], numbers: Sequence[int] = PRIMES, **asked: Any) -> list[dict[str, Any]]:
    """A question for each number."""
    return [{"work": {"divisions": number}, "head": head, **asked} for number in numbers]


TWICE_THE_HOLES = [[2 * circle for circle in face] for face in EVEN]
TWICE_THE_CIRCLES = [[*face, *(circle + 1 for circle in face)] for face in EVEN]
ROWS = {"positions": True, "limit": 1, "methods": ["nearest"]}
COMPARED = {
    "twice the holes, no gears (2.3 at most)": (solves(head(EVEN)), solves(head(TWICE_THE_HOLES))),
    "twice the holes, twelve gears (2.3)": (solves(head(EVEN, GEARS)), solves(head(TWICE_THE_HOLES, GEARS))),
    "twice the circles, no gears (4.5)": (solves(head(EVEN)), solves(head(TWICE_THE_CIRCLES))),
    "twice the circles, twelve gears (4.5)": (solves(head(EVEN, GEARS)), solves(head(TWICE_THE_CIRCLES, GEARS))),
    "twice the rows (2.3)": (solves(head(EVEN), [4_999], **ROWS), solves(head(EVEN), [9_999], **ROWS)),
    "1,000,000 against 997, no gears (1.2)": (solves(head(EVEN), [997] * 20), solves(head(EVEN), [1_000_000] * 20)),
    "1,000,000 against 997, twelve gears (1.2)": (
        solves({"change_gears": GEARS}, [997] * 20),
        solves({"change_gears": GEARS}, [1_000_000] * 20),
    ),
}


def spent(ask: Callable[[dict[str, Any]], object], questions: Sequence[dict[str, Any]]) -> float:
    """Seconds of processor time for all of them."""
    began = time.process_time()
    for question in questions:
        ask(question)
    return time.process_time() - began


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--rounds", type=int, default=15)
    rounds = parser.parse_args().rounds
    client = create_app(sink=len).test_client()

    def ask(question: dict[str, Any]) -> None:
        reply = client.post("/v1/solve", json=question)
        if reply.status_code != 200:
            raise SystemExit(f"{reply.status_code}: {reply.text}")

    for name, (less, more) in COMPARED.items():
        spent(ask, [less[0], more[0]])
        pairs = [(spent(ask, less), spent(ask, more)) for _ in range(rounds)]
        small, large = (median(side) for side in zip(*pairs, strict=True))
        print(f"{name}: {large / small:.2f} times ({small / len(less) * 1e3:.2f} and {large / len(more) * 1e3:.2f} ms)")


if __name__ == "__main__":
    main()
