"""Teeth on an end face: end and side mills, saw-tooth, V and straight clutches, and the tilt each needs.

N teeth, c the cutter's angle (of a V cutter the included one), a the spindle's elevation above the table:

    end and side mills   cos a = tan(360/N) cot c        edges square to the axis; N from 5
    saw-tooth clutch     cos a = tan(180/N) cot c        crests as steep as the bottoms, so that halves fit; N from 3
    V clutch             cos a = tan(90/N) cot(c/2)      the same, both sides inclined; N from 2

Each follows from the line in which the cutter's inclined plane meets the neighbouring tooth (general
mathematics). Past a product of 1 no tilt exists. Straight clutches have flanks in planes through the axis, so
they are not tilted.
"""

from __future__ import annotations

from math import acos, atan, ceil, degrees, pi, radians, sin, tan

from .sizes import MATHEMATICS, Number, Part, Size, check_range, check_word, refused, shown

FIELDS = {
    "teeth": "Number of teeth.",
    "form": '"end_mill", "side_mill", "saw_tooth", "v_clutch" or "straight".',
    "cutter_angle": "Angle of the cutter in degrees; of a V cutter the included one. Not for straight teeth.",
    "outer": "Outside diameter of the teeth (optional; needs unit).",
    "inner": "Inside diameter of straight teeth (optional; needs unit).",
    "unit": '"mm" or "in", with outer or inner.',
}
FORMS = ("end_mill", "side_mill", "saw_tooth", "v_clutch", "straight")
CHOICES = {"form": FORMS}
TILTED_METHODS = ("direct", "plain", "compound", "dial", "nearest")
TILTED_REASON = "With the spindle tilted the gears from spindle to plate do not mesh, so differential indexing is out."
_TURN = {"end_mill": 360, "side_mill": 360, "saw_tooth": 180, "v_clutch": 90}
_FEWEST = {"end_mill": 5, "side_mill": 5, "saw_tooth": 3, "v_clutch": 2, "straight": 2}
_WORDS = {
    "end_mill": "an end mill",
    "side_mill": "a side mill",
    "saw_tooth": "a saw-tooth clutch",
    "v_clutch": "a V clutch",
    "straight": "a straight clutch",
}


def end_teeth(
    *,
    teeth: int,
    form: str,
    unit: str = "mm",
    cutter_angle: Number | None = None,
    outer: Number | None = None,
    inner: Number | None = None,
) -> Part:
    """The tilt (`tilt`, degrees above the table) and the sizes. Raises `Refused` when no tilt exists.

    >>> round(end_teeth(teeth=12, form="end_mill", cutter_angle=70).tilt, 4)
    77.8695
    >>> end_teeth(teeth=5, form="straight").tilt is None
    True
    """
    check_word(form, "form", FORMS)
    if teeth < _FEWEST[form]:
        why = "one is no division" if _FEWEST[form] == 2 else "no tilt cuts fewer"
        raise refused(f"Give {_FEWEST[form]} teeth or more for {_WORDS[form]}: {why}.", "teeth")
    if form == "straight":
        return _straight(teeth, unit, outer, inner)
    if cutter_angle is None:
        raise refused(f"Give the angle of the cutter for {_WORDS[form]}.", "cutter_angle")
    widest = 179 if form == "v_clutch" else 89
    check_range(cutter_angle, "cutter_angle", 0, widest, "The angle of such a cutter")
    angle = elevation(teeth=teeth, form=form, cutter_angle=cutter_angle)
    sizes = [
        Size("Spindle above the table", angle, "degrees", MATHEMATICS, "cos of it = " + _formula(form)),
        Size("Bottom of the grooves from square to the axis", 90 - angle, "degrees", MATHEMATICS),
    ]
    if outer is not None:
        sizes += _heights(form, angle, outer, unit)
    return Part(
        "end_teeth",
        unit,
        tuple(sizes),
        divisions=teeth,
        tilt=angle,
        methods=TILTED_METHODS,
        methods_reason=TILTED_REASON,
        cautions=_cautions(form, angle),
        rim=float(outer) if outer is not None else None,
        drawing={"form": form, "teeth": teeth, "tilt": angle, "cutter_angle": float(cutter_angle)},
    )


