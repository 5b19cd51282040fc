"""Leads shorter than the gears reach through the worm: the train then drives the spindle itself, the worm out of mesh.

The lead of the machine is then the screw's own lead, and the work is indexed by slipping teeth of the gear on the
spindle. Source: A Practical Treatise on Milling and Milling Machines, 1914, p. 63.
"""

from __future__ import annotations

from fractions import Fraction

from .lead_gearing import LeadTrain, Screw, lead_of_machine, nearest_ratios, trains
from .sizes import Lead

LEADS_TRIED = 12


def teeth_per_index(spindle_gear: int, starts: int) -> int | None:
    """Teeth by which to slip the spindle's gear for one start; None when that is no whole number.

    >>> teeth_per_index(72, 9), teeth_per_index(72, 7)
    (8, None)
    """
    return None if spindle_gear % starts else spindle_gear // starts


def by_spindle(target: Fraction, starts: int, screw: Screw, unit: str, gears: tuple[int, ...]) -> Lead | None:
    """The nearest train from the screw to the spindle whose gear there can be slipped for the starts, or None.

    >>> from dividing.indexing.head import TWELVE_GEARS, Screw
    >>> found = by_spindle(Fraction("0.154"), 2, Screw(Fraction(1, 4), "in"), "in", TWELVE_GEARS)
    >>> found["spindle"], found["teeth_per_index"], round(found["achieved"], 4)
    (56, 28, 0.154)
    """
    if all(gear % starts for gear in gears):
        return None
    machine = lead_of_machine(1, screw, unit)
    for ratio in nearest_ratios(gears, target / machine, LEADS_TRIED):
        for train in trains(gears, ratio):
            slipped = teeth_per_index(train.worm, starts)
            if slipped is not None:
                return _plain(train, slipped, ratio * machine, target)
    return None


def _plain(train: LeadTrain, slipped: int, achieved: Fraction, target: Fraction) -> Lead:
    first, second = train.stud or (None, None)
    return {
        "spindle": train.worm,
        "first_stud": first,
        "second_stud": second,
        "screw": train.screw,
        "teeth_per_index": slipped,
        "achieved": float(achieved),
        "error": float(achieved - target),
    }
