"""/v1/plate: an index plate made in the shop, drilled on the head that will use it."""

from __future__ import annotations

from typing import Any

from flask import Blueprint, Response, request
from werkzeug.datastructures import MIMEAccept

from dividing.indexing.plate_making.counts import head_with
from dividing.indexing.plate_making.drilling import drilling
from dividing.indexing.plate_making.left import left_in, left_in_any_work
from dividing.indexing.work import Divisions
from dividing.parts.index_plate import Blank, blank

from . import costing, plate_sheet, query
from .answers.plate import plate_out
from .exchange import answer, asked_in_body
from .operations import CSV, JSON, OtherForm, in_body
from .schemas.plate import PLATE_IN, PlateAsked
from .schemas.plate_out import PlateOut

blueprint = Blueprint("plate", __name__)
ADDRESS = "/v1/plate"
_EXAMPLE: dict[str, Any] = {"divisions": 102, "circle_diameter": 150, "unit": "mm"}


@blueprint.post(ADDRESS)
def plate_body() -> Response:
    """The plate in the body; its schedule alone for whoever would rather have a sheet."""
    asked: PlateAsked = PLATE_IN.load(asked_in_body())
    told = made(asked)
    response = _as_sheet(asked, told) if _sheet_wanted(request.accept_mimetypes) else answer(told)
    response.vary.add("Accept")
    return response


def made(asked: PlateAsked) -> dict[str, Any]:
    """The answer for a plate that was asked for."""
    costing.check_drilling(Divisions(asked.holes), asked.head)
    plate = drilling(asked.holes, asked.head, circles=asked.circles)
    left = left_in_any_work(plate) if asked.divisions is None else left_in(asked.divisions, plate)
    return {**plate_out(asked, plate, left, _blank(asked)), "link": _link(asked)}


def _blank(asked: PlateAsked) -> Blank:
    if asked.unit is None:
        return Blank()
    ratio = asked.head.ratio
    return blank(asked.holes, asked.unit, ratio, circle=asked.circle, hole=asked.hole, **asked.placing)


def _link(asked: PlateAsked) -> str | None:
    head = head_with(asked.holes, asked.head)
    if head is None or asked.divisions is None:
        return None
    return query.link({"work": {"divisions": asked.divisions}}, head)


def _sheet_wanted(accepted: MIMEAccept) -> bool:
    """Whether a sheet is asked for by name and liked better than JSON."""
    return CSV in accepted.values() and accepted.quality(CSV) > accepted.quality(JSON)


def _as_sheet(asked: PlateAsked, told: dict[str, Any]) -> Response:
    response = Response(plate_sheet.written(told, asked.unit), content_type=f"{CSV}; charset=utf-8")
    response.headers["Content-Disposition"] = f'attachment; filename="plate-{asked.holes}.csv"'
    return response


def _sheet() -> str:
    asked = PLATE_IN.load(_EXAMPLE)
    return plate_sheet.written(made(asked), asked.unit).decode("utf-8-sig")


OPERATIONS = (
    in_body(
        "plate", ADDRESS, "Make an index plate on this head",
        "Where no circle serves, one can be drilled on the head that will use it. Give its holes, or the divisions "
        "that it is for: a multiple of N/gcd(N, R) holes divides N at R:1. The answer holds the schedule of drilling "
        "by the best setup (an exact one if there is one, else the nearest hole), coordinates where the circle's "
        "diameter is given, holes that fit, the plate's own errors, and what they leave in the work: only they are "
        "divided by the ratio, the error of the head's own worm enters the work in full. With the header "
        "Accept: text/csv the schedule comes as a sheet.",
        asked=type(PLATE_IN), answered=PlateOut, answer=lambda asked: made(PLATE_IN.load(asked)), example=_EXAMPLE,
        answered_also=(OtherForm(CSV, "The schedule alone, a line a hole, where Accept asks for it.", _sheet),),
    ),
)  # fmt: skip
