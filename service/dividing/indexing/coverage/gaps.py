"""Gaps looked up by what they divide: the other way round from the sieve, for many small sets of points."""

from __future__ import annotations

from collections.abc import Collection, Mapping


def by_points(gaps: Collection[int], most: int) -> Mapping[int, list[int]]:
    """For each number up to `most` that some of `gaps` divide, which do.

    >>> by_points((53, 59), 120)
    {53: [53], 106: [53], 59: [59], 118: [59]}
    """
    found: dict[int, list[int]] = {}
    for gap in gaps:
        for points in range(gap, most + 1, gap):
            found.setdefault(points, []).append(gap)
    return found
