"""A setup as somebody gives it to us: to be verified, or to be found again among our own."""

from __future__ import annotations

from typing import Any

from marshmallow import ValidationError

from dividing.indexing.angles import Angle, AngleError, parse_angle
from dividing.indexing.faults import Fault, Refused
from dividing.indexing.head import Head
from dividing.indexing.reading import NumberError, exact, read_number
from dividing.indexing.setup import METHOD_NAMES
from dividing.indexing.verifying import Claim, GearingClaim, SecondClaim
from dividing.indexing.verifying.claims import COUNT_MOST

from .base import Request
from .fields import Described, Whole, Wholes, Word
from .head import DEFAULT_HEAD, nested

_COUNT = {"minimum": 0, "maximum": COUNT_MOST}
_TEETH = {"minimum": 1, "maximum": 1000}
_OPTIONAL: dict[str, Any] = {"allow_none": True, "load_default": None}


class Reading(Described):
    """A dial's reading, kept as it came: whether it counts degrees or divisions, the head says."""

    json = {"type": ["number", "string", "null"], "maxLength": 64}

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> Any:
        if isinstance(value, bool | list | dict) or len(str(value)) > self.json["maxLength"]:
            raise ValidationError(
                'Give the dial\'s reading, such as "3°25\'40\\"", or its lines on a dial without degrees.'
            )
        return value


class SecondIn(Request):
    """The second move of compound indexing: plate and crank together."""

    turns = Whole("Always 0: a second move of whole turns is plain indexing.", json={"enum": [0, None]}, **_OPTIONAL)
    holes = Whole(
        "Spaces; below 0 the opposite way; null where the schedule gives them.",
        required=True,
        allow_none=True,
        json={"minimum": -COUNT_MOST, "maximum": COUNT_MOST},
    )
    circle = Whole("The holes of the circle that the stop pin is in.", required=True, json={"minimum": 1})


class GearingIn(Request):
    """The train between spindle and plate."""

    spindle = Whole("Teeth of the gear on the spindle.", required=True, json=_TEETH)
    worm = Whole("Teeth of the gear on the worm side.", required=True, json=_TEETH)
    stud = Wholes(
        "The two gears on the stud, first and second; null for a simple train.",
        most=2,
        what="gears",
        json=_TEETH,
        **_OPTIONAL,
    )
    idlers = Whole("Idlers in the train.", load_default=0, json={"minimum": 0, "maximum": 10, "default": 0})
    plate = Word(
        "Which way the plate turns to the crank; told, not judged: it follows from the idlers.",
        ("with", "against"),
        **_OPTIONAL,
    )

    def make(self, given: dict[str, Any]) -> GearingClaim:
        """The train claimed."""
        stud = given["stud"]
        if stud is not None and len(stud) != 2:
            raise Refused([Fault(("stud",), "The stud carries two gears, first and second; give both, or null.")])
        return GearingClaim(given["spindle"], given["worm"], stud, given["idlers"])


class ClaimIn(Request):
    """A setup worked out by hand. Which fields it needs depends on the method."""

    method = Word("The method.", METHOD_NAMES, required=True)
    turns = Whole("Whole turns of the crank.", json=_COUNT, **_OPTIONAL)
    holes = Whole("Spaces after them.", json=_COUNT, **_OPTIONAL)
    circle = Whole("The holes of the circle.", json={"minimum": 1}, **_OPTIONAL)
    second = nested(SecondIn, "The second move of compound indexing; null: none.", **_OPTIONAL)
    gearing = nested(GearingIn, "The train of differential indexing; null: none.", **_OPTIONAL)
    reading = Reading(
        "The dial's reading beyond its whole turns: an angle, or lines on a dial without degrees.",
        **_OPTIONAL,
    )

    leans_on = {"circle": "method", "second": "method", "gearing": "method", "reading": "method"}

    def make(self, given: dict[str, Any]) -> dict[str, Any]:
        """The fields as they are, once they have been found within bounds; what the reading counts is seen later."""
        claim_on(DEFAULT_HEAD, {**given, "reading": None})
        return given

    def _unasked(self) -> dict[str, Any]:
        nothing = dict.fromkeys(("turns", "holes", "circle", "second", "gearing", "reading"))
        return {"method": "plain", **nothing}


def claim_on(head: Head, given: dict[str, Any]) -> Claim:
    """The claim as it is meant on this head; raises `Refused` with paths from the claim."""
    second = given["second"]
    if second is not None and second["holes"] is None:
        raise Refused([Fault(("second", "holes"), "Give the spaces of the second move.")])
    reading, divisions = _reading(head, given["reading"])
    try:
        return Claim(
            given["method"],
            turns=given["turns"] or 0,
            holes=given["holes"] or 0,
            circle=given["circle"],
            second=SecondClaim(second["holes"], second["circle"]) if second else None,
            gearing=given["gearing"],
            reading=reading,
            divisions=divisions,
        )
    except Refused as refused:
        raise Refused([_of_the_wire(fault) for fault in refused.faults]) from None


def _of_the_wire(fault: Fault) -> Fault:
    """A dial's divisions are asked for as its reading."""
    return Fault(("reading",), fault.sentence) if fault.path == ("divisions",) else fault


def _reading(head: Head, told: Any) -> tuple[Angle | None, Any]:
    if told is None:
        return None, None
    try:
        if head.dial is not None and head.dial.divisions is not None:
            return None, read_number(told) if isinstance(told, str) else exact(told)
        return parse_angle(told), None
    except NumberError as error:
        sentence = f"{error} The dial of this head has plain divisions, no degrees."
        raise Refused([Fault(("reading",), sentence)]) from None
    except AngleError as error:
        raise Refused([Fault(("reading",), str(error))]) from None
