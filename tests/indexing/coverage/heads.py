"""Heads that differ in everything that decides what they can divide."""

from __future__ import annotations

from fractions import Fraction

from dividing.indexing.head import TWELVE_GEARS, Dial, Head, Idlers
from dividing.indexing.heads import SET_TWO

MINUTE = Fraction(1, 21_600)
HEADS: dict[str, Head] = {
    "set I": Head(),
    "set I, twelve gears": Head(change_gears=TWELVE_GEARS),
    "set II": Head(plates=SET_TWO),
    "set II, twelve gears": Head(plates=SET_TWO, change_gears=TWELVE_GEARS),
    "60 to 1, four gears": Head(ratio=60, change_gears=(24, 32, 48, 56)),
    "three gears, no idler left for a second way": Head(change_gears=(24, 40, 64)),
    "five gears, other idlers": Head(change_gears=(24, 28, 32, 44, 72), idlers=Idlers(2, 1, 1, 0)),
    "two gears that need no idler": Head(change_gears=(28, 40), idlers=Idlers(0, 1, 0, 1)),
    "one gear": Head(change_gears=(28,), idlers=Idlers(0, 1, 0, 1)),
    "stop pin on two circles": Head(stop_circles=(20, 49)),
    "stop pin on none": Head(stop_circles=()),
    "three direct circles": Head(direct_circles=(24, 30, 36), plates=((37, 39),)),
    "a table with a dial": Head(ratio=90, plates=(), direct_circles=(), dial=Dial(graduation=MINUTE)),
    "a table with plates, a dial and gears": Head(
        ratio=90, plates=((22, 26, 34),), direct_circles=(), dial=Dial(divisions=100), change_gears=(20, 30, 45, 50)
    ),
    "a direct plate alone": Head(plates=(), direct_circles=(24,)),
    "5 to 1, where the plate may run ahead of the crank": Head(ratio=5, plates=((20, 21),), change_gears=TWELVE_GEARS),
    "1 to 1": Head(ratio=1, plates=((60, 77),), direct_circles=(), change_gears=(24, 28, 40, 48, 56)),
    "2160 to 1, one circle": Head(ratio=2160, plates=((400,),), direct_circles=(), change_gears=(24, 28, 44, 86)),
}
