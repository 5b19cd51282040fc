"""/v1/coverage: which numbers of a range a head divides, where its gaps are, and what to own next."""

from __future__ import annotations

from typing import Any

from flask import Blueprint, Response

from dividing.indexing.coverage import TOLD_MOST, additions, coverage, nearest

from . import coverage_costing
from .answers.coverage import covered
from .exchange import answer, asked_in_body
from .operations import in_body
from .schemas.coverage import COVERAGE_IN, CoverageOut, Range

blueprint = Blueprint("coverage", __name__)


@blueprint.post("/v1/coverage")
def coverage_body() -> Response:
    """The range and the head in the body."""
    return answer(covering(asked_in_body()))


def covering(asked: Any) -> dict[str, Any]:
    """What a head does with a range of numbers, for a question in its wire form."""
    question: Range = COVERAGE_IN.load(asked)
    found = coverage(question.first, question.last, question.head)
    coverage_costing.check(question, found.gaps)
    if question.tolerance is not None:
        found = nearest(found, question.head, question.tolerance)
    return covered(question, found, additions(found.gaps, question.head) if question.additions else None)


OPERATIONS = (
    in_body(
        "coverage", "/v1/coverage", "See which numbers a head divides",
        "For every number of a range: the method of the first setup that /v1/solve gives, and whether it is exact. "
        "Numbers that are not exact, or not within the tolerance where one is given, are the gaps. What to own next "
        "is found by trying everything: each circle of 2 to 400 holes on a plate of its own, where it serves plainly "
        "or with the change gears owned (a second move needs another circle on the same plate), and each change gear "
        "of 10 to 200 teeth in every train of two or four with those owned, as far as the limits of a head allow one "
        "more. Counted are the gaps that would come out exactly, several spaces a move among them; one that would "
        f"only come nearer is not. The best {TOLD_MOST} of each are told. The whole range costs far less than solving "
        "each number of it; numbers to be held against a tolerance are solved one by one.",
        asked=type(COVERAGE_IN), answered=CoverageOut, answer=covering,
        example={"from": 2, "to": 100},
    ),
)  # fmt: skip
