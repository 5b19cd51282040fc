"""What every answer carries, whoever gives it: view, file or refusal."""

from __future__ import annotations

import pytest
from flask.testing import FlaskClient
from werkzeug.datastructures import Headers

from dividing.web.app import ORIGINS, create_app
from dividing.web.headers import REQUEST_ID

CALLS = [
    ("POST", "/v1/solve", 415), ("GET", "/v1/solve?divisions=28", 200), ("GET", "/v1/angle?angle=1", 200),
    ("GET", "/v1/heads", 200), ("GET", "/health", 200), ("GET", "/ready", 200), ("GET", "/openapi.json", 200),
    ("GET", "/docs", 200), ("GET", "/docs/style.css", 200), ("GET", "/qr.svg?divisions=28", 200), ("GET", "/", 200),
    ("GET", "/style.css", 200), ("GET", "/js/app.js", 200), ("GET", "/nothing", 404), ("DELETE", "/v1/solve", 405),
    ("OPTIONS", "/v1/solve", 200), ("HEAD", "/", 200), ("POST", "/v1/verify", 415),
]  # fmt: skip


METHODS = ("GET", "HEAD", "POST", "OPTIONS", "PUT", "PATCH", "DELETE", "TRACE", "BREW")


def every_route() -> list[tuple[str, frozenset[str]]]:
    """An address for each rule of the application, with the methods that it takes: a new one cannot be forgotten."""
    rules = create_app({}, sink=len).url_map.iter_rules()
    return sorted((rule.rule.replace("<path:name>", "nothing.txt"), frozenset(rule.methods or ())) for rule in rules)


def addresses_with_methods() -> dict[str, frozenset[str]]:
    """Two rules may share an address."""
    found: dict[str, frozenset[str]] = {}
    for path, methods in every_route():
        found[path] = found.get(path, frozenset()) | methods
    return found


ADDRESSES = addresses_with_methods()


def assert_shut(headers: Headers) -> None:
    """What a browser is told so that an answer of ours cannot be turned against whoever reads it."""
    policy = dict(part.split(" ", 1) for part in headers["Content-Security-Policy"].split("; "))
    assert policy == {
        "default-src": "'self'", "base-uri": "'none'", "object-src": "'none'", "frame-ancestors": "'none'",
        "form-action": "'self'",
    }  # fmt: skip
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "no-referrer"
    assert "camera=()" in headers["Permissions-Policy"]
    assert headers["Cross-Origin-Opener-Policy"] == "same-origin"
    assert headers["Cross-Origin-Resource-Policy"] == "same-origin"
    assert "Set-Cookie" not in headers
    assert not [name for name in headers.keys() if name.startswith("Access-Control")]  # noqa: SIM118
    assert REQUEST_ID.fullmatch(headers["X-Request-ID"])


@pytest.mark.parametrize(("method", "path", "status"), CALLS)
def test_every_answer_is_shut_against_misuse(client: FlaskClient, method: str, path: str, status: int) -> None:
    response = client.open(path, method=method)

    assert response.status_code == status
    assert_shut(response.headers)


def test_every_route_is_known_here() -> None:
    assert {"/", "/health", "/v1/solve", "/v1/solve/batch", "/openapi.json", "/js/nothing.txt"} <= set(ADDRESSES)
    assert not [path for path in ADDRESSES if "<" in path]


@pytest.mark.parametrize("path", ADDRESSES)
@pytest.mark.parametrize("method", METHODS)
def test_every_route_is_shut_against_misuse_by_whatever_method(client: FlaskClient, method: str, path: str) -> None:
    response = client.open(path, method=method)

    assert_shut(response.headers)
    assert response.status_code != 500
    assert (response.status_code == 405) == (method not in ADDRESSES[path])
    if response.status_code == 405:
        assert {word.strip() for word in response.headers["Allow"].split(",")} == ADDRESSES[path]
    if response.status_code >= 400 and method != "HEAD":
        assert response.content_type == "application/problem+json"


@pytest.mark.parametrize(
    ("path", "body", "status"),
    [
        ("/v1/solve", b"{", 400), ("/v1/solve", b'{"work": {}}', 422), ("/v1/solve", b" " * 70_000, 413),
        ("/v1/solve/batch", b"{", 400), ("/v1/verify", b"[]", 422),
    ],
)  # fmt: skip
def test_every_refusal_of_a_body_is_shut_against_misuse(
    client: FlaskClient, path: str, body: bytes, status: int
) -> None:
    response = client.post(path, data=body, content_type="application/json")

    assert response.status_code == status
    assert_shut(response.headers)


def test_a_fault_of_ours_is_shut_against_misuse() -> None:
    app = create_app({}, sink=len)
    app.view_functions["state.health"] = lambda: 1 / 0
    response = app.test_client().get("/health")

    assert response.status_code == 500
    assert_shut(response.headers)


