"""The query form: a simple question in words that fit a link, read into the body's form and written from it.

divisions=73&ratio=60&plates=15,16,17/21,23&tolerance=0°01'
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import Any
from urllib.parse import parse_qsl, quote

from dividing.indexing.head import Head

from .answers.heads import head_out
from .limits import QUERY_LONGEST
from .problems import WRONG_FIELD, Problem
from .query_words import HEAD_WORDS, SOLVE_WORDS, QueryWord
from .schemas.head import DEFAULT_HEAD

_LINK_WORDS: dict[str, dict[str, tuple[int, str, QueryWord]]] = {}
"""By the field and the field within it ("" for the field itself): the word's place in the order, its name, the word."""
for _order, (_name, _word) in enumerate(SOLVE_WORDS.items()):
    if _word.path[0] not in ("head", "positions"):
        _LINK_WORDS.setdefault(_word.path[0], {})["".join(_word.path[1:])] = (_order, _name, _word)


def read(query: bytes, words: Mapping[str, QueryWord]) -> dict[str, Any]:
    """The body's form of a query; refuses words that are unknown or come twice, each by name."""
    if len(query) > QUERY_LONGEST:
        raise Problem(
            WRONG_FIELD,
            f"The query is longer than {QUERY_LONGEST:,} characters; send the question as a body.",
            [],
        )
    pairs = parse_qsl(query.decode("utf-8", "replace"), keep_blank_values=True)
    errors = []
    body: dict[str, Any] = {}
    seen: set[str] = set()
    for name, text in pairs:
        if name not in words:
            errors.append(_refusal(name, f"There is no such word; the words are {', '.join(words)}."))
        elif name in seen:
            errors.append(_refusal(name, "This word stands twice; give it once."))
        else:
            _put(body, words[name].path, words[name].read(text))
        seen.add(name)
    if errors:
        raise Problem(WRONG_FIELD, "The query holds words that cannot be read.", errors)
    return body


def link(body: Mapping[str, Any], head: Head) -> str:
    """The page's address for a question that was loaded from this body, on this head."""
    told: list[tuple[int, str]] = []
    for key in body.keys() & _LINK_WORDS.keys():
        words_of, value = _LINK_WORDS[key], body[key]
        for inner, below in value.items() if isinstance(value, dict) else (("", value),):
            if inner in words_of and below is not None:
                order, name, word = words_of[inner]
                told.append((order, f"{name}={_quoted(word.write(below))}"))
    if len(told) > 1:
        told.sort()
    words = [text for _, text in told]
    if head is not DEFAULT_HEAD and (of_head := head_words(head)):
        words.append(of_head)
    return "/#" + "&".join(words)


@lru_cache(maxsize=64)
def head_words(head: Head) -> str:
    """What differs from the usual head, in words of the query form."""
    usual, wire = head_out(DEFAULT_HEAD), head_out(head)
    return "&".join(
        f"{name}={_quoted(word.write(wire[name]))}"
        for name, word in HEAD_WORDS.items()
        if wire[name] != usual[name] and wire[name] is not None
    )


def _put(body: dict[str, Any], path: tuple[str, ...], value: Any) -> None:
    for key in path[:-1]:
        body = body.setdefault(key, {})
    body[path[-1]] = value


def _quoted(text: str) -> str:
    return text if text.isascii() and text.isalnum() else quote(text, safe=",/:.-")


def _refusal(name: str, sentence: str) -> dict[str, str]:
    shown = name if len(name) <= 64 else name[:64] + "…"
    return {"pointer": "#", "parameter": shown, "detail": f'"{shown}": {sentence}'}
