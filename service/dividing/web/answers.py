"""Answers as plain dictionaries, their keys in the order of the contract.

Exact values come in and are rounded here, once, on their way out. Tables of positions are the only large part, so
their rows are made without a function call more than they need.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from dividing import __version__
from dividing.indexing import wording
from dividing.indexing.angles import PI, Angle, angle_out, angle_out_of, dm_of, seconds, seconds_of
from dividing.indexing.bounds import ROWS_MOST
from dividing.indexing.converting import Conversion, Setting
from dividing.indexing.faults import Fault, Refused
from dividing.indexing.head import Head
from dividing.indexing.heads import ReadyHead
from dividing.indexing.positions import DialSet, dial_set, rows
from dividing.indexing.setup import NO_ERROR, Accuracy, Gearing, Move, SecondMove, Setup, Tolerance
from dividing.indexing.solving import Solution
from dividing.indexing.wording.dials import reading_text
from dividing.indexing.work import Angles, Arc, Divisions, Work

from .head_out import head_out
from .schemas.solve import Question

Answer = dict[str, Any]

TOO_MANY_ROWS = f"Positions are left out: an answer holds at most {ROWS_MOST:,} rows. Ask for one setup, or split the work."


def solved(question: Question, solution: Solution, link: str) -> Answer:
    """The answer of /v1/solve."""
    work, head = solution.work, solution.head
    tables = _tables(question, solution)
    left_out = any(
        table is None and _always_tabled(work, setup)
        for table, setup in zip(tables, solution.setups, strict=True)
    )
    return {
        "work": work_out(work),
        "setups": [
            setup_out(work, head, setup, question.tolerance, table)
            for setup, table in zip(solution.setups, tables, strict=True)
        ],
        "declined": [{"method": no.method, "reason": no.reason} for no in solution.declined],
        "part": None,
        "cautions": [*wording.GENERAL, TOO_MANY_ROWS] if left_out else list(wording.GENERAL),
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


def setup_out(
    work: Work, head: Head, setup: Setup, tolerance: Tolerance | None, table: list[Answer] | None = None
) -> Answer:
    """One way to set the head, told in full."""
    return {
        "method": setup.method,
        "exact": setup.exact,
        "summary": wording.summary(work, head, setup),
        "move": _move(setup.move),
        "second_move": _second(setup),
        "gearing": gearing_out(setup.gearing),
        "dial": _dial_step(work, head, setup),
        "every": setup.every,
        "error": error_out(setup.accuracy, tolerance),
        "working": wording.working(work, head, setup),
        "instructions": wording.instructions(work, head, setup),
        "cautions": wording.cautions(work, head, setup),
        "positions": table,
    }


def error_out(accuracy: Accuracy, tolerance: Tolerance | None) -> Answer:
    """How far off, in seconds of arc, and at the rim in the user's own unit."""
    if accuracy is NO_ERROR and tolerance is None:
        return _NO_ERROR_OUT.copy()
    step = accuracy.step
    return {
        "step": None if step is None else str(step),
        "worst_seconds": seconds(accuracy.worst),
        "closing_seconds": seconds(accuracy.closing),
        "single_pitch_seconds": seconds(accuracy.single_pitch),
        "total_pitch_seconds": seconds(accuracy.total_pitch),
        "at_rim": _at_rim(accuracy, tolerance),
        "within_tolerance": None if tolerance is None else within(accuracy, tolerance),
    }


_NO_ERROR_OUT = {
    "step": "0",
    "worst_seconds": 0.0,
    "closing_seconds": 0.0,
    "single_pitch_seconds": 0.0,
    "total_pitch_seconds": 0.0,
    "at_rim": None,
    "within_tolerance": None,
}


def within(accuracy: Accuracy, tolerance: Tolerance) -> bool:
    """Whether no position is further off than is permitted; decided exactly."""
    if tolerance.angle is not None:
        return accuracy.worst <= tolerance.angle
    assert tolerance.at_rim is not None and tolerance.diameter is not None
    return accuracy.worst * PI * tolerance.diameter <= tolerance.at_rim


def converted(found: Conversion) -> Answer:
    """The answer of /v1/angle."""
    near = found.nearest
    return {
        "angle": angle_out(found.angle),
        "radians": found.radians,
        "gon": found.gon,
        "crank": {
            "turns": None if found.crank is None else str(found.crank),
            "settings": [_setting(setting) for setting in found.settings],
            "nearest": None
            if near is None
            else {**_setting(near.setting), "error_seconds": near.error_seconds},
        },
        "arc": found.arc,
        "chord": found.chord,
        "rise_per_100": found.rise_per_100,
        "sine_bar_height": found.sine_bar_height,
        "service_version": __version__,
    }


