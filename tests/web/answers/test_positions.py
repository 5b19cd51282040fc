"""A row of the schedule as it goes out: exact angles shared between setups, readings as they are set."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import orjson
import pytest

from dividing.indexing.angles import Angle, angle_out, parse_angle, seconds
from dividing.indexing.head import TWELVE_GEARS, Dial, Head
from dividing.indexing.positions import Row, dial_set, rows
from dividing.indexing.solving import solve
from dividing.indexing.work import Angles, Arc, Divisions, Work
from dividing.web.answers.positions import Places, dial_out, position_rows, rows_out, scale

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


def table(work: Work, head: Head) -> list[dict[str, Any]]:
    """The rows of the best setup, read back."""
    told: list[dict[str, Any]] = orjson.loads(orjson.dumps(position_rows(work, head, solve(work, head).setups[0], {})))
    return told


def slowly(row: Row, head: Head, *, rational: bool) -> dict[str, Any]:
    """A row made of exact fractions, a name at a time."""
    return {
        "cut": row.cut,
        "division": row.division,
        "angle": angle_out(Angle(row.place, rational)),
        "turns": row.turns,
        "holes": row.holes,
        "hole": row.hole,
        "second_holes": row.second_holes,
        "second_hole": row.second_hole,
        "dial": None if row.dial is None else dial_out(row.dial, head),
        "scale": scale(row.reached.numerator, row.reached.denominator),
        "free_check": row.free_check,
        "error_seconds": seconds(row.error),
    }


class TestTheRows:
    def test_of_a_plain_move(self) -> None:
        told = table(Divisions(28), Head())
        assert told[1] == {
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
        assert [row["cut"] for row in told if row["free_check"]] == [8, 15, 22]

    def test_setups_of_one_answer_share_their_angles(self) -> None:
        work, head = Divisions(28), Head()
        places: Places = {1: ["0"] * 28}
        told = orjson.loads(orjson.dumps(position_rows(work, head, solve(work, head).setups[0], places)))
        assert {row["angle"] for row in told} == {0}

    def test_an_angle_in_radians_has_no_exact_form(self) -> None:
        told = table(Arc(parse_angle("0.35 rad"), 3), Head())
        assert [row["angle"]["turns"] for row in told] == [None, None, None]
        assert told[1]["angle"]["dms"] == "20°03'12.68\""
        assert told[1]["error_seconds"] != 0.0


@pytest.mark.parametrize(
    "head",
    [Head(), Head(change_gears=TWELVE_GEARS), MINUTES, LINES, Head(ratio=60, plates=((7, 11),), direct_circles=())],
    ids=["usual", "gears", "minutes", "lines", "small"],
)
@pytest.mark.parametrize(
    "work",
    [
        *map(Divisions, (1, 2, 28, 51, 73, 127, 360)),
        Divisions(7, every=3),
        Arc(parse_angle("120"), 5),
        Arc(parse_angle("0.00001"), 30),
        Arc(parse_angle("5.1 rad"), 20),
        Angles(tuple(map(parse_angle, ("0", "61°15'", "22.5", "22.5", "359.9999", "1/7 turn")))),
        Angles((parse_angle("0.35 rad"), parse_angle("10"))),
    ],
    ids=str,
)
def test_every_row_is_written_as_its_exact_figures_are(work: Work, head: Head) -> None:
    for setup in solve(work, head, limit=3).setups:
        told = list(rows(work, head, setup))
        exact = [slowly(row, head, rational=work.rational) for row in told]
        assert orjson.dumps(position_rows(work, head, setup, {})) == orjson.dumps(exact)
        assert rows_out(told[-2:], head, rational=work.rational) == exact[-2:]
