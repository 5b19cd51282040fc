"""Differential indexing: a crank move with the train of gears that makes it right."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from functools import lru_cache
from typing import Literal

from ...coverage.sieve import dividing, marked
from ...head import Head
from ...trains import train_table
from ...verifying import Claim
from ...wording.figures import turns_and_spaces
from ...work import Divisions
from .. import numbers
from ..chance import Chance
from ..exercise import Key, Task
from ..keys import key_by, with_hint
from .plain import NO_PLATES

COUNT_LEAST = 20
"""Smaller numbers move the crank far and are served by the direct plate or one circle."""
COUNTS_MOST = {1: 150, 2: 400, 3: 400}

_WAYS: tuple[tuple[Literal["with", "against"], int], ...] = (("with", 1), ("against", -1))


def reason(head: Head) -> str | None:
    """Why this head can do none of these exercises, as far as it is seen at a glance."""
    if not head.plates:
        return NO_PLATES
    return None if head.change_gears else "No change gears are given for this head."


def tasks(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """Numbers that nothing simpler serves, and a train does."""
    for count in chance.turned(_counts(head, level)):
        yield Task("differential", level, Divisions(count, fixed=True))


def nones(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """None: these exercises have an answer."""
    yield from ()


def key(task: Task, head: Head) -> Key | None:
    """Move and train: of two gears, at level 3 of four where no two serve. Level 1 gives the move away."""
    found = key_by(task, head, "differential")
    if found is None or not isinstance(found.claim, Claim) or found.claim.gearing is None:
        return None
    if (found.claim.gearing.stud is not None) != (task.level == 3):
        return None
    move = found.claim
    hint = f"Take a crank move of {turns_and_spaces(move.turns, move.holes)} on the circle of {move.circle}."
    return with_hint(found, hint if task.level == 1 else "")


@lru_cache(maxsize=128)
def _counts(head: Head, level: int) -> tuple[int, ...]:
    """Numbers that neither the direct plate nor one circle serves, and a train does: one of two gears or, at level 3,
    only one of four."""
    alone = numbers.denominators(tuple(circle for circle, _ in head.circles))
    direct = numbers.denominators(head.direct_circles)
    hard = [
        count
        for count in range(COUNT_LEAST, COUNTS_MOST[level] + 1)
        if numbers.left(count, head.ratio) not in alone and count not in direct
    ]
    by_two = dividing(hard, marked(passed(head, gears=2)))
    return tuple(sorted(by_two if level < 3 else dividing(hard, marked(passed(head, gears=4))) - by_two))


def passed(head: Head, *, gears: int) -> set[int]:
    """The holes that the pin passes in one turn of the spindle, for each circle and each motion of the plate by a train
    of so many gears that brings it back to a hole then: with one space a move a number is made exactly just when it
    divides one of them (`coverage` says why).

    >>> sorted(passed(Head(plates=((21,),), change_gears=(24, 28, 32)), gears=2))
    [812, 816, 822]
    """
    table = train_table(tuple(sorted(head.change_gears)), head.idlers)
    signs = [sign for direction, sign in _WAYS if table.reaches(gears, direction)]
    by_driven: defaultdict[int, list[int]] = defaultdict(list)
    for drivers, driven in table.simple if gears == 2 else table.compound:
        if driven <= head.largest_circle:
            by_driven[driven].append(drivers)
    found = {
        (head.ratio * driven - sign * drivers) * (circle // driven)
        for circle, _ in head.circles
        for driven, all_drivers in by_driven.items()
        if circle % driven == 0
        for drivers in all_drivers
        for sign in signs
    }
    return {holes for holes in found if holes > 0}
