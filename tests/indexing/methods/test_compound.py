"""Compound indexing by hand: the pairs that serve, their two moves, and why none does."""

from __future__ import annotations

from fractions import Fraction
from itertools import permutations
from math import gcd

import pytest

from dividing.indexing.accuracy import accuracy
from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import Head
from dividing.indexing.methods import compound
from dividing.indexing.setup import NO_ERROR, Declined, Even, Move, Rounded, SecondMove, Setup
from dividing.indexing.work import Angles, Arc, Divisions, Stepped, Work
from tests.indexing.as_told import both_moves, first_move, second_move, setups

RADIANS = parse_angle("0.35 rad")
ONE_CIRCLE_EACH = Head(plates=((20,), (21,)))
FIFTEEN_SEVENTEEN = Head(plates=((15, 17),))
STOP_ON_NOTHING = Head(plates=((20,), (21, 23)), stop_circles=(20,))


def a_list(*turns: str) -> Angles:
    return Angles(tuple(Angle(Fraction(each)) for each in turns))


class TestExact:
    @pytest.mark.parametrize(
        ("divisions", "head", "first", "second"),
        [
            # 40/51 = 12/18 + 2/17 = 34/51 + 6/51.
            (51, Head(), (0, 12, 18), (2, 17)),
            # 40/69 = 22/33 - 2/23 = 46/69 - 6/69.
            (69, Head(), (0, 22, 33), (-2, 23)),
            # With the stop pin on 23 alone the other order: 1/3 on 33 or the like, then 23.
            (69, Head(stop_circles=(23,)), None, (None, 23)),
            # 40/77: sevenths and elevenths on 21 and 33.
            (77, Head(), None, None),
        ],
    )
    def test_the_two_moves_add_up(
        self, divisions: int, head: Head, first: tuple[int, int, int] | None, second: tuple[int | None, int] | None
    ) -> None:
        best = setups(compound.exact(Divisions(divisions), head))[0]
        assert both_moves(best) == Fraction(40, divisions)
        assert first is None or first_move(best) == first
        if second is not None:
            spaces, circle = second_move(best)
            assert circle == second[1]
            assert second[0] in (None, spaces)

    def test_each_pair_of_circles_is_told_once_and_the_smaller_moves_first(self) -> None:
        found = setups(compound.exact(Divisions(51), Head()))
        pairs = [frozenset((setup.move.circle, second_move(setup)[1])) for setup in found if setup.move]
        assert len(pairs) == len(set(pairs))
        lengths = [
            Fraction(first_move(setup)[1], first_move(setup)[2])
            + first_move(setup)[0]
            + abs(Fraction(*second_move(setup)))
            for setup in found
        ]
        assert lengths == sorted(lengths)

    def test_pairs_of_the_mounted_plate_come_first(self) -> None:
        for mounted in (1, 2):
            head = Head(plates=((15, 17), (30, 17)), mounted_plate=mounted)
            plates = [setup.move.plate for setup in setups(compound.exact(Divisions(51), head)) if setup.move]
            assert plates == [mounted, 3 - mounted]

    def test_no_more_are_told_than_are_wanted(self) -> None:
        assert len(setups(compound.exact(Divisions(51), Head(), 1))) == 1

    def test_a_list_takes_the_first_pair_on_which_all_fall(self) -> None:
        # 40/51 and 40/3 fall on 255 = lcm(15, 17).
        (setup,) = setups(compound.exact(a_list("0", "1/51", "1/3"), Head(plates=((15, 17),))))
        assert (setup.move, setup.second) == (Move(None, None, 15, 1), SecondMove(None, 17))
        assert setup.spacing == Rounded(40 * 255)

    def test_what_one_circle_makes_is_not_offered(self) -> None:
        # 40/28 = 1 3/7 on 21 alone; with 22 beside it there is no second move to make.
        assert compound.exact(Divisions(28), Head(plates=((21, 22),))) == compound.NO_TWO_CIRCLES


