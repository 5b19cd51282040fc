"""The head on the machine: described, counted, kept, saved to a file and read back."""

import json
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import Open
from tests.page.test_looking_up import reads

SPITEFUL = '<img src=x onerror="document.title=1">'


def describe(page: Page, name: str, ratio: str) -> None:
    page.locator("#go-head").click()
    page.get_by_label("Your name for it").fill(name)
    page.get_by_label("Crank turns for one turn of the spindle").fill(ratio)
    page.get_by_role("button", name="Use this head").click()
    page.locator("#head-line").wait_for()


def test_a_head_is_kept_after_reload_and_used(page: Page) -> None:
    describe(page, "Loom shop, by the window", "60")
    page.reload()
    expect(page.locator(".head-line")).to_contain_text("Loom shop, by the window")
    expect(page.locator("#head-line")).to_contain_text("60:1")
    page.get_by_label("Divisions").fill("28")
    expect(page.locator("#move")).to_be_visible()
    reads(page, ["2 turns", "7 spaces", "49 circle"])


def test_several_heads_are_kept_by_name(page: Page) -> None:
    describe(page, "Big one", "60")
    describe(page, "Small one", "40")
    page.locator("#go-head").click()
    page.get_by_role("button", name="Use Big one").click()
    expect(page.locator("#head-line")).to_contain_text("60:1")
    page.locator("#go-head").click()
    page.get_by_role("button", name="Remove Small one").click()
    expect(page.locator("#kept-heads li").filter(has_text="Small one")).to_have_count(0)
    expect(page.locator("#kept-heads li").filter(has_text="Big one")).to_have_count(1)


def test_a_head_removed_by_mistake_is_put_back(page: Page) -> None:
    describe(page, "Big one", "60")
    describe(page, "Small one", "40")
    page.locator("#go-head").click()
    page.get_by_role("button", name="Remove Big one").click()
    expect(page.locator("#kept-heads li")).to_have_count(1)
    expect(page.get_by_role("button", name="Put it back")).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator("#kept-heads li").first).to_contain_text("Big one 60:1")
    expect(page.get_by_role("button", name="Use Big one")).to_be_focused()
    expect(page.get_by_role("button", name="Put it back")).to_have_count(0)


@pytest.mark.parametrize("width", [360, 800])
def test_a_ready_made_head_is_put_to_use_from_where_its_fields_begin(open_page: Open, width: int) -> None:
    page = open_page("head.html", width=width, height=740)
    page.get_by_text("Start from a ready-made head").click()
    page.locator("#ready button").filter(has_text="60:1").first.click()
    expect(page.get_by_label("Your name for it")).to_be_in_viewport(ratio=1)
    use = page.get_by_role("button", name="Use it as it is")
    expect(use).to_be_in_viewport(ratio=1)
    use.click()
    expect(page.locator("#head-line")).to_contain_text("60:1")


def test_a_ready_made_head_fills_the_form(page: Page) -> None:
    page.locator("#go-head").click()
    page.get_by_text("Start from a ready-made head").click()
    page.locator("#ready button").filter(has_text="60:1").first.click()
    expect(page.get_by_label("Crank turns for one turn of the spindle")).to_have_value("60")
    expect(page.get_by_label("Your name for it")).to_be_focused()


def test_a_head_that_holds_nothing_is_told_so_where_something_can_be_given(open_page: Open) -> None:
    page = open_page("head.html")
    for plate in (3, 2, 1):
        page.get_by_role("button", name=f"Remove plate {plate}").click()
    page.get_by_label("Direct plate on the spindle").fill("")
    page.get_by_role("button", name="Use this head").click()
    told = "Give the head a plate, a direct circle or a dial: without one nothing can be set."
    expect(page.locator("#head-direct_circles-wrong")).to_have_text(told)
    expect(page.locator("#head-ratio-wrong")).to_have_count(0)


