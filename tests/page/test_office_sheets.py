"""The office's routing sheet: a file or pasted lines in, every line answered in its place, the answered sheet out."""

import csv
import io
import random
from collections.abc import Callable
from pathlib import Path

import pytest
import requests
from playwright.sync_api import Page, Route, expect

from dividing.web import sheet as service_sheet
from tests.page.conftest import Open
from tests.page.markup import Checker
from tests.page.test_access import in_anybodys_way
from tests.page.test_offline import serving
from tests.running import free_port

BROKEN = ["twenty", "0", "28.5", '"1,000"', '"28', "28,7", "=28", "-3", "", "1000001"]
OLD_CODE = (
    "The file is not in UTF-8. It was read as Windows-1252, as older offices save it: look whether letters such as ä "
    "and signs such as ° are right. It is given back in UTF-8."
)
PASTED = """(box, text) => { const clipboardData = new DataTransfer(); clipboardData.setData('text/plain', text);
  box.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true })); }"""
Rows = list[dict[str, str]]


@pytest.fixture
def office(open_page: Open) -> Page:
    page = open_page("office.html")
    page.locator("#sheet-paste").wait_for()
    return page


def long_sheet(lines: int, broken_every: int = 0) -> str:
    """A routing of wheels with a note that has a line break in it; some lines broken, each in its own way."""
    text = ["ref,note,divisions,shop"]
    for at in range(lines):
        if broken_every and at % broken_every == 3:
            text.append(f"OP{at},wheel {at},{BROKEN[at // broken_every % len(BROKEN)]},north")
        else:
            text.append(f'OP{at},"wheel {at},\nsecond line",{2 + at % 120},north')
    return "\r\n".join(text) + "\r\n"


def give(page: Page, name: str, data: bytes | str) -> None:
    content = data if isinstance(data, bytes) else data.encode()
    page.locator("#sheet-file").set_input_files({"name": name, "mimeType": "text/csv", "buffer": content})


def paste(page: Page, text: str) -> None:
    """As from another program: the browser hands the page what was copied."""
    box = page.get_by_label("Or paste the lines here")
    box.fill("")
    if len(text) < 5000:
        box.fill(text)
    else:
        box.evaluate(PASTED, text)
    page.get_by_role("button", name="Work out the lines").click()


def answered(page: Page, seconds: int = 30) -> None:
    expect(page.locator("#sheet-found")).to_contain_text(": answered", timeout=1000 * seconds)


def saved(page: Page) -> bytes:
    with page.expect_download() as found:
        page.get_by_role("button", name="Save the sheet as CSV").click()
    return Path(found.value.path()).read_bytes()


def rows_of(data: bytes, parted_by: str = ",") -> Rows:
    text = data.decode("utf-8-sig")
    return list(csv.DictReader(io.StringIO(text, newline=""), delimiter=parted_by))


def asked_at_once(live: str, text: str, head: str = "") -> bytes:
    """What the service itself answers to the whole sheet in one call."""
    found = requests.post(
        f"{live}/v1/solve/batch?{head}", data=text.encode(), headers={"Content-Type": "text/csv"}, timeout=30
    )
    assert found.status_code == 200, found.text
    return found.content


def test_of_five_hundred_lines_fifty_broken_ones_come_first_and_all_come_back(office: Page, live: str) -> None:
    text = long_sheet(500, broken_every=10)
    give(office, "looms.csv", text)
    answered(office)
    expect(office.locator("#sheet-state")).to_contain_text(
        "500 of 500 lines answered: 450 with a setting, 50 to put right."
    )
    wrong = office.locator("#sheet-lines-wrong li")
    expect(wrong).to_have_count(50)
    # The heading is row 1 of a spreadsheet, so the fourth line is its row 5.
    expect(wrong.first).to_have_text("Row 5OP3 · divisions twentydivisions: Give a whole number, such as 40.")
    page_order = office.locator("main").inner_text()
    assert page_order.index("To put right: 50") < page_order.index("Exact: ")
    assert saved(office) == b"\xef\xbb\xbf" + asked_at_once(live, text)


