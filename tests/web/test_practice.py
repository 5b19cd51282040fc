"""/v1/practice and /v1/practice/mark: sheets for a class, and their marking."""

from __future__ import annotations

import json
from typing import Any

import pytest
from flask.testing import FlaskClient

from tests.web.test_openapi import problems_of

GEARS = [24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100]
CLASS: dict[str, Any] = {"change_gears": GEARS, "dial": {"graduation": "0°01'", "vernier": "0°00'30\""}}
IN_LINES: dict[str, Any] = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"divisions": 100}}
HEADS: list[dict[str, Any]] = [{}, CLASS, IN_LINES, {"ratio": 1, "plates": [], "direct_circles": [36]}]


def practise(client: FlaskClient, **asked: Any) -> dict[str, Any]:
    response = client.post("/v1/practice", json=asked)
    assert response.status_code == 200, response.text
    told: dict[str, Any] = response.json
    return told


def mark(client: FlaskClient, claims: list[dict[str, Any]], **asked: Any) -> dict[str, Any]:
    response = client.post("/v1/practice/mark", json={**asked, "claims": claims})
    assert response.status_code == 200, response.text
    told: dict[str, Any] = response.json
    return told


def by_the_key(exercise: dict[str, Any]) -> dict[str, Any]:
    """What a pupil would send who looked at the key."""
    answer = exercise["answer"]
    if answer["none"]:
        return {"number": exercise["number"], "none": True}
    slip = {"slip": answer["slip"]} if answer["slip"] else {}
    return {"number": exercise["number"], "claim": answer["claim"], **slip}


def test_a_sheet_as_the_page_takes_it(client: FlaskClient) -> None:
    told = practise(client, seed=37, count=2, kinds=["plain", "find_the_slip"])
    assert {name: told[name] for name in ("seed", "count", "level", "generator", "kinds", "left_out")} == {
        "seed": 37, "count": 2, "level": 1, "generator": 1, "kinds": ["plain", "find_the_slip"], "left_out": [],
    }  # fmt: skip
    plain, slip = told["exercises"]
    # 40/32 = 1 1/4 = 1 5/20.
    assert plain["work"] == {"divisions": 32}
    assert (plain["method"], plain["may_be_none"], plain["given"], plain["circle"]) == ("plain", False, None, None)
    assert [blank["field"] for blank in plain["asked"]] == ["turns", "holes", "circle"]
    assert [blank["optional"] for blank in plain["asked"]] == [False, False, True]
    claim = {"method": "plain", "turns": 1, "holes": 5, "circle": 20, "second": None, "gearing": None, "reading": None}
    assert plain["answer"] == {
        "claim": claim, "slip": None, "none": False,
        "summary": "Plate 1, circle 20: 1 turn and 5 spaces, arms over 6 holes", "reason": None,
        "working": ["40/32 = 1 1/4", "1/4 = 5/20"],
    }  # fmt: skip
    # 18/40 = 9/20, upside down for 40/18 = 2 4/18.
    assert slip["given"]["text"] == "9 spaces on the circle of 20"
    assert slip["answer"]["slip"] == "fraction_upside_down"
    assert slip["answer"]["claim"] == {**claim, "turns": 2, "holes": 4, "circle": 18}
    (blank,) = slip["asked"]
    assert blank["field"] == "slip"
    assert {"value": "fraction_upside_down", "label": "The fraction stands upside down"} in blank["choices"]


def test_a_kind_left_out_is_told_with_its_reason(client: FlaskClient) -> None:
    told = practise(client, seed=1)
    assert told["left_out"] == [
        {"kind": "differential", "reason": "No change gears are given for this head."},
        {"kind": "dial", "reason": "This head has no dial."},
    ]
    assert told["equipment"][1] == "Plate 1, mounted: 15 16 17 18 19 20"
    assert len(told["exercises"]) == told["count"] == 12


