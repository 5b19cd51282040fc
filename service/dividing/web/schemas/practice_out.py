"""The answers of /v1/practice and /v1/practice/mark, described."""

from __future__ import annotations

from marshmallow import Schema

from dividing.indexing.practice import KIND_NAMES, LEVELS
from dividing.indexing.practice.blanks import SLIP_LABELS
from dividing.indexing.setup import METHOD_NAMES

from .answers import VERSION, MakesOut, SlipOut
from .claim import ClaimIn
from .out import Told, flag, integer, many, one, text, texts
from .practice import PupilClaimIn
from .work import WorkIn

__all__ = ["MarkOut", "PracticeOut"]
KINDS = list(KIND_NAMES)
SLIPS = list(SLIP_LABELS)


def _kinds(about: str) -> Told:
    """A list of kinds."""
    return Told("array", about, items={"type": "string", "enum": KINDS})


class ChoiceOut(Schema):
    """One of the things to choose from."""

    value = text("What to send.")
    label = text("What to show.")


class BlankOut(Schema):
    """A place to be filled in."""

    field = text("The way to it in the claim, such as second.holes; slip stands beside the claim.")
    label = text("What stands beside it.")
    optional = flag("Whether it may stay empty.")
    choices = many(ChoiceOut, "What to choose from; null where a figure is filled in.", null=True)


class GivenOut(Schema):
    """A setup that the question gives."""

    claim = one(ClaimIn, "The setup.")
    text = text("The same in words.")


class KeyOut(Schema):
    """The answer to an exercise. Others may be right too: whatever verifies as exact by the method asked for."""

    claim = one(PupilClaimIn, "A right answer, as it would be sent to be marked; null where there is none.", null=True)
    slip = text("The slip that was made; null where none is asked for.", null=True, enum=[*SLIPS, None])
    none = flag("Whether it is meant to have no answer.")
    summary = text("The answer in one line.")
    reason = text("Why nothing serves; null where something does.", null=True)
    working = texts("The working, as a person would write it.")


class ExerciseOut(Schema):
    """One exercise."""

    number = integer("Its number on the sheet, from 1.")
    kind = text("What is practised.", enum=KINDS)
    level = integer("Its level: another than asked for only where the head has nothing to ask at that one.",
                    enum=list(LEVELS))  # fmt: skip
    question = text("The question with its figures.")
    work = one(WorkIn, "What is to be divided, as /v1/solve and /v1/verify take it.")
    method = text("The method asked for; null where no setup is asked for.", null=True, enum=[*METHOD_NAMES, None])
    circle = integer("A circle that the question gives; null where it gives none.", null=True)
    given = one(GivenOut, "A setup that the question gives; null where it gives none.", null=True)
    asked = many(BlankOut, "What is to be filled in.")
    may_be_none = flag('Whether "nothing serves" may be the answer.')
    answer = one(KeyOut, "The key.")


class LeftOutOut(Schema):
    """A kind of exercise that this head cannot do."""

    kind = text("The kind.", enum=KINDS)
    reason = text("Why, in one sentence.")


class PracticeOut(Schema):
    """A sheet of exercises with its key."""

    seed = integer("The seed.")
    count = integer("How many exercises there are.")
    level = integer("The level asked for.")
    generator = integer("The way in which they are drawn.")
    kinds = _kinds("The kinds that come round in turn.")
    left_out = many(LeftOutOut, "Kinds that this head cannot do.")
    equipment = texts("The head in words, for the top of the sheet.")
    exercises = many(ExerciseOut, "The exercises.")
    service_version = text(VERSION)


class MarkedOut(Schema):
    """One exercise marked."""

    number = integer("Its number on the sheet.")
    kind = text("What is practised.", enum=KINDS)
    level = integer("Its level.")
    question = text("The question.")
    verdict = text("The verdict.", enum=["right", "wrong", "not_answered"])
    makes = one(MakesOut, "What the claim really makes; null where nothing was claimed that makes anything.", null=True)
    explanation = texts("What to tell the pupil; never empty where the answer is wrong.")
    slips = many(SlipOut, "Slips that explain a wrong answer, the likeliest first.")
    answer = one(KeyOut, "The key.")


class SlipSeenOut(Schema):
    """A slip that this pupil makes."""

    slip = text("The slip.", enum=SLIPS)
    label = text("What it is called.")
    times = integer("How often it was made.")
    numbers = Told("array", "In which exercises.", items={"type": "integer"})


class NextOut(Schema):
    """What to practise next, ready to be asked for."""

    seed = integer("The next seed.")
    kinds = _kinds("What to practise.")
    level = integer("The level.")
    reason = text("Why.")


class SummaryOut(Schema):
    """The marks counted."""

    of = integer("How many exercises there are.")
    right = integer("How many are right.")
    wrong = integer("How many are wrong.")
    not_answered = integer("How many are not answered.")
    slips = many(SlipSeenOut, "Slips that were made, the commonest first.")
    sentence = text("The same in words.")
    next = one(NextOut, "What to practise next.")


class MarkOut(Schema):
    """A marked sheet."""

    seed = integer("The seed.")
    count = integer("How many exercises there are.")
    level = integer("The level asked for.")
    generator = integer("The way in which they are drawn.")
    kinds = _kinds("The kinds that come round in turn.")
    marks = many(MarkedOut, "Each exercise marked.")
    summary = one(SummaryOut, "What the marks say of this pupil.")
    service_version = text(VERSION)
