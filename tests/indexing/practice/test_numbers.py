"""Which numbers and angles are asked: by hand, and against every hole of every circle."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.head import SET_ONE, Head
from dividing.indexing.heads import SET_TWO
from dividing.indexing.practice import numbers
from tests.second.holes import direct_settings, plain_settings

HEADS = [Head(), Head(mounted_plate=3), Head(ratio=60, plates=SET_TWO), Head(ratio=90, plates=((20,),))]


@pytest.mark.parametrize(
    ("level", "asked", "not_asked"),
    [
        # 40/36 = 1 2/18 on the plate that is mounted; 28 needs a 21 or 49, 51 has no circle, 61 is no easy number.
        (1, [6, 8, 15, 17, 36, 60], [2, 5, 7, 21, 28, 51, 61, 72]),
        # 40/72 = 10/18, but 72 is more than 60; 28 needs another plate.
        (2, [7, 21, 28, 72, 392], [6, 36, 51, 401]),
        # 40/440 = 1/11 and 40/360 = 1/9 stand on no plate as they are; 40/680 = 1/17 and 40/760 = 1/19 do.
        (3, [64, 72, 360, 440, 520], [44, 51, 760, 680, 1001]),
    ],
)
def test_numbers_of_each_level(level: int, asked: list[int], not_asked: list[int]) -> None:
    counts = numbers.counts(Head(), level)
    assert set(asked) <= set(counts)
    assert not set(not_asked) & set(counts)


@pytest.mark.parametrize("head", HEADS)
def test_a_number_that_is_asked_is_served_as_its_level_tells(head: Head) -> None:
    for level in (1, 2, 3):
        for count in numbers.counts(head, level):
            settings = plain_settings(Fraction(head.ratio, count), head.plates)
            on_mounted = {one for one in settings if one.plate in (None, head.mounted_plate)}
            assert settings
            assert bool(on_mounted and count <= 60) == (level == 1) or level == 3
            if level == 3:
                parts = Fraction(head.ratio, count).denominator
                assert count > 60
                assert parts > 1
                assert parts not in {one.circle for one in settings}


@pytest.mark.parametrize("head", HEADS)
def test_no_number_that_the_levels_hold_is_missed(head: Head) -> None:
    served = {n for n in range(6, 401) if plain_settings(Fraction(head.ratio, n), head.plates)}
    assert set(numbers.counts(head, 1)) | set(numbers.counts(head, 2)) == served
    assert set(numbers.counts_of_none(head, 2)) == set(range(2, 201)) - served - set(range(2, 6))


def test_numbers_that_nothing_serves_are_those_that_no_hole_serves() -> None:
    none = numbers.counts_of_none(Head(), 3)
    assert {n for n in range(6, 1001) if not plain_settings(Fraction(40, n), SET_ONE)} == set(none)


def test_a_head_that_serves_small_numbers_alone_is_asked_them() -> None:
    # One turn and a plate of two holes: halves, and nothing else.
    assert numbers.counts(Head(ratio=1, plates=((2,),)), 1) == (2,)


def test_numbers_in_whole_turns_leave_no_part() -> None:
    assert {n for n in numbers.counts(Head(), 1) if 40 % n == 0} == {8, 10, 20, 40}
    assert set(numbers.counts(Head(), 1)) - set(numbers.in_parts(Head(), 1)) == {8, 10, 20, 40}


def test_a_head_without_plates_is_asked_no_plain_number() -> None:
    table = Head(plates=(), direct_circles=(24,))
    assert [numbers.counts(table, level) for level in (1, 2, 3)] == [(), (), ()]


@pytest.mark.parametrize("ratio", [40, 90])
def test_whole_degrees_are_those_that_some_hole_serves(ratio: int) -> None:
    circles = tuple(circle for face in SET_ONE for circle in face)
    served = [a for a in range(1, 181) if plain_settings(Fraction(a * ratio, 360), SET_ONE)]
    assert list(numbers.angles(ratio, circles, 360)) == served


def test_degrees_of_a_direct_plate_are_those_that_some_hole_serves() -> None:
    served = [a for a in range(1, 181) if direct_settings(Fraction(a, 360), (24, 30))]
    assert list(numbers.angles(1, (24, 30), 360)) == served


@pytest.mark.parametrize(("parts", "finer"), [(21_600, 60), (36_000, 100)])
def test_minutes_and_hundredths_are_served_and_no_whole_degrees(parts: int, finer: int) -> None:
    circles = tuple(circle for face in SET_ONE for circle in face)
    asked = numbers.angles(40, circles, parts)
    assert len(asked) > 50
    for angle in asked:
        assert angle % finer
        assert angle <= parts // 4
        assert plain_settings(Fraction(angle * 40, parts), SET_ONE)


@pytest.mark.parametrize(
    ("count", "ratio", "circles", "serving"),
    [(28, 40, (20, 21, 49), (21, 49)), (20, 40, (15, 16), (15, 16)), (51, 40, (17, 49), ())],
)
def test_circles_that_serve_a_number(
    count: int, ratio: int, circles: tuple[int, ...], serving: tuple[int, ...]
) -> None:
    assert numbers.serving_circles(count, ratio, circles) == serving


def test_large_numbers_are_exact() -> None:
    assert numbers.left(10**17 + 20, 40) == (10**17 + 20) // 20
