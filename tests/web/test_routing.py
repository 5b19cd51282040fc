"""The columns of a routing sheet: which are questions, how a line asks, and what its cells say."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from dividing.indexing.head import TWELVE_GEARS, Head
from dividing.indexing.work import Divisions
from dividing.web.problems import TOO_MUCH_WORK, WRONG_FIELD, Problem
from dividing.web.routing import RESULTS, asked, cells, columns, solved_line
from dividing.web.schemas.solve import SOLVE_IN


def result(found: Any, decimal: str = ".") -> dict[str, str]:
    """The cells that say something, by their columns."""
    return {name: cell for name, cell in zip(RESULTS, cells(found, decimal=decimal), strict=True) if cell}


class TestTheHeading:
    @pytest.mark.parametrize(
        ("heading", "found"),
        [
            (["ref", "divisions"], {"divisions": 1}),
            ([" Divisions ", "RATIO"], {"divisions": 0, "ratio": 1}),
            # What is no word of the query is the office's own, and so is a ref.
            (["machine", "op", "angle", "count", "note"], {"angle": 2, "count": 3}),
            (["part", "plates"], {"part": 0, "plates": 1}),
            (["angles"], {"angles": 0}),
            (["", "", "divisions"], {"divisions": 2}),
        ],
    )
    def test_names_the_words_by_their_columns(self, heading: list[str], found: dict[str, int]) -> None:
        assert columns(heading) == found

    @pytest.mark.parametrize(
        ("heading", "sentence"),
        [
            (["divisions", "ratio", "Divisions"], 'The column "divisions" stands twice in the heading. Keep one.'),
            (
                ["ref", "ratio", "note"],
                "The heading has no column that says what to divide: divisions, angle, angles or part.",
            ),
        ],
    )
    def test_that_asks_nothing_or_twice_is_refused(self, heading: list[str], sentence: str) -> None:
        with pytest.raises(Problem) as refusal:
            columns(heading)
        assert (refusal.value.kind, refusal.value.detail, refusal.value.errors) == (WRONG_FIELD, sentence, [])


class TestALine:
    @pytest.mark.parametrize(
        ("line", "body"),
        [
            ({"divisions": "28"}, {"work": {"divisions": 28}}),
            ({"divisions": " 28 ", "ratio": ""}, {"work": {"divisions": 28}}),
            # What was made harmless on its way out comes back as it was.
            ({"angle": "'-5°"}, {"work": {"angle": "-5°"}}),
            (
                {"divisions": "28", "plates": "15,16/21"},
                {"work": {"divisions": 28}, "head": {"plates": [[15, 16], [21]]}},
            ),
            (
                {"divisions": "28", "at_rim": "0,02", "diameter": "120,5"},
                {"work": {"divisions": 28}, "tolerance": {"at_rim": 0.02, "diameter": 120.5}},
            ),
            # A comma in a count may part thousands, so it stays for the field to refuse.
            ({"divisions": "1,000"}, {"work": {"divisions": "1,000"}}),
            # A list with decimal commas is parted by semicolons, one with points by commas.
            ({"angles": "0;22,5;61°15'"}, {"work": {"angles": ["0", "22.5", "61°15'"]}}),
            ({"angles": "0,22.5,61°15'"}, {"work": {"angles": ["0", "22.5", "61°15'"]}}),
            # Offices call the thing itself a part.
            ({"part": "ratchet wheel", "divisions": "64"}, {"work": {"divisions": 64}}),
            (
                {"part": '{"kind": "flats", "sides": 6}'},
                {"work": {"part": {"kind": "flats", "sides": 6}}},
            ),
            ({"divisions": "", "angle": ""}, {"work": {}}),
        ],
    )  # fmt: skip
    def test_asks_the_question_of_the_body(self, line: dict[str, str], body: dict[str, Any]) -> None:
        found = columns(list(line))
        told = asked(found, list(line.values()))
        # Numbers are read by their decimal text; as floats they are those above.
        assert _plain(told) == body


class TestItsCells:
    def test_of_a_plain_move(self) -> None:
        question = SOLVE_IN.load({"work": {"divisions": 28}})
        assert result(solved_line(question)) == {
            "status": "200", "method": "plain", "exact": "true", "turns": "1", "holes": "21", "circle": "49",
            "plate": "3", "sector_holes": "22", "worst_seconds": "0.0",
            "summary": "Plate 3, circle 49: 1 turn and 21 spaces, arms over 22 holes",
        }  # fmt: skip

    def test_of_two_moves_and_of_gears(self) -> None:
        told = result(solved_line(SOLVE_IN.load({"work": {"divisions": 51}})))
        # 40/51 = 12/18 + 2/17.
        assert (told["holes"], told["circle"], told["second_holes"], told["second_circle"]) == ("12", "18", "2", "17")
        geared = {"work": {"divisions": 73}, "head": {"change_gears": list(TWELVE_GEARS)}}
        told = result(solved_line(SOLVE_IN.load(geared)))
        # 40 - 73 x 10/18 = -5/9 = -40/72.
        assert (told["holes"], told["circle"]) == ("10", "18")
        assert (told["spindle"], told["worm"], told["idlers"]) == ("40", "72", "2")
        assert "first_stud" not in told

    def test_of_a_train_with_a_stud(self) -> None:
        geared = {"work": {"divisions": 173}, "head": {"change_gears": list(TWELVE_GEARS)}}
        told = result(solved_line(SOLVE_IN.load(geared)))
        # 40 - 173 x 4/18 = 14/9 = 28/24 x 32/24.
        assert (told["holes"], told["circle"], told["idlers"]) == ("4", "18", "0")
        train = Fraction(int(told["spindle"]) * int(told["first_stud"]), int(told["worm"]) * int(told["second_stud"]))
        assert train == Fraction(14, 9)

    def test_of_a_dial_and_of_a_schedule(self) -> None:
        table = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"graduation": "0°01'"}}
        told = result(solved_line(SOLVE_IN.load({"work": {"divisions": 7}, "head": table})))
        assert (told["method"], told["turns"], told["exact"]) == ("dial", "12", "false")
        told = result(solved_line(SOLVE_IN.load({"work": {"divisions": 127}})))
        assert (told["method"], told["circle"], told["second_circle"]) == ("nearest", "47", "49")
        assert "turns" not in told
        assert "holes" not in told

    def test_a_decimal_is_written_as_the_sheet_writes_it(self) -> None:
        setup = solved_line(SOLVE_IN.load({"work": {"divisions": 127}}))
        with_point, with_comma = (result(setup, decimal)["worst_seconds"] for decimal in ".,")
        assert float(with_point) > 0
        assert with_comma == with_point.replace(".", ",")

    def test_of_what_was_wrong_with_the_line(self) -> None:
        assert result("A quote is not closed.") == {"status": "422", "problem": "A quote is not closed."}

    def test_of_wrong_cells_each_with_its_column(self) -> None:
        errors = [
            {"pointer": "#/work/divisions", "detail": "Give a whole number."},
            {"pointer": "#/head/plates", "detail": "Give a list."},
            {"pointer": "#/head/plates/0/2", "detail": "Too many holes."},
            {"pointer": "#/work/part/unit", "detail": "Give a unit."},
            {"pointer": "#/work", "detail": "Give some work."},
        ]
        told = result(Problem(WRONG_FIELD, "5 fields have to be changed.", errors))
        assert told == {
            "status": "422",
            "problem": "divisions: Give a whole number. plates: Give a list. plates: Too many holes. "
            "part.unit: Give a unit. Give some work.",
        }

    def test_of_a_problem_without_fields(self) -> None:
        told = result(Problem(TOO_MUCH_WORK, "This would take long."))
        assert told == {"status": "422", "problem": "This would take long."}


def test_a_line_asks_of_the_usual_head_unless_it_names_another() -> None:
    assert SOLVE_IN.load(asked({"divisions": 0}, ["28"])).head == Head()
    other = SOLVE_IN.load(asked({"divisions": 0, "ratio": 1}, ["28", "60"]))
    assert (other.head.ratio, other.work) == (60, Divisions(28))


def _plain(value: Any) -> Any:
    """Decimals as floats, for comparing."""
    if isinstance(value, dict):
        return {key: _plain(each) for key, each in value.items()}
    if isinstance(value, list):
        return [_plain(each) for each in value]
    return value if isinstance(value, str | int) else float(value)
