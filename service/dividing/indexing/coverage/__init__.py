"""Which numbers of a whole range a head divides exactly, where its gaps are, and what would close most of them.

Solving each number would answer this too, but slowly. Here each method is looked at once: in one turn of the spindle
the pin passes so many places, its *points*, and the method makes N divisions exactly just when N divides them. So a
method is a handful of whole numbers, and a range is gone through by marking their divisors:

- direct: the holes H of a circle of the direct plate;
- plain: R c, for each circle c at the ratio R;
- compound: R L, L the least common multiple of two circles of one plate (`methods.compound` has the proof). Whatever N
  divides R L but no R c always has two moves, each of which is one;
- dial: R d, for d readings in a crank turn;
- differential: c (R - s), for a plate that its train turns s times for each turn of the spindle. Where this is a
  fraction u/v, the pin is back at a hole after v turns of the spindle and has then passed u: so N divides u, and the
  work is done with v spaces a move, which share no factor with N since v shares none with u.
"""

from __future__ import annotations

from .nearing import nearest
from .owning import TOLD_MOST, Addition, Additions, additions
from .sweeping import Coverage, Way, coverage, range_faults

__all__ = [
    "TOLD_MOST",
    "Addition",
    "Additions",
    "Coverage",
    "Way",
    "additions",
    "coverage",
    "nearest",
    "range_faults",
]
