"""By the dial of a rotary table: every position worked from zero and set to the nearest reading."""

from __future__ import annotations

from ..accuracy import accuracy
from ..bounds import SETUPS_MOST
from ..head import Head
from ..setup import Declined, Rounded, Setup
from ..work import Work

NO_DIAL = Declined("dial", "This head has no dial.")


def exact(work: Work, head: Head, most: int = SETUPS_MOST) -> tuple[Setup, ...] | Declined:
    """The dial, when every position falls on one of its readings."""
    setups = approximate(work, head)
    if not isinstance(setups, Declined) and not setups[0].exact:
        return Declined("dial", "Not every position falls on a reading of the dial.")
    return setups


def approximate(work: Work, head: Head) -> tuple[Setup, ...] | Declined:
    """The dial, every position rounded to its nearest reading.

    >>> from dividing.indexing.head import Dial
    >>> from dividing.indexing.work import Divisions
    >>> table = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(divisions=100))
    >>> approximate(Divisions(7), table)[0].spacing
    Rounded(points=9000)
    """
    if not head.dial_units:
        return NO_DIAL
    spacing = Rounded(head.ratio * head.dial_units)
    return (Setup("dial", spacing, accuracy(work, spacing), None, every=work.every),)
