"""A row of the schedule as it goes out: exact angles shared between setups, readings as they are set."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import Dial, Head
from dividing.indexing.positions import dial_set
from dividing.indexing.solving import solve
from dividing.indexing.work import Arc, Divisions
from dividing.web.answers.positions import Places, dial_out, position_rows, scale

MINUTES = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(Fraction(1, 21600)))
LINES = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(divisions=100))


class TestTheScaleOnTheNose:
    @pytest.mark.parametrize(
        ("over", "under", "shown"),
        [
            (0, 1, "0°00'"),
            (1, 4, "90°00'"),
            (15, 73, "73°58'"),
            (5, 4, "90°00'"),  # laps do not show
            (-1, 4, "270°00'"),
            (1, 1, "0°00'"),
            # Half a minute before the full turn it is nearer 360° than 359°59', and there is no 360° on it.
            (43199, 43200, "0°00'"),
            (21599, 21600, "359°59'"),
        ],
    )
    def test_is_read_to_the_nearest_minute(self, over: int, under: int, shown: str) -> None:
        assert scale(over, under) == shown


class TestTheDial:
    def test_in_degrees_is_set_to_its_reading(self) -> None:
        # A seventh: 12 turns and 3 3/7°, set to 3°26'.
        assert dial_out(dial_set(Fraction(1, 7), MINUTES), MINUTES) == {
            "turns": 12,
            "reading": {"degrees": pytest.approx(24 / 7), "dms": "3°25'42.86\"", "turns": "1/105"},
            "set": "3°26'",
        }

    def test_in_divisions_is_set_to_its_line(self) -> None:
        # 85 5/7 of 100 divisions.
        told = dial_out(dial_set(Fraction(1, 7), LINES), LINES)
        assert (told["turns"], told["divisions"]) == (12, "86")
        assert "set" not in told


class TestTheRows:
    def test_of_a_plain_move(self) -> None:
        work, head = Divisions(28), Head()
        rows = position_rows(work, head, solve(work, head, limit=1).setups[0], {})
        assert rows[1] == {
            "cut": 2,
            "division": 1,
            "angle": {"degrees": pytest.approx(360 / 28), "dms": "12°51'25.71\"", "turns": "1/28"},
            "turns": 1,
            "holes": 21,
            "hole": 21,
            "second_holes": None,
            "second_hole": None,
            "dial": None,
            "scale": "12°51'",
            "free_check": False,
            "error_seconds": 0.0,
        }
        assert [row["cut"] for row in rows if row["free_check"]] == [8, 15, 22]

    def test_setups_of_one_answer_share_their_angles(self) -> None:
        work, head = Divisions(28), Head()
        places: Places = {}
        first, second = (position_rows(work, head, setup, places) for setup in solve(work, head, limit=2).setups)
        assert len(places) == 28
        assert all(one["angle"] is other["angle"] for one, other in zip(first, second, strict=True))

    def test_an_angle_in_radians_has_no_exact_form(self) -> None:
        work, head = Arc(parse_angle("0.35 rad"), 3), Head()
        rows = position_rows(work, head, solve(work, head, limit=1).setups[0], {})
        assert [row["angle"]["turns"] for row in rows] == [None, None, None]
        assert rows[1]["angle"]["dms"] == "20°03'12.68\""
        assert rows[1]["error_seconds"] != 0.0
