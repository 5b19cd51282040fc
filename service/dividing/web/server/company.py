"""How many callers each worker has, where all workers see it.

All of them wait at one door, and whoever wakes first would let in everybody who stands there: sixteen tablets that keep
their connections would then share one core while the other rests. So a worker that has more callers than another looks
away for a moment.
"""

import mmap

# Twice the most workers: while they are begun anew, the old ones are still there.
PLACES = 128
# Made when this is imported, before the workers are: they inherit the same piece of memory.
_BOARD = memoryview(mmap.mmap(-1, 4 * PLACES)).cast("I")
_NOBODY = 0


class Place:
    """A worker's own place on the board; `age` numbers the workers of one master."""

    def __init__(self, age: int) -> None:
        self.at = age % PLACES
        self.is_left = False

    def tell(self, callers: int) -> None:
        """Let the others know how many callers this worker has, while it lets any in."""
        if not self.is_left:
            _BOARD[self.at] = callers + 1

    def leave(self) -> None:
        """This worker takes no more callers, or it is gone."""
        self.is_left = True
        _BOARD[self.at] = _NOBODY

    def has_most(self) -> bool:
        """Whether another worker has fewer callers than this one."""
        return _BOARD[self.at] > min(filter(None, _BOARD), default=_NOBODY)
