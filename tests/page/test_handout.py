"""The handout for a class speaks of the head that stands in the room."""

from playwright.sync_api import Page, expect

from tests.page.conftest import Open

TABLE_BY_DIAL = "#divisions=7&ratio=90&plates=&direct_circles=&dial=0%C2%B001'/0%C2%B000'10%22"


def lessons(page: Page) -> list[str]:
    page.locator("#go-class").click()
    page.locator("#to-handout").click()
    expect(page.locator(".handout-answers li")).to_have_count(6)
    return page.locator(".handout-lesson h2").all_inner_texts()


def test_a_table_without_plates_is_taught_by_its_dial(open_page: Open) -> None:
    page = open_page(TABLE_BY_DIAL)
    assert lessons(page) == ["By the dial", "What this head leaves out", "Now you"]
    # 90/28 = 3 3/14; 3/14 of a turn of 4 degrees is 51'25.71", set to the vernier's 10".
    expect(page.locator(".handout-move")).to_have_text("3 turns, dial to 0°51'30\"")
    expect(page.locator(".handout-line").first).to_have_text("Turns ______ Dial ____________")


def test_a_head_with_plates_is_taught_by_its_circles(open_page: Open) -> None:
    page = open_page("#divisions=28")
    taught = lessons(page)
    assert taught[:2] == ["Direct: the plate on the spindle", "Plain: a fraction of a crank turn"]
    # 40/18 = 2 2/9 = 2 4/18; four spaces lie between five holes.
    expect(page.locator(".handout-answers li").first).to_contain_text("2 turns and 4 spaces, arms over 5 holes")
