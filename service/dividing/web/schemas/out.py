"""The pieces of answers, as schemas. Answers are built as plain dictionaries: these describe them, and tests hold
each to its description."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import Schema, fields

from dividing.indexing.setup import METHOD_NAMES

from .fields import Described

Json = Mapping[str, Any]


class Told(Described):
    """A value of an answer, described in the words of JSON Schema."""

    def __init__(self, kind: str, about: str, *, null: bool = False, always: bool = True, **json: Any) -> None:
        super().__init__(about, json={"type": [kind, "null"] if null else kind, **json}, required=always)


def text(about: str, *, null: bool = False, always: bool = True, **json: Any) -> Told:
    """A text."""
    return Told("string", about, null=null, always=always, **json)


def integer(about: str, *, null: bool = False, **json: Any) -> Told:
    """A whole number."""
    return Told("integer", about, null=null, **json)


def number(about: str, *, null: bool = False, **json: Any) -> Told:
    """A decimal number."""
    return Told("number", about, null=null, **json)


def flag(about: str, *, null: bool = False) -> Told:
    """true or false."""
    return Told("boolean", about, null=null)


def texts(about: str) -> Told:
    """A list of sentences."""
    return Told("array", about, items={"type": "string"})


def one(schema: type[Schema], about: str, *, null: bool = False) -> fields.Field[Any]:
    """An object of this form."""
    return fields.Nested(schema, required=True, allow_none=null, metadata={"description": about})


def many(schema: type[Schema], about: str, *, null: bool = False) -> fields.Field[Any]:
    """A list of objects of this form."""
    inner = fields.Nested(schema)
    return fields.List(inner, required=True, allow_none=null, metadata={"description": about})


METHODS = list(METHOD_NAMES)


class AngleOut(Schema):
    """An angle: decimal for spreadsheets, degrees minutes and seconds for people, exact for programs."""

    degrees = number("Decimal degrees, the nearest floating-point number.")
    dms = text("Degrees, minutes and seconds, rounded to hundredths of a second.")
    turns = text('Exact turns of the spindle as a fraction, "1/16"; null for an angle in radians.', null=True)


class MoveOut(Schema):
    """A move of the crank; for direct indexing of the spindle."""

    turns = integer("Whole turns; null where the schedule gives them.", null=True)
    holes = integer("Spaces after the whole turns; null where the schedule gives them.", null=True)
    circle = integer("The holes of the circle; for direct indexing those of the direct plate.")
    plate = integer("The plate, counted from 1; null for the direct plate.", null=True)
    sector_holes = integer("Holes that the sector arms embrace: spaces + 1; null for whole turns alone.", null=True)


class SecondMoveOut(Schema):
    """The second move of compound indexing: plate and crank together."""

    turns = integer("Always 0; null where the schedule gives the moves.", null=True)
    holes = integer("Spaces; below 0 the opposite way; null where the schedule gives them.", null=True)
    circle = integer("The holes of the circle that the stop pin is in.")
    plate = integer("The plate, the same as that of the first move.")
    sector_holes = integer("Holes that the sector arms embrace: spaces + 1.", null=True)


class GearingOut(Schema):
    """The train between spindle and plate."""

    spindle = integer("Teeth of the gear on the spindle.")
    worm = integer("Teeth of the gear on the worm side.")
    stud = Told("array", "The first and the second gear on the stud; null for a simple train.", null=True,
                items={"type": "integer"})  # fmt: skip
    idlers = integer("Idlers in the train.")
    plate = text("Which way the plate turns to the crank.", enum=["with", "against"])
    train = text("Drivers over driven: the plate's turns for one turn of the spindle.")


class DialOut(Schema):
    """A setting of the dial, worked from zero: whole turns of the handwheel and the reading beyond them."""

    turns = integer("Whole turns; null where the schedule gives them.", null=True)
    reading = one(AngleOut, "The exact reading beyond the whole turns, as an angle of the table.", null=True)
    set = text(
        "What to set, to the dial's graduation or vernier; only on a dial in degrees.",
        null=True,
        always=False,
    )
    divisions = text("The line to set; only on a dial without degrees.", null=True, always=False)


class ErrorOut(Schema):
    """How far off the work comes out: achieved less ideal, from actual positions, rounded to 0.0001 seconds."""

    step = text(
        "The exact error of one move, in turns of the spindle; null where it is irrational or differs.",
        null=True,
    )
    worst_seconds = number("The largest error of any position, from zero, in seconds of arc.")
    closing_seconds = number("What is left after the last step home, in seconds of arc.")
    single_pitch_seconds = number("The largest difference between neighbours on the finished work, in seconds of arc.")
    total_pitch_seconds = number("The largest position error less the smallest, in seconds of arc.")
    at_rim = number("The largest error at the rim, in the unit of the diameter; null without one.", null=True)
    within_tolerance = flag("Whether every position keeps the tolerance; null without one.", null=True)


class PositionOut(Schema):
    """One cut of the schedule."""

    cut = integer("The number of the cut, from 1.")
    division = integer("Where it stands round the work, counted in divisions from 0.")
    angle = one(AngleOut, "Where it should stand, from zero.")
    turns = integer("Whole turns since the cut before.")
    holes = integer("Spaces after them; null on a dial.", null=True)
    hole = integer("The hole that the pin is then in, counted from 0, the start hole; null on a dial.", null=True)
    second_holes = integer("Spaces of the second move; null without one.", null=True)
    second_hole = integer("The hole of the second circle that is then reached; null without one.", null=True)
    dial = one(DialOut, "The dial's setting from zero; null without a dial.", null=True)
    scale = text("What the degree scale on the spindle nose shows, to the nearest minute.")
    free_check = flag("Whether the pin is back in its start hole, which checks the count.")
    error_seconds = number("The error of this position in seconds of arc.")


class SetupOut(Schema):
    """One way to set the head."""

    method = text("The method.", enum=METHODS)
    exact = flag("Whether every position comes out with no error at all.")
    summary = text("The setup in one line, for a routing sheet.")
    move = one(MoveOut, "The move at every cut; null for a dial.", null=True)
    second_move = one(SecondMoveOut, "The second move of compound indexing; null otherwise.", null=True)
    gearing = one(GearingOut, "The train of differential indexing; null otherwise.", null=True)
    dial = one(DialOut, "The dial's setting for one step; null without a dial.", null=True)
    every = integer("Spaces per move; above 1 the work goes round so many times.")
    error = one(ErrorOut, "How far off it is.")
    working = texts("The arithmetic, as a person would write it.")
    instructions = texts("What to do, in order.")
    cautions = texts("What to watch with this setup.")
    positions = many(PositionOut, "A row for every cut; null unless asked for or needed.", null=True)


class WorkOut(Schema):
    """The work as it was understood."""

    divisions = Told("integer", "Equal divisions; only for such work.", always=False)
    angle = fields.Nested(AngleOut, metadata={"description": "The angle; only for such work."})
    count = Told("integer", "Features at that angle; only for such work.", always=False)
    angles = fields.List(fields.Nested(AngleOut), metadata={"description": "The positions; only for such work."})
    step = one(AngleOut, "What one move should turn the work; null for unequal positions.", null=True)


class DeclinedOut(Schema):
    """A method that gives nothing here."""

    method = text("The method.", enum=METHODS)
    reason = text("Why, in one sentence.")


class SizeOut(Schema):
    """One size of the part."""

    name = text("Its name.")
    value = number("Its value, to as many decimals as are worth printing.")
    unit = text('"mm", "in", "degrees", or nothing for a count.', enum=["mm", "in", "degrees", ""])
    source = text("Whose formula it is.")
    note = text("What belongs beside the figure; often nothing.")
    text = text("Value and unit as a person reads them.")


class PartOut(Schema):
    """What is being made."""

    kind = text("The kind of part.")
    unit = text("The unit of its lengths.", enum=["mm", "in"])
    sizes = many(SizeOut, "Sizes to cut and to inspect.")
    errors = many(SizeOut, "What the error of the first setup comes to on the part.")
    lead = Told("object", "The lead gearing of a helix; null where none is cut.", null=True)
    tilt = number("The elevation of the spindle above the table in degrees; null where it lies level.", null=True)
    schedule = Told("array", "A row for every line or hole, where the part has such a table.", items={"type": "object"})
    drawing = Told("object", "What a drawing of the part needs.")
