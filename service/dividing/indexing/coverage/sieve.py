"""Which of many numbers divide which of many others: marks on a strip, read off in strides."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator
from math import gcd

STRIP = 1 << 20
"""Points that are marked at a time, so that a strip stays near the processor however large they are."""


Strips = Iterable[tuple[int, bytearray]]
"""(the first number of a strip, its marks): 1 at each of the points."""


def dividing(numbers: Collection[int], strips: Strips) -> set[int]:
    """Those of `numbers` that divide one of the points marked without remainder; all are from 1.

    >>> sorted(dividing(range(2, 30), marked({49, 66})))
    [2, 3, 6, 7, 11, 22]
    """
    found: set[int] = set()
    for start, marks in strips:
        if start:
            found.update([number for number in numbers if 1 in marks[-start % number :: number]])
        else:
            found.update([number for number in numbers if 1 in marks[::number]])
    return found


def divided(numbers: Collection[int], points: Collection[int]) -> Iterator[tuple[int, int]]:
    """Each number with each of the points that it divides.

    >>> list(divided((11, 22), {49, 66}))
    [(11, 66), (22, 66)]
    """
    for start, marks in marked(points):
        for number in numbers:
            first = -start % number
            stride = marks[first::number]
            place = stride.find(1)
            while place >= 0:
                yield number, start + first + place * number
                place = stride.find(1, place + 1)


def in_crank_turns(numbers: Collection[int], ratio: int, circles: Collection[int]) -> set[int]:
    """Those of `numbers` that divide `ratio` times one of `circles`, which may be a very large number.

    N divides R c just when N/gcd(N, R), which shares no factor with the rest of R, divides c.

    >>> sorted(in_crank_turns(range(40, 60), 40, {49}))
    [40, 49, 56]
    """
    parts = {number: number // gcd(number, ratio) for number in numbers}
    serving = dividing(set(parts.values()), marked(circles))
    return {number for number, part in parts.items() if part in serving}


def marked(points: Collection[int]) -> Iterator[tuple[int, bytearray]]:
    """The strips on which all the points stand.

    >>> [(start, sum(marks)) for start, marks in marked({49, 66, STRIP + 1})]
    [(0, 2), (1048576, 1)]
    """
    most = max(points, default=0)
    if most < STRIP:
        yield 0, _strip(points, most + 1)
        return
    inside: defaultdict[int, list[int]] = defaultdict(list)
    for point in points:
        inside[point - point % STRIP].append(point % STRIP)
    for start, places in inside.items():
        yield start, _strip(places, STRIP)


def _strip(places: Iterable[int], length: int) -> bytearray:
    marks = bytearray(length)
    for place in places:
        marks[place] = 1
    return marks
