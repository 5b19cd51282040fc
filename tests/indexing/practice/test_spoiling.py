"""Slips made on purpose: each by hand, and each named first by the verifier, which goes the other way."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import TWELVE_GEARS, Dial, Head
from dividing.indexing.practice import Exercise, Wanted, sheet
from dividing.indexing.practice.chance import Chance
from dividing.indexing.practice.spoiling import SPOILERS, Right, slips_at
from dividing.indexing.verifying import Claim, GearingClaim, SecondClaim, verify
from dividing.indexing.work import Arc, Divisions
from tests.indexing.practice.classes import GEARED, HALF_MINUTES
from tests.indexing.verifying.slips_made import SLIPS

USUAL = Head()
TABLE = Head(90, (), direct_circles=(), dial=HALF_MINUTES)
LINES = Head(90, (), direct_circles=(), dial=Dial(divisions=100))
TRAIN = GearingClaim(48, 28, None, 2)
SEEDS = range(12)

# (slip, work, head, right claim, the claims that it may be spoiled to)
BY_HAND: list[tuple[str, Divisions | Arc, Head, Claim, set[Claim]]] = [
    # 40/28 = 1 9/21: nine holes counted from the pin's own are eight spaces.
    ("counted_the_pin_hole", Divisions(28), USUAL, Claim("plain", 1, 9, 21), {Claim("plain", 1, 8, 21)}),
    # 24 by the direct plate is one space; the two holes between pin and pin taken for spaces.
    ("counted_the_pin_hole", Divisions(24), USUAL, Claim("direct", 0, 1, 24), {Claim("direct", 0, 2, 24)}),
    # 40/36 = 1 2/18.
    ("counted_the_pin_hole", Divisions(36), USUAL, Claim("plain", 1, 2, 18), {Claim("plain", 1, 1, 18)}),
    ("whole_turns_forgotten", Divisions(28), USUAL, Claim("plain", 1, 9, 21), {Claim("plain", 0, 9, 21)}),
    # 90/8 = 11 1/4 turns, a quarter of 4 degrees.
    ("whole_turns_forgotten", Divisions(8), TABLE, Claim("dial", 11, reading=parse_angle("1°")),
     {Claim("dial", 0, reading=parse_angle("1°"))}),
    ("whole_turns_forgotten", Divisions(8), LINES, Claim("dial", 11, divisions=Fraction(25)),
     {Claim("dial", 0, divisions=Fraction(25))}),
    # 36/40 for 40/36: nine tenths, which only the circle of 20 has.
    ("fraction_upside_down", Divisions(36), USUAL, Claim("plain", 1, 2, 18), {Claim("plain", 0, 18, 20)}),
    # 2/7 is no circle's own, so 6/21 and 14/49 are on plates; 4/14, 8/28 and 10/35 are not.
    ("circle_on_no_plate", Divisions(140), USUAL, Claim("plain", 0, 6, 21),
     {Claim("plain", 0, 4, 14), Claim("plain", 0, 8, 28), Claim("plain", 0, 10, 35)}),
    # A third: 9 holes are too few for anybody to think of a circle, 15, 18 and 21 are on plates.
    ("circle_on_no_plate", Divisions(120), USUAL, Claim("plain", 0, 6, 18),
     {Claim("plain", 0, 4, 12), Claim("plain", 0, 8, 24)}),
    ("circle_on_no_plate", Divisions(80), USUAL, Claim("plain", 0, 10, 20),
     {Claim("plain", 0, 5, 10), Claim("plain", 0, 6, 12), Claim("plain", 0, 7, 14)}),
    ("circle_on_no_plate", Divisions(3), Head(direct_circles=(12, 15, 18, 24)), Claim("direct", 0, 4, 12),
     {Claim("direct", 0, 7, 21)}),
    ("circle_on_no_plate", Divisions(8), USUAL, Claim("direct", 0, 3, 24),
     {Claim("direct", 0, 2, 16), Claim("direct", 0, 4, 32), Claim("direct", 0, 5, 40)}),
    # 40/44 = 10/11, and there is no circle of 11, 33 or 44 here.
    ("circle_on_no_plate", Divisions(44), Head(plates=((22,),)), Claim("plain", 0, 20, 22),
     {Claim("plain", 0, 10, 11), Claim("plain", 0, 30, 33), Claim("plain", 0, 40, 44)}),
    # 60, 72, 80, 90 and 120 over 36: whole turns 2 at 72, on the smallest circle at hand or any other.
    ("other_ratio", Divisions(11), Head(plates=((33,),)), Claim("plain", 3, 21, 33),
     {Claim("plain", 5, 15, 33), Claim("plain", 6, 18, 33), Claim("plain", 7, 9, 33), Claim("plain", 8, 6, 33),
      Claim("plain", 10, 30, 33)}),
    ("other_circle", Divisions(28), Head(plates=((8, 21, 23), (49,))), Claim("plain", 1, 9, 21),
     {Claim("plain", 1, 9, 23), Claim("plain", 1, 9, 49)}),
    # 21 spaces are the whole circle of 21, and no part of a turn.
    ("other_circle", Divisions(28), Head(plates=((20, 21, 23), (49,))), Claim("plain", 1, 21, 49),
     {Claim("plain", 1, 21, 23)}),
    ("other_circle", Divisions(24), Head(direct_circles=(24, 30, 36)), Claim("direct", 0, 1, 24),
     {Claim("direct", 0, 1, 30), Claim("direct", 0, 1, 36)}),
    # 40/19 = 2 2/19 and 40/21 = 1 19/21.
    ("neighbouring_count", Divisions(20), Head(plates=((19, 21),)), Claim("plain", 2, 0, 19),
     {Claim("plain", 2, 2, 19), Claim("plain", 1, 19, 21)}),
    # 40/5 = 8 and 40/3 = 13 6/18.
    ("neighbouring_count", Divisions(4), Head(plates=((18,),)), Claim("plain", 10, 0, 18),
     {Claim("plain", 8, 0, 18), Claim("plain", 13, 6, 18)}),
    ("neighbouring_count", Divisions(7), Head(direct_circles=(24, 28)), Claim("direct", 0, 4, 28),
     {Claim("direct", 0, 4, 24), Claim("direct", 0, 3, 24)}),
    # 37 degrees 30 minutes read as 37.30 degrees: 37.3/9 = 4 13/90 turns.
    ("minutes_read_as_decimals", Arc(parse_angle("37°30'")), Head(plates=((18, 90),)), Claim("plain", 4, 3, 18),
     {Claim("plain", 4, 13, 90)}),
    # 360/7 = 12 turns of 4 degrees and 3 degrees 25' 42.9", which the dial shows as 3 degrees 25' 30".
    ("rounded_step_added_up", Divisions(7), TABLE, Claim("dial", 12, reading=parse_angle("3°25'30\"")),
     {Claim("dial", 12, reading=parse_angle("3°25'30\""))}),
    # 90/16 = 5 5/8 turns, 62 1/2 lines.
    ("rounded_step_added_up", Divisions(16), LINES, Claim("dial", 5, divisions=Fraction(62)),
     {Claim("dial", 5, divisions=Fraction(62))}),
    # 12/18 + 2/17 = 240/306 = 40/51.
    ("second_move_wrong_way", Divisions(51), USUAL, Claim("compound", 0, 12, 18, SecondClaim(2, 17)),
     {Claim("compound", 0, 12, 18, SecondClaim(-2, 17))}),
    # 40 - 73 x 12/21 = -12/7 = -48/28.
    ("drivers_and_driven_swapped", Divisions(73), GEARED, Claim("differential", 0, 12, 21, gearing=TRAIN),
     {Claim("differential", 0, 12, 21, gearing=GearingClaim(28, 48, None, 2))}),
    # -12/7 = -(72 x 64)/(56 x 48).
    ("drivers_and_driven_swapped", Divisions(73), GEARED,
     Claim("differential", 0, 12, 21, gearing=GearingClaim(72, 56, (64, 48), 1)),
     {Claim("differential", 0, 12, 21, gearing=GearingClaim(56, 72, (48, 64), 1))}),
    ("idlers_off_by_one", Divisions(73), GEARED, Claim("differential", 0, 12, 21, gearing=TRAIN),
     {Claim("differential", 0, 12, 21, gearing=GearingClaim(48, 28, None, idlers)) for idlers in (1, 3)}),
    ("gears_left_off", Divisions(73), GEARED, Claim("differential", 0, 12, 21, gearing=TRAIN),
     {Claim("plain", 0, 12, 21)}),
]  # fmt: skip


@pytest.mark.parametrize(("slip", "work", "head", "right", "spoiled"), BY_HAND)
def test_a_slip_spoils_a_right_setup_as_people_do(
    slip: str, work: Divisions | Arc, head: Head, right: Claim, spoiled: set[Claim]
) -> None:
    assert verify(work, head, right).verdict == "exact" or slip == "rounded_step_added_up"
    made = {SPOILERS[slip].spoil(Right(work, head, right), Chance(seed)) for seed in range(60)}
    assert made - {None} == spoiled
    # Figures are whole numbers, which print without a point.
    assert set(map(str, made - {None})) == set(map(str, spoiled))


@pytest.mark.parametrize(
    ("slip", "work", "head", "spoiled"), [(slip, work, head, spoiled) for slip, work, head, _, spoiled in BY_HAND]
)
def test_what_was_spoiled_is_named_by_the_verifier(
    slip: str, work: Divisions | Arc, head: Head, spoiled: set[Claim]
) -> None:
    named = {claim: [found.slip for found in verify(work, head, claim).likely_slips] for claim in spoiled}
    assert all(slip in found for found in named.values()), named


@pytest.mark.parametrize(
    ("slip", "work", "head", "right"),
    [
        ("counted_the_pin_hole", Divisions(20), USUAL, Claim("plain", 2)),
        ("whole_turns_forgotten", Divisions(20), USUAL, Claim("plain", 2)),
        ("whole_turns_forgotten", Divisions(64), USUAL, Claim("plain", 0, 10, 16)),
        ("whole_turns_forgotten", Divisions(9), TABLE, Claim("dial", 10, reading=Angle(Fraction(0)))),
        ("circle_on_no_plate", Divisions(20), USUAL, Claim("plain", 2)),
        ("circle_on_no_plate", Divisions(80), Head(plates=(tuple(range(2, 41, 2)),)), Claim("plain", 0, 10, 20)),
        ("other_circle", Divisions(28), Head(plates=((21,),)), Claim("plain", 1, 9, 21)),
        ("other_circle", Divisions(20), USUAL, Claim("plain", 2)),
        ("fraction_upside_down", Divisions(49), USUAL, Claim("plain", 0, 40, 49)),
        ("neighbouring_count", Divisions(3), USUAL, Claim("plain", 13, 6, 18)),
        ("neighbouring_count", Arc(parse_angle("45°")), USUAL, Claim("direct", 0, 3, 24)),
        ("neighbouring_count", Divisions(24), USUAL, Claim("direct", 0, 1, 24)),
        ("minutes_read_as_decimals", Arc(parse_angle("45°")), USUAL, Claim("plain", 5)),
        ("rounded_step_added_up", Divisions(8), TABLE, Claim("dial", 11, reading=parse_angle("1°"))),
        ("second_move_wrong_way", Divisions(28), USUAL, Claim("plain", 1, 9, 21)),
        ("drivers_and_driven_swapped", Divisions(28), USUAL, Claim("plain", 1, 9, 21)),
        # 351 = (40 - 1) x 9: equal gears are the same either way.
        ("drivers_and_driven_swapped", Divisions(351), GEARED,
         Claim("differential", 0, 2, 18, gearing=GearingClaim(24, 24, None, 1))),
        ("idlers_off_by_one", Divisions(28), USUAL, Claim("plain", 1, 9, 21)),
        ("gear_used_twice", Divisions(28), USUAL, Claim("plain", 1, 9, 21)),
        ("gear_used_twice", Divisions(73), Head(change_gears=(28, 48)),
         Claim("differential", 0, 12, 21, gearing=TRAIN)),
        ("gears_left_off", Divisions(28), USUAL, Claim("plain", 1, 9, 21)),
    ],
)  # fmt: skip
def test_a_slip_that_cannot_be_made_is_not(slip: str, work: Divisions | Arc, head: Head, right: Claim) -> None:
    assert {SPOILERS[slip].spoil(Right(work, head, right), Chance(seed)) for seed in SEEDS} == {None}


# The first words of the generator are 0xE220... for 0, above a half of 2 to the 64th, and 0.35 of it for 1234567.
@pytest.mark.parametrize(("seed", "more"), [(0, -1), (1234567, 1)])
def test_one_more_or_one_less_falls_to_a_seed_for_ever(seed: int, more: int) -> None:
    # 40/20 = 2; 40/19 = 2 2/19 and 40/21 = 1 19/21.
    right = Right(Divisions(20), Head(plates=((19, 21),)), Claim("plain", 2))
    spoiled = SPOILERS["neighbouring_count"].spoil(right, Chance(seed))
    assert spoiled == {-1: Claim("plain", 2, 2, 19), 1: Claim("plain", 1, 19, 21)}[more]
    geared = Claim("differential", 0, 12, 21, gearing=TRAIN)
    spoiled = SPOILERS["idlers_off_by_one"].spoil(Right(Divisions(73), GEARED, geared), Chance(seed))
    assert spoiled == replace(geared, gearing=replace(TRAIN, idlers=2 + more))


@pytest.mark.parametrize(
    ("count", "claim", "motion", "idlers"),
    [
        # With four gears one idler turns the plate against the crank, and none turns it with it.
        (73, Claim("differential", 0, 12, 21, gearing=TRAIN), Fraction(-12, 7), 1),
        # 40 - 57 x 13/19 = 1.
        (57, Claim("differential", 0, 13, 19, gearing=GearingClaim(24, 24, None, 1)), Fraction(1), 0),
    ],
)
def test_a_gear_used_twice_is_right_in_figures_and_owned_once_too_few(
    count: int, claim: Claim, motion: Fraction, idlers: int
) -> None:
    right = Right(Divisions(count), GEARED, claim)
    for seed in SEEDS:
        spoiled = SPOILERS["gear_used_twice"].spoil(right, Chance(seed))
        assert spoiled is not None
        gearing = spoiled.gearing
        assert gearing is not None
        assert gearing.stud is not None
        assert spoiled == replace(claim, gearing=gearing)
        assert (gearing.motion(GEARED), gearing.idlers) == (motion, idlers)
        gears = Counter(gearing.gears)
        assert (gears - Counter(TWELVE_GEARS)).total() == 1
        assert set(gears) <= set(TWELVE_GEARS)
        # No gear drives its like, which would do nothing.
        assert gearing.spindle != gearing.stud[1]
        assert gearing.stud[0] != gearing.worm


@pytest.fixture(name="found", scope="module")
def found_by_classes() -> list[Exercise]:
    """Slips to be found by many classes, on a head with which all can be made."""
    return [
        exercise
        for seed in range(80)
        for exercise in sheet(Wanted(seed, 8, GEARED, ("find_the_slip",), level=1 + seed % 3)).exercises
    ]


def test_every_slip_that_the_verifier_knows_is_asked(found: list[Exercise]) -> None:
    asked = Counter(exercise.task.slip for exercise in found)
    assert set(asked) == set(SPOILERS) == set(SLIPS)
    assert min(asked.values()) >= 5, asked


def test_a_slip_belongs_to_its_level(found: list[Exercise]) -> None:
    for exercise in found:
        assert exercise.task.slip in slips_at(exercise.task.level)
    # The gears and the second move come last, degrees and ratios before them.
    assert slips_at(1) == slips_at(2)[:4]
    assert slips_at(2) == slips_at(3)[:9]
    assert slips_at(3) == tuple(SPOILERS)


def test_the_slip_that_was_made_is_named_first_and_without_it_the_setup_is_exact(found: list[Exercise]) -> None:
    for exercise in found:
        task, claim = exercise.task, exercise.task.claim
        assert claim is not None
        verdict = verify(task.work, GEARED, claim)
        assert verdict.verdict in ("off", "cannot_be_set")
        assert verdict.likely_slips[0].slip == task.slip == exercise.key.slip
        assert isinstance(exercise.key.claim, Claim)
        assert verify(task.work, GEARED, exercise.key.claim).verdict == "exact"


@pytest.mark.parametrize(
    "slip", ["other_ratio", "neighbouring_count", "minutes_read_as_decimals", "fraction_upside_down"]
)
def test_the_slip_is_one_that_the_other_tests_make_too(slip: str, found: list[Exercise]) -> None:
    mine = [exercise for exercise in found if exercise.task.slip == slip]
    assert mine
    for exercise in mine:
        right = exercise.key.claim
        assert isinstance(right, Claim)
        assert exercise.task.claim in set(SLIPS[slip](exercise.task.work, GEARED, right)), exercise
