"""The blank of an index plate: holes that fit its circle, and coordinates, against points turned by complex numbers."""

from __future__ import annotations

from cmath import exp
from fractions import Fraction
from math import floor, pi
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.bolt_circle import bolt_circle
from dividing.parts.index_plate import Blank, blank
from dividing.parts.sizes import MATHEMATICS, PRACTICE, Size
from tests.parts.figures import told

RULE = "at least half a hole's diameter of metal between neighbours"


def near(figure: float) -> Any:
    return pytest.approx(figure)


def size(made: Blank, name: str) -> float:
    (found,) = [each.value for each in made.sizes if each.name == name]
    return found


class TestToldWhole:
    @pytest.mark.parametrize(
        ("unit", "note"),
        [("mm", "rounded down to a whole tenth"), ("in", "20 in, rounded down to a whole 64th")],
    )
    def test_with_a_circle_and_a_hole(self, unit: str, note: str) -> None:
        # Six holes on 60: the chord is 30. Holes of 20 leave 10; those of 12 leave 18, and need 12 x 1.5 x 2 = 36.
        made = blank(6, unit, 40, circle=60, hole=12)
        assert made.sizes == (
            Size("Largest hole that fits", near(20), unit, PRACTICE, RULE),
            Size("Largest drill for it", 20, unit, PRACTICE, note),
            Size("Diameter at which holes would meet", near(30), unit, MATHEMATICS, "D sin(180°/n)"),
            Size("Metal between neighbouring holes", near(18), unit, MATHEMATICS),
            Size("Smallest circle for these holes", near(36), unit, PRACTICE, RULE),
            *bolt_circle(holes=6, diameter=60, hole_diameter=12, unit=unit).sizes,
        )

    @pytest.mark.parametrize("unit", ["mm", "in"])
    def test_with_a_hole_alone(self, unit: str) -> None:
        circle = Size("Smallest circle for these holes", near(36), unit, PRACTICE, RULE)
        assert blank(6, unit, 40, hole=12) == Blank((circle,), (), None, ())

    def test_with_a_circle_alone_it_is_not_said_whether_a_hole_fits(self) -> None:
        made = blank(6, "mm", 40, circle=60)
        assert made.fits is None
        assert [each.name for each in made.sizes[:4]] == [
            "Largest hole that fits",
            "Largest drill for it",
            "Diameter at which holes would meet",
            "Diameter of the bolt circle",
        ]


