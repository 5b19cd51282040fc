"""/v1/verify: a setup worked out by hand, held against the work that it was meant for."""

from __future__ import annotations

from typing import Any

from flask import Blueprint, Response

from dividing.indexing.verifying import verify

from . import costing
from .answers.verify import verified
from .exchange import answer, asked_in_body
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
    found = verify(check.work, check.head, check.claim, tolerance=check.tolerance)
    return verified(check, found)
