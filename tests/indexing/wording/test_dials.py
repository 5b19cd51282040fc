"""What a dial is set to: to its graduation, its vernier or its plain marks."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.head import Dial, Head
from dividing.indexing.heads import MINUTE, TEN_SECONDS
from dividing.indexing.positions import dial_set
from dividing.indexing.wording.dials import reading_text, reading_told

HALF_SECOND = MINUTE / 120
SEVENTH = Fraction(1, 7)  # 12 turns at 90:1 and 3°25'42.857" of 4°


@pytest.mark.parametrize(
    ("dial", "place", "written"),
    [
        (Dial(graduation=MINUTE), SEVENTH, "3°26'"),
        (Dial(graduation=MINUTE, vernier=TEN_SECONDS), SEVENTH, "3°25'40\""),
        (Dial(graduation=MINUTE, vernier=HALF_SECOND), SEVENTH, "3°25'43.00\""),
        # 6/7 of 100 marks is 85.71.
        (Dial(divisions=100), SEVENTH, "86"),
        (Dial(graduation=60 * MINUTE), SEVENTH, "3°00'"),
        (Dial(graduation=MINUTE), Fraction(1, 90), "0°00'"),
        # 3°59'59" to the minute is 0 of the next turn.
        (Dial(graduation=MINUTE), Fraction(1, 90) - Fraction(1, 1_296_000), "0°00'"),
    ],
)
def test_a_reading_is_what_the_dial_shows(dial: Dial, place: Fraction, written: str) -> None:
    table = Head(ratio=90, plates=(), direct_circles=(), dial=dial)
    assert reading_text(dial_set(place, table), table) == written


@pytest.mark.parametrize(
    ("dial", "place", "told"),
    [
        (Dial(graduation=MINUTE), SEVENTH, "3°26'"),
        # 90/16 = 5 5/8 turns; 5/8 of 100 lines is 62 1/2, and half a line goes up.
        (Dial(divisions=100), Fraction(1, 16), "63 lines"),
        (Dial(divisions=100), Fraction(1, 9000), "1 line"),
        (Dial(divisions=100), Fraction(1, 90), "0 lines"),
    ],
)
def test_lines_without_degrees_are_called_so_in_a_sentence(dial: Dial, place: Fraction, told: str) -> None:
    table = Head(ratio=90, plates=(), direct_circles=(), dial=dial)
    assert reading_told(dial_set(place, table), table) == told


def test_a_reading_that_rounds_up_to_the_whole_dial_is_zero_of_the_next_turn() -> None:
    table = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(graduation=MINUTE))
    one_second_short = Fraction(1, 90) - Fraction(1, 1_296_000)
    found = dial_set(one_second_short, table)
    assert (found.turns, found.reading, found.units) == (1, -Fraction(1, 1_296_000), 0)
