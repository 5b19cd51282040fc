"""Bolt circles: coordinates and chords held to turning a point by complex numbers."""

from __future__ import annotations

from cmath import exp
from math import pi
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.bolt_circle import bolt_circle
from tests.parts.figures import names, told, value

COUNTS = [1, 2, 3, 5, 6, 7, 12, 28, 73]


def standing(rows: object) -> list[complex]:
    return [complex(row["x"], row["y"]) for row in rows]  # type: ignore[attr-defined]


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

    def test_over_and_between_the_holes(self) -> None:
        part = bolt_circle(holes=6, diameter=80, hole_diameter=9, unit="mm")
        assert value(part, "Outside of both holes, to the next hole") == pytest.approx(49)
        assert value(part, "Between both holes, to the next hole") == pytest.approx(31)
        assert value(part, "Between both holes, over 3 spaces") == pytest.approx(71)


class TestTheCircle:
    def test_radius_and_diameter_are_both_given(self) -> None:
        ways: tuple[dict[str, Any], ...] = ({"diameter": 80}, {"radius": 40}, {"diameter": 80, "radius": 40})
        for given in ways:
            part = bolt_circle(holes=6, unit="in", **given)
            assert value(part, "Diameter of the bolt circle") == 80
            assert value(part, "Radius of the bolt circle") == 40

    @pytest.mark.parametrize(
        ("given", "path", "sentence"),
        [
            ({}, "diameter", "Give the diameter or the radius of the bolt circle."),
            ({"diameter": 80, "radius": 41}, "radius", "The radius is not half the diameter: give only one of them."),
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
            bolt_circle(holes=6, unit="mm", **given)
        assert told(refusal.value) == [((path,), sentence)]

    def test_more_holes_than_a_table_has_rows_are_refused(self) -> None:
        assert len(bolt_circle(holes=20_000, diameter=80, unit="mm").schedule) == 20_000
        with pytest.raises(Refused) as refusal:
            bolt_circle(holes=20_001, diameter=80, unit="mm")
        assert told(refusal.value) == [(("holes",), "A bolt circle may have up to 20,000 holes.")]
