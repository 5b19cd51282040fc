"""The answer of /v1/locate."""

from __future__ import annotations

from dividing import __version__
from dividing.indexing.angles import decimal_degrees
from dividing.indexing.locating import Candidate
from dividing.indexing.setup import Setup
from dividing.web.schemas.locate import LostCount

from . import Answer
from .positions import rows_out
from .setups import setup_out


def located(lost: LostCount, setup: Setup, candidates: tuple[Candidate, ...]) -> Answer:
    """The cuts at which the head can be standing, the likeliest first, and the next move from each."""
    told = [row for found in candidates for row in (found.row, found.next) if row]
    written = rows_out(told, lost.head, rational=lost.work.rational)
    by_cut = {row.cut: out for row, out in zip(told, written, strict=True)}
    return {
        "setup": setup_out(lost.work, lost.head, setup, None),
        "candidates": [_candidate(each, by_cut) for each in candidates],
        "service_version": __version__,
    }


def _candidate(found: Candidate, by_cut: dict[int, Answer]) -> Answer:
    return {
        **by_cut[found.row.cut],
        "off_degrees": decimal_degrees(found.off),
        "hole_agrees": found.hole_agrees,
        "next": None if found.next is None else by_cut[found.next.cut],
    }
