"""The words of the query form: where each stands in the body, how it is read from text and written as text.

Circles and gears are joined by commas, plates by strokes; `plates=` with nothing after it means none. In a list of
angles the comma parts them, so a decimal comma is written as a point there.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from . import json_in
from .schemas.fields import PARTED, whole

_NUMBER = re.compile(r"-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?", re.ASCII)
_NUMBER_LONGEST = 64

Reader = Callable[[str], Any]
Writer = Callable[[Any], str]


def number(text: str) -> Any:
    """A number where the text spells one; the text itself otherwise, for its field to refuse."""
    if len(text) <= _NUMBER_LONGEST and _NUMBER.fullmatch(text.strip()):
        return json_in.read(text.strip().encode())
    return text


def whole_number(text: str) -> Any:
    """As `number`, but what may be a count with its thousands parted is left to be refused."""
    return text if PARTED.fullmatch(text.strip()) else number(text)


def _numbers(text: str) -> Any:
    return [number(each) for each in text.split(",")] if text.strip() else []


def _plates(text: str) -> Any:
    return [_numbers(plate) for plate in text.split("/")] if text.strip() else []


def _flag(text: str) -> Any:
    return {"true": True, "false": False}.get(text, text)


def _texts(text: str) -> Any:
    return [each.strip() for each in text.split(",")]


def _angle_texts(values: Iterable[Any]) -> str:
    return ",".join(str(value).replace(",", ".") for value in values)


def _dial(text: str) -> Any:
    first, _, second = text.partition("/")
    if first.isascii() and first.isdigit():
        return {"divisions": number(first)}
    return {"graduation": first, "vernier": second} if second else {"graduation": first}


def _dial_text(dial: Mapping[str, Any]) -> str:
    return (
        str(dial["divisions"])
        if "divisions" in dial
        else "/".join(dial[name] for name in ("graduation", "vernier") if name in dial)
    )


def _idlers(text: str) -> Any:
    given = _numbers(text)
    if len(given) != 4:
        return text
    ways = [dict(zip(("with", "against"), given[at : at + 2], strict=True)) for at in (0, 2)]
    return dict(zip(("simple", "compound"), ways, strict=True))


def _idlers_text(idlers: Mapping[str, Mapping[str, int]]) -> str:
    return ",".join(str(idlers[train][way]) for train in ("simple", "compound") for way in ("with", "against"))


def _screw(text: str) -> Any:
    lead, _, unit = text.partition(" ")
    return {"lead": number(lead), "unit": unit}


def _joined(values: Iterable[Any]) -> str:
    return ",".join(map(str, values))


def _flag_text(value: bool) -> str:
    return "true" if value else "false"


def _part(text: str) -> Any:
    """A part is an object of JSON; its figures may come as text, as they do from a form."""
    try:
        found = json_in.read(text.encode())
    except json_in.NotJson:
        return text
    if not isinstance(found, dict):
        return found
    return {
        name: number(value) if isinstance(value, str) and name != "unit" else value for name, value in found.items()
    }


def _part_text(part: Mapping[str, Any]) -> str:
    return json.dumps(part, ensure_ascii=False, sort_keys=True, separators=(",", ":"), default=_plain)


def _plain(value: Decimal) -> int | float:
    found = whole(value)
    return float(value) if found is None else found


def _number_text(value: Any) -> str:
    found = whole(value)
    return f"{value:f}" if found is None and isinstance(value, Decimal) else str(value if found is None else found)


@dataclass(frozen=True, slots=True)
class QueryWord:
    """A word of the query form: where its value stands in the body, and how it is read and written."""

    path: tuple[str, ...]
    about: str
    read: Reader = str
    write: Writer = str

    @classmethod
    def of_number(cls, path: tuple[str, ...], about: str) -> QueryWord:
        """A word whose value is a number."""
        return cls(path, about, number, _number_text)

    @classmethod
    def of_whole(cls, path: tuple[str, ...], about: str) -> QueryWord:
        """A word whose value is a whole number."""
        return cls(path, about, whole_number, _number_text)


WORK_WORDS = {
    "divisions": QueryWord.of_whole(("work", "divisions"), "Equal divisions: 73."),
    "angle": QueryWord(("work", "angle"), "An angle in any notation: 37°30'."),
    "count": QueryWord.of_whole(("work", "count"), "Features at that angle: 3."),
    "angles": QueryWord(("work", "angles"), "Angles from zero, parted by commas: 0,22.5,61°15'.", _texts, _angle_texts),
    "part": QueryWord(
        ("work", "part"), 'The part as an object of JSON: {"kind":"flats","sides":6,"unit":"mm"}.', _part, _part_text
    ),
}
HEAD_WORDS = {
    "ratio": QueryWord.of_whole(("head", "ratio"), "Crank turns for one turn of the spindle: 40."),
    "plates": QueryWord(
        ("head", "plates"),
        "Circles joined by commas, plates by strokes: 15,16/21,23.",
        _plates,
        lambda plates: "/".join(map(_joined, plates)),
    ),
    "mounted_plate": QueryWord.of_whole(("head", "mounted_plate"), "The plate on the head, from 1."),
    "direct_circles": QueryWord(("head", "direct_circles"), "Circles of the direct plate: 24.", _numbers, _joined),
    "change_gears": QueryWord(("head", "change_gears"), "Teeth of the gears owned: 24,24,28.", _numbers, _joined),
    "stop_circles": QueryWord(("head", "stop_circles"), "Circles that the stop pin reaches.", _numbers, _joined),
    "worm_disengages": QueryWord(("head", "worm_disengages"), "true or false.", _flag, _flag_text),
    "idlers": QueryWord(
        ("head", "idlers"),
        "Idlers with and against the crank, simple train, then compound: 1,2,0,1.",
        _idlers,
        _idlers_text,
    ),
    "dial": QueryWord(
        ("head", "dial"), "Graduation/vernier, or lines round the dial: 0°01'/0°00'10\".", _dial, _dial_text
    ),
    "screw": QueryWord(
        ("head", "screw"),
        "Lead and unit of the table screw: 0.25 in.",
        _screw,
        lambda screw: f"{screw['lead']} {screw['unit']}",
    ),
}
SOLVE_WORDS = {
    **WORK_WORDS,
    "tolerance": QueryWord(("tolerance", "angle"), "The largest permitted error as an angle: 0°01'."),
    "at_rim": QueryWord.of_number(("tolerance", "at_rim"), "The largest permitted error at the rim."),
    "diameter": QueryWord.of_number(("tolerance", "diameter"), "The diameter of that rim."),
    "every": QueryWord.of_whole(("every",), "Spaces per move."),
    "methods": QueryWord(("methods",), "Methods to keep to, parted by commas: plain,compound.", _texts, _joined),
    "limit": QueryWord.of_whole(("limit",), "Setups in the answer at most."),
    "positions": QueryWord(("positions",), "Whether to give a row for every cut: true.", _flag, _flag_text),
    **HEAD_WORDS,
}
PAGE_SETUP = ("setup",)
"""The one word that asks nothing of the service: which of the setups the page shows first, counted from 1."""
PAGE_WORDS = {
    **SOLVE_WORDS,
    "setup": QueryWord.of_whole(PAGE_SETUP, "Which of the setups the page shows first, counted from 1."),
}
ANGLE_WORDS = {
    "angle": QueryWord(("angle",), "An angle in any notation: 37°30'."),
    "turns": QueryWord.of_whole(("crank", "turns"), "Whole crank turns."),
    "holes": QueryWord.of_whole(("crank", "holes"), "Spaces after them."),
    "circle": QueryWord.of_whole(("crank", "circle"), "The circle on which the spaces are counted."),
    "diameter": QueryWord.of_number(("diameter",), "A diameter, for arc and chord."),
    "sine_bar": QueryWord.of_number(("sine_bar",), "The length of a sine bar."),
    **HEAD_WORDS,
}
