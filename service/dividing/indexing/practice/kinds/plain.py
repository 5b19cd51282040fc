"""Plain indexing of a number: which circle, how many turns and spaces."""

from __future__ import annotations

from collections.abc import Iterator

from ...head import Head
from ...work import Divisions
from .. import numbers
from ..chance import Chance
from ..exercise import Key, Task
from ..keys import key_by

NO_PLATES = "This head has no index plates."


def reason(head: Head) -> str | None:
    """Why this head can do none of these exercises, as far as it is seen at a glance."""
    return None if head.plates else NO_PLATES


def tasks(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """Exercises that have an answer."""
    for count in chance.turned(numbers.counts(head, level)):
        yield Task("plain", level, Divisions(count))


def nones(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """Exercises meant to have none."""
    for count in chance.turned(numbers.counts_of_none(head, level)):
        yield Task("plain", level, Divisions(count), none=True)


def key(task: Task, head: Head) -> Key | None:
    """The best setting, or why no circle serves."""
    return key_by(task, head, "plain")
