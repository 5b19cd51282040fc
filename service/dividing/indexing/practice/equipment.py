"""The head in front of the class in words, as it stands at the top of a sheet."""

from __future__ import annotations

from ..head import Head
from ..wording.figures import counted
from .phrases import exact_angle


def equipment(head: Head) -> list[str]:
    """The head in front of the class, a line for each thing.

    >>> equipment(Head())[0], equipment(Head())[1]
    ('40 turns of the crank make one turn of the spindle.', 'Plate 1, mounted: 15 16 17 18 19 20')
    """
    lines = [
        f"{counted(head.ratio, 'turn')} of the crank make{'s' if head.ratio == 1 else ''} one turn of the spindle."
    ]
    for plate, face in enumerate(head.plates, 1):
        mounted = ", mounted" if plate == head.mounted_plate else ""
        lines.append(f"Plate {plate}{mounted}: {_row(face)}")
    if head.direct_circles:
        lines.append(f"Direct plate: {_row(head.direct_circles)}")
    if head.stop_circles is not None:
        lines.append(f"The stop pin reaches: {_row(head.stop_circles)}")
    if head.change_gears:
        lines.append(f"Change gears: {_row(tuple(sorted(head.change_gears)))}")
        lines.append(_idlers(head))
    return [*lines, *_dial(head)]


def _row(numbers: tuple[int, ...]) -> str:
    return " ".join(map(str, numbers))


def _idlers(head: Head) -> str:
    idlers = head.idlers
    return (
        f"Idlers for the plate to turn with the crank: {idlers.simple_with} with two gears, {idlers.compound_with} "
        f"with four; against it: {idlers.simple_against} and {idlers.compound_against}."
    )


def _dial(head: Head) -> list[str]:
    dial = head.dial
    if dial is None:
        return []
    if dial.divisions is not None:
        return [f"Dial: {counted(dial.divisions, 'line')} a turn."]
    assert dial.graduation is not None
    vernier = f", vernier to {exact_angle(dial.vernier)}" if dial.vernier else ""
    return [f"Dial: one line is {exact_angle(dial.graduation)} of the table{vernier}."]
