"""Fields that the trade needs: whole numbers, lists of them, lengths and angles, each read strictly and in one go."""

from __future__ import annotations

import re
from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Any

from marshmallow import Schema, ValidationError, fields

from dividing.indexing.angles import Angle, AngleError, parse_angle
from dividing.indexing.reading import NumberError, exact

MISSING = "This field is needed."
NOT_NULL = "Give a value here, or leave the field out."
BASICS = {"required": MISSING, "null": NOT_NULL}
_LARGEST_DIGITS = 24
# Numbers as JSON writes them. Of quotes is spoken only where they are all that is wrong: whoever fills in the page, an
# address or a sheet of cells types none.
_WHOLE = re.compile(r"-?(?:0|[1-9][0-9]{0,11})", re.ASCII)
_FIGURE = re.compile(rf"{_WHOLE.pattern}(?:\.[0-9]{{1,12}})?", re.ASCII)
# 1,000 and 1.000 are a thousand to some and one to others, so a count written so is not guessed at.
PARTED = re.compile(r"[+-]?[0-9]{1,3}(?:[ \u00a0\u202f,.'\u2019][0-9]{3})+", re.ASCII)
ANGLE_JSON: dict[str, Any] = {"type": ["number", "string"], "maxLength": 64}


class Described(fields.Field[Any]):
    """A field that says in the description what it is."""

    json: Mapping[str, Any] = {}

    def __init__(
        self,
        about: str,
        *,
        json: Mapping[str, Any] | None = None,
        schema: type[Schema] | None = None,
        choice: tuple[type[Schema], ...] = (),
        **kwargs: Any,
    ) -> None:
        metadata = {**self.json, **(json or {}), "description": about}
        self.schema = schema
        """The schema of the object that the field holds, if it holds one."""
        self.choice = choice
        """The schemas of which the object that it holds has one, if it may have several."""
        super().__init__(metadata=metadata, error_messages=dict(BASICS), **kwargs)


def whole(value: object) -> int | None:
    """The whole number that a JSON number spells, or None: 73 and 73.0 do, 73.5, "73" and true do not.

    >>> whole(73), whole(Decimal("73.0")), whole(Decimal("73.5")), whole("73"), whole(True)
    (73, 73, None, None, None)
    """
    if type(value) is int:
        return value
    if (
        type(value) is Decimal
        and value.is_finite()
        and abs(value.adjusted()) <= _LARGEST_DIGITS
        and value == int(value)
    ):
        return int(value)
    return None


def _not_whole(value: object) -> str:
    if isinstance(value, str) and _WHOLE.fullmatch(value.strip()):
        return f"Give a whole number without quotes: {value.strip()}."
    if isinstance(value, str) and PARTED.fullmatch(value.strip()):
        return "Give a whole number in figures alone, without a mark between thousands and without decimals."
    if isinstance(value, Decimal):
        return "Give a whole number without decimals, and no longer than 24 digits."
    return "Give a whole number, such as 40."


class Whole(Described):
    """A whole number."""

    json: Mapping[str, Any] = {"type": "integer"}

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> int:
        found = whole(value)
        if found is None:
            raise ValidationError(_not_whole(value))
        return found


class YesNo(Described):
    """true or false and nothing that only looks like it."""

    json: Mapping[str, Any] = {"type": "boolean"}

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> bool:
        if value is True or value is False:
            return value
        quoted = value in ("true", "false")
        raise ValidationError("Give true or false, without quotes." if quoted else "Give true or false.")


class Word(Described):
    """One of a few words."""

    def __init__(self, about: str, words: tuple[str, ...], **kwargs: Any) -> None:
        self.words = words
        super().__init__(about, json={"type": "string", "enum": list(words)}, **kwargs)

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> str:
        if isinstance(value, str) and value in self.words:
            return value
        raise ValidationError(f"Give one of: {', '.join(self.words)}.")


class Words(Described):
    """A list of some of a few words."""

    def __init__(self, about: str, words: tuple[str, ...], **kwargs: Any) -> None:
        self.words = words
        items = {"type": "string", "enum": list(words)}
        json = {"type": "array", "items": items, "minItems": 1, "maxItems": len(words), "uniqueItems": True}
        super().__init__(about, json=json, **kwargs)

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> tuple[str, ...]:
        choice = ", ".join(self.words)
        if not isinstance(value, list) or not 1 <= len(value) <= len(self.words):
            raise ValidationError(f"Give a list of one to {len(self.words)} of: {choice}.")
        wrong: dict[int, list[str]] = {}
        for place, word in enumerate(value):
            if not isinstance(word, str) or word not in self.words:
                wrong[place] = [f"Give one of: {choice}."]
            elif word in value[:place]:
                wrong[place] = [f'"{word}" stands twice; give it once.']
        if wrong:
            raise ValidationError(wrong)
        return tuple(value)


