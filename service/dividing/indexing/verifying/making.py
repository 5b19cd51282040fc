"""What a claim really makes, exact even when absurd, and why it cannot be set on the head at hand."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

from ..bounds import PLATE_MOTION_MOST
from ..head import Head
from ..wording.figures import angle_text, counted
from .claims import Claim, GearingClaim


def makes(claim: Claim, head: Head) -> Fraction | None:
    """Turns of the spindle that one move makes; None where no one move is made, or the train locks the spindle.

    >>> str(makes(Claim("plain", turns=1, holes=20, circle=49), Head()))
    '69/1960'
    """
    if claim.method == "nearest":
        return None
    if claim.method == "direct":
        return claim.crank
    if claim.method == "dial":
        return _by_dial(claim, head)
    if claim.method == "compound":
        assert claim.second is not None
        return (claim.crank + Fraction(claim.second.holes, claim.second.circle)) / head.ratio
    room = head.ratio - (claim.gearing.motion(head) if claim.gearing else 0)
    return claim.crank / room if room else None


def _by_dial(claim: Claim, head: Head) -> Fraction:
    step = Fraction(claim.turns, head.ratio)
    if claim.reading is not None:
        step += claim.reading.turns
    if claim.divisions is not None and head.dial_units:
        step += claim.divisions / (head.ratio * head.dial_units)
    return step


def why_not(claim: Claim, head: Head) -> list[str]:
    """Each reason why the claim cannot be set on this head; empty when it can.

    >>> why_not(Claim("plain", holes=12, circle=22), Head())
    ['No plate of this head has a circle of 22 holes.']
    """
    if claim.method == "dial":
        return _dial_reasons(claim, head)
    if claim.method == "direct":
        return _direct_reasons(claim, head)
    if not head.plates and not (claim.method == "nearest" and claim.circle in head.direct_circles):
        return ["This head has no index plates."]
    reasons = _circle_reasons(claim, head) if head.plates else []
    if claim.gearing:
        reasons += _gear_reasons(claim.gearing, head)
    return reasons


def _dial_reasons(claim: Claim, head: Head) -> list[str]:
    if head.dial is None:
        return ["This head has no dial."]
    degrees = head.dial.divisions is None
    if claim.divisions is not None and degrees:
        return ["The dial of this head reads in degrees, not in plain divisions."]
    if claim.reading is not None and not degrees and claim.reading.turns:
        return ["The dial of this head has plain divisions, no degrees."]
    over = claim.reading is not None and claim.reading.turns * head.ratio >= 1
    over = over or (claim.divisions is not None and claim.divisions >= head.dial_units)
    return [f"The reading is a whole turn of the dial or more; one turn is {_dial_turn(head)}."] if over else []


def _dial_turn(head: Head) -> str:
    assert head.dial is not None
    if head.dial.divisions is not None:
        return counted(head.dial.divisions, "division")
    return angle_text(Fraction(1, head.ratio))


def _direct_reasons(claim: Claim, head: Head) -> list[str]:
    if not head.direct_circles:
        return ["This head has no direct plate."]
    if claim.circle not in head.direct_circles:
        return [f"The direct plate has no circle of {counted(claim.circle or 0, 'hole')}."]
    return []


def _circle_reasons(claim: Claim, head: Head) -> list[str]:
    circles = [claim.circle] if claim.circle and (claim.holes or claim.second or claim.method == "nearest") else []
    if claim.second:
        circles.append(claim.second.circle)
    missing = [
        f"No plate of this head has a circle of {counted(circle, 'hole')}."
        for circle in circles
        if circle not in head.plate_of
    ]
    if missing or not claim.second:
        return missing
    first, second = circles
    return _pair_reasons(first, second, head)


def _pair_reasons(first: int, second: int, head: Head) -> list[str]:
    if first == second:
        return ["Both moves are on the same circle, which is plain indexing."]
    if not any(first in face and second in face for face in head.plates):
        return [f"Circles {first} and {second} are not on one plate, so plate and pin cannot use both."]
    if head.stop_circles is not None and second not in head.stop_circles:
        return [f"The stop pin does not reach the circle of {second}."]
    return []


def _gear_reasons(gearing: GearingClaim, head: Head) -> list[str]:
    owned, used = Counter(head.change_gears), Counter(gearing.gears)
    reasons = []
    for teeth, count in used.items():
        if not owned[teeth]:
            reasons.append(f"You own no change gear of {teeth} teeth.")
        elif count > owned[teeth]:
            reasons.append(f"The gear of {teeth} teeth is used {_times(count)} and you own {owned[teeth]}.")
    if not reasons and len(gearing.gears) + gearing.idlers > len(head.change_gears):
        reasons.append(
            f"The train with its {counted(gearing.idlers, 'idler')} takes more gears than the "
            f"{len(head.change_gears)} you own."
        )
    if gearing.train > PLATE_MOTION_MOST:
        reasons.append(f"The plate would turn more than {PLATE_MOTION_MOST} times per spindle turn.")
    if gearing.motion(head) == head.ratio:
        reasons.append("With this train the crank would not turn the spindle at all.")
    return reasons


def _times(count: int) -> str:
    return "twice" if count == 2 else f"{count} times"
