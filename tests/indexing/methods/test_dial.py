"""Setting by the dial: every position at its nearest reading, exact where all fall on one."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import Dial, Head
from dividing.indexing.methods import dial
from dividing.indexing.setup import NO_ERROR, Declined, Rounded, Setup
from dividing.indexing.work import Angles, Arc, Divisions, Work
from tests.indexing.as_told import setups

MINUTES = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(Fraction(1, 21600)))
VERNIER = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(Fraction(1, 21600), Fraction(1, 129600)))
IN_DIVISIONS = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(divisions=100))


@pytest.mark.parametrize(
    ("work", "head", "readings"),
    [
        (Divisions(360), MINUTES, 21_600),
        (Divisions(21_600), MINUTES, 21_600),
        (Divisions(64), VERNIER, 129_600),  # 5°37'30"
        (Divisions(125), IN_DIVISIONS, 9_000),  # 72 divisions
        (Arc(parse_angle("0°07'"), 5), MINUTES, 21_600),
        (Divisions(7, every=3), MINUTES, None),
        (Divisions(7), MINUTES, None),
        (Angles((Angle(Fraction(1, 3)), Angle(Fraction(1, 7)))), MINUTES, None),
        (Angles((Angle(Fraction(1, 3)), Angle(Fraction(1, 8)))), MINUTES, 21_600),
    ],
)
def test_it_is_exact_where_every_position_falls_on_a_reading(work: Work, head: Head, readings: int | None) -> None:
    if readings is None:
        reason = "Not every position falls on a reading of the dial."
        assert dial.exact(work, head) == Declined("dial", reason)
        assert not setups(dial.approximate(work, head))[0].exact
        return
    setup = Setup("dial", Rounded(readings), NO_ERROR, None, every=work.every)
    assert setups(dial.exact(work, head)) == setups(dial.exact(work, head, 1)) == (setup,)


def test_the_nearest_reading_keeps_the_spaces_per_move() -> None:
    (setup,) = setups(dial.approximate(Divisions(7, every=3), MINUTES))
    assert (setup.every, setup.spacing) == (3, Rounded(21_600))
    # Sevenths of 21,600 are off by up to three sevenths of a minute.
    assert setup.accuracy.worst == Fraction(3, 7 * 21_600)


@pytest.mark.parametrize("ask", [dial.exact, dial.approximate])
def test_without_a_dial_it_gives_nothing(ask: object) -> None:
    assert callable(ask)
    assert ask(Divisions(7), Head()) == Declined("dial", "This head has no dial.")
