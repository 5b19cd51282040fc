"""Errors read off a plain list of where every cut really lies, whatever the order of cutting.

All errors are achieved minus ideal, in turns of the spindle; ``seconds`` turns one into seconds of arc.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

SECONDS_IN_A_TURN = 360 * 60 * 60


class Errors(NamedTuple):
    """The four figures of a finished piece of work; ``closing`` is known only where the work closes."""

    worst: Fraction
    single_pitch: Fraction
    total_pitch: Fraction
    closing: Fraction | None


def seconds(turns: Fraction) -> float:
    """Seconds of arc in so many turns."""
    return float(turns * SECONDS_IN_A_TURN)


def on_finished_work(
    actual: Sequence[Fraction], ideal: Sequence[Fraction], *, closes: bool, home: Fraction | None = None
) -> Errors:
    """The errors of cuts at ``actual`` that should lie at ``ideal`` (both in the order of cutting).

    ``closes`` says that the last division lies next to the first; ``home`` is where the spindle stands
    after one more move, which should bring it to the start.
    """
    round_the_work = sorted((wanted % 1, made - wanted) for made, wanted in zip(actual, ideal, strict=True))
    errors = [error for _, error in round_the_work]
    pitches = [after - before for before, after in pairwise(errors)]
    if closes and len(errors) > 1:
        pitches.append(errors[0] - errors[-1])
    closing = None
    if home is not None:
        closing = min((home - laps for laps in (home // 1, home // 1 + 1)), key=abs)
    return Errors(
        worst=max(abs(error) for error in errors),
        single_pitch=max((abs(pitch) for pitch in pitches), default=Fraction(0)),
        total_pitch=max(errors) - min(errors),
        closing=closing,
    )


def of_equal_moves(move: Fraction, divisions: int, spaces: int = 1) -> Errors:
    """The errors when every index moves the spindle by ``move`` turns and should pass ``spaces`` divisions.

    106 divisions by five spaces at a time, each move 3017/1599 turns of a 40 to 1 crank:

    >>> five = of_equal_moves(Fraction(3017, 1599) / 40, 106, 5)
    >>> round(seconds(five.closing), 1), round(seconds(five.single_pitch), 1)
    (40.5, 32.5)
    """
    actual = [cut * move for cut in range(divisions)]
    ideal = [Fraction(cut * spaces, divisions) for cut in range(divisions)]
    return on_finished_work(actual, ideal, closes=True, home=divisions * move)
