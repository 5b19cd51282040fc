"""Keys made of a setup: the claim that says it, its line for a routing sheet and its working."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from .. import wording
from ..head import Head
from ..methods import METHODS
from ..setup import Declined, MethodName, Setup
from ..verifying.claims import claim_of
from ..work import Arc, Divisions
from .exercise import Key, Task


def key_of(setup: Setup, work: Divisions | Arc, head: Head) -> Key:
    """The key that is a setup."""
    return Key(
        claim_of(setup, work.step, head.ratio),
        wording.summary(work, head, setup),
        tuple(wording.working(work, head, setup)),
    )


def key_by(
    task: Task, head: Head, method: MethodName, *, serves: Callable[[Setup], bool] = lambda _: True
) -> Key | None:
    """The key by a method: its best exact setup that serves, or the reason why there is none where none is meant to
    be; None where the exercise cannot be set so."""
    answer = METHODS[method].exact(task.work, head)
    if isinstance(answer, Declined):
        return Key(None, "No circle serves.", (answer.reason,), reason=answer.reason) if task.none else None
    setup = next(filter(serves, answer), None)
    return None if setup is None or task.none else key_of(setup, task.work, head)


def with_hint(key: Key, hint: str) -> Key:
    """The same key with what the question may give away."""
    return replace(key, hint=hint)
