"""A tablet in front of the page: nothing may leave the origin or go wrong unseen, whatever a test does."""

from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page, Request

from tests.page.markup import Checker, checking

# The browser itself writes a line for every refusal and for every request made while the service is away.
EXPECTED = ("422 (", "ERR_CONNECTION_REFUSED", "ERR_ABORTED", "Failed to load resource")


def watch(page: Page, base: str) -> list[str]:
    """The list into which every stranger asked and every fault of the page's own goes."""
    found: list[str] = []

    def asked(request: Request) -> None:
        if not request.url.startswith((base, "blob:" + base, "data:")):
            found.append(f"asked {request.url}")

    def said(message: ConsoleMessage) -> None:
        if message.type == "error" and not any(words in message.text for words in EXPECTED):
            found.append(f"said {message.text}")

    page.on("request", asked)
    page.on("console", said)
    page.on("pageerror", lambda error: found.append(f"failed {error}"))
    return found


@pytest.fixture(scope="session")
def markup() -> Iterator[Checker]:
    """The checker of markup."""
    with checking() as checker:
        yield checker


Open = Callable[..., Page]


@pytest.fixture
def open_page(browser: Browser, live: str) -> Iterator[Open]:
    """Opens the page on a tablet of its own: `open_page("#divisions=28", width=360)`."""
    opened: list[tuple[BrowserContext, list[str]]] = []

    def go(address: str = "", *, base: str = live, width: int = 800, height: int = 1200, **manner: object) -> Page:
        tablet = browser.new_context(viewport={"width": width, "height": height}, **manner)  # type: ignore[arg-type]
        page = tablet.new_page()
        opened.append((tablet, watch(page, base)))
        page.goto(f"{base}/{address}")
        page.wait_for_selector("#go-setup", state="attached")
        return page

    yield go
    faults = [fault for _, found in opened for fault in found]
    for tablet, _ in opened:
        tablet.close()
    assert faults == []


def here(page: Page) -> str:
    """The address as the page has it now; `Page.url` learns of a change within the page a little later."""
    address: str = page.evaluate("location.href")
    return address


@pytest.fixture
def page(open_page: Open) -> Page:
    """The page as a tablet shows it that has never been here."""
    return open_page()
