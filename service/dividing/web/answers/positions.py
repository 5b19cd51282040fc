"""The schedule of cuts as it goes out. A table may have 20,000 rows, so a row is written as JSON at once, without a
dictionary; its figures are written by `orjson`, a column at a time, as everything else that goes out."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import islice, repeat

import orjson

from dividing.indexing.angles import angle_out_of, dm_of, dms_of, seconds_of
from dividing.indexing.geared import lowest
from dividing.indexing.head import Head
from dividing.indexing.positions import DialSet, Part, Row, rows
from dividing.indexing.setup import Setup
from dividing.indexing.wording.dials import reading_text, reading_texts
from dividing.indexing.work import Work

from . import Answer

ROWS_AT_ONCE = 100
"""Rows that are held while they are written: they stay near the processor, and a long table takes little room."""
Places = dict[int, list[str]]
"""Angles as they go out, by the spaces per move: all setups of an answer that have as many cut at the same places."""


def position_rows(work: Work, head: Head, setup: Setup, places: Places) -> orjson.Fragment:
    """A row for every cut, in the order of cutting; `places` takes their angles and gives those that it has."""
    told, angles = rows(work, head, setup), places.setdefault(setup.every, [])
    written: list[str] = []
    while table := list(islice(told, ROWS_AT_ONCE)):
        if len(angles) < table[-1].cut:
            angles += _angles([row.place_of for row in table], rational=work.rational)
        written.append(",".join(_written(table, head, angles[table[0].cut - 1 : table[-1].cut])))
    return orjson.Fragment(f"[{','.join(written)}]".encode())


def rows_out(told: list[Row], head: Head, *, rational: bool = True) -> list[Answer]:
    """Some of the cuts; `rational` is False where the angles asked for are no exact fraction of a turn."""
    angles = _angles([row.place_of for row in told], rational=rational)
    return [orjson.loads(written) for written in _written(told, head, angles)]


def _written(table: list[Row], head: Head, angles: list[str]) -> Iterable[str]:
    errors = _floats(seconds_of(*row.error_of) if row.error_of[0] else 0.0 for row in table)
    settings = [row.dial for row in table if row.dial]
    dials = _dials(settings, head) if settings else repeat("null")
    return map(_row, table, angles, dials, errors)


def _row(row: Row, angle: str, dial: str, error: str) -> str:
    cut, division, _, (over, under), _, turns, holes, hole, second_holes, second_hole, _, free_check = row
    if hole is None:
        crank = '"holes":null,"hole":null,"second_holes":null,"second_hole":null'
    elif second_hole is None:
        crank = f'"holes":{holes},"hole":{hole},"second_holes":null,"second_hole":null'
    else:
        crank = f'"holes":{holes},"hole":{hole},"second_holes":{second_holes},"second_hole":{second_hole}'
    return (
        f'{{"cut":{cut},"division":{division},"angle":{angle},"turns":{turns},{crank},"dial":{dial},'
        f'"scale":"{scale(over, under)}","free_check":{"true" if free_check else "false"},"error_seconds":{error}}}'
    )


def _angles(places: list[Part], *, rational: bool) -> list[str]:
    """Places in lowest terms, as `angle_out_of` gives them."""
    degrees = _floats(over * 360 / under for over, under in places)
    if not rational:
        turns: Iterable[str] = repeat("null")
    else:
        turns = (f'"{over}"' if under == 1 else f'"{over}/{under}"' for over, under in places)
    return [
        # Only its last mark, that of the seconds, minds JSON.
        f'{{"degrees":{degree},"dms":"{dms_of(over, under)[:-1]}\\"","turns":{exact}}}'
        for degree, (over, under), exact in zip(degrees, places, turns, strict=False)
    ]


def _dials(settings: list[DialSet], head: Head) -> list[str]:
    """As `dial_out` gives them."""
    name, readings = _name(head), _angles([lowest(*setting.reading_of) for setting in settings], rational=True)
    return [
        f'{{"turns":{setting.turns},"reading":{reading},"{name}":{_quoted(text)}}}'
        for setting, reading, text in zip(settings, readings, reading_texts(settings, head), strict=True)
    ]


def _floats(column: Iterable[float]) -> list[str]:
    return orjson.dumps(list(column))[1:-1].decode().split(",")


def _quoted(text: str) -> str:
    """Figures and marks between quotes; the mark of seconds is the only one that JSON minds."""
    marked = text.replace('"', '\\"')
    return f'"{marked}"'


def dial_out(setting: DialSet, head: Head) -> Answer:
    """A setting of the dial: exact, and as it is set on a dial in degrees or in plain divisions."""
    return {
        "turns": setting.turns,
        "reading": angle_out_of(*setting.reading_of),
        _name(head): reading_text(setting, head),
    }


def _name(head: Head) -> str:
    return "set" if head.dial is None or head.dial.divisions is None else "divisions"


def scale(over: int, under: int) -> str:
    """What the degree scale on the spindle nose shows over/under of a turn from zero, to the nearest minute; it knows
    no 360°."""
    shown = dm_of(over % under, under)
    return "0°00'" if shown == "360°00'" else shown
