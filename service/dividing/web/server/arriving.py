"""When a request has arrived whole, told from its bytes as they come in.

The worker spends a thread on a request only when all of it is here, so that a tablet at the edge of the
network holds up nobody. gunicorn's parser stays the judge of what a request says; here bytes are only counted
(RFC 9112, sections 6 and 7.1). Where the two disagree the worker closes the connection, so a miscount cannot
change a meaning.
"""

import re

from dividing.web.limits import BATCH_BODY_MOST

HEAD_END = b"\r\n\r\n"
LONGEST_HEAD = 32 * 1024
# What is longer than the longest allowed goes to the application as far as it came, to be refused there.
LONGEST_BODY = BATCH_BODY_MOST
# Chunks of one byte each take six on the wire; no honest client comes near this.
LONGEST_WIRE = 4 * LONGEST_BODY

_FRAMING = re.compile(rb"\r\n(content-length|transfer-encoding|expect):[ \t]*([^\r\n]*)", re.IGNORECASE)
_HEX = re.compile(rb"[0-9A-Fa-f]{1,15}(?=[ \t;]|$)")


class Arrival:
    """The bytes of one connection that are not answered yet."""

    def __init__(self) -> None:
        self.held = bytearray()
        self._start_over()

    def _start_over(self) -> None:
        self.head_is_here = False
        self.wants_to_be_asked = False  # "Expect: 100-continue": the body comes when we say so
        self.is_cut_short = False
        self._searched = 0
        self._end: int | None = None
        self._next_chunk: int | None = None
        self._body_bytes = 0

    def end(self) -> int | None:
        """Where the first request ends among the bytes held, or None while some of it is missing."""
        if not self.head_is_here and not self._find_head():
            return len(self.held) if self._can_never_be_a_request() else None
        if self._next_chunk is not None:
            self._walk_chunks(self._next_chunk)
        if self._end is not None and self._end <= len(self.held):
            return self._end
        return len(self.held) if self.is_cut_short else None

    def take(self, end: int) -> bytes:
        """The request that ends there; what came after it is kept for the next one."""
        message = bytes(self.held[:end])
        del self.held[:end]
        self._start_over()
        return message

    def _find_head(self) -> bool:
        at = self.held.find(HEAD_END, max(0, self._searched - 3))
        self._searched = len(self.held)
        if at < 0:
            return False
        self.head_is_here = True
        self._read_framing(at)
        return True

    def _can_never_be_a_request(self) -> bool:
        # Bare line feeds, or bytes of another protocol: the parser refuses them at once, so why wait.
        held = self.held
        return bool(held) and (
            not (held[0] == 0x0D or held[:1].isalpha()) or held.count(b"\n") != held.count(b"\r\n")
        )

    def _read_framing(self, head_end: int) -> None:
        body_start = head_end + len(HEAD_END)
        self._end = body_start
        for name, value in _FRAMING.findall(self.held, 0, head_end):
            kind = name.lower()
            if kind == b"transfer-encoding":
                self._end, self._next_chunk = None, body_start
            elif kind == b"expect":
                self.wants_to_be_asked = True
            elif value.isdigit() and len(value) < 19 and self._next_chunk is None:
                self._end = body_start + int(value)
                self.is_cut_short = int(value) > LONGEST_BODY

    def _walk_chunks(self, at: int) -> None:
        while (size_end := self.held.find(b"\r\n", at)) >= 0:
            size = _HEX.match(self.held, at, size_end)
            if size is None:
                self.is_cut_short = True  # not chunked at all: the parser says what is wrong
                return
            length = int(size[0], 16)
            if length == 0:
                self._find_trailer_end(size_end)
                return
            if size_end + 4 + length > len(self.held):
                break
            self._body_bytes += length
            at = size_end + 4 + length
        self._next_chunk = at
        body_here = self._body_bytes + max(0, len(self.held) - at)
        self.is_cut_short = body_here > LONGEST_BODY + 64 or len(self.held) > LONGEST_WIRE

    def _find_trailer_end(self, size_end: int) -> None:
        trailer_end = self.held.find(HEAD_END, size_end)
        if trailer_end >= 0:
            self._end = trailer_end + len(HEAD_END)
            self._next_chunk = None
        elif len(self.held) - size_end > LONGEST_HEAD:
            self.is_cut_short = True
