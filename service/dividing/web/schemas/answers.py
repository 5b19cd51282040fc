"""Whole answers, one schema an operation."""

from __future__ import annotations

from marshmallow import Schema, fields

from dividing.indexing.verifying.slips import LIKELIEST_FIRST

from .claim import ClaimIn
from .head import HeadIn
from .out import (
    AngleOut,
    DeclinedOut,
    ErrorOut,
    PartOut,
    PositionOut,
    SetupOut,
    WorkOut,
    flag,
    integer,
    many,
    number,
    one,
    text,
    texts,
)

VERSION = "The version of the service that gave this answer, since a printed card outlives an upgrade."


class SolveOut(Schema):
    """Setups in the order in which a careful operator would choose."""

    work = one(WorkOut, "The work as it was understood.")
    setups = many(SetupOut, "The setups, best first; never none.")
    declined = many(DeclinedOut, "Each method that gives nothing here.")
    part = one(PartOut, "The part's sizes; null where no part was asked about.", null=True)
    cautions = texts("The usual cautions, which go with every setup.")
    link = text("The page's address for this question.")
    service_version = text(VERSION)


class MakesOut(Schema):
    """What a claim really makes."""

    step = one(AngleOut, "What one move turns the work; null where there is no one move.", null=True)
    divisions = text(
        'How many such moves go round, exact and reduced, "219/4"; null where none do or it is not rational.', null=True
    )


class SlipOut(Schema):
    """A slip that explains the claim: undoing it gives the wanted work exactly."""

    slip = text("The slip.", enum=list(LIKELIEST_FIRST))
    explanation = text("What happened, to whoever made it.")
    corrected = one(ClaimIn, "The claim without the slip.")


class VerifyOut(Schema):
    """A claim held against the work that it was meant for."""

    verdict = text("The verdict.", enum=["exact", "within_tolerance", "off", "cannot_be_set"])
    makes = one(MakesOut, "What the claim really makes, even when absurd.")
    error = one(ErrorOut, "How far off that is; null where nothing is made.", null=True)
    why = texts("Why it cannot be set; empty when it can.")
    likely_slips = many(SlipOut, "Slips that explain it, the likeliest first.")
    right = one(SetupOut, "A setup that is right; null where there is none.", null=True)
    service_version = text(VERSION)


class CandidateOut(PositionOut):
    """A cut at which the head can be standing."""

    off_degrees = number("How far the scale's reading is off that cut, in degrees.")
    hole_agrees = flag("Whether the pin is in the hole that belongs to that cut.")
    next = one(PositionOut, "The cut that comes next, with its move; null after the last.", null=True)


class LocateOut(Schema):
    """Where the head can be standing."""

    setup = one(SetupOut, "The setup that was taken to be in use.")
    candidates = many(CandidateOut, "The cuts that agree with what is seen, the likeliest first.")
    service_version = text(VERSION)


class SettingOut(Schema):
    """Whole crank turns, then spaces on a circle."""

    turns = integer("Whole turns; below 0 the other way.")
    holes = integer("Spaces after them; below 0 the other way.")
    circle = integer("The holes of the circle; null on a head that has none.", null=True)
    plate = integer("The plate, counted from 1; null on a head that has none.", null=True)


class NearestOut(SettingOut):
    """The setting that comes nearest."""

    error_seconds = number("What it makes less what was wanted, in seconds of arc.")


class CrankOut(Schema):
    """An angle as crank turns of the head."""

    turns = text("Crank turns as a fraction; null for an angle in radians.", null=True)
    settings = many(SettingOut, "Every exact setting on this head, mounted plate first.")
    nearest = one(NearestOut, "The nearest setting where none is exact; null otherwise.", null=True)


class AngleAnswerOut(Schema):
    """One angle in every form."""

    angle = one(AngleOut, "The angle.")
    radians = number("The angle in radians.")
    gon = number("The angle in gon, 400 to a turn.")
    crank = one(CrankOut, "The angle as crank turns.")
    arc = number("The length along the rim of the diameter given; null without one.", null=True)
    chord = number("The straight distance across; null without a diameter.", null=True)
    rise_per_100 = number("The rise in a run of 100; null at 90 degrees, where there is no run.", null=True)
    sine_bar_height = number("The height under the sine bar given; null without one or beyond 90°.", null=True)
    service_version = text(VERSION)


class ReadyHeadOut(Schema):
    """A head to start from."""

    id = text("A short word for it that stays the same.")
    title = text("Its figures in a line.")
    head = one(HeadIn, "The head, every key told, as a request takes it.")


class HeadsOut(Schema):
    """Heads to start from."""

    heads = many(ReadyHeadOut, "The heads.")
    service_version = text(VERSION)


class StateOut(Schema):
    """The state of the service."""

    status = text(
        '"ok" or "ready" when it is well, "wrong" when it does not solve the known case.',
        enum=["ok", "ready", "wrong"],
    )
    version = text("The version of the service.")


class WrongFieldOut(Schema):
    """One wrong field."""

    pointer = text('The JSON pointer to it: "#/head/plates/0/2".')
    parameter = text("The word of the query, where one is meant.", always=False)
    detail = text("What to change.")


class ProblemOut(Schema):
    """Why a request was refused (RFC 9457)."""

    type = text("The kind of problem; its address explains it.")
    title = text("The kind in a word or two.")
    status = integer("The status of the response.")
    detail = text("What is wrong and what to change.")
    instance = text("The address that was called.")
    request_id = text("The request's id, as in the header X-Request-ID.")
    errors = fields.List(
        fields.Nested(WrongFieldOut), metadata={"description": "Every wrong field, where fields are wrong."}
    )
