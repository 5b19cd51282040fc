"""From a blank page to the crank move, and what the page says when there is none."""

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import Open


def tiles(page: Page) -> list[str]:
    """The large figures of the move as they are read: value and word."""
    # In one reading, since the next answer may come between two.
    pair = "(pairs) => pairs.map((pair) => ['dd', 'dt'].map((name) => pair.querySelector(name).innerText).join(' '))"
    found: list[str] = page.locator("#result .move .tile").evaluate_all(pair)
    return found


def reads(page: Page, figures: list[str]) -> None:
    """The large figures come to be these; a new answer may still be on its way."""
    for _ in range(100):
        if tiles(page) == figures:
            return
        page.wait_for_timeout(100)
    assert tiles(page) == figures


def test_a_number_typed_on_a_blank_page_gives_the_move_without_a_tap(page: Page) -> None:
    page.get_by_label("Divisions").fill("28")
    expect(page.locator("#move")).to_have_text("Plain indexing")
    reads(page, ["1 turn", "21 spaces", "49 circle"])
    expect(page.locator(".move .mark")).to_have_text("Exact")
    expect(page.locator(".facts")).to_contain_text("Plate 3 to be mounted (plate 1 is on now)")
    expect(page.locator(".facts")).to_contain_text("Arms over 22 holes")


def test_enter_asks_for_the_answer_at_once(page: Page) -> None:
    page.get_by_label("Divisions").fill("7")
    page.keyboard.press("Enter")
    expect(page.locator("#move")).to_be_visible()
    reads(page, ["5 turns", "35 spaces", "49 circle"])


def test_the_move_is_read_out_when_it_comes(page: Page) -> None:
    page.get_by_label("Divisions").fill("28")
    expect(page.locator("#status")).to_have_text("Plate 3, circle 49: 1 turn and 21 spaces, arms over 22 holes")


def test_three_taps_after_the_number_reach_another_way_to_set_it(page: Page) -> None:
    page.get_by_label("Divisions").fill("28")
    page.get_by_role("button", name="1 turn and 9 spaces on 21").click()
    reads(page, ["1 turn", "9 spaces", "21 circle"])
    expect(page.locator("#move")).to_be_focused()
    expect(page.locator("#setup-1")).to_have_attribute("aria-pressed", "true")
    expect(page.locator("#setup-0")).to_have_attribute("aria-pressed", "false")


# 37°30' at 40:1 is 25/6 turns; 24 on a 24-hole direct plate is one space: arithmetic.
@pytest.mark.parametrize(
    ("kind", "field", "typed", "figures"),
    [
        ("divisions", "Divisions", "24", ["1 space", "24 direct plate"]),
        ("divisions", "Divisions", "20", ["2 turns"]),
        ("angle", "Angle between features", "37°30'", ["4 turns", "3 spaces", "18 circle"]),
        ("angle", "Angle between features", "37,5", ["4 turns", "3 spaces", "18 circle"]),
        ("angles", "Angles from zero", "0\n9\n27", ["1 turn"]),
    ],
)
def test_each_kind_of_question_is_answered(page: Page, kind: str, field: str, typed: str, figures: list[str]) -> None:
    page.locator(f"#kind-{kind}").check(force=True)
    page.get_by_label(field).fill(typed)
    expect(page.locator("#move")).to_be_visible()
    expect(page.locator("#csv")).to_be_visible()
    reads(page, figures)


def test_signs_that_a_keyboard_hides_are_typed_from_the_page(page: Page) -> None:
    page.locator("#kind-angle").check(force=True)
    angle = page.get_by_label("Angle between features")
    angle.press_sequentially("22")
    page.get_by_role("button", name="degrees").first.click()
    page.keyboard.type("30")
    page.get_by_role("button", name="minutes").first.click()
    expect(angle).to_have_value("22°30′")
    expect(page.locator("#move")).to_be_visible()


