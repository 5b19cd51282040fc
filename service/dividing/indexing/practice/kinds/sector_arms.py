"""Over how many holes the sector arms stand: one more than the spaces."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from ...head import Head
from ...verifying import Claim
from ...wording.figures import counted
from ...work import Divisions
from .. import numbers
from ..chance import Chance
from ..exercise import ArmsClaim, Key, Task
from ..keys import key_by
from ..written import MINUTES, arc, written
from .plain import NO_PLATES


def reason(head: Head) -> str | None:
    """Why this head can do none of these exercises, as far as it is seen at a glance."""
    return None if head.plates else NO_PLATES


def tasks(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """Level 1 gives the move, level 2 the number and the circle, level 3 an angle in minutes and the circle."""
    circles = tuple(circle for circle, _ in head.circles)
    if level == 3:
        for angle in chance.turned(numbers.angles(head.ratio, circles, MINUTES)):
            work = arc(angle, MINUTES)
            part = head.ratio * work.step % 1
            if part:
                circle = chance.picked(_circles(part, head))
                yield Task("sector_arms", level, work, written(angle, MINUTES), circle=circle)
        return
    for count in chance.turned(numbers.in_parts(head, level)):
        turns, part = divmod(Fraction(head.ratio, count), 1)
        circle = chance.picked(_circles(part, head))
        move = Claim("plain", turns=int(turns), holes=int(part * circle), circle=circle)
        yield Task("sector_arms", level, Divisions(count), circle=circle, claim=move if level == 1 else None)


def nones(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """None: these exercises have an answer."""
    yield from ()


def key(task: Task, head: Head) -> Key | None:
    """The holes between the arms on the circle that is given."""
    found = key_by(task, head, "plain", serves=lambda setup: bool(setup.move and setup.move.circle == task.circle))
    if found is None or not isinstance(found.claim, Claim) or not found.claim.holes:
        return None
    spaces = found.claim.holes
    counting = f"{counted(spaces, 'space')} and the hole that the pin is in: {spaces} + 1 = {spaces + 1} holes"
    return Key(ArmsClaim(spaces + 1), f"The arms stand over {spaces + 1} holes", (*found.working, counting))


def _circles(part: Fraction, head: Head) -> list[int]:
    """The circles that make a part of a turn whole; a move of whole turns has no arms to set."""
    return [circle for circle, _ in head.circles if circle % part.denominator == 0]
