"""Sine and cosine of an exact angle, as rationals, so that a chord keeps every figure that a float can hold.

Whole numbers of 1e-50 stand for fractions. The angle is first brought within a quarter turn of zero by half turns,
exactly, where the power series needs some twenty terms.
"""

from __future__ import annotations

from fractions import Fraction

from .reading import PI

SCALE = 10**50


def sine(turns: Fraction) -> Fraction:
    """Give the sine of an angle in turns, within 1e-45, and exactly 0 where it is 0.

    >>> float(sine(Fraction(1, 12))), sine(Fraction(1, 2))
    (0.5, Fraction(0, 1))
    """
    halves = round(2 * turns)
    size = _series(int(2 * PI * (turns - Fraction(halves, 2)) * SCALE))
    return Fraction(-size if halves % 2 else size, SCALE)


def cosine(turns: Fraction) -> Fraction:
    """Give the cosine of an angle in turns, within 1e-45, and exactly 0 where it is 0.

    >>> float(cosine(Fraction(1, 6))), cosine(Fraction(1, 4))
    (0.5, Fraction(0, 1))
    """
    return sine(turns + Fraction(1, 4))


def _series(arc: int) -> int:
    """x - x^3/3! + x^5/5! - … for x = arc/SCALE, each term from the one before."""
    square = arc * arc // SCALE
    term = total = arc
    order = 1
    while term:
        order += 2
        term = -term * square // (SCALE * order * (order - 1))
        total += term
    return total
