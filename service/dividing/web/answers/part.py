"""The part as it goes out: its sizes, each with its source, and what the setup's error comes to on it."""

from __future__ import annotations

from dividing.indexing.angles import seconds
from dividing.indexing.setup import Setup
from dividing.parts import Part, Size
from dividing.parts.carry import carried

from . import Answer


def part_out(part: Part, best: Setup) -> Answer:
    """The part, and the errors of the best setup carried to it."""
    error = best.accuracy
    errors = carried(
        part,
        worst=seconds(error.worst),
        single_pitch=seconds(error.single_pitch),
        total_pitch=seconds(error.total_pitch),
    )
    return {
        "kind": part.kind,
        "unit": part.unit,
        "sizes": [size_out(size) for size in part.sizes],
        "errors": [size_out(size) for size in errors],
        "lead": part.lead,
        "tilt": part.tilt,
        "schedule": [dict(row) for row in part.schedule],
        "drawing": dict(part.drawing),
    }


def size_out(size: Size) -> Answer:
    """One size, to as many decimals as are worth printing."""
    return {
        "name": size.name,
        "value": round(float(size.value), size.places) + 0.0,
        "unit": size.unit,
        "source": size.source,
        "note": size.note,
        "text": size.text,
    }
