"""Every field of every operation refuses every JSON type that it is not described to have, and points to itself."""

from __future__ import annotations

from json import dumps
from typing import Any

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from tests.web.wrong_types import Wrong, operations, wrong_values


def refusal(response: TestResponse, wrong: Wrong) -> Any:
    """The problem document: in a batch that of its item, since a bad item spoils no other."""
    if wrong.in_item and response.status_code == 200:
        return response.json["answers"][0].get("problem", {})
    return response.json


def is_pointed_to(client: FlaskClient, wrong: Wrong) -> bool:
    told = refusal(client.post(wrong.path, data=dumps(wrong.body()), content_type="application/json"), wrong)
    return told.get("status") == 422 and wrong.pointer in [error["pointer"] for error in told["errors"]]


@pytest.mark.parametrize("path", operations())
def test_a_value_of_the_wrong_type_is_refused_at_its_place(client: FlaskClient, path: str) -> None:
    tried = wrong_values(path)
    assert len(tried) > 30
    assert [wrong for wrong in tried if not is_pointed_to(client, wrong)] == []


def test_the_fields_are_found_down_to_the_items_of_lists_and_the_sizes_of_parts() -> None:
    found = {wrong.pointer for wrong in wrong_values("/v1/solve")}
    assert found >= {
        "#", "#/work", "#/head/plates", "#/head/plates/0/0", "#/head/idlers/simple/with", "#/head/dial/vernier",
        "#/work/angles/0", "#/work/part/kind", "#/work/part/pressure_angle", "#/tolerance/at_rim", "#/methods/0",
    }  # fmt: skip
    assert {wrong.pointer for wrong in wrong_values("/v1/verify")} >= {"#/claim/gearing/stud/0", "#/claim/second/holes"}
    assert {wrong.pointer for wrong in wrong_values("/v1/solve/batch")} >= {"#/items", "#/ref", "#/work/divisions"}
