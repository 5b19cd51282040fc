"""Direct indexing: the plate on the spindle itself. A step q serves on a circle of H places when q H is whole."""

from __future__ import annotations

from ..bounds import SETUPS_MOST
from ..head import Head
from ..setup import NO_ERROR, Declined, Even, Move, Rounded, Setup
from ..work import Angles, Work
from .plain import common_denominator, readable


def exact(work: Work, head: Head, most: int = SETUPS_MOST) -> tuple[Setup, ...] | Declined:
    """Settings on the direct plate, the larger circle first.

    >>> from dividing.indexing.work import Divisions
    >>> exact(Divisions(8), Head())[0].move
    Move(turns=0, holes=3, circle=24, plate=None)
    """
    if not head.direct_circles:
        return Declined("direct", "This head has no direct plate.")
    if not work.rational:
        return Declined("direct", "An angle in radians is no whole number of holes on any circle.")
    wanted = common_denominator(work, 1)
    found = [circle for circle in head.direct_ranked if circle % wanted == 0]
    if not found:
        return Declined("direct", f"{head.direct_words}, not a multiple of {readable(wanted)}.")
    return tuple(_setup(work, circle) for circle in found[:most])


def approximate(work: Work, head: Head) -> tuple[Setup, ...] | Declined:
    """Never: a direct plate is too coarse to come near; the nearest hole is a method of its own."""
    return Declined("direct", "A direct plate is too coarse to come near.")


def _setup(work: Work, circle: int) -> Setup:
    if isinstance(work, Angles):
        return Setup("direct", Rounded(circle), NO_ERROR, Move(None, None, circle, None))
    holes = work.step * circle
    return Setup("direct", Even(work.step), NO_ERROR, Move(0, holes.numerator, circle, None), every=work.every)
