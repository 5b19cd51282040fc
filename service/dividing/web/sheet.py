"""Routing sheets as offices write them (CSV): read with every slip kept to its line, written so that nothing runs.

A byte-order mark, `;` or `,` between cells and line breaks within quotes are understood. A quote that is never closed
would swallow the lines after it, so a line that cannot be read is given back whole and reading goes on with the next.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from .limits import BATCH_ITEMS_MOST
from .problems import BAD_REQUEST, WRONG_FIELD, Problem

CELL_LONGEST = 10_000
"""Characters of a cell; a longer one is a slip of whoever wrote the file."""
_LINES_OF_A_RECORD = 50
_MARK = b"\xef\xbb\xbf"
_PARTED_BY = re.compile(r"sep=([;,])\s*", re.IGNORECASE)
_FORMULA = re.compile(r"[\s\0]*[=+\-@＝＋－＠]|[\t\r\n]")
_SIGNED_NUMBER = re.compile(r"[+-]?[0-9]+(?:[.,][0-9]+)?", re.ASCII)
_UNCLOSED = "A quote in this line is not closed, or text follows it. Close it, or write it twice where it is meant."


@dataclass(frozen=True, slots=True)
class Line:
    """A line under the heading: as many cells as the heading has, and what is wrong with it as a line."""

    cells: list[str]
    fault: str | None = None


@dataclass(frozen=True, slots=True)
class Sheet:
    """A file of cells under a heading, and how it was written, so that the answer is written alike."""

    heading: list[str]
    lines: list[Line]
    parted_by: str
    marked: bool


def read(data: bytes) -> Sheet:
    """The sheet that the bytes spell; raises `Problem` where it cannot be told which line is which."""
    marked = data.startswith(_MARK)
    try:
        text = data.removeprefix(_MARK).decode()
    except UnicodeDecodeError as error:
        sentence = f"The file is not UTF-8 (byte {error.start + 1}). Save it as CSV in UTF-8."
        raise Problem(BAD_REQUEST, sentence) from None
    written = list(io.StringIO(text, newline=""))
    told = _PARTED_BY.fullmatch(written[0]) if written else None
    if told:
        del written[0]
    parted_by = told[1] if told else _parted_by(written)
    records = _records(written, parted_by)
    heading = _heading(next(records, None))
    lines = [_line(record, len(heading), parted_by) for record in records]
    _check_count(len(lines))
    return Sheet(heading, lines, parted_by, marked)


def write(sheet: Sheet, heading: Iterable[str], rows: Iterable[Iterable[str]]) -> bytes:
    """The rows under the heading, parted and marked as the sheet was; no cell is run as a formula."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, delimiter=sheet.parted_by, lineterminator="\r\n")
    writer.writerow(map(harmless, heading))
    writer.writerows(map(harmless, row) for row in rows)
    return (_MARK if sheet.marked else b"") + text.getvalue().encode()


def harmless(cell: str) -> str:
    """The cell with a leading quote where a spreadsheet would run it; signed numbers stay numbers.

    >>> harmless("=1+1"), harmless("-11"), harmless("OP30")
    ("'=1+1", '-11', 'OP30')
    """
    cell = cell.replace("\0", "\N{REPLACEMENT CHARACTER}")
    return "'" + cell if _FORMULA.match(cell) and not _SIGNED_NUMBER.fullmatch(cell) else cell


def bare(cell: str) -> str:
    """What a cell says, without space round it and without the quote that `harmless` set before it."""
    cell = cell.strip()
    return cell[1:] if cell.startswith("'") and _FORMULA.match(cell[1:]) else cell


def _parted_by(written: list[str]) -> str:
    heading = next((line for line in written if line.strip()), "")
    outside = re.sub(r'"[^"]*"', "", heading)
    return ";" if outside.count(";") > outside.count(",") else ","


def _records(written: list[str], parted_by: str) -> Iterator[list[str] | str]:
    """The cells of each record, or the line itself where it cannot be read; blank lines are passed over."""
    at = found = 0
    while at < len(written):
        reader = csv.reader(written[at : at + _LINES_OF_A_RECORD], delimiter=parted_by, strict=True)
        record: list[str] | str
        try:
            record = next(reader)
            at += reader.line_num
        except csv.Error:
            record = written[at].rstrip("\r\n")
            at += 1
        if record and record != [""]:
            yield record
            found += 1
        if found > BATCH_ITEMS_MOST + 1:
            _check_count(found)


def _heading(record: list[str] | str | None) -> list[str]:
    if record is None:
        raise Problem(WRONG_FIELD, "The file is empty. Begin with a heading such as ref,divisions.", [])
    if isinstance(record, str):
        raise Problem(WRONG_FIELD, "The heading cannot be read. " + _UNCLOSED.replace("this line", "it"), [])
    if any("\0" in cell or len(cell) > CELL_LONGEST for cell in record):
        raise Problem(WRONG_FIELD, "The heading cannot be read. Give the columns short names.", [])
    return record


def _line(record: list[str] | str, wanted: int, parted_by: str) -> Line:
    if isinstance(record, str):
        return Line(_fitted([record[:CELL_LONGEST]], wanted, parted_by), _UNCLOSED)
    cells = _fitted(record, wanted, parted_by)
    if len(record) != wanted:
        cells_here = f"{len(record)} cell{'' if len(record) == 1 else 's'}"
        return Line(cells, f"This line has {cells_here}, the heading {wanted}. Give as many as the heading has.")
    if any("\0" in cell for cell in record):
        return Line(cells, "This line holds a character that is no text (NUL). Take it out.")
    if any(len(cell) > CELL_LONGEST for cell in record):
        return Line(cells, f"A cell of this line is longer than {CELL_LONGEST:,} characters. Shorten it.")
    return Line(cells)


def _fitted(cells: list[str], wanted: int, parted_by: str) -> list[str]:
    """As many cells as are wanted; what is too many stays in the last."""
    if len(cells) > wanted:
        return [*cells[: wanted - 1], parted_by.join(cells[wanted - 1 :])]
    return cells + [""] * (wanted - len(cells))


def _check_count(lines: int) -> None:
    if lines > BATCH_ITEMS_MOST:
        sentence = f"The file has more than {BATCH_ITEMS_MOST} lines under its heading. Split it."
        raise Problem(WRONG_FIELD, sentence, [])
