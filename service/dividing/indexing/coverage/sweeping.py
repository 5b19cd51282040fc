"""A range of numbers gone through at once: each by the first method that makes it exactly, in the order of solving."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import partial
from math import gcd

from ..bounds import COVERAGE_MOST
from ..faults import Fault, refuse_if_any
from ..head import Head
from ..setup import MethodName
from .geared import TURNS_MOST, divisors, strips_in
from .sieve import dividing, in_crank_turns

NOTHING = Fraction(0)


@dataclass(frozen=True, slots=True)
class Way:
    """How a number is divided: by which method, with how many spaces a move, and how far off any position comes out
    at most, in turns of the spindle. `within` says whether that keeps the tolerance; None without one.

    >>> Way("differential", every=4).exact
    True
    """

    method: MethodName
    every: int = 1
    worst: Fraction = NOTHING
    within: bool | None = None

    @property
    def exact(self) -> bool:
        """Whether every position comes out with no error at all."""
        return not self.worst


@dataclass(frozen=True, slots=True)
class Coverage:
    """What a head does with each number of a range.

    `ways` has the way of each number that comes out exactly, and, once they have been looked for, the nearest way of
    each that does not. `gaps` are the numbers that are neither exact nor within a tolerance, in rising order.
    """

    numbers: range
    ways: dict[int, Way]
    gaps: tuple[int, ...]


def coverage(first: int, last: int, head: Head) -> Coverage:
    """Which numbers from `first` to `last` come out exactly on `head`, each by the method and with the spaces a move
    of the first setup that `solve` gives for it.

    Raises `Refused` where the numbers do not run from 1 or more up to 10,000 at most.

    >>> found = coverage(50, 53, Head())
    >>> [(number, way.method) for number, way in sorted(found.ways.items())], found.gaps
    ([(50, 'plain'), (51, 'compound'), (52, 'plain')], (53,))
    """
    refuse_if_any(range_faults(first, last))
    numbers = range(first, last + 1)
    ways: dict[int, Way] = {}
    left: Sequence[int] = numbers
    for way, made in _methods(head):
        ways.update(dict.fromkeys(made(left), way))
        left = [number for number in left if number not in ways]
        if not left:
            break
    return Coverage(numbers, ways, tuple(left))


def range_faults(first: int, last: int) -> list[Fault]:
    """What is wrong with a range of numbers.

    >>> range_faults(40, 20)[0].sentence
    'The last number comes before the first, 40; give 40 or more.'
    """
    faults = []
    if not 1 <= first <= COVERAGE_MOST:
        faults.append(Fault(("from",), f"The first number is a whole number from 1 to {COVERAGE_MOST:,}."))
    if not 1 <= last <= COVERAGE_MOST:
        faults.append(Fault(("to",), f"The last number is a whole number from 1 to {COVERAGE_MOST:,}."))
    if not faults and last < first:
        faults.append(Fault(("to",), f"The last number comes before the first, {first:,}; give {first:,} or more."))
    return faults


Made = Callable[[Collection[int]], set[int]]
"""Gives those of some numbers that a method makes exactly."""


def _methods(head: Head) -> Iterator[tuple[Way, Made]]:
    """Each method with what it makes, in the order of solving: blocks of several spaces come after all the rest. A
    method is looked into only when its turn comes."""
    yield Way("direct"), lambda numbers: _parts(head.direct_circles).intersection(numbers)
    yield Way("plain"), lambda numbers: _plainly(numbers, head)
    yield Way("differential"), lambda numbers: dividing(numbers, strips_in(1, head))
    yield Way("compound"), lambda numbers: in_crank_turns(numbers, head.ratio, head.pairs_by_lcm)
    yield Way("dial"), lambda numbers: _on_the_dial(numbers, head)
    for turns in range(2, TURNS_MOST + 1):
        yield Way("differential", turns), partial(_in_blocks, turns, head)


def _parts(circles: Iterable[int]) -> set[int]:
    """Whatever divides one of the circles."""
    return set().union(*map(divisors, circles))


def _plainly(numbers: Collection[int], head: Head) -> set[int]:
    """N divides R c just when N/gcd(N, R) divides c."""
    ratio, parts = head.ratio, _parts(circle for circle, _ in head.circles)
    return {number for number in numbers if number // gcd(number, ratio) in parts}


def _on_the_dial(numbers: Collection[int], head: Head) -> set[int]:
    points = head.ratio * head.dial_units
    return {number for number in numbers if points and points % number == 0}


def _in_blocks(turns: int, head: Head, numbers: Collection[int]) -> set[int]:
    """Several spaces a move are fewer than there are divisions."""
    return {number for number in dividing(numbers, strips_in(turns, head)) if number > turns}
