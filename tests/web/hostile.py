"""What is sent to break a service, beside the slips of `malformed.py`: values for any field, and whole bodies."""

from __future__ import annotations

import gzip
import json

RIGHT = b'{"work": {"divisions": 28}}'
MARK = b"\xef\xbb\xbf"

VALUES: dict[str, bytes] = {
    "a number past every float": b"1e999",
    "one below zero": b"-1e999",
    "one too near zero": b"1e-999",
    "an exponent of 400 digits": b"1e" + b"9" * 400,
    "5,000 digits": b"7" * 5_000,
    "5,000 digits behind the point": b"0." + b"3" * 5_000,
    "digits of another script": '"٧٣"'.encode(),
    "fullwidth digits": '"７３"'.encode(),
    "a superscript digit": '"²"'.encode(),
    "a half as one character": '"½"'.encode(),
    "a number as Python writes it": b'"1_000"',
    "division by zero": b'"1/0"',
    "turns of nothing": b'"1/0 turn"',
    "text that is no number": b'"NaN"',
    "infinity in words": b'"Infinity"',
    "NUL": rb'"\u0000"',
    "NUL behind a number": rb'"28\u0000"',
    "text from right to left": rb'"\u202e28"',
    "a text of 5,000 characters": b'"' + b"7" * 5_000 + b'"',
    "a program": b"\"__import__('os').getpid()\"",
    "a formula": b'"=1+1"',
    "the name of another field": b'"__proto__"',
}
"""Values that are JSON and are refused wherever they stand."""

BODIES: dict[str, bytes] = {
    "990 lists, one in the other": b"[" * 990 + b"]" * 990,
    "990 objects, one in the other": b'{"work":' * 990 + b"1" + b"}" * 990,
    "990 lists that are never closed": b"[" * 990,
    "990 lists within a right question": b'{"work": ' + b"[" * 990 + b"]" * 990 + b"}",
    "NaN": b'{"work": {"divisions": NaN}}',
    "minus infinity": b'{"work": {"angle": -Infinity}}',
    "a key twice": b'{"work": {"divisions": 28}, "work": {"divisions": 29}}',
    "a key twice, once written otherwise": rb'{"work": {"divisions": 28}, "\u0077ork": {"divisions": 29}}',
    "bare digits of another script": '{"work": {"divisions": ٧٣}}'.encode(),
    "a bare number as Python writes it": b'{"work": {"divisions": 1_000}}',
    "a bare fraction": b'{"work": {"divisions": 1/0}}',
    "a number that begins with 0": b'{"work": {"divisions": 028}}',
    "a number that begins with +": b'{"work": {"divisions": +28}}',
    "a bare NUL in a text": b'{"work": {"angle": "2\x002"}}',
    "a NUL after the question": RIGHT + b"\x00",
    "half a pair of surrogates": rb'{"work": {"angle": "\ud800"}}',
    "the other half": rb'{"work": {"angle": "\udc00"}}',
    "half a pair in a key": rb'{"work": {"divisions": 28}, "\udbff": 1}',
    "surrogates in UTF-8": b'{"work": {"angle": "\xed\xa0\x80\xed\xb0\x80"}}',
    "UTF-16 with its mark": RIGHT.decode().encode("utf-16"),
    "UTF-16 without a mark": RIGHT.decode().encode("utf-16-be"),
    "UTF-32": RIGHT.decode().encode("utf-32"),
    "Latin-1": '{"work": {"angle": "22°"}}'.encode("latin-1"),
    "UTF-8 longer than it need be": b'{"work": {"angle": "\xc0\xb0"}}',
    "two marks": MARK + MARK + RIGHT,
    "a mark and nothing": MARK,
    "a mark after the question": RIGHT + MARK,
    "compressed, and not said so": gzip.compress(RIGHT),
    "nothing": b"",
    "a blank line": b"\r\n",
    "text after the question": RIGHT + b" and thank you",
    "two questions": RIGHT + RIGHT,
    "a question cut off": RIGHT[:-1],
    "a form": b"divisions=28",
    "XML": b'<?xml version="1.0"?><!DOCTYPE a [<!ENTITY b "b">]><a>&b;</a>',
    "YAML": b"work: {divisions: 28}",
    "comments": b'{"work": {"divisions": 28}} // please',
    "single quotes": b"{'work': {'divisions': 28}}",
    "60,000 opening quotes": b'"' * 60_001,
    "60,000 backslashes": b'"' + b"\\" * 60_001,
}
"""Bodies that are no JSON as this service reads it."""

SCALARS: list[bytes] = [b"null", b"true", b"0", b"-1.5e3", b'"work"', b"[]", b"[[]]", b"7" * 5_000, b"1e999"]
"""Bodies that are JSON and no object."""


def in_place_of(body: object, stand_in: str, value: bytes) -> bytes:
    """The body with the value, as it is written, where the stand-in stands."""
    return json.dumps(body).encode().replace(json.dumps(stand_in).encode(), value)
