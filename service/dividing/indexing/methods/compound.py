"""Compound indexing: crank a on circle A, then plate and crank together b on circle B of the same face.

What the two circles can make is every multiple of 1/L, L = lcm(A, B), so a pair is decided in one step: the step m
comes out exactly when m L is whole, and otherwise nearest at the whole number n nearest to m L. With g = gcd(A, B)

    n/L = a/A + b/B   <=>   n = a (B/g) + b (A/g)   =>   b = n (A/g)^-1  modulo B/g,

which leaves two small values of b, one either way, and a follows. Some numbers come nearest by a move over several
spaces, so a few values of `every` are tried unasked.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from math import gcd

from ..accuracy import accuracy, keeps_count
from ..bounds import SETUPS_MOST
from ..head import Head
from ..setup import NO_ERROR, Declined, Even, Move, Rounded, SecondMove, Setup
from ..work import Angles, Divisions, Stepped, Work, blocks_to_try
from .plain import common_denominator

_FINE = 64
"""Binary places to which lengths of moves are compared: two that differ at all differ far before."""
NO_TWO_CIRCLES = Declined("compound", "No two circles of one plate make this step exactly.")
TOO_FINE = Declined("compound", "No two moves come near enough to keep the count of divisions.")
"""A step that is not exact is off by at least 1/(N L R) of a turn, so over N moves by 1/(L R). That must stay below
half a division, 1/(2 N), for the count to be kept: never when L R is 2 N or less, whichever grid L is taken."""
Pair = tuple[int, int, int, int]
"""(lcm, first circle, second circle, plate)"""
Moves = tuple[int, int]
"""(spaces on the first circle, whole turns included; spaces on the second, negative the opposite way)"""


def exact(work: Work, head: Head, most: int = SETUPS_MOST) -> tuple[Setup, ...] | Declined:
    """Pairs of moves that make the step exactly: on the mounted plate first, then the smaller moves.

    >>> from dividing.indexing.work import Divisions
    >>> setup = exact(Divisions(51), Head())[0]
    >>> setup.move.holes, setup.move.circle, setup.second.holes, setup.second.circle
    (12, 18, 2, 17)
    """
    no = _unable(work, head)
    if no:
        return no
    wanted = common_denominator(work, head.ratio)
    if head.all_pairs_together % wanted:
        return NO_TWO_CIRCLES
    fitting = [pair for points, pairs in head.pairs_by_lcm.items() if points % wanted == 0 for pair in pairs]
    if isinstance(work, Angles):
        found = tuple(_list_setup(head, pair) for pair in fitting[:1])
    else:
        found = _exact_setups(work, head, fitting, most)
    return found or NO_TWO_CIRCLES


def approximate(work: Work, head: Head) -> tuple[Setup, ...] | Declined:
    """The nearest step that two moves can make, over one space and over several, whichever add up to less."""
    no = _unable(work, head)
    if no:
        return no
    if isinstance(work, Angles):
        return Declined("compound", "No two circles of one plate make all these angles exactly.")
    if isinstance(work, Divisions) and max(head.pairs_by_lcm) * head.ratio <= 2 * work.count:
        return TOO_FINE
    blocks = (1, *blocks_to_try(work))
    found = [_nearest(work, tried, head) for tried in (blocks[:1], blocks) if tried]
    setups = {setup.every: setup for setup in found if setup and keeps_count(work, setup.accuracy)}
    return tuple(setups.values()) or TOO_FINE


def moves_of(pair: Pair, points: int) -> Moves | None:
    """Two moves that together make `points`/lcm of a crank turn: the smallest, unless one circle makes it alone, when
    any will do. None when no two make it.

    >>> moves_of((255, 15, 17, 1), 200)
    (10, 2)
    """
    _, first, second, _ = pair
    first_part, second_part, inverse = _parts(first, second)
    base = points * inverse % second_part
    # Forward first: two moves forward are together as long as the step, and a move back makes them longer.
    for spaces in (base, base + second_part, base - second_part, base - 2 * second_part):
        rest = (points - spaces * first_part) // second_part
        if spaces % second and rest % first and rest > 0 and abs(spaces) < second:
            return rest, spaces
    return None


@lru_cache(maxsize=1024)
def _parts(first: int, second: int) -> tuple[int, int, int]:
    """Two circles without what they share, and the inverse of the first of them modulo the second."""
    shared = gcd(first, second)
    first_part, second_part = first // shared, second // shared
    return first_part, second_part, pow(first_part, -1, second_part)


def _unable(work: Work, head: Head) -> Declined | None:
    if not work.rational and isinstance(work, Angles):
        return Declined("compound", "Angles in radians come out exactly on no circles.")
    if head.pairs:
        return None
    if any(len(face) > 1 for face in head.plates):
        return Declined("compound", "The stop pin reaches no circle beside another on its plate.")
    return Declined("compound", "No plate of this head has two circles.")


def _exact_setups(work: Stepped, head: Head, pairs: Iterable[Pair], most: int) -> tuple[Setup, ...]:
    if not work.rational:
        return ()
    over, under = head.ratio * work.step.numerator, work.step.denominator
    found: list[tuple[bool, int, int, int, Pair, Moves]] = []
    for pair in pairs:
        points, first, second, plate = pair
        moves = moves_of(pair, over * points // under)
        if moves:
            back = abs(moves[1])
            length = ((moves[0] * second + back * first) << _FINE) // (first * second)
            found.append((plate != head.mounted_plate, length, (back << _FINE) // second, len(found), pair, moves))
    found.sort()
    spacing, seen = Even(work.step), set()
    setups: list[Setup] = []
    for *_, pair, moves in found:
        if len(setups) == most:
            break
        if (circles := frozenset(pair[1:3])) not in seen:
            seen.add(circles)
            setups.append(Setup("compound", spacing, NO_ERROR, *_moves(pair, moves), every=work.every))
    return tuple(setups)


def _moves(pair: Pair, moves: Moves) -> tuple[Move, SecondMove]:
    _, first, second, plate = pair
    turns, holes = divmod(moves[0], first)
    return Move(turns, holes, first, plate), SecondMove(moves[1], second)


def _list_setup(head: Head, pair: Pair) -> Setup:
    points, first, second, plate = pair
    return Setup(
        "compound",
        Rounded(head.ratio * points),
        NO_ERROR,
        Move(None, None, first, plate),
        SecondMove(None, second),
    )


def _nearest(work: Stepped, blocks: Sequence[int], head: Head) -> Setup | None:
    """The step nearest to one of the blocks, over all pairs; the error of one move decides, since all make N moves."""
    crank = head.ratio * work.step
    found = _nearest_moves(crank.numerator, crank.denominator, blocks, head)
    if found is None:
        return None
    block, pair, moves = found
    if block > 1:
        work = Divisions(work.count, block)
    first, second = _moves(pair, moves)
    spacing = Even((first.crank + second.crank) / head.ratio)
    return Setup("compound", spacing, accuracy(work, spacing), first, second, every=work.every)


def _nearest_moves(over: int, under: int, blocks: Sequence[int], head: Head) -> tuple[int, Pair, Moves] | None:
    """The block, pair and moves whose miss of block x over/under crank turns is the least. A miss is counted in parts
    of the pair's grid, `short` of `under`; `least` of `its_grid` is the best so far."""
    best: tuple[int, Pair, Moves] | None = None
    least, its_grid = 1, 0
    for grid, pairs in head.pairs_by_lcm.items():
        step = over * grid
        for block in blocks:
            short = block * step % under
            if (short if 2 * short < under else under - short) * its_grid >= least * grid and its_grid:
                continue
            below = block * step // under
            for points, miss in ((below, short), (below + 1, under - short)):
                if (not its_grid or miss * its_grid < least * grid) and (found := _first_moves(pairs, points)):
                    best, least, its_grid = (block, *found), miss, grid
    return best


def _first_moves(pairs: tuple[Pair, ...], points: int) -> tuple[Pair, Moves] | None:
    """The first pair of a grid that makes `points` of it with two moves; both neighbours of a step are tried, since
    the nearer may be one that a single circle makes."""
    found = ((pair, moves_of(pair, points)) for pair in pairs) if points > 0 else ()
    return next(((pair, moves) for pair, moves in found if moves), None)
