"""What to own next: the one circle, and the one change gear, that would make most of the gaps exact.

A circle stands on a plate of its own, so it is used by itself: a second move needs another circle on the same plate.
A gear stands in every train of two or four that the gears owned can make with it, and is one more idler for the trains
that they make already.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from ..bounds import CIRCLES_MOST, GEARS_MOST, HOLES_IN_ALL_MOST, HOLES_LEAST, HOLES_MOST, TEETH_LEAST, TEETH_MOST
from ..head import Head
from .another_circle import closed_by_circle
from .another_gear import closed_by_gear

TOLD_MOST = 5


class Addition(NamedTuple):
    """One thing to own: the holes of a circle or the teeth of a gear, and the gaps that would come out exactly.

    >>> Addition(53, (53, 106)).closes
    2
    """

    size: int
    numbers: tuple[int, ...]

    @property
    def closes(self) -> int:
        """How many gaps it closes."""
        return len(self.numbers)


class Additions(NamedTuple):
    """Circles and gears to own next, those that close most gaps first, and of equal ones the smaller."""

    circles: tuple[Addition, ...]
    gears: tuple[Addition, ...]


def additions(gaps: Iterable[int], head: Head) -> Additions:
    """The five circles and the five gears at most that would make most of `gaps` exact, which are not exact now.

    Every circle of 2 to 400 holes and every gear of 10 to 200 teeth is held against them, each by itself, as far as
    the head may have one more. A gap counts when `solve` would find it exact by any method, several spaces a move
    among them; one that would only come nearer does not count.

    >>> additions((53, 59, 106), Head()).circles[0]
    Addition(size=53, numbers=(53, 106))
    """
    left = tuple(gaps)
    return Additions(
        _best(closed_by_circle(left, head, another_circles(head))),
        _best(closed_by_gear(left, head, another_gears(head))),
    )


def another_circles(head: Head) -> range:
    """The holes of a circle that the head may have besides its own.

    >>> another_circles(Head())
    range(2, 401)
    """
    owned = [*head.direct_circles, *(circle for face in head.plates for circle in face)]
    most = min(HOLES_MOST, HOLES_IN_ALL_MOST - sum(owned)) if len(owned) < CIRCLES_MOST else 0
    return range(HOLES_LEAST, most + 1)


def another_gears(head: Head) -> range:
    """The teeth of a gear that the head may have besides its own.

    >>> another_gears(Head())
    range(10, 201)
    """
    return range(TEETH_LEAST, TEETH_MOST + 1 if len(head.change_gears) < GEARS_MOST else TEETH_LEAST)


def _best(closed: Mapping[int, set[int]]) -> tuple[Addition, ...]:
    ranked = sorted((-len(numbers), size) for size, numbers in closed.items() if numbers)
    return tuple(Addition(size, tuple(sorted(closed[size]))) for _, size in ranked[:TOLD_MOST])
