"""What a pupil filled in is read as the exercise means it; what lacks is kept to be told when it is marked."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from dividing.indexing.angles import Angle
from dividing.indexing.head import Dial, Head
from dividing.indexing.practice import ArmsClaim, Exercise, Key, KindName, PlateClaim, Response, Sheet, Task, Wanted
from dividing.indexing.verifying import Claim, GearingClaim, SecondClaim
from dividing.indexing.work import Divisions
from dividing.web.responses import responses_to
from dividing.web.schemas.practice import ResponseIn

IN_DIVISIONS = Head(ratio=90, plates=(), direct_circles=(), dial=Dial(divisions=100))


def read(kind: KindName, filled: dict[str, Any], head: Head | None = None) -> Response:
    """The response to exercise 5, which is of this kind."""
    exercise = Exercise(5, Task(kind, 1, Divisions(28)), "", Key(None, "", ()))
    sheet = Sheet(Wanted(seed=1, head=head or Head()), (kind,), (), (exercise,))
    answered = ResponseIn().load({"number": 5, **filled})
    (found,) = responses_to(sheet, {5: answered}).values()
    return found


@pytest.mark.parametrize(
    ("kind", "claim", "meant"),
    [
        ("plain", {"turns": 1, "holes": 21, "circle": 49}, Claim("plain", 1, 21, 49)),
        ("angular", {"turns": 4, "holes": 3, "circle": 18}, Claim("plain", 4, 3, 18)),
        ("direct", {"holes": 3, "circle": 24}, Claim("direct", 0, 3, 24)),
        # The method that is named counts, also where another was asked for: that is for marking to judge.
        ("plain", {"method": "direct", "holes": 3, "circle": 24}, Claim("direct", 0, 3, 24)),
        ("which_plate", {"plate": 3, "circle": 49, "holes": 21}, PlateClaim(3, 49)),
        ("sector_arms", {"sector_holes": 22}, ArmsClaim(22)),
        (
            "compound",
            {"holes": 21, "circle": 23, "second": {"turns": 0, "holes": -11, "circle": 33}},
            Claim("compound", 0, 21, 23, SecondClaim(-11, 33)),
        ),
        (
            "differential",
            {"holes": 12, "circle": 21, "gearing": {"spindle": 48, "worm": 28, "stud": [], "idlers": 2}},
            Claim("differential", 0, 12, 21, gearing=GearingClaim(48, 28, None, 2)),
        ),
        (
            "differential",
            {"holes": 4, "circle": 18, "gearing": {"spindle": 28, "worm": 24, "stud": [32, 24]}},
            Claim("differential", 0, 4, 18, gearing=GearingClaim(28, 24, (32, 24), 0)),
        ),
        # A form of which nothing is filled in is no train.
        (
            "differential",
            {"holes": 4, "circle": 18, "gearing": {"spindle": None, "stud": None}},
            Claim("differential", 0, 4, 18),
        ),
        ("dial", {"turns": 3, "reading": 3}, Claim("dial", 3, reading=Angle(Fraction(3, 360)))),
    ],
)
def test_a_claim_is_of_what_the_exercise_asks(kind: KindName, claim: dict[str, Any], meant: object) -> None:
    assert read(kind, {"claim": claim}) == Response(5, claim=meant)


def test_a_reading_counts_what_the_dial_of_the_sheet_counts() -> None:
    found = read("dial", {"claim": {"turns": 12, "reading": "85 5/7"}}, IN_DIVISIONS)
    assert found == Response(5, claim=Claim("dial", 12, divisions=Fraction(600, 7)))


@pytest.mark.parametrize("claim", [None, {}, {"method": "plain"}, {"turns": None, "holes": None, "second": None}])
def test_where_no_figure_is_filled_in_nothing_is_answered(claim: dict[str, Any] | None) -> None:
    assert read("plain", {"claim": claim}) == Response(5)


def test_nothing_serves_and_slips_are_answers_without_a_claim() -> None:
    assert read("plain", {"none": True}) == Response(5, none=True)
    assert read("find_the_slip", {"slip": "other_ratio"}) == Response(5, slip="other_ratio")


@pytest.mark.parametrize(
    ("kind", "claim", "lacking"),
    [
        ("compound", {"holes": 21, "circle": 23}, "Compound indexing has a second move; give its holes and circle."),
        ("compound", {"holes": 21, "circle": 23, "second": {}}, "Give the spaces of the second move."),
        ("compound", {"holes": 21, "circle": 23, "second": {"circle": 33}}, "Give the spaces of the second move."),
        ("compound", {"holes": 21, "circle": 23, "second": {"holes": -11}}, "Give the circle of the second move."),
        ("differential", {"holes": 1, "circle": 20, "gearing": {"worm": 24}}, "Give the gear on the spindle."),
        ("differential", {"holes": 1, "circle": 20, "gearing": {"spindle": 24}}, "Give the gear on the worm side."),
        (
            "differential",
            {"holes": 1, "circle": 20, "gearing": {"spindle": 24, "worm": 48, "stud": [32]}},
            "The stud carries two gears, first and second; give both or none.",
        ),
        ("which_plate", {"plate": 0, "circle": 49}, "Plates are counted from 1, as on the sheet."),
        ("sector_arms", {"sector_holes": -1}, "Holes between the arms lie between 0 and 10,000."),
        (
            "dial",
            {"turns": 3, "reading": "3°61'"},
            'Stopped at character 3 of "3°61\'": expected minutes below 60.',
        ),
    ],
)
def test_what_lacks_is_kept_to_be_told(kind: KindName, claim: dict[str, Any], lacking: str) -> None:
    assert read(kind, {"claim": claim}) == Response(5, lacking=(lacking,))


def test_a_slip_stays_beside_a_claim_that_lacks_something() -> None:
    found = read("find_the_slip", {"slip": "other_ratio", "claim": {"method": "plain", "holes": 4}})
    assert found == Response(5, slip="other_ratio", lacking=("Say on which circle the spaces are counted.",))
