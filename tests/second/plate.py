"""A plate drilled hole by hole on the head that is turned by hand, and work divided with it by counting holes.

Nothing is worked out beforehand: each hole is where the spindle stood when it was drilled, and the crank goes on from
hole to hole one at a time, wherever those really are.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import NamedTuple

from tests.second.head import DividingHead


class Told(NamedTuple):
    """What the schedule tells for one hole: the crank, then plate and crank together, or the dial from zero."""

    place: int
    turns: int
    spaces: int
    second_spaces: int = 0
    dial_degrees: Fraction | None = None


def drilled(
    head: DividingHead, schedule: Iterable[Told], *, circle: int, second: int | None = None, direct: bool = False
) -> list[Fraction]:
    """Where each hole was drilled, in turns of the plate, in the order round it."""
    holes: dict[int, Fraction] = {}
    for row in schedule:
        if row.dial_degrees is not None:
            head.turn_to_dial(row.turns, row.dial_degrees)
        elif direct:
            head.turn_direct(row.spaces, circle)
        else:
            head.turn_crank(row.turns, row.spaces, circle)
            if second is not None:
                head.turn_plate_and_crank(row.second_spaces, second)
        holes[row.place] = head.spindle % 1
    return [holes[place] for place in sorted(holes)]


def divided(divisions: int, ratio: int, holes: list[Fraction]) -> list[Fraction]:
    """Where each division is cut, in turns of the work, when the crank is counted round the plate hole by hole."""
    spaces = Fraction(ratio * len(holes), divisions)
    assert spaces.denominator == 1
    cuts, laps, pin = [], 0, 0
    for _ in range(divisions):
        cuts.append((laps + holes[pin]) / ratio)
        for _ in range(spaces.numerator):
            pin += 1
            if pin == len(holes):
                laps, pin = laps + 1, 0
    return cuts
