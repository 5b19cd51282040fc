"""The description of the service (OpenAPI 3.1), made from the schemas that load the requests.

    python -m dividing.web.openapi

writes it to `openapi/openapi.json`.
"""

from __future__ import annotations

import json
from functools import cache
from typing import Any

from apispec import APISpec
from apispec.ext.marshmallow import MarshmallowPlugin
from marshmallow import Schema, fields

from dividing import __version__
from dividing.indexing import bounds
from dividing.indexing.practice import COUNT_MOST, SEED_MOST

from . import limits
from .files import description_file
from .operations import JSON, Operation, OtherForm
from .problems import KINDS, MEDIA_TYPE, Kind
from .query_words import PAGE_SETUP, QueryWord, number, whole_number
from .schemas.angle import ANGLE_IN
from .schemas.answers import ProblemOut
from .schemas.fields import Described
from .schemas.solve import SOLVE_IN
from .themes import THEMES

ABOUT = (
    "Says how to set a dividing head or rotary table for any number of divisions or any angle, and checks settings "
    "worked by hand. Every call is pure: the same question gives the same bytes. Rationals travel as strings, beside "
    "them a decimal. The machine maker's and the shop's rules, local codes and qualified supervision come first."
)
LIMITS: dict[str, int] = {
    "body_bytes": limits.BODY_MOST,
    "batch_bytes": limits.BATCH_BODY_MOST,
    "batch_items": limits.BATCH_ITEMS_MOST,
    "nesting": limits.NESTING_MOST,
    "query_characters": limits.QUERY_LONGEST,
    "divisions": bounds.DIVISIONS_MOST,
    "angles": bounds.ANGLES_MOST,
    "ratio": bounds.RATIO_MOST,
    "circles": bounds.CIRCLES_MOST,
    "holes_of_a_circle": bounds.HOLES_MOST,
    "holes_in_all": bounds.HOLES_IN_ALL_MOST,
    "gears": bounds.GEARS_MOST,
    "teeth_of_a_gear": bounds.TEETH_MOST,
    "position_rows": bounds.ROWS_MOST,
    "setups": bounds.SETUPS_MOST,
    "angle_characters": 64,
    "exponent": 9,
    "coverage_to": bounds.COVERAGE_MOST,
    "practice_exercises": COUNT_MOST,
    "practice_seed": SEED_MOST,
    "seconds_of_work": int(limits.SECONDS_OF_WORK),
}
_EVERY_HEADER = {
    "X-Request-ID": {
        "description": "The id sent with the request when it is 1 to 64 of A-Z a-z 0-9 . _ -, else one made here.",
        "schema": {"type": "string", "pattern": "^[A-Za-z0-9._-]{1,64}$"},
    }
}
_LASTING_HEADERS = {
    "ETag": {"description": "A strong tag of the answer, for If-None-Match.", "schema": {"type": "string"}},
    "Cache-Control": {"description": "How long the answer may be kept.", "schema": {"type": "string"}},
}


@cache
def description() -> dict[str, Any]:
    """The whole description."""
    plugin = MarshmallowPlugin(schema_name_resolver=_name)
    spec = APISpec(
        title="Dividing",
        version=__version__,
        openapi_version="3.1.0",
        plugins=[plugin],
        info={"description": ABOUT, "x-limits": LIMITS},
    )
    converter: Any = plugin.converter
    converter.add_attribute_function(_own_field)
    spec.components.schema("ProblemOut", schema=ProblemOut)
    for kind in KINDS:
        spec.components.response(_key(kind), _refusal(kind))
    for theme in THEMES:
        for operation in theme.OPERATIONS:
            spec.path(operation.path, operations={operation.method: _operation(operation)})
    told = spec.to_dict()
    for (schema, *_), name in converter.refs.items():
        told["components"]["schemas"][name]["description"] = " ".join((schema.__doc__ or "").split())
    return told


def written() -> bytes:
    """The description as it is kept and served."""
    return json.dumps(description(), ensure_ascii=False, indent=1).encode() + b"\n"


def _name(schema: type[Schema] | Schema) -> str:
    return schema.__name__ if isinstance(schema, type) else type(schema).__name__


