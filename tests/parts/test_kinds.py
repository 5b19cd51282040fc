"""Every kind of part: its fields match its maker, and whatever sizes come in, it answers or refuses in a sentence."""

from __future__ import annotations

import inspect
import json
from fractions import Fraction
from math import isfinite
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dividing.indexing.faults import Refused
from dividing.indexing.head import TWELVE_GEARS, Head, Screw
from dividing.parts import KINDS, Part

HEAD = Head(change_gears=TWELVE_GEARS, screw=Screw(Fraction(5), "mm"))
WORDS = {
    "sense": ["anticlockwise", "clockwise"],
    "zero": ["3 o'clock", "12 o'clock"],
    "hand": ["right", "left"],
    "plane": ["normal", "transverse"],
    "whole_depth": ["2.25", "2.157", "2.166"],
    "unit": ["mm", "in"],
}
COUNTS = st.one_of(st.integers(1, 60), st.sampled_from([1, 2, 3, 4, 1000, 1_000_000]))
FIGURES = st.one_of(
    st.fractions(Fraction(1, 10), 200, max_denominator=1000),
    st.sampled_from([Fraction(1, 1_000_000), Fraction(1_000_000), Fraction(20), Fraction(90), Fraction(180)]),
)


def maker_argument(field: str) -> str:
    return "stock" if field == "round" else field


def values(kind: str, field: str) -> st.SearchStrategy[Any]:
    """Anything that the wire could let through for a field."""
    if field == "form":
        return st.sampled_from(KINDS[kind].choices["form"])
    if field in WORDS:
        return st.sampled_from(WORDS[field])
    parameter = inspect.signature(KINDS[kind].make).parameters[maker_argument(field)]
    if str(parameter.annotation).startswith("int"):
        return COUNTS
    return (
        st.one_of(FIGURES, FIGURES.map(lambda figure: -figure)) if field in ("start", "profile_shift", "x") else FIGURES
    )


def requests(kind: str) -> st.SearchStrategy[dict[str, Any]]:
    """All needed fields and some of the others."""
    parameters = inspect.signature(KINDS[kind].make).parameters
    needed: dict[str, Any] = {}
    free: dict[str, Any] = {}
    for field in KINDS[kind].fields:
        name = maker_argument(field)
        needs = parameters[name].default is inspect.Parameter.empty
        (needed if needs else free)[name] = values(kind, field)
    return st.fixed_dictionaries(needed, optional=free)


@pytest.mark.parametrize("kind", KINDS)
def test_every_field_is_an_argument_of_the_maker_and_described(kind: str) -> None:
    arguments = set(inspect.signature(KINDS[kind].make).parameters) - {"head"}
    assert {maker_argument(field) for field in KINDS[kind].fields} == arguments
    assert all(about.endswith((".", ")")) for about in KINDS[kind].fields.values())
    assert KINDS[kind].takes_head == ("head" in inspect.signature(KINDS[kind].make).parameters)


@pytest.mark.parametrize("kind", KINDS)
def test_a_field_of_words_names_them(kind: str) -> None:
    parameters = inspect.signature(KINDS[kind].make).parameters
    wordy = {name for name, parameter in parameters.items() if str(parameter.annotation) == "str"} - {"unit"}
    assert set(KINDS[kind].choices) == wordy


@pytest.mark.parametrize("kind", KINDS)
@settings(max_examples=150, deadline=None)
@given(data=st.data())
def test_any_request_is_answered_or_refused(kind: str, data: st.DataObject) -> None:
    given = data.draw(requests(kind))
    more = {"head": HEAD} if KINDS[kind].takes_head else {}
    try:
        part = KINDS[kind].make(**given, **more)
    except Refused as refused:
        fields = {maker_argument(field) for field in KINDS[kind].fields} | {"round"}
        for fault in refused.faults:
            assert not fault.path or fault.path[0] in fields
            assert fault.sentence[0].isupper() or fault.sentence[0].isdigit()
            assert fault.sentence.endswith(".")
        return
    it_is_whole(part, kind)


def it_is_whole(part: Part, kind: str) -> None:
    """One thing to divide by, finite sizes that each have a source, and nothing that JSON cannot carry."""
    assert part.kind == kind
    assert [part.divisions, part.angles, part.step].count(None) == 2
    for size in part.sizes:
        assert isfinite(size.value)
        assert size.source
        assert size.unit in ("mm", "in", "degrees", "")
    json.dumps([part.lead, list(part.schedule), dict(part.drawing)], allow_nan=False)


