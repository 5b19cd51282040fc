"""The page's files, the ready-made heads, the state of the service and the QR code."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path
from urllib.parse import unquote

import pytest
from flask.testing import FlaskClient

from dividing import __version__
from dividing.indexing.heads import READY_MADE
from dividing.web import pages, qr, state
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


def test_ready_made_heads_are_told_by_their_figures(client: FlaskClient) -> None:
    told = client.get("/v1/heads").json
    assert [head["id"] for head in told["heads"]] == [ready.id for ready in READY_MADE]
    for head in told["heads"]:
        assert client.post("/v1/solve", json={"work": {"divisions": 2}, "head": head["head"]}).status_code == 200


def test_health_and_ready_tell_the_version(client: FlaskClient) -> None:
    assert client.get("/health").json == {"status": "ok", "version": __version__}
    assert client.get("/ready").json == {"status": "ready", "version": __version__}


def test_a_service_that_solves_wrongly_is_not_ready(client: FlaskClient, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(state, "_MOVE", {**state._MOVE, "holes": 22})
    response = client.get("/ready")
    assert (response.status_code, response.json["status"]) == (503, "wrong")


def test_the_code_is_of_the_pages_link_at_this_address(client: FlaskClient, monkeypatch: pytest.MonkeyPatch) -> None:
    links: list[str] = []
    drawn = qr.drawn
    monkeypatch.setattr(qr, "drawn", lambda link: (links.append(link), drawn(link))[1])
    response = client.get("/qr.svg?divisions=73&ratio=60&tolerance=0°01'", headers={"Host": "shop:8080"})
    assert response.content_type == "image/svg+xml"
    assert unquote(links[0]) == "http://shop:8080/#divisions=73&tolerance=0°01'&ratio=60"
    assert response.data.startswith(b'<?xml version="1.0" encoding="utf-8"?>\n<svg xmlns="http://www.w3.org/2000/svg"')
    assert b"<script" not in response.data


@pytest.mark.parametrize(
    ("query", "pointer"),
    [("", "#/work"), ("divisions=0", "#/work/divisions"), ("x=1", "#"), ("divisions=7&ratio=a", "#/head/ratio")],
)
def test_a_question_that_cannot_be_asked_has_no_code(client: FlaskClient, query: str, pointer: str) -> None:
    response = client.get(f"/qr.svg?{query}")
    assert response.status_code == 422
    assert response.json["errors"][0]["pointer"] == pointer


def test_a_link_too_long_to_read_has_no_code(client: FlaskClient) -> None:
    response = client.get("/qr.svg?angles=" + ",".join(map(str, range(400))))
    assert response.status_code == 422
    assert "a code of more than 1,200 does not read" in response.json["detail"]


def test_the_description_is_written_by_its_command(tmp_path: Path) -> None:
    """The command writes what is served; run on a copy, so that a test changes nothing of the project's."""
    root = page_folder().parent
    for name in ("service", "frontend", "openapi"):
        shutil.copytree(root / name, tmp_path / name, ignore=shutil.ignore_patterns("__pycache__"))
    file = tmp_path / "openapi" / "openapi.json"
    file.write_text("{}")

    subprocess.run(
        [sys.executable, "-m", "dividing.web.openapi"],
        cwd=tmp_path,
        env={"PYTHONPATH": str(tmp_path / "service")},
        check=True,
    )
    assert file.read_bytes() == (root / "openapi" / "openapi.json").read_bytes()


def test_the_code_opens_the_way_that_was_chosen(client: FlaskClient, monkeypatch: pytest.MonkeyPatch) -> None:
    links: list[str] = []
    monkeypatch.setattr(qr, "drawn", lambda link: (links.append(link), b"")[1])
    client.get("/qr.svg?divisions=28&setup=2")
    client.get("/qr.svg?divisions=28&setup=1")
    assert [link.rpartition("/")[2] for link in links] == ["#divisions=28&setup=2", "#divisions=28"]


@pytest.mark.parametrize("setup", ["0", "-1", "101", "1.5", "two", "1e999"])
def test_a_way_that_cannot_be_is_refused(client: FlaskClient, setup: str) -> None:
    response = client.get(f"/qr.svg?divisions=28&setup={setup}")
    assert response.status_code == 422
    assert response.get_json()["errors"] == [
        {"pointer": "#/setup", "detail": "The chosen setup is a whole number from 1 to 100."}
    ]
