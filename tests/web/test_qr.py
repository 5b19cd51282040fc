"""/qr.svg: a code that a reader reads back as the link of the page."""

from __future__ import annotations

import subprocess
from base64 import b64encode
from collections.abc import Callable
from pathlib import Path

import pytest
from flask.testing import FlaskClient
from playwright.sync_api import Browser

from dividing.web.limits import QR_LONGEST
from dividing.web.problems import Problem
from dividing.web.qr import drawn

ReadBack = Callable[[bytes], str]


@pytest.fixture
def read_back(browser: Browser, tmp_path: Path) -> ReadBack:
    """What another program reads from the code as a browser shows it, on a page as dark as can be."""

    def read(svg: bytes) -> str:
        page = browser.new_page()
        page.set_content(
            f'<body style="background: #000"><img src="data:image/svg+xml;base64,{b64encode(svg).decode()}">'
        )
        page.screenshot(path=tmp_path / "code.png")
        page.close()
        told = subprocess.run(
            ["zbarimg", "-q", "--raw", tmp_path / "code.png"], check=True, capture_output=True, text=True
        )
        return told.stdout.removesuffix("\n")

    return read


@pytest.mark.parametrize(
    ("query", "host", "link"),
    [
        ("divisions=28", "127.0.0.1:8080", "http://127.0.0.1:8080/#divisions=28"),
        # In the order of the words of the page, and what is no plain character as %XX of its UTF-8 (RFC 3986, 2.1).
        (
            "divisions=73&ratio=60&tolerance=0°01'",
            "shop:8080",
            "http://shop:8080/#divisions=73&tolerance=0%C2%B001%27&ratio=60",
        ),
        ("angles=0,22.5,61.25&plates=15,16/21", "shop", "http://shop/#angles=0,22.5,61.25&plates=15,16/21"),
        ("divisions=28&setup=2", "shop", "http://shop/#divisions=28&setup=2"),
        ("divisions=28&setup=1", "shop", "http://shop/#divisions=28"),
    ],
)
def test_the_code_read_back_is_the_link_of_the_page(
    client: FlaskClient, read_back: ReadBack, query: str, host: str, link: str
) -> None:
    response = client.get(f"/qr.svg?{query}", headers={"Host": host})
    assert response.content_type == "image/svg+xml"
    assert read_back(response.data) == link


def test_the_longest_link_that_is_drawn_still_reads(read_back: ReadBack) -> None:
    longest = "http://shop/#angles=" + ",".join(f"{number}.5" for number in range(1000))[: QR_LONGEST - 20]
    assert len(longest) == 1200
    assert read_back(drawn(longest)) == longest
    with pytest.raises(Problem) as refusal:
        drawn(longest + "9")
    assert refusal.value.detail == (
        "The link has 1,201 characters; a code of more than 1,200 does not read. Leave words out."
    )


def test_the_code_stands_alone_dark_on_white_and_runs_nothing(client: FlaskClient) -> None:
    picture = client.get("/qr.svg?divisions=28").text
    assert picture.startswith('<?xml version="1.0" encoding="utf-8"?>\n<svg xmlns="http://www.w3.org/2000/svg"')
    assert 'fill="#fff"' in picture
    assert 'stroke="#000"' in picture
    assert "<script" not in picture
    assert "href" not in picture


@pytest.mark.parametrize(
    ("query", "pointer"),
    [("", "#/work"), ("divisions=0", "#/work/divisions"), ("x=1", "#"), ("divisions=7&ratio=a", "#/head/ratio")],
)
def test_a_question_that_cannot_be_asked_has_no_code(client: FlaskClient, query: str, pointer: str) -> None:
    response = client.get(f"/qr.svg?{query}")
    assert response.status_code == 422
    assert response.json["errors"][0]["pointer"] == pointer


def test_a_question_too_long_for_a_code_has_none(client: FlaskClient) -> None:
    response = client.get("/qr.svg?angles=" + ",".join(map(str, range(400))))
    assert response.status_code == 422
    assert "a code of more than 1,200 does not read" in response.json["detail"]


@pytest.mark.parametrize("setup", ["0", "-1", "101", "1.5", "two", "1e999"])
def test_a_way_that_cannot_be_is_refused(client: FlaskClient, setup: str) -> None:
    response = client.get(f"/qr.svg?divisions=28&setup={setup}")
    assert response.status_code == 422
    assert response.json["errors"] == [
        {"pointer": "#/setup", "detail": "The chosen setup is a whole number from 1 to 100."}
    ]
