"""For the classroom: the same sheet from the same link, worked and marked on the tablet, printed with its key."""

import subprocess
from pathlib import Path

import pytest
import requests
from playwright.sync_api import Page, expect

from tests.page.conftest import Open, here
from tests.page.test_heads import describe
from tests.page.test_offline import serving
from tests.running import free_port

GEARS = [24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100]
LINK = "class.html#seed=7&count=9&level=1&generator=1&ratio=40&change_gears=" + ",".join(map(str, GEARS))


def questions(page: Page) -> list[str]:
    """What the exercises ask, in their order."""
    page.locator("#sheet-foot button").first.wait_for()
    return page.locator(".exercise > p:first-of-type").all_inner_texts()


def made(page: Page, number: str, **choices: str) -> list[str]:
    """A sheet chosen by hand, from wherever the tablet is."""
    page.locator("#go-class").click()
    page.locator("#class-seed").fill(number)
    for name, typed in choices.items():
        page.locator(f"#class-{name}").fill(typed)
    page.get_by_role("button", name="Make the sheet").click()
    return questions(page)


def answer(page: Page, number: int, **typed: str) -> None:
    for field, value in typed.items():
        page.locator(f"#ex-{number}-{field.replace('_', '-')}").fill(value)


def mark(page: Page) -> None:
    page.get_by_role("button", name="Mark my answers").click()
    expect(page.locator("#marks-title")).to_be_focused()


def verdict(page: Page, number: int) -> str:
    return page.locator(f"section[aria-labelledby=ex-{number}] .mark").inner_text()


def test_the_same_number_gives_a_whole_class_the_same_sheet(page: Page, open_page: Open) -> None:
    first = made(page, "64", count="7")
    assert len(first) == 7
    link = page.get_by_label("This sheet as a link, for the class").input_value()
    assert link == here(page)
    other = open_page(link.split("/", 3)[3])
    assert questions(other) == first
    assert questions(open_page(link.split("/", 3)[3].replace("seed=64", "seed=65"))) != first


def test_the_sheet_is_what_the_service_draws(open_page: Open, live: str) -> None:
    wanted = {"seed": 7, "count": 9, "level": 1, "head": {"change_gears": GEARS}}
    drawn = requests.post(f"{live}/v1/practice", json=wanted, timeout=10).json()["exercises"]
    assert questions(open_page(LINK)) == [each["question"] for each in drawn]


def test_the_sheet_is_made_for_the_head_in_the_page_and_lent_with_its_link(page: Page, open_page: Open) -> None:
    describe(page, "", "60")
    first = made(page, "5")
    assert "ratio=60" in here(page)
    other = open_page(here(page).split("/", 3)[3])
    assert questions(other) == first
    expect(other.locator("#borrowed")).to_contain_text("The link brought its own head: 60:1")
    other.get_by_role("button", name="Back to my head: 40:1").click()
    expect(other).to_have_url(f"{here(page).split('#')[0]}#seed=5&level=1&generator=1&count=12&ratio=40")


def test_kinds_level_and_count_are_chosen(page: Page) -> None:
    page.locator("#go-class").click()
    page.get_by_label("Compound").check(force=True)
    page.get_by_label("Sector arms").check(force=True)
    page.get_by_label("3, hard").check(force=True)
    page.locator("#class-count").fill("4")
    page.get_by_role("button", name="Make the sheet").click()
    assert len(questions(page)) == 4
    kinds = set(page.locator(".exercise h2 span").all_inner_texts())
    assert kinds <= {"Compound", "Sector arms"}
    assert "level=3" in here(page)
    assert "kinds=sector_arms,compound" in here(page)


