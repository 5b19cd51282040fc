"""What every schema of a request shares: unknown fields refused by name, and all that is wrong told at once."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, ClassVar

from marshmallow import RAISE, Schema, ValidationError, post_load

from dividing.indexing.faults import Refused
from dividing.web.problems import tree

_UNKNOWN = "unknown field"


class Request(Schema):
    """A schema whose `make` turns the fields into a value of the domain.

    A field of the wrong type is found by marshmallow, a value out of bounds by the domain. When the first kind is
    found the rest is still handed to the domain, so that one refusal names both.
    """

    error_messages = {  # noqa: RUF012
        "type": 'Give an object here: fields between "{" and "}".',
        "unknown": _UNKNOWN,
    }

    leans_on: ClassVar[dict[str, str]] = {}
    """Fields that cannot be judged while another, on which they lean, is wrong."""

    class Meta:
        unknown = RAISE

    def make(self, given: dict[str, Any]) -> Any:
        """The domain's value; raises `Refused`."""
        return given

    @post_load
    def _made(self, given: dict[str, Any], **_: Any) -> Any:
        try:
            return self.make(given)
        except Refused as refused:
            raise ValidationError(tree(refused.faults)) from None

    def handle_error(self, error: ValidationError, data: Any, *, many: bool, **_: Any) -> None:
        """Name unknown fields, and add what the domain would say of the fields that are right in themselves."""
        messages = error.messages
        if many or not isinstance(messages, dict) or not isinstance(data, Mapping):
            return
        for name, told in messages.items():
            if told == [_UNKNOWN]:
                messages[name] = [self._unknown(str(name))]
        for name, told in self._out_of_bounds(error.valid_data, messages).items():
            messages.setdefault(name, told)

    def _unknown(self, name: str) -> str:
        shown = name if len(name) <= 64 and name.isprintable() else "…"
        return f'There is no field "{shown}" here; the fields are {", ".join(self.load_fields)}.'

    def _out_of_bounds(self, valid: Any, messages: dict[str, Any]) -> dict[str | int, Any]:
        if not isinstance(valid, dict):
            return {}
        try:
            self.make({**self._unasked(), **valid})
        except Refused as refused:
            found = tree(refused.faults)
            return {
                name: told
                for name, told in found.items()
                if name in valid and self.leans_on.get(str(name)) not in messages
            }
        except (ValidationError, KeyError, TypeError, AttributeError):
            return {}
        return {}

    def _unasked(self) -> dict[str, Any]:
        return {}
