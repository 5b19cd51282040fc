"""The kinds of exercise, one file each, all of one shape.

A kind is a module with four functions:

- `reason(head)`: why the head can do none of them, as far as it is seen at a glance; None where it may;
- `tasks(head, level, chance)`: what may be asked, in an order of chance, and never without end;
- `nones(head, level, chance)`: the same for exercises that are meant to have no answer;
- `key(task, head)`: the answer; None where the task turns out to have none.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Protocol

from ...head import Head
from ..chance import Chance
from ..exercise import Key, KindName, Task
from . import angular, compound, dial, differential, direct, find_the_slip, plain, sector_arms, which_plate


class Kind(Protocol):
    """What each file of this folder offers."""

    def reason(self, head: Head) -> str | None: ...

    def tasks(self, head: Head, level: int, chance: Chance) -> Iterator[Task]: ...

    def nones(self, head: Head, level: int, chance: Chance) -> Iterator[Task]: ...

    def key(self, task: Task, head: Head) -> Key | None: ...


KINDS: Mapping[KindName, Kind] = {
    "plain": plain,
    "angular": angular,
    "direct": direct,
    "which_plate": which_plate,
    "sector_arms": sector_arms,
    "compound": compound,
    "differential": differential,
    "dial": dial,
    "find_the_slip": find_the_slip,
}
"""Every kind by its name, in the order in which they are taught."""
