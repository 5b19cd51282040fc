"""How much work an answer is, counted in function calls: the same on every machine, however busy."""

from __future__ import annotations

import sys
from collections.abc import Callable

from werkzeug.test import TestResponse


def calls_of(ask: Callable[[], TestResponse]) -> tuple[TestResponse, int]:
    """The answer, and how many functions, ours and Python's own, were called for it."""
    calls = 0

    def count(frame: object, event: str, argument: object) -> None:  # noqa: ARG001  # what Python passes
        nonlocal calls
        calls += event in ("call", "c_call")

    before = sys.getprofile()
    sys.setprofile(count)
    try:
        answer = ask()
    finally:
        sys.setprofile(before)
    return answer, calls
