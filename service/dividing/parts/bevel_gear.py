"""Bevel gears, alone or as a pair: the cones, the head's setting, the cutter, and a start for the offset.

Everything is measured at the large end. p pitch angle, S shaft angle: tan p1 = sin S / (z2/z1 + cos S).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import atan, atan2, cos, degrees, pi, radians, sin

from .end_teeth import TILTED_METHODS, TILTED_REASON
from .form_cutters import form_cutter
from .gear_sizes import DEPTHS, PITCH_FIELDS, TOOTH_CHOICES, cutter_cautions, cutter_sizes, depth_words, module_in_unit
from .sizes import (
    INCH,
    MATHEMATICS,
    PRACTICE,
    Number,
    Part,
    Plain,
    Size,
    check_range,
    check_word,
    in_millimetres,
    one_of,
    refused,
    shown,
)

CHOICES = TOOTH_CHOICES
FIELDS = {
    "teeth": "Teeth of the gear on the head.",
    "mate": "Teeth of the other gear of the pair. Give it or `pitch_angle`.",
    "pitch_angle": "Pitch angle of this gear in degrees, when it is made alone.",
    "shaft_angle": "Angle between the shafts in degrees (90).",
    **PITCH_FIELDS,
    "whole_depth": 'Convention of the whole depth: "2.25" (usual), "2.157" (older) or "2.166", in modules.',
    "face": "Face width along the cone (a third of the cone distance).",
    "unit": '"mm" or "in".',
}


@dataclass(frozen=True, slots=True)
class Bevel:
    """One member: teeth, module at the large end, pitch angle (radians), face, whole depth in modules."""

    teeth: int
    module: float
    angle: float
    face: float
    depth: float

    @property
    def pitch(self) -> float:
        """Pitch diameter at the large end."""
        return self.teeth * self.module

    @property
    def cone(self) -> float:
        """Distance from the apex to the pitch circle of the large end."""
        return self.pitch / 2 / sin(self.angle)

    @property
    def addendum_angle(self) -> float:
        """From the pitch cone to the face cone."""
        return atan(self.module / self.cone)

    @property
    def dedendum_angle(self) -> float:
        """From the pitch cone to the root cone."""
        return atan((self.depth - 1) * self.module / self.cone)

    @property
    def root_angle(self) -> float:
        """The angle to which the head is set."""
        return self.angle - self.dedendum_angle

    @property
    def formative(self) -> float:
        """Teeth of the spur gear whose cutter fits."""
        return self.teeth / cos(self.angle)

    @property
    def small_end(self) -> float:
        """Size of the small end to the large end."""
        return 1 - self.face / self.cone


def bevel_gear(
    *,
    teeth: int,
    unit: str,
    mate: int | None = None,
    pitch_angle: Number | None = None,
    shaft_angle: Number = 90,
    module: Number | None = None,
    diametral_pitch: Number | None = None,
    whole_depth: str = "2.25",
    face: Number | None = None,
) -> Part:
    """Angles and sizes of a bevel gear, and of its mate where that is given. `tilt` is the root angle.

    >>> part = bevel_gear(teeth=24, mate=48, unit="in", diametral_pitch=8, whole_depth="2.157")
    >>> round(part.tilt, 4)
    24.0961
    """
    check_word(whole_depth, "whole_depth", TOOTH_CHOICES["whole_depth"])
    check_range(shaft_angle, "shaft_angle", 0, 179, "A shaft angle")
    one_of(mate=mate, pitch_angle=pitch_angle)
    angles = _pitch_angles(teeth, mate, pitch_angle, radians(shaft_angle))
    large = module_in_unit(unit, module, diametral_pitch)
    width = _face(face, teeth * large / 2 / sin(angles[0]), unit)
    counts = [teeth] if mate is None else [teeth, mate]
    depth = DEPTHS[whole_depth][0]
    members = [Bevel(count, large, angle, width, depth) for count, angle in zip(counts, angles, strict=True)]
    _check_roots(members)
    sizes = [*_pair_sizes(members[0], unit), *_sizes(members[0], unit, whole_depth, "")]
    if len(members) == 2:
        sizes += _sizes(members[1], unit, whole_depth, "Mate: ")
    return Part(
        "bevel_gear",
        unit,
        tuple(sizes),
        divisions=teeth,
        tilt=degrees(members[0].root_angle),
        methods=TILTED_METHODS,
        methods_reason=TILTED_REASON,
        cautions=_cautions(members, unit),
        rim=members[0].pitch + 2 * large * cos(members[0].angle),
        pitch_circle=members[0].pitch,
        drawing={"members": [_drawing(member) for member in members]},
    )


def _pitch_angles(teeth: int, mate: int | None, alone: Number | None, shafts: float) -> list[float]:
    if mate is None:
        angle = radians(alone or 0)
        if not 0 < angle < pi / 2:
            raise refused("A pitch angle lies between 0° and 90°, neither included.", "pitch_angle")
        return [angle]
    first = atan2(teeth * sin(shafts), mate + teeth * cos(shafts))
    second = atan2(mate * sin(shafts), teeth + mate * cos(shafts))
    if max(first, second) >= pi / 2 - 1e-12:
        sentence = "At this shaft angle one gear would be a crown or internal gear: give a smaller one."
        raise refused(sentence, "shaft_angle")
    return [first, second]


def _face(given: Number | None, cone: float, unit: str) -> float:
    if given is not None and given >= cone:
        sentence = f"The face reaches past the apex: the cone distance is only {shown(cone, unit)}."
        raise refused(sentence, "face")
    return cone / 3 if given is None else float(given)


def _check_roots(members: list[Bevel]) -> None:
    for member, field in zip(members, ("teeth", "mate"), strict=False):
        if member.root_angle <= 0:
            raise refused(f"The root angle of {member.teeth} teeth comes below 0°: give more teeth.", field)


def _pair_sizes(gear: Bevel, unit: str) -> list[Size]:
    module = float(in_millimetres(gear.module, unit))
    return [
        Size("Cone distance", gear.cone, unit, MATHEMATICS, "apex to the pitch circle of the large end"),
        Size("Face width", gear.face, unit, PRACTICE, "not above a third of the cone distance"),
        Size("Module at the large end", module, "mm", MATHEMATICS, "always in millimetres"),
        Size("Module at the small end", module * gear.small_end, "mm", MATHEMATICS),
        Size("Diametral pitch at the large end", float(INCH) / module, "", MATHEMATICS),
        Size("Angle of addendum", degrees(gear.addendum_angle), "degrees", MATHEMATICS),
        Size("Angle of dedendum", degrees(gear.dedendum_angle), "degrees", MATHEMATICS),
    ]


def _sizes(gear: Bevel, unit: str, whole_depth: str, prefix: str) -> list[Size]:
    convention, depth_source = depth_words(whole_depth)
    edge = gear.cone * cos(gear.angle) - gear.module * sin(gear.angle)
    outside = gear.pitch + 2 * gear.module * cos(gear.angle)

    def size(name: str, value: float, kind: str = unit, source: str = MATHEMATICS, note: str = "") -> Size:
        return Size(prefix + name if prefix else name[0].upper() + name[1:], value, kind, source, note)

    found = [
        size("pitch diameter", gear.pitch),
        size("outside diameter", outside),
        size("apex to the edge of the large end, along the axis", edge),
        size("whole depth at the large end", gear.depth * gear.module, unit, depth_source, convention),
        size("pitch angle", degrees(gear.angle), "degrees"),
        size("face angle", degrees(gear.angle + gear.addendum_angle), "degrees"),
        size("root angle", degrees(gear.root_angle), "degrees", MATHEMATICS, "set the head to this"),
        size("formative teeth", gear.formative, "", MATHEMATICS, "z / cos of the pitch angle, for the cutter"),
    ]
    cutters = [size("form cutter", cut.value, "", cut.source, cut.note) for cut in cutter_sizes(gear.formative)]
    return found + cutters + _offset(gear, unit, prefix)


def _offset(gear: Bevel, unit: str, prefix: str) -> list[Size]:
    offset = pi / 2 * gear.module / 10
    roll = degrees(offset / (gear.pitch / 2 * gear.small_end))
    name, other = "offset of the cutter to start with", "roll of the blank that goes with it"
    if not prefix:
        name, other = name.capitalize(), other.capitalize()
    return [
        Size(
            prefix + name,
            offset,
            unit,
            PRACTICE,
            "a tenth of the tooth's thickness at the large end; correct after a trial",
        ),
        Size(
            prefix + other,
            roll,
            "degrees",
            MATHEMATICS,
            "brings the small end back to the middle of the cutter",
        ),
    ]


def _cautions(members: list[Bevel], unit: str) -> tuple[str, ...]:
    found = [
        "Teeth milled with a form cutter are right at one end only: use a bevel-gear cutter thin enough for "
        "the small end, cut two trial spaces, and measure the tooth at both ends.",
        "If the tooth is right at the large end and too thick at the small end, make the offset smaller; "
        "if too thin, larger.",
    ]
    first = members[0]
    if first.face > first.cone / 3 * (1 + 1e-9):
        found.append(
            f"The small end gets thin when the face is above a third of the cone distance, "
            f"here {shown(first.cone / 3, unit)}."
        )
    for member in members:
        if form_cutter(member.formative) is None:
            found += cutter_cautions(member.formative)
            break
    return tuple(found)


def _drawing(gear: Bevel) -> Plain:
    return {
        "teeth": gear.teeth,
        "cone_distance": gear.cone,
        "face": gear.face,
        "pitch_angle": degrees(gear.angle),
        "face_angle": degrees(gear.angle + gear.addendum_angle),
        "root_angle": degrees(gear.root_angle),
    }
