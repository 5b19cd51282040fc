"""Slips with degrees, each undone by hand: minutes as decimals, and a rounded step added up."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import Dial, Head
from dividing.indexing.verifying.case import Case, Undone
from dividing.indexing.verifying.claims import Claim
from dividing.indexing.verifying.slips_of_angle import minutes_read_as_decimals, misread, rounded_step_added_up
from dividing.indexing.work import Arc, Divisions

TABLE = Head(90, (), direct_circles=(), dial=Dial(Fraction(1, 21600)))
FINE = replace(TABLE, dial=Dial(Fraction(1, 21600), Fraction(1, 129600)))
FIFTY = replace(TABLE, ratio=50)
BOTH = replace(TABLE, plates=((20,),))
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
            # Ten minutes have two figures.
            ("15°10'", [("15.1", "15.10°")]),
            # Sixty hundredths are no minutes, nor are seventy-five.
            ("8.6", [("8.36", "8.36°"), ("8.1", "8°06'")]),
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

    @pytest.mark.parametrize(
        ("angle", "claim", "right", "explanation"),
        [
            # 13.5 taken for 13°50' is 83/54 turns of 9°, 1 29/54; 13.5/9 is 1 1/2.
            ("13.5", Claim("plain", 1, 29, 54), Claim("plain", 1, 27, 54),
             "You took 13.5° for 13°50'. A degree has 60 minutes, not 100: 13.5° is 13°30'."),
            # 10.4 taken for 10°04' is 151/135 turns, 1 16/135; 10.4/9 is 1 7/45, 1 21/135.
            ("10.4", Claim("plain", 1, 16, 135), Claim("plain", 1, 21, 135),
             "You took 10.4° for 10°04'. A degree has 60 minutes, not 100: 10.4° is 10°24'."),
        ],
    )  # fmt: skip
    def test_decimals_read_as_minutes_are_told_as_they_were_given(
        self, angle: str, claim: Claim, right: Claim, explanation: str
    ) -> None:
        case = Case(Arc(parse_angle(angle)), Head(plates=((54, 135),)), claim)
        assert Undone(right, explanation) in list(minutes_read_as_decimals(case))

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


def rounded_by(by: str, added_up: str, step: str) -> str:
    return (
        f"The step is rounded by {by}{added_up}. Work every position from zero and round only what you set: k times "
        f"the exact step, {step}."
    )


def round_the_work(cuts: int, closes: str) -> str:
    return f"; added up over {cuts} cuts it closes {closes} off"


class TestARoundedStep:
    @pytest.mark.parametrize(
        ("work", "head", "claim", "right", "by", "closes", "step"),
        [
            # A seventh is 12 turns and 3 3/7°; 3°26' is 2/7 of a minute more, 120 seconds over seven cuts.
            (Divisions(7), TABLE, (12, "3°26'"), (12, "24/7"), '17.14"', "0°02'", "12 turns and 3 3/7°"),
            # 360/64 = 5 5/8°: 1 turn and 1°37'30", half a minute from either minute; 64 halves are 32 minutes.
            (Divisions(64), TABLE, (1, "1°38'"), (1, "13/8"), '30.00"', '0°32\'', "1 turn and 1 5/8°"),
            # 2°15' of a turn of 4°, to whole degrees a quarter of one off.
            (Divisions(160), TABLE, (0, "2"), (0, "9/4"), "0°15'", "40°", "2 1/4°"),
            # 3°25'42.86" to the ten seconds of the vernier: 20/7 seconds over seven cuts.
            (Divisions(7), FINE, (12, "3°25'40\""), (12, "24/7"), '2.86"', '20.00"', "12 turns and 3 3/7°"),
            # A turn of 7 1/5°: 51 3/7° is 7 turns and 1 1/35°. Rounded to whole degrees of the dial, 1/35° off, ...
            (Divisions(7), FIFTY, (7, "1"), (7, "36/35"), '0°01\'42.86"', "0°12'", "7 turns and 1 1/35°"),
            # ... and to whole degrees of the table, 51°, 3/7° off.
            (Divisions(7), FIFTY, (7, "0°36'"), (7, "36/35"), '0°25\'42.86"', "3°", "7 turns and 1 1/35°"),
        ],
    )  # fmt: skip
    def test_to_any_place_of_a_dial_in_degrees(
        self, work: Divisions, head: Head, claim: tuple[int, str], right: tuple[int, str], by: str, closes: str,
        step: str,
    ) -> None:  # fmt: skip
        case = Case(work, head, Claim("dial", claim[0], reading=parse_angle(claim[1])))
        said = rounded_by(by, round_the_work(work.count, closes), step)
        assert list(rounded_step_added_up(case)) == [
            Undone(Claim("dial", right[0], reading=Angle(Fraction(right[1]) / 360)), said)
        ]

    @pytest.mark.parametrize(
        ("work", "claim", "right", "by", "closes", "step"),
        [
            # 90/160 = 56 1/4 of 100 divisions; a quarter of 2'24" is 36 seconds, over 160 cuts 96 minutes.
            (Divisions(160), (0, 56), (0, "225/4"), '36.00"', "1°36'", "56 1/4 divisions"),
            # 90/7 = 12 turns and 85 5/7 of 100 divisions; 86 is 2/7 of 1/9,000 of a turn more, 41.14 seconds.
            (Divisions(7), (12, 86), (12, "600/7"), '41.14"', "0°04'48.00\"", "12 turns and 85 5/7 divisions"),
        ],
    )
    def test_to_a_division_of_a_dial(
        self, work: Divisions, claim: tuple[int, int], right: tuple[int, str], by: str, closes: str, step: str
    ) -> None:
        case = Case(work, LINES, Claim("dial", claim[0], divisions=Fraction(claim[1])))
        said = rounded_by(by, round_the_work(work.count, closes), step)
        assert list(rounded_step_added_up(case)) == [
            Undone(Claim("dial", right[0], divisions=Fraction(right[1])), said)
        ]

    @pytest.mark.parametrize(
        ("angle", "count", "added_up"),
        [
            # Five features of 7°59'40" at 8°, two turns of 4°, are four moves of 20 seconds too much.
            ("7°59'40\"", 5, '; added up over 4 moves it leaves the last cut 0°01\'20.00" off'),
            # Between two features there is one move, and nothing to add up.
            ("7°59'40\"", 2, ""),
        ],
    )
    def test_along_an_arc_it_is_added_up_to_the_last_cut(self, angle: str, count: int, added_up: str) -> None:
        case = Case(Arc(parse_angle(angle), count), TABLE, Claim("dial", 2, reading=parse_angle("0")))
        said = rounded_by('20.00"', added_up, "1 turn and 3 179/180°")
        assert [undone.explanation for undone in rounded_step_added_up(case)] == [said]

    def test_an_arc_that_comes_home_closes_like_divisions(self) -> None:
        # Seven of a seventh of a turn.
        case = Case(Arc(parse_angle("1/7 turn"), 7), TABLE, Claim("dial", 12, reading=parse_angle("3°26'")))
        said = rounded_by('17.14"', round_the_work(7, "0°02'"), "12 turns and 3 3/7°")
        assert [undone.explanation for undone in rounded_step_added_up(case)] == [said]

    def test_a_division_short_of_two_turns_is_rounded_too(self) -> None:
        # A division is 2'24"; 7.99° is a quarter of one, 36 seconds, short of two turns: 144 over four moves.
        case = Case(Arc(parse_angle("7.99"), 5), LINES, Claim("dial", 2, divisions=Fraction(0)))
        added_up = "; added up over 4 moves it leaves the last cut 0°02'24.00\" off"
        said = rounded_by('36.00"', added_up, "1 turn and 99 3/4 divisions")
        assert list(rounded_step_added_up(case)) == [Undone(Claim("dial", 1, divisions=Fraction("399/4")), said)]

    @pytest.mark.parametrize(
        ("divisions", "head", "claim"),
        [
            (7, BOTH, Claim("plain", 12, 15, 20)),  # 51° where 51 3/7° is wanted, but set by a plate
            (7, TABLE, Claim("dial", 12)),
            (7, TABLE, Claim("dial", 12, reading=parse_angle("24/7"))),  # exact, nothing was rounded
            (7, TABLE, Claim("dial", 12, reading=parse_angle("5"))),  # farther off than any rounding
            (7, TABLE, Claim("dial", 12, reading=Angle(Fraction(24, 7 * 360) + Fraction(1, 10**9)))),  # on no reading
            (7, LINES, Claim("dial", 12, divisions=Fraction(857, 10))),  # on no line
            (7, LINES, Claim("dial", 12, divisions=Fraction(87))),
            (7, LINES, Claim("dial", 12, divisions=Fraction(75))),  # 51°, but this dial has no degrees to round to
            (7, Head(), Claim("dial", 12, reading=parse_angle("3°26'"))),  # no dial to set
            (7, Head(), Claim("plain", 5, 14, 20)),
            (9, TABLE, Claim("dial", 10, reading=parse_angle("0"))),  # exact, and on the dial
            (17, LINES, Claim("dial", 5, divisions=Fraction(30))),  # 9,000/17 = 529 7/17, more than half a division off
        ],
        ids=str,
    )
    def test_is_not_seen_where_none_was_added_up(self, divisions: int, head: Head, claim: Claim) -> None:
        assert list(rounded_step_added_up(Case(Divisions(divisions), head, claim))) == []
