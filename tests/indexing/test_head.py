"""The head and its parts: what they may be, and the order in which its circles are taken."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from dividing.indexing.faults import Path
from dividing.indexing.head import SET_ONE, TWELVE_GEARS, Dial, Head, Idlers, Plate, Screw
from dividing.indexing.heads import READY_MADE
from tests.indexing.refusals import faults_of

MINUTE, TEN_SECONDS = Fraction(1, 21600), Fraction(1, 129600)
COUNTED = "Idlers are counted in whole gears, 0 to 4."
LEAD = "The table screw's lead is more than 0 and at most 1000."
UNIT = 'The unit of the screw\'s lead is "mm" or "in".'
EITHER = "A dial has either a graduation in degrees or a number of plain divisions."
DIVISIONS = "A dial has 1 to 10,000,000 divisions."
VERNIER = "The vernier splits one graduation into a whole number of parts."
NO_VERNIER = "A vernier belongs to a dial in degrees; leave it out."

Faults = list[tuple[Path, str]]


def one_way(train: str) -> str:
    return f"With the same number of idlers a {train} train turns the plate one way only."


class TestIdlers:
    @pytest.mark.parametrize(
        ("gears", "direction", "idlers"),
        [(2, "with", 1), (2, "against", 2), (4, "with", 0), (4, "against", 1)],
    )
    def test_the_usual_construction(self, gears: int, direction: str, idlers: int) -> None:
        # A Practical Treatise on Milling and Milling Machines, 1914.
        assert Idlers().needed(gears=gears, direction=direction) == idlers

    @pytest.mark.parametrize(
        ("make", "faults"),
        [
            (lambda: Idlers(simple_with=5), [(("simple", "with"), COUNTED)]),
            (lambda: Idlers(simple_against=6, simple_with=3), [(("simple", "against"), COUNTED)]),
            (lambda: Idlers(compound_with=-2), [(("compound", "with"), COUNTED)]),
            (lambda: Idlers(compound_against=5), [(("compound", "against"), COUNTED)]),
            (lambda: Idlers(simple_with=2), [(("simple",), one_way("simple"))]),
            (lambda: Idlers(simple_against=3), [(("simple",), one_way("simple"))]),
            (lambda: Idlers(compound_against=0), [(("compound",), one_way("compound"))]),
            (
                lambda: Idlers(5, 1, 0, 4),
                [(("simple", "with"), COUNTED), (("simple",), one_way("simple")), (("compound",), one_way("compound"))],
            ),
        ],
    )
    def test_counts_that_cannot_be(self, make: Callable[[], Idlers], faults: Faults) -> None:
        assert faults_of(make) == faults

    def test_none_to_four_are_taken(self) -> None:
        assert Idlers(0, 1, 4, 3).needed(gears=4, direction="with") == 4


class TestScrew:
    @pytest.mark.parametrize(
        ("lead", "unit", "millimetres"),
        [("1/4", "in", "6.35"), ("5", "mm", "5"), ("1000", "mm", "1000"), ("1/5", "in", "5.08")],
    )
    def test_an_inch_is_25_4_millimetres(self, lead: str, unit: str, millimetres: str) -> None:
        assert Screw(Fraction(lead), unit).millimetres == Fraction(millimetres)

    @pytest.mark.parametrize(
        ("lead", "unit", "faults"),
        [
            (Fraction(0), "mm", [(("lead",), LEAD)]),
            (Fraction(-1), "in", [(("lead",), LEAD)]),
            (Fraction(10001, 10), "mm", [(("lead",), LEAD)]),
            (Fraction(5), "cm", [(("unit",), UNIT)]),
            (Fraction(0), "", [(("lead",), LEAD), (("unit",), UNIT)]),
        ],
    )
    def test_a_screw_that_cannot_be(self, lead: Fraction, unit: str, faults: Faults) -> None:
        assert faults_of(lambda: Screw(lead, unit)) == faults


class TestDial:
    # One crank turn is 360/ratio degrees: 4° at 90:1, which is 240 minutes or 1440 times ten seconds.
    @pytest.mark.parametrize(
        ("dial", "ratio", "units"),
        [
            (Dial(graduation=MINUTE), 90, 240),
            (Dial(graduation=MINUTE, vernier=TEN_SECONDS), 90, 1440),
            (Dial(graduation=MINUTE), 72, 300),
            (Dial(graduation=MINUTE), 40, 540),
            (Dial(graduation=MINUTE), 7, 0),
            (Dial(graduation=Fraction(1, 360)), 80, 0),
            (Dial(divisions=100), 90, 100),
            (Dial(divisions=60), 7, 60),
        ],
    )
    def test_its_smallest_readings_in_a_crank_turn(self, dial: Dial, ratio: int, units: int) -> None:
        assert dial.units(ratio) == units

    @pytest.mark.parametrize(
        ("dial", "finest"),
        [
            (Dial(graduation=MINUTE), MINUTE),
            (Dial(graduation=MINUTE, vernier=TEN_SECONDS), TEN_SECONDS),
            (Dial(divisions=100), None),
        ],
    )
    def test_its_finest_reading(self, dial: Dial, finest: Fraction | None) -> None:
        assert dial.finest == finest

    @pytest.mark.parametrize(
        ("make", "faults"),
        [
            (lambda: Dial(), [((), EITHER)]),
            (lambda: Dial(graduation=MINUTE, divisions=100), [((), EITHER)]),
            (lambda: Dial(divisions=0), [(("divisions",), DIVISIONS)]),
            (lambda: Dial(divisions=10_000_001), [(("divisions",), DIVISIONS)]),
            (lambda: Dial(divisions=50, vernier=MINUTE), [(("vernier",), NO_VERNIER)]),
            (lambda: Dial(divisions=-1, vernier=MINUTE), [(("divisions",), DIVISIONS), (("vernier",), NO_VERNIER)]),
            (lambda: Dial(graduation=Fraction(0)), [(("graduation",), "The graduation of a dial is more than 0.")]),
            (lambda: Dial(graduation=-MINUTE), [(("graduation",), "The graduation of a dial is more than 0.")]),
            (lambda: Dial(graduation=MINUTE, vernier=Fraction(0)), [(("vernier",), VERNIER)]),
            (lambda: Dial(graduation=MINUTE, vernier=-TEN_SECONDS), [(("vernier",), VERNIER)]),
            (lambda: Dial(graduation=MINUTE, vernier=MINUTE * 6), [(("vernier",), VERNIER)]),
            (lambda: Dial(graduation=MINUTE, vernier=MINUTE * 2 / 3), [(("vernier",), VERNIER)]),
        ],
    )
    def test_a_dial_that_cannot_be(self, make: Callable[[], Dial], faults: Faults) -> None:
        assert faults_of(make) == faults

    @pytest.mark.parametrize("divisions", [1, 10_000_000])
    def test_the_limits_of_its_divisions_are_taken(self, divisions: int) -> None:
        assert Head(dial=Dial(divisions=divisions)).dial_units == divisions

    @pytest.mark.parametrize("parts", [1, 6, 10])
    def test_a_vernier_that_splits_a_graduation_into_whole_parts_is_taken(self, parts: int) -> None:
        assert Dial(graduation=MINUTE, vernier=MINUTE / parts).units(90) == 240 * parts

    def test_a_head_without_a_dial_has_no_readings(self) -> None:
        assert Head().dial_units == 0


class TestCircles:
    @pytest.mark.parametrize(
        ("plates", "mounted", "circles"),
        [
            (((15, 18), (18, 20), (24, 20)), 1, ((18, 1), (15, 1), (24, 3), (20, 2))),
            (((15, 18), (18, 20), (24, 20)), 2, ((20, 2), (18, 2), (24, 3), (15, 1))),
            (((15, 18), (18, 20), (24, 20)), 3, ((24, 3), (20, 3), (18, 1), (15, 1))),
            (((16, 17),), 1, ((17, 1), (16, 1))),
            ((), 1, ()),
        ],
    )
    def test_the_mounted_plate_first_then_the_larger_circle(
        self, plates: tuple[Plate, ...], mounted: int, circles: tuple[tuple[int, int], ...]
    ) -> None:
        head = Head(plates=plates, mounted_plate=mounted)
        assert head.circles == circles
        assert head.plate_of == dict(circles)

    @pytest.mark.parametrize("head", [ready.head for ready in READY_MADE], ids=[ready.id for ready in READY_MADE])
    def test_every_circle_is_given_once_and_on_a_plate_that_has_it(self, head: Head) -> None:
        assert sorted(head.plate_of) == sorted({circle for face in head.plates for circle in face})
        assert all(circle in head.plates[plate - 1] for circle, plate in head.circles)


class TestPairs:
    def test_the_larger_second_circle_stands_first(self) -> None:
        # lcm(18, 20) = 180, lcm(15, 20) = 60, lcm(15, 18) = 90.
        assert Head(plates=((15, 18, 20),)).pairs == (
            (180, 18, 20, 1),
            (180, 20, 18, 1),
            (60, 15, 20, 1),
            (60, 20, 15, 1),
            (90, 15, 18, 1),
            (90, 18, 15, 1),
        )

    @pytest.mark.parametrize(
        ("reached", "pairs"),
        [
            ((20,), ((180, 18, 20, 1), (60, 15, 20, 1))),
            ((15,), ((60, 20, 15, 1), (90, 18, 15, 1))),
            ((), ()),
        ],
    )
    def test_the_second_circle_is_one_that_the_stop_pin_reaches(
        self, reached: tuple[int, ...], pairs: tuple[tuple[int, ...], ...]
    ) -> None:
        assert Head(plates=((15, 18, 20),), stop_circles=reached).pairs == pairs

    def test_two_plates_make_no_pair_and_the_mounted_plate_stands_first(self) -> None:
        head = Head(plates=((15, 16), (17, 18)), mounted_plate=2)
        assert head.pairs == ((306, 17, 18, 2), (306, 18, 17, 2), (240, 15, 16, 1), (240, 16, 15, 1))
        assert list(head.pairs_by_lcm) == [306, 240]

    def test_pairs_that_make_the_same_grid_stand_together(self) -> None:
        # 30 is the least common multiple of any two of 6, 10 and 15.
        head = Head(plates=((6, 10, 15),))
        assert head.pairs_by_lcm == {
            30: ((30, 10, 15, 1), (30, 15, 10, 1), (30, 6, 15, 1), (30, 15, 6, 1), (30, 6, 10, 1), (30, 10, 6, 1))
        }

    def test_set_one_has_fifteen_pairs_a_plate_both_ways_round(self) -> None:
        assert len(Head(plates=SET_ONE, change_gears=TWELVE_GEARS).pairs) == 3 * 15 * 2


class TestWhatIsAskedOfManyHeads:
    def test_the_holes_of_its_plates_together(self) -> None:
        # 105 + 164 + 256.
        assert Head().holes_in_all == 525
        assert Head(plates=()).holes_in_all == 0

    def test_its_largest_circle(self) -> None:
        assert Head(mounted_plate=2).largest_circle == 49
        assert Head(plates=()).largest_circle == 0

    @pytest.mark.parametrize(
        ("circles", "ranked", "words"),
        [
            ((24,), (24,), "The direct plate has 24 holes"),
            ((24, 36, 30), (36, 30, 24), "The direct plate has 36 or 30 or 24 holes"),
        ],
    )
    def test_its_direct_plate_with_the_larger_circle_first(
        self, circles: tuple[int, ...], ranked: tuple[int, ...], words: str
    ) -> None:
        head = Head(direct_circles=circles)
        assert (head.direct_ranked, head.direct_words) == (ranked, words)

    def test_the_smallest_number_that_every_circle_or_pair_divides(self) -> None:
        # 15 = 3 x 5, 16 = 2^4, 17 and 18 = 2 x 3^2: 2^4 x 3^2 x 5 x 17, for the pairs 240 and 306 too.
        head = Head(plates=((15, 16), (17, 18)))
        assert (head.all_circles_together, head.all_pairs_together) == (12_240, 12_240)
        # 4 and 6 together make 12 places, which 9 alone does not divide.
        apart = Head(plates=((4, 6), (9,)))
        assert (apart.all_circles_together, apart.all_pairs_together) == (36, 12)
        assert (Head(plates=()).all_circles_together, Head(plates=()).all_pairs_together) == (1, 1)

    def test_heads_of_the_same_figures_are_one_key(self) -> None:
        kept = {Head(change_gears=TWELVE_GEARS): "gears", Head(): "none"}
        assert kept[Head(40, SET_ONE)] == "none"
        assert kept[Head(change_gears=TWELVE_GEARS)] == "gears"
