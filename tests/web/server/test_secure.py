"""Under TLS every caller is served as without it, and who stalls in the handshake holds up nobody."""

import http.client
import selectors
import socket
import ssl
import time
from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path

import pytest

from dividing.web.server.caller import Caller, Stage
from dividing.web.server.secure import awaited
from dividing.web.server.worker import PatientWorker
from tests.certificate import self_signed, trusting
from tests.web.server.at_work import BIG, HEALTH, POST, Address, at_work, closing, read_to_end, tell_to_stop

# The first bytes of a handshake: a record of 512 bytes is announced and does not come.
BEGUN = b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03"


@pytest.fixture(scope="module")
def pair(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    return self_signed(tmp_path_factory.mktemp("certificate"))


@pytest.fixture
def trust(pair: tuple[Path, Path]) -> ssl.SSLContext:
    return trusting(pair[0])


@pytest.fixture
def secured(pair: tuple[Path, Path]) -> Iterator[tuple[PatientWorker, Address]]:
    with at_work(certfile=str(pair[0]), keyfile=str(pair[1])) as at:
        yield at


def called(address: Address, trust: ssl.SSLContext) -> ssl.SSLSocket:
    plain = socket.create_connection(address, timeout=20)
    return trust.wrap_socket(plain, server_hostname="localhost", suppress_ragged_eofs=False)


Secured = tuple[PatientWorker, Address]


@pytest.mark.parametrize(
    ("waits_for", "event"),
    [(ssl.SSLWantReadError(), selectors.EVENT_READ), (ssl.SSLWantWriteError(), selectors.EVENT_WRITE), (None, 0)],
)
def test_a_handshake_waits_for_what_it_lacks(
    waits_for: Exception | None, event: int, trust: ssl.SSLContext, monkeypatch: pytest.MonkeyPatch
) -> None:
    def as_far_as_it_goes() -> None:
        if waits_for:
            raise waits_for

    here, there = socket.socketpair()
    with there, trust.wrap_socket(here, server_hostname="localhost", do_handshake_on_connect=False) as begun:
        monkeypatch.setattr(begun, "do_handshake", as_far_as_it_goes)
        assert awaited(begun) == event
        assert awaited(there) == 0  # without TLS there is nothing to wait for


@pytest.mark.parametrize("version", [ssl.TLSVersion.TLSv1_2, ssl.TLSVersion.TLSv1_3])
def test_questions_on_one_connection_are_answered_in_turn(
    secured: Secured, trust: ssl.SSLContext, version: ssl.TLSVersion
) -> None:
    trust.minimum_version = trust.maximum_version = version
    caller = http.client.HTTPSConnection("localhost", secured[1][1], context=trust, timeout=20)
    for size in (0, 1, 100, 16_384, 16_385, 65_536):
        caller.request("POST", "/echo", b"x" * size)
        assert caller.getresponse().read() == (b"x" * size or b"ok")
    caller.close()


def test_the_application_knows_that_it_was_called_securely(secured: Secured, trust: ssl.SSLContext) -> None:
    with called(secured[1], trust) as caller:
        caller.sendall(closing(HEALTH.replace(b"/health", b"/scheme")))
        assert read_to_end(caller).endswith(b"\r\n\r\nhttps")


def test_a_long_answer_arrives_whole_at_a_slow_reader(secured: Secured, trust: ssl.SSLContext) -> None:
    with called(secured[1], trust) as caller:
        caller.sendall(closing(HEALTH.replace(b"/health", b"/big")))
        time.sleep(0.2)
        # Read to the worker's goodbye: a cut would be a fault to this caller.
        assert read_to_end(caller).endswith(b"\r\n\r\n" + BIG)


def test_a_question_in_many_records_is_answered_once(secured: Secured, trust: ssl.SSLContext) -> None:
    with called(secured[1], trust) as caller:
        for byte in closing(POST) + b"Content-Length: 3\r\n\r\nabc":
            caller.sendall(bytes([byte]))
        heard = read_to_end(caller)
    assert heard.count(b"HTTP/1.1") == 1
    assert heard.endswith(b"\r\n\r\nabc")


@pytest.mark.parametrize("words", [b"", BEGUN], ids=["before it", "in it"])
def test_three_hundred_callers_who_stall_at_the_handshake_hold_up_nobody(
    secured: Secured, trust: ssl.SSLContext, words: bytes
) -> None:
    with ExitStack() as stack:
        for _ in range(300):
            stack.enter_context(socket.create_connection(secured[1])).sendall(words)
        for _ in range(3):
            caller = stack.enter_context(called(secured[1], trust))
            caller.settimeout(1)  # the limit is what is promised for /health
            caller.sendall(closing(HEALTH))
            assert read_to_end(caller).endswith(b"\r\n\r\nok")


def test_who_does_not_end_the_handshake_is_given_up(pair: tuple[Path, Path], monkeypatch: pytest.MonkeyPatch) -> None:
    def enter(self: Caller, stage: Stage) -> None:
        self.stage, self.deadline = stage, time.monotonic() + stage.value / 20

    monkeypatch.setattr(Caller, "enter", enter)
    with (
        at_work(certfile=str(pair[0]), keyfile=str(pair[1])) as (_, address),
        socket.create_connection(address, timeout=20) as caller,
    ):
        caller.sendall(BEGUN)
        assert read_to_end(caller) == b""


@pytest.mark.parametrize(
    "words", [HEALTH, b"\x15\x03\x01\x00\x02\x02\x28", b"\0" * 100], ids=["plain http", "an alert", "noughts"]
)
def test_who_speaks_no_tls_is_shut_out_and_the_next_is_served(
    secured: Secured, trust: ssl.SSLContext, words: bytes
) -> None:
    with socket.create_connection(secured[1], timeout=20) as stranger:
        stranger.sendall(words)
        assert b"HTTP/1.1" not in _all_of(stranger)
    with called(secured[1], trust) as caller:
        caller.sendall(closing(HEALTH))
        assert read_to_end(caller).endswith(b"\r\n\r\nok")


def _all_of(stranger: socket.socket) -> bytes:
    try:
        return read_to_end(stranger)
    except ConnectionResetError:
        return b""


def test_a_worker_that_stops_answers_who_is_still_in_the_handshake(secured: Secured, trust: ssl.SSLContext) -> None:
    worker, address = secured
    with socket.create_connection(address, timeout=20) as plain:
        end = time.monotonic() + 20
        while not worker.callers and time.monotonic() < end:
            time.sleep(0.01)
        tell_to_stop(worker)
        with trust.wrap_socket(plain, server_hostname="localhost") as caller:
            caller.sendall(HEALTH)
            heard = read_to_end(caller)
    assert heard.startswith(b"HTTP/1.1 200 OK")
    assert b"Connection: close" in heard
