"""The two ends of a view: a body by any of JSON's names, and an answer that may be kept."""

from __future__ import annotations

from typing import Any

import pytest
from flask import Flask

from dividing.web.exchange import JSON, answer, asked_in_body, asked_in_query, lasting, lasting_answer
from dividing.web.problems import WRONG_CONTENT, Problem
from dividing.web.query_words import SOLVE_WORDS

APP = Flask(__name__)


def asked_as(content: str | None, body: bytes = b'{"divisions": 28}') -> Any:
    headers = {} if content is None else {"Content-Type": content}
    with APP.test_request_context("/v1/solve", method="POST", data=body, headers=headers):
        return asked_in_body()


class TestABody:
    @pytest.mark.parametrize(
        "content",
        [
            "application/json",
            "Application/JSON",
            "application/json; charset=utf-8",
            'application/json; charset="UTF-8"',
            "application/json; charset=us-ascii",
            "application/vnd.shop+json",
        ],
    )
    def test_is_json_by_any_of_its_names(self, content: str) -> None:
        assert asked_as(content) == {"divisions": 28}

    @pytest.mark.parametrize(
        ("content", "shown"),
        [
            (None, "not without a type"),
            ("", "not without a type"),
            ("text/plain", "not as text/plain"),
            ("text/csv; charset=utf-8", "not as text/csv"),
            ("text/vnd.shop+json", "not as text/vnd.shop+json"),
            ("application/" + "x" * 60, "not without a type"),
        ],
    )
    def test_of_another_kind_is_refused_by_that_name(self, content: str | None, shown: str) -> None:
        with pytest.raises(Problem) as refusal:
            asked_as(content)
        assert refusal.value.kind is WRONG_CONTENT
        assert refusal.value.detail == (
            f"Send the body as JSON, with the header Content-Type: application/json, {shown}."
        )

    @pytest.mark.parametrize("charset", ["latin-1", "utf-16", "x"])
    def test_in_another_encoding_is_refused(self, charset: str) -> None:
        with pytest.raises(Problem) as refusal:
            asked_as(f"application/json; charset={charset}")
        assert refusal.value.detail == (
            "Send the body in UTF-8, the one encoding of JSON; leave charset out of the header."
        )


def test_a_query_is_read_into_the_form_of_the_body() -> None:
    with APP.test_request_context("/v1/solve?divisions=28&ratio=60"):
        assert asked_in_query(SOLVE_WORDS) == {"work": {"divisions": 28}, "head": {"ratio": 60}}


class TestAnAnswer:
    def test_to_a_body_is_not_kept(self) -> None:
        response = answer({"step": "1/28"})
        assert (response.data, response.content_type) == (b'{"step":"1/28"}', JSON)
        assert "ETag" not in response.headers
        assert "Cache-Control" not in response.headers

    def test_to_an_address_is_kept_for_an_hour_by_its_tag(self) -> None:
        with APP.test_request_context("/v1/heads"):
            first = lasting_answer({"step": "1/28"})
        assert first.headers["Cache-Control"] == "public, max-age=3600"
        tag = first.headers["ETag"]
        assert tag.startswith('"')  # strong
        with APP.test_request_context("/v1/heads", headers={"If-None-Match": tag}):
            again = lasting_answer({"step": "1/28"})
            other = lasting_answer({"step": "1/29"})
        assert (again.status_code, other.status_code) == (304, 200)
        assert other.headers["ETag"] != tag

    def test_may_be_kept_as_long_as_is_told(self) -> None:
        with APP.test_request_context("/style.css"):
            response = lasting(b"body {}", "text/css", fresh_for=60)
        assert (response.content_type, response.headers["Cache-Control"]) == ("text/css", "public, max-age=60")
