"""Ruling a straight scale: the head is geared one to one to the table screw, and the crank moves the table.

One crank turn moves the table by the screw's lead over the ratio: 0.25 in at 40 to 1 gives 0.00625 in.
Source: A Practical Treatise on Milling and Milling Machines, 1914, pp. 183-184.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Protocol

from .lead_gearing import Screw, lead_of_machine
from .sizes import MATHEMATICS, Number, Part, Plain, Size, refused, shown

SOURCE = "A Practical Treatise on Milling and Milling Machines, 1914, pp. 183-184"
METHODS = ("plain", "nearest")
METHODS_REASON = (
    "The head is geared to the table screw to rule a straight scale, so only the crank and one circle of "
    "the plate are free to index with."
)


class CrankHead(Protocol):
    """What ruling a straight scale needs of the head."""

    @property
    def ratio(self) -> int:
        """Crank turns in one spindle turn."""

    @property
    def screw(self) -> Screw | None:
        """The table screw, if it is known."""

    @property
    def circles(self) -> tuple[tuple[int, int], ...]:
        """Every circle as (holes, plate), the ones to be preferred first."""


@dataclass(frozen=True, slots=True)
class CrankMove:
    """Whole turns and spaces on a circle, and how far off the table is at each move."""

    turns: int
    holes: int
    circle: int
    plate: int
    error: Fraction

    @property
    def text(self) -> str:
        """The move in the shop's words.

        >>> CrankMove(3, 20, 41, 3, Fraction(0)).text
        '3 turns and 20 spaces on the circle of 41, plate 3'
        """
        turns = f"{self.turns} turn{'s' if self.turns != 1 else ''}"
        if self.holes == 0:
            return turns
        spaces = f"{self.holes} space{'s' if self.holes != 1 else ''} on the circle of {self.circle}"
        spaces = f"{spaces}, plate {self.plate}"
        return f"{turns} and {spaces}" if self.turns else spaces


def best_move(crank: Fraction, per_turn: Fraction, circles: tuple[tuple[int, int], ...]) -> CrankMove | None:
    """The circle on which a move of so many crank turns is nearest, the first of equals; None without one.

    `per_turn` is the table's travel in one crank turn, in whatever unit the error is wanted.

    >>> best_move(Fraction("0.0218") / Fraction("0.00625"), Fraction("0.00625"), ((41, 3),)).text
    '3 turns and 20 spaces on the circle of 41, plate 3'
    """
    moves = []
    for circle, plate in circles:
        turns, holes = divmod(round(crank * circle), circle)
        moves.append(CrankMove(turns, holes, circle, plate, (turns + Fraction(holes, circle) - crank) * per_turn))
    return min(moves, key=lambda move: abs(move.error), default=None)


def linear_scale(
    *, divisions: int, spacing: Number, unit: str, lines: list[dict[str, Plain]], head: CrankHead | None
) -> Part:
    """A straight scale. Raises `Refused` without a table screw, or for spaces past one turn of it."""
    if head is None or head.screw is None:
        raise refused("Give the table screw (head.screw): the head is geared to it to rule a straight scale.")
    screw_lead = lead_of_machine(1, head.screw, unit)
    step = Fraction(spacing) / screw_lead
    if step > 1:
        turn = shown(screw_lead, unit)
        raise refused(f"Spaces past one turn of the table screw ({turn}) are set on the screw's own dial.", "spacing")
    per_turn = screw_lead / head.ratio
    move = best_move(step * head.ratio, per_turn, head.circles)
    rows: list[Mapping[str, Plain]] = [
        {**line, "travel": float(Fraction(spacing) * place)} for place, line in enumerate(lines)
    ]
    return Part(
        "dial",
        unit,
        _sizes(divisions, Fraction(spacing), unit, per_turn, move),
        step=step,
        count=divisions + 1,
        methods=METHODS,
        methods_reason=METHODS_REASON,
        cautions=_cautions(divisions, unit, move),
        schedule=tuple(rows),
        drawing={"form": "linear", "divisions": divisions, "spacing": float(spacing)},
    )


def _sizes(
    divisions: int, spacing: Fraction, unit: str, per_turn: Fraction, move: CrankMove | None
) -> tuple[Size, ...]:
    found = [
        Size("From line to line", float(spacing), unit, "as given"),
        Size("Length of the scale", float(spacing * divisions), unit, MATHEMATICS),
        Size(
            "Table travel in one crank turn",
            float(per_turn),
            unit,
            SOURCE,
            "screw lead / ratio, gears one to one",
            6,
        ),
        Size("Crank turns for one space", float(spacing / per_turn), "", SOURCE, str(spacing / per_turn), 6),
    ]
    if move is not None:
        found += [
            Size("Space as it comes out", float(spacing + move.error), unit, MATHEMATICS, move.text, 7),
            Size("Error of one space", float(move.error), unit, MATHEMATICS, "", 7),
            Size(
                "Error at the last line, if every move is repeated",
                float(move.error * divisions),
                unit,
                MATHEMATICS,
                "",
                6,
            ),
        ]
    return tuple(found)


def _cautions(divisions: int, unit: str, move: CrankMove | None) -> tuple[str, ...]:
    found = [
        "Gear the spindle to the table screw one to one, hold the ruling tool still, and check by a scale "
        "now and then: the screw's own error goes into the scale."
    ]
    if move is not None and move.error:
        error = f"{float(move.error * divisions):+.6f} {unit}"
        found.append(f"Repeating {move.text} adds up to {error} at the last line: work every line from zero instead.")
    return tuple(found)
