"""What a pupil filled in, read as the exercise means it. What lacks or cannot be read is told when it is marked."""

from __future__ import annotations

from typing import Any

from dividing.indexing.faults import Fault, Refused
from dividing.indexing.head import Head
from dividing.indexing.practice import ArmsClaim, Exercise, PlateClaim, Response, Sheet
from dividing.indexing.practice.exercise import AnyClaim
from dividing.indexing.verifying import GearingClaim

from .schemas.claim import claim_on

Filled = dict[str, Any]


def responses_to(sheet: Sheet, answers: dict[int, Filled]) -> dict[int, Response]:
    """The responses by their numbers; raises `Refused` where a slip is named that nobody asked for."""
    by_number = {exercise.number: exercise for exercise in sheet.exercises}
    faults = [
        Fault(("claims", place, "slip"), f"Exercise {number} does not ask for a slip; leave it out.")
        for place, (number, answer) in enumerate(answers.items())
        if answer["slip"] is not None and by_number[number].task.kind != "find_the_slip"
    ]
    if faults:
        raise Refused(faults)
    head = sheet.wanted.head
    return {number: _response(by_number[number], answer, head) for number, answer in answers.items()}


def _response(exercise: Exercise, answer: Filled, head: Head) -> Response:
    number, slip = exercise.number, answer["slip"]
    if answer["none"]:
        return Response(number, none=True)
    filled = answer["claim"]
    if filled is None or all(value is None for name, value in filled.items() if name != "method"):
        return Response(number, slip=slip)
    try:
        return Response(number, claim=_claim(exercise, filled, head), slip=slip)
    except Refused as refused:
        return Response(number, slip=slip, lacking=tuple(fault.sentence for fault in refused.faults))


def _claim(exercise: Exercise, filled: Filled, head: Head) -> AnyClaim:
    kind = exercise.task.kind
    if kind == "which_plate":
        return PlateClaim(_needed(filled, "plate", "Give the plate."), _needed(filled, "circle", "Give the circle."))
    if kind == "sector_arms":
        return ArmsClaim(_needed(filled, "sector_holes", "Give the holes between the arms."))
    method = filled["method"] or exercise.method
    filled = {**filled, "method": method, "second": _second(filled["second"]), "gearing": _gearing(filled["gearing"])}
    return claim_on(head, filled)


def _second(filled: Filled | None) -> Filled | None:
    if filled is None:
        return None
    holes = _needed(filled, "holes", "Give the spaces of the second move.")
    return {"holes": holes, "circle": _needed(filled, "circle", "Give the circle of the second move.")}


def _gearing(filled: Filled | None) -> GearingClaim | None:
    if filled is None or all(value is None for value in filled.values()):
        return None
    spindle = _needed(filled, "spindle", "Give the gear on the spindle.")
    worm = _needed(filled, "worm", "Give the gear on the worm side.")
    stud = filled["stud"] or None
    if stud is not None and len(stud) != 2:
        raise Refused([Fault(("gearing", "stud"), "The stud carries two gears, first and second; give both or none.")])
    return GearingClaim(spindle, worm, stud, filled["idlers"] or 0)


def _needed(filled: Filled, name: str, sentence: str) -> int:
    found: int | None = filled[name]
    if found is None:
        raise Refused([Fault((name,), sentence)])
    return found
