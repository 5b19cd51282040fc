"""What to own next, proven best by adding every circle and every gear there is, one after the other."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from dividing.indexing.coverage import TOLD_MOST, Addition, additions, coverage
from dividing.indexing.coverage.another_circle import closed_by_circle
from dividing.indexing.coverage.another_gear import closed_by_gear
from dividing.indexing.coverage.owning import another_circles, another_gears
from dividing.indexing.faults import Refused
from dividing.indexing.head import TWELVE_GEARS, Dial, Head, Idlers
from tests.indexing.coverage.heads import HEADS
from tests.indexing.coverage.second_way import Bench

CIRCLES, GEARS = range(2, 401), range(10, 201)
SMALL = {
    "one plate": Head(plates=((15, 16, 17, 18, 19, 20),)),
    "one plate, four gears": Head(plates=((17, 20),), change_gears=(24, 32, 40, 56)),
    "two of a kind": Head(plates=((19, 20),), change_gears=(24, 24, 48)),
    "a table with a dial": Head(ratio=90, plates=(), direct_circles=(), dial=Dial(divisions=10), change_gears=(24, 40)),
    "three gears, another ratio": Head(ratio=9, plates=((11, 15),), direct_circles=(), change_gears=(20, 24, 50)),
    "a plate that may run ahead of the crank": Head(ratio=4, plates=((21,),), change_gears=(10, 20, 30, 40)),
    "one gear and no idler needed": Head(plates=((20,),), change_gears=(28,), idlers=Idlers(0, 1, 0, 1)),
}


def with_circle(head: Head, circle: int) -> Head:
    """The head with a plate more, of one circle."""
    return replace(head, plates=(*head.plates, (circle,)), mounted_plate=head.mounted_plate if head.plates else 1)


def with_gear(head: Head, teeth: int) -> Head:
    """The head with a gear more."""
    return replace(head, change_gears=(*head.change_gears, teeth))


def best(closed: dict[int, tuple[int, ...]]) -> tuple[Addition, ...]:
    """The five that close most, of equal ones the smaller."""
    serving = [Addition(size, numbers) for size, numbers in closed.items() if numbers]
    return tuple(sorted(serving, key=lambda each: (-each.closes, each.size))[:5])


class TestAgainstTryingEverything:
    """Nothing of the service's: each number is looked for on the head with the piece added, hole by hole."""

    @pytest.mark.parametrize("name", SMALL)
    def test_no_circle_closes_more(self, name: str) -> None:
        head = SMALL[name]
        bench = Bench(head)
        gaps = [number for number in range(2, 121) if bench.way(number) is None][-30::9]
        closed = {circle: closing(gaps, with_circle(head, circle)) for circle in CIRCLES}
        assert additions(gaps, head).circles == best(closed)
        assert closed_by_circle(gaps, head, CIRCLES) == {circle: set(numbers) for circle, numbers in closed.items()}

    @pytest.mark.parametrize("name", SMALL)
    def test_no_gear_closes_more(self, name: str) -> None:
        head = SMALL[name]
        bench = Bench(head)
        gaps = [number for number in range(2, 91) if bench.way(number) is None][::3]
        closed = {teeth: closing(gaps, with_gear(head, teeth)) for teeth in GEARS}
        assert additions(gaps, head).gears == best(closed)
        assert closed_by_gear(gaps, head, GEARS) == {teeth: set(numbers) for teeth, numbers in closed.items()}


def closing(gaps: list[int], head: Head) -> tuple[int, ...]:
    bench = Bench(head)
    return tuple(number for number in gaps if bench.way(number) is not None)


class TestAgainstSweepingAgain:
    """On larger heads: the piece added, and the whole range swept anew."""

    @pytest.mark.parametrize("name", HEADS)
    def test_every_circle_closes_what_is_told(self, name: str) -> None:
        head = HEADS[name]
        gaps = coverage(2, 500, head).gaps
        told = closed_by_circle(gaps, head, CIRCLES)
        for circle in range(2 + len(name) % 13, 401, 13):
            left = coverage(2, 500, with_circle(head, circle)).gaps
            assert told[circle] == set(gaps) - set(left), circle

    @pytest.mark.parametrize("name", HEADS)
    def test_every_gear_closes_what_is_told(self, name: str) -> None:
        head = HEADS[name]
        gaps = coverage(2, 900, head).gaps
        told = closed_by_gear(gaps, head, GEARS)
        for teeth in range(10 + len(name) % 17, 201, 17):
            left = coverage(2, 900, with_gear(head, teeth)).gaps
            assert told[teeth] == set(gaps) - set(left), teeth

    def test_gaps_far_up_are_met_in_both_ways_of_looking(self) -> None:
        head = Head(ratio=180, plates=((120, 144), (97,)), change_gears=(24, 32, 40, 44, 56, 72))
        gaps = coverage(2, 10_000, head).gaps
        circles, gears = closed_by_circle(gaps, head, CIRCLES), closed_by_gear(gaps, head, GEARS)
        assert circles[336] == set(gaps) - set(coverage(2, 10_000, with_circle(head, 336)).gaps)
        assert gears[127] == set(gaps) - set(coverage(2, 10_000, with_gear(head, 127)).gaps)
        few = [number for number in gaps if number < 200]
        assert closed_by_circle(few, head, CIRCLES)[336] == circles[336] & set(few)
        assert closed_by_gear(few, head, GEARS)[127] == gears[127] & set(few)


