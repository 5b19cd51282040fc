"""What a whole answer of the pure core costs, against the same exact settings searched with NumPy, all holes at once.

    pip install numpy
    python tests/bench/core_against_numpy.py [--numbers 40]

NumPy is given every advantage: what does not depend on the number is laid out beforehand, one vector for all spaces of
all circles and one for all moves of all pairs, and the trains stand sorted. A number is then a handful of operations on
whole vectors. The core orders its settings and writes its words besides. Both take turns in one process; only
processor time counts, and both must agree on which methods are exact.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Callable
from itertools import combinations, permutations
from pathlib import Path
from typing import Any

import numpy

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "service"))

from dividing.indexing import wording
from dividing.indexing.head import SET_ONE, TWELVE_GEARS, Head, Plate
from dividing.indexing.heads import SET_TWO
from dividing.indexing.solving import solve
from dividing.indexing.work import Divisions

RATIO = 40
PLATE_TURNS_MOST = 6
CLOSE = 1e-12
"""Two trains differ by far more, a sum of two fractions from another too."""


class Vectors:
    """All that can be laid out before a number is known."""

    def __init__(self, plates: tuple[Plate, ...]) -> None:
        circles = sorted({circle for face in plates for circle in face})
        turns = numpy.concatenate([numpy.arange(1, (RATIO + PLATE_TURNS_MOST) * circle + 1) for circle in circles])
        self.circle = numpy.repeat(circles, [(RATIO + PLATE_TURNS_MOST) * circle for circle in circles])
        self.crank = turns / self.circle
        moves = [self._pair(first, second) for face in plates for first, second in combinations(face, 2)]
        self.over = numpy.concatenate([over for over, _ in moves])
        self.under = numpy.concatenate([under for _, under in moves])
        two = {one / other for one, other in permutations(TWELVE_GEARS, 2)}
        four = {a * c / (b * d) for a, b, c, d in permutations(TWELVE_GEARS, 4)}
        within = sorted(train for train in two | four if train <= PLATE_TURNS_MOST)
        self.trains = numpy.array([-train for train in reversed(within)] + within)

    @staticmethod
    def _pair(first: int, second: int) -> tuple[Any, Any]:
        one, two = numpy.meshgrid(numpy.arange(1, first), numpy.arange(1 - second, second))
        used = two != 0
        over = one[used] * second + two[used] * first
        return over, numpy.full(over.shape, first * second)

    def exact_by(self, number: int) -> set[str]:
        """The methods with an exact setting of one space a move."""
        found = set()
        if 24 % number == 0:
            found.add("direct")
        if (RATIO * self.circle[self.crank <= 1] % number == 0).any():
            found.add("plain")
        if ((self.over * number - RATIO * self.under) % (self.under * number) == 0).any():
            found.add("compound")
        if self._geared(number).any():
            found.add("differential")
        return found

    def _geared(self, number: int) -> Any:
        least, most = (RATIO - PLATE_TURNS_MOST) / number, (RATIO + PLATE_TURNS_MOST) / number
        motion = RATIO - number * self.crank[(self.crank >= least - CLOSE) & (self.crank <= most + CLOSE)]
        place = numpy.searchsorted(self.trains, motion)
        below = numpy.abs(self.trains[numpy.maximum(place - 1, 0)] - motion)
        above = numpy.abs(self.trains[numpy.minimum(place, len(self.trains) - 1)] - motion)
        return numpy.minimum(below, above) < number * CLOSE


def whole_answer(number: int, head: Head) -> str:
    """Setups with all their words; gives the method of the first."""
    found = solve(Divisions(number, fixed=True), head)
    for setup in found.setups:
        for words in (wording.summary, wording.working, wording.instructions, wording.cautions):
            words(found.work, found.head, setup)
    return found.setups[0].method if found.setups[0].exact else "none"


def spent(do: Callable[[], object]) -> float:
    """Seconds of processor time."""
    began = time.process_time()
    do()
    return time.process_time() - began


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--numbers", type=int, default=40)
    chosen = parser.parse_args()
    numbers = [2 + 577 * step % 399 for step in range(chosen.numbers)]
    for name, plates in (("set I", SET_ONE), ("set II", SET_TWO)):
        head, vectors = Head(plates=plates, change_gears=TWELVE_GEARS), Vectors(plates)
        ours = theirs = 0.0
        for number in numbers:
            methods = vectors.exact_by(number) or {"none"}
            if whole_answer(number, head) not in methods:
                raise SystemExit(f"{number}: {whole_answer(number, head)} here, {methods} there.")
            theirs += spent(lambda: vectors.exact_by(number))  # noqa: B023
            ours += spent(lambda: [whole_answer(number, head) for _ in range(20)]) / 20  # noqa: B023
        here, there = (seconds / len(numbers) * 1e6 for seconds in (ours, theirs))
        print(f"{name}: {here:.0f} us a whole answer, {there:,.0f} us with NumPy, {there / here:.0f} times that")


if __name__ == "__main__":
    main()
