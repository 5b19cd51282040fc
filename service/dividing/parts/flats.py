"""Flats on round stock: two for a spanner, a square, a hexagon, or any odd count.

n sides, F across flats (for odd n twice the distance from the centre to a flat), D the round they are cut on.
"""

from __future__ import annotations

from math import cos, pi, sqrt, tan

from .sizes import MATHEMATICS, Number, Part, Size, refused, shown

FIELDS = {
    "sides": "Number of flats, from 2; an odd count is welcome.",
    "across_flats": "Distance across flats. For an odd count: twice the distance from the centre to a flat. "
    "Left out, the largest that `round` allows.",
    "round": "Diameter of the round stock. Left out, the round that just gives full corners.",
    "unit": '"mm" or "in".',
}


def flats(*, sides: int, unit: str, across_flats: Number | None = None, stock: Number | None = None) -> Part:
    """Sizes of `sides` flats on round stock; from the stock alone, the largest flats with full corners.

    `stock` is the diameter called `round` in a request. Raises `Refused` when neither size is given, when two
    flats have no round, or when the flats lie outside the round.

    >>> for size in flats(sides=6, unit="mm", across_flats=24).sizes[:2]:
    ...     print(size.name, size.text)
    Across flats 24.000 mm
    Across corners 27.713 mm
    """
    if sides < 2:
        raise refused("One flat is no division: give 2 flats or more.", "sides")
    across, bar = _settled(sides, across_flats, stock, unit)
    corners = None if sides == 2 else across / cos(pi / sides)
    sharp = corners is not None and bar >= corners * (1 - 1e-12)
    width = across * tan(pi / sides) if sharp else sqrt(bar**2 - across**2)
    return Part(
        "flats",
        unit,
        _sizes(sides, unit, across, corners, bar, width),
        divisions=sides,
        cautions=_cautions(unit, corners, bar, sharp, width),
        rim=corners if corners is not None and sharp else bar,
        drawing={"sides": sides, "across_flats": across, "round": bar, "corners": corners, "width": width},
    )


def _settled(sides: int, across: Number | None, stock: Number | None, unit: str) -> tuple[float, float]:
    """Across flats and round, one from the other where only that is given."""
    two = "Two flats have no corners that would settle it: give both across_flats and round."
    if across is None:
        if stock is None:
            raise refused("Give across_flats or round (or both).", "across_flats")
        if sides == 2:
            raise refused(two, "across_flats")
        return float(stock) * cos(pi / sides), float(stock)
    if stock is None:
        if sides == 2:
            raise refused(two, "round")
        return float(across), float(across) / cos(pi / sides)
    if across >= stock:
        flat, bar = shown(across, unit), shown(stock, unit)
        raise refused(f"Flats {flat} apart leave a {bar} round untouched: give a smaller across_flats.", "across_flats")
    return float(across), float(stock)


def _sizes(sides: int, unit: str, across: float, corners: float | None, stock: float, width: float) -> tuple[Size, ...]:
    even = sides % 2 == 0

    def size(name: str, value: float, note: str = "") -> Size:
        return Size(name, value, unit, MATHEMATICS, note)

    found = [size("Across flats" if even else "Twice the centre to a flat", across)]
    if corners is not None:
        found.append(size("Across corners" if even else "Circle through the corners", corners, "F / cos(180°/n)"))
        found.append(size("Round needed for full corners", corners))
        found.append(size("Largest flats from this round", stock * cos(pi / sides), "D cos(180°/n)"))
    found += [
        size("Round", stock),
        size("Depth of each flat from the round", (stock - across) / 2, "(D - F) / 2"),
        size("Width of a flat", width),
        size("First flat to the round opposite", (stock + across) / 2, "measure here after the first cut"),
    ]
    if corners is not None and not even:
        note = "an odd count has no flat opposite a flat"
        finished = (across + min(stock, corners)) / 2
        found.append(size("Finished, over a flat and the corner opposite", finished, note))
    return tuple(found)


def _cautions(unit: str, corners: float | None, stock: float, sharp: bool, width: float) -> tuple[str, ...]:
    if corners is None or sharp:
        return ()
    return (
        f"Full corners need a round of {shown(corners, unit)}: on {shown(stock, unit)} they stay round, "
        f"with flats {shown(width, unit)} wide.",
    )
