"""Bolt circles: coordinates and chords held to turning a point by complex numbers."""

from __future__ import annotations

from cmath import exp
from math import pi, sqrt
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.bolt_circle import bolt_circle
from dividing.parts.sizes import MATHEMATICS, Part, Size
from tests.parts.figures import names, told, value

COUNTS = [1, 2, 3, 5, 6, 7, 12, 28, 73]


def near(figure: float) -> Any:
    return pytest.approx(figure)


def standing(rows: object) -> list[complex]:
    return [complex(row["x"], row["y"]) for row in rows]  # type: ignore[attr-defined]


class TestToldWhole:
    def test_six_holes_of_nine_on_eighty(self) -> None:
        # The chords of a hexagon are the radius, √3 times the radius and the diameter.
        chords: list[Size] = []
        for name, chord in (("to the next hole", 40), ("over 2 spaces", 40 * sqrt(3)), ("over 3 spaces", 80)):
            chords += [
                Size(f"Centre distance {name}", near(chord), "mm", MATHEMATICS, "D sin(180° k/n)"),
                Size(f"Outside of both holes, {name}", near(chord + 9), "mm", MATHEMATICS),
                Size(f"Between both holes, {name}", near(chord - 9), "mm", MATHEMATICS),
            ]
        half = 20 * sqrt(3)
        points = [[40, 0], [20, near(half)], [-20, near(half)], [-40, 0], [-20, near(-half)], [20, near(-half)]]
        assert bolt_circle(holes=6, diameter=80, hole_diameter=9, unit="mm") == Part(
            "bolt_circle",
            "mm",
            (
                Size("Diameter of the bolt circle", 80, "mm", MATHEMATICS),
                Size("Radius of the bolt circle", 40, "mm", MATHEMATICS),
                *chords,
            ),
            divisions=6,
            schedule=tuple(
                {
                    "hole": hole + 1,
                    "turns": ["0", "1/6", "1/3", "1/2", "2/3", "5/6"][hole],
                    "degrees": 60 * hole,
                    "x": points[hole][0],
                    "y": points[hole][1],
                }
                for hole in range(6)
            ),
            rim=80,
            drawing={"diameter": 80, "centre": [0, 0], "holes": points, "hole_diameter": 9},
        )

    def test_an_inch_circle_about_a_centre_of_its_own(self) -> None:
        part = bolt_circle(holes=2, radius=3, x=1, y=-2, unit="in")
        assert [(size.name, size.text) for size in part.sizes] == [
            ("Diameter of the bolt circle", "6.0000 in"),
            ("Radius of the bolt circle", "3.0000 in"),
            ("Centre distance to the next hole", "6.0000 in"),
        ]
        assert part.unit == "in"
        assert part.drawing == {
            "diameter": 6,
            "centre": [1, -2],
            "holes": [[4, -2], [-2, -2]],
            "hole_diameter": None,
        }

    @pytest.mark.parametrize(
        ("start", "sense", "degrees"),
        [
            (350, "anticlockwise", [350, 80, 170, 260]),
            (-10, "clockwise", [350, 80, 170, 260]),
            (720, "clockwise", [0, 90, 180, 270]),
        ],
    )
    def test_degrees_are_counted_in_the_sense_chosen_and_stay_below_a_turn(
        self, start: int, sense: str, degrees: list[int]
    ) -> None:
        part = bolt_circle(holes=4, diameter=80, start=start, sense=sense, unit="mm")
        assert [row["degrees"] for row in part.schedule] == degrees


class TestCoordinates:
    @pytest.mark.parametrize("holes", COUNTS)
    @pytest.mark.parametrize("start", [0, 22.5, -10, 350])
    def test_from_three_o_clock_against_the_clock(self, holes: int, start: float) -> None:
        part = bolt_circle(holes=holes, diameter=80, start=start, x=12, y=-7, unit="mm")
        for hole, place in enumerate(standing(part.schedule)):
            turned = 12 - 7j + 40 * exp(1j * (start / 180 * pi + 2 * pi * hole / holes))
            assert abs(place - turned) < 1e-8

    @pytest.mark.parametrize("holes", COUNTS)
    def test_from_twelve_o_clock_with_the_clock_is_the_mirror_image(self, holes: int) -> None:
        plain = bolt_circle(holes=holes, diameter=80, start=15, unit="mm")
        clock = bolt_circle(holes=holes, diameter=80, start=15, sense="clockwise", zero="12 o'clock", unit="mm")
        # Three o'clock anticlockwise and twelve o'clock clockwise exchange x and y.
        for one, other in zip(standing(plain.schedule), standing(clock.schedule), strict=True):
            assert abs(complex(one.imag, one.real) - other) < 1e-8

    def test_the_quarter_points_carry_no_dust(self) -> None:
        part = bolt_circle(holes=4, diameter=100, zero="12 o'clock", sense="clockwise", unit="mm")
        assert [(row["x"], row["y"]) for row in part.schedule] == [(0, 50), (50, 0), (0, -50), (-50, 0)]
        assert "-0.0" not in str(part.schedule)

    def test_each_hole_has_its_exact_part_of_a_turn(self) -> None:
        part = bolt_circle(holes=7, radius=30, unit="mm")
        assert [row["turns"] for row in part.schedule] == ["0", "1/7", "2/7", "3/7", "4/7", "5/7", "6/7"]


