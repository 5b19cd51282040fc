"""A head is loaded into a value that cannot be wrong, and remembered."""

from __future__ import annotations

import json
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from marshmallow import ValidationError

from dividing.indexing.head import Dial, Head, Idlers, Screw
from dividing.indexing.heads import READY_MADE
from dividing.web import json_in
from dividing.web.answers.heads import head_out
from dividing.web.schemas import head as schema
from dividing.web.schemas.head import DEFAULT_HEAD, load_head

LOADED: list[tuple[str, Head]] = [
    ("{}", Head()),
    ('{"ratio": 60.0, "mounted_plate": 2}', Head(ratio=60, mounted_plate=2)),
    ('{"plates": [[15, 16], [21]], "direct_circles": []}', Head(plates=((15, 16), (21,)), direct_circles=())),
    ('{"plates": [], "dial": {"divisions": 100}}', Head(plates=(), dial=Dial(divisions=100))),
    (
        '{"ratio": 90, "plates": [], "dial": {"graduation": "1\'", "vernier": "10\\""}}',
        Head(ratio=90, plates=(), dial=Dial(Fraction(1, 21600), Fraction(1, 129600))),
    ),
    ('{"screw": {"lead": 0.25, "unit": "in"}}', Head(screw=Screw(Fraction(1, 4), "in"))),
    ('{"idlers": {"simple": {"with": 0, "against": 1}}}', Head(idlers=Idlers(simple_with=0, simple_against=1))),
    ('{"stop_circles": [20], "worm_disengages": false}', Head(stop_circles=(20,), worm_disengages=False)),
    ('{"stop_circles": null, "screw": null, "dial": null}', Head()),
]


@pytest.mark.parametrize(("text", "head"), LOADED)
def test_a_head_is_loaded_with_the_usual_for_what_is_left_out(text: str, head: Head) -> None:
    assert load_head(json_in.read(text.encode())) == head


@pytest.mark.parametrize("ready", READY_MADE)
def test_a_head_given_out_is_taken_back_as_it_was(ready: Any) -> None:
    assert load_head(head_out(ready.head)) == ready.head


@pytest.mark.parametrize(
    "head",
    [
        Head(ratio=72, plates=((24,),), stop_circles=(24,), screw=Screw(Fraction(5), "mm")),
        Head(ratio=7, plates=(), dial=Dial(graduation=Fraction(1, 7 * 100))),
        Head(ratio=90, plates=(), dial=Dial(graduation=Fraction(1, 90 * 4), vernier=Fraction(1, 90 * 40))),
    ],
)
def test_a_head_of_odd_figures_is_taken_back_too(head: Head) -> None:
    wire = head_out(head)
    assert load_head(json_in.read(json.dumps(wire).encode())) == head


def test_the_same_head_is_the_same_value_with_its_tables_made() -> None:
    asked = {"ratio": 63, "plates": [[15, 16]]}
    assert load_head(asked) is load_head(dict(asked))
    assert load_head({"ratio": 64, "plates": [[15, 16]]}) is not load_head(asked)


def test_what_is_alike_only_to_python_is_not_the_same_head() -> None:
    assert load_head({"ratio": 1}).ratio == 1
    with pytest.raises(ValidationError):
        load_head({"ratio": True})


def test_heads_remembered_are_few_and_short() -> None:
    for ratio in range(1, 200):
        load_head({"ratio": ratio})
    assert len(schema._remembered) <= 32
    long = {"plates": [list(range(2, 60))] * 1, "change_gears": [24] * 24}
    assert load_head(long).ratio == DEFAULT_HEAD.ratio


@pytest.mark.parametrize(
    ("asked", "messages"),
    [
        ({"idlers": {"simple": {"with": 1, "against": 3}}},
         {"idlers": {"simple": ["With the same number of idlers a simple train turns the plate one way only."]}}),
        ({"idlers": {"compound": {"with": 9, "against": 0}}},
         {"idlers": {"compound": {"with": ["Idlers are counted in whole gears, 0 to 4."]}}}),
        ({"plates": [], "direct_circles": []},
         {"_schema": ["Give the head a plate, a direct circle or a dial: without one nothing can be set."]}),
        ({"plates": [[]]}, {"plates": {0: ["A plate has at least one circle; leave an empty plate out."]}}),
        ({"dial": {}}, {"dial": ["A dial has either a graduation in degrees or a number of plain divisions."]}),
        ({"dial": {"graduation": "1'", "divisions": 5}},
         {"dial": ["A dial has either a graduation in degrees or a number of plain divisions."]}),
        # A dial of which only half can be read keeps nothing else from being told.
        ({"plates": [[1]], "dial": {"graduation": "1'", "divisions": "7"}},
         {"plates": {0: {0: ["A circle has 2 to 400 holes, not 1."]}},
          "dial": {"divisions": ["Give a whole number without quotes: 7."]}}),
        ({"screw": {"lead": 2000, "unit": "mm"}},
         {"screw": {"lead": ["The table screw's lead is more than 0 and at most 1000."]}}),
    ],
)  # fmt: skip
def test_a_head_that_cannot_be_is_refused_where_it_is_wrong(asked: Any, messages: Any) -> None:
    with pytest.raises(ValidationError) as refusal:
        load_head(asked)
    told = refusal.value.messages
    assert flat(told) == flat(messages)


def flat(messages: Any, path: tuple[Any, ...] = ()) -> set[tuple[Any, ...]]:
    """Every sentence with the way to it; a value as a whole is its own way."""
    if isinstance(messages, dict):
        found: set[tuple[Any, ...]] = set()
        for key, below in messages.items():
            found |= flat(below, path if key == "_schema" else (*path, key))
        return found
    return {(*path, sentence) for sentence in messages}


def test_a_head_too_long_to_remember_is_loaded_anew() -> None:
    # A circle's holes may be spelt with many decimals; 100 of them are past what is kept.
    long = {"plates": [[Decimal(f"{holes}.{'0' * 30}") for holes in range(70, 170)]], "direct_circles": []}
    assert len(repr(long)) > 4096
    first, second = load_head(long), load_head(long)
    assert first == second
    assert first is not second