class Length(Described):
    """A number above 0 in the user's own unit, exact."""

    json: Mapping[str, Any] = {"type": "number", "exclusiveMinimum": 0, "maximum": 1_000_000}

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> Fraction:
        found = figure(value)
        if not 0 < found <= 1_000_000:
            raise ValidationError("Give a length above 0 and at most 1,000,000.")
        return found


def figure(value: Any) -> Fraction:
    """The exact value of a JSON number, or a `ValidationError`."""
    if isinstance(value, bool) or not isinstance(value, int | Decimal):
        raise ValidationError(_no_figure(value))
    try:
        return exact(value)
    except NumberError as error:
        raise ValidationError(str(error)) from None


def _no_figure(value: object) -> str:
    if isinstance(value, str) and _FIGURE.fullmatch(value.strip()):
        return f"Give a number without quotes: {value.strip()}."
    return "Give a number, such as 12.5."


class AngleIn(Described):
    """An angle in any notation of the shop."""

    json: Mapping[str, Any] = ANGLE_JSON

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> Angle:
        return angle(value)


def angle(value: Any) -> Angle:
    """The angle that a JSON number or a text spells, or a `ValidationError` with where reading stopped."""
    try:
        return parse_angle(value)
    except AngleError as error:
        raise ValidationError(str(error)) from None


class AnglesIn(Described):
    """A list of angles, read as one list."""

    def __init__(self, about: str, *, most: int, **kwargs: Any) -> None:
        self.most = most
        json = {"type": "array", "items": ANGLE_JSON, "minItems": 1, "maxItems": most}
        super().__init__(about, json=json, **kwargs)

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> tuple[Angle, ...]:
        if not isinstance(value, list):
            raise ValidationError('Give a list of angles, such as ["0", "22.5", "61°15\'"].')
        if not value:
            raise ValidationError("Give one angle at least, such as 22.5 or 61°15'.")
        if len(value) > self.most:
            raise ValidationError(f"Give at most {self.most:,} angles; these are {len(value):,}.")
        found: list[Angle] = []
        wrong: dict[int, list[str]] = {}
        for place, each in enumerate(value):
            try:
                found.append(parse_angle(each))
            except AngleError as error:
                wrong[place] = [str(error)]
        if wrong:
            raise ValidationError(wrong)
        return tuple(found)


def wholes(value: Any, *, most: int, what: str) -> tuple[int, ...]:
    """A list of whole numbers, looked at as one list; `what` names its items in a refusal."""
    if type(value) is not list:
        raise ValidationError(f"Give a list of {what}, such as [24, 30].")
    if len(value) > most:
        raise ValidationError(f"Give at most {most:,} {what}; these are {len(value):,}.")
    if set(map(type, value)) <= {int}:
        return tuple(value)
    found = [whole(each) for each in value]
    wrong = {place: [_not_whole(value[place])] for place, each in enumerate(found) if each is None}
    if wrong:
        raise ValidationError(wrong)
    return tuple(each for each in found if each is not None)


class Wholes(Described):
    """A list of whole numbers."""

    def __init__(self, about: str, *, most: int, what: str, json: Mapping[str, Any], **kwargs: Any) -> None:
        self.most, self.what = most, what
        kind = ["array", "null"] if kwargs.get("allow_none") else "array"
        described = {"type": kind, "items": {"type": "integer", **json}, "maxItems": most}
        super().__init__(about, json=described, **kwargs)

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> tuple[int, ...]:
        return wholes(value, most=self.most, what=self.what)


class ListsOfWholes(Described):
    """A list of lists of whole numbers."""

    def __init__(self, about: str, *, most: int, what: str, json: Mapping[str, Any], **kwargs: Any) -> None:
        self.most, self.what = most, what
        inner = {"type": "array", "items": {"type": "integer", **json}, "minItems": 1, "maxItems": most}
        super().__init__(about, json={"type": "array", "items": inner, "maxItems": most}, **kwargs)

    def _deserialize(self, value: Any, attr: Any, data: Any, **_: Any) -> tuple[tuple[int, ...], ...]:
        if type(value) is not list:
            raise ValidationError(f"Give a list of lists of {self.what}, such as [[15, 16], [21, 23]].")
        if len(value) > self.most:
            raise ValidationError(f"Give at most {self.most} lists of {self.what}; these are {len(value):,}.")
        found: list[tuple[int, ...]] = []
        wrong: dict[int, Any] = {}
        for place, each in enumerate(value):
            try:
                found.append(wholes(each, most=self.most, what=self.what))
            except ValidationError as error:
                wrong[place] = error.messages
        if wrong:
            raise ValidationError(wrong)
        return tuple(found)
