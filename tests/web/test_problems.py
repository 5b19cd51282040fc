"""Every refusal is one kind of document, says what to change, and points to each wrong field at once."""

from __future__ import annotations

from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient
from marshmallow import ValidationError
from werkzeug.exceptions import HTTPException, RequestTimeout
from werkzeug.routing import RequestRedirect
from werkzeug.test import TestResponse

from dividing.indexing.faults import Fault, Refused
from dividing.web import problems
from dividing.web.app import create_app
from dividing.web.json_in import NotJson
from tests.web import malformed
from tests.web.malformed import JSON

BODIES = ("/v1/solve", "/v1/angle", "/v1/verify", "/v1/locate")


def check(response: TestResponse, status: int, name: str) -> dict[str, Any]:
    """Hold a refusal to its form; give the document."""
    assert response.status_code == status
    assert response.content_type == "application/problem+json"
    told: dict[str, Any] = response.json
    assert told["type"] == f"/docs#problem-{name}"
    assert told["status"] == status
    assert told["detail"].endswith(".")
    assert told["request_id"] == response.headers["X-Request-ID"]
    assert list(told)[:6] == ["type", "title", "status", "detail", "instance", "request_id"]
    return told


@pytest.mark.parametrize("path", BODIES)
@pytest.mark.parametrize(
    "body",
    [*malformed.NOT_JSON, *malformed.NOT_A_NUMBER, *malformed.KEY_TWICE, *malformed.TOO_DEEP, *malformed.NOT_UTF_8],
)
def test_a_body_that_is_no_json_is_400(client: FlaskClient, path: str, body: bytes) -> None:
    told = check(client.post(path, data=body, headers=JSON), 400, "not-json")
    assert told["title"] == "Not JSON"
    assert told["instance"] == path
    assert "errors" not in told


@pytest.mark.parametrize("path", BODIES)
@pytest.mark.parametrize("headers", malformed.WRONG_CONTENT)
def test_a_body_that_is_not_announced_as_json_is_415(client: FlaskClient, path: str, headers: dict[str, str]) -> None:
    told = check(client.post(path, data=b'{"work": {"divisions": 28}}', headers=headers), 415, "wrong-content-type")
    assert told["detail"].startswith("Send the body ")


@pytest.mark.parametrize(
    "content", ["application/json; charset=UTF-8", "application/vnd.shop+json", "Application/JSON"]
)
def test_json_by_its_other_names_is_taken(client: FlaskClient, content: str) -> None:
    assert client.post("/v1/solve", data=b'{"work": {"divisions": 28}}', content_type=content).status_code == 200


@pytest.mark.parametrize("path", BODIES)
@pytest.mark.parametrize("body", malformed.TOO_LARGE)
def test_a_body_that_is_too_large_is_413(client: FlaskClient, path: str, body: bytes) -> None:
    told = check(client.post(path, data=body, headers=JSON), 413, "too-large")
    assert told["detail"] == "The body is larger than 64 KiB (1 MiB for a batch). Split the question."


def test_a_body_of_just_the_limit_is_read(client: FlaskClient) -> None:
    body = b'{"work": {"divisions": 28}}'.ljust(64 * 1024)
    assert client.post("/v1/solve", data=body, headers=JSON).status_code == 200


@pytest.mark.parametrize(("path", "value", "pointer", "sentence"), [*malformed.WRONG_TYPES, *malformed.PAST_LIMITS])
def test_a_wrong_field_is_pointed_to(
    client: FlaskClient, path: tuple[str, ...], value: Any, pointer: str, sentence: str
) -> None:
    told = check(client.post("/v1/solve", json=malformed.put(path, value)), 422, "wrong-field")
    assert {"pointer": pointer, "detail": sentence} in told["errors"]
    assert len(told["errors"]) == 1
    assert told["detail"] == sentence


@pytest.mark.parametrize(("question", "pointer", "name"), malformed.UNKNOWN)
def test_an_unknown_field_is_refused_by_name(client: FlaskClient, question: Any, pointer: str, name: str) -> None:
    told = check(client.post("/v1/solve", json=question), 422, "wrong-field")
    assert [error["pointer"] for error in told["errors"]] == [pointer]
    assert told["errors"][0]["detail"].startswith(f'There is no field "{name}" here; the fields are ')


