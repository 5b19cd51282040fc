"""What a sheet of exercises costs, and the marking of answers to it, before the first is drawn."""

from __future__ import annotations

from dividing.indexing.practice import Wanted
from dividing.indexing.work import Divisions

from . import costing
from .limits import SECONDS_OF_WORK
from .problems import TOO_MUCH_WORK, Problem

PER_EXERCISE = 0.012
"""Seconds to draw an exercise and to work out its key: most take a tenth of it, a slip that is well hidden all."""
TYPICAL = Divisions(100)
"""The work of an exercise that is neither the lightest nor the heaviest."""


def check(wanted: Wanted, answers: int = 0) -> None:
    """Refuse a sheet that would take too long, with how to split it."""
    searched = costing.solving(TYPICAL, wanted.head)
    seconds = wanted.count * (PER_EXERCISE + searched) + answers * costing.SOLVED_TO_VERIFY * searched
    if seconds > SECONDS_OF_WORK:
        sentence = (
            f"This sheet would take about {seconds:.1f} seconds of work; {SECONDS_OF_WORK:.0f} are given. "
            "Ask for fewer exercises, or give the head fewer circles and gears."
        )
        raise Problem(TOO_MUCH_WORK, sentence)
