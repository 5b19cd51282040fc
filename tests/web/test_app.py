"""The application is put together from its parts; one setting comes from outside."""

from __future__ import annotations

import json

import pytest

from dividing.web.app import ORIGINS, create_app

SHOP, OFFICE = "http://shop.example:8080", "http://office.example"


def let_in(environment: dict[str, str] | None, origin: str) -> str | None:
    """Which origin is told that it may ask."""
    answer = create_app(environment, sink=len).test_client().get("/health", headers={"Origin": origin})
    return answer.headers.get("Access-Control-Allow-Origin")


@pytest.mark.parametrize(
    ("setting", "told"),
    [
        (SHOP, SHOP),
        (f"{OFFICE} {SHOP}", SHOP),
        (f"  {SHOP}\n\t{OFFICE} ", SHOP),
        (f"{OFFICE} *", "*"),
        ("", None),
        (" ", None),
        (OFFICE, None),
        (f"{SHOP}/", None),  # an origin has no path (RFC 6454, 6.1), so no browser sends this one
        (f"{SHOP},{OFFICE}", None),  # parted by spaces, as the setting says
        ("http://shop.example", None),  # another port is another origin (RFC 6454, 5)
        ("https://shop.example:8080", None),
    ],
)
def test_origins_are_those_of_the_setting_word_for_word(
    monkeypatch: pytest.MonkeyPatch, setting: str, told: str | None
) -> None:
    assert let_in({ORIGINS: setting}, SHOP) == told
    monkeypatch.setenv("DIVIDING_ORIGINS", setting)
    assert let_in(None, SHOP) == told


def test_without_the_setting_no_other_page_may_ask(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("DIVIDING_ORIGINS", raising=False)
    assert let_in(None, SHOP) is None
    assert let_in({}, SHOP) is None


def test_two_strokes_are_not_one_and_are_answered_with_no_way_elsewhere() -> None:
    client = create_app({}, sink=len).test_client()
    for path in ("/v1//heads", "/v1/heads//", "/docs//style.css"):
        response = client.get(path)
        assert (response.status_code, response.content_type) == (404, "application/problem+json"), path
        assert "Location" not in response.headers


def test_an_address_that_takes_another_method_is_no_unknown_address() -> None:
    client = create_app({}, sink=len).test_client()
    for path in ("/v1/heads", "/docs", "/index.html", "/js/app.js", "/js/none.js"):
        assert client.post(path).status_code == 405, path
        assert client.post(path + "x/y").status_code == (405 if path.startswith("/js/") else 404), path


def test_each_application_has_a_log_of_its_own() -> None:
    first: list[bytes] = []
    second: list[bytes] = []
    clients = [create_app({}, sink=lines.append).test_client() for lines in (first, second)]
    clients[0].get("/health")
    clients[1].get("/ready")
    clients[1].get("/docs")
    assert [json.loads(line)["route"] for line in first] == ["/health"]
    assert [json.loads(line)["route"] for line in second] == ["/ready", "/docs"]
