"""The pieces of a setup: moves, trains, and whether all comes out exactly."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.methods import METHODS
from dividing.indexing.setup import METHOD_NAMES, NO_ERROR, Accuracy, Even, Gearing, Move, SecondMove, Setup

NOTHING = Fraction(0)


@pytest.mark.parametrize(
    ("move", "arms", "crank"),
    [
        (Move(1, 21, 49, 3), 22, "10/7"),
        (Move(0, 1, 20, 1), 2, "1/20"),
        (Move(2, 0, 20, 1), None, "2"),
        (Move(None, None, 49, 3), None, "0"),
        (SecondMove(2, 17), 3, "2/17"),
        (SecondMove(-11, 33), 12, "-1/3"),
        (SecondMove(None, 33), None, "0"),
    ],
)
def test_the_arms_embrace_one_hole_more_than_the_spaces(
    move: Move | SecondMove, arms: int | None, crank: str
) -> None:
    assert (move.sector_holes, move.crank) == (arms, Fraction(crank))


@pytest.mark.parametrize(
    ("gearing", "train", "motion", "gears"),
    [
        (Gearing(48, 28, None, 2, "against"), "12/7", "-12/7", (48, 28)),
        (Gearing(24, 72, None, 1, "with"), "1/3", "1/3", (24, 72)),
        # 72 x 64 = 4608 and 48 x 24 = 1152.
        (Gearing(72, 48, (64, 24), 1, "against"), "4", "-4", (72, 64, 24, 48)),
        (Gearing(72, 48, (64, 24), 0, "with"), "4", "4", (72, 64, 24, 48)),
    ],
)
def test_a_train_is_drivers_over_driven(
    gearing: Gearing, train: str, motion: str, gears: tuple[int, ...]
) -> None:
    assert (gearing.train, gearing.motion, gearing.gears) == (Fraction(train), Fraction(motion), gears)


@pytest.mark.parametrize(
    ("accuracy", "exact"),
    [
        (NO_ERROR, True),
        (Accuracy(None, NOTHING, NOTHING, NOTHING, NOTHING), True),
        (Accuracy(None, Fraction(1, 10**40), NOTHING, NOTHING, NOTHING), False),
        # One cut alone is never off, yet the way home may be.
        (Accuracy(Fraction(1, 9), NOTHING, Fraction(1, 9), NOTHING, NOTHING), False),
    ],
)
def test_exact_means_no_error_at_any_position_nor_on_the_way_home(accuracy: Accuracy, exact: bool) -> None:
    assert Setup("plain", Even(Fraction(1, 9)), accuracy, None).exact is exact


def test_the_methods_are_named_in_the_order_of_choosing() -> None:
    assert METHOD_NAMES == tuple(METHODS) == ("direct", "plain", "differential", "compound", "dial", "nearest")
