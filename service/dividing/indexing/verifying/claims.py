"""A setup worked out by hand, as it was claimed: it may be wrong, absurd or impossible, but it can be read."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from ..angles import Angle
from ..bounds import RATIO_MOST
from ..faults import Fault, Path, refuse_if_any
from ..head import Head
from ..setup import Gearing, MethodName, Setup

COUNT_MOST = 1_000_000
"""Turns or spaces that a claim may name."""


@dataclass(frozen=True, slots=True)
class SecondClaim:
    """The second move of compound indexing; `holes` below 0 turn the opposite way."""

    holes: int
    circle: int


@dataclass(frozen=True, slots=True)
class GearingClaim:
    """The train claimed. Which way the plate turns follows from the idlers on the head at hand."""

    spindle: int
    worm: int
    stud: tuple[int, int] | None = None
    idlers: int = 0

    @property
    def train(self) -> Fraction:
        """Drivers over driven."""
        first, second = self.stud or (1, 1)
        return Fraction(self.spindle * first, self.worm * second)

    @property
    def gears(self) -> tuple[int, ...]:
        """The wheels of the train without its idlers."""
        return (self.spindle, *(self.stud or ()), self.worm)

    def motion(self, head: Head) -> Fraction:
        """Plate turns per spindle turn on this head, positive with the crank.

        An idler more or less turns the plate the other way.

        >>> GearingClaim(48, 28, None, 2).motion(Head())
        Fraction(-12, 7)
        """
        with_crank = head.idlers.needed(gears=len(self.gears), direction="with")
        return self.train if (self.idlers - with_crank) % 2 == 0 else -self.train


@dataclass(frozen=True, slots=True)
class Claim:
    """What was worked out by hand. Which fields belong to it depends on the method.

    `reading` is a dial's reading in turns of the spindle, `divisions` one of a dial without degrees.
    Raises `Refused` when a field that the method needs is missing or out of all bounds.

    >>> Claim("plain", turns=1, holes=21, circle=49).crank
    Fraction(10, 7)
    """

    method: MethodName
    turns: int = 0
    holes: int = 0
    circle: int | None = None
    second: SecondClaim | None = None
    gearing: GearingClaim | None = None
    reading: Angle | None = None
    divisions: Fraction | None = None

    def __post_init__(self) -> None:
        refuse_if_any([*_move_faults(self), *_second_faults(self), *_gearing_faults(self), *_dial_faults(self)])

    @property
    def crank(self) -> Fraction:
        """Crank turns of the first move (for direct indexing, turns of the spindle)."""
        return self.turns + (Fraction(self.holes, self.circle) if self.circle else Fraction(0))


def _bounded(value: int, path: Path, least: int, most: int, what: str) -> list[Fault]:
    if least <= value <= most:
        return []
    return [Fault(path, f"{what} lie between {least:,} and {most:,}.")]


def _move_faults(claim: Claim) -> list[Fault]:
    faults = _bounded(claim.turns, ("turns",), 0, COUNT_MOST, "Whole turns")
    faults += _bounded(claim.holes, ("holes",), 0, COUNT_MOST, "Spaces")
    if claim.circle is not None:
        faults += _bounded(claim.circle, ("circle",), 1, RATIO_MOST, "The holes of a circle")
    elif claim.method != "dial" and (claim.holes or claim.method in ("direct", "nearest", "compound")):
        faults.append(Fault(("circle",), "Say on which circle the spaces are counted."))
    return faults


def _second_faults(claim: Claim) -> list[Fault]:
    if claim.second is None:
        if claim.method == "compound":
            return [Fault(("second",), "Compound indexing has a second move; give its holes and circle.")]
        return []
    if claim.method not in ("compound", "nearest"):
        return [Fault(("second",), "Only compound indexing has a second move; leave it out.")]
    faults = _bounded(claim.second.holes, ("second", "holes"), -COUNT_MOST, COUNT_MOST, "Spaces of the second move")
    return faults + _bounded(claim.second.circle, ("second", "circle"), 1, RATIO_MOST, "The holes of a circle")


def _gearing_faults(claim: Claim) -> list[Fault]:
    gearing = claim.gearing
    if gearing is None:
        return []
    if claim.method != "differential":
        return [Fault(("gearing",), "Only differential indexing has gears to the plate; leave them out.")]
    places: list[tuple[int, Path]] = [
        (gearing.spindle, ("gearing", "spindle")),
        (gearing.worm, ("gearing", "worm")),
    ]
    places += [(teeth, ("gearing", "stud", place)) for place, teeth in enumerate(gearing.stud or ())]
    faults = [fault for teeth, path in places for fault in _bounded(teeth, path, 1, 1000, "The teeth of a gear")]
    return faults + _bounded(gearing.idlers, ("gearing", "idlers"), 0, 10, "Idlers")


def _dial_faults(claim: Claim) -> list[Fault]:
    given = claim.reading is not None or claim.divisions is not None
    if claim.method != "dial":
        return [Fault(("reading",), "Only a dial has a reading; leave it out.")] if given else []
    if claim.reading is not None and claim.divisions is not None:
        return [Fault(("reading",), "Give the dial's reading either as an angle or in divisions, not both.")]
    if claim.reading is not None and not 0 <= claim.reading.turns <= 1:
        return [Fault(("reading",), "A dial's reading lies between 0° and 360°.")]
    if claim.divisions is not None and not 0 <= claim.divisions <= COUNT_MOST:
        return [Fault(("divisions",), f"A dial's divisions lie between 0 and {COUNT_MOST:,}.")]
    return []


def claim_of(setup: Setup, step: Fraction | None, ratio: int) -> Claim:
    """The claim that says what a setup says; for a dial its exact reading for one `step` of the spindle.

    >>> from dividing.indexing.solving import solve
    >>> from dividing.indexing.work import Divisions
    >>> claim_of(solve(Divisions(28), Head()).setups[0], None, 40).holes
    21
    """
    move, gearing = setup.move, setup.gearing
    if move is None:
        turns, beyond = divmod((step or Fraction(0)) * ratio, 1)
        return Claim("dial", turns=int(turns), reading=Angle(beyond / ratio))
    second = SecondClaim(setup.second.holes or 0, setup.second.circle) if setup.second else None
    train = gearing_claim(gearing) if gearing else None
    return Claim(setup.method, move.turns or 0, move.holes or 0, move.circle, second, train)


def gearing_claim(gearing: Gearing) -> GearingClaim:
    """The train of a setup as a claim."""
    return GearingClaim(gearing.spindle, gearing.worm, gearing.stud, gearing.idlers)


def with_turns(claim: Claim, turns: int) -> Claim:
    """The same claim with other whole turns."""
    return replace(claim, turns=turns)
