"""What is to be divided: equal divisions, an angle repeated, or a list of angles from zero."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from math import gcd
from typing import ClassVar, TypeAlias

from . import bounds
from .angles import Angle
from .faults import Fault, Refused, refuse_if_any


@dataclass(frozen=True, slots=True)
class Divisions:
    """`count` equal divisions round the work, cut `every` spaces at a time (block indexing when above 1).

    `fixed` says that no other number of spaces a move may be tried, one included.

    >>> Divisions(73).step, Divisions(106, every=5).step
    (Fraction(1, 73), Fraction(5, 106))
    """

    count: int
    every: int = 1
    fixed: bool = False
    step: Fraction = field(init=False, compare=False, repr=False)
    """Turns of the spindle that one move should make."""
    rational: ClassVar[bool] = True
    """A division of a circle is always an exact fraction."""

    def __post_init__(self) -> None:
        if not 1 <= self.count <= bounds.DIVISIONS_MOST:
            sentence = f"Divisions are a whole number from 1 to {bounds.DIVISIONS_MOST:,}."
            raise Refused([Fault(("divisions",), sentence)])
        if self.every != 1:
            refuse_if_any(_every_faults(self.count, self.every))
        object.__setattr__(self, "step", Fraction(self.every, self.count))

    @property
    def cuts(self) -> int:
        """How many positions are cut."""
        return self.count

    def division(self, cut: int) -> int:
        """Where cut number `cut` (from 0) stands round the work, counted in divisions from 0.

        >>> [Divisions(7, every=3).division(cut) for cut in range(7)]
        [0, 3, 6, 2, 5, 1, 4]
        """
        return cut * self.every % self.count


def _every_faults(count: int, every: int) -> list[Fault]:
    if not 1 < every < count:
        return [
            Fault(
                ("every",),
                f"Spaces per move lie between 1 and {max(count - 1, 1):,} for {count:,} divisions.",
            )
        ]
    shared = gcd(every, count)
    if shared == 1:
        return []
    sentence = f"{every} spaces a move would miss divisions: {every} and {count} share the factor {shared}."
    return [Fault(("every",), sentence)]


@dataclass(frozen=True, slots=True)
class Arc:
    """`count` features, each `angle` on from the one before.

    >>> Arc(Angle(Fraction(1, 8)), count=3).cuts
    3
    """

    angle: Angle
    count: int = 2

    def __post_init__(self) -> None:
        faults = []
        if not 0 < self.angle.turns <= 1:
            faults.append(Fault(("angle",), "An angle to index is more than 0° and at most 360°."))
        if not 2 <= self.count <= bounds.ROWS_MOST:
            faults.append(Fault(("count",), f"Features are counted from 2 to {bounds.ROWS_MOST:,}."))
        refuse_if_any(faults)

    @property
    def step(self) -> Fraction:
        """Turns of the spindle that one move should make."""
        return self.angle.turns

    @property
    def cuts(self) -> int:
        """How many positions are cut."""
        return self.count

    @property
    def rational(self) -> bool:
        """Whether the angle is an exact fraction of a turn (radians are not)."""
        return self.angle.rational

    @property
    def every(self) -> int:
        """Always 1: block indexing is for equal divisions."""
        return 1

    def division(self, cut: int) -> int:
        """The feature that cut number `cut` makes: they are cut as they stand."""
        return cut


@dataclass(frozen=True, slots=True)
class Angles:
    """Positions from zero, cut in the order given. They are taken round the circle: 370° is 10°.

    >>> Angles((Angle(Fraction(0)), Angle(Fraction(5, 4)))).places
    (Fraction(0, 1), Fraction(1, 4))
    """

    angles: tuple[Angle, ...]

    def __post_init__(self) -> None:
        if not 1 <= len(self.angles) <= bounds.ANGLES_MOST:
            sentence = f"Give 1 to {bounds.ANGLES_MOST:,} angles."
            raise Refused([Fault(("angles",), sentence)])

    @property
    def places(self) -> tuple[Fraction, ...]:
        """Each position as a part of a turn, from 0 up to 1."""
        return tuple(angle.turns % 1 for angle in self.angles)

    @property
    def cuts(self) -> int:
        """How many positions are cut."""
        return len(self.angles)

    @property
    def rational(self) -> bool:
        """Whether every angle is an exact fraction of a turn."""
        return all(angle.rational for angle in self.angles)

    @property
    def every(self) -> int:
        """Always 1: the positions are cut in the order given."""
        return 1

    def division(self, cut: int) -> int:
        """The place in the list of cut number `cut`."""
        return cut


def blocks_to_try(work: Divisions | Arc) -> tuple[int, ...]:
    """Spaces per move, from 2, that miss no division, as far as they are worth trying unasked.

    Nothing when the spaces per move were asked for, and nothing for an angle.

    >>> blocks_to_try(Divisions(106))
    (3, 5, 7, 9, 11)
    """
    if isinstance(work, Arc) or work.fixed or work.every > 1:
        return ()
    most = min(bounds.EVERY_TRIED, work.count - 1)
    return tuple(k for k in range(2, most + 1) if gcd(k, work.count) == 1)


Stepped: TypeAlias = Divisions | Arc
"""Work with one move repeated."""
Work: TypeAlias = Divisions | Arc | Angles
