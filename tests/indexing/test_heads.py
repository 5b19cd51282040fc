"""Heads to start from: their figures are those of the publications named."""

from __future__ import annotations

from fractions import Fraction

import pytest

from dividing.indexing.head import SET_ONE, TWELVE_GEARS, Head
from dividing.indexing.heads import READY_MADE, SET_TWO, ReadyHead

BY_ID = {ready.id: ready for ready in READY_MADE}


class TestPublishedFigures:
    def test_set_one(self) -> None:
        # Introduction to Machining 1, open textbook, section 9.19, component list.
        assert SET_ONE == ((15, 16, 17, 18, 19, 20), (21, 23, 27, 29, 31, 33), (37, 39, 41, 43, 47, 49))

    def test_set_two(self) -> None:
        # US Army Ordnance correspondence course on milling machine operations (OD1644).
        assert SET_TWO == (
            (24, 25, 28, 30, 34, 37, 38, 39, 41, 42, 43),
            (46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66),
        )

    def test_the_twelve_gears(self) -> None:
        # Solved exercise sheet on the dividing head, Spanish technical school, data for all exercises.
        assert TWELVE_GEARS == (24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100)


class TestReadyMade:
    @pytest.mark.parametrize(
        ("name", "title"),
        [
            ("40-set-1", "40:1, plates 15–20, 21–33, 37–49, direct plate 24"),
            ("40-set-1-gears", "40:1, plates 15–20, 21–33, 37–49, twelve change gears 24–100"),
            ("40-set-2", "40:1, one plate with two faces, 24–43 and 46–66"),
            ("60-set-1", "60:1, plates 15–20, 21–33, 37–49"),
            ("72-set-1", "72:1, plates 15–20, 21–33, 37–49"),
            ("table-90-plates", "90:1 rotary table with plates 15–20, 21–33, 37–49"),
            ("table-90-dial", "90:1 rotary table by its dial, 1 minute and vernier to 10 seconds"),
            ("fixture-36", "Direct indexing fixture, 36 holes"),
        ],
    )
    def test_each_says_its_figures_in_a_line(self, name: str, title: str) -> None:
        assert BY_ID[name].title == title

    # (ratio, circles on plates, direct circles, change gears, smallest dial readings in a crank turn)
    @pytest.mark.parametrize(
        ("name", "figures"),
        [
            ("40-set-1", (40, 18, (24,), 0, 0)),
            ("40-set-1-gears", (40, 18, (24,), 12, 0)),
            ("40-set-2", (40, 22, (24,), 0, 0)),
            ("60-set-1", (60, 18, (24,), 0, 0)),
            ("72-set-1", (72, 18, (24,), 0, 0)),
            ("table-90-plates", (90, 18, (), 0, 0)),
            ("table-90-dial", (90, 0, (), 0, 1440)),
            ("fixture-36", (1, 0, (36,), 0, 0)),
        ],
    )
    def test_each_has_the_figures_of_its_name(self, name: str, figures: tuple[object, ...]) -> None:
        head = BY_ID[name].head
        assert figures == (
            head.ratio,
            sum(map(len, head.plates)),
            head.direct_circles,
            len(head.change_gears),
            head.dial_units,
        )

    def test_each_has_a_word_of_its_own(self) -> None:
        assert len(BY_ID) == len(READY_MADE) == 8

    @pytest.mark.parametrize("ready", READY_MADE, ids=lambda ready: ready.id)
    def test_the_title_says_the_ratio_and_every_plates_ends(self, ready: ReadyHead) -> None:
        assert ready.head.ratio == 1 or ready.title.startswith(f"{ready.head.ratio}:1")
        assert all(f"{min(face)}–{max(face)}" in ready.title for face in ready.head.plates)

    def test_the_dial_reads_a_minute_and_its_vernier_ten_seconds(self) -> None:
        dial = BY_ID["table-90-dial"].head.dial
        assert dial is not None
        assert (dial.graduation, dial.vernier) == (Fraction("1/60") / 360, Fraction("10/3600") / 360)

    def test_the_first_is_the_usual_head(self) -> None:
        assert READY_MADE[0].head == Head()