def _own_field(self: Any, field: fields.Field[Any], ret: dict[str, Any]) -> dict[str, Any]:
    """What a field of ours says of itself; a reference where it holds an object; null where it may be null."""
    told: dict[str, Any] = {}
    # What a field loads by default is a value of the domain; what a client may count on stands in its metadata.
    ret.pop("default", None)
    if isinstance(field, Described):
        if field.schema is not None:
            told = self.resolve_nested_schema(field.schema)
        elif field.choice:
            told = {"anyOf": [self.resolve_nested_schema(schema) for schema in field.choice]}
        else:
            told = dict(field.metadata)
            if field.allow_none and isinstance(told.get("type"), str):
                told["type"] = [told["type"], "null"]
        told = {**told, "description": field.metadata["description"]}
    return told


def _operation(operation: Operation) -> dict[str, Any]:
    told: dict[str, Any] = {
        "operationId": operation.name,
        "summary": operation.summary,
        "description": operation.about,
        "responses": _responses(operation),
    }
    if operation.asked is not None:
        content = {"schema": operation.asked, "examples": {"usual": {"value": operation.example}}}
        told["requestBody"] = {"required": True, "content": {JSON: content, **_forms(operation.asked_also)}}
    if operation.words:
        told["parameters"] = [_parameter(name, word) for name, word in operation.words.items()]
    return told


def _responses(operation: Operation) -> dict[str, Any]:
    content: dict[str, Any] = {}
    if operation.answered is not None:
        content["schema"] = operation.answered
    if operation.answer is not None:
        content["examples"] = {"usual": {"value": operation.answer(operation.example)}}
    headers = {**_EVERY_HEADER, **(_LASTING_HEADERS if operation.lasting else {})}
    right = {
        "description": operation.summary + ".",
        "headers": headers,
        "content": {operation.content: content, **_forms(operation.answered_also)},
    }
    told: dict[str, Any] = {"200": right}
    if operation.lasting:
        told["304"] = {"description": "You have this answer already.", "headers": headers}
    if operation.other_status is not None:
        told[str(operation.other_status)] = right
    for status in sorted({kind.status for kind in operation.problems}):
        kinds = [kind for kind in operation.problems if kind.status == status]
        told[str(status)] = _key(kinds[0]) if len(kinds) == 1 else _refusal(*kinds)
    return told


def _forms(others: tuple[OtherForm, ...]) -> dict[str, Any]:
    return {
        form.content: {
            "schema": {"type": "string", "description": form.about},
            "examples": {"usual": {"value": form.example()}},
        }
        for form in others
    }


def _parameter(name: str, word: QueryWord) -> dict[str, Any]:
    return {"name": name, "in": "query", "description": word.about, "schema": _word_schema(word)}


def _word_schema(word: QueryWord) -> dict[str, Any]:
    """Numbers are described as the body's field is; all else is text in the query form."""
    if word.read not in (number, whole_number):
        return {"type": "string"}
    if word.path == PAGE_SETUP:
        return {"type": "integer", "minimum": 1, "maximum": bounds.SETUPS_MOST}
    found: Any = SOLVE_IN if word.path[0] in SOLVE_IN.fields else ANGLE_IN
    for key in word.path:
        inner = getattr(found, "schema", found)
        found = (inner() if isinstance(inner, type) else inner).fields[key]
    return {key: value for key, value in found.metadata.items() if key != "description"}


def _refusal(*kinds: Kind) -> dict[str, Any]:
    about = " ".join(f"{kind.title}: {kind.meaning}" for kind in kinds)
    return {
        "description": about,
        "headers": _EVERY_HEADER,
        "content": {
            MEDIA_TYPE: {
                "schema": ProblemOut,
                "examples": {kind.name: {"value": _example(kind)} for kind in kinds},
            }
        },
    }


def _example(kind: Kind) -> dict[str, Any]:
    example = {"type": kind.type, "title": kind.title, "status": kind.status, "detail": kind.meaning}
    example |= {"instance": "/v1/solve", "request_id": "7f3a90c2b1d4e586"}
    if kind.name == "wrong-field":
        sentence = "A circle has 2 to 400 holes, not 1."
        example |= {"detail": sentence, "errors": [{"pointer": "#/head/plates/0/2", "detail": sentence}]}
    return example


def _key(kind: Kind) -> str:
    return "".join(word.capitalize() for word in kind.name.split("-"))


if __name__ == "__main__":
    description_file().write_bytes(written())
