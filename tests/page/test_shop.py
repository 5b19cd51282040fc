"""At the machine, beyond the straight run: every screen for gloves and readers, uneven work, laps, and ways back."""

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import Open
from tests.page.markup import Checker
from tests.page.test_access import CROWDED, in_anybodys_way
from tests.page.test_at_the_machine import figures, press, take_to_machine, title

BEGIN = "Cut without a trial pass"


def cutting(page: Page) -> None:
    take_to_machine(page, "28")
    page.get_by_role("button", name=BEGIN).click()
    for cut in range(1, 8):
        press(page, f"Cut {cut} is made")


def both_moves(page: Page) -> None:
    take_to_machine(page, "51")
    page.get_by_role("button", name=BEGIN).click()
    press(page, "Cut 1 is made")


def closing(page: Page) -> None:
    take_to_machine(page, "2")
    page.get_by_role("button", name="Begin the trial pass").click()
    press(page, "Mark 1 is made")
    press(page, "Mark 2 is made")


def finished(page: Page) -> None:
    take_to_machine(page, "2")
    page.get_by_role("button", name=BEGIN).click()
    press(page, "Cut 1 is made")
    press(page, "Cut 2 is made")


def leaving(page: Page) -> None:
    cutting(page)
    page.locator("#shop-away").click()


def lost(page: Page, hole: str, reading: str, give: str = "") -> None:
    take_to_machine(page, "28")
    page.get_by_role("button", name=BEGIN).click()
    page.get_by_role("button", name="Lost count?").click()
    for box, words in (("hole", hole), ("spindle", reading), ("give", give)):
        page.locator(f"#lost-{box}").fill(words)
    page.get_by_role("button", name="Where can I be?").click()


def lost_and_found(page: Page) -> None:
    lost(page, "14", "128.5", "100")
    page.locator(".shop-found").wait_for()


def lost_and_refused(page: Page) -> None:
    lost(page, "four", "73 gadgets")
    expect(page.locator("#problem")).to_be_focused()


def checked(page: Page) -> None:
    page.locator("#go-check").click()
    for box, words in (("number", "28"), ("turns", "1"), ("holes", "20"), ("circle", "49")):
        page.locator(f"#check-{box}").fill(words)
    page.get_by_role("button", name="Check it").click()
    page.locator("#check-use").wait_for()


def converted(page: Page) -> None:
    page.locator("#go-angles").click()
    page.locator("#angles-angle").fill("37.5")
    page.get_by_role("button", name="Convert").click()
    page.locator("#angles-result dl").first.wait_for()


SCREENS: dict[str, Callable[[Page], None]] = {
    "cutting": cutting, "both moves": both_moves, "closing": closing, "finished": finished, "leaving": leaving,
    "lost and found": lost_and_found, "lost and refused": lost_and_refused, "checked": checked, "converted": converted,
}  # fmt: skip


@pytest.mark.parametrize("screen", SCREENS)
def test_nothing_stands_in_the_way_on_any_screen_of_the_shop(page: Page, markup: Checker, screen: str) -> None:
    SCREENS[screen](page)
    for width in (360, 800, 1280):
        page.set_viewport_size({"width": width, "height": 900})
        assert page.evaluate(CROWDED) == []
    assert in_anybodys_way(page, markup) == []


def test_done_is_high_enough_for_a_glove(open_page: Open) -> None:
    page = open_page(width=360, height=740)
    cutting(page)
    box = page.locator("#shop-done").bounding_box()
    assert box is not None
    assert box["height"] >= 96


# Without drawings to fill the screen its buttons stay at the foot and as high as a finger needs.
@pytest.mark.parametrize("screen", [lost_and_refused, finished, closing])
def test_the_buttons_stand_at_the_foot_of_a_screen_without_drawings(
    open_page: Open, screen: Callable[[Page], None]
) -> None:
    page = open_page(width=800, height=1200)
    screen(page)
    box = page.locator(".shop-buttons").bounding_box()
    assert box is not None
    assert box["height"] < 200
    assert box["y"] + box["height"] == pytest.approx(1200, abs=1)


def test_the_plate_follows_the_cut(page: Page) -> None:
    cutting(page)
    # The eighth cut: six moves of 21 spaces end at 126 - 2 x 49 = 28, and one more leads home.
    assert page.locator(".shop-plate .pin").get_attribute("data-hole") == "28"
    assert page.locator(".shop-plate .next").get_attribute("data-hole") == "0"
    assert page.locator(".shop-ring .done").get_attribute("data-marks") == "7"


