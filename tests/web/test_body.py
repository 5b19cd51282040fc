"""A body is read whole or refused: never cut, never waited for without end."""

import io
from collections.abc import Iterator

import pytest
from gunicorn.http.body import Body, ChunkedReader
from gunicorn.http.unreader import IterUnreader
from werkzeug.exceptions import BadRequest, HTTPException, RequestEntityTooLarge, RequestTimeout
from werkzeug.test import EnvironBuilder
from werkzeug.wrappers import Request

from dividing.web.body import read_body
from dividing.web.problems import Problem

LIMIT = 1000


def with_length(body: bytes) -> Request:
    return Request(EnvironBuilder(method="POST", data=body).get_environ())


def chunk(piece: bytes) -> bytes:
    return b"%x\r\n%b\r\n" % (len(piece), piece)


def in_chunks(pieces: Iterator[bytes]) -> Request:
    """A request as gunicorn gives it to the application: no length, and a body that is still on its way."""
    environ = EnvironBuilder(method="POST").get_environ()
    environ.pop("CONTENT_LENGTH", None)
    environ["wsgi.input"] = Body(ChunkedReader(None, IterUnreader(pieces)))
    environ["wsgi.input_terminated"] = True
    return Request(environ)


@pytest.mark.parametrize("size", [0, 1, LIMIT - 1, LIMIT])
def test_a_body_within_the_limit_arrives_whole(size: int) -> None:
    body = bytes(number % 251 for number in range(size))

    assert read_body(with_length(body), LIMIT) == body
    pieces = [chunk(body[at:at + 7]) for at in range(0, size, 7)]
    assert read_body(in_chunks(iter([*pieces, b"0\r\n\r\n"])), LIMIT) == body


@pytest.mark.parametrize("size", [LIMIT + 1, LIMIT + 2, 2 * LIMIT, 100 * LIMIT])
def test_one_byte_over_the_limit_is_refused_and_not_cut_off(size: int) -> None:
    body = b"x" * size

    for request in (with_length(body), in_chunks(iter([chunk(body), b"0\r\n\r\n"]))):
        with pytest.raises(RequestEntityTooLarge):
            read_body(request, LIMIT)


def test_a_length_over_the_limit_is_refused_before_a_byte_is_read() -> None:
    class Untouchable(io.RawIOBase):
        def readinto(self, _: object) -> int:
            raise AssertionError("The body was read.")

    environ = EnvironBuilder(method="POST", data=b"x" * (LIMIT + 1)).get_environ()
    environ["wsgi.input"] = Untouchable()

    with pytest.raises(RequestEntityTooLarge):
        read_body(Request(environ), LIMIT)


def test_a_stream_without_end_is_refused_at_the_limit() -> None:
    taken = 0

    def endless() -> Iterator[bytes]:
        nonlocal taken
        while True:
            taken += 100
            yield chunk(b"x" * 100)

    with pytest.raises(RequestEntityTooLarge):
        read_body(in_chunks(endless()), LIMIT)
    assert taken <= 2 * LIMIT


def stopping_with(fault: Exception) -> Iterator[bytes]:
    yield chunk(b"{")
    raise fault


@pytest.mark.parametrize(
    ("body", "refusal"),
    [
        (stopping_with(TimeoutError()), RequestTimeout),
        (stopping_with(RequestTimeout()), RequestTimeout),
        (stopping_with(ConnectionResetError()), BadRequest),
        (iter([chunk(b"{")]), BadRequest),
        (iter([chunk(b"{"), b"zz\r\n"]), BadRequest),
        (iter([b"1\r\n{}}\r\n"]), BadRequest),
    ],
    ids=["stalls", "stalls at the worker", "is torn off", "ends early", "has no size", "is longer than its size"],
)
def test_a_body_that_breaks_off_is_refused_as_what_it_is(
    body: Iterator[bytes], refusal: type[HTTPException]
) -> None:
    with pytest.raises(refusal):
        read_body(in_chunks(body), LIMIT)


def test_a_body_shorter_than_was_told_is_refused() -> None:
    environ = EnvironBuilder(method="POST", data=b"x" * 10).get_environ()
    environ["wsgi.input"] = io.BytesIO(b"x" * 9)
    with pytest.raises(BadRequest) as refusal:
        read_body(Request(environ), LIMIT)
    assert refusal.value.description == "The body broke off before its end, or its chunks cannot be read."


@pytest.mark.parametrize("coding", ["gzip", "br", "deflate, gzip"])
def test_a_compressed_body_is_refused_before_it_is_read(coding: str) -> None:
    environ = EnvironBuilder(method="POST", data=b"x", headers={"Content-Encoding": coding}).get_environ()
    with pytest.raises(Problem) as refusal:
        read_body(Request(environ), LIMIT)
    assert refusal.value.detail == "Send the body as it is, not compressed; leave Content-Encoding out."