def test_a_sheet_of_five_thousand_lines_is_asked_in_order_in_many_calls(office: Page) -> None:
    calls: list[str] = []
    office.on("request", lambda request: calls.append(request.url) if "batch" in request.url else None)
    paste(office, long_sheet(5000, broken_every=100))
    expect(office.locator("#sheet-found")).to_have_text("Pasted lines: being worked out")
    expect(office.locator("progress")).to_have_attribute("max", "5000")
    answered(office, 120)
    assert len(calls) >= 10
    found = rows_of(saved(office))
    assert [row["ref"] for row in found if row["shop"]] == [f"OP{at}" for at in range(5000) if found[at]["shop"]]
    assert len(found) == 5000
    assert sum(row["status"] == "200" for row in found) == 4950
    expect(office.locator("#sheet-lines-wrong h2")).to_have_text("To put right: 50")
    assert {row["note"] for row in found if row["status"] == "200"} == {
        f"wheel {at},\nsecond line" for at in range(5000) if at % 100 != 3
    }


def test_progress_is_told_politely_and_the_end_takes_focus(office: Page) -> None:
    office.evaluate("""() => { window.told = []; new MutationObserver(() => {
        const text = document.getElementById('status').textContent; if (text) window.told.push(text);
    }).observe(document.getElementById('status'), {childList: true}); }""")
    slowed(office)
    paste(office, long_sheet(400))
    answered(office)
    expect(office.locator("#sheet-found")).to_be_focused()
    expect(office.locator("#status")).to_have_text("400 of 400 lines answered.")
    assert office.evaluate("window.told") == [f"{done} of 400 lines answered." for done in (100, 200, 300, 400)]


# The page may cut a sheet only where the service sees a new line begin, so both must see the same lines.
def test_the_page_takes_a_sheet_apart_exactly_as_the_service_does(office: Page) -> None:
    chance = random.Random(64)  # noqa: S311  # cases, not secrets
    pieces = ['"', '""', ",", ";", "\n", "\r\n", "\r", "a", "28", " ", '"a\nb"', "ref,divisions\n", "\n\n"]
    texts = ["ref,divisions\n" + "".join(chance.choices(pieces, k=chance.randrange(1, 40))) for _ in range(1500)]
    texts += [
        'a,b\n"' + "\n" * 60 + '",2\n3,4\n',
        'a,b\n"' + "\n" * 48 + '",2\n3,4\n',
        "a,b",
        'a,b\n1,"2"',
        "sep=;\na;b\n1;2\n",
    ]
    found = office.evaluate(
        """async (texts) => { const { readSheet } = await import('/js/office/records.js');
        return texts.map((text) => readSheet(text).lines.map(({ cells, fault }) => [fault, cells])); }""",
        texts,
    )
    for text, mine in zip(texts, found, strict=True):
        read = service_sheet.read(text.encode())
        wanted = len(read.heading)
        assert len(mine) == len(read.lines), text
        for (fault, cells), line in zip(mine, read.lines, strict=True):
            assert fault == (line.fault == service_sheet._UNCLOSED), text
            assert cells[0] == line.cells[0] or len(cells) > wanted == 1, text


@pytest.mark.parametrize(
    ("encoding", "note"),
    [
        ("utf-8", None),
        ("utf-8-sig", None),
        ("windows-1252", OLD_CODE),
        ("utf-16", "The file was saved as UTF-16; it is given back in UTF-8."),
    ],
)  # fmt: skip
def test_a_file_is_read_in_whatever_code_the_office_saved_it(office: Page, encoding: str, note: str | None) -> None:
    text = "Teil;angle;count\r\nSchützenrad 30°;22,5°;3\r\n"
    give(office, "alt.csv", text.encode(encoding))
    answered(office)
    told = office.locator("#sheet-state .note")
    expect(told).to_have_text([note] if note else [])
    (row,) = rows_of(saved(office), ";")
    # 22.5 degrees are 2 1/2 turns of 40.
    assert (row["Teil"], row["angle"], row["turns"], row["status"]) == ("Schützenrad 30°", "22,5°", "2", "200")


