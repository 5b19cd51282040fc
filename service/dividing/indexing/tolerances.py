"""Errors held against what the drawing allows, and shown at the rim of the work."""

from __future__ import annotations

from fractions import Fraction
from math import pi

from .setup import Accuracy, Tolerance

PI_LOW = Fraction(314159265358979323846, 10**20)
"""pi to twenty places, a little less than the true value."""


def within(error: Accuracy, tolerance: Tolerance) -> bool | None:
    """Whether the worst position keeps the tolerance; None when none was given.

    >>> from dividing.indexing.setup import NO_ERROR
    >>> within(NO_ERROR, Tolerance(angle=Fraction(1, 21600)))
    True
    """
    if tolerance.angle is not None:
        return error.worst <= tolerance.angle
    if tolerance.at_rim is not None and tolerance.diameter is not None:
        return error.worst * PI_LOW * tolerance.diameter <= tolerance.at_rim
    return None


def at_rim(error: Accuracy, tolerance: Tolerance) -> float | None:
    """The worst error as a length on the circumference, in the unit of the diameter; None without a diameter.

    >>> from dividing.indexing.setup import NO_ERROR
    >>> at_rim(NO_ERROR, Tolerance(diameter=Fraction(120)))
    0.0
    """
    if tolerance.diameter is None:
        return None
    return float(error.worst * tolerance.diameter) * pi
