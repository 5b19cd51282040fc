"""Marking: every right answer counts, every slip is named, and what lacks is told."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import Dial, Head
from dividing.indexing.practice import (
    ArmsClaim,
    Exercise,
    Key,
    KindName,
    Mark,
    PlateClaim,
    Response,
    Task,
    Wanted,
    mark,
    mark_all,
    sheet,
)
from dividing.indexing.practice.exercise import AnyClaim
from dividing.indexing.practice.kinds import KINDS
from dividing.indexing.verifying import Claim, GearingClaim, SecondClaim
from dividing.indexing.work import Arc, Divisions
from tests.indexing.practice.by_second import plain_of, turned
from tests.indexing.practice.classes import GEARED, HALF_MINUTES, HEADS, exercises
from tests.indexing.refusals import faults_of
from tests.indexing.verifying.slips_made import SLIPS
from tests.second.holes import direct_settings

USUAL = Head()
TABLE = Head(90, (), direct_circles=(), dial=Dial(Fraction(1, 21600)))
LINES = Head(90, (), direct_circles=(), dial=Dial(divisions=100))


def posed(task: Task, head: Head = USUAL) -> Exercise:
    """An exercise of one's own, its key worked out as for a sheet."""
    key = KINDS[task.kind].key(task, head)
    assert key is not None
    return Exercise(1, task, "?", key)


def marked(task: Task, response: AnyClaim | Response, head: Head = USUAL) -> Mark:
    exercise = posed(task, head)
    found = mark(exercise, response if isinstance(response, Response) else Response(1, claim=response), head)
    assert found.exercise is exercise
    return found


def makes(task: Task, claim: AnyClaim, head: Head) -> Angle | None:
    """What a claim turns the work, the head turned as it says with all the gears that it names; None without a move."""
    if claim == ArmsClaim(0) or isinstance(claim, PlateClaim):
        return None
    if isinstance(claim, ArmsClaim):
        whole = head.ratio * task.work.step // 1
        claim = Claim("plain", int(whole), claim.sector_holes - 1, task.circle)
    if claim.method == "nearest":
        return None
    gears = claim.gearing.gears if claim.gearing else ()
    return Angle(turned(claim, replace(head, change_gears=(*head.change_gears, *gears))).spindle)


def key_as_response(exercise: Exercise) -> Response:
    key = exercise.key
    return Response(exercise.number, key.claim, none=key.claim is None, slip=key.slip)


PLAIN, DIRECT = Task("plain", 1, Divisions(28)), Task("direct", 1, Divisions(8))
ANGULAR = Task("angular", 2, Arc(parse_angle("37°30'")), "37°30'")
PLATE, ARMS = Task("which_plate", 1, Divisions(28)), Task("sector_arms", 2, Divisions(28), circle=21)
COMPOUND = Task("compound", 1, Divisions(51, fixed=True))
DIFFERENTIAL = Task("differential", 2, Divisions(73, fixed=True))
DIAL = Task("dial", 3, Arc(Angle(Fraction(2, 7))), position=(2, 7))
AT_3_OF_8 = Task("dial", 2, Arc(Angle(Fraction(3, 8))), position=(3, 8))
NO_51 = Task("plain", 2, Divisions(51), none=True)
NO_PLATE_51 = Task("which_plate", 2, Divisions(51), none=True)

