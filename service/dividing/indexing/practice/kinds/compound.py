"""Compound indexing: two moves on two circles of one plate, for numbers that no single circle serves."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from ...coverage.sieve import dividing, marked
from ...head import Head
from ...setup import Setup
from ...work import Divisions
from .. import numbers
from ..chance import Chance
from ..exercise import Key, Task
from ..keys import key_by, with_hint
from .plain import NO_PLATES

COUNTS_MOST = {1: 100, 2: 200, 3: 400}


def reason(head: Head) -> str | None:
    """Why this head can do none of these exercises, as far as it is seen at a glance."""
    if not head.plates:
        return NO_PLATES
    return None if head.pairs else "No plate of this head has two circles that can be used together."


def tasks(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """Numbers for two moves: to 100 on the mounted plate, to 200, to 400."""
    for count in chance.turned(_counts(head, level)):
        yield Task("compound", level, Divisions(count, fixed=True))


def nones(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """None: these exercises have an answer."""
    yield from ()


def key(task: Task, head: Head) -> Key | None:
    """The pair of moves; the question gives the circles away at level 1 and the plate at level 2."""
    found = key_by(task, head, "compound", serves=lambda setup: task.level > 1 or _mounted(setup, head))
    if found is None:
        return None
    circles = found.summary.partition(":")[0]
    plate = circles.partition(",")[0]
    return with_hint(found, {1: f"{circles} serve.", 2: f"{plate} serves."}.get(task.level, ""))


def _mounted(setup: Setup, head: Head) -> bool:
    return setup.move is not None and setup.move.plate == head.mounted_plate


@lru_cache(maxsize=128)
def _counts(head: Head, level: int) -> tuple[int, ...]:
    """Numbers that neither the direct plate nor one circle serves, and a pair of circles does."""
    alone = numbers.denominators(tuple(circle for circle, _ in head.circles))
    direct = numbers.denominators(head.direct_circles)
    left = {
        count: needed
        for count in range(2, COUNTS_MOST[level] + 1)
        if (needed := numbers.left(count, head.ratio)) not in alone and count not in direct
    }
    grids = {points for points, pairs in head.pairs_by_lcm.items() if level > 1 or pairs[0][3] == head.mounted_plate}
    made = dividing(set(left.values()), marked(grids))
    return tuple(count for count, needed in left.items() if needed in made)
