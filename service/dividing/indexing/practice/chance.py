"""Chance that falls the same way for ever: a small generator of whole numbers, so that a class works one sheet.

The generator is SplitMix64: G. L. Steele, D. Lea and C. H. Flood, "Fast splittable pseudorandom number generators",
OOPSLA 2014, figure 16. It needs no clock, no order of a set and no floats, and is the same on every machine.
Python's own `random` promises that only for some of its functions.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

GENERATOR = 1
"""The version of the drawing. Whatever would change an exercise of a seed takes a new number."""

_WORD = (1 << 64) - 1
_GOLDEN = 0x9E3779B97F4A7C15
Thing = TypeVar("Thing")


class Chance:
    """A stream of whole numbers of 64 bits that follows from its seed.

    >>> chance = Chance(7)
    >>> chance.below(6) == Chance(7).below(6), Chance(7).turned("abc") == Chance(7).turned("abc")
    (True, True)
    """

    def __init__(self, seed: int) -> None:
        self._state = seed & _WORD

    def word(self) -> int:
        """The next number, from 0 up to 2 to the 64th.

        >>> hex(Chance(0).word())
        '0xe220a8397b1dcdaf'
        """
        self._state = (self._state + _GOLDEN) & _WORD
        mixed = self._state
        mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9 & _WORD
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB & _WORD
        return mixed ^ (mixed >> 31)

    def below(self, most: int) -> int:
        """A whole number from 0 that is less than `most`, each as likely as the others to one part in 2^64."""
        return self.word() * most >> 64

    def one_in(self, most: int) -> bool:
        """Yes once in so many times."""
        return self.below(most) == 0

    def branch(self) -> Chance:
        """A stream of its own, so that what one exercise draws never shifts another."""
        return Chance(self.word())

    def picked(self, things: Sequence[Thing]) -> Thing:
        """One of the things; there must be one."""
        return things[self.below(len(things))]

    def turned(self, things: Sequence[Thing]) -> Sequence[Thing]:
        """All the things in their order, begun at a place that chance picks: whoever goes through them ends.

        >>> sorted(Chance(3).turned([1, 2, 3, 4]))
        [1, 2, 3, 4]
        """
        start = self.below(len(things)) if things else 0
        return [*things[start:], *things[:start]]

    def shuffled(self, things: Sequence[Thing]) -> list[Thing]:
        """All the things in an order of chance.

        >>> sorted(Chance(3).shuffled([1, 2, 3, 4]))
        [1, 2, 3, 4]
        """
        left = list(things)
        return [left.pop(self.below(len(left))) for _ in things]
