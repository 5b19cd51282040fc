"""A part on the wire: its fields, its block in the answer, and the methods that it forbids."""

from __future__ import annotations

import inspect
from math import pi, sqrt
from typing import Any

import pytest
from flask.testing import FlaskClient

from dividing.indexing.head import TWELVE_GEARS
from dividing.parts import KINDS
from dividing.web.schemas.part import PART_SCHEMAS
from tests.web.test_openapi import problems_of

GEARED = {"change_gears": list(TWELVE_GEARS), "screw": {"lead": 5, "unit": "mm"}}
FLATS = {"kind": "flats", "sides": 6, "across_flats": 24, "unit": "mm"}
PARTS: list[dict[str, Any]] = [
    FLATS,
    {"kind": "bolt_circle", "holes": 7, "diameter": 100, "start": "22°30'", "x": -5, "unit": "in"},
    {"kind": "spur_gear", "teeth": 24, "module": 2, "whole_depth": 2.157, "unit": "mm"},
    {"kind": "helical_gear", "teeth": 28, "module": 2, "helix_angle": "20°", "hand": "right", "unit": "mm"},
    {"kind": "helix", "starts": 3, "diameter": 20, "lead": 400, "hand": "left", "unit": "mm"},
    {"kind": "dial", "divisions": 125, "diameter": 80, "unit": "mm"},
    {"kind": "dial", "form": "linear", "divisions": 50, "spacing": 1, "unit": "mm"},
    {"kind": "spline", "teeth": 6, "major": 50, "minor": 46, "width": 9, "unit": "mm"},
    {"kind": "end_teeth", "teeth": 20, "form": "side_mill", "cutter_angle": 70},
    {"kind": "bevel_gear", "teeth": 20, "mate": 30, "module": 2, "unit": "mm"},
    {"kind": "reamer", "flutes": 6},
]


def ask(client: FlaskClient, part: Any, **more: Any) -> dict[str, Any]:
    response = client.post("/v1/solve", json={"work": {"part": part}, "head": GEARED, **more})
    assert response.status_code == 200, response.text
    told: dict[str, Any] = response.json
    return told


@pytest.mark.parametrize("part", PARTS, ids=lambda part: part["kind"])
def test_each_kind_answers_with_its_sizes_as_described(client: FlaskClient, part: dict[str, Any]) -> None:
    told = ask(client, part, positions=True, limit=1)
    assert not problems_of("SolveOut", told)
    assert told["part"]["kind"] == part["kind"]
    assert told["part"]["sizes"]
    assert all(size["source"] for size in told["part"]["sizes"])
    again = client.get("/v1/solve?" + told["link"][2:])
    assert again.json["part"]["sizes"] == told["part"]["sizes"]


def test_all_kinds_are_tried_above() -> None:
    assert {part["kind"] for part in PARTS} == set(KINDS)


@pytest.mark.parametrize("kind", KINDS)
def test_a_kind_takes_the_fields_that_its_function_takes(kind: str) -> None:
    parameters = inspect.signature(KINDS[kind].make).parameters
    needed = {name for name, parameter in parameters.items() if parameter.default is inspect.Parameter.empty} - {"head"}
    fields = PART_SCHEMAS[kind]().fields
    assert {name for name, field in fields.items() if field.required} == needed | {"kind"}
    assert {"stock" if name == "round" else name for name in fields} == (set(parameters) - {"head"}) | {"kind"}


def test_a_hexagon_is_six_divisions_with_its_corners(client: FlaskClient) -> None:
    told = ask(client, FLATS)
    assert told["work"]["divisions"] == 6
    sizes = {size["name"]: size for size in told["part"]["sizes"]}
    # Across corners is across flats over cos 30 degrees.
    corners = sizes["Across corners"]
    assert corners["value"] == pytest.approx(24 * 2 / sqrt(3), abs=0.0005)
    assert corners["text"] == f"{corners['value']:.3f} mm"


