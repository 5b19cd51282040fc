"""/v1/solve as another program sees it: the contract's examples, shapes, and what is given when."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from flask.testing import FlaskClient

from dividing import __version__
from dividing.indexing.head import TWELVE_GEARS

SETUP_KEYS = [
    "method", "exact", "summary", "move", "second_move", "gearing", "dial", "every", "error",
    "working", "instructions", "cautions", "positions",
]  # fmt: skip
TABLE = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"graduation": "0°01'", "vernier": "0°00'10\""}}
IN_DIVISIONS = {"ratio": 90, "plates": [], "direct_circles": [], "dial": {"divisions": 100}}
GEARED = {"change_gears": list(TWELVE_GEARS)}


def ask(client: FlaskClient, question: dict[str, Any]) -> dict[str, Any]:
    response = client.post("/v1/solve", json=question)
    assert response.status_code == 200, response.text
    told: dict[str, Any] = response.json
    return told


def refusal(client: FlaskClient, question: dict[str, Any]) -> list[dict[str, str]]:
    response = client.post("/v1/solve", json=question)
    assert response.status_code == 422, response.text
    errors: list[dict[str, str]] = response.json["errors"]
    return errors


def test_28_divisions_are_21_spaces_on_49_then_9_on_21(client: FlaskClient) -> None:
    told = ask(client, {"work": {"divisions": 28}})
    assert [setup["move"] for setup in told["setups"]] == [
        {"turns": 1, "holes": 21, "circle": 49, "plate": 3, "sector_holes": 22},
        {"turns": 1, "holes": 9, "circle": 21, "plate": 2, "sector_holes": 10},
    ]
    assert list(told) == ["work", "setups", "declined", "part", "cautions", "link", "service_version"]
    assert [list(setup) for setup in told["setups"]] == [SETUP_KEYS] * 2
    assert told["work"]["step"] == {"degrees": 360 / 28, "dms": "12°51'25.71\"", "turns": "1/28"}
    assert (told["part"], told["service_version"]) == (None, __version__)
    assert {no["method"] for no in told["declined"]} == {"direct", "differential", "compound", "dial", "nearest"}
    assert all(no["reason"].endswith(".") for no in told["declined"])


def test_an_exact_setup_says_so_in_every_figure(client: FlaskClient) -> None:
    assert ask(client, {"work": {"divisions": 28}})["setups"][0]["error"] == {
        "step": "0", "worst_seconds": 0.0, "closing_seconds": 0.0, "single_pitch_seconds": 0.0,
        "total_pitch_seconds": 0.0, "at_rim": None, "within_tolerance": None,
    }  # fmt: skip


def test_a_differential_setup_names_its_gears(client: FlaskClient) -> None:
    setup = ask(client, {"work": {"divisions": 73}, "head": GEARED})["setups"][0]
    gearing, move = setup["gearing"], setup["move"]
    assert (setup["method"], setup["exact"], gearing["stud"]) == ("differential", True, None)
    assert Fraction(gearing["train"]) == Fraction(gearing["spindle"], gearing["worm"])
    # 40 - 73 f is what the plate must make for one turn of the spindle.
    wanted = 40 - 73 * (move["turns"] + Fraction(move["holes"], move["circle"]))
    assert abs(wanted) == Fraction(gearing["train"])
    assert gearing["plate"] == ("with" if wanted > 0 else "against")


def test_a_compound_setup_has_a_second_move_on_the_same_plate(client: FlaskClient) -> None:
    setup = ask(client, {"work": {"divisions": 51}})["setups"][0]
    first, second = setup["move"], setup["second_move"]
    assert setup["method"] == "compound"
    assert list(second) == ["turns", "holes", "circle", "plate", "sector_holes"]
    assert second["plate"] == first["plate"]
    both = first["turns"] + Fraction(first["holes"], first["circle"]) + Fraction(second["holes"], second["circle"])
    assert both == Fraction(40, 51)


def test_a_direct_setup_moves_the_spindle(client: FlaskClient) -> None:
    setup = ask(client, {"work": {"divisions": 8}})["setups"][0]
    assert setup["method"] == "direct"
    assert setup["move"] == {"turns": 0, "holes": 3, "circle": 24, "plate": None, "sector_holes": 4}


def test_a_dial_is_set_in_degrees_or_in_its_lines(client: FlaskClient) -> None:
    in_degrees = ask(client, {"work": {"divisions": 7}, "head": TABLE})["setups"][0]
    assert in_degrees["dial"] == {
        "turns": 12,
        "reading": {"degrees": 360 / 105, "dms": "3°25'42.86\"", "turns": "1/105"},
        "set": "3°25'40\"",
    }
    assert in_degrees["move"] is None
    in_lines = ask(client, {"work": {"divisions": 9}, "head": IN_DIVISIONS, "positions": True})["setups"][0]
    assert in_lines["dial"]["divisions"] == "0"
    assert "set" not in in_lines["dial"]
    assert [row["dial"]["turns"] for row in in_lines["positions"]] == list(range(0, 90, 10))


def test_a_list_of_angles_on_a_dial_has_no_one_setting(client: FlaskClient) -> None:
    setup = ask(client, {"work": {"angles": ["0", "1.1", "200"]}, "head": TABLE})["setups"][0]
    assert setup["dial"] == {"turns": None, "reading": None, "set": None}
    assert [row["dial"]["set"] for row in setup["positions"]] == ["0°00'00\"", "1°06'00\"", "0°00'00\""]


def test_positions_are_given_only_when_asked(client: FlaskClient) -> None:
    question = {"work": {"divisions": 6}, "limit": 1}
    assert ask(client, question)["setups"][0]["positions"] is None
    rows = ask(client, {**question, "positions": True})["setups"][0]["positions"]
    assert [row["cut"] for row in rows] == [1, 2, 3, 4, 5, 6]
    assert list(rows[0]) == [
        "cut", "division", "angle", "turns", "holes", "hole", "second_holes", "second_hole", "dial", "scale",
        "free_check", "error_seconds",
    ]  # fmt: skip
    assert [row["scale"] for row in rows] == ["0°00'", "60°00'", "120°00'", "180°00'", "240°00'", "300°00'"]


@pytest.mark.parametrize("work", [{"divisions": 127}, {"angles": ["0", "10.1", "20.3"]}])
def test_where_no_move_repeats_positions_are_always_given(client: FlaskClient, work: dict[str, Any]) -> None:
    told = ask(client, {"work": work, "methods": ["nearest"]} if "divisions" in work else {"work": work})
    for setup in told["setups"]:
        assert (setup["move"]["turns"], setup["move"]["holes"], setup["move"]["sector_holes"]) == (None, None, None)
        assert len(setup["positions"]) in (127, 3)


def test_a_cut_on_the_place_of_another_is_told_first(client: FlaskClient) -> None:
    # Four steps of 90° are a turn.
    told = ask(client, {"work": {"angle": "90°", "count": 5}})["cautions"]
    assert told[0] == "Cut 5 falls on the place of cut 1: leave it out unless that is meant."
    assert told[1:] == ask(client, {"work": {"angle": "90°", "count": 4}})["cautions"]


def test_lines_of_a_straight_scale_fall_on_no_others_though_the_spindle_turns_round(client: FlaskClient) -> None:
    # 0.25/40 = 0.00625 in is one crank turn, so the forty-first line comes after a whole turn of the spindle.
    scale = {"kind": "dial", "form": "linear", "divisions": 50, "spacing": 0.00625, "unit": "in"}
    head = {"screw": {"lead": 0.25, "unit": "in"}}
    told = ask(client, {"work": {"part": scale}, "head": head})
    assert told["work"]["step"]["turns"] == "1/40"
    assert [sentence for sentence in told["cautions"] if "falls on the place" in sentence] == []


def test_a_table_too_long_is_left_out_and_said_so(client: FlaskClient) -> None:
    told = ask(client, {"work": {"divisions": 20011}, "methods": ["nearest"]})
    assert [setup["positions"] for setup in told["setups"]] == [None, None]
    assert told["cautions"][-1] == (
        "Positions are left out: an answer holds at most 20,000 rows, and this work has 20,011 cuts. "
        "Ask for its places in parts, as lists of at most 2,000 angles."
    )


def test_the_second_of_two_long_tables_is_left_out(client: FlaskClient) -> None:
    told = ask(client, {"work": {"divisions": 12007}, "methods": ["nearest"]})
    assert [setup["positions"] is None for setup in told["setups"]] == [False, True]
    assert told["cautions"][-1] == "The positions of later setups are left out: an answer holds at most 20,000 rows."


def test_more_rows_than_an_answer_holds_are_refused_with_how_to_ask(client: FlaskClient) -> None:
    question = {"head": {"ratio": 2000}, "positions": True}
    assert refusal(client, {**question, "work": {"divisions": 20001}}) == [
        {
            "pointer": "#/positions",
            "detail": "Positions are given for at most 20,000 cuts; this work has 20,001. Leave them out.",
        }
    ]
    told = refusal(client, {**question, "work": {"divisions": 14000}})
    assert told[0]["pointer"] == "#/limit"
    assert told[0]["detail"].endswith("Set limit to 1 or less, or leave positions out.")


def test_the_scale_knows_no_360_degrees(client: FlaskClient) -> None:
    rows = ask(client, {"work": {"angles": ["359.999°"]}, "methods": ["nearest"]})["setups"][0]["positions"]
    assert rows[0]["scale"] == "0°00'"


@pytest.mark.parametrize(
    ("tolerance", "kept", "at_rim"),
    [
        ({"angle": "0°01'"}, True, None),
        ({"angle": '0.1"'}, False, None),
        ({"angle": "0°01'", "diameter": 100}, True, 0.0033),
        ({"at_rim": 0.01, "diameter": 100}, True, 0.0033),
        ({"at_rim": 0.001, "diameter": 100}, False, 0.0033),
    ],
)
def test_a_tolerance_is_held_against_the_worst_position(
    client: FlaskClient, tolerance: dict[str, Any], kept: bool, at_rim: float | None
) -> None:
    question = {"work": {"divisions": 127}, "methods": ["nearest"], "tolerance": tolerance}
    error = ask(client, question)["setups"][0]["error"]
    assert error["within_tolerance"] is kept
    # An angle e in seconds on a diameter D is e D / 412,529.6 along the rim (206,264.8 seconds in a radian).
    expected = None if at_rim is None else pytest.approx(error["worst_seconds"] * 100 / 412_529.6, rel=1e-4)
    assert error["at_rim"] == expected


def test_block_indexing_goes_round_several_times(client: FlaskClient) -> None:
    setup = ask(client, {"work": {"divisions": 28}, "every": 5, "positions": True, "limit": 1})["setups"][0]
    assert setup["every"] == 5
    assert [row["division"] for row in setup["positions"]][:7] == [0, 5, 10, 15, 20, 25, 2]


@pytest.mark.parametrize("work", [{"angle": 45}, {"angles": [0, 45]}])
def test_block_indexing_is_for_equal_divisions(client: FlaskClient, work: dict[str, Any]) -> None:
    told = refusal(client, {"work": work, "every": 3})
    assert told == [{"pointer": "#/every", "detail": "Spaces per move are for equal divisions; leave the field out."}]


@pytest.mark.parametrize(
    ("work", "pointer", "sentence"),
    [
        ({}, "#/work", "Give exactly one of divisions, angle, angles and part."),
        ({"count": 3}, "#/work", "Give exactly one of divisions, angle, angles and part."),
        ({"divisions": 3, "angle": 4}, "#/work/angle", "Give exactly one of divisions, angle, angles and part."),
        ({"divisions": 3, "count": 4}, "#/work/count", "A count of features goes with an angle; leave it out."),
        ({"angles": []}, "#/work/angles", "Give one angle at least, such as 22.5 or 61°15'."),
        ({"angles": "0"}, "#/work/angles", 'Give a list of angles, such as ["0", "22.5", "61°15\'"].'),
    ],
)
def test_the_work_is_exactly_one_thing(client: FlaskClient, work: Any, pointer: str, sentence: str) -> None:
    assert refusal(client, {"work": work}) == [{"pointer": pointer, "detail": sentence}]


def test_methods_that_give_nothing_are_refused_with_each_reason(client: FlaskClient) -> None:
    told = refusal(client, {"work": {"divisions": 73}, "methods": ["direct", "plain"]})
    assert told[0]["pointer"] == "#/methods"
    assert told[0]["detail"] == (
        "Nothing serves with these methods. Direct: The direct plate has 24 holes, not a multiple of 73. "
        "Plain: No circle on these plates is a multiple of 73. Allow other methods, or change the head."
    )


def test_only_the_methods_asked_for_are_told_of(client: FlaskClient) -> None:
    told = ask(client, {"work": {"divisions": 51}, "methods": ["plain", "compound"]})
    assert {setup["method"] for setup in told["setups"]} == {"compound"}
    assert [no["method"] for no in told["declined"]] == ["plain"]


def test_a_limit_keeps_the_best(client: FlaskClient) -> None:
    both = ask(client, {"work": {"divisions": 28}})["setups"]
    assert ask(client, {"work": {"divisions": 28}, "limit": 1})["setups"] == both[:1]


def test_an_angle_in_radians_has_no_exact_form(client: FlaskClient) -> None:
    told = ask(client, {"work": {"angle": "0.35 rad", "count": 3}, "positions": True, "limit": 1})
    assert told["work"]["step"]["turns"] is None
    assert told["setups"][0]["error"]["step"] is None
    assert {row["angle"]["turns"] for row in told["setups"][0]["positions"][1:]} == {None}


@pytest.mark.parametrize("number", [73, "73.0", "7.3e1", "730E-1"])
def test_a_whole_number_may_be_spelt_with_decimals(client: FlaskClient, number: Any) -> None:
    body = f'{{"work": {{"divisions": {number}}}}}'
    response = client.post("/v1/solve", data=body, content_type="application/json")
    assert response.json["work"]["divisions"] == 73


def test_a_decimal_of_degrees_is_exact(client: FlaskClient) -> None:
    assert ask(client, {"work": {"angle": 0.1}})["work"]["step"]["turns"] == "1/3600"


def test_the_same_question_gives_the_same_bytes(client: FlaskClient) -> None:
    question = {"work": {"divisions": 127}, "head": GEARED, "positions": True, "limit": 2}
    assert len({client.post("/v1/solve", json=question).data for _ in range(5)}) == 1


def test_a_head_left_out_is_the_usual_head_written_in_full(client: FlaskClient) -> None:
    usual = client.get("/v1/heads").json["heads"][0]["head"]
    bare, whole = ({"work": {"divisions": 28}, **more} for more in ({}, {"head": usual}))
    assert client.post("/v1/solve", json=bare).data == client.post("/v1/solve", json=whole).data


def test_no_figure_is_minus_nought(client: FlaskClient) -> None:
    for divisions in (7, 127, 1009):
        assert b"-0.0," not in client.post("/v1/solve", json={"work": {"divisions": divisions}, "positions": True}).data
