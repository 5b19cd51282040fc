"""What is wrong with a head as it was described, every fault at once."""

from __future__ import annotations

from typing import Protocol

from . import bounds
from .faults import Fault, Path


class Dial(Protocol):
    """As much of a dial as is looked at here."""

    def units(self, ratio: int) -> int: ...


class Head(Protocol):
    """As much of a head as is looked at here."""

    @property
    def ratio(self) -> int: ...
    @property
    def plates(self) -> tuple[tuple[int, ...], ...]: ...
    @property
    def mounted_plate(self) -> int: ...
    @property
    def direct_circles(self) -> tuple[int, ...]: ...
    @property
    def change_gears(self) -> tuple[int, ...]: ...
    @property
    def stop_circles(self) -> tuple[int, ...] | None: ...
    @property
    def dial(self) -> Dial | None: ...


def head_faults(head: Head) -> list[Fault]:
    """Each fault of a head with its place and a sentence that says what to change; nothing when all is right."""
    return [*_ratio_faults(head), *_circle_faults(head), *_gear_faults(head), *_dial_faults(head)]


def _ratio_faults(head: Head) -> list[Fault]:
    if 1 <= head.ratio <= bounds.RATIO_MOST:
        return []
    return [Fault(("ratio",), f"The ratio is a whole number of crank turns, 1 to {bounds.RATIO_MOST:,}.")]


def _holes_faults(circles: tuple[int, ...], path: Path) -> list[Fault]:
    faults = []
    for place, holes in enumerate(circles):
        if not bounds.HOLES_LEAST <= holes <= bounds.HOLES_MOST:
            sentence = f"A circle has {bounds.HOLES_LEAST} to {bounds.HOLES_MOST} holes, not {_short(holes)}."
            faults.append(Fault((*path, place), sentence))
        elif holes in circles[:place]:
            faults.append(Fault((*path, place), f"The circle of {holes} holes stands twice on this plate."))
    return faults


def _circle_faults(head: Head) -> list[Fault]:
    everything = [*head.plates, head.direct_circles]
    if sum(map(len, everything)) > bounds.CIRCLES_MOST:
        return [Fault(("plates",), f"A head may have {bounds.CIRCLES_MOST} circles in all; give fewer.")]
    faults = [
        Fault(("plates", place), "A plate has at least one circle; leave an empty plate out.")
        for place, face in enumerate(head.plates)
        if not face
    ]
    for place, face in enumerate(head.plates):
        faults += _holes_faults(face, ("plates", place))
    faults += _holes_faults(head.direct_circles, ("direct_circles",))
    if not faults and sum(map(sum, everything)) > bounds.HOLES_IN_ALL_MOST:
        faults.append(
            Fault(("plates",), f"All circles together may have {bounds.HOLES_IN_ALL_MOST:,} holes; give fewer circles.")
        )
    return faults + _mounting_faults(head)


def _mounting_faults(head: Head) -> list[Fault]:
    faults = []
    if head.plates and not 1 <= head.mounted_plate <= len(head.plates):
        sentence = f"The mounted plate is one of plates 1 to {len(head.plates)}, counted from 1."
        faults.append(Fault(("mounted_plate",), sentence))
    if not head.plates and head.mounted_plate < 1:
        sentence = "The mounted plate is counted from 1; this head has no plates, so leave it out."
        faults.append(Fault(("mounted_plate",), sentence))
    owned = {circle for face in head.plates for circle in face}
    faults += [
        Fault(
            ("stop_circles", place),
            f"The stop pin's circle of {_short(circle)} holes is on none of the plates.",
        )
        for place, circle in enumerate(head.stop_circles or ())
        if circle not in owned
    ]
    if not head.plates and not head.direct_circles and head.dial is None:
        faults.append(Fault((), "Give the head a plate, a direct circle or a dial: without one nothing can be set."))
    return faults


def _gear_faults(head: Head) -> list[Fault]:
    if len(head.change_gears) > bounds.GEARS_MOST:
        return [Fault(("change_gears",), f"At most {bounds.GEARS_MOST} change gears can be given.")]
    return [
        Fault(("change_gears", place), f"A change gear has {bounds.TEETH_LEAST} to {bounds.TEETH_MOST} teeth.")
        for place, teeth in enumerate(head.change_gears)
        if not bounds.TEETH_LEAST <= teeth <= bounds.TEETH_MOST
    ]


def _dial_faults(head: Head) -> list[Fault]:
    if head.dial is None or not 1 <= head.ratio <= bounds.RATIO_MOST:
        return []
    units = head.dial.units(head.ratio)
    if units == 0:
        sentence = f"One crank turn at {head.ratio}:1 is not a whole number of the dial's smallest readings."
        return [Fault(("dial",), sentence)]
    if units > bounds.DIAL_UNITS_MOST:
        return [Fault(("dial",), f"The dial is finer than {bounds.DIAL_UNITS_MOST:,} readings in a crank turn.")]
    return []


def _short(number: int) -> str:
    return str(number) if abs(number) < 10**12 else "a number that long"
