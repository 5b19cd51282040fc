"""On paper: the job card with its code, the handout for a class, and every view as the browser prints it by itself."""

import json
import subprocess
from pathlib import Path
from urllib.parse import quote

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import Open
from tests.page.test_looking_up import reads

PAPERS = ["A4", "Letter"]


def on_paper(page: Page, kept: Path, paper: str) -> str:
    """The page as a PDF, and its text."""
    page.pdf(path=kept, format=paper)
    return subprocess.run(["pdftotext", "-layout", kept, "-"], check=True, capture_output=True, text=True).stdout


def printed(page: Page, kept: Path, paper: str) -> str:
    """The card as a PDF, and its text."""
    page.evaluate("window.print = () => {}")
    page.get_by_role("button", name="Print job card").click()
    page.locator("#paper .card").wait_for(state="attached")
    page.wait_for_load_state("networkidle")
    return on_paper(page, kept, paper)


def code_on(pdf: Path) -> str:
    """What the printed code says."""
    subprocess.run(["pdftoppm", "-r", "200", "-png", "-f", "1", "-l", "1", pdf, pdf.with_suffix("")], check=True)
    picture = next(pdf.parent.glob(pdf.stem + "*.png"))
    read = subprocess.run(["zbarimg", "-q", "--raw", picture], check=True, capture_output=True, text=True)
    return read.stdout.strip()


def code_width(page: Page) -> float:
    """Millimetres across the printed code itself, its white border of four squares on each side left off."""
    page.emulate_media(media="print")
    picture = page.locator("#paper .card-code")
    across = picture.evaluate("(image) => image.getBoundingClientRect().width") / 96 * 25.4
    # Squares of four pixels: the picture's own width tells how many there are.
    squares = picture.evaluate("(image) => image.naturalWidth") / 4
    return float(across * (squares - 8) / squares)


@pytest.mark.parametrize("paper", PAPERS)
def test_the_code_on_the_card_opens_the_same_setup(page: Page, open_page: Open, tmp_path: Path, paper: str) -> None:
    page.get_by_label("Divisions").fill("28")
    page.locator("#csv").wait_for()
    card = tmp_path / "card.pdf"
    text = printed(page, card, paper)
    for words in ("28 divisions", "arms over 22 holes", "Operator", "Date", "version 0.1.0", "Stop the cutter"):
        assert words.lower() in text.lower()
    assert code_width(page) >= 25
    link = code_on(card)
    other = open_page(link.split("/", 3)[3])
    other.locator("#csv").wait_for()
    reads(page, ["1 turn", "21 spaces", "49 circle"])
    reads(other, ["1 turn", "21 spaces", "49 circle"])


def test_the_code_of_a_part_opens_the_part(page: Page, open_page: Open, tmp_path: Path) -> None:
    page.locator("#kind-part").check(force=True)
    page.get_by_label("Number of teeth").fill("37")
    page.get_by_label("Module").fill("2.5")
    page.locator("#csv").wait_for()
    card = tmp_path / "card.pdf"
    # Outside diameter: 2.5 (37 + 2) = 97.5.
    assert "97.500 mm" in printed(page, card, "A4")
    other = open_page(code_on(card).split("/", 3)[3])
    other.locator("#csv").wait_for()
    expect(other.get_by_label("Number of teeth")).to_have_value("37")
    reads(page, ["1 turn", "3 spaces", "37 circle"])
    reads(other, ["1 turn", "3 spaces", "37 circle"])


def test_the_code_of_another_way_opens_that_way(page: Page, open_page: Open, tmp_path: Path) -> None:
    page.get_by_label("Divisions").fill("28")
    page.locator("#setup-1").click()
    page.locator("#csv").wait_for()
    card = tmp_path / "card.pdf"
    assert "arms over 10 holes" in printed(page, card, "A4")
    other = open_page(code_on(card).split("/", 3)[3])
    other.locator("#csv").wait_for()
    reads(page, ["1 turn", "9 spaces", "21 circle"])
    reads(other, ["1 turn", "9 spaces", "21 circle"])


def test_a_card_says_how_far_off_the_setup_is(page: Page, tmp_path: Path) -> None:
    page.get_by_label("Divisions").fill("73")
    page.locator("#csv").wait_for()
    assert "Not exact." in printed(page, tmp_path / "card.pdf", "A4")


