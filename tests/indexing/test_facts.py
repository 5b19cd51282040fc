"""What the handbooks say that a head with set I and the twelve change gears can do, and where it ends."""

from __future__ import annotations

import pytest

from dividing.indexing.head import SET_ONE, TWELVE_GEARS, Head
from dividing.indexing.methods import compound, differential, plain
from dividing.indexing.setup import Declined, Setup
from dividing.indexing.work import Divisions

GEARED = Head(plates=SET_ONE, change_gears=TWELVE_GEARS)


def is_plain(count: int) -> bool:
    return not isinstance(plain.exact(Divisions(count), GEARED), Declined)


def trains(count: int) -> tuple[Setup, ...]:
    answer = differential.exact(Divisions(count), GEARED)
    one_space = () if isinstance(answer, Declined) else answer
    return tuple(setup for setup in one_space if setup.every == 1)


def needs_four_gears(count: int) -> bool:
    return all(setup.gearing is not None and setup.gearing.stud is not None for setup in trains(count))


class TestWithTheTwelveGears:
    def test_every_number_to_382_is_exact_and_383_is_the_first_that_is_not(self) -> None:
        # A Practical Treatise on Milling and Milling Machines, 1914, p. 52: every number from 1 to 382, and
        # many beyond. The numbers after it are computed (plain, or differential with two or four gears).
        impossible = [count for count in range(2, 490) if not is_plain(count) and not trains(count)]
        assert impossible == [383, 401, 457, 471, 487, 489]

    def test_exactly_twenty_three_of_them_need_four_gears(self) -> None:
        # Computed with every train of the gears owned.
        four = [count for count in range(2, 383) if not is_plain(count) and needs_four_gears(count)]
        assert len(four) == 23
        assert {173, 307, 373} <= set(four)

    def test_none_of_them_turns_the_plate_more_than_2_7_times_a_spindle_turn(self) -> None:
        # Computed: the calmest train of each number that needs gears, two before four.
        for count in range(2, 383):
            if not is_plain(count):
                motions = [abs(setup.gearing.motion) for setup in trains(count) if setup.gearing is not None]
                assert min(motions) <= 2.7, count

    @pytest.mark.parametrize(("missing", "first_gap"), [(40, 125), (44, 229), (48, 359), (86, 359), (100, 359)])
    def test_one_gear_missing_leaves_a_gap(self, missing: int, first_gap: int) -> None:
        # Computed, with every train of the gears that are left.
        gears = list(TWELVE_GEARS)
        gears.remove(missing)
        head = Head(plates=SET_ONE, change_gears=tuple(gears))
        gaps = (
            count
            for count in range(2, 383)
            if not is_plain(count) and isinstance(differential.exact(Divisions(count), head), Declined)
        )
        assert next(gaps) == first_gap


class TestWithoutGears:
    def test_compound_alone_makes_ten_of_the_numbers_to_a_hundred_that_plain_cannot(self) -> None:
        # Computed with every hole of every two circles of a plate; the treatise of 1914 (p. 52) says that
        # compound indexing is never exact, which holds for the primes above 49 and for 81.
        gaps = [count for count in range(2, 101) if not is_plain(count)]
        exact = [c for c in gaps if not isinstance(compound.exact(Divisions(c), GEARED), Declined)]
        assert exact == [51, 57, 63, 69, 77, 87, 91, 93, 96, 99]
        assert [c for c in gaps if c not in exact] == [53, 59, 61, 67, 71, 73, 79, 81, 83, 89, 97]

    def test_plain_makes_all_to_fifty_and_even_numbers_to_a_hundred_but_96(self) -> None:
        # A Practical Treatise on Milling and Milling Machines, 1914, p. 52 and p. 74.
        assert [count for count in range(2, 51) if not is_plain(count)] == []
        assert [count for count in range(52, 101, 2) if not is_plain(count)] == [96]
