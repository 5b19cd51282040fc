"""What a view module tells of its operations; the description and `/docs` are made of nothing else."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from marshmallow import Schema

from .problems import (
    BAD_REQUEST,
    NOT_JSON,
    OUR_FAULT,
    TIMED_OUT,
    TOO_LARGE,
    TOO_MUCH_WORK,
    WRONG_CONTENT,
    WRONG_FIELD,
    Kind,
)
from .query_words import QueryWord

JSON = "application/json"
CSV = "text/csv"
BODY_PROBLEMS = (
    NOT_JSON,
    BAD_REQUEST,
    TIMED_OUT,
    TOO_LARGE,
    WRONG_CONTENT,
    WRONG_FIELD,
    TOO_MUCH_WORK,
    OUR_FAULT,
)
QUERY_PROBLEMS = (WRONG_FIELD, TOO_MUCH_WORK, OUR_FAULT)


@dataclass(frozen=True, slots=True)
class OtherForm:
    """A form other than JSON in which an operation is asked or answers: its media type, what it is, an example."""

    content: str
    about: str
    example: Callable[[], str]


@dataclass(frozen=True, slots=True)
class Operation:
    """One method at one address.

    `asked` is the schema of the body and `words` those of the query; `example` is a question (an object for a body,
    words for a query) and `answer` gives what the service answers to it. `asked_also` and `answered_also` are the other
    forms of body and answer.
    """

    name: str
    method: str
    path: str
    summary: str
    about: str
    answered: type[Schema] | None = None
    asked: type[Schema] | None = None
    words: Mapping[str, QueryWord] = field(default_factory=dict)
    example: Any = None
    answer: Callable[[Any], Any] | None = None
    problems: tuple[Kind, ...] = (OUR_FAULT,)
    content: str = JSON
    lasting: bool = False
    other_status: int | None = None
    asked_also: tuple[OtherForm, ...] = ()
    answered_also: tuple[OtherForm, ...] = ()


def in_body(name: str, path: str, summary: str, about: str, **told: Any) -> Operation:
    """A question in the body."""
    return Operation(name, "post", path, summary, about, problems=BODY_PROBLEMS, **told)


def in_query(name: str, path: str, summary: str, about: str, **told: Any) -> Operation:
    """A question in the address; its answer may be kept."""
    return Operation(name, "get", path, summary, about, problems=QUERY_PROBLEMS, lasting=True, **told)
