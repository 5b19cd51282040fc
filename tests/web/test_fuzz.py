"""Questions made up from the description, right ones and wrong ones: never a fault of ours, always as described."""

from __future__ import annotations

import schemathesis
from hypothesis import HealthCheck, Phase, settings
from schemathesis import Case
from schemathesis.config import SchemathesisConfig

from dividing.web.app import create_app

# All checks. A question that is as described may still ask for what cannot be (two kinds of work, a circle on no
# plate), and then 422 says what; every other refusal of such a question fails. In a batch a bad item is refused in its
# place and the batch is answered.
REFUSALS = [400, 404, 405, 406, 413, 415, 422]
CONFIG = SchemathesisConfig.from_dict(
    {
        "checks": {
            "positive_data_acceptance": {"expected-statuses": [200, 422]},
            "negative_data_rejection": {"expected-statuses": REFUSALS},
        },
        "operations": [
            {
                "include-path": "/v1/solve/batch",
                "checks": {"negative_data_rejection": {"expected-statuses": [200, *REFUSALS]}},
            }
        ],
    }
)
schema = schemathesis.openapi.from_wsgi("/openapi.json", create_app(sink=len), config=CONFIG)


@schema.parametrize()
@settings(
    max_examples=1_000,
    derandomize=True,
    deadline=None,
    database=None,
    phases=[Phase.explicit, Phase.generate],
    suppress_health_check=list(HealthCheck),
)
def test_made_up_questions_are_answered_or_refused_as_described(case: Case) -> None:
    case.call_and_validate()
