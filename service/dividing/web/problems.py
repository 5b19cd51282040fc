"""Every refusal, our own and the framework's, as one kind of document (RFC 9457, `application/problem+json`).

Views raise and never catch. What they raise is one of four: a `Problem`, marshmallow's `ValidationError`, the
domain's `Refused`, or Werkzeug's `HTTPException`; anything else is a fault of ours and tells nothing of itself.
"""

from __future__ import annotations

import logging
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any
from urllib.parse import quote

import orjson
from flask import Flask, Response, request
from marshmallow import ValidationError
from werkzeug.exceptions import HTTPException, MethodNotAllowed

from dividing.indexing.faults import Fault, Refused

from .json_in import NotJson
from .limits import ERRORS_MOST
from .log import fault_of_ours

MEDIA_TYPE = "application/problem+json"
SCHEMA_KEY = "_schema"
"""Where marshmallow puts what is wrong with a value as a whole."""
_log = logging.getLogger("dividing")


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of problem: its name in the type's address, its status, and what `/docs` says of it."""

    name: str
    status: int
    title: str
    meaning: str

    @property
    def type(self) -> str:
        """The stable address that names and explains it."""
        return f"/docs#problem-{self.name}"


NOT_JSON = Kind(
    "not-json",
    400,
    "Not JSON",
    "The body is not JSON as this service reads it: also NaN or Infinity, a key given twice, nesting past 32, "
    "or text that is not UTF-8. The detail says where.",
)
BAD_REQUEST = Kind("bad-request", 400, "Bad request", "The request could not be understood. The detail says why.")
NOT_FOUND = Kind("not-found", 404, "Not found", "Nothing is kept at this address. The addresses are listed above.")
WRONG_METHOD = Kind(
    "wrong-method",
    405,
    "Wrong method",
    "The address is right, the method is not. The header Allow lists those that serve.",
)
TIMED_OUT = Kind("timed-out", 408, "Timed out", "The body did not arrive in time. Send the request again.")
TOO_LARGE = Kind(
    "too-large", 413, "Too large", "The body is larger than 64 KiB (1 MiB for a batch). Split the question."
)
WRONG_CONTENT = Kind(
    "wrong-content-type",
    415,
    "Wrong content type",
    "The body has to be announced as what it is: Content-Type: application/json, or text/csv for a sheet where one is "
    "taken.",
)
WRONG_FIELD = Kind(
    "wrong-field",
    422,
    "Wrong field",
    "The question is JSON but cannot be asked so. Each wrong field is named with what to change.",
)
TOO_MUCH_WORK = Kind(
    "too-much-work",
    422,
    "Too much work",
    "Answering would take more than about two seconds. The detail says how to split the question.",
)
OUR_FAULT = Kind(
    "our-fault",
    500,
    "Our fault",
    "The service failed where it should not. Nothing is wrong with your request; pass the request id on.",
)
KINDS = (
    NOT_JSON,
    BAD_REQUEST,
    NOT_FOUND,
    WRONG_METHOD,
    TIMED_OUT,
    TOO_LARGE,
    WRONG_CONTENT,
    WRONG_FIELD,
    TOO_MUCH_WORK,
    OUR_FAULT,
)
_BY_STATUS = {
    kind.status: kind
    for kind in (BAD_REQUEST, NOT_FOUND, WRONG_METHOD, TIMED_OUT, TOO_LARGE, WRONG_CONTENT, WRONG_FIELD)
}
_SENTENCES = {
    404: "Nothing is kept at this address. /docs lists what there is.",
    408: "The body did not arrive in time. Send the request again.",
    412: "The answer is not the one that the header If-Match names. Leave the header out.",
    413: "The body is larger than 64 KiB (1 MiB for a batch). Split the question.",
    415: "Send the body as JSON, with the header Content-Type: application/json.",
}

_OUR_FAULT_SENTENCE = "The service failed on this request. It is not your doing; pass the request id on."

Errors = list[dict[str, str]]


class Problem(Exception):
    """A refusal of a known kind, with its sentence and the fields that are wrong."""

    def __init__(self, kind: Kind, detail: str, errors: Errors | None = None) -> None:
        super().__init__(detail)
        self.kind = kind
        self.detail = detail
        self.errors = errors


def of(error: Exception) -> Problem:
    """The problem that a refusal is, for those who answer several questions and must not fail for one.

    >>> of(Refused([Fault(("every",), "Give a whole number.")])).errors
    [{'pointer': '#/every', 'detail': 'Give a whole number.'}]
    """
    if isinstance(error, ValidationError):
        return from_validation(error)
    if isinstance(error, Refused):
        return from_refused(error)
    if isinstance(error, NotJson):
        return Problem(NOT_JSON, str(error))
    if isinstance(error, HTTPException):
        return from_http(error)
    return error if isinstance(error, Problem) else Problem(OUR_FAULT, _OUR_FAULT_SENTENCE)


