"""The threads that do the work: every task once, one after the other, but nobody waits for one that takes long."""

from __future__ import annotations

import threading
import time
from queue import SimpleQueue

from dividing.web.server.crew import Crew

WAIT = 10
FOREVER = 1e9


def test_every_task_is_done_once_whoever_does_it() -> None:
    done: SimpleQueue[int] = SimpleQueue()
    crew = Crew(done.put, 4, 0)
    crew.begin()
    for task in range(500):
        crew.give(task)
    assert sorted(done.get(timeout=WAIT) for _ in range(500)) == list(range(500))
    assert done.empty()
    crew.dismiss()


def test_tasks_wait_in_turn_while_all_are_busy() -> None:
    go_on, done = threading.Event(), SimpleQueue[int]()

    def work(task: int) -> None:
        go_on.wait(WAIT)
        done.put(task)

    crew = Crew(work, 1, 0)
    crew.begin()
    for task in range(20):
        crew.give(task)
    go_on.set()
    assert [done.get(timeout=WAIT) for _ in range(20)] == list(range(20))
    crew.dismiss()


class Gated:
    """A crew of four whose every task is begun, waits to be let go on, and is done."""

    def __init__(self, patience: float) -> None:
        self.gates = {task: threading.Event() for task in ("first", "second", "third")}
        self.begun, self.done = SimpleQueue[str](), SimpleQueue[str]()
        self.crew = Crew(self.work, 4, patience)
        self.crew.begin()

    def work(self, task: str) -> None:
        self.begun.put(task)
        self.gates[task].wait(WAIT)
        self.done.put(task)

    def end(self, task: str) -> None:
        self.gates[task].set()
        assert self.done.get(timeout=WAIT) == task


def test_a_task_waits_for_the_one_before_it_though_others_are_free() -> None:
    gated = Gated(FOREVER)
    gated.crew.give("first")
    gated.crew.give("second")
    assert gated.begun.get(timeout=WAIT) == "first"
    assert gated.crew.relieve()
    assert gated.begun.empty()
    gated.end("first")
    assert gated.begun.get(timeout=WAIT) == "second"
    assert not gated.crew.relieve()
    gated.end("second")
    gated.crew.dismiss()


def test_nobody_waits_for_a_task_that_has_outlasted_the_patience() -> None:
    gated = Gated(0.05)
    gated.crew.give("first")
    gated.crew.give("second")
    end = time.monotonic() + WAIT
    while gated.crew.relieve() and time.monotonic() < end:
        time.sleep(0.01)
    assert [gated.begun.get(timeout=WAIT) for _ in range(2)] == ["first", "second"]
    gated.end("second")
    gated.end("first")
    gated.crew.dismiss()


def test_who_has_outlasted_the_patience_takes_nothing_up_beside_one_who_has_not() -> None:
    gated = Gated(0)
    gated.crew.give("first")
    assert gated.begun.get(timeout=WAIT) == "first"
    gated.crew._patience = FOREVER
    gated.crew._begun = -FOREVER
    gated.crew.give("second")
    gated.crew.give("third")
    assert gated.begun.get(timeout=WAIT) == "second"
    gated.end("first")
    assert gated.crew.relieve()  # the third waits for the second alone
    gated.end("second")
    assert gated.begun.get(timeout=WAIT) == "third"
    gated.end("third")
    gated.crew.dismiss()


def test_one_caller_after_the_other_is_served_by_the_same_thread() -> None:
    seen: SimpleQueue[str] = SimpleQueue()
    crew = Crew(lambda _: seen.put(threading.current_thread().name), 8, 0)
    crew.begin()
    names = []
    for task in range(50):
        while len(crew._idle) < 8:
            threading.Event().wait(0.001)
        crew.give(task)
        names.append(seen.get(timeout=WAIT))
    assert len(set(names)) == 1
    crew.dismiss()


def test_all_go_when_they_are_dismissed_and_have_done_what_was_waiting() -> None:
    before = set(threading.enumerate())
    done: SimpleQueue[int] = SimpleQueue()
    crew = Crew(done.put, 3, FOREVER)
    crew.begin()
    threads = set(threading.enumerate()) - before
    for task in range(10):
        crew.give(task)
    crew.dismiss()
    for thread in threads:
        thread.join(WAIT)
        assert not thread.is_alive()
    assert sorted(done.get(timeout=WAIT) for _ in range(10)) == list(range(10))
