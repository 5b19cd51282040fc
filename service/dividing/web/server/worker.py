"""The gunicorn worker: one loop that waits for all the slow callers, a few threads that do the work.

Why not one of gunicorn's own (27.0.1): "sync" and "gthread" keep a thread for every caller who has sent half
a request, and gthread's loop itself waits two seconds for each caller who does not hang up; "gevent" waits
well, but one long batch then stops every other caller of that worker, and a body that nobody reads is drained
without limit. Here no thread ever waits for a socket: it gets a whole request from memory and leaves a whole
answer in memory. What a request says and how an answer looks on the wire is gunicorn's code throughout.
"""

import os
import selectors
import time
from collections.abc import Callable
from contextlib import suppress
from typing import Any

from dividing.web.server.arriving import LONGEST_HEAD
from dividing.web.server.caller import Caller, Message, Stage
from dividing.web.server.crew import Crew
from dividing.web.server.door import LOOK_AWAY, OWN_THREAD, Door
from dividing.web.server.exchange import exchange, refusal

Task = tuple[Caller, Message]

# Threads share one interpreter, so they add fairness, not speed: this many long batches at once still leave
# room for a short question. Nearly all questions are done within the patience, and so one after the other.
THREADS = 16
PATIENCE = 0.02
TICK = 1.0
GO_ON = b"HTTP/1.1 100 Continue\r\n\r\n"
# A worker that has been told to stop still waits so many seconds. Who keeps a connection may be sending a request at
# that very moment; it is answered, with the word that the connection ends, before a silent one is closed.
LAST_WAITS = {Stage.SECURING: 3.0, Stage.IDLE: 2.0, Stage.ASKING: 3.0}


class PatientWorker(Door):
    """Serves many callers, however slow, from one process."""

    def __init__(self, *arguments: Any) -> None:
        super().__init__(*arguments)
        self.crew: Crew[Task] = Crew(self.work, THREADS, PATIENCE)

    def run(self) -> None:
        self.open_doors()
        self.selector.register(self.PIPE[0], selectors.EVENT_READ, self.wake)
        self.crew.begin()
        while self.alive:
            self.turn()
        self.finish()

    def turn(self) -> None:
        """Wait for whatever happens next and deal with it."""
        wait = TICK if self.look_back_at is None else LOOK_AWAY
        if self.crew.relieve():
            wait = min(wait, PATIENCE)
        for key, _ in self.selector.select(wait):
            react: Callable[[], None] = key.data
            react()
        now = time.monotonic()
        if self.alive and self.look_back_at is not None and now >= self.look_back_at:
            self.look_back()
        if now >= self.next_sweep:
            self.next_sweep = now + TICK
            self.sweep(now)

    def sweep(self, now: float) -> None:
        self.notify()
        self.alive = self.alive and self.ppid == os.getppid()
        for caller in [caller for caller in self.callers if caller.deadline < now]:
            self.expire(caller)

    def finish(self) -> None:
        """Answer who is here and who asks without delay, then go."""
        self.close_doors()
        began = time.monotonic()
        # The last tick is left for going before the master loses patience.
        while self.callers and time.monotonic() < began + self.cfg.graceful_timeout - TICK:
            for caller in self.callers:
                caller.deadline = min(caller.deadline, began + LAST_WAITS.get(caller.stage, caller.stage.value))
            self.turn()
        self.crew.dismiss()

    # The loop's side: nothing below may wait.

    def hear(self, caller: Caller) -> None:
        with self.handover:
            if caller.stage is OWN_THREAD:
                self.unwatch(caller)
                return
        if not caller.receive():
            self.drop(caller)
            return
        if caller.stage is Stage.IDLE:
            caller.enter(Stage.ASKING)
        self.consider(caller)

    def consider(self, caller: Caller) -> None:
        """Give the request to a thread if it is whole."""
        arrival = caller.arrival
        end = arrival.end()
        if end is not None:
            self.submit(caller, end, cut_short=arrival.is_cut_short)
        elif not arrival.head_is_here and len(arrival.held) > LONGEST_HEAD:
            self.refuse(caller, 431, "Request Header Fields Too Large")
        elif arrival.wants_to_be_asked and not caller.is_asked_to_go_on:
            caller.is_asked_to_go_on = True
            with suppress(OSError):
                caller.sock.send(GO_ON)

    def submit(self, caller: Caller, end: int, *, cut_short: bool = False, late: bool = False) -> None:
        caller.is_asked_to_go_on = False
        caller.enter(OWN_THREAD)
        self.crew.give((caller, Message(caller.arrival.take(end), cut_short, late)))

    def refuse(self, caller: Caller, status: int, reason: str) -> None:
        caller.answer, caller.stays = memoryview(refusal(status, reason)), False
        self.settle(caller)

    def expire(self, caller: Caller) -> None:
        if caller.stage is Stage.IDLE and caller.receive() and caller.arrival.held:
            # It came at the last moment.
            caller.enter(Stage.ASKING)
            self.consider(caller)
        elif caller.stage is not Stage.ASKING:
            self.drop(caller)
        elif caller.arrival.head_is_here:
            self.submit(caller, len(caller.arrival.held), late=True)
        else:
            self.refuse(caller, 408, "Request Timeout")

    def wake(self) -> None:
        with suppress(BlockingIOError):
            os.read(self.PIPE[0], 4096)
        while not self.done.empty():
            self.settle(self.done.get())

    def settle(self, caller: Caller) -> None:
        """An answer is ready: send what is left of it, then listen again or part."""
        if not caller.send():
            self.drop(caller)
        elif caller.answer:
            if caller.stage is not Stage.SENDING:
                caller.enter(Stage.SENDING)
                self.watch(caller, selectors.EVENT_WRITE, self.settle)
        elif caller.stays:
            caller.enter(Stage.ASKING if caller.arrival.held else Stage.IDLE)
            self.watch(caller, selectors.EVENT_READ, self.hear)
            self.consider(caller)
        else:
            self.part(caller)

    # The threads' side: no selector, and no socket but the first attempt to send.

    def work(self, task: Task) -> None:
        caller, message = task
        answer, caller.stays = exchange(self, caller, message)
        caller.answer = memoryview(answer)
        self.hand_back(caller)

    def hand_back(self, caller: Caller) -> None:
        intact = caller.send()
        with self.handover:
            # The usual end: all is sent, the selector still watches, and the loop need not wake.
            if intact and caller.stays and caller.is_watched and not (caller.answer or caller.arrival.held):
                caller.enter(Stage.IDLE)
                return
        self.done.put(caller)
        with suppress(BlockingIOError):
            os.write(self.PIPE[1], b"\0")