def from_validation(error: ValidationError) -> Problem:
    """Every wrong field of a request, each with its pointer."""
    return _wrong_fields(list(_flat(error.messages, ())))


def from_refused(refused: Refused) -> Problem:
    """What the domain refuses, pointed to from the top of the request."""
    return _wrong_fields([(fault.path, fault.sentence) for fault in refused.faults])


def from_http(error: HTTPException) -> Problem:
    """Werkzeug's own refusals in our words."""
    status = error.code or 500
    kind = _BY_STATUS.get(status) or Kind("bad-request", status, error.name, BAD_REQUEST.meaning)
    detail = _SENTENCES.get(status) or error.description or error.name
    if isinstance(error, MethodNotAllowed):
        allowed = " or ".join(sorted(error.valid_methods or ()))
        detail = f"{request.method} does not serve here. Use {allowed}."
    return Problem(kind, detail)


def document(problem: Problem, *, instance: str, request_id: str) -> dict[str, Any]:
    """The problem as it is sent."""
    kind = problem.kind
    told: dict[str, Any] = {
        "type": kind.type,
        "title": kind.title,
        "status": kind.status,
        "detail": problem.detail,
        "instance": instance,
        "request_id": request_id,
    }
    if problem.errors is not None:
        told["errors"] = problem.errors
    return told


def tree(faults: tuple[Fault, ...]) -> dict[str | int, Any]:
    """Faults as marshmallow nests them, so that a domain's refusal joins those of the fields beside it.

    >>> tree((Fault(("plates", 0, 2), "Too large."),))
    {'plates': {0: {2: ['Too large.']}}}
    """
    root: dict[str | int, Any] = {}
    for fault in faults:
        branch = root
        for key in fault.path:
            branch = branch.setdefault(key, {})
        branch.setdefault(SCHEMA_KEY, []).append(fault.sentence)
    pruned = _pruned(root)
    return pruned if isinstance(pruned, dict) else {SCHEMA_KEY: pruned}


def _pruned(branch: dict[str | int, Any]) -> dict[str | int, Any] | list[str]:
    """Where nothing lies below a key, its sentences alone."""
    if set(branch) == {SCHEMA_KEY}:
        sentences: list[str] = branch[SCHEMA_KEY]
        return sentences
    return {key: below if key == SCHEMA_KEY else _pruned(below) for key, below in branch.items()}


def pointer(path: tuple[str | int, ...]) -> str:
    """The JSON pointer to a field, in its form for a URI fragment (RFC 6901).

    >>> pointer(("head", "plates", 0, 2)), pointer(("a/b",)), pointer(())
    ('#/head/plates/0/2', '#/a~1b', '#')
    """
    keys = (str(key)[:100].replace("~", "~0").replace("/", "~1") for key in path)
    return "#" + "".join("/" + quote(key, safe="~!$&'()*+,;=:@") for key in keys)


def install(app: Flask) -> None:
    """Let every refusal that leaves the application pass through here."""
    for kind in (Problem, ValidationError, Refused, NotJson):
        app.register_error_handler(kind, lambda error: _respond(of(error)))
    app.register_error_handler(HTTPException, _respond_http)
    app.register_error_handler(Exception, _respond_to_our_fault)


def _wrong_fields(found: list[tuple[tuple[str | int, ...], str]]) -> Problem:
    errors = [{"pointer": pointer(path), "detail": sentence} for path, sentence in found[:ERRORS_MOST]]
    if len(found) == 1:
        return Problem(WRONG_FIELD, found[0][1], errors)
    detail = f"{len(found)} fields have to be changed."
    if len(found) > ERRORS_MOST:
        detail += f" The first {ERRORS_MOST} are listed."
    return Problem(WRONG_FIELD, detail, errors)


def _flat(messages: Any, path: tuple[str | int, ...]) -> Iterator[tuple[tuple[str | int, ...], str]]:
    if isinstance(messages, Mapping):
        for key, below in messages.items():
            yield from _flat(below, path if key == SCHEMA_KEY else (*path, key))
    elif isinstance(messages, list):
        for each in messages:
            yield from _flat(each, path)
    else:
        yield path, str(messages)


def _respond(problem: Problem) -> Response:
    told = document(problem, instance=request.path, request_id=request.environ.get("dividing.request_id", ""))
    return Response(orjson.dumps(told), problem.kind.status, content_type=MEDIA_TYPE)


def _respond_http(error: HTTPException) -> Response | HTTPException:
    if error.code is None or error.code < 400:
        return error
    response = _respond(from_http(error))
    if isinstance(error, MethodNotAllowed) and error.valid_methods:
        response.headers["Allow"] = ", ".join(sorted(error.valid_methods))
    return response


def _respond_to_our_fault(error: Exception) -> Response:
    _log.error("request %s failed: %s", request.environ.get("dividing.request_id", ""), fault_of_ours(error))
    return _respond(of(error))