def elevation(*, teeth: int, form: str, cutter_angle: Number) -> float:
    """The spindle's elevation above the table in degrees. Raises `Refused`, with what would do, without one.

    >>> round(elevation(teeth=12, form="v_clutch", cutter_angle=90), 4)
    82.4349
    """
    half = 2 if form == "v_clutch" else 1
    slope = tan(radians(_TURN[form] / teeth))
    cosine = slope / tan(radians(float(cutter_angle) / half))
    if cosine > 1 + 1e-12:
        least = half * degrees(atan(slope))
        raise refused(
            f"No tilt cuts {teeth} teeth of {_WORDS[form]} with a {float(cutter_angle):g}° cutter: take one "
            f"of {ceil(least * 10 - 1e-6) / 10:g}° or more, or more teeth.",
            "cutter_angle",
        )
    return degrees(acos(min(1.0, cosine)))


def _formula(form: str) -> str:
    cutter = "half the cutter angle" if form == "v_clutch" else "the cutter angle"
    return f"tan({_TURN[form]}°/N) × cot of {cutter}"


def _heights(form: str, angle: float, outer: Number, unit: str) -> list[Size]:
    fall = float(outer) / 2 * tan(radians(90 - angle))
    if form in ("end_mill", "side_mill"):
        return [Size("Depth at the outside, grooves running out in the axis", fall, unit, MATHEMATICS)]
    return [Size("Height of the teeth at the outside, cut to a point in the axis", 2 * fall, unit, MATHEMATICS)]


def _cautions(form: str, angle: float) -> tuple[str, ...]:
    found = []
    if angle < 45:
        found.append(
            f"The spindle stands only {angle:.1f}° above the table: make sure that head and work clear the arbor."
        )
    if form in ("end_mill", "side_mill"):
        found.append("Set the face of the teeth to the centre line first, and stop when a narrow land is left.")
    else:
        found.append("Cut a trial pair first: both halves must be cut at the same tilt to fit.")
    return tuple(found)


def _straight(teeth: int, unit: str, outer: Number | None, inner: Number | None) -> Part:
    if outer is not None and inner is not None and inner >= outer:
        raise refused("The inside diameter of the teeth is smaller than the outside: check both.", "inner")
    widest = None if inner is None else float(inner) / 2 * sin(pi / teeth)
    narrowest = None if outer is None else float(outer) / 2 * sin(pi / 2 / teeth)
    odd = teeth % 2 == 1
    passes = (teeth, "right across") if odd else (2 * teeth, "one side of a space each")
    sizes = [
        Size("Angle of a tooth and of a space", 180 / teeth, "degrees", MATHEMATICS),
        Size("Passes", passes[0], "", MATHEMATICS, passes[1]),
    ]
    if widest is not None:
        sizes.append(Size("Widest cutter", widest, unit, MATHEMATICS, "space at the inside, square to one flank"))
    if narrowest is not None:
        sizes.append(Size("Narrowest cutter that leaves no ridge", narrowest, unit, MATHEMATICS))
    return Part(
        "end_teeth",
        unit,
        tuple(sizes),
        divisions=teeth,
        methods=TILTED_METHODS,
        methods_reason=TILTED_REASON.replace("tilted", "upright"),
        cautions=_straight_cautions(odd, widest, narrowest, unit),
        rim=float(outer) if outer is not None else None,
        drawing={"form": "straight", "teeth": teeth},
    )


def _straight_cautions(odd: bool, widest: float | None, narrowest: float | None, unit: str) -> tuple[str, ...]:
    found = ["Straight flanks lie in planes through the axis: the spindle stands upright, without tilt."]
    if odd:
        found.append("An odd count is cut right across: one pass makes a flank on each side of the centre.")
    else:
        found.append(
            "An even count must not be cut across: stop each pass before the tooth opposite. An odd count is quicker."
        )
    if widest is not None and narrowest is not None and narrowest > widest:
        found.append(f"No cutter clears a space in two passes: one of {shown(widest, unit)} leaves a ridge.")
    return tuple(found)
