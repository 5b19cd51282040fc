"""Published values for plain, angular and direct indexing and for the equipment, each with its source.

The service gives them, and betters those that were approximate. The rows stand in data/check_values.json.
"""

from __future__ import annotations

from fractions import Fraction

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.converting import crank_angle, exact_settings, nearest_setting
from dividing.indexing.head import SET_ONE, TWELVE_GEARS, Head
from dividing.indexing.heads import SET_TWO
from dividing.indexing.methods import direct, plain
from dividing.indexing.setup import Declined
from dividing.indexing.solving import solve
from dividing.indexing.work import Arc, Divisions
from tests.indexing.as_told import first_move, setups
from tests.indexing.check_rows import (
    ROWS,
    Values,
    has_plain,
    is_matched_or_bettered,
    left_over,
    numbers_in,
    the_rows,
)

GEARED = Head(change_gears=TWELVE_GEARS)


def degrees(text: str | int) -> Angle:
    return Angle(Fraction(text) / 360)


class TestPlain:
    @the_rows("plain", "divisions ratio circle", "turns holes")
    def test_the_published_setting_is_among_ours(self, given: Values, expected: Values) -> None:
        head = Head(ratio=given["ratio"], plates=(*SET_ONE, *SET_TWO))
        found = setups(plain.exact(Divisions(given["divisions"]), head))
        assert (expected["turns"], expected["holes"], given["circle"]) in map(first_move, found)

    @the_rows("plain", "divisions ratio", "turns holes")
    def test_whole_turns_are_told_as_whole_turns(self, given: Values, expected: Values) -> None:
        (setup,) = setups(plain.exact(Divisions(given["divisions"]), Head(ratio=given["ratio"])))
        assert first_move(setup)[:2] == (expected["turns"], expected["holes"])

    @the_rows("plain", "ratio plates", "claim")
    def test_the_range_claimed_for_the_plates_is_ours(self, given: Values, expected: Values) -> None:
        all_to, even_to, but = numbers_in(expected["claim"])[:3]
        head = Head(ratio=given["ratio"], plates=tuple(map(tuple, given["plates"])))
        assert all(has_plain(count, head) for count in range(2, all_to + 1))
        assert [count for count in range(2, even_to + 1, 2) if not has_plain(count, head)] == [but]

    @the_rows("plain", "ratio", "plates")
    def test_the_usual_head_is_the_published_one(self, given: Values, expected: Values) -> None:
        assert (Head().ratio, Head().plates) == (given["ratio"], tuple(map(tuple, expected["plates"])))


class TestAngular:
    @the_rows("angular", "ratio circle holes", "degrees")
    def test_a_move_makes_the_published_angle(self, given: Values, expected: Values) -> None:
        head = Head(ratio=given["ratio"])
        made = crank_angle(head, turns=0, holes=given["holes"], circle=given["circle"])
        assert made.degrees == Fraction(expected["degrees"])

    @the_rows("angular", "ratio degrees", "turns holes circle")
    def test_the_published_setting_of_an_angle_is_among_ours(self, given: Values, expected: Values) -> None:
        self.is_offered(degrees(given["degrees"]), given["ratio"], expected)

    @the_rows("angular", "ratio angle", "turns holes circle")
    def test_so_is_that_of_degrees_and_minutes(self, given: Values, expected: Values) -> None:
        self.is_offered(parse_angle(given["angle"]), given["ratio"], expected)

    @the_rows("angular", "ratio minutes", "turns holes circle")
    def test_and_that_of_minutes(self, given: Values, expected: Values) -> None:
        self.is_offered(degrees(f"{given['minutes']}/60"), given["ratio"], expected)

    @the_rows("angular", "ratio degrees circle", "turns holes")
    def test_and_that_on_a_circle_named(self, given: Values, expected: Values) -> None:
        self.is_offered(degrees(given["degrees"]), given["ratio"], {**expected, "circle": given["circle"]})

    @staticmethod
    def is_offered(angle: Angle, ratio: int, expected: Values) -> None:
        wanted = (expected["turns"], expected["holes"], expected["circle"])
        head = Head(ratio=ratio, plates=(*SET_ONE, (54,)))
        found = [first_move(setup) for setup in setups(plain.exact(Arc(angle), head))]
        asked = [(setting.turns, setting.holes, setting.circle) for setting in exact_settings(angle, head)]
        # A move of whole turns is the same on every circle.
        assert wanted in found or (wanted[1] == 0 and [move[:2] for move in found] == [wanted[:2]])
        assert asked == found

    @the_rows("angular", "ratio plates", "claim")
    def test_a_quarter_degree_cannot_be_had(self, given: Values, expected: Values) -> None:
        assert expected["claim"] == "one turn = 9 degrees; 1/4 degree cannot be had by plain indexing"
        for plates in (tuple(map(tuple, given["plates"])), SET_TWO):
            head = Head(ratio=given["ratio"], plates=plates)
            assert crank_angle(head, turns=1).degrees == 9
            assert isinstance(plain.exact(Arc(degrees("1/4")), head), Declined)

    @the_rows("angular", "ratio", "minutes_per_turn")
    def test_a_crank_turn_is_the_published_minutes(self, given: Values, expected: Values) -> None:
        made = crank_angle(Head(ratio=given["ratio"]), turns=1)
        assert made.degrees * 60 == expected["minutes_per_turn"]

    @the_rows("angular", "ratio minutes", "theory use")
    def test_an_angle_that_no_circle_makes_is_matched(self, given: Values, expected: Values) -> None:
        holes, circle = numbers_in(expected["use"])
        wanted = degrees(f"{given['minutes']}/60")
        published = abs(Fraction(holes, circle * given["ratio"]) - wanted.turns)
        near = nearest_setting(wanted, Head(ratio=given["ratio"]))
        assert near is not None
        assert (near.setting.turns, near.setting.holes, near.setting.circle) == (0, holes, circle)
        assert solve(Arc(wanted), Head(ratio=given["ratio"])).setups[0].accuracy.worst <= published

    @the_rows("angular", "turn_decimal plates", "movement")
    def test_a_row_of_the_table_of_angles_is_matched_or_bettered(self, given: Values, expected: Values) -> None:
        is_matched_or_bettered(given, expected)

    @the_rows("angular", "ratio planetary", "total_ratio small_crank_turn")
    def test_a_wide_range_head_turns_by_minutes(self, given: Values, expected: Values) -> None:
        assert given["ratio"] * given["planetary"] == expected["total_ratio"]
        made = crank_angle(Head(ratio=expected["total_ratio"]), turns=1)
        assert made == parse_angle(expected["small_crank_turn"])

    @the_rows("angular", "total_ratio small_circle", "divisions_max")
    def test_a_wide_range_head_divides_as_finely_as_published(self, given: Values, expected: Values) -> None:
        head = Head(ratio=given["total_ratio"], plates=((given["small_circle"],),))
        (setup,) = setups(plain.exact(Divisions(expected["divisions_max"]), head))
        assert first_move(setup) == (0, 1, given["small_circle"])