def test_a_workbook_is_not_mistaken_for_a_sheet(office: Page) -> None:
    give(office, "routing.xlsx", b"PK\x03\x04\x00\x00")
    sentence = "This is a workbook, not CSV. Save the sheet as CSV (UTF-8) from the spreadsheet, then choose that file."
    expect(office.locator("#problem")).to_be_focused()
    expect(office.locator("#sheet-file-wrong")).to_have_text(sentence)
    expect(office.locator("#sheet-file")).to_have_accessible_description(sentence)


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "There is nothing in it yet. Choose a file, or paste the lines with their heading."),
        ("ref,divisions\n", "It has a heading but no lines under it, or cannot be read. "
                             "Begin with a heading such as ref,divisions."),
        ("divisions,Divisions\n2,3\n", 'The column "divisions" stands twice in the heading. Keep one.'),
    ],
)  # fmt: skip
def test_a_sheet_that_cannot_be_asked_is_told_beside_the_field(office: Page, text: str, sentence: str) -> None:
    paste(office, text)
    expect(office.locator("#problem")).to_be_focused()
    expect(office.locator("#sheet-paste-wrong")).to_have_text(sentence)
    expect(office.locator("#sheet-paste")).to_have_attribute("aria-invalid", "true")
    expect(office.locator("#sheet-paste")).to_have_value(text)


def test_cells_copied_from_a_spreadsheet_are_understood(office: Page) -> None:
    paste(office, 'ref\tdivisions\tnote\nOP1\t28\t"two\nlines, and ""quotes"""\nOP2\t64\t3" shaft\n')
    answered(office)
    one, two = rows_of(saved(office), ";")
    assert (one["note"], one["turns"], two["note"], two["status"]) == (
        'two\nlines, and "quotes"',
        "1",
        '3" shaft',
        "200",
    )


def test_a_bare_column_of_numbers_needs_no_heading(office: Page) -> None:
    paste(office, "28\n73.5\n\n64\n")
    expect(office.locator("#sheet-columns")).to_be_visible()
    paste(office, "28\n\n0\n")
    answered(office)
    expect(office.locator("#sheet-state")).to_contain_text("No heading: the numbers were taken for divisions.")
    expect(office.locator("#sheet-lines-wrong li")).to_contain_text("Row 3")


def test_the_operator_says_which_column_holds_the_divisions(office: Page) -> None:
    paste(office, 'op,"wheel, as drawn",teeth\n10,"ratchet, left",64\n20,cam,none\n')
    column = office.get_by_label("Column with the divisions")
    expect(column).to_be_focused()
    expect(column).to_have_value("2")
    office.get_by_role("button", name="Take this column").click()
    answered(office)
    expect(office.locator("#sheet-lines-wrong li")).to_contain_text("teeth: Give a whole number, such as 40.")
    one, two = rows_of(saved(office))
    assert (one["op"], one["wheel, as drawn"], one["teeth"], one["circle"]) == ("10", "ratchet, left", "64", "16")
    assert (two["teeth"], two["status"]) == ("none", "422")
    assert "divisions" not in one


def test_lines_that_name_no_head_are_worked_out_on_the_head_of_the_page(open_page: Open) -> None:
    page = open_page("office.html#view=office&ratio=90&direct_circles=")
    expect(page.locator("#head-line")).to_contain_text("90:1")
    paste(page, "divisions,ratio\n20,\n20,40\n24,\n")
    answered(page)
    # 90/20 = 4 1/2, 40/20 = 2, and without a direct plate 90/24 = 3 3/4.
    assert [row["turns"] for row in rows_of(saved(page))] == ["4", "2", "3"]
    page.get_by_role("button", name="Back to my head").click()
    expect(page.locator("#sheet-state .note")).to_contain_text("These answers are for another head: 90:1")
    page.get_by_role("button", name="Work it out on the head above").click()
    answered(page)
    assert [row["turns"] for row in rows_of(saved(page))][:2] == ["2", "2"]


