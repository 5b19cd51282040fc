"""The checker of markup finds what is wrong, or nothing that it says elsewhere would count."""

import pytest

from tests.page.markup import Checker

DOCUMENT = '<!DOCTYPE html><html lang="en"><title>Arms</title><h1>Arms</h1>{}</html>'


def test_sound_markup_passes(markup: Checker) -> None:
    assert markup.finds_in(DOCUMENT.format('<p><input aria-label="Turns" inputmode="numeric"></p>')) == []


@pytest.mark.parametrize(
    ("wrong", "told"),
    [
        ('<img src="plate.svg">', "alt"),
        ('<p id="arm"></p><p id="arm"></p>', "Duplicate ID"),
        ("<ul><p>pin</p></ul>", "not allowed as child"),
        ('<p role="hole"></p>', "role"),
    ],
)
def test_wrong_markup_is_found(markup: Checker, wrong: str, told: str) -> None:
    assert any(told in each for each in markup.finds_in(DOCUMENT.format(wrong)))
