"""The dividing head or rotary table that stands on the machine, as values that cannot be wrong once made."""

from __future__ import annotations

from dataclasses import dataclass, fields
from fractions import Fraction
from functools import cached_property
from itertools import combinations
from math import gcd, lcm

from . import bounds
from .faults import Fault, refuse_if_any
from .head_faults import head_faults

Plate = tuple[int, ...]

SET_ONE: tuple[Plate, ...] = ((15, 16, 17, 18, 19, 20), (21, 23, 27, 29, 31, 33), (37, 39, 41, 43, 47, 49))
"""Source: Introduction to Machining 1, open textbook, section 9.19, component list."""
TWELVE_GEARS = (24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100)
"""Source: solved exercise sheet on the dividing head, Spanish technical school, data for all exercises."""


@dataclass(frozen=True, slots=True)
class Idlers:
    """How many idlers make the plate turn with the crank, and how many against it, on this head.

    The defaults are the usual construction (A Practical Treatise on Milling, 1914; Indian workshop text on
    differential indexing, p. 1). Heads differ, so the operator tries the direction before cutting.

    >>> Idlers().needed(gears=2, direction="against")
    2
    """

    simple_with: int = 1
    simple_against: int = 2
    compound_with: int = 0
    compound_against: int = 1

    def __post_init__(self) -> None:
        faults = [
            Fault((train, way), "Idlers are counted in whole gears, 0 to 4.")
            for train in ("simple", "compound")
            for way in ("with", "against")
            if not 0 <= getattr(self, f"{train}_{way}") <= 4
        ]
        faults += [
            Fault((train,), f"With the same number of idlers a {train} train turns the plate one way only.")
            for train in ("simple", "compound")
            if (getattr(self, f"{train}_with") - getattr(self, f"{train}_against")) % 2 == 0
        ]
        refuse_if_any(faults)

    def needed(self, *, gears: int, direction: str) -> int:
        """Idlers that a train of 2 or 4 gears takes for the plate to turn "with" or "against" the crank."""
        if gears == 2:
            return self.simple_with if direction == "with" else self.simple_against
        return self.compound_with if direction == "with" else self.compound_against


@dataclass(frozen=True, slots=True)
class Screw:
    """The lead screw of the table: how far one turn moves it.

    >>> Screw(lead=Fraction(1, 4), unit="in").millimetres
    Fraction(127, 20)
    """

    lead: Fraction
    unit: str

    def __post_init__(self) -> None:
        faults = []
        if not 0 < self.lead <= 1000:
            faults.append(Fault(("lead",), "The table screw's lead is more than 0 and at most 1000."))
        if self.unit not in ("mm", "in"):
            faults.append(Fault(("unit",), 'The unit of the screw\'s lead is "mm" or "in".'))
        refuse_if_any(faults)

    @property
    def millimetres(self) -> Fraction:
        """The lead in millimetres, exactly."""
        return self.lead * (Fraction(127, 5) if self.unit == "in" else 1)


@dataclass(frozen=True, slots=True)
class Dial:
    """The graduated dial of a rotary table: in degrees (with or without a vernier), or in plain divisions.

    `graduation` and `vernier` are turns of the spindle; `divisions` are marks round the whole dial.

    >>> Dial(graduation=Fraction(1, 21600), vernier=Fraction(1, 129600)).units(90)
    1440
    >>> Dial(divisions=100).units(90)
    100
    """

    graduation: Fraction | None = None
    vernier: Fraction | None = None
    divisions: int | None = None

    def __post_init__(self) -> None:
        refuse_if_any(self._faults())

    def _faults(self) -> list[Fault]:
        if (self.graduation is None) == (self.divisions is None):
            return [Fault((), "A dial has either a graduation in degrees or a number of plain divisions.")]
        if self.divisions is not None:
            wrong = not 1 <= self.divisions <= bounds.DIAL_UNITS_MOST
            faults = [Fault(("divisions",), f"A dial has 1 to {bounds.DIAL_UNITS_MOST:,} divisions.")] if wrong else []
            if self.vernier is not None:
                faults.append(Fault(("vernier",), "A vernier belongs to a dial in degrees; leave it out."))
            return faults
        assert self.graduation is not None
        if self.graduation <= 0:
            return [Fault(("graduation",), "The graduation of a dial is more than 0.")]
        if self.vernier is None:
            return []
        if self.vernier <= 0 or (self.graduation / self.vernier).denominator != 1:
            return [Fault(("vernier",), "The vernier splits one graduation into a whole number of parts.")]
        return []

    @property
    def finest(self) -> Fraction | None:
        """The smallest reading in turns of the spindle; None for a dial without degrees."""
        return self.vernier or self.graduation

    def units(self, ratio: int) -> int:
        """How many of the smallest readings one crank turn holds (0 when they do not come out whole)."""
        if self.divisions is not None:
            return self.divisions
        finest = self.finest
        assert finest is not None
        units = 1 / (ratio * finest)
        return units.numerator if units.denominator == 1 else 0


