"""The map of what a head can do: the same as the service says of each number, read by eye, by keyboard and by ear."""

import re
from collections.abc import Callable
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

GEARS = "24,24,28,32,40,44,48,56,64,72,86,100"


def mapped(open_page: Open, words: str = "from=2&to=400", **manner: object) -> Page:
    page = open_page(f"office.html#view=coverage&{words}", **manner)
    page.locator("#map").wait_for()
    return page


def answer(live: str, **asked: Any) -> dict[str, Any]:
    found: dict[str, Any] = requests.post(f"{live}/v1/coverage", json=asked, timeout=20).json()
    return found


def test_the_map_stands_there_for_the_head_of_the_page(open_page: Open) -> None:
    page = open_page("office.html")
    page.get_by_role("link", name="What a head can do").click()
    expect(page.locator("#map a")).to_have_count(399)
    assert here(page).endswith("/office.html#view=coverage&from=2&to=400&ratio=40")


def test_each_cell_says_what_the_service_says_of_its_number(open_page: Open, live: str) -> None:
    page = mapped(open_page)
    names = page.locator("#map a").evaluate_all("(links) => links.map((link) => link.getAttribute('aria-label'))")
    told = answer(live, **{"from": 2, "to": 400})
    assert names == [
        f"{each['divisions']}: {each['method']}, exact"
        if each["exact"]
        else f"{each['divisions']}: not reached exactly"
        for each in told["numbers"]
    ]
    expect(page.locator("#coverage-found")).to_have_text(f"2 to 400: {told['exact']} of 399 exact.")
    order = ["direct", "plain", "differential", "compound", "dial"]
    wanted = [told["counts"][kind] for kind in order] + [len(told["gaps"])]
    assert sum(wanted) == 399
    assert [int(text) for text in page.locator("#legend strong").all_inner_texts()] == wanted


# On the usual head 51 is no multiple's share of any circle, 40/51 comes out by compound; with gears by differential.
@pytest.mark.parametrize(
    ("words", "number", "name"),
    [
        ("from=2&to=100", 28, "28: plain, exact"),
        ("from=2&to=100", 24, "24: direct, exact"),
        ("from=2&to=100", 51, "51: compound, exact"),
        ("from=2&to=100", 53, "53: not reached exactly"),
        (f"from=2&to=100&change_gears={GEARS}", 73, "73: differential, exact"),
    ],
)
def test_a_cell_is_named_for_whoever_hears_it(open_page: Open, words: str, number: int, name: str) -> None:
    page = mapped(open_page, words)
    expect(page.locator(f"#n-{number}")).to_have_accessible_name(name)
    expect(page.get_by_role("gridcell", name=name, exact=True)).to_be_visible()


def test_a_tolerance_parts_what_is_near_enough_from_what_is_not(open_page: Open, live: str) -> None:
    page = mapped(open_page, "from=100&to=140&tolerance=0%C2%B000'06.965\"")
    told = answer(live, **{"from": 100, "to": 140, "tolerance": {"angle": "0°00'06.965\""}})
    near = [each["divisions"] for each in told["numbers"] if not each["exact"] and each["within_tolerance"]]
    assert near
    assert told["gaps"]
    assert [int(cell) for cell in page.locator("#map .k-near").all_inner_texts()] == near
    expect(page.locator("#coverage-found")).to_contain_text(f"{len(near)} within what you allow")
    expect(page.locator(f"#n-{near[0]}")).to_have_accessible_name(
        re.compile(rf"^{near[0]}: (nearest hole|compound|differential|plain), off by up to .+, within the tolerance$")
    )


