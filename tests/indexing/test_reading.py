"""Numbers as they arrive: exact, bounded, and in the digits 0 to 9 only."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from dividing.indexing.reading import PI, NumberError, exact, read_number, shown

NUMBER = "a number such as 0.35 or 360/7"
ORDINARY = "a number of at most 64 digits, with an exponent of at most 9"


class TestANumber:
    @pytest.mark.parametrize(
        ("written", "value"),
        [
            ("0.35", "7/20"),
            ("0,35", "7/20"),
            (".35", "7/20"),
            ("73", "73"),
            ("73.", "73"),
            ("-360/7", "-360/7"),
            (" 360 / 7 ", "360/7"),
            ("3 3/7", "24/7"),
            ("\u22123 3/7", "-24/7"),
            ("1.5e3", "1500"),
            ("1e-9", "1/1000000000"),
            ("+0", "0"),
        ],
    )
    def test_is_exact(self, written: str, value: str) -> None:
        assert read_number(written) == Fraction(value)

    @settings(deadline=None)
    @given(some.fractions(max_denominator=10**20).filter(lambda value: abs(value) < 10**20))
    def test_written_as_a_fraction_is_read_back(self, value: Fraction) -> None:
        assert read_number(str(value)) == value

    @settings(deadline=None)
    @given(some.integers(-(10**30), 10**30), some.integers(1, 9), some.sampled_from(".,"))
    def test_with_a_point_or_a_comma_is_what_it_was_before_its_figures_were_parted(
        self, figures: int, places: int, mark: str
    ) -> None:
        digits = f"{abs(figures):0{places + 1}}"
        sign = "-" if figures < 0 else ""
        written = f"{sign}{digits[:-places]}{mark}{digits[-places:]}"
        assert read_number(written) == Fraction(figures, 10**places)


class TestWhatIsNoNumber:
    @pytest.mark.parametrize(
        ("written", "at", "expected"),
        [
            ("nan", 0, NUMBER),
            ("inf", 0, NUMBER),
            ("-", 1, NUMBER),
            ("1_000", 1, "the end of the number"),
            ("5 mm", 2, "the end of the number"),
            ("1/2/3", 3, "the end of the number"),
            ("1.5/2", 3, "the end of the number"),
            ("1/0", 2, "a number above 0 below the line"),
            ("1/", 2, "a whole number below the line"),
            ("3 7/3", 2, "a fraction below 1 after the whole number"),
            ("1e10", 2, "an exponent from -9 to 9"),
            ("1e-999999999", 2, "an exponent from -9 to 9"),
            ("٣", 0, "the digits 0 to 9"),
            ("1/٣", 2, "the digits 0 to 9"),
        ],
    )
    def test_is_refused_where_it_goes_wrong(self, written: str, at: int, expected: str) -> None:
        with pytest.raises(NumberError) as stopped:
            read_number(written)
        assert str(stopped.value) == f'Stopped at character {at + 1} of "{written}": expected {expected}.'
        assert (stopped.value.at, stopped.value.expected) == (at, expected)

    def test_is_told_without_a_place_where_there_is_nothing(self) -> None:
        with pytest.raises(NumberError, match=f"^Nothing is given: expected {NUMBER}\\.$"):
            read_number("")

    @settings(deadline=None)
    @given(some.text(some.characters(exclude_categories=()), max_size=80))
    def test_in_any_characters_is_refused_by_one_error(self, written: str) -> None:
        try:
            value: Fraction | NumberError = read_number(written)
        except NumberError as error:
            value = error
        assert str(value).encode()
        assert isinstance(value, NumberError) or abs(value) < 10**74


class TestAJsonNumber:
    @pytest.mark.parametrize("number", ["0", "-5", "0.1", "-22.50", "1E+9", "1E-64", "9" * 64])
    def test_is_exact(self, number: str) -> None:
        assert exact(Decimal(number)) == Fraction(number)

    def test_of_sixty_four_digits_is_still_taken(self) -> None:
        assert exact(-(10**64 - 1)) == 1 - Fraction(10) ** 64
        assert exact(10**64 - 1) == Fraction(10) ** 64 - 1

    @pytest.mark.parametrize(
        ("number", "printed", "expected"),
        [
            (True, "true", "a number"),
            (Decimal("nan"), "NaN", "a number"),
            (Decimal("inf"), "Infinity", "a number"),
            (10**5000, "…", ORDINARY),
            (10**64, "…", ORDINARY),
            (-(10**64), "…", ORDINARY),
            (Decimal("1e10"), "1E+10", ORDINARY),
            (Decimal("1e-65"), "1E-65", ORDINARY),
            (Decimal("1" * 65), "1" * 64 + "…", ORDINARY),
        ],
        ids=lambda given: type(given).__name__,  # a whole number of 5,000 digits cannot be its own name
    )
    def test_out_of_bounds_is_refused(self, number: int | Decimal, printed: str, expected: str) -> None:
        sentence = f'Stopped at character 1 of "{printed}": expected {expected}.'
        with pytest.raises(NumberError, match=f"^{re.escape(sentence)}$"):
            exact(number)


class TestATextInASentence:
    @pytest.mark.parametrize(
        ("written", "printed"),
        [
            ("22\t30\n15\u2003", "22 30 15 "),
            ("22\0\x1b\u202e", "22\ufffd\ufffd\ufffd"),
            ("9" * 64, "9" * 64),
            ("9" * 64 + "0", "9" * 64 + "…"),
            ("", ""),
        ],
    )
    def test_is_cut_and_made_harmless(self, written: str, printed: str) -> None:
        assert shown(written) == printed

    @settings(deadline=None)
    @given(some.text(some.characters(exclude_categories=())))
    def test_can_always_be_sent_and_printed(self, written: str) -> None:
        printed = shown(written)
        assert printed.isprintable()
        assert printed.encode("utf-8") or not written
        assert len(printed) <= 65

    @settings(deadline=None)
    @given(some.text(some.characters(categories=["L", "N", "P"]), max_size=64))
    def test_stays_as_it_was_where_it_is_harmless(self, written: str) -> None:
        assert shown(written) == written


def test_pi_is_right_to_its_last_figure() -> None:
    """By 16 arctan(1/5) - 4 arctan(1/239), the series summed in exact fractions."""

    def arctan_of_one_over(whole: int) -> Fraction:
        return sum((Fraction((-1) ** k, (2 * k + 1) * whole ** (2 * k + 1)) for k in range(50)), Fraction(0))

    assert abs(PI - 16 * arctan_of_one_over(5) + 4 * arctan_of_one_over(239)) < Fraction(1, 10**60)
