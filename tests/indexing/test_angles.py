"""Angles: JSON numbers and hostile texts at the door, and what is printed of them, exactly."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from dividing.indexing.angles import (
    LARGEST_TURNS,
    Angle,
    AngleError,
    angle_out,
    angle_out_of,
    decimal_degrees,
    dm_of,
    dms,
    dms_of,
    parse_angle,
    rounded,
    seconds,
)

TURNS = some.fractions(min_value=-LARGEST_TURNS, max_value=LARGEST_TURNS, max_denominator=10**9)
ANY_CHARACTER = some.characters(exclude_categories=())
GRAMMAR = some.sampled_from([*"0123456789 .,:/+-−°º'′\"″eEdms", "turn", "rad", "gon", "60", "00", "  "])
ANGLE = "an angle such as 22.5, 22°30' or 1/7 turn"
ORDINARY = "a number of at most 64 digits, with an exponent of at most 9"


class TestAJsonValue:
    @pytest.mark.parametrize("number", ["22.5", "0.1", "-0.0", "1E+2", "73", "-5"])
    def test_may_come_as_a_json_number(self, number: str) -> None:
        assert parse_angle(Decimal(number)) == Angle(Fraction(number) / 360)
        assert parse_angle(int(float(number))) == Angle(Fraction(int(float(number)), 360))

    @pytest.mark.parametrize(("degrees", "turns"), [(360_000, 1000), (-360_000, -1000), (Decimal("360000.0"), 1000)])
    def test_of_a_thousand_turns_is_still_taken(self, degrees: int | Decimal, turns: int) -> None:
        assert parse_angle(degrees) == Angle(Fraction(turns))

    @pytest.mark.parametrize(
        ("number", "sentence"),
        [
            (True, f'Stopped at character 1 of "true": expected {ANGLE}.'),
            (False, f'Stopped at character 1 of "false": expected {ANGLE}.'),
            (None, f'Stopped at character 1 of "null": expected {ANGLE}.'),
            ([10**5000], f'Stopped at character 1 of "[…]": expected {ANGLE}.'),
            ({}, f'Stopped at character 1 of "{{…}}": expected {ANGLE}.'),
            (22.5, f'Stopped at character 1 of "…": expected {ANGLE}.'),
            (360001, 'Stopped at character 1 of "360001": expected no more than 1,000 turns (360,000°).'),
            (-360001, 'Stopped at character 1 of "-360001": expected no more than 1,000 turns (360,000°).'),
            (Decimal("NaN"), 'Stopped at character 1 of "NaN": expected a number.'),
            (Decimal("sNaN"), 'Stopped at character 1 of "sNaN": expected a number.'),
            (Decimal("-Infinity"), 'Stopped at character 1 of "-Infinity": expected a number.'),
            *(
                (number, f'Stopped at character 1 of "{shown}": expected {ORDINARY}.')
                for number, shown in [
                    (10**5000, "…"),
                    (-(10**5000), "…"),
                    (Decimal("1e999999999"), "1E+999999999"),
                    (Decimal("1e-999999999"), "1E-999999999"),
                    (Decimal("0e999999999"), "0E+999999999"),
                    (Decimal("1e10"), "1E+10"),
                    (Decimal("9" * 5000), "9" * 64 + "…"),
                    (Decimal("0." + "3" * 5000), "0." + "3" * 62 + "…"),
                ]
            ),
        ],
        ids=lambda given: type(given).__name__,  # a whole number of 5,000 digits cannot be its own name
    )
    def test_that_is_no_angle_is_refused_by_the_same_error(self, number: object, sentence: str) -> None:
        with pytest.raises(AngleError, match=f"^{re.escape(sentence)}$"):
            parse_angle(number)  # type: ignore[arg-type]


class TestAnyTextWhatever:
    @staticmethod
    def read(written: str | int | Decimal) -> Angle | AngleError:
        try:
            return parse_angle(written)
        except AngleError as error:
            return error

    def read_or_refused(self, written: str | int | Decimal) -> None:
        angle = self.read(written)
        if isinstance(angle, Angle):
            assert abs(angle.turns) <= LARGEST_TURNS
            return
        where = r'Stopped at character \d+ of "[^\0\ud800-\udfff]+"' if written != "" else "Nothing is given"
        assert re.fullmatch(rf"{where}: expected .+\.", str(angle))
        assert 0 <= angle.at <= (len(written) if isinstance(written, str) else 0)

    @settings(deadline=None)
    @given(some.text(ANY_CHARACTER, max_size=80))
    def test_of_any_characters_is_read_or_refused_by_one_error(self, written: str) -> None:
        self.read_or_refused(written)

    @settings(deadline=None, max_examples=500)
    @given(some.lists(GRAMMAR, max_size=14).map("".join))
    def test_of_the_characters_of_angles_is_read_or_refused_by_one_error(self, written: str) -> None:
        self.read_or_refused(written)

    @settings(deadline=None)
    @given(some.decimals() | some.integers(-(10**80), 10**80))
    def test_or_number_is_read_or_refused_by_one_error(self, number: int | Decimal) -> None:
        self.read_or_refused(number)


class TestPrinting:
    @pytest.mark.parametrize(
        ("turns", "places", "printed"),
        [
            ("1/16", 2, "22°30'00.00\""),
            ("-1/72", 2, "-5°00'00.00\""),
            ("-1/4320", 2, "-0°05'00.00\""),
            ("0", 2, "0°00'00.00\""),
            ("1", 0, "360°00'00\""),
            ("-5/4", 1, "-450°00'00.0\""),
            # Seconds carry into minutes, and minutes into degrees.
            ("59999/1296000000", 2, "0°01'00.00\""),
            ("59994/1296000000", 2, "0°00'59.99\""),
            ("3599995/1296000000", 2, "1°00'00.00\""),
            # What rounds to nothing has no sign; a half goes away from zero either way round.
            ("-1/1000000000000", 2, "0°00'00.00\""),
            ("1/259200000", 2, "0°00'00.01\""),
            ("-1/259200000", 2, "-0°00'00.01\""),
            # What 1/7 turn leaves on tables of 4° and 5° a crank turn, and 1/17 on one of 9° (arithmetic).
            ("24/2520", 3, "3°25'42.857\""),
            ("10/2520", 3, "1°25'42.857\""),
            ("54/6120", 3, "3°10'35.294\""),
        ],
    )
    def test_in_degrees_minutes_and_seconds(self, turns: str, places: int, printed: str) -> None:
        assert dms(Fraction(turns), places) == printed

    @pytest.mark.parametrize(
        ("turns", "printed"),
        [
            ("15/73", "73°58'"),
            ("-1/72", "-5°00'"),
            ("0", "0°00'"),
            ("-1/100000000", "0°00'"),
            ("3599/1296000", "1°00'"),
        ],
    )
    def test_in_degrees_and_minutes_as_the_spindle_scale_is_read(self, turns: str, printed: str) -> None:
        assert dm_of(*Fraction(turns).as_integer_ratio()) == printed

    @pytest.mark.parametrize(
        ("turns", "printed"),
        [
            ("1/2592000", 0.5),
            ("-1/1296000", -1.0),
            ("1/3920", 330.6122),  # half a hole on 49 at 40:1
            ("-1/1000000000000", 0.0),
        ],
    )
    def test_in_seconds_of_arc(self, turns: str, printed: float) -> None:
        assert str(seconds(Fraction(turns))) == str(printed)

    @pytest.mark.parametrize(
        ("angle", "printed"),
        [
            (Angle(Fraction(1, 16)), {"degrees": 22.5, "dms": "22°30'00.00\"", "turns": "1/16"}),
            (Angle(Fraction(1)), {"degrees": 360.0, "dms": "360°00'00.00\"", "turns": "1"}),
            (Angle(Fraction(0)), {"degrees": 0.0, "dms": "0°00'00.00\"", "turns": "0"}),
            (Angle(Fraction(-1, 72)), {"degrees": -5.0, "dms": "-5°00'00.00\"", "turns": "-1/72"}),
            (Angle(Fraction(1, 8), rational=False), {"degrees": 45.0, "dms": "45°00'00.00\"", "turns": None}),
        ],
    )
    def test_as_an_answer_holds_it(self, angle: Angle, printed: dict[str, object]) -> None:
        assert angle_out(angle) == printed

    @settings(deadline=None)
    @given(TURNS, some.integers(0, 6))
    def test_and_reading_again_is_the_same_to_the_printed_places(self, turns: Fraction, places: int) -> None:
        printed = dms(turns, places)
        assert abs(parse_angle(printed).turns - turns) <= Fraction(1, 2 * 1296000 * 10**places)
        assert dms(parse_angle(printed).turns, places) == printed

    @settings(deadline=None)
    @given(TURNS)
    def test_of_whole_minutes_is_right_to_half_a_minute(self, turns: Fraction) -> None:
        assert abs(parse_angle(dm_of(turns.numerator, turns.denominator)).turns - turns) <= Fraction(1, 2 * 21600)

    @settings(deadline=None)
    @given(TURNS)
    def test_the_exact_turns_are_read_back_as_they_were(self, turns: Fraction) -> None:
        assert parse_angle(f"{angle_out(Angle(turns))['turns']} turn") == Angle(turns)

    @settings(deadline=None)
    @given(TURNS)
    def test_of_decimals_takes_the_nearest_float(self, turns: Fraction) -> None:
        assert decimal_degrees(turns) == float(turns * 360)
        assert abs(Fraction(seconds(turns)) - turns * 1296000) <= Fraction(1, 19999)
        assert "-0.0" not in (str(seconds(turns)), str(decimal_degrees(turns)))

    @settings(deadline=None)
    @given(TURNS, some.integers(1, 50))
    def test_does_not_ask_for_a_reduced_fraction(self, turns: Fraction, factor: int) -> None:
        over, under = turns.numerator * factor, turns.denominator * factor
        assert dms_of(over, under) == dms(turns)
        assert angle_out_of(over, under) == angle_out(Angle(turns))

    @settings(deadline=None)
    @given(some.integers(-(10**6), 10**6), some.integers(1, 1000))
    def test_rounds_to_the_nearest_whole_number(self, over: int, under: int) -> None:
        nearest = rounded(over, under)
        assert abs(nearest - Fraction(over, under)) <= Fraction(1, 2)
        assert rounded(-over, under) == -nearest
