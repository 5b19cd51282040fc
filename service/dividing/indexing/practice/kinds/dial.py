"""Setting a rotary table by its dial: every position worked from zero."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from ... import wording
from ...angles import Angle
from ...head import Head
from ...methods import METHODS
from ...positions import dial_set
from ...setup import Declined, Tolerance
from ...verifying import Claim
from ...work import Arc, Divisions
from .. import numbers
from ..chance import Chance
from ..exercise import Key, Task

COUNTS_MOST = {1: 60, 2: 100, 3: 100}


def reason(head: Head) -> str | None:
    """Why this head can do none of these exercises, as far as it is seen at a glance."""
    return None if head.dial_units else "This head has no dial."


def tasks(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """Level 1: the first step of a number, on a line of the dial. Level 2: another position that the dial reads
    exactly. Level 3: a position that falls between two readings."""
    for count in chance.turned(range(2, COUNTS_MOST[level] + 1)):
        if level == 1:
            if (_lines(head) / count).denominator == 1:
                yield Task("dial", level, Divisions(count), position=(1, count))
            continue
        # The dial reads every so many positions exactly, and none between them.
        every = numbers.left(count, head.ratio * head.dial_units)
        reads = [position for position in range(2, count) if (position % every == 0) == (level == 2)]
        if reads:
            position = chance.picked(reads)
            yield Task("dial", level, _place(position, count), position=(position, count))


def nones(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """None: these exercises have an answer."""
    yield from ()


def key(task: Task, head: Head) -> Key | None:
    """The turns and the reading, to the dial's finest."""
    answer = METHODS["dial"].approximate(task.work, head)
    if isinstance(answer, Declined):
        return None
    summary = wording.summary(task.work, head, answer[0]).removeprefix("By the dial: ").partition(" a step")[0]
    working = wording.working(task.work, head, answer[0])
    return Key(dial_claim(task.work.step, head), f"By the dial: {summary} from zero", tuple(working))


def dial_claim(place: Fraction, head: Head) -> Claim:
    """The claim that sets a place to the finest that the dial reads.

    >>> from dividing.indexing.head import Dial
    >>> dial_claim(Fraction(1, 7), Head(ratio=90, plates=(), dial=Dial(divisions=100))).divisions
    Fraction(86, 1)
    """
    found = dial_set(place, head)
    if head.dial is not None and head.dial.divisions is not None:
        return Claim("dial", turns=found.turns, divisions=Fraction(found.units))
    return Claim("dial", turns=found.turns, reading=Angle(Fraction(found.units, head.ratio * head.dial_units)))


def half_a_reading(head: Head) -> Tolerance:
    """What may be lost by setting the nearest reading."""
    return Tolerance(angle=Fraction(1, 2 * head.ratio * head.dial_units))


def _lines(head: Head) -> Fraction:
    """Lines of the dial, without its vernier, in a turn of the spindle."""
    assert head.dial is not None
    if head.dial.graduation is None:
        return Fraction(head.ratio * head.dial_units)
    return 1 / head.dial.graduation


def _place(position: int, count: int) -> Arc:
    return Arc(Angle(Fraction(position, count)))
