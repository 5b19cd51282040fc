"""The costliest questions that are still answered, found by trying: heads and works at their limits, put together."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from functools import _lru_cache_wrapper
from typing import Any

from dividing.web.schemas import head as heads_on_the_wire

Question = tuple[str, str, dict[str, Any]]
"""(what it is, address, body)"""

# Gears without a factor in common make the most different trains; circles side by side the most different grids.
PRIMES = [number for number in range(10, 200) if all(number % part for part in range(2, number))]
GEARS = PRIMES[:24]
GREAT: dict[str, Any] = {"plates": [list(range(30, 130))], "direct_circles": [], "change_gears": GEARS}
LARGE: dict[str, Any] = {"plates": [list(range(331, 363))], "direct_circles": [], "change_gears": GEARS}
TABLE: dict[str, Any] = {"ratio": 90, "plates": [], "direct_circles": []}
HEADS: dict[str, dict[str, Any]] = {
    "100 circles, 24 gears": GREAT,
    "32 large circles, 24 gears, 10,000 to 1": {**LARGE, "ratio": 10_000},
    "100 circles, no gears": {**GREAT, "change_gears": []},
    "20 plates of 5, 24 gears": {**GREAT, "plates": [list(range(at, at + 5)) for at in range(30, 130, 5)]},
    "the usual head": {},
    "a table with a dial": {**TABLE, "dial": {"graduation": "0°01'", "vernier": "0°00'10\""}},
    "a table with plain divisions, 9,973 to 1": {**TABLE, "ratio": 9_973, "dial": {"divisions": 997}},
}
ANGLES = [f"{number * 0.171_234_5 % 360:.7f}" for number in range(2_000)]
WORKS: dict[str, dict[str, Any]] = {
    "2 divisions": {"divisions": 2},
    "997": {"divisions": 997},
    "19,997": {"divisions": 19_997},
    "999,983": {"divisions": 999_983},
    "nearly a whole turn": {"angle": "359.99917"},
    "6.2 rad": {"angle": "6.2 rad", "count": 20},
    "10.123457 degrees": {"angle": "10.123457"},
    "20,000 small angles": {"angle": "0.0171234", "count": 20_000},
    "20,000 wide angles": {"angle": "99.991", "count": 20_000},
    "20,000 angles of 64 figures": {"angle": f"99.99{'1234567890' * 6}"[:64], "count": 20_000},
    "20,000 angles in radians": {"angle": "5.00017123 rad", "count": 20_000},
    "2,000 angles": {"angles": ANGLES},
    "2,000 angles in radians": {"angles": [f"{number * 0.003:.6f} rad" for number in range(2_000)]},
}
OPTIONS: dict[str, dict[str, Any]] = {
    "": {},
    "all setups": {"limit": 100},
    "its rows": {"positions": True, "limit": 1},
    "trains and two moves, all setups": {"methods": ["differential", "compound"], "limit": 100},
}
CLAIMS: dict[str, dict[str, Any]] = {
    "plain": {"method": "plain", "turns": 0, "holes": 1, "circle": 100},
    "two moves": {"method": "compound", "holes": 1, "circle": 100, "second": {"holes": 1, "circle": 99}},
    "a train": {
        "method": "differential",
        "holes": 1,
        "circle": 100,
        "gearing": {"spindle": 11, "worm": 13, "idlers": 1},
    },
    "nearest": {"method": "nearest", "circle": 100},
}
PARTS: dict[str, dict[str, Any]] = {
    "a helix": {"kind": "helix", "starts": 7, "diameter": 50, "lead": 777.77, "hand": "right", "unit": "mm"},
    "a helical gear": {
        "kind": "helical_gear", "teeth": 73, "module": 2, "pressure_angle": 20, "helix_angle": 17.123, "hand": "right",
        "unit": "mm",
    },
    "a bolt circle": {"kind": "bolt_circle", "holes": 20_000, "diameter": 5_000, "unit": "mm"},
    "a dial": {"kind": "dial", "divisions": 20_000, "diameter": 5_000, "unit": "mm"},
    "a reamer": {"kind": "reamer", "flutes": 12, "spread": 2.5},
}  # fmt: skip
SCREW: dict[str, Any] = {"screw": {"lead": 6, "unit": "mm"}}


def questions() -> Iterator[Question]:
    """All that is tried; most are far from the worst."""
    for head_name, head in HEADS.items():
        for work_name, work in WORKS.items():
            asked = {"work": work, "head": head}
            for option, more in OPTIONS.items():
                yield f"solve {work_name}, {head_name}, {option}", "/v1/solve", {**asked, **more}
            seen = {"spindle": "9°", "give": "180°"}
            yield f"locate {work_name}, {head_name}", "/v1/locate", {**asked, "seen": seen}
            for claim_name, claim in CLAIMS.items():
                yield f"verify {claim_name}, {work_name}, {head_name}", "/v1/verify", {**asked, "claim": claim}
        for part_name, part in PARTS.items():
            asked = {"work": {"part": part}, "head": {**head, **SCREW}, "limit": 100}
            yield f"solve {part_name}, {head_name}", "/v1/solve", asked
        yield f"angle, {head_name}", "/v1/angle", {"angle": "1.2345678 rad", "head": head, "diameter": 1, "sine_bar": 5}
        for holes in (397, 127):
            yield f"plate of {holes}, {head_name}", "/v1/plate", {"holes": holes, "head": head}
        for least, most in ((2, 10_000), (9_000, 10_000), (2, 500)):
            yield (
                f"coverage {least:,} to {most:,}, {head_name}",
                "/v1/coverage",
                {"from": least, "to": most, "head": head},
            )
        yield f"practice, {head_name}", "/v1/practice", {"seed": 7, "count": 60, "level": 3, "head": head}
    many = [{"work": {"divisions": 383 + number}, "head": GREAT} for number in range(12)]
    yield "a batch of 12 on the great head", "/v1/solve/batch", {"items": many}


def forget() -> None:
    """Make the service cold, as it is for a head that it has not seen; what is the same for all stays."""
    heads_on_the_wire._remembered.clear()
    for name, module in list(sys.modules.items()):
        if name.startswith("dividing.") and name != "dividing.web.openapi":
            for remembered in list(vars(module).values()):
                if isinstance(remembered, _lru_cache_wrapper):
                    remembered.cache_clear()
