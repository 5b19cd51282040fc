"""Ready-made heads to start from, each described by its figures."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from .head import TWELVE_GEARS, Dial, Head, Plate

SET_TWO: tuple[Plate, ...] = (
    (24, 25, 28, 30, 34, 37, 38, 39, 41, 42, 43),
    (46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66),
)
"""One reversible plate with eleven circles a side; a side is a plate here. Source: US Army Ordnance correspondence
course on milling machine operations (OD1644)."""

MINUTE = Fraction(1, 360 * 60)
TEN_SECONDS = Fraction(1, 360 * 60 * 6)


@dataclass(frozen=True, slots=True)
class ReadyHead:
    """A head to start from: a short word for it that stays the same, its figures in a line, and the head."""

    id: str
    title: str
    head: Head


_TABLE_DIAL = Dial(graduation=MINUTE, vernier=TEN_SECONDS)

READY_MADE: tuple[ReadyHead, ...] = (
    ReadyHead("40-set-1", "40:1, plates 15–20, 21–33, 37–49, direct plate 24", Head()),
    ReadyHead(
        "40-set-1-gears",
        "40:1, plates 15–20, 21–33, 37–49, twelve change gears 24–100",
        Head(change_gears=TWELVE_GEARS),
    ),
    ReadyHead("40-set-2", "40:1, one plate with two faces, 24–43 and 46–66", Head(plates=SET_TWO)),
    ReadyHead("60-set-1", "60:1, plates 15–20, 21–33, 37–49", Head(ratio=60)),
    ReadyHead("72-set-1", "72:1, plates 15–20, 21–33, 37–49", Head(ratio=72)),
    ReadyHead(
        "table-90-plates",
        "90:1 rotary table with plates 15–20, 21–33, 37–49",
        Head(ratio=90, direct_circles=()),
    ),
    ReadyHead(
        "table-90-dial",
        "90:1 rotary table by its dial, 1 minute and vernier to 10 seconds",
        Head(ratio=90, plates=(), direct_circles=(), dial=_TABLE_DIAL),
    ),
    ReadyHead("fixture-36", "Direct indexing fixture, 36 holes", Head(ratio=1, plates=(), direct_circles=(36,))),
)