RIGHT: list[tuple[Task, AnyClaim, Head]] = [
    # 40/28 = 1 3/7: 21 and 49 serve; also without the whole turn taken out.
    (PLAIN, Claim("plain", 1, 21, 49), USUAL),
    (PLAIN, Claim("plain", 1, 9, 21), USUAL),
    (PLAIN, Claim("plain", 0, 30, 21), USUAL),
    # 37.5 degrees are 4 turns of 9 and 1 1/2, a sixth of a turn.
    (ANGULAR, Claim("plain", 4, 3, 18), USUAL),
    (DIRECT, Claim("direct", 0, 3, 24), USUAL),
    (DIRECT, Claim("direct", 0, 5, 40), Head(direct_circles=(24, 40))),
    (PLATE, PlateClaim(2, 21), USUAL),
    (PLATE, PlateClaim(3, 49), USUAL),
    (ARMS, ArmsClaim(10), USUAL),
    # 10/15 + 2/17 = 200/255 = 40/51; so do 12/18 + 2/17 on the same plate.
    (COMPOUND, Claim("compound", 0, 10, 15, SecondClaim(2, 17)), USUAL),
    (COMPOUND, Claim("compound", 0, 12, 18, SecondClaim(2, 17)), USUAL),
    # 40 - 73 x 12/21 = -12/7 = -48/28 = -(72 x 48)/(56 x 36); with four gears one idler turns it against the crank.
    (DIFFERENTIAL, Claim("differential", 0, 12, 21, gearing=GearingClaim(48, 28, None, 2)), GEARED),
    (DIFFERENTIAL, Claim("differential", 0, 12, 21, gearing=GearingClaim(72, 56, (64, 48), 1)), GEARED),
    # 2/7 of a turn are 102 6/7 degrees: 25 turns of 4, and 2 degrees 51' 25.7" more, at 1' the nearest 2 degrees 51'.
    (DIAL, Claim("dial", 25, reading=parse_angle("2°51'")), TABLE),
    # Or the exact reading, or any that is within half a minute.
    (DIAL, Claim("dial", 25, reading=Angle(Fraction(5, 7) / 90)), TABLE),
    (DIAL, Claim("dial", 25, reading=parse_angle("2°51'30\"")), TABLE),
    # 25 5/7 turns: 71.4 lines of 100.
    (DIAL, Claim("dial", 25, divisions=Fraction(71)), LINES),
]


@pytest.mark.parametrize(("task", "claim", "head"), RIGHT)
def test_every_right_answer_counts(task: Task, claim: AnyClaim, head: Head) -> None:
    found = marked(task, claim, head)
    assert (found.verdict, found.explanation, found.slips) == ("right", (), ())
    assert found.makes == makes(task, claim, head)