class TestChords:
    @pytest.mark.parametrize("holes", [count for count in COUNTS if count > 1])
    def test_a_caliper_between_hole_centres_reads_the_chord(self, holes: int) -> None:
        part = bolt_circle(holes=holes, diameter=80, unit="mm")
        places = standing(part.schedule)
        listed = [name for name in names(part) if name.startswith("Centre distance")]
        assert value(part, "Centre distance to the next hole") == pytest.approx(abs(places[1] - places[0]))
        for name in listed[1:]:
            span = int(name.split()[3])
            assert value(part, name) == pytest.approx(abs(places[span] - places[0]))

    @pytest.mark.parametrize(
        ("holes", "spans"),
        [
            (1, []),
            (2, ["to the next hole"]),
            (3, ["to the next hole"]),
            (5, ["to the next hole", "over 2 spaces"]),
            (12, ["to the next hole", *(f"over {span} spaces" for span in (2, 3, 4, 5, 6))]),
            (15, ["to the next hole", *(f"over {span} spaces" for span in (2, 3, 4, 5, 6, 7))]),
            (28, ["to the next hole", *(f"over {span} spaces" for span in (2, 3, 4, 5, 6, 14))]),
        ],
    )
    def test_the_first_six_and_the_widest_are_told(self, holes: int, spans: list[str]) -> None:
        told_of = names(bolt_circle(holes=holes, diameter=80, unit="mm"))[2:]
        assert told_of == [f"Centre distance {span}" for span in spans]


class TestTheCircle:
    def test_radius_and_diameter_are_both_given(self) -> None:
        ways: tuple[dict[str, Any], ...] = ({"diameter": 80}, {"radius": 40}, {"diameter": 80, "radius": 40})
        for given in ways:
            part = bolt_circle(holes=6, unit="in", **given)
            assert value(part, "Diameter of the bolt circle") == 80
            assert value(part, "Radius of the bolt circle") == 40

    def test_one_hole_meets_no_other(self) -> None:
        part = bolt_circle(holes=1, diameter=10, hole_diameter=12, unit="mm")
        assert part.drawing["hole_diameter"] == 12

    def test_two_holes_just_short_of_meeting_are_drilled(self) -> None:
        part = bolt_circle(holes=2, diameter=10, hole_diameter=9.999, unit="mm")
        assert value(part, "Between both holes, to the next hole") == pytest.approx(0.001)

    @pytest.mark.parametrize(
        ("given", "path", "sentence"),
        [
            ({"diameter": 80, "sense": "left"}, "sense", 'Give one of "anticlockwise", "clockwise".'),
            ({"diameter": 80, "zero": "6 o'clock"}, "zero", 'Give one of "3 o\'clock", "12 o\'clock".'),
            ({}, "diameter", "Give the diameter or the radius of the bolt circle."),
            ({"diameter": 80, "radius": 41}, "radius", "The radius is not half the diameter: give only one of them."),
            (
                {"holes": 2, "diameter": 40, "hole_diameter": 40},
                "hole_diameter",
                "Holes of 40.000 mm meet: their centres are 40.000 mm apart. Give fewer or smaller holes, "
                "or a larger circle.",
            ),
            (
                {"diameter": 80, "hole_diameter": 40},
                "hole_diameter",
                "Holes of 40.000 mm meet: their centres are 40.000 mm apart. Give fewer or smaller holes, "
                "or a larger circle.",
            ),
        ],
    )
    def test_what_cannot_be_drilled_is_refused(self, given: dict[str, Any], path: str, sentence: str) -> None:
        with pytest.raises(Refused) as refusal:
            bolt_circle(**{"holes": 6, "unit": "mm", **given})
        assert told(refusal.value) == [((path,), sentence)]

    def test_more_holes_than_a_table_has_rows_are_refused(self) -> None:
        assert len(bolt_circle(holes=20_000, diameter=80, unit="mm").schedule) == 20_000
        with pytest.raises(Refused) as refusal:
            bolt_circle(holes=20_001, diameter=80, unit="mm")
        assert told(refusal.value) == [(("holes",), "A bolt circle may have up to 20,000 holes.")]
