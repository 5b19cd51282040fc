"""What a marked sheet says of a pupil: how much is right, which slips come again, what to practise next."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from ..wording.figures import counted
from .blanks import SLIP_LABELS
from .exercise import LEVELS, SEED_MOST, KindName
from .marking import Mark, MarkName
from .sheets import Sheet
from .told import KIND_TITLES

KINDS_NEXT_MOST = 3
"""Kinds that are named to be practised next; more would say nothing."""


@dataclass(frozen=True, slots=True)
class SlipSeen:
    """A slip that this pupil makes, and in which exercises."""

    slip: str
    numbers: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Next:
    """The sheet to practise next, and why."""

    seed: int
    kinds: tuple[KindName, ...]
    level: int
    reason: str


@dataclass(frozen=True, slots=True)
class Summary:
    """The marks counted. `slips` stand by how often they were made."""

    right: int
    wrong: int
    not_answered: int
    slips: tuple[SlipSeen, ...]
    sentence: str
    next: Next

    @property
    def of(self) -> int:
        """How many exercises there are."""
        return self.right + self.wrong + self.not_answered


def summary(sheet: Sheet, marks: Sequence[Mark]) -> Summary:
    """The summary of a sheet's marks.

    >>> from dividing.indexing.practice.sheets import Wanted, sheet
    >>> made = sheet(Wanted(seed=7, count=2))
    >>> summary(made, [Mark(exercise, "not_answered") for exercise in made.exercises]).sentence
    '0 of 2 are right. 2 are not answered.'
    """
    verdicts = Counter(mark.verdict for mark in marks)
    slips = _slips(marks)
    return Summary(
        verdicts["right"],
        verdicts["wrong"],
        verdicts["not_answered"],
        slips,
        _sentence(verdicts, len(marks), slips),
        _next(sheet, marks),
    )


def _slips(marks: Sequence[Mark]) -> tuple[SlipSeen, ...]:
    """The likeliest slip of each wrong answer, the commonest slip first."""
    seen: dict[str, list[int]] = defaultdict(list)
    for mark in marks:
        for slip in mark.slips[:1]:
            seen[slip.slip].append(mark.exercise.number)
    ranked = sorted(seen.items(), key=lambda one: (-len(one[1]), one[1]))
    return tuple(SlipSeen(slip, tuple(numbers)) for slip, numbers in ranked)


def _sentence(verdicts: Counter[MarkName], of: int, slips: tuple[SlipSeen, ...]) -> str:
    right, open_ = verdicts["right"], verdicts["not_answered"]
    said = [f"{right} of {of} {'is' if right == 1 else 'are'} right."]
    if open_:
        said.append(f"{open_} {'is' if open_ == 1 else 'are'} not answered.")
    if slips:
        label, times = SLIP_LABELS[slips[0].slip], len(slips[0].numbers)
        said.append(f"The commonest slip, {counted(times, 'time')}: {label[0].lower()}{label[1:]}.")
    return " ".join(said)


def _next(sheet: Sheet, marks: Sequence[Mark]) -> Next:
    """What was wrong most, at the same level; where all is right, the next level."""
    wanted = sheet.wanted
    seed = (wanted.seed + 1) % (SEED_MOST + 1)
    wrong = Counter(mark.exercise.task.kind for mark in marks if mark.verdict == "wrong")
    left = Counter(mark.exercise.task.kind for mark in marks if mark.verdict == "not_answered")
    missed = wrong or left
    if missed:
        kinds = tuple(sorted(missed, key=lambda kind: (-missed[kind], sheet.kinds.index(kind)))[:KINDS_NEXT_MOST])
        named = ", ".join(KIND_TITLES[kind] for kind in kinds)
        return Next(seed, kinds, wanted.level, f"{'Practise' if wrong else 'Finish, or begin anew with,'} {named}.")
    if wanted.level < max(LEVELS):
        return Next(seed, sheet.kinds, wanted.level + 1, f"All is right: go on to level {wanted.level + 1}.")
    return Next(
        seed, sheet.kinds, wanted.level, "All is right at the highest level: keep in practice with another sheet."
    )
