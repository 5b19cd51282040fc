"""Flats: sizes held to a polygon drawn corner by corner."""

from __future__ import annotations

from math import cos, hypot, pi, sin
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.parts.flats import flats
from dividing.parts.sizes import shown
from tests.parts.figures import names, told, value

COUNTS = [*range(3, 33), 48, 96]


def corners_of(sides: int, radius: float) -> list[tuple[float, float]]:
    """A regular polygon with a flat below, square to the y axis."""
    return [
        (radius * sin(pi * (2 * corner + 1) / sides), -radius * cos(pi * (2 * corner + 1) / sides))
        for corner in range(sides)
    ]


class TestFullCorners:
    @pytest.mark.parametrize("sides", COUNTS)
    def test_a_polygon_from_the_stated_round_has_the_stated_flats(self, sides: int) -> None:
        part = flats(sides=sides, across_flats=24, unit="mm")
        corners = corners_of(sides, value(part, "Round") / 2)
        lowest = min(y for _, y in corners)
        assert -lowest == pytest.approx(12)
        (ax, ay), (bx, by) = corners[0], corners[-1]
        assert value(part, "Width of a flat") == pytest.approx(hypot(ax - bx, ay - by))
        assert value(part, "Depth of each flat from the round") == pytest.approx(value(part, "Round") / 2 + lowest)
        assert part.cautions == ()

    @pytest.mark.parametrize("sides", [count for count in COUNTS if count % 2 == 0])
    def test_even_counts_are_measured_across(self, sides: int) -> None:
        part = flats(sides=sides, across_flats=24, unit="mm")
        heights = [y for _, y in corners_of(sides, value(part, "Across corners") / 2)]
        assert value(part, "Across flats") == pytest.approx(max(heights) - min(heights))

    @pytest.mark.parametrize("sides", [count for count in COUNTS if count % 2])
    def test_odd_counts_are_measured_over_a_flat_and_the_corner_opposite(self, sides: int) -> None:
        part = flats(sides=sides, across_flats=24, unit="mm")
        heights = [y for _, y in corners_of(sides, value(part, "Circle through the corners") / 2)]
        measured = value(part, "Finished, over a flat and the corner opposite")
        assert measured == pytest.approx(max(heights) - min(heights))
        assert "Across flats" not in names(part)

    @pytest.mark.parametrize("sides", COUNTS)
    def test_the_largest_flats_from_a_round_just_touch_it_with_their_corners(self, sides: int) -> None:
        part = flats(sides=sides, stock=50, unit="mm")
        again = flats(sides=sides, across_flats=value(part, "Largest flats from this round"), unit="mm")
        assert value(again, "Round needed for full corners") == pytest.approx(50)
        assert part.cautions == ()


class TestRoundedCorners:
    @pytest.mark.parametrize("sides", [3, 4, 5, 6, 9, 12])
    def test_the_flat_is_the_chord_that_the_cut_leaves(self, sides: int) -> None:
        full = value(flats(sides=sides, across_flats=24, unit="mm"), "Round")
        bar = 24 + 0.6 * (full - 24)
        part = flats(sides=sides, across_flats=24, stock=bar, unit="mm")
        half = value(part, "Width of a flat") / 2
        # Both ends of the flat lie on the round.
        assert hypot(half, 12) == pytest.approx(bar / 2)
        assert value(part, "First flat to the round opposite") == pytest.approx(12 + bar / 2)
        width = shown(2 * half, "mm")
        assert part.cautions == (
            f"Full corners need a round of {shown(full, 'mm')}: on {shown(bar, 'mm')} they stay round, "
            f"with flats {width} wide.",
        )

    def test_two_flats_for_a_spanner(self) -> None:
        part = flats(sides=2, across_flats=30, stock=50, unit="mm")
        assert part.divisions == 2
        assert value(part, "Width of a flat") == pytest.approx(40)
        assert value(part, "Depth of each flat from the round") == 10
        assert "Across corners" not in names(part)


