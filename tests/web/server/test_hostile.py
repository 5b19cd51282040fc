"""Requests that are no honest HTTP, as bytes on a socket, and bodies as they really come: each gets its 4xx, once."""

from __future__ import annotations

import gzip
import json
import socket

import pytest
import requests

from dividing.web.limits import BATCH_BODY_MOST, BODY_MOST

RIGHT = b'{"work": {"divisions": 28}}'
HOST = b"Host: shop"
JSON = b"Content-Type: application/json"
CHUNKED = b"Transfer-Encoding: chunked"
BATCH = b"/v1/solve/batch"
SHEET = b"Content-Type: text/csv"


def post(*headers: bytes, body: bytes = b"", path: bytes = b"/v1/solve") -> bytes:
    """A request with these headers and no others, after which the connection ends."""
    return b"\r\n".join([b"POST %b HTTP/1.1" % path, *headers, b"Connection: close", b"", body])


def whole(*headers: bytes, body: bytes = RIGHT, path: bytes = b"/v1/solve") -> bytes:
    """The same with its length told."""
    return post(*headers, b"Content-Length: %d" % len(body), body=body, path=path)


def in_chunks(body: bytes, *headers: bytes, path: bytes = b"/v1/solve") -> bytes:
    """The same in chunks."""
    pieces = [body[at : at + 10_000] for at in range(0, len(body), 10_000)]
    sent = b"".join(b"%x\r\n%b\r\n" % (len(piece), piece) for piece in pieces) + b"0\r\n\r\n"
    return post(*(headers or (HOST, JSON)), CHUNKED, body=sent, path=path)


def get(path: bytes, *headers: bytes) -> bytes:
    return b"\r\n".join([b"GET %b HTTP/1.1" % path, *headers, b"Connection: close", b"", b""])


def heard(base: str, words: bytes) -> bytes:
    """All that the service says to these words until it hangs up."""
    host, _, port = base.removeprefix("http://").partition(":")
    said = b""
    with socket.create_connection((host, int(port)), timeout=20) as caller:
        caller.sendall(words)
        while data := caller.recv(65536):
            said += data
    return said


REFUSED_BY_THE_SERVER = {
    "no Host": (whole(JSON), 400),
    "no Host, and no body": (get(b"/health"), 400),
    "two Hosts": (whole(HOST, HOST, JSON), 400),
    "a header of 9,000 characters": (whole(HOST, JSON, b"X-Note: " + b"x" * 9_000), 431),
    "200 headers": (whole(HOST, JSON, *[b"X-%d: y" % number for number in range(200)]), 431),
    "a megabyte of headers": (whole(HOST, JSON, *[b"X-%d: %b" % (number, b"y" * 8_000) for number in range(125)]), 431),
    "an address of 9,000 characters": (get(b"/v1/solve?divisions=" + b"9" * 9_000, HOST), 414),
    "NUL in the address": (get(b"/\x00", HOST), 400),
    "NUL in a header": (whole(HOST, JSON, b"X-Note: a\x00b"), 400),
    "a folded header": (whole(HOST, JSON, b"X-Note: a\r\n b"), 400),
    "a space before the colon": (whole(HOST, JSON, b"X-Note : a"), 400),
    "a length as Python writes it": (post(HOST, JSON, b"Content-Length: 2_7", body=RIGHT), 400),
    "a length with its sign": (post(HOST, JSON, b"Content-Length: +27", body=RIGHT), 400),
    "a length and chunks": (post(HOST, JSON, CHUNKED, b"Content-Length: 27", body=RIGHT), 400),
    "chunks without a size": (post(HOST, JSON, CHUNKED, body=b"\r\n" + RIGHT), 400),
    "chunks of less than nothing": (post(HOST, JSON, CHUNKED, body=b"-1\r\n\r\n0\r\n\r\n"), 400),
    "HTTP of another age": (b"GET / HTTP/9.9\r\nHost: shop\r\n\r\n", 400),
    "HTTP/2 said outright": (b"PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n", 400),
    "no HTTP at all": (b"\x00" * 100, 400),
}
REFUSED_BY_US = {
    "a body over the limit": (whole(HOST, JSON, body=b" " * BODY_MOST + RIGHT), 413, "too-large"),
    "chunks over the limit": (in_chunks(b" " * BODY_MOST + RIGHT), 413, "too-large"),
    "chunks far over the limit": (in_chunks(b" " * 3_000_000), 413, "too-large"),
    "a batch over its limit": (in_chunks(b" " * BATCH_BODY_MOST + RIGHT, path=BATCH), 413, "too-large"),
    "a length of ten gigabytes": (post(HOST, JSON, b"Content-Length: 10000000000"), 413, "too-large"),
    "a length of 400 digits": (post(HOST, JSON, b"Content-Length: " + b"9" * 400), 413, "too-large"),
    "no length and no chunks": (post(HOST, JSON), 400, "not-json"),
    "a compressed body": (
        whole(HOST, JSON, b"Content-Encoding: gzip", body=gzip.compress(RIGHT)), 415, "wrong-content-type",
    ),
    "a bomb of a megabyte": (
        whole(HOST, JSON, b"Content-Encoding: gzip", body=gzip.compress(b" " * 1_000_000)), 415, "wrong-content-type",
    ),
    "a compressed body in chunks": (
        in_chunks(gzip.compress(RIGHT), HOST, JSON, b"Content-Encoding: gzip"), 415, "wrong-content-type",
    ),
    "chunks that are compressed": (
        post(HOST, JSON, b"Transfer-Encoding: gzip, chunked", body=b"3\r\n\x1f\x8b\x08\r\n0\r\n\r\n"), 400, "not-json",
    ),
    "UTF-16": (whole(HOST, JSON, body=RIGHT.decode().encode("utf-16")), 400, "not-json"),
    "990 lists": (in_chunks(b"[" * 990), 400, "not-json"),
    "a sheet of one quote": (whole(HOST, SHEET, body=b'"', path=BATCH), 422, "wrong-field"),
    "a heading of a megabyte": (whole(HOST, SHEET, body=b"x" * 1_000_000, path=BATCH), 422, "wrong-field"),
    "a heading that is not closed": (
        whole(HOST, SHEET, body=b'"divisions' + b"\n28" * 300_000, path=BATCH), 422, "wrong-field",
    ),
    "a method that is none": (post(HOST, JSON).replace(b"POST", b"BREW"), 405, "wrong-method"),
}  # fmt: skip


