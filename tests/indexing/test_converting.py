"""An angle in every form of the shop: published moves, every hole tried in turn, lengths by known figures."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from dividing.indexing.angles import LARGEST_TURNS, Angle, parse_angle
from dividing.indexing.converting import Setting, convert, crank_angle, exact_settings, nearest_setting
from dividing.indexing.faults import Refused
from dividing.indexing.head import SET_ONE, Dial, Head

TREATISE = "A Practical Treatise on Milling and Milling Machines, 1914"
HANDBOOK_1916 = "Machinery's Handbook, 1916 ed., indexing for angles"
HANDBOOK = "Machinery's Handbook, 27th ed., table of accurate angular indexing, p. 1995"
COLLEGE = "Fox Valley Technical College, machine-shop course page on angular indexing, examples"
ORDNANCE = "US Army Ordnance correspondence course on milling machine operations (OD1644)"
NAVY = "US Navy training course 14345, chapter 7, wide range divider, fig 7-19"
ENCYCLOPAEDIA = "Encyclopaedia Britannica, 5th ed. 1815, article on a circular dividing engine"

# Source: US Army Ordnance correspondence course on milling machine operations (OD1644), figure 11.
SET_TWO = ((24, 25, 28, 30, 34, 37, 38, 39, 41, 42, 43), (46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66))
ONE, TWO = Head(plates=SET_ONE), Head(plates=SET_TWO)
TABLE = Head(ratio=90, plates=((20, 21), (47, 49)), mounted_plate=2)
HEADS = some.sampled_from([ONE, TWO, TABLE, Head(ratio=60)])
TURNS = some.fractions(min_value=-2, max_value=2, max_denominator=4000)


class TestPublishedMoves:
    @pytest.mark.parametrize(
        ("source", "angle", "move", "head"),
        [
            (f"{TREATISE}, p. 54", "1", (0, 2, 18), ONE),
            (f"{TREATISE}, p. 54", "2/3", (0, 2, 27), ONE),
            (f"{TREATISE}, p. 54", "1/2", (0, 1, 18), ONE),
            (f"{TREATISE}, p. 54", "1/3", (0, 1, 27), ONE),
            (HANDBOOK_1916, "23/2", (1, 5, 18), ONE),
            (f"{HANDBOOK_1916} (the question; the answer is arithmetic)", "48°40'", (5, 11, 27), ONE),
            (COLLEGE, "19", (2, 6, 54), TWO),
            (COLLEGE, "8°50'", (0, 53, 54), TWO),
            (f"{COLLEGE}, figure 1 (the question; the answer is arithmetic)", "75", (8, 18, 54), TWO),
            (f"{ORDNANCE}, (d)", "54'", (0, 2, 20), ONE),
            (f"{HANDBOOK}, row 0.1915", "9/1880 turn", (0, 9, 47), ONE),
            (f"{HANDBOOK}, row 0.2222", "1/180 turn", (0, 6, 27), ONE),
            (f"{HANDBOOK}, row 0.1930", "11/2280 turn", (0, 11, 57), TWO),
            (f"{HANDBOOK}, row 0.2353", "8/1360 turn", (0, 8, 34), TWO),
            (f"{HANDBOOK}, row 0.2000", "1/200 turn", (0, 3, 15), ONE),
        ],
    )
    def test_are_among_the_settings(
        self, source: str, angle: str, move: tuple[int, int, int], head: Head
    ) -> None:
        found = convert(parse_angle(angle), head)
        assert move in [(setting.turns, setting.holes, setting.circle) for setting in found.settings], source
        assert found.nearest is None

    def test_of_whole_turns_are_one_setting(self) -> None:
        """45° is 5 turns (Fox Valley Technical College, course page on angular indexing, examples)."""
        assert exact_settings(parse_angle("45"), TWO) == (Setting(5, 0, 43, 1),)

    @pytest.mark.parametrize(
        ("source", "ratio", "move", "angle"),
        [
            (f"{TREATISE}, p. 54", 40, (1, 0, None), "9"),
            (f"{ORDNANCE}, (b)", 40, (1, 0, None), "540'"),
            (NAVY, 4000, (1, 0, None), "5'24\""),
            (f"{NAVY}, 400,000 divisions at most", 4000, (0, 1, 100), "1/400000 turn"),
            (ENCYCLOPAEDIA, 2160, (6, 0, None), "1°"),
        ],
    )
    def test_make_the_published_angle(
        self, source: str, ratio: int, move: tuple[int, int, int | None], angle: str
    ) -> None:
        turns, holes, circle = move
        made = crank_angle(Head(ratio=ratio), turns=turns, holes=holes, circle=circle)
        assert made == parse_angle(angle), source

    @pytest.mark.parametrize(
        ("printed", "holes", "circle"),
        [
            ("0.1915", 9, 47), ("0.2222", 6, 27), ("0.1930", 11, 57), ("0.1935", 6, 31), ("0.2245", 11, 49),
            ("0.2258", 7, 31), ("0.1951", 8, 41), ("0.1957", 9, 46), ("0.1961", 10, 51), ("0.1970", 13, 66),
            ("0.2000", 3, 15), ("0.2308", 9, 39), ("0.2000", 4, 20), ("0.2326", 10, 43), ("0.2034", 12, 59),
            ("0.2037", 11, 54), ("0.2340", 11, 47), ("0.2041", 10, 49), ("0.2353", 8, 34), ("0.2051", 8, 39),
            ("0.2059", 7, 34), ("0.2069", 6, 29), ("0.2373", 14, 59),
        ],
    )  # fmt: skip
    def test_print_the_turns_of_the_handbook(self, printed: str, holes: int, circle: int) -> None:
        """Machinery's Handbook, 27th ed., table of accurate angular indexing, p. 1995: to four places."""
        crank = convert(crank_angle(ONE, turns=0, holes=holes, circle=circle), ONE).crank
        assert crank is not None
        assert f"{float(crank):.4f}" == printed

    @pytest.mark.parametrize("head", [ONE, TWO], ids=["set I", "set II"])
    def test_of_a_quarter_degree_cannot_be_had_in_plain_indexing(self, head: Head) -> None:
        """A Practical Treatise on Milling and Milling Machines, 1914, p. 54; set II by arithmetic."""
        assert exact_settings(parse_angle("1/4°"), head) == ()

    def test_of_twenty_four_minutes_are_one_hole_in_twenty_three_nearly(self) -> None:
        """OD1644, (c): 1 hole in 23, declared approximate; 540/23' - 24' = -12/23' is -31.304"."""
        found = convert(parse_angle("24'"), ONE)
        assert found.settings == ()
        assert found.nearest is not None
        assert found.nearest.setting == Setting(0, 1, 23, 2)
        assert found.nearest.error == Fraction(-12, 23) / 21600
        assert found.nearest.error_seconds == -31.3043


