"""A sheet of exercises: what a seed, a head, kinds and a level come to, the same for ever.

The kinds come round in turn, each once before one comes again, in an order of chance. Every exercise draws from a
stream of its own, so a longer sheet begins with the shorter one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ..faults import Fault, Refused, refuse_if_any
from ..head import Head
from .chance import GENERATOR, Chance
from .exercise import COUNT_MOST, COUNT_USUAL, KIND_NAMES, LEVELS, SEED_MOST, Exercise, Key, KindName, Task
from .kinds import KINDS
from .phrases import question

USUAL_HEAD = Head()
NONE_ONE_IN = {1: 0, 2: 6, 3: 3}
"""Of the exercises that may be meant to have no answer, one in so many is; none at level 1."""
LAST_RESORT = 0
"""The seed with which a head is looked at for whether a kind can be asked at all."""
_FOUND_NOTHING: dict[KindName, str] = {
    "which_plate": "Every number that these plates serve comes out in whole turns, on any circle.",
    "sector_arms": "Every number that these plates serve comes out in whole turns, which need no arms.",
    "compound": "No two circles of one plate make a number that one of them does not make alone.",
    "differential": "No train of the gears you own makes a number that one circle does not make alone.",
    "find_the_slip": "Whatever slip is made with the figures of this head, it cannot be told which it was.",
}
_NOTHING = "There is nothing to ask about with the figures of this head."


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a sheet is asked for. Raises `Refused` with every figure that is out of bounds.

    `kinds` None asks for all that the head can do.
    """

    seed: int
    count: int = COUNT_USUAL
    head: Head = USUAL_HEAD
    kinds: tuple[KindName, ...] | None = None
    level: int = 1
    generator: int = GENERATOR

    def __post_init__(self) -> None:
        faults = []
        if not 0 <= self.seed <= SEED_MOST:
            faults.append(Fault(("seed",), f"The seed is a whole number from 0 to {SEED_MOST:,}."))
        if not 1 <= self.count <= COUNT_MOST:
            faults.append(Fault(("count",), f"A sheet has 1 to {COUNT_MOST} exercises."))
        if self.level not in LEVELS:
            faults.append(Fault(("level",), "The level is 1, 2 or 3."))
        if self.generator != GENERATOR:
            faults.append(
                Fault(("generator",), f"Exercises are drawn in one way so far; give {GENERATOR}, or nothing.")
            )
        refuse_if_any(faults)


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A kind that this head cannot do, and why."""

    kind: KindName
    reason: str


@dataclass(frozen=True, slots=True)
class Sheet:
    """The exercises, the kinds that they are of, and the kinds left out."""

    wanted: Wanted
    kinds: tuple[KindName, ...]
    left_out: tuple[LeftOut, ...]
    exercises: tuple[Exercise, ...]


def sheet(wanted: Wanted) -> Sheet:
    """The sheet for a seed; raises `Refused` where the head can do none of the kinds asked for.

    >>> made = sheet(Wanted(seed=7, count=3))
    >>> [exercise.number for exercise in made.exercises], made.left_out[0].kind
    ([1, 2, 3], 'differential')
    """
    left_out = tuple(no for name in wanted.kinds or KIND_NAMES if (no := _left_out(name, wanted.head)))
    without = {no.kind for no in left_out}
    kinds = tuple(name for name in wanted.kinds or KIND_NAMES if name not in without)
    if not kinds:
        reasons = " ".join(f"{no.kind}: {no.reason}" for no in left_out)
        sentence = f"This head can do none of the kinds asked for. {reasons} Ask for other kinds, or change the head."
        raise Refused([Fault(("kinds",), sentence)])
    return Sheet(wanted, kinds, left_out, tuple(_exercises(wanted, kinds)))


def _exercises(wanted: Wanted, kinds: tuple[KindName, ...]) -> Iterator[Exercise]:
    # Levels of one seed are sheets of their own, not one sheet made harder.
    chance = Chance(wanted.seed * (1 + max(LEVELS)) + wanted.level)
    order = _in_turn(kinds, chance.branch())
    asked: set[object] = set()
    for number in range(1, wanted.count + 1):
        task, key = _drawn(next(order), wanted, chance.branch(), asked)
        asked |= {task.asks, task.work}
        yield Exercise(number, task, question(task, key), key)


def _in_turn(kinds: Sequence[KindName], chance: Chance) -> Iterator[KindName]:
    while True:
        yield from chance.shuffled(kinds)


def _drawn(name: KindName, wanted: Wanted, chance: Chance, asked: set[object]) -> tuple[Task, Key]:
    """An exercise of this kind at the level wanted, or else at another.

    It ends, since tasks do; and it finds one, since the last resort is what `_left_out` found when it looked.
    """
    start, head = chance.word(), wanted.head
    for level in sorted(LEVELS, key=lambda level: (level != wanted.level, level > wanted.level, -level)):
        for task in _freshest_first(_tasks(name, head, level, Chance(start)), asked):
            key = KINDS[name].key(task, head)
            if key:
                return task, key
    return next(found for level in LEVELS for found in _answered(name, head, level, Chance(LAST_RESORT)))


def _freshest_first(tasks: Iterator[Task], asked: set[object]) -> Iterator[Task]:
    """Tasks of work that is not yet on the sheet; then those that were not asked; then the others."""
    of_known_work, known = [], []
    for task in tasks:
        if task.asks in asked:
            known.append(task)
        elif task.work in asked:
            of_known_work.append(task)
        else:
            yield task
    yield from of_known_work
    yield from known


def _any(name: KindName, head: Head, level: int) -> bool:
    """Whether this head has anything to ask at this level."""
    return next(_answered(name, head, level, Chance(LAST_RESORT)), None) is not None


def _tasks(name: KindName, head: Head, level: int, chance: Chance) -> Iterator[Task]:
    if NONE_ONE_IN[level] and chance.one_in(NONE_ONE_IN[level]):
        yield from KINDS[name].nones(head, level, chance)
    yield from KINDS[name].tasks(head, level, chance)


def _answered(name: KindName, head: Head, level: int, chance: Chance) -> Iterator[tuple[Task, Key]]:
    for task in KINDS[name].tasks(head, level, chance):
        key = KINDS[name].key(task, head)
        if key:
            yield task, key


def _left_out(name: KindName, head: Head) -> LeftOut | None:
    reason = KINDS[name].reason(head)
    if reason is None and not any(_any(name, head, level) for level in LEVELS):
        reason = _FOUND_NOTHING.get(name, _NOTHING)
    return None if reason is None else LeftOut(name, reason)
