"""/v1/practice: exercises for a class, the same for the same seed, and the marking of what was answered."""

from __future__ import annotations

from typing import Any

from flask import Blueprint, Response

from dividing.indexing.practice import Wanted, mark_all, sheet, summary

from . import practice_costing
from .answers.practice import marked_out, sheet_out
from .exchange import answer, asked_in_body
from .operations import in_body
from .responses import responses_to
from .schemas.practice import MARK_IN, PRACTICE_IN, MarkAsked
from .schemas.practice_out import MarkOut, PracticeOut

blueprint = Blueprint("practice", __name__)


@blueprint.post("/v1/practice")
def practice_body() -> Response:
    """The sheet that is wanted, in the body."""
    return answer(practised(asked_in_body()))


@blueprint.post("/v1/practice/mark")
def mark_body() -> Response:
    """The same with what was answered."""
    return answer(marked(asked_in_body()))


def practised(asked: Any) -> dict[str, Any]:
    """The exercises with their key."""
    wanted: Wanted = PRACTICE_IN.load(asked)
    practice_costing.check(wanted)
    return sheet_out(sheet(wanted))


def marked(asked: Any) -> dict[str, Any]:
    """The sheet made again and marked."""
    mark: MarkAsked = MARK_IN.load(asked)
    practice_costing.check(mark.wanted, len(mark.answers))
    made = sheet(mark.wanted)
    marks = mark_all(made.exercises, responses_to(made, mark.answers), mark.wanted.head)
    return marked_out(made, marks, summary(made, marks))


_ASKED = {"seed": 7, "count": 3, "kinds": ["plain", "which_plate", "find_the_slip"]}
OPERATIONS = (
    in_body(
        "practice", "/v1/practice", "Exercises for a class",
        "A sheet of exercises with its key for the head at hand: the same seed, head, kinds and level give the same "
        "sheet for ever, so a class works one sheet. The kinds come round in turn. From level 2 some exercises are "
        "meant to have no answer. A kind that the head cannot do is left out, with the reason.",
        asked=type(PRACTICE_IN), answered=PracticeOut, answer=practised, example=_ASKED,
    ),
    in_body(
        "markPractice", "/v1/practice/mark", "Mark what a pupil answered",
        "The sheet is made again from its seed and each answer is verified, so every right answer counts, not only the "
        "one of the key. Wrong ones are explained by their slips; the summary says which slips this pupil makes and "
        "what to practise next. Nothing is kept.",
        asked=type(MARK_IN), answered=MarkOut, answer=marked,
        example={**_ASKED, "claims": [{"number": 1, "claim": {"turns": 6, "holes": 11, "circle": 18}}]},
    ),
)  # fmt: skip
