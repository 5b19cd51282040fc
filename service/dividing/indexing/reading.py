"""Numbers as they arrive, text or JSON, made into a `Fraction`, without the surprises that `int()` swallows.

Only the digits 0 to 9 count, a text is at most 64 characters, an exponent at most 9 either way; all of it is
looked at before any number is made, so that a short hostile text can never become a long calculation.

    number   = [sign] ( fraction | decimal )
    fraction = [digits spaces] digits "/" digits        360/7   3 3/7
    decimal  = digits ["." [digits] | "," digits] [exponent] | ("." | ",") digits [exponent]
    exponent = "e" ["+" | "-"] digits                   1.5e3
"""

import re
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import NoReturn

LONGEST_TEXT = 64
LARGEST_EXPONENT = 9
ORDINARY = f"a number of at most {LONGEST_TEXT} digits, with an exponent of at most {LARGEST_EXPONENT}"

# Sixty decimals: an angle of 1,000 turns through this rational is right to 1e-55 of a turn.
PI = Fraction(3141592653589793238462643383279502884197169399375105820974944, 10**60)

SPACE = "[ \\t\\r\\n\u00a0\u2000-\u200a\u202f\u205f\u3000]"
SPACES = re.compile(f"{SPACE}*")
SIGN = re.compile("[-+\u2212\u2010\u2011\u2013]")
# No repeated group holds another repetition, so the patterns take time in proportion to the text.
FRACTION = re.compile(
    rf"""(?: (?P<whole> [0-9]+ ) {SPACE}+ )?        # the 3 of 3 3/7
         (?P<over> [0-9]+ ) {SPACE}* / {SPACE}*     # what stands above the line
         (?P<under> [0-9]* )                        # what stands below it; none is told as a fault of its own
    """,
    re.VERBOSE,
)
DECIMAL = re.compile(
    r"""(?= [.,]? [0-9] )                           # a digit first, or a point or comma with a digit after it
        (?P<whole> [0-9]* )
        (?P<part> \. [0-9]* | , [0-9]+ )?
        (?: [eE] (?P<exponent> [+-]? [0-9]+ ) )?
    """,
    re.VERBOSE,
)


class ReadingError(ValueError):
    """A text that could not be read: `at` is where reading stopped (from 0), `expected` what was wanted.

    >>> str(ReadingError("12x", 2, "a digit"))
    'Stopped at character 3 of "12x": expected a digit.'
    """

    def __init__(self, given: str, at: int, expected: str) -> None:
        where = f'Stopped at character {at + 1} of "{shown(given)}"' if given else "Nothing is given"
        super().__init__(f"{where}: expected {expected}.")
        self.at = at
        self.expected = expected


class NumberError(ReadingError):
    """A text that is no number.

    >>> str(NumberError("1/0", 2, "a number above 0 below the line"))
    'Stopped at character 3 of "1/0": expected a number above 0 below the line.'
    """


def shown(given: str) -> str:
    """Give a text fit to be printed in a sentence: at most 64 characters, none that a terminal would act on.

    >>> shown("22\\0" + "9" * 70)
    '22�9999999999999999999999999999999999999999999999999999999999999…'
    """
    kept = given[:LONGEST_TEXT]
    marks = [mark if mark.isprintable() else " " if mark.isspace() else "\ufffd" for mark in kept]
    return "".join(marks) + ("…" if len(given) > len(kept) else "")


@dataclass(slots=True)
class Reader:
    """A text and the place that reading has reached; a class, since every rule of a grammar moves it on."""

    text: str
    fault: type[ReadingError] = NumberError
    at: int = 0

    def __post_init__(self) -> None:
        if len(self.text) > LONGEST_TEXT:
            self.stop(f"no more than {LONGEST_TEXT} characters", LONGEST_TEXT)

    def match(self, pattern: re.Pattern[str]) -> re.Match[str] | None:
        """Match the pattern here and move past it, or stay."""
        found = pattern.match(self.text, self.at)
        if found:
            self.at = found.end()
        return found

    def take(self, pattern: re.Pattern[str]) -> str:
        """Give the text matched here, empty if none, with the spaces after it passed over."""
        found = self.match(pattern)
        self.match(SPACES)
        return found.group() if found else ""

    @property
    def ended(self) -> bool:
        """Say whether the whole text has been read."""
        return self.at == len(self.text)

    def stop(self, expected: str, at: int | None = None) -> NoReturn:
        """Refuse the text, here or at the character given."""
        place = self.at if at is None else at
        if place < len(self.text) and self.text[place].isdigit() and not self.text[place].isascii():
            expected = "the digits 0 to 9"
        raise self.fault(self.text, place, expected)


