"""The published values of data/check_values.json, row by row, each for the test that takes its shape.

A shape is the category, what is given and what is expected; every row of a category is taken by some test.
"""

from __future__ import annotations

import json
import re
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from dividing.indexing.angles import Angle
from dividing.indexing.head import SET_ONE, Head
from dividing.indexing.heads import SET_TWO
from dividing.indexing.methods import plain
from dividing.indexing.setup import Declined
from dividing.indexing.solving import solve
from dividing.indexing.work import Arc, Divisions

VALUES = Path(__file__).parents[1] / "data" / "check_values.json"
Values = dict[str, Any]
ROWS: list[Values] = json.loads(VALUES.read_text(encoding="utf-8"))
SETS = {"set 15-20 / 21-33 / 37-49": SET_ONE, "set 24-43 / 46-66": SET_TWO}
Shape = tuple[str, frozenset[str], frozenset[str]]
_taken: set[Shape] = set()


def shape(row: Values) -> Shape:
    """What kind of row it is."""
    return (row["category"], frozenset(row["given"]), frozenset(row["expected"]))


def the_rows(category: str, given: str, expected: str) -> pytest.MarkDecorator:
    """Every row of one shape, as the `given` and `expected` of a test."""
    wanted = (category, frozenset(given.split()), frozenset(expected.split()))
    _taken.add(wanted)
    found = [
        pytest.param(row["given"], row["expected"], id=f"{row['source'][:30]}, {row['locator']}")
        for row in ROWS
        if shape(row) == wanted
    ]
    assert found, wanted
    return pytest.mark.parametrize(("given", "expected"), found)


def left_over(*categories: str) -> list[Values]:
    """Rows of these categories that no test took."""
    return [row for row in ROWS if row["category"] in categories and shape(row) not in _taken]


def movement(published: str) -> Fraction:
    """A movement as the tables print it, "1 turn + 7/39 - 12/49", in crank turns; minus turns back."""
    parts = re.findall(r"([+-]?) ?(\d+)(?:/(\d+)| turn)", published)
    return sum((Fraction(int(sign + over), int(under or 1)) for sign, over, under in parts), Fraction(0))


def numbers_in(claim: str) -> list[int]:
    """The whole numbers in a sentence."""
    return [int(number) for number in re.findall(r"\d+", claim)]


def has_plain(count: int, head: Head) -> bool:
    """Whether plain indexing makes a number."""
    return not isinstance(plain.exact(Divisions(count), head), Declined)


def is_matched_or_bettered(given: Values, expected: Values) -> None:
    """Our best setup for a printed decimal of a crank turn is no farther off than the move printed for it."""
    head = Head(plates=SETS[given["plates"]])
    wanted = Fraction(given["turn_decimal"]) / head.ratio
    published = abs(movement(expected["movement"]) / head.ratio - wanted)
    assert solve(Arc(Angle(wanted)), head).setups[0].accuracy.worst <= published
