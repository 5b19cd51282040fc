"""The page stays small, whole and without strangers."""

import re
import time
from pathlib import Path

import pytest
import requests
from playwright.sync_api import Browser

PAGE = Path(__file__).resolve().parents[2] / "frontend"
FILES = sorted(file for file in PAGE.rglob("*") if file.is_file())
MODULES = sorted((PAGE / "js").rglob("*.js"))
DOCUMENTS = sorted(PAGE.glob("*.html"))


def loaded_by(document: Path) -> set[Path]:
    """All files that a document can load: what it names and what its modules import, at once or by a call later."""
    found = {document, PAGE / "sw.js"}
    waiting = [PAGE / name for name in re.findall(r'(?:href|src)="([^"#]+)"', document.read_text())]
    while waiting:
        file = waiting.pop()
        if file not in found:
            found.add(file)
            named = re.findall(r'\b(?:from|import)\b\s*\(?\s*"(\.[^"]+)"', file.read_text())
            waiting += [(file.parent / name).resolve() for name in named]
    return found


# Bytes as written, with nothing compressed.
@pytest.mark.parametrize("document", DOCUMENTS, ids=lambda document: document.stem)
def test_a_document_weighs_less_than_150_kb_with_all_that_it_can_load(document: Path) -> None:
    weights = {file.relative_to(PAGE): file.stat().st_size for file in loaded_by(document)}
    assert sum(weights.values()) < 150_000, sorted(weights.items(), key=lambda each: -each[1])


def test_every_file_belongs_to_a_document() -> None:
    assert set().union(*map(loaded_by, DOCUMENTS)) == set(FILES)


@pytest.mark.parametrize("module", MODULES, ids=lambda module: module.name)
def test_a_module_is_one_idea(module: Path) -> None:
    assert len(module.read_text().splitlines()) < 150


KEPT = """async () => {
  await navigator.serviceWorker.ready;
  const found = await (await caches.open((await caches.keys())[0])).keys();
  return found.map(({ url }) => new URL(url).pathname.slice(1));
}"""


def test_the_service_worker_is_short_and_keeps_every_file(live: str, browser: Browser) -> None:
    assert len((PAGE / "sw.js").read_text().splitlines()) < 70
    page = browser.new_page()
    page.goto(f"{live}/head.html")
    kept = page.evaluate(KEPT)
    page.close()
    every = {str(file.relative_to(PAGE)).replace("index.html", "") for file in FILES} - {"sw.js"}
    assert set(kept) == every


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.name)
def test_every_file_is_served_as_it_is_written(live: str, file: Path) -> None:
    name = "" if file.name == "index.html" else str(file.relative_to(PAGE))
    answer = requests.get(f"{live}/{name}", timeout=5)
    assert answer.status_code == 200
    assert answer.content == file.read_bytes()


def test_no_script_or_style_stands_inside_the_page() -> None:
    for document in DOCUMENTS:
        assert not re.search(r"<style|style=|<script(?![^>]*\bsrc=)|\bon[a-z]+=", document.read_text()), document.name
    for module in MODULES:
        assert not re.search(r"\sstyle=[\"$]|\son[a-z]+=\"", module.read_text()), module.name


def test_nothing_is_named_that_lies_outside() -> None:
    for file in FILES:
        found = set(re.findall(r"https?://[^\s\"'`)]+", file.read_text()))
        assert found <= {"http://www.w3.org/2000/svg"}, file.name


# The reckoning above is what the browser does, without a service worker, which keeps the other documents too.
@pytest.mark.parametrize("document", DOCUMENTS, ids=lambda document: document.stem)
def test_a_document_fetches_all_of_its_modules_and_no_others(live: str, browser: Browser, document: Path) -> None:
    page = browser.new_page(service_workers="block")
    fetched: set[str] = set()
    page.on("requestfinished", lambda request: fetched.add(request.url.removeprefix(f"{live}/")))
    page.goto(f"{live}/{document.name}")
    mine = {str(file.relative_to(PAGE)) for file in loaded_by(document) if file.suffix == ".js"} - {"sw.js"}
    end = time.monotonic() + 10
    while not mine <= fetched and time.monotonic() < end:
        page.wait_for_timeout(100)
    page.close()
    assert {name for name in fetched if name.endswith(".js")} == mine
