"""One hand on the crank: every cut counted once, whatever happens to the tablet between two of them."""

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import Open


def take_to_machine(page: Page, divisions: str) -> None:
    page.get_by_label("Divisions").fill(divisions)
    page.locator("#csv").wait_for()
    page.get_by_role("button", name="Start cutting").click()
    page.locator("#shop-title").wait_for()


def press(page: Page, name: str) -> None:
    """A deliberate press: a second one too soon after the first counts as a bouncing glove."""
    page.wait_for_timeout(400)
    page.get_by_role("button", name=name).click()


def title(page: Page) -> str:
    return page.locator("#shop-title").inner_text()


def figures(page: Page) -> list[str]:
    return [" ".join(each.split()) for each in page.locator(".shop-figure").all_inner_texts()]


def test_a_light_trial_pass_comes_before_the_cuts(page: Page) -> None:
    take_to_machine(page, "3")
    page.get_by_role("button", name="Begin the trial pass").click()
    for mark in (1, 2, 3):
        press(page, f"Mark {mark} is made")
    expect(page.locator(".shop-start")).to_have_text("Make the same move once more.")
    press(page, "It closes: begin to cut")
    for cut in (1, 2, 3):
        assert title(page) == f"Cut {cut} of 3"
        press(page, f"Cut {cut} is made")
    expect(page.locator(".shop-start")).to_have_text("The last cut is made.")


def test_each_cut_tells_its_move_hole_and_scale(page: Page) -> None:
    take_to_machine(page, "28")
    page.get_by_role("button", name="Cut without a trial pass").click()
    expect(page.locator(".shop-start")).to_have_text("No move. Make the first cut where you stand.")
    press(page, "Cut 1 is made")
    assert figures(page) == ["1 turn", "21 spaces"]
    # 360/28 degrees is 12 6/7: 12°51' on a scale read to minutes.
    expect(page.locator(".shop-expect")).to_contain_text("12°51'")
    expect(page.locator(".shop-expect")).to_contain_text("21 of 49")
    expect(page.locator(".shop-arms")).to_contain_text("Arms")
    for cut in range(2, 8):
        press(page, f"Cut {cut} is made")
    # 7 moves of 21 spaces on 49 are 3 whole rounds: the pin is home at the eighth cut.
    expect(page.locator(".shop-free")).to_contain_text("the pin drops into the marked hole 0")


def test_the_count_goes_back_a_step(page: Page) -> None:
    take_to_machine(page, "28")
    page.get_by_role("button", name="Cut without a trial pass").click()
    press(page, "Cut 1 is made")
    press(page, "Cut 2 is made")
    press(page, "Step back")
    assert title(page) == "Cut 2 of 28"


def test_a_glove_that_bounces_counts_one_cut(page: Page) -> None:
    take_to_machine(page, "28")
    page.get_by_role("button", name="Cut without a trial pass").click()
    page.wait_for_timeout(400)
    page.locator("#shop-done").dblclick()
    assert title(page) == "Cut 2 of 28"


def test_the_count_outlives_a_reload_and_a_closed_tab(page: Page) -> None:
    take_to_machine(page, "28")
    page.get_by_role("button", name="Cut without a trial pass").click()
    press(page, "Cut 1 is made")
    page.reload()
    expect(page.locator("#shop-title")).to_have_text("Cut 2 of 28")
    again = page.context.new_page()
    again.goto(page.url.split("#")[0])
    expect(again.locator("#shop-title")).to_have_text("Cut 2 of 28")


def test_leaving_asks_first_and_several_jobs_stay_open(page: Page) -> None:
    take_to_machine(page, "28")
    page.get_by_role("button", name="Cut without a trial pass").click()
    press(page, "Cut 1 is made")
    page.get_by_role("button", name="Leave").first.click()
    expect(page.get_by_role("dialog")).to_contain_text("Leave 28 divisions?")
    page.get_by_role("button", name="Stay").click()
    assert title(page) == "Cut 2 of 28"
    page.locator("#shop-away").click()
    page.get_by_role("dialog").get_by_role("button", name="Leave").click()
    page.locator("#go-setup").click()
    take_to_machine(page, "24")
    page.locator("#shop-away").click()
    page.get_by_role("dialog").get_by_role("button", name="Leave").click()
    expect(page.locator(".job > h2")).to_have_text(["24 divisions", "28 divisions"])
    page.get_by_role("button", name="Go on with 28 divisions").click()
    assert title(page) == "Cut 2 of 28"