# 40/6 = 6 2/3 = 6 12/18 turns: eleven spaces are those of somebody who counts the pin's own hole.
def test_a_slip_is_explained_and_the_marks_are_summed_up(open_page: Open) -> None:
    page = open_page(LINK)
    assert "6 equal parts" in questions(page)[0]
    answer(page, 1, turns="6", holes="11", circle="18")
    page.locator("#ex-2-slip").select_option("counted_the_pin_hole")
    answer(page, 3, holes="3", circle="24")
    mark(page)
    assert [verdict(page, number) for number in (1, 2, 3, 4)] == ["Not right", "Right", "Right", "Not answered"]
    first = page.locator("section[aria-labelledby=ex-1]")
    expect(first).to_contain_text("the hole that the pin is in was counted")
    first.get_by_text("The answer and its working").click()
    expect(first).to_contain_text("2/3 = 12/18")
    expect(page.locator("#marks-title")).to_have_text("2 of 9 right")
    expect(page.locator("#sheet-head table")).to_contain_text("The hole that the pin is in was counted")
    # What was not tried keeps its answer to itself.
    expect(page.locator("#ex-4-working")).to_have_count(0)
    answer(page, 1, holes="12")
    expect(page.locator("section[aria-labelledby=ex-1] .mark")).to_have_count(0)
    expect(page.locator("#sheet-head .note")).to_have_text("Answers were changed since: mark again.")
    mark(page)
    assert verdict(page, 1) == "Right"


def test_gears_second_moves_and_no_circle_are_claimed_and_marked(open_page: Open) -> None:
    page = open_page(LINK)
    assert "79 equal parts" in questions(page)[4]
    # 40 - 79/2 = 1/2 plate turn a spindle turn, with the crank: 24 drives 48 over one idler. 7/19 + 6/18 = 40/57.
    answer(page, 5, turns="0", holes="10", circle="20", gearing_spindle="24", gearing_worm="48", gearing_idlers="1")
    answer(page, 6, turns="0", holes="7", circle="19", second_holes="6", second_circle="18")
    mark(page)
    assert [verdict(page, number) for number in (5, 6)] == ["Right", "Right"]
    answer(page, 6, second_holes="−6")
    mark(page)
    assert verdict(page, 6) == "Not right"


def test_a_sheet_that_no_circle_serves_takes_that_for_an_answer(open_page: Open, live: str) -> None:
    wanted = {"seed": 11, "count": 40, "level": 2}
    drawn = requests.post(f"{live}/v1/practice", json=wanted, timeout=10).json()["exercises"]
    number = next(each["number"] for each in drawn if each["answer"]["none"])
    page = open_page("class.html#seed=11&count=40&level=2&ratio=40")
    page.locator(f"#ex-{number}-none").check(force=True)
    mark(page)
    assert verdict(page, number) == "Right"


def test_what_is_next_to_practise_is_made_with_one_tap(open_page: Open) -> None:
    page = open_page(LINK)
    questions(page)
    answer(page, 1, turns="6", holes="11", circle="18")
    mark(page)
    page.get_by_role("button", name="Make that sheet").click()
    expect(page.locator("#sheet-title")).to_contain_text("Sheet 8")
    assert set(page.locator(".exercise h2 span").all_inner_texts()) == {"Plain"}


