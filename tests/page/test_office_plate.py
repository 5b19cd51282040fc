"""A plate made in the shop: asked in the office, drilled by its schedule, drawn as it will be, printed."""

import math
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import requests
from playwright.sync_api import Page, expect

from tests.page.conftest import Open, here
from tests.page.markup import Checker
from tests.page.test_access import in_anybodys_way
from tests.page.test_looking_up import reads
from tests.page.test_offline import serving
from tests.running import free_port

TABLE_BY_DIAL = "ratio=90&plates=&direct_circles=&dial=0%C2%B001'/0%C2%B000'10%22"


@pytest.fixture
def plate(open_page: Open) -> Page:
    page = open_page("office.html#plate")
    page.locator("#plate-number").wait_for()
    return page


def ask(page: Page, number: str, **lengths: str) -> None:
    page.locator("#plate-number").fill(number)
    for name, value in lengths.items():
        page.locator(f"#plate-{name}").fill(value)
    page.get_by_role("button", name="Work out the plate").click()


def linked(open_page: Open, words: str, **manner: object) -> Page:
    page = open_page(f"office.html#view=plate&{words}", **manner)
    page.locator("#plate-csv").wait_for()
    return page


def answer(live: str, **asked: Any) -> dict[str, Any]:
    found: dict[str, Any] = requests.post(f"{live}/v1/plate", json=asked, timeout=20).json()
    return found


# 40/102 = 20/51.
def test_the_work_says_which_circle_it_needs(plate: Page) -> None:
    ask(plate, "102")
    expect(plate.locator("#plate-found")).to_be_focused()
    expect(plate.locator("#plate-found")).to_have_text("Work of 102 divisions: a circle of 51 holes")
    expect(plate.locator("#plate-result")).to_contain_text("40/102 = 20/51")
    expect(plate.locator("#plate-result")).to_contain_text("The move for the work: 20 spaces on 51.")
    assert here(plate).endswith("#view=plate&number=102&ratio=40")


def test_the_schedule_has_a_row_for_each_hole_as_the_service_gives_it(plate: Page, live: str) -> None:
    ask(plate, "102", circle_diameter="150")
    told = answer(live, divisions=102, circle_diameter=150, unit="mm")
    table = plate.get_by_role("region", name="Drilling schedule")
    expect(table.locator("tbody tr")).to_have_count(51)
    heads = table.locator("thead th").all_inner_texts()
    cells = table.locator("tbody").locator("th, td").all_inner_texts()
    rows = [dict(zip(heads, row, strict=True)) for row in zip(*[iter(cells)] * len(heads), strict=True)]
    for row, wanted in zip(rows, told["schedule"], strict=True):
        assert (row["Hole"], row["Angle"]) == (str(wanted["cut"]), wanted["angle"]["dms"])
        assert (row["Spaces"], row["Pin in"]) == (str(wanted["holes"]), str(wanted["hole"]))
        # A second way to the coordinates: the circle's own equation.
        turn = 2 * math.pi * wanted["division"] / 51
        assert float(row["x"]) == pytest.approx(75 * math.cos(turn), abs=0.0001)
        assert float(row["y"]) == pytest.approx(75 * math.sin(turn), abs=0.0001)


def test_the_file_is_the_schedule_of_the_service(plate: Page, live: str) -> None:
    ask(plate, "127", circle_diameter="6,5")
    plate.locator("#plate-unit").select_option("in")
    plate.get_by_role("button", name="Work out the plate").click()
    with plate.expect_download() as saved:
        plate.get_by_role("button", name="Save as CSV").click()
    asked = {"divisions": 127, "circle_diameter": 6.5, "unit": "in", "circles": 2}
    told = requests.post(f"{live}/v1/plate", json=asked, headers={"Accept": "text/csv"}, timeout=20)
    assert saved.value.suggested_filename == "plate-127.csv"
    assert Path(saved.value.path()).read_bytes() == told.content
    assert told.content.startswith(b"\xef\xbb\xbfhole_number,")