class TestRefusals:
    @pytest.mark.parametrize(
        ("given", "path", "sentence"),
        [
            ({"sides": 6}, "across_flats", "Give across_flats or round (or both)."),
            ({"sides": 2}, "across_flats", "Give across_flats or round (or both)."),
            ({"sides": 1, "across_flats": 30}, "sides", "One flat is no division: give 2 flats or more."),
            (
                {"sides": 2, "across_flats": 30},
                "round",
                "Two flats have no corners that would settle it: give both across_flats and round.",
            ),
            (
                {"sides": 2, "stock": 30},
                "across_flats",
                "Two flats have no corners that would settle it: give both across_flats and round.",
            ),
            (
                {"sides": 6, "across_flats": 30, "stock": 25},
                "across_flats",
                "Flats 30.000 mm apart leave a 25.000 mm round untouched: give a smaller across_flats.",
            ),
        ],
    )
    def test_bad_geometry_is_told_in_a_sentence(self, given: dict[str, Any], path: str, sentence: str) -> None:
        with pytest.raises(Refused) as refusal:
            flats(unit="mm", **given)
        assert told(refusal.value) == [((path,), sentence)]


FULL = "Round needed for full corners"
FIRST = "First flat to the round opposite"
AFTER = "measure here after the first cut"
LARGEST = ("Largest flats from this round", "D cos(180°/n)")
DEPTH = ("Depth of each flat from the round", "(D - F) / 2")
EVEN = [
    ("Across flats", ""), ("Across corners", "F / cos(180°/n)"), (FULL, ""), LARGEST, ("Round", ""), DEPTH,
    ("Width of a flat", ""), (FIRST, AFTER),
]  # fmt: skip
ODD = [
    ("Twice the centre to a flat", ""), ("Circle through the corners", "F / cos(180°/n)"), (FULL, ""), LARGEST,
    ("Round", ""), DEPTH, ("Width of a flat", ""), (FIRST, AFTER),
    ("Finished, over a flat and the corner opposite", "an odd count has no flat opposite a flat"),
]  # fmt: skip
TWO = [("Across flats", ""), ("Round", ""), DEPTH, ("Width of a flat", ""), (FIRST, AFTER)]


@pytest.mark.parametrize("unit", ["mm", "in"])
@pytest.mark.parametrize(("sides", "lines"), [(6, EVEN), (5, ODD), (2, TWO)])
def test_every_size_is_called_what_it_is(sides: int, lines: list[tuple[str, str]], unit: str) -> None:
    part = flats(sides=sides, across_flats=24, stock=40, unit=unit)
    assert [(size.name, size.note) for size in part.sizes] == lines
    assert {(size.unit, size.source, size.digits) for size in part.sizes} == {(unit, "general mathematics", None)}


def test_over_a_flat_and_a_corner_goes_no_further_than_the_corner_or_the_round() -> None:
    # The centre to a flat is 12 throughout; the corner lies 12 / cos(36°) = 14.833 from the centre.
    finished = "Finished, over a flat and the corner opposite"
    assert value(flats(sides=5, across_flats=24, stock=40, unit="mm"), finished) == pytest.approx(12 + 12 / cos(pi / 5))
    assert value(flats(sides=5, across_flats=24, stock=28, unit="mm"), finished) == pytest.approx(12 + 14)


class TestTold:
    """What the page draws from, and the diameter on which an error of the setup is shown."""

    def test_sharp_flats_have_their_rim_at_the_corners(self) -> None:
        part = flats(sides=6, across_flats=24, stock=40, unit="mm")
        assert (part.kind, part.unit, part.divisions) == ("flats", "mm", 6)
        assert part.rim == pytest.approx(24 / cos(pi / 6))
        assert set(part.drawing) == {"sides", "across_flats", "round", "corners", "width"}
        assert (part.drawing["sides"], part.drawing["across_flats"], part.drawing["round"]) == (6, 24, 40)
        assert part.drawing["corners"] == pytest.approx(24 / cos(pi / 6))
        assert part.drawing["width"] == pytest.approx(24 / cos(pi / 6) / 2)  # a hexagon's side is its radius

    def test_flats_that_leave_some_of_the_round_have_their_rim_there(self) -> None:
        assert flats(sides=6, across_flats=24, stock=26, unit="mm").rim == 26
        two = flats(sides=2, across_flats=24, stock=30, unit="mm")
        assert (two.rim, two.drawing["corners"], two.drawing["width"]) == (30, None, pytest.approx(18))  # 9-12-15

    def test_flats_as_far_apart_as_the_round_is_wide_leave_it_untouched(self) -> None:
        with pytest.raises(Refused) as refusal:
            flats(sides=6, across_flats=40, stock=40, unit="mm")
        sentence = "Flats 40.000 mm apart leave a 40.000 mm round untouched: give a smaller across_flats."
        assert told(refusal.value) == [(("across_flats",), sentence)]
