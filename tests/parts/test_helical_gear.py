"""Helical gears: both planes agree, and the lead gearing follows the head."""

from __future__ import annotations

from fractions import Fraction
from math import cos, pi, radians, tan

import pytest

from dividing.indexing.faults import Refused
from dividing.indexing.head import TWELVE_GEARS, Head, Screw
from dividing.parts.helical_gear import helical_gear
from tests.parts.figures import told, value

HEAD = Head(change_gears=TWELVE_GEARS, screw=Screw(Fraction(5), "mm"))


@pytest.mark.parametrize("helix", [5, 15, 22.5, 30, 45])
class TestBothPlanes:
    def test_the_same_gear_given_in_either_plane_has_the_same_flanks(self, helix: float) -> None:
        normal = helical_gear(teeth=30, module=2, helix_angle=helix, hand="right", unit="mm")
        squeeze = cos(radians(helix))
        transverse = helical_gear(
            teeth=30,
            module=2 / squeeze,
            plane="transverse",
            pressure_angle=value(normal, "Transverse pressure angle"),
            helix_angle=helix,
            hand="right",
            unit="mm",
        )
        for name in ("Pitch diameter", "Base diameter", "Lead", "Formative teeth", "Normal pressure angle"):
            assert value(transverse, name) == pytest.approx(value(normal, name))
        thickness = "Tooth thickness along the pitch circle"
        assert value(transverse, thickness) == pytest.approx(value(normal, thickness))

    def test_the_helix_unrolled_is_the_long_side_of_a_triangle(self, helix: float) -> None:
        part = helical_gear(teeth=30, module=2, helix_angle=helix, hand="left", unit="mm")
        assert tan(radians(helix)) == pytest.approx(pi * value(part, "Pitch diameter") / value(part, "Lead"))

    def test_only_plain_indexing_goes_with_the_lead(self, helix: float) -> None:
        part = helical_gear(teeth=30, module=2, helix_angle=helix, hand="left", unit="mm", head=HEAD)
        assert part.methods == ("plain", "nearest")
        assert part.cautions[0] == part.methods_reason
        assert part.lead is not None
        assert part.lead["gearing"] is not None


@pytest.mark.parametrize("angle", [0, 90, -5])
def test_an_angle_without_a_helix_is_refused(angle: int) -> None:
    with pytest.raises(Refused) as refusal:
        helical_gear(teeth=30, module=2, helix_angle=angle, hand="left", unit="mm")
    assert told(refusal.value) == [
        (
            ("helix_angle",),
            "A helix angle lies between 0° and 90° from the axis; for straight teeth take a spur gear.",
        )
    ]