@pytest.mark.parametrize("body", [b"[]", b"5", b"null", b'"work"', b"true"])
@pytest.mark.parametrize("path", BODIES)
def test_json_that_is_no_object_is_422(client: FlaskClient, path: str, body: bytes) -> None:
    told = check(client.post(path, data=body, headers=JSON), 422, "wrong-field")
    assert told["errors"] == [{"pointer": "#", "detail": 'Give an object here: fields between "{" and "}".'}]


def test_all_wrong_fields_are_told_at_once(client: FlaskClient) -> None:
    question = {
        "work": {"divisions": 0, "size": 3},
        "head": {"ratio": "40", "plates": [[15, 15], [1]], "change_gears": [24, 9], "dial": {"graduation": "x"}},
        "tolerance": {"at_rim": -1},
        "methods": ["plain", "plane"],
        "limit": 500,
        "positions": "yes",
        "every": 0.5,
        "colour": "red",
    }
    told = check(client.post("/v1/solve", json=question), 422, "wrong-field")
    assert sorted(error["pointer"] for error in told["errors"]) == [
        "#/colour",
        "#/every",
        "#/head/change_gears/1",
        "#/head/dial/graduation",
        "#/head/plates/0/1",
        "#/head/plates/1/0",
        "#/head/ratio",
        "#/limit",
        "#/methods/1",
        "#/positions",
        "#/tolerance/at_rim",
        "#/work/divisions",
        "#/work/size",
    ]
    assert told["detail"] == "13 fields have to be changed."


def test_a_plate_is_not_blamed_for_another_field_that_is_wrong(client: FlaskClient) -> None:
    head = {"plates": [["x"]], "mounted_plate": 9, "stop_circles": [500]}
    told = client.post("/v1/solve", json={"work": {"divisions": 28}, "head": head}).json
    assert [error["pointer"] for error in told["errors"]] == ["#/head/plates/0/0"]


def test_a_thousand_wrong_fields_are_told_in_a_hundred(client: FlaskClient) -> None:
    told = client.post("/v1/solve", json={"work": {"angles": ["x"] * 1000}}).json
    assert told["detail"] == "1000 fields have to be changed. The first 100 are listed."
    assert len(told["errors"]) == 100


@pytest.mark.parametrize(
    ("method", "path", "allowed"),
    [
        ("GET", "/v1/verify", "OPTIONS, POST"),
        ("DELETE", "/v1/solve", "GET, HEAD, OPTIONS, POST"),
        ("PUT", "/v1/angle", "GET, HEAD, OPTIONS, POST"),
        ("POST", "/v1/heads", "GET, HEAD, OPTIONS"),
        ("POST", "/health", "GET, HEAD, OPTIONS"),
        ("POST", "/", "GET, HEAD, OPTIONS"),
        ("POST", "/style.css", "GET, HEAD, OPTIONS"),
        ("PATCH", "/js/app.js", "GET, HEAD, OPTIONS"),
        ("POST", "/docs", "GET, HEAD, OPTIONS"),
        ("BREW", "/openapi.json", "GET, HEAD, OPTIONS"),
    ],
)
def test_another_method_is_405_with_those_that_serve(client: FlaskClient, method: str, path: str, allowed: str) -> None:
    response = client.open(path, method=method)
    check(response, 405, "wrong-method")
    assert response.headers["Allow"] == allowed


@pytest.mark.parametrize(
    "path",
    ["/v1", "/v1/", "/v1/solved", "/v1/solve/", "//v1/solve", "/V1/solve", "/js/none.js", "/js/", "/static/app.js",
     "/js/..%2f..%2fREADME.md", "/.git/config", "/index.php", "/é", "/%00", "/%ff"],
)  # fmt: skip
def test_what_is_not_there_is_404(client: FlaskClient, path: str) -> None:
    check(client.get(path), 404, "not-found")


