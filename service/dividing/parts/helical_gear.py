"""A helical gear: its tooth in the normal and the transverse plane, its lead, and the gears for it."""

from __future__ import annotations

from math import atan, cos, degrees, pi, radians, sin, tan

from .gear_sizes import (
    DEPTHS,
    METRIC,
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
from .lead_block import HELIX_METHODS, HELIX_REASON, lead_block, lead_cautions
from .lead_gearing import HANDS, GearedHead
from .sizes import MATHEMATICS, Number, Part, Size, check_word, in_millimetres, refused

CHOICES = {**TOOTH_CHOICES, "plane": ("normal", "transverse"), "hand": HANDS}
FIELDS = {
    "teeth": "Number of teeth.",
    **PITCH_FIELDS,
    "plane": 'Plane in which module, pressure angle and shift are meant: "normal" (usual) or "transverse".',
    "helix_angle": "Helix angle at the pitch circle in degrees, measured from the axis.",
    "hand": '"right" or "left".',
    **TOOTH_FIELDS,
    "pin": "Diameter of the measuring balls (1.728 modules, where they seat).",
}


def helical_gear(
    *,
    teeth: int,
    unit: str,
    helix_angle: Number,
    hand: str,
    head: GearedHead | None = None,
    module: Number | None = None,
    diametral_pitch: Number | None = None,
    plane: str = "normal",
    pressure_angle: Number = 20,
    profile_shift: Number = 0,
    whole_depth: str = "2.25",
    pin: Number | None = None,
) -> Part:
    """Sizes of a helical gear in both planes, lead, formative teeth, table angle and lead gearing.

    Raises `Refused` as a spur gear does.

    >>> part = helical_gear(teeth=30, unit="mm", module=2, helix_angle=15, hand="right")
    >>> [size.text for size in part.sizes if size.name == "Lead"]
    ['728.291 mm']
    """
    _check(helix_angle, hand, plane, pressure_angle, whole_depth)
    given = module_in_unit(unit, module, diametral_pitch)
    gear = _toothing(teeth, given, radians(helix_angle), plane, pressure_angle, profile_shift, whole_depth)
    check_tooth(gear)
    lead = lead_block(pi * gear.pitch / tan(gear.helix), gear.pitch, unit, hand, head, teeth)
    blank = [*pitch_sizes(gear, unit), *blank_sizes(gear, unit, *depth_words(whole_depth))]
    return Part(
        "helical_gear",
        unit,
        (*blank, *_helix_sizes(gear, unit), *measuring_sizes(gear, unit, pin), *cutter_sizes(gear.formative)),
        divisions=teeth,
        lead=lead,
        methods=HELIX_METHODS,
        methods_reason=HELIX_REASON,
        cautions=(
            *tooth_cautions(gear, unit, plane),
            *cutter_cautions(gear.formative),
            *lead_cautions(lead, float(helix_angle), hand, head),
        ),
        rim=gear.tip,
        pitch_circle=gear.pitch,
        drawing={**gear_drawing(gear), "helix_angle": float(helix_angle), "hand": hand},
    )


def _check(helix_angle: Number, hand: str, plane: str, pressure_angle: Number, whole_depth: str) -> None:
    check_tooth_fields(pressure_angle, whole_depth)
    check_word(plane, "plane", CHOICES["plane"])
    check_word(hand, "hand", HANDS)
    if not 0 < helix_angle < 90:
        sentence = "A helix angle lies between 0° and 90° from the axis; for straight teeth take a spur gear."
        raise refused(sentence, "helix_angle")


def _toothing(
    teeth: int, module: float, helix: float, plane: str, pressure: Number, shift: Number, whole_depth: str
) -> Toothing:
    # What was meant in the transverse plane becomes the normal plane's; depths follow the module given.
    squeeze = cos(helix) if plane == "transverse" else 1.0
    return Toothing(
        teeth,
        module * squeeze,
        atan(tan(radians(pressure)) * squeeze),
        helix,
        float(shift) / squeeze,
        addendum=1 / squeeze,
        depth=DEPTHS[whole_depth][0] / squeeze,
    )


def _helix_sizes(gear: Toothing, unit: str) -> list[Size]:
    transverse = float(in_millimetres(gear.module, unit)) / cos(gear.helix)
    return [
        Size("Transverse module", transverse, "mm", METRIC, "normal module / cos of the helix angle"),
        Size("Normal pressure angle", degrees(gear.pressure), "degrees", METRIC),
        Size("Transverse pressure angle", degrees(gear.transverse_pressure), "degrees", METRIC),
        Size("Helix angle", degrees(gear.helix), "degrees", MATHEMATICS, "from the axis, at the pitch circle"),
        Size(
            "Lead",
            pi * gear.teeth * gear.module / sin(gear.helix),
            unit,
            MATHEMATICS,
            "π z m / sin of the helix angle",
        ),
        Size(
            "Table angle",
            degrees(gear.helix),
            "degrees",
            MATHEMATICS,
            "swivel to this, the way the hand asks",
        ),
        Size(
            "Formative teeth",
            gear.formative,
            "",
            METRIC,
            "z / cos³ of the helix angle, for the choice of the cutter",
        ),
    ]
