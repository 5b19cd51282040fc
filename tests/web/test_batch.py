"""/v1/solve/batch: many questions in one call."""

from __future__ import annotations

import csv
import io
import re
from typing import Any

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from dividing.web import batch

ADDRESS = "/v1/solve/batch"
CIRCLES = (15, 16, 17, 18, 19, 20, 21, 23, 27, 29, 31, 33, 37, 39, 41, 43, 47, 49)
SERVED = [count for count in range(2, 400) if any(40 * circle % count == 0 for circle in CIRCLES)]
RESULTS = (
    "status,method,exact,turns,holes,circle,plate,sector_holes,second_holes,second_circle,spindle,worm,first_stud,"
    "second_stud,idlers,worst_seconds,summary,problem"
)


def send(client: FlaskClient, text: str | bytes, kind: str = "text/csv") -> TestResponse:
    return client.post(ADDRESS, data=text.encode() if isinstance(text, str) else text, content_type=kind)


def rows(response: TestResponse, parted_by: str = ",") -> list[dict[str, str]]:
    assert response.status_code == 200, response.text
    assert response.content_type == "text/csv; charset=utf-8"
    text = response.data.decode("utf-8-sig")
    return list(csv.DictReader(io.StringIO(text, newline=""), delimiter=parted_by))


BROKEN = [
    ("", "Give exactly one of divisions, angle, angles and part."),
    ("0", "divisions: "),
    ("-3", "divisions: "),
    ("28.5", "divisions: "),
    ('"1,000"', "divisions: "),
    ("1.000", "divisions: "),
    ("twenty", "divisions: "),
    ("1000001", "divisions: "),
    ('"28', "A quote in this line is not closed"),
    ('"28"x', "A quote in this line is not closed"),
    ("28,7", "This line has 4 cells, the heading 3."),
    ("2\x008", "This line holds a character that is no text (NUL)."),
    ("9" * 2000, "divisions: "),
    ("8" * 20000, "A cell of this line is longer than 10,000 characters."),
    ("=28", "divisions: "),
    ("1e3", "divisions: "),
    ("٢٨", "divisions: "),
    ("28 29", "divisions: "),
]


