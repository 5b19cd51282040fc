"""Where a request ends is told from its bytes alone, however they are parted on the way."""

import pytest

from dividing.web.server import arriving
from dividing.web.server.arriving import LONGEST_BODY, Arrival

GET = b"GET /health HTTP/1.1\r\nHost: shop\r\n\r\n"
POST = b"POST /v1/solve HTTP/1.1\r\nHost: shop\r\n"
WITH_LENGTH = POST + b"Content-Length: 5\r\n\r\nabcde"
EMPTY = POST + b"content-length:0\r\n\r\n"
CHUNKED = POST + b"Transfer-Encoding: chunked\r\n\r\n"
IN_CHUNKS = CHUNKED + b"3\r\nabc\r\nA;note=1\r\n0123456789\r\n0\r\n\r\n"
# A chunk whose bytes look like the end of a body.
FALSE_END = CHUNKED + b"b\r\nab\r\n0\r\n\r\nab\r\n0\r\n\r\n"
WITH_TRAILER = CHUNKED + b"1\r\nx\r\n0\r\nCheck: 7\r\n\r\n"
WHOLE = {
    "no body": GET, "length": WITH_LENGTH, "length nought": EMPTY, "chunks": IN_CHUNKS, "false end": FALSE_END,
    "trailer": WITH_TRAILER,
}


def arrival(data: bytes) -> Arrival:
    arriving_now = Arrival()
    arriving_now.held += data
    return arriving_now


@pytest.mark.parametrize("request_bytes", WHOLE.values(), ids=WHOLE)
def test_a_request_is_whole_with_its_last_byte_and_not_before(request_bytes: bytes) -> None:
    byte_by_byte = Arrival()
    for at, byte in enumerate(request_bytes):
        assert byte_by_byte.end() is None, f"whole after {at} bytes"
        byte_by_byte.held.append(byte)

    assert byte_by_byte.end() == len(request_bytes)
    assert not byte_by_byte.is_cut_short


@pytest.mark.parametrize("first", WHOLE.values(), ids=WHOLE)
@pytest.mark.parametrize("second", WHOLE.values(), ids=WHOLE)
def test_two_requests_in_one_packet_are_taken_one_by_one(first: bytes, second: bytes) -> None:
    both = arrival(first + second)

    for expected in (first, second):
        end = both.end()
        assert end is not None
        assert both.take(end) == expected
    assert both.end() is None


@pytest.mark.parametrize("parts", range(2, 12))
def test_how_the_bytes_are_parted_changes_nothing(parts: int) -> None:
    together = IN_CHUNKS + WITH_LENGTH + WITH_TRAILER + GET
    size = -(-len(together) // parts)
    caller, taken = Arrival(), []
    for at in range(0, len(together), size):
        caller.held += together[at:at + size]
        while (end := caller.end()) is not None:
            taken.append(caller.take(end))

    assert taken == [IN_CHUNKS, WITH_LENGTH, WITH_TRAILER, GET]


@pytest.mark.parametrize(
    "hopeless",
    [b"GET / HTTP/1.1\nHost: shop\n\n", b"\x16\x03\x01\x02\x00\x01", b" GET / HTTP/1.1\r\n"],
    ids=["bare line feeds", "TLS", "a space before it"],
)
def test_what_can_never_be_a_request_is_passed_on_at_once(hopeless: bytes) -> None:
    assert arrival(hopeless).end() == len(hopeless)


def test_chunks_that_are_none_are_passed_on_at_once() -> None:
    broken = arrival(CHUNKED + b"zz\r\nabc")

    assert broken.end() == len(broken.held)
    assert broken.is_cut_short


@pytest.mark.parametrize(
    ("head", "body"),
    [
        (POST + b"Content-Length: %d\r\n\r\n" % (LONGEST_BODY + 1), b""),
        (CHUNKED, b"%x\r\n" % (LONGEST_BODY * 2) + b"x" * (LONGEST_BODY + 100)),
        (CHUNKED, b"400\r\n" + b"x" * 1024 + b"\r\n"),
        (CHUNKED, b"1\r\nx\r\n"),
        (CHUNKED + b"0\r\n", b"Trailer: x\r\n"),
    ],
    ids=["by its length", "in one chunk", "in many chunks", "in crumbs", "in trailers"],
)
def test_a_body_past_the_longest_is_passed_on_as_far_as_it_came(head: bytes, body: bytes) -> None:
    endless = arrival(head)
    while endless.end() is None:
        assert len(endless.held) < 2 * arriving.LONGEST_WIRE
        endless.held += body * 1000 if len(body) < 2000 else body

    assert endless.end() == len(endless.held)
    assert endless.is_cut_short


def test_a_length_at_the_limit_is_waited_for() -> None:
    allowed = arrival(POST + b"Content-Length: %d\r\n\r\n" % LONGEST_BODY + b"x" * (LONGEST_BODY - 1))
    assert allowed.end() is None

    allowed.held += b"x"
    assert allowed.end() == len(allowed.held)


def test_a_caller_who_waits_to_be_asked_for_the_body_is_noticed() -> None:
    polite = arrival(POST + b"Expect: 100-continue\r\nContent-Length: 2\r\n\r\n")

    assert polite.end() is None
    assert polite.head_is_here
    assert polite.wants_to_be_asked
