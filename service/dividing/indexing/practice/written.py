"""Angles as an exercise writes them, and the work that they are."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from ..angles import Angle
from ..work import Arc

DEGREES, MINUTES, HUNDREDTHS = 360, 21_600, 36_000
"""Parts of a turn in which an angle is counted: whole degrees, minutes, hundredths of a degree."""


def arc(angle: int, parts: int) -> Arc:
    """The work of turning once through so many of the parts of a turn.

    >>> arc(45, DEGREES).step
    Fraction(1, 8)
    """
    return Arc(Angle(Fraction(angle, parts)))


def written(angle: int, parts: int) -> str:
    """The angle as a drawing has it: degrees, degrees and minutes, or degrees with a decimal part.

    >>> written(45, DEGREES), written(2250, MINUTES), written(1395, HUNDREDTHS), written(810, HUNDREDTHS)
    ('45°', "37°30'", '13.95°', '8.1°')
    """
    if parts == MINUTES:
        degrees, minutes = divmod(angle, 60)
        return f"{degrees}°{minutes:02}'"
    if parts == HUNDREDTHS:
        return f"{Decimal(angle) / 100}°"
    return f"{angle}°"