def test_the_sheet_shown_as_an_example_is_answered_whole(office: Page) -> None:
    office.get_by_text("How a sheet is written").click()
    paste(office, office.locator(".sample").inner_text())
    answered(office)
    found = rows_of(saved(office))
    # 90/17 = 5 5/17 on the table named in the last line.
    assert [(row["ref"], row["status"], row["turns"]) for row in found] == [
        ("OP10", "200", "0"), ("OP20", "200", "0"), ("OP30", "200", "5"),
    ]  # fmt: skip


def test_formulas_stay_text_on_the_page_and_in_the_file(office: Page) -> None:
    paste(office, 'ref,"=name()",divisions\n=1+1,<img src=x onerror=alert(1)>,28\n@sum(a),"-2+3",none\n')
    answered(office)
    expect(office.locator("#sheet-lines-exact td").first).to_have_text("=1+1")
    expect(office.locator("main img")).to_have_count(0)
    for row in csv.reader(io.StringIO(saved(office).decode("utf-8-sig"), newline="")):
        for cell in row:
            assert not cell.startswith(("=", "@", "+", "-")), cell


# In the page itself: an interception that waits would trip over calls that the page gives up.
SLOW = """() => {
  const ask = window.askedAtOnce = fetch;
  window.fetch = async (where, how) => {
    if (String(where).includes('/v1/solve/batch')) await new Promise((done) => setTimeout(done, 200));
    return ask(where, how);
  };
}"""


def slowed(page: Page) -> Callable[[], int]:
    """Each call takes a while; gives how many have been made."""
    made: list[str] = []
    page.on("request", lambda request: made.append(request.url) if "/v1/solve/batch" in request.url else None)
    page.evaluate(SLOW)
    return lambda: len(made)


def at_full_speed(page: Page) -> None:
    page.evaluate("() => { window.fetch = window.askedAtOnce; }")


def test_stopping_loses_nothing_and_the_rest_can_follow(office: Page) -> None:
    text = long_sheet(1000)
    slowed(office)
    paste(office, text)
    expect(office.locator("#sheet-state")).to_contain_text("00 of 1000 lines answered")
    office.get_by_role("button", name="Stop").click()
    expect(office.locator("#sheet-found")).to_have_text("Pasted lines: stopped")
    half = rows_of(saved(office))
    asked = [row for row in half if row["status"]]
    assert 0 < len(asked) < 1000 == len(half)
    assert [row["ref"] for row in half] == [f"OP{at}" for at in range(1000)]
    assert {row["problem"] for row in half[len(asked) :]} == {"Not asked: the work was stopped before this line."}
    at_full_speed(office)
    office.get_by_role("button", name="Go on with the other").click()
    answered(office)
    assert {row["status"] for row in rows_of(saved(office))} == {"200"}


def test_a_sheet_goes_on_by_itself_when_the_connection_is_back(open_page: Open) -> None:
    address = f"127.0.0.1:{free_port()}"
    with serving(address):
        page = open_page("office.html", base=f"http://{address}")
        page.locator("#sheet-paste").wait_for()
        slowed(page)
        paste(page, long_sheet(2000))
        expect(page.locator("#sheet-state")).to_contain_text("00 of 2000 lines answered")
    expect(page.locator("#offline")).to_contain_text("No connection.", timeout=20_000)
    expect(page.locator("#sheet-state")).to_contain_text("The page goes on by itself when the connection is back.")
    at_full_speed(page)
    with serving(address):
        answered(page, 60)
        assert [row["ref"] for row in rows_of(saved(page)) if row["status"] == "200"] == [
            f"OP{at}" for at in range(2000)
        ]


