"""The query form: a simple question in words that fit a link, read into the body's form and written from it.

divisions=73&ratio=60&plates=15,16,17/21,23&tolerance=0°01'
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import lru_cache
from typing import Any
from urllib.parse import parse_qsl, quote

from dividing.indexing.head import Head

from .answers.heads import head_out
from .limits import QUERY_LONGEST
from .problems import WRONG_FIELD, Problem
from .query_words import HEAD_WORDS, SOLVE_WORDS, QueryWord
from .schemas.head import DEFAULT_HEAD

_LINK_WORDS = {
    word.path: (order, name, word)
    for order, (name, word) in enumerate(SOLVE_WORDS.items())
    if word.path[0] not in ("head", "positions")
}


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
    told = [
        (order, f"{name}={_quoted(word.write(value))}")
        for path, value in _leaves(body)
        if (found := _LINK_WORDS.get(path)) and value is not None
        for order, name, word in (found,)
    ]
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


def _leaves(body: Mapping[str, Any]) -> Iterator[tuple[tuple[str, ...], Any]]:
    for key, value in body.items():
        if isinstance(value, dict) and key != "head":
            for inner, below in value.items():
                yield (key, inner), below
        else:
            yield (key,), value


def _put(body: dict[str, Any], path: tuple[str, ...], value: Any) -> None:
    for key in path[:-1]:
        body = body.setdefault(key, {})
    body[path[-1]] = value


def _quoted(text: str) -> str:
    return quote(text, safe=",/:.-")


def _refusal(name: str, sentence: str) -> dict[str, str]:
    shown = name if len(name) <= 64 else name[:64] + "…"
    return {"pointer": "#", "parameter": shown, "detail": f'"{shown}": {sentence}'}
