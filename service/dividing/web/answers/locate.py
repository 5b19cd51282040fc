"""The answer of /v1/locate."""

from __future__ import annotations

from dividing import __version__
from dividing.indexing.angles import decimal_degrees
from dividing.indexing.locating import Candidate
from dividing.indexing.setup import Setup
from dividing.web.schemas.locate import LostCount

from . import Answer
from .positions import row_out
from .setups import setup_out


def located(lost: LostCount, setup: Setup, candidates: tuple[Candidate, ...]) -> Answer:
    """The cuts at which the head can be standing, the likeliest first, and the next move from each."""
    return {
        "setup": setup_out(lost.work, lost.head, setup, None),
        "candidates": [_candidate(lost, each) for each in candidates],
        "service_version": __version__,
    }


def _candidate(lost: LostCount, found: Candidate) -> Answer:
    rational = lost.work.rational
    return {
        **row_out(found.row, lost.head, rational=rational),
        "off_degrees": decimal_degrees(found.off),
        "hole_agrees": found.hole_agrees,
        "next": None if found.next is None else row_out(found.next, lost.head, rational=rational),
    }
