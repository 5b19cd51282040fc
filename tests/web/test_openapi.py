"""The description tells everything that is served, and nothing is served that it does not tell."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from copy import deepcopy
from pathlib import Path
from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient
from jsonschema import Draft202012Validator
from openapi_spec_validator import validate

from dividing.indexing import bounds
from dividing.indexing.head import TWELVE_GEARS
from dividing.web.files import description_file
from dividing.web.openapi import description, written
from dividing.web.problems import KINDS, MEDIA_TYPE
from tests.web import malformed

SPEC = description()
SCHEMAS: dict[str, Any] = SPEC["components"]["schemas"]
# Pages and their files, told of by no description.
FOR_BROWSERS = ("/docs", "/openapi.json", "/docs/style.css")


def operations() -> Iterator[tuple[str, str, dict[str, Any]]]:
    for path, told in SPEC["paths"].items():
        for method, operation in told.items():
            yield path, method, operation


def test_the_description_is_valid() -> None:
    validate(SPEC)
    assert SPEC["openapi"] == "3.1.0"


def test_the_file_is_what_is_served(client: FlaskClient) -> None:
    # Written anew by: python -m dividing.web.openapi
    assert description_file().read_bytes() == written()
    assert client.get("/openapi.json").data == written()


def test_every_route_is_described(app: Flask) -> None:
    served = {
        (rule.rule, method.lower())
        for rule in app.url_map.iter_rules()
        if rule.endpoint.partition(".")[0] != "pages" and rule.rule not in FOR_BROWSERS
        for method in (rule.methods or set()) - {"HEAD", "OPTIONS"}
    }
    assert served == {(path, method) for path, method, _ in operations()}


@pytest.mark.parametrize(("path", "method", "operation"), [*operations()])
def test_every_operation_has_words_an_example_and_its_refusals(path: str, method: str, operation: Any) -> None:
    assert operation["operationId"]
    assert operation["summary"]
    assert operation["description"].endswith(".")
    right = operation["responses"]["200"]
    assert set(right["headers"]) >= {"X-Request-ID"}
    if path != "/qr.svg":
        assert right["content"]["application/json"]["examples"]["usual"]["value"]
    assert "500" in operation["responses"]
    if method == "post":
        assert set(operation["responses"]) >= {"400", "408", "413", "415", "422"}
        assert operation["requestBody"]["content"]["application/json"]["examples"]["usual"]["value"]


@pytest.mark.parametrize(("name", "schema"), SCHEMAS.items())
def test_every_field_is_described(name: str, schema: dict[str, Any]) -> None:
    assert schema["description"].endswith("."), name
    for field, told in schema["properties"].items():
        assert told["description"].endswith((".", '"', "'")), f"{name}.{field}"
        assert {"type", "$ref", "anyOf"} & set(told), f"{name}.{field}"


def test_every_kind_of_problem_has_an_example() -> None:
    for kind in KINDS:
        told = SPEC["components"]["responses"]["".join(word.capitalize() for word in kind.name.split("-"))]
        example = told["content"][MEDIA_TYPE]["examples"][kind.name]["value"]
        assert (example["type"], example["status"]) == (kind.type, kind.status)
        assert not problems_of("ProblemOut", example)


def test_the_limits_are_those_of_the_trade() -> None:
    told = SPEC["info"]["x-limits"]
    assert told["divisions"] == bounds.DIVISIONS_MOST == SCHEMAS["WorkIn"]["properties"]["divisions"]["maximum"]
    assert told["body_bytes"] == 65536
    assert told["position_rows"] == 20000
    assert told["ratio"] == SCHEMAS["HeadIn"]["properties"]["ratio"]["maximum"] == 10000


def closed(schema: Any) -> Any:
    """The schema with every object closed, so that a field which is not described fails."""
    if isinstance(schema, dict):
        told = {key: closed(value) for key, value in schema.items()}
        if "properties" in told:
            told["additionalProperties"] = False
        return told
    return [closed(each) for each in schema] if isinstance(schema, list) else schema


CLOSED = {"components": {"schemas": closed(deepcopy(SCHEMAS))}}


def problems_of(name: str, value: Any) -> list[str]:
    """What a value has that its schema does not tell, or lacks that it tells."""
    schema = {"$ref": f"#/components/schemas/{name}", **CLOSED}
    return [f"{error.json_path}: {error.message}" for error in Draft202012Validator(schema).iter_errors(value)]


def schema_of(content: dict[str, Any]) -> str:
    reference: str = content["schema"]["$ref"]
    return reference.removeprefix("#/components/schemas/")


@pytest.mark.parametrize(("path", "method", "operation"), [*operations()])
def test_an_example_is_as_its_schema_tells(path: str, method: str, operation: Any) -> None:
    if path == "/qr.svg":
        assert list(operation["responses"]["200"]["content"]) == ["image/svg+xml"]
        return
    content = operation["responses"]["200"]["content"]["application/json"]
    assert not problems_of(schema_of(content), content["examples"]["usual"]["value"])
    if method == "post":
        content = operation["requestBody"]["content"]["application/json"]
        assert not problems_of(schema_of(content), content["examples"]["usual"]["value"])


@pytest.mark.parametrize(
    ("path", "operation"), [(path, told) for path, method, told in operations() if method == "post"]
)
def test_an_example_is_what_the_service_answers(client: FlaskClient, path: str, operation: Any) -> None:
    asked = operation["requestBody"]["content"]["application/json"]["examples"]["usual"]["value"]
    told = operation["responses"]["200"]["content"]["application/json"]["examples"]["usual"]["value"]
    assert client.post(path, json=asked).json == told


def test_sheets_are_described_beside_json() -> None:
    batch, plate = SPEC["paths"]["/v1/solve/batch"]["post"], SPEC["paths"]["/v1/plate"]["post"]
    forms = ["application/json", "text/csv"]
    assert list(batch["requestBody"]["content"]) == forms
    assert list(plate["requestBody"]["content"]) == forms[:1]
    for operation in (batch, plate):
        assert list(operation["responses"]["200"]["content"]) == forms
        sheet = operation["responses"]["200"]["content"]["text/csv"]
        assert sheet["schema"]["type"] == "string"
        assert sheet["schema"]["description"].endswith(".")


def test_an_example_of_a_sheet_is_what_the_service_answers(client: FlaskClient) -> None:
    batch, plate = SPEC["paths"]["/v1/solve/batch"]["post"], SPEC["paths"]["/v1/plate"]["post"]

    def usual(content: Any, form: str) -> Any:
        return content["content"][form]["examples"]["usual"]["value"]

    asked = usual(batch["requestBody"], "text/csv")
    answered = client.post("/v1/solve/batch", data=asked, content_type="text/csv")
    assert answered.text == usual(batch["responses"]["200"], "text/csv")
    question = usual(plate["requestBody"], "application/json")
    answered = client.post("/v1/plate", json=question, headers={"Accept": "text/csv"})
    assert answered.data.decode("utf-8-sig") == usual(plate["responses"]["200"], "text/csv")


TABLE = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"graduation": "0°01'", "vernier": "0°00'10\""}}
IN_DIVISIONS = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"divisions": 100}}
GEARED = {"change_gears": list(TWELVE_GEARS)}
HEADS: list[dict[str, Any]] = [{}, GEARED, TABLE, IN_DIVISIONS, {"ratio": 1, "plates": [], "direct_circles": [36]}]
WORKS: list[dict[str, Any]] = [
    {"divisions": 1},
    {"divisions": 28},
    {"divisions": 73},
    {"divisions": 127},
    {"divisions": 383},
    {"divisions": 20011},
    {"angle": "37°30'", "count": 3},
    {"angle": "0.35 rad"},
    {"angle": 0.001, "count": 5},
    {"angles": ["0", "22.5", "61°15'"]},
    {"angles": ["0.1 rad", "200"]},
    {"angles": [0]},
]
EXTRAS: list[dict[str, Any]] = [
    {},
    {"positions": True, "limit": 1},
    {"tolerance": {"at_rim": 0.02, "diameter": 120}},
    {"tolerance": {"angle": "1'"}},
]


@pytest.mark.parametrize("head", HEADS)
@pytest.mark.parametrize("work", WORKS)
def test_answers_to_many_questions_are_as_described(client: FlaskClient, work: Any, head: Any) -> None:
    for extra in EXTRAS:
        response = client.post("/v1/solve", json={"work": work, "head": head, **extra})
        assert response.status_code in (200, 422), response.text
        assert not problems_of("SolveOut" if response.status_code == 200 else "ProblemOut", response.json)


CLAIMS: list[dict[str, Any]] = [
    {"method": "plain", "turns": 1, "holes": 20, "circle": 49},
    {"method": "plain", "holes": 21, "circle": 49},
    {"method": "plain", "turns": 1, "holes": 12, "circle": 22},
    {"method": "direct", "holes": 3, "circle": 24},
    {"method": "compound", "turns": 0, "holes": 10, "circle": 15, "second": {"holes": -2, "circle": 17}},
    {"method": "differential", "holes": 10, "circle": 18, "gearing": {"spindle": 40, "worm": 72, "idlers": 1}},
    {
        "method": "differential",
        "holes": 10,
        "circle": 18,
        "gearing": {"spindle": 40, "worm": 72, "stud": [24, 24], "idlers": 1, "plate": "with"},
    },
    {"method": "dial", "turns": 12, "reading": "3°25'40\""},
    {"method": "nearest", "circle": 49},
]


@pytest.mark.parametrize("claim", CLAIMS)
@pytest.mark.parametrize("head", [{}, GEARED, TABLE, IN_DIVISIONS])
def test_verdicts_are_as_described(client: FlaskClient, claim: Any, head: Any) -> None:
    for work in WORKS[:9]:
        response = client.post("/v1/verify", json={"work": work, "head": head, "claim": claim})
        assert response.status_code in (200, 422), response.text
        assert not problems_of("VerifyOut" if response.status_code == 200 else "ProblemOut", response.json)
        for slip in response.json.get("likely_slips", ()):
            again = client.post("/v1/verify", json={"work": work, "head": head, "claim": slip["corrected"]})
            assert again.json["verdict"] == "exact", slip


@pytest.mark.parametrize("head", HEADS)
@pytest.mark.parametrize(
    "question",
    [
        {"angle": "37°30'"},
        {"angle": "0.35 rad"},
        {"crank": {"turns": 4, "holes": 3, "circle": 18}},
        {"angle": -5, "diameter": 100, "sine_bar": 5},
        {"angle": 90},
        {"crank": {"turns": 2}},
    ],
)
def test_conversions_are_as_described(client: FlaskClient, question: Any, head: Any) -> None:
    response = client.post("/v1/angle", json={**question, "head": head})
    assert response.status_code == 200, response.text
    assert not problems_of("AngleAnswerOut", response.json)


@pytest.mark.parametrize(
    "work", [{"divisions": 28}, {"divisions": 73}, {"angles": ["0", "10", "20"]}, {"divisions": 8}]
)
def test_found_counts_are_as_described(client: FlaskClient, work: Any) -> None:
    for head in (GEARED, TABLE):
        response = client.post("/v1/locate", json={"work": work, "head": head, "seen": {"spindle": "9°", "give": "5°"}})
        assert response.status_code == 200, response.text
        assert not problems_of("LocateOut", response.json)


@pytest.mark.parametrize("path", ["/v1/heads", "/health", "/ready"])
def test_what_takes_no_question_is_as_described(client: FlaskClient, path: str) -> None:
    content = SPEC["paths"][path]["get"]["responses"]["200"]["content"]["application/json"]
    assert not problems_of(schema_of(content), client.get(path).json)


def test_problems_are_as_described(client: FlaskClient) -> None:
    for path, value, _, _ in malformed.WRONG_TYPES:
        told = client.post("/v1/solve", json=malformed.put(path, value)).json
        assert not problems_of("ProblemOut", told)
    assert not problems_of("ProblemOut", client.get("/v1/solve?x=1").json)
    assert not problems_of("ProblemOut", client.get("/nothing").json)


def test_a_field_that_is_not_described_would_be_noticed(client: FlaskClient) -> None:
    told = client.get("/health").json
    assert problems_of("StateOut", {**told, "colour": "red"}) == [
        "$: Additional properties are not allowed ('colour' was unexpected)"
    ]


def test_the_docs_tell_every_operation_field_and_limit(client: FlaskClient) -> None:
    page = client.get("/docs").text
    for path, method, operation in operations():
        assert f"{method.upper()} {path}" in page
        assert f'id="{operation["operationId"]}"' in page
    for name, schema in SCHEMAS.items():
        assert f'id="form-{name}"' in page
        for field in schema["properties"]:
            assert f"<code>{field}</code>" in page
    for most in SPEC["info"]["x-limits"].values():
        assert f"<dd>{most:,}</dd>" in page


def test_the_docs_load_nothing_and_hold_no_script_or_style(client: FlaskClient) -> None:
    page = client.get("/docs").text
    assert not re.search(r"<script|<style|\sstyle=|\son\w+=|https?://", page.replace("http://127", ""))
    ids = re.findall(r'\sid="([^"]+)"', page)
    assert len(ids) == len(set(ids))
    assert set(re.findall(r'href="#([^"]+)"', page)) <= set(ids)
    for address in re.findall(r'(?:href|src)="(/[^"]*)"', page):
        assert client.get(address).status_code == 200, address


def test_descriptions_are_the_same_every_time() -> None:
    assert json.loads(written()) == json.loads(json.dumps(SPEC))


def test_the_description_is_written_by_its_command(tmp_path: Path) -> None:
    """The command writes what is served; run on a copy, so that a test changes nothing of the project's."""
    root = description_file().parents[1]
    for name in ("service", "frontend", "openapi"):
        shutil.copytree(root / name, tmp_path / name, ignore=shutil.ignore_patterns("__pycache__"))
    file = tmp_path / "openapi" / "openapi.json"
    file.write_text("{}")

    subprocess.run(
        [sys.executable, "-m", "dividing.web.openapi"],
        cwd=tmp_path,
        env={"PYTHONPATH": str(tmp_path / "service")},
        check=True,
    )
    assert file.read_bytes() == (root / "openapi" / "openapi.json").read_bytes()
