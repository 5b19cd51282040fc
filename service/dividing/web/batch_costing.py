"""What a batch costs: each item by itself, then all that are left together, before the first is solved."""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil

from dividing.indexing.work import Angles

from . import costing
from .limits import SECONDS_OF_WORK
from .problems import TOO_MUCH_WORK, Problem
from .schemas.solve import Question

LOADED = 0.000_3
"""Seconds to read an item and to write its answer, beside those of solving it."""
WITHOUT_POSITIONS = ", or ask without positions"
AS_A_SHEET = ", or send it as a sheet (text/csv), which holds no schedules"


def answering(question: Question) -> float:
    """Seconds for one item. Where a circle is sure to serve, no table is written unless it was asked for."""
    if question.positions or not _served_by_a_circle(question):
        return costing.answering(question) + LOADED
    return in_line(question)


def in_line(question: Question) -> float:
    """Seconds for one item of which only the line for a routing sheet is wanted."""
    work = question.work
    # Where gears are owned and no circle serves, trains for blocks of several spaces are looked for too.
    searched = question.head.change_gears and not _served_by_a_circle(question)
    blocks = costing.PER_CUT * work.cuts if searched else 0.0
    return costing.solving(work, question.head, question.methods) + blocks + LOADED


def check(seconds: Iterable[float], lighter: str = "") -> None:
    """Refuse a batch that would take too long, with how to split it or, instead, to ask for less."""
    total = sum(seconds)
    if total > SECONDS_OF_WORK:
        sentence = (
            f"This batch would take about {total:.1f} seconds of work; {SECONDS_OF_WORK:.0f} are given. "
            f"Split it into {ceil(total / SECONDS_OF_WORK * 1.2)} batches{lighter}."
        )
        raise Problem(TOO_MUCH_WORK, sentence)


def _served_by_a_circle(question: Question) -> bool:
    work, head, methods = question.work, question.head, question.methods
    if isinstance(work, Angles) or not work.rational or not (methods is None or "plain" in methods):
        return False
    parts = (work.step * head.ratio).denominator
    return any(circle % parts == 0 for plate in head.plates for circle in plate)