def test_nothing_typed_or_marked_is_lost_on_reload(page: Page) -> None:
    before = made(page, "7")
    answer(page, 1, turns="6", holes="11", circle="18")
    page.reload()
    assert questions(page) == before
    expect(page.locator("#ex-1-holes")).to_have_value("11")
    mark(page)
    page.reload()
    expect(page.locator("#marks-title")).to_be_visible()
    assert verdict(page, 1) == "Not right"
    # Another sheet between does not wipe it out.
    page.get_by_text("Choose another sheet").click()
    page.get_by_role("button", name="Another sheet").click()
    expect(page.locator("#sheet-title")).to_contain_text("Sheet 8")
    expect(page.locator("#ex-1-holes, #ex-1-circle").first).to_have_value("")
    page.locator("#class-seed").fill("7")
    page.get_by_role("button", name="Make the sheet").click()
    expect(page.locator("#sheet-title")).to_contain_text("Sheet 7")
    expect(page.locator("#ex-1-holes")).to_have_value("11")
    page.get_by_role("button", name="Clear my answers").click()
    expect(page.locator("#ex-1-holes")).to_have_value("")


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_key_is_printed_on_a_page_of_its_own(open_page: Open, tmp_path: Path, paper: str) -> None:
    page = open_page(LINK)
    asked = questions(page)
    page.evaluate("window.print = () => {}")
    page.get_by_role("button", name="Print sheet and key").click()
    printed = pages_of(page, tmp_path / "both.pdf", paper)
    first_of_key = next(at for at, text in enumerate(printed) if "Key to sheet 7" in text)
    sheet, key = " ".join(printed[:first_of_key]), " ".join(printed[first_of_key:])
    assert printed[first_of_key].strip().startswith("Key to sheet 7")
    for question in asked:
        assert " ".join(question.split()) in " ".join(sheet.split())
    assert "6 turns and 12 spaces, arms over 13 holes" not in sheet
    assert "6 turns and 12 spaces, arms over 13 holes" in key
    assert "Name" in sheet
    assert "Make the sheet" not in sheet + key
    page.get_by_role("button", name="Print the sheet alone").click()
    page.locator(".sheet-key").wait_for(state="detached")
    assert not any("Key to" in text for text in pages_of(page, tmp_path / "alone.pdf", paper))


def pages_of(page: Page, kept: Path, paper: str) -> list[str]:
    page.pdf(path=kept, format=paper)
    text = subprocess.run(["pdftotext", kept, "-"], check=True, capture_output=True, text=True).stdout
    return text.split("\f")[:-1]


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("seed", "many", "Give a whole number, such as 40."),
        ("count", "61", "A sheet has 1 to 60 exercises."),
    ],
)
def test_what_is_wrong_with_a_sheet_is_said_beside_its_field(page: Page, field: str, typed: str, sentence: str) -> None:
    page.locator("#go-class").click()
    page.locator(f"#class-{field}").fill(typed)
    page.get_by_role("button", name="Make the sheet").click()
    expect(page.locator("#problem")).to_be_focused()
    expect(page.locator(f"#class-{field}-wrong")).to_have_text(sentence)


def test_what_is_wrong_with_an_answer_is_said_beside_its_field(open_page: Open) -> None:
    page = open_page(LINK)
    questions(page)
    answer(page, 3, holes="3", circle="24")
    answer(page, 6, turns="0", holes="7", circle="19", second_holes="six", second_circle="18")
    page.get_by_role("button", name="Mark my answers").click()
    expect(page.locator("#problem")).to_be_focused()
    expect(page.locator("#ex-6-second-holes-wrong")).to_have_text("Give a whole number, such as 40.")
    page.locator("#problem a").click()
    expect(page.locator("#ex-6-second-holes")).to_be_focused()


def test_without_a_connection_answers_are_kept_and_marked_when_it_is_back(open_page: Open) -> None:
    address = f"127.0.0.1:{free_port()}"
    with serving(address):
        page = open_page(LINK, base=f"http://{address}")
        questions(page)
        page.wait_for_load_state("networkidle")
    answer(page, 1, turns="6", holes="12", circle="18")
    page.get_by_role("button", name="Mark my answers").click()
    expect(page.locator("#offline")).to_contain_text("No connection.")
    expect(page.locator("#sheet-foot .note")).to_contain_text("No connection: the marking waits.")
    expect(page.locator("#ex-1-holes")).to_have_value("12")
    with serving(address):
        expect(page.locator("#marks-title")).to_have_text("1 of 9 right", timeout=20_000)
        expect(page.locator("#sheet-foot .note")).to_have_count(0)


# Nothing from outside becomes markup: neither a link's words nor a head's name.
def test_text_from_outside_stays_text(open_page: Open) -> None:
    page = open_page("class.html#seed=%3Cimg%20src=x%20onerror=alert(1)%3E&kinds=%3Cb%3E&ratio=40")
    expect(page.locator("#problem")).to_be_visible()
    expect(page.locator("#class-seed")).to_have_value("<img src=x onerror=alert(1)>")
    expect(page.locator("main img, main b")).to_have_count(0)
