"""A splined shaft: straight-sided keys cut in double passes, or involute stub teeth by the gear formulas."""

from __future__ import annotations

from math import asin, cos, degrees, pi, radians, sin, sqrt

from .gear_sizes import (
    PITCH_FIELDS,
    blank_sizes,
    check_tooth,
    gear_drawing,
    measuring_sizes,
    module_in_unit,
    pitch_sizes,
)
from .involute import Toothing
from .sizes import MATHEMATICS, RECALLED, Number, Part, Size, check_range, check_word, refused, shown

CHOICES = {"form": ("straight", "involute")}
FIELDS = {
    "form": '"straight" (usual) or "involute".',
    "teeth": "Number of keys or teeth.",
    "major": "Diameter over the keys.",
    "minor": "Diameter at the bottom of the spaces.",
    "width": "Width of a straight key.",
    "cutter": "Thickness of the side mill or saw for straight keys (optional).",
    **PITCH_FIELDS,
    "pressure_angle": "Pressure angle of involute teeth in degrees (30).",
    "pin": "Diameter of the measuring pins for involute teeth.",
    "unit": '"mm" or "in".',
}


def spline(
    *,
    teeth: int,
    unit: str,
    form: str = "straight",
    major: Number | None = None,
    minor: Number | None = None,
    width: Number | None = None,
    cutter: Number | None = None,
    module: Number | None = None,
    diametral_pitch: Number | None = None,
    pressure_angle: Number = 30,
    pin: Number | None = None,
) -> Part:
    """Sizes of a splined shaft. Straight keys need major, minor and width; involute teeth a pitch.

    Involute teeth without major and minor get the stub proportions: half a module above and below the pitch
    circle.

    >>> part = spline(teeth=6, unit="mm", major=28, minor=23, width=6, cutter=5)
    >>> [size.text for size in part.sizes if size.name == "Cross-feed between the two passes"]
    ['11.000 mm']
    """
    check_word(form, "form", CHOICES["form"])
    if teeth < 2:
        raise refused("A splined shaft has 2 keys or more.", "teeth")
    if form == "involute":
        check_range(pressure_angle, "pressure_angle", 0, 45, "A pressure angle")
        return _involute(teeth, unit, module_in_unit(unit, module, diametral_pitch), pressure_angle, major, minor, pin)
    missing = [name for name, value in (("major", major), ("minor", minor), ("width", width)) if value is None]
    if major is None or minor is None or width is None:
        raise refused(f"Give the {' and the '.join(missing)} of straight keys.", missing[0])
    return _straight(teeth, unit, float(major), float(minor), float(width), cutter)


def _straight(teeth: int, unit: str, over: float, under: float, key: float, cutter: Number | None) -> Part:
    _check(teeth, over, under, key, unit)
    widest = widest_cutter(teeth=teeth, major=over, minor=under, width=key)
    if widest is not None and cutter is not None and cutter >= widest:
        sentence = f"A cutter {shown(cutter, unit)} thick would cut into the next key"
        raise refused(f"{sentence}: take one under {shown(widest, unit)}.", "cutter")
    sizes = [*_angles(teeth, over, under, key), *_lengths(teeth, over, under, key, unit)]
    return Part(
        "spline",
        unit,
        (*sizes, *_passes(key, cutter, widest, unit)),
        divisions=teeth,
        cautions=(
            "Cut one side of all the keys, then set over and cut the other side of all; measure the first "
            "key before going round.",
        ),
        rim=over,
        drawing={"form": "straight", "teeth": teeth, "major": over, "minor": under, "width": key},
    )


def widest_cutter(*, teeth: int, major: float, minor: float, width: float) -> float | None:
    """Thickness at which a cutter set to one key would touch the next; None where it passes above that.

    With the key upright, the cutter's outer corner stands at (w/2 + T, y), y being the height of the key's
    foot. The side of the next key runs through (s sin p - w/2 cos p, s cos p + w/2 sin p), p the angle from
    key to key.

    >>> round(widest_cutter(teeth=16, major=60, minor=52, width=5), 3)
    5.514
    >>> widest_cutter(teeth=6, major=28, minor=23, width=6) is None
    True
    """
    pitch = 2 * pi / teeth
    foot, top = sqrt(minor**2 - width**2) / 2, sqrt(major**2 - width**2) / 2
    if top * cos(pitch) + width / 2 * sin(pitch) <= foot:
        return None
    touching = (foot - width / 2 * sin(pitch)) / cos(pitch)
    return touching * sin(pitch) - width / 2 * cos(pitch) - width / 2


