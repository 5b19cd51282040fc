"""A dial's reading as it is set: degrees, minutes and seconds, or plain divisions."""

from __future__ import annotations

from collections.abc import Iterable

from ..angles import dms_of
from ..head import Head
from ..positions import DialSet


def reading_text(setting: DialSet, head: Head) -> str:
    """What to set the dial to, to its graduation or vernier.

    >>> from fractions import Fraction
    >>> from dividing.indexing.head import Dial
    >>> from dividing.indexing.positions import dial_set
    >>> table = Head(ratio=90, plates=(), dial=Dial(graduation=Fraction(1, 21600)))
    >>> reading_text(dial_set(Fraction(1, 7), table), table)
    "3°26'"
    """
    return reading_texts([setting], head)[0]


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
