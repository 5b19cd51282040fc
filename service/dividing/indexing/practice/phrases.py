"""The sentences of exercises: what is asked, and how a setup reads."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from ..angles import Angle
from ..verifying import Claim, GearingClaim
from ..wording.dials import lines_text
from ..wording.figures import angle_text, counted, turns_and_spaces
from ..work import Divisions
from .exercise import Key, KindName, Task, may_be_none

IF_NONE = " If nothing serves, say so."


def question(task: Task, key: Key) -> str:
    """The exercise as it stands on the sheet.

    >>> from dividing.indexing.head import Head
    >>> from dividing.indexing.practice.kinds import plain
    >>> task = Task("plain", 1, Divisions(20))
    >>> question(task, plain.key(task, Head()))
    'Divide the work into 20 equal parts by plain indexing. How many whole turns and spaces, and on which circle?'
    """
    asked = " ".join(filter(None, (_wanted(task), key.hint, _asked(task, hinted=bool(key.hint)))))
    return asked + IF_NONE if may_be_none(task) else asked


def _wanted(task: Task) -> str:
    if task.kind == "find_the_slip":
        if isinstance(task.work, Divisions):
            return f"{task.work.count} equal parts were wanted."
        return f"The work was to be turned through {_angle(task)}."
    way = _WAYS[task.kind]
    if task.position and not isinstance(task.work, Divisions):
        return f"The work is divided into {task.position[1]} equal parts{way}."
    if isinstance(task.work, Divisions):
        return f"Divide the work into {task.work.count} equal parts{way}."
    return f"Turn the work through {_angle(task)}{way}."


_WAYS: Mapping[KindName, str] = {
    "plain": " by plain indexing",
    "angular": " by angular indexing",
    "direct": " with the direct plate",
    "which_plate": " by plain indexing",
    "sector_arms": " by plain indexing",
    "compound": " by compound indexing",
    "differential": " by differential indexing",
    "dial": " by the dial",
}


def _asked(task: Task, *, hinted: bool) -> str:
    if hinted and task.kind in _ASKED_WITH_A_HINT:
        return _ASKED_WITH_A_HINT[task.kind]
    if task.kind in _ASKED:
        return _ASKED[task.kind]
    if task.kind == "sector_arms":
        move = claim_text(task.claim) if task.claim else None
        given = f"The move is {move}." if move else f"The pin is in the circle of {task.circle}."
        return f"{given} Over how many holes do the sector arms stand?"
    if task.kind == "dial":
        assert task.position is not None
        read = "" if task.level < 3 else " Set the nearest reading."
        steps = counted(task.position[0], "step")
        return f"How many whole turns and which reading of the dial bring the work {steps} on from zero?{read}"
    assert task.claim is not None
    return f"Somebody set {claim_text(task.claim)}. Which slip was made?"


_ASKED: Mapping[KindName, str] = {
    "plain": "How many whole turns and spaces, and on which circle?",
    "angular": "How many whole turns and spaces, and on which circle?",
    "direct": "How many spaces, and on which circle?",
    "which_plate": "Which plate do you mount, and which of its circles do you use?",
    "compound": "Which two moves, on which two circles of one plate?",
    "differential": "Which crank move, which gears and how many idlers?",
}

_ASKED_WITH_A_HINT: Mapping[KindName, str] = {
    "compound": "Which two moves?",
    "differential": "Which gears and how many idlers go with it?",
}


def _angle(task: Task) -> str:
    return task.written or exact_angle(task.work.step)


def exact_angle(turns: Fraction) -> str:
    """An angle without decimals of a second where it has none.

    >>> exact_angle(Fraction(1, 129600) * 3), exact_angle(Fraction(1, 4))
    ('0°00\\'30"', '90°')
    """
    return angle_text(turns).replace('.00"', '"')


def claim_text(claim: Claim) -> str:
    """A setup as one person tells it to another.

    >>> claim_text(Claim("plain", turns=1, holes=20, circle=49))
    '1 turn and 20 spaces on the circle of 49'
    """
    if claim.method == "direct":
        return f"{counted(claim.holes, 'space')} on the direct circle of {claim.circle}"
    if claim.method == "dial":
        return f"{counted(claim.turns, 'turn')} and {_reading(claim)} by the dial"
    text = turns_and_spaces(claim.turns, claim.holes)
    if claim.holes:
        text += f" on the circle of {claim.circle}"
    if claim.second:
        way = "the same way" if claim.second.holes > 0 else "the opposite way"
        spaces = counted(abs(claim.second.holes), "space")
        text += f", then plate and crank together {spaces} {way} on the circle of {claim.second.circle}"
    return f"{text}, with {gears_text(claim.gearing)}" if claim.gearing else text


def gears_text(gearing: GearingClaim) -> str:
    """A train in words.

    >>> gears_text(GearingClaim(48, 28, None, 2))
    '48 on the spindle, 28 on the worm side and 2 idlers'
    """
    stud = f", {gearing.stud[0]} first and {gearing.stud[1]} second on the stud" if gearing.stud else ""
    idlers = counted(gearing.idlers, "idler") if gearing.idlers else "no idler"
    return f"{gearing.spindle} on the spindle{stud}, {gearing.worm} on the worm side and {idlers}"


def _reading(claim: Claim) -> str:
    if claim.divisions is not None:
        return lines_text(claim.divisions)
    return exact_angle((claim.reading or Angle(Fraction(0))).turns)
