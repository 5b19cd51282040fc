"""The part, not only its number: fields for each kind, sizes with their sources, a drawing to scale."""

import json
from typing import Any
from urllib.parse import quote

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import Open, here
from tests.page.test_looking_up import reads, tiles

PARTS: list[dict[str, Any]] = [
    {"kind": "spur_gear", "teeth": 28, "module": 2, "unit": "mm"},
    {"kind": "helical_gear", "teeth": 45, "module": 2, "helix_angle": 20, "hand": "right", "unit": "mm"},
    {"kind": "bevel_gear", "teeth": 20, "mate": 40, "module": 2, "unit": "mm"},
    {"kind": "helix", "starts": 6, "diameter": 20, "lead": 300, "hand": "left", "unit": "mm"},
    {"kind": "flats", "sides": 6, "across_flats": 20, "unit": "mm"},
    {"kind": "flats", "sides": 5, "across_flats": 20, "round": 22, "unit": "mm"},
    {"kind": "bolt_circle", "holes": 5, "diameter": 4, "unit": "in"},
    {"kind": "spline", "teeth": 6, "major": 30, "minor": 26, "width": 6, "unit": "mm"},
    {"kind": "dial", "divisions": 100, "diameter": 60, "unit": "mm"},
    {"kind": "end_teeth", "teeth": 12, "form": "side_mill", "cutter_angle": 70},
    {"kind": "reamer", "flutes": 6},
]


@pytest.mark.parametrize("part", PARTS, ids=lambda part: part["kind"])
def test_each_kind_is_asked_for_answered_and_drawn(page: Page, part: dict[str, Any]) -> None:
    page.locator("#kind-part").check(force=True)
    page.get_by_label("Which part").select_option(part["kind"])
    for name, value in part.items():
        box = page.locator(f"#part-{name}")
        if box.evaluate("(each) => each.tagName") == "SELECT":
            box.select_option(str(value))
        else:
            box.fill(str(value))
    expect(page.locator("#move")).to_be_visible()
    expect(page.locator("#part-here .part-drawing")).to_be_visible()
    expect(page.locator("#part-here tbody tr").first).to_be_visible()


@pytest.mark.parametrize("part", PARTS[:4], ids=lambda part: part["kind"])
def test_a_part_comes_through_its_link(open_page: Open, part: dict[str, Any]) -> None:
    page = open_page(f"#part={quote(json.dumps(part))}")
    expect(page.get_by_label("Which part")).to_have_value(part["kind"])
    expect(page.locator("#move")).to_be_visible()
    again = open_page(here(page).split("/", 3)[3])
    expect(again.locator("#move")).to_be_visible()
    assert tiles(again) == tiles(page) != []


# Outside diameter of 28 teeth of module 2: 2 (28 + 2) = 60.
def test_the_sizes_of_a_gear_stand_with_their_source(open_page: Open) -> None:
    page = open_page(f"#part={quote(json.dumps(PARTS[0]))}")
    row = page.locator("#part-here tbody tr").filter(has_text="Outside diameter")
    expect(row.locator("td")).to_contain_text("60.000 mm")
    expect(row.locator(".under").first).not_to_be_empty()
    reads(page, ["1 turn", "21 spaces", "49 circle"])


def test_the_gears_for_a_lead_are_named_by_their_places(open_page: Open) -> None:
    gears = "change_gears=24,24,28,32,40,44,48,56,64,72,86,100&screw=5+mm"
    page = open_page(f"#part={quote(json.dumps(PARTS[3]))}&{gears}")
    lead = page.locator("#part-here section").filter(has_text="Gears for the lead")
    # 300 on a machine of 40 x 5 = 200: driven over drivers is 3/2, which 72 and 48 are.
    # A left hand takes one idler more than a right one.
    expect(lead.locator("dd")).to_have_text(["72", "48", "2"])
    expect(lead).to_contain_text("Exact.")


def test_impossible_geometry_is_refused_beside_its_field(page: Page) -> None:
    page.locator("#kind-part").check(force=True)
    page.get_by_label("Which part").select_option("flats")
    page.get_by_label("Number of flats").fill("6")
    page.get_by_label("Across flats").fill("20")
    page.get_by_label("Diameter of the round").fill("10")
    page.get_by_role("button", name="Work it out").click()
    expect(page.locator("#problem")).to_be_focused()
    expect(page.locator("#part-across_flats-wrong")).to_contain_text("give a smaller")


# The outline of a gear, read back from its path: as many crests as teeth, on the outside circle.
def test_a_gear_is_drawn_with_its_teeth(open_page: Open) -> None:
    page = open_page(f"#part={quote(json.dumps(PARTS[0]))}")
    path = page.locator("#part-here .part-drawing .body").get_attribute("d") or ""
    points = [tuple(map(float, each.split())) for each in path.strip("MZ").split("L")]
    far = [abs(x * x + y * y - 100**2) < 5 for x, y in points]
    assert sum(here and not before for here, before in zip(far, [far[-1], *far[:-1]], strict=True)) == 28


@pytest.mark.parametrize("kind", ["pulley", "constructor"])
def test_a_link_with_a_part_that_there_is_not_shows_the_form_and_what_is_wrong(open_page: Open, kind: str) -> None:
    page = open_page("#part=" + quote(json.dumps({"kind": kind, "teeth": "28"})))
    expect(page.locator("#problem")).to_be_focused()
    expect(page.get_by_label("Which part")).to_be_visible()