def ready_heads(heads: tuple[ReadyHead, ...]) -> Answer:
    """The answer of /v1/heads."""
    told = [{"id": ready.id, "title": ready.title, "head": head_out(ready.head)} for ready in heads]
    return {"heads": told, "service_version": __version__}


def gearing_out(gearing: Gearing | None) -> Answer | None:
    """The train between spindle and plate."""
    if gearing is None:
        return None
    return {
        "spindle": gearing.spindle,
        "worm": gearing.worm,
        "stud": None if gearing.stud is None else list(gearing.stud),
        "idlers": gearing.idlers,
        "plate": gearing.plate,
        "train": str(gearing.train),
    }


def position_rows(work: Work, head: Head, setup: Setup) -> list[Answer]:
    """A row for every cut, in the order of cutting."""
    rational = work.rational
    table = []
    for row in rows(work, head, setup):
        place, error = row.place, row.error
        angle = angle_out_of(place.numerator, place.denominator)
        if not rational:
            angle["turns"] = None
        table.append(
            {
                "cut": row.cut,
                "division": row.division,
                "angle": angle,
                "turns": row.turns,
                "holes": row.holes,
                "hole": row.hole,
                "second_holes": row.second_holes,
                "second_hole": row.second_hole,
                "dial": row.dial and _dial(row.dial, head),
                "scale": _scale(row.reached),
                "free_check": row.free_check,
                "error_seconds": seconds_of(error.numerator, error.denominator) if error else 0.0,
            }
        )
    return table


def _tables(question: Question, solution: Solution) -> list[list[Answer] | None]:
    """The table of each setup, or None where none was asked for or it does not fit."""
    work, head, setups = solution.work, solution.head, solution.setups
    if question.positions and work.cuts * len(setups) > ROWS_MOST:
        fitting = ROWS_MOST // work.cuts
        sentence = (
            f"{len(setups)} setups of {work.cuts:,} cuts are {len(setups) * work.cuts:,} rows of positions; "
            f"an answer holds at most {ROWS_MOST:,}. Set limit to {fitting} or less, or leave positions out."
        )
        raise Refused([Fault(("limit",), sentence)])
    room = ROWS_MOST
    tables: list[list[Answer] | None] = []
    for setup in setups:
        fits = (question.positions or _always_tabled(work, setup)) and work.cuts <= room
        tables.append(position_rows(work, head, setup) if fits else None)
        room -= work.cuts if fits else 0
    return tables


def _always_tabled(work: Work, setup: Setup) -> bool:
    """Where no move is repeated the table is the instruction itself."""
    return setup.method == "nearest" or isinstance(work, Angles)


def _move(move: Move | None) -> Answer | None:
    if move is None:
        return None
    return {
        "turns": move.turns,
        "holes": move.holes,
        "circle": move.circle,
        "plate": move.plate,
        "sector_holes": move.sector_holes,
    }


def _second(setup: Setup) -> Answer | None:
    second: SecondMove | None = setup.second
    if second is None or setup.move is None:
        return None
    return {
        "turns": None if second.holes is None else 0,
        "holes": second.holes,
        "circle": second.circle,
        "plate": setup.move.plate,
        "sector_holes": second.sector_holes,
    }


def _dial_step(work: Work, head: Head, setup: Setup) -> Answer | None:
    if setup.method != "dial":
        return None
    if isinstance(work, Angles):
        unset = "set" if head.dial is None or head.dial.divisions is None else "divisions"
        return {"turns": None, "reading": None, unset: None}
    return _dial(dial_set(work.step, head), head)


def _dial(setting: DialSet, head: Head) -> Answer:
    reading = setting.reading
    in_divisions = head.dial is not None and head.dial.divisions is not None
    return {
        "turns": setting.turns,
        "reading": angle_out_of(reading.numerator, reading.denominator),
        "divisions" if in_divisions else "set": reading_text(setting, head),
    }


def _scale(reached: Fraction) -> str:
    """What the degree scale on the spindle nose shows, to the nearest minute; it knows no 360°."""
    over, under = reached.numerator, reached.denominator
    shown = dm_of(over % under, under)
    return "0°00'" if shown == "360°00'" else shown


def _at_rim(accuracy: Accuracy, tolerance: Tolerance | None) -> float | None:
    if tolerance is None or tolerance.diameter is None:
        return None
    return float(accuracy.worst * PI * tolerance.diameter)


def _setting(setting: Setting) -> Answer:
    return {"turns": setting.turns, "holes": setting.holes, "circle": setting.circle, "plate": setting.plate}


def angle_of(turns: Fraction) -> Answer:
    """An exact angle as it goes out."""
    return angle_out(Angle(turns))
