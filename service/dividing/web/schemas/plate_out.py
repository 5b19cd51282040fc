"""The answer of /v1/plate on the wire."""

from __future__ import annotations

from marshmallow import Schema

from .answers import VERSION
from .head import HeadIn
from .out import PositionOut, SetupOut, SizeOut, Told, flag, integer, many, number, one, text, texts


def _wholes(about: str) -> Told:
    return Told("array", about, items={"type": "integer"})


class NeededOut(Schema):
    """The holes that the divisions need."""

    divisions = integer("The divisions asked for.")
    holes = integer("The fewest holes that serve.")
    multiples = _wholes("Every number of holes of a circle that serves.")
    working = texts("The arithmetic, as a person would write it.")


class DividesOut(Schema):
    """What plain indexing with the new circle makes on this head."""

    all = _wholes("Every number of divisions.")
    new = _wholes("Those that no plate of this head, nor its direct plate, divides yet.")


class DrilledOut(PositionOut):
    """One hole of the schedule: `cut` is its number as drilled, `division` its place round the plate."""

    x = number("Its x on the readout; null without the circle's diameter.", null=True)
    y = number("Its y on the readout; null without the circle's diameter.", null=True)


class PlateErrorOut(Schema):
    """How far off the holes of the plate are: achieved less ideal, told from the first hole."""

    worst_seconds = number("The largest error of any hole, in seconds of arc.")
    single_pitch_seconds = number("The largest difference between neighbouring holes, in seconds of arc.")
    total_pitch_seconds = number("The largest error less the smallest, in seconds of arc.")
    at_circle = number("The largest error along the circle, in its unit; null without its diameter.", null=True)


class PlateMoveOut(Schema):
    """The move on the new circle."""

    turns = integer("Whole turns.")
    holes = integer("Spaces after them.")
    circle = integer("The holes of the new circle.")
    sector_holes = integer("Holes that the sector arms embrace: spaces + 1; null for whole turns alone.", null=True)


class LeftOut(Schema):
    """The plate's part in the errors of work divided with it on the same head, divided by the ratio. The error of the
    head's own worm comes on top, undivided."""

    divisions = integer("The divisions that the figures are for; null where holes were asked for.", null=True)
    move = one(PlateMoveOut, "The move of those divisions on the new circle; null without them.", null=True)
    at_most = flag("Whether the figures are limits for any work begun in the first hole.")
    worst_seconds = number("The largest error of any position, from zero, in seconds of arc.")
    single_pitch_seconds = number("The largest difference between neighbours on the work, in seconds of arc.")
    total_pitch_seconds = number("The largest position error less the smallest, in seconds of arc.")


class PlateOut(Schema):
    """A plate drilled on this head: how to drill it, what it divides, and what its errors leave in the work."""

    holes = integer("The holes of the plate.")
    on_plate = integer("The plate of this head that has such a circle already, from 1; null: none has.", null=True)
    needed = one(NeededOut, "The holes that the divisions need; null where holes were asked for.", null=True)
    divides = one(DividesOut, "What the new circle divides on this head.")
    setup = one(SetupOut, "How the head is set to drill the plate.")
    schedule = many(DrilledOut, "A row for every hole, in the order of drilling.")
    error = one(PlateErrorOut, "The plate's own errors.")
    left_in_work = one(LeftOut, "What they leave in the work.")
    sizes = many(SizeOut, "Sizes of holes and circle; empty without a length.")
    hole_fits = flag("Whether the hole leaves enough metal to its neighbours; null without both diameters.", null=True)
    notes = texts("What of the errors the ratio divides and what it does not, in plain words.")
    cautions = texts("What to watch.")
    head = one(HeadIn, "The head with the plate mounted, to try it; null where it takes no more circles.", null=True)
    link = text("The page's address for the divisions on that head; null without either.", null=True)
    service_version = text(VERSION)
