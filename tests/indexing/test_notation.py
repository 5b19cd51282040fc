"""The notations of an angle: every way in which the shop writes one, and where and why a text is refused."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from dividing.indexing.angles import Angle, AngleError, parse_angle

UNITS = "a unit such as °, rad, gon or turn"
ANGLE = "an angle such as 22.5, 22°30' or 1/7 turn"
END = "the end of the angle"


def in_each_word(number: str, words: str, turns: str) -> list[tuple[str, str]]:
    return [(f"{number} {word}", turns) for word in words.split()]


class TestADecimalNumberOfDegrees:
    @pytest.mark.parametrize(
        ("written", "degrees"),
        [
            ("22.5", "22.5"),
            ("22,5", "22.5"),
            ("+22.5", "22.5"),
            ("-22.5", "-22.5"),
            ("\u221222.5", "-22.5"),
            ("\u201322.5", "-22.5"),
            ("- 22.5", "-22.5"),
            ("  22.5\t", "22.5"),
            ("\u00a022.5\u202f°\u2009", "22.5"),
            ("22.", "22"),
            (".5", "0.5"),
            (",5", "0.5"),
            ("007.50", "7.5"),
            ("0", "0"),
            ("-0", "0"),
            ("1e2", "100"),
            ("1.5E-3", "0.0015"),
            ("1e+0000000002", "100"),
            ("0e9", "0"),
        ],
    )
    def test_is_exact(self, written: str, degrees: str) -> None:
        assert parse_angle(written) == Angle(Fraction(degrees) / 360)


class TestUnits:
    @pytest.mark.parametrize(
        ("written", "turns"),
        [
            *((f"90{mark}", "1/4") for mark in "°º˚∘"),
            *in_each_word("90", "d deg degs degree degrees DEG Degrees", "1/4"),
            *((f"90{mark}", "1/240") for mark in "'′’‘´`ʹʼ"),
            *in_each_word("90", "m min mins minute minutes arcmin mins. Min", "1/240"),
            *((f"90{mark}", "1/14400") for mark in ["\"", *"″”“ʺ˝", "''", "′′", "’’", "´`"]),
            *in_each_word("90", "s sec secs second seconds arcsec sec. SEC", "1/14400"),
            *in_each_word("0.25", "turn turns rev revs revolution revolutions Turn rev.", "1/4"),
            *in_each_word("100", "gon gons grad grads gradian gradians GON grad.", "1/4"),
            ("1/7 turn", "1/7"),
            ("1/7turn", "1/7"),
            ("-1/7 turn", "-1/7"),
            ("1 1/2 turns", "3/2"),
            ("400/3 gon", "1/3"),
        ],
    )
    def test_of_an_angle_alone(self, written: str, turns: str) -> None:
        assert parse_angle(written) == Angle(Fraction(turns))

    @pytest.mark.parametrize(
        ("written", "degrees"),
        [
            ("360/7", "360/7"),
            ("360 / 7", "360/7"),
            ("360/7°", "360/7"),
            ("3 3/7", "24/7"),
            ("22 1/2°", "45/2"),
            ("45/2'", "3/8"),
            ("-1/2", "-1/2"),
            ("0/7", "0"),
            ("0 0/7", "0"),
            ("0/7 rad", "0"),
        ],
    )
    def test_of_a_fraction_are_degrees_unless_told(self, written: str, degrees: str) -> None:
        assert parse_angle(written) == Angle(Fraction(degrees) / 360)

    @pytest.mark.parametrize("word", ["rad", "rads", "radian", "radians", "Radians", "rad."])
    def test_in_radians_are_right_to_forty_places_and_not_rational(self, word: str) -> None:
        angle = parse_angle(f"0.35 {word}")
        # 0.35/(2 pi), by long division of the printed digits of pi.
        known = Fraction("0.35") / (2 * Fraction("3.14159265358979323846264338327950288419716939937510"))
        assert not angle.rational
        assert abs(angle.turns - known) < Fraction(1, 10**40)
        assert angle.radians == 0.35

    def test_of_nothing_at_all_are_rational_even_in_radians(self) -> None:
        assert parse_angle("0 rad") == Angle(Fraction(0))


class TestDegreesMinutesAndSeconds:
    @pytest.mark.parametrize(
        "written",
        [
            "22°30'15.5\"",
            "22° 30' 15.5\"",
            "22°30′15,5″",
            "22º30’15.5’’",
            "22 30 15.5",
            "22\u00a030\u00a015.5",
            "22:30:15.5",
            "22 : 30 : 15.5",
            "22d30m15.5s",
            "22D 30M 15.5S",
            "22 deg 30 min 15.5 sec",
            "22 deg. 30 min. 15.5 sec.",
            "22 degrees 30 minutes 15.5 seconds",
            "22°30 15.5",
            "22 30' 15.5",
            "22d30'15.5",
            "1350'15.5\"",
            "1350m15.5",
        ],
    )
    def test_may_be_written_in_many_ways(self, written: str) -> None:
        assert parse_angle(written) == Angle(Fraction("81015.5") / 1296000)

    @pytest.mark.parametrize(
        ("written", "arc_seconds"),
        [
            ("22°", 79200),
            ("22°30", 81000),
            ("22 30", 81000),
            ("22:30", 81000),
            ("24'", 1440),
            ('30"', 30),
            ("75'30\"", 4530),
            ('22°15"', 79215),
            ("0°00'10\"", 10),
            ("22°05'", 79500),
            ("400°59'59\"", 1443599),
        ],
    )
    def test_may_leave_parts_out(self, written: str, arc_seconds: int) -> None:
        assert parse_angle(written) == Angle(Fraction(arc_seconds, 1296000))

    @pytest.mark.parametrize("written", ["-5°30'", "\u22125 30", "-5:30", "- 5d30m"])
    def test_take_the_sign_as_a_whole(self, written: str) -> None:
        assert parse_angle(written).degrees == Fraction("-5.5")

    @settings(deadline=None)
    @given(
        some.integers(0, 999),
        some.integers(0, 59),
        some.integers(0, 59),
        some.integers(0, 999),
        some.sampled_from(["{}°{}'{}.{}\"", "{} {} {}.{}", "{}:{}:{}.{}", "{}d{}m{},{}s", "{}° {}′ {}.{}″"]),
    )
    def test_add_up(self, degree: int, minute: int, second: int, thousandths: int, form: str) -> None:
        written = form.format(degree, minute, second, f"{thousandths:03}")
        total = degree + Fraction(minute, 60) + Fraction(second * 1000 + thousandths, 3600_000)
        assert parse_angle(written).degrees == total


class TestWhatCannotBeRead:
    @pytest.mark.parametrize(
        ("written", "at", "expected"),
        [
            ("   ", 3, ANGLE),
            ("nan", 0, ANGLE),
            ("inf", 0, ANGLE),
            ("-Infinity", 1, ANGLE),
            ("--5", 1, ANGLE),
            ("°", 0, ANGLE),
            (".", 0, ANGLE),
            ("1/-7", 2, "a whole number below the line"),
            ("22°75'", 3, "minutes below 60"),
            ("22 60", 3, "minutes below 60"),
            ("22:00:60", 6, "seconds below 60"),
            ("22°30'60\"", 6, "seconds below 60"),
            ('22°60"', 3, "seconds below 60"),
            ("22°30'59.9999\"x", 14, END),
            ("22.5°30'", 2, "whole degrees before minutes"),
            ("22,5 30", 2, "whole degrees before minutes"),
            ("22. 30", 2, "whole degrees before minutes"),
            ("22.5:30", 2, "whole degrees before minutes"),
            ('22.5°30"', 2, "whole degrees before seconds"),
            ("22°30.5'15\"", 5, "whole minutes before seconds"),
            ("1e1 30", 1, "whole degrees before minutes"),
            ('30 15"', 5, "minutes after degrees"),
            ('15" 20', 4, END),
            ("15' 20°", 6, "seconds after minutes"),
            ("22 30 turn", 6, "minutes after degrees"),
            ("22°30°", 5, "minutes or seconds after degrees"),
            ("22°-30'", 3, f"minutes, or seconds, or {END}"),
            ("22'-30", 3, f"seconds, or {END}"),
            ("22 30 15 10", 9, END),
            ("22:", 3, "minutes"),
            ("22:30:", 6, "seconds"),
            ("22:30:15:", 8, END),
            ("22:.5", 3, "minutes"),
            ("22:30'", 5, f"seconds, or {END}"),
            ("22 .5", 3, f"{UNITS}, or {END}"),
            ("22d.5", 3, f"minutes, or seconds, or {END}"),
            ("5 furlongs", 2, UNITS),
            ("5 dm", 2, UNITS),
            ("5-3", 1, f"{UNITS}, or {END}"),
            ("5;", 1, f"{UNITS}, or {END}"),
            ("1.2.3", 3, f"{UNITS}, or {END}"),
            ("1,234.5", 5, f"{UNITS}, or {END}"),
            ("22,", 2, f"{UNITS}, or {END}"),
            ("1 turn 30'", 7, END),
            ("1/7 turn 5", 9, END),
            ("1/7 5", 4, f"{UNITS}, or {END}"),
            ("1/0", 2, "a number above 0 below the line"),
            ("3 1/00", 4, "a number above 0 below the line"),
            ("1/", 2, "a whole number below the line"),
            ("7.5/2", 3, "whole numbers above and below the line, as in 360/7"),
            ("1/2/3", 3, "whole numbers above and below the line, as in 360/7"),
            ("22° 1/2", 5, "whole numbers above and below the line, as in 360/7"),
            ("22 30/7", 3, "a fraction below 1 after the whole number"),
            ("1 7/7", 2, "a fraction below 1 after the whole number"),
            ("1e10", 2, "an exponent from -9 to 9"),
            ("1e-10", 2, "an exponent from -9 to 9"),
            ("1e999999999", 2, "an exponent from -9 to 9"),
            ("1_000", 1, f"{UNITS}, or {END}"),
            ("0x10", 1, UNITS),
            ("٢٢", 0, "the digits 0 to 9"),
            ("2２", 1, "the digits 0 to 9"),
            ("22²", 2, "the digits 0 to 9"),
            ("400000", 0, "no more than 1,000 turns (360,000°)"),
            ("-1001 turns", 1, "no more than 1,000 turns (360,000°)"),
            ("1e9", 0, "no more than 1,000 turns (360,000°)"),
        ],
    )
    def test_stops_at_its_character_and_says_what_was_expected(
        self, written: str, at: int, expected: str
    ) -> None:
        with pytest.raises(AngleError) as stopped:
            parse_angle(written)
        assert str(stopped.value) == f'Stopped at character {at + 1} of "{written}": expected {expected}.'
        assert (stopped.value.at, stopped.value.expected) == (at, expected)

    @pytest.mark.parametrize(
        ("written", "sentence"),
        [
            ("", f"Nothing is given: expected {ANGLE}."),
            ("22\0", f'Stopped at character 3 of "22\ufffd": expected {UNITS}, or {END}.'),
            ("\ud800", f'Stopped at character 1 of "\ufffd": expected {ANGLE}.'),
            ("22\u202e5", f'Stopped at character 3 of "22\ufffd5": expected {UNITS}, or {END}.'),
            ("9" * 65, f'Stopped at character 65 of "{"9" * 64}…": expected no more than 64 characters.'),
            ("9" * 5000, f'Stopped at character 65 of "{"9" * 64}…": expected no more than 64 characters.'),
            (" " * 65, f'Stopped at character 65 of "{" " * 64}…": expected no more than 64 characters.'),
        ],
    )
    def test_is_never_repeated_in_a_way_that_harms(self, written: str, sentence: str) -> None:
        with pytest.raises(AngleError, match=f"^{re.escape(sentence)}$"):
            parse_angle(written)

    def test_sixty_four_characters_are_still_read(self) -> None:
        assert parse_angle("0" * 62 + "45").turns == Fraction(1, 8)
        assert parse_angle("22." + "5" * 61).turns == Fraction("22." + "5" * 61) / 360
