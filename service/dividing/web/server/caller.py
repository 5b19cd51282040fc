"""One connection: what has come in, what still has to go out, and until when we wait for the other side."""

import socket
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from enum import Enum

from werkzeug.exceptions import RequestEntityTooLarge, RequestTimeout

from dividing.web.server.arriving import Arrival
from dividing.web.server.secure import NOT_YET


class Stage(Enum):
    """What the worker waits for on a connection; the value is how many seconds it waits."""

    # No two numbers alike: an enumeration would take the stages for one.
    SECURING = 12.0  # the handshake of TLS
    IDLE = 10.0  # the first byte of a request
    ASKING = 15.0  # the rest of it
    SOLVING = float("inf")  # one of our own threads
    SENDING = 60.0  # room for the rest of the answer
    PARTING = 5.0  # the other side to close, so that it reads our last words before the connection goes


@dataclass(frozen=True)
class Message:
    """The bytes of one request and, if some are missing, why the application will not get them."""

    head_and_body: bytes
    cut_short: bool = False
    late: bool = False

    @property
    def is_whole(self) -> bool:
        return not (self.cut_short or self.late)

    def pieces(self) -> Iterator[bytes]:
        """What gunicorn's parser reads from; the application meets the refusal where it reads the body."""
        yield self.head_and_body
        if self.cut_short:
            raise RequestEntityTooLarge
        if self.late:
            raise RequestTimeout


@dataclass(eq=False)
class Caller:
    """One connection, at one stage at a time."""

    sock: socket.socket
    address: object
    server: object
    arrival: Arrival = field(default_factory=Arrival)
    stage: Stage = Stage.IDLE
    deadline: float = 0.0
    # The selector watches the socket; it stops when bytes come in while a thread is busy with this caller.
    is_watched: bool = False
    is_gone: bool = False
    is_asked_to_go_on: bool = False
    stays: bool = True
    answer: memoryview = field(default_factory=lambda: memoryview(b""))

    def enter(self, stage: Stage) -> None:
        self.stage = stage
        self.deadline = time.monotonic() + stage.value

    def receive(self) -> bool:
        """Take in what has come; False when the other side has closed or is broken."""
        try:
            data = self.sock.recv(65536)
        except NOT_YET:
            return True
        except OSError:
            return False
        if self.stage is not Stage.PARTING:
            self.arrival.held += data
        return bool(data)

    def send(self) -> bool:
        """Send what the system takes without waiting; False when the connection is broken."""
        if not self.answer:
            return True
        try:
            sent = self.sock.send(self.answer)
        except NOT_YET:
            return True
        except OSError:
            return False
        self.answer = self.answer[sent:]
        return True
