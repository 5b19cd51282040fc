"""Angular indexing: an angle in degrees, in degrees and minutes, in decimal degrees."""

from __future__ import annotations

from collections.abc import Iterator

from ...head import Head
from .. import numbers
from ..chance import Chance
from ..exercise import Key, Task
from ..keys import key_by
from ..written import DEGREES, HUNDREDTHS, MINUTES, arc, written
from .plain import NO_PLATES

PARTS = {1: DEGREES, 2: MINUTES, 3: HUNDREDTHS}
"""How the angle is written at each level."""


def reason(head: Head) -> str | None:
    """Why this head can do none of these exercises, as far as it is seen at a glance."""
    return None if head.plates else NO_PLATES


def tasks(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """Angles that some circle serves."""
    parts = PARTS[level]
    circles = tuple(circle for circle, _ in head.circles)
    for angle in chance.turned(numbers.angles(head.ratio, circles, parts)):
        yield Task("angular", level, arc(angle, parts), written(angle, parts))


def nones(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """None: these exercises have an answer."""
    yield from ()


def key(task: Task, head: Head) -> Key | None:
    """The best setting."""
    return key_by(task, head, "plain")
