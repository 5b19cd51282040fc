"""What a question costs, estimated before it is solved, so that no request holds a worker for long."""

from __future__ import annotations

from .schemas.solve import Question


def check(question: Question) -> None:
    """Refuse a question that would take more than about two seconds, with how to split it."""
    del question
