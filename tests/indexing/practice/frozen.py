"""Three sheets as they were when exercises were first drawn, each worked by hand: a seed keeps its sheet for ever.

Whatever makes one of these differ is a new way of drawing and takes a new number of the generator.
"""

from __future__ import annotations

from fractions import Fraction

from dividing.indexing.angles import Angle
from dividing.indexing.practice import ArmsClaim, PlateClaim
from dividing.indexing.practice.exercise import AnyClaim
from dividing.indexing.verifying import Claim, GearingClaim, SecondClaim

SEED = 29
Row = tuple[str, str, AnyClaim | None]
"""(kind, question, the claim of the key)"""

FIRST: list[Row] = [
    # 24 holes in 8 parts are 3 spaces.
    ("direct", "Divide the work into 8 equal parts with the direct plate. How many spaces, and on which circle?",
     Claim("direct", 0, 3, 24)),
    # 40/45 = 8/9 = 32/36, and there is no 36; 16/18.
    ("find_the_slip", "45 equal parts were wanted. Somebody set 32 spaces on the circle of 36. Which slip was made?",
     Claim("plain", 0, 16, 18)),
    # 40/48 = 5/6, and of the mounted plate only 18 is a multiple of 6.
    ("which_plate", "Divide the work into 48 equal parts by plain indexing. Which plate do you mount, and which of its "
     "circles do you use?", PlateClaim(1, 18)),
    # 40/36 = 1 1/9 = 1 2/18.
    ("plain", "Divide the work into 36 equal parts by plain indexing. How many whole turns and spaces, and on which "
     "circle?", Claim("plain", 1, 2, 18)),
    # 101 x 8/20 = 40 2/5; 40 - 40 2/5 = -2/5 = -40/100: against the crank, so two idlers.
    ("differential", "Divide the work into 101 equal parts by differential indexing. Take a crank move of 8 spaces on "
     "the circle of 20. Which gears and how many idlers go with it?",
     Claim("differential", 0, 8, 20, gearing=GearingClaim(40, 100, None, 2))),
    # 40/12 = 3 1/3 turns, and a turn is 9 degrees: 3 degrees.
    ("dial", "Divide the work into 12 equal parts by the dial. How many whole turns and which reading of the dial "
     "bring the work 1 step on from zero?", Claim("dial", 3, reading=Angle(Fraction(3, 360)))),
    # 40/50 = 4/5 = 16/20; sixteen spaces lie between seventeen holes.
    ("sector_arms", "Divide the work into 50 equal parts by plain indexing. The move is 16 spaces on the circle of 20. "
     "Over how many holes do the sector arms stand?", ArmsClaim(17)),
    # 3 degrees of 9 are a third of a turn: 6/18.
    ("angular", "Turn the work through 3° by angular indexing. How many whole turns and spaces, and on which circle?",
     Claim("plain", 0, 6, 18)),
    # 7/19 + 6/18 = (126 + 114)/342 = 240/342 = 40/57.
    ("compound", "Divide the work into 57 equal parts by compound indexing. Plate 1, circles 19 and 18 serve. Which "
     "two moves?", Claim("compound", 0, 7, 19, SecondClaim(6, 18))),
]  # fmt: skip
"""Level 1."""

