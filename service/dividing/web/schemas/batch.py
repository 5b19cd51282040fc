"""The questions and answers of /v1/solve/batch on the wire."""

from __future__ import annotations

from typing import Any

from marshmallow import Schema, ValidationError, fields, validate

from dividing.web.limits import BATCH_ITEMS_MOST

from .answers import VERSION, ProblemOut, SolveOut
from .base import Request
from .fields import BASICS, Described
from .out import integer, many, text
from .solve import SolveIn

REF_LONGEST = 200


class Ref(Described):
    """What the caller knows an item by."""

    json = {"type": "string", "maxLength": REF_LONGEST}

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> str:
        if not isinstance(value, str) or len(value) > REF_LONGEST:
            raise ValidationError(f"A ref is a text of up to {REF_LONGEST} characters, such as OP30.")
        return value


class ItemIn(SolveIn):
    """One question of a batch: a question of /v1/solve with what the caller knows it by."""

    ref = Ref("What you know the item by; it comes back beside its answer and may recur.", allow_none=True)


class Items(fields.List[Any]):
    """The items as they came: each is read by itself, so that a bad one spoils no other."""

    def __init__(self, about: str) -> None:
        size = validate.Length(min=1, max=BATCH_ITEMS_MOST)
        super().__init__(
            fields.Nested(ItemIn), required=True, validate=size, error_messages=dict(BASICS),
            metadata={"description": about},
        )  # fmt: skip

    def deserialize(self, value: Any, attr: Any = None, data: Any = None, **kwargs: Any) -> list[Any]:
        """The list itself."""
        if isinstance(value, list):
            if 1 <= len(value) <= BATCH_ITEMS_MOST:
                return value
            advice = "Split it." if value else "Give one at least."
            raise ValidationError(f"A batch has 1 to {BATCH_ITEMS_MOST} items, not {len(value):,}. {advice}")
        if attr is not None and data is not None and attr in data:
            raise ValidationError('Give a list of items here, between "[" and "]".')
        return [*super().deserialize(value, attr, data, **kwargs)]


class BatchIn(Request):
    """Questions to be answered in one call."""

    items = Items("The questions, in the order in which the answers come.")


class BatchAnswerOut(Schema):
    """What became of one item: an answer or a problem."""

    ref = text("The item's ref; null where it has none.", null=True)
    status = integer("200 with an answer, otherwise the status of the problem.")
    answer = fields.Nested(SolveOut, metadata={"description": "The answer, as /v1/solve gives it."})
    problem = fields.Nested(ProblemOut, metadata={"description": "The problem; its pointers start at the item."})


class BatchOut(Schema):
    """An answer to each item."""

    answers = many(BatchAnswerOut, "The answers, in the order of the items.")
    service_version = text(VERSION)


BATCH_IN = BatchIn()