WRONG: list[tuple[Task, AnyClaim, Head, tuple[str, ...], list[str]]] = [
    (PLAIN, Claim("plain", 0, 21, 49), USUAL,
     ("The part of a turn is right, but you have no whole turn where 1 turn belongs before it. Write the improper "
      "fraction as a mixed number and keep its whole part.",), ["whole_turns_forgotten"]),
    # 40/124 = 10/31; nine spaces would also be right at 36:1, but the likeliest slip is told and no other.
    (Task("plain", 1, Divisions(124)), Claim("plain", 0, 9, 31), USUAL,
     ("You moved 9 spaces where 10 are wanted: the hole that the pin is in was counted as the first. It is not "
      "counted; the arms embrace 11 holes for 10 spaces.",), ["counted_the_pin_hole", "other_ratio"]),
    # 5/16 makes 40 x 16/5 = 128.
    (PLAIN, Claim("plain", 0, 5, 16), USUAL, ("That makes 128 divisions, not 28.",), []),
    (PLAIN, Claim("plain", 0, 6, 17), USUAL, ("That makes 113 1/3 divisions, not 28.",), []),
    (PLAIN, Claim("plain", 40), USUAL, ("That makes 1 division, not 28.",), []),
    (PLAIN, Claim("plain"), USUAL, ("That does not turn the work at all.",), []),
    (PLAIN, Claim("nearest", circle=20), USUAL, ("The nearest holes are not all where the cuts belong.",), []),
    (PLAIN, Claim("nearest", circle=49), USUAL,
     ("That makes the work, but the exercise asks for plain indexing, one move on one circle.",), []),
    # A turn of 9 degrees and 3 more.
    (PLAIN, Claim("dial", 1, reading=parse_angle("3°")), GEARED, ("That makes 30 divisions, not 28.",), []),
    (PLAIN, Claim("plain", 0, 5, 22), USUAL,
     ("That makes 176 divisions, not 28.", "No plate of this head has a circle of 22 holes."), []),
    (PLAIN, Claim("direct", 0, 1, 28), Head(direct_circles=(28,)),
     ("That makes the work, but the exercise asks for plain indexing, one move on one circle.",), []),
    # 12/18 + 2/17 = 40/51, and 51 x 13/17 = 39 leaves 1 = 24/24.
    (COMPOUND, Claim("differential", 0, 13, 17, gearing=GearingClaim(24, 24, None, 1)), GEARED,
     ("That makes the work, but the exercise asks for compound indexing, two moves.",), []),
    (Task("differential", 2, Divisions(51, fixed=True)), Claim("compound", 0, 12, 18, SecondClaim(2, 17)), GEARED,
     ("That makes the work, but the exercise asks for differential indexing, a geared plate.",), []),
    # 5/16 of a turn of 9 degrees.
    (ANGULAR, Claim("plain", 0, 5, 16), USUAL, ("That turns the work through 2°48'45\", not 37°30'.",), []),
    (DIRECT, Claim("plain", 5), USUAL, ("That makes the work, but the exercise asks for direct indexing.",), []),
    (PLATE, PlateClaim(1, 21), USUAL, ("Plate 1 has no circle of 21 holes; it is on plate 2.",), []),
    (PLATE, PlateClaim(2, 28), USUAL, ("Plate 2 has no circle of 28 holes; it is on none of the plates.",),
     ["circle_on_no_plate"]),
    (PLATE, PlateClaim(1, 20), USUAL,
     ("The move is 1 3/7 turns, which on 20 would be 8 4/7 spaces; the circle must be a multiple of 7.",), []),
    (PLATE, PlateClaim(1, 22), USUAL,
     ("Plate 1 has no circle of 22 holes; it is on none of the plates.",
      "The move is 1 3/7 turns, which on 22 would be 9 3/7 spaces; the circle must be a multiple of 7."), []),
    (PLATE, PlateClaim(4, 21), USUAL, ("There are 3 plates, counted from 1.",), []),
    (PLATE, PlateClaim(2, 21), Head(plates=((49,),)), ("There is 1 plate, counted from 1.",), []),
    (PLATE, PlateClaim(3, 21), Head(plates=((21,), (21, 49), (20,))),
     ("Plate 3 has no circle of 21 holes; it is on plate 1 and 2.",), []),
    (ARMS, ArmsClaim(9), USUAL,
     ("Arms over 9 holes mark off 8 spaces.",
      "You moved 8 spaces where 9 are wanted: the hole that the pin is in was counted as the first. It is not counted; "
      "the arms embrace 10 holes for 9 spaces."), ["counted_the_pin_hole"]),
    # 1 7/21 = 4/3 turns: thirty divisions.
    (ARMS, ArmsClaim(8), USUAL, ("Arms over 8 holes mark off 7 spaces.", "That makes 30 divisions, not 28."), []),
    # 40/38 = 1 1/19.
    (Task("sector_arms", 2, Divisions(38), circle=19), ArmsClaim(1), USUAL,
     ("Arms over 1 hole mark off 0 spaces.",
      "You moved no space where 1 is wanted: the hole that the pin is in was counted as the first. It is not counted; "
      "the arms embrace 2 holes for 1 space."), ["counted_the_pin_hole"]),
    (ARMS, ArmsClaim(0), USUAL,
     ("The arms stand over two holes at least: the one that the pin is in and the one that it goes to.",), []),
    # 40/50 on the circle of 20 would be 51 divisions' neighbour; what is asked has no circle.
    (NO_51, Claim("plain", 0, 16, 20), USUAL,
     ("No circle on these plates is a multiple of 51.",
      "This move makes 50 divisions, not 51. 51 divisions have 51 marks and 51 spaces round the work; count the "
      "spaces."), ["neighbouring_count"]),
    (NO_51, Claim("compound", 0, 10, 15, SecondClaim(2, 17)), USUAL,
     ("That makes the work, but not by the method asked for.",), []),
    (NO_PLATE_51, PlateClaim(1, 17), USUAL,
     ("No circle on these plates is a multiple of 51.",
      "The move is 40/51 turns, which on 17 would be 13 1/3 spaces; the circle must be a multiple of 51."), []),
    (COMPOUND, Claim("compound", 0, 10, 15, SecondClaim(-2, 17)), USUAL,
     ("Both moves have the right size, but the second has to go the same way as the first: 2 spaces forward on 17, "
      "with the sign +. Always make it in the same order, after the first.",), ["second_move_wrong_way"]),
    (COMPOUND, Claim("compound", 0, 10, 15, SecondClaim(2, 17)), Head(stop_circles=(18,)),
     ("The figures are right, but it cannot be set so on this head.", "The stop pin does not reach the circle of 17."),
     []),
    # 96/56 = 48/28.
    (DIFFERENTIAL, Claim("differential", 0, 12, 21, gearing=GearingClaim(96, 56, None, 2)), GEARED,
     ("The figures are right, but it cannot be set so on this head.", "You own no change gear of 96 teeth."), []),
    (DIFFERENTIAL, Claim("differential", 0, 12, 21), GEARED,
     ("This crank move needs gears to the plate. With the plate at rest it makes 70 divisions; hang 48 on the "
      "spindle, 28 on the worm side and 2 idlers, so that the plate turns against the crank, and it makes 73 "
      "divisions.",),
     ["gears_left_off"]),
    # One step is 12 turns and 3 degrees 25.7', at 1' 3 degrees 26'; twice that is 25 turns and 2 degrees 52'.
    (DIAL, Claim("dial", 25, reading=parse_angle("2°52'")), TABLE,
     ("You rounded one step and took it 2 times. Work every position from zero and round only what you set: 2/7 of a "
      "turn.",), ["rounded_step_added_up"]),
    (DIAL, Claim("dial", 24, reading=parse_angle("2°51'")), TABLE,
     ("That turns the work through 98°51', not 102°51'25.71\".",), []),
    # 12 6/7 turns are 85.7 lines, 86; twice that 25 turns and 72.
    (DIAL, Claim("dial", 25, divisions=Fraction(72)), LINES,
     ("You rounded one step and took it 2 times. Work every position from zero and round only what you set: 2/7 of a "
      "turn.",), ["rounded_step_added_up"]),
    (AT_3_OF_8, Claim("dial", 33, reading=parse_angle("2°59'")),
     TABLE, ("That turns the work through 134°59', not 135°.",), []),
    # 32 turns of 4 degrees and 7 are 135, as 33 and 3 are; nothing was rounded.
    (AT_3_OF_8, Claim("dial", 32, reading=parse_angle("7°")), TABLE,
     ("The reading holds whole turns of the dial: 7° is 1 turn and 3°. Count them with the turns.",
      "The reading is a whole turn of the dial or more; one turn is 4°."), ["whole_turns_forgotten"]),
    # To half a minute a seventh is 51 degrees 25' 30"; twice that is 11 77/180 turns of 9 degrees, set by a plate.
    (DIAL, Claim("plain", 11, 77, 180), Head(plates=((180,),), dial=HALF_MINUTES),
     ("That turns the work through 102°51', not 102°51'25.71\".",), []),
]  # fmt: skip


