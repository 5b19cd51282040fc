"""The threads that do the work. They share one interpreter, so two at once only take each other's time: sixteen short
questions side by side are all answered last. One begins when the one before it is done, or has taken so long that
whoever comes after should not have to wait for it.

Whoever was busy last gets the next task: what it needs still lies in the processor's caches, while taking turns would
let each of them find its own things cold."""

import threading
from collections import deque
from collections.abc import Callable
from queue import SimpleQueue
from time import monotonic
from typing import Generic, TypeVar

Task = TypeVar("Task")


class Crew(Generic[Task]):
    """So many threads that do `work` with one task after the other; one that has taken `patience` seconds holds up
    nobody any more, as long as another thread is free."""

    def __init__(self, work: Callable[[Task], None], size: int, patience: float) -> None:
        self._work = work
        self._size = size
        self._patience = patience
        self._idle: list[SimpleQueue[Task | None]] = []
        self._waiting: deque[Task] = deque()
        self._lock = threading.Lock()
        self._front: SimpleQueue[Task | None] | None = None
        """Of whoever began last, until that task is done."""
        self._begun = 0.0
        self._is_dismissed = False

    def begin(self) -> None:
        """Start the threads; not before a fork, which would not take them along."""
        for number in range(self._size):
            threading.Thread(target=self._serve, name=f"solving-{number}", daemon=True).start()

    def give(self, task: Task) -> None:
        """A task, to be done in its turn."""
        with self._lock:
            self._waiting.append(task)
            self._hand_out()

    def relieve(self) -> bool:
        """Let the next task begin if the one before it takes long; True while any waits. To be asked again before
        `patience` is over."""
        if not self._waiting:
            return False
        with self._lock:
            self._hand_out()
            return bool(self._waiting)

    def dismiss(self) -> None:
        """Let every thread go once it has nothing left to do."""
        with self._lock:
            self._is_dismissed = True
            for letterbox in self._idle:
                letterbox.put(None)
            self._idle.clear()

    def _hand_out(self) -> None:
        if self._idle and self._may_begin():
            letterbox = self._idle.pop()
            letterbox.put(self._begin(letterbox))

    def _may_begin(self) -> bool:
        return bool(self._waiting) and (self._front is None or monotonic() >= self._begun + self._patience)

    def _begin(self, letterbox: "SimpleQueue[Task | None]") -> Task:
        self._front, self._begun = letterbox, monotonic()
        return self._waiting.popleft()

    def _serve(self) -> None:
        letterbox: SimpleQueue[Task | None] = SimpleQueue()
        while (task := self._next(letterbox)) is not None:
            self._work(task)

    def _next(self, letterbox: "SimpleQueue[Task | None]") -> Task | None:
        with self._lock:
            if self._front is letterbox:
                self._front = None
            if self._may_begin():
                return self._begin(letterbox)
            if self._is_dismissed:
                return None
            self._idle.append(letterbox)
        return letterbox.get()
