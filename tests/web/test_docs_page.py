"""The description as a page for people: made of the description alone, and nothing in it runs."""

from __future__ import annotations

from typing import Any

from dividing.web.docs_page import page
from dividing.web.openapi import description


def told(operation: dict[str, Any], schemas: dict[str, Any] | None = None) -> str:
    """A page of one operation."""
    words = {"title": "Dividing", "version": "1 < 2", "description": "Says & <shows>."}
    about: dict[str, Any] = {
        "info": {**words, "x-limits": {"body_bytes": 65536}},
        "paths": {"/v1/try": {"post": operation}},
        "components": {"schemas": schemas or {}},
    }  # fmt: skip
    return page(about)


OPERATION: dict[str, Any] = {
    "operationId": "try",
    "summary": "Try it & see",
    "description": "What it <does>.",
    "responses": {"200": {"content": {}}, "422": {}, "500": {}},
}


def with_body(content: dict[str, Any]) -> dict[str, Any]:
    return {**OPERATION, "requestBody": {"content": content}}


def test_words_go_in_as_text() -> None:
    html = told(OPERATION)
    for text in ("1 &lt; 2", "Says &amp; &lt;shows&gt;.", "Try it &amp; see", "What it &lt;does&gt;."):
        assert text in html
    assert "<does>" not in html
    assert "<dt>body bytes</dt><dd>65,536</dd>" in html
    assert "Other statuses: 422, 500; see" in html


def test_an_example_of_json_is_set_out_and_one_of_a_sheet_stays_as_it_is() -> None:
    form = {"$ref": "#/components/schemas/TryIn"}
    json_form = {"application/json": {"schema": form, "examples": {"usual": {"value": {"a": [1]}}}}}
    assert '<p><code>application/json</code> as <a href="#form-TryIn">TryIn</a></p>' in told(with_body(json_form))
    assert '<pre tabindex="0"><code>{\n &quot;a&quot;: [\n  1\n ]\n}</code></pre>' in told(with_body(json_form))
    text = {"type": "string", "description": "A <sheet>."}
    sheet = {"text/csv": {"schema": text, "examples": {"usual": {"value": "ref,divisions\r\nOP30,28\r\n"}}}}
    html = told(with_body(sheet))
    assert "<p><code>text/csv</code> as string</p>" in html
    assert "<p>A &lt;sheet&gt;.</p>" in html
    assert "<code>ref,divisions\r\nOP30,28\r\n</code>" in html


def test_a_picture_is_named_and_not_shown() -> None:
    content = {"image/svg+xml": {"examples": {"usual": {"value": "<svg/>"}}}}
    html = told({**OPERATION, "responses": {"200": {"content": content}}})
    assert "<h3>Answer</h3><p><code>image/svg+xml</code></p>" in html
    assert "svg/" not in html


def test_words_of_the_query_are_a_table() -> None:
    word = {"name": "ratio", "description": "Crank turns.", "schema": {"type": "integer", "minimum": 1, "maximum": 10}}
    html = told({**OPERATION, "parameters": [word]})
    assert "<caption>Words of the query</caption>" in html
    assert (
        '<tr><th scope="row"><code>ratio</code></th><td>integer (from 1, to 10)</td><td>Crank turns.</td></tr>' in html
    )


def test_every_kind_of_value_is_told_with_its_bounds() -> None:
    fields = {
        "one": {"type": ["integer", "null"], "minimum": 1, "default": 2, "description": "One."},
        "few": {"type": "string", "enum": ["a", "<b>"], "maxLength": 3, "description": "Few."},
        "many": {"type": "array", "items": {"type": "number", "exclusiveMinimum": 0}, "minItems": 1, "maxItems": 9},
        "either": {"anyOf": [{"$ref": "#/components/schemas/AIn"}, {"type": "boolean"}]},
        "any": {},
    }
    html = told(OPERATION, {"TryIn": {"description": "A form.", "properties": fields, "required": ["few"]}})
    assert '<section aria-labelledby="form-TryIn"><h3 id="form-TryIn">TryIn</h3>' in html
    assert "<p>A form.</p>" in html
    assert "<td>integer or null (from 1, usually 2)</td><td>One.</td>" in html
    assert "<td>string: <code>a</code>, <code>&lt;b&gt;</code> (characters to 3), always</td>" in html
    assert "<td>array of number (above 0) (items from 1, items to 9)</td>" in html
    assert '<td><a href="#form-AIn">AIn</a> or boolean</td>' in html
    assert "<td>any value</td><td></td>" in html


def test_a_form_without_words_has_none() -> None:
    html = told(OPERATION, {"TryIn": {"properties": {}}})
    assert '<h3 id="form-TryIn">TryIn</h3>\n<div class="wide"' in html


def test_every_field_of_the_service_stands_on_its_page() -> None:
    html = page(description())
    for name, schema in description()["components"]["schemas"].items():
        assert f'id="form-{name}"' in html
        for field in schema["properties"]:
            assert f"<code>{field}</code>" in html