@pytest.mark.parametrize(("task", "claim", "head", "explanation", "slips"), WRONG)
def test_a_wrong_answer_is_explained(
    task: Task, claim: AnyClaim, head: Head, explanation: tuple[str, ...], slips: list[str]
) -> None:
    found = marked(task, claim, head)
    assert (found.verdict, found.explanation) == ("wrong", explanation)
    assert [slip.slip for slip in found.slips] == slips
    assert found.makes == makes(task, claim, head)


def test_a_reading_in_radians_makes_no_rational_angle() -> None:
    in_radians = marked(DIAL, Claim("dial", 25, reading=parse_angle("0.05 rad")), TABLE)
    assert in_radians.makes is not None
    assert not in_radians.makes.rational


@pytest.mark.parametrize(
    ("task", "claim", "head", "corrected", "explanation"),
    [
        # 2/7 of 360 degrees are 25 turns of 4 degrees and 2 degrees 51' 25.7".
        (DIAL, Claim("dial", 25, reading=parse_angle("2°52'")), TABLE, Claim("dial", 25, reading=parse_angle("2°51'")),
         "You rounded one step and took it 2 times. Work every position from zero and round only what you set: 2/7 of "
         "a turn."),
        # 40/28 = 1 12/28 = 1 21/49.
        (PLATE, PlateClaim(2, 28), USUAL, Claim("plain", 1, 21, 49),
         "The fraction is right, but no plate has a circle of 28 holes; take the same part of a turn as 21 on 49."),
        (ARMS, ArmsClaim(9), USUAL, Claim("plain", 1, 9, 21),
         "You moved 8 spaces where 9 are wanted: the hole that the pin is in was counted as the first. It is not "
         "counted; the arms embrace 10 holes for 9 spaces."),
    ],
)  # fmt: skip
def test_a_slip_is_corrected_to_a_setup_of_the_kind_that_is_asked_for(
    task: Task, claim: AnyClaim, head: Head, corrected: Claim, explanation: str
) -> None:
    slip = marked(task, claim, head).slips[0]
    assert (slip.corrected, slip.explanation) == (corrected, explanation)