@pytest.mark.parametrize("head", HEADS)
@pytest.mark.parametrize("level", [1, 2, 3])
def test_sheets_and_marks_are_as_described_and_the_key_is_right(
    client: FlaskClient, head: dict[str, Any], level: int
) -> None:
    asked = {"seed": 5, "count": 18, "head": head, "level": level}
    told = practise(client, **asked)
    assert not problems_of("PracticeOut", told)
    claims = [by_the_key(exercise) for exercise in told["exercises"]]
    marked = mark(client, claims, **asked)
    assert not problems_of("MarkOut", marked)
    assert {one["verdict"] for one in marked["marks"]} == {"right"}, marked["marks"]
    assert (marked["summary"]["right"], marked["summary"]["of"]) == (18, 18)
    nothing = mark(client, [], **asked)
    assert not problems_of("MarkOut", nothing)
    assert {one["verdict"] for one in nothing["marks"]} == {"not_answered"}
    assert [one["answer"] for one in nothing["marks"]] == [one["answer"] for one in told["exercises"]]


@pytest.mark.parametrize("head", HEADS)
def test_the_work_of_an_exercise_can_be_asked_and_its_key_verified(client: FlaskClient, head: dict[str, Any]) -> None:
    for exercise in practise(client, seed=8, count=27, head=head, level=2)["exercises"]:
        question = {"work": exercise["work"], "head": head}
        assert client.post("/v1/solve", json={**question, "limit": 1}).status_code == 200
        if exercise["method"] and exercise["answer"]["claim"]:
            told = client.post("/v1/verify", json={**question, "claim": exercise["answer"]["claim"]}).json
            assert told["verdict"] == "exact", exercise
        if exercise["given"] and exercise["kind"] == "find_the_slip":
            told = client.post("/v1/verify", json={**question, "claim": exercise["given"]["claim"]}).json
            assert told["likely_slips"][0]["slip"] == exercise["answer"]["slip"]


def test_the_same_question_gives_the_same_bytes(client: FlaskClient) -> None:
    asked = {"seed": 9, "count": 20, "head": CLASS, "level": 3}
    first, second = (client.post("/v1/practice", json=asked).data for _ in range(2))
    assert first == second
    spelled = json.dumps({**asked, "seed": 9.0, "generator": 1}).encode()
    assert client.post("/v1/practice", data=spelled, content_type="application/json").data == first


# Seed 37 asks for 32 parts (40/32 = 1 1/4 turns) and shows 9/20 for 18 parts (40/18 = 2 4/18).
SHEET: dict[str, Any] = {"seed": 37, "count": 2, "kinds": ["plain", "find_the_slip"]}
UPSIDE_DOWN = {"number": 2, "slip": "fraction_upside_down"}


@pytest.mark.parametrize(
    ("claim", "verdict", "explanation"),
    [
        ({"turns": 1, "holes": 4, "circle": 16}, "right", []),
        ({"method": "plain", "turns": 1, "holes": 4, "circle": 16, "second": None, "plate": 1}, "right", []),
        ({"holes": 20, "circle": 16}, "right", []),
        ({"turns": 1, "holes": 4}, "wrong", ["Say on which circle the spaces are counted."]),
        ({"turns": 1, "holes": -4, "circle": 16}, "wrong", ["Spaces lie between 0 and 1,000,000."]),
        (
            {"turns": -1, "holes": 4, "circle": 0},
            "wrong",
            ["Whole turns lie between 0 and 1,000,000.", "The holes of a circle lie between 1 and 10,000."],
        ),
        ({"method": "compound", "circle": 16}, "wrong", [
            "Compound indexing has a second move; give its holes and circle."]),
        ({"method": "compound", "circle": 16, "second": {"circle": 17}}, "wrong", [
            "Give the spaces of the second move."]),
        ({"method": "compound", "circle": 16, "second": {"holes": 1}}, "wrong", [
            "Give the circle of the second move."]),
        ({"method": "differential", "circle": 16, "gearing": {"worm": 24}}, "wrong", [
            "Give the gear on the spindle."]),
        ({"method": "differential", "circle": 16, "gearing": {"spindle": 24}}, "wrong", [
            "Give the gear on the worm side."]),
        ({"method": "differential", "circle": 16, "gearing": {"spindle": 24, "worm": 24, "stud": [24]}}, "wrong", [
            "The stud carries two gears, first and second; give both or none."]),
        ({"method": "dial", "turns": 1, "reading": "3°75'"}, "wrong", [
            "Stopped at character 3 of \"3°75'\": expected minutes below 60."]),
        ({}, "not_answered", []),
        ({"method": "plain", "turns": None}, "not_answered", []),
        (None, "not_answered", []),
    ],
)  # fmt: skip
def test_a_claim_is_marked_as_it_was_filled_in(
    client: FlaskClient, claim: dict[str, Any] | None, verdict: str, explanation: list[str]
) -> None:
    told = mark(client, [{"number": 1, "claim": claim}], **SHEET)["marks"][0]
    assert (told["verdict"], told["explanation"]) == (verdict, explanation)


