"""The question of /v1/verify on the wire."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from dividing.indexing.faults import Fault, Refused
from dividing.indexing.head import Head
from dividing.indexing.setup import Tolerance
from dividing.indexing.verifying import Claim
from dividing.indexing.work import Work
from dividing.parts import Part

from .base import Request
from .claim import ClaimIn, claim_on
from .head import DEFAULT_HEAD, HeadField, nested
from .solve import every_field
from .work import ToleranceIn, WorkField, gathered


@dataclass(frozen=True, slots=True)
class Check:
    """A claim and the work that it was made for."""

    work: Work
    head: Head
    tolerance: Tolerance | None
    claim: Claim
    part: Part | None = None


class VerifyIn(Request):
    """A setup worked out by hand, and what it should make."""

    work = WorkField("What is to be divided.", required=True)
    head = HeadField()
    tolerance = nested(ToleranceIn, "The largest permitted error of any position.", load_default=None)
    every = every_field()
    claim = nested(ClaimIn, "The setup to be checked.", required=True)

    leans_on = {"claim": "head", "every": "work", "work": "head"}

    def make(self, given: dict[str, Any]) -> Check:
        """The check."""
        faults = _claim_faults(given)
        asked = gathered(given, faults)
        if asked is None or faults:
            raise Refused(faults)
        claim = claim_on(given["head"], given["claim"])
        return Check(asked.work, given["head"], given["tolerance"], claim, asked.part)

    def _unasked(self) -> dict[str, Any]:
        return {"head": DEFAULT_HEAD, "every": None, "tolerance": None}


def _claim_faults(given: dict[str, Any]) -> list[Fault]:
    try:
        if "claim" in given:
            claim_on(given["head"], given["claim"])
    except Refused as refused:
        return [fault.under("claim") for fault in refused.faults]
    return []


VERIFY_IN = VerifyIn()
