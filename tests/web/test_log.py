"""A line for every request, and nothing of the client's in it."""

from __future__ import annotations

import json
import os

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
    assert SECRET.encode() not in lines[0]


def test_a_method_of_the_clients_own_making_is_not_repeated() -> None:
    lines: list[bytes] = []
    create_app(sink=lines.append).test_client().open("/health", method="BREW")
    assert json.loads(lines[0])["method"] == "other"


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