class TestDirect:
    @the_rows("direct", "holes", "degrees_per_hole")
    def test_a_hole_of_the_direct_plate_is_the_published_angle(self, given: Values, expected: Values) -> None:
        head = Head(direct_circles=(given["holes"],))
        (setup,) = setups(direct.exact(Arc(degrees(expected["degrees_per_hole"])), head))
        assert first_move(setup) == (0, 1, given["holes"])

    @the_rows("direct", "holes", "divisions")
    def test_a_direct_plate_makes_the_published_numbers(self, given: Values, expected: Values) -> None:
        assert numbers_by_direct(given["holes"]) == sorted(expected["divisions"])

    @the_rows("direct", "holes divisions", "holes")
    def test_the_holes_for_a_number(self, given: Values, expected: Values) -> None:
        (setup,) = setups(direct.exact(Divisions(given["divisions"]), Head(direct_circles=(given["holes"],))))
        assert first_move(setup)[1] == expected["holes"]

    @the_rows("direct", "plates", "statement")
    def test_plates_of_several_circles_make_the_numbers_of_all(self, given: Values, expected: Values) -> None:
        assert numbers_in(expected["statement"]) == given["plates"]
        wanted = {count for holes in given["plates"] for count in numbers_by_direct(holes)}
        assert numbers_by_direct(*given["plates"]) == sorted(wanted)

    @the_rows("direct", "", "divisions")
    def test_three_circles_make_the_published_list(self, given: Values, expected: Values) -> None:
        assert not given
        assert numbers_by_direct(14, 20, 24) == expected["divisions"]


def numbers_by_direct(*circles: int) -> list[int]:
    head = Head(direct_circles=circles)
    return [count for count in range(2, 101) if setups(direct.exact(Divisions(count), head))]


class TestEquipment:
    @the_rows("equipment", "", "plate_side_1 plate_side_2")
    def test_set_ii_is_the_published_plate(self, given: Values, expected: Values) -> None:
        assert not given
        assert tuple(map(tuple, expected.values())) == SET_TWO

    @the_rows("equipment", "", "large_side_1 large_side_2 small")
    def test_a_wide_range_divider_is_taken_as_it_is(self, given: Values, expected: Values) -> None:
        assert not given
        head = Head(ratio=4000, plates=tuple(tuple(circles) for circles in expected.values()))
        small = [crank_angle(head, turns=0, holes=1, circle=circle) for circle in expected["small"]]
        # Computed: one hole is 3.24 seconds of arc on the small 100, and 6 on the small 54.
        assert [made.degrees * 3600 for made in small] == [Fraction("3.24"), 6]

    @the_rows("equipment", "", "plates ratio")
    def test_set_i_is_the_published_one(self, given: Values, expected: Values) -> None:
        assert not given
        assert (Head().ratio, SET_ONE) == (expected["ratio"], tuple(map(tuple, expected["plates"])))

    @the_rows("equipment", "", "gears_seen")
    def test_the_gears_of_the_examples_are_in_the_box(self, given: Values, expected: Values) -> None:
        assert not given
        assert set(expected["gears_seen"]) <= set(TWELVE_GEARS)

    @the_rows("equipment", "ratio", "plates change_gears")
    def test_the_twelve_gears_are_the_published_set(self, given: Values, expected: Values) -> None:
        assert tuple(expected["change_gears"]) == TWELVE_GEARS
        assert GEARED.ratio == given["ratio"]
        assert GEARED.plates == tuple(map(tuple, expected["plates"]))


def test_every_row_is_taken_by_a_test() -> None:
    assert left_over("plain", "angular", "direct", "equipment") == []


def test_every_row_names_its_source() -> None:
    for row in ROWS:
        assert row["source"], row
        assert row["locator"] or row["kind"] == "recalled", row
