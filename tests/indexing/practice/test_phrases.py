"""What exercises say: whole sentences, as an instructor would put them."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import TWELVE_GEARS, Dial, Head, Idlers
from dividing.indexing.practice import ArmsClaim, Exercise, Key, PlateClaim, Task
from dividing.indexing.practice.blanks import BLANKS, SLIP_LABELS
from dividing.indexing.practice.equipment import equipment
from dividing.indexing.practice.exercise import KIND_NAMES, METHOD_OF, AnyClaim
from dividing.indexing.practice.phrases import claim_text, exact_angle, question
from dividing.indexing.practice.spoiling import SPOILERS
from dividing.indexing.practice.told import KIND_TITLES
from dividing.indexing.practice.written import DEGREES, HUNDREDTHS, MINUTES, arc, written
from dividing.indexing.verifying import Claim, GearingClaim, SecondClaim
from dividing.indexing.verifying.slips import LIKELIEST_FIRST
from dividing.indexing.work import Arc, Divisions

N = Divisions(28)
HALF = Arc(parse_angle("37°30'"))
MOVE = Claim("plain", 1, 9, 21)

QUESTIONS = [
    (Task("plain", 1, N), "", "Divide the work into 28 equal parts by plain indexing. How many whole turns and spaces, "
     "and on which circle?"),
    (Task("plain", 2, N), "", "Divide the work into 28 equal parts by plain indexing. How many whole turns and spaces, "
     "and on which circle? If nothing serves, say so."),
    (Task("angular", 2, HALF, "37°30'"), "", "Turn the work through 37°30' by angular indexing. How many whole turns "
     "and spaces, and on which circle?"),
    (Task("direct", 1, N), "", "Divide the work into 28 equal parts with the direct plate. How many spaces, and on "
     "which circle?"),
    (Task("direct", 3, HALF, "37°30'"), "", "Turn the work through 37°30' with the direct plate. How many spaces, and "
     "on which circle? If nothing serves, say so."),
    (Task("which_plate", 1, N), "", "Divide the work into 28 equal parts by plain indexing. Which plate do you mount, "
     "and which of its circles do you use?"),
    (Task("which_plate", 2, N), "", "Divide the work into 28 equal parts by plain indexing. Which plate do you mount, "
     "and which of its circles do you use? If nothing serves, say so."),
    (Task("sector_arms", 1, N, circle=21, claim=MOVE), "", "Divide the work into 28 equal parts by plain indexing. The "
     "move is 1 turn and 9 spaces on the circle of 21. Over how many holes do the sector arms stand?"),
    (Task("sector_arms", 2, N, circle=21), "", "Divide the work into 28 equal parts by plain indexing. The pin is in "
     "the circle of 21. Over how many holes do the sector arms stand?"),
    (Task("compound", 1, N), "Plate 1, circles 18 and 17 serve.", "Divide the work into 28 equal parts by compound "
     "indexing. Plate 1, circles 18 and 17 serve. Which two moves?"),
    (Task("compound", 3, N), "", "Divide the work into 28 equal parts by compound indexing. Which two moves, on which "
     "two circles of one plate?"),
    (Task("differential", 1, N), "Take a crank move of 12 spaces on the circle of 21.", "Divide the work into 28 equal "
     "parts by differential indexing. Take a crank move of 12 spaces on the circle of 21. Which gears and how many "
     "idlers go with it?"),
    (Task("differential", 2, N), "", "Divide the work into 28 equal parts by differential indexing. Which crank move, "
     "which gears and how many idlers?"),
    (Task("dial", 1, N, position=(1, 28)), "", "Divide the work into 28 equal parts by the dial. How many whole turns "
     "and which reading of the dial bring the work 1 step on from zero?"),
    (Task("dial", 3, HALF, position=(5, 48)), "", "The work is divided into 48 equal parts by the dial. How many whole "
     "turns and which reading of the dial bring the work 5 steps on from zero? Set the nearest reading."),
    (Task("find_the_slip", 1, N, claim=MOVE), "", "28 equal parts were wanted. Somebody set 1 turn and 9 spaces on the "
     "circle of 21. Which slip was made?"),
    (Task("find_the_slip", 2, HALF, "37.5°", claim=MOVE), "", "The work was to be turned through 37.5°. Somebody set "
     "1 turn and 9 spaces on the circle of 21. Which slip was made?"),
    (Task("find_the_slip", 2, HALF, claim=MOVE), "", "The work was to be turned through 37°30'. Somebody set 1 turn "
     "and 9 spaces on the circle of 21. Which slip was made?"),
]  # fmt: skip


@pytest.mark.parametrize(("task", "hint", "sentence"), QUESTIONS)
def test_an_exercise_asks_in_plain_words(task: Task, hint: str, sentence: str) -> None:
    assert question(task, Key(MOVE, "", (), hint=hint)) == sentence


@pytest.mark.parametrize(
    ("claim", "text"),
    [
        (MOVE, "1 turn and 9 spaces on the circle of 21"),
        (Claim("plain", 2), "2 turns"),
        (Claim("plain", 2, 0, 20), "2 turns"),
        (Claim("direct", 0, 1, 24), "1 space on the direct circle of 24"),
        (Claim("compound", 0, 12, 18, SecondClaim(2, 17)), "12 spaces on the circle of 18, then plate and crank "
         "together 2 spaces the same way on the circle of 17"),
        (Claim("compound", 0, 7, 19, SecondClaim(1, 17)), "7 spaces on the circle of 19, then plate and crank together "
         "1 space the same way on the circle of 17"),
        (Claim("compound", 1, 7, 20, SecondClaim(-1, 15)), "1 turn and 7 spaces on the circle of 20, then plate and "
         "crank together 1 space the opposite way on the circle of 15"),
        (Claim("differential", 0, 12, 21, gearing=GearingClaim(48, 28, None, 2)), "12 spaces on the circle of 21, with "
         "48 on the spindle, 28 on the worm side and 2 idlers"),
        (Claim("differential", 0, 2, 18, gearing=GearingClaim(24, 72, (32, 48), 0)), "2 spaces on the circle of 18, "
         "with 24 on the spindle, 32 first and 48 second on the stud, 72 on the worm side and no idler"),
        (Claim("dial", 1, reading=parse_angle("3°25'40\"")), "1 turn and 3°25'40\" by the dial"),
        (Claim("dial", 12), "12 turns and 0° by the dial"),
        (Claim("dial", 3, divisions=Fraction(1)), "3 turns and 1 line by the dial"),
        (Claim("dial", 0, divisions=Fraction(85)), "0 turns and 85 lines by the dial"),
        (Claim("dial", 12, divisions=Fraction(600, 7)), "12 turns and 85 5/7 lines by the dial"),
    ],
)  # fmt: skip
def test_a_setup_reads_as_it_is_told(claim: Claim, text: str) -> None:
    assert claim_text(claim) == text


@pytest.mark.parametrize(
    ("angle", "parts", "text"),
    [
        (45, DEGREES, "45°"),
        (2250, MINUTES, "37°30'"),
        (65, MINUTES, "1°05'"),
        (1395, HUNDREDTHS, "13.95°"),
        (810, HUNDREDTHS, "8.1°"),
        (5, HUNDREDTHS, "0.05°"),
        (1300, HUNDREDTHS, "13°"),
    ],
)
def test_an_angle_is_written_so_that_it_reads_back(angle: int, parts: int, text: str) -> None:
    assert written(angle, parts) == text
    assert parse_angle(text) == arc(angle, parts).angle == Angle(Fraction(angle, parts))


@pytest.mark.parametrize(
    ("turns", "text"),
    [
        (Fraction(1, 4), "90°"),
        (Fraction(1, 43200), "0°00'30\""),
        (Fraction(1, 7), "51°25'42.86\""),
        (Fraction(1, 16), "22°30'"),
    ],
)
def test_an_angle_has_no_figures_that_say_nothing(turns: Fraction, text: str) -> None:
    assert exact_angle(turns) == text


EQUIPMENT = [
    (Head(), [
        "40 turns of the crank make one turn of the spindle.",
        "Plate 1, mounted: 15 16 17 18 19 20",
        "Plate 2: 21 23 27 29 31 33",
        "Plate 3: 37 39 41 43 47 49",
        "Direct plate: 24",
    ]),
    (Head(1, (), direct_circles=(36,)), ["1 turn of the crank makes one turn of the spindle.", "Direct plate: 36"]),
    (Head(60, ((15, 16), (21,)), 2, (), change_gears=(48, 24, 28), stop_circles=(16,), idlers=Idlers(0, 1, 1, 0)), [
        "60 turns of the crank make one turn of the spindle.",
        "Plate 1: 15 16",
        "Plate 2, mounted: 21",
        "The stop pin reaches: 16",
        "Change gears: 24 28 48",
        "Idlers for the plate to turn with the crank: 0 with two gears, 1 with four; against it: 1 and 0.",
    ]),
    (Head(90, (), direct_circles=(), dial=Dial(Fraction(1, 21600), Fraction(1, 129600))), [
        "90 turns of the crank make one turn of the spindle.",
        "Dial: one line is 0°01' of the table, vernier to 0°00'10\".",
    ]),
    (Head(90, (), direct_circles=(), dial=Dial(Fraction(1, 720))), [
        "90 turns of the crank make one turn of the spindle.",
        "Dial: one line is 0°30' of the table.",
    ]),
    (Head(90, (), direct_circles=(), dial=Dial(divisions=100)), [
        "90 turns of the crank make one turn of the spindle.",
        "Dial: 100 lines a turn.",
    ]),
    (Head(90, (), direct_circles=(), dial=Dial(divisions=1)), [
        "90 turns of the crank make one turn of the spindle.",
        "Dial: 1 line a turn.",
    ]),
]  # fmt: skip


@pytest.mark.parametrize(("head", "lines"), EQUIPMENT)
def test_the_head_stands_at_the_top_of_the_sheet(head: Head, lines: list[str]) -> None:
    assert equipment(head) == lines


def test_gears_of_the_class_are_told_each_once_and_in_order() -> None:
    told = equipment(Head(change_gears=tuple(reversed(TWELVE_GEARS))))
    assert "Change gears: 24 24 28 32 40 44 48 56 64 72 86 100" in told


@pytest.mark.parametrize(
    ("task", "claim", "method"),
    [
        (Task("plain", 1, N), MOVE, "plain"),
        (Task("angular", 2, HALF, "37°30'"), Claim("plain", 4, 3, 18), "plain"),
        (Task("direct", 2, N, none=True), None, "direct"),
        (Task("which_plate", 1, N), PlateClaim(2, 21), None),
        (Task("sector_arms", 1, N), ArmsClaim(10), None),
        (Task("find_the_slip", 1, N, claim=MOVE), Claim("differential", 0, 12, 21), "differential"),
    ],
)
def test_the_method_is_that_of_the_setup_that_is_wanted(task: Task, claim: AnyClaim | None, method: str | None) -> None:
    assert Exercise(1, task, "?", Key(claim, "", ())).method == method


def test_every_kind_has_its_words() -> None:
    assert set(BLANKS) == set(KIND_TITLES) == set(KIND_NAMES)
    assert set(METHOD_OF) == set(KIND_NAMES) - {"which_plate", "sector_arms", "find_the_slip"}


def test_every_slip_has_its_name_and_its_way_of_being_made() -> None:
    assert set(SLIP_LABELS) == set(SPOILERS) == set(LIKELIEST_FIRST)
    assert len(set(SLIP_LABELS.values())) == len(SLIP_LABELS)
