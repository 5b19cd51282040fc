"""What a marked sheet says of a pupil."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.head import Head
from dividing.indexing.practice import Exercise, Key, KindName, Mark, Sheet, Summary, Task, Wanted, summary
from dividing.indexing.practice.marking import MarkName
from dividing.indexing.verifying import Claim, Slip
from dividing.indexing.work import Divisions

RIGHT = Claim("plain", 1, 9, 21)
KINDS: tuple[KindName, ...] = ("plain", "direct", "compound", "dial")


def slip(name: str) -> Slip:
    return Slip(name, "…", RIGHT)


def marks(*told: tuple[KindName, MarkName, list[str]]) -> list[Mark]:
    """Marks of a sheet: (kind, verdict, slips), numbered from 1."""
    return [
        Mark(
            Exercise(number, Task(kind, 1, Divisions(28)), "?", Key(RIGHT, "", ())),
            verdict,
            slips=tuple(map(slip, slips)),
        )
        for number, (kind, verdict, slips) in enumerate(told, 1)
    ]


def summed(given: list[Mark], level: int = 1, seed: int = 7, kinds: tuple[KindName, ...] = KINDS) -> Summary:
    wanted = Wanted(seed, max(len(given), 1), Head(), level=level)
    return summary(Sheet(wanted, kinds, (), tuple(one.exercise for one in given)), given)


MIXED = marks(
    ("plain", "right", []),
    ("direct", "wrong", ["other_circle", "other_ratio"]),
    ("plain", "wrong", ["counted_the_pin_hole"]),
    ("dial", "not_answered", []),
    ("plain", "wrong", ["counted_the_pin_hole", "other_ratio"]),
    ("compound", "wrong", []),
)


def test_marks_are_counted() -> None:
    found = summed(MIXED)
    assert (found.of, found.right, found.wrong, found.not_answered) == (6, 1, 4, 1)


def test_slips_stand_by_how_often_they_were_made_and_only_the_likeliest_of_each_answer() -> None:
    assert [(one.slip, one.numbers) for one in summed(MIXED).slips] == [
        ("counted_the_pin_hole", (3, 5)),
        ("other_circle", (2,)),
    ]


def test_slips_made_as_often_stand_as_they_came() -> None:
    given = marks(("plain", "wrong", ["other_ratio"]), ("plain", "wrong", ["counted_the_pin_hole"]))
    assert [one.slip for one in summed(given).slips] == ["other_ratio", "counted_the_pin_hole"]


@pytest.mark.parametrize(
    ("given", "sentence"),
    [
        (
            MIXED,
            "1 of 6 is right. 1 is not answered. The commonest slip, 2 times: the hole that the pin is in was counted.",
        ),
        (marks(("plain", "right", []), ("dial", "right", [])), "2 of 2 are right."),
        (
            marks(("plain", "wrong", ["gears_left_off"])),
            "0 of 1 are right. The commonest slip, 1 time: the gears were left off.",
        ),
        (marks(("plain", "not_answered", []), ("dial", "not_answered", [])), "0 of 2 are right. 2 are not answered."),
    ],
)
def test_the_summary_is_said_in_words(given: list[Mark], sentence: str) -> None:
    assert summed(given).sentence == sentence


def test_what_was_wrong_most_is_practised_next() -> None:
    after = summed(MIXED).next
    assert (after.seed, after.kinds, after.level) == (8, ("plain", "direct", "compound"), 1)
    assert after.reason == "Practise plain indexing, direct indexing, compound indexing."


@pytest.mark.parametrize(
    ("kind", "title"),
    [
        ("plain", "plain indexing"),
        ("angular", "angular indexing"),
        ("direct", "direct indexing"),
        ("which_plate", "choosing plate and circle"),
        ("sector_arms", "setting the sector arms"),
        ("compound", "compound indexing"),
        ("differential", "differential indexing"),
        ("dial", "setting by the dial"),
        ("find_the_slip", "finding the slip"),
    ],
)
def test_each_kind_is_named_as_what_is_practised(kind: KindName, title: str) -> None:
    assert summed(marks((kind, "wrong", [])), kinds=(kind,)).next.reason == f"Practise {title}."


def test_kinds_that_were_wrong_as_often_are_practised_in_the_order_of_teaching() -> None:
    given = marks(("dial", "wrong", []), ("compound", "wrong", []), ("plain", "wrong", []), ("direct", "wrong", []))
    assert summed(given).next.kinds == ("plain", "direct", "compound")


def test_what_was_not_answered_is_finished_first_where_nothing_is_wrong() -> None:
    after = summed(marks(("plain", "right", []), ("dial", "not_answered", []))).next
    assert (after.kinds, after.reason) == (("dial",), "Finish, or begin anew with, setting by the dial.")


@pytest.mark.parametrize(
    ("level", "then", "reason"),
    [
        (1, 2, "All is right: go on to level 2."),
        (2, 3, "All is right: go on to level 3."),
        (3, 3, "All is right at the highest level: keep in practice with another sheet."),
    ],
)
def test_who_has_all_right_goes_on(level: int, then: int, reason: str) -> None:
    after = summed(marks(("plain", "right", [])), level=level).next
    assert (after.seed, after.kinds, after.level, after.reason) == (8, KINDS, then, reason)


def test_after_the_last_seed_comes_the_first() -> None:
    assert summed(MIXED, seed=999_999_999).next.seed == 0


def test_each_sheet_that_follows_can_be_asked_for() -> None:
    after = summed(MIXED, seed=999_999_999).next
    assert Wanted(after.seed, 3, Head(), after.kinds, after.level).seed == 0
    assert Fraction(after.level).denominator == 1
