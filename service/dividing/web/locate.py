"""/v1/locate: where the head can be standing, for whoever has lost count."""

from __future__ import annotations

from contextlib import suppress
from typing import Any

from flask import Blueprint, Response

from dividing.indexing.bounds import SETUPS_MOST
from dividing.indexing.faults import Fault, Refused
from dividing.indexing.locating import locate
from dividing.indexing.setup import Gearing, MethodName, Move, SecondMove, Setup
from dividing.indexing.solving import solve
from dividing.indexing.verifying import as_set
from dividing.indexing.verifying.case import Case
from dividing.indexing.verifying.claims import gearing_claim

from . import costing
from .answers.locate import located
from .exchange import answer, asked_in_body
from .operations import in_body
from .schemas.answers import LocateOut
from .schemas.claim import claim_on
from .schemas.locate import LOCATE_IN, LostCount
from .schemas.part import barred

blueprint = Blueprint("locate", __name__)


@blueprint.post("/v1/locate")
def locate_body() -> Response:
    """What was being done and what the head shows, in the body."""
    return answer(found(asked_in_body()))


def found(asked: Any) -> dict[str, Any]:
    """The cuts at which the head can be standing, for a question in its wire form."""
    lost: LostCount = LOCATE_IN.load(asked)
    costing.check_search(lost)
    setup = _setup_in_use(lost)
    return located(lost, setup, locate(lost.work, lost.head, setup, lost.seen))


def _setup_in_use(lost: LostCount) -> Setup:
    told = lost.setup
    if told is None:
        return _solved(lost, ("head",))[0]
    alike = [setup for setup in _solved(lost, ("setup", "method"), told["method"]) if _is_it(setup, told)]
    if alike:
        # One circle is meant where no second is told, if there is such a setup.
        return min(alike, key=lambda setup: told["second"] is None and setup.second is not None)
    own = _as_told(lost, told)
    if own and told["plate"] in (None, own.move and own.move.plate):
        return own
    sentence = (
        "No such setup answers this work on this head. Give it as it was solved, or leave it out for the best one."
    )
    raise Refused([Fault(("setup",), sentence)])


def _as_told(lost: LostCount, told: dict[str, Any]) -> Setup | None:
    """A setup of somebody's own, such as the verifier finds right: it need not be among those that are solved."""
    with suppress(Refused):
        claim = claim_on(lost.head, {**told, "reading": None})
        return Case(as_set(lost.work, lost.head, claim), lost.head, claim, barred(lost.part)).as_claimed()
    return None


def _solved(lost: LostCount, place: tuple[str, ...], method: MethodName | None = None) -> tuple[Setup, ...]:
    """The setups of this work by one method or by any; where there is none, that is told of the field at `place`."""
    methods, limit = (None, 1) if method is None else ((method,), SETUPS_MOST)
    try:
        return solve(lost.work, lost.head, methods=methods, limit=limit, barred=barred(lost.part)).setups
    except Refused as refused:
        raise Refused([Fault(place, fault.sentence) for fault in refused.faults]) from None


def _is_it(setup: Setup, told: dict[str, Any]) -> bool:
    """Whether the setup has all that is told of it; what is not told may be anything."""
    return _agrees(setup.move, told, "turns", "holes", "circle", "plate") and (
        (setup.second is not None or told["second"] is None)
        and _agrees(setup.second, told["second"], "holes", "circle")
        and _same_train(setup.gearing, told["gearing"])
    )


def _agrees(part: Move | SecondMove | None, told: dict[str, Any] | None, *names: str) -> bool:
    given = {name: told[name] for name in names if told[name] is not None} if told else {}
    return part is None or all(getattr(part, name) == value for name, value in given.items())


def _same_train(gearing: Gearing | None, told: Any) -> bool:
    return told is None or (gearing is not None and gearing_claim(gearing) == told)


OPERATIONS = (
    in_body(
        "locate", "/v1/locate", "Find a lost count",
        "From the hole that the pin is in and a rough reading of the scale on the spindle nose: the cuts at which the "
        "head can be standing, the likeliest first, and the next move from each.",
        asked=type(LOCATE_IN), answered=LocateOut, answer=found,
        example={"work": {"divisions": 28}, "seen": {"hole": 14, "spindle": "40°"}},
    ),
)  # fmt: skip
