"""The link after #: everything that a setup depends on, and nothing of the tablet that it came from."""

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import Open, here
from tests.page.test_looking_up import reads, tiles

# The head of the link is not the default one in any of its words.
OTHER_HEAD = (
    "ratio=60&plates=21,23,27/37,39,49&mounted_plate=2&direct_circles=36&change_gears=24,28,32&stop_circles=27,49"
    "&worm_disengages=false&idlers=0,1,1,0&screw=5+mm"
)


@pytest.mark.parametrize(
    "asked",
    [
        "divisions=28",
        "angle=37%C2%B030'&count=3",
        "angles=0,9,27",
        "divisions=73&tolerance=0%C2%B001'&every=2",
        "divisions=73&at_rim=0.02&diameter=120",
        f"divisions=28&{OTHER_HEAD}",
        "divisions=7&ratio=90&plates=&direct_circles=&dial=0%C2%B001'/0%C2%B000'10%22",
    ],
)
def test_a_link_opened_on_another_tablet_gives_the_same_answer(open_page: Open, asked: str) -> None:
    first = open_page(f"#{asked}")
    expect(first.locator("#move")).to_be_visible()
    first.locator("#csv").wait_for()
    first.get_by_role("button", name="Link").click()
    link = first.get_by_label("This setup as a link").input_value()
    second = open_page(link.split("/", 3)[3])
    expect(second.locator("#csv")).to_be_visible()
    assert tiles(second) == tiles(first) != []
    assert second.locator("#head-line").inner_text() == first.locator("#head-line").inner_text()
    assert here(second) == here(first)


def test_every_word_of_the_head_comes_through_the_link(open_page: Open) -> None:
    page = open_page(f"#divisions=28&{OTHER_HEAD}")
    expect(page.locator("#head-line")).to_have_text("60:1, plates 21-27 / 37-49, 36 direct, 3 change gears")
    page.locator("#change-head").click()
    page.get_by_text("Stop pin, idlers, table screw").click()
    expect(page.get_by_label("Circles that the stop pin reaches")).to_have_value("27 49")
    expect(page.get_by_label("Two gears, with the crank")).to_have_value("0")
    expect(page.get_by_label("Lead of the screw")).to_have_value("5")
    expect(page.get_by_label("The worm can be taken out of mesh")).not_to_be_checked()
    expect(page.locator("#mounted-1")).to_be_checked()


def test_a_link_lends_its_head_and_the_operators_own_comes_back(open_page: Open) -> None:
    page = open_page("#divisions=28&ratio=60")
    expect(page.locator("#borrowed")).to_contain_text("The link brought its own head: 60:1")
    page.get_by_role("button", name="Back to my head: 40:1").click()
    expect(page.locator("#head-line")).to_contain_text("40:1")
    expect(page.locator("#borrowed")).to_have_count(0)
    expect(page.locator("#move")).to_be_visible()
    reads(page, ["1 turn", "21 spaces", "49 circle"])


def test_the_link_names_the_question_as_it_is_typed(page: Page) -> None:
    page.get_by_label("Divisions").fill("28")
    expect(page.locator("#move")).to_be_visible()
    assert here(page).endswith("/#divisions=28&ratio=40") or here(page).endswith("/#divisions=28")


def test_the_button_says_that_the_link_is_copied(open_page: Open) -> None:
    page = open_page("#divisions=28", permissions=["clipboard-read", "clipboard-write"])
    page.get_by_role("button", name="Link").click()
    page.locator("#copy").click()
    expect(page.locator("#copy")).to_have_text("Copied")
    assert page.evaluate("navigator.clipboard.readText()") == here(page)
