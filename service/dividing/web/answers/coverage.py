"""The answer of /v1/coverage."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from dividing import __version__
from dividing.indexing.angles import seconds
from dividing.indexing.coverage import Addition, Additions, Coverage, Way
from dividing.indexing.setup import MethodName
from dividing.web.schemas.coverage import Range

from . import Answer

COUNTED: tuple[MethodName, ...] = ("direct", "plain", "differential", "compound", "dial")
GAP: Answer = {"method": None, "exact": False, "every": None, "worst_seconds": None, "within_tolerance": None}


def covered(asked: Range, found: Coverage, additions: Additions | None) -> Answer:
    """Each number with its way, how many there are of each, the gaps and what to own next."""
    ways = {way: _way(way) for way in set(found.ways.values())}
    exact = Counter(way.method for way in found.ways.values() if way.exact)
    return {
        "from": asked.first,
        "to": asked.last,
        "numbers": [
            {"divisions": number, **(ways[found.ways[number]] if number in found.ways else GAP)}
            for number in found.numbers
        ],
        "counts": {method: exact[method] for method in COUNTED},
        "exact": exact.total(),
        "within": len(found.numbers) - exact.total() - len(found.gaps),
        "gaps": list(found.gaps),
        "next": None if additions is None else _next(additions),
        "service_version": __version__,
    }


def _way(way: Way) -> Answer:
    return {
        "method": way.method,
        "exact": way.exact,
        "every": way.every,
        "worst_seconds": seconds(way.worst),
        "within_tolerance": way.within,
    }


def _next(additions: Additions) -> Answer:
    return {"circles": _told("circle", additions.circles), "gears": _told("gear", additions.gears)}


def _told(what: str, found: Iterable[Addition]) -> list[Answer]:
    return [{what: each.size, "closes": each.closes, "numbers": list(each.numbers)} for each in found]
