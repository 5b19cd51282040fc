"""What is being made: each kind of part with the words for its fields and the function that works it out.

Every kind is a file of its own; a new one joins here and has a schema in the web package.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from . import bevel_gear, bolt_circle, dial, end_teeth, flats, helical_gear, helix, reamer, spline, spur_gear
from .sizes import Part, Size


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of part: what it is, its fields in words, its maker, whether that is given the head, and the words
    that a field chooses from.

    The maker takes the fields as keyword arguments (`round` as `stock`), and `head` where `takes_head` says
    so.
    """

    title: str
    fields: Mapping[str, str]
    make: Callable[..., Part]
    takes_head: bool = False
    choices: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


KINDS: dict[str, Kind] = {
    "flats": Kind("Flats on round stock", flats.FIELDS, flats.flats),
    "bolt_circle": Kind("Holes on a circle", bolt_circle.FIELDS, bolt_circle.bolt_circle, choices=bolt_circle.CHOICES),
    "spur_gear": Kind("Spur gear", spur_gear.FIELDS, spur_gear.spur_gear, choices=spur_gear.CHOICES),
    "helical_gear": Kind(
        "Helical gear", helical_gear.FIELDS, helical_gear.helical_gear, takes_head=True, choices=helical_gear.CHOICES
    ),
    "helix": Kind("Flutes, worm or cam on a helix", helix.FIELDS, helix.helix, takes_head=True, choices=helix.CHOICES),
    "dial": Kind("Graduated dial or straight scale", dial.FIELDS, dial.dial, takes_head=True, choices=dial.CHOICES),
    "spline": Kind("Splined shaft", spline.FIELDS, spline.spline, choices=spline.CHOICES),
    "end_teeth": Kind("Teeth on an end face", end_teeth.FIELDS, end_teeth.end_teeth, choices=end_teeth.CHOICES),
    "bevel_gear": Kind("Bevel gear or pair", bevel_gear.FIELDS, bevel_gear.bevel_gear, choices=bevel_gear.CHOICES),
    "reamer": Kind("Unequally spaced flutes", reamer.FIELDS, reamer.reamer, takes_head=True),
}

__all__ = ["KINDS", "Kind", "Part", "Size"]
