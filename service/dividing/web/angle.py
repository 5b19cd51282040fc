"""/v1/angle: one angle in every form that the shop uses."""

from __future__ import annotations

from typing import Any

from flask import Blueprint, Response

from dividing.indexing.converting import convert

from . import query
from .answers.angle import converted
from .exchange import answer, asked_in_body, asked_in_query, lasting_answer
from .operations import in_body, in_query
from .query_words import ANGLE_WORDS
from .schemas.angle import ANGLE_IN, AngleQuestion
from .schemas.answers import AngleAnswerOut

blueprint = Blueprint("angle", __name__)


@blueprint.post("/v1/angle")
def angle_body() -> Response:
    """The question in the body."""
    return answer(_converted(asked_in_body()))


@blueprint.get("/v1/angle")
def angle_query() -> Response:
    """The question in the address."""
    return lasting_answer(_converted(asked_in_query(ANGLE_WORDS)))


def _converted(asked: Any) -> dict[str, Any]:
    question: AngleQuestion = ANGLE_IN.load(asked)
    found = convert(question.angle, question.head, diameter=question.diameter, sine_bar=question.sine_bar)
    return converted(found)


_ABOUT = "Give an angle in any notation, or a crank move, and read it in every form that the shop uses."
OPERATIONS = (
    in_body(
        "angle", "/v1/angle", "Convert an angle", _ABOUT,
        asked=type(ANGLE_IN), answered=AngleAnswerOut, example={"angle": "37°30'", "diameter": 100}, answer=_converted,
    ),
    in_query(
        "angleByLink", "/v1/angle", "Convert an angle by its link", _ABOUT,
        words=ANGLE_WORDS, answered=AngleAnswerOut, example="turns=4&holes=3&circle=18",
        answer=lambda words: _converted(query.read(words.encode(), ANGLE_WORDS)),
    ),
)  # fmt: skip
