"""A range swept at once is what solving each of its numbers makes of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest

from dividing.indexing.coverage import Way, coverage
from dividing.indexing.coverage.sweeping import range_faults
from dividing.indexing.head import TWELVE_GEARS, Dial, Head, Idlers
from dividing.indexing.solving import solve
from dividing.indexing.work import Divisions
from tests.indexing.coverage.heads import HEADS
from tests.indexing.coverage.second_way import Bench
from tests.indexing.refusals import faults_of

GEARED = Head(change_gears=TWELVE_GEARS)


def swept(first: int, last: int, head: Head) -> dict[int, tuple[str, int] | None]:
    found = coverage(first, last, head)
    ways = {number: (way.method, way.every) for number, way in found.ways.items()}
    return {number: ways.get(number) for number in range(first, last + 1)}


def solved(number: int, head: Head) -> tuple[str, int] | None:
    setup = solve(Divisions(number), head, limit=1).setups[0]
    return (setup.method, setup.every) if setup.exact else None


class TestEqualToSolving:
    @pytest.mark.parametrize("name", HEADS)
    def test_every_number_to_400_has_the_method_and_the_spaces_of_its_first_setup(self, name: str) -> None:
        head = HEADS[name]
        assert swept(1, 400, head) == {number: solved(number, head) for number in range(1, 401)}

    @pytest.mark.parametrize("name", ["set I, twelve gears", "set II, twelve gears", "5 to 1, where the plate may run "
                                      "ahead of the crank"])  # fmt: skip
    def test_numbers_far_up_too(self, name: str) -> None:
        head = HEADS[name]
        some = range(401, 10_001, 97)
        far = swept(401, 10_000, head)
        assert {number: far[number] for number in some} == {number: solved(number, head) for number in some}

    def test_it_makes_no_difference_where_the_range_begins(self) -> None:
        whole = swept(1, 600, GEARED)
        for first, last in ((1, 1), (37, 60), (127, 127), (380, 600)):
            assert swept(first, last, GEARED) == {number: whole[number] for number in range(first, last + 1)}


class TestEqualToTryingEverything:
    @pytest.mark.parametrize("name", HEADS)
    def test_every_number_to_120(self, name: str) -> None:
        bench = Bench(HEADS[name])
        assert swept(1, 120, HEADS[name]) == {number: bench.way(number) for number in range(1, 121)}


class TestByHand:
    # 10 to 1, circles of 4 and 6 on one plate, 20, 30 and 40 teeth with the third as the idler: 1/2, 2/3, 3/4, 4/3,
    # 3/2 or 2 turns of the plate. In one turn of the spindle the pin passes 38, 37, 34 or 32 places of 4, and 57, 56,
    # 52, 51 or 48 of 6; in two 111 of 6 with 3/4; in three 112 or 104 of 4 with 2/3 or 4/3.
    HEAD = Head(ratio=10, plates=((4, 6),), direct_circles=(6,), change_gears=(40, 20, 30), dial=Dial(divisions=9))
    WAYS: Mapping[Way, tuple[int, ...]] = {
        Way("direct"): (1, 2, 3, 6),
        Way("plain"): (4, 5, 8, 10, 12, 15, 20, 30, 40, 60),  # 40 and 60
        Way("differential"): (7, 13, 14, 16, 17, 19, 24, 26, 28, 32, 34, 37, 38, 48, 51, 52, 56, 57),
        Way("compound"): (120,),  # 10 x 12
        Way("dial"): (9, 18, 45, 90),  # 10 x 9
        Way("differential", 2): (111,),
        Way("differential", 3): (104, 112),
    }

    @pytest.mark.parametrize(("first", "last"), [(1, 120), (17, 19), (112, 130), (8, 8), (9_999, 10_000)])
    def test_each_number_by_the_first_method_that_makes_it(self, first: int, last: int) -> None:
        found = coverage(first, last, self.HEAD)
        ways = {number: way for way, numbers in self.WAYS.items() for number in numbers if first <= number <= last}
        assert found.ways == ways
        assert found.gaps == tuple(number for number in range(first, last + 1) if number not in ways)
        assert found.numbers == range(first, last + 1)

    @pytest.mark.parametrize(
        ("head", "numbers"),
        [
            # 20 over 40 and two turns of the plate on 4 holes: 38 and 32 places.
            (replace(HEAD, plates=((4,),), change_gears=(20, 40), idlers=Idlers(0, 1, 0, 1)), {19, 38, 16, 32}),
            (replace(HEAD, plates=((4,),), change_gears=(20,), idlers=Idlers(0, 1, 0, 1)), set()),
            (replace(HEAD, plates=(), change_gears=(20, 30, 40)), set()),
        ],
    )
    def test_plates_and_two_gears_are_what_the_plate_is_geared_with(self, head: Head, numbers: set[int]) -> None:
        ways = coverage(1, 120, head).ways
        assert {number for number, way in ways.items() if way.method == "differential"} == numbers

    def test_several_spaces_a_move_are_fewer_than_the_divisions(self) -> None:
        # 100 over 45 is 20/9, and nine turns bring the pin over 2 x (90 - 20) = 140 places of 2 holes: 7 has no nine
        # spaces to move by, 14 has.
        head = Head(ratio=10, plates=((2,),), direct_circles=(), change_gears=(45, 100), idlers=Idlers(0, 1, 0, 1))
        found = coverage(7, 14, head)
        assert 7 in found.gaps
        assert found.ways[14] == Way("differential", 9)

    @pytest.mark.parametrize(
        ("gears", "number", "way"),
        [
            ((22, 25), 13, Way("differential", 11)),  # 2 x (10 - 25/22) = 195/11
            ((24, 25), 43, Way("differential", 12)),  # 2 x (10 - 25/24) = 215/12
            ((26, 27), 233, None),  # 2 x (10 - 27/26) = 233/13
        ],
    )
    def test_twelve_spaces_a_move_are_the_most(self, gears: tuple[int, ...], number: int, way: Way | None) -> None:
        head = Head(ratio=10, plates=((2,),), direct_circles=(), change_gears=gears, idlers=Idlers(0, 1, 0, 1))
        assert coverage(number, number, head).ways.get(number) == way


class TestPublished:
    def test_with_twelve_gears_every_number_to_382_is_exact_with_one_space_a_move(self) -> None:
        # A Practical Treatise on Milling and Milling Machines, 1914, p. 52: every number from 1 to 382.
        found = coverage(2, 382, GEARED)
        assert found.gaps == ()
        assert {way.every for way in found.ways.values()} == {1}

    def test_those_after_it_that_one_space_does_not_make_come_in_blocks(self) -> None:
        # Computed in the tests of what the handbooks say: impossible by one space a move.
        found = coverage(383, 489, GEARED)
        in_blocks = sorted(number for number, way in found.ways.items() if way.every > 1)
        assert in_blocks == [383, 401, 457, 471, 487, 489]
        assert found.gaps == ()

    def test_plain_and_direct_make_all_to_fifty(self) -> None:
        # A Practical Treatise on Milling and Milling Machines, 1914, p. 52 and p. 74.
        found = coverage(2, 50, Head())
        assert found.gaps == ()
        assert {way.method for way in found.ways.values()} == {"direct", "plain"}

    def test_compound_makes_ten_to_a_hundred_that_plain_cannot(self) -> None:
        # Computed; the same list stands in the tests of what the handbooks say.
        found = coverage(51, 100, Head())
        compound = [
            number for number in found.numbers if number in found.ways and found.ways[number].method == "compound"
        ]
        assert compound == [51, 57, 63, 69, 77, 87, 91, 93, 96, 99]
        assert found.gaps == (53, 59, 61, 67, 71, 73, 79, 81, 83, 89, 97)


class TestWhatItHolds:
    @pytest.mark.parametrize("name", HEADS)
    def test_a_number_has_a_way_or_is_a_gap(self, name: str) -> None:
        found = coverage(2, 300, HEADS[name])
        assert sorted((*found.ways, *found.gaps)) == list(found.numbers) == list(range(2, 301))
        assert list(found.gaps) == sorted(found.gaps)
        assert all(way.exact and way.within is None for way in found.ways.values())

    def test_twice_is_the_same(self) -> None:
        assert coverage(2, 500, GEARED) == coverage(2, 500, GEARED)


class TestRefusals:
    FIRST = "The first number is a whole number from 1 to 10,000."
    LAST = "The last number is a whole number from 1 to 10,000."

    @pytest.mark.parametrize(
        ("first", "last", "faults"),
        [
            (0, 10, [("from", FIRST)]),
            (-3, 10, [("from", FIRST)]),
            (2, 10_001, [("to", LAST)]),
            (0, 0, [("from", FIRST), ("to", LAST)]),
            (10_001, 10_002, [("from", FIRST), ("to", LAST)]),
            (40, 39, [("to", "The last number comes before the first, 40; give 40 or more.")]),
            (5_000, 1, [("to", "The last number comes before the first, 5,000; give 5,000 or more.")]),
        ],
    )
    def test_a_range_that_cannot_be_swept(self, first: int, last: int, faults: list[tuple[str, str]]) -> None:
        assert faults_of(lambda: coverage(first, last, Head())) == [((at,), said) for at, said in faults]

    @pytest.mark.parametrize(("first", "last"), [(1, 1), (1, 10_000), (10_000, 10_000)])
    def test_the_bounds_themselves_serve(self, first: int, last: int) -> None:
        assert range_faults(first, last) == []