def test_a_slip_is_explained_and_summed_up(client: FlaskClient) -> None:
    told = mark(client, [{"number": 1, "claim": {"turns": 1, "holes": 3, "circle": 16}}, UPSIDE_DOWN], **SHEET)
    first, second = told["marks"]
    assert (first["verdict"], second["verdict"]) == ("wrong", "right")
    # 1 3/16 turns: 40 x 16/19 = 640/19.
    assert first["makes"]["divisions"] == "640/19"
    assert first["makes"]["step"]["turns"] == "19/640"
    assert first["slips"][0]["slip"] == "counted_the_pin_hole"
    assert first["slips"][0]["corrected"]["holes"] == 4
    assert first["explanation"] == [first["slips"][0]["explanation"]]
    assert told["summary"] == {
        "of": 2, "right": 1, "wrong": 1, "not_answered": 0,
        "slips": [{
            "slip": "counted_the_pin_hole", "label": "The hole that the pin is in was counted", "times": 1,
            "numbers": [1],
        }],
        "sentence": "1 of 2 is right. The commonest slip, 1 time: the hole that the pin is in was counted.",
        "next": {"seed": 38, "kinds": ["plain"], "level": 1, "reason": "Practise plain indexing."},
    }  # fmt: skip


def test_a_setup_that_does_not_move_makes_no_divisions(client: FlaskClient) -> None:
    told = mark(client, [{"number": 1, "claim": {"turns": 0}}], **SHEET)["marks"][0]
    assert (told["makes"]["step"]["turns"], told["makes"]["divisions"]) == ("0", None)


@pytest.mark.parametrize(
    ("answer", "verdict"),
    [
        (UPSIDE_DOWN, "right"),
        ({**UPSIDE_DOWN, "claim": {"turns": 2, "holes": 6, "circle": 27}}, "right"),
        ({**UPSIDE_DOWN, "claim": {"turns": 2, "holes": 6, "circle": 18}}, "wrong"),
        ({**UPSIDE_DOWN, "claim": {"turns": 2, "holes": 6}}, "wrong"),
        ({"number": 2, "slip": "counted_the_pin_hole"}, "wrong"),
        ({"number": 2, "claim": {"turns": 2, "holes": 4, "circle": 18}}, "wrong"),
        ({"number": 2, "none": True}, "wrong"),
    ],
)
def test_a_slip_is_found_with_or_without_what_is_right(
    client: FlaskClient, answer: dict[str, Any], verdict: str
) -> None:
    assert mark(client, [answer], **SHEET)["marks"][1]["verdict"] == verdict


def test_plate_and_arms_are_marked_by_their_own_claims(client: FlaskClient) -> None:
    asked = {"seed": 3, "count": 2, "kinds": ["which_plate", "sector_arms"]}
    told = practise(client, **asked)
    for exercise in told["exercises"]:
        number, right = exercise["number"], exercise["answer"]["claim"]
        wrong = {name: value + 1 for name, value in right.items()}
        assert mark(client, [{"number": number, "claim": right}], **asked)["summary"]["right"] == 1
        assert mark(client, [{"number": number, "claim": wrong}], **asked)["summary"]["wrong"] == 1
    lacking = [{"number": each["number"], "claim": {"holes": 3}} for each in told["exercises"]]
    sentences = {"which_plate": ["Give the plate."], "sector_arms": ["Give the holes between the arms."]}
    for one in mark(client, lacking, **asked)["marks"]:
        assert one["explanation"] == sentences[one["kind"]]
    number = next(each["number"] for each in told["exercises"] if each["kind"] == "which_plate")
    no_circle = mark(client, [{"number": number, "claim": {"plate": 1}}], **asked)["marks"][number - 1]
    assert no_circle["explanation"] == ["Give the circle."]


