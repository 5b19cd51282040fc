"""The questions of /v1/practice and /v1/practice/mark on the wire."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, cast

from marshmallow import fields, validate

from dividing.indexing.faults import Fault, Refused
from dividing.indexing.practice import COUNT_MOST, COUNT_USUAL, KIND_NAMES, LEVELS, SEED_MOST, KindName, Wanted
from dividing.indexing.practice.blanks import SLIP_LABELS
from dividing.indexing.practice.chance import GENERATOR
from dividing.indexing.setup import METHOD_NAMES

from .base import Request
from .claim import Reading
from .fields import BASICS, Whole, Wholes, Word, Words, YesNo
from .head import DEFAULT_HEAD, HeadField, nested

_OPTIONAL: dict[str, Any] = {"allow_none": True, "load_default": None}


class PracticeIn(Request):
    """What a sheet of exercises is asked for by. The same question gives the same sheet for ever."""

    seed = Whole(
        "Any number: it decides which exercises there are. Give it out, and a class works the same sheet.",
        json={"minimum": 0, "maximum": SEED_MOST}, required=True,
    )  # fmt: skip
    count = Whole(
        "How many exercises. A longer sheet begins with the shorter one.",
        json={"minimum": 1, "maximum": COUNT_MOST, "default": COUNT_USUAL}, load_default=COUNT_USUAL,
    )  # fmt: skip
    head = HeadField()
    kinds = Words("Kinds of exercise; left out, all that the head can do.", KIND_NAMES)
    level = Whole(
        "1 for beginners, 2 or 3 for more. From 2 an exercise may have no answer, and says so.",
        json={"minimum": min(LEVELS), "maximum": max(LEVELS), "default": 1}, load_default=1,
    )  # fmt: skip
    generator = Whole(
        "The way in which exercises are drawn. There is one so far; keep it with the seed for a sheet that lasts.",
        json={"minimum": 1, "maximum": GENERATOR, "default": GENERATOR}, load_default=GENERATOR,
    )  # fmt: skip

    def make(self, given: dict[str, Any]) -> Any:
        """The sheet that is wanted."""
        return _wanted(given)

    def _unasked(self) -> dict[str, Any]:
        return {"seed": 0, "count": COUNT_USUAL, "head": DEFAULT_HEAD, "level": 1, "generator": GENERATOR, "claims": []}


def _wanted(given: dict[str, Any]) -> Wanted:
    kinds = cast("tuple[KindName, ...] | None", given.get("kinds"))
    return Wanted(given["seed"], given["count"], given["head"], kinds, given["level"], given["generator"])


class PupilSecondIn(Request):
    """The second move of compound indexing, as far as it was filled in."""

    turns = Whole("Always 0: a second move of whole turns is plain indexing.", json={"enum": [0, None]}, **_OPTIONAL)
    holes = Whole("Spaces; below 0 the opposite way.", **_OPTIONAL)
    circle = Whole("The holes of the circle that the stop pin is in.", **_OPTIONAL)


class PupilGearingIn(Request):
    """The train between spindle and plate, as far as it was filled in."""

    spindle = Whole("Teeth of the gear on the spindle.", **_OPTIONAL)
    worm = Whole("Teeth of the gear on the worm side.", **_OPTIONAL)
    stud = Wholes(
        "The two gears on the stud, first and second; null or [] for a simple train.",
        most=2, what="gears", json={}, **_OPTIONAL,
    )  # fmt: skip
    idlers = Whole("Idlers in the train; 0 unless given.", **_OPTIONAL)
    plate = Word("Which way the plate turns to the crank; told, not judged.", ("with", "against"), **_OPTIONAL)


class PupilClaimIn(Request):
    """What a pupil filled in. Which fields it needs depends on the exercise; what lacks is marked, not refused."""

    method = Word("The method; left out, the one that the exercise asks for.", METHOD_NAMES, **_OPTIONAL)
    turns = Whole("Whole turns of the crank.", **_OPTIONAL)
    holes = Whole("Spaces after them.", **_OPTIONAL)
    circle = Whole("The holes of the circle.", **_OPTIONAL)
    second = nested(PupilSecondIn, "The second move of compound indexing; null: none.", **_OPTIONAL)
    gearing = nested(PupilGearingIn, "The train of differential indexing; null: none.", **_OPTIONAL)
    reading = Reading("The dial's reading beyond its whole turns.", **_OPTIONAL)
    plate = Whole("Where the plate is asked for: the plate, counted from 1.", **_OPTIONAL)
    sector_holes = Whole("Where the sector arms are asked for: the holes between them.", **_OPTIONAL)


class ResponseIn(Request):
    """The answer to one exercise: a claim, that nothing serves, or the slip that was made."""

    number = Whole(
        "The number of the exercise on the sheet.", json={"minimum": 1, "maximum": COUNT_MOST}, required=True
    )
    claim = nested(PupilClaimIn, "The setup, or whatever is asked for; null: none.", **_OPTIONAL)
    none = YesNo("Whether nothing serves.", json={"default": False}, load_default=False)
    slip = Word("The slip that was made; a claim beside it is what would be right.", tuple(SLIP_LABELS), **_OPTIONAL)

    def make(self, given: dict[str, Any]) -> dict[str, Any]:
        """The fields as they are; what they mean the exercise says."""
        if given["none"] and (given["claim"] is not None or given["slip"] is not None):
            raise Refused([Fault(("none",), "Either nothing serves, or there is something to give; not both.")])
        return given


class MarkIn(PracticeIn):
    """The sheet, by what it was asked for with, and what was answered to it. Nothing is kept: it is made again."""

    claims = fields.List(
        nested(ResponseIn, "The answer to one exercise."),
        required=True, validate=validate.Length(max=COUNT_MOST, error=f"Give at most {COUNT_MOST} answers."),
        error_messages={**BASICS, "invalid": 'Give a list of answers here, between "[" and "]".'},
        metadata={"description": "Answers, one an exercise at most, in any order; the others are not answered."},
    )  # fmt: skip

    leans_on = {"claims": "count"}

    def make(self, given: dict[str, Any]) -> MarkAsked:
        """The sheet and the answers to it."""
        faults: list[Fault] = []
        try:
            wanted = _wanted(given)
        except Refused as refused:
            faults += refused.faults
        faults += _number_faults(given["claims"], given["count"])
        if faults:
            raise Refused(faults)
        return MarkAsked(wanted, {answer["number"]: answer for answer in given["claims"]})


@dataclass(frozen=True, slots=True)
class MarkAsked:
    """The sheet wanted, and what was answered by the exercises' numbers, as it came."""

    wanted: Wanted
    answers: dict[int, dict[str, Any]]


def _number_faults(answers: list[dict[str, Any]], count: int) -> list[Fault]:
    faults, seen = [], set()
    for place, answer in enumerate(answers):
        number = answer["number"]
        if not 1 <= number <= count:
            faults.append(Fault(("claims", place, "number"), f"The sheet has exercises 1 to {count}."))
        elif number in seen:
            faults.append(Fault(("claims", place, "number"), f"Exercise {number} is answered twice; answer it once."))
        seen.add(number)
    return faults


PRACTICE_IN = PracticeIn()
MARK_IN = MarkIn()
