"""What is to be divided, and how far off it may be, on the wire."""

from __future__ import annotations

from dataclasses import replace
from typing import Any, NamedTuple

from dividing.indexing import bounds
from dividing.indexing.faults import Fault, Refused
from dividing.indexing.setup import Tolerance
from dividing.indexing.work import Angles, Arc, Divisions, Work
from dividing.parts import Part

from .base import Request
from .fields import AngleIn, AnglesIn, Described, Length, Whole
from .part import PartAsked, PartField, work_of

KINDS = ("divisions", "angle", "angles", "part")


class WorkIn(Request):
    """Exactly one of divisions, angle, angles and part."""

    divisions = Whole("Equal divisions round the work.", json={"minimum": 1, "maximum": bounds.DIVISIONS_MOST})
    angle = AngleIn("The angle from one feature to the next: degrees as a number, or any notation as text.")
    count = Whole(
        "How many features stand at that angle; 2 unless given.",
        json={"minimum": 2, "maximum": bounds.ROWS_MOST},
    )
    angles = AnglesIn("Positions from zero, in the order of cutting.", most=bounds.ANGLES_MOST)
    part = PartField("What is being made: its kind and its sizes; the divisions follow from it.")

    def make(self, given: dict[str, Any]) -> Work | PartAsked:
        """The work, or the part that says what the work is once the head is known."""
        if len(given) == 1 and "divisions" in given:
            return Divisions(given["divisions"])
        kinds = [kind for kind in KINDS if kind in given]
        if len(kinds) != 1:
            raise Refused(_one_kind(kinds))
        if "count" in given and kinds != ["angle"]:
            raise Refused([Fault(("count",), "A count of features goes with an angle; leave it out.")])
        if kinds == ["angles"]:
            return Angles(given["angles"])
        if kinds == ["part"]:
            asked: PartAsked = given["part"]
            return asked
        return Arc(given["angle"], given.get("count", 2))


def _one_kind(kinds: list[str]) -> list[Fault]:
    sentence = "Give exactly one of divisions, angle, angles and part."
    return [Fault((kind,), sentence) for kind in kinds[1:]] or [Fault((), sentence)]


WORK_IN = WorkIn()


class WorkField(Described):
    """The work, wherever it is asked about."""

    def __init__(self, about: str, **kwargs: Any) -> None:
        super().__init__(about, schema=WorkIn, **kwargs)

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> Work | PartAsked:
        work: Work | PartAsked = WORK_IN.load(value)
        return work


class Asked(NamedTuple):
    """The work in blocks of so many spaces a move, and the part that it is for, if it is for one."""

    work: Work
    part: Part | None = None


def asked_work(given: dict[str, Any]) -> Asked:
    """The work of a request's `work`, `head` and `every`; raises `Refused` with paths from the request."""
    work: Work | PartAsked = given["work"]
    if not isinstance(work, PartAsked):
        return Asked(_in_blocks(work, given["every"]))
    try:
        part = work.on(given["head"])
        found = work_of(part)
    except Refused as refused:
        raise Refused([fault.under("work", "part") for fault in refused.faults]) from None
    return Asked(_in_blocks(found, given["every"]), part)


def gathered(given: dict[str, Any], faults: list[Fault]) -> Asked | None:
    """The work, or None with what is wrong with it put to the other faults."""
    if "work" not in given:
        return None
    try:
        return asked_work(given)
    except Refused as refused:
        faults += refused.faults
        return None


def _in_blocks(work: Work, every: int | None) -> Work:
    if every == 1 and isinstance(work, Divisions):
        return replace(work, fixed=True)
    if every is None or every == 1:
        return work
    if not isinstance(work, Divisions):
        raise Refused([Fault(("every",), "Spaces per move are for equal divisions; leave the field out.")])
    return replace(work, every=every)


class ToleranceIn(Request):
    """The largest error that any position may have: an angle, or a length at the rim of a diameter."""

    angle = AngleIn("The largest permitted error as an angle.")
    at_rim = Length("The largest permitted error as a length at the rim.")
    diameter = Length("The diameter at which errors are shown and at_rim is meant, in the same unit.")

    def make(self, given: dict[str, Any]) -> Tolerance:
        """The tolerance."""
        angle = given.get("angle")
        faults = []
        if angle is not None and angle.turns <= 0:
            faults.append(Fault(("angle",), "A tolerance is an angle above 0."))
        if angle is None and "at_rim" not in given:
            faults.append(Fault((), "Give the tolerance as an angle, or as at_rim with a diameter."))
        if angle is not None and "at_rim" in given:
            faults.append(Fault(("at_rim",), "Give either an angle or a length at the rim, not both."))
        if "at_rim" in given and "diameter" not in given:
            faults.append(Fault(("diameter",), "A length at the rim needs the diameter of that rim."))
        if faults:
            raise Refused(faults)
        return Tolerance(angle.turns if angle else None, given.get("at_rim"), given.get("diameter"))
