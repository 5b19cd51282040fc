"""Which numbers divide which others, however far apart they stand."""

from __future__ import annotations

import pytest

from dividing.indexing.coverage.sieve import STRIP, divided, dividing, in_crank_turns, marked

FAR = {7 * STRIP, STRIP * 3 - 1, STRIP + 97, 41 * 9_973 * 60}


@pytest.mark.parametrize(
    ("numbers", "points", "found"),
    [
        (range(1, 13), {12}, {1, 2, 3, 4, 6, 12}),
        (range(5, 8), {49}, {7}),
        ((50,), {49}, set()),
        ((49,), {49}, {49}),
        ((1, 2), set(), set()),
        ((), {49}, set()),
        ((3, 5), {2 * STRIP + 1}, {3}),
    ],
)
def test_numbers_that_divide_a_point(numbers: tuple[int, ...], points: set[int], found: set[int]) -> None:
    assert dividing(numbers, marked(points)) == found


@pytest.mark.parametrize("points", [{840}, {97, 98, 99}, FAR, FAR | {840, 2_310}, {STRIP - 1, STRIP, STRIP + 1}])
def test_every_number_to_two_hundred_is_as_division_says(points: set[int]) -> None:
    numbers = range(1, 201)
    assert dividing(numbers, marked(points)) == {number for number in numbers if any(p % number == 0 for p in points)}
    pairs = list(divided(numbers, points))
    assert sorted(pairs) == sorted((number, point) for number in numbers for point in points if point % number == 0)


@pytest.mark.parametrize("ratio", [1, 5, 40, 72, 90, 9_973])
def test_crank_turns_of_a_circle_are_as_multiplication_says(ratio: int) -> None:
    circles, numbers = {15, 16, 49, 66, 400}, range(1, 700)
    wanted = {number for number in numbers if any(ratio * circle % number == 0 for circle in circles)}
    assert in_crank_turns(numbers, ratio, circles) == wanted


@pytest.mark.parametrize("points", [FAR, {STRIP}, {STRIP - 1}, {0, 3}, set()])
def test_a_strip_holds_the_points_and_nothing_else(points: set[int]) -> None:
    found: set[int] = set()
    for start, marks in marked(points):
        assert len(marks) <= STRIP
        place = marks.find(1)
        while place >= 0:
            found.add(start + place)
            place = marks.find(1, place + 1)
    assert found == points
