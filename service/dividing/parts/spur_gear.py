"""A spur gear: blank, tooth, cutter and the ways to measure it."""

from __future__ import annotations

from fractions import Fraction
from math import radians

from .gear_sizes import (
    DEPTHS,
    PITCH_FIELDS,
    TOOTH_CHOICES,
    TOOTH_FIELDS,
    blank_sizes,
    check_tooth,
    check_tooth_fields,
    cutter_cautions,
    cutter_sizes,
    depth_words,
    gear_drawing,
    measuring_sizes,
    module_in_unit,
    pitch_sizes,
    tooth_cautions,
)
from .involute import Toothing
from .sizes import INCH, Number, Part, one_of

CHOICES = TOOTH_CHOICES
FIELDS = {
    "teeth": "Number of teeth.",
    **PITCH_FIELDS,
    "outside_diameter": "Instead of a pitch: outside diameter of the gear to copy, without profile shift.",
    **TOOTH_FIELDS,
    "pin": "Diameter of the measuring pins (1.728 modules, where they seat).",
}


def spur_gear(
    *,
    teeth: int,
    unit: str,
    module: Number | None = None,
    diametral_pitch: Number | None = None,
    outside_diameter: Number | None = None,
    pressure_angle: Number = 20,
    profile_shift: Number = 0,
    whole_depth: str = "2.25",
    pin: Number | None = None,
) -> Part:
    """Sizes of a spur gear. A module is in millimetres, a diametral pitch per inch, whatever the `unit`.

    Raises `Refused` for teeth that cannot exist and for a pin that does not seat; undercut is only warned of.

    >>> gear = spur_gear(teeth=24, unit="in", diametral_pitch=8, whole_depth="2.157")
    >>> sizes = {size.name: size.text for size in gear.sizes}
    >>> sizes["Outside diameter"], sizes["Whole depth"], sizes["Form cutter"]
    ('3.2500 in', '0.2696 in', '5')
    """
    check_tooth_fields(pressure_angle, whole_depth)
    one_of(module=module, diametral_pitch=diametral_pitch, outside_diameter=outside_diameter)
    if outside_diameter is not None:
        module = module_from_outside(teeth=teeth, outside_diameter=outside_diameter, unit=unit)
    gear = Toothing(
        teeth,
        module_in_unit(unit, module, diametral_pitch),
        radians(pressure_angle),
        shift=float(profile_shift),
        depth=DEPTHS[whole_depth][0],
    )
    check_tooth(gear)
    blank = [*pitch_sizes(gear, unit), *blank_sizes(gear, unit, *depth_words(whole_depth))]
    return Part(
        "spur_gear",
        unit,
        (*blank, *measuring_sizes(gear, unit, pin), *cutter_sizes(teeth)),
        divisions=teeth,
        cautions=(*tooth_cautions(gear, unit), *cutter_cautions(teeth)),
        rim=gear.tip,
        pitch_circle=gear.pitch,
        drawing=gear_drawing(gear),
    )


def module_from_outside(*, teeth: int, outside_diameter: Number, unit: str) -> Fraction:
    """The module in millimetres of an unshifted gear found by its outside diameter: Da / (z + 2).

    >>> module_from_outside(teeth=28, outside_diameter=45, unit="mm")
    Fraction(3, 2)
    """
    module = Fraction(outside_diameter) / (teeth + 2)
    return module * INCH if unit == "in" else module
