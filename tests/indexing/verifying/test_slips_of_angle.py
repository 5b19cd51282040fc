"""Slips with degrees, each undone by hand: minutes as decimals, and a rounded step added up."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import Dial, Head
from dividing.indexing.verifying.case import Case, Undone
from dividing.indexing.verifying.claims import Claim
from dividing.indexing.verifying.slips_of_angle import minutes_read_as_decimals, misread, rounded_step_added_up
from dividing.indexing.work import Arc, Divisions

TABLE = Head(90, (), direct_circles=(), dial=Dial(Fraction(1, 21600)))
LINES = Head(90, (), direct_circles=(), dial=Dial(divisions=100))


def degrees(turns: Fraction) -> Fraction:
    return turns * 360


class TestWaysToMisread:
    @pytest.mark.parametrize(
        ("angle", "ways"),
        [
            # Minutes written as hundredths; half a degree as fifty minutes, or five tenths as five minutes.
            ("15°30'", [("15.3", "15.30°"), ("95/6", "15°50'"), ("181/12", "15°05'")]),
            # A single minute's figure may go into the first place or the second.
            ("22°05'", [("22.05", "22.05°"), ("22.5", "22.5°")]),
            ("15°30'15\"", [("15.3015", "15.3015°")]),
            ("10.4", [("10.24", "10.24°"), ("32/3", "10°40'"), ("151/15", "10°04'")]),
            # Seventy-five hundredths are no minutes.
            ("8.75", [("8.45", "8.45°")]),
            ("90", []),
            ("1/7 turn", []),
        ],
    )
    def test_are_told_with_how_they_were_written(self, angle: str, ways: list[tuple[str, str]]) -> None:
        found = [(degrees(read), written) for read, written in misread(parse_angle(angle).turns)]
        assert found == [(Fraction(read), written) for read, written in ways]


class TestMinutesReadAsDecimals:
    def test_in_the_angle_that_was_asked_for(self) -> None:
        # 15.30/9 = 1 14/20 where 15.5/9 = 1 13/18 is wanted.
        case = Case(Arc(parse_angle("15°30'")), Head(), Claim("plain", 1, 14, 20))
        first = next(minutes_read_as_decimals(case))
        assert first == Undone(
            Claim("plain", 1, 13, 18),
            "You took 15°30' for 15.30°. A degree has 60 minutes: 15°30' is 15 1/2°, and 0.01° is 36 seconds.",
        )

    def test_in_the_reading_of_a_dial(self) -> None:
        # A sixteenth is 22°30', five turns of 4° and 2°30'.
        case = Case(Divisions(16), TABLE, Claim("dial", 5, reading=parse_angle("2.30")))
        *_, last = minutes_read_as_decimals(case)
        assert last == Undone(
            Claim("dial", 5, reading=parse_angle("2.5")),
            "You took 2°30' for 2.30°. A degree has 60 minutes: 2°30' is 2 1/2°, and 0.01° is 36 seconds.",
        )

    @pytest.mark.parametrize(
        "claim",
        [
            Claim("dial", 5, reading=parse_angle("2.5")),  # right
            Claim("dial", 5, reading=parse_angle("2.4")),  # wrong another way
            Claim("dial", 6, reading=parse_angle("2.3")),  # a turn too many: nothing is left to misread
            Claim("dial", 5, divisions=Fraction(3)),
        ],
        ids=str,
    )
    def test_is_not_seen_where_it_was_not_made(self, claim: Claim) -> None:
        assert list(minutes_read_as_decimals(Case(Divisions(16), TABLE, claim))) == []


class TestARoundedStep:
    def test_in_degrees(self) -> None:
        # A seventh is 12 turns and 3 3/7°; 3°26' is 2/7 of a minute more, 120 seconds over seven cuts.
        case = Case(Divisions(7), TABLE, Claim("dial", 12, reading=parse_angle("3°26'")))
        assert list(rounded_step_added_up(case)) == [
            Undone(
                Claim("dial", 12, reading=parse_angle("24/7")),
                'The step is rounded by 17.14"; added up over 7 cuts it closes 120.00" off. Work every position from '
                "zero and round only what you set: k times the exact step, 12 turns and 3 3/7°.",
            )
        ]

    def test_in_divisions_of_the_dial(self) -> None:
        # 90/7 = 12 turns and 85 5/7 of 100 divisions; 86 is 2/7 of 1/9,000 of a turn more, 41.14 seconds.
        case = Case(Divisions(7), LINES, Claim("dial", 12, divisions=Fraction(86)))
        (undone,) = rounded_step_added_up(case)
        assert undone.claim == Claim("dial", 12, divisions=Fraction(600, 7))
        assert undone.explanation.startswith(
            'The step is rounded by 41.14"; added up over 7 cuts it closes 288.00" off.'
        )

    @pytest.mark.parametrize(
        ("head", "claim"),
        [
            (TABLE, Claim("dial", 12, reading=parse_angle("24/7"))),  # exact, nothing was rounded
            (TABLE, Claim("dial", 12, reading=parse_angle("5"))),  # farther off than any rounding
            (TABLE, Claim("dial", 12, reading=Angle(Fraction(24, 7 * 360) + Fraction(1, 10**9)))),  # on no reading
            (LINES, Claim("dial", 12, divisions=Fraction(857, 10))),  # on no line
            (LINES, Claim("dial", 12, divisions=Fraction(87))),
            (Head(), Claim("dial", 12, reading=parse_angle("3°26'"))),  # no dial to set
            (Head(), Claim("plain", 5, 14, 20)),
        ],
        ids=str,
    )
    def test_is_not_seen_where_none_was_added_up(self, head: Head, claim: Claim) -> None:
        assert list(rounded_step_added_up(Case(Divisions(7), head, claim))) == []