def test_the_methods_are_told_apart_without_colours(open_page: Open) -> None:
    page = mapped(open_page, f"from=2&to=400&change_gears={GEARS}&tolerance=1%C2%B0")
    drawn_as = "getComputedStyle(document.querySelector(`.swatch.k-${kind}`)).backgroundImage"
    pattern = f"(kind) => {drawn_as}.replace(/rgba?\\([^)]*\\)/g, '')"
    kinds = ["direct", "plain", "differential", "compound", "dial", "near", "gap"]
    drawn = {kind: page.evaluate(pattern, kind) for kind in kinds}
    # Direct is solid and a gap is a dashed frame with nothing in it; all others are drawn each in its own way.
    assert drawn["direct"] == drawn["gap"] == "none"
    assert len(set(drawn.values())) == 6
    page.emulate_media(forced_colors="active")
    assert {kind: page.evaluate(pattern, kind) for kind in kinds} == drawn
    page.emulate_media(forced_colors="none", media="print")
    assert {kind: page.evaluate(pattern, kind) for kind in kinds} == drawn


@pytest.mark.parametrize(
    ("keys", "lands"),
    [
        (["ArrowRight"], 74), (["ArrowLeft"], 72), (["ArrowDown"], 83), (["ArrowUp"], 63), (["Home"], 70),
        (["End"], 79),
        (["PageDown"], 173), (["PageUp"], 2), (["Control+Home"], 2), (["Control+End"], 400),
        (["Control+End", "ArrowRight"], 400), (["Control+Home", "ArrowUp"], 2), (["End", "ArrowRight"], 80),
    ],
)  # fmt: skip
def test_the_keyboard_goes_over_the_map(open_page: Open, keys: list[str], lands: int) -> None:
    page = mapped(open_page)
    page.locator("#n-73").focus()
    for key in keys:
        page.keyboard.press(key)
    expect(page.locator(f"#n-{lands}")).to_be_focused()
    expect(page.locator("#map [tabindex='0']")).to_have_count(1)
    expect(page.locator(f"#n-{lands}")).to_have_attribute("tabindex", "0")


def test_the_map_is_one_stop_for_the_tab_key(open_page: Open) -> None:
    page = mapped(open_page)
    page.locator("#coverage-print").focus()
    page.keyboard.press("Tab")
    expect(page.locator("#n-2")).to_be_focused()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Tab")
    expect(page.locator("#make-circle")).to_be_focused()
    page.keyboard.press("Shift+Tab")
    expect(page.locator("#n-3")).to_be_focused()


def test_a_number_leads_to_its_setup_on_this_head(open_page: Open) -> None:
    page = mapped(open_page, "from=2&to=100&ratio=60")
    page.locator("#n-28").focus()
    page.keyboard.press("Enter")
    page.locator("#move").wait_for()
    # 60/28 = 2 1/7
    assert "divisions=28&ratio=60" in here(page)
    reads(page, ["2 turns", "7 spaces", "49 circle"])


def test_a_long_range_is_shown_part_by_part_and_the_arrows_go_across(open_page: Open) -> None:
    page = mapped(open_page, "from=2&to=1200")
    expect(page.locator("#map a")).to_have_count(498)
    page.get_by_role("button", name="500–999").click()
    expect(page.locator("#map a")).to_have_count(500)
    expect(page.get_by_role("button", name="500–999")).to_be_focused()
    page.locator("#n-999").focus()
    page.keyboard.press("ArrowRight")
    expect(page.locator("#n-1000")).to_be_focused()
    expect(page.get_by_role("button", name="1000–1200")).to_have_attribute("aria-pressed", "true")


def test_the_gaps_and_what_to_own_next_are_the_services(open_page: Open, live: str) -> None:
    page = mapped(open_page)
    told = answer(live, **{"from": 2, "to": 400})
    expect(page.get_by_role("heading", name=f"Not reached: {len(told['gaps'])}")).to_be_visible()
    listed: list[int] = []
    for piece in page.locator("#gaps").inner_text().split(", "):
        first, _, last = piece.partition(" to ")
        listed += range(int(first), int(last or first) + 1)
    assert listed == told["gaps"]
    best, *others = told["next"]["circles"]
    expect(page.locator("#own-next .best").first).to_contain_text(
        f"A circle of {best['circle']} holes makes {best['closes']} numbers exact that now are not:"
    )
    for each in others:
        expect(page.locator("#own-next")).to_contain_text(f"A circle of {each['circle']} holes: {each['closes']}")


