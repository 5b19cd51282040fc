"""Differential indexing: a crank move with the train of gears that makes it right."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from ...head import Head
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


def reason(head: Head) -> str | None:
    """Why this head can do none of these exercises, as far as it is seen at a glance."""
    if not head.plates:
        return NO_PLATES
    return None if len(head.change_gears) > 1 else "No change gears are given for this head."


def tasks(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """Numbers that nothing simpler serves; which of them a train serves the key says."""
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
    """Numbers that neither the direct plate nor one circle serves."""
    alone = numbers.denominators(tuple(circle for circle, _ in head.circles))
    direct = numbers.denominators(head.direct_circles)
    most = COUNTS_MOST[level]
    return tuple(
        count
        for count in range(COUNT_LEAST, most + 1)
        if numbers.left(count, head.ratio) not in alone and count not in direct
    )