def test_a_card_is_printed_without_a_network_too(page: Page, tmp_path: Path) -> None:
    page.get_by_label("Divisions").fill("28")
    page.locator("#csv").wait_for()
    page.wait_for_load_state("networkidle")
    page.wait_for_timeout(2000)
    page.route("**/qr.svg*", lambda route: route.abort())
    assert "arms over 22 holes" in printed(page, tmp_path / "card.pdf", "A4")


def test_the_handout_works_its_examples_on_the_head_in_the_page(page: Page) -> None:
    page.locator("#go-class").click()
    page.locator("#to-handout").click()
    expect(page.locator(".handout")).to_contain_text("40/28 = 1 3/7")
    expect(page.locator(".handout .plate-drawing").first).to_be_visible()
    expect(page.locator(".handout-answers li").first).to_contain_text("Plate")


HELICAL = {"kind": "helical_gear", "teeth": 30, "module": 2, "helix_angle": 15, "hand": "left", "unit": "mm"}
PART = f"#part={quote(json.dumps(HELICAL))}"
CONTROLS = "button, nav, select, summary, .button, .pick input, input:placeholder-shown, textarea:placeholder-shown"
IN_SIGHT = "(found) => found.filter((each) => each.checkVisibility()).map((each) => each.outerHTML.slice(0, 80))"


@pytest.mark.parametrize(
    ("address", "ready"),
    [
        ("", "#divisions"),
        ("#divisions=28", "#csv"),
        ("#divisions=73", "#csv"),
        (PART, "#part-here .sheet"),
        ("#jobs", "h1"),
        ("check.html", "#check-number"),
        ("check.html#angles", "#angles-angle"),
        ("head.html", "#ready"),
        ("class.html", "#class-seed"),
        ("class.html#seed=7&count=9&level=1&generator=1&ratio=40", "#sheet-foot button"),
        ("class.html#handout", ".handout-answers li"),
        ("office.html", "#sheet-paste"),
        ("office.html#view=coverage&from=2&to=60", "#map"),
        ("office.html#view=plate&number=102", "#plate-csv"),
    ],
)
def test_no_view_prints_what_can_only_be_pressed_or_filled_in(open_page: Open, address: str, ready: str) -> None:
    page = open_page(address)
    page.locator(ready).first.wait_for()
    assert page.locator(CONTROLS).evaluate_all(IN_SIGHT)
    page.emulate_media(media="print")
    assert page.locator(CONTROLS).evaluate_all(IN_SIGHT) == []


@pytest.mark.parametrize("paper", PAPERS)
def test_without_its_card_an_answer_is_printed_whole(open_page: Open, tmp_path: Path, paper: str) -> None:
    page = open_page("#divisions=28", service_workers="block")
    page.route("**/jobcard.js", lambda route: route.abort())
    page.locator("#csv").wait_for()
    text = on_paper(page, tmp_path / "answer.pdf", paper)
    # The last of the cuts stands at 27/28 of 360°: 347°08'34.29".
    for words in ("Divisions", "21", "49", "Exact", "Mount plate 3", "Stop the cutter", "40/28", "347°08'34.29\""):
        assert words in text
    for words in ("Ways to set it", "How close", "Angle list", "Light or dark"):
        assert words not in text


def test_what_was_chosen_from_a_list_is_printed_in_words(open_page: Open, tmp_path: Path) -> None:
    page = open_page(PART, service_workers="block")
    page.route("**/jobcard.js", lambda route: route.abort())
    page.locator("#part-here .sheet").first.wait_for()
    asked, _ = on_paper(page, tmp_path / "part.pdf", "A4").split("Plain indexing")
    for words in ("Helical gear", "30", "15", "2.25 modules", "Left", "mm"):
        assert words in asked
    assert "Diametral pitch" not in asked


def test_a_head_is_printed_with_what_was_filled_in(open_page: Open, tmp_path: Path) -> None:
    page = open_page("head.html")
    page.get_by_text("Stop pin, idlers, table screw").click()
    page.get_by_label("Lead of the screw").fill("0.25")
    page.get_by_label("Unit").select_option("inch")
    page.get_by_text("Stop pin, idlers, table screw").click()
    text = on_paper(page, tmp_path / "head.pdf", "A4")
    for words in ("15 16 17 18 19 20", "The worm can be taken out of mesh", "Lead of the screw", "0.25", "inch"):
        assert words in text
    for words in ("Your name for it", "ready-made", "Ratio unknown"):
        assert words not in text