@pytest.mark.parametrize(
    ("kind", "field", "sentence"),
    [
        ("dial", "form", 'Give one of "round", "linear".'),
        ("spline", "form", 'Give one of "straight", "involute".'),
        ("end_teeth", "form", 'Give one of "end_mill", "side_mill", "saw_tooth", "v_clutch", "straight".'),
        ("spur_gear", "whole_depth", 'Give one of "2.25", "2.157", "2.166".'),
        ("bevel_gear", "whole_depth", 'Give one of "2.25", "2.157", "2.166".'),
        ("helical_gear", "plane", 'Give one of "normal", "transverse".'),
        ("helical_gear", "hand", 'Give one of "right", "left".'),
        ("helix", "hand", 'Give one of "right", "left".'),
        ("bolt_circle", "sense", 'Give one of "anticlockwise", "clockwise".'),
        ("bolt_circle", "zero", 'Give one of "3 o\'clock", "12 o\'clock".'),
    ],
)
def test_an_unknown_word_is_refused_with_those_that_are_known(kind: str, field: str, sentence: str) -> None:
    enough: dict[str, Any] = {"unit": "mm", "teeth": 24, "module": 2, "helix_angle": 20, "hand": "right", "starts": 2}
    enough |= {"diameter": 30, "lead": 90, "holes": 6, "divisions": 100, "form": "straight", "mate": 48, field: "odd"}
    wanted = set(inspect.signature(KINDS[kind].make).parameters)
    with pytest.raises(Refused) as refusal:
        KINDS[kind].make(**{name: value for name, value in enough.items() if name in wanted})
    assert [(fault.path, fault.sentence) for fault in refusal.value.faults] == [((field,), sentence)]


LENGTHS_ONLY: dict[str, dict[str, Any]] = {
    "flats": {"sides": 6, "across_flats": 24, "stock": 26},
    "bolt_circle": {"holes": 7, "diameter": 80, "x": 5, "hole_diameter": 6},
    "spline": {"teeth": 8, "major": 40, "minor": 34, "width": 6, "cutter": 5},
    "end_teeth": {"teeth": 9, "form": "saw_tooth", "cutter_angle": 70, "outer": 50},
    "dial": {"divisions": 100, "diameter": 60},
    "helix": {"starts": 3, "diameter": 25, "lead": 90, "hand": "left", "head": HEAD},
}


@pytest.mark.parametrize("kind", LENGTHS_ONLY)
def test_inches_and_millimetres_make_the_same_part(kind: str) -> None:
    metric = KINDS[kind].make(**LENGTHS_ONLY[kind], unit="mm")
    lengths = set(LENGTHS_ONLY[kind]) - {"sides", "holes", "teeth", "divisions", "starts", "form", "hand", "head"}
    inches = {
        name: Fraction(value) / Fraction("25.4") if name in lengths - {"cutter_angle"} else value
        for name, value in LENGTHS_ONLY[kind].items()
    }
    the_same(metric, KINDS[kind].make(**inches, unit="in"))


@pytest.mark.parametrize(
    ("kind", "given"),
    [
        ("spur_gear", {"teeth": 25, "module": 2, "profile_shift": Fraction(1, 5)}),
        ("spur_gear", {"teeth": 24, "diametral_pitch": 8, "pressure_angle": 14.5}),
        ("helical_gear", {"teeth": 30, "module": 3, "helix_angle": 22, "hand": "left", "head": HEAD}),
        ("bevel_gear", {"teeth": 24, "mate": 36, "diametral_pitch": 6}),
        ("spline", {"form": "involute", "teeth": 18, "module": 2}),
    ],
)
def test_a_pitch_gives_the_same_gear_in_either_unit(kind: str, given: dict[str, Any]) -> None:
    the_same(KINDS[kind].make(**given, unit="mm"), KINDS[kind].make(**given, unit="in"))


def the_same(metric: Part, inches: Part) -> None:
    assert [size.name for size in metric.sizes] == [size.name for size in inches.sizes]
    for one, other in zip(metric.sizes, inches.sizes, strict=True):
        factor = 25.4 if (one.unit, other.unit) == ("mm", "in") else 1
        assert one.value == pytest.approx(other.value * factor), one.name
    if metric.lead and inches.lead:
        assert metric.lead["gearing"] == inches.lead["gearing"]