def test_the_circle_to_own_next_can_be_made(open_page: Open, live: str) -> None:
    page = mapped(open_page)
    circle = answer(live, **{"from": 2, "to": 400})["next"]["circles"][0]["circle"]
    page.get_by_role("button", name="Make this plate").click()
    expect(page.locator("#plate-number")).to_have_value(str(circle))
    expect(page.locator("#plate-found")).to_contain_text(f"{circle} holes")


@pytest.mark.parametrize(
    ("name", "typed", "sentence"),
    [("to", "20000", "10,000"), ("from", "many", "whole number"), ("tolerance", "small", "expected")],
)
def test_what_is_wrong_stands_beside_its_field(open_page: Open, name: str, typed: str, sentence: str) -> None:
    page = mapped(open_page)
    page.locator(f"#coverage-{name}").fill(typed)
    page.get_by_role("button", name="Show what it can do").click()
    expect(page.locator("#problem")).to_be_focused()
    expect(page.locator(f"#coverage-{name}-wrong")).to_contain_text(sentence)
    expect(page.locator(f"#coverage-{name}")).to_have_value(typed)


def test_without_a_connection_it_says_so_and_answers_when_it_is_back(open_page: Open) -> None:
    address = f"127.0.0.1:{free_port()}"
    with serving(address):
        page = open_page("office.html#coverage", base=f"http://{address}", service_workers="block")
        page.locator("#map").wait_for()
        page.wait_for_load_state("networkidle")
    page.locator("#coverage-to").fill("50")
    page.get_by_role("button", name="Show what it can do").click()
    expect(page.locator("#problem")).to_contain_text("The service cannot be reached", timeout=20_000)
    page.locator("#coverage-to").fill("400")
    page.get_by_role("button", name="Show what it can do").click()
    expect(page.locator("#coverage-result")).to_contain_text("No connection: this was saved", timeout=20_000)
    expect(page.locator("#map a")).to_have_count(399)
    page.locator("#coverage-to").fill("60")
    page.get_by_role("button", name="Show what it can do").click()
    expect(page.locator("#problem")).to_be_visible(timeout=20_000)
    with serving(address):
        expect(page.locator("#map a")).to_have_count(59, timeout=30_000)


def refused(page: Page) -> None:
    page.locator("#coverage-to").fill("1")
    page.get_by_role("button", name="Show what it can do").click()
    page.locator("#problem").wait_for()


STATES: dict[str, tuple[str, Callable[[Page], None]]] = {
    "map": ("from=2&to=75", lambda _: None),
    "parts and tolerance": ("from=470&to=1010&tolerance=0%C2%B000'30\"", lambda page: page.locator("#n-473").focus()),
    "no gaps": (f"from=2&to=60&change_gears={GEARS}", lambda _: None),
    "refused": ("from=2&to=30", refused),
}
# As the other controls: 48 across and 8 from the next.
CELLS = """() => [...document.querySelectorAll('#map a')].slice(0, 60).flatMap((link, at, all) => {
  const box = link.getBoundingClientRect();
  const apart = ({ left, right, top, bottom }) =>
    Math.max(left - box.right, box.left - right, top - box.bottom, box.top - bottom);
  const near = all.some((other) => other !== link && apart(other.getBoundingClientRect()) < 7.5);
  return Math.min(box.width, box.height) < 47.5 || near ? [link.textContent] : [];
})"""


@pytest.mark.parametrize("state", STATES)
def test_nothing_stands_in_anybodys_way_on_the_map(open_page: Open, markup: Checker, state: str) -> None:
    words, then = STATES[state]
    page = mapped(open_page, words, width=360)
    then(page)
    assert page.evaluate(CELLS) == []
    assert in_anybodys_way(page, markup) == []
