"""Sheets as offices write them: read with every slip kept to its line, written so that nothing runs."""

from __future__ import annotations

import csv
import io

import pytest

from dividing.web import sheet
from dividing.web.problems import Problem

UNCLOSED = "A quote in this line is not closed, or text follows it. Close it, or write it twice where it is meant."


def lines(text: str) -> list[tuple[list[str], str | None]]:
    return [(line.cells, line.fault) for line in sheet.read(text.encode()).lines]


@pytest.mark.parametrize(
    ("text", "heading", "cells"),
    [
        ("ref,divisions\nA,28\n", ["ref", "divisions"], [["A", "28"]]),
        ("ref;divisions\r\nA;28\r\n", ["ref", "divisions"], [["A", "28"]]),
        ("\ufeffref;divisions\r\nA;28", ["ref", "divisions"], [["A", "28"]]),
        ("ref,divisions\rA,28\r", ["ref", "divisions"], [["A", "28"]]),
        ("sep=;\r\nref;angle\r\nA;22,5\r\n", ["ref", "angle"], [["A", "22,5"]]),
        ('ref,angle\nA,"22,5"\n', ["ref", "angle"], [["A", "22,5"]]),
        ('"ref;a,b,c,d";angle\nA;3\n', ["ref;a,b,c,d", "angle"], [["A", "3"]]),
        ('ref,note\nA,"two\nlines"\nB,""""\n', ["ref", "note"], [["A", "two\nlines"], ["B", '"']]),
        ("ref,note\n\nA,x\n\n\nB,y\n", ["ref", "note"], [["A", "x"], ["B", "y"]]),
        ("ref,note\nA,x\u2028y\n", ["ref", "note"], [["A", "x\u2028y"]]),
    ],
)
def test_a_sheet_is_read_as_an_office_writes_it(text: str, heading: list[str], cells: list[list[str]]) -> None:
    read = sheet.read(text.encode())
    assert read.heading == heading
    assert [line.cells for line in read.lines] == cells
    assert not any(line.fault for line in read.lines)


@pytest.mark.parametrize(
    ("bad", "cells", "fault"),
    [
        ('B,"28', ['B,"28', ""], UNCLOSED),
        ('B,"28"x', ['B,"28"x', ""], UNCLOSED),
        ("B", ["B", ""], "This line has 1 cell, the heading 2. Give as many as the heading has."),
        ("B,28,7,8", ["B", "28,7,8"], "This line has 4 cells, the heading 2. Give as many as the heading has."),
        ("B,2\0", ["B", "2\0"], "This line holds a character that is no text (NUL). Take it out."),
        (
            "B," + "2" * 10_001,
            ["B", "2" * 10_001],
            "A cell of this line is longer than 10,000 characters. Shorten it.",
        ),
        ("B," + "2" * 1_000_000, [("B," + "2" * 1_000_000)[:10_000], ""], UNCLOSED),
    ],
)
def test_a_line_that_cannot_be_read_spoils_no_other(bad: str, cells: list[str], fault: str) -> None:
    found = lines(f"ref,divisions\nA,28\n{bad}\nC,64\nD,8\n")
    assert found == [(["A", "28"], None), (cells, fault), (["C", "64"], None), (["D", "8"], None)]


@pytest.mark.parametrize(
    ("data", "status", "sentence"),
    [
        (b"", 422, "The file is empty. Begin with a heading such as ref,divisions."),
        (b"\xef\xbb\xbf\r\n\r\n", 422, "The file is empty. Begin with a heading such as ref,divisions."),
        (b"ref,winkel\xb0\n", 400, "The file is not UTF-8 (byte 11). Save it as CSV in UTF-8."),
        (b"ref,a\0\n", 422, "The heading cannot be read. Give the columns short names."),
        (
            b'ref,"divisions\nA,28\n',
            422,
            "The heading cannot be read. A quote in it is not closed, or text follows it. "
            "Close it, or write it twice where it is meant.",
        ),
        (
            b"ref,divisions\n" + b"A,28\n" * 501,
            422,
            "The file has more than 500 lines under its heading. Split it.",
        ),
        (
            b"ref,divisions\n" + b"A,28\n" * 5000,
            422,
            "The file has more than 500 lines under its heading. Split it.",
        ),
    ],
)
def test_a_file_of_which_no_line_can_be_told_is_refused(data: bytes, status: int, sentence: str) -> None:
    with pytest.raises(Problem) as refused:
        sheet.read(data)
    assert (refused.value.kind.status, refused.value.detail) == (status, sentence)


@pytest.mark.parametrize(
    ("cell", "written"),
    [
        ("=1+1", "'=1+1"), ("+SUM(A1)", "'+SUM(A1)"), ("-A1", "'-A1"), ("@now", "'@now"), ("\t=1", "'\t=1"),
        (" =1", "' =1"), ("\r=1", "'\r=1"), ("＝1", "'＝1"), ("-11+2", "'-11+2"), ("--1", "'--1"),
        ("-11", "-11"), ("+3,5", "+3,5"), ("-0.25", "-0.25"), ("OP30", "OP30"), ("", ""), ("'=1", "'=1"),
        ("a\0b", "a\ufffdb"), ("37°30'", "37°30'"),
    ],
)  # fmt: skip
def test_what_would_run_as_a_formula_comes_out_as_text(cell: str, written: str) -> None:
    assert sheet.harmless(cell) == written


def test_a_cell_made_harmless_says_the_same_when_it_comes_back() -> None:
    for cell in ("=1+1", "-5°", "+5°30'", "-11", "22.5", "@x"):
        assert sheet.bare(sheet.harmless(cell)) == cell


@pytest.mark.parametrize("mark", ["", "\ufeff"])
@pytest.mark.parametrize("parted_by", [",", ";"])
def test_a_sheet_is_written_as_it_was_read(mark: str, parted_by: str) -> None:
    rows = [["A", 'a "b", c; d'], ["B", "two\nlines"], ["=C", "-1"]]
    read = sheet.read(f"{mark}ref{parted_by}note\n".encode())
    text = sheet.write(read, read.heading, rows).decode()
    assert text.startswith(f"{mark}ref{parted_by}note\r\n")
    again = list(csv.reader(io.StringIO(text.removeprefix(mark), newline=""), delimiter=parted_by))
    assert again == [["ref", "note"], *rows[:2], ["'=C", "-1"]]
