"""/v1/solve: divisions or an angle in, crank moves out."""

from __future__ import annotations

from typing import Any

from flask import Blueprint, Response

from dividing.indexing.solving import solve

from . import costing, query
from .answers.solve import solved as answered
from .exchange import answer, asked_in_body, asked_in_query, lasting_answer
from .operations import in_body, in_query
from .query_words import SOLVE_WORDS
from .schemas.answers import SolveOut
from .schemas.part import barred
from .schemas.solve import SOLVE_IN, Question

blueprint = Blueprint("solve", __name__)


@blueprint.post("/v1/solve")
def solve_body() -> Response:
    """The question in the body."""
    return answer(solved(asked_in_body()))


@blueprint.get("/v1/solve")
def solve_query() -> Response:
    """The question in the address."""
    return lasting_answer(solved(asked_in_query(SOLVE_WORDS)))


def solved(asked: Any) -> dict[str, Any]:
    """The answer to a question in its wire form; every other way to ask the same comes through here."""
    question: Question = SOLVE_IN.load(asked)
    costing.check(question)
    solution = solve(
        question.work,
        question.head,
        methods=question.methods,
        limit=question.limit,
        barred=barred(question.part),
    )
    return answered(question, solution, query.link(asked, question.head))


_ABOUT = (
    "Give the work as divisions, as an angle with a count, as a list of angles, or as the part that is being made, and "
    "the head that stands in front of you. Setups come back in the order in which a careful operator would choose; "
    "where nothing is exact, the nearest ones follow with their errors."
)
OPERATIONS = (
    in_body(
        "solve", "/v1/solve", "Solve: divisions or an angle in, crank moves out", _ABOUT,
        asked=type(SOLVE_IN), answered=SolveOut, example={"work": {"divisions": 28}}, answer=solved,
    ),
    in_query(
        "solveByLink", "/v1/solve", "Solve a simple question by its link",
        _ABOUT + " The same words stand in the page's link.",
        words=SOLVE_WORDS, answered=SolveOut, example="divisions=28&ratio=60&limit=1",
        answer=lambda words: solved(query.read(words.encode(), SOLVE_WORDS)),
    ),
)  # fmt: skip
