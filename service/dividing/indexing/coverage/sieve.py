"""Which of many numbers divide one of many others: marks on a strip, read off in strides."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterator
from math import gcd

STRIP = 1 << 20
"""Points that are marked at a time, so that a strip stays near the processor however large they are."""


def dividing(numbers: Collection[int], points: Collection[int]) -> set[int]:
    """Those of `numbers` (from 1) that divide one of `points` (from 1) without remainder.

    >>> sorted(dividing(range(2, 30), {49, 66}))
    [2, 3, 6, 7, 11, 22]
    """
    found: set[int] = set()
    for start, marks in _strips(points):
        found.update([number for number in numbers if 1 in marks[-start % number :: number]])
    return found


def in_crank_turns(numbers: Collection[int], ratio: int, circles: Collection[int]) -> set[int]:
    """Those of `numbers` that divide `ratio` times one of `circles`: the same, for points that may be very large.

    N divides R c just when N/gcd(N, R), which shares no factor with the rest of R, divides c.

    >>> sorted(in_crank_turns(range(40, 60), 40, {49}))
    [40, 49, 56]
    """
    parts = {number: number // gcd(number, ratio) for number in numbers}
    serving = dividing(set(parts.values()), circles)
    return {number for number, part in parts.items() if part in serving}


def _strips(points: Collection[int]) -> Iterator[tuple[int, bytearray]]:
    """(first number of a strip, its marks): 1 at each of the points."""
    for start, inside in _by_strip(points).items():
        marks = bytearray(max(inside) - start + 1)
        for point in inside:
            marks[point - start] = 1
        yield start, marks


def _by_strip(points: Collection[int]) -> dict[int, Collection[int]]:
    if not points:
        return {}
    if max(points) < STRIP:
        return {0: points}
    strips: defaultdict[int, list[int]] = defaultdict(list)
    for point in points:
        strips[point - point % STRIP].append(point)
    return dict(strips)
