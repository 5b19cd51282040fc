"""The usual cautions. The machine maker's and the shop's rules, local codes and qualified supervision come first."""

from __future__ import annotations

from ..accuracy import keeps_count
from ..gear_pairs import clears
from ..head import Head
from ..setup import Setup
from ..work import Arc, Work
from .figures import seconds_text

GENERAL = (
    "The machine maker's and the shop's rules, local codes and qualified supervision come first.",
    "Stop the cutter before you index, measure, clear chips or change gears.",
    "Turn the crank one way only; if you pass the hole, go well back and come up to it again. Seat the pin fully.",
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
