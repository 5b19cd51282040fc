"""The words of the query form, each read from text and written back as it was."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from dividing.web.query_words import ANGLE_WORDS, HEAD_WORDS, PAGE_WORDS, SOLVE_WORDS, WORK_WORDS, number

READ: list[tuple[str, str, Any, str]] = [
    # word, text, value, the text that is written of it
    ("divisions", "73", 73, "73"),
    ("divisions", " 73 ", 73, "73"),
    ("divisions", "73.0", Decimal("73.0"), "73"),
    ("at_rim", "0.020", Decimal("0.020"), "0.020"),
    ("diameter", "1.000", Decimal("1.000"), "1"),
    ("angle", "37°30'", "37°30'", "37°30'"),
    ("angles", "0, 22.5 ,61°15'", ["0", "22.5", "61°15'"], "0,22.5,61°15'"),
    ("methods", "plain,compound", ["plain", "compound"], "plain,compound"),
    ("positions", "true", True, "true"),
    ("positions", "false", False, "false"),
    ("plates", "15,16/21", [[15, 16], [21]], "15,16/21"),
    ("plates", "", [], ""),
    ("direct_circles", "24,30", [24, 30], "24,30"),
    ("direct_circles", "", [], ""),
    ("idlers", "1,2,0,1", {"simple": {"with": 1, "against": 2}, "compound": {"with": 0, "against": 1}}, "1,2,0,1"),
    ("dial", "0°01'", {"graduation": "0°01'"}, "0°01'"),
    ("dial", "0°01'/0°00'10\"", {"graduation": "0°01'", "vernier": "0°00'10\""}, "0°01'/0°00'10\""),
    ("dial", "100", {"divisions": 100}, "100"),
    ("screw", "0.25 in", {"lead": Decimal("0.25"), "unit": "in"}, "0.25 in"),
    ("part", '{"kind":"flats","sides":6}', {"kind": "flats", "sides": 6}, '{"kind":"flats","sides":6}'),
    # Figures of a form come as text; the unit is a word even where it looks like one.
    (
        "part",
        '{"kind":"flats","sides":"6","across_flats":"24.50","unit":"mm"}',
        {"kind": "flats", "sides": 6, "across_flats": Decimal("24.50"), "unit": "mm"},
        '{"across_flats":24.5,"kind":"flats","sides":6,"unit":"mm"}',
    ),
]
# What cannot be read goes on as it is, for its field to refuse.
LEFT = [
    ("divisions", "seventy"),
    ("divisions", "1e3"),
    ("divisions", "073"),
    # A thousand to some, one to others.
    ("divisions", "1.000"),
    ("ratio", "28.000"),
    ("every", "1.000"),
    ("divisions", "٧٣"),
    ("divisions", "7" * 65),
    ("positions", "yes"),
    ("idlers", "1,2,0"),
    ("part", "flats"),
    ("part", '{"kind":'),
]


@pytest.mark.parametrize(("name", "text", "value", "written"), READ)
def test_a_word_is_read_and_written(name: str, text: str, value: Any, written: str) -> None:
    word = SOLVE_WORDS[name]
    assert word.read(text) == value
    assert word.write(word.read(text)) == written
    # What was written is read as the same once more.
    assert word.write(word.read(written)) == written


@pytest.mark.parametrize(("name", "text"), LEFT)
def test_what_cannot_be_read_is_left_for_its_field(name: str, text: str) -> None:
    assert SOLVE_WORDS[name].read(text) == text


def test_a_list_is_read_item_by_item() -> None:
    assert SOLVE_WORDS["plates"].read("15,x/21") == [[15, "x"], [21]]
    assert SOLVE_WORDS["part"].read("[1, 2]") == [1, 2]


@pytest.mark.parametrize(
    ("text", "value"),
    [("-5", -5), ("0", 0), ("0.5", Decimal("0.5")), (".5", ".5"), ("5.", "5."), ("+5", "+5"), ("", "")],
)
def test_a_number_is_what_json_would_take_for_one(text: str, value: Any) -> None:
    assert number(text) == value


def test_the_words_of_a_head_stand_in_every_form() -> None:
    for words in (SOLVE_WORDS, ANGLE_WORDS):
        assert {name: words[name] for name in HEAD_WORDS} == HEAD_WORDS
    assert set(PAGE_WORDS) - set(SOLVE_WORDS) == {"setup"}
    assert set(WORK_WORDS) < set(SOLVE_WORDS)
    assert not set(WORK_WORDS) - {"angle"} & set(ANGLE_WORDS)


@pytest.mark.parametrize("words", [SOLVE_WORDS, ANGLE_WORDS, PAGE_WORDS])
def test_every_word_says_what_it_is_and_where_it_stands(words: dict[str, Any]) -> None:
    paths = [word.path for word in words.values()]
    assert len(paths) == len(set(paths))
    assert all(word.about.endswith((".", '"', "}")) for word in words.values())