class TestPublished:
    def test_102_at_40_needs_a_circle_of_51(self) -> None:
        # A multiple of N/gcd(N, R) holes: 102/2 = 51; the smallest of them is told first.
        assert additions((102,), Head(plates=((15, 16, 18, 19, 20),))).circles[0] == Addition(51, (102,))

    @pytest.mark.parametrize(("missing", "first_gap"), [(40, 125), (44, 229), (48, 359), (86, 359), (100, 359)])
    def test_a_gear_that_is_missing_closes_the_gap_that_it_leaves(self, missing: int, first_gap: int) -> None:
        # The gaps of one space a move are computed in the tests of what the handbooks say.
        gears = list(TWELVE_GEARS)
        gears.remove(missing)
        head = Head(change_gears=tuple(gears))
        assert first_gap in closed_by_gear((first_gap,), head, GEARS)[missing]

    def test_where_there_are_no_gaps_nothing_is_needed(self) -> None:
        # A Practical Treatise on Milling and Milling Machines, 1914, p. 52: every number from 1 to 382.
        head = Head(change_gears=TWELVE_GEARS)
        assert additions(coverage(2, 382, head).gaps, head) == ((), ())


class TestWhatIsTold:
    def test_five_of_each_at_most_the_best_first_and_the_smaller_of_equals(self) -> None:
        head = HEADS["60 to 1, four gears"]
        for told in additions(coverage(2, 400, head).gaps, head):
            assert len(told) == TOLD_MOST == 5
            assert list(told) == sorted(told, key=lambda each: (-each.closes, each.size))
            assert all(each.closes == len(each.numbers) > 0 for each in told)
            assert all(list(each.numbers) == sorted(each.numbers) for each in told)

    def test_multiples_of_53_close_106_too_and_come_before_those_of_59(self) -> None:
        # 40/53 and 40/106 = 20/53 both want a multiple of 53; 371 = 7 x 53 is left out as the sixth and more.
        told = additions((53, 59, 106), Head()).circles
        assert told == tuple(Addition(circle, (53, 106)) for circle in (53, 106, 159, 212, 265))
        assert [each.closes for each in told] == [2, 2, 2, 2, 2]

    def test_a_gear_is_told_with_the_gaps_that_it_closes(self) -> None:
        # 10 to 1 on 4 holes with 20 and 30 teeth: any gear is their idler, so 30 over 20 makes 17 (4 x 8 1/2 = 34). A
        # gear of t over 20 lets the pin pass (200 - t)/5 places a turn, over 30 2 (300 - t)/15, under 30 40 (t - 3)/t.
        # With 15 that is 37, 40 37, 52 148/5, 78 148/5, 89 111/5 and 115 74/3, the sixth.
        head = Head(ratio=10, plates=((4,),), direct_circles=(), change_gears=(20, 30))
        assert additions((37, 17), head).gears == tuple(Addition(teeth, (17, 37)) for teeth in (15, 40, 52, 78, 89))

    def test_what_closes_nothing_is_not_told(self) -> None:
        assert additions((127,), Head(plates=((20,),))).circles == (
            Addition(127, (127,)),
            Addition(254, (127,)),
            Addition(381, (127,)),
        )

    def test_a_head_without_gears_gains_nothing_by_one(self) -> None:
        assert additions((127, 131), Head()).gears == ()

    def test_a_circle_of_its_own_makes_no_second_move(self) -> None:
        # With 16 on the plate of 15, 240 places are made; on a plate of its own each serves by itself.
        head = Head(plates=((15,),), direct_circles=())
        assert 16 not in [each.size for each in additions((600 * 16,), head).circles]
        assert coverage(240, 240, replace(head, ratio=1, plates=((15, 16),))).ways[240].method == "compound"
        assert 240 not in closed_by_circle((240,), replace(head, ratio=1), CIRCLES)[16]


def may_have(add: Callable[[Head, int], Head], head: Head, size: int) -> bool:
    try:
        add(head, size)
    except Refused:
        return False
    return True


class TestWhatAHeadMayHave:
    @pytest.mark.parametrize(
        ("head", "circles"),
        [
            (Head(), range(2, 401)),
            (Head(plates=(tuple(range(2, 101)),), direct_circles=()), range(2, 401)),
            (Head(plates=(tuple(range(2, 101)),), direct_circles=(24,)), range(2, 1)),
            (Head(plates=(tuple(range(371, 401)),), direct_circles=(300,)), range(2, 136)),
        ],
    )
    def test_a_circle_more(self, head: Head, circles: range) -> None:
        # 100 circles and 12,000 holes at most: 30 circles of 371 to 400 have 11,565 and 300 more on the direct plate.
        assert another_circles(head) == circles
        assert {circle for circle in CIRCLES if may_have(with_circle, head, circle)} == set(circles)

    @pytest.mark.parametrize(("owned", "gears"), [(0, GEARS), (23, GEARS), (24, range(10, 10))])
    def test_a_gear_more(self, owned: int, gears: range) -> None:
        head = Head(change_gears=(40,) * owned)
        assert another_gears(head) == gears
        assert {teeth for teeth in GEARS if may_have(with_gear, head, teeth)} == set(gears)

    def test_a_head_that_is_full_is_told_nothing(self) -> None:
        full = Head(plates=(tuple(range(2, 101)),), change_gears=(40,) * 24)
        assert additions((9_973,), full) == ((), ())
