"""What is being made, on the wire: each kind of part takes the fields that its function in `parts` takes."""

from __future__ import annotations

import inspect
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Any

from marshmallow import ValidationError

from dividing.indexing import bounds
from dividing.indexing.angles import Angle
from dividing.indexing.faults import Fault, Refused
from dividing.indexing.head import Head
from dividing.indexing.setup import METHOD_NAMES, MethodName
from dividing.indexing.work import Angles, Arc, Divisions, Work
from dividing.parts import KINDS, Kind, Part

from .base import Request
from .fields import AngleIn, Described, Length, Whole, Word, figure

UNITS = ("mm", "in")
# Words of the wire that are other words in Python.
_IN_PYTHON = {"round": "stock"}
_ON_THE_WIRE = {python: wire for wire, python in _IN_PYTHON.items()}
_ANGLES = frozenset({"start", "spread"})
_OF_ANY_SIGN = frozenset({"x", "y", "profile_shift", "label_value"})


@dataclass(frozen=True, slots=True)
class PartAsked:
    """A part as it was asked for; some kinds can be made only when the head is known."""

    kind: str
    given: dict[str, Any]

    def on(self, head: Head) -> Part:
        """The part with its sizes; raises `Refused` with paths from the part."""
        kind = KINDS[self.kind]
        more = {"head": head} if kind.takes_head else {}
        try:
            return kind.make(**{_IN_PYTHON.get(name, name): value for name, value in self.given.items()}, **more)
        except Refused as refused:
            raise Refused([_on_the_wire(fault) for fault in refused.faults]) from None
        except (ArithmeticError, ValueError) as error:
            # Sizes that each are possible and together have no geometry.
            sentence = "No such part can be made of these sizes together; look at each once more."
            raise Refused([Fault((), sentence)]) from error


def work_of(part: Part) -> Work:
    """What the part asks of the head."""
    if part.divisions is not None:
        return Divisions(part.divisions)
    if part.angles is not None:
        return Angles(tuple(Angle(turns) for turns in part.angles))
    return Arc(Angle(part.step or Fraction(0)), part.count or 2)


def barred(part: Part | None) -> dict[MethodName, str] | None:
    """The methods that such a part forbids, each with its reason."""
    if part is None or part.methods is None:
        return None
    return {name: part.methods_reason for name in METHOD_NAMES if name not in part.methods}


class Count(Whole):
    """A whole number from 1 to as many as work may have divisions."""

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> int:
        found = super()._deserialize(value, attr, data, **kwargs)
        if not 1 <= found <= bounds.DIVISIONS_MOST:
            raise ValidationError(f"Give a whole number from 1 to {bounds.DIVISIONS_MOST:,}.")
        return found


class Figure(Described):
    """A number of any sign."""

    json = {"type": "number", "minimum": -1_000_000, "maximum": 1_000_000}

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> Fraction:
        found = figure(value)
        if abs(found) > 1_000_000:
            raise ValidationError("Give a number between -1,000,000 and 1,000,000.")
        return found


class Degrees(AngleIn):
    """An angle that the part takes in degrees."""

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> Any:
        return super()._deserialize(value, attr, data, **kwargs).degrees


class Choice(Word):
    """One of a few words; "2.25" may come as a number too."""

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> str:
        if isinstance(value, Decimal) and abs(value.adjusted()) <= 9:
            value = f"{value:f}"
        return super()._deserialize(value, attr, data, **kwargs)


class PartIn(Request):
    """What every part has."""

    def make(self, given: dict[str, Any]) -> PartAsked:
        """The part asked for."""
        kind = given.pop("kind")
        lengths = [name for name in given if isinstance(self.fields[name], Length)]
        if lengths and "unit" not in given:
            raise Refused([Fault(("unit",), 'Say in which unit the lengths are: "mm" or "in".')])
        return PartAsked(kind, given)


def _field(name: str, about: str, parameter: inspect.Parameter, words: tuple[str, ...]) -> Described:
    needed = parameter.default is inspect.Parameter.empty
    kind = str(parameter.annotation)
    if name == "unit":
        return Word(about, UNITS, required=needed)
    if kind.startswith("int"):
        return Count(about, json={"minimum": 1, "maximum": bounds.DIVISIONS_MOST}, required=needed)
    if kind.startswith("str"):
        return Choice(about, words, required=needed)
    if name.endswith("angle") or name in _ANGLES:
        return Degrees(about, required=needed)
    return (Figure if name in _OF_ANY_SIGN else Length)(about, required=needed)


def _schema(name: str, kind: Kind) -> type[Request]:
    parameters = inspect.signature(kind.make).parameters
    fields = {
        field: _field(field, about, parameters[_IN_PYTHON.get(field, field)], kind.choices.get(field, ()))
        for field, about in kind.fields.items()
    }
    title = "".join(word.capitalize() for word in name.split("_"))
    word = Word("The kind of part.", (name,), required=True)
    made: type[Request] = PartIn.from_dict({"kind": word, **fields}, name=f"{title}PartIn")  # type: ignore[assignment]
    made.__doc__ = f"{kind.title}."
    return made


PART_SCHEMAS = {name: _schema(name, kind) for name, kind in KINDS.items()}
_LOADERS = {name: schema() for name, schema in PART_SCHEMAS.items()}


class PartField(Described):
    """The part; its kind says which fields it has."""

    def __init__(self, about: str, **kwargs: Any) -> None:
        super().__init__(about, choice=tuple(PART_SCHEMAS.values()), **kwargs)

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> PartAsked:
        if not isinstance(value, dict):
            raise ValidationError(Request.error_messages["type"])
        kind = value.get("kind")
        if not isinstance(kind, str) or kind not in _LOADERS:
            raise ValidationError({"kind": [f"Give one of: {', '.join(_LOADERS)}."]})
        asked: PartAsked = _LOADERS[kind].load(value)
        return asked


def _on_the_wire(fault: Fault) -> Fault:
    return Fault(tuple(_ON_THE_WIRE.get(str(key), key) for key in fault.path), fault.sentence)