# 40/28 worked as 20 spaces on 49 after one turn: a hole short.
SLIP = Task("find_the_slip", 1, Divisions(28), claim=Claim("plain", 1, 20, 49), slip="counted_the_pin_hole")
PIN_HOLE = (
    "You moved 20 spaces where 21 are wanted: the hole that the pin is in was counted as the first. It is not counted; "
    "the arms embrace 22 holes for 21 spaces."
)


@pytest.mark.parametrize(
    ("response", "verdict", "explanation"),
    [
        (Response(1, slip="counted_the_pin_hole"), "right", (PIN_HOLE,)),
        (Response(1, Claim("plain", 1, 9, 21), slip="counted_the_pin_hole"), "right", (PIN_HOLE,)),
        (
            Response(1, Claim("plain", 1, 5, 16), slip="counted_the_pin_hole"),
            "wrong",
            ("That makes 30 10/21 divisions, not 28.",),
        ),
        (
            Response(1, slip="other_circle"),
            "wrong",
            (
                "Not this: “The spaces belong to another circle”. Undoing it does not give what was wanted.",
                PIN_HOLE,
            ),
        ),
        (
            Response(1, Claim("plain", 1, 9, 21)),
            "wrong",
            ("Name the slip that was made; a setting alone does not say what went wrong.",),
        ),
        (Response(1, none=True), "wrong", ("There is a setting that serves; look at the key.",)),
    ],
)
def test_a_slip_is_found_by_its_name(response: Response, verdict: str, explanation: tuple[str, ...]) -> None:
    found = marked(SLIP, response)
    assert (found.verdict, found.explanation) == (verdict, explanation)


def test_a_slip_that_explains_it_as_well_counts() -> None:
    # 40/124 = 10/31. Nine spaces are one short, and are right on a head of 36:1, since 36/124 = 9/31.
    task = Task("find_the_slip", 1, Divisions(124), claim=Claim("plain", 0, 9, 31), slip="counted_the_pin_hole")
    verdicts = {slip: marked(task, Response(1, slip=slip)).verdict for slip in SLIPS}
    assert {slip for slip, verdict in verdicts.items() if verdict == "right"} == {"counted_the_pin_hole", "other_ratio"}


@pytest.mark.parametrize("task", [PLAIN, PLATE, COMPOUND])
def test_saying_that_nothing_serves_is_wrong_where_something_does(task: Task) -> None:
    found = marked(task, Response(1, none=True))
    assert (found.verdict, found.explanation) == ("wrong", ("There is a setting that serves; look at the key.",))


def test_saying_that_nothing_serves_is_right_where_nothing_does() -> None:
    found = marked(NO_51, Response(1, none=True))
    assert (found.verdict, found.explanation) == ("right", ("No circle on these plates is a multiple of 51.",))


def test_what_lacks_is_wrong_and_told() -> None:
    found = marked(PLAIN, Response(1, lacking=("Give the circle.",)))
    assert (found.verdict, found.explanation) == ("wrong", ("Give the circle.",))


def test_an_exercise_without_a_response_is_not_answered() -> None:
    drawn = sheet(Wanted(3, 4)).exercises
    marks = mark_all(drawn, {2: key_as_response(drawn[1])}, USUAL)
    assert [one.verdict for one in marks] == ["not_answered", "right", "not_answered", "not_answered"]
    assert [one.exercise for one in marks] == list(drawn)
    assert marked(PLAIN, Response(1)).verdict == "not_answered"


@pytest.mark.parametrize("eighth", range(len(HEADS)))
def test_the_key_is_always_right(eighth: int) -> None:
    for head, exercise in exercises(range(eighth, 120, len(HEADS)), 9):
        found = mark(exercise, key_as_response(exercise), head)
        assert found.verdict == "right", (exercise, found)


