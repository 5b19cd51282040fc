"""What an item of a batch is known by."""

from __future__ import annotations

import pytest
from marshmallow import ValidationError

from dividing.web.schemas.batch import Ref


@pytest.mark.parametrize("ref", ["OP30", "", " ", "0", "Zähne ⌀ 12", "x" * 200])
def test_any_text_of_up_to_200_characters_comes_back_as_it_is(ref: str) -> None:
    assert Ref("A ref.").deserialize(ref) == ref


@pytest.mark.parametrize("ref", ["x" * 201, 30, True, ["OP30"], {}])
def test_what_is_no_text_or_longer_is_refused(ref: object) -> None:
    with pytest.raises(ValidationError) as refusal:
        Ref("A ref.").deserialize(ref)
    assert refusal.value.messages == ["A ref is a text of up to 200 characters, such as OP30."]
