"""What the tests of the parts share: the published rows, and a size looked up by its name."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from dividing.indexing.faults import Refused
from dividing.parts.sizes import Part, Size

ROWS: list[dict[str, Any]] = json.loads(
    (Path(__file__).parents[1] / "data" / "check_values_parts.json").read_text(encoding="utf-8")
)


def size(part: Part, name: str) -> Size:
    """The one size of that name."""
    found = [size for size in part.sizes if size.name == name]
    assert len(found) == 1, f"{name!r} stands {len(found)} times among {[size.name for size in part.sizes]}"
    return found[0]


def value(part: Part, name: str) -> float:
    """Its value."""
    return size(part, name).value


def names(part: Part) -> list[str]:
    """The names of all sizes."""
    return [size.name for size in part.sizes]


def told(refusal: Refused) -> list[tuple[tuple[str | int, ...], str]]:
    """What a refusal says, and of which field."""
    return [(fault.path, fault.sentence) for fault in refusal.faults]
