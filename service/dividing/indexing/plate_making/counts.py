"""How many holes a plate needs for a number of divisions, and which numbers a circle of holes divides.

Notation: N divisions, R ratio, H holes. A move is R/N turns, so a circle serves when H R/N is whole: when H is a
multiple of N/gcd(N, R), which is the same as saying that N divides R H.
"""

from __future__ import annotations

from dataclasses import replace
from math import gcd, isqrt

from ..bounds import CIRCLES_MOST, DIVISIONS_MOST, HOLES_IN_ALL_MOST, HOLES_LEAST, HOLES_MOST
from ..faults import Fault, Refused
from ..head import Head
from ..wording.figures import counted, mixed


def holes_needed(divisions: int, ratio: int) -> int:
    """The number of holes of which a circle must have a multiple; 1 where whole turns of the crank do.

    >>> holes_needed(102, 40), holes_needed(127, 40), holes_needed(20, 40)
    (51, 127, 1)
    """
    return divisions // gcd(divisions, ratio)


def holes_to_drill(divisions: int, ratio: int) -> int:
    """The fewest holes of a plate for so many divisions; raises `Refused` where no plate is needed or none can be had.

    >>> holes_to_drill(102, 40)
    51
    """
    holes = holes_needed(divisions, ratio)
    if HOLES_LEAST <= holes <= HOLES_MOST:
        return holes
    if holes < HOLES_LEAST:
        turns = counted(ratio // divisions, "whole turn")
        sentence = f"No plate is needed for {counted(divisions, 'division')}: a move is {turns} of the crank."
    else:
        sentence = (
            f"{divisions:,} divisions at {ratio}:1 need a circle of {holes:,} holes or a multiple; a circle has at "
            f"most {HOLES_MOST}. Use gears or the nearest hole."
        )
    raise Refused([Fault(("divisions",), sentence)])


def multiples(holes: int) -> tuple[int, ...]:
    """Every number of holes of a circle that is a multiple of this one.

    >>> multiples(102)
    (102, 204, 306)
    """
    return tuple(range(holes, HOLES_MOST + 1, holes))


def divided_by(holes: int, ratio: int) -> tuple[int, ...]:
    """Every number of divisions that plain indexing makes with a circle of so many holes, the smallest first.

    >>> divided_by(3, 5)
    (1, 3, 5, 15)
    """
    product = holes * ratio
    small = [factor for factor in range(1, isqrt(product) + 1) if product % factor == 0]
    every = sorted({*small, *(product // factor for factor in small)})
    return tuple(number for number in every if number <= DIVISIONS_MOST)


def newly_divided(holes: int, head: Head) -> tuple[int, ...]:
    """Those of `divided_by` that neither a plate nor the direct plate of this head divides yet.

    >>> newly_divided(51, Head())[:3]
    (51, 102, 204)
    """
    return tuple(number for number in divided_by(holes, head.ratio) if not _divided(number, head))


def plate_with(holes: int, head: Head) -> int | None:
    """The plate of this head that has the circle already, counted from 1.

    >>> plate_with(21, Head()), plate_with(51, Head())
    (2, None)
    """
    return head.plate_of.get(holes)


def head_with(holes: int, head: Head) -> Head | None:
    """The head with the plate behind its others and mounted; None where that is more than a head may have.

    A head that has such a circle stays as it is.

    >>> head_with(51, Head()).plates[3], head_with(51, Head()).mounted_plate
    ((51,), 4)
    """
    if plate_with(holes, head) is not None:
        return head
    circles = [*head.direct_circles, *(circle for face in head.plates for circle in face), holes]
    if len(circles) > CIRCLES_MOST or sum(circles) > HOLES_IN_ALL_MOST:
        return None
    return replace(head, plates=(*head.plates, (holes,)), mounted_plate=len(head.plates) + 1)


def working(divisions: int, ratio: int) -> list[str]:
    """The arithmetic that leads to the holes, as a person would write it.

    >>> working(102, 40)
    ['40/102 = 20/51', 'A circle of 51 holes or a multiple of 51 makes whole spaces of it.']
    """
    holes = holes_needed(divisions, ratio)
    reduced = mixed(ratio, divisions)
    move = f"{ratio}/{divisions}"
    first = move if reduced == move else f"{move} = {reduced}"
    return [first, f"A circle of {holes} holes or a multiple of {holes} makes whole spaces of it."]


def _divided(number: int, head: Head) -> bool:
    holes = holes_needed(number, head.ratio)
    return any(circle % holes == 0 for circle in head.plate_of) or any(
        circle % number == 0 for circle in head.direct_circles
    )
