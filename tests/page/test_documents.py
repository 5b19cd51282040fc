"""The site's documents: one way between them, one head for all, and no way off while there is nothing to go to."""

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import Open
from tests.page.test_heads import describe
from tests.page.test_looking_up import reads
from tests.page.test_offline import serving
from tests.running import free_port


@pytest.mark.parametrize(
    ("address", "lands", "heading"),
    [
        ("#jobs", "/#jobs", "Jobs"),
        ("#head", "/head.html", "The head"),
        ("#check", "/check.html", "Check a setup worked by hand"),
        ("#angles", "/check.html#angles", "Angles"),
        ("check.html#head", "/head.html", "The head"),
        ("#class", "/class.html", "Exercises in dividing"),
        ("class.html#handout", "/class.html#handout", "How dividing is worked out"),
        ("check.html#jobs", "/#jobs", "Jobs"),
        ("class.html#angles", "/check.html#angles", "Angles"),
    ],
)
def test_a_view_by_its_name_is_found_in_whichever_document_it_is(
    open_page: Open, live: str, address: str, lands: str, heading: str
) -> None:
    page = open_page(address)
    expect(page.get_by_role("heading", level=1)).to_have_text(heading)
    expect(page).to_have_url(live + lands)
    expect(page.locator("nav [aria-current=page]")).to_have_count(1)


@pytest.mark.parametrize("document", ["check.html", "class.html"])
def test_a_question_in_the_link_is_answered_whatever_document_it_was_sent_to(open_page: Open, document: str) -> None:
    page = open_page(f"{document}#divisions=28")
    expect(page.locator("#move")).to_be_visible()
    reads(page, ["1 turn", "21 spaces", "49 circle"])


def test_one_head_serves_every_document(page: Page) -> None:
    describe(page, "By the window", "60")
    for view in ("check", "angles", "class"):
        page.locator(f"#go-{view}").click()
        expect(page.locator("#main")).to_contain_text("On By the window: 60:1")


def test_a_lent_head_can_be_given_back_from_every_document(open_page: Open) -> None:
    page = open_page("#divisions=28&ratio=60")
    expect(page.locator("#borrowed")).to_be_visible()
    page.locator("#go-check").click()
    expect(page.locator("#check-head")).to_contain_text("60:1")
    page.get_by_role("button", name="Back to my head: 40:1").click()
    expect(page.locator("#check-head")).to_contain_text("40:1")
    page.locator("#go-setup").click()
    expect(page.locator("#head-line")).to_contain_text("40:1")


def test_back_leads_to_the_view_before(page: Page) -> None:
    heading = page.get_by_role("heading", level=1)
    page.get_by_label("Divisions").fill("28")
    expect(page.locator("#csv")).to_be_visible()
    page.locator("#go-jobs").click()
    expect(heading).to_have_text("Jobs")
    page.go_back()
    expect(page.get_by_label("Divisions")).to_have_value("28")
    page.get_by_role("button", name="Start cutting").click()
    expect(heading).to_have_text("Get ready")
    page.go_back()
    expect(heading).to_have_text("Crank move")
    expect(page.get_by_role("button", name="Start cutting")).to_be_visible()
    page.go_forward()
    expect(heading).to_have_text("Get ready")


def test_back_leads_to_the_view_that_a_link_named(open_page: Open) -> None:
    page = open_page("check.html#angles")
    heading = page.get_by_role("heading", level=1)
    page.locator("#go-check").click()
    expect(heading).to_have_text("Check a setup worked by hand")
    page.go_back()
    expect(heading).to_have_text("Angles")


def test_the_question_is_still_there_on_the_way_back(page: Page) -> None:
    page.get_by_label("Divisions").fill("28")
    page.locator("#csv").wait_for()
    page.locator("#go-check").click()
    expect(page.locator("#check-number")).to_have_value("28")
    page.locator("#go-setup").click()
    expect(page.get_by_label("Divisions")).to_have_value("28")
    expect(page.locator("#move")).to_be_visible()
    reads(page, ["1 turn", "21 spaces", "49 circle"])


def test_nobody_is_led_away_from_a_count_while_the_service_is_out_of_reach(open_page: Open) -> None:
    address = f"127.0.0.1:{free_port()}"
    with serving(address):
        page = open_page(base=f"http://{address}", service_workers="block")
        page.wait_for_load_state("networkidle")
    page.locator("#go-class").click()
    expect(page.locator("#offline")).to_contain_text("“Class” must wait until it is back.")
    expect(page.get_by_label("Divisions")).to_be_visible()
    with serving(address):
        expect(page.locator("#offline")).to_have_count(0, timeout=20_000)
        page.locator("#go-class").click()
        expect(page.get_by_role("heading", level=1)).to_have_text("Exercises in dividing")


# A browser may put a document aside as it stood and show it again when the operator goes back to it.
def test_a_document_shown_again_takes_up_the_head_and_count_of_meanwhile(page: Page) -> None:
    page.get_by_label("Divisions").fill("28")
    page.locator("#csv").wait_for()
    page.evaluate("localStorage.setItem('dividing.head', JSON.stringify({ ratio: 60 }))")
    page.evaluate("dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true }))")
    expect(page.locator("#head-line")).to_contain_text("60:1")
    # 60/28 = 2 1/7 = 2 7/49.
    reads(page, ["2 turns", "7 spaces", "49 circle"])


def test_a_link_opened_beside_leaves_this_document_as_it_is(page: Page) -> None:
    with page.context.expect_page() as opened:
        page.locator("#go-check").click(modifiers=["Control"])
    expect(opened.value.get_by_role("heading", level=1)).to_have_text("Check a setup worked by hand")
    expect(page.get_by_label("Divisions")).to_be_visible()