class TestSettings:
    @settings(deadline=None)
    @given(TURNS, HEADS)
    def test_are_every_circle_that_makes_the_angle_and_no_other(self, turns: Fraction, head: Head) -> None:
        """Against every hole of every circle tried in turn."""
        crank = turns * head.ratio
        tried = [
            (circle, plate)
            for circle, plate in head.circles
            if any(abs(crank) - int(abs(crank)) == Fraction(hole, circle) for hole in range(circle))
        ]
        found = exact_settings(Angle(turns), head)
        wanted = tried[:1] if crank.denominator == 1 else tried
        assert [(setting.circle, setting.plate) for setting in found] == wanted

    @settings(deadline=None)
    @given(TURNS, HEADS)
    def test_make_the_angle(self, turns: Fraction, head: Head) -> None:
        for setting in exact_settings(Angle(turns), head):
            made = crank_angle(head, turns=setting.turns, holes=setting.holes, circle=setting.circle)
            assert made == Angle(turns)
            assert abs(setting.holes) < (setting.circle or 1)

    @settings(deadline=None)
    @given(TURNS, HEADS)
    def test_the_other_way_are_the_same_below_zero(self, turns: Fraction, head: Head) -> None:
        turned = [
            Setting(-setting.turns, -setting.holes, setting.circle, setting.plate)
            for setting in exact_settings(Angle(turns), head)
        ]
        assert exact_settings(Angle(-turns), head) == tuple(turned)

    @settings(deadline=None)
    @given(TURNS, HEADS)
    def test_that_come_nearest_leave_no_hole_nearer(self, turns: Fraction, head: Head) -> None:
        """Against both holes beside the place on every circle."""
        crank = turns * head.ratio
        least = min(
            abs(Fraction(math.floor(crank * circle) + beside, circle) - crank)
            for circle, _ in head.circles
            for beside in (0, 1)
        )
        near = nearest_setting(Angle(turns), head)
        assert near is not None
        assert abs(near.error) == least / head.ratio
        move = near.setting
        made = crank_angle(head, turns=move.turns, holes=move.holes, circle=move.circle)
        assert made.turns - turns == near.error

    def test_stand_in_the_order_of_the_plates_mounted_first(self) -> None:
        found = exact_settings(Angle(Fraction(1, 120)), Head(mounted_plate=2))
        assert [setting.circle for setting in found] == [33, 27, 21, 39, 18, 15]

    def test_of_radians_are_only_ever_nearest(self) -> None:
        found = convert(parse_angle("0.35 rad"), ONE)
        assert (found.crank, found.settings) == (None, ())
        assert found.nearest is not None
        holes = [Fraction(hole, circle) for circle, _ in ONE.circles for hole in range(circle)]
        # 40 x 0.35/(2 pi) is 2.228 crank turns: the nearest of all holes after two turns, each tried.
        assert abs(found.nearest.error) == min(abs(2 + hole - found.angle.turns * 40) for hole in holes) / 40


class TestAHeadWithoutPlates:
    TABLE = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(graduation=Fraction(1, 21600)))

    def test_still_counts_whole_turns(self) -> None:
        assert convert(parse_angle("8°"), self.TABLE).settings == (Setting(2, 0, None, None),)

    def test_has_no_hole_that_could_be_nearest(self) -> None:
        found = convert(parse_angle("9°"), self.TABLE)
        assert (found.crank, found.settings, found.nearest) == (Fraction(9, 4), (), None)