def test_gears_and_dial_are_marked_as_they_are_filled_in(client: FlaskClient) -> None:
    asked = {"seed": 29, "count": 9, "head": CLASS}
    # Exercise 5 is 101 by 8/20: 40 - 101 x 8/20 = -2/5. Exercise 6 is the first step of 12: 3 turns and 3 degrees.
    train = {"spindle": 40, "worm": 100, "stud": [], "idlers": 2}
    move = {"holes": 8, "circle": 20}

    def verdicts(gearing: dict[str, Any]) -> list[str]:
        claims = [
            {"number": 5, "claim": {**move, "gearing": gearing}},
            {"number": 6, "claim": {"turns": 3, "reading": 3}},
        ]
        return [one["verdict"] for one in mark(client, claims, **asked)["marks"][4:6]]

    assert verdicts(train) == ["right", "right"]
    assert verdicts({**train, "idlers": 1}) == ["wrong", "right"]
    # Idlers left out are none, which turns the plate the same way as two.
    assert verdicts({**train, "idlers": None}) == ["right", "right"]
    bare = {"number": 5, "claim": {**move, "gearing": {"spindle": None, "worm": None}}}
    assert mark(client, [bare], **asked)["marks"][4]["slips"][0]["slip"] == "gears_left_off"


KINDS = "plain, angular, direct, which_plate, sector_arms, compound, differential, dial, find_the_slip"
REFUSED = [
    ({}, [("#/seed", "This field is needed.")]),
    ({"seed": -1}, [("#/seed", "The seed is a whole number from 0 to 999,999,999.")]),
    ({"seed": 1000000000}, [("#/seed", "The seed is a whole number from 0 to 999,999,999.")]),
    ({"seed": "7"}, [("#/seed", "Give a whole number without quotes: 7.")]),
    ({"seed": None}, [("#/seed", "Give a value here, or leave the field out.")]),
    ({"seed": 1, "count": 61}, [("#/count", "A sheet has 1 to 60 exercises.")]),
    ({"seed": 1, "level": 4}, [("#/level", "The level is 1, 2 or 3.")]),
    ({"seed": 1, "generator": 2}, [("#/generator", "Exercises are drawn in one way so far; give 1, or nothing.")]),
    ({"seed": 1, "kinds": []}, [("#/kinds", f"Give a list of one to 9 of: {KINDS}.")]),
    ({"seed": 1, "kinds": ["helix"]}, [("#/kinds/0", f"Give one of: {KINDS}.")]),
    ({"seed": 1, "kinds": ["dial", "dial"]}, [("#/kinds/1", '"dial" stands twice; give it once.')]),
    (
        {"seed": 1, "kinds": ["dial"]},
        [("#/kinds", "This head can do none of the kinds asked for. dial: This head has no dial. Ask for other kinds, "
          "or change the head.")],
    ),
    (
        {"seed": -1, "count": 0, "level": 0, "head": {"ratio": 0}},
        [
            ("#/head/ratio", "The ratio is a whole number of crank turns, 1 to 10,000."),
            ("#/seed", "The seed is a whole number from 0 to 999,999,999."),
            ("#/count", "A sheet has 1 to 60 exercises."),
            ("#/level", "The level is 1, 2 or 3."),
        ],
    ),
    ({"seed": 1, "pupil": "x"}, [("#/pupil", 'There is no field "pupil" here; the fields are seed, count, head, kinds, '
                                  "level, generator.")]),
]  # fmt: skip


@pytest.mark.parametrize(("asked", "errors"), REFUSED)
def test_a_sheet_that_cannot_be_made_is_refused(
    client: FlaskClient, asked: dict[str, Any], errors: list[tuple[str, str]]
) -> None:
    response = client.post("/v1/practice", json=asked)
    assert response.status_code == 422
    assert [(error["pointer"], error["detail"]) for error in response.json["errors"]] == errors


