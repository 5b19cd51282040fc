"""The answer of /v1/solve."""

from __future__ import annotations

from orjson import Fragment

from dividing import __version__
from dividing.indexing import wording
from dividing.indexing.angles import angle_out, angle_out_of
from dividing.indexing.bounds import ANGLES_MOST, ROWS_MOST
from dividing.indexing.faults import Fault, Refused
from dividing.indexing.setup import Setup
from dividing.indexing.solving import Solution
from dividing.indexing.work import Angles, Arc, Divisions, Work
from dividing.web.schemas.solve import Question

from . import Answer
from .part import part_out
from .positions import Places, position_rows
from .setups import setup_out

LATER_LEFT_OUT = f"The positions of later setups are left out: an answer holds at most {ROWS_MOST:,} rows."


def solved(question: Question, solution: Solution, link: str) -> Answer:
    """The answer of /v1/solve."""
    work, head, part = solution.work, solution.head, question.part
    tables, left_out = _tables(question, solution)
    return {
        "work": work_out(work),
        "setups": [
            setup_out(work, head, setup, question.tolerance, table)
            for setup, table in zip(solution.setups, tables, strict=True)
        ],
        "declined": [{"method": no.method, "reason": no.reason} for no in solution.declined],
        "part": None if part is None else part_out(part, solution.setups[0]),
        "cautions": [
            # A straight scale is ruled over many turns of the spindle: a part knows its own places.
            *(part.cautions if part else wording.same_place(work)),
            *wording.GENERAL,
            *([_left_out(work)] if left_out else ()),
        ],
        "link": link,
        "service_version": __version__,
    }


def work_out(work: Work) -> Answer:
    """The work as it was understood."""
    if isinstance(work, Divisions):
        step = work.step
        return {"divisions": work.count, "step": angle_out_of(step.numerator, step.denominator)}
    if isinstance(work, Arc):
        return {"angle": angle_out(work.angle), "count": work.count, "step": angle_out(work.angle)}
    return {"angles": [angle_out(angle) for angle in work.angles], "step": None}


def _tables(question: Question, solution: Solution) -> tuple[list[Fragment | None], bool]:
    """The table of each setup, or None where none was asked for or it does not fit, and whether one that should stand
    there does not fit."""
    work, head, setups = solution.work, solution.head, solution.setups
    if not question.positions and not (isinstance(work, Angles) or "nearest" in [setup.method for setup in setups]):
        return [None] * len(setups), False
    if question.positions and work.cuts * len(setups) > ROWS_MOST:
        fitting = ROWS_MOST // work.cuts
        sentence = (
            f"{len(setups)} setups of {work.cuts:,} cuts are {len(setups) * work.cuts:,} rows of positions; "
            f"an answer holds at most {ROWS_MOST:,}. Set limit to {fitting} or less, or leave positions out."
        )
        raise Refused([Fault(("limit",), sentence)])
    room = ROWS_MOST
    tables: list[Fragment | None] = []
    places: Places = {}
    for setup in setups:
        fits = (question.positions or _always_tabled(work, setup)) and work.cuts <= room
        tables.append(position_rows(work, head, setup, places) if fits else None)
        room -= work.cuts if fits else 0
    left_out = any(table is None and _always_tabled(work, setup) for table, setup in zip(tables, setups, strict=True))
    return tables, left_out


def _left_out(work: Work) -> str:
    if work.cuts <= ROWS_MOST:
        return LATER_LEFT_OUT
    return (
        f"Positions are left out: an answer holds at most {ROWS_MOST:,} rows, and this work has {work.cuts:,} cuts. "
        f"Ask for its places in parts, as lists of at most {ANGLES_MOST:,} angles."
    )


def _always_tabled(work: Work, setup: Setup) -> bool:
    """Where no move is repeated the table is the instruction itself."""
    return setup.method == "nearest" or isinstance(work, Angles)
