"""A dial's reading as it is set: degrees, minutes and seconds, or plain divisions."""

from __future__ import annotations

from ..angles import dms
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
    assert head.dial is not None
    if head.dial.divisions is not None:
        return f"{setting.units}"
    finest = head.dial.finest
    assert finest is not None
    text = dms(setting.units * finest, 2)
    if (finest * 1_296_000).denominator == 1:
        text = text.replace('.00"', '"')
        if (finest * 21_600).denominator == 1:
            text = text.removesuffix('00"')
    return text
