"""A line for every request, and nothing of the client's in it."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest

from dividing import __version__
from dividing.web.app import create_app
from dividing.web.log import line, to_standard_output

SECRET = "8f3a-secret"  # noqa: S105


@pytest.mark.parametrize(
    ("method", "path", "status", "route"),
    [
        ("GET", "/v1/solve?divisions=28", 200, "/v1/solve"),
        ("POST", "/v1/solve", 415, "/v1/solve"),
        ("GET", f"/js/{SECRET}.js", 404, "/js/<path:name>"),
        ("GET", f"/{SECRET}", 404, None),
        ("DELETE", "/v1/heads", 405, None),
        ("GET", f"/v1/solve?angle={SECRET}", 422, "/v1/solve"),
        ("GET", f"/v1/solve?{SECRET}=1", 422, "/v1/solve"),
        ("GET", f"/health?{SECRET}", 200, "/health"),
        ("HEAD", f"/nothing/{SECRET}", 404, None),
        ("GET", f"/js/%2e%2e/{SECRET}", 404, "/js/<path:name>"),
        ("GET", f"/%0a{SECRET}%00", 404, None),
        ("GET", f"/%ff{SECRET}?%ff", 404, None),
        ("OPTIONS", f"/v1/solve?{SECRET}", 200, "/v1/solve"),
    ],
)
def test_a_request_leaves_one_line(method: str, path: str, status: int, route: str | None) -> None:
    lines: list[bytes] = []
    client = create_app(sink=lines.append).test_client()
    client.open(path, method=method, headers={"X-Request-ID": "cut-7", "User-Agent": SECRET, "Cookie": SECRET})
    assert len(lines) == 1
    assert lines[0].endswith(b"\n")
    told = json.loads(lines[0])
    assert list(told) == ["route", "method", "status", "ms", "request_id", "version"]
    assert (told["route"], told["method"], told["status"]) == (route, method, status)
    assert (told["request_id"], told["version"]) == ("cut-7", __version__)
    assert 0 <= told["ms"] < 60_000
    assert SECRET.encode() not in lines[0].lower()


def test_a_body_leaves_nothing_in_the_log() -> None:
    lines: list[bytes] = []
    client = create_app(sink=lines.append).test_client()
    for body in (f'{{"{SECRET}": 1}}', f'{{"work": {{"angle": "{SECRET}"}}}}', SECRET, f'"{SECRET}" {SECRET}'):
        assert client.post("/v1/solve", data=body, content_type="application/json").status_code in (400, 422)
    client.post("/v1/solve", data=SECRET, content_type=f"text/{SECRET}")
    client.post("/v1/solve/batch", data=f"ref,divisions\n{SECRET},x\n", content_type="text/csv")
    assert len(lines) == 6
    assert SECRET.encode() not in b"".join(lines)


def test_a_fault_of_ours_is_told_with_its_place_and_without_what_was_asked(caplog: pytest.LogCaptureFixture) -> None:
    app = create_app(sink=len)

    def fail() -> None:
        raise ValueError(f"could not read {SECRET}")

    app.view_functions["state.health"] = fail
    client = app.test_client()

    assert client.get(f"/health?{SECRET}", headers={"X-Request-ID": "cut-7"}).status_code == 500
    assert "request cut-7 failed: ValueError" in caplog.text
    assert f"{Path(__file__).name}" in caplog.text
    assert SECRET not in caplog.text


def test_a_method_of_the_clients_own_making_is_not_repeated() -> None:
    lines: list[bytes] = []
    create_app(sink=lines.append).test_client().open("/health", method=SECRET.upper())
    assert json.loads(lines[0])["method"] == "other"
    assert SECRET.encode() not in lines[0].lower()


def test_lines_go_to_standard_output_in_one_piece(capfd: pytest.CaptureFixture[str]) -> None:
    made = line(route="/health", method="GET", status=200, seconds=0.00123, request_id="7")
    to_standard_output(made)
    assert capfd.readouterr().out == made.decode()
    assert json.loads(made)["ms"] == 1.23


def test_a_log_that_nobody_takes_does_not_stop_an_answer(monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(_fd: int, _line: bytes) -> int:
        raise BrokenPipeError

    monkeypatch.setattr(os, "write", broken)
    assert create_app().test_client().get("/health").status_code == 200
