"""Figures as a person writes them on paper."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from math import gcd

from ..angles import dms, seconds

KEPT = 4096
"""Wordings that are remembered of one kind: most moves and trains are told again and again."""
KEPT_FOR_AN_ANSWER = 64
"""Wordings that are remembered of what only the setups of one answer share, such as its number of divisions."""


def mixed(numerator: int, denominator: int) -> str:
    """A fraction with its whole part in front, in lowest terms.

    >>> mixed(40, 28), mixed(-10, 18), mixed(80, 40)
    ('1 3/7', '-5/9', '2')
    """
    if numerator < 0:
        return f"-{mixed(-numerator, denominator)}"
    whole, rest = divmod(numerator, denominator)
    if not rest:
        return f"{whole}"
    shared = gcd(rest, denominator)
    part = f"{rest // shared}/{denominator // shared}"
    return f"{whole} {part}" if whole else part


@lru_cache(maxsize=KEPT)
def turns_and_spaces(turns: int, holes: int) -> str:
    """A crank move in words.

    >>> turns_and_spaces(1, 21), turns_and_spaces(0, 1), turns_and_spaces(2, 0)
    ('1 turn and 21 spaces', '1 space', '2 turns')
    """
    parts = []
    if turns or not holes:
        parts.append(counted(turns, "turn"))
    if holes:
        parts.append(counted(holes, "space"))
    return " and ".join(parts)


def counted(number: int, word: str) -> str:
    """A number with its word, in the plural where it needs one.

    >>> counted(1, "idler"), counted(2, "idler"), counted(0, "idler")
    ('1 idler', '2 idlers', '0 idlers')
    """
    return f"{number} {word}" if number == 1 else f"{number} {word}s"


def angle_text(turns: Fraction) -> str:
    """An angle of the work, without figures that say nothing.

    >>> angle_text(Fraction(1, 16)), angle_text(Fraction(1, 4)), angle_text(Fraction(1, 7))
    ("22°30'", '90°', '51°25\\'42.86"')
    """
    text = dms(turns)
    for nothing in ('00.00"', "00'"):
        if not text.endswith(nothing):
            break
        text = text.removesuffix(nothing)
    return text


def seconds_text(turns: Fraction) -> str:
    """An error in seconds of arc, to two figures after the point; past a degree in degrees.

    >>> seconds_text(Fraction(1, 1296000) / 3)
    '0.33"'
    """
    off = abs(seconds(turns))
    if off >= 3600:
        return dms(abs(turns))
    return f'{off:.2f}"' if off >= 0.005 else 'less than 0.01"'
