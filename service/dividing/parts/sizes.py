"""A part as figures: what is cut, how often, and the sizes to cut and measure it by.

Lengths carry the unit of the request and are not rounded here: `places` says how many decimals are worth
printing (0.001 mm, 0.0001 in). Angles are degrees. Floats are at home in this package, where pi and cosines
enter; what the head is asked for (divisions, angles, a step) stays exact.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any, TypeAlias

from dividing.indexing.faults import Fault, Path, Refused

Number: TypeAlias = int | float | Fraction
Plain: TypeAlias = int | float | str | bool | list["Plain"] | dict[str, "Plain"] | None
"""What a drawing or a table row is made of: nothing that JSON could not carry."""
Lead: TypeAlias = dict[str, Any]
"""The lead of an answer as `lead_block` makes it: plain values under their names."""

MATHEMATICS = "general mathematics"
PRACTICE = "common practice"
RECALLED = "recalled"
INCH = Fraction(127, 5)
"""Millimetres in an inch, exactly."""
PLACES = {"mm": 3, "in": 4, "degrees": 4}


@dataclass(frozen=True, slots=True)
class Size:
    """One size of the part with its unit ("mm", "in", "degrees", or "" for a count) and whose formula it is.

    `note` says what belongs beside the figure (a cutter's tooth range, a convention); it is often empty.

    >>> Size("Across flats", 24, "mm", PRACTICE).text
    '24.000 mm'
    """

    name: str
    value: float
    unit: str
    source: str
    note: str = ""
    digits: int | None = None

    @property
    def places(self) -> int:
        """Decimals worth printing; `digits` where the usual number would hide the figure."""
        return decimals(self.value, self.unit) if self.digits is None else self.digits

    @property
    def text(self) -> str:
        """Value and unit as a person reads them."""
        figure = f"{self.value:.{self.places}f}"
        return f"{figure}°" if self.unit == "degrees" else f"{figure} {self.unit}".rstrip()


@dataclass(frozen=True, slots=True)
class Part:
    """What a kind of part asks of the head, with its sizes.

    Of `divisions`, `angles` (positions in turns, unequal spacing) and `step` (turns of the spindle, cut
    `count` times) exactly one is given. `methods` are the only ones that may be used, with `methods_reason`;
    None: any. `tilt` is the spindle's elevation above the table in degrees. `schedule` is a table, a row a
    line or hole. `rim` and, of toothed parts, `pitch_circle` are diameters in `unit`, on which an angular error is
    carried to the part. `drawing` holds what a picture needs.
    """

    kind: str
    unit: str
    sizes: tuple[Size, ...]
    divisions: int | None = None
    angles: tuple[Fraction, ...] | None = None
    step: Fraction | None = None
    count: int | None = None
    lead: Lead | None = None
    tilt: float | None = None
    methods: tuple[str, ...] | None = None
    methods_reason: str = ""
    cautions: tuple[str, ...] = ()
    schedule: tuple[Mapping[str, Plain], ...] = ()
    rim: float | None = None
    pitch_circle: float | None = None
    drawing: Mapping[str, Plain] = field(default_factory=dict)


def decimals(value: Number, unit: str) -> int:
    """Decimals worth printing: 0.001 mm, 0.0001 in, 0.0001°; a count has none unless it is not whole.

    >>> decimals(1.5, "in"), decimals(24, ""), decimals(26.83, "")
    (4, 0, 3)
    """
    if unit == "":
        return 0 if float(value).is_integer() else 3
    return PLACES[unit]


def shown(value: Number, unit: str) -> str:
    """A value as a person reads it, with as many decimals as its unit deserves.

    >>> shown(46.1880215, "mm"), shown(1.5, "in"), shown(77.869541, "degrees"), shown(26.83, "")
    ('46.188 mm', '1.5000 in', '77.8695°', '26.830')
    """
    digits = f"{float(value):.{decimals(value, unit)}f}"
    return f"{digits}°" if unit == "degrees" else f"{digits} {unit}".rstrip()


def in_unit(millimetres: Number, unit: str) -> Number:
    """Millimetres in the unit asked for; a Fraction stays exact.

    >>> in_unit(Fraction(254), "in")
    Fraction(10, 1)
    """
    return millimetres / INCH if unit == "in" else millimetres


def in_millimetres(length: Number, unit: str) -> Number:
    """A length in millimetres; a Fraction stays exact.

    >>> in_millimetres(Fraction(1, 4), "in")
    Fraction(127, 20)
    """
    return length * INCH if unit == "in" else length


def snapped(value: float) -> float:
    """A coordinate without the dust that sines leave: no -0.0 and no 6e-17.

    >>> snapped(-6e-17)
    0.0
    """
    return round(value, 9) + 0.0


def refused(sentence: str, *path: str | int) -> Refused:
    """A refusal of one field of the part, ready to be raised.

    >>> refused("Give more teeth.", "teeth").faults[0].path
    ('teeth',)
    """
    way: Path = path
    return Refused([Fault(way, sentence)])


def check_word(word: str, field: str, words: tuple[str, ...]) -> None:
    """Raise `Refused` for a word that is none of those a field knows.

    >>> check_word("left", "hand", ("right", "left"))
    """
    if word not in words:
        choice = ", ".join(f'"{each}"' for each in words)
        raise refused(f"Give one of {choice}.", field)


def check_range(value: Number, field: str, low: int, high: int, what: str) -> None:
    """Raise `Refused` for a value that is not above `low` and at most `high`.

    >>> check_range(20, "pressure_angle", 0, 45, "A pressure angle")
    """
    if not low < value <= high:
        raise refused(f"{what} is above {low}° and at most {high}°.", field)


def one_of(**given: object) -> str:
    """The name of the one field that was given; `Refused` when none or several were.

    >>> one_of(module=2, diametral_pitch=None)
    'module'
    """
    names = [name for name, value in given.items() if value is not None]
    if len(names) == 1:
        return names[0]
    choice = ", ".join(list(given)[:-1]) + f" or {list(given)[-1]}"
    sentence = f"Give {choice}, and only one of them." if names else f"Give {choice}."
    raise refused(sentence, *names[1:2])
