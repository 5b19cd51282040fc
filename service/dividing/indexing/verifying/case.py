"""One claim held against the work that it was meant for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, NamedTuple

from ..faults import Refused
from ..head import Head
from ..setup import NO_ERROR, Even, Gearing, MethodName, Move, SecondMove, Setup
from ..solving import solve
from ..work import Angles, Work
from .claims import Claim, SecondClaim, claim_of
from .making import makes, why_not


class Undone(NamedTuple):
    """The claim without its slip, and what to say about the slip."""

    claim: Claim
    explanation: str


@dataclass(frozen=True)
class Case:
    """The work wanted, the head it is done on and the claim made for it."""

    work: Work
    head: Head
    claim: Claim
    barred: Mapping[MethodName, str] | None = None
    """Methods that this work forbids, each with its reason."""

    @property
    def wanted(self) -> Fraction:
        """Turns of the spindle that one move should make."""
        assert not isinstance(self.work, Angles)
        return self.work.step

    @property
    def crank_wanted(self) -> Fraction:
        """Crank turns that one move should make with the plate at rest."""
        return self.head.ratio * self.wanted

    def is_right(self, claim: Claim) -> bool:
        """Whether a claim makes the wanted work exactly and can be set."""
        if isinstance(self.work, Angles) or not self.work.rational:
            return False
        return makes(claim, self.head) == self.wanted and not self.why_not(claim)

    def why_not(self, claim: Claim) -> list[str]:
        """Each reason why a claim cannot be set: by the work first, then by the head; empty when it can."""
        barred = self.barred or {}
        by_work = dict.fromkeys(barred[name] for name in self._methods(claim) if name in barred)
        return [*by_work, *why_not(claim, self.head)]

    def _methods(self, claim: Claim) -> Iterator[MethodName]:
        """The claim's method, and those whose moves it takes to find the nearest hole."""
        yield claim.method
        if claim.second:
            yield "compound"
        if claim.method == "nearest" and not self.head.plates:
            yield "direct"

    def as_claimed(self) -> Setup | None:
        """The claim as a setup, where it is right and each of its moves is less than its circle."""
        claim, move = self.claim, _first_move(self.claim, self.head)
        if move is None or not claim.crank or not self.is_right(claim):
            return None
        second = SecondMove(claim.second.holes, claim.second.circle) if claim.second else None
        return Setup(claim.method, Even(self.wanted), NO_ERROR, move, second, self._gearing(), self.work.every)

    def _gearing(self) -> Gearing | None:
        train = self.claim.gearing
        if train is None:
            return None
        way: Literal["with", "against"] = "with" if train.motion(self.head) > 0 else "against"
        return Gearing(train.spindle, train.worm, train.stud, train.idlers, way)

    def right_setup(self) -> Setup | None:
        """The setup to show beside the claim: itself, or one on the same circles by the same method where exact."""
        claimed = self.as_claimed()
        if claimed:
            return claimed
        setups = list(self.right_setups())
        circles = _circles(self.claim, self.claim.second)
        alike = [setup for setup in setups if setup.move and _circles(setup.move, setup.second) == circles]
        return next(iter(alike or setups), None)

    def right_setups(self) -> Iterator[Setup]:
        """Exact setups by the claim's own method, then the best of any method."""
        yield from (setup for setup in self._solved((self.claim.method,)) if setup.exact)
        yield from self._solved(None)

    def right_claims(self) -> Iterator[Claim]:
        """The exact claims to correct to: nearest to the one made first."""
        ready = [setup for setup in self.right_setups() if setup.exact]
        alike = [setup for setup in ready if setup.move and setup.move.circle == self.claim.circle]
        for setup in (*alike, *ready):
            yield claim_of(setup, self.wanted, self.head.ratio)

    def _solved(self, methods: tuple[MethodName, ...] | None) -> tuple[Setup, ...]:
        try:
            return solve(self.work, self.head, methods=methods, limit=20, barred=self.barred).setups
        except Refused:
            return ()


def _first_move(claim: Claim, head: Head) -> Move | None:
    """The first move of a claim on a plate that has its circles; None where there is no such move."""
    circles, second = _circles(claim, claim.second), claim.second
    if claim.circle is None or claim.holes >= claim.circle or (second and not 0 < abs(second.holes) < second.circle):
        return None
    if claim.method == "direct":
        return None if claim.turns else Move(0, claim.holes, claim.circle, None)
    if claim.method == "nearest" or (claim.method == "differential") != (claim.gearing is not None):
        return None
    mounted = head.mounted_plate
    faces = sorted(enumerate(head.plates, 1), key=lambda face: face[0] != mounted)
    plate = next((number for number, face in faces if circles <= set(face)), None)
    return Move(claim.turns, claim.holes, claim.circle, plate) if plate else None


def _circles(move: Claim | Move, second: SecondClaim | SecondMove | None) -> set[int | None]:
    """The circles of one move or of two, in whichever order they are used."""
    return {move.circle, second.circle} if second else {move.circle}