class TestOtherForms:
    @pytest.mark.parametrize(
        ("angle", "radians", "gon"),
        [
            ("180°", math.pi, 200.0),
            ("22.5", math.pi / 8, 25.0),
            ("-90", -math.pi / 2, -100.0),
            ("25 gon", math.pi / 8, 25.0),
            ("2 rad", 2.0, 127.32395447351627),
        ],
    )
    def test_of_the_angle(self, angle: str, radians: float, gon: float) -> None:
        found = convert(parse_angle(angle), ONE)
        assert (found.radians, found.gon) == pytest.approx((radians, gon), rel=1e-15)

    @pytest.mark.parametrize(
        ("angle", "arc", "chord"),
        [
            ("60°", math.pi * 20, 60.0),
            ("-60°", math.pi * 20, 60.0),
            ("90°", math.pi * 30, 60 * math.sqrt(2)),
            ("180°", math.pi * 60, 120.0),
            ("360°", math.pi * 120, 0.0),
            ("0", 0.0, 0.0),
            ("36°", math.pi * 12, 30 * (math.sqrt(5) - 1)),
        ],
    )
    def test_at_a_diameter_of_120(self, angle: str, arc: float, chord: float) -> None:
        found = convert(parse_angle(angle), ONE, diameter=Fraction(120))
        assert (found.arc, found.chord) == pytest.approx((arc, chord), rel=1e-15)

    @pytest.mark.parametrize(
        ("angle", "rise"),
        [
            ("45°", 100.0),
            ("-45°", -100.0),
            ("135°", -100.0),
            ("30°", 100 / math.sqrt(3)),
            ("180°", 0.0),
            ("90°", None),
            ("-90°", None),
            ("450°", None),
        ],
    )
    def test_as_a_rise_in_a_hundred(self, angle: str, rise: float | None) -> None:
        found = convert(parse_angle(angle), ONE).rise_per_100
        assert found == (None if rise is None else pytest.approx(rise, rel=1e-15))

    @pytest.mark.parametrize(
        ("angle", "height"),
        [("30°", 2.5), ("0", 0.0), ("90°", 5.0), ("45°", 5 / math.sqrt(2)), ("90°01'", None), ("-1'", None)],
    )
    def test_under_a_sine_bar_of_5(self, angle: str, height: float | None) -> None:
        found = convert(parse_angle(angle), ONE, sine_bar=Fraction(5)).sine_bar_height
        assert found == (None if height is None else pytest.approx(height, rel=1e-15))

    def test_are_left_out_where_no_length_is_given(self) -> None:
        found = convert(parse_angle("30°"), ONE)
        assert (found.arc, found.chord, found.sine_bar_height) == (None, None, None)


class TestACrankMoveThatCannotBe:
    @pytest.mark.parametrize(
        ("turns", "holes", "circle", "path", "sentence"),
        [
            (1, 3, None, ("circle",), "Name the circle on which the spaces are counted."),
            (0, 10**6, None, ("circle",), "Name the circle on which the spaces are counted."),
            (0, 1, 1, ("circle",), "A circle has 2 to 400 holes."),
            (1, 3, 0, ("circle",), "A circle has 2 to 400 holes."),
            (1, 3, 401, ("circle",), "A circle has 2 to 400 holes."),
            (40 * LARGEST_TURNS, 1, 20, ("turns",), "The move may turn the spindle 1,000 times at most."),
            (-(10**30), 0, None, ("turns",), "The move may turn the spindle 1,000 times at most."),
        ],
    )
    def test_is_refused_at_its_field(
        self, turns: int, holes: int, circle: int | None, path: tuple[str, ...], sentence: str
    ) -> None:
        with pytest.raises(Refused) as refused:
            crank_angle(ONE, turns=turns, holes=holes, circle=circle)
        assert [(fault.path, fault.sentence) for fault in refused.value.faults] == [(path, sentence)]

    @pytest.mark.parametrize(
        ("turns", "holes", "circle", "spindle"),
        [
            (0, 1, 2, "1/80"),
            (0, 399, 400, "399/16000"),
            (40 * LARGEST_TURNS, 0, None, "1000"),
            (-40 * LARGEST_TURNS + 1, -20, 20, "-1000"),
        ],
    )
    def test_is_taken_up_to_its_very_limits(self, turns: int, holes: int, circle: int | None, spindle: str) -> None:
        assert crank_angle(ONE, turns=turns, holes=holes, circle=circle) == Angle(Fraction(spindle))

    def test_of_whole_turns_needs_no_circle(self) -> None:
        # One turn of 40 is 9 degrees.
        assert crank_angle(ONE, turns=1).degrees == 9

    def test_may_name_a_circle_that_the_head_has_not(self) -> None:
        assert crank_angle(ONE, turns=0, holes=30, circle=60).degrees == Fraction(9, 2)
