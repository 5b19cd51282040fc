"""Bytes in, plain values out: a strict reader of JSON that makes every number exact.

Stricter than the standard library: UTF-8 only (a byte-order mark is passed over, as RFC 8259 lets a reader do), no NaN
or Infinity, no key twice in an object, no nesting past a limit, nothing after the value. Numbers with a point or an
exponent become `Decimal`, whole ones `int`; a number too long to be meant becomes `OUT_OF_RANGE`, which every field
refuses, so that its refusal names its place and no exponent is ever expanded.
"""

from __future__ import annotations

import json
import re
from decimal import Decimal, InvalidOperation
from typing import Any, NoReturn

from .limits import NESTING_MOST, NUMBER_LONGEST

OUT_OF_RANGE = Decimal("1E+999999")
_MARK = b"\xef\xbb\xbf"
# Possessive, and matching an unended string too, so that every quote is passed over once whatever follows it.
_STRING = re.compile(rb'"[^"\\]*+(?:\\.?[^"\\]*+)*+(?:"|\Z)', re.DOTALL)
_NOT_BRACKETS = bytes(sorted(set(range(256)) - set(b"[]{}")))
_HALF_PAIR = re.compile(r"\\u[dD][89a-fA-F]")


class NotJson(Exception):
    """Bytes that are no JSON as this service reads it; its text says what to change."""


def read(data: bytes) -> Any:
    """The value that the bytes spell.

    >>> read(b'{"divisions": 73.0}')
    {'divisions': Decimal('73.0')}
    """
    data = data.removeprefix(_MARK)
    if not data.strip():
        raise NotJson('The body is empty. Send a JSON object such as {"work": {"divisions": 28}}.')
    text = _text(data)
    _check_nesting(data)
    try:
        value = (_SHORT_DECODER if len(data) <= NUMBER_LONGEST else _DECODER).decode(text)
    except json.JSONDecodeError as error:
        sentence = f"The body is not JSON: {error.msg} at line {error.lineno}, character {error.colno}."
        raise NotJson(sentence) from None
    _check_pairs(text, value)
    return value


def _text(data: bytes) -> str:
    try:
        return data.decode()
    except UnicodeDecodeError as error:
        raise NotJson(f"The body is not UTF-8 (byte {error.start + 1}). Save or send it as UTF-8.") from None


def _check_nesting(data: bytes) -> None:
    if data.count(b"[") + data.count(b"{") <= NESTING_MOST:
        return
    depth = 0
    for bracket in _STRING.sub(b"", data).translate(None, _NOT_BRACKETS):
        depth += 1 if bracket in b"[{" else -1
        if depth > NESTING_MOST:
            raise NotJson(f"The body is nested more than {NESTING_MOST} deep. Nothing asked here needs that.")


def _check_pairs(text: str, value: object) -> None:
    """Half a surrogate pair is written in ASCII and so gets past UTF-8, but no answer could repeat it."""
    if _HALF_PAIR.search(text) is None:
        return
    try:
        json.dumps(value, ensure_ascii=False, default=str).encode()
    except UnicodeEncodeError:
        raise NotJson(r"The body holds half a character (a lone \ud800 to \udfff). Leave it out.") from None


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) == len(pairs):
        return found
    seen: set[str] = set()
    twice = next(key for key, _ in pairs if key in seen or seen.add(key))  # type: ignore[func-returns-value]
    shown = twice if len(twice) <= NUMBER_LONGEST and twice.isprintable() else "…"
    raise NotJson(f'The key "{shown}" stands twice in one object. Give it once.')


def _decimal(text: str) -> Decimal:
    if len(text) > NUMBER_LONGEST:
        return OUT_OF_RANGE
    try:
        return Decimal(text)
    except InvalidOperation:
        return OUT_OF_RANGE


def _whole(text: str) -> int | Decimal:
    return int(text) if len(text) <= NUMBER_LONGEST else OUT_OF_RANGE


def _constant(name: str) -> NoReturn:
    raise NotJson(f"{name} is not a number in JSON. Give a figure, or leave the field out.")


_DECODER = json.JSONDecoder(object_pairs_hook=_object, parse_float=_decimal, parse_int=_whole, parse_constant=_constant)
_SHORT_DECODER = json.JSONDecoder(object_pairs_hook=_object, parse_float=_decimal, parse_constant=_constant)
"""For a body that is too short to hold a number too long."""
