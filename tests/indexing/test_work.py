"""The work: how many divisions, which angles, and how many spaces a move may take."""

from __future__ import annotations

from fractions import Fraction
from math import gcd

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.work import Angles, Arc, Divisions, blocks_to_try
from tests.indexing.refusals import faults_of

ANGLE = "An angle to index is more than 0° and at most 360°."
FEATURES = "Features are counted from 2 to 20,000."


class TestDivisions:
    @pytest.mark.parametrize("count", [0, -1, 1_000_001])
    def test_from_one_to_a_million(self, count: int) -> None:
        assert faults_of(lambda: Divisions(count)) == [
            (("divisions",), "Divisions are a whole number from 1 to 1,000,000.")
        ]

    @pytest.mark.parametrize(("count", "every"), [(1, 1), (1_000_000, 1), (1_000_000, 999_999), (2, 1), (3, 2)])
    def test_the_limits_themselves_are_taken(self, count: int, every: int) -> None:
        assert Divisions(count, every).step == Fraction(every, count)

    @pytest.mark.parametrize(
        ("count", "every", "sentence"),
        [
            (28, 0, "Spaces per move lie between 1 and 27 for 28 divisions."),
            (28, -3, "Spaces per move lie between 1 and 27 for 28 divisions."),
            (28, 28, "Spaces per move lie between 1 and 27 for 28 divisions."),
            (28, 29, "Spaces per move lie between 1 and 27 for 28 divisions."),
            (2, 2, "Spaces per move lie between 1 and 1 for 2 divisions."),
            (1_000, 1_001, "Spaces per move lie between 1 and 999 for 1,000 divisions."),
            (28, 6, "6 spaces a move would miss divisions: 6 and 28 share the factor 2."),
            (28, 21, "21 spaces a move would miss divisions: 21 and 28 share the factor 7."),
            (106, 53, "53 spaces a move would miss divisions: 53 and 106 share the factor 53."),
        ],
    )
    def test_spaces_a_move_that_cannot_be(self, count: int, every: int, sentence: str) -> None:
        assert faults_of(lambda: Divisions(count, every)) == [(("every",), sentence)]

    @pytest.mark.parametrize("count", range(1, 41))
    def test_just_the_spaces_that_reach_every_division_are_taken(self, count: int) -> None:
        for every in range(1, max(count, 2)):
            if gcd(every, count) == 1:
                work = Divisions(count, every)
                assert sorted(map(work.division, range(count))) == list(range(count))
            else:
                assert faults_of(lambda every=every: Divisions(count, every))  # type: ignore[misc]

    def test_it_cuts_as_many_as_it_counts_and_is_exact(self) -> None:
        work = Divisions(7, every=3)
        assert (work.cuts, work.rational) == (7, True)


class TestArc:
    @pytest.mark.parametrize(
        ("angle", "count", "faults"),
        [
            ("0", 2, [(("angle",), ANGLE)]),
            ("-5", 2, [(("angle",), ANGLE)]),
            ("360°00'01\"", 2, [(("angle",), ANGLE)]),
            ("90", 1, [(("count",), FEATURES)]),
            ("90", 20_001, [(("count",), FEATURES)]),
            ("400", 0, [(("angle",), ANGLE), (("count",), FEATURES)]),
        ],
    )
    def test_what_cannot_be(self, angle: str, count: int, faults: list[tuple[object, str]]) -> None:
        assert faults_of(lambda: Arc(parse_angle(angle), count)) == faults

    @pytest.mark.parametrize(
        ("angle", "count", "step"), [("360", 2, "1"), ("0°00'01\"", 20_000, "1/1296000"), ("37°30'", 3, "5/48")]
    )
    def test_what_is_taken(self, angle: str, count: int, step: str) -> None:
        work = Arc(parse_angle(angle), count)
        assert (work.step, work.cuts, work.every, work.rational) == (Fraction(step), count, 1, True)

    def test_radians_are_not_exact(self) -> None:
        assert not Arc(parse_angle("0.35 rad")).rational

    def test_two_features_are_meant_when_none_are_said_and_cut_as_they_stand(self) -> None:
        work = Arc(parse_angle("90"))
        assert work.cuts == 2
        assert [work.division(cut) for cut in range(2)] == [0, 1]


class TestAngles:
    @pytest.mark.parametrize("count", [0, 2_001])
    def test_from_one_to_two_thousand(self, count: int) -> None:
        assert faults_of(lambda: Angles((Angle(Fraction(0)),) * count)) == [
            (("angles",), "Give 1 to 2,000 angles.")
        ]

    @pytest.mark.parametrize("count", [1, 2_000])
    def test_the_limits_themselves_are_taken(self, count: int) -> None:
        assert Angles((Angle(Fraction(0)),) * count).cuts == count

    @pytest.mark.parametrize(
        ("angle", "place"), [("0", "0"), ("370", "1/36"), ("360", "0"), ("-90", "3/4"), ("22.5", "1/16")]
    )
    def test_they_are_taken_round_the_circle(self, angle: str, place: str) -> None:
        assert Angles((parse_angle(angle),)).places == (Fraction(place),)

    def test_they_are_cut_in_the_order_given(self) -> None:
        work = Angles((parse_angle("90"), parse_angle("10")))
        assert [work.division(cut) for cut in range(work.cuts)] == [0, 1]
        assert work.every == 1

    @pytest.mark.parametrize(("angles", "rational"), [(("0", "22.5"), True), (("0", "1 rad"), False)])
    def test_one_in_radians_is_enough_for_the_list_not_to_be_exact(
        self, angles: tuple[str, ...], rational: bool
    ) -> None:
        assert Angles(tuple(map(parse_angle, angles))).rational is rational


class TestSpacesWorthTrying:
    @pytest.mark.parametrize(
        ("work", "spaces"),
        [
            (Divisions(1), ()),
            (Divisions(2), ()),
            (Divisions(3), (2,)),
            (Divisions(7), (2, 3, 4, 5, 6)),
            (Divisions(12), (5, 7, 11)),
            (Divisions(13), (2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12)),
            (Divisions(383), (2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12)),
            # 30,030 = 2 x 3 x 5 x 7 x 11 x 13 shares a factor with every number from 2 to 12.
            (Divisions(30_030), ()),
            (Divisions(7, fixed=True), ()),
            (Divisions(7, 2), ()),
            (Divisions(7, 3), ()),
            (Arc(Angle(Fraction(1, 7)), 7), ()),
        ],
    )
    def test_two_to_twelve_that_share_no_factor(self, work: Divisions | Arc, spaces: tuple[int, ...]) -> None:
        assert blocks_to_try(work) == spaces
