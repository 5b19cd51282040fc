"""The work as it was understood goes out with the step that one move should make."""

from __future__ import annotations

from typing import Any

import pytest

from dividing.indexing.angles import parse_angle
from dividing.indexing.work import Angles, Arc, Divisions, Work
from dividing.web.answers.solve import work_out

STEP = {"degrees": 22.5, "dms": "22°30'00.00\"", "turns": "1/16"}
# 0.35 radians are 0.35 x 180/pi = 20.053523 degrees: 20°, 3' and 12.68".
IN_RADIANS = {"degrees": pytest.approx(20.053523, abs=1e-6), "dms": "20°03'12.68\"", "turns": None}


@pytest.mark.parametrize(
    ("work", "told"),
    [
        (Divisions(16), {"divisions": 16, "step": STEP}),
        # Three spaces a move.
        (
            Divisions(16, every=3),
            {"divisions": 16, "step": {"degrees": 67.5, "dms": "67°30'00.00\"", "turns": "3/16"}},
        ),
        (Arc(parse_angle("22°30'"), 3), {"angle": STEP, "count": 3, "step": STEP}),
        (Arc(parse_angle("0.35 rad"), 2), {"angle": IN_RADIANS, "count": 2, "step": IN_RADIANS}),
        (
            Angles((parse_angle("0.35 rad"), parse_angle("22.5"))),
            {"angles": [IN_RADIANS, STEP], "step": None},
        ),
    ],
)
def test_the_work_is_told_as_it_was_asked(work: Work, told: dict[str, Any]) -> None:
    assert work_out(work) == told
