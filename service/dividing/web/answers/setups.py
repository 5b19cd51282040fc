"""A setup as it goes out, with its errors and its words."""

from __future__ import annotations

from functools import lru_cache

from orjson import Fragment

from dividing.indexing import wording
from dividing.indexing.angles import seconds
from dividing.indexing.head import Head
from dividing.indexing.positions import dial_set
from dividing.indexing.setup import NO_ERROR, Accuracy, Gearing, Move, SecondMove, Setup, Tolerance
from dividing.indexing.tolerances import at_rim, within
from dividing.indexing.work import Angles, Work

from . import Answer
from .positions import dial_out


def setup_out(
    work: Work, head: Head, setup: Setup, tolerance: Tolerance | None, table: Fragment | None = None
) -> Answer:
    """One way to set the head, told in full."""
    accuracy = setup.accuracy
    return {
        "method": setup.method,
        "exact": accuracy.exact,
        "summary": wording.summary(work, head, setup),
        "move": _move(setup.move),
        "second_move": None if setup.second is None else _second(setup.second, setup.move and setup.move.plate),
        "gearing": None if setup.gearing is None else gearing_out(setup.gearing),
        "dial": _dial_step(work, head) if setup.method == "dial" else None,
        "every": setup.every,
        "error": _NO_ERROR_OUT if accuracy is NO_ERROR and tolerance is None else error_out(accuracy, tolerance),
        "working": wording.working(work, head, setup),
        "instructions": wording.instructions(work, head, setup),
        "cautions": wording.cautions(work, head, setup),
        "positions": table,
    }


def error_out(accuracy: Accuracy, tolerance: Tolerance | None) -> Answer:
    """How far off, in seconds of arc, and at the rim in the user's own unit."""
    if accuracy is NO_ERROR and tolerance is None:
        return _NO_ERROR_OUT
    step = accuracy.step
    return {
        "step": None if step is None else str(step),
        "worst_seconds": seconds(accuracy.worst),
        "closing_seconds": seconds(accuracy.closing),
        "single_pitch_seconds": seconds(accuracy.single_pitch),
        "total_pitch_seconds": seconds(accuracy.total_pitch),
        "at_rim": None if tolerance is None else at_rim(accuracy, tolerance),
        "within_tolerance": None if tolerance is None else within(accuracy, tolerance),
    }


_NO_ERROR_OUT = {
    "step": "0",
    "worst_seconds": 0.0,
    "closing_seconds": 0.0,
    "single_pitch_seconds": 0.0,
    "total_pitch_seconds": 0.0,
    "at_rim": None,
    "within_tolerance": None,
}


@lru_cache(maxsize=4096)
def gearing_out(gearing: Gearing) -> Answer:
    """The train between spindle and plate."""
    return {
        "spindle": gearing.spindle,
        "worm": gearing.worm,
        "stud": None if gearing.stud is None else list(gearing.stud),
        "idlers": gearing.idlers,
        "plate": gearing.plate,
        "train": str(gearing.train),
    }


@lru_cache(maxsize=4096)
def _move(move: Move | None) -> Answer | None:
    if move is None:
        return None
    turns, holes, circle, plate = move
    return {"turns": turns, "holes": holes, "circle": circle, "plate": plate, "sector_holes": move.sector_holes}


def _second(second: SecondMove, plate: int | None) -> Answer:
    return {
        "turns": None if second.holes is None else 0,
        "holes": second.holes,
        "circle": second.circle,
        "plate": plate,
        "sector_holes": second.sector_holes,
    }


def _dial_step(work: Work, head: Head) -> Answer:
    if isinstance(work, Angles):
        unset = "set" if head.dial is None or head.dial.divisions is None else "divisions"
        return {"turns": None, "reading": None, unset: None}
    return dial_out(dial_set(work.step, head), head)
