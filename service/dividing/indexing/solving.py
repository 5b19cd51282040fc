"""The main question: work and head in, setups out in the order in which a careful operator would choose.

Exact before approximate. Among exact ones direct, then plain, then differential, compound and the dial, each method
having put its own in order: the mounted plate first, fewer things to change first, the larger circle first. Where
direct or plain indexing is exact nobody would hang gears or make two moves, so those are worked out only on request.
Approximate ones stand by their worst error at any position.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from functools import cache

from .bounds import SETUPS_MOST
from .faults import Fault, Refused
from .head import Head
from .methods import METHODS
from .methods.differential import in_blocks
from .setup import Declined, MethodName, Setup
from .work import Work

SIMPLE_ENOUGH: frozenset[MethodName] = frozenset({"direct", "plain"})
ONLY_WHEN_NEEDED: frozenset[MethodName] = frozenset({"differential", "compound", "nearest"})
LIMIT_USUAL = 5


@dataclass(frozen=True, slots=True)
class Solution:
    """Setups, best first and never none, and each method that gave nothing with its reason."""

    work: Work
    head: Head
    setups: tuple[Setup, ...]
    declined: tuple[Declined, ...]


def solve(
    work: Work,
    head: Head,
    *,
    methods: Collection[MethodName] | None = None,
    limit: int = LIMIT_USUAL,
    barred: Mapping[MethodName, str] | None = None,
) -> Solution:
    """The best `limit` setups. `methods` keeps to those named; `barred` gives reasons why some cannot be used here.

    Raises `Refused` when the methods allowed give nothing at all, with each one's reason.

    >>> from dividing.indexing.work import Divisions
    >>> [setup.move.circle for setup in solve(Divisions(28), Head()).setups]
    [49, 21]
    """
    if not 1 <= limit <= SETUPS_MOST:
        raise Refused([Fault(("limit",), f"The limit is a number of setups from 1 to {SETUPS_MOST}.")])
    names = [name for name in METHODS if methods is None or name in methods]
    refusals = {name: Declined(name, reason) for name, reason in (barred or {}).items() if name in names}
    usable = [name for name in names if name not in refusals]
    setups, declined = _exact(work, head, usable, told=methods is not None)
    if not setups:
        setups = _exact_in_blocks(work, head, usable)
        if setups:
            declined.pop(setups[0].method)
    if not setups:
        setups, declined = _approximate(work, head, usable, declined)
        if "compound" in refusals:
            # The nearest hole on two circles needs the same second move, of plate and crank together.
            setups = [setup for setup in setups if setup.second is None]
    declined.update(refusals)
    if not setups:
        raise Refused([Fault(("methods",), _nothing_serves(declined, asked=methods is not None))])
    return Solution(work, head, tuple(setups[:limit]), tuple(declined[name] for name in names if name in declined))


def _exact(
    work: Work, head: Head, names: list[MethodName], *, told: bool
) -> tuple[list[Setup], dict[MethodName, Declined]]:
    setups: list[Setup] = []
    declined: dict[MethodName, Declined] = {}
    for name in names:
        if not told and setups and _unneeded(name, beside=setups[0].method):
            declined[name] = _not_needed(name, setups[0].method)
            continue
        answer = METHODS[name].exact(work, head)
        if isinstance(answer, Declined):
            declined[name] = answer
        else:
            setups += answer
    return setups, declined


def _unneeded(name: MethodName, *, beside: MethodName) -> bool:
    """Whether a method is not worth its trouble beside an exact setup by another."""
    return name == "nearest" or (name in ONLY_WHEN_NEEDED and beside in SIMPLE_ENOUGH)


def _exact_in_blocks(work: Work, head: Head, names: list[MethodName]) -> list[Setup]:
    """Exact setups with several spaces a move, the fewest that serve, when none is exact with one.

    Only a geared plate gains by it: what one or two circles make exactly is the same for every number of spaces that
    misses no division.
    """
    if "differential" not in names or len(head.change_gears) < 2:
        return []
    for blocks in in_blocks(work, head):
        answer = METHODS["differential"].exact(blocks, head)
        if isinstance(answer, tuple):
            return list(answer)
    return []


@cache
def _not_needed(name: MethodName, beside: MethodName) -> Declined:
    return Declined(name, _NOT_NEEDED.get(beside, NOT_NEEDED))


NOT_NEEDED = "Not needed: an exact setting exists."
_NOT_NEEDED: dict[MethodName, str] = {
    "direct": "Not needed: direct indexing is exact.",
    "plain": "Not needed: plain indexing is exact.",
}


def _approximate(
    work: Work, head: Head, names: list[MethodName], declined: dict[MethodName, Declined]
) -> tuple[list[Setup], dict[MethodName, Declined]]:
    setups: list[Setup] = []
    reasons: dict[MethodName, Declined] = {}
    for name in names:
        answer = METHODS[name].approximate(work, head)
        if isinstance(answer, Declined):
            reasons[name] = answer if name == "nearest" else declined[name]
        else:
            setups += answer
    return sorted(setups, key=lambda setup: setup.accuracy.worst), reasons


def _nothing_serves(declined: Mapping[MethodName, Declined], *, asked: bool) -> str:
    reasons = " ".join(f"{name.capitalize()}: {no.reason}" for name, no in declined.items())
    advice = "Allow other methods, or change the head." if asked else "Change the head."
    return f"Nothing serves with these methods. {reasons} {advice}"
