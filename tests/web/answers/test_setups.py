"""A setup as it goes out: its moves and train, and its errors in seconds and at the rim."""

from __future__ import annotations

from fractions import Fraction
from math import pi
from typing import Any

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import Dial, Head
from dividing.indexing.setup import (
    NO_ERROR,
    Accuracy,
    Even,
    Gearing,
    Move,
    Rounded,
    SecondMove,
    Setup,
    Tolerance,
)
from dividing.indexing.work import Angles, Divisions, Work
from dividing.web.answers.setups import error_out, gearing_out, setup_out

SECOND = Fraction(1, 1_296_000)
"""A second of arc, in turns."""
TWO_OFF = Accuracy(-SECOND / 3, 2 * SECOND, -2 * SECOND, SECOND / 30_000, 4 * SECOND)
IN_DEGREES = Head(90, (), direct_circles=(), dial=Dial(Fraction(1, 21600)))
IN_DIVISIONS = Head(90, (), direct_circles=(), dial=Dial(divisions=100))


class TestErrors:
    def test_are_told_in_seconds_to_four_places_and_the_step_exactly(self) -> None:
        assert error_out(TWO_OFF, None) == {
            "step": "-1/3888000",
            "worst_seconds": 2.0,
            "closing_seconds": -2.0,
            "single_pitch_seconds": 0.0,
            "total_pitch_seconds": 4.0,
            "at_rim": None,
            "within_tolerance": None,
        }

    def test_without_one_step_have_none(self) -> None:
        assert error_out(Accuracy(None, SECOND, SECOND, SECOND, SECOND), None)["step"] is None

    @pytest.mark.parametrize(
        ("tolerance", "rim", "kept"),
        [
            (Tolerance(angle=2 * SECOND), None, True),
            (Tolerance(angle=2 * SECOND - Fraction(1, 10**12)), None, False),
            (Tolerance(angle=3 * SECOND, diameter=Fraction(100)), pi * 100 * 2 / 1_296_000, True),
            # Two seconds on a diameter of 100 are 0.000485 along the rim.
            (Tolerance(at_rim=Fraction("0.00049"), diameter=Fraction(100)), pi * 100 * 2 / 1_296_000, True),
            (Tolerance(at_rim=Fraction("0.00048"), diameter=Fraction(100)), pi * 100 * 2 / 1_296_000, False),
        ],
    )
    def test_are_held_against_the_tolerance(self, tolerance: Tolerance, rim: float | None, kept: bool) -> None:
        told = error_out(TWO_OFF, tolerance)
        assert told["at_rim"] == (None if rim is None else pytest.approx(rim, rel=1e-12))
        assert told["within_tolerance"] is kept

    def test_where_there_are_none_keep_every_tolerance(self) -> None:
        told = error_out(NO_ERROR, Tolerance(angle=SECOND, diameter=Fraction(100)))
        assert (told["step"], told["worst_seconds"], told["at_rim"], told["within_tolerance"]) == ("0", 0.0, 0.0, True)


@pytest.mark.parametrize(
    ("gearing", "told"),
    [
        (
            Gearing(48, 28, None, 2, "against"),
            {"spindle": 48, "worm": 28, "stud": None, "idlers": 2, "plate": "against", "train": "12/7"},
        ),
        # 28/24 x 32/24 = 14/9.
        (
            Gearing(28, 24, (32, 24), 0, "with"),
            {"spindle": 28, "worm": 24, "stud": [32, 24], "idlers": 0, "plate": "with", "train": "14/9"},
        ),
        (
            Gearing(48, 24, None, 1, "with"),
            {"spindle": 48, "worm": 24, "stud": None, "idlers": 1, "plate": "with", "train": "2"},
        ),
    ],
)
def test_a_train_is_told_with_what_it_makes(gearing: Gearing, told: dict[str, Any]) -> None:
    assert gearing_out(gearing) == told


def test_the_second_move_is_on_the_plate_of_the_first_and_its_arms_count_no_sign() -> None:
    # 21/23 - 11/33 = 40/69.
    setup = Setup("compound", Even(Fraction(1, 69)), NO_ERROR, Move(0, 21, 23, 2), SecondMove(-11, 33))
    told = setup_out(Divisions(69), Head(mounted_plate=2), setup, None)
    assert told["move"] == {"turns": 0, "holes": 21, "circle": 23, "plate": 2, "sector_holes": 22}
    assert told["second_move"] == {"turns": 0, "holes": -11, "circle": 33, "plate": 2, "sector_holes": 12}
    assert (told["method"], told["exact"], told["gearing"], told["dial"]) == ("compound", True, None, None)


def test_where_the_schedule_gives_the_moves_they_have_no_figures_of_their_own() -> None:
    # 47 and 49 share no factor: together they make every 1/2303 of a crank turn.
    spacing = Rounded(40 * 47 * 49)
    setup = Setup("nearest", spacing, TWO_OFF, Move(None, None, 47, 3), SecondMove(None, 49))
    told = setup_out(Divisions(127), Head(mounted_plate=3), setup, None)
    assert told["move"] == {"turns": None, "holes": None, "circle": 47, "plate": 3, "sector_holes": None}
    assert told["second_move"] == {"turns": None, "holes": None, "circle": 49, "plate": 3, "sector_holes": None}
    assert (told["exact"], told["error"]["worst_seconds"]) == (False, 2.0)


@pytest.mark.parametrize(
    ("work", "head", "dial"),
    [
        # 90/8 = 11 1/4 turns of 4 degrees, so 1 degree beyond the whole turns; of 100 divisions 25.
        (
            Divisions(8),
            IN_DEGREES,
            {"turns": 11, "reading": {"degrees": 1.0, "dms": "1°00'00.00\"", "turns": "1/360"}, "set": "1°00'"},
        ),
        (
            Divisions(8),
            IN_DIVISIONS,
            {"turns": 11, "reading": {"degrees": 1.0, "dms": "1°00'00.00\"", "turns": "1/360"}, "divisions": "25"},
        ),
        # Unequal angles have no one step.
        (Angles((parse_angle("0"), parse_angle("9"))), IN_DEGREES, {"turns": None, "reading": None, "set": None}),
        (
            Angles((parse_angle("0"), parse_angle("9"))),
            IN_DIVISIONS,
            {"turns": None, "reading": None, "divisions": None},
        ),
    ],
)
def test_the_dial_is_told_in_its_own_lines(work: Work, head: Head, dial: dict[str, Any]) -> None:
    setup = Setup("dial", Rounded(90 * 240), NO_ERROR, None)
    told = setup_out(work, head, setup, None)
    assert told["dial"] == dial
    assert told["move"] is None
