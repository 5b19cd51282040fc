"""Which gaps are closed by what: looked up or gathered, few at a time or many, against dividing every point."""

from __future__ import annotations

from random import Random

import pytest

from dividing.indexing.coverage import gaps
from dividing.indexing.coverage.gaps import Gaps

# Gaps of a head of 40:1, and what the pin would pass with each of three things, over one and over several turns.
NUMBERS = (51, 53, 57, 59, 61, 63, 69, 71, 73, 77, 79, 127, 383)


def things(how_many: int) -> list[tuple[int, int, list[int]]]:
    chance = Random(383)  # noqa: S311 - the same every time, no secrets
    return [
        (thing, chance.choice([1, 1, 3, 70]), [chance.randint(1, 1_900) for _ in range(chance.randint(0, 60))])
        for thing in range(how_many)
    ]


def slowly(added: list[tuple[int, int, list[int]]]) -> dict[int, set[int]]:
    """Every gap held against every point."""
    closed: dict[int, set[int]] = {}
    for thing, turns, points in added:
        for point in points:
            for gap in NUMBERS:
                if point % gap == 0 and (gap > turns or turns == 1):
                    closed.setdefault(thing, set()).add(gap)
    return closed


@pytest.mark.parametrize("at_a_time", [1, 7, 100, 1 << 17])
@pytest.mark.parametrize("listed", [0, 300_000], ids=["gathered", "looked up"])
def test_the_same_gaps_are_closed_either_way(at_a_time: int, listed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(gaps, "GATHERED_MOST", at_a_time)
    monkeypatch.setattr(gaps, "LISTED_MOST", listed)
    added = things(40)
    assert Gaps(NUMBERS, ratio=40, circle=49).closed_by(iter(added)) == slowly(added)


def test_nothing_added_closes_nothing() -> None:
    assert Gaps(NUMBERS, ratio=40, circle=49).closed_by([]) == {}
    assert Gaps((), ratio=40, circle=49).closed_by(iter(things(5))) == {}


def test_several_spaces_a_move_are_fewer_than_the_divisions_and_one_always_serves() -> None:
    gaps = Gaps((1, 3, 4), ratio=40, circle=49)
    assert gaps.closed_by([("one", 1, [7]), ("three", 3, [12]), ("four", 4, [6, 12])]) == {"one": {1}, "three": {4}}
