"""A head as it goes out, every key told, its lines in angles that read back exactly."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.head import Dial, Head, Screw
from dividing.indexing.heads import READY_MADE
from dividing.web.answers.heads import exact_text, head_out, ready_heads


def test_the_usual_head_is_told_in_full() -> None:
    assert head_out(Head()) == {
        "ratio": 40,
        "plates": [[15, 16, 17, 18, 19, 20], [21, 23, 27, 29, 31, 33], [37, 39, 41, 43, 47, 49]],
        "mounted_plate": 1,
        "direct_circles": [24],
        "worm_disengages": True,
        "change_gears": [],
        "idlers": {"simple": {"with": 1, "against": 2}, "compound": {"with": 0, "against": 1}},
        "stop_circles": None,
        "screw": None,
        "dial": None,
    }


@pytest.mark.parametrize(
    ("head", "key", "told"),
    [
        (Head(stop_circles=(20, 49)), "stop_circles", [20, 49]),
        (Head(stop_circles=()), "stop_circles", []),
        (Head(screw=Screw(Fraction(5), "mm")), "screw", {"lead": 5, "unit": "mm"}),
        (Head(screw=Screw(Fraction(1, 4), "in")), "screw", {"lead": 0.25, "unit": "in"}),
        (Head(dial=Dial(divisions=100)), "dial", {"divisions": 100}),
        (Head(ratio=90, dial=Dial(Fraction(1, 21600))), "dial", {"graduation": "0°01'"}),
        (
            Head(ratio=90, dial=Dial(Fraction(1, 21600), Fraction(1, 129600))),
            "dial",
            {"graduation": "0°01'", "vernier": "0°00'10\""},
        ),
    ],
)
def test_what_it_has_is_told_as_a_request_takes_it(head: Head, key: str, told: object) -> None:
    assert head_out(head)[key] == told


@pytest.mark.parametrize(
    ("turns", "text"),
    [
        ("1/16", "22°30'"),
        ("1/21600", "0°01'"),
        ("1/1296000", "0°00'01\""),
        ("1/4", "90°00'"),
        ("1/105", "1/105 turn"),
        ("1/2592000", "1/2592000 turn"),  # half a second
        ("0", "0°00'"),
    ],
)
def test_an_angle_reads_back_exactly(turns: str, text: str) -> None:
    assert exact_text(Fraction(turns)) == text
    assert parse_angle(text).turns == Fraction(turns)


def test_ready_made_heads_are_told_with_what_they_are_called() -> None:
    told = ready_heads(READY_MADE)["heads"]
    assert [(each["id"], each["title"]) for each in told] == [(ready.id, ready.title) for ready in READY_MADE]
    assert all(each["head"] == head_out(ready.head) for each, ready in zip(told, READY_MADE, strict=True))