class TestWholeSetupsByHand:
    @pytest.mark.parametrize(
        ("work", "head", "move", "second"),
        [
            # 40/51 = 200/255 = 10/15 + 2/17; 2/17 + 10/15 has the longer second move.
            (Divisions(51), FIFTEEN_SEVENTEEN, Move(0, 10, 15, 1), SecondMove(2, 17)),
            (Arc(Angle(Fraction(1, 51)), 2), FIFTEEN_SEVENTEEN, Move(0, 10, 15, 1), SecondMove(2, 17)),
            # 80/51 = 400/255 = 20/15 + 4/17.
            (Divisions(51, every=2), FIFTEEN_SEVENTEEN, Move(1, 5, 15, 1), SecondMove(4, 17)),
            # 40/69 = 440/759 = 22/33 - 2/23; with the pin on 33 alone 21/23 - 11/33.
            (Divisions(69), Head(plates=((23, 33),)), Move(0, 22, 33, 1), SecondMove(-2, 23)),
            (Divisions(69), Head(plates=((23, 33),), stop_circles=(33,)), Move(0, 21, 23, 1), SecondMove(-11, 33)),
            # The same two circles on both plates are used on the one that is mounted.
            (Divisions(51), Head(plates=((15, 17),) * 2, mounted_plate=2), Move(0, 10, 15, 2), SecondMove(2, 17)),
        ],
    )
    def test_exactly(self, work: Stepped, head: Head, move: Move, second: SecondMove) -> None:
        setup = Setup("compound", Even(work.step), NO_ERROR, move, second, None, work.every)
        assert compound.exact(work, head) == (setup,)

    def test_the_smaller_moves_first_though_the_second_is_the_longer(self) -> None:
        # 5/14 = 4/21 + 1/6 with no turning back, or 4/8 - 3/21.
        found = setups(compound.exact(Divisions(14), Head(ratio=5, plates=((6, 8, 21),), direct_circles=())))
        assert [(setup.move, setup.second) for setup in found] == [
            (Move(0, 4, 21, 1), SecondMove(1, 6)),
            (Move(0, 4, 8, 1), SecondMove(-3, 21)),
        ]

    @pytest.mark.parametrize(
        ("plates", "step", "off", "move", "second"),
        [
            # 1/3 lies between 11/35 and 12/35 = 1/5 + 1/7, and nearer to 13/40 = 1/5 + 1/8.
            (((5, 7),), "12/35", "1/105", Move(0, 1, 5, 1), SecondMove(1, 7)),
            (((5, 7), (5, 8)), "13/40", "1/120", Move(0, 1, 5, 2), SecondMove(1, 8)),
        ],
    )
    def test_nearly(
        self, plates: tuple[tuple[int, ...], ...], step: str, off: str, move: Move, second: SecondMove
    ) -> None:
        work, spacing = Arc(Angle(Fraction(1, 3)), 2), Even(Fraction(step))
        setup = Setup("compound", spacing, accuracy(work, spacing), move, second, None, 1)
        assert setup.accuracy.worst == Fraction(off)
        assert compound.approximate(work, Head(ratio=1, plates=plates, direct_circles=())) == (setup,)

    @pytest.mark.parametrize(
        ("turns", "circles", "step"),
        [
            # The smallest step of two circles is one of their grid, 3/5 - 4/7 = 1/35 and 3/4 - 4/6 = 1/12, never none.
            ("1/34", (5, 7), "1/35"),
            ("1/1000", (5, 7), "1/35"),
            ("1/1000", (4, 6), "1/12"),
        ],
    )
    def test_a_small_angle_is_a_step_all_the_same(self, turns: str, circles: tuple[int, ...], step: str) -> None:
        head = Head(ratio=1, plates=(circles,), direct_circles=())
        (setup,) = setups(compound.approximate(Arc(Angle(Fraction(turns)), 2), head))
        assert setup.spacing == Even(both_moves(setup)) == Even(Fraction(step))

    def test_positions_of_a_list(self) -> None:
        head = Head(plates=((15, 17),))
        setup = Setup("compound", Rounded(40 * 255), NO_ERROR, Move(None, None, 15, 1), SecondMove(None, 17))
        assert compound.exact(a_list("0", "1/51", "1/3"), head) == (setup,)


def two_moves(head: Head) -> list[tuple[int, Move, SecondMove]]:
    """Every two moves on two circles of one plate that turn the spindle on by a turn at most, with their plate."""
    return [
        (plate, Move(*divmod(spaces, first), first, plate), SecondMove(back_or_on, second))
        for plate, face in enumerate(head.plates, 1)
        for first, second in permutations(face, 2)
        if head.stop_circles is None or second in head.stop_circles
        for spaces in range(1, (head.ratio + 1) * first)
        for back_or_on in range(-second + 1, second)
        if spaces % first and back_or_on
    ]


