"""One connection: what comes in is kept, what goes out goes as far as the system takes it."""

from __future__ import annotations

import socket
import time
from collections.abc import Iterator

import pytest
from werkzeug.exceptions import RequestEntityTooLarge, RequestTimeout

from dividing.web.server.caller import Caller, Message, Stage

Pair = tuple[Caller, socket.socket]


@pytest.fixture
def connection() -> Iterator[Pair]:
    """A caller as the worker has it, and its other side."""
    here, there = socket.socketpair()
    here.setblocking(False)
    with here, there:
        yield Caller(here, "there", "here"), there


class TestReceiving:
    def test_what_has_come_is_kept_for_the_request(self, connection: Pair) -> None:
        caller, other = connection
        other.sendall(b"GET /hea")
        assert caller.receive()
        other.sendall(b"lth")
        assert caller.receive()
        assert caller.arrival.held == b"GET /health"

    def test_nothing_yet_is_no_end(self, connection: Pair) -> None:
        caller, _ = connection
        assert caller.receive()
        assert caller.arrival.held == b""

    def test_the_other_side_closed_is_an_end(self, connection: Pair) -> None:
        caller, other = connection
        other.close()
        assert not caller.receive()

    def test_a_broken_connection_is_an_end(self, connection: Pair) -> None:
        caller, _ = connection
        caller.sock.close()
        assert not caller.receive()

    def test_after_our_last_word_nothing_more_is_kept(self, connection: Pair) -> None:
        caller, other = connection
        caller.enter(Stage.PARTING)
        other.sendall(b"GET /health")
        assert caller.receive()
        assert caller.arrival.held == b""


class TestSending:
    def test_an_answer_goes_out(self, connection: Pair) -> None:
        caller, other = connection
        caller.answer = memoryview(b"HTTP/1.1 200 OK")
        assert caller.send()
        assert not caller.answer
        assert other.recv(100) == b"HTTP/1.1 200 OK"

    def test_nothing_to_send_is_sent(self, connection: Pair) -> None:
        caller, _ = connection
        assert caller.send()

    def test_what_the_system_does_not_take_waits_in_its_order(self, connection: Pair) -> None:
        caller, other = connection
        whole = bytes(number % 251 for number in range(2_000_000))
        caller.answer = memoryview(whole)
        assert caller.send()
        left = len(caller.answer)
        assert 0 < left < len(whole)
        # The system is full: nothing more goes, and nothing is lost.
        while len(caller.answer) < left:
            left = len(caller.answer)
            assert caller.send()
        assert caller.send()
        other.setblocking(False)
        read = bytearray()
        while caller.answer or len(read) < len(whole):
            read += other.recv(1_000_000)
            assert caller.send()
        assert read == whole

    def test_to_who_is_gone_nothing_is_sent(self, connection: Pair) -> None:
        caller, other = connection
        other.close()
        caller.answer = memoryview(b"HTTP/1.1 200 OK")
        assert not caller.send()


class TestTheMessage:
    def test_a_whole_one_is_its_bytes(self) -> None:
        message = Message(b"GET / HTTP/1.1\r\n\r\n")
        assert message.is_whole
        assert list(message.pieces()) == [b"GET / HTTP/1.1\r\n\r\n"]

    @pytest.mark.parametrize(
        ("message", "refusal"),
        [(Message(b"POST", cut_short=True), RequestEntityTooLarge), (Message(b"POST", late=True), RequestTimeout)],
    )
    def test_one_that_is_not_ends_in_its_refusal(self, message: Message, refusal: type[Exception]) -> None:
        assert not message.is_whole
        pieces = message.pieces()
        assert next(pieces) == b"POST"
        with pytest.raises(refusal):
            next(pieces)


def test_each_stage_has_its_own_patience() -> None:
    assert len({stage.value for stage in Stage}) == len(Stage)
    here, there = socket.socketpair()
    with here, there:
        caller = Caller(here, None, None)
        before = time.monotonic()
        caller.enter(Stage.IDLE)
        assert before + 10 <= caller.deadline <= time.monotonic() + 10
        caller.enter(Stage.SOLVING)
        assert caller.deadline == float("inf")
