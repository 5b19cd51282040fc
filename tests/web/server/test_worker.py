"""Slow, broken and rude callers hold up nobody, and each of them gets the answer that is due."""

import http.client
import socket
import threading
import time
from collections.abc import Iterator
from contextlib import ExitStack

import pytest
import requests

from dividing.web.server.caller import Caller, Stage
from tests.web.server.at_work import BIG, CHUNKED, HEALTH, LIMIT, POST, at_work, closing, read_to_end, say


@pytest.fixture
def address() -> Iterator[tuple[str, int]]:
    with at_work() as (_, where):
        yield where


@pytest.fixture
def short_waits(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every wait of the worker is a twentieth of what it is in the shop."""

    def enter(self: Caller, stage: Stage) -> None:
        self.stage, self.deadline = stage, time.monotonic() + stage.value / 20

    monkeypatch.setattr(Caller, "enter", enter)


class TestAnswers:
    def test_questions_on_one_connection_are_answered_in_turn(self, address: tuple[str, int]) -> None:
        caller = http.client.HTTPConnection(*address)
        for number in range(50):
            body = b"%d" % number * number or b"ok"
            caller.request("POST", "/echo", body)
            assert caller.getresponse().read() == body
        caller.close()

    def test_questions_sent_together_are_answered_in_turn(self, address: tuple[str, int]) -> None:
        together = b"".join(POST + b"Content-Length: 1\r\n\r\n%d" % digit for digit in range(10))

        heard = say(address, together + closing(HEALTH))

        assert heard.count(b"HTTP/1.1 200 OK") == 11
        assert [line[0:1] for line in heard.split(b"\r\n\r\n")[1:-1]] == [b"%d" % digit for digit in range(10)]

    def test_a_long_answer_arrives_whole_at_a_slow_reader(self, address: tuple[str, int]) -> None:
        with socket.create_connection(address, timeout=20) as caller:
            caller.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 65536)
            caller.sendall(closing(HEALTH.replace(b"/health", b"/big")))
            time.sleep(0.2)
            assert read_to_end(caller).endswith(b"\r\n\r\n" + BIG)

    def test_a_caller_who_waits_to_be_asked_is_asked_for_the_body(self, address: tuple[str, int]) -> None:
        with socket.create_connection(address, timeout=20) as caller:
            caller.sendall(closing(POST) + b"Expect: 100-continue\r\nContent-Length: 2\r\n\r\n")
            assert caller.recv(1000) == b"HTTP/1.1 100 Continue\r\n\r\n"
            caller.sendall(b"28")
            assert read_to_end(caller).endswith(b"\r\n\r\n28")

    def test_a_fault_of_ours_is_answered_500_and_the_next_question_200(self, address: tuple[str, int]) -> None:
        for _ in range(40):  # more than there are threads: none of them dies of it
            assert say(address, HEALTH.replace(b"/health", b"/fault")).startswith(b"HTTP/1.1 500 ")
        assert say(address, closing(HEALTH)).startswith(b"HTTP/1.1 200 OK")


class TestTooMuch:
    @pytest.mark.parametrize("size", [LIMIT + 1, 500_000, 2_000_000, 20_000_000])
    @pytest.mark.parametrize("chunked", [False, True], ids=["with its length", "in chunks"])
    def test_a_body_over_the_limit_is_answered_413_however_long(
        self, address: tuple[str, int], size: int, chunked: bool
    ) -> None:
        pieces = [b"x" * min(50_000, size - at) for at in range(0, size, 50_000)]
        caller = http.client.HTTPConnection(*address)
        headers = {"Transfer-Encoding": "chunked"} if chunked else {"Content-Length": str(size)}
        caller.request("POST", "/echo", iter(pieces), headers, encode_chunked=chunked)
        answer = caller.getresponse()

        assert (answer.status, answer.read()) == (413, b"refused 413")
        caller.close()

    def test_a_head_without_end_is_answered_431(self, address: tuple[str, int]) -> None:
        assert say(address, b"GET / HTTP/1.1\r\nA: " + b"x" * 40_000).startswith(b"HTTP/1.1 431 ")

    def test_when_there_is_no_room_the_longest_silent_caller_makes_it(self) -> None:
        with at_work(worker_connections=20) as (_, address), ExitStack() as stack:
            for _ in range(60):
                caller = stack.enter_context(socket.create_connection(address))
                caller.sendall(b"GET /heal")
            assert say(address, closing(HEALTH)).startswith(b"HTTP/1.1 200 OK")


class TestMalformed:
    @pytest.mark.parametrize(
        ("words", "status"),
        [
            (b"GET / HTTP/1.1\nHost: shop\n\n", 400),
            (b"\x16\x03\x01\x02\x00\x01\r\n\r\n", 400),
            (b"BAD\r\n\r\n", 400),
            (POST + b"Content-Length: 1\r\nContent-Length: 2\r\n\r\nab", 400),
            (POST + b"Content-Length: -1\r\n\r\n", 400),
            (POST + b"Content-Length: 1\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n", 400),
            (POST + b"Transfer-Encoding: gzip\r\n\r\n", 400),
            (CHUNKED + b"zz\r\nabc", 400),
            (CHUNKED + b"1\r\nabc\r\n0\r\n\r\n", 400),
            (b"GET /" + b"x" * 9000 + b" HTTP/1.1\r\nHost: shop\r\n\r\n", 414),
        ],
    )
    def test_what_http_does_not_allow_is_refused_and_the_connection_ends(
        self, address: tuple[str, int], words: bytes, status: int
    ) -> None:
        heard = say(address, words + HEALTH)

        assert heard.startswith(b"HTTP/1.1 %d " % status)
        assert heard.count(b"HTTP/1.1") == 1


@pytest.mark.usefixtures("short_waits")
class TestLate:
    @pytest.mark.parametrize(
        ("words", "end"),
        [
            (b"POST /echo HT", b"Request Timeout"),
            (POST + b"Content-Length: 100\r\n\r\nabc", b"\r\n\r\nrefused 408"),
            (CHUNKED + b"10\r\nabc", b"\r\n\r\nrefused 408"),
        ],
        ids=["in the head", "in a body with its length", "in a body in chunks"],
    )
    def test_who_stops_half_way_is_told_so(self, address: tuple[str, int], words: bytes, end: bytes) -> None:
        heard = say(address, words)

        assert heard.startswith(b"HTTP/1.1 408 ")
        assert end in heard

    def test_dribbling_does_not_buy_time(self, address: tuple[str, int]) -> None:
        with socket.create_connection(address, timeout=20) as caller:
            for byte in HEALTH * 20:
                try:
                    caller.sendall(bytes([byte or 32]).replace(b"\r", b"x").replace(b"\n", b"x"))
                except OSError:
                    break
                time.sleep(0.01)
            assert caller.recv(13) == b"HTTP/1.1 408 "

    def test_who_says_nothing_is_left_without_a_word(self, address: tuple[str, int]) -> None:
        assert say(address) == b""

    def test_who_does_not_take_the_answer_is_given_up(self) -> None:
        with at_work() as (worker, address), socket.create_connection(address, timeout=20) as caller:
            caller.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 4096)
            caller.sendall(HEALTH.replace(b"/health", b"/big"))
            end = time.monotonic() + 20
            while not worker.callers and time.monotonic() < end:
                time.sleep(0.01)
            while worker.callers and time.monotonic() < end:
                time.sleep(0.05)
            assert not worker.callers


STALLED = {
    "say nothing": b"",
    "stop in the head": b"POST /v1/solve HTTP/1.1\r\nHost: shop\r\nContent-Le",
    "stop in the body": b"POST /v1/solve HTTP/1.1\r\nHost: shop\r\nContent-Length: 100\r\n\r\n{",
    "stop in a chunk": b"POST /v1/solve HTTP/1.1\r\nHost: shop\r\nTransfer-Encoding: chunked\r\n\r\n10\r\n{",
    "stop after a false end": (
        b"POST /v1/solve HTTP/1.1\r\nHost: shop\r\nTransfer-Encoding: chunked\r\n\r\n10\r\n\r\n0\r\n\r\n"
    ),
    "do not hang up": closing(HEALTH),
}


@pytest.mark.parametrize("words", STALLED.values(), ids=STALLED)
def test_three_hundred_callers_who_stall_hold_up_nobody(live: str, words: bytes) -> None:
    host, _, port = live.removeprefix("http://").partition(":")
    with ExitStack() as stack:
        for _ in range(300):
            caller = stack.enter_context(socket.create_connection((host, int(port))))
            caller.sendall(words)
        for _ in range(10):
            # The limit is what is promised; in a quiet hour it takes a few milliseconds.
            assert requests.get(f"{live}/health", timeout=1).status_code == 200


def test_three_hundred_callers_who_dribble_hold_up_nobody(live: str) -> None:
    host, _, port = live.removeprefix("http://").partition(":")
    enough = threading.Event()

    def dribble(callers: list[socket.socket]) -> None:
        while not enough.wait(0.01):
            for caller in callers:
                caller.sendall(b"x")

    with ExitStack() as stack:
        callers = [stack.enter_context(socket.create_connection((host, int(port)))) for _ in range(300)]
        for caller in callers:
            caller.sendall(b"GET /health HTTP/1.1\r\nHost: shop\r\nSlow: ")
        dribbling = threading.Thread(target=dribble, args=(callers,))
        dribbling.start()
        try:
            for _ in range(10):
                assert requests.get(f"{live}/health", timeout=1).status_code == 200
        finally:
            enough.set()
            dribbling.join()
