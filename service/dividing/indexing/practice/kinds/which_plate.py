"""Which plate to mount, and which of its circles to use."""

from __future__ import annotations

from collections.abc import Iterator

from ...head import Head
from ...verifying import Claim
from ...work import Divisions
from .. import numbers
from ..chance import Chance
from ..exercise import Key, PlateClaim, Task
from ..keys import key_by
from .plain import NO_PLATES


def reason(head: Head) -> str | None:
    """Why this head can do none of these exercises, as far as it is seen at a glance."""
    return None if head.plates else NO_PLATES


def tasks(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """Numbers that leave a part of a turn, so that the circle matters."""
    for count in chance.turned(numbers.in_parts(head, level)):
        yield Task("which_plate", level, Divisions(count))


def nones(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """Numbers that no circle serves."""
    for count in chance.turned(numbers.counts_of_none(head, level)):
        yield Task("which_plate", level, Divisions(count), none=True)


def key(task: Task, head: Head) -> Key | None:
    """The plate and circle of the best setting, or why no circle serves."""
    found = key_by(task, head, "plain")
    if found is None or not isinstance(found.claim, Claim) or found.claim.circle is None:
        return found
    circle = found.claim.circle
    plate = head.plate_of[circle]
    every = numbers.serving_circles(task.work.cuts, head.ratio, sorted(head.plate_of))
    also = f"Circles that serve: {', '.join(f'{each} on plate {head.plate_of[each]}' for each in every)}."
    return Key(PlateClaim(plate, circle), f"Plate {plate}, circle {circle}", (*found.working, also))
