"""What this Flask leaves out, nothing here wants; what it finds by heart is what Flask would find."""

from __future__ import annotations

from inspect import iscoroutinefunction

import pytest
from flask import Flask
from werkzeug.exceptions import HTTPException, MethodNotAllowed

from dividing.web.app import create_app
from dividing.web.stateless import StatelessFlask

METHODS = ("GET", "HEAD", "POST", "PUT", "OPTIONS")


@pytest.fixture(scope="module")
def assembled() -> StatelessFlask:
    app = create_app({}, sink=len)
    assert isinstance(app, StatelessFlask)
    return app


def test_there_are_no_functions_before_or_after_a_request(assembled: Flask) -> None:
    """They would not be called."""
    for functions in (
        assembled.before_request_funcs,
        assembled.after_request_funcs,
        assembled.teardown_request_funcs,
        assembled.url_value_preprocessors,
    ):
        assert not any(functions.values())
    assert assembled.teardown_appcontext_funcs == []


def test_no_view_is_a_coroutine(assembled: Flask) -> None:
    """It would not be waited for."""
    assert [name for name, view in assembled.view_functions.items() if iscoroutinefunction(view)] == []


def found(app: Flask, method: str, path: str, *, known: bool) -> object:
    """The rule and variables for a request, or the fault, as this Flask finds it or as Flask does."""
    with app.test_request_context(path, method=method) as context:
        adapter = app.create_url_adapter(context.request) if known else Flask.create_url_adapter(app, context.request)
        assert adapter is not None
        try:
            return adapter.match(return_rule=True)
        except MethodNotAllowed as fault:
            return sorted(fault.valid_methods or ())
        except HTTPException as fault:
            return fault.code


@pytest.mark.parametrize("method", METHODS)
def test_every_path_leads_where_flask_leads_it(assembled: Flask, method: str) -> None:
    straight = {rule.rule for rule in assembled.url_map.iter_rules() if not rule.arguments}
    assert "/v1/solve" in straight
    others = {"/js/app.js", "/js/none.js", "/v1/none", "/v1/solve/", "//v1/solve", "/%C3%A4", "/%FF", "/a%2Fb"}
    for path in straight | others:
        assert found(assembled, method, path, known=True) == found(assembled, method, path, known=False), path


def test_a_path_is_known_only_for_the_methods_that_it_takes(assembled: StatelessFlask) -> None:
    assert {method for method, path in assembled.known if path == "/v1/solve"} == {"GET", "HEAD", "POST"}
    assert {method for method, path in assembled.known if path == "/v1/verify"} == {"POST"}


def test_whoever_asks_what_a_path_takes_is_told(assembled: Flask) -> None:
    told = assembled.test_client().options("/v1/solve")
    assert set(told.headers["Allow"].split(", ")) == {"GET", "HEAD", "POST", "OPTIONS"}


def test_no_answer_sets_a_cookie_and_none_sent_is_minded(assembled: Flask) -> None:
    client = assembled.test_client()
    client.set_cookie("session", "eyJhIjoxfQ.forged")
    told = client.get("/v1/solve?divisions=28")
    assert told.status_code == 200
    assert "Set-Cookie" not in told.headers


def test_a_fault_that_nobody_has_words_for_is_a_plain_500() -> None:
    app = StatelessFlask("alone", static_folder=None)

    @app.route("/")
    def view() -> str:
        raise ZeroDivisionError

    app.know_routes()
    assert app.test_client().get("/").status_code == 500