@pytest.mark.parametrize(
    ("kind", "typed", "sentence"),
    [
        ("divisions", "0", "Divisions are a whole number from 1 to 1,000,000."),
        ("divisions", "many", "Give a whole number, such as 40."),
        ("angle", "", "Nothing is given: expected an angle such as 22.5, 22°30' or 1/7 turn."),
        ("angle", "22°75'", "Stopped at character 4 of \"22°75'\": expected minutes below 60."),
    ],
)
def test_what_is_wrong_is_said_beside_the_field_and_takes_focus(
    page: Page, kind: str, typed: str, sentence: str
) -> None:
    page.locator(f"#kind-{kind}").check(force=True)
    box = page.locator(f"#{kind}")
    box.fill(typed)
    page.keyboard.press("Enter")
    expect(page.locator("#problem")).to_be_focused()
    expect(page.locator(f"#{kind}-wrong")).to_have_text(sentence)
    expect(box).to_have_attribute("aria-invalid", "true")
    hint = "" if kind == "divisions" else "Such as 22°30′, 22.5, 22 30 15 or 1/7 turn. "
    expect(box).to_have_accessible_description(hint + sentence)
    page.get_by_role("link", name=sentence).click()
    expect(box).to_be_focused()


@pytest.mark.parametrize(("field", "typed"), [("at_rim", "fine"), ("diameter", "120 mm"), ("diameter", "1,5,")])
def test_a_length_that_is_none_is_told_in_the_words_of_the_shop(page: Page, field: str, typed: str) -> None:
    page.get_by_label("Divisions").fill("28")
    page.locator("#more summary").click()
    for name in ("at_rim", "diameter"):
        page.locator(f"#{name}").fill(typed if name == field else "120")
    page.keyboard.press("Enter")
    expect(page.locator(f"#{field}-wrong")).to_have_text("Give a number, such as 12.5.")


@pytest.mark.parametrize("kind", ["divisions", "angle", "angles", "part"])
def test_a_blank_page_says_the_same_of_every_question(page: Page, kind: str) -> None:
    page.locator(f"#kind-{kind}").check(force=True)
    expect(page.locator(".wait")).to_have_text("The crank move appears here as you type.")


def test_a_list_without_an_angle_asks_for_one(page: Page) -> None:
    page.locator("#kind-angles").check(force=True)
    page.get_by_role("button", name="Work it out").click()
    expect(page.locator("#angles-wrong")).to_have_text("Give one angle at least, such as 22.5 or 61°15'.")


def test_a_number_half_typed_is_not_scolded(page: Page) -> None:
    page.get_by_label("Divisions").press_sequentially("0")
    expect(page.locator(".wait")).to_have_text("No move for this yet. Press “Work it out” to see what is missing.")
    expect(page.locator("#problem")).to_have_count(0)
    expect(page.get_by_label("Divisions")).to_be_focused()


def test_two_wrong_fields_are_told_together(page: Page) -> None:
    page.get_by_label("Divisions").fill("0")
    page.get_by_text("How close, and block indexing").click()
    page.get_by_label("Largest error allowed, as an angle").fill("small")
    page.get_by_role("button", name="Work it out").click()
    expect(page.locator("#problem h2")).to_have_text("2 things to put right")
    expect(page.locator("#divisions-wrong")).to_be_visible()
    expect(page.locator("#tolerance-wrong")).to_be_visible()


def test_an_inexact_setup_says_how_far_off_it_is_at_the_rim(page: Page) -> None:
    page.get_by_text("How close, and block indexing").click()
    page.get_by_label("Diameter of the work").fill("200")
    page.get_by_label("Divisions").fill("73")
    page.get_by_role("button", name="A move of its own for every cut, on 49").click()
    # 326.08" on a radius of 100: 326.08 x pi / 648000 x 100 = 0.1581.
    expect(page.locator(".move .mark strong")).to_have_text("Off by up to 5′26″, 0.1581 at the rim of 200")