def test_both_errors_and_what_is_divided_by_the_ratio_are_told(plate: Page, live: str) -> None:
    plate.get_by_text("First hole, coordinates, moves").click()
    plate.get_by_label("A hole may take").select_option("1")
    plate.get_by_text("A circle of so many holes").click()
    ask(plate, "127")
    told = answer(live, holes=127, circles=1)
    shown = plate.locator("#plate-result")
    assert told["error"]["worst_seconds"] > 60
    minutes, rest = divmod(round(told["error"]["worst_seconds"]), 60)
    expect(shown).to_contain_text(f"A hole is off by up to {minutes}′{rest:02}″")
    expect(shown).to_contain_text(f"at most {told['left_in_work']['worst_seconds']:.2f}″")
    for note in told["notes"]:
        expect(plate.locator("#plate-notes")).to_contain_text(note)
    for caution in told["cautions"]:
        expect(shown).to_contain_text(caution)


def test_sizes_say_whether_the_holes_fit(plate: Page) -> None:
    ask(plate, "102", circle_diameter="150", hole_diameter="4")
    expect(plate.locator("#plate-result")).to_contain_text("The holes fit")
    # Centres are 150 sin(180/51) = 9.234 apart.
    expect(plate.get_by_role("region", name="Sizes")).to_contain_text("9.234 mm")
    ask(plate, "102", circle_diameter="100", hole_diameter="5")
    expect(plate.locator("#plate-result")).to_contain_text("The holes stand too close")


@pytest.mark.parametrize(
    ("number", "name", "value", "sentence"),
    [
        ("20", "number", None, "No plate is needed for 20 divisions: a move is 2 whole turns of the crank."),
        ("many", "number", None, "Give a whole number, such as 40."),
        ("102", "circle_diameter", "wide", "Give a number, such as 12.5."),
    ],
)
def test_what_is_wrong_with_a_plate_stands_beside_its_field(
    plate: Page, number: str, name: str, value: str | None, sentence: str
) -> None:
    ask(plate, number, **({name: value} if value else {}))
    expect(plate.locator("#problem")).to_be_focused()
    expect(plate.locator(f"#plate-{name}-wrong")).to_have_text(sentence)
    expect(plate.locator(f"#plate-{name}")).to_have_accessible_description(sentence)


def test_holes_that_would_meet_are_refused_at_the_hole(plate: Page) -> None:
    ask(plate, "102", circle_diameter="50", hole_diameter="4")
    expect(plate.locator("#plate-hole_diameter-wrong")).to_contain_text("Holes of 4.000 mm meet")


# Twelve holes from 12 o'clock, clockwise, 30 degrees on: the first stands at 1 o'clock, the tenth at 10 o'clock.
def test_the_drawing_has_its_holes_where_they_are_drilled(open_page: Open) -> None:
    page = linked(open_page, "what=holes&number=12&circle_diameter=100&zero=12+o'clock&sense=clockwise&start=30%C2%B0")
    holes = page.locator(".plate-drawing .hole")
    expect(holes).to_have_count(12)

    def clock(hole: int) -> float:
        x, y = (float(page.locator(f"[data-hole='{hole}']").get_attribute(name) or "") for name in ("cx", "cy"))
        return (math.degrees(math.atan2(x, -y)) / 30) % 12

    assert [clock(hole) for hole in (1, 2, 10)] == pytest.approx([1, 2, 10], abs=0.01)


def test_the_drawing_agrees_with_the_coordinates(open_page: Open) -> None:
    page = linked(open_page, "number=102&circle_diameter=200&start=10%C2%B0")
    rows = page.get_by_role("region", name="Drilling schedule").locator("tbody tr")
    for hole in (1, 2, 20, 51):
        x, y = (float(text) for text in rows.nth(hole - 1).locator("td").all_inner_texts()[-2:])
        drawn = page.locator(f"[data-hole='{hole}']")
        assert float(drawn.get_attribute("cx") or "") == pytest.approx(x, abs=0.02)
        assert float(drawn.get_attribute("cy") or "") == pytest.approx(-y, abs=0.02)


def test_a_rotary_table_is_set_by_its_dial_from_zero(open_page: Open) -> None:
    page = linked(open_page, f"what=holes&number=127&{TABLE_BY_DIAL}")
    row = page.get_by_role("region", name="Drilling schedule").locator("tbody tr").nth(2)
    # Two steps of 360/127 degrees are 5.6693, four to a turn of the dial: one turn and 1.6693.
    expect(row).to_contain_text("1°40'10\"")
    expect(page.get_by_role("region", name="Drilling schedule").locator("th", has_text="Spaces")).to_have_count(0)


def test_the_work_is_set_up_with_the_new_plate(plate: Page) -> None:
    ask(plate, "127")
    plate.get_by_role("link", name="Set up the work with it").click()
    plate.locator("#move").wait_for()
    reads(plate, ["40 spaces", "127 circle"])


