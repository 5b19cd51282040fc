"""What is said of a plate made in the shop: what becomes of its errors, and what to watch when drilling it."""

from __future__ import annotations

from ..setup import Setup
from ..wording.figures import counted, seconds_text
from .drilling import Drilling
from .left import Left

DRILLING = (
    "Stop the drill, and have it clear of the plate, before you index.",
    "Spot every hole all the way round and count the spots before you drill through; clamp the spindle for each.",
    "Mark the first hole: the work is begun in it.",
)
"""Common practice; they come before the cautions that go with every answer."""
WORM = "The error of the head's own worm is not divided: it enters the work in full, with this plate as with any other."


def notes(plate: Drilling, left: Left) -> list[str]:
    """Which part of the errors the ratio divides and which it does not, in plain words.

    >>> from ..head import Head
    >>> from .drilling import drilling
    >>> from .left import left_in
    >>> plate = drilling(51, Head(), circles=1)
    >>> print(notes(plate, left_in(102, plate))[0])
    Used on this head, the plate's own errors are divided by 40: a hole 324.13" off puts the work 8.10" off.
    """
    ratio = plate.head.ratio
    told = [_own(plate, ratio), WORM]
    if _through_the_worm(plate.setup) and ratio > 1:
        told.append(
            f"The worm moved the plate when it was drilled, so its error is in the plate too; that share is divided by "
            f"{ratio}."
        )
    if left.at_most and left.total_pitch:
        told.append(
            f"Begun in another hole than the first, work can be up to {seconds_text(left.total_pitch)} off instead."
        )
    return told


def _own(plate: Drilling, ratio: int) -> str:
    worst = max(map(abs, plate.errors))
    if ratio == 1:
        return "One turn of the crank is one turn of the work: nothing is divided, the plate's errors enter in full."
    if not worst:
        return (
            f"The head puts all {counted(plate.holes, 'hole')} exactly. What the drill adds of its own is divided by "
            f"{ratio} when the plate is used on this head."
        )
    return (
        f"Used on this head, the plate's own errors are divided by {ratio}: a hole {seconds_text(worst)} off puts the "
        f"work {seconds_text(worst / ratio)} off."
    )


def _through_the_worm(setup: Setup) -> bool:
    """The crank or the handwheel moved the spindle, not a pin in the direct plate."""
    return setup.move is None or setup.move.plate is not None
