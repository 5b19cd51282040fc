"""The answer of /v1/plate."""

from __future__ import annotations

from dividing import __version__
from dividing.indexing.angles import seconds
from dividing.indexing.plate_making import words
from dividing.indexing.plate_making.counts import divided_by, head_with, multiples, newly_divided, plate_with, working
from dividing.indexing.plate_making.drilling import Drilling
from dividing.indexing.plate_making.left import Left
from dividing.indexing.setup import Accuracy, Tolerance
from dividing.indexing.tolerances import at_rim
from dividing.indexing.wording.cautions import GENERAL
from dividing.parts.index_plate import Blank
from dividing.web.schemas.plate import PlateAsked

from . import Answer
from .heads import head_out
from .part import size_out
from .positions import rows_out
from .setups import setup_out


def plate_out(asked: PlateAsked, plate: Drilling, left: Left, blank: Blank) -> Answer:
    """The plate with all that is known of it, but its link."""
    head = head_with(asked.holes, asked.head)
    return {
        "holes": asked.holes,
        "on_plate": plate_with(asked.holes, asked.head),
        "needed": _needed(asked),
        "divides": {
            "all": list(divided_by(asked.holes, asked.head.ratio)),
            "new": list(newly_divided(asked.holes, asked.head)),
        },
        "setup": setup_out(plate.work, plate.head, plate.setup, None),
        "schedule": _schedule(plate, blank),
        "error": _error(asked, plate),
        "left_in_work": _left(left),
        "sizes": [size_out(size) for size in blank.sizes],
        "hole_fits": blank.fits,
        "notes": [*words.notes(plate, left), *blank.notes],
        "cautions": [*words.DRILLING, *GENERAL],
        "head": None if head is None else head_out(head),
        "link": None,
        "service_version": __version__,
    }


def _needed(asked: PlateAsked) -> Answer | None:
    if asked.divisions is None:
        return None
    return {
        "divisions": asked.divisions,
        "holes": asked.holes,
        "multiples": list(multiples(asked.holes)),
        "working": working(asked.divisions, asked.head.ratio),
    }


def _schedule(plate: Drilling, blank: Blank) -> list[Answer]:
    rows = rows_out(list(plate.rows), plate.head)
    for row in rows:
        row["x"], row["y"] = blank.points[row["division"]] if blank.points else (None, None)
    return rows


def _error(asked: PlateAsked, plate: Drilling) -> Answer:
    error = plate.setup.accuracy
    return {**_figures(error), "at_circle": at_rim(error, Tolerance(diameter=asked.circle))}


def _left(left: Left) -> Answer:
    move = left.move
    told = move and {name: getattr(move, name) for name in ("turns", "holes", "circle", "sector_holes")}
    return {"divisions": left.divisions, "move": told, "at_most": left.at_most, **_figures(left)}


def _figures(error: Accuracy | Left) -> Answer:
    return {
        "worst_seconds": seconds(error.worst),
        "single_pitch_seconds": seconds(error.single_pitch),
        "total_pitch_seconds": seconds(error.total_pitch),
    }
