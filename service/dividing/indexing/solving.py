"""The main question: work and head in, setups out in the order in which a careful operator would choose.

Exact before approximate. Among exact ones direct, then plain, then differential, compound and the dial, each method
having put its own in order: the mounted plate first, fewer things to change first, the larger circle first. Where
direct or plain indexing is exact nobody would hang gears or make two moves, so those are worked out only on request.
Approximate ones stand by their worst error at any position.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import NamedTuple

from .bounds import SETUPS_MOST
from .faults import Fault, Refused
from .head import Head
from .methods import METHODS
from .methods.differential import in_blocks
from .setup import METHOD_NAMES, Declined, MethodName, Setup
from .work import Work

SIMPLE_ENOUGH: tuple[MethodName, ...] = ("direct", "plain")
WITH_MORE_TROUBLE: tuple[MethodName, ...] = ("differential", "compound", "nearest")
NOT_NEEDED = "Not needed: an exact setting exists."
_NOT_NEEDED: Mapping[MethodName, Mapping[MethodName, Declined]] = {
    beside: {name: Declined(name, f"Not needed: {beside} indexing is exact.") for name in WITH_MORE_TROUBLE}
    for beside in SIMPLE_ENOUGH
}
_BESIDE_OTHERS: Mapping[MethodName, Declined] = {"nearest": Declined("nearest", NOT_NEEDED)}
"""Methods that are not worth their trouble beside an exact setup by the one named."""
LIMIT_USUAL = 5


class Solution(NamedTuple):
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
    names = METHOD_NAMES if methods is None else tuple(name for name in METHOD_NAMES if name in methods)
    refusals = {name: Declined(name, barred[name]) for name in names if name in barred} if barred else {}
    usable = tuple(name for name in names if name not in refusals) if refusals else names
    setups, declined = _exact(work, head, usable, limit, told=methods is not None)
    if not setups:
        setups = _exact_in_blocks(work, head, usable, limit)
        if setups:
            declined.pop(setups[0].method)
    if not setups:
        setups, declined = _approximate(work, head, usable, declined)
        setups = [setup for setup in setups if not refusals or not _moves_as(setup, refusals)]
    if refusals:
        declined = {name: no for name in names if (no := refusals.get(name) or declined.get(name))}
    if not setups:
        place = "head" if methods is None else "methods"
        raise Refused([Fault((place,), _nothing_serves(declined, asked=methods is not None))])
    return Solution(work, head, tuple(setups[:limit]), tuple(declined.values()))


def _moves_as(setup: Setup, methods: Collection[MethodName]) -> bool:
    """Whether the nearest hole is found by a move of one of these methods: on two circles plate and crank turn together
    as in compound indexing, and on the direct plate the spindle turns as in direct."""
    on_direct = setup.move is not None and setup.move.plate is None
    return ("compound" in methods and setup.second is not None) or ("direct" in methods and on_direct)


def _exact(
    work: Work, head: Head, names: Sequence[MethodName], limit: int, *, told: bool
) -> tuple[list[Setup], dict[MethodName, Declined]]:
    """Exact setups, at least the first `limit` of them, and the methods that gave none."""
    setups: list[Setup] = []
    declined: dict[MethodName, Declined] = {}
    unneeded: Mapping[MethodName, Declined] = {}
    for name in names:
        if name in unneeded:
            declined[name] = unneeded[name]
            continue
        answer = METHODS[name].exact(work, head, max(limit - len(setups), 1))
        if isinstance(answer, Declined):
            declined[name] = answer
            continue
        setups += answer
        if not told and not unneeded:
            unneeded = _NOT_NEEDED.get(name, _BESIDE_OTHERS)
    return setups, declined


def _exact_in_blocks(work: Work, head: Head, names: Sequence[MethodName], limit: int) -> list[Setup]:
    """Exact setups with several spaces a move, the fewest that serve, when none is exact with one.

    Only a geared plate gains by it: what one or two circles make exactly is the same for every number of spaces that
    misses no division.
    """
    if "differential" not in names or len(head.change_gears) < 2:
        return []
    for blocks in in_blocks(work, head):
        answer = METHODS["differential"].exact(blocks, head, limit)
        if not isinstance(answer, Declined):
            return list(answer)
    return []


def _approximate(
    work: Work, head: Head, names: Sequence[MethodName], declined: dict[MethodName, Declined]
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
    alike: dict[str, list[str]] = {}
    for name, no in declined.items():
        alike.setdefault(no.reason, []).append(name)
    reasons = " ".join(f"{', '.join(names).capitalize()}: {reason}" for reason, names in alike.items())
    if asked:
        return f"Nothing serves with these methods. {reasons} Allow other methods, or change the head."
    return f"Nothing serves on this head. {reasons} Change the head."
