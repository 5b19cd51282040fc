"""The page's files, as they are written, and nothing else."""

from __future__ import annotations

from pathlib import Path

import pytest
from flask.testing import FlaskClient

from dividing.web import pages
from dividing.web.app import create_app
from dividing.web.files import page_folder

FILES = sorted(place.relative_to(page_folder()) for place in page_folder().rglob("*") if place.is_file())
TYPES = {
    ".html": "text/html; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".svg": "image/svg+xml; charset=utf-8",
    ".webmanifest": "application/manifest+json",
}


@pytest.mark.parametrize("place", FILES, ids=str)
def test_files_as_written_are_files_as_served(client: FlaskClient, place: Path) -> None:
    response = client.get(f"/{place}")
    assert response.status_code == 200
    assert response.data == (page_folder() / place).read_bytes()
    expected = TYPES.get(place.suffix)
    assert expected is None or response.content_type == expected


def test_the_page_is_at_the_root(client: FlaskClient) -> None:
    assert client.get("/").data == (page_folder() / "index.html").read_bytes()


@pytest.mark.parametrize(
    "path",
    [
        "/js/../index.html",
        "/js/%2e%2e/index.html",
        "/js//etc/passwd",
        "/js/..%5cindex.html",
        "/js/.",
        "/js/%00",
        "/.gitignore",
    ],
)
def test_nothing_but_the_page_is_served(client: FlaskClient, path: str) -> None:
    assert client.get(path).status_code == 404


def test_hidden_files_and_files_outside_stay_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = tmp_path / "page"
    (folder / "js").mkdir(parents=True)
    (tmp_path / "secret.txt").write_text("secret")
    for name in ("index.html", ".hidden", "js/a.js", "odd name.xyz"):
        (folder / name).write_text(name)
    monkeypatch.setattr(pages, "page_folder", lambda: folder)
    client = create_app(sink=len).test_client()
    assert client.get("/odd name.xyz").content_type in ("application/octet-stream", "chemical/x-xyz")
    assert client.get("/js/a.js").text == "js/a.js"
    for path in ("/.hidden", "/secret.txt", "/js/../../secret.txt", "/js/%2e%2e%2f%2e%2e%2fsecret.txt"):
        assert client.get(path).status_code == 404


def test_a_file_that_changes_is_sent_anew(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "index.html").write_text("one")
    monkeypatch.setattr(pages, "page_folder", lambda: tmp_path)
    client = create_app(sink=len).test_client()
    tag = client.get("/").headers["ETag"]
    (tmp_path / "index.html").write_text("two")
    again = client.get("/", headers={"If-None-Match": tag})
    assert (again.status_code, again.text) == (200, "two")
