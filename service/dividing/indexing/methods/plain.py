"""Plain indexing: crank turns R q = t + h/c on any circle c that makes h whole; for an angle, angular indexing."""

from __future__ import annotations

from math import gcd, lcm

from ..bounds import SETUPS_MOST
from ..head import Head
from ..setup import NO_ERROR, Declined, Even, Move, Rounded, Setup
from ..work import Angles, Work

FAR_BEYOND_ANY_CIRCLE = 10**9


def exact(work: Work, head: Head, most: int = SETUPS_MOST) -> tuple[Setup, ...] | Declined:
    """Settings that make the step with one move on one circle: the mounted plate first, then the larger circle.

    A move of whole turns is one setting, given on the first circle, since any circle serves.

    >>> from dividing.indexing.work import Divisions
    >>> [str(setup.move.crank) for setup in exact(Divisions(28), Head())]
    ['10/7', '10/7']
    >>> exact(Divisions(73), Head()).reason
    'No circle on these plates is a multiple of 73.'
    """
    if not head.plates:
        return Declined("plain", "This head has no index plates.")
    if not work.rational:
        return Declined("plain", "An angle in radians is no whole number of holes on any circle.")
    wanted = common_denominator(work, head.ratio)
    if head.all_circles_together % wanted or not (found := [pair for pair in head.circles if pair[0] % wanted == 0]):
        return Declined("plain", f"No circle on these plates is a multiple of {readable(wanted)}.")
    del found[1 if wanted == 1 else most :]
    if isinstance(work, Angles):
        return tuple(
            Setup("plain", Rounded(head.ratio * circle), NO_ERROR, Move(None, None, circle, plate))
            for circle, plate in found
        )
    spacing, every = Even(work.step), work.every
    turns, rest = divmod(head.ratio * work.step.numerator, work.step.denominator)
    return tuple(
        Setup(
            "plain",
            spacing,
            NO_ERROR,
            Move(turns, rest * circle // work.step.denominator, circle, plate),
            every=every,
        )
        for circle, plate in found
    )


def approximate(work: Work, head: Head) -> tuple[Setup, ...] | Declined:
    """Never: a step that is not exact adds its error up; nearest hole never does."""
    return Declined("plain", "A plain move that is not exact would add its error up from cut to cut.")


def common_denominator(work: Work, ratio: int) -> int:
    """The number of which a circle must be a multiple, when `ratio` turns of it make one spindle turn.

    >>> from dividing.indexing.work import Divisions
    >>> common_denominator(Divisions(28), 40)
    7

    For a list of angles the sum stops growing once no circle could ever reach it.
    """
    if not isinstance(work, Angles):
        denominator = work.step.denominator
        return denominator // gcd(denominator, ratio)
    wanted = 1
    for place in work.places:
        wanted = lcm(wanted, place.denominator // gcd(place.denominator, ratio))
        if wanted > FAR_BEYOND_ANY_CIRCLE:
            break
    return wanted


def readable(wanted: int) -> str:
    """A multiple that no circle has, for a sentence: its figures, unless they would run off the card."""
    return f"{wanted:,}" if wanted <= FAR_BEYOND_ANY_CIRCLE else "a number so large"
