"""/v1/solve/batch: many questions in one call, as JSON or as the lines of a routing sheet (CSV)."""

from __future__ import annotations

import logging
from collections.abc import Callable
from typing import Any, TypeVar

from flask import Blueprint, Response, request

from dividing import __version__

from . import batch_costing, costing, routing, sheet
from .body import read_body
from .exchange import answer, asked_in_body, asked_in_query
from .limits import BATCH_BODY_MOST
from .log import fault_of_ours
from .operations import CSV, JSON, OtherForm, in_body
from .problems import WRONG_CONTENT, Problem, document, of
from .query_words import HEAD_WORDS
from .schemas.batch import BATCH_IN, BatchIn, BatchOut, ItemIn
from .schemas.solve import SOLVE_IN, Question
from .solve import solved

blueprint = Blueprint("batch", __name__)
ADDRESS = "/v1/solve/batch"
_SHEET_IN = b"ref,divisions\r\nOP30,28\r\n"
_ITEM_IN = ItemIn()
Asked = TypeVar("Asked")
Found = TypeVar("Found")
_log = logging.getLogger("dividing")


@blueprint.post(ADDRESS)
def solve_batch() -> Response:
    """Questions in the body."""
    if request.mimetype == CSV:
        told = sheet_answered(read_body(request, BATCH_BODY_MOST), asked_in_query(HEAD_WORDS).get("head"))
        return Response(told, content_type=f"{CSV}; charset=utf-8")
    _check_content(request.mimetype)
    request_id = request.environ.get("dividing.request_id", "")
    return answer(batch_answered(asked_in_body(BATCH_BODY_MOST), request_id))


def batch_answered(asked: Any, request_id: str = "") -> dict[str, Any]:
    """An answer or a problem for each item, in the order of the items."""
    items = BATCH_IN.load(asked)["items"]
    costed = [_kept(_costed, item) for item in items]
    asking = any(isinstance(item, dict) and item.get("positions") is True for item in items)
    lighter = batch_costing.WITHOUT_POSITIONS if asking else batch_costing.AS_A_SHEET
    batch_costing.check((seconds for seconds in costed if isinstance(seconds, float)), lighter)
    answers = [
        _told(item, seconds if isinstance(seconds, Problem) else _kept(_solved, item), request_id)
        for item, seconds in zip(items, costed, strict=True)
    ]
    return {"answers": answers, "service_version": __version__}


def sheet_answered(data: bytes, head: dict[str, Any] | None = None) -> bytes:
    """The sheet with its answers after its own columns; `head` serves the lines that name none."""
    read = sheet.read(data)
    columns = routing.columns(read.heading)
    usual: dict[str, Any] = {} if head is None else {"head": head}
    SOLVE_IN.load({"work": {"divisions": 2}, **usual})
    questions = [_line_asked(columns, line, usual) for line in read.lines]
    batch_costing.check(batch_costing.in_line(each) for each in questions if isinstance(each, Question))
    rows = []
    for line, question in zip(read.lines, questions, strict=True):
        found = _kept(routing.solved_line, question) if isinstance(question, Question) else question
        rows.append([*line.cells, *routing.cells(found, decimal="," if read.parted_by == ";" else ".")])
    return sheet.write(read, [*read.heading, *routing.RESULTS], rows)


def _check_content(kind: str) -> None:
    """A batch comes in two forms, so whoever announces neither is told of both."""
    if kind != JSON and not kind.endswith("+json"):
        sentence = f"Send the batch as JSON, with the header Content-Type: {JSON}, or as a sheet, with {CSV}."
        raise Problem(WRONG_CONTENT, sentence)


def _kept(do: Callable[[Asked], Found], asked: Asked) -> Found | Problem:
    """What comes of one item, or its problem, so that it spoils no other."""
    try:
        return do(asked)
    except Exception as error:  # noqa: BLE001  # whatever befalls one item, the others are answered
        problem = of(error)
        if problem.kind.status >= 500:
            _log.error("an item of a batch failed: %s", fault_of_ours(error))
        return problem


def _costed(item: Any) -> float:
    question: Question = _ITEM_IN.load(item)
    costing.check(question)
    return batch_costing.answering(question)


def _solved(item: dict[str, Any]) -> dict[str, Any]:
    return solved({name: value for name, value in item.items() if name != "ref"})


def _line_asked(columns: dict[str, int], line: sheet.Line, usual: dict[str, Any]) -> Question | Problem | str:
    """The question of a line, or what is wrong with it."""
    if line.fault is not None:
        return line.fault
    return _kept(_question, {**usual, **routing.asked(columns, line.cells)})


def _question(asked: dict[str, Any]) -> Question:
    question: Question = SOLVE_IN.load(asked)
    costing.check(question)
    return question


def _told(item: Any, found: dict[str, Any] | Problem, request_id: str) -> dict[str, Any]:
    ref = item.get("ref") if isinstance(item, dict) else None
    told: dict[str, Any] = {"ref": ref if isinstance(ref, str) else None}
    if isinstance(found, Problem):
        problem = document(found, instance=ADDRESS, request_id=request_id)
        return {**told, "status": found.kind.status, "problem": problem}
    return {**told, "status": 200, "answer": found}


def _sheet_out() -> str:
    return sheet_answered(_SHEET_IN).decode()


OPERATIONS = (
    in_body(
        "solveBatch", ADDRESS, "Solve a routing sheet in one call",
        "Each item is a question of /v1/solve with a ref. Answers come in the order of the items, and a bad item "
        "spoils no other: it has a problem where the others have an answer. The same address takes a sheet "
        "(Content-Type: text/csv, UTF-8, cells parted by , or ;) whose columns are words of the query form and "
        "ref, in any order; an empty cell leaves the word out, a list of angles with decimal commas is parted by "
        "semicolons, and a part is read where it is an object of JSON. The head that is named in the query, in words "
        "of the query form (?ratio=60&plates=), serves the lines that name nothing of a head. All columns come out as "
        "they went in, "
        f"followed by {', '.join(routing.RESULTS)}. Text that a spreadsheet would run as a formula comes out with ' "
        "before it.",
        asked=BatchIn, answered=BatchOut, answer=batch_answered,
        example={"items": [{"ref": "OP30", "work": {"divisions": 28}, "limit": 1}]},
        asked_also=(OtherForm(CSV, "A routing sheet in UTF-8: a heading, then a line a question.", _SHEET_IN.decode),),
        answered_also=(OtherForm(CSV, "The sheet with its answers, where a sheet was sent.", _sheet_out),),
    ),
)  # fmt: skip
