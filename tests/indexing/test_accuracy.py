"""The five figures of error as worked by hand; laws over whole ranges stand in test_laws_accuracy."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.accuracy import accuracy, comes_home, keeps_count, rounding_error
from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.setup import NO_ERROR, Accuracy, Even, Rounded, Spacing
from dividing.indexing.work import Angles, Arc, Divisions, Work
from tests.second.holes import nearest_holes

RADIANS = parse_angle("0.35 rad")


def arc(step: str, count: int) -> Arc:
    return Arc(Angle(Fraction(step)), count)


def a_list(*turns: str) -> Angles:
    return Angles(tuple(Angle(Fraction(each)) for each in turns))


def figures(step: str | None, *others: str) -> Accuracy:
    worst, closing, single_pitch, total_pitch = map(Fraction, others)
    return Accuracy(None if step is None else Fraction(step), worst, closing, single_pitch, total_pitch)


class TestTheFiveFigures:
    @pytest.mark.parametrize(
        ("work", "spacing", "errors"),
        [
            # An eighth for a seventh: 1/56 short a move, six moves to the last cut, seven home; the last space has all.
            (Divisions(7), Even(Fraction(1, 8)), figures("-1/56", "6/56", "-7/56", "6/56", "6/56")),
            # Two spaces a move, each 1/100 long, divisions 0 2 4 1 3: neighbours lie 3 or 2 moves apart.
            (Divisions(5, every=2), Even(Fraction(41, 100)), figures("1/100", "4/100", "5/100", "3/100", "4/100")),
            # 5 x 3 is 1 more than two rounds of 7: neighbours lie 5 or 2 moves apart.
            (Divisions(7, every=3), Even(Fraction(43, 100)), figures("1/700", "6/700", "7/700", "5/700", "6/700")),
            # One cut has no neighbour.
            (Divisions(1), Even(Fraction(1, 2)), figures("-1/2", "0", "-1/2", "0", "0")),
            (Divisions(2), Even(Fraction(3, 5)), figures("1/10", "1/10", "2/10", "1/10", "1/10")),
            # Three features, two moves; they do not come home, so the closing error is that of the last.
            (arc("1/8", 3), Even(Fraction(126, 1000)), figures("1/1000", "2/1000", "2/1000", "1/1000", "2/1000")),
            # Four quarters do: a fourth move leads back, and the last space carries what is left.
            (arc("1/4", 4), Even(Fraction(251, 1000)), figures("1/1000", "3/1000", "4/1000", "3/1000", "3/1000")),
            # 3/8 eight times goes three times round; cuts stand 0 3 6 1 4 7 2 5: neighbours up to 5 moves apart.
            (arc("3/8", 8), Even(Fraction(376, 1000)), figures("1/1000", "7/1000", "8/1000", "5/1000", "7/1000")),
            # Thirds on a circle of four: 1/3 at 1/4, 2/3 at 3/4.
            (Divisions(3), Rounded(4), figures(None, "1/12", "0", "2/12", "2/12")),
            # A half on a circle of three goes to the hole ahead, 2/3.
            (Divisions(2), Rounded(3), figures(None, "1/6", "0", "1/6", "1/6")),
            # Six on four: thirds twice over, with halves exact: 0 +1/12 -1/12 0 +1/12 -1/12.
            (Divisions(6), Rounded(4), figures(None, "1/12", "0", "2/12", "2/12")),
            # Positions 0, 1/3, 2/3 in this order, on four: 0 -1/12 +1/12, and the last lies beside the first.
            (a_list("0", "1/3", "2/3"), Rounded(4), figures(None, "1/12", "0", "2/12", "2/12")),
            # Cut in another order, they stand as they stood.
            (a_list("2/3", "0", "1/3"), Rounded(4), figures(None, "1/12", "0", "2/12", "2/12")),
            # Fifths on four, cut 0 2 4 1 3: 0 +2 -1 +1 -2 twentieths, round the work 0 +1 +2 -2 -1.
            (a_list("0", "2/5", "4/5", "1/5", "3/5"), Rounded(4), figures(None, "2/20", "0", "4/20", "4/20")),
            (arc("2/5", 5), Rounded(4), figures(None, "2/20", "0", "4/20", "4/20")),
            # One position 1/3 alone: it is its own neighbour.
            (a_list("1/3"), Rounded(4), figures(None, "1/12", "0", "0", "0")),
            # Two features a third apart on four: 0, -1/12; nothing lies between the last and the first.
            (arc("1/3", 2), Rounded(4), figures(None, "1/12", "0", "1/12", "1/12")),
            # Three of them go round, and the last meets the first.
            (arc("1/3", 3), Rounded(4), figures(None, "1/12", "0", "2/12", "2/12")),
            # Four features a fortieth apart all fall to the start hole, farther from the first than from each other.
            (arc("1/40", 4), Rounded(4), figures(None, "3/40", "0", "1/40", "3/40")),
            # Two moves of 2/5 on three: 0 -1/15 -2/15 at 0, 2/5 and 4/5, beside which the first stands again.
            (arc("2/5", 3), Rounded(3), figures(None, "2/15", "0", "2/15", "2/15")),
            # The last of three sixteenths lies midway and goes to the hole ahead: 0 -1/16 +1/8.
            (arc("1/16", 3), Rounded(4), figures(None, "1/8", "0", "3/16", "3/16")),
        ],
    )  # fmt: skip
    def test_by_hand(self, work: Work, spacing: Spacing, errors: Accuracy) -> None:
        assert accuracy(work, spacing) == errors

    @pytest.mark.parametrize(
        ("work", "spacing"),
        [
            (Divisions(7), Even(Fraction(1, 7))),
            (Divisions(7, every=3), Even(Fraction(3, 7))),
            (arc("1/8", 3), Even(Fraction(1, 8))),
            (Divisions(6), Rounded(24)),
            (arc("1/8", 3), Rounded(24)),
            (a_list("0", "1/3", "5/24"), Rounded(24)),
        ],
    )
    def test_an_exact_spacing_has_none(self, work: Work, spacing: Spacing) -> None:
        assert accuracy(work, spacing) is NO_ERROR

    def test_an_angle_in_radians_is_never_called_exact_in_its_step(self) -> None:
        errors = accuracy(Arc(RADIANS, 3), Even(RADIANS.turns))
        assert errors == figures(None, "0", "0", "0", "0")
        assert errors is not NO_ERROR

    def test_a_list_has_no_one_step(self) -> None:
        with pytest.raises(TypeError) as refused:
            accuracy(a_list("0", "1/3"), Even(Fraction(1, 3)))
        assert str(refused.value) == "a list of angles has no even spacing"


class TestRoundingOnePlace:
    @pytest.mark.parametrize(
        ("place", "points", "error"),
        [
            ("1/7", 24, "-1/56"),  # 24/7 = 3 3/7, back to 3
            ("4/7", 24, "1/84"),  # 96/7 = 13 5/7, on to 14
            ("1/48", 24, "1/48"),  # midway: on to the one ahead
            ("0", 24, "0"),
            ("5/24", 24, "0"),
            ("47/48", 24, "1/48"),  # on to the start of the next turn
            ("1/3", 1, "-1/3"),
            ("-1/7", 24, "1/56"),
        ],
    )
    def test_by_hand(self, place: str, points: int, error: str) -> None:
        assert rounding_error(Fraction(place), points) == Fraction(error)

    def test_is_the_distance_to_the_nearest_of_all_places(self) -> None:
        for points in range(1, 30):
            for under in range(1, 30):
                places = [Fraction(over, under) for over in range(under)]
                for place, hole in zip(places, nearest_holes(places, points), strict=True):
                    assert rounding_error(place, points) == hole - place


class TestWhatTheErrorsMean:
    @pytest.mark.parametrize(
        ("work", "spacing", "kept"),
        [
            # 1/56 a move closes 1/8 short, and half a division is 1/14.
            (Divisions(7), Even(Fraction(1, 8)), False),
            # 1/1000 a move closes 7/1000 long.
            (Divisions(7), Even(Fraction(1, 7) + Fraction(1, 1000)), True),
            # At the very half, two places are as near.
            (Divisions(2), Even(Fraction(1, 2) + Fraction(1, 8)), False),
            (Divisions(2), Even(Fraction(1, 2) + Fraction(1, 9)), True),
            # Three divisions on two places: 1/3 at 1/2, 1/6 off, which is half a division.
            (Divisions(3), Rounded(2), False),
            (Divisions(3), Rounded(4), True),
            # Features at an angle and lists have no count to lose.
            (arc("1/8", 3), Even(Fraction(1, 2)), True),
            (a_list("0", "1/3"), Rounded(2), True),
        ],
    )
    def test_a_count_is_kept_while_every_position_lies_nearest_its_own_place(
        self, work: Work, spacing: Spacing, kept: bool
    ) -> None:
        assert keeps_count(work, accuracy(work, spacing)) is kept

    @pytest.mark.parametrize(
        ("work", "home"),
        [
            (Divisions(7), True),
            (a_list("0", "1/3"), True),
            (arc("1/4", 4), True),
            (arc("3/8", 8), True),
            (arc("1/4", 3), False),
            (arc("1/8", 3), False),
        ],
    )
    def test_work_that_goes_round_comes_home(self, work: Work, home: bool) -> None:
        assert comes_home(work) is home
