"""The threads that do the work. Whoever was busy last gets the next task: what it needs still lies in the processor's
caches, while taking turns would let each of them find its own things cold."""

import threading
from collections import deque
from collections.abc import Callable
from queue import SimpleQueue
from typing import Generic, TypeVar

Task = TypeVar("Task")


class Crew(Generic[Task]):
    """So many threads that do `work` with one task after the other; tasks wait in turn while all are busy."""

    def __init__(self, work: Callable[[Task], None], size: int) -> None:
        self._work = work
        self._size = size
        self._idle: list[SimpleQueue[Task | None]] = []
        self._waiting: deque[Task | None] = deque()
        self._lock = threading.Lock()

    def begin(self) -> None:
        """Start the threads; not before a fork, which would not take them along."""
        for number in range(self._size):
            threading.Thread(target=self._serve, name=f"solving-{number}", daemon=True).start()

    def give(self, task: Task) -> None:
        """A task for whoever is free first."""
        self._hand_out(task)

    def dismiss(self) -> None:
        """Let every thread go once it has nothing left to do."""
        for _ in range(self._size):
            self._hand_out(None)

    def _hand_out(self, task: Task | None) -> None:
        with self._lock:
            if not self._idle:
                self._waiting.append(task)
                return
            letterbox = self._idle.pop()
        letterbox.put(task)

    def _serve(self) -> None:
        letterbox: SimpleQueue[Task | None] = SimpleQueue()
        while (task := self._next(letterbox)) is not None:
            self._work(task)

    def _next(self, letterbox: "SimpleQueue[Task | None]") -> Task | None:
        with self._lock:
            if self._waiting:
                return self._waiting.popleft()
            self._idle.append(letterbox)
        return letterbox.get()