def test_a_second_move_the_other_way_is_said_in_words_and_not_with_a_sign_too(page: Page) -> None:
    page.get_by_label("Divisions").fill("106")
    page.get_by_role("button", name="35 spaces on 47, then 18 spaces back on 49").click()
    expect(page.get_by_role("heading", name="Then: plate and crank together, the opposite way")).to_be_visible()
    reads(page, ["35 spaces", "47 circle", "18 spaces back", "49 circle"])


def test_where_no_schedule_can_come_start_cutting_says_why(page: Page) -> None:
    page.get_by_label("Divisions").fill("20001")
    page.get_by_role("button", name="Start cutting").click()
    expect(page.locator("#no-cuts")).to_be_focused()
    expect(page.locator("#no-cuts")).to_be_in_viewport()
    expect(page.locator("#no-cuts")).to_contain_text("Beyond 20,000 rows it is left out")


# Thirty rows stand whole, so that nothing of a part's sizes is hidden; more scroll in a frame.
@pytest.mark.parametrize(("divisions", "hidden"), [("30", False), ("31", True)])
def test_only_a_long_schedule_scrolls_in_a_frame(page: Page, divisions: str, hidden: bool) -> None:
    page.get_by_label("Divisions").fill(divisions)
    expect(page.locator("#result tbody tr")).to_have_count(int(divisions))
    frame = page.get_by_role("region", name="Schedule of cuts")
    assert frame.evaluate("({ scrollHeight, clientHeight }) => scrollHeight > clientHeight") is hidden


def test_the_reasons_why_other_methods_decline_are_given(page: Page) -> None:
    page.get_by_label("Divisions").fill("28")
    expect(page.locator(".reasons")).to_contain_text("The direct plate has 24 holes, not a multiple of 28.")


def test_the_schedule_of_cuts_is_a_table_and_a_file(page: Page) -> None:
    page.get_by_label("Divisions").fill("28")
    rows = page.locator("#result tbody tr")
    expect(rows).to_have_count(28)
    expect(rows.nth(7)).to_contain_text("90°00'00.00\"")
    expect(rows.nth(7)).to_contain_text("pin home")
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save as CSV").click()
    lines = saved.value.path().read_text(encoding="utf-8-sig").splitlines()
    assert lines[0] == "Cut,Angle,Turns,Spaces,Hole,Nose scale"
    assert lines[2] == '2,"12°51\'25.71""",1,21,21,12°51\''
    assert len(lines) == 29


def test_only_the_keyboard_is_needed(open_page: Open) -> None:
    page = open_page(width=1280, height=800)
    for _ in range(20):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.id") == "divisions":
            break
    page.keyboard.type("28")
    expect(page.locator("#move")).to_be_visible()
    reached = []
    for _ in range(20):
        page.keyboard.press("Tab")
        reached.append(page.evaluate("document.activeElement.id"))
        ring = "getComputedStyle(document.activeElement.closest('.pick') || document.activeElement).outlineStyle"
        shown = page.evaluate(ring)
        assert shown == "solid", f"no focus to be seen on {reached[-1]}"
        if reached[-1] == "setup-1":
            break
    assert reached[-1] == "setup-1"
    page.keyboard.press("Enter")
    reads(page, ["1 turn", "9 spaces", "21 circle"])


# A comma or a point may part thousands or decimals: one of the two would be a wrong move, so the operator is asked.
@pytest.mark.parametrize("typed", ["1,000", "1.000"])
def test_a_mark_in_a_count_that_may_part_thousands_is_asked_about(page: Page, typed: str) -> None:
    page.get_by_label("Divisions").fill(typed)
    page.keyboard.press("Enter")
    expect(page.locator("#divisions-wrong")).to_have_text(
        "Give a whole number in figures alone, without a mark between thousands and without decimals."
    )
