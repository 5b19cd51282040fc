"""The command that starts the service starts nothing when it is only imported, and ends as the server does."""

from __future__ import annotations

import importlib
from typing import Any

import pytest

from dividing.web import serve
from tests.running import free_port


def test_an_import_starts_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    def never(*_: object) -> int:
        raise AssertionError("The service was started.")

    monkeypatch.setattr(serve, "main", never)
    assert importlib.import_module("dividing.__main__").main is not None


def test_a_server_that_ends_by_itself_ends_well(monkeypatch: pytest.MonkeyPatch) -> None:
    started: list[dict[str, Any]] = []

    class Ended:
        def __init__(self, **options: Any) -> None:
            started.append(options)

        def run(self) -> None:
            """It has been told to stop."""

    monkeypatch.setattr(serve, "Server", Ended)
    port = free_port()
    assert serve.main(["--bind", f"127.0.0.1:{port}", "--workers", "1"]) == 0
    assert [(options["bind"], options["workers"]) for options in started] == [(("127.0.0.1", port), 1)]
