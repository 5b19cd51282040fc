"""Checking a setup that somebody worked out by hand: what it makes, whether it can be set, and which slip was made."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, lcm
from typing import Literal

from ..accuracy import accuracy
from ..faults import Fault, Refused
from ..head import Head
from ..setup import Accuracy, Even, MethodName, Rounded, Setup, Tolerance
from ..tolerances import within
from ..work import Angles, Divisions, Work
from .case import Case
from .claims import Claim, GearingClaim, SecondClaim
from .making import makes
from .slips import Slip, likely_slips

__all__ = ["Claim", "GearingClaim", "SecondClaim", "Slip", "Verdict", "as_set", "verify"]

VerdictName = Literal["exact", "within_tolerance", "off", "cannot_be_set"]


@dataclass(frozen=True, slots=True)
class Verdict:
    """`step` is the turns of the spindle that one move makes, None where there is no one move."""

    verdict: VerdictName
    step: Fraction | None
    error: Accuracy | None
    why: tuple[str, ...]
    likely_slips: tuple[Slip, ...]
    right: Setup | None

    @property
    def divisions(self) -> Fraction | None:
        """How many such steps go round: exact, even when absurd."""
        return 1 / self.step if self.step else None


def verify(
    work: Work,
    head: Head,
    claim: Claim,
    *,
    tolerance: Tolerance | None = None,
    barred: Mapping[MethodName, str] | None = None,
) -> Verdict:
    """Hold a claim against the work: what it makes, exact; why it cannot be set; the slips that explain it.

    `barred` gives reasons why some methods cannot be used for this work.

    >>> from dividing.indexing.work import Divisions
    >>> found = verify(Divisions(28), Head(), Claim("plain", turns=1, holes=20, circle=49))
    >>> found.verdict, str(found.divisions), found.likely_slips[0].slip
    ('off', '1960/69', 'counted_the_pin_hole')
    """
    if isinstance(work, Angles) and claim.method != "nearest":
        sentence = 'A list of angles has no one move to check; claim a circle with the method "nearest".'
        raise Refused([Fault(("claim", "method"), sentence)])
    case = Case(work, head, claim, barred)
    step, why = makes(claim, head), tuple(case.why_not(claim))
    error = _error(case, step)
    return Verdict(
        _verdict(why, error, tolerance),
        step,
        error,
        why,
        tuple(likely_slips(case)),
        case.right_setup(),
    )


def as_set(work: Work, head: Head, claim: Claim) -> Work:
    """The work as the claim goes round it: a geared plate may move several divisions at a time without being asked to.

    >>> from dividing.indexing.work import Divisions
    >>> row = Claim("differential", turns=1, holes=6, circle=18, gearing=GearingClaim(64, 24, (32, 24), 0))
    >>> as_set(Divisions(127), Head(60), row)
    Divisions(count=127, every=3, fixed=False)
    """
    made = makes(claim, head) if claim.gearing else None
    if made is None or not isinstance(work, Divisions) or work.fixed or work.every > 1:
        return work
    at_once = made * work.count
    misses_none = at_once.denominator == 1 and gcd(at_once.numerator, work.count) == 1
    return Divisions(work.count, at_once.numerator) if misses_none and 1 < at_once < work.count else work


def _error(case: Case, step: Fraction | None) -> Accuracy | None:
    claim, head = case.claim, case.head
    if claim.method != "nearest":
        return None if step is None else accuracy(case.work, Even(step))
    assert claim.circle is not None
    if claim.second:
        return accuracy(case.work, Rounded(head.ratio * lcm(claim.circle, claim.second.circle)))
    direct = claim.circle in head.direct_circles and not head.plates
    return accuracy(case.work, Rounded(claim.circle if direct else head.ratio * claim.circle))


def _verdict(why: tuple[str, ...], error: Accuracy | None, tolerance: Tolerance | None) -> VerdictName:
    if why or error is None:
        return "cannot_be_set"
    if error.worst == 0 and error.closing == 0:
        return "exact"
    return "within_tolerance" if tolerance and within(error, tolerance) else "off"
