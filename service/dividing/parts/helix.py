"""A helix by itself: flutes, worms, cams and oil grooves, as many starts as wanted."""

from __future__ import annotations

from math import pi, radians, tan

from .lead_block import HELIX_METHODS, HELIX_REASON, angle_at, lead_block, lead_cautions
from .lead_gearing import HANDS, GearedHead
from .sizes import MATHEMATICS, Number, Part, Size, check_word, one_of, refused

ROSE = "Modern Machine-Shop Practice (Joshua Rose), on fig. 1978"
HOBS = "Turning and Boring (F. D. Jones), spiral-fluted hob"

CHOICES = {"hand": HANDS}
FIELDS = {
    "starts": "Number of starts: flutes, threads of a worm, lobes of a cam.",
    "diameter": "Diameter at which the helix angle is wanted.",
    "lead": "Advance along the axis in one turn. Give it, `helix_angle` or `thread_lead`.",
    "helix_angle": "Helix angle at that diameter in degrees, measured from the axis.",
    "thread_lead": "Lead of a thread (of a hob, at its pitch diameter) that the flutes cross squarely.",
    "hand": '"right" or "left"; flutes square to a right-hand thread are left-hand.',
    "unit": '"mm" or "in".',
}


def helix(
    *,
    starts: int,
    diameter: Number,
    unit: str,
    hand: str,
    head: GearedHead | None = None,
    lead: Number | None = None,
    helix_angle: Number | None = None,
    thread_lead: Number | None = None,
) -> Part:
    """Lead, angle and lead gearing of a helix given by its lead, its angle, or the thread it crosses.

    >>> part = helix(starts=4, diameter=25, unit="mm", hand="right", helix_angle=45)
    >>> [size.text for size in part.sizes[:2]]
    ['78.540 mm', '19.635 mm']
    """
    check_word(hand, "hand", HANDS)
    wanted, source = _lead(diameter, lead, helix_angle, thread_lead)
    angle = angle_at(float(wanted), float(diameter))
    block = lead_block(wanted, float(diameter), unit, hand, head, starts)
    sizes = (
        Size("Lead", float(wanted), unit, source),
        Size("From start to start along the axis", float(wanted / starts), unit, MATHEMATICS, "lead / starts"),
        Size("Helix angle", angle, "degrees", ROSE, "from the axis: tan = π d / lead"),
        Size("Table angle", angle, "degrees", MATHEMATICS, "swivel to this, the way the hand asks"),
        Size(
            "From start to start round the work",
            pi * float(diameter) / starts,
            unit,
            MATHEMATICS,
            "π d / starts",
        ),
    )
    return Part(
        "helix",
        unit,
        sizes,
        divisions=starts,
        lead=block,
        methods=HELIX_METHODS,
        methods_reason=HELIX_REASON,
        cautions=lead_cautions(block, angle, hand, head),
        rim=float(diameter),
        drawing={"starts": starts, "diameter": float(diameter), "lead": float(wanted), "hand": hand},
    )


def _lead(diameter: Number, lead: Number | None, angle: Number | None, thread: Number | None) -> tuple[Number, str]:
    one_of(lead=lead, helix_angle=angle, thread_lead=thread)
    if lead is not None:
        return lead, "as given"
    if angle is not None:
        if not 0 < angle < 90:
            raise refused("A helix angle lies between 0° and 90° from the axis, neither included.", "helix_angle")
        return pi * float(diameter) / tan(radians(angle)), ROSE
    return square_lead(diameter=diameter, thread_lead=thread or 1), HOBS


def square_lead(*, diameter: Number, thread_lead: Number) -> float:
    """Lead of flutes square to a thread: circumference squared over the thread's lead.

    Source: Turning and Boring (F. D. Jones), spiral-fluted hob, whose example it rounds to 14.

    >>> round(square_lead(diameter=3.25 / pi, thread_lead=0.75), 4)
    14.0833
    """
    return float((pi * float(diameter)) ** 2 / thread_lead)
