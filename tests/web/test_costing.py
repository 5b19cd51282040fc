"""A question is costed before it is begun."""

from __future__ import annotations

from typing import Any

import pytest
from flask.testing import FlaskClient

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.head import SET_ONE, TWELVE_GEARS, Head
from dividing.indexing.work import Angles, Arc, Divisions
from dividing.web.costing import check_drilling, solving
from dividing.web.problems import Problem
from dividing.web.schemas.head import load_head

# As many holes and gears as a head may have.
GREAT: dict[str, Any] = {
    "plates": [list(range(70, 170))],
    "direct_circles": [],
    "change_gears": [min(10 + 8 * place, 199) for place in range(24)],
}
TOO_MUCH = [
    ("/v1/solve", {"work": {"angle": "359.99917", "count": 20000}, "positions": True, "limit": 1}, "without positions"),
    (
        "/v1/verify",
        {"work": {"angle": "6.2 rad"}, "claim": {"method": "plain", "holes": 1, "circle": 100}},
        "only the plates and gears that the claim uses",
    ),
]


@pytest.mark.parametrize(("path", "question", "advice"), TOO_MUCH)
def test_too_much_work_is_refused_with_how_to_split_it(
    client: FlaskClient, path: str, question: dict[str, Any], advice: str
) -> None:
    response = client.post(path, json={**question, "head": GREAT})
    assert response.status_code == 422
    assert response.json["type"] == "/docs#problem-too-much-work"
    assert response.json["detail"].startswith("This would take about 2.")
    assert advice in response.json["detail"]


@pytest.mark.parametrize(("path", "question", "advice"), TOO_MUCH)
def test_the_same_on_a_usual_head_is_answered(
    client: FlaskClient, path: str, question: dict[str, Any], advice: str
) -> None:
    assert advice
    smaller = {**question, "work": {**question["work"], "count": 50}}
    assert client.post(path, json=smaller).status_code == 200


def test_more_holes_gears_or_cuts_never_cost_less() -> None:
    geared = Head(change_gears=TWELVE_GEARS)
    fewer = Head(plates=SET_ONE[:1], change_gears=TWELVE_GEARS)
    for work in (Divisions(7), Divisions(1009), Arc(Angle(parse_angle("0.35 rad").turns, rational=False), 50)):
        assert solving(work, Head()) <= solving(work, geared)
        assert solving(work, fewer) <= solving(work, geared)
    few, many = (Angles((parse_angle("1.1"),) * count) for count in (10, 1000))
    assert solving(few, geared) < solving(many, geared)
    assert solving(Divisions(7), geared, ("plain",)) < solving(Divisions(7), geared)


def test_an_ordinary_question_costs_next_to_nothing() -> None:
    for count in range(2, 2000):
        assert solving(Divisions(count), Head(change_gears=TWELVE_GEARS)) < 0.1


def test_the_costliest_plate_is_within_what_is_given_and_a_costlier_one_is_refused() -> None:
    head = load_head(GREAT)
    check_drilling(Divisions(2), head)
    with pytest.raises(Problem) as refusal:
        check_drilling(Divisions(1), head)
    assert refusal.value.detail.startswith("This would take about 2.")
    assert refusal.value.detail.endswith("Give the head only the plates and gears in use.")