def test_a_lost_count_is_found_from_the_hole_and_the_scale(page: Page) -> None:
    take_to_machine(page, "28")
    page.get_by_role("button", name="Cut without a trial pass").click()
    page.get_by_role("button", name="Lost count?").click()
    # Cut 11 stands 10 moves of 21 spaces on: 210 - 4 x 49 = 14; 10 x 360/28 = 128°34'.
    page.locator("#lost-hole").fill("14")
    page.locator("#lost-spindle").fill("128.5")
    page.locator("#lost-form button.main, #lost-form button[type=submit], #lost-form .done").first.click()
    expect(page.locator(".shop-found li")).to_have_count(1)
    expect(page.locator(".shop-found li")).to_contain_text("Cut 11 of 28: hole 14, scale 128°34'")
    page.get_by_role("button", name="Cut 11 is made, go on").click()
    assert title(page) == "Cut 12 of 28"


def test_compound_indexing_tells_both_moves_in_their_order(page: Page) -> None:
    take_to_machine(page, "51")
    page.get_by_role("button", name="Cut without a trial pass").click()
    press(page, "Cut 1 is made")
    assert figures(page) == ["12 spaces", "2 spaces"]
    expect(page.locator(".shop-moves li").nth(0)).to_contain_text("Crank alone, circle 18")
    expect(page.locator(".shop-moves li").nth(1)).to_contain_text("Plate and crank together, circle 17")


def test_differential_indexing_begins_with_the_direction_test(page: Page) -> None:
    page.locator("#go-head").click()
    page.get_by_label("Change gears").fill("24 24 28 32 40 44 48 56 64 72 86 100")
    page.get_by_role("button", name="Use this head").click()
    take_to_machine(page, "73")
    begin = page.get_by_role("button", name="Begin the trial pass")
    expect(begin).to_be_disabled()
    page.get_by_role("button", name="It turns with the crank").click()
    expect(page.get_by_role("alert")).to_contain_text("Add one idler, or take one out")
    expect(begin).to_be_disabled()
    page.get_by_role("button", name="It turns against the crank").click()
    expect(begin).to_be_enabled()


def test_a_dial_is_followed_by_its_reading(page: Page) -> None:
    page.locator("#go-head").click()
    page.get_by_text("Start from a ready-made head").click()
    page.locator("#ready button").filter(has_text="by its dial").click()
    page.get_by_role("button", name="Use this head").click()
    page.get_by_label("Divisions").fill("7")
    expect(page.locator("#move")).to_have_text("Indexing by the dial")
    take_to_machine(page, "7")
    page.get_by_role("button", name="Cut without a trial pass").click()
    press(page, "Cut 1 is made")
    # 90/7 turns are 12 and 6/7; 6/7 of a turn of 4° is 3°25'42.86", set to the vernier's 10".
    expect(page.locator(".shop-figure")).to_have_text(["12 turns", "3°25'40\" on the dial"])
    whole = "Whole turns of the handwheel from the last setting, then on to the reading."
    expect(page.locator(".shop-dial")).to_have_text(whole)


@pytest.mark.parametrize("width", [360, 800, 1280])
def test_the_move_and_its_button_are_seen_without_scrolling(open_page: Open, width: int) -> None:
    page = open_page(width=width, height=700)
    take_to_machine(page, "28")
    page.get_by_role("button", name="Cut without a trial pass").click()
    press(page, "Cut 1 is made")
    for part in (".shop-figure >> nth=1", "#shop-done", "#shop-title"):
        expect(page.locator(part)).to_be_in_viewport(ratio=1)