SECOND: list[Row] = [
    # 57 2/3 degrees are 6 turns of 9 and 3 2/3, which is 11/27 of a turn.
    ("angular", "Turn the work through 57°40' by angular indexing. How many whole turns and spaces, and on which "
     "circle?", Claim("plain", 6, 11, 27)),
    # 57 x 13/19 = 39, and 40 - 39 = 1 = 24/24: with the crank, one idler.
    ("differential", "Divide the work into 57 equal parts by differential indexing. Which crank move, which gears and "
     "how many idlers?", Claim("differential", 0, 13, 19, gearing=GearingClaim(24, 24, None, 1))),
    # 12/18 - 6/19 = (228 - 108)/342 = 120/342 = 20/57 = 40/114.
    ("compound", "Divide the work into 114 equal parts by compound indexing. Plate 1 serves. Which two moves?",
     Claim("compound", 0, 12, 18, SecondClaim(-6, 19))),
    # 40/290 = 4/29.
    ("plain", "Divide the work into 290 equal parts by plain indexing. How many whole turns and spaces, and on which "
     "circle? If nothing serves, say so.", Claim("plain", 0, 4, 29)),
    # 24/2 = 12.
    ("direct", "Divide the work into 2 equal parts with the direct plate. How many spaces, and on which circle? If "
     "nothing serves, say so.", Claim("direct", 0, 12, 24)),
    # 40/376 = 5/47 = 20/188, and there is no 188.
    ("find_the_slip", "376 equal parts were wanted. Somebody set 20 spaces on the circle of 188. Which slip was made?",
     Claim("plain", 0, 5, 47)),
    # 40/195 = 8/39.
    ("which_plate", "Divide the work into 195 equal parts by plain indexing. Which plate do you mount, and which of "
     "its circles do you use? If nothing serves, say so.", PlateClaim(3, 39)),
    # 40/98 = 20/49; twenty spaces lie between twenty-one holes.
    ("sector_arms", "Divide the work into 98 equal parts by plain indexing. The pin is in the circle of 49. Over how "
     "many holes do the sector arms stand?", ArmsClaim(21)),
    # 53 x 4.5 = 238.5 degrees: 26 turns of 9 and 4.5.
    ("dial", "The work is divided into 80 equal parts by the dial. How many whole turns and which reading of the dial "
     "bring the work 53 steps on from zero?", Claim("dial", 26, reading=Angle(Fraction(9, 720)))),
]  # fmt: skip
"""Level 2."""

THIRD: list[Row] = [
    # 73 1/3 degrees are 8 turns of 9 and 1 1/3, which is 4/27 of a turn: four spaces, five holes.
    ("sector_arms", "Turn the work through 73°20' by plain indexing. The pin is in the circle of 27. Over how many "
     "holes do the sector arms stand?", ArmsClaim(5)),
    # 40/774 = 20/387, and 387 is more than any circle has.
    ("which_plate", "Divide the work into 774 equal parts by plain indexing. Which plate do you mount, and which of "
     "its circles do you use? If nothing serves, say so.", None),
    # 63.5 degrees are 7 turns of 9 and half a degree, an eighteenth.
    ("angular", "Turn the work through 63.5° by angular indexing. How many whole turns and spaces, and on which "
     "circle?", Claim("plain", 7, 1, 18)),
    # 24/6 = 4.
    ("direct", "Divide the work into 6 equal parts with the direct plate. How many spaces, and on which circle? If "
     "nothing serves, say so.", Claim("direct", 0, 4, 24)),
    # 17 3/21 = 120/7: right at 120:1. At 40:1 it is 40/7 = 5 5/7 = 5 15/21.
    ("find_the_slip", "7 equal parts were wanted. Somebody set 17 turns and 3 spaces on the circle of 21. Which slip "
     "was made?", Claim("plain", 5, 15, 21)),
    # 37 x 360/68 = 195.88235 degrees: 21 turns of 9 and 6.88235 degrees, which is 6 degrees 52' 56.5"; the dial reads
    # half minutes.
    ("dial", "The work is divided into 68 equal parts by the dial. How many whole turns and which reading of the dial "
     "bring the work 37 steps on from zero? Set the nearest reading.",
     Claim("dial", 21, reading=Angle(Fraction(6 * 60 + 53, 21600)))),
    # 11/21 + 3/27 = (33 + 7)/63 = 40/63.
    ("compound", "Divide the work into 63 equal parts by compound indexing. Which two moves, on which two circles of "
     "one plate?", Claim("compound", 0, 11, 21, SecondClaim(3, 27))),
    # 362 x 2/18 = 40 2/9; 40 - 40 2/9 = -2/9 = -(24 x 32)/(72 x 48): against the crank, one idler with four gears.
    ("differential", "Divide the work into 362 equal parts by differential indexing. Which crank move, which gears and "
     "how many idlers?", Claim("differential", 0, 2, 18, gearing=GearingClaim(24, 72, (32, 48), 1))),
    # 40/520 = 1/13 = 3/39.
    ("plain", "Divide the work into 520 equal parts by plain indexing. How many whole turns and spaces, and on which "
     "circle? If nothing serves, say so.", Claim("plain", 0, 3, 39)),
]  # fmt: skip
"""Level 3."""
