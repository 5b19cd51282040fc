"""The usual cautions. The machine maker's and the shop's rules, local codes and qualified supervision come first."""

from __future__ import annotations

from fractions import Fraction

from ..accuracy import keeps_count
from ..gear_pairs import clears
from ..head import Head
from ..setup import Setup
from ..work import Angles, Arc, Work
from .figures import seconds_text

GENERAL = (
    "The machine maker's and the shop's rules, local codes and qualified supervision come first.",
    "Stop the cutter before you index, measure, clear chips or change gears.",
    "Turn the crank one way only; if you pass the hole or the reading, go well back and come up to it again. "
    "A pin must seat fully.",
    "Unclamp the spindle to index and clamp it to cut.",
    "Go round once with a light trial pass or scribed marks, and count, before you cut to depth.",
)
"""Common practice; they belong to every answer."""

GUARD = "Guard the gear train: it turns with the crank."
FIT = "These gears may not clear each other's shafts on every bracket: try the fit before you set up the work."
DIFFERENTIAL_MEANS = (
    "Differential here means that the plate is geared to the spindle; without the gears the same crank move "
    "divides wrongly."
)
BOTH_MOVES = "Two moves for every cut: leave one out, or swap them, and the work is spoiled."
SPOILED = "The same hole count without the schedule drifts: follow the schedule row by row."
TOO_COARSE = (
    "This head is too coarse for the work: some positions fall nearer to their neighbour's place than to their own."
)
WORM_OUT = "With the worm out of mesh nothing holds the spindle but the direct pin and the clamp."


def cautions(work: Work, head: Head, setup: Setup) -> list[str]:
    """What to watch with this setup, beside the cautions that go with every answer.

    >>> from dividing.indexing.solving import solve
    >>> from dividing.indexing.work import Divisions
    >>> found = solve(Divisions(20), Head())
    >>> cautions(found.work, found.head, found.setups[0])
    []
    """
    found = list(_BY_METHOD.get(setup.method, ()))
    if setup.method == "direct" and head.worm_disengages:
        found.append(WORM_OUT)
    gearing = setup.gearing
    if gearing and gearing.stud and not clears((gearing.spindle, gearing.worm, *gearing.stud)):
        found.append(FIT)
    if not setup.accuracy.exact:
        found.append(_not_exact(work, setup))
        if not keeps_count(work, setup.accuracy):
            found.append(TOO_COARSE)
    return found


def same_place(work: Work) -> list[str]:
    """A caution where a cut falls on one that is made already.

    >>> from dividing.indexing.angles import parse_angle
    >>> same_place(Arc(parse_angle("90"), 5))
    ['Cut 5 falls on the place of cut 1: leave it out unless that is meant.']
    """
    again = _made_already(work)
    if again is None:
        return []
    cut, first = again
    return [f"Cut {cut:,} falls on the place of cut {first:,}: leave it out unless that is meant."]


def _made_already(work: Work) -> tuple[int, int] | None:
    """The first cut whose place another has, and that other, both counted from 1."""
    if isinstance(work, Arc):
        # So many moves are whole turns of the spindle, and no fewer are.
        moves = work.step.denominator
        return (moves + 1, 1) if work.rational and work.cuts > moves else None
    made: dict[Fraction, int] = {}
    for cut, place in enumerate(work.places if isinstance(work, Angles) else (), 1):
        if place in made:
            return cut, made[place]
        made[place] = cut
    return None


_BY_METHOD: dict[str, tuple[str, ...]] = {
    "compound": (BOTH_MOVES,),
    "differential": (DIFFERENTIAL_MEANS, GUARD),
    "nearest": (SPOILED,),
}


def _not_exact(work: Work, setup: Setup) -> str:
    accuracy = setup.accuracy
    text = f"Not exact: a position is up to {seconds_text(accuracy.worst)} off"
    if accuracy.closing and isinstance(work, Arc):
        return f"{text}, since the error of one move adds up from cut to cut."
    if accuracy.closing:
        return f"{text}, and the last space closes {seconds_text(accuracy.closing)} {_way(setup)}."
    return f"{text}; the errors do not add up."


def _way(setup: Setup) -> str:
    return "short of full circle" if setup.accuracy.closing < 0 else "past full circle"
