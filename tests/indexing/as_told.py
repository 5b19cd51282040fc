"""What a setup tells the operator to do, read field by field; what the service worked out is not believed."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from dividing.indexing.setup import Declined, Setup
from tests.second.head import DividingHead, Train


def setups(answer: tuple[Setup, ...] | Declined) -> tuple[Setup, ...]:
    """The setups of a method; none where it declined."""
    return () if isinstance(answer, Declined) else answer


def first_move(setup: Setup) -> tuple[int, int, int]:
    """Whole turns, spaces and circle of the crank move."""
    move = setup.move
    assert move is not None
    assert move.turns is not None
    assert move.holes is not None
    return (move.turns, move.holes, move.circle)


def second_move(setup: Setup) -> tuple[int, int]:
    """Spaces and circle of plate and crank together."""
    assert setup.second is not None
    assert setup.second.holes is not None
    return (setup.second.holes, setup.second.circle)


def crank(setup: Setup) -> Fraction:
    """Turns of the crank against the plate at one index."""
    turns, holes, circle = first_move(setup)
    return turns + Fraction(holes, circle)


def both_moves(setup: Setup) -> Fraction:
    """Crank turns of the two moves of compound indexing."""
    return crank(setup) + Fraction(*second_move(setup))


def motion(setup: Setup) -> Fraction:
    """Plate turns per spindle turn, worked from the teeth and the way that the setup names."""
    gearing = setup.gearing
    assert gearing is not None
    first, second = gearing.stud or (1, 1)
    size = Fraction(gearing.spindle * first, gearing.worm * second)
    return size if gearing.plate == "with" else -size


def hung(setup: Setup, shelf: Sequence[int], *, even_meshes_with: bool = True) -> Train | None:
    """The train of the setup on the second method's head, its idlers taken from what is left on the shelf."""
    gearing = setup.gearing
    if gearing is None:
        return None
    left = list(shelf)
    for teeth in (gearing.spindle, gearing.worm, *(gearing.stud or ())):
        left.remove(teeth)
    idlers = left[: gearing.idlers]
    assert len(idlers) == gearing.idlers
    return Train(gearing.spindle, gearing.worm, gearing.stud, idlers, even_meshes_with=even_meshes_with)


def indexed_once(head: DividingHead, setup: Setup) -> None:
    """Do on the second method's head what the setup says to do at one index."""
    turns, holes, circle = first_move(setup)
    if setup.method == "direct":
        head.turn_direct(holes, circle)
        return
    head.turn_crank(turns, holes, circle)
    if setup.second is not None:
        head.turn_plate_and_crank(*second_move(setup))