@pytest.mark.parametrize(("words", "status"), REFUSED_BY_THE_SERVER.values(), ids=REFUSED_BY_THE_SERVER)
def test_what_is_no_honest_request_is_refused_once(live: str, words: bytes, status: int) -> None:
    said = heard(live, words)
    assert said.startswith(b"HTTP/1.1 %d " % status)
    assert b"Traceback" not in said


@pytest.mark.parametrize(("words", "status", "kind"), REFUSED_BY_US.values(), ids=REFUSED_BY_US)
def test_what_is_too_much_or_no_question_gets_its_problem(live: str, words: bytes, status: int, kind: str) -> None:
    head, _, body = heard(live, words).partition(b"\r\n\r\n")
    assert head.startswith(b"HTTP/1.1 %d " % status)
    assert b"Content-Type: application/problem+json" in head
    assert json.loads(body)["type"] == f"/docs#problem-{kind}"


def test_chunks_within_the_limit_and_a_host_of_the_old_protocol_are_answered(live: str) -> None:
    assert heard(live, in_chunks(RIGHT)).startswith(b"HTTP/1.1 200 ")
    assert heard(live, b"GET /health HTTP/1.0\r\n\r\n").startswith(b"HTTP/1.0 200 ")


@pytest.mark.parametrize(
    "line",
    [b'"28' + b"\n" + b"x" * 900_000, b"x" * 900_000, b'"' + b"28\n" * 300_000, b"28," * 300_000, b'""' * 400_000],
    ids=["a quote, then a megabyte", "a cell of a megabyte", "a quote that is never closed", "many cells", "quotes"],
)
def test_a_line_of_a_sheet_that_cannot_be_read_spoils_no_other(live: str, line: bytes) -> None:
    sheet = b"divisions\n28\n" + line
    told = requests.post(live + BATCH.decode(), data=sheet, headers={"Content-Type": "text/csv"}, timeout=20)
    if told.status_code == 200:
        assert told.text.splitlines()[1].startswith("28,200,plain,true,")
        assert "422" in told.text.splitlines()[2]
    else:
        assert told.status_code == 422
        assert "lines" in told.json()["detail"]
    assert len(told.content) < len(sheet) + 10_000


def test_the_service_is_as_well_as_before(live: str) -> None:
    for words, *_ in [*REFUSED_BY_THE_SERVER.values(), *REFUSED_BY_US.values()]:
        heard(live, words)
    assert requests.get(f"{live}/health", timeout=2).status_code == 200
