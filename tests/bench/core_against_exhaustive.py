"""What a whole answer of the pure core costs, against trying every hole of every circle with fractions.

    python tests/bench/core_against_exhaustive.py [--numbers 12]

For each number both find every exact setting by direct, plain, compound and differential indexing; the core also
orders them and writes its words. The two take turns in one process, on both plate sets with the twelve gears, and only
processor time counts. After that the core alone answers every number to 1,000, and 1,000,000 beside 997.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Callable, Iterator
from fractions import Fraction
from itertools import combinations, permutations
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "service"))

from dividing.indexing import wording
from dividing.indexing.head import SET_ONE, TWELVE_GEARS, Head, Plate
from dividing.indexing.heads import SET_TWO
from dividing.indexing.solving import solve
from dividing.indexing.work import Divisions

RATIO = 40
PLATE_TURNS_MOST = 6


def exhaustive(number: int, plates: tuple[Plate, ...], trains: set[Fraction]) -> Iterator[tuple[str, tuple[int, ...]]]:
    """Every exact setting, by trying all holes."""
    wanted = Fraction(RATIO, number)
    part = wanted % 1
    yield from (("direct", (24, holes)) for holes in range(1, 25) if Fraction(holes, 24) == Fraction(1, number))
    for face in plates:
        for circle in face:
            yield from (("plain", (circle, holes)) for holes in range(circle) if Fraction(holes, circle) == part)
            yield from _geared(number, circle, trains)
        for first, second in combinations(face, 2):
            for one in range(1, first):
                for two in range(1 - second, second):
                    if two and (Fraction(one, first) + Fraction(two, second)) % 1 == part:
                        yield "compound", (first, one, second, two)


def _geared(number: int, circle: int, trains: set[Fraction]) -> Iterator[tuple[str, tuple[int, ...]]]:
    least = (RATIO - PLATE_TURNS_MOST) * circle // number
    for holes in range(max(least, 1), (RATIO + PLATE_TURNS_MOST) * circle // number + 1):
        if abs(RATIO - number * Fraction(holes, circle)) in trains:
            yield "differential", (circle, holes)


def every_train() -> set[Fraction]:
    """What two and four of the twelve gears make."""
    two = {Fraction(one, other) for one, other in permutations(TWELVE_GEARS, 2)}
    return two | {Fraction(a * c, b * d) for a, b, c, d in permutations(TWELVE_GEARS, 4)}


def whole_answer(number: int, head: Head) -> None:
    """Setups with all their words."""
    found = solve(Divisions(number), head)
    for setup in found.setups:
        for words in (wording.summary, wording.working, wording.instructions, wording.cautions):
            words(found.work, found.head, setup)


def spent(do: Callable[[], object]) -> float:
    """Seconds of processor time."""
    began = time.process_time()
    do()
    return time.process_time() - began


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--numbers", type=int, default=12)
    chosen = parser.parse_args()
    trains = every_train()
    numbers = [2 + 997 * step % 399 for step in range(chosen.numbers)]
    for name, plates in (("set I", SET_ONE), ("set II", SET_TWO)):
        head = Head(plates=plates, change_gears=TWELVE_GEARS)
        whole_answer(383, head)
        ours = slow = 0.0
        for number in numbers:
            slow += spent(lambda: list(exhaustive(number, plates, trains)))  # noqa: B023
            ours += spent(lambda: [whole_answer(number, head) for _ in range(20)]) / 20  # noqa: B023
        print(f"{name}: {ours / len(numbers) * 1e6:.0f} us a whole answer, exhaustive {slow / ours:,.0f} times that")
    head = Head(change_gears=TWELVE_GEARS)
    mixed = spent(lambda: [whole_answer(number, head) for number in range(2, 1001)]) / 999
    print(f"2 to 1,000, set I: {mixed * 1e6:.0f} us on average")
    for other in (997, 1_000_000):
        print(f"{other:,}: {spent(lambda: [whole_answer(other, head) for _ in range(50)]) / 50 * 1e6:.0f} us")  # noqa: B023


if __name__ == "__main__":
    main()
