"""Unequal flutes: what holds for every proposal, on every head."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.indexing.head import Dial, Head
from dividing.indexing.heads import SET_TWO
from dividing.parts.reamer import reamer
from tests.parts.figures import told

HEADS = [Head(), Head(mounted_plate=3), Head(ratio=60), Head(ratio=72), Head(ratio=90), Head(plates=SET_TWO)]


@pytest.mark.parametrize("flutes", range(3, 31))
@pytest.mark.parametrize(
    "head", HEADS, ids=lambda head: f"{head.ratio}, {len(head.plates)} plates, {head.mounted_plate} on"
)
class TestEveryProposal:
    def test_one_circle_sets_all_of_it_and_no_two_neighbours_are_alike(self, flutes: int, head: Head) -> None:
        part = reamer(flutes=flutes, head=head)
        assert part.angles is not None
        circles = {(row["circle"], row["plate"]) for row in part.schedule}
        assert len(circles) == 1
        ((circle, plate),) = circles
        assert (circle, plate) in head.circles
        assert isinstance(circle, int)
        assert all((angle * head.ratio * circle).denominator == 1 for angle in part.angles)
        spaces = [after - before for before, after in zip(part.angles, (*part.angles[1:], Fraction(1)), strict=True)]
        assert all(one != other for one, other in zip(spaces, spaces[1:] + spaces[:1], strict=True))
        # At most the spread, and the rounding of both ends to a hole.
        most = min(Fraction(2), Fraction(72, flutes)) + Fraction(360, head.ratio * circle)
        assert all(abs(space * 360 - Fraction(360, flutes)) <= most for space in spaces)

    def test_the_crank_goes_round_the_work_exactly_once(self, flutes: int, head: Head) -> None:
        part = reamer(flutes=flutes, head=head)
        at = Fraction(0)
        for row, angle in zip(part.schedule, part.angles or (), strict=True):
            assert at == angle
            assert isinstance(row["crank_turns"], int)
            assert isinstance(row["holes"], int)
            assert isinstance(row["circle"], int)
            at += (row["crank_turns"] + Fraction(row["holes"], row["circle"])) / head.ratio
        assert at == 1

    def test_an_even_count_has_flutes_opposite(self, flutes: int, head: Head) -> None:
        angles = reamer(flutes=flutes, head=head).angles or ()
        if flutes % 2 == 0:
            assert {(angle + Fraction(1, 2)) % 1 for angle in angles} == set(angles)


class TestRefusals:
    @pytest.mark.parametrize(
        ("given", "path", "sentence"),
        [
            ({"flutes": 2}, "flutes", "Two flutes that stand opposite are equal: give 3 flutes or more."),
            ({"flutes": 201}, "flutes", "Unequal spacing is worked out for up to 200 flutes."),
            (
                {"flutes": 6, "spread": 31},
                "spread",
                "The spread lies above 0° and up to half an equal space (30°).",
            ),
            (
                {"flutes": 6, "spread": Fraction(1, 100)},
                "spread",
                "No circle of the plates can tell such spaces apart: give a larger spread or a head with plates.",
            ),
        ],
    )
    def test_they_say_what_to_change(self, given: dict[str, Any], path: str, sentence: str) -> None:
        with pytest.raises(Refused) as refusal:
            reamer(head=Head(), **given)
        assert told(refusal.value) == [((path,), sentence)]

    def test_a_rotary_table_without_plates_has_no_circle_for_it(self) -> None:
        table = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(graduation=Fraction(1, 21600)))
        with pytest.raises(Refused):
            reamer(flutes=6, head=table)


def test_a_circle_whose_holes_cannot_be_halved_is_left_for_one_that_can() -> None:
    # 5 x 49 = 245 holes round the work: six flutes that repeat after three want half of them.
    head = Head(ratio=5, plates=((49,), (20,)))
    assert {row["circle"] for row in reamer(flutes=6, spread=12, head=head).schedule} == {20}
    # Five flutes repeat nothing and stay on the mounted plate.
    assert {row["circle"] for row in reamer(flutes=5, spread=12, head=head).schedule} == {49}
