"""A part on the wire: made when the head is known, and refused in the words of the wire."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest
from marshmallow import ValidationError

from dividing.indexing.angles import Angle
from dividing.indexing.faults import Fault, Refused
from dividing.indexing.head import Head
from dividing.indexing.work import Angles, Arc, Divisions, Work
from dividing.parts import KINDS, Kind, Part
from dividing.web.schemas.part import PartAsked, barred, work_of


def never_to_be_found(error: Exception) -> Callable[..., Part]:
    def make(**_: object) -> Part:
        raise error

    return make


@pytest.mark.parametrize("error", [ZeroDivisionError("float division by zero"), ValueError("math domain error")])
def test_sizes_that_have_no_geometry_together_are_refused_as_a_part(
    error: Exception, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(KINDS, "flats", Kind("Flats", {}, never_to_be_found(error)))
    with pytest.raises(Refused) as refusal:
        PartAsked("flats", {"sides": 6}).on(Head())
    sentence = "No such part can be made of these sizes together; look at each once more."
    assert refusal.value.faults == (Fault((), sentence),)


def test_a_fault_is_pointed_to_by_the_word_of_the_wire() -> None:
    # Python's "stock" is the wire's "round".
    with pytest.raises(Refused) as refusal:
        PartAsked("flats", {"sides": 2, "across_flats": Fraction(9), "unit": "mm"}).on(Head())
    assert [fault.path for fault in refusal.value.faults] == [("round",)]


@pytest.mark.parametrize(
    ("part", "work"),
    [
        (Part("flats", "mm", (), divisions=6), Divisions(6)),
        (
            Part("reamer", "mm", (), angles=(Fraction(0), Fraction(1, 7))),
            Angles((Angle(Fraction(0)), Angle(Fraction(1, 7)))),
        ),
        (Part("dial", "mm", (), step=Fraction(1, 8), count=5), Arc(Angle(Fraction(1, 8)), 5)),
        (Part("dial", "mm", (), step=Fraction(1, 8)), Arc(Angle(Fraction(1, 8)), 2)),
    ],
)
def test_a_part_asks_of_the_head_what_it_is_made_of(part: Part, work: Work) -> None:
    assert work_of(part) == work


def test_a_part_bars_every_method_that_it_does_not_name() -> None:
    assert barred(None) is None
    assert barred(Part("flats", "mm", (), divisions=6)) is None
    helix = Part("helix", "mm", (), divisions=6, methods=("plain", "nearest"), methods_reason="The train is in use.")
    reason = "The train is in use."
    assert barred(helix) == {"direct": reason, "differential": reason, "compound": reason, "dial": reason}


def test_lengths_want_their_unit() -> None:
    from dividing.web.schemas.part import PART_SCHEMAS

    with pytest.raises(ValidationError) as refusal:
        PART_SCHEMAS["flats"]().load({"kind": "flats", "sides": 6, "across_flats": 24})
    assert refusal.value.messages == {"unit": ["This field is needed."]}
