"""Bytes in: what is read, what is refused, and that neither takes long."""

from __future__ import annotations

import json
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dividing.web.json_in import OUT_OF_RANGE, NotJson, read

READ: list[tuple[bytes, Any]] = [
    (b'{"divisions": 73}', {"divisions": 73}),
    (b"\xef\xbb\xbf[1]", [1]),
    (b" \t\r\n 5 \n", 5),
    (b"0.1", Decimal("0.1")),
    (b"73.0", Decimal("73.0")),
    (b"1e3", Decimal("1E+3")),
    (b"-0", 0),
    ('"22°30\'"'.encode(), "22°30'"),
    (rb'"\ud83d\ude00"', "\U0001f600"),
    (b"[" * 32 + b"]" * 32, eval("[" * 32 + "]" * 32)),  # noqa: S307
    (b'["' + b"[{" * 100 + b'"]', ["[{" * 100]),
    (rb'["\"[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[["]', ['"' + "[" * 40]),
    (b"9" * 400, 10**400 - 1),
    (b"9" * 401, OUT_OF_RANGE),
    (b"1e99999999999999999999999", OUT_OF_RANGE),
    (b"0." + b"1" * 400, OUT_OF_RANGE),
]

EMPTY = 'The body is empty. Send a JSON object such as {"work": {"divisions": 28}}.'
DEEP = "The body is nested more than 32 deep. Nothing asked here needs that."
HALF = r"The body holds half a character (a lone \ud800 to \udfff). Leave it out."
REFUSED: list[tuple[bytes, str]] = [
    (b"", EMPTY),
    (b" \n", EMPTY),
    (b"\xef\xbb\xbf", EMPTY),
    (b"{", "The body is not JSON: Expecting property name enclosed in double quotes at line 1, character 2."),
    (b"[1,\n 2,, 3]", "The body is not JSON: Expecting value at line 2, character 4."),
    (b'{"a": 1} x', "The body is not JSON: Extra data at line 1, character 10."),
    (b"{'a': 1}", "The body is not JSON: Expecting property name enclosed in double quotes at line 1, character 2."),
    (b"divisions=28", "The body is not JSON: Expecting value at line 1, character 1."),
    (b"NaN", "NaN is not a number in JSON. Give a figure, or leave the field out."),
    (b'{"a": Infinity}', "Infinity is not a number in JSON. Give a figure, or leave the field out."),
    (b"[-Infinity]", "-Infinity is not a number in JSON. Give a figure, or leave the field out."),
    (b'{"a": 1, "a": 1}', 'The key "a" stands twice in one object. Give it once.'),
    (b'{"x": {"a": 1, "b": 2, "a": 3}}', 'The key "a" stands twice in one object. Give it once.'),
    (b'{"\\u0007": 1, "\\u0007": 1}', 'The key "…" stands twice in one object. Give it once.'),
    (b"[" * 33 + b"]" * 33, DEEP),
    (b'{"a":' * 33 + b"1" + b"}" * 33, DEEP),
    (b"[" * 30000, DEEP),
    ('"22°"'.encode("latin-1"), "The body is not UTF-8 (byte 4). Save or send it as UTF-8."),
    (json.dumps({"a": 1}).encode("utf-16"), "The body is not UTF-8 (byte 1). Save or send it as UTF-8."),
    (b"\xed\xa0\x80", "The body is not UTF-8 (byte 1). Save or send it as UTF-8."),
    (rb'{"a": "\ud800"}', HALF),
    (rb'{"\uDFFF": 1}', HALF),
]


@pytest.mark.parametrize(("data", "value"), READ)
def test_json_is_read_exactly(data: bytes, value: Any) -> None:
    assert read(data) == value
    assert type(read(data)) is type(value)


@pytest.mark.parametrize(("data", "sentence"), REFUSED)
def test_what_is_no_json_is_refused_with_what_to_change(data: bytes, sentence: str) -> None:
    with pytest.raises(NotJson) as refusal:
        read(data)
    assert str(refusal.value) == sentence


_VALUES = st.recursive(
    st.none() | st.booleans() | st.integers(-(10**30), 10**30) | st.text(st.characters(exclude_categories=["Cs"])),
    lambda inner: (
        st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=5).filter(str.isprintable), inner, max_size=4)
    ),
    max_leaves=20,
)


@given(_VALUES)
def test_every_value_of_json_comes_back_as_it_was(value: Any) -> None:
    assert read(json.dumps(value).encode()) == value


@given(st.decimals(allow_nan=False, allow_infinity=False, places=12))
def test_every_decimal_is_its_text(number: Decimal) -> None:
    assert read(f"{number:f}".encode()) == number


@given(st.binary(max_size=60))
def test_any_bytes_are_read_or_refused_and_nothing_else(data: bytes) -> None:
    refused = ""
    try:
        read(data)
    except NotJson as refusal:
        refused = str(refusal)
    assert not refused or refused.endswith(".")