SPOILED: dict[KindName, tuple[str, ...]] = {
    "plain": ("counted_the_pin_hole", "whole_turns_forgotten", "fraction_upside_down", "other_ratio", "other_circle",
              "circle_on_no_plate", "neighbouring_count"),
    "angular": ("counted_the_pin_hole", "whole_turns_forgotten", "minutes_read_as_decimals"),
    "direct": ("counted_the_pin_hole", "circle_on_no_plate"),
    "compound": ("counted_the_pin_hole", "second_move_wrong_way"),
    "differential": ("counted_the_pin_hole", "drivers_and_driven_swapped", "idlers_off_by_one", "gear_used_twice"),
}  # fmt: skip


@pytest.mark.parametrize(("kind", "slip"), [(kind, slip) for kind, slips in SPOILED.items() for slip in slips])
def test_a_pupil_who_makes_one_slip_is_told_it(kind: KindName, slip: str) -> None:
    told = 0
    for seed in range(21):
        for exercise in sheet(Wanted(seed, 3, GEARED, (kind,), level=1 + seed % 3)).exercises:
            key, work = exercise.key.claim, exercise.task.work
            for claim in [] if key is None else list(SLIPS[slip](work, GEARED, key))[:3]:  # type: ignore[arg-type]
                found = mark(exercise, Response(exercise.number, claim), GEARED)
                # Now and then a spoiled setup happens to be another right one.
                if found.verdict == "wrong" or found.slips:
                    assert slip in [one.slip for one in found.slips], (exercise, claim)
                    told += 1
    assert told >= 5


def test_no_plain_setting_of_any_circle_is_right_where_none_is_meant() -> None:
    drawn = [one for seed in range(30) for one in sheet(Wanted(seed, 9, GEARED, level=3)).exercises if one.task.none]
    assert len(drawn) > 15
    for exercise in drawn:
        circles = GEARED.direct_circles if exercise.task.kind == "direct" else tuple(GEARED.plate_of)
        found = direct_settings(exercise.task.work.step, circles) if exercise.task.kind == "direct" else None
        assert not (found if exercise.task.kind == "direct" else plain_of(exercise.task, GEARED))
        for circle in circles:
            response = Response(exercise.number, _nearest(exercise, circle))
            assert mark(exercise, response, GEARED).verdict == "wrong"


def _nearest(exercise: Exercise, circle: int) -> AnyClaim:
    """What a pupil would give on this circle."""
    if exercise.task.kind == "which_plate":
        return PlateClaim(GEARED.plate_of[circle], circle)
    if exercise.task.kind == "direct":
        return Claim("direct", 0, max(round(exercise.task.work.step * circle), 1), circle)
    turns, part = divmod(40 * exercise.task.work.step, 1)
    return Claim("plain", int(turns), max(round(part * circle), 1), circle)


@pytest.mark.parametrize(
    ("make", "faults"),
    [
        (lambda: PlateClaim(0, 21), [(("plate",), "Plates are counted from 1, as on the sheet.")]),
        (lambda: PlateClaim(101, 21), [(("plate",), "Plates are counted from 1, as on the sheet.")]),
        (lambda: PlateClaim(1, 0), [(("circle",), "The holes of a circle lie between 1 and 10,000.")]),
        (lambda: PlateClaim(1, 10_001), [(("circle",), "The holes of a circle lie between 1 and 10,000.")]),
        (lambda: ArmsClaim(-1), [(("sector_holes",), "Holes between the arms lie between 0 and 10,000.")]),
        (lambda: ArmsClaim(10_001), [(("sector_holes",), "Holes between the arms lie between 0 and 10,000.")]),
    ],
)
def test_absurd_figures_are_refused(make: object, faults: list[object]) -> None:
    assert faults_of(make) == faults  # type: ignore[arg-type]


def test_figures_on_their_bounds_can_be_marked() -> None:
    assert (PlateClaim(1, 1).circle, PlateClaim(100, 10_000).circle) == (1, 10_000)
    assert (ArmsClaim(0).sector_holes, ArmsClaim(10_000).sector_holes) == (0, 10_000)


def test_arms_need_a_circle() -> None:
    exercise = Exercise(1, ARMS._replace(circle=None), "?", Key(ArmsClaim(10), "", ()))
    assert mark(exercise, Response(1, ArmsClaim(10)), USUAL).verdict == "wrong"
