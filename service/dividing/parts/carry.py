"""An angular error of the setup carried to the part: at the rim, and for gears as pitch deviations.

An angle e on a diameter D is an arc e D / 2. The single pitch deviation f_p and the total cumulative pitch
deviation F_p are those arcs on the pitch circle (definitions: ISO 1328-1).
"""

from __future__ import annotations

from math import pi

from .sizes import MATHEMATICS, Number, Part, Size, in_millimetres

ISO = "ISO 1328-1 (definition)"
GRADES = "Elements of Metric Gear Technology, table 15-1 (JIS B 1702-1976)"
FINE = {"mm": 5, "in": 6}
"""Decimals for lengths that are errors."""

_SINGLE = (
    (0.5, 1.4),
    (0.71, 2.0),
    (1, 2.8),
    (1.4, 4.0),
    (2, 5.6),
    (2.8, 8.0),
    (4, 11.2),
    (8, 22.4),
    (16, 45),
)
_TOTAL = ((2, 5.6), (2.8, 8), (4, 11.2), (5.6, 16), (8, 22.4), (11.2, 31.5), (16, 45), (32, 90), (64, 180))


def at_rim(seconds: Number, diameter: Number) -> float:
    """The arc, in the diameter's unit, of an angle in seconds of arc.

    >>> round(at_rim(3600, 360 / pi), 6)
    1.0
    """
    return float(seconds) / 3600 * pi / 360 * float(diameter)


def carried(part: Part, *, worst: Number, single_pitch: Number, total_pitch: Number) -> tuple[Size, ...]:
    """What errors in seconds of arc come to on the part. Empty for a part without a diameter.

    >>> from dividing.parts.spur_gear import spur_gear
    >>> gear = spur_gear(teeth=50, module=2, unit="mm")
    >>> [size.text for size in carried(gear, worst=10, single_pitch=10, total_pitch=20)]
    ['0.00252 mm', '0.00242 mm', '0.00485 mm', '0']
    """
    found = []
    if part.rim is not None:
        found.append(_arc("Largest error at the rim", worst, part.rim, part.unit, MATHEMATICS))
    if part.pitch_circle is not None:
        found.append(_arc("Single pitch deviation f_p", single_pitch, part.pitch_circle, part.unit, ISO))
        found.append(_arc("Total cumulative pitch deviation F_p", total_pitch, part.pitch_circle, part.unit, ISO))
        found += _grade(part, part.pitch_circle, found[-2].value, found[-1].value)
    return tuple(found)


def _arc(name: str, seconds: Number, diameter: float, unit: str, source: str) -> Size:
    return Size(name, at_rim(seconds, diameter), unit, source, "from the indexing alone", FINE[unit])


def _grade(part: Part, pitch: float, single: float, total: float) -> list[Size]:
    diameter = float(in_millimetres(pitch, part.unit))
    microns = [abs(float(in_millimetres(value, part.unit))) * 1000 for value in (single, total)]
    module = diameter / (part.divisions or 1)
    best = grade(diameter=diameter, module=module, single_pitch=microns[0], total_pitch=microns[1])
    if best is None:
        return []
    note = "best grade whose pitch limits the indexing leaves open; the machine, cutter and blank add their own"
    return [Size("Grade by pitch, JIS B 1702-1976", best, "", GRADES, note)]


def pitch_limits(*, diameter: float, module: float, grade: int) -> tuple[float, float]:
    """Limits in micrometres of single and accumulated pitch error, for millimetres and a grade from 0 to 8.

    Source: Elements of Metric Gear Technology, section 15, table 15-1.

    >>> [round(limit, 1) for limit in pitch_limits(diameter=100, module=2, grade=4)]
    [17.5, 69.9]
    """
    width = diameter ** (1 / 3) + 0.65 * module
    (slope, base), (total_slope, total_base) = _SINGLE[grade], _TOTAL[grade]
    return slope * width + base, total_slope * width + total_base


def grade(*, diameter: float, module: float, single_pitch: float, total_pitch: float) -> int | None:
    """The best grade, 0 to 8, whose limits hold both errors (micrometres); None when none does.

    >>> grade(diameter=100, module=2, single_pitch=17, total_pitch=40)
    4
    """
    for found in range(len(_SINGLE)):
        single, total = pitch_limits(diameter=diameter, module=module, grade=found)
        if single_pitch <= single and total_pitch <= total:
            return found
    return None
