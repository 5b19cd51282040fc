"""The drilling schedule as a sheet of cells (CSV), for the readout's memory or a clipboard at the drill."""

from __future__ import annotations

from typing import Any

from dividing.parts.sizes import PLACES

from . import sheet

COLUMNS = (
    "hole_number", "degrees", "dms", "turns", "spaces", "circle", "pin_hole", "second_spaces", "second_circle",
    "second_pin_hole", "dial_turns", "dial_set", "scale", "error_seconds", "x", "y",
)  # fmt: skip


def written(plate: dict[str, Any], unit: str | None) -> bytes:
    """The schedule of an answer of /v1/plate, a line a hole; cells that say nothing are empty.

    The file begins with a byte-order mark, so that a spreadsheet reads its degree signs.
    """
    lines = [_cells(plate["setup"], row, unit) for row in plate["schedule"]]
    return sheet.write(sheet.Sheet([], [], parted_by=",", marked=True), COLUMNS, lines)


def _cells(setup: dict[str, Any], row: dict[str, Any], unit: str | None) -> list[str]:
    move, second, dial = setup["move"] or {}, setup["second_move"] or {}, row["dial"] or {}
    told = (
        row["cut"], f"{row['angle']['degrees']:.6f}", row["angle"]["dms"], row["turns"] if not dial else None,
        row["holes"], move.get("circle"), row["hole"], row["second_holes"], second.get("circle"), row["second_hole"],
        dial.get("turns"), dial.get("set", dial.get("divisions")), row["scale"], f"{row['error_seconds']:.4f}",
        _length(row["x"], unit), _length(row["y"], unit),
    )  # fmt: skip
    return ["" if value is None else str(value) for value in told]


def _length(value: float | None, unit: str | None) -> str | None:
    """To as many places as a readout shows, and never -0.000."""
    if value is None or unit is None:
        return None
    return f"{round(value, PLACES[unit]) + 0.0:.{PLACES[unit]}f}"
