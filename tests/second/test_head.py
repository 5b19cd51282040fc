"""The second method stands on its own feet: figures that were published, worked by turning the head."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.second.errors import of_equal_moves, on_finished_work, seconds
from tests.second.head import DividingHead, Train


def test_three_hundred_and_nineteen_comes_out_on_the_published_gears() -> None:
    # A Practical Treatise on Milling and Milling Machines, 1914, p. 57 fig. 10
    train = Train(72, 48, (64, 24), [24])
    head = DividingHead(40, train)
    head.turn_crank(0, 4, 29)
    assert (train.plate_per_spindle, head.spindle) == (Fraction(-4), Fraction(1, 319))


def test_the_size_of_an_idler_changes_nothing() -> None:
    assert Train(72, 56, idlers=[24]).plate_per_spindle == Train(72, 56, idlers=[86]).plate_per_spindle


@pytest.mark.parametrize(("stud", "idlers", "way"), [(None, 1, 1), (None, 2, -1), ((28, 40), 0, 1), ((28, 40), 1, -1)])
def test_idlers_of_the_usual_construction_turn_the_plate_the_way_they_should(
    stud: tuple[int, int] | None, idlers: int, way: int
) -> None:
    # Common practice, and the workshop-technology text quoted in the check values.
    assert Train(32, 56, stud, [44] * idlers).plate_per_spindle * way > 0
    assert Train(32, 56, stud, [44] * idlers, even_meshes_with=False).plate_per_spindle * way < 0


def test_the_gears_left_off_cut_sixty_teeth_for_fifty_seven() -> None:
    # An account in a home-machinists forum, 2020: 57 wanted, 22 in 33 read from a chart, 60 counted.
    head = DividingHead(40)
    head.turn_crank(0, 22, 33)
    assert 1 / head.spindle == 60


def test_the_pin_is_back_in_its_start_hole_when_the_circle_has_been_gone_round() -> None:
    head = DividingHead(40)
    holes = []
    for _ in range(8):
        holes.append(head.pin_hole(21))
        head.turn_crank(1, 9, 21)
    assert holes == [0, 9, 18, 6, 15, 3, 12, 0]


def test_plate_and_crank_together_leave_the_pin_in_its_hole() -> None:
    head = DividingHead(40)
    head.turn_crank(0, 31, 49)
    head.turn_plate_and_crank(-12, 47)
    assert (head.pin_hole(49), head.spindle * 40) == (Fraction(31), Fraction(31, 49) - Fraction(12, 47))


def test_published_figures_of_the_five_space_move_for_a_hundred_and_six() -> None:
    # Machining forum question quoting a handbook's row, 1 turn + 7/39 + 29/41;
    # step 0.38", closing 40.5", worst neighbouring pitch 32.5" computed from it.
    head = DividingHead(40)
    head.turn_crank(1, 7, 39)
    head.turn_plate_and_crank(29, 41)
    errors = of_equal_moves(head.spindle, 106, 5)
    assert errors.closing is not None
    assert round(seconds(head.spindle - Fraction(5, 106)), 2) == 0.38
    assert round(seconds(errors.closing), 1) == 40.5
    assert round(seconds(errors.single_pitch), 1) == 32.5


def test_an_inexact_step_puts_its_whole_error_in_the_last_space() -> None:
    made = [Fraction(cut, 100) + Fraction(cut, 10000) for cut in range(5)]
    errors = on_finished_work(made, [Fraction(cut, 5) for cut in range(5)], closes=True)
    assert errors.single_pitch == errors.worst == errors.total_pitch