def test_a_link_opens_the_same_plate_on_another_tablet(plate: Page, open_page: Open) -> None:
    plate.get_by_text("First hole, coordinates, moves").click()
    plate.locator("#plate-zero").select_option("12 o'clock")
    ask(plate, "102", circle_diameter="150", hole_diameter="4", x="10", y="-5", start="22°30′")
    plate.locator("#plate-csv").wait_for()
    other = open_page(here(plate).split("/", 3)[3])
    other.locator("#plate-csv").wait_for()
    for name, value in {"zero": "12 o'clock", "x": "10", "y": "-5", "start": "22°30′", "number": "102"}.items():
        expect(other.locator(f"#plate-{name}")).to_have_value(value)
    table = "section:has(#plate-csv) table"
    assert other.locator(table).inner_text() == plate.locator(table).inner_text()


def test_text_from_a_link_stays_text(open_page: Open) -> None:
    nasty = "%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E"
    page = open_page(f"office.html#view=plate&number={nasty}&zero={nasty}&unit={nasty}")
    expect(page.locator("#problem")).to_be_visible()
    expect(page.locator("main img")).to_have_count(0)


def test_another_head_makes_another_plate_of_the_same_question(open_page: Open) -> None:
    page = linked(open_page, "number=102&ratio=60")
    # 60/102 = 10/17
    expect(page.locator("#plate-result")).to_contain_text("60/102 = 10/17")
    page.get_by_role("button", name="Back to my head").click()
    expect(page.locator("#plate-result")).to_contain_text("40/102 = 20/51")


def test_without_a_connection_the_kept_plate_is_shown_and_a_new_one_waits(open_page: Open) -> None:
    address = f"127.0.0.1:{free_port()}"
    with serving(address):
        page = open_page("office.html#plate", base=f"http://{address}", service_workers="block")
        page.locator("#plate-number").wait_for()
        ask(page, "102")
        page.locator("#plate-csv").wait_for()
        page.wait_for_load_state("networkidle")
    ask(page, "102")
    expect(page.locator("#plate-result")).to_contain_text("No connection: this was saved", timeout=20_000)
    page.get_by_role("button", name="Save as CSV").click()
    expect(page.locator("#status")).to_have_text(
        "No connection: the file comes from the service. Try again when it is back."
    )
    ask(page, "127")
    expect(page.locator("#problem")).to_contain_text("The service cannot be reached", timeout=20_000)
    with serving(address):
        expect(page.locator("#plate-found")).to_have_text(
            "Work of 127 divisions: a circle of 127 holes", timeout=30_000
        )


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_whole_schedule_is_printed(plate: Page, tmp_path: Path, paper: str) -> None:
    ask(plate, "102", circle_diameter="150")
    plate.locator("#plate-csv").wait_for()
    plate.pdf(path=tmp_path / "plate.pdf", format=paper)
    told = subprocess.run(
        ["pdftotext", "-layout", tmp_path / "plate.pdf", "-"], check=True, capture_output=True, text=True
    ).stdout
    for words in ("Drilling schedule", "352°56'28.24\"", "Stop the drill", "40:1", "Worked out by version"):
        assert words in told
    assert "Work out the plate" not in told


def refused(page: Page) -> None:
    ask(page, "20")
    page.locator("#problem").wait_for()


def opened(page: Page) -> None:
    page.get_by_text("First hole, coordinates, moves").click()


def made(page: Page) -> None:
    ask(page, "102", circle_diameter="150", hole_diameter="4")
    page.locator("#plate-csv").wait_for()


def far_off(page: Page) -> None:
    opened(page)
    page.get_by_label("A hole may take").select_option("1")
    ask(page, "53", circle_diameter="60", hole_diameter="3")
    page.locator("#plate-csv").wait_for()


STATES: dict[str, Callable[[Page], None]] = {
    "blank": lambda _: None, "refused": refused, "opened": opened, "made": made, "not exact": far_off,
}  # fmt: skip


@pytest.mark.parametrize("state", STATES)
def test_nothing_stands_in_anybodys_way_with_a_plate(open_page: Open, markup: Checker, state: str) -> None:
    page = open_page("office.html#plate", width=360)
    page.locator("#plate-number").wait_for()
    STATES[state](page)
    assert in_anybodys_way(page, markup) == []
