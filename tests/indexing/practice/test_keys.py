"""Keys made of setups: each by its method, the best that serves."""

from __future__ import annotations

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import Head
from dividing.indexing.methods import METHODS
from dividing.indexing.practice import Key, Task
from dividing.indexing.practice.keys import key_by, key_of, with_hint
from dividing.indexing.setup import Declined
from dividing.indexing.verifying import Claim
from dividing.indexing.work import Divisions
from tests.indexing.practice.classes import HEADS

PLAIN = Task("plain", 1, Divisions(28))
ON_49 = Key(
    Claim("plain", 1, 21, 49),
    "Plate 3, circle 49: 1 turn and 21 spaces, arms over 22 holes",
    ("40/28 = 1 3/7", "3/7 = 21/49"),
)
ON_21 = Key(
    Claim("plain", 1, 9, 21),
    "Plate 2, circle 21: 1 turn and 9 spaces, arms over 10 holes",
    ("40/28 = 1 3/7", "3/7 = 9/21"),
)


def test_the_best_setting_is_the_key() -> None:
    assert key_by(PLAIN, Head(), "plain") == ON_49
    assert with_hint(ON_49, "Plate 3 serves.") == Key(*_parts(ON_49), hint="Plate 3 serves.")


def _parts(key: Key) -> tuple[Claim, str, tuple[str, ...]]:
    assert isinstance(key.claim, Claim)
    return key.claim, key.summary, key.working


def test_the_best_setting_that_serves_is_the_key() -> None:
    assert key_by(PLAIN, Head(), "plain", serves=lambda one: bool(one.move and one.move.circle == 21)) == ON_21
    assert key_by(PLAIN, Head(), "plain", serves=lambda _: False) is None


@pytest.mark.parametrize(
    ("count", "none", "key"),
    [
        (51, True, Key(None, "No circle serves.", ("No circle on these plates is a multiple of 51.",),
                       reason="No circle on these plates is a multiple of 51.")),
        (51, False, None),
        (28, True, None),
    ],
)  # fmt: skip
def test_a_reason_is_the_key_where_none_is_meant_and_nowhere_else(count: int, none: bool, key: Key | None) -> None:
    assert key_by(Task("plain", 2, Divisions(count), none=none), Head(), "plain") == key


def test_a_dial_is_read_for_one_step() -> None:
    # 90/8 = 11 1/4 turns, a quarter of 4 degrees.
    setups = METHODS["dial"].exact(Divisions(8), HEADS[4])
    assert not isinstance(setups, Declined)
    assert key_of(setups[0], Divisions(8), HEADS[4]) == Key(
        Claim("dial", 11, reading=parse_angle("1°")),
        "By the dial: 11 turns and 1°00'00\" a step, worked from zero at every cut",
        ("90/8 = 11 1/4", "11 turns and 1°, set to 1°00'00\""),
    )