def test_steps_lead_back_through_every_stage(page: Page) -> None:
    closing(page)
    press(page, "Step back")
    assert title(page) == "Mark 2 of 2"
    press(page, "Step back")
    press(page, "Step back")
    assert title(page) == "Get ready"
    press(page, BEGIN)
    press(page, "Cut 1 is made")
    press(page, "Cut 2 is made")
    assert title(page) == "All 2 cut"
    press(page, "Step back")
    assert title(page) == "Cut 2 of 2"


def second_of(page: Page, angles: str) -> None:
    """At the machine, after the first cut of a list."""
    page.locator("#kind-angles").check(force=True)
    page.get_by_label("Angles from zero").fill(angles)
    page.locator("#csv").wait_for()
    page.get_by_role("button", name="Start cutting").click()
    page.get_by_role("button", name=BEGIN).click()
    press(page, "Cut 1 is made")


def test_uneven_work_has_its_own_move_at_every_cut(page: Page) -> None:
    second_of(page, "0\n9\n36")
    # At 40:1 a crank turn is 9 degrees: one turn to the second place, three more to the third.
    assert figures(page) == ["1 turn"]
    press(page, "Cut 2 is made")
    assert figures(page) == ["3 turns"]


def test_of_two_moves_the_one_that_is_not_to_be_made_is_told_so(page: Page) -> None:
    second_of(page, "0, 22.5, 61°15'")
    # At 40:1 a crank turn is 9 degrees: 22.5 degrees are 2 turns and 9 of 18 spaces, and nothing on the other circle.
    expect(page.locator(".shop-moves li").first.locator(".shop-figure")).to_have_text(["2 turns", "9 spaces"])
    expect(page.locator(".shop-moves li").last).to_contain_text("No move this time.")


def test_in_block_indexing_the_cuts_go_round_in_laps(page: Page) -> None:
    page.get_by_text("How close, and block indexing").click()
    page.get_by_label("Spaces per move").fill("3")
    take_to_machine(page, "20")
    page.get_by_role("button", name=BEGIN).click()
    press(page, "Cut 1 is made")
    # Three divisions of 18 degrees.
    expect(page.locator(".shop-expect")).to_contain_text("54°00'")


def test_a_wrong_hole_is_said_so_when_the_count_is_lost(page: Page) -> None:
    lost(page, "5", "128.5")
    expect(page.locator("#lost-answer")).to_contain_text("None of these has the hole that you gave")


def test_no_cut_at_all_is_said_so_when_the_count_is_lost(page: Page) -> None:
    lost(page, "5", "121", "0°10'")
    expect(page.locator("#lost-answer")).to_contain_text("No cut of this job has that hole and that reading.")


def test_a_cut_still_to_be_made_is_shown_again(page: Page) -> None:
    lost(page, "14", "128.5")
    page.get_by_role("button", name="Cut 11 is still to be made").click()
    assert title(page) == "Cut 11 of 28"


def test_a_job_is_removed_only_when_asked_twice(page: Page) -> None:
    take_to_machine(page, "28")
    page.locator("#shop-away").click()
    page.get_by_role("dialog").get_by_role("button", name="Leave").click()
    page.get_by_role("button", name="Remove").click()
    page.get_by_role("dialog").get_by_role("button", name="Keep it").click()
    expect(page.locator(".job")).to_have_count(1)
    page.get_by_role("button", name="Remove").click()
    page.get_by_role("dialog").get_by_role("button", name="Remove it").click()
    expect(page.locator(".job")).to_have_count(0)
    assert page.evaluate("Object.keys(localStorage).filter((key) => key.startsWith('dividing.job.'))") == []


def test_shaking_and_speaking_are_off_until_asked_for(page: Page) -> None:
    take_to_machine(page, "28")
    speak = page.get_by_role("button", name="Speak each move")
    expect(speak).to_have_attribute("aria-pressed", "false")
    expect(page.get_by_role("button", name="Shake at each step")).to_have_attribute("aria-pressed", "false")
    speak.click()
    page.reload()
    expect(page.get_by_role("button", name="Speak each move")).to_have_attribute("aria-pressed", "true")
