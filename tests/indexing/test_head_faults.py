"""What is wrong with a head, each fault by its place and sentence, and what is just still right."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from dividing.indexing.faults import Path
from dividing.indexing.head import Dial, Head
from tests.indexing.refusals import faults_of

MINUTE = Fraction(1, 21600)
RATIO = "The ratio is a whole number of crank turns, 1 to 10,000."
MOUNTED = "The mounted plate is one of plates 1 to 3, counted from 1."
NONE_TO_MOUNT = "The mounted plate is counted from 1; this head has no plates, so leave it out."
NOTHING = "Give the head a plate, a direct circle or a dial: without one nothing can be set."
TEETH = "A change gear has 10 to 200 teeth."

Faults = list[tuple[Path, str]]


class TestFaultsOfAHead:
    @pytest.mark.parametrize(
        ("make", "faults"),
        [
            (lambda: Head(ratio=0), [(("ratio",), RATIO)]),
            (lambda: Head(ratio=10_001), [(("ratio",), RATIO)]),
            (lambda: Head(plates=((15, 1),)), [(("plates", 0, 1), "A circle has 2 to 400 holes, not 1.")]),
            (lambda: Head(plates=((15,), (401,))), [(("plates", 1, 0), "A circle has 2 to 400 holes, not 401.")]),
            (lambda: Head(plates=((-3,),)), [(("plates", 0, 0), "A circle has 2 to 400 holes, not -3.")]),
            (
                lambda: Head(plates=((10**12,),)),
                [(("plates", 0, 0), "A circle has 2 to 400 holes, not a number that long.")],
            ),
            (
                lambda: Head(plates=((999_999_999_999,),)),
                [(("plates", 0, 0), "A circle has 2 to 400 holes, not 999999999999.")],
            ),
            (
                lambda: Head(plates=((15, 16, 15),)),
                [(("plates", 0, 2), "The circle of 15 holes stands twice on this plate.")],
            ),
            (
                lambda: Head(plates=((15,), ())),
                [(("plates", 1), "A plate has at least one circle; leave an empty plate out.")],
            ),
            (
                lambda: Head(direct_circles=(24, 30, 24)),
                [(("direct_circles", 2), "The circle of 24 holes stands twice on this plate.")],
            ),
            (lambda: Head(direct_circles=(1,)), [(("direct_circles", 0), "A circle has 2 to 400 holes, not 1.")]),
            (
                lambda: Head(plates=(tuple(range(2, 102)),)),
                [(("plates",), "A head may have 100 circles in all; give fewer.")],
            ),
            (
                lambda: Head(plates=((400,),) * 30),
                [(("plates",), "All circles together may have 12,000 holes; give fewer circles.")],
            ),
            (lambda: Head(mounted_plate=0), [(("mounted_plate",), MOUNTED)]),
            (lambda: Head(mounted_plate=4), [(("mounted_plate",), MOUNTED)]),
            (lambda: Head(plates=(), mounted_plate=0), [(("mounted_plate",), NONE_TO_MOUNT)]),
            (
                lambda: Head(stop_circles=(20, 50)),
                [(("stop_circles", 1), "The stop pin's circle of 50 holes is on none of the plates.")],
            ),
            (
                lambda: Head(stop_circles=(-(10**12),)),
                [(("stop_circles", 0), "The stop pin's circle of a number that long holes is on none of the plates.")],
            ),
            (lambda: Head(plates=(), direct_circles=()), [((), NOTHING)]),
            (lambda: Head(change_gears=(10, 9, 200)), [(("change_gears", 1), TEETH)]),
            (lambda: Head(change_gears=(201,)), [(("change_gears", 0), TEETH)]),
            (lambda: Head(change_gears=(24,) * 25), [(("change_gears",), "At most 24 change gears can be given.")]),
            (
                lambda: Head(ratio=7, dial=Dial(graduation=MINUTE)),
                [(("dial",), "One crank turn at 7:1 is not a whole number of the dial's smallest readings.")],
            ),
            (
                lambda: Head(ratio=90, dial=Dial(graduation=Fraction(1, 90 * 10_000_001))),
                [(("dial",), "The dial is finer than 10,000,000 readings in a crank turn.")],
            ),
            # 360° in steps of 7°, and 360°/10,000 = 2.16' in minutes.
            (
                lambda: Head(ratio=1, dial=Dial(graduation=7 * 60 * MINUTE)),
                [(("dial",), "One crank turn at 1:1 is not a whole number of the dial's smallest readings.")],
            ),
            (
                lambda: Head(ratio=10_000, dial=Dial(graduation=MINUTE)),
                [(("dial",), "One crank turn at 10000:1 is not a whole number of the dial's smallest readings.")],
            ),
            (lambda: Head(ratio=0, dial=Dial(graduation=MINUTE)), [(("ratio",), RATIO)]),
            (lambda: Head(ratio=10_001, dial=Dial(graduation=MINUTE)), [(("ratio",), RATIO)]),
        ],
    )
    def test_each_is_told_by_its_place(self, make: Callable[[], Head], faults: Faults) -> None:
        assert faults_of(make) == faults

    def test_all_are_told_at_once(self) -> None:
        wrong = faults_of(lambda: Head(ratio=0, plates=((1, 15, 15),), mounted_plate=2, change_gears=(9,)))
        assert wrong == [
            (("ratio",), RATIO),
            (("plates", 0, 0), "A circle has 2 to 400 holes, not 1."),
            (("plates", 0, 2), "The circle of 15 holes stands twice on this plate."),
            (("mounted_plate",), "The mounted plate is one of plates 1 to 1, counted from 1."),
            (("change_gears", 0), TEETH),
        ]

    @pytest.mark.parametrize(
        "make",
        [
            lambda: Head(ratio=1),
            lambda: Head(ratio=10_000),
            lambda: Head(plates=((2, 400),)),
            # 99 circles of 2 to 100 holes, and the direct circle.
            lambda: Head(plates=(tuple(range(2, 101)),)),
            lambda: Head(plates=((400,),) * 30, direct_circles=()),
            lambda: Head(change_gears=(10, 200) * 12),
            lambda: Head(plates=(), direct_circles=(36,), mounted_plate=9),
            lambda: Head(ratio=90, dial=Dial(graduation=Fraction(1, 90 * 10_000_000))),
            lambda: Head(ratio=1, dial=Dial(graduation=Fraction(1))),
        ],
    )
    def test_the_limits_themselves_are_taken(self, make: Callable[[], Head]) -> None:
        assert isinstance(make(), Head)
