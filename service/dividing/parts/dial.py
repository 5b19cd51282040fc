"""A graduated dial: which lines are long, where the numbers stand, and how close the lines lie on the rim.

Every tenth line is the longest, every fifth between them the middle one (common practice); a numbered line is
always one of the longest. No lengths are given: no convention for them was found in a publication.
"""

from __future__ import annotations

from fractions import Fraction
from math import pi

from .graduating import CrankHead, linear_scale
from .sizes import MATHEMATICS, Number, Part, Plain, Size, check_word, in_millimetres, refused, shown

CHOICES = {"form": ("round", "linear")}
FIELDS = {
    "form": '"round" (usual) or "linear", a straight scale ruled with the head geared to the table screw.',
    "divisions": "Number of spaces: of the whole rim, or of the straight scale.",
    "diameter": "Diameter of the rim (round form).",
    "spacing": "Distance from line to line (linear form).",
    "label_every": "A number stands at every so many lines (10).",
    "label_value": "What one space is worth in the numbers (1).",
    "unit": '"mm" or "in".',
}
CROWDED = Fraction(1, 2)
"""Millimetres between lines below which a dial is hard to read with the naked eye (common practice)."""
LINES_MOST = 20_000


def dial(
    *,
    divisions: int,
    unit: str,
    form: str = "round",
    diameter: Number | None = None,
    spacing: Number | None = None,
    label_every: int = 10,
    label_value: Number = 1,
    head: CrankHead | None = None,
) -> Part:
    """A round dial, or with form "linear" a straight scale (which needs the head and its table screw).

    `schedule` has a row a line: its class, its number or None, and where it stands.

    >>> part = dial(divisions=100, diameter=60, unit="mm", label_every=20)
    >>> [(row["line"], row["class"], row["number"]) for row in part.schedule[:21:5]]
    [(0, 'long', '0'), (5, 'middle', None), (10, 'long', None), (15, 'middle', None), (20, 'long', '20')]
    """
    check_word(form, "form", CHOICES["form"])
    if divisions > LINES_MOST:
        raise refused(f"A dial may have up to {LINES_MOST:,} lines.", "divisions")
    if form == "linear":
        if spacing is None:
            raise refused("Give the spacing of the lines of a straight scale.", "spacing")
        lines = [_line(line, label_every, label_value) for line in range(divisions + 1)]
        return linear_scale(divisions=divisions, spacing=spacing, unit=unit, lines=lines, head=head)
    if diameter is None:
        raise refused("Give the diameter of the dial's rim.", "diameter")
    return _round(divisions, float(diameter), unit, label_every, label_value)


def _round(divisions: int, across: float, unit: str, label_every: int, label_value: Number) -> Part:
    pitch = pi * across / divisions
    rows = [
        {
            **_line(line, label_every, label_value),
            "turns": str(Fraction(line, divisions)),
            "degrees": line * 360 / divisions,
        }
        for line in range(divisions)
    ]
    sizes = (
        Size("Diameter of the rim", across, unit, "as given"),
        Size("From line to line on the rim", pitch, unit, MATHEMATICS, "π D / N"),
        Size("Angle from line to line", 360 / divisions, "degrees", MATHEMATICS),
        *_counts(rows),
    )
    return Part(
        "dial",
        unit,
        sizes,
        divisions=divisions,
        cautions=_cautions(divisions, pitch, unit, label_every),
        schedule=tuple(rows),
        rim=across,
        drawing={"diameter": across, "divisions": divisions, "label_every": label_every},
    )


def _line(line: int, label_every: int, label_value: Number) -> dict[str, Plain]:
    numbered = line % label_every == 0
    kind = "long" if numbered or line % 10 == 0 else "middle" if line % 5 == 0 else "short"
    return {"line": line, "class": kind, "number": _text(Fraction(label_value) * line) if numbered else None}


def _text(value: Fraction) -> str:
    return f"{float(value):.6f}".rstrip("0").rstrip(".")


def _counts(rows: list[dict[str, Plain]]) -> list[Size]:
    classes = [row["class"] for row in rows]
    numbers = sum(row["number"] is not None for row in rows)
    found = [
        Size(f"Lines of the {kind} class", classes.count(kind), "", MATHEMATICS) for kind in ("long", "middle", "short")
    ]
    return [*found, Size("Numbers to stamp", numbers, "", MATHEMATICS)]


def _cautions(divisions: int, pitch: float, unit: str, label_every: int) -> tuple[str, ...]:
    found = []
    if divisions % label_every:
        found.append(
            f"{divisions} lines are no whole number of {label_every}s: the last number stands nearer to the "
            f"zero than the rest."
        )
    if divisions % 5:
        found.append(f"{divisions} is no multiple of 5: long and middle lines will not close evenly at the zero.")
    if in_millimetres(pitch, unit) < CROWDED:
        found.append(
            f"Lines {shown(pitch, unit)} apart are hard to read with the naked eye: give a larger rim or fewer lines."
        )
    return tuple(found)