class TestHolesThatFit:
    @pytest.mark.parametrize("holes", [2, 3, 4, 6, 51, 127, 400])
    def test_the_largest_leaves_half_its_diameter_to_its_neighbour(self, holes: int) -> None:
        made = blank(holes, "mm", 40, circle=150)
        first, second = (complex(*point) for point in made.points[:2])
        largest = size(made, "Largest hole that fits")
        # From centre to centre lie two radii and the metal between: d + d/2.
        assert abs(second - first) == pytest.approx(largest + largest / 2)
        assert size(made, "Diameter at which holes would meet") == pytest.approx(abs(second - first))

    @pytest.mark.parametrize(
        ("holes", "circle", "unit", "largest", "drill"),
        [
            # Six holes: the chord is the radius. 30/1.5 = 20 mm; 1.5/1.5 = 1 in.
            (6, 60, "mm", 20.0, 20.0),
            (6, 3, "in", 1.0, 1.0),
            # Two holes: the chord is the diameter. 10/1.5 = 6.667 mm; 1/1.5 = 0.6667 in, 42.67/64 in.
            (2, 10, "mm", 20 / 3, 6.6),
            (2, 1, "in", 2 / 3, 42 / 64),
        ],
    )
    def test_by_hand(self, holes: int, circle: float, unit: str, largest: float, drill: float) -> None:
        made = blank(holes, unit, 40, circle=circle)
        assert size(made, "Largest hole that fits") == pytest.approx(largest)
        assert size(made, "Largest drill for it") == pytest.approx(drill)

    @pytest.mark.parametrize(
        ("holes", "circle", "unit", "note"),
        [
            (2, 1, "in", "21/32 in, rounded down to a whole 64th"),
            (6, 4, "in", "1 21/64 in, rounded down to a whole 64th"),  # 2/1.5 = 1.3333 in
            (2, 10, "mm", "rounded down to a whole tenth"),
        ],
    )
    def test_a_drill_in_inches_is_named_as_it_is_marked(self, holes: int, circle: int, unit: str, note: str) -> None:
        (drill,) = [size for size in blank(holes, unit, 40, circle=circle).sizes if size.name == "Largest drill for it"]
        assert drill.note == note

    @pytest.mark.parametrize(("unit", "steps"), [("mm", 10), ("in", 64)])
    def test_the_drill_is_the_next_smaller_one(self, unit: str, steps: int) -> None:
        for holes in range(2, 120):
            made = blank(holes, unit, 40, circle=77)
            fits, drill = size(made, "Largest hole that fits"), size(made, "Largest drill for it")
            assert drill * steps == pytest.approx(floor(fits * steps + 1e-9))

    def test_where_no_drill_is_fine_enough_none_is_named(self) -> None:
        names = [each.name for each in blank(400, "mm", 40, circle=10).sizes]
        assert "Largest hole that fits" in names
        assert "Largest drill for it" not in names

    @pytest.mark.parametrize(
        ("hole", "fits"), [(Fraction(20), True), (Fraction(20001, 1000), False), (Fraction(29), False), (1, True)]
    )
    def test_a_hole_is_held_against_the_rule(self, hole: Fraction, fits: bool) -> None:
        # Six holes on 60 mm: neighbours are 30 mm apart, 20 mm fit.
        made = blank(6, "mm", 40, circle=60, hole=hole)
        assert made.fits is fits
        assert size(made, "Metal between neighbouring holes") == pytest.approx(float(30 - hole))

    def test_the_smallest_circle_for_a_hole_takes_just_that_hole(self) -> None:
        for holes in (2, 6, 51, 127):
            (circle,) = blank(holes, "mm", 40, hole=4).sizes
            assert (circle.name, circle.source, circle.note) == ("Smallest circle for these holes", PRACTICE, RULE)
            made = blank(holes, "mm", 40, circle=circle.value, hole=4)
            assert size(made, "Largest hole that fits") == pytest.approx(4)
            assert made.fits is True
            assert blank(holes, "mm", 40, circle=circle.value * 0.999, hole=4).fits is False

    def test_what_is_common_practice_is_marked_so(self) -> None:
        made = blank(51, "mm", 40, circle=150, hole=6)
        rules = {each.name for each in made.sizes if each.source == PRACTICE}
        assert rules == {"Largest hole that fits", "Largest drill for it", "Smallest circle for these holes"}
        assert {each.source for each in made.sizes} == {PRACTICE, MATHEMATICS}

    def test_without_a_length_nothing_is_said(self) -> None:
        assert blank(51, "mm", 40) == Blank((), (), None, ())

    def test_holes_that_meet_are_refused(self) -> None:
        with pytest.raises(Refused) as refusal:
            blank(6, "mm", 40, circle=60, hole=30)
        sentence = (
            "Holes of 30.000 mm meet: their centres are 30.000 mm apart. Give fewer or smaller holes, or a larger "
            "circle."
        )
        assert told(refusal.value) == [(("hole_diameter",), sentence)]


class TestCoordinates:
    @pytest.mark.parametrize("holes", [2, 7, 51, 127])
    @pytest.mark.parametrize(
        ("placing", "turned"),
        [
            ({}, lambda turn: exp(2j * pi * turn)),
            ({"sense": "clockwise"}, lambda turn: exp(-2j * pi * turn)),
            ({"zero": "12 o'clock"}, lambda turn: 1j * exp(2j * pi * turn)),
            ({"start": 90, "x": 10, "y": -5}, lambda turn: (10 - 5j) / 75 + 1j * exp(2j * pi * turn)),
        ],
    )
    def test_each_hole_stands_at_its_part_of_the_turn(self, holes: int, placing: dict[str, Any], turned: Any) -> None:
        made = blank(holes, "mm", 40, circle=150, **placing)
        assert len(made.points) == holes
        for hole, point in enumerate(made.points):
            assert abs(complex(*point) - 75 * turned(hole / holes)) < 1e-8


class TestWhatALengthComesTo:
    def test_in_millimetres(self) -> None:
        # 0.01 mm on a circle of 150: 0.01 x 1,296,000"/(pi x 150) = 27.50", a fortieth of it 0.69";
        # half of 0.001 mm each way is 0.00071 mm across, 1.94".
        assert blank(51, "mm", 40, circle=150).notes == (
            'A hole that the drill puts 0.01 mm off along the circle is 27.50" off on the plate and 0.69" off on the '
            "work.",
            'Coordinates to 0.001 mm alone put a hole up to 1.94" off on the plate and 0.05" off on the work.',
        )

    def test_in_inches(self) -> None:
        # 0.0005 in on a circle of 6: 0.0005 x 1,296,000"/(pi x 6) = 34.38", a ninetieth of it 0.38".
        assert blank(51, "in", 90, circle=6).notes == (
            'A hole that the drill puts 0.0005 in off along the circle is 34.38" off on the plate and 0.38" off on the '
            "work.",
            'Coordinates to 0.0001 in alone put a hole up to 4.86" off on the plate and 0.05" off on the work.',
        )
