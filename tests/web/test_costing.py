"""A question is costed before it is begun."""

from __future__ import annotations

from math import gcd
from typing import Any

import pytest
from flask.testing import FlaskClient

from dividing.indexing.angles import Angle, parse_angle
from dividing.indexing.bounds import ROWS_MOST
from dividing.indexing.head import SET_ONE, TWELVE_GEARS, Head
from dividing.indexing.work import Angles, Arc, Divisions, Work
from dividing.web import costing
from dividing.web.costing import PER_ROW, answering, check_drilling, solving
from dividing.web.limits import SECONDS_OF_WORK
from dividing.web.problems import Problem
from dividing.web.schemas.head import load_head
from dividing.web.schemas.solve import Question

# As many holes and gears as a head may have.
GREAT: dict[str, Any] = {
    "plates": [list(range(70, 170))],
    "direct_circles": [],
    "change_gears": [min(10 + 8 * place, 199) for place in range(24)],
}
COSTLY = [
    ("/v1/solve", {"work": {"angle": "359.99917", "count": 20000}, "positions": True, "limit": 1}, "without positions"),
    (
        "/v1/verify",
        {"work": {"angle": "6.2 rad", "count": 20000}, "claim": {"method": "plain", "holes": 1, "circle": 100}},
        "only the plates and gears that the claim uses",
    ),
    (
        "/v1/locate",
        {"work": {"angle": "6.2 rad", "count": 20000}, "seen": {"hole": 1, "spindle": "73°"}},
        "only the plates and gears in use",
    ),
]


@pytest.fixture
def half_the_time(monkeypatch: pytest.MonkeyPatch) -> None:
    """No single question that may be asked takes two seconds, so less is given here."""
    monkeypatch.setattr(costing, "SECONDS_OF_WORK", 0.6)


@pytest.mark.usefixtures("half_the_time")
@pytest.mark.parametrize(("path", "question", "advice"), COSTLY)
def test_too_much_work_is_refused_with_how_to_split_it(
    client: FlaskClient, path: str, question: dict[str, Any], advice: str
) -> None:
    response = client.post(path, json={**question, "head": GREAT})
    assert response.status_code == 422
    assert response.json["type"] == "/docs#problem-too-much-work"
    assert response.json["detail"].startswith("This would take about ")
    assert advice in response.json["detail"]


@pytest.mark.parametrize(("path", "question", "advice"), COSTLY)
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


def test_the_costliest_plate_is_within_what_is_given_and_a_costlier_one_is_refused(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    head = load_head(GREAT)
    check_drilling(Divisions(1), head)
    monkeypatch.setattr(costing, "SECONDS_OF_WORK", 0.1)
    with pytest.raises(Problem) as refusal:
        check_drilling(Divisions(1), head)
    assert refusal.value.detail.endswith("Give the head only the plates and gears in use.")


def test_no_number_of_divisions_costs_more_than_one_on_the_same_head() -> None:
    """`check` lets divisions pass by this alone."""
    for head in (Head(), Head(change_gears=TWELVE_GEARS), load_head(GREAT)):
        most = solving(Divisions(1), head) + ROWS_MOST * PER_ROW
        for count in (2, 7, 97, 1_009, 19_997, 20_003, 1_000_000):
            for every in (1, 3, count - 1):
                work = Divisions(count, every) if count > every and gcd(count, every) == 1 else Divisions(count)
                question = Question(work, head, None, None, 100, positions=True)
                assert answering(question) <= most, (head, count, every)


# The most places, cuts, tries and rows that a question may have.
@pytest.mark.parametrize(
    "work",
    [
        Divisions(1),
        Divisions(19_997),
        Arc(parse_angle("359.99917"), 20_000),
        Arc(parse_angle("6.2 rad"), 2),
        Angles((parse_angle("1.1"),) * 2_000),
    ],
)
def test_no_single_question_takes_two_seconds(work: Work) -> None:
    question = Question(work, load_head(GREAT), None, None, 100, positions=True)
    assert answering(question) < SECONDS_OF_WORK