@dataclass(frozen=True)
class Head:
    """A dividing head: `ratio` crank turns make one spindle turn. Plates are counted from 1.

    Left out, everything is the usual head: 40, the three plates of set I, a direct plate of 24, no gears.
    Raises `Refused` with every fault at once.

    >>> Head().circles[:2], Head(mounted_plate=3).circles[0]
    (((20, 1), (19, 1)), (49, 3))
    """

    ratio: int = 40
    plates: tuple[Plate, ...] = SET_ONE
    mounted_plate: int = 1
    direct_circles: tuple[int, ...] = (24,)
    worm_disengages: bool = True
    change_gears: tuple[int, ...] = ()
    idlers: Idlers = Idlers()
    stop_circles: tuple[int, ...] | None = None
    screw: Screw | None = None
    dial: Dial | None = None

    def __post_init__(self) -> None:
        refuse_if_any(head_faults(self))

    @cached_property
    def circles(self) -> tuple[tuple[int, int], ...]:
        """Every circle once, as (holes, plate): the mounted plate first, then the larger circles first."""
        ranked = sorted(
            (
                (plate != self.mounted_plate, -circle, plate)
                for plate, faces in enumerate(self.plates, 1)
                for circle in faces
            )
        )
        seen: dict[int, int] = {}
        for _, negative, plate in ranked:
            seen.setdefault(-negative, plate)
        return tuple(seen.items())

    def __hash__(self) -> int:
        return self._hash

    @cached_property
    def _hash(self) -> int:
        """Made once: a head is the key of every table that is kept."""
        return hash(tuple(getattr(self, each.name) for each in fields(self)))

    @cached_property
    def holes_in_all(self) -> int:
        """Holes of all circles on the plates together."""
        return sum(map(sum, self.plates))

    @cached_property
    def largest_circle(self) -> int:
        """Holes of the largest circle on any plate; 0 without plates."""
        return max(map(max, self.plates), default=0)

    @cached_property
    def direct_ranked(self) -> tuple[int, ...]:
        """The circles of the direct plate, the larger first."""
        return tuple(sorted(self.direct_circles, reverse=True))

    @cached_property
    def plate_of(self) -> dict[int, int]:
        """The plate on which to use a circle, by its holes: the mounted one where it has it."""
        return dict(self.circles)

    @cached_property
    def pairs(self) -> tuple[tuple[int, int, int, int], ...]:
        """Pairs of circles for two moves, as (lcm, first, second, plate); the second is one the stop pin reaches.

        Of the two orders of a pair the one with the larger second circle stands first.
        """
        stops = self.stop_circles
        found = [
            (first * second // gcd(first, second), first, second, plate)
            for plate, face in enumerate(self.plates, 1)
            for larger, smaller in combinations(sorted(face, reverse=True), 2)
            for first, second in ((smaller, larger), (larger, smaller))
            if stops is None or second in stops
        ]
        return tuple(sorted(found, key=lambda pair: pair[3] != self.mounted_plate))

    @cached_property
    def pairs_by_lcm(self) -> dict[int, tuple[tuple[int, int, int, int], ...]]:
        """The pairs of circles by the grid that they make together, in the order of `pairs`."""
        grids: dict[int, list[tuple[int, int, int, int]]] = {}
        for pair in self.pairs:
            grids.setdefault(pair[0], []).append(pair)
        return {points: tuple(pairs) for points, pairs in grids.items()}

    @cached_property
    def direct_words(self) -> str:
        """What the direct plate has, for a sentence."""
        return f"The direct plate has {' or '.join(map(str, self.direct_ranked))} holes"

    @cached_property
    def all_circles_together(self) -> int:
        """The smallest number that every circle divides: no circle is a multiple of what does not divide it."""
        return lcm(*(circle for circle, _ in self.circles))

    @cached_property
    def all_pairs_together(self) -> int:
        """The smallest number that every grid of two circles divides: a denominator that does not is made by none."""
        return lcm(*self.pairs_by_lcm)

    @cached_property
    def dial_units(self) -> int:
        """The smallest dial readings in one crank turn; 0 without a dial."""
        return self.dial.units(self.ratio) if self.dial else 0
