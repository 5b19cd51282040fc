"""/v1/verify: a setup worked out by hand, held against the work that it was meant for."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from flask import Blueprint, Response

from dividing.indexing.verifying import as_set, verify

from . import costing
from .answers.verify import verified
from .exchange import answer, asked_in_body
from .operations import in_body
from .schemas.answers import VerifyOut
from .schemas.part import barred
from .schemas.verify import VERIFY_IN, Check

blueprint = Blueprint("verify", __name__)


@blueprint.post("/v1/verify")
def verify_body() -> Response:
    """The claim in the body."""
    return answer(checked(asked_in_body()))


def checked(asked: Any) -> dict[str, Any]:
    """The verdict on a claim in its wire form."""
    check: Check = VERIFY_IN.load(asked)
    costing.check_claim(check)
    check = replace(check, work=as_set(check.work, check.head, check.claim))
    found = verify(check.work, check.head, check.claim, tolerance=check.tolerance, barred=barred(check.part))
    return verified(check, found)


OPERATIONS = (
    in_body(
        "verify", "/v1/verify", "Verify a setup worked out by hand",
        "Says what the claim really makes, exact even when absurd, why it cannot be set, and which slip explains it: a "
        "slip is named only when undoing it gives the wanted work exactly.",
        asked=type(VERIFY_IN), answered=VerifyOut, answer=checked,
        example={"work": {"divisions": 28}, "claim": {"method": "plain", "turns": 1, "holes": 20, "circle": 49}},
    ),
)  # fmt: skip
