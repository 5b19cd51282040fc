"""The work on the wire: exactly one thing to divide, in blocks where that is asked, within a tolerance."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from marshmallow import ValidationError

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.faults import Fault, Refused
from dividing.indexing.head import Head
from dividing.indexing.setup import Tolerance
from dividing.indexing.work import Angles, Arc, Divisions, Work
from dividing.web.schemas.work import WORK_IN, ToleranceIn, asked_work, gathered

ONE_KIND = "Give exactly one of divisions, angle, angles and part."
FLATS = {"kind": "flats", "sides": 6, "across_flats": 24, "unit": "mm"}


class TestTheWork:
    @pytest.mark.parametrize(
        ("given", "work"),
        [
            ({"divisions": 28}, Divisions(28)),
            ({"angle": "37°30'"}, Arc(parse_angle("37°30'"), 2)),
            ({"angle": Decimal("22.5"), "count": 3}, Arc(parse_angle("22.5"), 3)),
            ({"angles": ["0", 90]}, Angles((Angle(Fraction(0)), Angle(Fraction(1, 4))))),
        ],
    )
    def test_is_what_was_asked(self, given: dict[str, Any], work: Work) -> None:
        assert WORK_IN.load(given) == work

    @pytest.mark.parametrize(
        ("given", "told"),
        [
            ({}, {"_schema": [ONE_KIND]}),
            ({"count": 3}, {"_schema": [ONE_KIND]}),
            ({"divisions": 28, "angle": 9}, {"angle": [ONE_KIND]}),
            ({"divisions": 28, "angle": 9, "angles": [0]}, {"angle": [ONE_KIND], "angles": [ONE_KIND]}),
            ({"divisions": 28, "count": 3}, {"count": ["A count of features goes with an angle; leave it out."]}),
            ({"divisions": 0}, {"divisions": ["Divisions are a whole number from 1 to 1,000,000."]}),
            ({"angle": "0"}, {"angle": ["An angle to index is more than 0° and at most 360°."]}),
            ({"angle": 9, "count": 1}, {"count": ["Features are counted from 2 to 20,000."]}),
        ],
    )
    def test_that_is_none_or_several_is_refused(self, given: dict[str, Any], told: dict[str, Any]) -> None:
        with pytest.raises(ValidationError) as refusal:
            WORK_IN.load(given)
        assert refusal.value.messages == told


class TestSpacesPerMove:
    @pytest.mark.parametrize(
        ("given", "every", "work"),
        [
            (Divisions(28), None, Divisions(28)),
            (Divisions(28), 5, Divisions(28, every=5)),
            (Divisions(28), 1, Divisions(28, fixed=True)),
            (Arc(parse_angle("9")), None, Arc(parse_angle("9"))),
            (Arc(parse_angle("9")), 1, Arc(parse_angle("9"))),
        ],
    )
    def test_are_those_asked_for(self, given: Work, every: int | None, work: Work) -> None:
        found = asked_work({"work": given, "head": Head(), "every": every}).work
        assert found == work
        assert not isinstance(found, Divisions) or found.fixed == (every == 1)

    @pytest.mark.parametrize(
        ("given", "every", "fault"),
        [
            (
                Arc(parse_angle("9")),
                2,
                Fault(("every",), "Spaces per move are for equal divisions; leave the field out."),
            ),
            (
                Divisions(28),
                7,
                Fault(("every",), "7 spaces a move would miss divisions: 7 and 28 share the factor 7."),
            ),
            (
                Divisions(28),
                28,
                Fault(("every",), "Spaces per move lie between 1 and 27 for 28 divisions."),
            ),
        ],
    )
    def test_that_cannot_be_are_refused(self, given: Work, every: int, fault: Fault) -> None:
        with pytest.raises(Refused) as refusal:
            asked_work({"work": given, "head": Head(), "every": every})
        assert refusal.value.faults == (fault,)
        beside: list[Fault] = []
        assert gathered({"work": given, "head": Head(), "every": every}, beside) is None
        assert beside == [fault]

    def test_where_the_work_itself_is_wrong_nothing_is_said_of_them(self) -> None:
        faults: list[Fault] = []
        assert gathered({"head": Head(), "every": 2}, faults) is None
        assert faults == []


class TestAPart:
    def test_gives_the_work(self) -> None:
        asked = asked_work({"work": WORK_IN.load({"part": FLATS}), "head": Head(), "every": None})
        assert asked.work == Divisions(6)
        assert asked.part is not None
        assert asked.part.kind == "flats"

    def test_that_cannot_be_made_is_pointed_to_where_it_stands(self) -> None:
        part = {"kind": "flats", "sides": 2, "across_flats": 9, "unit": "mm"}
        with pytest.raises(Refused) as refusal:
            asked_work({"work": WORK_IN.load({"part": part}), "head": Head(), "every": None})
        (fault,) = refusal.value.faults
        assert fault.path == ("work", "part", "round")


class TestTheTolerance:
    @pytest.mark.parametrize(
        ("given", "tolerance"),
        [
            ({"angle": "0°01'"}, Tolerance(angle=Fraction(1, 21600))),
            ({"angle": "0°01'", "diameter": 120}, Tolerance(Fraction(1, 21600), None, Fraction(120))),
            (
                {"at_rim": Decimal("0.02"), "diameter": 120},
                Tolerance(None, Fraction(1, 50), Fraction(120)),
            ),
        ],
    )
    def test_is_an_angle_or_a_length_at_a_rim(self, given: dict[str, Any], tolerance: Tolerance) -> None:
        assert ToleranceIn().load(given) == tolerance

    @pytest.mark.parametrize(
        ("given", "told"),
        [
            ({}, {"_schema": ["Give the tolerance as an angle, or as at_rim with a diameter."]}),
            ({"diameter": 120}, {"_schema": ["Give the tolerance as an angle, or as at_rim with a diameter."]}),
            ({"angle": 0}, {"angle": ["A tolerance is an angle above 0."]}),
            ({"at_rim": 1}, {"diameter": ["A length at the rim needs the diameter of that rim."]}),
            (
                {"angle": 1, "at_rim": 1},
                {
                    "at_rim": ["Give either an angle or a length at the rim, not both."],
                    "diameter": ["A length at the rim needs the diameter of that rim."],
                },
            ),
        ],
    )
    def test_that_says_nothing_or_two_things_is_refused(self, given: dict[str, Any], told: dict[str, Any]) -> None:
        with pytest.raises(ValidationError) as refusal:
            ToleranceIn().load(given)
        assert refusal.value.messages == told
