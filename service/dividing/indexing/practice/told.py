"""What a pupil is told about an answer: the sentences of marking and of the summary."""

from __future__ import annotations

from ..head import Head
from ..setup import MethodName
from ..verifying import Verdict
from ..wording.figures import counted, mixed
from ..work import Divisions
from .blanks import SLIP_LABELS
from .exercise import KindName, PlateClaim, Task
from .phrases import exact_angle

SOMETHING_SERVES = "There is a setting that serves; look at the key."
NO_ARMS = "The arms stand over two holes at least: the one that the pin is in and the one that it goes to."
NAME_THE_SLIP = "Name the slip that was made; a setting alone does not say what went wrong."
KIND_TITLES: dict[KindName, str] = {
    "plain": "plain indexing",
    "angular": "angular indexing",
    "direct": "direct indexing",
    "which_plate": "choosing plate and circle",
    "sector_arms": "setting the sector arms",
    "compound": "compound indexing",
    "differential": "differential indexing",
    "dial": "setting by the dial",
    "find_the_slip": "finding the slip",
}
"""What is practised with each kind."""


def other_method(task: Task, by: MethodName) -> str:
    """The claim makes the work, but in another way than was asked for."""
    if task.none:
        return "That makes the work, but not by the method asked for."
    asked = {"plain": "one move on one circle", "compound": "two moves", "differential": "a geared plate"}
    return f"That makes the work, but the exercise asks for {KIND_TITLES[task.kind]}{_which(asked.get(by))}."


def _which(how: str | None) -> str:
    return f", {how}" if how else ""


def makes(task: Task, found: Verdict) -> list[str]:
    """What a claim makes where no slip explains it."""
    if found.step is None and found.error is not None:
        return ["The nearest holes are not all where the cuts belong."]
    if not found.step:
        return ["That does not turn the work at all."]
    if found.step == task.work.step:
        return ["The figures are right, but it cannot be set so on this head."]
    if isinstance(task.work, Divisions):
        made = 1 / found.step
        some = f"{mixed(made.numerator, made.denominator)} division{'' if made == 1 else 's'}"
        return [f"That makes {some}, not {task.work.count}."]
    return [
        f"That turns the work through {exact_angle(found.step)}, not {task.written or exact_angle(task.work.step)}."
    ]


def no_such_plate(head: Head) -> str:
    """A plate that the shop does not have."""
    return f"There {'is' if len(head.plates) == 1 else 'are'} {counted(len(head.plates), 'plate')}, counted from 1."


def not_on_that_plate(claim: PlateClaim, head: Head) -> str:
    """A circle that is not on the plate named."""
    where = [str(plate) for plate, face in enumerate(head.plates, 1) if claim.circle in face]
    other = f"it is on plate {' and '.join(where)}" if where else "it is on none of the plates"
    return f"Plate {claim.plate} has no circle of {claim.circle} holes; {other}."


def no_whole_spaces(task: Task, circle: int, needed: int, head: Head) -> str:
    """A circle on which the part of a turn is no whole number of spaces."""
    crank = head.ratio * task.work.step
    spaces = crank % 1 * circle
    return (
        f"The move is {mixed(crank.numerator, crank.denominator)} turns, which on {circle} would be "
        f"{mixed(spaces.numerator, spaces.denominator)} spaces; the circle must be a multiple of {needed}."
    )


def arms_mark(holes: int) -> str:
    """What arms over so many holes mark off."""
    return f"Arms over {counted(holes, 'hole')} mark off {counted(holes - 1, 'space')}."


def not_that_slip(slip: str) -> str:
    """A slip that does not explain what was set."""
    label = SLIP_LABELS[slip]
    return f"Not this: “{label}”. Undoing it does not give what was wanted."


def added_up(position: int, count: int) -> str:
    """Rounded steps added up by the dial."""
    return (
        f"You rounded one step and took it {position} times. Work every position from zero and round only what you "
        f"set: {position}/{count} of a turn."
    )
