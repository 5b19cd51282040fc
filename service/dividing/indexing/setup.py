"""What an answer consists of: the moves of a setup, how far off it is, and a method's "no" with its reason.

A setup puts the work's positions in one of two ways, and everything that is said of it follows from that:

- `Even(step)`: the same move at every cut, so the spindle turns by `step` each time;
- `Rounded(points)`: every position at the nearest of `points` places round the spindle, worked from zero.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal, NamedTuple, TypeAlias

MethodName = Literal["direct", "plain", "compound", "differential", "dial", "nearest"]
METHOD_NAMES: tuple[MethodName, ...] = ("direct", "plain", "differential", "compound", "dial", "nearest")
"""In the order in which a careful operator would choose among exact ones."""


class Move(NamedTuple):
    """A move of the crank: whole turns, then spaces ("holes" in the trade's way of speaking) on a circle of a plate.

    `plate` is None for the direct plate. `turns` and `holes` are None where the move differs at every cut.

    >>> Move(1, 21, 49, 3).sector_holes, Move(2, 0, 20, 1).sector_holes
    (22, None)
    """

    turns: int | None
    holes: int | None
    circle: int
    plate: int | None

    @property
    def sector_holes(self) -> int | None:
        """Holes that the arms embrace: one more than the spaces; None when there is nothing for them to mark."""
        return self.holes + 1 if self.holes else None

    @property
    def crank(self) -> Fraction:
        """Crank turns of one move."""
        return Fraction((self.turns or 0) * self.circle + (self.holes or 0), self.circle)


class SecondMove(NamedTuple):
    """Plate and crank together, on another circle of the same plate; `holes` below 0 turn the opposite way."""

    holes: int | None
    circle: int

    @property
    def crank(self) -> Fraction:
        """Crank turns that it adds to the first move."""
        return Fraction(self.holes or 0, self.circle)

    @property
    def sector_holes(self) -> int | None:
        """Holes that the arms embrace for it."""
        return abs(self.holes) + 1 if self.holes else None


class Gearing(NamedTuple):
    """The train between spindle and plate. `stud` is (first, second): the first gear on the stud drives the worm
    side, the second is driven by the spindle's. `plate` says which way the plate turns to the crank.

    >>> Gearing(48, 28, None, 2, "against").motion
    Fraction(-12, 7)
    >>> Gearing(72, 48, (64, 24), 1, "against").train
    Fraction(4, 1)
    """

    spindle: int
    worm: int
    stud: tuple[int, int] | None
    idlers: int
    plate: Literal["with", "against"]

    @property
    def train(self) -> Fraction:
        """Drivers over driven: plate turns per spindle turn, without their direction."""
        first, second = self.stud or (1, 1)
        return Fraction(self.spindle * first, self.worm * second)

    @property
    def motion(self) -> Fraction:
        """Plate turns per spindle turn, positive with the crank."""
        return self.train if self.plate == "with" else -self.train

    @property
    def gears(self) -> tuple[int, ...]:
        """The toothed wheels of the train, idlers left out: their size changes nothing."""
        return (self.spindle, *(self.stud or ()), self.worm)


@dataclass(frozen=True, slots=True)
class Even:
    """The same move at every cut: each turns the spindle by `step`."""

    step: Fraction


@dataclass(frozen=True, slots=True)
class Rounded:
    """Every position at the nearest of `points` places round the spindle."""

    points: int


Spacing: TypeAlias = Even | Rounded


@dataclass(frozen=True, slots=True)
class Accuracy:
    """How far off a setup is, in turns of the spindle, achieved minus ideal; exact until printed.

    `step` is None where it differs from step to step. `worst` is the largest magnitude from zero over all
    positions, `closing` what is left after the last step home, `single_pitch` the largest difference between
    neighbours on the finished work, `total_pitch` the span of the position errors.
    """

    step: Fraction | None
    worst: Fraction
    closing: Fraction
    single_pitch: Fraction
    total_pitch: Fraction
    exact: bool = field(init=False, compare=False, repr=False)
    """Whether every position comes out with no error at all."""

    def __post_init__(self) -> None:
        object.__setattr__(self, "exact", self.worst == 0 and self.closing == 0)


_NOTHING = Fraction(0)
NO_ERROR = Accuracy(_NOTHING, _NOTHING, _NOTHING, _NOTHING, _NOTHING)


class Setup(NamedTuple):
    """One way to set the head. `every` is spaces per move; with more than one the work goes round `every` times."""

    method: MethodName
    spacing: Spacing
    accuracy: Accuracy
    move: Move | None
    second: SecondMove | None = None
    gearing: Gearing | None = None
    every: int = 1

    @property
    def exact(self) -> bool:
        """Whether every position comes out with no error at all."""
        return self.accuracy.exact


class Declined(NamedTuple):
    """A method that gives nothing here, and why, in one sentence."""

    method: MethodName
    reason: str


@dataclass(frozen=True, slots=True)
class Tolerance:
    """The largest error that any position may have, and the diameter at which to show errors.

    `angle` is in turns; `at_rim` and `diameter` are in one length unit, the user's own.
    """

    angle: Fraction | None = None
    at_rim: Fraction | None = None
    diameter: Fraction | None = None
