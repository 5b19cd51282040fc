"""The notations of an angle: a text in, turns of the spindle out.

    angle   = [sign] ( fraction [unit] | decimal [single] | colons | parts )
    colons  = number ":" number [":" number]                      22:30:15
    parts   = number [degrees] [number [minutes]] [number [seconds]]
                                                  22°30'15"   22d30m15s   22 30 15   22°15"   75'30"   24'
    single  = a unit that stands alone: turn, rad, gon

A sign counts for the whole angle: -5°30' lies half a degree beyond -5°. A part without a unit takes the one
after its neighbour's, degrees at the start; only the smallest part may have decimals. A comma is a decimal
comma. "grad" is the gon, 400 to a turn. "3 3/7" is three and three sevenths degrees; a fraction is never one
of several parts.
"""

import re
from dataclasses import dataclass
from fractions import Fraction

from .reading import (
    PI,
    SPACES,
    Numeral,
    Reader,
    ReadingError,
    read_decimal,
    read_fraction,
    read_sign,
)

LARGEST_TURNS = 1000

PER_TURN = {
    "degrees": Fraction(360),
    "minutes": Fraction(360 * 60),
    "seconds": Fraction(360 * 3600),
    "turns": Fraction(1),
    "gon": Fraction(400),
    "radians": 2 * PI,
}
PARTS = ("degrees", "minutes", "seconds")
SIXTY = 60  # minutes to a degree, seconds to a minute

_WORDS = {
    "degrees": "d deg degs degree degrees",
    "minutes": "m min mins minute minutes arcmin",
    "seconds": "s sec secs second seconds arcsec",
    "turns": "turn turns rev revs revolution revolutions",
    "gon": "gon gons grad grads gradian gradians",
    "radians": "rad rads radian radians",
}
UNIT_OF_WORD = {word: unit for unit, words in _WORDS.items() for word in words.split()}

_MINUTE = "['\u2032\u2019\u2018\u00b4`\u02b9\u02bc]"
UNIT = re.compile(
    rf"""(?P<degrees> [\u00b0\u00ba\u02da\u2218] )             # ° and the marks that pass for it
       | (?P<seconds> ["\u2033\u201d\u201c\u02ba\u02dd] | {_MINUTE}{{2}} )
       | (?P<minutes> {_MINUTE} )
       | (?P<word> [A-Za-z]+ ) (?: \. (?![0-9]) )?              # "deg." is a word, "d.5" is not
    """,
    re.VERBOSE,
)
COLON = re.compile(":")
COLON_AHEAD = re.compile("(?=:)")
STROKE_AHEAD = re.compile("(?=/)")
DIGIT_AHEAD = re.compile("(?=[0-9])")

ANGLE = "an angle such as 22.5, 22°30' or 1/7 turn"
UNITS = "a unit such as °, rad, gon or turn"
LINE = "whole numbers above and below the line, as in 360/7"
END = "the end of the angle"
LARGEST = f"no more than {LARGEST_TURNS:,} turns ({LARGEST_TURNS * 360:,}°)"


class AngleError(ReadingError):
    """A text that is no angle: `at` is where reading stopped (from 0), `expected` what was wanted there.

    >>> str(AngleError("22°75'", 3, "minutes below 60"))
    'Stopped at character 4 of "22°75\\'": expected minutes below 60.'
    """


@dataclass(frozen=True, slots=True)
class Part:
    """A number of degrees, minutes or seconds, and whether its unit was written or only understood."""

    number: Numeral
    unit: str
    written: bool

    @property
    def smaller(self) -> tuple[str, ...]:
        """The units that may still follow."""
        return PARTS[PARTS.index(self.unit) + 1 :]


def read_turns(given: str) -> tuple[Fraction, bool]:
    """Give the turns in an angle written out, and whether they are exact (radians are not).

    >>> read_turns("22°30'"), read_turns("1/7 turn")
    ((Fraction(1, 16), True), (Fraction(1, 7), True))
    """
    reader = Reader(given, AngleError)
    sign = read_sign(reader)
    start = reader.at
    turns, rational = _read_size(reader)
    if turns > LARGEST_TURNS:
        reader.stop(LARGEST, start)
    return sign * turns, rational


def _read_size(reader: Reader) -> tuple[Fraction, bool]:
    """Read everything after the sign: turns, and whether they are exact."""
    value = read_fraction(reader)
    number = read_decimal(reader, ANGLE) if value is None else None
    reader.take(SPACES)
    unit = _read_unit(reader)
    if number and (unit is None or unit in PARTS):
        return _read_parts(reader, Part(number, unit or "degrees", unit is not None)), True
    size = number.value if number else value or Fraction(0)
    _end(reader, () if unit else (UNITS,))
    return size / PER_TURN[unit or "degrees"], unit != "radians" or not size


def _read_unit(reader: Reader) -> str | None:
    """Read a unit and the spaces after it; None where no unit stands."""
    start = reader.at
    found = reader.match(UNIT)
    reader.take(SPACES)
    if found is None:
        return None
    unit = UNIT_OF_WORD.get(found["word"].lower()) if found["word"] else found.lastgroup
    if unit is None:
        reader.stop(UNITS, start)
    return unit


def _read_parts(reader: Reader, first: Part) -> Fraction:
    """Read the smaller parts after the first, and sum them in turns."""
    colons = not first.written and reader.match(COLON_AHEAD) is not None
    step = COLON if colons else DIGIT_AHEAD
    parts = [first]
    while parts[-1].smaller and reader.match(step):
        parts.append(_read_part(reader, parts[-1], colons))
    _end(reader, parts[-1].smaller if first.written or len(parts) > 1 else (UNITS,))
    return sum((part.number.value / PER_TURN[part.unit] for part in parts), Fraction(0))


def _read_part(reader: Reader, before: Part, colons: bool) -> Part:
    """Read one smaller part; the one before it has to be whole, and this one below 60."""
    reader.take(SPACES)
    if not reader.match(DIGIT_AHEAD):
        reader.stop(before.smaller[0])
    number = read_decimal(reader, before.smaller[0])
    reader.take(SPACES)
    unit_at = reader.at
    unit = None if colons else _read_unit(reader)
    # 30 15" could be 30°00'15" or 30'15": after a number without its unit only the next smaller is clear.
    allowed = before.smaller if before.written else before.smaller[:1]
    if unit and unit not in allowed:
        reader.stop(f"{' or '.join(allowed)} after {before.unit}", unit_at)
    part = Part(number, unit or before.smaller[0], unit is not None)
    if before.number.part_at is not None:
        reader.stop(f"whole {before.unit} before {part.unit}", before.number.part_at)
    if number.value >= SIXTY:
        reader.stop(f"{part.unit} below 60", number.at)
    return part


def _end(reader: Reader, possible: tuple[str, ...]) -> None:
    """Refuse what is left over, with what could have stood there."""
    if reader.match(STROKE_AHEAD):
        reader.stop(LINE)
    if not reader.ended:
        reader.stop(", or ".join([*possible, END]))
