"""What to watch with each setup."""

from __future__ import annotations

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import Head
from dividing.indexing.setup import Gearing
from dividing.indexing.wording import GENERAL, cautions, same_place
from dividing.indexing.work import Angles, Arc, Divisions, Work
from tests.indexing.wording.asked import ARC, FIXTURE, GEARED, IN_MESH, TABLE, Asked, asked

WORM_OUT = "With the worm out of mesh nothing holds the spindle but the direct pin and the clamp."
BOTH_MOVES = "Two moves for every cut: leave one out, or swap them, and the work is spoiled."
DIFFERENTIAL_MEANS = (
    "Differential here means that the plate is geared to the spindle; without the gears the same crank move divides "
    "wrongly."
)
GUARD = "Guard the gear train: it turns with the crank."
FIT = "These gears may not clear each other's shafts on every bracket: try the fit before you set up the work."
SPOILED = "The same hole count without the schedule drifts: follow the schedule row by row."
TOO_COARSE = (
    "This head is too coarse for the work: some positions fall nearer to their neighbour's place than to their own."
)

NOT_EXACT = "Not exact: a position is up to {} off, and {}"
CASES: list[tuple[Asked, list[str]]] = [
    (asked(28), []),
    (asked(8), [WORM_OUT]),
    (asked(8, IN_MESH), []),
    (asked(51), [BOTH_MOVES]),
    (asked(73, GEARED), [DIFFERENTIAL_MEANS, GUARD]),
    (asked(9, TABLE), []),
    (asked(7, TABLE), ["Not exact: a position is up to 4.29\" off; the errors do not add up."]),
    (
        asked(7, FIXTURE),
        [SPOILED, "Not exact: a position is up to 4°17'08.57\" off; the errors do not add up."],
    ),
    (
        asked(1_000_000, Head(direct_circles=()), "nearest", 1),
        # Half a space of 49 at 40:1: 1296000/(2 x 1960).
        [SPOILED, "Not exact: a position is up to 330.61\" off; the errors do not add up.", TOO_COARSE],
    ),
    # 37 1/2° and twice it are 3 3/4 and 7 1/2 of the 36 spaces: 2 1/2° and 5° off.
    (asked(ARC, FIXTURE), [SPOILED, "Not exact: a position is up to 5°00'00.00\" off; the errors do not add up."]),
    # 9 x 40/106 = 3.396226415 and 2 + 38/41 + 23/49 = 3.396217023: 9.392e-6 turns short a move, 106 times over 40.
    (
        asked(106, method="compound"),
        [BOTH_MOVES, NOT_EXACT.format('31.95"', 'the last space closes 32.25" short of full circle.')],
    ),
    # 6 x 40/61 = 3 57/61, and 42/47 + 2/49 is 1/(61 x 2303) more: 61 times over 40 is 1/92120 of a turn.
    (
        asked(61, method="compound"),
        [BOTH_MOVES, NOT_EXACT.format('13.84"', 'the last space closes 14.07" past full circle.')],
    ),
    # 2/39 of a turn against 108/301 with 40: 301/236886 of a turn, 787 times 1/236886 too far.
    (
        asked(787, GEARED, "differential"),
        [DIFFERENTIAL_MEANS, GUARD, NOT_EXACT.format('5.46"', 'the last space closes 5.47" past full circle.')],
    ),
    # 0.35/(2 pi) = 0.0557042301; (2 + 5/37 + 4/43)/40 = 0.0557039598 of a turn, 2.703e-7 short at each of two steps.
    (
        asked(Arc(parse_angle("0.35 rad"), 3), method="compound"),
        [BOTH_MOVES, 'Not exact: a position is up to 0.70" off, since the error of one move adds up from cut to cut.'],
    ),
]


@pytest.mark.parametrize(("told", "watched"), CASES)
def test_each_setup_brings_its_own_cautions(told: Asked, watched: list[str]) -> None:
    assert cautions(*told) == watched


@pytest.mark.parametrize(
    ("gearing", "clear"),
    [
        # 72 + 24 > 64 + 15 and 64 + 48 > 24 + 15, but 24 + 24 is not above 100 + 15.
        (Gearing(72, 48, (64, 24), 1, "against"), True),
        (Gearing(24, 28, (100, 24), 0, "with"), False),
    ],
)
def test_a_train_that_may_not_clear_is_to_be_tried_first(gearing: Gearing, *, clear: bool) -> None:
    work, head, setup = asked(73, GEARED)
    assert (FIT in cautions(work, head, setup._replace(gearing=gearing))) == (not clear)


@pytest.mark.parametrize(
    ("work", "cut", "first"),
    [
        (Arc(parse_angle("90"), 4), None, None),
        (Arc(parse_angle("90"), 5), 5, 1),
        # Five steps of 72° are a turn, and so are five of 144°, which is twice round.
        (Arc(parse_angle("144"), 5), None, None),
        (Arc(parse_angle("144"), 9), 6, 1),
        (Arc(parse_angle("360")), 2, 1),
        (Arc(parse_angle("1 rad"), 9), None, None),
        (Angles(tuple(map(parse_angle, ("0", "90", "10", "45")))), None, None),
        # 370° is 10°, and -90° is 270°.
        (Angles(tuple(map(parse_angle, ("0", "10", "90", "370")))), 4, 2),
        (Angles(tuple(map(parse_angle, ("270", "-90", "270")))), 2, 1),
        (Divisions(7, every=3), None, None),
    ],
)
def test_a_cut_on_the_place_of_another_is_told(work: Work, cut: int | None, first: int | None) -> None:
    told = f"Cut {cut} falls on the place of cut {first}: leave it out unless that is meant."
    assert same_place(work) == ([told] if cut else [])


def test_the_general_cautions_defer_to_the_maker_and_the_shop() -> None:
    assert GENERAL == (
        "The machine maker's and the shop's rules, local codes and qualified supervision come first.",
        "Stop the cutter before you index, measure, clear chips or change gears.",
        "Turn the crank one way only; if you pass the hole or the reading, go well back and come up to it again. "
        "A pin must seat fully.",
        "Unclamp the spindle to index and clamp it to cut.",
        "Go round once with a light trial pass or scribed marks, and count, before you cut to depth.",
    )
