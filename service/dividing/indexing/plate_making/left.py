"""What the errors of a plate leave in work that is divided with it on the same head.

The spindle turns 1/R of what the crank does, so a hole that is e off on the plate puts the work e/R off. That is all
that is divided by the ratio: the head's worm sits behind the plate, and its error enters the work in full.

Work of N divisions begun in the first hole stands, after i moves of R/N turns, in hole i h (mod H), where h/H is what
a move has beyond whole turns. Those are the multiples of H/n with n = N/gcd(N, R), met again and again in one order,
so n positions tell everything.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from ..setup import Move
from .counts import holes_needed
from .drilling import Drilling


@dataclass(frozen=True, slots=True)
class Left:
    """The plate's part in the errors of the work, in turns of the spindle, exact until printed.

    With `at_most` the figures are limits for any work begun in the first hole; without it, those of `divisions`.
    """

    divisions: int | None
    move: Move | None
    worst: Fraction
    single_pitch: Fraction
    total_pitch: Fraction

    @property
    def at_most(self) -> bool:
        """Whether no work is named."""
        return self.divisions is None


def left_in_any_work(plate: Drilling) -> Left:
    """The most that the plate can put any work off; a pitch may lie between any two of its holes.

    >>> from ..head import Head
    >>> from .drilling import drilling
    >>> left_in_any_work(drilling(3, Head(plates=((4,),), direct_circles=(), ratio=1))).total_pitch
    Fraction(1, 6)
    """
    errors, ratio = plate.errors, plate.head.ratio
    span = (max(errors) - min(errors)) / ratio
    return Left(None, None, max(map(abs, errors)) / ratio, span, span)


def left_in(divisions: int, plate: Drilling) -> Left:
    """What the plate puts work of so many divisions off, begun in the first hole drilled.

    The holes of the plate are a multiple of those that the divisions need.

    >>> from ..head import Head
    >>> from .drilling import drilling
    >>> str(left_in(102, drilling(51, Head(), circles=1)).worst * 1296000)
    '6750/833'
    """
    ratio, holes, errors = plate.head.ratio, plate.holes, plate.errors
    turns, rest = divmod(ratio * holes // divisions, holes)
    met = [errors[cut * rest % holes] for cut in range(holes_needed(divisions, ratio))]
    pitches = [after - before for before, after in zip(met, met[1:] + met[:1], strict=True)]
    return Left(
        divisions,
        Move(turns, rest, holes, plate.head.plate_of.get(holes)),
        max(map(abs, met)) / ratio,
        max(map(abs, pitches)) / ratio,
        (max(met) - min(met)) / ratio,
    )