def test_a_sheet_that_is_too_much_work_at_once_is_asked_in_smaller_parts(office: Page) -> None:
    gears = '"24,24,28,32,40,44,48,56,64,72,86,100"'
    lines = "".join(f"OP{at},{9001 + 2 * at},{gears}\n" for at in range(30)) + f"OP30,999983,{gears}\n"
    paste(office, "ref,divisions,change_gears\n" + lines)
    answered(office, 120)
    found = rows_of(saved(office))
    assert [row["ref"] for row in found] == [f"OP{at}" for at in range(31)]
    assert [row["status"] for row in found] == ["200"] * 30 + ["422"]
    expect(office.locator("#sheet-lines-wrong li")).to_contain_text("seconds of work")


def test_trouble_in_the_middle_keeps_what_is_answered(office: Page) -> None:
    calls: list[str] = []

    def fail_the_third(route: Route) -> None:
        calls.append(route.request.url)
        problem = {"title": "Our fault", "status": 500, "detail": "The service failed on this request."}
        route.fulfill(status=500, json=problem) if len(calls) == 3 else route.continue_()

    office.route("**/v1/solve/batch*", fail_the_third)
    paste(office, long_sheet(350))
    expect(office.locator("#sheet-state .note")).to_have_text("The service failed on this request.")
    expect(office.locator("#sheet-state")).to_contain_text("200 of 350 lines answered")
    office.get_by_role("button", name="Go on with the other 150").click()
    answered(office)
    expect(office.locator("#sheet-state .note")).to_have_count(0)
    assert [row["ref"] for row in rows_of(saved(office)) if row["status"] == "200"] == [f"OP{at}" for at in range(350)]


def test_another_sheet_takes_the_place_of_one_that_is_being_worked_out(office: Page) -> None:
    slowed(office)
    paste(office, long_sheet(900))
    expect(office.locator("#sheet-state")).to_contain_text("00 of 900 lines answered")
    at_full_speed(office)
    give(office, "second.csv", "ref,divisions\nX,28\n")
    answered(office)
    office.wait_for_timeout(500)
    expect(office.locator("#sheet-found")).to_have_text("second.csv: answered")
    assert [row["ref"] for row in rows_of(saved(office))] == ["X"]
    expect(office.locator("#offline")).to_have_count(0)


def test_the_sheet_is_still_there_after_going_to_the_head_and_back(office: Page) -> None:
    paste(office, "ref,divisions\nOP1,28\n")
    answered(office)
    office.get_by_role("link", name="Change head").click()
    office.get_by_role("heading", name="The head", exact=True).wait_for()
    office.locator("#go-office").click()
    office.get_by_role("button", name="Work out 1 line").click()
    answered(office)


def column_wanted(page: Page) -> None:
    paste(page, "op,teeth\n10,64\n")
    page.locator("#sheet-column").wait_for()


def refused(page: Page) -> None:
    paste(page, "")
    page.locator("#problem").wait_for()


def done(page: Page) -> None:
    paste(page, long_sheet(60, broken_every=10) + 'OP61,"",73,north\n')
    answered(page)
    page.locator("#sheet-how summary").click()


def stopped(page: Page) -> None:
    slowed(page)
    paste(page, long_sheet(120))
    page.get_by_role("button", name="Stop").click()
    page.locator("#sheet-on").wait_for()


STATES: dict[str, Callable[[Page], None]] = {
    "blank": lambda _: None, "refused": refused, "column": column_wanted, "done": done, "stopped": stopped,
}  # fmt: skip


@pytest.mark.parametrize("state", STATES)
def test_nothing_stands_in_anybodys_way_with_a_sheet(open_page: Open, markup: Checker, state: str) -> None:
    page = open_page("office.html", width=360)
    page.locator("#sheet-paste").wait_for()
    STATES[state](page)
    assert in_anybodys_way(page, markup) == []