def test_an_unknown_ratio_is_counted(page: Page) -> None:
    page.locator("#go-head").click()
    page.get_by_text("Ratio unknown: count it").click()
    page.get_by_label("Crank turns counted").fill("180")
    page.get_by_label("Spindle turns").fill("2")
    expect(page.locator("#count-result")).to_have_text("That is 90:1.")
    page.get_by_role("button", name="Put it in as the ratio").click()
    expect(page.get_by_label("Crank turns for one turn of the spindle")).to_have_value("90")


def test_a_count_that_is_not_whole_asks_for_another(page: Page) -> None:
    page.locator("#go-head").click()
    page.get_by_text("Ratio unknown: count it").click()
    page.get_by_label("Crank turns counted").fill("81")
    page.get_by_label("Spindle turns").fill("2")
    sentence = "That is not whole: nearest is 41:1. Count again over more spindle turns."
    expect(page.locator("#count-result")).to_have_text(sentence)


def test_plates_are_added_and_taken_off(page: Page) -> None:
    page.locator("#go-head").click()
    page.get_by_role("button", name="Add a plate").click()
    page.get_by_label("Plate 4: holes of its circles").fill("73")
    page.locator("#mounted-3").check()
    page.get_by_role("button", name="Remove plate 1").click()
    page.get_by_role("button", name="Use this head").click()
    expect(page.locator("#head-line")).to_contain_text("plates 21-33 / 37-49 / 73")
    page.get_by_label("Divisions").fill("73")
    expect(page.locator("#move")).to_be_visible()
    reads(page, ["40 spaces", "73 circle"])


def test_a_head_that_cannot_be_is_refused_beside_its_field(page: Page) -> None:
    page.locator("#go-head").click()
    page.get_by_label("Crank turns for one turn of the spindle").fill("forty")
    page.get_by_label("Plate 2: holes of its circles").fill("21 x 27")
    page.get_by_role("button", name="Use this head").click()
    expect(page.locator("#problem")).to_be_focused()
    expect(page.locator("#head-ratio-wrong")).to_be_visible()
    expect(page.locator("#head-plate-1-wrong")).to_contain_text("Plate 2, circle 2: ")


def test_text_from_outside_stays_text(page: Page) -> None:
    describe(page, SPITEFUL, "40")
    expect(page.locator(".head-line strong")).to_have_text(SPITEFUL)
    page.locator("#go-head").click()
    expect(page.locator("#kept-heads strong")).to_have_text(SPITEFUL)
    assert page.locator("img").count() == 0
    assert page.title().startswith("Dividing")


def test_heads_saved_to_a_file_are_read_on_another_tablet(page: Page, open_page: Open, tmp_path: Path) -> None:
    describe(page, "Big one", "60")
    page.locator("#go-head").click()
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save to a file").click()
    kept = tmp_path / "heads.json"
    saved.value.save_as(kept)
    other = open_page()
    other.locator("#go-head").click()
    other.locator("#heads-file").set_input_files(kept)
    other.get_by_role("button", name="Use Big one").click()
    expect(other.locator("#head-line")).to_contain_text("60:1")


def test_a_file_with_something_else_in_it_changes_nothing(page: Page, tmp_path: Path) -> None:
    page.locator("#go-head").click()
    for text in ("no heads here", "[]", json.dumps({"heads": [{"name": 5}]})):
        wrong = tmp_path / "wrong.json"
        wrong.write_text(text)
        page.locator("#heads-file").set_input_files(wrong)
        expect(page.locator("#kept")).to_contain_text("heads")
        expect(page.locator("#kept-heads li")).to_have_count(0)


def test_a_file_cannot_bring_markup_into_the_page(page: Page, tmp_path: Path) -> None:
    spiteful = tmp_path / "heads.json"
    head = {"ratio": SPITEFUL, "plates": [[SPITEFUL]]}
    spiteful.write_text(json.dumps({"heads": [{"name": SPITEFUL, "head": head}]}))
    page.locator("#go-head").click()
    page.locator("#heads-file").set_input_files(spiteful)
    expect(page.locator("#kept-heads strong")).to_have_text(SPITEFUL)
    assert page.locator("img").count() == 0
