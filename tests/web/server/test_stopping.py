"""A worker that is told to stop owes an answer to everyone who is here, and to who asks without delay."""

import http.client
import os
import socket
import time
from collections.abc import Iterator

import pytest

from dividing.web.server.caller import Stage
from dividing.web.server.worker import PatientWorker
from tests.web.server.at_work import HEALTH, POST, Address, at_work, closing, read_to_end, tell_to_stop


@pytest.fixture
def worker_and_caller() -> Iterator[tuple[PatientWorker, http.client.HTTPConnection]]:
    """A worker, and a caller who has had an answer and keeps the connection."""
    with at_work() as (worker, address):
        caller = http.client.HTTPConnection(*address, timeout=20)
        assert asked(caller) == (200, b"ok", None)
        yield worker, caller
        caller.close()


def asked(caller: http.client.HTTPConnection) -> tuple[int, bytes, str | None]:
    caller.request("GET", "/health")
    answer = caller.getresponse()
    return answer.status, answer.read(), answer.getheader("Connection") if answer.will_close else None


def wait_until_heard(worker: PatientWorker) -> None:
    end = time.monotonic() + 20
    while not any(caller.arrival.held for caller in list(worker.callers)):
        assert time.monotonic() < end
        time.sleep(0.01)


def test_who_keeps_a_connection_and_asks_on_it_is_answered_and_told_that_it_ends(
    worker_and_caller: tuple[PatientWorker, http.client.HTTPConnection],
) -> None:
    worker, caller = worker_and_caller
    tell_to_stop(worker)

    assert asked(caller) == (200, b"ok", "close")


def test_who_keeps_a_connection_in_silence_is_closed_without_a_word(
    worker_and_caller: tuple[PatientWorker, http.client.HTTPConnection],
) -> None:
    worker, caller = worker_and_caller
    tell_to_stop(worker)

    assert read_to_end(caller.sock) == b""


def test_a_question_that_comes_as_the_wait_is_over_is_answered() -> None:
    def late(worker: PatientWorker, address: Address) -> None:
        worker.open_doors()
        with socket.create_connection(address, timeout=20) as caller:
            assert worker.accept(worker.sockets[0])
            (waiting,) = worker.callers
            caller.sendall(HEALTH)
            worker.expire(waiting)
            assert waiting.stage is Stage.SOLVING
            worker.drop(waiting)
        worker.selector.close()

    with at_work(late):
        pass


@pytest.mark.parametrize("here", [7, len(POST) + 10, len(POST) + 22], ids=["in the line", "in the head", "in the body"])
def test_who_is_half_way_through_a_question_may_finish_it(here: int) -> None:
    question = POST + b"Content-Length: 3\r\n\r\nabc"
    with at_work() as (worker, address), socket.create_connection(address, timeout=20) as caller:
        caller.sendall(question[:here])
        wait_until_heard(worker)
        tell_to_stop(worker)
        caller.sendall(question[here:])

        heard = read_to_end(caller)
    assert heard.startswith(b"HTTP/1.1 200 OK")
    assert b"Connection: close" in heard
    assert heard.endswith(b"\r\n\r\nabc")


def test_who_stops_half_way_is_told_so_and_does_not_keep_the_worker() -> None:
    with at_work() as (worker, address), socket.create_connection(address, timeout=20) as caller:
        caller.sendall(b"POST /echo HT")
        wait_until_heard(worker)
        tell_to_stop(worker)

        assert read_to_end(caller).startswith(b"HTTP/1.1 408 ")


def test_who_still_stands_in_the_queue_is_let_in() -> None:
    queue: list[socket.socket] = []

    def queue_up(worker: PatientWorker, address: Address) -> None:
        for _ in range(50):
            queue.append(socket.create_connection(address, timeout=20))
            queue[-1].sendall(closing(HEALTH))
        worker.alive = False

    with at_work(queue_up):
        for caller in queue:
            with caller:
                assert read_to_end(caller).startswith(b"HTTP/1.1 200 OK")


def test_nobody_is_let_in_afterwards() -> None:
    with at_work() as (worker, address), socket.create_connection(address) as caller:
        tell_to_stop(worker)
        assert read_to_end(caller) == b""

        with pytest.raises(ConnectionRefusedError):
            socket.create_connection(address)


def test_a_worker_whose_master_is_gone_stops_by_itself() -> None:
    def orphan(worker: PatientWorker, _: Address) -> None:
        worker.ppid = os.getpid()

    with at_work(orphan) as (worker, address), socket.create_connection(address, timeout=20) as caller:
        assert read_to_end(caller) == b""
        assert not worker.alive
