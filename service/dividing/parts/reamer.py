"""Unequal spacing for reamers and other flutes: no two neighbouring spaces alike, every angle on one circle.

The spaces grow evenly round the work or, where flutes are many, alternate. An even count repeats after half a
turn, so that flutes stand opposite each other for the micrometer (common practice).
"""

from __future__ import annotations

from fractions import Fraction
from itertools import accumulate, pairwise
from math import radians, sin
from typing import Protocol

from .sizes import MATHEMATICS, PRACTICE, Number, Part, Plain, Size, refused

FIELDS = {
    "flutes": "Number of flutes, from 3.",
    "spread": "Most by which a space may differ from the equal one, in degrees (2, or a fifth of the space).",
    "diameter": "Diameter, for the chords from flute to flute (optional; needs unit).",
    "unit": '"mm" or "in", with the diameter.',
}
FLUTES_MOST = 200


class PlateHead(Protocol):
    """What a proposal of unequal spacing needs of the head."""

    @property
    def ratio(self) -> int:
        """Crank turns in one spindle turn."""

    @property
    def circles(self) -> tuple[tuple[int, int], ...]:
        """Every circle as (holes, plate), the ones to be preferred first."""


def reamer(
    *,
    flutes: int,
    head: PlateHead,
    spread: Number | None = None,
    diameter: Number | None = None,
    unit: str = "mm",
) -> Part:
    """A proposal of unequal spaces that the head can set exactly: `angles` in turns from the first flute.

    Raises `Refused` when the spread is too large for the count, or too small for any circle to tell the
    spaces apart.

    >>> from dividing.indexing.head import Head
    >>> part = reamer(flutes=4, head=Head())
    >>> [str(angle) for angle in part.angles], part.sizes[0].value
    (['0', '49/200', '1/2', '149/200'], 88.2)
    """
    if flutes < 3:
        raise refused("Two flutes that stand opposite are equal: give 3 flutes or more.", "flutes")
    if flutes > FLUTES_MOST:
        raise refused(f"Unequal spacing is worked out for up to {FLUTES_MOST} flutes.", "flutes")
    equal = Fraction(360, flutes)
    most = Fraction(spread) if spread is not None else min(Fraction(2), equal / 5)
    if not 0 < most <= equal / 2:
        raise refused(f"The spread lies above 0° and up to half an equal space ({float(equal / 2):g}°).", "spread")
    laps = 2 if flutes % 2 == 0 else 1
    for pattern in (_growing, _zigzag):
        for circle, plate in head.circles:
            wished = pattern(flutes // laps, most / 360 * head.ratio * circle)
            spaces = _spaces(wished, Fraction(head.ratio * circle, laps))
            if spaces:
                return _proposal(flutes, spaces * laps, head.ratio, circle, plate, diameter, unit)
    raise refused(
        "No circle of the plates can tell such spaces apart: give a larger spread or a head with plates.",
        "spread",
    )


def _growing(count: int, most: Fraction) -> list[Fraction]:
    # By how many holes each space should differ from the equal one.
    return [most * Fraction(2 * place - (count - 1), count - 1) for place in range(count)]


def _zigzag(count: int, most: Fraction) -> list[Fraction]:
    # For many flutes, where growing spaces would differ by less than a hole: small, large, and one equal if odd.
    differ = Fraction(int(most))
    last = count - 1 if count % 2 else count
    return [Fraction(0) if place == last else -differ if place % 2 == 0 else differ for place in range(count)]


def _spaces(wished: list[Fraction], holes: Fraction) -> tuple[int, ...]:
    """Spaces in holes that fill so many, no two neighbours alike; empty when the holes do not allow it."""
    if holes.denominator != 1:
        return ()
    mean = holes / len(wished)
    places = [round(place) for place in accumulate((mean + more for more in wished), initial=Fraction(0))]
    spaces = tuple(after - before for before, after in pairwise(places))
    alike = any(before == after for before, after in pairwise((*spaces, spaces[0])))
    return () if alike or min(spaces) < 1 else spaces


def _proposal(
    flutes: int,
    spaces: tuple[int, ...],
    ratio: int,
    circle: int,
    plate: int,
    diameter: Number | None,
    unit: str,
) -> Part:
    holes = ratio * circle
    angles = tuple(Fraction(place, holes) for place in accumulate(spaces[:-1], initial=0))
    degrees = [float(Fraction(360 * space, holes)) for space in spaces]
    distinct = degrees[: flutes // 2] if flutes % 2 == 0 else degrees
    sizes = [Size(f"Space after flute {place}", angle, "degrees", PRACTICE) for place, angle in enumerate(distinct, 1)]
    if diameter is not None:
        sizes += _chords(distinct, float(diameter), unit)
    rows = tuple(_rows(angles, spaces, degrees, circle, plate))
    cautions = ["Equal depths would leave wide lands in the wide spaces: cut those deeper until all lands are alike."]
    if flutes % 2 == 0:
        cautions.append(f"The spaces repeat after flute {flutes // 2}, so each flute has one opposite to measure over.")
    return Part(
        "reamer",
        unit,
        (*sizes, Size("Equal space for comparison", 360 / flutes, "degrees", MATHEMATICS)),
        angles=angles,
        cautions=tuple(cautions),
        schedule=rows,
        rim=float(diameter) if diameter is not None else None,
        drawing={
            "turns": [float(angle) for angle in angles],
            "diameter": None if diameter is None else float(diameter),
        },
    )


def _chords(spaces: list[float], across: float, unit: str) -> list[Size]:
    return [
        Size(
            f"Chord after flute {place}", across * sin(radians(angle / 2)), unit, MATHEMATICS, "D sin of half the space"
        )
        for place, angle in enumerate(spaces, 1)
    ]


def _rows(
    angles: tuple[Fraction, ...], spaces: tuple[int, ...], degrees: list[float], circle: int, plate: int
) -> list[dict[str, Plain]]:
    rows: list[dict[str, Plain]] = []
    for place, angle in enumerate(angles):
        turns, holes = divmod(spaces[place], circle)
        rows.append(
            {
                "flute": place + 1,
                "turns": str(angle),
                "degrees": float(angle * 360),
                "space": degrees[place],
                "crank_turns": turns,
                "holes": holes,
                "circle": circle,
                "plate": plate,
            }
        )
    return rows
