"""The columns of a routing sheet: read into questions, and answers written into cells."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from dividing.indexing.solving import solve

from .answers.setups import setup_out
from .problems import WRONG_FIELD, Problem, pointer
from .query_words import SOLVE_WORDS, WORK_WORDS
from .schemas.part import barred
from .schemas.solve import Question
from .sheet import bare

RESULTS = (
    "status", "method", "exact", "turns", "holes", "circle", "plate", "sector_holes", "second_holes", "second_circle",
    "spindle", "worm", "first_stud", "second_stud", "idlers", "worst_seconds", "summary", "problem",
)  # fmt: skip
_LENGTHS = ("at_rim", "diameter")
_DECIMAL_COMMA = re.compile(r"-?[0-9]+,[0-9]+", re.ASCII)
_POINTERS = {pointer(word.path): name for name, word in SOLVE_WORDS.items()}


def columns(heading: Sequence[str]) -> dict[str, int]:
    """Where each word of the query form stands; other columns are the office's own."""
    found: dict[str, int] = {}
    for at, title in enumerate(heading):
        name = title.strip().lower()
        if name in found:
            raise Problem(WRONG_FIELD, f'The column "{name}" stands twice in the heading. Keep one.', [])
        if name in SOLVE_WORDS:
            found[name] = at
    if not found.keys() & WORK_WORDS.keys():
        sentence = "The heading has no column that says what to divide: divisions, angle, angles or part."
        raise Problem(WRONG_FIELD, sentence, [])
    return found


def asked(found: dict[str, int], cells: Sequence[str]) -> dict[str, Any]:
    """The question of a line in the body's form; empty cells ask nothing."""
    body: dict[str, Any] = {"work": {}}
    for name, at in found.items():
        text = bare(cells[at])
        # Offices call the thing itself "part" too: only an object of JSON is meant for the service.
        if text and (name != "part" or text.startswith("{")):
            *above, last = SOLVE_WORDS[name].path
            branch = body
            for key in above:
                branch = branch.setdefault(key, {})
            branch[last] = SOLVE_WORDS[name].read(_with_points(name, text))
    return body


def solved_line(question: Question) -> dict[str, Any]:
    """The best setup, without its table: that does not fit a line."""
    solution = solve(
        question.work, question.head, methods=question.methods, limit=1, barred=barred(question.part)
    )  # fmt: skip
    return setup_out(solution.work, question.head, solution.setups[0], question.tolerance, None)


def cells(found: dict[str, Any] | Problem | str, *, decimal: str) -> list[str]:
    """The cells of `RESULTS` for a setup, a problem, or what is wrong with the line as a line."""
    if isinstance(found, str):
        told: dict[str, Any] = {"status": 422, "problem": found}
    elif isinstance(found, Problem):
        told = {"status": found.kind.status, "problem": _sentences(found)}
    else:
        told = _setup_cells(found)
        told["worst_seconds"] = str(told["worst_seconds"]).replace(".", decimal)
    return [_text(told.get(name)) for name in RESULTS]


def _setup_cells(setup: dict[str, Any]) -> dict[str, Any]:
    move = setup["move"] or setup["dial"] or {}
    second, gearing = setup["second_move"] or {}, setup["gearing"] or {}
    first_stud, second_stud = gearing.get("stud") or (None, None)
    return {
        "status": 200,
        **{name: setup[name] for name in ("method", "exact", "summary")},
        **{name: move.get(name) for name in ("turns", "holes", "circle", "plate", "sector_holes")},
        "second_holes": second.get("holes"),
        "second_circle": second.get("circle"),
        **{name: gearing.get(name) for name in ("spindle", "worm", "idlers")},
        "first_stud": first_stud,
        "second_stud": second_stud,
        "worst_seconds": setup["error"]["worst_seconds"],
    }


def _sentences(problem: Problem) -> str:
    """Each wrong cell with its column."""
    told = []
    for error in problem.errors or ():
        name = _column(error["pointer"])
        told.append(f"{name}: {error['detail']}" if name else error["detail"])
    return " ".join(told) or problem.detail


def _column(place: str) -> str:
    """The column in which a field stands, with the names below it; a list is told as a whole."""
    above, below = place, ""
    while above and above not in _POINTERS:
        above, _, key = above.rpartition("/")
        below = "" if key.isdigit() else f".{key}{below}"
    return _POINTERS[above] + below if above else ""


def _with_points(name: str, text: str) -> str:
    """Decimal commas as points where a length is meant. In a count a comma may part thousands, so it is refused."""
    if name in _LENGTHS and _DECIMAL_COMMA.fullmatch(text):
        return text.replace(",", ".")
    if name == "angles" and ";" in text:
        return ",".join(each.replace(",", ".") for each in text.split(";"))
    return text


def _text(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    return "" if value is None else str(value)
