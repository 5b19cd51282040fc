"""The page over https: nothing of it goes in plain text, and a tablet keeps it for when there is no network."""

import socket
import subprocess
from base64 import b64decode, b64encode
from collections.abc import Iterator
from contextlib import contextmanager
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

import pytest
from playwright.sync_api import Browser, Error, Page, expect

from tests.certificate import self_signed
from tests.conftest import CHROMIUM, CHROMIUM_FLAGS
from tests.load.instance import on_kept_socket
from tests.page.conftest import watch
from tests.page.test_looking_up import reads


class Works(NamedTuple):
    """Where the service answers, its socket and process, and the certificate that the works gave itself."""

    base: str
    listener: socket.socket
    service: subprocess.Popen[bytes]
    certificate: Path

    def stop(self) -> None:
        """From now on nobody answers, and nobody listens."""
        self.service.terminate()
        self.service.wait(20)
        self.listener.close()


@pytest.fixture
def works(tmp_path: Path) -> Iterator[Works]:
    certificate, key = self_signed(tmp_path)
    with socket.create_server(("127.0.0.1", 0)) as listener:
        service = on_kept_socket(listener, "--workers", "1", "--certfile", str(certificate), "--keyfile", str(key))
        works = Works(f"https://localhost:{listener.getsockname()[1]}", listener, service, certificate)
        try:
            yield works
        finally:
            works.stop()


def key_of(certificate: Path) -> str:
    """The certificate's public key as Chromium is told of it: the SHA-256 of its SubjectPublicKeyInfo."""
    command = ["openssl", "x509", "-in", certificate, "-pubkey", "-noout"]
    told = subprocess.run(command, check=True, capture_output=True, text=True).stdout
    return b64encode(sha256(b64decode("".join(told.splitlines()[1:-1]))).digest()).decode()


@contextmanager
def tablet_that_trusts(certificate: Path, browser: Browser) -> Iterator[Page]:
    """A browser of its own to which this certificate, and no other, is as good as one that its system knows."""
    trust = f"--ignore-certificate-errors-spki-list={key_of(certificate)}"
    trusting = browser.browser_type.launch(executable_path=CHROMIUM, args=[*CHROMIUM_FLAGS, trust])
    try:
        yield trusting.new_page()
    finally:
        trusting.close()


def test_the_page_answers_over_https_and_is_kept(works: Works, browser: Browser) -> None:
    with tablet_that_trusts(works.certificate, browser) as page:
        faults = watch(page, works.base)
        said: list[str] = []
        page.on("console", lambda message: said.append(message.text))
        page.goto(works.base)
        assert page.evaluate("isSecureContext") is True
        page.get_by_label("Divisions").fill("28")
        reads(page, ["1 turn", "21 spaces", "49 circle"])
        assert page.evaluate("navigator.serviceWorker.ready.then(({ active }) => active.scriptURL)") == (
            f"{works.base}/sw.js"
        )
        assert faults == []
        assert [words for words in said if "Mixed Content" in words] == []
        # What the tablet has kept stands without the service, at the address that was open.
        works.stop()
        page.reload()
        expect(page.locator("#offline")).to_contain_text("No connection.")
        reads(page, ["1 turn", "21 spaces", "49 circle"])


def test_a_tablet_that_does_not_trust_the_certificate_does_not_open_the_page(works: Works, browser: Browser) -> None:
    page = browser.new_page()
    with pytest.raises(Error, match="ERR_CERT_AUTHORITY_INVALID"):
        page.goto(works.base)
    page.close()
