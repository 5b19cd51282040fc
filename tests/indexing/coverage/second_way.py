"""A second way to what a head does with a number: every hole and every train tried, with nothing of the service's."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass, field
from fractions import Fraction
from math import gcd

from dividing.indexing.head import Head
from tests.second.gears import MOST_PLATE_TURNS, Shelf
from tests.second.holes import CompoundTable, block_moves, direct_settings, plain_settings


@dataclass
class Bench:
    """A head with its gears on the shelf, looked at number by number."""

    head: Head
    shelf: Shelf = field(init=False)
    pairs: CompoundTable = field(init=False)

    def __post_init__(self) -> None:
        self.shelf = shelf_of(self.head, self.head.change_gears)
        self.pairs = CompoundTable(self.head.plates, self.head.stop_circles)

    def way(self, number: int) -> tuple[str, int] | None:
        """(method, spaces a move) in the order of choosing; None where nothing is exact."""
        head, step = self.head, Fraction(1, number)
        crank = head.ratio * step
        if direct_settings(step, head.direct_circles):
            return "direct", 1
        if head.plates and plain_settings(crank, head.plates):
            return "plain", 1
        if self.geared(number, 1):
            return "differential", 1
        if self.pairs.exact(crank):
            return "compound", 1
        if head.dial and (head.ratio * head.dial.units(head.ratio) * step).denominator == 1:
            return "dial", 1
        spaces = (k for k in block_moves(number, min(12, number - 1)) if k > 1 and self.geared(number, k))
        every = next(spaces, None)
        return None if every is None else ("differential", every)

    def geared(self, number: int, spaces: int) -> bool:
        """Whether a train makes it exactly with so many spaces a move: every hole of every circle is tried."""
        return bool(self.shelf.known) and any(
            self._geared(number, spaces * circle) for face in self.head.plates for circle in face
        )

    def _geared(self, number: int, under: int) -> bool:
        """The plate would make (R under - holes N)/under turns for each of the spindle."""
        stands = self.head.ratio * under
        least = max(1, -(-(stands - MOST_PLATE_TURNS * under) // number))
        for holes in range(least, (stands + MOST_PLATE_TURNS * under) // number + 1):
            over = stands - holes * number
            common = gcd(over, under)
            if (over // common, under // common) in self.shelf.known:
                return True
        return False


def shelf_of(head: Head, gears: tuple[int, ...]) -> Shelf:
    """The gears on the shelf, with the idlers that the head wants."""
    idlers = head.idlers
    return Shelf(
        gears,
        {
            "simple": {"with": idlers.simple_with, "against": idlers.simple_against},
            "compound": {"with": idlers.compound_with, "against": idlers.compound_against},
        },
    )


def passed(head: Head, circles: Iterable[int], gears: tuple[int, ...]) -> set[tuple[int, int]]:
    """(places that the pin passes till it is back at a hole, turns of the spindle that it takes), up to twelve turns,
    for every circle and every train of the gears."""
    motions = [motion for motion in shelf_of(head, gears).trains if motion < head.ratio]
    passes = [circle * (head.ratio - motion) for circle in circles for motion in motions]
    return {(places.numerator, places.denominator) for places in passes if places.denominator <= 12}


def divided(numbers: Collection[int], made: Collection[tuple[int, int]]) -> set[int]:
    """The numbers that divide the places passed; several spaces a move are fewer than there are divisions."""
    return {
        number
        for number in numbers
        for places, turns in made
        if places % number == 0 and (turns == 1 or number > turns)
    }
