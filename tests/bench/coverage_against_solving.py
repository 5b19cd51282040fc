"""What it costs to go through a range of numbers at once, against solving each of them.

    python tests/bench/coverage_against_solving.py [--to 1000] [--rounds 4]

On both plate sets, without gears and with the twelve. The two take turns in one process, only processor time counts,
and every number is compared. "Search" is the pure core on both sides, solving asked for one setup of each number;
"answer" is what the service makes of it, from the question as a dictionary to the answer as one.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "service"))

from dividing.indexing.coverage import coverage
from dividing.indexing.head import SET_ONE, TWELVE_GEARS, Head
from dividing.indexing.heads import SET_TWO
from dividing.indexing.solving import solve
from dividing.indexing.work import Divisions
from dividing.web.coverage import covering
from dividing.web.solve import solved


def spent(do: Callable[[], object]) -> float:
    """Seconds of processor time."""
    began = time.process_time()
    do()
    return time.process_time() - began


def in_turn(once: Callable[[], object], each: Callable[[], object], rounds: int) -> tuple[float, float]:
    """Seconds of both, each the mean of its rounds, taken one after the other."""
    swept = alone = 0.0
    once(), each()
    for _ in range(rounds):
        swept += spent(once)
        alone += spent(each)
    return swept / rounds, alone / rounds


def compare(last: int, head: Head) -> None:
    """Stop where a number is not what solving makes of it."""
    found = coverage(1, last, head).ways
    for number in range(1, last + 1):
        setup = solve(Divisions(number), head, limit=1).setups[0]
        way = (setup.method, setup.every) if setup.exact else None
        swept = found.get(number)
        if way != (swept and (swept.method, swept.every)):
            raise SystemExit(f"{number}: solved {way}, swept {swept}")


def search(last: int, head: Head, rounds: int) -> tuple[float, float]:
    """The pure core on both sides."""

    def each() -> None:
        for number in range(1, last + 1):
            solve(Divisions(number), head, limit=1)

    return in_turn(lambda: coverage(1, last, head), each, rounds)


def answer(last: int, told: dict[str, Any], rounds: int) -> tuple[float, float]:
    """The service's answers on both sides."""

    def each() -> None:
        for number in range(1, last + 1):
            solved({"work": {"divisions": number}, "head": told, "limit": 1})

    question = {"from": 1, "to": last, "head": told, "additions": False}
    return in_turn(lambda: covering(question), each, rounds)


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--to", type=int, default=1000)
    parser.add_argument("--rounds", type=int, default=4)
    chosen = parser.parse_args()
    for name, plates in (("set I", SET_ONE), ("set II", SET_TWO)):
        for gears in ((), TWELVE_GEARS):
            compare(chosen.to, Head(plates=plates, change_gears=gears))
            told = {"plates": [list(plate) for plate in plates], "change_gears": list(gears)}
            for what, (swept, alone) in (
                ("search", search(chosen.to, Head(plates=plates, change_gears=gears), chosen.rounds)),
                ("answer", answer(chosen.to, told, chosen.rounds)),
            ):
                print(
                    f"{name}, {len(gears)} gears, 1 to {chosen.to:,}, {what}: {swept * 1e3:.2f} ms at once, "
                    f"{alone * 1e3:.1f} ms one by one, {alone / swept:.1f} times that"
                )


if __name__ == "__main__":
    main()
