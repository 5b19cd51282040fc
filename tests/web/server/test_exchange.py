"""One request from memory, one answer into memory."""

from __future__ import annotations

import os
import socket
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from gunicorn.config import Config

from dividing.web.headers import SECURITY
from dividing.web.server.caller import Caller, Message
from dividing.web.server.exchange import exchange, refusal
from dividing.web.server.worker import PatientWorker
from tests.web.server.at_work import HEALTH, Silence, application


@pytest.fixture
def worker() -> Iterator[PatientWorker]:
    made = PatientWorker(1, os.getppid(), [], None, 60, Config(), Silence())
    made.wsgi = application
    yield made
    made.tmp.close()


@pytest.fixture
def caller() -> Iterator[Caller]:
    here, there = socket.socketpair()
    with here, there:
        yield Caller(here, ("127.0.0.1", 5000), ("127.0.0.1", 8080))


def test_a_whole_request_is_answered_and_the_caller_stays(worker: PatientWorker, caller: Caller) -> None:
    answer, stays = exchange(worker, caller, Message(HEALTH))
    assert answer.startswith(b"HTTP/1.1 200 OK\r\n")
    assert answer.endswith(b"\r\n\r\nok")
    assert stays


def test_an_application_that_gives_a_plain_list_is_answered_too(worker: PatientWorker, caller: Caller) -> None:
    def plain(_: dict[str, Any], start: Callable[..., Any]) -> list[bytes]:
        start("200 OK", [("Content-Length", "4")])
        return [b"28", b"/1"]

    worker.wsgi = plain
    answer, stays = exchange(worker, caller, Message(HEALTH))
    assert answer.endswith(b"\r\n\r\n28/1")
    assert stays


def telling(headers: list[tuple[str, str]]) -> Callable[..., list[bytes]]:
    def application(_: dict[str, Any], start: Callable[..., Any]) -> list[bytes]:
        start("200 OK", [*headers, ("Content-Length", "2")])
        return [b"ok"]

    return application


def test_what_every_answer_says_is_said_once_beside_what_only_this_one_says(
    worker: PatientWorker, caller: Caller
) -> None:
    worker.wsgi = telling([("X-Request-ID", "7"), *SECURITY])
    answer, _ = exchange(worker, caller, Message(HEALTH))
    told = answer.partition(b"\r\n\r\n")[0].decode().split("\r\n")[1:]
    for name, value in [*SECURITY, ("X-Request-ID", "7"), ("Content-Length", "2")]:
        assert told.count(f"{name}: {value}") == 1


@pytest.mark.parametrize("name", [SECURITY[0][0], "X-Request-ID"])
def test_a_header_that_would_begin_another_is_never_sent(worker: PatientWorker, caller: Caller, name: str) -> None:
    worker.wsgi = telling([(name, "7\r\nSet-Cookie: 7")])
    answer, stays = exchange(worker, caller, Message(HEALTH))
    assert answer.startswith(b"HTTP/1.1 500 ")
    assert b"Set-Cookie" not in answer
    assert not stays


def test_a_fault_of_ours_is_answered_and_the_caller_goes(worker: PatientWorker, caller: Caller) -> None:
    answer, stays = exchange(worker, caller, Message(HEALTH.replace(b"/health", b"/fault")))
    assert answer.startswith(b"HTTP/1.1 500 Internal Server Error\r\n")
    assert not stays


def test_a_request_without_a_host_is_refused(worker: PatientWorker, caller: Caller) -> None:
    answer, stays = exchange(worker, caller, Message(b"GET /health HTTP/1.1\r\n\r\n"))
    assert answer.startswith(b"HTTP/1.1 400 Bad Request\r\n")
    assert not stays


def test_bytes_that_end_before_a_request_does_are_no_fault_of_ours(worker: PatientWorker, caller: Caller) -> None:
    answer, stays = exchange(worker, caller, Message(b"GET /hea"))
    assert answer == refusal(400, "Bad Request")
    assert not stays


def test_where_nothing_was_said_nothing_is_answered(worker: PatientWorker, caller: Caller) -> None:
    assert exchange(worker, caller, Message(b"")) == (b"", False)


def test_a_worker_that_stops_tells_the_caller_that_the_connection_ends(worker: PatientWorker, caller: Caller) -> None:
    worker.alive = False
    answer, stays = exchange(worker, caller, Message(HEALTH))
    assert b"Connection: close\r\n" in answer
    assert not stays
