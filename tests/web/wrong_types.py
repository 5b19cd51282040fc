"""Every field of every operation that takes a body, with a value of each JSON type that is not described for it.

The fields are found by walking the description, so that a new operation or field is attacked as soon as it is told.
"""

from __future__ import annotations

from collections.abc import Iterator
from copy import deepcopy
from itertools import pairwise
from typing import Any, NamedTuple

from dividing.web.openapi import description

SPEC = description()
SCHEMAS: dict[str, Any] = SPEC["components"]["schemas"]
BATCH = "/v1/solve/batch"
OF_TYPE: dict[str, list[Any]] = {
    "null": [None],
    "boolean": [True, False],
    "number": [7.5],
    "integer": [7],
    "string": ["x", "7", ""],
    "array": [[], [7], [[]]],
    "object": [{}, {"x": 7}],
}
"""Values of each type; 7.5 is wrong where a whole number is wanted, 7 is right where any number is."""
Path = tuple[str | int, ...]


class Wrong(NamedTuple):
    """A value of the wrong type at its place in an operation's body; `beside` is what its object needs to be known."""

    path: str
    place: Path
    beside: dict[str, Any]
    value: Any

    @property
    def pointer(self) -> str:
        """The place as the refusal names it; in a batch it starts at the item."""
        return "#" + "".join(f"/{key}" for key in self.place[2 if self.in_item else 0 :])

    @property
    def in_item(self) -> bool:
        """Whether one item of a batch is wrong and not the batch."""
        return self.path == BATCH and len(self.place) > 1

    def body(self) -> Any:
        """The operation's example with the value put in its place."""
        root = {"body": deepcopy(example(self.path))}
        here: Any = root
        place: Path = ("body", *self.place)
        for key, following in pairwise(place):
            here = _step(here, key, [] if following == 0 else {})
        if self.beside:
            here.update(self.beside)
        _put(here, place[-1], self.value)
        return root["body"]


def operations() -> list[str]:
    """The addresses that take a body."""
    return [path for path, told in SPEC["paths"].items() if "post" in told]


def example(path: str) -> Any:
    """The question that the description gives as an example."""
    return _content(path)["examples"]["usual"]["value"]


def wrong_values(path: str) -> list[Wrong]:
    """Each field of the operation with each value that it may not have."""
    return [
        Wrong(path, place, beside, value)
        for place, beside, schema in fields_of(path)
        for kind, values in OF_TYPE.items()
        if kind not in types(schema)
        for value in values
    ]


def fields_of(path: str) -> list[tuple[Path, dict[str, Any], dict[str, Any]]]:
    """Every place of the operation's body."""
    return list(fields(_content(path)["schema"]))


def fields(
    schema: dict[str, Any], place: Path = (), beside: dict[str, Any] | None = None
) -> Iterator[tuple[Path, dict[str, Any], dict[str, Any]]]:
    """Every place of a body with its schema: the body itself, its fields, and the items of its lists."""
    yield place, beside or {}, schema
    for told in _choices(schema):
        properties = told.get("properties", {})
        kinds = properties.get("kind", {}).get("enum", ())
        for name, below in properties.items():
            yield from fields(below, (*place, name), {"kind": kinds[0]} if kinds else {})
        if "items" in told:
            yield from fields(told["items"], (*place, 0))


def _step(here: Any, key: Any, empty: Any) -> Any:
    """What lies one key further in, made where there is nothing of that sort."""
    if isinstance(here, list):
        if not here:
            here.append(empty)
    elif not isinstance(here.get(key), type(empty)):
        here[key] = empty
    return here[key]


def _put(here: Any, key: Any, value: Any) -> None:
    if isinstance(here, list):
        here[:1] = [value]
    else:
        here[key] = value


def _content(path: str) -> Any:
    return SPEC["paths"][path]["post"]["requestBody"]["content"]["application/json"]


def _choices(schema: dict[str, Any]) -> list[dict[str, Any]]:
    if "$ref" in schema:
        return _choices(SCHEMAS[schema["$ref"].rpartition("/")[2]])
    return [told for each in schema["anyOf"] for told in _choices(each)] if "anyOf" in schema else [schema]


def types(schema: dict[str, Any]) -> set[str]:
    """The JSON types that a place may have."""
    found: set[str] = set()
    for told in _choices(schema):
        kinds = told.get("type", "object")
        found |= {kinds} if isinstance(kinds, str) else set(kinds)
    return found | ({"integer"} if "number" in found else set())
