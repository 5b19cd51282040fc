"""How the head is set to drill a plate, and where each hole then stands.

A plate is drilled in one turn of the spindle like any other work, so its errors are those of the setup: nothing where
an exact setup exists, and otherwise what the nearest hole leaves, which never adds up from hole to hole.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from ..accuracy import keeps_count
from ..bounds import HOLES_LEAST, HOLES_MOST
from ..faults import Fault, Refused, refuse_if_any
from ..head import Head
from ..positions import Row, rows
from ..setup import MethodName, Rounded, Setup
from ..solving import solve
from ..work import Divisions

BY_NEAREST_PLACE: tuple[MethodName, ...] = ("nearest", "dial")
_ONE_CIRCLE: dict[MethodName, str] = {"compound": "The plate is to be drilled with one circle."}


@dataclass(frozen=True, slots=True)
class Drilling:
    """How a plate is drilled: the work, the head set for it, the way it is set, and a row for each hole as drilled."""

    work: Divisions
    head: Head
    setup: Setup
    rows: tuple[Row, ...]

    @property
    def holes(self) -> int:
        """The holes of the plate."""
        return self.work.count

    @property
    def errors(self) -> tuple[Fraction, ...]:
        """How far each hole stands from its place, in turns of the plate, in the order round the plate.

        The first hole is the zero from which the others are told.

        >>> drilling(3, Head(plates=((4,),), direct_circles=(), ratio=1)).errors
        (Fraction(0, 1), Fraction(-1, 12), Fraction(1, 12))
        """
        return tuple(row.error for row in sorted(self.rows, key=lambda row: row.division))


def drilling(holes: int, head: Head, *, circles: int = 2) -> Drilling:
    """The head's best setup for a plate of so many holes: an exact one if there is one, else by nearest hole.

    `circles` keeps to one circle of the head, so that each hole is one move, or allows two. A table without plates is
    set by its dial. Raises `Refused` for a number of holes that no circle has (`holes`), or for more than the head
    has places for, since some would then fall on others (`head`).

    >>> [drilling(51, Head(), circles=most).setup.method for most in (2, 1)]
    ['compound', 'nearest']
    """
    if not HOLES_LEAST <= holes <= HOLES_MOST:
        raise Refused([Fault(("holes",), f"A circle has {HOLES_LEAST} to {HOLES_MOST} holes, not {holes:,}.")])
    work = Divisions(holes)
    barred = None if circles > 1 else _ONE_CIRCLE
    best = solve(work, head, limit=1, barred=barred).setups[0]
    if not best.exact:
        best = next(setup for setup in _nearest(work, head) if circles > 1 or setup.second is None)
        refuse_if_any(_too_coarse(work, best))
    return Drilling(work, head, best, tuple(rows(work, head, best)))


def _too_coarse(work: Divisions, setup: Setup) -> list[Fault]:
    if keeps_count(work, setup.accuracy):
        return []
    assert isinstance(setup.spacing, Rounded)
    sentence = (
        f"This head has {setup.spacing.points} places round the plate, too few for {work.count} holes. Drill fewer "
        "holes, or drill them on another head."
    )
    return [Fault(("head",), sentence)]


def _nearest(work: Divisions, head: Head) -> tuple[Setup, ...]:
    return solve(work, head, methods=BY_NEAREST_PLACE).setups
