"""What is said of a plate: which part of the errors the ratio divides, whole sentences."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.head import Dial, Head
from dividing.indexing.plate_making.drilling import drilling
from dividing.indexing.plate_making.left import left_in, left_in_any_work
from dividing.indexing.plate_making.words import DRILLING, WORM, notes
from dividing.indexing.wording.cautions import GENERAL

TABLE = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(Fraction(1, 21600)))
IN_THE_PLATE = (
    "The worm moved the plate when it was drilled, so its error is in the plate too; that share is divided by "
)


@pytest.mark.parametrize(
    ("head", "holes", "circles", "divisions", "sentences"),
    [
        (
            Head(),
            51,
            1,
            102,
            [
                # 25/51 of 1/1960 turn, and a fortieth of it.
                'Used on this head, the plate\'s own errors are divided by 40: a hole 324.13" off puts the work 8.10" '
                "off.",
                WORM,
                IN_THE_PLATE + "40.",
            ],
        ),
        (
            Head(),
            51,
            1,
            None,
            [
                'Used on this head, the plate\'s own errors are divided by 40: a hole 324.13" off puts the work 8.10" '
                "off.",
                WORM,
                IN_THE_PLATE + "40.",
                # 50/51 of 1/1960 turn from the lowest to the highest: 648.26", a fortieth of it 16.21".
                'Begun in another hole than the first, work can be up to 16.21" off instead.',
            ],
        ),
        (
            Head(),
            35,
            2,
            None,
            [
                "The head puts all 35 holes exactly. What the drill adds of its own is divided by 40 when the plate is "
                "used on this head.",
                WORM,
                IN_THE_PLATE + "40.",
            ],
        ),
        (
            Head(),
            24,
            2,
            None,
            [
                "The head puts all 24 holes exactly. What the drill adds of its own is divided by 40 when the plate is "
                "used on this head.",
                WORM,
            ],
        ),
        (
            # 2/4 of a turn, two spaces on 4.
            Head(ratio=2, plates=((4,),), direct_circles=()),
            4,
            2,
            None,
            [
                "The head puts all 4 holes exactly. What the drill adds of its own is divided by 2 when the plate is "
                "used on this head.",
                WORM,
                IN_THE_PLATE + "2.",
            ],
        ),
        (
            TABLE,
            7,
            2,
            7,
            [
                # 1/7 turn is 51°25.714', set at 51°26', 17.14" too far; 2/7 is 102°51.43', set 25.71" short, the worst.
                'Used on this head, the plate\'s own errors are divided by 90: a hole 25.71" off puts the work 0.29" '
                "off.",
                WORM,
                IN_THE_PLATE + "90.",
            ],
        ),
        (
            Head(ratio=1, plates=((4,),), direct_circles=()),
            3,
            2,
            3,
            [
                "One turn of the crank is one turn of the work: nothing is divided, the plate's errors enter in full.",
                WORM,
            ],
        ),
    ],
)
def test_what_the_ratio_divides_is_said_and_what_it_does_not(
    head: Head, holes: int, circles: int, divisions: int | None, sentences: list[str]
) -> None:
    plate = drilling(holes, head, circles=circles)
    left = left_in_any_work(plate) if divisions is None else left_in(divisions, plate)
    assert notes(plate, left) == sentences


def test_the_worm_is_never_said_to_be_divided() -> None:
    assert WORM == (
        "The error of the head's own worm is not divided: it enters the work in full, with this plate as with any "
        "other."
    )


def test_the_cautions_for_drilling_are_others_than_those_of_every_answer() -> None:
    assert not set(DRILLING) & set(GENERAL)
    assert DRILLING == (
        "Stop the drill, and have it clear of the plate, before you index.",
        "Spot every hole all the way round and count the spots before you drill through; clamp the spindle for each.",
        "Mark the first hole: the work is begun in it.",
    )
