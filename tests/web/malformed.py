"""Ten bodies of each kind that no service should fall over, with what is to be said of them."""

from __future__ import annotations

import json
from typing import Any

from dividing.web.limits import BODY_MOST

JSON = {"Content-Type": "application/json"}
WORK = {"work": {"divisions": 28}}

NOT_JSON: list[bytes] = [
    b"",
    b"{",
    b"divisions=28",
    b"{'work': 1}",
    b'{"work": {"divisions": 28}',
    b'{"work": {"divisions": 28}} trailing',
    b'{"work": {"divisions": 28},}',
    b"<work/>",
    b"\x00",
    b'{"work": {"divisions": 0x1c}}',
]
NOT_A_NUMBER: list[bytes] = [
    b"NaN",
    b"Infinity",
    b"-Infinity",
    b'{"work": {"divisions": NaN}}',
    b'{"work": {"divisions": Infinity}}',
    b'{"work": {"angle": NaN}}',
    b'{"work": {"angles": [1, -Infinity]}}',
    b'{"limit": NaN}',
    b'{"head": {"ratio": Infinity}}',
    b'{"tolerance": {"at_rim": NaN, "diameter": 1}}',
]
KEY_TWICE: list[bytes] = [
    b'{"work": 1, "work": 1}',
    b'{"work": {"divisions": 1, "divisions": 2}}',
    b'{"head": {"ratio": 40, "ratio": 40}}',
    b'{"a": {}, "a": {}}',
    b'[{"a": 1, "a": 2}]',
    b'{"work": {"divisions": 28}, "limit": 1, "limit": 1}',
    b'{"head": {"dial": {"divisions": 1, "divisions": 1}}}',
    b'{"": 1, "": 2}',
    b'{"a": [[{"b": 1, "b": 1}]]}',
    b'{"work": {"divisions": 28}, "wo\\u0072k": {}}',
]
TOO_DEEP: list[bytes] = [
    b"[" * 33 + b"]" * 33,
    b"[" * 65000,
    b'{"a":' * 40 + b"1" + b"}" * 40,
    b"[{" * 20000,
    b'[{"a":' * 9000,
    b'{"work": ' + b"[" * 40 + b"]" * 40 + b"}",
    b'{"head": {"plates": ' + b"[" * 31 + b"]" * 31 + b"}}",
    b"[]," * 10 + b"[" * 34,
    b'["\\"",' + b"[" * 33 + b"]" * 33 + b"]",
    b'{"\\\\": ' + b"[" * 33 + b"]" * 33 + b"}",
]
NOT_UTF_8: list[bytes] = [
    json.dumps(WORK).encode("utf-16"),
    json.dumps(WORK).encode("utf-32"),
    json.dumps(WORK).encode("utf-16-le") + b"\xff",
    '{"work": {"angle": "22°"}}'.encode("latin-1"),
    '{"work": {"angle": "22°30′"}}'.encode("cp1252", "replace"),
    b"\xff",
    b"\xfe\xff",
    b"\xc3\x28",
    b'{"work": "\xed\xa0\x80"}',
    b"\x80" * 1000,
]
WRONG_CONTENT: list[dict[str, str]] = [
    {},
    {"Content-Type": ""},
    {"Content-Type": "text/plain"},
    {"Content-Type": "application/x-www-form-urlencoded"},
    {"Content-Type": "multipart/form-data"},
    {"Content-Type": "application/xml"},
    {"Content-Type": "json"},
    {"Content-Type": "application/json; charset=latin-1"},
    {"Content-Type": "text/json"},
    {"Content-Type": "application/jsonp"},
]
TOO_LARGE: list[bytes] = [
    b" " * (BODY_MOST + 1),
    b"[" * (BODY_MOST + 1),
    b"0" * (BODY_MOST + 1),
    b'"' + b"x" * BODY_MOST,
    b"\x00" * (BODY_MOST + 1),
    json.dumps(WORK).encode() + b" " * BODY_MOST,
    b"[1," * BODY_MOST,
    b"\xff" * (BODY_MOST * 2),
    b'{"work":{"angles":[' + b'"1",' * 20000 + b'"1"]}}',
    b'{"a":"' + b"\\u0041" * 20000 + b'"}',
]

NUMBER = "Give a whole number, such as 40."
QUOTED = "Give a whole number without quotes: 73."
DECIMALS = "Give a whole number without decimals, and no longer than 24 digits."
OBJECT = 'Give an object here: fields between "{" and "}".'
NULL = "Give a value here, or leave the field out."
TRUE = "Give true or false."
METHODS = "direct, plain, differential, compound, dial, nearest"