def test_a_body_that_does_not_come_is_408() -> None:
    app = create_app(sink=len)
    app.add_url_rule("/late", "late", lambda: (_ for _ in ()).throw(RequestTimeout()))
    told = check(app.test_client().get("/late"), 408, "timed-out")
    assert told["detail"] == "The body did not arrive in time. Send the request again."


def test_a_fault_of_ours_tells_nothing_of_itself(caplog: pytest.LogCaptureFixture) -> None:
    app = create_app(sink=len)
    app.add_url_rule("/broken", "broken", lambda: 1 / 0)
    response = app.test_client().get("/broken", headers={"X-Request-ID": "cut-7"})
    told = check(response, 500, "our-fault")
    assert told["detail"] == "The service failed on this request. It is not your doing; pass the request id on."
    assert b"ZeroDivision" not in response.data
    assert "request cut-7 failed" in caplog.text


@pytest.mark.parametrize("name", ["client", "bare"])
def test_a_refusal_of_another_status_keeps_it(app: Flask, name: str) -> None:
    class Teapot(HTTPException):
        code = 418
        description = name

    with app.test_request_context():
        problem = problems.from_http(Teapot())
    assert (problem.kind.status, problem.kind.name, problem.detail) == (418, "bad-request", name)


@pytest.mark.parametrize(
    ("path", "pointer"),
    [
        ((), "#"),
        (("work", "angles", 3), "#/work/angles/3"),
        (("a/b", "c~d"), "#/a~1b/c~0d"),
        (("°",), "#/%C2%B0"),
        (("x" * 500,), "#/" + "x" * 100),
    ],
)
def test_a_path_becomes_a_pointer(path: tuple[str | int, ...], pointer: str) -> None:
    assert problems.pointer(path) == pointer


def test_faults_of_the_domain_and_of_fields_become_one_list() -> None:
    faults = (Fault(("a",), "One."), Fault(("b", 0), "Two."), Fault((), "Whole."), Fault(("b", 0), "Three."))
    problem = problems.from_validation(ValidationError(problems.tree(faults)))
    assert problem.errors == [
        {"pointer": "#/a", "detail": "One."},
        {"pointer": "#/b/0", "detail": "Two."},
        {"pointer": "#/b/0", "detail": "Three."},
        {"pointer": "#", "detail": "Whole."},
    ]
    assert problems.from_refused(Refused(faults)).detail == "4 fields have to be changed."


def test_a_fault_below_another_keeps_both() -> None:
    told = problems.tree((Fault(("a",), "Above."), Fault(("a", 0), "Below."), Fault(("a",), "Again.")))
    found = problems.from_validation(ValidationError(told)).errors
    assert found is not None
    assert {(error["pointer"], error["detail"]) for error in found} == {
        ("#/a", "Above."),
        ("#/a/0", "Below."),
        ("#/a", "Again."),
    }


def test_each_kind_is_explained_where_its_type_points(client: FlaskClient) -> None:
    page = client.get("/docs").text
    for kind in problems.KINDS:
        assert f'id="problem-{kind.name}"' in page


def test_every_refusal_can_be_told_for_one_item_of_many() -> None:
    kinds = {
        problems.of(error).kind.name
        for error in (
            ValidationError({"a": ["x"]}),
            Refused([Fault(("a",), "x")]),
            NotJson("x"),
            RequestTimeout(),
            problems.Problem(problems.TOO_MUCH_WORK, "x"),
            ZeroDivisionError(),
        )
    }
    assert kinds == {"wrong-field", "not-json", "timed-out", "too-much-work", "our-fault"}


def test_a_way_to_another_address_is_no_refusal() -> None:
    app = Flask(__name__)
    problems.install(app)

    class Elsewhere(HTTPException):
        code = 303
        description = "It stands at another address."

    @app.get("/moved")
    def moved() -> None:
        raise Elsewhere

    @app.get("/moved/for/good")
    def moved_for_good() -> None:
        raise RequestRedirect("/v1/heads")

    responses = [app.test_client().get(path) for path in ("/moved", "/moved/for/good")]
    assert [response.status_code for response in responses] == [303, 308]
    assert all(response.content_type != "application/problem+json" for response in responses)
