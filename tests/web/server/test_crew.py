"""The threads that do the work: every task once, the last one busy first, in turn when all are busy."""

from __future__ import annotations

import threading
from queue import SimpleQueue

from dividing.web.server.crew import Crew

WAIT = 10


def test_every_task_is_done_once_whoever_does_it() -> None:
    done: SimpleQueue[int] = SimpleQueue()
    crew = Crew(done.put, 4)
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

    crew = Crew(work, 1)
    crew.begin()
    for task in range(20):
        crew.give(task)
    go_on.set()
    assert [done.get(timeout=WAIT) for _ in range(20)] == list(range(20))
    crew.dismiss()


def test_one_caller_after_the_other_is_served_by_the_same_thread() -> None:
    seen: SimpleQueue[str] = SimpleQueue()
    crew = Crew(lambda _: seen.put(threading.current_thread().name), 8)
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
    crew = Crew(done.put, 3)
    crew.begin()
    threads = set(threading.enumerate()) - before
    for task in range(10):
        crew.give(task)
    crew.dismiss()
    for thread in threads:
        thread.join(WAIT)
        assert not thread.is_alive()
    assert sorted(done.get(timeout=WAIT) for _ in range(10)) == list(range(10))
