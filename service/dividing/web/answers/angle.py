"""The answer of /v1/angle."""

from __future__ import annotations

from dividing import __version__
from dividing.indexing.angles import angle_out
from dividing.indexing.converting import Conversion, Setting

from . import Answer


def converted(found: Conversion) -> Answer:
    """The answer of /v1/angle."""
    near = found.nearest
    return {
        "angle": angle_out(found.angle),
        "radians": found.radians,
        "gon": found.gon,
        "crank": {
            "turns": None if found.crank is None else str(found.crank),
            "settings": [_setting(setting) for setting in found.settings],
            "nearest": None if near is None else {**_setting(near.setting), "error_seconds": near.error_seconds},
        },
        "arc": found.arc,
        "chord": found.chord,
        "rise_per_100": found.rise_per_100,
        "sine_bar_height": found.sine_bar_height,
        "service_version": __version__,
    }


def _setting(setting: Setting) -> Answer:
    return {"turns": setting.turns, "holes": setting.holes, "circle": setting.circle, "plate": setting.plate}
