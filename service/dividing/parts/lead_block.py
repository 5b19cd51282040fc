"""The `lead` of an answer: the lead wanted, the gears that come nearest, and what to know of them."""

from __future__ import annotations

from fractions import Fraction
from math import atan, degrees, pi

from .lead_gearing import GearedHead, LeadTrain, lead_of_machine, nearest_ratios, trains
from .short_lead import by_spindle
from .sizes import Lead, Number, shown

HELIX_METHODS = ("plain", "nearest")
"""The methods of indexing that leave the train and the worm alone."""
HELIX_REASON = (
    "While a helix is cut the table screw drives the plate through the change gears and the worm stays in "
    "mesh, so compound, differential, dial and direct indexing cannot be combined with it."
)
ORDERS_SHOWN, OTHERS_SHOWN = 12, 4
MUCH_OFF = 1
"""Per cent of the lead past which other gears are advised."""


def lead_block(wanted: Number, diameter: float, unit: str, hand: str, head: GearedHead | None, starts: int = 1) -> Lead:
    """The lead gearing as plain values: lengths in `unit`, angles in degrees, errors achieved less wanted.

    Angles are those at `diameter`. `gearing` is the best train, `orders` every order of gears with that lead,
    `others` the next nearest leads. Without change gears or a table screw only `wanted` and the angle are
    known; the rest is null.

    >>> from dividing.indexing.head import TWELVE_GEARS, Head, Screw
    >>> head = Head(change_gears=TWELVE_GEARS, screw=Screw(Fraction(5), "mm"))
    >>> lead = lead_block(728.2909, 62.1166, "mm", "right", head)
    >>> lead["gearing"]
    {'worm': 100, 'first_stud': 24, 'second_stud': 56, 'screw': 64, 'idlers': 0, 'clears': True}
    >>> round(lead["achieved"], 4), round(lead["helix_angle"], 4)
    (729.1667, 14.9828)
    """
    block: Lead = {
        "wanted": float(wanted),
        "unit": unit,
        "hand": hand,
        "gearing": None,
        "train": None,
        "achieved": None,
        "error": None,
        "error_percent": None,
        "helix_angle": angle_at(float(wanted), diameter),
        "angle_error": None,
        "lead_of_machine": None,
        "orders": [],
        "others": [],
        "by_spindle": None,
    }
    if head is None or head.screw is None:
        return block
    machine = lead_of_machine(head.ratio, head.screw, unit)
    target = Fraction(wanted)
    ratios = nearest_ratios(head.change_gears, target / machine, OTHERS_SHOWN + 1, hand)
    block["lead_of_machine"] = float(machine)
    if ratios:
        block |= _best(ratios, machine, target, diameter, hand, head.change_gears)
        if target < machine and abs(block["error_percent"]) > MUCH_OFF:
            block["by_spindle"] = by_spindle(target, starts, head.screw, unit, head.change_gears)
    return block


def _best(
    ratios: tuple[Fraction, ...],
    machine: Fraction,
    target: Fraction,
    diameter: float,
    hand: str,
    gears: tuple[int, ...],
) -> Lead:
    found = [_figures(ratio, machine, target, diameter, trains(gears, ratio, hand)[0], hand) for ratio in ratios]
    orders = [_plain(train, hand) for train in trains(gears, ratios[0], hand)[:ORDERS_SHOWN]]
    return {**found[0], "orders": orders, "others": found[1:]}


def _figures(
    ratio: Fraction, machine: Fraction, target: Fraction, diameter: float, train: LeadTrain, hand: str
) -> Lead:
    achieved = ratio * machine
    angle = angle_at(float(achieved), diameter)
    return {
        "gearing": _plain(train, hand),
        "train": str(ratio),
        "achieved": float(achieved),
        "error": float(achieved - target),
        "error_percent": float((achieved / target - 1) * 100),
        "helix_angle": angle,
        "angle_error": angle - angle_at(float(target), diameter),
    }


def _plain(train: LeadTrain, hand: str) -> dict[str, int | None]:
    first, second = train.stud or (None, None)
    return {
        "worm": train.worm,
        "first_stud": first,
        "second_stud": second,
        "screw": train.screw,
        "idlers": train.idlers(hand),
        "clears": train.clears,
    }


def angle_at(lead: float, diameter: float) -> float:
    """Helix angle in degrees from the axis: tan = pi d / lead.

    Source: A Practical Treatise on Milling and Milling Machines, 1914, p. 64.

    >>> round(angle_at(200, 200 / pi), 9)
    45.0
    """
    return degrees(atan(pi * diameter / lead))


def lead_cautions(lead: Lead, angle: float, hand: str, head: GearedHead | None) -> tuple[str, ...]:
    """Sentences that belong beside a lead: what is missing or far off, and how to make sure of the hand."""
    found = [HELIX_REASON]
    if angle > 45:
        found.append("Few tables swivel past 45°: at this helix angle swivel the cutter head instead.")
    if lead["gearing"] is None:
        return (*found, _missing(head, hand))
    found.append(
        f"Turn the crank by hand and watch the table and the work before cutting: if the helix would not be "
        f"{hand}-hand, add or take away one idler. The size of an idler changes nothing but the hand."
    )
    percent = lead["error_percent"]
    if abs(percent) > MUCH_OFF:
        achieved = shown(lead["achieved"], lead["unit"])
        found.append(f"The nearest lead these gears give is {achieved}, {percent:+.1f} % off: own other gears.")
    if not lead["gearing"]["clears"]:
        found.append("No order of these gears is sure to clear the studs: try the fit, or take one of the other leads.")
    if lead["by_spindle"]:
        found.append(_short(lead["by_spindle"], lead["unit"]))
    return tuple(found)


def _short(train: Lead, unit: str) -> str:
    achieved = shown(train["achieved"], unit)
    return (
        f"So short a lead is geared straight to the spindle, with the worm out of mesh: {train['spindle']} on the "
        f"spindle gives {achieved}. Index by slipping {train['teeth_per_index']} of its teeth at a time; try the hand."
    )


def _missing(head: GearedHead | None, hand: str) -> str:
    if head is None or head.screw is None:
        return "Give the table screw (head.screw) and the change gears to have the lead gearing worked out."
    if not head.change_gears:
        return "Give the change gears that you own (head.change_gears) to have the lead gearing worked out."
    return f"Too few change gears for a {hand}-hand helix: a train takes two or four, and its idlers."
