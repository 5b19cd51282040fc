"""Which numbers and angles a head serves, by arithmetic alone: from these an exercise is drawn.

A step of q turns of the spindle takes R q turns of the crank; a circle c serves when the denominator d of R q divides
c. So the denominators that serve are the divisors of the circles, and no setup has to be worked out to draw a number.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from math import gcd

from ..head import Head

COUNTS_MOST = {1: 60, 2: 400, 3: 1000}
"""The largest number of divisions that is asked at a level."""
SMALL = COUNTS_MOST[1]
COUNT_LEAST = 6
"""Smaller numbers are asked only where a head has no others: they teach nothing."""


@lru_cache(maxsize=64)
def denominators(circles: tuple[int, ...]) -> frozenset[int]:
    """Every denominator that some circle makes whole.

    >>> sorted(denominators((15, 16)))
    [1, 2, 3, 4, 5, 8, 15, 16]
    """
    return frozenset(part for part in range(1, max(circles, default=0) + 1) if any(not c % part for c in circles))


def left(count: int, ratio: int) -> int:
    """The denominator of ratio/count in lowest terms.

    >>> left(28, 40)
    7
    """
    return count // gcd(count, ratio)


@lru_cache(maxsize=128)
def counts(head: Head, level: int) -> tuple[int, ...]:
    """Numbers for plain indexing. Level 1: up to 60, on the mounted plate. Level 2: all others to 400. Level 3: from 61
    to 1,000, where the part of a turn in lowest terms stands on no circle and has to be brought to one.

    >>> 28 in counts(Head(), 1), 28 in counts(Head(), 2), 51 in counts(Head(), 2)
    (False, True, False)
    """
    circles = tuple(circle for circle, _ in head.circles)
    serving = denominators(circles)
    mounted = denominators(head.plates[head.mounted_plate - 1]) if head.plates else frozenset()

    def fits(count: int) -> bool:
        needed = left(count, head.ratio)
        if level == 1:
            return needed in mounted
        if level == 2:
            return needed in serving and not (count <= SMALL and needed in mounted)
        return count > SMALL and needed > 1 and needed in serving and needed not in circles

    found = tuple(count for count in range(2, COUNTS_MOST[level] + 1) if fits(count))
    return tuple(count for count in found if count >= COUNT_LEAST) or found


@lru_cache(maxsize=128)
def counts_of_none(head: Head, level: int) -> tuple[int, ...]:
    """Numbers that no circle serves: to 200 at level 2, to 1,000 at level 3.

    >>> 51 in counts_of_none(Head(), 2), 28 in counts_of_none(Head(), 2)
    (True, False)
    """
    serving = denominators(tuple(circle for circle, _ in head.circles))
    most = 200 if level == 2 else COUNTS_MOST[level]
    return tuple(count for count in range(2, most + 1) if left(count, head.ratio) not in serving)


@lru_cache(maxsize=128)
def in_parts(head: Head, level: int) -> tuple[int, ...]:
    """The numbers of `counts` that leave a part of a turn, so that a circle matters."""
    return tuple(count for count in counts(head, level) if left(count, head.ratio) > 1)


def serving_circles(count: int, ratio: int, circles: Iterable[int]) -> tuple[int, ...]:
    """The circles that make ratio/count turns whole, in the order given.

    >>> serving_circles(28, 40, (20, 21, 49))
    (21, 49)
    """
    return tuple(circle for circle in circles if circle % left(count, ratio) == 0)


@lru_cache(maxsize=128)
def angles(ratio: int, circles: tuple[int, ...], parts: int) -> tuple[int, ...]:
    """Angles that a circle serves, counted in `parts` of a turn, up to half a turn (a quarter where parts are fine);
    those that coarser parts would tell as well are left out: minutes are no whole degrees.

    >>> angles(1, (24,), 360)
    (15, 30, 45, 60, 75, 90, 105, 120, 135, 150, 165, 180)
    """
    serving, whole = denominators(circles), max(parts // 360, 1)
    most = parts // 2 if whole == 1 else parts // 4
    return tuple(
        angle
        for angle in range(1, most + 1)
        if (whole == 1 or angle % whole) and parts // gcd(angle * ratio, parts) in serving
    )
