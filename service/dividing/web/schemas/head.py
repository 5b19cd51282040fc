"""The head on the wire. A head that comes again, as it does with every question of one shop, costs almost nothing."""

from __future__ import annotations

from collections import OrderedDict
from threading import Lock
from typing import Any, Final

from marshmallow import fields

from dividing.indexing import bounds
from dividing.indexing.head import Dial, Head, Idlers, Screw

from .base import Request
from .fields import BASICS, AngleIn, Described, Length, ListsOfWholes, Whole, Wholes, Word, YesNo

DEFAULT_HEAD: Final = Head()
_HOLES = {"minimum": bounds.HOLES_LEAST, "maximum": bounds.HOLES_MOST}


def nested(schema: type[Request], about: str, **kwargs: Any) -> fields.Nested:
    """A field that holds an object of this form."""
    return fields.Nested(schema, metadata={"description": about}, error_messages=dict(BASICS), **kwargs)


class DialIn(Request):
    """The dial of a rotary table: a graduation in degrees, with or without a vernier, or plain divisions."""

    graduation = AngleIn('What one line of the dial is worth, as an angle of the table: "0°01\'".')
    vernier = AngleIn("What one line of the vernier is worth, if there is one.")
    divisions = Whole(
        "Lines round the whole dial, on a dial without degrees.",
        json={"minimum": 1, "maximum": bounds.DIAL_UNITS_MOST},
    )

    def make(self, given: dict[str, Any]) -> Dial:
        """The dial, with its angles in turns of the spindle."""
        turns = {name: given[name].turns for name in ("graduation", "vernier") if name in given}
        return Dial(**turns, divisions=given.get("divisions"))


class IdlerCounts(Request):
    """How many idlers turn the plate each way, for one kind of train."""

    # "with" is a word of Python's own, so the fields get their names in a dictionary.
    _counts = {"minimum": 0, "maximum": 4}


IdlersPerTrain: type[Request] = IdlerCounts.from_dict(  # type: ignore[assignment]
    {
        "with": Whole("Idlers for the plate to turn with the crank.", json=IdlerCounts._counts, required=True),
        "against": Whole("Idlers for the plate to turn against the crank.", json=IdlerCounts._counts, required=True),
    },
    name="IdlersPerTrain",
)
IdlersPerTrain.__doc__ = "How many idlers turn the plate each way, for one kind of train."


class IdlersIn(Request):
    """Idlers on this head; heads differ, so try the direction before cutting."""

    simple = nested(IdlersPerTrain, "For a train of two gears.", load_default=lambda: {"with": 1, "against": 2})
    compound = nested(IdlersPerTrain, "For a train of four gears.", load_default=lambda: {"with": 0, "against": 1})

    def make(self, given: dict[str, Any]) -> Idlers:
        """The idlers of both kinds of train."""
        simple, compound = given["simple"], given["compound"]
        return Idlers(simple["with"], simple["against"], compound["with"], compound["against"])


class ScrewIn(Request):
    """The table's lead screw."""

    lead = Length("How far one turn of the screw moves the table.", required=True, json={"maximum": 1000})
    unit = Word("The unit of the lead.", ("mm", "in"), required=True)

    def make(self, given: dict[str, Any]) -> Screw:
        """The screw."""
        return Screw(**given)


class HeadIn(Request):
    """The dividing head or rotary table. What is left out is that of the usual head."""

    leans_on = {"mounted_plate": "plates", "stop_circles": "plates", "dial": "ratio"}

    ratio = Whole(
        "Crank turns for one turn of the spindle.",
        json={"minimum": 1, "maximum": bounds.RATIO_MOST, "default": 40},
    )
    plates = ListsOfWholes(
        "Index plates (each face for itself), each with the holes of its circles. [] for a table set by its dial.",
        most=bounds.CIRCLES_MOST, what="circles", json=_HOLES,
    )  # fmt: skip
    mounted_plate = Whole("The plate that is on the head now, counted from 1.", json={"minimum": 1, "default": 1})
    direct_circles = Wholes(
        "Circles of the direct plate on the spindle. [] for none.",
        most=bounds.CIRCLES_MOST,
        what="circles",
        json=_HOLES,
    )
    worm_disengages = YesNo("Whether the worm can be taken out of mesh.", json={"default": True})
    change_gears = Wholes(
        "Teeth of the change gears owned, one entry a gear. [] for none.", most=bounds.GEARS_MOST, what="gears",
        json={"minimum": bounds.TEETH_LEAST, "maximum": bounds.TEETH_MOST},
    )  # fmt: skip
    idlers = nested(IdlersIn, "Idlers that turn the plate each way.")
    stop_circles = Wholes(
        "Circles that the stop pin reaches, for the second move of compound indexing; null: all.",
        most=bounds.CIRCLES_MOST, what="circles", json=_HOLES, allow_none=True,
    )  # fmt: skip
    screw = nested(ScrewIn, "The table's lead screw, for helices; null: not given.", allow_none=True)
    dial = nested(DialIn, "The dial of a rotary table; null: none.", allow_none=True)

    def make(self, given: dict[str, Any]) -> Head:
        """The head, with what was left out from the usual one."""
        return Head(**given)


HEAD_IN = HeadIn()
_REMEMBERED_MOST = 32
_REMEMBERED_LONGEST = 4_096
_remembered: OrderedDict[str, Head] = OrderedDict()
_lock = Lock()


class HeadField(Described):
    """A head, loaded once and then remembered by what was sent."""

    def __init__(self, **kwargs: Any) -> None:
        about = "The head in front of you; left out, the usual one."
        super().__init__(about, schema=HeadIn, load_default=DEFAULT_HEAD, **kwargs)

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> Head:
        return load_head(value)


def load_head(value: Any) -> Head:
    """The head that a JSON object spells; the same text gives the same value again, its tables already made."""
    key = repr(value)
    found = _remembered.get(key)
    if found is None:
        found = HEAD_IN.load(value)
        if len(key) <= _REMEMBERED_LONGEST:
            with _lock:
                _remembered[key] = found
                while len(_remembered) > _REMEMBERED_MOST:
                    _remembered.popitem(last=False)
    return found