def test_an_angular_error_is_carried_to_the_rim(client: FlaskClient) -> None:
    part = {"kind": "dial", "divisions": 127, "diameter": 80, "unit": "mm"}
    told = ask(client, part, methods=["nearest"])
    error = told["part"]["errors"][0]
    seconds = told["setups"][0]["error"]["worst_seconds"]
    assert error["name"] == "Largest error at the rim"
    assert error["value"] == pytest.approx(seconds / 3600 * pi / 180 * 40, abs=0.00001)


def test_a_helix_forbids_what_needs_the_train_or_the_worm(client: FlaskClient) -> None:
    told = ask(client, {"kind": "helix", "starts": 8, "diameter": 20, "lead": 400, "hand": "right", "unit": "mm"})
    assert {setup["method"] for setup in told["setups"]} == {"plain"}
    reasons = {no["method"]: no["reason"] for no in told["declined"]}
    assert {"direct", "differential", "compound", "dial"} <= set(reasons)
    assert reasons["direct"].startswith("While a helix is cut ")
    assert told["part"]["lead"]["gearing"]["worm"] in TWELVE_GEARS
    assert told["cautions"][0] not in client.post("/v1/solve", json={"work": {"divisions": 8}}).json["cautions"]


def test_a_helix_on_the_dial_alone_has_nothing_that_serves(client: FlaskClient) -> None:
    head = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"divisions": 100}}
    part = {"kind": "helix", "starts": 3, "diameter": 20, "lead": 400, "hand": "right", "unit": "mm"}
    response = client.post("/v1/solve", json={"work": {"part": part}, "head": head})
    assert response.status_code == 422
    # No methods were asked for, so it is the head that has to change.
    assert response.json["errors"][0]["pointer"] == "#/head"


REFUSED: list[tuple[Any, list[tuple[str, str]]]] = [
    (5, [("#/work/part", 'Give an object here: fields between "{" and "}".')]),
    ({}, [("#/work/part/kind", f"Give one of: {', '.join(KINDS)}.")]),
    ({"kind": "nut"}, [("#/work/part/kind", f"Give one of: {', '.join(KINDS)}.")]),
    ({"kind": ["flats"]}, [("#/work/part/kind", f"Give one of: {', '.join(KINDS)}.")]),
    ({"kind": "flats", "sides": 6, "across_flats": 24}, [("#/work/part/unit", "This field is needed.")]),
    ({**FLATS, "unit": "cm"}, [("#/work/part/unit", "Give one of: mm, in.")]),
    ({**FLATS, "sides": 0}, [("#/work/part/sides", "Give a whole number from 1 to 1,000,000.")]),
    ({**FLATS, "sides": "6"}, [("#/work/part/sides", "Give a whole number without quotes: 6.")]),
    ({**FLATS, "across_flats": 0}, [("#/work/part/across_flats", "Give a length above 0 and at most 1,000,000.")]),
    (
        {"kind": "flats", "sides": 2, "across_flats": 9, "unit": "mm"},
        [("#/work/part/round", "Two flats have no corners that would settle it: give both across_flats and round.")],
    ),
    (
        {"kind": "end_teeth", "teeth": 8, "form": "straight", "outer": 40},
        [("#/work/part/unit", 'Say in which unit the lengths are: "mm" or "in".')],
    ),
    (
        {"kind": "bolt_circle", "holes": 7, "diameter": 9, "unit": "mm", "x": 1e7},
        [("#/work/part/x", "Give a number between -1,000,000 and 1,000,000.")],
    ),
    (
        {"kind": "bolt_circle", "holes": 7, "diameter": 9, "unit": "mm", "sense": "left"},
        [("#/work/part/sense", "Give one of: anticlockwise, clockwise.")],
    ),
]


@pytest.mark.parametrize(("part", "errors"), REFUSED)
def test_a_part_that_cannot_be_made_is_refused_where_it_is_wrong(
    client: FlaskClient, part: Any, errors: list[tuple[str, str]]
) -> None:
    response = client.post("/v1/solve", json={"work": {"part": part}})
    assert response.status_code == 422
    assert [(error["pointer"], error["detail"]) for error in response.json["errors"]] == errors
