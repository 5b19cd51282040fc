"""Unequal flutes: what holds for every proposal, on every head."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt
from typing import Any

import pytest

from dividing.indexing.faults import Refused
from dividing.indexing.head import Dial, Head
from dividing.indexing.heads import SET_TWO
from dividing.parts.reamer import reamer
from dividing.parts.sizes import MATHEMATICS, PRACTICE, Part, Size
from tests.parts.figures import told


def near(figure: float) -> Any:
    return pytest.approx(figure)


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


# 40 turns of 18 holes: 720 holes round the work, half a degree each.
HALVES = Head(plates=((18,),))
LANDS = "Equal depths would leave wide lands in the wide spaces: cut those deeper until all lands are alike."


def turns_of(*spaces: float) -> list[Fraction]:
    """Where the flutes stand, in turns, when the spaces in degrees follow one another."""
    return [sum((Fraction(space) / 360 for space in spaces[:place]), Fraction(0)) for place in range(len(spaces))]


class TestByHand:
    def test_three_flutes_are_told_whole(self) -> None:
        # Spaces of 120° less 2°, as they are, and more by 2°: 236, 240 and 244 holes.
        angles = [Fraction(0), Fraction(236, 720), Fraction(476, 720)]
        rows = [("0", 0, 118, 13, 2), ("59/180", 118, 120, 13, 6), ("119/180", 238, 122, 13, 10)]
        assert reamer(flutes=3, head=HALVES) == Part(
            "reamer",
            "mm",
            (
                Size("Space after flute 1", 118, "degrees", PRACTICE),
                Size("Space after flute 2", 120, "degrees", PRACTICE),
                Size("Space after flute 3", 122, "degrees", PRACTICE),
                Size("Equal space for comparison", 120, "degrees", MATHEMATICS),
            ),
            angles=tuple(angles),
            cautions=(LANDS,),
            schedule=tuple(
                {
                    "flute": place, "turns": turns, "degrees": degrees, "space": space, "crank_turns": crank,
                    "holes": holes, "circle": 18, "plate": 1,
                }
                for place, (turns, degrees, space, crank, holes) in enumerate(rows, 1)
            ),
            drawing={"turns": [float(angle) for angle in angles], "diameter": None},
        )  # fmt: skip

    def test_an_even_count_gives_each_space_and_chord_once(self) -> None:
        # 60° and 30° either way leave 30°, 60° and 90°: chords of sin 15°, sin 30° and sin 45° in an inch.
        # 90 turns of 66 holes: 5,940 round the work, 495 in 30°.
        part = reamer(flutes=6, spread=30, diameter=1, unit="in", head=Head(ratio=90, plates=((66,),)))
        note = "D sin of half the space"
        assert part.sizes == (
            Size("Space after flute 1", 30, "degrees", PRACTICE),
            Size("Space after flute 2", 60, "degrees", PRACTICE),
            Size("Space after flute 3", 90, "degrees", PRACTICE),
            Size("Chord after flute 1", near((sqrt(6) - sqrt(2)) / 4), "in", MATHEMATICS, note),
            Size("Chord after flute 2", near(1 / 2), "in", MATHEMATICS, note),
            Size("Chord after flute 3", near(sqrt(2) / 2), "in", MATHEMATICS, note),
            Size("Equal space for comparison", 60, "degrees", MATHEMATICS),
        )
        assert part.cautions == (
            LANDS,
            "The spaces repeat after flute 3, so each flute has one opposite to measure over.",
        )
        assert (part.unit, part.rim, part.drawing["diameter"]) == ("in", 1, 1)

    @pytest.mark.parametrize(
        ("flutes", "spaces"),
        [
            (4, (88, 92, 88, 92)),
            # A fifth of 36° is above 2°, a fifth of 9° is 1.8°, to the hole 1.5°.
            (40, (7.5, 10.5) * 20),
            # Growing spaces would differ by less than a hole: 8° less 1.5°, 8° more 1.5°, the odd one as it is.
            (45, (6.5, 9.5) * 22 + (8,)),
        ],
    )
    def test_many_flutes_alternate(self, flutes: int, spaces: tuple[float, ...]) -> None:
        assert list(reamer(flutes=flutes, head=HALVES).angles or ()) == turns_of(*spaces)

    def test_a_hole_is_the_least_space(self) -> None:
        # One turn of the crank is one of the work, and the spread half a space.
        assert reamer(flutes=3, spread=60, head=Head(ratio=1, plates=((6,),))).angles == (
            0,
            Fraction(1, 6),
            Fraction(1, 2),
        )
        # On a circle of three the first space would be no hole at all.
        with pytest.raises(Refused) as refusal:
            reamer(flutes=3, spread=60, head=Head(ratio=1, plates=((3,),)))
        assert told(refusal.value) == [(("spread",), NONE)]

    def test_half_way_between_two_holes_the_even_one_is_taken(self) -> None:
        # Spaces of 2.5, 4 and 5.5 holes end at 2.5, 6.5 and 12.
        part = reamer(flutes=3, spread=45, head=Head(ratio=1, plates=((12,),)))
        assert part.angles == (0, Fraction(2, 12), Fraction(6, 12))

    def test_a_circle_on_which_the_spaces_grow_goes_before_one_on_which_they_alternate(self) -> None:
        # 24 flutes, twelve growing by an eleventh of 4°: less than a hole on 40 x 18, just short of two on 40 x 49.
        rows = reamer(flutes=24, head=Head(plates=((18,), (49,)))).schedule
        spaces = [row["space"] for row in rows]
        assert {(row["circle"], row["plate"]) for row in rows} == {(49, 2)}
        assert spaces == sorted(set(spaces)) * 2

    def test_up_to_two_hundred_flutes(self) -> None:
        assert len(reamer(flutes=200, head=Head()).angles or ()) == 200

    def test_a_spread_below_a_degree_will_do(self) -> None:
        assert list(reamer(flutes=3, spread=Fraction(1, 2), head=HALVES).angles or ()) == turns_of(119.5, 120, 120.5)


NONE = "No circle of the plates can tell such spaces apart: give a larger spread or a head with plates."


class TestRefusals:
    @pytest.mark.parametrize(
        ("given", "path", "sentence"),
        [
            ({"flutes": 2}, "flutes", "Two flutes that stand opposite are equal: give 3 flutes or more."),
            ({"flutes": 201}, "flutes", "Unequal spacing is worked out for up to 200 flutes."),
            ({"flutes": 6, "spread": 0}, "spread", "The spread lies above 0° and up to half an equal space (30°)."),
            (
                {"flutes": 6, "spread": 31},
                "spread",
                "The spread lies above 0° and up to half an equal space (30°).",
            ),
            (
                {"flutes": 6, "spread": Fraction(1, 100)},
                "spread",
                NONE,
            ),
        ],
    )
    def test_they_say_what_to_change(self, given: dict[str, Any], path: str, sentence: str) -> None:
        with pytest.raises(Refused) as refusal:
            reamer(head=Head(), **given)
        assert told(refusal.value) == [((path,), sentence)]

    def test_a_rotary_table_without_plates_has_no_circle_for_it(self) -> None:
        table = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(graduation=Fraction(1, 21600)))
        with pytest.raises(Refused) as refusal:
            reamer(flutes=6, head=table)
        assert told(refusal.value) == [(("spread",), NONE)]


def test_a_circle_whose_holes_cannot_be_halved_is_left_for_one_that_can() -> None:
    # 5 x 49 = 245 holes round the work: six flutes that repeat after three want half of them.
    head = Head(ratio=5, plates=((49,), (20,)))
    assert {row["circle"] for row in reamer(flutes=6, spread=12, head=head).schedule} == {20}
    # Five flutes repeat nothing and stay on the mounted plate.
    assert {row["circle"] for row in reamer(flutes=5, spread=12, head=head).schedule} == {49}
