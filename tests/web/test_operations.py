"""What an operation tells of itself is how the service answers it."""

from __future__ import annotations

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from dividing.web.operations import Operation
from dividing.web.themes import THEMES

OPERATIONS = {operation.name: operation for theme in THEMES for operation in theme.OPERATIONS}
BY_BODY = {name: operation for name, operation in OPERATIONS.items() if operation.method == "post"}
BY_QUERY = {name: operation for name, operation in OPERATIONS.items() if operation.words}


def asked(client: FlaskClient, operation: Operation) -> TestResponse:
    """The operation's own example."""
    if operation.method == "post":
        return client.post(operation.path, json=operation.example)
    return client.get(f"{operation.path}?{operation.example}" if operation.words else operation.path)


@pytest.mark.parametrize("operation", OPERATIONS.values(), ids=OPERATIONS)
def test_its_example_is_answered_in_the_form_that_it_tells(client: FlaskClient, operation: Operation) -> None:
    response = asked(client, operation)
    assert (response.status_code, response.content_type) == (200, operation.content)
    if operation.answer is not None:
        assert response.json == operation.answer(operation.example)


@pytest.mark.parametrize("operation", OPERATIONS.values(), ids=OPERATIONS)
def test_its_answer_may_be_kept_where_it_says_so_and_only_there(client: FlaskClient, operation: Operation) -> None:
    headers = asked(client, operation).headers
    assert ("ETag" in headers, "Cache-Control" in headers) == (operation.lasting, operation.lasting)


@pytest.mark.parametrize("operation", BY_BODY.values(), ids=BY_BODY)
@pytest.mark.parametrize(
    ("body", "content", "status"),
    [
        (b"{", "application/json", 400),
        (b"{}", "text/plain", 415),
        (b" " * (1024 * 1024 + 1), "application/json", 413),
        (b'{"colour": "red"}', "application/json", 422),
    ],
    ids=["no JSON", "of another type", "too large", "unknown field"],
)
def test_a_body_is_refused_as_it_tells(
    client: FlaskClient, operation: Operation, body: bytes, content: str, status: int
) -> None:
    response = client.post(operation.path, data=body, content_type=content)
    assert response.status_code == status
    kinds = {(kind.type, kind.status) for kind in operation.problems}
    assert (response.json["type"], status) in kinds


@pytest.mark.parametrize("operation", BY_QUERY.values(), ids=BY_QUERY)
def test_a_query_takes_the_words_that_it_tells_and_no_other(client: FlaskClient, operation: Operation) -> None:
    response = client.get(f"{operation.path}?colour=red")
    assert response.status_code == 422
    assert response.json["errors"] == [
        {
            "pointer": "#",
            "parameter": "colour",
            "detail": f'"colour": There is no such word; the words are {", ".join(operation.words)}.',
        }
    ]
    assert response.json["type"] in {kind.type for kind in operation.problems}
