"""What an exercise is: what it asks, and the key to it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, NamedTuple, TypeAlias

from ..bounds import CIRCLES_MOST, RATIO_MOST
from ..faults import Fault, Refused, refuse_if_any
from ..setup import MethodName
from ..verifying import Claim
from ..work import Arc, Divisions

KindName = Literal[
    "plain", "angular", "direct", "which_plate", "sector_arms", "compound", "differential", "dial", "find_the_slip"
]
KIND_NAMES: tuple[KindName, ...] = (
    "plain",
    "angular",
    "direct",
    "which_plate",
    "sector_arms",
    "compound",
    "differential",
    "dial",
    "find_the_slip",
)
"""In the order in which they are taught."""
LEVELS = (1, 2, 3)
SEED_MOST = 999_999_999
"""Nine figures: a seed is read out in class."""
COUNT_MOST = 60
"""Exercises of one sheet."""
COUNT_USUAL = 12
METHOD_OF: dict[KindName, MethodName] = {
    "plain": "plain",
    "angular": "plain",
    "direct": "direct",
    "compound": "compound",
    "differential": "differential",
    "dial": "dial",
}
"""The method by which an exercise of a kind is to be set."""


@dataclass(frozen=True, slots=True)
class PlateClaim:
    """The answer to "which plate": the plate, counted from 1, and the holes of the circle on it."""

    plate: int
    circle: int

    def __post_init__(self) -> None:
        faults = []
        if not 1 <= self.plate <= CIRCLES_MOST:
            faults.append(Fault(("plate",), "Plates are counted from 1, as on the sheet."))
        if not 1 <= self.circle <= RATIO_MOST:
            faults.append(Fault(("circle",), f"The holes of a circle lie between 1 and {RATIO_MOST:,}."))
        refuse_if_any(faults)


@dataclass(frozen=True, slots=True)
class ArmsClaim:
    """The answer to "sector arms": over how many holes they stand."""

    sector_holes: int

    def __post_init__(self) -> None:
        if not 0 <= self.sector_holes <= RATIO_MOST:
            raise Refused([Fault(("sector_holes",), f"Holes between the arms lie between 0 and {RATIO_MOST:,}.")])


AnyClaim: TypeAlias = Claim | PlateClaim | ArmsClaim


class Task(NamedTuple):
    """What an exercise asks. Two tasks that are equal are the same exercise.

    `written` is the angle as the question writes it, empty for divisions. `circle` is a circle that is given,
    `position` the (position, divisions) that a dial is to be set to, `claim` a setup that is given: the move of which
    the arms are wanted, or what somebody made with the `slip`. `none` says that it is meant to have no answer.
    """

    kind: KindName
    level: int
    work: Divisions | Arc
    written: str = ""
    circle: int | None = None
    position: tuple[int, int] | None = None
    claim: Claim | None = None
    slip: str | None = None
    none: bool = False

    @property
    def asks(self) -> tuple[object, ...]:
        """What a pupil would recognise as the same question."""
        return (self.kind, self.work, self.circle, self.claim)


@dataclass(frozen=True, slots=True)
class Key:
    """The answer to an exercise: a claim and, where one was made, the slip; or the reason why there is none.

    `hint` is what the question may give away at the first levels.
    """

    claim: AnyClaim | None
    summary: str
    working: tuple[str, ...]
    slip: str | None = None
    reason: str | None = None
    hint: str = ""


@dataclass(frozen=True, slots=True)
class Exercise:
    """One exercise of a sheet."""

    number: int
    task: Task
    question: str
    key: Key

    @property
    def method(self) -> MethodName | None:
        """The method of the setup that is wanted; where a slip is to be found, of the setup without it; None where
        no setup is wanted."""
        if isinstance(self.key.claim, Claim):
            return self.key.claim.method
        return METHOD_OF.get(self.task.kind)

    @property
    def may_be_none(self) -> bool:
        """Whether the question leaves it open that nothing serves."""
        return may_be_none(self.task)


def may_be_none(task: Task) -> bool:
    """Whether exercises of this kind and level may be meant to have no answer.

    >>> may_be_none(Task("plain", 1, Divisions(28))), may_be_none(Task("plain", 2, Divisions(28)))
    (False, True)
    """
    return task.level > 1 and task.kind in ("plain", "direct", "which_plate")
