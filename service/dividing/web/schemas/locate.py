"""The question of /v1/locate on the wire."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from dividing.indexing.bounds import ROWS_MOST
from dividing.indexing.faults import Fault, Refused
from dividing.indexing.head import Head
from dividing.indexing.locating import GIVE_USUAL, Seen
from dividing.indexing.setup import METHOD_NAMES
from dividing.indexing.work import Work
from dividing.parts import Part

from .base import Request
from .claim import GearingIn, Reading, SecondIn
from .fields import AngleIn, Whole, Word
from .head import DEFAULT_HEAD, HeadField, nested
from .solve import every_field
from .work import WorkField, gathered

_OPTIONAL: dict[str, Any] = {"allow_none": True, "load_default": None}


@dataclass(frozen=True, slots=True)
class LostCount:
    """What was being done, with which setup (as far as it is told), and what the head shows."""

    work: Work
    head: Head
    setup: dict[str, Any] | None
    seen: Seen
    part: Part | None = None


class SeenIn(Request):
    """What the head shows."""

    hole = Whole("The hole that the pin is in, counted from 0, the start hole; left out on a dial.",
                 json={"minimum": 0, "maximum": 399}, **_OPTIONAL)  # fmt: skip
    spindle = AngleIn("The reading of the degree scale on the spindle nose.", required=True)
    give = AngleIn("By how much that reading may be off; 2° unless given.")

    def make(self, given: dict[str, Any]) -> Seen:
        """What is seen, in turns."""
        faults = []
        if given.get("hole") is not None and not 0 <= given["hole"] <= 399:
            faults.append(Fault(("hole",), "Count the hole from 0, the start hole, up to 399."))
        if "give" in given and not 0 <= given["give"].turns <= 1:
            faults.append(Fault(("give",), "The reading may be off by 0° to 360°."))
        if faults:
            raise Refused(faults)
        give = given["give"].turns if "give" in given else GIVE_USUAL
        return Seen(spindle=given["spindle"].turns, hole=given.get("hole"), give=give)


class SetupIn(Request):
    """The setup in use, as far as needed to tell it from the others that answer the same work."""

    method = Word("The method.", METHOD_NAMES, required=True)
    turns = Whole("Whole turns of the crank.", **_OPTIONAL)
    holes = Whole("Spaces after them.", **_OPTIONAL)
    circle = Whole("The holes of the circle.", **_OPTIONAL)
    plate = Whole("The plate, from 1.", **_OPTIONAL)
    second = nested(SecondIn, "The second move; null: none.", **_OPTIONAL)
    gearing = nested(GearingIn, "The train; null: none.", **_OPTIONAL)
    reading = Reading("The dial's reading; it tells nothing that the work does not.", **_OPTIONAL)


class LocateIn(Request):
    """For whoever has lost count: what was being done, and what the head shows."""

    work = WorkField("What is being divided.", required=True)
    head = HeadField()
    setup = nested(SetupIn, "The setup in use; left out, the best one for this work.", **_OPTIONAL)
    every = every_field()
    seen = nested(SeenIn, "What the head shows.", required=True)

    leans_on = {"every": "work", "work": "head"}

    def make(self, given: dict[str, Any]) -> LostCount:
        """The question."""
        faults: list[Fault] = []
        asked = gathered(given, faults)
        if asked is not None and asked.work.cuts > ROWS_MOST:
            sentence = f"A schedule of more than {ROWS_MOST:,} cuts is too long to search; split the work."
            faults.append(Fault(("work",), sentence))
        if asked is None or faults:
            raise Refused(faults)
        return LostCount(asked.work, given["head"], given["setup"], given["seen"], asked.part)

    def _unasked(self) -> dict[str, Any]:
        return {"head": DEFAULT_HEAD, "every": None, "setup": None}


LOCATE_IN = LocateIn()
