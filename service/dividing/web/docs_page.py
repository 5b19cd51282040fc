"""The description as a page for people: operations, fields, limits and problems, readable without a network."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from html import escape
from typing import Any

from .operations import CSV, JSON
from .problems import KINDS

Json = Mapping[str, Any]
_REF = "#/components/schemas/"


def page(description: Json) -> str:
    """The whole page."""
    return "\n".join(_page(description))


def _page(description: Json) -> Iterator[str]:
    info = description["info"]
    schemas = description["components"]["schemas"]
    yield '<!DOCTYPE html>\n<html lang="en-GB"><head><meta charset="utf-8">'
    yield '<meta name="viewport" content="width=device-width, initial-scale=1">'
    yield f"<title>{escape(info['title'])}: for other programs</title>"
    yield '<link rel="stylesheet" href="/docs/style.css"><link rel="icon" href="/icon.svg" type="image/svg+xml">'
    yield "</head><body><main>"
    yield f"<h1>{escape(info['title'])} {escape(info['version'])}, for other programs</h1>"
    yield f"<p>{escape(info['description'])}</p>"
    yield '<p>The same for programs: <a href="/openapi.json">/openapi.json</a>. <a href="/">The page</a>.</p>'
    yield from _contents(description)
    for path, operations in description["paths"].items():
        for method, operation in operations.items():
            yield from _operation(method, path, operation)
    yield '<h2 id="fields">Fields</h2>'
    for name, schema in schemas.items():
        yield from _schema(name, schema)
    yield from _limits(info["x-limits"])
    yield from _problems()
    yield "</main></body></html>"


def _contents(description: Json) -> Iterator[str]:
    yield '<nav aria-label="Contents"><ul>'
    for path, operations in description["paths"].items():
        for method, operation in operations.items():
            yield f'<li><a href="#{operation["operationId"]}"><code>{method.upper()} {escape(path)}</code></a>'
            yield f"{escape(operation['summary'])}</li>"
    for name, title in (("fields", "Fields"), ("limits", "Limits"), ("problems", "Problems")):
        yield f'<li><a href="#{name}">{title}</a></li>'
    yield "</ul></nav>"


def _operation(method: str, path: str, operation: Json) -> Iterator[str]:
    name = operation["operationId"]
    yield f'<section aria-labelledby="{name}"><h2 id="{name}"><code>{method.upper()} {escape(path)}</code></h2>'
    yield f"<p>{escape(operation['description'])}</p>"
    if "requestBody" in operation:
        yield from _body("Request", operation["requestBody"]["content"])
    if "parameters" in operation:
        rows = ((word["name"], _kind(word["schema"]), word["description"]) for word in operation["parameters"])
        yield from _table("Words of the query", ("Word", "Value", "Meaning"), rows)
    yield from _body("Answer", operation["responses"]["200"]["content"])
    statuses = ", ".join(status for status in operation["responses"] if status != "200")
    yield f'<p>Other statuses: {statuses}; see <a href="#problems">problems</a>.</p></section>'


def _body(title: str, content: Json) -> Iterator[str]:
    for kind, told in content.items():
        form = f" as {_kind(told['schema'])}" if "schema" in told else ""
        yield f"<h3>{title}</h3><p><code>{escape(kind)}</code>{form}</p>"
        if "description" in told.get("schema", {}):
            yield f"<p>{escape(told['schema']['description'])}</p>"
        if kind in (JSON, CSV):
            for example in told.get("examples", {}).values():
                value = example["value"]
                text = value if kind == CSV else json.dumps(value, ensure_ascii=False, indent=1)
                yield f'<pre tabindex="0"><code>{escape(text)}</code></pre>'


def _schema(name: str, schema: Json) -> Iterator[str]:
    needed = set(schema.get("required", ()))
    rows = (
        (field, _kind(told) + (", always" if field in needed else ""), told.get("description", ""))
        for field, told in schema["properties"].items()
    )
    yield f'<section aria-labelledby="form-{name}"><h3 id="form-{name}">{name}</h3>'
    if "description" in schema:
        yield f"<p>{escape(schema['description'])}</p>"
    yield from _table("", ("Field", "Value", "Meaning"), rows)
    yield "</section>"


def _table(caption: str, heads: tuple[str, ...], rows: Iterator[tuple[str, str, str]]) -> Iterator[str]:
    """Rows of (name, kind as HTML, meaning)."""
    titled = f"<caption>{caption}</caption>" if caption else ""
    columns = "".join(f'<th scope="col">{head}</th>' for head in heads)
    yield f'<div class="wide" tabindex="0"><table>{titled}<thead><tr>{columns}</tr></thead><tbody>'
    for name, kind, meaning in rows:
        yield f'<tr><th scope="row"><code>{escape(name)}</code></th><td>{kind}</td><td>{escape(meaning)}</td></tr>'
    yield "</tbody></table></div>"


def _kind(schema: Json) -> str:
    """What a value is, as HTML, with its bounds."""
    if "$ref" in schema:
        name = schema["$ref"].removeprefix(_REF)
        return f'<a href="#form-{name}">{name}</a>'
    if "anyOf" in schema:
        return " or ".join(map(_kind, schema["anyOf"]))
    kinds = schema.get("type", "any value")
    kind = " or ".join(kinds) if isinstance(kinds, list) else str(kinds)
    if "items" in schema:
        kind += f" of {_kind(schema['items'])}"
    if "enum" in schema:
        words = ("null" if each is None else str(each) for each in schema["enum"])
        kind += ": " + ", ".join(f"<code>{escape(word)}</code>" for word in words)
    return kind + _bounds(schema)


def _bounds(schema: Json) -> str:
    words = {
        "minimum": "from", "exclusiveMinimum": "above", "maximum": "to", "maxLength": "characters to",
        "minItems": "items from", "maxItems": "items to", "default": "usually",
    }  # fmt: skip
    told = [f"{words[key]} {escape(json.dumps(value))}" for key, value in schema.items() if key in words]
    return f" ({', '.join(told)})" if told else ""


def _limits(limits: Json) -> Iterator[str]:
    yield '<h2 id="limits">Limits</h2><p>Past one is a problem that names it.</p><dl>'
    for name, most in limits.items():
        yield f"<dt>{escape(name.replace('_', ' '))}</dt><dd>{most:,}</dd>"
    yield "</dl>"


def _problems() -> Iterator[str]:
    yield '<h2 id="problems">Problems</h2><p>Every refusal is <code>application/problem+json</code>.</p>'
    for kind in KINDS:
        yield f'<h3 id="problem-{kind.name}">{escape(kind.title)} ({kind.status})</h3><p>{escape(kind.meaning)}</p>'
