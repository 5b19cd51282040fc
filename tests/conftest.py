"""What many tests share: the application, the service running for real, and a browser."""

from collections.abc import Iterator

import pytest
from flask import Flask
from flask.testing import FlaskClient
from playwright.sync_api import Browser, sync_playwright

from tests.running import running

# It wants NumPy, which nothing else does: it is run by hand.
collect_ignore = ["bench/core_against_numpy.py"]

CHROMIUM = "/usr/bin/chromium"
CHROMIUM_FLAGS = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
]


@pytest.fixture(scope="session")
def app() -> Flask:
    """The application as the service assembles it."""
    from dividing.web.app import create_app

    return create_app()


@pytest.fixture
def client(app: Flask) -> FlaskClient:
    """A client that calls the application without a server between."""
    return app.test_client()


@pytest.fixture(scope="session")
def live() -> Iterator[str]:
    """The address of the service, running under its real server for the whole test run."""
    with running("--workers", "2") as (base, _):
        yield base


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Debian's Chromium. When it is missing the tests fail: tests/run installs it."""
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=CHROMIUM, args=CHROMIUM_FLAGS)
        yield chromium
        chromium.close()
