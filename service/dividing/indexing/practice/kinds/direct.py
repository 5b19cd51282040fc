"""Direct indexing: spaces on the plate on the spindle itself."""

from __future__ import annotations

from collections.abc import Iterator
from math import gcd

from ...head import Head
from ...work import Divisions
from .. import numbers
from ..chance import Chance
from ..exercise import Key, Task
from ..keys import key_by
from ..written import DEGREES, MINUTES, arc, written


def reason(head: Head) -> str | None:
    """Why this head can do none of these exercises, as far as it is seen at a glance."""
    return None if head.direct_circles else "This head has no direct plate."


def tasks(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """Divisions that a circle of the direct plate has, and angles in whole degrees; from level 2 mostly angles."""
    divided = [Task("direct", level, Divisions(count)) for count in _counts(head)]
    turned = [
        Task("direct", level, arc(angle, DEGREES), written(angle, DEGREES))
        for angle in numbers.angles(1, head.direct_circles, DEGREES)
    ]
    first, second = (divided, turned) if level == 1 or chance.one_in(3) else (turned, divided)
    yield from chance.turned(first)
    yield from chance.turned(second)


def nones(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """Divisions or an angle that no circle of the direct plate has; at level 3 such as come near: divisions that share
    a factor with a circle, angles in degrees and minutes that fall halfway between two holes."""
    if chance.one_in(2):
        yield from _angles_of_none(head, level, chance)
    serving, circles = numbers.denominators(head.direct_circles), head.direct_circles
    for count in chance.turned(range(2, numbers.SMALL + 1)):
        near = any(gcd(count, circle) > 1 for circle in circles)
        if count not in serving and (level < 3 or near):
            yield Task("direct", level, Divisions(count), none=True)


def _angles_of_none(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    parts = MINUTES if level == 3 else DEGREES
    halves = numbers.angles(1, tuple(2 * circle for circle in head.direct_circles), MINUTES)
    serving = numbers.denominators(head.direct_circles)
    for angle in chance.turned(halves if level == 3 else range(1, 181)):
        if parts // gcd(angle, parts) not in serving:
            yield Task("direct", level, arc(angle, parts), written(angle, parts), none=True)


def key(task: Task, head: Head) -> Key | None:
    """The best setting, or why the direct plate does not serve."""
    return key_by(task, head, "direct")


def _counts(head: Head) -> list[int]:
    return sorted(numbers.denominators(head.direct_circles) - {1})
