"""Questions of every operation, as an address and a body or as an address alone, for tests that ask all there is."""

from __future__ import annotations

import json
import sys
from typing import Any

from flask.testing import FlaskClient

Question = tuple[str, Any]
"""(address, body); the body is None for a question in the address, and text for a sheet."""

GEARED: dict[str, Any] = {"change_gears": [24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100]}
TABLE: dict[str, Any] = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"graduation": "0°01'"}}
WORKS: list[dict[str, Any]] = [
    {"divisions": 1},
    {"divisions": 28},
    {"divisions": 73},
    {"divisions": 127},
    {"divisions": 383},
    {"divisions": 999_983},
    {"angle": "37°30'", "count": 3},
    {"angle": "0.35 rad", "count": 40},
    {"angles": ["0", "22.5", "61°15'", "200.01"]},
    {"part": {"kind": "spur_gear", "teeth": 73, "module": 2, "pressure_angle": "20", "unit": "mm"}},
    {"part": {"kind": "flats", "sides": 6, "across_flats": 24, "unit": "mm"}},
    {"part": {"kind": "bolt_circle", "holes": 11, "diameter": 120, "unit": "mm"}},
]
CLAIMS: list[dict[str, Any]] = [
    {"method": "plain", "turns": 1, "holes": 20, "circle": 49},
    {"method": "plain", "turns": 1, "holes": 12, "circle": 22},
    {"method": "compound", "turns": 0, "holes": 10, "circle": 15, "second": {"holes": -2, "circle": 17}},
    {"method": "differential", "holes": 10, "circle": 18, "gearing": {"spindle": 40, "worm": 72, "idlers": 1}},
    {"method": "nearest", "circle": 49},
]
SHEET = "ref,divisions,angle\nOP10,28,\nOP20,,22.5\nOP30,0,\nOP40,=1,\n"


def questions() -> list[Question]:
    """About sixty, of every operation; right ones, and wrong ones whose refusals name several fields."""
    asked: list[Question] = [("/v1/solve", {"work": work, "head": head}) for work in WORKS for head in ({}, GEARED)]
    asked += [("/v1/solve", {"work": work, "head": TABLE, "positions": True}) for work in WORKS[1:4]]
    asked += [("/v1/verify", {"work": {"divisions": 28}, "head": GEARED, "claim": claim}) for claim in CLAIMS]
    asked += [("/v1/angle", {"angle": angle, "diameter": 100}) for angle in ("37°30'", "0.35 rad", "360/7", -5)]
    asked += [
        ("/v1/locate", {"work": work, "head": head, "seen": {"spindle": "40°", "give": "5°"}})
        for work in (*WORKS[1:4], WORKS[8])
        for head in ({}, GEARED)
    ]
    asked += [("/v1/coverage", {"from": 2, "to": 130, "head": head}) for head in ({}, GEARED)]
    asked += [("/v1/plate", {"holes": holes}) for holes in (51, 127)]
    asked += [("/v1/practice", {"seed": seed, "count": 6, "head": GEARED}) for seed in (7, 8)]
    asked += [("/v1/practice/mark", {"seed": 7, "count": 2, "claims": [{"number": 1, "none": True}]})]
    asked += [("/v1/solve/batch", {"items": [{"work": work} for work in WORKS]}), ("/v1/solve/batch", SHEET)]
    asked += [("/v1/solve", {"work": {"size": 1}, "head": {"colour": 1, "ratio": "x"}, "methods": ["plane"], "at": 1})]
    asked += [(address, None) for address in ADDRESSES]
    return asked


ADDRESSES = [
    "/v1/solve?divisions=28&ratio=60",
    "/v1/solve?colour=red&size=3&divisions=x",
    "/v1/angle?turns=4&holes=3&circle=18",
    "/qr.svg?divisions=64",
    "/v1/heads",
    "/health",
    "/ready",
    "/openapi.json",
    "/docs",
    "/nothing",
]


def kind_of(body: Any) -> str:
    """The content type of a body."""
    return "text/csv" if isinstance(body, str) else "application/json"


def written(body: Any) -> bytes:
    """The body as it is sent."""
    return (body if isinstance(body, str) else json.dumps(body)).encode()


def answers(client: FlaskClient) -> list[tuple[str, int, str]]:
    """The address, status and bytes of every answer, the id of the request the same each time."""
    told = []
    for address, body in questions():
        headers = {"X-Request-ID": "same", "Content-Type": kind_of(body)}
        method, data = ("GET", None) if body is None else ("POST", written(body))
        answer = client.open(address, method=method, data=data, headers=headers)
        told.append((address, answer.status_code, answer.data.decode()))
    return told


if __name__ == "__main__":
    from dividing.web.app import create_app

    json.dump(answers(create_app(sink=len).test_client()), sys.stdout)
