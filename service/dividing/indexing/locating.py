"""Lost count: where the head can be standing, from the hole that the pin is in and a rough reading of the scale.

The scale on the spindle nose is read to a degree or two, which leaves several cuts; the hole that the pin is in is
read exactly and leaves only a few of those. The cuts that agree with both come first, by how far the scale is off.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from .bounds import ROWS_MOST
from .faults import Fault, Refused, refuse_if_any
from .head import Head
from .positions import Row, rows
from .setup import Setup
from .work import Work

CANDIDATES_MOST = 20
GIVE_USUAL = Fraction(2, 360)
"""How far off a scale is read at a glance, in turns."""


@dataclass(frozen=True, slots=True)
class Seen:
    """What can be seen on a head that has lost count: the hole that the pin is in, counted from 0, the start hole
    (None where there is none to see); the scale's reading; and by how much that may be off. Angles are in turns."""

    spindle: Fraction
    hole: int | None = None
    give: Fraction = GIVE_USUAL


@dataclass(frozen=True, slots=True)
class Candidate:
    """A cut at which the head can be standing: how far the scale is off it, whether the hole agrees, and the next cut.

    `next` is the move that leads on, which after the last cut is the move home: None then."""

    row: Row
    off: Fraction
    hole_agrees: bool
    next: Row | None


def locate(work: Work, head: Head, setup: Setup, seen: Seen) -> tuple[Candidate, ...]:
    """The cuts at which the head can be standing, the likeliest first: the right hole, then the nearest reading.

    Nothing when no cut lies within the give of the reading. Raises `Refused` for a schedule too long to search
    and for a hole that the circle in use does not have.

    >>> from dividing.indexing.solving import solve
    >>> from dividing.indexing.work import Divisions
    >>> found = solve(Divisions(28), Head())
    >>> [one.row.cut for one in locate(found.work, head=found.head, setup=found.setups[0],
    ...                                seen=Seen(hole=14, spindle=Fraction(40, 360)))]
    [4]
    """
    if work.cuts > ROWS_MOST:
        sentence = f"A schedule of more than {ROWS_MOST:,} cuts is too long to search; split the work."
        raise Refused([Fault(("work",), sentence)])
    refuse_if_any(_hole_faults(setup, seen.hole))
    table = list(rows(work, head, setup))
    # Every row counts what is reached in the same parts of a turn, so readings are compared in whole parts.
    parts = table[0].reached_of[1] * seen.spindle.denominator
    near = [
        (not _agrees(row, seen), off, place)
        for place, row in enumerate(table)
        if (off := _parts_off(row, seen.spindle)) * seen.give.denominator <= seen.give.numerator * parts
    ]
    near.sort()
    if near and not near[0][0]:
        near = [found for found in near[:CANDIDATES_MOST] if not found[0]]
    return tuple(
        Candidate(
            table[place], Fraction(off, parts), not other_hole, table[place + 1] if place + 1 < len(table) else None
        )
        for other_hole, off, place in near[:CANDIDATES_MOST]
    )


def _hole_faults(setup: Setup, hole: int | None) -> list[Fault]:
    # Moves of whole turns serve on any circle, so the one that stands there says nothing.
    if hole is None or setup.move is None or setup.move.holes == 0 or hole < setup.move.circle:
        return []
    circle = setup.move.circle
    sentence = f"The circle of {circle} has no hole {hole}: count from 0, the start hole, to {circle - 1}."
    return [Fault(("seen", "hole"), sentence)]


def _parts_off(row: Row, spindle: Fraction) -> int:
    """How far the reading is from where the cut has the spindle, either way, in parts of 1/(both denominators)."""
    reached, under = row.reached_of
    whole = under * spindle.denominator
    apart = (reached * spindle.denominator - spindle.numerator * under) % whole
    return min(apart, whole - apart)


def _agrees(row: Row, seen: Seen) -> bool:
    return seen.hole is None or row.hole is None or row.hole == seen.hole
