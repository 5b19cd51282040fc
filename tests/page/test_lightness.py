"""The page stays small, whole and without strangers."""

import re
import time
from pathlib import Path

import pytest
import requests
from playwright.sync_api import Browser

PAGE = Path(__file__).resolve().parents[2] / "frontend"
FILES = sorted(file for file in PAGE.rglob("*") if file.is_file())
MODULES = sorted((PAGE / "js").glob("*.js"))


def loaded_first(module: str = "app.js") -> set[str]:
    """The modules that come with the page: those that app.js imports, and theirs. Later ones are imported by a call."""
    found: set[str] = set()
    waiting = [module]
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += re.findall(r'(?m)^import [^;]*?"\./([\w-]+\.js)"', (PAGE / "js" / name).read_text())
    return found


# Bytes as written, with nothing compressed: all that looking up a move and cutting to it need.
def test_what_looking_up_and_cutting_need_weighs_less_than_150_kb() -> None:
    scripts = [PAGE / "js" / name for name in loaded_first()]
    around = [PAGE / name for name in ("index.html", "style.css", "shop.css", "print.css", "icon.svg")]
    assert sum(file.stat().st_size for file in scripts + around) < 150_000


@pytest.mark.parametrize("module", MODULES, ids=lambda module: module.name)
def test_a_module_is_one_idea(module: Path) -> None:
    assert len(module.read_text().splitlines()) < 150


def test_the_service_worker_is_short_and_keeps_every_file() -> None:
    text = (PAGE / "sw.js").read_text()
    assert len(text.splitlines()) < 70
    kept = set(re.findall(r'"([\w./-]+\.(?:js|css|svg))"', text))
    assert kept == {str(file.relative_to(PAGE)) for file in FILES} - {"index.html", "sw.js"}


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.name)
def test_every_file_is_served_as_it_is_written(live: str, file: Path) -> None:
    name = "" if file.name == "index.html" else str(file.relative_to(PAGE))
    answer = requests.get(f"{live}/{name}", timeout=5)
    assert answer.status_code == 200
    assert answer.content == file.read_bytes()


def test_no_script_or_style_stands_inside_the_page() -> None:
    text = (PAGE / "index.html").read_text()
    assert not re.search(r"<style|style=|<script(?![^>]*\bsrc=)|\bon[a-z]+=", text)
    for module in MODULES:
        assert not re.search(r"\sstyle=[\"$]|\son[a-z]+=\"", module.read_text()), module.name


def test_nothing_is_named_that_lies_outside() -> None:
    for file in FILES:
        found = set(re.findall(r"https?://[^\s\"'`)]+", file.read_text()))
        assert found <= {"http://www.w3.org/2000/svg"}, file.name


def test_the_rest_is_fetched_once_the_page_stands(live: str, browser: Browser) -> None:
    page = browser.new_page()
    fetched: set[str] = set()
    page.on("requestfinished", lambda request: fetched.add(Path(request.url).name))
    page.goto(live)
    end = time.monotonic() + 10
    while not {module.name for module in MODULES} <= fetched and time.monotonic() < end:
        page.wait_for_timeout(100)
    page.close()
    assert {module.name for module in MODULES} - fetched == set()
