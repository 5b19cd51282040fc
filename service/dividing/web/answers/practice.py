"""The answers of /v1/practice and /v1/practice/mark."""

from __future__ import annotations

from typing import Any

from dividing import __version__
from dividing.indexing.angles import angle_out
from dividing.indexing.head import Head
from dividing.indexing.practice import ArmsClaim, Exercise, Mark, PlateClaim, Sheet, Summary, Task
from dividing.indexing.practice.blanks import BLANKS, SLIP_LABELS
from dividing.indexing.practice.equipment import equipment
from dividing.indexing.practice.exercise import AnyClaim
from dividing.indexing.practice.phrases import claim_text
from dividing.indexing.practice.spoiling import slips_at
from dividing.indexing.verifying import Slip
from dividing.indexing.work import Divisions

from . import Answer
from .verify import claim_out


def sheet_out(sheet: Sheet) -> Answer:
    """The sheet with its key."""
    head = sheet.wanted.head
    return {
        **_heading(sheet),
        "left_out": [{"kind": no.kind, "reason": no.reason} for no in sheet.left_out],
        "equipment": equipment(head),
        "exercises": [_exercise(each, head) for each in sheet.exercises],
        "service_version": __version__,
    }


def marked_out(sheet: Sheet, marks: list[Mark], summary: Summary) -> Answer:
    """The marked sheet."""
    head = sheet.wanted.head
    return {
        **_heading(sheet),
        "marks": [_mark(mark, head) for mark in marks],
        "summary": _summary(summary),
        "service_version": __version__,
    }


def _heading(sheet: Sheet) -> Answer:
    wanted = sheet.wanted
    return {
        "seed": wanted.seed,
        "count": wanted.count,
        "level": wanted.level,
        "generator": wanted.generator,
        "kinds": list(sheet.kinds),
    }


def _exercise(exercise: Exercise, head: Head) -> Answer:
    task = exercise.task
    given = None if task.claim is None else {"claim": claim_out(task.claim, head), "text": claim_text(task.claim)}
    return {
        "number": exercise.number,
        "kind": task.kind,
        "level": task.level,
        "question": exercise.question,
        "work": _work(task),
        "method": exercise.method,
        "circle": task.circle,
        "given": given,
        "asked": _blanks(task),
        "may_be_none": exercise.may_be_none,
        "answer": _key(exercise, head),
    }


def _work(task: Task) -> Answer:
    if isinstance(task.work, Divisions):
        return {"divisions": task.work.count}
    return {"angle": task.written or f"{task.work.step} turn"}


def _blanks(task: Task) -> list[Answer]:
    choices = [{"value": slip, "label": SLIP_LABELS[slip]} for slip in slips_at(task.level)]
    return [
        {
            "field": blank.field,
            "label": blank.label,
            "optional": blank.optional,
            "choices": choices if blank.field == "slip" else None,
        }
        for blank in BLANKS[task.kind]
    ]


def _key(exercise: Exercise, head: Head) -> Answer:
    key = exercise.key
    return {
        "claim": None if key.claim is None else _claim(key.claim, head),
        "slip": key.slip,
        "none": key.claim is None,
        "summary": key.summary,
        "reason": key.reason,
        "working": list(key.working),
    }


def _claim(claim: AnyClaim, head: Head) -> dict[str, Any]:
    if isinstance(claim, PlateClaim):
        return {"plate": claim.plate, "circle": claim.circle}
    if isinstance(claim, ArmsClaim):
        return {"sector_holes": claim.sector_holes}
    return claim_out(claim, head)


def _mark(mark: Mark, head: Head) -> Answer:
    exercise, made = mark.exercise, mark.makes
    divisions = str(1 / made.turns) if made is not None and made.turns else None
    return {
        "number": exercise.number,
        "kind": exercise.task.kind,
        "level": exercise.task.level,
        "question": exercise.question,
        "verdict": mark.verdict,
        "makes": None if made is None else {"step": angle_out(made), "divisions": divisions},
        "explanation": list(mark.explanation),
        "slips": [_slip(slip, head) for slip in mark.slips],
        "answer": _key(exercise, head),
    }


def _slip(slip: Slip, head: Head) -> Answer:
    return {"slip": slip.slip, "explanation": slip.explanation, "corrected": claim_out(slip.corrected, head)}


def _summary(summary: Summary) -> Answer:
    after = summary.next
    return {
        "of": summary.of,
        "right": summary.right,
        "wrong": summary.wrong,
        "not_answered": summary.not_answered,
        "slips": [
            {"slip": seen.slip, "label": SLIP_LABELS[seen.slip], "times": len(seen.numbers), "numbers": [*seen.numbers]}
            for seen in summary.slips
        ],
        "sentence": summary.sentence,
        "next": {"seed": after.seed, "kinds": list(after.kinds), "level": after.level, "reason": after.reason},
    }
