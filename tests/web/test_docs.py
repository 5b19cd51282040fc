"""The description is served to programs and to people, and made only when somebody asks for it."""

from __future__ import annotations

import subprocess
import sys

import pytest
from flask.testing import FlaskClient

from tests.running import ROOT


@pytest.mark.parametrize(
    ("path", "content"),
    [
        ("/openapi.json", "application/json"),
        ("/docs", "text/html; charset=utf-8"),
        ("/docs/style.css", "text/css; charset=utf-8"),
    ],
)
def test_each_document_says_what_it_is_and_may_be_kept_for_an_hour(
    client: FlaskClient, path: str, content: str
) -> None:
    response = client.get(path)
    assert (response.status_code, response.content_type) == (200, content)
    assert response.headers["Cache-Control"] == "public, max-age=3600"


def test_the_page_for_people_is_whole_and_wears_its_style(client: FlaskClient) -> None:
    page = client.get("/docs").text
    assert page.lower().startswith("<!doctype html>")
    assert page.endswith("</html>")
    assert '<link rel="stylesheet" href="/docs/style.css">' in page


ASKED_FOR = """
import sys
from dividing.web.app import create_app

client = create_app({}, sink=len).test_client()
for path in sys.argv[1:]:
    assert client.get(path).status_code == 200
print(*(name for name in ("apispec", "segno") if name in sys.modules))
"""


@pytest.mark.parametrize(
    ("paths", "loaded"),
    [
        (["/", "/v1/solve?divisions=28", "/docs/style.css"], ""),
        (["/docs"], "apispec"),
        (["/openapi.json"], "apispec"),
        (["/qr.svg?divisions=28"], "segno"),
    ],
    ids=str,
)
def test_what_few_ask_for_is_loaded_when_they_do(paths: list[str], loaded: str) -> None:
    done = subprocess.run(
        [sys.executable, "-c", ASKED_FOR, *paths], cwd=ROOT / "service", capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == loaded
