"""Wi-Fi that comes and goes: the page says so, shows what it has kept, and answers again by itself."""

from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import Open
from tests.page.test_looking_up import reads
from tests.running import Service, free_port


@contextmanager
def serving(address: str) -> Iterator[None]:
    """The service at this very address, so that it can go and come back where the page looks for it."""
    service = Service("--bind", address, "--workers", "1")
    try:
        service.wait_until_healthy(f"http://{address}")
        yield
    finally:
        service.stop()
        service.output.close()


def asked(page: Page, divisions: str) -> None:
    page.get_by_label("Divisions").fill(divisions)
    page.get_by_role("button", name="Work it out").click()


def test_a_kept_answer_is_shown_with_its_time_when_the_service_is_away(open_page: Open) -> None:
    address = f"127.0.0.1:{free_port()}"
    with serving(address):
        page = open_page(base=f"http://{address}")
        asked(page, "28")
        page.locator("#csv").wait_for()
        asked(page, "24")
        expect(page.locator("#move")).to_have_text("Direct indexing")
        page.wait_for_load_state("networkidle")
    asked(page, "28")
    expect(page.locator("#offline")).to_contain_text("No connection.")
    expect(page.locator("#offline")).to_contain_text("What stands here was saved")
    reads(page, ["1 turn", "21 spaces", "49 circle"])
    expect(page.locator("#csv")).to_be_visible()
    asked(page, "29")
    sentence = "The service cannot be reached and this question has no saved answer."
    expect(page.locator("#problem")).to_contain_text(sentence)
    with serving(address):
        expect(page.locator("#offline")).to_have_count(0, timeout=20_000)
        expect(page.locator("#move")).to_be_visible()
        reads(page, ["1 turn", "11 spaces", "29 circle"])


def test_cuts_are_counted_on_without_the_service_and_after_a_reload(open_page: Open) -> None:
    address = f"127.0.0.1:{free_port()}"
    with serving(address):
        page = open_page(base=f"http://{address}")
        asked(page, "28")
        page.locator("#csv").wait_for()
        page.get_by_role("button", name="Start cutting").click()
        page.locator("#shop-cut").click()
        page.wait_for_load_state("networkidle")
        # The kept copy of the page must be whole before the service goes.
        page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    for _ in range(3):
        page.locator("#shop-done").click()
        page.wait_for_timeout(400)
    expect(page.locator("#shop-title")).to_contain_text("4")
    page.reload()
    expect(page.locator("#shop-title")).to_contain_text("4")


def test_a_page_without_a_store_still_answers(open_page: Open, live: str) -> None:
    page = open_page()
    page.add_init_script("Object.defineProperty(window, 'localStorage', { get() { throw new Error('forbidden'); } })")
    page.goto("about:blank")
    page.goto(live)
    asked(page, "28")
    expect(page.locator("#move")).to_be_visible()
    reads(page, ["1 turn", "21 spaces", "49 circle"])


MISSING = ["navigator.serviceWorker", "navigator.clipboard", "navigator.wakeLock", "crypto.randomUUID"]


@pytest.mark.parametrize("missing", MISSING)
def test_plain_http_lacks_much_and_the_page_misses_none_of_it(open_page: Open, live: str, missing: str) -> None:
    thing, name = missing.split(".")
    page = open_page()
    page.add_init_script(f"delete Object.getPrototypeOf({thing}).{name}")
    page.goto("about:blank")
    page.goto(live)
    asked(page, "28")
    page.locator("#csv").wait_for()
    page.get_by_role("button", name="Link").click()
    page.get_by_role("button", name="Copy").click()
    expect(page.locator("#status")).to_contain_text("link is")
    page.get_by_role("button", name="Start cutting").click()
    expect(page.locator("#shop-title")).to_be_visible()


def test_kept_answers_give_way_to_the_count_when_the_browser_is_full(page: Page) -> None:
    asked(page, "28")
    page.locator("#csv").wait_for()
    fill = """() => {
      let size = 1 << 20;
      while (size > 8) {
        try { localStorage.setItem('dividing.answer.' + size, 'x'.repeat(size)); size *= 1.01; } catch { size /= 2; }
      }
    }"""
    page.evaluate(fill)
    page.get_by_role("button", name="Start cutting").click()
    page.get_by_role("button", name="Cut without a trial pass").click()
    page.wait_for_timeout(400)
    page.locator("#shop-done").click()
    page.reload()
    expect(page.locator("#shop-title")).to_have_text("Cut 2 of 28")
