"""Find the slip: a setup that somebody worked out with one slip in it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import islice

from ... import wording
from ...head import Head
from ...verifying import Claim, verify
from ...work import Divisions
from ..chance import Chance
from ..exercise import Key, KindName, Task
from ..phrases import claim_text
from ..spoiling import SPOILERS, Right, slips_at
from . import angular, compound, dial, differential, direct, plain

SOURCES = {
    "plain": plain, "angular": angular, "direct": direct, "compound": compound, "differential": differential,
    "dial": dial,
}  # fmt: skip
LOOKED_AT = 6
"""Right setups that are looked at for a slip before the next slip has its turn."""
ALWAYS_LOOKED_AT = 120
"""The same for the slips that can always be told: more than a sheet has exercises."""
LEVELS_OF: dict[KindName, tuple[int, ...]] = {
    "angular": (2, 3), "compound": (1, 2), "differential": (1, 2, 3), "dial": (1, 2, 3),
}  # fmt: skip
"""The levels of the setups that are spoiled, one after the other."""


def reason(head: Head) -> str | None:
    """Nothing that is seen at a glance: every head can be set wrongly."""
    return None


def tasks(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """One setup for each slip that can be made, in an order of chance; then slips that can always be told."""
    for slip in chance.shuffled(slips_at(level)):
        spoiler = SPOILERS[slip]
        for kind in spoiler.kinds:
            for right in islice(_right(kind, slip, level, head, chance.branch()), LOOKED_AT):
                claim = spoiler.spoil(right, chance)
                if claim:
                    yield _task(level, right, claim, slip)
    yield from _always(head, level, chance)


def nones(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """None: a slip was made."""
    yield from ()


def key(task: Task, head: Head) -> Key | None:
    """The slip and the setup without it; None where the verifier does not name this slip first."""
    assert task.claim is not None
    found = verify(task.work, head, task.claim)
    if not found.likely_slips or found.likely_slips[0].slip != task.slip:
        return None
    told = found.likely_slips[0]
    # Whole turns need no circle; the one that was claimed may not even exist.
    right = replace(told.corrected, circle=None) if _in_whole_turns(told.corrected) else told.corrected
    working = wording.working(task.work, head, found.right) if found.right else []
    return Key(right, claim_text(right), (told.explanation, *working), slip=task.slip)


def _in_whole_turns(claim: Claim) -> bool:
    return claim.method == "plain" and not claim.holes


def _right(kind: KindName, slip: str, level: int, head: Head, chance: Chance) -> Iterator[Right]:
    """Right setups of a kind for the head at hand."""
    source = SOURCES[kind]
    if source.reason(head):
        return
    for base in _levels(kind, slip, level):
        for task in source.tasks(head, base, chance):
            if slip == "rounded_step_added_up":
                yield _rounded_step(task, head)
                continue
            found = source.key(task, head)
            assert found is not None and isinstance(found.claim, Claim)
            yield Right(task.work, head, found.claim, task.written)


def _levels(kind: KindName, slip: str, level: int) -> tuple[int, ...]:
    if slip == "rounded_step_added_up":
        return (3,)
    return LEVELS_OF.get(kind, (2, 1) if level > 1 else (1, 2))


def _rounded_step(task: Task, head: Head) -> Right:
    """The first step of the number whose position the task asks for, as the dial reads it."""
    assert task.position is not None
    work = Divisions(task.position[1])
    return Right(work, head, dial.dial_claim(work.step, head))


def _always(head: Head, level: int, chance: Chance) -> Iterator[Task]:
    """A hole miscounted or the whole turns forgotten: the verifier looks for these first, so it always names them."""
    for slip in ("counted_the_pin_hole", "whole_turns_forgotten"):
        for kind in SPOILERS[slip].kinds:
            for right in islice(_right(kind, slip, level, head, chance), ALWAYS_LOOKED_AT):
                claim = SPOILERS[slip].spoil(right, chance)
                if claim:
                    yield _task(level, right, claim, slip)


def _task(level: int, right: Right, claim: Claim, slip: str) -> Task:
    return Task("find_the_slip", level, right.work, right.written, claim=claim, slip=slip)
