"""How a plate is drilled: the way that is chosen, and the schedule followed hole by hole on a head turned by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.head import SET_ONE, TWELVE_GEARS, Dial, Head
from dividing.indexing.plate_making.drilling import Drilling, drilling
from tests.indexing.as_told import hung
from tests.indexing.refusals import faults_of
from tests.second.head import DividingHead
from tests.second.holes import SET_I, nearest_holes, places_of_two_circles
from tests.second.plate import Told, drilled

GEARED = Head(change_gears=TWELVE_GEARS)
TABLE = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(Fraction(1, 21600)))
FIXTURE = Head(ratio=1, plates=(), direct_circles=(36,))
HEADS = {
    "40 with set I": Head(),
    "the same with twelve gears": GEARED,
    "60 with one plate": Head(ratio=60, plates=SET_ONE[2:]),
    "90 by its dial": TABLE,
    "a fixture of 36 holes": FIXTURE,
}
NUMBERS = [*range(2, 60), 73, 97, 127, 211, 383, 400]
PLACES = {FIXTURE: 36}
EVERY_HEAD = pytest.mark.parametrize("head", HEADS.values(), ids=HEADS.keys())


def numbers_for(head: Head) -> list[int]:
    """Those for which the head has places enough."""
    return [holes for holes in NUMBERS if holes <= PLACES.get(head, 400)]


def told(plate: Drilling) -> list[Told]:
    """The schedule as the operator reads it."""
    rows = []
    for row in plate.rows:
        if row.dial:
            degrees = Fraction(row.dial.units * 360, plate.head.ratio * plate.head.dial_units)
            rows.append(Told(row.division, row.dial.turns, 0, dial_degrees=degrees))
        else:
            rows.append(Told(row.division, row.turns, row.holes or 0, row.second_holes or 0))
    return rows


def by_hand(plate: Drilling) -> list[Fraction]:
    """Where the holes lie after following the schedule."""
    setup = plate.setup
    return drilled(
        DividingHead(plate.head.ratio, hung(setup, plate.head.change_gears)),
        told(plate),
        circle=setup.move.circle if setup.move else 1,
        second=setup.second.circle if setup.second else None,
        direct=setup.move is not None and setup.move.plate is None,
    )


class TestTheWayChosen:
    @pytest.mark.parametrize(
        ("head", "holes", "circles", "method", "move"),
        [
            (Head(), 24, 2, "direct", (24, None)),
            (Head(), 35, 2, "plain", (49, None)),  # 40/35 = 1 1/7
            (Head(), 51, 2, "compound", (18, 17)),
            (Head(), 51, 1, "nearest", (49, None)),
            (Head(), 127, 2, "nearest", (47, 49)),
            (Head(), 127, 1, "nearest", (49, None)),
            (GEARED, 51, 1, "differential", (17, None)),
            (TABLE, 127, 2, "dial", None),
            (FIXTURE, 35, 2, "nearest", (36, None)),
        ],
    )
    def test_exact_before_nearest_and_no_second_circle_where_one_is_asked(
        self, head: Head, holes: int, circles: int, method: str, move: tuple[int, int | None] | None
    ) -> None:
        setup = drilling(holes, head, circles=circles).setup
        second = setup.second.circle if setup.second else None
        assert setup.method == method
        assert setup.exact == (method in ("direct", "plain", "compound", "differential"))
        if move is None:
            assert setup.move is None
        elif method in ("nearest", "direct", "plain"):
            assert setup.move is not None
            assert (setup.move.circle, second) == move
        else:
            assert (second is None) == (circles == 1)

    def test_by_one_circle_it_is_the_best_of_all_circles(self) -> None:
        for holes in (51, 73, 97, 127, 211):
            ideal = [Fraction(hole, holes) for hole in range(holes)]
            tried = {
                circle: max(
                    abs(made - wanted) for made, wanted in zip(nearest_holes(ideal, 40 * circle), ideal, strict=True)
                )
                for plate in SET_I
                for circle in plate
            }
            assert drilling(holes, Head(), circles=1).setup.accuracy.worst == min(tried.values())

    def test_by_two_circles_it_is_the_best_of_all_pairs(self) -> None:
        grids = places_of_two_circles(SET_I)
        for holes in (73, 127, 211):
            ideal = [Fraction(hole, holes) for hole in range(holes)]
            tried = [
                max(abs(made - wanted) for made, wanted in zip(nearest_holes(ideal, 40 * grid), ideal, strict=True))
                for grid in grids
            ]
            assert drilling(holes, Head()).setup.accuracy.worst == min(tried)


class TestFollowingTheSchedule:
    @EVERY_HEAD
    @pytest.mark.parametrize("circles", [1, 2])
    def test_puts_every_hole_where_it_is_told_to_be(self, head: Head, circles: int) -> None:
        for holes in numbers_for(head):
            plate = drilling(holes, head, circles=circles)
            made = by_hand(plate)
            assert plate.holes == len(plate.errors) == len(made) == holes
            for hole, (stands, error) in enumerate(zip(made, plate.errors, strict=True)):
                assert stands == (Fraction(hole, holes) + error) % 1, (holes, hole)

    @EVERY_HEAD
    def test_the_errors_are_those_of_the_setup_and_do_not_add_up(self, head: Head) -> None:
        for holes in numbers_for(head):
            plate = drilling(holes, head)
            errors, stated = plate.errors, plate.setup.accuracy
            assert errors[0] == 0
            assert max(map(abs, errors)) == stated.worst
            assert max(errors) - min(errors) == stated.total_pitch
            assert stated.closing == 0

    def test_a_plate_drilled_in_blocks_is_told_round_the_plate(self) -> None:
        plate = drilling(383, GEARED)
        assert plate.setup.every > 1
        assert [row.division for row in plate.rows[:3]] == [0, plate.setup.every, 2 * plate.setup.every]
        assert plate.errors == (0,) * 383


class TestMoreHolesThanPlaces:
    @pytest.mark.parametrize(
        ("head", "places", "holes"),
        [
            (FIXTURE, 36, 37),
            (FIXTURE, 36, 400),
            (Head(ratio=1, plates=((4,),), direct_circles=()), 4, 5),
            (Head(ratio=2, plates=(), direct_circles=(), dial=Dial(divisions=50)), 100, 101),
        ],
    )
    def test_are_refused_since_some_would_fall_on_others(self, head: Head, places: int, holes: int) -> None:
        sentence = (
            f"This head has {places} places round the plate, too few for {holes} holes. Drill fewer holes, or drill "
            "them on another head."
        )
        assert faults_of(lambda: drilling(holes, head)) == [(("head",), sentence)]

    @pytest.mark.parametrize("places", range(2, 25))
    def test_every_hole_has_its_own_place_wherever_there_are_enough(self, places: int) -> None:
        head = Head(ratio=1, plates=(), direct_circles=(places,))
        for holes in range(2, places + 1):
            made = {row.hole for row in drilling(holes, head).rows}
            assert len(made) == holes
        for holes in range(places + 1, 50):
            assert faults_of(lambda count=holes: drilling(count, head))[0][0] == ("head",)  # type: ignore[misc]


@pytest.mark.parametrize("holes", [-1, 0, 1, 401, 10**6])
def test_a_number_of_holes_that_no_circle_has_is_refused(holes: int) -> None:
    sentence = f"A circle has 2 to 400 holes, not {holes:,}."
    assert faults_of(lambda: drilling(holes, Head())) == [(("holes",), sentence)]