def test_of_five_hundred_lines_fifty_broken_ones_spoil_no_other(client: FlaskClient) -> None:
    text = ["ref,note,divisions"]
    wanted = []
    for at in range(500):
        broken = BROKEN[at // 10 % len(BROKEN)] if at % 10 == 3 else None
        count = SERVED[at % len(SERVED)]
        text.append(f"OP{at},n{at},{broken[0] if broken else count}")
        wanted.append((at, count, broken))

    found = rows(send(client, "\r\n".join(text) + "\r\n"))

    assert len(found) == 500
    assert sum(row["status"] == "200" for row in found) == 450
    for row, (at, count, broken) in zip(found, wanted, strict=True):
        if broken:
            assert (row["status"], row["method"]) == ("422", "")
            assert row["problem"].startswith(broken[1]), at
            assert f"OP{at}" in row["ref"]
            continue
        assert (row["ref"], row["note"], row["exact"], row["problem"]) == (f"OP{at}", f"n{at}", "true", "")
        crank = 1 if row["method"] == "direct" else 40
        circle = int(row["circle"]) if row["circle"] else 1
        spaces = int(row["turns"]) * circle + int(row["holes"] or 0)
        assert spaces * count == crank * circle, row


def test_all_columns_come_out_as_they_went_in_in_any_order(client: FlaskClient) -> None:
    text = "\ufeffPart;Divisions;Ref;ratio\r\ntake-up ratchet;64;OP10;\r\n;28;OP10;60\r\n"
    response = send(client, text)
    heading = response.data.decode().split("\r\n")[0]
    assert heading == "\ufeffPart;Divisions;Ref;ratio;" + RESULTS.replace(",", ";")
    first, second = rows(response, ";")
    assert (first["Part"], first["Ref"], first["circle"], first["holes"]) == ("take-up ratchet", "OP10", "16", "10")
    # 60/28 = 2 1/7
    assert (second["Ref"], second["turns"]) == ("OP10", "2")
    assert int(second["holes"]) * 7 == int(second["circle"])


@pytest.mark.parametrize(
    ("heading", "line", "turns", "share"),
    [
        ("angle;count", "22,5;3", "2", (1, 2)),  # 22.5/9 = 2 1/2
        ("angle;count", "22°30';3", "2", (1, 2)),
        ("angles", "0;22,5;45", None, None),
        ("divisions;tolerance;diameter", "64;;0,5", "0", (10, 16)),
        ("divisions;plates", '64;"15,16/21,23"', "0", (10, 16)),
    ],
)
def test_decimal_commas_and_lists_are_read_in_their_cells(
    client: FlaskClient, heading: str, line: str, turns: str | None, share: tuple[int, int] | None
) -> None:
    cell = f'"{line}"' if heading == "angles" else line
    text = f"ref;methods;{heading}\r\nA;plain;{cell}\r\n" if share else f"ref;{heading}\r\nA;{cell}\r\n"
    text = text.replace(";tolerance", ";at_rim").replace("64;;", '64;"0,02";')
    (row,) = rows(send(client, text), ";")
    assert row["status"] == "200", row
    if share:
        assert row["turns"] == turns
        assert int(row["holes"]) * share[1] == int(row["circle"]) * share[0]


def test_a_part_is_read_where_it_is_an_object_and_left_alone_where_it_is_a_name(client: FlaskClient) -> None:
    flats = '"{""kind"":""flats"",""sides"":6,""across_flats"":20,""unit"":""mm""}"'
    text = f"part,divisions\nratchet,8\n{flats},\nratchet,\n"
    named, asked, empty = rows(send(client, text))
    assert (named["status"], named["part"]) == ("200", "ratchet")
    assert (asked["status"], int(asked["holes"]) * 6, asked["method"]) == ("200", int(asked["circle"]), "direct")
    assert empty["problem"] == "Give exactly one of divisions, angle, angles and part."


def test_formulas_come_out_as_text_and_no_cell_of_an_answer_is_a_fraction(client: FlaskClient) -> None:
    counts = [28, 73, 64, 127, 51, 8, 40, 359]
    text = 'ref,note,"=name()",divisions,change_gears\n' + "".join(
        f'=1+{n},"@sum(""a"")","-2+3",{n},"24,24,28,32,40,44,48,56,64,72,86,100"\n' for n in counts
    )
    response = send(client, text)
    for row in csv.reader(io.StringIO(response.data.decode(), newline="")):
        for cell in row:
            assert not re.match(r"[=+@\t\r]|-(?![0-9]+$)", cell), cell
            assert not re.fullmatch(r"\d+[/.-]\d+([/.-]\d+)?", cell) or re.fullmatch(r"\d+\.\d+", cell), cell
    assert [row["status"] for row in rows(response)] == ["200"] * len(counts)
    assert {row["ref"] for row in rows(response)} == {f"'=1+{n}" for n in counts}


def test_the_head_in_the_address_serves_the_lines_that_name_none(client: FlaskClient) -> None:
    text = "divisions,ratio\n28,\n28,40\n24,\n"
    told = client.post(ADDRESS + "?ratio=60&direct_circles=", data=text, content_type="text/csv")
    other, own, plain = rows(told)
    # 60/28 = 2 1/7, 40/28 = 1 3/7, 60/24 = 2 1/2: without its own direct plate the head of the address turns the crank.
    assert [each["turns"] for each in (other, own, plain)] == ["2", "1", "2"]
    assert (plain["method"], int(other["holes"]) * 7, int(own["holes"]) * 7) == (
        "plain", int(other["circle"]), int(own["circle"]) * 3,
    )  # fmt: skip


def test_a_sheet_whose_head_in_the_address_is_wrong_is_refused_as_a_whole(client: FlaskClient) -> None:
    wrong = client.post(ADDRESS + "?ratio=many", data="divisions\n28\n", content_type="text/csv")
    assert (wrong.status_code, wrong.json["errors"][0]["pointer"]) == (422, "#/head/ratio")
    unknown = client.post(ADDRESS + "?colour=red", data="divisions\n28\n", content_type="text/csv")
    assert (unknown.status_code, unknown.json["errors"][0]["parameter"]) == (422, "colour")


def test_worst_seconds_have_the_comma_where_cells_are_parted_by_semicolons(client: FlaskClient) -> None:
    (row,) = rows(send(client, "ref;divisions\nA;73\n"), ";")
    assert re.fullmatch(r"[0-9]+,[0-9]+", row["worst_seconds"])
    assert row["exact"] == "false"


def test_gears_and_second_moves_stand_in_their_columns(client: FlaskClient) -> None:
    owned = "24,24,28,32,40,44,48,56,64,72,86,100"
    text = f'divisions,methods,change_gears\n73,differential,"{owned}"\n77,compound,\n'
    geared, compound = rows(send(client, text))
    sent = client.post("/v1/solve", json={
        "work": {"divisions": 73}, "methods": ["differential"],
        "head": {"change_gears": [int(teeth) for teeth in owned.split(",")]},
    }).json  # fmt: skip
    gearing = sent["setups"][0]["gearing"]
    assert (geared["spindle"], geared["worm"]) == (str(gearing["spindle"]), str(gearing["worm"]))
    assert geared["idlers"] == str(gearing["idlers"])
    # 40/77 of a turn from two moves on one plate.
    moves = [(int(compound["holes"]), int(compound["circle"])),
             (int(compound["second_holes"]), int(compound["second_circle"]))]  # fmt: skip
    (first, one), (second, other) = moves
    assert (int(compound["turns"] or 0) * one * other + first * other + second * one) * 77 == 40 * one * other


@pytest.mark.parametrize(
    ("text", "status", "sentence"),
    [
        ("ref,note\nA,b\n", 422, "The heading has no column that says what to divide: "
                                 "divisions, angle, angles or part."),
        ("divisions,Divisions\n2,3\n", 422, 'The column "divisions" stands twice in the heading. Keep one.'),
        ("", 422, "The file is empty. Begin with a heading such as ref,divisions."),
    ],
)  # fmt: skip
def test_a_sheet_that_asks_nothing_is_refused(client: FlaskClient, text: str, status: int, sentence: str) -> None:
    response = send(client, text)
    assert (response.status_code, response.json["detail"]) == (status, sentence)
    assert response.content_type == "application/problem+json"


def test_each_item_is_answered_in_its_place(client: FlaskClient) -> None:
    items: list[Any] = [
        {"ref": "OP30", "work": {"divisions": 28}, "limit": 1},
        {"ref": "OP30", "work": {"divisions": 64}},
        {"ref": 5, "work": {"divisions": 64}},
        {"ref": "bad", "work": {"divisions": "73"}, "head": {"plates": [[15, 16, 1]]}},
        7,
        {"work": {"divisions": 8}, "colour": "red"},
        {"work": {"divisions": 8}},
    ]
    told = client.post(ADDRESS, json={"items": items}).json["answers"]

    assert [each["ref"] for each in told] == ["OP30", "OP30", None, "bad", None, None, None]
    assert [each["status"] for each in told] == [200, 200, 422, 422, 422, 422, 200]
    alone = client.post("/v1/solve", json={"work": {"divisions": 28}, "limit": 1}).json
    assert told[0]["answer"] == alone
    assert told[2]["problem"]["detail"] == "A ref is a text of up to 200 characters, such as OP30."
    pointers = {error["pointer"] for error in told[3]["problem"]["errors"]}
    assert pointers == {"#/work/divisions", "#/head/plates/0/2"}
    assert told[5]["problem"]["errors"][0]["pointer"] == "#/colour"


@pytest.mark.parametrize(
    ("body", "pointer", "sentence"),
    [
        ({"items": []}, "#/items", "A batch has 1 to 500 items, not 0. Give one at least."),
        ({"items": [{}] * 501}, "#/items", "A batch has 1 to 500 items, not 501. Split it."),
        ({"items": 5}, "#/items", 'Give a list of items here, between "[" and "]".'),
        ({"items": None}, "#/items", 'Give a list of items here, between "[" and "]".'),
        ({}, "#/items", "This field is needed."),
    ],
)
def test_a_batch_of_the_wrong_size_is_refused(client: FlaskClient, body: Any, pointer: str, sentence: str) -> None:
    response = client.post(ADDRESS, json=body)
    assert response.status_code == 422
    assert response.json["errors"] == [{"pointer": pointer, "detail": sentence}]


@pytest.mark.parametrize("kind", ["application/json", "text/csv"])
def test_a_batch_may_have_a_mebibyte_and_no_more(client: FlaskClient, kind: str) -> None:
    start = b'{"items": [{"work": {"divisions": 28}}]}' if kind == "application/json" else b"divisions\n28\n"
    fits = start + b"\n" * (1024 * 1024 - len(start))
    assert send(client, fits, kind).status_code == 200
    assert send(client, fits + b"\n", kind).status_code == 413


@pytest.mark.parametrize(
    ("item", "lighter"),
    [
        ({"work": {"divisions": 360}, "positions": True, "limit": 5}, "ask without positions"),
        # No circle of the usual head is a multiple of 461, so each answer brings its schedule unasked.
        ({"work": {"divisions": 461}}, r"send it as a sheet \(text/csv\), which holds no schedules"),
    ],
)
def test_a_batch_is_costed_as_a_whole_before_it_is_begun(
    client: FlaskClient, item: dict[str, Any], lighter: str
) -> None:
    assert client.post(ADDRESS, json={"items": [item] * 5}).status_code == 200
    response = client.post(ADDRESS, json={"items": [item] * 500})
    assert response.status_code == 422
    assert response.json["type"] == "/docs#problem-too-much-work"
    assert re.fullmatch(
        r"This batch would take about \d+\.\d seconds of work; 2 are given\. "
        rf"Split it into \d+ batches, or {lighter}\.",
        response.json["detail"],
    )


def test_five_hundred_items_of_ordinary_work_are_answered_in_one_call(client: FlaskClient) -> None:
    items = [{"ref": str(at), "work": {"divisions": 2 + at % 120}} for at in range(500)]
    told = client.post(ADDRESS, json={"items": items}).json["answers"]
    assert [each["ref"] for each in told] == [str(at) for at in range(500)]
    assert {each["status"] for each in told} == {200}


def test_other_kinds_of_body_are_refused(client: FlaskClient) -> None:
    for kind in ("text/plain", "application/xml", "", "multipart/form-data"):
        response = send(client, "divisions\n28\n", kind)
        assert response.status_code == 415
        assert response.json["detail"] == (
            "Send the batch as JSON, with the header Content-Type: application/json, or as a sheet, with text/csv."
        )
    assert send(client, b"{", "application/json").status_code == 400
    assert send(client, b"divisions\n\xff\n").status_code == 400


def test_an_item_on_which_the_service_fails_is_our_fault_and_spoils_no_other(
    client: FlaskClient, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    solved = batch.solved

    def failing(asked: dict[str, Any]) -> dict[str, Any]:
        if asked["work"]["divisions"] == 13:
            raise RuntimeError("a fault of ours")
        return solved(asked)

    monkeypatch.setattr(batch, "solved", failing)
    items = [{"ref": str(count), "work": {"divisions": count}} for count in (12, 13, 14)]
    told = client.post(ADDRESS, json={"items": items}).json["answers"]
    assert [each["status"] for each in told] == [200, 500, 200]
    problem = told[1]["problem"]
    assert problem["type"] == "/docs#problem-our-fault"
    assert problem["detail"] == "The service failed on this request. It is not your doing; pass the request id on."
    assert "a fault of ours" not in str(told)
    assert [record.message.splitlines()[0] for record in caplog.records] == ["an item of a batch failed: RuntimeError"]
