"""Form cutters: every number of teeth has the cutter whose range holds it, and the range is told beside the number."""

from __future__ import annotations

import pytest

from dividing.parts.form_cutters import FormCutter, form_cutter

# The set of eight in diametral pitch: Modern Machine-Shop Practice (Joshua Rose), table of eight involute cutters;
# that No. 8 ends at 13 is common practice.
RANGES = {1: (135, None), 2: (55, 134), 3: (35, 54), 4: (26, 34), 5: (21, 25), 6: (17, 20), 7: (14, 16), 8: (12, 13)}


def test_every_number_of_teeth_lies_in_the_range_of_its_cutter() -> None:
    for teeth in range(12, 1000):
        (number,) = [
            number
            for number, (lowest, highest) in RANGES.items()
            if lowest <= teeth and (highest is None or teeth <= highest)
        ]
        assert form_cutter(teeth) == FormCutter(number, *RANGES[number])


@pytest.mark.parametrize("teeth", [-5, 0, 1, 11, 11.99])
def test_below_twelve_there_is_none(teeth: float) -> None:
    assert form_cutter(teeth) is None


@pytest.mark.parametrize(
    ("formative", "number"),
    [
        (12 - 1e-9, 8),
        (12.0, 8),
        (13.99, 8),
        (14.0, 7),
        (26.8, 4),
        (34.99, 4),
        (35 - 1e-12, 3),
        (54.6, 3),
        (134.5, 2),
        (1e9, 1),
    ],
)
def test_a_formative_number_between_two_ranges_takes_the_lower_one(formative: float, number: int) -> None:
    cutter = form_cutter(formative)
    assert cutter is not None
    assert cutter.number == number


@pytest.mark.parametrize(
    ("teeth", "words", "module_number"),
    [(12, "12 to 13 teeth", 1), (24, "21 to 25 teeth", 4), (200, "135 teeth to a rack", 8)],
)
def test_the_range_goes_beside_the_number_since_module_sets_count_the_other_way(
    teeth: int, words: str, module_number: int
) -> None:
    cutter = form_cutter(teeth)
    assert cutter is not None
    assert cutter.teeth == words
    assert cutter.note == (
        f"for {words}; go by this range: many module cutters are numbered the other way (there No. {module_number})"
    )
