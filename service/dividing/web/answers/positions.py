"""The schedule of cuts as it goes out; a table may have 20,000 rows, so a row is made with little ado."""

from __future__ import annotations

from dividing.indexing.angles import angle_out_of, dm_of, seconds_of
from dividing.indexing.head import Head
from dividing.indexing.positions import DialSet, Row, rows
from dividing.indexing.setup import Setup
from dividing.indexing.wording.dials import reading_text
from dividing.indexing.work import Work

from . import Answer

Places = dict[tuple[int, int], Answer]
"""Angles as they go out, by the places that they belong to: all setups of an answer cut at the same places."""


def position_rows(work: Work, head: Head, setup: Setup, places: Places) -> list[Answer]:
    """A row for every cut, in the order of cutting; `places` takes their angles and gives those that it has."""
    rational = work.rational
    return [
        _cut(row, head, places.get(row.place_of) or _placed(row, places, rational=rational))
        for row in rows(work, head, setup)
    ]


def _placed(row: Row, places: Places, *, rational: bool) -> Answer:
    places[row.place_of] = angle = _place(row, rational=rational)
    return angle


def _place(row: Row, *, rational: bool) -> Answer:
    angle = angle_out_of(*row.place_of)
    return angle if rational else {**angle, "turns": None}


def row_out(row: Row, head: Head, *, rational: bool = True) -> Answer:
    """One cut; `rational` is False where the angles asked for are no exact fraction of a turn."""
    return _cut(row, head, _place(row, rational=rational))


def _cut(row: Row, head: Head, angle: Answer) -> Answer:
    cut, division, _, reached, error, turns, holes, hole, second_holes, second_hole, dial, free_check = row
    return {
        "cut": cut,
        "division": division,
        "angle": angle,
        "turns": turns,
        "holes": holes,
        "hole": hole,
        "second_holes": second_holes,
        "second_hole": second_hole,
        "dial": dial and dial_out(dial, head),
        "scale": scale(*reached),
        "free_check": free_check,
        "error_seconds": seconds_of(*error) if error[0] else 0.0,
    }


def dial_out(setting: DialSet, head: Head) -> Answer:
    """A setting of the dial: exact, and as it is set on a dial in degrees or in plain divisions."""
    reading = setting.reading
    in_divisions = head.dial is not None and head.dial.divisions is not None
    return {
        "turns": setting.turns,
        "reading": angle_out_of(reading.numerator, reading.denominator),
        "divisions" if in_divisions else "set": reading_text(setting, head),
    }


def scale(over: int, under: int) -> str:
    """What the degree scale on the spindle nose shows over/under of a turn from zero, to the nearest minute; it knows
    no 360°."""
    shown = dm_of(over % under, under)
    return "0°00'" if shown == "360°00'" else shown
