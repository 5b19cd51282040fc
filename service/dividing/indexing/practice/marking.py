"""Marking: what a pupil answered held against the exercise, by verifying, so that every right answer counts.

A claim need not be the one of the key: whatever makes the work exactly by the method asked for is right.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from ..angles import Angle
from ..head import Head
from ..setup import Tolerance
from ..verifying import Claim, Slip, Verdict, verify
from . import told
from .exercise import LEVELS, METHOD_OF, ArmsClaim, Exercise, PlateClaim, Task
from .kinds.dial import dial_claim, half_a_reading

MarkName = Literal["right", "wrong", "not_answered"]


@dataclass(frozen=True, slots=True)
class Response:
    """What a pupil answered to an exercise: a claim, that there is none, or a slip with or without a claim.

    `lacking` says what could not be read or is missing, where the claim cannot be judged at all.
    """

    number: int
    claim: Claim | PlateClaim | ArmsClaim | None = None
    none: bool = False
    slip: str | None = None
    lacking: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Mark:
    """The verdict on one exercise, with what to tell the pupil. `makes` is what one move of the claim turns the work,
    None where there is none; `slips` are those that explain a wrong claim, the likeliest first."""

    exercise: Exercise
    verdict: MarkName
    explanation: tuple[str, ...] = ()
    makes: Angle | None = None
    slips: tuple[Slip, ...] = ()


def mark_all(exercises: Iterable[Exercise], responses: Mapping[int, Response], head: Head) -> list[Mark]:
    """A mark for each exercise; those without a response were not answered."""
    return [
        mark(exercise, responses[exercise.number], head)
        if exercise.number in responses
        else Mark(exercise, "not_answered")
        for exercise in exercises
    ]


def mark(exercise: Exercise, response: Response, head: Head) -> Mark:
    """The mark for one response.

    >>> from dividing.indexing.practice.sheets import Wanted, sheet
    >>> exercise = sheet(Wanted(seed=7, count=1, kinds=("plain",))).exercises[0]
    >>> mark(exercise, Response(1, claim=exercise.key.claim), Head()).verdict
    'right'
    """
    if response.lacking:
        return Mark(exercise, "wrong", response.lacking)
    if response.none:
        return _mark_none(exercise)
    if exercise.task.kind == "find_the_slip":
        return _mark_slip(exercise, response, head)
    if isinstance(response.claim, PlateClaim):
        return _mark_plate(exercise, response.claim, head)
    if isinstance(response.claim, ArmsClaim):
        return _mark_arms(exercise, response.claim, head)
    return Mark(exercise, "not_answered") if response.claim is None else _mark_claim(exercise, response.claim, head)


def _mark_none(exercise: Exercise) -> Mark:
    if exercise.key.reason is not None:
        return Mark(exercise, "right", (exercise.key.reason,))
    return Mark(exercise, "wrong", (told.SOMETHING_SERVES,))


def _mark_claim(exercise: Exercise, claim: Claim, head: Head) -> Mark:
    task = exercise.task
    found = verify(task.work, head, claim, tolerance=_tolerance(task, head))
    by = METHOD_OF[task.kind]
    if found.verdict in ("exact", "within_tolerance"):
        if claim.method == by and not task.none:
            return Mark(exercise, "right", makes=_made(found, claim))
        return Mark(exercise, "wrong", (told.other_method(task, by),), _made(found, claim))
    return _wrong(exercise, found, claim, head)


def _wrong(exercise: Exercise, found: Verdict, claim: Claim, head: Head) -> Mark:
    """A wrong claim with what explains it: why nothing serves, the slip, what it makes, why it cannot be set."""
    said = [exercise.key.reason] if exercise.key.reason else []
    slips = found.likely_slips
    added = _rounded_steps_added(exercise.task, claim, found.step, head)
    if added:
        slips = (added, *(slip for slip in slips if slip.slip != added.slip))
    said += [slip.explanation for slip in slips[:1]]
    said += [] if slips else told.makes(exercise.task, found)
    said += found.why
    return Mark(exercise, "wrong", tuple(said), _made(found, claim), slips)


def _mark_plate(exercise: Exercise, claim: PlateClaim, head: Head) -> Mark:
    """Right where the circle stands on that plate and has a whole number of spaces for the part of a turn."""
    if not 1 <= claim.plate <= len(head.plates):
        return Mark(exercise, "wrong", (told.no_such_plate(head),))
    needed = (head.ratio * exercise.task.work.step).denominator
    on_it = claim.circle in head.plates[claim.plate - 1]
    if on_it and claim.circle % needed == 0:
        return Mark(exercise, "right")
    said = [exercise.key.reason] if exercise.key.reason else []
    if not on_it:
        said.append(told.not_on_that_plate(claim, head))
    if claim.circle % needed:
        said.append(told.no_whole_spaces(exercise.task, claim.circle, needed, head))
        return Mark(exercise, "wrong", tuple(said))
    return Mark(exercise, "wrong", tuple(said), slips=_slips_of_circle(exercise.task, claim.circle, head))


def _slips_of_circle(task: Task, circle: int, head: Head) -> tuple[Slip, ...]:
    """The slips of the move on a circle that has whole spaces for it, wherever it may be."""
    turns, part = divmod(head.ratio * task.work.step, 1)
    move = Claim("plain", turns=int(turns), holes=int(part * circle), circle=circle)
    return verify(task.work, head, move).likely_slips


def _mark_arms(exercise: Exercise, claim: ArmsClaim, head: Head) -> Mark:
    """The arms mark one space less than the holes that they stand over; the move that they make is verified."""
    task, circle = exercise.task, exercise.task.circle
    if claim.sector_holes < 1 or circle is None:
        return Mark(exercise, "wrong", (told.NO_ARMS,))
    turns = int(head.ratio * task.work.step)
    move = Claim("plain", turns=turns, holes=claim.sector_holes - 1, circle=circle)
    found = verify(task.work, head, move)
    if found.verdict == "exact":
        return Mark(exercise, "right", makes=_made(found, move))
    made = _wrong(exercise, found, move, head)
    return replace(made, explanation=(told.arms_mark(claim.sector_holes), *made.explanation))


def _mark_slip(exercise: Exercise, response: Response, head: Head) -> Mark:
    """Right where undoing the slip named gives the wanted work exactly, and the claim beside it, if any, is right."""
    task = exercise.task
    assert task.claim is not None
    if response.slip is None:
        return Mark(exercise, "wrong", (told.NAME_THE_SLIP,))
    explained = {slip.slip: slip for slip in verify(task.work, head, task.claim).likely_slips}
    if response.slip not in explained:
        return Mark(exercise, "wrong", (told.not_that_slip(response.slip), exercise.key.working[0]))
    if isinstance(response.claim, Claim):
        found = verify(task.work, head, response.claim)
        if found.verdict != "exact":
            return _wrong(exercise, found, response.claim, head)
    return Mark(exercise, "right", (explained[response.slip].explanation,))


def _made(found: Verdict, claim: Claim) -> Angle | None:
    """What one move turns the work; a reading in radians makes it irrational."""
    return None if found.step is None else Angle(found.step, claim.reading is None or claim.reading.rational)


def _tolerance(task: Task, head: Head) -> Tolerance | None:
    """A dial is set to its nearest reading where the position falls between two."""
    return half_a_reading(head) if task.kind == "dial" and task.level == max(LEVELS) else None


def _rounded_steps_added(task: Task, claim: Claim, made: Fraction | None, head: Head) -> Slip | None:
    """A later position set by adding the rounded first step so many times: only the exercise knows how many."""
    if task.position is None or claim.method != "dial" or made is None:
        return None
    position, count = task.position
    step = Fraction(1, count)
    places = head.ratio * head.dial_units
    rounded = Fraction(round(step * places), places)
    if position < 2 or rounded == step or made != position * rounded:
        return None
    return Slip("rounded_step_added_up", told.added_up(position, count), dial_claim(task.work.step, head))
