"""What every schema of a request shares: unknown fields refused by name, and all that is wrong told at once."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cached_property
from typing import Any, ClassVar

from marshmallow import RAISE, Schema, ValidationError, missing, post_load

from dividing.indexing.faults import Refused
from dividing.web.problems import tree

_UNKNOWN = "unknown field"


class Request(Schema):
    """A schema whose `make` turns the fields into a value of the domain.

    A field of the wrong type is found by marshmallow, a value out of bounds by the domain. When the first kind is
    found the rest is still handed to the domain, so that one refusal names both.
    """

    error_messages = {
        "type": 'Give an object here: fields between "{" and "}".',
        "unknown": _UNKNOWN,
    }

    leans_on: ClassVar[dict[str, str]] = {}
    """Fields that cannot be judged while another, on which they lean, is wrong."""

    class Meta:
        unknown = RAISE

    def load(self, data: Any, *, many: bool | None = None, partial: Any = None, unknown: Any = None) -> Any:
        """The value that the data spell.

        A question in which all is right goes the straight way: each field that is there, then `make`. Whatever
        is wrong with another, marshmallow goes through it anew and tells all of it at once.
        """
        if type(data) is dict and not (many or partial or unknown) and self._needed <= data.keys():
            given, fields_here, readers = dict(self._defaults), self.load_fields, self._readers
            try:
                for name, value in data.items():
                    read = fields_here[name].deserialize if value is None else readers[name]
                    given[name] = read(value, name, data)
                return self.make(given)
            except (ValidationError, Refused, KeyError):
                pass
        return super().load(data, many=many, partial=partial, unknown=unknown)

    @cached_property
    def _readers(self) -> dict[str, Callable[[Any, str, Any], Any]]:
        """What reads each field that is not null: its own reading where nothing else is to be done."""
        return {
            name: field.deserialize if field.validators else field._deserialize
            for name, field in self.load_fields.items()
        }

    @cached_property
    def _needed(self) -> frozenset[str]:
        return frozenset(name for name, field in self.load_fields.items() if field.required)

    @cached_property
    def _defaults(self) -> dict[str, Any]:
        """What is taken for fields that are left out."""
        usual = {name: field.load_default for name, field in self.load_fields.items()}
        return {name: value() if callable(value) else value for name, value in usual.items() if value is not missing}

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
        # Of an object that is wrong marshmallow leaves what is right in it. Where the domain cannot read such half a
        # value, it is asked about the others.
        for given in (valid, {name: value for name, value in valid.items() if name not in messages}):
            try:
                self.make({**self._unasked(), **given})
            except Refused as refused:
                return {
                    name: told
                    for name, told in tree(refused.faults).items()
                    if name in given and self.leans_on.get(str(name)) not in messages
                }
            except (ValidationError, KeyError, TypeError, AttributeError):
                continue
            break
        return {}

    def _unasked(self) -> dict[str, Any]:
        return {}