# (field, value, pointer, sentence): each is put into an otherwise right question.
WRONG_TYPES: list[tuple[tuple[str, ...], Any, str, str]] = [
    (("work",), 28, "#/work", OBJECT),
    (("work",), None, "#/work", NULL),
    (("work",), [], "#/work", OBJECT),
    (("work", "divisions"), "73", "#/work/divisions", QUOTED),
    (("work", "divisions"), 73.5, "#/work/divisions", DECIMALS),
    (("work", "divisions"), True, "#/work/divisions", NUMBER),
    (("work", "divisions"), None, "#/work/divisions", NULL),
    (("work", "divisions"), [73], "#/work/divisions", NUMBER),
    (("head",), 40, "#/head", OBJECT),
    (("head",), None, "#/head", NULL),
    (("head", "ratio"), "73", "#/head/ratio", QUOTED),
    (("head", "ratio"), 40.5, "#/head/ratio", DECIMALS),
    (("head", "ratio"), False, "#/head/ratio", NUMBER),
    (("head", "plates"), 15, "#/head/plates", "Give a list of lists of circles, such as [[15, 16], [21, 23]]."),
    (("head", "plates"), [15], "#/head/plates/0", "Give a list of circles, such as [24, 30]."),
    (("head", "plates"), [[15, "16"]], "#/head/plates/0/1", "Give a whole number without quotes: 16."),
    (("head", "plates"), [[15, True]], "#/head/plates/0/1", NUMBER),
    (("head", "plates"), [[15], [21, 23.5]], "#/head/plates/1/1", DECIMALS),
    (("head", "mounted_plate"), "1", "#/head/mounted_plate", "Give a whole number without quotes: 1."),
    (("head", "direct_circles"), 24, "#/head/direct_circles", "Give a list of circles, such as [24, 30]."),
    (("head", "worm_disengages"), "yes", "#/head/worm_disengages", TRUE),
    (("head", "worm_disengages"), 1, "#/head/worm_disengages", TRUE),
    (("head", "change_gears"), [24, None], "#/head/change_gears/1", NUMBER),
    (("head", "idlers"), [1], "#/head/idlers", OBJECT),
    (("head", "idlers"), {"simple": {"with": 1}}, "#/head/idlers/simple/against", "This field is needed."),
    (("head", "stop_circles"), "all", "#/head/stop_circles", "Give a list of circles, such as [24, 30]."),
    (("head", "screw"), {"lead": "5", "unit": "mm"}, "#/head/screw/lead", "Give a number without quotes: 5."),
    (("head", "screw"), {"lead": 5, "unit": "cm"}, "#/head/screw/unit", "Give one of: mm, in."),
    (("head", "dial"), 100, "#/head/dial", OBJECT),
    (("head", "dial"), {"divisions": "73"}, "#/head/dial/divisions", QUOTED),
    (("tolerance",), "1'", "#/tolerance", OBJECT),
    (
        ("tolerance",),
        {"angle": []},
        "#/tolerance/angle",
        'Stopped at character 1 of "[…]": expected an angle such as 22.5, 22°30\' or 1/7 turn.',
    ),
    (("tolerance",), {"at_rim": "0.02", "diameter": 1}, "#/tolerance/at_rim", "Give a number without quotes: 0.02."),
    (("methods",), "plain", "#/methods", f"Give a list of one to 6 of: {METHODS}."),
    (("methods",), [], "#/methods", f"Give a list of one to 6 of: {METHODS}."),
    (("methods",), ["plain", "plane"], "#/methods/1", f"Give one of: {METHODS}."),
    (("methods",), ["plain", 5], "#/methods/1", f"Give one of: {METHODS}."),
    (("methods",), ["plain", "plain"], "#/methods/1", '"plain" stands twice; give it once.'),
    (("limit",), "5", "#/limit", "Give a whole number without quotes: 5."),
    (("limit",), 1e30, "#/limit", DECIMALS),
    (("positions",), "true", "#/positions", "Give true or false, without quotes."),
    (("positions",), None, "#/positions", NULL),
    (("every",), 1.5, "#/every", DECIMALS),
    (("every",), {}, "#/every", NUMBER),
]

