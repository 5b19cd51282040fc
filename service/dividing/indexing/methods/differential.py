"""Differential indexing: the plate is geared to the spindle, so that it moves while the crank does.

The word is sometimes used loosely for any indexing through the worm; here it means that the plate is geared.
With f crank turns relative to the plate for a step q of the spindle, the plate must make s = R - f/q turns per spindle
turn, with the crank when s > 0 and against it when s < 0. A train g near s turns the spindle f/(R - g) instead of q.
Every f = h/c that keeps the plate within its bound is tried, not only R over a near whole number.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from math import gcd

from ..accuracy import accuracy, keeps_count
from ..bounds import PLATE_MOTION_MOST
from ..gear_pairs import Ratio
from ..geared import Geared, geared_plate, has_table, lowest, rank, trains_of
from ..head import Head
from ..setup import NO_ERROR, Declined, Even, Move, Setup
from ..trains import TrainTable
from ..work import Angles, Divisions, Stepped, Work, blocks_to_try

SETTINGS_MOST = 12
"""Exact settings that are told, best first."""

TRIES_MOST = 10_000
"""Crank moves that are held against the trains for one step before only the largest circles are looked at: a wide step
on many circles has a hundred thousand, and comes within a hair of any angle with far fewer."""

UNEQUAL = Declined("differential", "Unequal angles have no constant move to gear the plate for.")
IRRATIONAL = Declined("differential", "An angle in radians comes out exactly with no train.")
NO_TRAIN = Declined("differential", "No train of the gears you own moves the plate just right for any circle.")
NO_NEAR_TRAIN = Declined(
    "differential", "No train of the gears you own comes near enough to keep the count of divisions."
)

Try = tuple[int, int, int, Ratio]
"""(circle, plate, spaces with whole turns, plate motion wanted in lowest terms)"""


def exact(work: Work, head: Head, most: int = SETTINGS_MOST) -> tuple[Setup, ...] | Declined:
    """Crank moves with the trains that make the step exactly: fewest things to change first, `most` of them.

    >>> from dividing.indexing.head import TWELVE_GEARS
    >>> from dividing.indexing.work import Divisions
    >>> setup = exact(Divisions(127), Head(change_gears=TWELVE_GEARS))[0]
    >>> setup.gearing.stud is None, 40 - 127 * setup.move.crank == setup.gearing.motion
    (True, True)
    """
    if isinstance(work, Angles):
        return UNEQUAL
    no = _unable(head)
    if no or not work.rational:
        return no or IRRATIONAL
    step = work.step
    tabled = step.numerator == 1 and has_table(head)
    found = geared_plate(head).dividing(step.denominator) if tabled else _found(work, head)
    return _exact_setups(work, found, most) if found else NO_TRAIN


def approximate(work: Work, head: Head) -> tuple[Setup, ...] | Declined:
    """The nearest step over one space a move and, where it comes nearer, over several; four gears only where they
    come nearer than two."""
    if isinstance(work, Angles):
        return UNEQUAL
    no = _unable(head)
    if no:
        return no
    found: list[Setup] = []
    for tried in (work, *in_blocks(work, head)):
        found += [setup for setup in _nearest_by_train(tried, head) if keeps_count(work, setup.accuracy)]
    return _improving(found) or NO_NEAR_TRAIN


def in_blocks(work: Work, head: Head) -> Iterator[Divisions]:
    """The same divisions by moves over several spaces, those at which the crank moves one space of a circle at least.

    >>> from dividing.indexing.work import Divisions
    >>> [blocks.every for blocks in in_blocks(Divisions(20_000), Head())]
    [9, 11]
    """
    if not isinstance(work, Angles):
        for every in blocks_to_try(work):
            if _most_spaces(head) * every >= work.cuts:
                yield Divisions(work.cuts, every)


def _most_spaces(head: Head) -> int:
    """Spaces of the largest circle that the crank goes at most in one spindle turn, with the plate against it."""
    return (head.ratio + PLATE_MOTION_MOST) * head.largest_circle


def _circles_tried(work: Stepped, head: Head) -> tuple[tuple[int, int], ...]:
    """The circles on which the nearest move is looked for: all, or the largest of them that keep to `TRIES_MOST`."""
    step = work.step
    room = TRIES_MOST * step.denominator // (2 * PLATE_MOTION_MOST * step.numerator)
    if head.holes_in_all <= room:
        return head.circles
    kept: set[int] = set()
    for circle in sorted((circle for circle, _ in head.circles), reverse=True):
        room -= circle
        if kept and room < 0:
            break
        kept.add(circle)
    return tuple(pair for pair in head.circles if pair[0] in kept)


def tries(work: Stepped, head: Head) -> Iterator[Try]:
    """Every h/c that keeps the plate's motion s = R - f/q within its bound, with that s: on every circle, or for a wide
    step on a head of many circles on the largest, `TRIES_MOST` in all.

    Whole turns are tried once, on the first circle, since any circle serves for them.
    """
    step, ratio, circles = work.step, head.ratio, _circles_tried(work, head)
    upper, first_circle = step.denominator, circles[0][0]
    if _most_spaces(head) * step.numerator < upper:
        return
    for circle, plate in circles:
        lower = circle * step.numerator
        least = max(-((PLATE_MOTION_MOST - ratio) * lower // upper), 1)
        for holes in range(least, (ratio + PLATE_MOTION_MOST) * lower // upper + 1):
            if holes % circle or circle == first_circle:
                motion = ratio * lower - holes * upper
                shared = gcd(motion, lower)
                yield circle, plate, holes, (motion // shared, lower // shared)


def _found(work: Stepped, head: Head) -> list[Geared]:
    """The tries whose plate motion some train makes, best first. The hot loop of heads without a table: it goes
    through the spaces of one circle with the motion falling by one step at each, and builds nothing for a motion that
    no train makes."""
    table, step = trains_of(head), work.step
    upper, first_circle = step.denominator, head.circles[0][0]
    found: list[Geared] = []
    if _most_spaces(head) * step.numerator < upper:
        return found
    spaces, slowest, fastest = step.numerator, head.ratio - PLATE_MOTION_MOST, head.ratio + PLATE_MOTION_MOST
    for circle, plate in head.circles:
        lower = circle * spaces
        least = max(-(-slowest * lower // upper), 1)
        most = fastest * lower // upper
        if least > most:
            continue
        known = table.reached.get(lower) or table.motions_over(lower)
        motion = head.ratio * lower - least * upper
        for holes in range(least, most + 1):
            if abs(motion) in known and (holes % circle or circle == first_circle):
                drivers, driven = known[abs(motion)]
                gearing = table.gearing(drivers if motion > 0 else -drivers, driven)
                if gearing:
                    place = rank(gearing, circle, plate, head)
                    found.append(Geared(place, circle, plate, holes * upper, lowest(holes, circle), gearing))
            motion -= upper
    return sorted(found)


def _unable(head: Head) -> Declined | None:
    if not head.plates:
        return Declined("differential", "This head has no index plates to gear.")
    if len(head.change_gears) < 2:
        return Declined("differential", "No change gears are given for this head.")
    return None


def _exact_setups(work: Stepped, found: list[Geared], most: int) -> tuple[Setup, ...]:
    """Each crank move once, on the circle where it is best set; whole turns on the first circle, since any serves."""
    told: dict[Ratio, Setup] = {}
    spacing, upper, most = Even(work.step), work.step.denominator, min(most, SETTINGS_MOST)
    for _, circle, plate, spaces, crank, gearing in found:
        if crank not in told:
            turns, holes = divmod(spaces // upper, circle)
            move = Move(turns, holes, circle, plate)
            told[crank] = Setup("differential", spacing, NO_ERROR, move, None, gearing, work.every)
            if len(told) >= most:
                break
    return tuple(told.values())


def _nearest_by_train(work: Stepped, head: Head) -> list[Setup]:
    table, wanted = trains_of(head), list(tries(work, head))
    found = (_nearest(work, head, table, wanted, kind) for kind in (2, 4))
    return [setup for setup in found if setup]


def _improving(setups: list[Setup]) -> tuple[Setup, ...]:
    """The setups in their order, each only where it comes nearer than all before it; the nearest first."""
    kept: list[Setup] = []
    for setup in setups:
        if not kept or setup.accuracy.worst < kept[-1].accuracy.worst:
            kept.append(setup)
    return tuple(kept[::-1])


def _nearest(work: Stepped, head: Head, table: TrainTable, wanted: list[Try], kind: int) -> Setup | None:
    """The try and train with the least error q |g - s|/(R - g) of one step.

    Since R - g is at most R + 6, a train farther than `reach` from s cannot come nearer than the best so far.
    """
    best: tuple[Try, Ratio] | None = None
    least, over, reach = 1, 0, 2.0 * PLATE_MOTION_MOST
    rising = table.rising(kind)
    decimals = rising.decimals
    for tried in wanted:
        motion, under = tried[3]
        sought = motion / under
        place = bisect_left(decimals, sought)
        for near in range(place - 1 if place else 0, min(place + 1, len(decimals))):
            if abs(decimals[near] - sought) > reach:
                continue
            drivers, driven = rising.exact(near)
            room = head.ratio * driven - drivers
            if room <= 0:
                continue
            miss, scale = abs(drivers * under - motion * driven), under * room
            if best is None or miss * over < least * scale:
                best, least, over = (tried, (drivers, driven)), miss, scale
                reach = least * (head.ratio + PLATE_MOTION_MOST) / over * 1.001 + 1e-12
    return best and _approximate_setup(work, head, table, *best)


def _approximate_setup(work: Stepped, head: Head, table: TrainTable, tried: Try, motion: Ratio) -> Setup:
    circle, plate, holes, _ = tried
    move = Move(*divmod(holes, circle), circle, plate)
    gearing = table.gearing(*motion)
    assert gearing is not None
    spacing = Even(move.crank / (head.ratio - gearing.motion))
    return Setup("differential", spacing, accuracy(work, spacing), move, None, gearing, work.every)
