"""What every involute gear shares: the pitch it is given in, the depth convention, sizes and warnings."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, cos, degrees, sin

from .form_cutters import SOURCE as CUTTER_SOURCE
from .form_cutters import form_cutter
from .involute import USUAL_PIN, Toothing
from .sizes import (
    INCH,
    MATHEMATICS,
    PRACTICE,
    RECALLED,
    Number,
    Plain,
    Size,
    check_range,
    check_word,
    in_millimetres,
    in_unit,
    one_of,
    refused,
    shown,
)

NAVY = "US Navy training course 14345, AIV-2"
METRIC = "Elements of Metric Gear Technology, tables 10-3 and 10-4"
DEPTHS = {
    "2.25": (2.25, PRACTICE),
    "2.157": (2.157, NAVY),
    "2.166": (2.166, "Brazilian trade-course lesson 12, spur-gear calculations"),
}
"""Whole depth in modules by its convention, with the source."""

PITCH_FIELDS = {
    "module": "Module in millimetres. Give it or diametral_pitch.",
    "diametral_pitch": "Diametral pitch, teeth per inch of pitch diameter.",
}
TOOTH_FIELDS = {
    "pressure_angle": "Pressure angle in degrees (20); 14.5 is met on older gears.",
    "profile_shift": "Profile shift in modules (0).",
    "whole_depth": 'Convention of the whole depth: "2.25" (usual), "2.157" (older) or "2.166", in modules.',
    "unit": '"mm" or "in": the unit of the sizes that come back.',
}


TOOTH_CHOICES = {"whole_depth": tuple(DEPTHS)}


def check_tooth_fields(pressure_angle: Number, whole_depth: str) -> None:
    """Raise `Refused` for a pressure angle that no tooth has, or a depth convention that is not known.

    >>> check_tooth_fields(20, "2.25")
    """
    check_range(pressure_angle, "pressure_angle", 0, 45, "A pressure angle")
    check_word(whole_depth, "whole_depth", TOOTH_CHOICES["whole_depth"])


def module_in_unit(unit: str, module: Number | None, diametral_pitch: Number | None) -> float:
    """The module as a length in the unit asked for, from whichever of the two was given.

    >>> module_in_unit("in", None, 8), module_in_unit("mm", None, Fraction(254, 10))
    (0.125, 1.0)
    """
    one_of(module=module, diametral_pitch=diametral_pitch)
    if diametral_pitch is not None:
        module = INCH / Fraction(diametral_pitch)
    return float(in_unit(Fraction(module or 0), unit))


def check_tooth(gear: Toothing, field: str = "profile_shift") -> None:
    """Raise `Refused` for impossible teeth: cut through the axis, without a flank, pointed below the tip.

    `field` is the one that sets where the teeth end.

    >>> check_tooth(Toothing(24, 3.0, pressure=0.35))
    """
    if gear.root <= 0:
        raise refused(f"Teeth of this depth would meet in the axis: {gear.teeth} teeth are too few.", "teeth")
    if gear.tip <= gear.base:
        raise refused(f"The teeth end below the base circle and have no flank: give a larger {field}.", field)
    if gear.half_angle(gear.tip) <= 0:
        raise refused(f"The teeth come to a point below the outside diameter: give a smaller {field}.", field)


def pitch_sizes(gear: Toothing, unit: str) -> list[Size]:
    """Module and diametral pitch (both, in the normal plane), whichever was given."""
    module = float(in_millimetres(gear.module, unit))
    plane = "Normal module" if gear.helix else "Module"
    other = "Normal diametral pitch" if gear.helix else "Diametral pitch"
    return [
        Size(plane, module, "mm", MATHEMATICS, "always in millimetres"),
        Size(other, float(INCH) / module, "", MATHEMATICS, "25.4 / module"),
    ]


def depth_words(whole_depth: str) -> tuple[str, str]:
    """The note that names a convention of the whole depth, and its source.

    >>> depth_words("2.25")
    ('2.25 m = 2.25 / P, the convention chosen', 'common practice')
    """
    return f"{whole_depth} m = {whole_depth} / P, the convention chosen", DEPTHS[whole_depth][1]


def blank_sizes(gear: Toothing, unit: str, convention: str, depth_source: str) -> list[Size]:
    """Diameters of the blank, heights and thickness of the tooth."""
    module = gear.module
    addendum, depth = module * (gear.addendum + gear.shift), module * gear.depth
    return [
        Size("Outside diameter", gear.tip, unit, NAVY if not gear.helix else METRIC),
        Size("Pitch diameter", gear.pitch, unit, NAVY if not gear.helix else METRIC),
        Size("Root diameter", gear.root, unit, MATHEMATICS),
        Size("Base diameter", gear.base, unit, MATHEMATICS),
        Size("Addendum", addendum, unit, NAVY),
        Size("Dedendum", depth - addendum, unit, depth_source),
        Size("Whole depth", depth, unit, depth_source, convention),
        Size(
            "Tooth thickness along the pitch circle",
            gear.thickness,
            unit,
            MATHEMATICS,
            "an arc; normal to the tooth",
        ),
    ]


def measuring_sizes(gear: Toothing, unit: str, pin: Number | None) -> list[Size]:
    """Chordal thickness and addendum, span and pins. Raises `Refused` for a pin given that does not seat."""
    chord, height = gear.chordal()
    found = [
        Size("Chordal thickness", chord, unit, METRIC, "gear-tooth caliper, set to the chordal addendum"),
        Size("Chordal addendum", height, unit, METRIC),
    ]
    return found + _span_sizes(gear, unit) + _pin_sizes(gear, unit, pin)


def _span_sizes(gear: Toothing, unit: str) -> list[Size]:
    teeth = gear.span_teeth()
    if teeth >= gear.teeth or gear.span_touches_at(teeth) >= gear.tip:
        return []
    found = [
        Size(
            f"Span over {teeth} teeth",
            gear.span(teeth),
            unit,
            MATHEMATICS,
            "plate calipers or micrometer with discs",
        )
    ]
    if gear.helix:
        needed = gear.span(teeth) * sin(gear.base_helix)
        found.append(Size("Face width that the span needs", needed, unit, MATHEMATICS, "and a little more"))
    return found


def _pin_sizes(gear: Toothing, unit: str, given: Number | None) -> list[Size]:
    pin, source = _usual_pin(gear) if given is None else (float(given), "as given")
    over = None if pin is None else gear.over_pins(pin)
    if given is not None and over is None:
        raise refused(_unseated(gear, unit, given), "pin")
    if pin is None or over is None:
        return []
    kind = "balls" if gear.helix else "pins"
    across = "in opposite spaces" if gear.teeth % 2 == 0 else "in the two spaces most nearly opposite"
    return [
        Size(f"Diameter of the {kind}", pin, unit, source),
        Size(f"Over two {kind}", over, unit, MATHEMATICS, across),
    ]


def _usual_pin(gear: Toothing) -> tuple[float | None, str]:
    # The usual pin with its source, or where it does not seat the one that touches near the pitch circle.
    usual = gear.module * USUAL_PIN
    return (usual, RECALLED) if gear.over_pins(usual) is not None else (gear.ideal_pin(), MATHEMATICS)


def _unseated(gear: Toothing, unit: str, given: Number) -> str:
    sentence = f"A pin of {shown(given, unit)} does not seat on the flanks of this tooth"
    ideal = gear.ideal_pin()
    if ideal is None or gear.over_pins(ideal) is None:
        return f"{sentence}: try another."
    return f"{sentence}: try one near {shown(ideal, unit)}."


def cutter_sizes(teeth: float) -> list[Size]:
    """The form cutter with its range beside the number; nothing when the sets have none.

    >>> cutter_sizes(24)[0].value
    5
    """
    cutter = form_cutter(teeth)
    return [Size("Form cutter", cutter.number, "", CUTTER_SOURCE, cutter.note)] if cutter else []


def tooth_cautions(gear: Toothing, unit: str, plane: str = "normal") -> list[str]:
    """Sentences about undercut and a thin tip; pressure angle and shift are told in the plane named."""
    found = []
    needed = gear.addendum * (1 - gear.teeth / gear.least_unshifted)
    if gear.shift < needed - 1e-9:
        least = ceil(gear.least_unshifted * (1 - gear.shift / gear.addendum) - 1e-9)
        across = plane == "transverse"
        pressure, shift = (gear.transverse_pressure, needed * cos(gear.helix)) if across else (gear.pressure, needed)
        where = f" in the {plane} plane" if gear.helix else ""
        found.append(
            f"{gear.teeth} teeth at {degrees(pressure):g}°{where} are undercut by a rack-shaped cutter; from "
            f"{least} teeth, or with a profile shift of {ceil(1000 * shift - 1e-6) / 1000:.3f} or more, they are not."
        )
    tip = gear.half_angle(gear.tip) * gear.tip * cos(gear.helix)
    if tip < 0.2 * gear.module:
        found.append(f"The tooth is only {shown(tip, unit)} thick at the tip: a hardened gear may chip there.")
    return found


def cutter_cautions(teeth: float) -> list[str]:
    """A sentence where no form cutter is made for so few (formative) teeth.

    >>> cutter_cautions(11)
    ['No form cutter of the usual sets is made for fewer than 12 teeth: generate these teeth.']
    """
    if form_cutter(teeth):
        return []
    return ["No form cutter of the usual sets is made for fewer than 12 teeth: generate these teeth."]


def gear_drawing(gear: Toothing) -> dict[str, Plain]:
    """For a picture: the circles, and a flank from root to tip as [radius, half the tooth's angle]."""
    flank: list[Plain] = [[radius, half] for radius, half in gear.flank()]
    circles = {"outside": gear.tip, "pitch": gear.pitch, "base": gear.base, "root": gear.root}
    return {"teeth": gear.teeth, **circles, "flank": flank}
