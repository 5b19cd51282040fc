"""Angles: read in any notation, kept as exact turns of the spindle, printed only at the end.

Printing takes whole numbers from first to last, because a table of 20,000 positions is printed through it:
what a table prints has a form (`dms_of` for `dms`) that takes the numerator and denominator, reduced or not,
and makes no `Fraction`. A denominator is always above 0.
"""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import gcd

from .notation import ANGLE, LARGEST, LARGEST_TURNS, PER_TURN, AngleError, read_turns
from .reading import PI, exact

__all__ = [
    "LARGEST_TURNS",
    "PI",
    "Angle",
    "AngleError",
    "angle_out",
    "angle_out_of",
    "decimal_degrees",
    "dm_of",
    "dms",
    "dms_of",
    "parse_angle",
    "seconds",
    "seconds_of",
]


_OTHER_JSON = {type(None): "null", list: "[…]", dict: "{…}"}


@dataclass(frozen=True, slots=True)
class Angle:
    """An angle in turns of the spindle; where it is not `rational` (radians), `turns` is right to 1e-40.

    >>> Angle(Fraction(1, 16)).degrees
    Fraction(45, 2)
    """

    turns: Fraction
    rational: bool = True

    @property
    def degrees(self) -> Fraction:
        """The angle in degrees, exact as `turns` is."""
        return self.turns * 360

    @property
    def radians(self) -> float:
        """The angle in radians, the nearest float."""
        return float(self.turns * 2 * PI)

    @property
    def gon(self) -> float:
        """The angle in gon, 400 to a turn, the nearest float."""
        return float(self.turns * 400)


def parse_angle(given: str | int | Decimal) -> Angle:
    """Give the angle in a text of any notation or a JSON number of degrees; refuse with an `AngleError`.

    >>> parse_angle("22°30'") == parse_angle("22,5") == parse_angle("1/16 turn") == Angle(Fraction(1, 16))
    True
    >>> parse_angle("22°75'")
    Traceback (most recent call last):
    dividing.indexing.notation.AngleError: Stopped at character 4 of "22°75'": expected minutes below 60.
    """
    if isinstance(given, str):
        return Angle(*read_turns(given))
    if isinstance(given, bool):
        raise AngleError(str(given).lower(), 0, ANGLE)
    if not isinstance(given, int | Decimal):
        raise AngleError(_OTHER_JSON.get(type(given), "…"), 0, ANGLE)
    turns = exact(given, AngleError) / PER_TURN["degrees"]
    if abs(turns) > LARGEST_TURNS:
        raise AngleError(str(given), 0, LARGEST)
    return Angle(turns)


_TWO = tuple(f"{number:02d}" for number in range(100))


def rounded(numerator: int, denominator: int) -> int:
    """Give the whole number nearest a fraction, halves going away from zero so that both signs print alike.

    >>> rounded(5, 2), rounded(-5, 2), rounded(7, 5)
    (3, -3, 1)
    """
    if numerator >= 0:
        return (2 * numerator + denominator) // (2 * denominator)
    return -((denominator - 2 * numerator) // (2 * denominator))


def dms_of(numerator: int, denominator: int, places: int = 2) -> str:
    """Give the turns numerator/denominator in degrees, minutes and seconds to so many places.

    >>> dms_of(-2, 144), dms_of(1, 7, 0)
    ('-5°00\\'00.00"', '51°25\\'43"')
    """
    if places == 2 and numerator >= 0:
        # As below, for the angles of which a table has thousands.
        minutes, part = divmod((numerator * 259_200_000 + denominator) // (2 * denominator), 6_000)
        degree, minute = divmod(minutes, 60)
        second, part = divmod(part, 100)
        return f"{degree}°{_TWO[minute]}'{_TWO[second]}.{_TWO[part]}\""
    scale = 10**places
    size = rounded(numerator * 1296000 * scale, denominator)
    whole, part = divmod(abs(size), scale)
    minutes, second = divmod(whole, 60)
    degree, minute = divmod(minutes, 60)
    sign = "-" if size < 0 else ""
    point = f".{part:0{places}d}" if places else ""
    return f"{sign}{degree}°{_TWO[minute]}'{_TWO[second]}{point}\""


def dms(turns: Fraction, places: int = 2) -> str:
    """Give turns in degrees, minutes and seconds to so many places.

    >>> dms(Fraction(1, 16))
    '22°30\\'00.00"'
    """
    return dms_of(turns.numerator, turns.denominator, places)


def dm_of(numerator: int, denominator: int) -> str:
    """Give the turns numerator/denominator in degrees and the nearest whole minute, as the spindle's scale is read.

    >>> dm_of(15, 73)
    "73°58'"
    """
    if numerator >= 0:
        degree, minute = divmod((numerator * 43_200 + denominator) // (2 * denominator), 60)
        return f"{degree}°{_TWO[minute]}'"
    size = -rounded(numerator * 21600, denominator)
    degree, minute = divmod(size, 60)
    return f"{'-' if size else ''}{degree}°{_TWO[minute]}'"


def decimal_degrees(turns: Fraction) -> float:
    """Give turns in degrees, the nearest float.

    >>> decimal_degrees(Fraction(1, 16))
    22.5
    """
    return turns.numerator * 360 / turns.denominator


def seconds_of(numerator: int, denominator: int) -> float:
    """Give the turns numerator/denominator in seconds of arc, rounded to four places; never -0.0.

    >>> seconds_of(1, 2 * 40 * 49), seconds_of(-1, 10**30)
    (330.6122, 0.0)
    """
    twice = 2 * 1_296_000 * 10_000 * numerator
    if twice >= 0:
        return (twice + denominator) // (2 * denominator) / 10_000
    return -((denominator - twice) // (2 * denominator)) / 10_000


def seconds(turns: Fraction) -> float:
    """Give turns in seconds of arc, rounded to four places; never -0.0.

    >>> seconds(Fraction(-1, 1296000))
    -1.0
    """
    return seconds_of(turns.numerator, turns.denominator)


def angle_out_of(numerator: int, denominator: int) -> dict[str, object]:
    """Give the printed forms of the turns numerator/denominator: `{"degrees": …, "dms": …, "turns": …}`.

    >>> angle_out_of(2, 32)
    {'degrees': 22.5, 'dms': '22°30\\'00.00"', 'turns': '1/16'}
    """
    shared = gcd(numerator, denominator)
    over, under = numerator // shared, denominator // shared
    return {
        "degrees": over * 360 / under,
        "dms": dms_of(over, under),
        "turns": str(over) if under == 1 else f"{over}/{under}",
    }


def angle_out(angle: Angle) -> dict[str, object]:
    """Give the printed forms of an angle; `turns` is None where the angle is not rational.

    >>> angle_out(Angle(Fraction(1)))
    {'degrees': 360.0, 'dms': '360°00\\'00.00"', 'turns': '1'}
    """
    out = angle_out_of(angle.turns.numerator, angle.turns.denominator)
    return out if angle.rational else out | {"turns": None}