@pytest.mark.parametrize(
    ("claims", "errors"),
    [
        (None, [("#/claims", "Give a value here, or leave the field out.")]),
        (3, [("#/claims", 'Give a list of answers here, between "[" and "]".')]),
        ([{"number": 1}] * 61, [("#/claims", "Give at most 60 answers.")]),
        ([3], [("#/claims/0", 'Give an object here: fields between "{" and "}".')]),
        ([{}], [("#/claims/0/number", "This field is needed.")]),
        ([{"number": 0}, {"number": 3}], [
            ("#/claims/0/number", "The sheet has exercises 1 to 2."),
            ("#/claims/1/number", "The sheet has exercises 1 to 2."),
        ]),
        ([{"number": 1}, {"number": 2}, {"number": 1}], [
            ("#/claims/2/number", "Exercise 1 is answered twice; answer it once."),
        ]),
        ([{"number": 1, "none": True, "claim": {}}], [
            ("#/claims/0/none", "Either nothing serves, or there is something to give; not both."),
        ]),
        ([{"number": 2, "none": True, "slip": "other_ratio"}], [
            ("#/claims/0/none", "Either nothing serves, or there is something to give; not both."),
        ]),
        ([{"number": 2}, {"number": 1, "slip": "other_ratio"}], [
            ("#/claims/1/slip", "Exercise 1 does not ask for a slip; leave it out."),
        ]),
        ([{"number": 1, "claim": {"holes": "3", "second": {"circle": 1.5}, "reading": []}}], [
            ("#/claims/0/claim/holes", "Give a whole number without quotes: 3."),
            ("#/claims/0/claim/second/circle", "Give a whole number without decimals, and no longer than 24 digits."),
            ("#/claims/0/claim/reading",
             'Give the dial\'s reading, such as "3°25\'40\\"", or its lines on a dial without degrees.'),
        ]),
    ],
)  # fmt: skip
def test_answers_that_cannot_be_read_are_refused(
    client: FlaskClient, claims: Any, errors: list[tuple[str, str]]
) -> None:
    response = client.post("/v1/practice/mark", json={**SHEET, "claims": claims})
    assert response.status_code == 422, response.text
    assert [(error["pointer"], error["detail"]) for error in response.json["errors"]] == errors


def test_wrong_sheet_and_wrong_answers_are_told_at_once(client: FlaskClient) -> None:
    response = client.post("/v1/practice/mark", json={"seed": -1, "claims": [{"number": 13}]})
    assert [error["pointer"] for error in response.json["errors"]] == ["#/seed", "#/claims/0/number"]
    response = client.post("/v1/practice/mark", json={"seed": 1})
    assert response.json["errors"] == [{"pointer": "#/claims", "detail": "This field is needed."}]


def test_too_many_exercises_on_a_monstrous_head_are_refused_with_how_to_split_them(client: FlaskClient) -> None:
    great = {"plates": [list(range(70, 169))], "change_gears": [min(10 + 8 * place, 199) for place in range(24)]}
    claims = [{"number": number, "none": True} for number in range(1, 61)]
    response = client.post("/v1/practice/mark", json={"seed": 1, "count": 60, "head": great, "claims": claims})
    assert response.status_code == 422
    assert response.json["type"] == "/docs#problem-too-much-work"
    assert response.json["detail"].startswith("This sheet would take about ")
    assert response.json["detail"].endswith(
        " seconds of work; 2 are given. Ask for fewer exercises, or give the head fewer circles and gears."
    )
    fewer = {"seed": 1, "count": 12, "head": great, "claims": claims[:12]}
    assert client.post("/v1/practice/mark", json=fewer).status_code == 200


def test_the_largest_sheet_on_the_head_of_a_class_is_made_and_marked(client: FlaskClient) -> None:
    asked = {"seed": 2, "count": 60, "head": CLASS, "level": 3}
    claims = [by_the_key(exercise) for exercise in practise(client, **asked)["exercises"]]
    assert mark(client, claims, **asked)["summary"]["right"] == 60
