"""Practice for a class: sheets of exercises that follow from a seed, with their keys, and the marking of answers."""

from .exercise import (
    COUNT_MOST,
    COUNT_USUAL,
    KIND_NAMES,
    LEVELS,
    METHOD_OF,
    SEED_MOST,
    ArmsClaim,
    Exercise,
    Key,
    KindName,
    PlateClaim,
    Task,
)
from .marking import Mark, Response, mark, mark_all
from .sheets import LeftOut, Sheet, Wanted, sheet
from .summing import Summary, summary

__all__ = [
    "COUNT_MOST",
    "COUNT_USUAL",
    "KIND_NAMES",
    "LEVELS",
    "METHOD_OF",
    "SEED_MOST",
    "ArmsClaim",
    "Exercise",
    "Key",
    "KindName",
    "LeftOut",
    "Mark",
    "PlateClaim",
    "Response",
    "Sheet",
    "Summary",
    "Task",
    "Wanted",
    "mark",
    "mark_all",
    "sheet",
    "summary",
]
