"""Questions made up from the description, right ones and wrong ones: never a fault of ours, always as described."""

from __future__ import annotations

import schemathesis
from hypothesis import HealthCheck, Phase, settings
from schemathesis import Case
from schemathesis.checks import not_a_server_error
from schemathesis.specs.openapi.checks import (
    content_type_conformance,
    response_schema_conformance,
    status_code_conformance,
)

from dividing.web.app import create_app

schema = schemathesis.openapi.from_wsgi("/openapi.json", create_app(sink=len))
CHECKS = [not_a_server_error, status_code_conformance, content_type_conformance, response_schema_conformance]


@schema.parametrize()
@settings(
    max_examples=40,
    derandomize=True,
    deadline=None,
    database=None,
    phases=[Phase.explicit, Phase.generate],
    suppress_health_check=list(HealthCheck),
)
def test_made_up_questions_are_answered_or_refused_as_described(case: Case) -> None:
    case.call_and_validate(checks=CHECKS)
