"""A head as the wire has it, every key told, and the answer of /v1/heads."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from dividing import __version__
from dividing.indexing.angles import dms
from dividing.indexing.head import Dial, Head, Idlers, Screw
from dividing.indexing.heads import ReadyHead

from . import Answer


def ready_heads(heads: tuple[ReadyHead, ...]) -> Answer:
    """The answer of /v1/heads."""
    told = [{"id": ready.id, "title": ready.title, "head": head_out(ready.head)} for ready in heads]
    return {"heads": told, "service_version": __version__}


def head_out(head: Head) -> dict[str, Any]:
    """The head in the form in which a request takes it.

    >>> from dividing.indexing.head import Head
    >>> head_out(Head())["direct_circles"], head_out(Head())["dial"]
    ([24], None)
    """
    return {
        "ratio": head.ratio,
        "plates": [list(face) for face in head.plates],
        "mounted_plate": head.mounted_plate,
        "direct_circles": list(head.direct_circles),
        "worm_disengages": head.worm_disengages,
        "change_gears": list(head.change_gears),
        "idlers": _idlers(head.idlers),
        "stop_circles": None if head.stop_circles is None else list(head.stop_circles),
        "screw": _screw(head.screw),
        "dial": _dial(head.dial),
    }


def _idlers(idlers: Idlers) -> dict[str, dict[str, int]]:
    return {
        "simple": {"with": idlers.simple_with, "against": idlers.simple_against},
        "compound": {"with": idlers.compound_with, "against": idlers.compound_against},
    }


def _screw(screw: Screw | None) -> dict[str, Any] | None:
    if screw is None:
        return None
    lead = screw.lead
    return {"lead": lead.numerator if lead.denominator == 1 else float(lead), "unit": screw.unit}


def _dial(dial: Dial | None) -> dict[str, Any] | None:
    if dial is None:
        return None
    if dial.divisions is not None:
        return {"divisions": dial.divisions}
    lines = {"graduation": dial.graduation, "vernier": dial.vernier}
    return {name: exact_text(turns) for name, turns in lines.items() if turns is not None}


def exact_text(turns: Fraction) -> str:
    """An angle that reads back exactly: in degrees, minutes and whole seconds where it has them, else as a fraction."""
    if (turns * 1_296_000).denominator != 1:
        return f"{turns} turn"
    text = dms(turns, 0)
    return text.removesuffix('00"') if text.endswith("'00\"") else text
