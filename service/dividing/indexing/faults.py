"""What can go wrong with a question, as values and as one small tree of exceptions.

    DividingError
    └── Refused        the question cannot be asked so; it holds every fault found, not only the first

A "no" to a question that can be asked is never raised: it is an answer, a `Declined` with its reason.
No exception here knows a status code: what a refusal becomes on the wire is the web's business.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

Path = tuple[str | int, ...]


@dataclass(frozen=True, slots=True)
class Fault:
    """One wrong field: the way to it from the value that was asked for, and what to change.

    >>> Fault(("plates", 0, 2), "A circle has 2 to 400 holes.").path
    ('plates', 0, 2)
    """

    path: Path
    sentence: str

    def under(self, *path: str | int) -> Fault:
        """The same fault seen from further out.

        >>> Fault(("ratio",), "Too large.").under("head").path
        ('head', 'ratio')
        """
        return Fault((*path, *self.path), self.sentence)


class DividingError(Exception):
    """The root of everything that this package raises on purpose."""


class Refused(DividingError):
    """The question cannot be asked so. `faults` holds each reason, with the way to its field.

    >>> str(Refused([Fault(("count",), "Give a whole number from 1.")]))
    'Give a whole number from 1.'
    """

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__(" ".join(fault.sentence for fault in self.faults))


def refuse_if_any(faults: list[Fault]) -> None:
    """Raise `Refused` when the list holds a fault; say nothing when it is empty.

    >>> refuse_if_any([])
    """
    if faults:
        raise Refused(faults)