HOLES = "A circle has 2 to 400 holes, not {}."
PAST_LIMITS: list[tuple[tuple[str, ...], Any, str, str]] = [
    (("work", "divisions"), 0, "#/work/divisions", "Divisions are a whole number from 1 to 1,000,000."),
    (("work", "divisions"), 1_000_001, "#/work/divisions", "Divisions are a whole number from 1 to 1,000,000."),
    (("work", "divisions"), -5, "#/work/divisions", "Divisions are a whole number from 1 to 1,000,000."),
    (("work", "divisions"), 10**399, "#/work/divisions", "Divisions are a whole number from 1 to 1,000,000."),
    (("work",), {"angles": ["1"] * 2001}, "#/work/angles", "Give at most 2,000 angles; these are 2,001."),
    (
        ("work",),
        {"angle": "1" * 65},
        "#/work/angle",
        'Stopped at character 65 of "' + "1" * 64 + '…": expected no more than 64 characters.',
    ),
    (
        ("work",),
        {"angle": "1e10"},
        "#/work/angle",
        'Stopped at character 3 of "1e10": expected an exponent from -9 to 9.',
    ),
    (("work",), {"angle": "0°"}, "#/work/angle", "An angle to index is more than 0° and at most 360°."),
    (("work",), {"angle": 1, "count": 20001}, "#/work/count", "Features are counted from 2 to 20,000."),
    (("head", "ratio"), 10_001, "#/head/ratio", "The ratio is a whole number of crank turns, 1 to 10,000."),
    (("head", "ratio"), 0, "#/head/ratio", "The ratio is a whole number of crank turns, 1 to 10,000."),
    (("head", "plates"), [[1]], "#/head/plates/0/0", HOLES.format(1)),
    (("head", "plates"), [[15], [401]], "#/head/plates/1/0", HOLES.format(401)),
    (("head", "plates"), [[15, 15]], "#/head/plates/0/1", "The circle of 15 holes stands twice on this plate."),
    (
        ("head", "plates"),
        [[n] for n in range(2, 103)],
        "#/head/plates",
        "Give at most 100 lists of circles; these are 101.",
    ),
    (("head", "plates"), [list(range(2, 103))], "#/head/plates/0", "Give at most 100 circles; these are 101."),
    (
        ("head", "plates"),
        [list(range(110, 200))],
        "#/head/plates",
        "All circles together may have 12,000 holes; give fewer circles.",
    ),
    (
        ("head", "mounted_plate"),
        4,
        "#/head/mounted_plate",
        "The mounted plate is one of plates 1 to 3, counted from 1.",
    ),
    (("head", "change_gears"), [24] * 25, "#/head/change_gears", "Give at most 24 gears; these are 25."),
    (("head", "change_gears"), [24, 9], "#/head/change_gears/1", "A change gear has 10 to 200 teeth."),
    (("head", "change_gears"), [201], "#/head/change_gears/0", "A change gear has 10 to 200 teeth."),
    (("limit",), 0, "#/limit", "The limit is a number of setups from 1 to 100."),
    (("limit",), 101, "#/limit", "The limit is a number of setups from 1 to 100."),
    (("every",), 7, "#/every", "7 spaces a move would miss divisions: 7 and 28 share the factor 7."),
    (("every",), 28, "#/every", "Spaces per move lie between 1 and 27 for 28 divisions."),
    (("tolerance",), {"angle": 0}, "#/tolerance/angle", "A tolerance is an angle above 0."),
    (
        ("tolerance",),
        {"at_rim": 0, "diameter": 1},
        "#/tolerance/at_rim",
        "Give a length above 0 and at most 1,000,000.",
    ),
    (("tolerance",), {"at_rim": 1}, "#/tolerance/diameter", "A length at the rim needs the diameter of that rim."),
    (("tolerance",), {}, "#/tolerance", "Give the tolerance as an angle, or as at_rim with a diameter."),
]

UNKNOWN: list[tuple[Any, str, str]] = [
    ({**WORK, "colour": 1}, "#/colour", "colour"),
    ({**WORK, "": 1}, "#/", ""),
    ({**WORK, "a/b": 1}, "#/a~1b", "a/b"),
    ({**WORK, "a~b": 1}, "#/a~0b", "a~b"),
    ({**WORK, "Wörk": 1}, "#/W%C3%B6rk", "Wörk"),
    ({**WORK, "_schema": 1}, "#", "_schema"),
    ({"work": {"divisions": 28, "division": 1}}, "#/work/division", "division"),
    ({**WORK, "head": {"Ratio": 40}}, "#/head/Ratio", "Ratio"),
    ({**WORK, "head": {"dial": {"divisions": 100, "marks": 1}}}, "#/head/dial/marks", "marks"),
    ({**WORK, "tolerance": {"angle": 1, "unit": "mm"}}, "#/tolerance/unit", "unit"),
]


def put(path: tuple[str, ...], value: Any) -> dict[str, Any]:
    """A right question with one value put in its place."""
    question: dict[str, Any] = json.loads(json.dumps(WORK))
    place = question
    for key in path[:-1]:
        place = place.setdefault(key, {})
    place[path[-1]] = value
    return question
