"""The methods of the trade, one file each, all of one shape.

A method is a module with two functions that take the work and the head and give setups, best first, or a `Declined`
with its reason in one sentence:

- `exact(work, head, most)`: setups that put every position exactly, the best `most` of them at least;
- `approximate(work, head)`: its best setups when no method has an exact one.

A new method joins by adding its file and its name to the table below, in the order in which a careful operator would
choose among exact ones.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Protocol

from ..head import Head
from ..setup import Declined, MethodName, Setup
from ..work import Work
from . import compound, dial, differential, direct, nearest, plain


class Method(Protocol):
    """What each file of this folder offers."""

    def exact(self, work: Work, head: Head, most: int = ...) -> tuple[Setup, ...] | Declined: ...

    def approximate(self, work: Work, head: Head) -> tuple[Setup, ...] | Declined: ...


METHODS: Mapping[MethodName, Method] = {
    "direct": direct,
    "plain": plain,
    "differential": differential,
    "compound": compound,
    "dial": dial,
    "nearest": nearest,
}
"""Every method by its name, in the order of choosing."""
