"""One claim held against the work that it was meant for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from ..faults import Refused
from ..head import Head
from ..setup import MethodName, Move, SecondMove, Setup
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
        return makes(claim, self.head) == self.wanted and not why_not(claim, self.head)

    def right_setup(self) -> Setup | None:
        """The setup to show beside the claim: the same one, or one on the same circles by the same method, if exact."""
        setups = list(self.right_setups())
        circles = _circles(self.claim, self.claim.second)
        alike = [setup for setup in setups if setup.move and _circles(setup.move, setup.second) == circles]
        same = [setup for setup in alike if claim_of(setup, None, self.head.ratio) == self.claim]
        return next(iter(same or alike or setups), None)

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
            return solve(self.work, self.head, methods=methods, limit=20).setups
        except Refused:
            return ()


def _circles(move: Claim | Move, second: SecondClaim | SecondMove | None) -> set[int | None]:
    """The circles of one move or of two, in whichever order they are used."""
    return {move.circle, second.circle} if second else {move.circle}
