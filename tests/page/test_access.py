"""For gloves, glare, keyboards and screen readers: every state of the page, at three widths, light and dark."""

import json
from collections.abc import Callable
from importlib.resources import files
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import Open
from tests.page.markup import Checker

AXE = (files("axe_playwright_python") / "axe.min.js").read_text(encoding="utf-8")
# WCAG 2.2 AA with target-size, the checker's own advice, and contrast of 7:1 (AAA).
RULES = {
    "runOnly": {"type": "tag", "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]},
    "rules": {"color-contrast-enhanced": {"enabled": True}, "target-size": {"enabled": True}},
}
WIDTHS = (360, 800, 1280)
SCHEMES = ("light", "dark")


def answered(page: Page, divisions: str = "28") -> None:
    page.get_by_label("Divisions").fill(divisions)
    page.locator("#csv").wait_for()


def refused(page: Page) -> None:
    page.get_by_label("Divisions").fill("0")
    page.get_by_role("button", name="Work it out").click()
    expect(page.locator("#problem")).to_be_focused()


def angle_asked(page: Page) -> None:
    page.locator("#kind-angle").check(force=True)
    page.get_by_label("Angle between features").fill("37.5")
    page.get_by_text("How close, and block indexing").click()
    page.locator("#csv").wait_for()


def inexact(page: Page) -> None:
    page.locator("#kind-angles").check(force=True)
    page.get_by_label("Angles from zero").fill("0\n1.01\n61°15'")
    page.locator("#csv").wait_for()


def part_asked(page: Page) -> None:
    page.locator("#kind-part").check(force=True)
    page.get_by_label("Number of teeth").fill("28")
    page.get_by_label("Module").fill("2")
    page.locator("#part-here .part-drawing").wait_for()
    page.locator("#csv").wait_for()


def geared(page: Page) -> None:
    page.locator("#go-head").click()
    page.get_by_label("Change gears").fill("24 24 28 32 40 44 48 56 64 72 86 100")
    page.get_by_role("button", name="Use this head").click()
    answered(page, "73")
    page.get_by_role("button", name="Link").click()
    page.get_by_label("This setup as a link").wait_for()


def by_dial(page: Page) -> None:
    page.locator("#go-head").click()
    page.get_by_text("Start from a ready-made head").click()
    page.locator("#ready button").filter(has_text="by its dial").click()
    page.get_by_role("button", name="Use this head").click()
    answered(page, "7")


def head_described(page: Page) -> None:
    page.locator("#go-head").click()
    page.get_by_label("Your name for it").fill("By the window")
    page.get_by_role("button", name="Use this head").click()
    page.get_by_label("Divisions").wait_for()
    page.locator("#go-head").click()
    page.get_by_label("Your name for it").wait_for()
    for summary in page.locator("summary").all():
        summary.click()
    page.locator("#dial-degrees").check()
    page.get_by_label("One mark of the dial").wait_for()


def head_refused(page: Page) -> None:
    page.locator("#go-head").click()
    page.get_by_label("Crank turns for one turn of the spindle").fill("forty")
    page.get_by_role("button", name="Use this head").click()
    expect(page.locator("#problem")).to_be_focused()


def head_lent(page: Page) -> None:
    page.evaluate("location.hash = '#divisions=28&ratio=60'")
    page.locator("#borrowed").wait_for()
    page.locator("#csv").wait_for()


def at_the_machine(page: Page) -> None:
    answered(page)
    page.get_by_role("button", name="Start cutting").click()
    page.locator("#shop-title").wait_for()


def going_to(view: str) -> Callable[[Page], None]:
    def go(page: Page) -> None:
        page.locator(f"#go-{view}").click()
        page.locator("#main h1").wait_for()
        page.wait_for_load_state("networkidle")

    return go


def handout(page: Page) -> None:
    going_to("class")(page)
    page.locator("#to-handout").click()
    page.locator(".handout-answers").wait_for()


# Every kind of exercise but the dial's: with gears the usual head can do them all.
SHEET = "/class.html#seed=7&count=9&ratio=40&change_gears=24,24,28,32,40,44,48,56,64,72,86,100"


def sheet_made(page: Page) -> None:
    page.goto(page.url.split("#")[0].rstrip("/") + SHEET)
    page.locator("#ex-9").wait_for()
    page.get_by_text("Choose another sheet").click()


def sheet_marked(page: Page) -> None:
    sheet_made(page)
    for field, typed in (("1-turns", "6"), ("1-holes", "11"), ("1-circle", "18"), ("3-holes", "3"), ("3-circle", "24")):
        page.locator(f"#ex-{field}").fill(typed)
    page.locator("#mark-sheet").click()
    expect(page.locator("#marks-title")).to_be_focused()
    page.locator("#ex-1-working summary").click()


def sheet_refused(page: Page) -> None:
    sheet_made(page)
    page.locator("#ex-1-turns").fill("six")
    page.locator("#mark-sheet").click()
    expect(page.locator("#problem")).to_be_focused()


STATES: dict[str, Callable[[Page], None]] = {
    "blank": lambda _: None,
    "answered": answered,
    "compound": lambda page: answered(page, "51"),
    "nothing exact": lambda page: answered(page, "73"),
    "refused": refused,
    "angle": angle_asked,
    "angle list": inexact,
    "part": part_asked,
    "gears and link": geared,
    "dial": by_dial,
    "head": head_described,
    "head refused": head_refused,
    "head lent": head_lent,
    "at the machine": at_the_machine,
    "jobs": going_to("jobs"),
    "check": going_to("check"),
    "angles": going_to("angles"),
    "handout": handout,
    "practice": going_to("class"),
    "sheet made": sheet_made,
    "sheet marked": sheet_marked,
    "sheet refused": sheet_refused,
}

# Every control that is shown and pressed: at least 48 by 48, and 8 from its neighbour on the same row or column.
CROWDED = """() => {
  const kinds = 'button, .button, input:not([type=radio], [type=checkbox]), select, textarea, summary, .pick, .pages a';
  const pressed = [...document.querySelectorAll(kinds)].filter((each) => each.checkVisibility()
    && !each.matches('.unseen, .skip') && !each.closest('dialog:not([open])'));
  const name = (each) => each.id || each.textContent.trim().slice(0, 20);
  const box = (each) => ({ name: name(each), ...each.getBoundingClientRect().toJSON() });
  const boxes = pressed.map(box);
  const least = document.body.dataset.view === 'shop' ? 56 : 48;
  const small = boxes.filter(({ width, height }) => Math.min(width, height) < least - 0.5);
  const found = small.map(({ name, width, height }) => `${name} is ${width} by ${height}`);
  for (const [at, one] of boxes.entries()) for (const other of boxes.slice(at + 1)) {
    const across = Math.max(one.left, other.left) - Math.min(one.right, other.right);
    const down = Math.max(one.top, other.top) - Math.min(one.bottom, other.bottom);
    if (Math.max(across, down) < 7.5) found.push(`${one.name} and ${other.name} are ${Math.max(across, down)} apart`);
  }
  return found;
}"""


def run_axe(page: Page) -> list[str]:
    result: dict[str, Any] = page.evaluate(f"axe.run(document, {json.dumps(RULES)})")
    return [
        f"{each['id']}: {node['html'][:120]} {node['failureSummary']}"
        for each in result["violations"]
        for node in each["nodes"][:3]
    ]


def found_by_the_checker(page: Page) -> list[str]:
    """Each finding of axe at each width, light and dark."""
    page.evaluate(AXE)
    found = []
    for width in WIDTHS:
        for scheme in SCHEMES:
            page.set_viewport_size({"width": width, "height": 900})
            page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
            found += [f"{width} {scheme}: {each}" for each in run_axe(page)]
    return found


def cut_off(page: Page) -> list[str]:
    """What does not fit a narrow screen, or a screen of twice its width in print of twice the size."""
    found = []
    for width, print_size in ((320, "100%"), (640, "200%")):
        page.set_viewport_size({"width": width, "height": 700})
        page.evaluate(f"document.documentElement.style.fontSize = '{print_size}'")
        reach = page.evaluate("document.documentElement.scrollWidth")
        found += [f"{reach} wide on {width} at {print_size}"] if reach > width else []
    page.evaluate("document.documentElement.style.fontSize = ''")
    return found


def in_anybodys_way(page: Page, markup: Checker) -> list[str]:
    """What is too small or too near for gloves, cut off, written wrongly, or found by axe."""
    crowded: list[str] = page.evaluate(CROWDED)
    return crowded + markup.finds_on(page) + cut_off(page) + found_by_the_checker(page)


# One visit a state.
@pytest.mark.parametrize("state", STATES)
def test_nothing_stands_in_anybodys_way_in_any_state(open_page: Open, markup: Checker, state: str) -> None:
    page = open_page(width=360)
    STATES[state](page)
    assert in_anybodys_way(page, markup) == []


def test_the_operator_chooses_light_or_dark(page: Page) -> None:
    ground = "getComputedStyle(document.body).backgroundColor"
    page.get_by_role("button", name="Dark", exact=True).click()
    dark = page.evaluate(ground)
    page.reload()
    assert page.evaluate(ground) == dark
    page.get_by_role("button", name="Light", exact=True).click()
    assert page.evaluate(ground) != dark


def test_what_is_pressed_shows_without_colours(open_page: Open) -> None:
    page = open_page(forced_colors="active")
    answered(page)
    border = "(id) => getComputedStyle(document.getElementById(id)).borderTopWidth"
    assert page.evaluate(border, "setup-0") == "4px"
    assert page.evaluate(border, "setup-1") == "2px"


def test_the_keyboard_skips_to_the_page(page: Page) -> None:
    page.keyboard.press("Tab")
    expect(page.get_by_role("button", name="Skip to the page")).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator("#main")).to_be_focused()