@dataclass(frozen=True, slots=True)
class Numeral:
    """A number without its sign, where it began, and where its decimals or exponent began (None: whole)."""

    value: Fraction
    at: int
    part_at: int | None = None


def read_sign(reader: Reader) -> int:
    """Read the sign that may stand before a whole text: 1 or -1; hyphens and dashes count as a minus.

    >>> read_sign(Reader("\u22125")), read_sign(Reader("+5")), read_sign(Reader("5"))
    (-1, 1, 1)
    """
    reader.take(SPACES)
    return 1 if reader.take(SIGN) in ("", "+") else -1


def read_fraction(reader: Reader) -> Fraction | None:
    """Read a fraction, alone or after a whole number; None where the text here is not one.

    >>> read_fraction(Reader("3 3/7")), read_fraction(Reader("22 30"))
    (Fraction(24, 7), None)
    """
    found = reader.match(FRACTION)
    if found is None:
        return None
    whole, over, under = found.group("whole", "over", "under")
    if not under:
        reader.stop("a whole number below the line")
    if not int(under):
        reader.stop("a number above 0 below the line", found.start("under"))
    # "22 30/7" could be a fraction of a minute; only a proper fraction after a whole number has one meaning.
    if whole and int(over) >= int(under):
        reader.stop("a fraction below 1 after the whole number", found.start("over"))
    return int(whole or 0) + Fraction(int(over), int(under))


def read_decimal(reader: Reader, expected: str) -> Numeral:
    """Read a decimal number with a point or a comma; refuse with what was expected where none stands.

    >>> read_decimal(Reader("0,35"), "a number").value
    Fraction(7, 20)
    """
    found = reader.match(DECIMAL)
    if found is None:
        reader.stop(expected)
    whole, part, exponent = found["whole"], (found["part"] or ".")[1:], found["exponent"] or ""
    if len(exponent.lstrip("+-").lstrip("0")) > 1:
        reader.stop(f"an exponent from -{LARGEST_EXPONENT} to {LARGEST_EXPONENT}", found.start("exponent"))
    value = Fraction(int(whole + part), 10 ** len(part))
    if exponent:
        value *= Fraction(10) ** int(exponent)
    is_whole = found.end() == found.end("whole")
    return Numeral(value, found.start(), None if is_whole else found.end("whole"))


def read_number(given: str) -> Fraction:
    """Give the exact value of a number written as a decimal, a fraction or a mixed number.

    >>> read_number("0.35"), read_number("0,35"), read_number("-360/7"), read_number("1.5e3")
    (Fraction(7, 20), Fraction(7, 20), Fraction(-360, 7), Fraction(1500, 1))
    """
    reader = Reader(given)
    sign = read_sign(reader)
    value = read_fraction(reader)
    if value is None:
        value = read_decimal(reader, "a number such as 0.35 or 360/7").value
    reader.take(SPACES)
    if not reader.ended:
        reader.stop("the end of the number")
    return sign * value


def exact(number: int | Decimal, fault: type[ReadingError] = NumberError) -> Fraction:
    """Give the exact value of a JSON number, refused unless it is finite and of a sensible length.

    >>> exact(Decimal("22.5"))
    Fraction(45, 2)
    >>> exact(Decimal("nan"))
    Traceback (most recent call last):
    dividing.indexing.reading.NumberError: Stopped at character 1 of "NaN": expected a number.
    """
    if isinstance(number, bool):
        raise fault(str(number).lower(), 0, "a number")
    if isinstance(number, int):
        if abs(number) < 10**LONGEST_TEXT:
            return Fraction(number)
        raise fault("…", 0, ORDINARY)
    _, digits, exponent = number.as_tuple()
    if not isinstance(exponent, int):
        raise fault(str(number), 0, "a number")
    # A small number arrives with the same exponent whether it was written 0.0000000001 or 1e-10.
    if len(digits) > LONGEST_TEXT or not -LONGEST_TEXT <= exponent <= LARGEST_EXPONENT:
        raise fault(str(number), 0, ORDINARY)
    return Fraction(number)
