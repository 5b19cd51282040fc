"""The answer of /v1/verify."""

from __future__ import annotations

from typing import Any

from dividing import __version__
from dividing.indexing.angles import Angle, angle_out
from dividing.indexing.head import Head
from dividing.indexing.verifying import Claim, GearingClaim, Verdict
from dividing.indexing.work import Angles
from dividing.web.schemas.verify import Check

from . import Answer
from .heads import exact_text
from .setups import error_out, setup_out


def verified(check: Check, found: Verdict) -> Answer:
    """What the claim makes, what is wrong with it, and what would be right."""
    step, divisions = found.step, found.divisions
    rational = isinstance(check.work, Angles) or check.claim.reading is None or check.claim.reading.rational
    return {
        "verdict": found.verdict,
        "makes": {
            "step": None if step is None else angle_out(Angle(step, rational)),
            "divisions": str(divisions) if divisions is not None and rational else None,
        },
        "error": None if found.error is None else error_out(found.error, check.tolerance),
        "why": list(found.why),
        "likely_slips": [
            {
                "slip": slip.slip,
                "explanation": slip.explanation,
                "corrected": claim_out(slip.corrected, check.head),
            }
            for slip in found.likely_slips
        ],
        "right": None if found.right is None else setup_out(check.work, check.head, found.right, check.tolerance),
        "service_version": __version__,
    }


def claim_out(claim: Claim, head: Head) -> Answer:
    """A claim in the form in which it is asked, to be asked again."""
    second = claim.second
    return {
        "method": claim.method,
        "turns": claim.turns,
        "holes": claim.holes,
        "circle": claim.circle,
        "second": None if second is None else {"holes": second.holes, "circle": second.circle},
        "gearing": None if claim.gearing is None else _gearing(claim.gearing),
        "reading": _reading(claim, head),
    }


def _gearing(gearing: GearingClaim) -> dict[str, Any]:
    return {
        "spindle": gearing.spindle,
        "worm": gearing.worm,
        "stud": None if gearing.stud is None else list(gearing.stud),
        "idlers": gearing.idlers,
    }


def _reading(claim: Claim, head: Head) -> str | None:
    if claim.divisions is not None:
        return str(claim.divisions)
    if claim.reading is None:
        return None
    turns = claim.reading.turns
    in_divisions = head.dial is not None and head.dial.divisions is not None
    return str(turns * head.ratio * head.dial_units) if in_divisions else exact_text(turns)
