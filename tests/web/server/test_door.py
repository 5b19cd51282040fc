"""Who comes in and who goes, at a door in this process: the loop's own steps, one at a time."""

from __future__ import annotations

import errno
import os
import socket
import struct
from collections.abc import Iterator
from contextlib import ExitStack
from typing import Any

import pytest
from gunicorn.config import Config

from dividing.web.server.caller import Caller, Stage
from dividing.web.server.door import AT_ONCE
from dividing.web.server.worker import PatientWorker
from tests.web.server.at_work import Silence


@pytest.fixture
def door() -> Iterator[PatientWorker]:
    """A worker with its doors open whose loop does not turn, so that each step is the test's own."""
    listener = socket.create_server(("127.0.0.1", 0))
    worker = PatientWorker(1, os.getppid(), [listener], None, 60, Config(), Silence())
    worker.open_doors()
    with ExitStack() as left:
        left.callback(worker.tmp.close)
        left.callback(worker.selector.close)
        left.callback(listener.close)
        left.callback(worker.place.leave)
        yield worker
        for caller in list(worker.callers):
            worker.drop(caller)


class Exhausted:
    """A listening socket for which the system has no file descriptor left."""

    def accept(self) -> None:
        raise OSError(errno.EMFILE, "Too many open files")


def knock(door: PatientWorker, callers: int = 1) -> list[socket.socket]:
    return [socket.create_connection(door.sockets[0].getsockname(), timeout=10) for _ in range(callers)]


def closed(sock: socket.socket) -> bool:
    try:
        return sock.recv(1) == b""
    except ConnectionResetError:
        return True


def test_who_stands_at_the_door_is_let_in_and_waited_for(door: PatientWorker) -> None:
    (caller,) = knock(door)
    with caller:
        door.greet(door.sockets[0])
        assert [each.stage for each in door.callers] == [Stage.IDLE]
        assert not door.accept(door.sockets[0])  # nobody else stands there


def test_without_a_file_descriptor_the_longest_silent_caller_makes_room(door: PatientWorker) -> None:
    first, second = knock(door, 2)
    with first, second:
        assert door.accept(door.sockets[0])
        assert door.accept(door.sockets[0])
        oldest = min(door.callers, key=lambda caller: caller.deadline)
        assert not door.accept(Exhausted())
        assert oldest.is_gone
        assert len(door.callers) == 1


def test_who_is_being_answered_is_not_dropped_to_make_room(door: PatientWorker) -> None:
    (caller,) = knock(door)
    with caller:
        door.accept(door.sockets[0])
        (busy,) = door.callers
        busy.enter(Stage.SOLVING)
        assert not door.accept(Exhausted())
        assert door.callers == {busy}


def test_whose_connection_breaks_before_the_handshake_never_was_a_caller(door: PatientWorker) -> None:
    class Broken:
        def wrap_socket(self, *_: Any, **__: Any) -> None:
            raise OSError(errno.ENOTCONN, "Transport endpoint is not connected")

    (caller,) = knock(door)
    with caller:
        door.tls = Broken()
        assert door.accept(door.sockets[0])
        assert door.callers == set()
        assert closed(caller)


def test_who_looks_away_already_lets_nobody_in_until_it_looks_back(
    door: PatientWorker, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(door.place, "has_most", lambda: True)
    (caller,) = knock(door)
    with caller:
        door.greet(door.sockets[0])
        until = door.look_back_at
        assert until is not None
        door.greet(door.sockets[0])
        assert (door.look_back_at, door.callers) == (until, set())
        door.look_back()
        assert len(door.callers) == 1
        assert door.look_back_at is None


def test_after_looking_away_so_many_are_let_in_at_once_and_no_more(door: PatientWorker) -> None:
    callers = knock(door, AT_ONCE + 2)
    door.look_away()
    door.look_back()
    assert len(door.callers) == AT_ONCE
    for caller in callers:
        caller.close()


def test_a_caller_who_is_gone_has_no_further_event(door: PatientWorker) -> None:
    (caller,) = knock(door)
    with caller:
        door.accept(door.sockets[0])
        (known,) = door.callers
        door.drop(known)
        heard: list[Caller] = []
        door.call(heard.append, known)
        assert heard == []


def known_to(door: PatientWorker) -> tuple[Caller, socket.socket]:
    """A caller who is let in, and its other side."""
    (other,) = knock(door)
    assert door.accept(door.sockets[0])
    (caller,) = door.callers
    return caller, other


def torn_off(other: socket.socket) -> None:
    """The other side is gone without a goodbye."""
    other.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, struct.pack("ii", 1, 0))
    other.close()


def test_an_answer_that_the_system_does_not_take_whole_is_sent_on_as_there_is_room(door: PatientWorker) -> None:
    caller, other = known_to(door)
    whole = bytes(number % 251 for number in range(12_000_000))
    caller.answer = memoryview(whole)
    with other:
        door.settle(caller)
        assert caller.stage is Stage.SENDING
        until = caller.deadline
        door.settle(caller)
        assert (caller.stage, caller.deadline) == (Stage.SENDING, until)
        read = bytearray()
        while len(read) < len(whole):
            read += other.recv(1_000_000)
            if caller.answer:
                door.settle(caller)
        assert read == whole
        assert caller.stage is Stage.IDLE


def test_an_answer_to_who_is_torn_off_ends_the_connection(door: PatientWorker) -> None:
    caller, other = known_to(door)
    torn_off(other)
    caller.answer = memoryview(b"HTTP/1.1 200 OK\r\n\r\n")
    door.settle(caller)
    assert caller.is_gone


def test_from_who_is_torn_off_nothing_is_waited_for(door: PatientWorker) -> None:
    caller, other = known_to(door)
    torn_off(other)
    caller.receive()
    door.part(caller)
    assert caller.is_gone


def test_a_worker_that_looks_away_when_it_stops_lets_in_who_stands_in_the_queue(door: PatientWorker) -> None:
    callers = knock(door, 2)
    door.look_away()
    door.close_doors()
    assert len(door.callers) == 2
    for caller in callers:
        caller.close()