class TestAgainstEveryTwoMoves:
    HEADS = (
        Head(ratio=1, plates=((5, 7), (4, 6)), direct_circles=()),
        Head(ratio=3, plates=((6, 9, 10),), direct_circles=(), stop_circles=(6, 10)),
        Head(ratio=4, plates=((4, 8), (3, 7)), direct_circles=(), mounted_plate=2),
        Head(ratio=2, plates=((6, 8, 9, 15),), direct_circles=()),
    )

    @pytest.mark.parametrize("head", HEADS, ids=lambda head: f"{head.ratio} to 1")
    def test_exactly_by_the_smallest_of_each_two_circles(self, head: Head) -> None:
        making: dict[Fraction, list[tuple[int, Move, SecondMove]]] = {}
        for each in two_moves(head):
            making.setdefault(each[1].crank + each[2].crank, []).append(each)
        for count in range(2, 90):
            best: dict[frozenset[int], tuple[bool, Fraction, Fraction]] = {}
            for plate, move, second in making.get(Fraction(head.ratio, count), ()):
                if neither_alone(move, second):
                    circles, key = frozenset((move.circle, second.circle)), order(head, plate, move, second)
                    best[circles] = min(key, best.get(circles, key))
            found = [
                order(head, setup.move.plate, setup.move, setup.second)
                for setup in setups(compound.exact(Divisions(count), head))
                if setup.move and setup.second and neither_alone(setup.move, setup.second)
            ]
            assert found == sorted(best.values()), count

    @pytest.mark.parametrize("head", HEADS, ids=lambda head: f"{head.ratio} to 1")
    @pytest.mark.parametrize("fixed", [True, False])
    def test_nearly_none_comes_nearer(self, head: Head, *, fixed: bool) -> None:
        cranks = {crank for _, move, second in two_moves(head) if (crank := move.crank + second.crank) > 0}
        for count in range(2, 60, 3):
            blocks = [k for k in range(2, min(12, count - 1) + 1) if gcd(k, count) == 1 and not fixed]
            one, *others = (min(abs(crank / head.ratio - Fraction(k, count)) for crank in cranks) for k in (1, *blocks))
            if 0 in (one, *others):
                continue
            nearest = [one] if min(others, default=one) >= one else [one, min(others)]
            found = setups(compound.approximate(Divisions(count, fixed=fixed), head))
            kept = [(count - 1) * off for off in nearest if 2 * count**2 * off < 1]
            assert [setup.accuracy.worst for setup in found] == kept, count
            for setup in found:
                assert setup.move
                assert setup.second
                assert setup.spacing == Even((setup.move.crank + setup.second.crank) / head.ratio)
                assert setup.accuracy == accuracy(Divisions(count, setup.every), setup.spacing)


def order(head: Head, plate: int | None, move: Move, second: SecondMove) -> tuple[bool, Fraction, Fraction]:
    """The mounted plate first, then the smaller moves, then the smaller second one."""
    return plate != head.mounted_plate, move.crank + abs(second.crank), abs(second.crank)


def neither_alone(move: Move, second: SecondMove) -> bool:
    """Where one circle alone makes the step nobody makes two moves, and how small they are is all one."""
    whole = move.crank + second.crank
    return all((whole * circle).denominator != 1 for circle in (move.circle, second.circle))


class TestWhyItGivesNothing:
    @pytest.mark.parametrize(
        ("work", "head", "reason"),
        [
            (Divisions(51), ONE_CIRCLE_EACH, "No plate of this head has two circles."),
            (Divisions(51), Head(plates=()), "No plate of this head has two circles."),
            (Divisions(51), STOP_ON_NOTHING, "The stop pin reaches no circle beside another on its plate."),
            (
                Angles((RADIANS,)),
                Head(),
                "Angles in radians come out exactly on no circles.",
            ),
        ],
    )
    def test_exact_or_near(self, work: Work, head: Head, reason: str) -> None:
        assert compound.exact(work, head) == Declined("compound", reason)
        assert compound.approximate(work, head) == Declined("compound", reason)

    @pytest.mark.parametrize("work", [Divisions(53), Divisions(127), Arc(RADIANS, 2), a_list("0", "1/53")])
    def test_exact(self, work: Work) -> None:
        reason = "No two circles of one plate make this step exactly."
        assert compound.exact(work, Head()) == Declined("compound", reason)

    def test_near(self) -> None:
        reason = "No two circles of one plate make all these angles exactly."
        assert compound.approximate(a_list("0", "1/53"), Head()) == Declined("compound", reason)
        # 40 x 255 places a turn and half a division of 5,100: the count is lost at the latest after all moves.
        too_fine = "No two moves come near enough to keep the count of divisions."
        small = Head(plates=((15, 17),))
        assert compound.approximate(Divisions(5_100), small) == Declined("compound", too_fine)
        assert compound.approximate(Divisions(1_000_000), Head()) == Declined("compound", too_fine)


