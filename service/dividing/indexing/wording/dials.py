"""A dial's reading as it is set: degrees, minutes and seconds, or plain divisions."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from ..angles import dms_of
from ..head import Head
from ..positions import DialSet
from .figures import mixed


def reading_text(setting: DialSet, head: Head) -> str:
    """What to set the dial to, to its graduation or vernier.

    >>> from dividing.indexing.head import Dial
    >>> from dividing.indexing.positions import dial_set
    >>> table = Head(ratio=90, plates=(), dial=Dial(graduation=Fraction(1, 21600)))
    >>> reading_text(dial_set(Fraction(1, 7), table), table)
    "3°26'"
    """
    return reading_texts([setting], head)[0]


def reading_told(setting: DialSet, head: Head) -> str:
    """The same within a sentence, where lines without degrees have to be called so.

    >>> from dividing.indexing.head import Dial
    >>> from dividing.indexing.positions import dial_set
    >>> table = Head(ratio=90, plates=(), dial=Dial(divisions=100))
    >>> reading_told(dial_set(Fraction(1, 16), table), table)
    '63 lines'
    """
    assert head.dial is not None
    return reading_text(setting, head) if head.dial.divisions is None else lines_text(Fraction(setting.units))


def lines_text(lines: Fraction) -> str:
    """Lines of a dial without degrees, and parts of one.

    >>> lines_text(Fraction(1)), lines_text(Fraction(125, 2))
    ('1 line', '62 1/2 lines')
    """
    return f"{mixed(lines.numerator, lines.denominator)} line{'' if lines == 1 else 's'}"


def reading_texts(settings: Iterable[DialSet], head: Head) -> list[str]:
    """The same for all settings of a schedule."""
    assert head.dial is not None
    if head.dial.divisions is not None:
        return [f"{setting.units}" for setting in settings]
    finest = head.dial.finest
    assert finest is not None
    texts = [dms_of(setting.units * finest.numerator, finest.denominator) for setting in settings]
    if 1_296_000 % finest.denominator == 0:
        texts = [text.replace('.00"', '"') for text in texts]
        if 21_600 % finest.denominator == 0:
            texts = [text.removesuffix('00"') for text in texts]
    return texts
