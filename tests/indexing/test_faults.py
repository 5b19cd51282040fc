"""What is wrong with a question is told whole: every fault, with the way to its field."""

from __future__ import annotations

import pytest

from dividing.indexing.faults import DividingError, Fault, Refused, refuse_if_any

RATIO = Fault(("ratio",), "The ratio is a whole number.")
CIRCLE = Fault(("plates", 0, 2), "A circle has 2 to 400 holes.")


def test_a_fault_seen_from_further_out_has_the_longer_way() -> None:
    assert CIRCLE.under("head") == Fault(("head", "plates", 0, 2), "A circle has 2 to 400 holes.")
    assert CIRCLE.under("items", 3, "head").path == ("items", 3, "head", "plates", 0, 2)
    assert CIRCLE.under() == CIRCLE


def test_a_refusal_keeps_every_fault_and_says_them_all() -> None:
    refused = Refused(fault for fault in (RATIO, CIRCLE))
    assert refused.faults == (RATIO, CIRCLE)
    assert str(refused) == "The ratio is a whole number. A circle has 2 to 400 holes."
    assert isinstance(refused, DividingError)


def test_nothing_is_refused_for_nothing() -> None:
    refuse_if_any([])
    with pytest.raises(Refused) as refused:
        refuse_if_any([RATIO, CIRCLE])
    assert refused.value.faults == (RATIO, CIRCLE)