def _check(teeth: int, over: float, under: float, key: float, unit: str) -> None:
    if under >= over:
        raise refused("The bottom of the spaces lies outside the keys: give a minor smaller than the major.", "minor")
    if key >= under:
        raise refused(
            f"A key {shown(key, unit)} wide does not fit on a minor diameter of {shown(under, unit)}.",
            "width",
        )
    widest = under * sin(pi / teeth)
    if key >= widest:
        sentence = f"{teeth} keys meet at the bottom of the spaces: give a width under {shown(widest, unit)}."
        raise refused(sentence, "width")


def _angles(teeth: int, over: float, under: float, key: float) -> list[Size]:
    top, foot = 2 * asin(key / over), 2 * asin(key / under)
    pitch = 2 * pi / teeth

    def size(name: str, angle: float) -> Size:
        return Size(name, degrees(angle), "degrees", MATHEMATICS)

    return [
        size("Angle from key to key", pitch),
        size("Angle of a key at the top", top),
        size("Angle of a space at the top", pitch - top),
        size("Angle of a space at the bottom", pitch - foot),
    ]


def _lengths(teeth: int, over: float, under: float, key: float, unit: str) -> list[Size]:
    space = under * sin(pi / teeth - asin(key / under))
    side = (sqrt(over**2 - key**2) - sqrt(under**2 - key**2)) / 2

    def size(name: str, value: float, note: str = "") -> Size:
        return Size(name, value, unit, MATHEMATICS, note)

    found = [
        size("Diameter over the keys", over),
        size("Depth of the spaces", (over - under) / 2),
        size("Height of a key's side", side),
        size("Width of a key", key, "micrometer over both sides"),
        size("Chord of a space at the bottom", space),
    ]
    if teeth % 2:
        return [*found, size("Top of a key to the bottom opposite", (over + under) / 2)]
    return [*found, size("Over opposite bottoms", under)]


def _passes(key: float, cutter: Number | None, widest: float | None, unit: str) -> list[Size]:
    found = [
        Size(
            "Side of the cutter from the centre line",
            key / 2,
            unit,
            MATHEMATICS,
            "first one way, then the other",
        )
    ]
    if widest is not None:
        found.append(Size("Cutter must be thinner than", widest, unit, MATHEMATICS))
    if cutter is not None:
        thick = float(cutter)
        found += [
            Size("Middle of the cutter from the centre line", (key + thick) / 2, unit, MATHEMATICS),
            Size(
                "Cross-feed between the two passes",
                key + thick,
                unit,
                MATHEMATICS,
                "key width + cutter thickness",
            ),
        ]
    return found


def _involute(
    teeth: int,
    unit: str,
    module: float,
    angle: Number,
    major: Number | None,
    minor: Number | None,
    pin: Number | None,
) -> Part:
    pitch = teeth * module
    over = float(major) if major is not None else pitch + module
    under = float(minor) if minor is not None else pitch - module
    if not under < pitch < over:
        sentence = f"The pitch diameter, {shown(pitch, unit)}, must lie between minor and major."
        raise refused(sentence, "major" if over <= pitch else "minor")
    addendum, depth = (over - pitch) / 2 / module, (over - under) / 2 / module
    gear = Toothing(teeth, module, radians(angle), addendum=addendum, depth=depth)
    check_tooth(gear, "major")
    stub = major is None and minor is None
    note = "stub teeth, half a module each way" if stub else "from major and minor"
    blank = blank_sizes(gear, unit, note, RECALLED if stub else MATHEMATICS)
    return Part(
        "spline",
        unit,
        (*pitch_sizes(gear, unit), *blank, *measuring_sizes(gear, unit, pin)),
        divisions=teeth,
        cautions=(
            "Standards fix the clearance and the fit of involute splines: take major, minor and limits from "
            "the drawing.",
        ),
        rim=over,
        pitch_circle=pitch,
        drawing={"form": "involute", **gear_drawing(gear)},
    )
