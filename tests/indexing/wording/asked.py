"""Setups to be put into words: what is asked, on which head, and the setup by one method."""

from __future__ import annotations

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import TWELVE_GEARS, Dial, Head
from dividing.indexing.heads import MINUTE, TEN_SECONDS
from dividing.indexing.setup import MethodName, Setup
from dividing.indexing.solving import solve
from dividing.indexing.work import Angles, Arc, Divisions, Work

USUAL = Head()
GEARED = Head(change_gears=TWELVE_GEARS)
IN_MESH = Head(worm_disengages=False)
TABLE = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(graduation=MINUTE, vernier=TEN_SECONDS))
MARKS = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(divisions=60))
FIXTURE = Head(ratio=1, plates=(), direct_circles=(36,))
ARC = Arc(parse_angle("37°30'"), 3)
LIST = Angles(tuple(parse_angle(text) for text in ("0", "22.5", "61°15'")))

Asked = tuple[Work, Head, Setup]


def asked(work: Work | int, head: Head = USUAL, method: MethodName | None = None, place: int = 0) -> Asked:
    """The work, the head and the setup at `place` of the answer."""
    if isinstance(work, int):
        work = Divisions(work)
    found = solve(work, head, methods=None if method is None else (method,), limit=20)
    return found.work, found.head, found.setups[place]
