"""What every form of a request shares: all that is wrong is told at once, and unknown fields by name."""

from __future__ import annotations

from typing import Any, ClassVar

import pytest
from marshmallow import ValidationError

from dividing.indexing.faults import Fault, Refused
from dividing.web.schemas.base import Request
from dividing.web.schemas.fields import Whole, Word


class CutIn(Request):
    """A cut: so many spaces on a circle, the spaces fewer than the circle has."""

    circle = Whole("Holes.", required=True)
    spaces = Whole("Spaces.", load_default=1)
    way = Word("Which way.", ("with", "against"), load_default="with")

    leans_on: ClassVar[dict[str, str]] = {"spaces": "circle"}

    def make(self, given: dict[str, Any]) -> tuple[int, int, str]:
        """The cut."""
        faults = []
        if given["circle"] < 2:
            faults.append(Fault(("circle",), "A circle has 2 holes at least."))
        if given["spaces"] >= given["circle"]:
            faults.append(Fault(("spaces",), "Fewer spaces than holes."))
        if given["way"] == "against":
            faults.append(Fault(("way",), "Not against."))
        if faults:
            raise Refused(faults)
        return given["circle"], given["spaces"], given["way"]

    def _unasked(self) -> dict[str, Any]:
        return {"spaces": 1, "way": "with"}


CUT_IN = CutIn()
NOT_WHOLE = ["Give a whole number, such as 40."]
UNKNOWN = ['There is no field "colour" here; the fields are circle, spaces, way.']


@pytest.mark.parametrize(
    ("given", "cut"),
    [
        ({"circle": 20}, (20, 1, "with")),
        ({"circle": 20, "spaces": 7}, (20, 7, "with")),
        ({"way": "with", "spaces": 7, "circle": 20}, (20, 7, "with")),
    ],
)
def test_what_is_right_is_loaded_with_what_was_left_out(given: dict[str, Any], cut: object) -> None:
    assert CUT_IN.load(given) == cut


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({}, {"circle": ["This field is needed."]}),
        ({"circle": None}, {"circle": ["Give a value here, or leave the field out."]}),
        ({"circle": "x"}, {"circle": NOT_WHOLE}),
        ({"circle": 20, "colour": 1}, {"colour": UNKNOWN}),
        # Of a value out of bounds the domain tells.
        ({"circle": 1, "spaces": 0}, {"circle": ["A circle has 2 holes at least."]}),
        ({"circle": 20, "spaces": 20}, {"spaces": ["Fewer spaces than holes."]}),
        # Both kinds are told at once, and the unknown beside them.
        (
            {"circle": 1, "spaces": 0, "way": "sideways", "colour": 1},
            {
                "circle": ["A circle has 2 holes at least."],
                "way": ["Give one of: with, against."],
                "colour": UNKNOWN,
            },
        ),
        # Spaces cannot be judged while their circle is wrong; the way can.
        ({"circle": "x", "spaces": 99, "way": "against"}, {"circle": NOT_WHOLE}),
        ({"circle": 20, "spaces": "x", "way": "against"}, {"spaces": NOT_WHOLE, "way": ["Not against."]}),
        ([], {"_schema": ['Give an object here: fields between "{" and "}".']}),
        ("circle", {"_schema": ['Give an object here: fields between "{" and "}".']}),
        (None, {"_schema": ['Give an object here: fields between "{" and "}".']}),
    ],
)
def test_what_is_wrong_is_told_all_at_once(given: Any, told: dict[str, Any]) -> None:
    with pytest.raises(ValidationError) as refusal:
        CUT_IN.load(given)
    assert refusal.value.messages == told


@pytest.mark.parametrize(("name", "shown"), [("x" * 64, "x" * 64), ("x" * 65, "…"), ("a\nb", "…"), ("", "")])
def test_an_unknown_name_is_shown_only_where_it_can_be_read(name: str, shown: str) -> None:
    with pytest.raises(ValidationError) as refusal:
        CUT_IN.load({"circle": 20, name: 1})
    sentence = f'There is no field "{shown}" here; the fields are circle, spaces, way.'
    assert refusal.value.messages == {name: [sentence]}


class ListIn(Request):
    """A form that makes nothing of its own."""

    holes = Whole("Holes.")


def test_a_form_without_a_maker_gives_its_fields() -> None:
    assert ListIn().load({"holes": 7}) == {"holes": 7}
    assert ListIn().load({}) == {}
    assert ListIn().load([{"holes": 7}, {}], many=True) == [{"holes": 7}, {}]


def test_of_several_each_is_told_by_its_place() -> None:
    with pytest.raises(ValidationError) as refusal:
        ListIn().load([{"holes": 7}, {"holes": "x"}], many=True)
    assert refusal.value.messages == {1: {"holes": NOT_WHOLE}}
