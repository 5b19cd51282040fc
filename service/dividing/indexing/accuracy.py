"""How far off a way of spacing puts the work: five figures, exact, from actual positions whatever the order of cutting.

Even spacing of N divisions with a step error e, k spaces a move: cut i is off by i e. Neighbours on the finished work
were cut q or N - q moves apart, q being the inverse of k modulo N, so their pitch is off by q e or (N - q) e; with
k = 1 the whole closing error N e lands in the last space but one e.

Rounded spacing at G places round the spindle: division k wants k G/N places. With N' = N/gcd(G, N) the fractions met
are all the multiples of 1/N', hence worst (N' // 2)/N' of a place, span (N' - 1)/N', and with p/N' the fraction of G/N
a pitch is either p/N' short or 1 - p/N' long. Nothing is added up, so an error is never more than half a place.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from itertools import pairwise
from math import gcd

from .setup import NO_ERROR, Accuracy, Even, Spacing
from .work import Angles, Arc, Divisions, Work

_ZERO = Fraction(0)


def accuracy(work: Work, spacing: Spacing) -> Accuracy:
    """The errors of `spacing` on `work`, in turns of the spindle.

    >>> str(accuracy(Divisions(7), Even(Fraction(1, 8))).closing)
    '-1/8'
    >>> from dividing.indexing.setup import Rounded
    >>> accuracy(Divisions(3), Rounded(24)).worst
    Fraction(0, 1)
    """
    if isinstance(spacing, Even):
        if isinstance(work, Divisions):
            return _even_divisions(work, spacing.step)
        if isinstance(work, Arc):
            return _even_arc(work, spacing.step)
        raise TypeError("a list of angles has no even spacing")
    if isinstance(work, Divisions):
        return _rounded_divisions(work, spacing.points)
    if isinstance(work, Arc):
        return _rounded_arc(work, spacing.points)
    return _from_positions(work, [rounding_error(place, spacing.points) for place in work.places])


def rounding_error(place: Fraction, points: int) -> Fraction:
    """Nearest of `points` places round the spindle, less the place itself, in turns; halves are taken forward.

    >>> rounding_error(Fraction(1, 7), 24)
    Fraction(-1, 56)
    """
    wanted = place.numerator * points
    short = wanted % place.denominator
    long = short - place.denominator
    return Fraction(-short if -long > short else -long, place.denominator * points)


def keeps_count(work: Work, errors: Accuracy) -> bool:
    """Whether every position lies nearer its own place than another's, so that no division is lost or gained.

    >>> keeps_count(Divisions(7), accuracy(Divisions(7), Even(Fraction(1, 8))))
    False
    """
    return not isinstance(work, Divisions) or 2 * work.count * max(errors.worst, abs(errors.closing)) < 1


def comes_home(work: Work) -> bool:
    """Whether the step after the last cut leads back to the first."""
    return not isinstance(work, Arc) or (work.count * work.step).denominator == 1


def _even_divisions(work: Divisions, step: Fraction) -> Accuracy:
    error = step - work.step
    if error == 0:
        return NO_ERROR
    count, size = work.count, abs(error)
    moves_apart = pow(work.every, -1, count)
    pitch = max(moves_apart, count - moves_apart) if count > 1 else 0
    return Accuracy(error, (count - 1) * size, count * error, pitch * size, (count - 1) * size)


def _even_arc(work: Arc, step: Fraction) -> Accuracy:
    error = step - work.step
    if error == 0 and work.rational:
        return NO_ERROR
    last = work.count - 1
    apart = 1 if work.count * work.step < 1 else _cuts_between_neighbours(*work.step.as_integer_ratio(), work.count)
    closing = (work.count if comes_home(work) else last) * error
    return Accuracy(error if work.rational else None, last * abs(error), closing, apart * abs(error), last * abs(error))


@lru_cache(maxsize=64)
def _cuts_between_neighbours(over: int, under: int, count: int) -> int:
    """The most cuts that lie between two neighbours of an arc that goes all the way round in steps of over/under."""
    places = [cut * over % under for cut in range(count)]
    order = sorted(range(count), key=places.__getitem__)
    return max(map(abs, map(int.__sub__, order, order[1:] + order[:1])))


def _rounded_divisions(work: Divisions, points: int) -> Accuracy:
    shared = gcd(points, work.count)
    parts = work.count // shared
    if parts == 1:
        return NO_ERROR
    over = points // shared % parts
    whole = parts * points
    return Accuracy(
        None,
        Fraction(parts // 2, whole),
        _ZERO,
        Fraction(max(over, parts - over), whole),
        Fraction(parts - 1, whole),
    )


def _rounded_arc(work: Arc, points: int) -> Accuracy:
    """As `rounding_error` for every feature, in whole parts of 1/(q points) for a step of p/q."""
    over, under = work.step.numerator, work.step.denominator
    round_the_work = [cut * over % under for cut in range(work.count)]
    goes_round = work.count * over >= under
    if goes_round:
        round_the_work.sort()
    shorts = [place * points % under for place in round_the_work]
    errors = [-short if 2 * short < under else under - short for short in shorts]
    if not any(errors):
        return NO_ERROR
    beside = [*errors[1:], errors[0] if goes_round else errors[-1]]
    pitch = max(map(abs, map(int.__sub__, beside, errors)))
    whole = under * points
    worst, span = max(map(abs, errors)), max(errors) - min(errors)
    return Accuracy(None, Fraction(worst, whole), _ZERO, Fraction(pitch, whole), Fraction(span, whole))


def _from_positions(work: Angles, errors: Sequence[Fraction]) -> Accuracy:
    if not any(errors):
        return NO_ERROR
    places = work.places
    order = sorted(range(len(places)), key=places.__getitem__)
    neighbours = [*pairwise(order), (order[-1], order[0])]
    pitch = max(abs(errors[there] - errors[here]) for here, there in neighbours)
    worst = max(map(abs, errors))
    return Accuracy(None, worst, _ZERO, pitch, max(errors) - min(errors))