class TestNear:
    def test_one_space_a_move_and_several_where_they_add_up_to_less(self) -> None:
        found = setups(compound.approximate(Divisions(106), Head()))
        assert [setup.every for setup in found][:1] == [1]
        worst = [setup.accuracy.worst for setup in found]
        assert len(found) == 2
        assert worst[1] < worst[0]

    def test_asked_for_one_space_a_move_it_keeps_to_it(self) -> None:
        found = setups(compound.approximate(Divisions(106, fixed=True), Head()))
        assert [setup.every for setup in found] == [1]

    def test_an_angle_in_radians_is_met_nearly(self) -> None:
        (setup,) = setups(compound.approximate(Arc(RADIANS, 2), Head()))
        assert setup.accuracy.step is None
        assert 0 < setup.accuracy.worst < Fraction(1, 2 * 40 * 47 * 49)


class TestTheMovesOfAPair:
    @pytest.mark.parametrize(
        ("pair", "points", "moves"),
        [
            # 200/255 = 10/15 + 2/17 = 170/255 + 30/255.
            ((255, 15, 17, 1), 200, (10, 2)),
            # 1/6 = 1/2 - 1/3.
            ((6, 2, 3, 1), 1, (1, -1)),
            # 7/6 = 1/2 + 2/3.
            ((6, 2, 3, 1), 7, (1, 2)),
            # 2/6 is one space on 3, 3/6 one on 2: one circle alone.
            ((6, 2, 3, 1), 2, None),
            ((6, 2, 3, 1), 3, None),
            # 20 and 10 share every hole of the smaller: 1/20 + 1/10 and the like.
            ((20, 10, 20, 1), 3, (1, 1)),
        ],
    )
    def test_by_hand(self, pair: compound.Pair, points: int, moves: compound.Moves | None) -> None:
        assert compound.moves_of(pair, points) == moves

    def test_they_add_up_and_no_smaller_two_do(self) -> None:
        for first, second, grid in ((5, 7, 35), (4, 6, 12), (9, 12, 36), (10, 6, 30)):
            # Lengths of all pairs of moves, in parts of 1/(first x second) of a turn, by the place that they lead to.
            lengths: dict[int, list[int]] = {}
            for one in range(1, 4 * first):
                for other in range(-second + 1, second):
                    if one % first and other:
                        place = one * grid // first + other * grid // second
                        lengths.setdefault(place, []).append(one * second + abs(other) * first)
            for points in range(1, 3 * grid):
                moves = compound.moves_of((grid, first, second, 1), points)
                if moves is None:
                    assert points not in lengths, (first, second, points)
                else:
                    assert moves[0] * grid // first + moves[1] * grid // second == points
                    by_one_circle = points * first % grid == 0 or points * second % grid == 0
                    length = moves[0] * second + abs(moves[1]) * first
                    # Where one circle alone makes it nobody makes two moves, and how small they are is all one.
                    assert length == min(lengths[points]) or by_one_circle, (first, second, points)


class TestWhereNoTwoMovesLead:
    def test_an_angle_that_no_fraction_tells_is_exact_on_no_pair_though_its_nearest_fraction_is(self) -> None:
        rounded = Arc(Angle(Fraction(1, 51), rational=False), 2)
        assert setups(compound.exact(Arc(Angle(Fraction(1, 51)), 2), Head()))
        assert compound.exact(rounded, Head()) == compound.NO_TWO_CIRCLES

    def test_places_that_one_circle_makes_leave_nothing_between_them(self) -> None:
        # On 2 and 3 holes two moves make a sixth and five sixths; two fifths lie between 2/6 and 3/6.
        small = Head(ratio=1, plates=((2, 3),))
        assert compound.approximate(Arc(Angle(Fraction(2, 5)), 2), small) == compound.TOO_FINE