@pytest.mark.parametrize("given", ["7", "a" * 64, "OP30.cut_7-b", "0-._Z"])
def test_a_request_id_that_fits_is_echoed(client: FlaskClient, given: str) -> None:
    for path in ("/health", "/nothing"):
        assert client.get(path, headers={"X-Request-ID": given}).headers["X-Request-ID"] == given


@pytest.mark.parametrize("given", ["", "a" * 65, "a b", "é", "<x>", "a/b", "७", '"', "a;b", "a,b"])
def test_a_request_id_that_does_not_fit_is_replaced(client: FlaskClient, given: str) -> None:
    made = client.get("/health", headers={"X-Request-ID": given}).headers["X-Request-ID"]
    assert made != given
    assert REQUEST_ID.fullmatch(made)


def test_request_ids_are_made_anew(client: FlaskClient) -> None:
    assert len({client.get("/health").headers["X-Request-ID"] for _ in range(50)}) == 50


def test_only_origins_that_are_configured_may_ask() -> None:
    client = create_app({ORIGINS: "http://office.example http://shop.example:8080"}, sink=len).test_client()
    friend = client.get("/health", headers={"Origin": "http://shop.example:8080"}).headers
    assert friend["Access-Control-Allow-Origin"] == "http://shop.example:8080"
    assert friend["Vary"] == "Origin"
    assert friend["Cross-Origin-Resource-Policy"] == "cross-origin"
    stranger = client.get("/health", headers={"Origin": "http://other.example"}).headers
    assert "Access-Control-Allow-Origin" not in stranger
    assert stranger["Vary"] == "Origin"


def test_a_browser_that_asks_beforehand_is_told_what_it_may_send() -> None:
    client = create_app({ORIGINS: "*"}, sink=len).test_client()
    headers = client.options("/v1/solve", headers={"Origin": "http://any.example"}).headers
    assert headers["Access-Control-Allow-Origin"] == "*"
    assert headers["Access-Control-Allow-Methods"] == "GET, HEAD, POST, OPTIONS"
    assert headers["Access-Control-Allow-Headers"] == "Content-Type, If-None-Match, X-Request-ID"
    assert "Access-Control-Allow-Methods" not in client.get("/health", headers={"Origin": "http://a.example"}).headers


LASTING = [
    "/v1/solve?divisions=28", "/v1/angle?angle=37.5", "/v1/heads", "/openapi.json", "/docs", "/docs/style.css",
    "/qr.svg?divisions=28", "/", "/style.css", "/js/app.js",
]  # fmt: skip


@pytest.mark.parametrize("path", LASTING)
def test_what_is_asked_by_address_may_be_kept(client: FlaskClient, path: str) -> None:
    first = client.get(path)
    assert first.headers["Cache-Control"].startswith("public, max-age=")
    tag = first.headers["ETag"]
    assert tag.startswith('"')
    for known in (tag, "*", f'"other", {tag}', f"W/{tag}"):
        again = client.get(path, headers={"If-None-Match": known})
        assert (again.status_code, again.data, again.headers["ETag"]) == (304, b"", tag)
        assert again.headers["Cache-Control"] == first.headers["Cache-Control"]
    changed = client.get(path, headers={"If-None-Match": '"other"'})
    assert (changed.status_code, changed.data) == (200, first.data)


@pytest.mark.parametrize("path", LASTING)
def test_an_answer_that_is_not_the_one_wanted_is_refused_as_a_problem(client: FlaskClient, path: str) -> None:
    # RFC 9110, 13.1.1: the method is carried out only where the tag is that of the answer.
    assert client.get(path, headers={"If-Match": client.get(path).headers["ETag"]}).status_code == 200
    refused = client.get(path, headers={"If-Match": '"other"'})
    assert (refused.status_code, refused.content_type) == (412, "application/problem+json")
    assert (refused.json["status"], refused.json["detail"]) == (
        412,
        "The answer is not the one that the header If-Match names. Leave the header out.",
    )


@pytest.mark.parametrize("path", [*LASTING, "/health", "/ready"])
def test_head_is_get_without_its_body(client: FlaskClient, path: str) -> None:
    whole, head = client.get(path), client.head(path)
    assert (head.status_code, head.data) == (200, b"")
    assert head.headers["Content-Length"] == str(len(whole.data))
    assert head.headers["Content-Type"] == whole.headers["Content-Type"]
    assert head.headers.get("ETag") == whole.headers.get("ETag")


def test_another_question_has_another_tag(client: FlaskClient) -> None:
    tags = {client.get(f"/v1/solve?divisions={n}").headers["ETag"] for n in range(2, 40)}
    assert len(tags) == 38


def test_a_refusal_is_not_kept(client: FlaskClient) -> None:
    headers = client.get("/v1/solve?divisions=0").headers
    assert "ETag" not in headers
    assert "Cache-Control" not in headers
