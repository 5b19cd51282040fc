"""Who comes in and who goes: the connections of a worker, and what its loop watches them for."""

import queue
import selectors
import socket
import threading
import time
from abc import ABC, abstractmethod
from collections.abc import Callable
from functools import partial
from typing import Any

from gunicorn import util
from gunicorn.sock import ssl_context
from gunicorn.workers.base import Worker

from dividing.web.server.caller import Caller, Stage
from dividing.web.server.company import Place
from dividing.web.server.secure import awaited, begun, say_goodbye

OWN_THREAD = Stage.SOLVING
# Seconds that a worker with more callers than another leaves a new one to that other.
LOOK_AWAY = 0.01
AT_ONCE = 4


class Door(Worker, ABC):  # type: ignore[misc]  # gunicorn has no type hints
    """A worker that keeps its callers in one loop; nothing here may wait."""

    alive: bool

    def __init__(self, *arguments: Any) -> None:
        super().__init__(*arguments)
        self.callers: set[Caller] = set()
        self.done: queue.SimpleQueue[Caller] = queue.SimpleQueue()
        self.handover = threading.Lock()
        self.next_sweep = 0.0
        self.place = Place(self.age)
        self.look_back_at: float | None = None

    @abstractmethod
    def hear(self, caller: Caller) -> None:
        """Bytes have come in, or the other side has closed."""

    def open_doors(self) -> None:
        # Made here and not above: that runs before the fork, and workers must not share a selector.
        self.selector = selectors.DefaultSelector()
        # Read again by each worker that begins, so that a renewed certificate is taken up with HUP.
        self.tls = ssl_context(self.cfg) if self.cfg.is_ssl else None
        for listener in self.sockets:
            listener.setblocking(False)
        self.place.tell(0)
        self.look_at_doors()

    def look_at_doors(self) -> None:
        for listener in self.sockets:
            self.selector.register(listener, selectors.EVENT_READ, partial(self.greet, listener))
        self.look_back_at = None

    def look_away(self) -> None:
        for listener in self.sockets:
            self.selector.unregister(listener)
        self.look_back_at = time.monotonic() + LOOK_AWAY

    def greet(self, listener: Any) -> None:
        """Somebody stands at a door: let one in, or leave it to a worker that has fewer."""
        if not self.place.has_most():
            self.accept(listener)
        elif self.look_back_at is None:
            self.look_away()

    def look_back(self) -> None:
        """The time to look away is over: whoever still stands there is let in, for the others are busy."""
        self.look_at_doors()
        for listener in self.sockets:
            for _ in range(AT_ONCE):
                if not self.accept(listener):
                    break

    def close_doors(self) -> None:
        """Let in who stands in the queue and then nobody: what is in the queue of a closed socket is lost."""
        self.place.leave()
        if self.look_back_at is None:
            self.look_away()
        for listener in self.sockets:
            while len(self.callers) < self.cfg.worker_connections and self.accept(listener):
                pass
            listener.close()

    def accept(self, listener: Any) -> bool:
        """Let one caller in; False when nobody stood there."""
        try:
            sock, address = listener.accept()
        except BlockingIOError:
            return False  # another worker was quicker
        except OSError:
            self.make_room()  # no file descriptor left
            return False
        sock.setblocking(False)
        if len(self.callers) >= self.cfg.worker_connections:
            self.make_room()
        self.welcome(sock, address, listener.getsockname())
        return True

    def welcome(self, sock: socket.socket, address: object, server: object) -> None:
        try:
            caller = Caller(begun(sock, self.tls), address, server)
        except OSError:
            util.close(sock)
            return
        self.callers.add(caller)
        self.place.tell(len(self.callers))
        caller.enter(Stage.SECURING)
        self.secure(caller)

    def secure(self, caller: Caller) -> None:
        """Go on with the handshake as far as it goes without waiting."""
        try:
            event = awaited(caller.sock)
        except OSError:
            self.drop(caller)
            return
        if event:
            self.watch(caller, event, self.secure)
        else:
            caller.enter(Stage.IDLE)
            self.watch(caller, selectors.EVENT_READ, self.hear)

    def make_room(self) -> None:
        waiting = [caller for caller in self.callers if caller.stage is not OWN_THREAD]
        if waiting:
            self.drop(min(waiting, key=lambda caller: caller.deadline))

    def watch(self, caller: Caller, event: int, react: Callable[[Caller], None]) -> None:
        change = self.selector.modify if caller.is_watched else self.selector.register
        change(caller.sock, event, partial(self.call, react, caller))
        caller.is_watched = True

    def call(self, react: Callable[[Caller], None], caller: Caller) -> None:
        # One round of events may drop a caller who has another event in the same round.
        if not caller.is_gone:
            react(caller)

    def unwatch(self, caller: Caller) -> None:
        if caller.is_watched:
            self.selector.unregister(caller.sock)
            caller.is_watched = False

    def drop(self, caller: Caller) -> None:
        self.unwatch(caller)
        self.callers.discard(caller)
        self.place.tell(len(self.callers))
        caller.is_gone = True
        util.close(caller.sock)

    def part(self, caller: Caller) -> None:
        say_goodbye(caller.sock)
        # RFC 9112, section 9.6: closing with unread bytes would destroy the answer on its way.
        try:
            caller.sock.shutdown(socket.SHUT_WR)
        except OSError:
            self.drop(caller)
            return
        caller.enter(Stage.PARTING)
        self.watch(caller, selectors.EVENT_READ, self.hear_out)

    def hear_out(self, caller: Caller) -> None:
        if not caller.receive():
            self.drop(caller)
