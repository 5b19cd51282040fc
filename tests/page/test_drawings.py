"""The drawings, read back from their own geometry: holes, pin, arms, gears and marks stand in place."""

import json
import math
import re
from collections.abc import Iterator
from itertools import pairwise
from typing import Any
from xml.etree import ElementTree

import pytest
from playwright.sync_api import Browser, Page

SET_ONE = [[15, 16, 17, 18, 19, 20], [21, 23, 27, 29, 31, 33], [37, 39, 41, 43, 47, 49]]

# circle, hole of the pin, spaces (below 0: back)
MOVES = [
    ([21, 23, 27, 29, 31, 33], 21, 0, 12),
    ([21, 23, 27, 29, 31, 33], 21, 20, 12),
    ([37, 39, 41, 43, 47, 49], 49, 3, 21),
    ([46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66], 66, 0, 65),
    ([15, 16, 17, 18, 19, 20], 15, 14, 1),
    ([21, 33], 33, 3, -11),
    ([400, 399], 400, 7, 120),
]


@pytest.fixture(scope="module")
def page(browser: Browser, live: str) -> Iterator[Page]:
    opened = browser.new_page()
    opened.goto(live)
    yield opened
    opened.close()


def drawn(page: Page, module: str, name: str, asked: dict[str, Any]) -> ElementTree.Element:
    """The drawing as a tree without name spaces."""
    markup = page.evaluate(f"async (asked) => (await import('/js/{module}.js')).{name}(asked)", asked)
    # Our own markup, so the parser that trusts what it reads will do.
    return ElementTree.fromstring(markup.replace(' xmlns="http://www.w3.org/2000/svg"', ""))  # noqa: S314


def plate(page: Page, **asked: Any) -> ElementTree.Element:
    return drawn(page, "draw-plate", "drawPlate", asked)


def of_class(tree: ElementTree.Element, *names: str) -> list[ElementTree.Element]:
    return [each for each in tree.iter() if set(names) <= set(each.get("class", "").split())]


def turn_of(element: ElementTree.Element) -> float:
    """Where a round mark stands, in turns clockwise from the top."""
    return (math.atan2(float(element.get("cx", 0)), -float(element.get("cy", 0))) / (2 * math.pi)) % 1


def apart(one: float, other: float) -> float:
    """How far two places round the circle are from each other, in turns."""
    return abs((one - other + 0.5) % 1 - 0.5)


class TestAPlate:
    @pytest.mark.parametrize(("circles", "circle", "start", "spaces"), MOVES)
    def test_every_hole_of_the_circle_in_use_is_drawn_at_its_own_place(
        self, page: Page, circles: list[int], circle: int, start: int, spaces: int
    ) -> None:
        tree = plate(page, circles=circles, circle=circle, **{"from": start}, spaces=spaces)
        holes = of_class(tree, "hole")
        assert len(holes) == circle
        assert all(apart(turn_of(hole), number / circle) < 0.0005 for number, hole in enumerate(holes))

    @pytest.mark.parametrize(("circles", "circle", "start", "spaces"), MOVES)
    def test_the_pin_stands_in_its_hole_and_the_ring_round_the_hole_to_go_to(
        self, page: Page, circles: list[int], circle: int, start: int, spaces: int
    ) -> None:
        tree = plate(page, circles=circles, circle=circle, **{"from": start}, spaces=spaces)
        [pin], [following] = of_class(tree, "pin"), of_class(tree, "next")
        assert apart(turn_of(pin), start / circle) < 0.0005
        assert apart(turn_of(following), (start + spaces) / circle) < 0.0005

    @pytest.mark.parametrize(("circles", "circle", "start", "spaces"), MOVES)
    def test_the_arms_embrace_one_hole_more_than_there_are_spaces(
        self, page: Page, circles: list[int], circle: int, start: int, spaces: int
    ) -> None:
        tree = plate(page, circles=circles, circle=circle, **{"from": start}, spaces=spaces)
        assert len(of_class(tree, "embraced")) == abs(spaces) + 1
        first, second = (edge(arm) for arm in of_class(tree, "arm"))
        opening = (second - first) % 1
        inside = [hole for hole in range(circle) if (hole / circle - first) % 1 < opening]
        assert len(inside) == abs(spaces) + 1
        assert {start, (start + spaces) % circle} <= set(inside)

    @pytest.mark.parametrize("circles", SET_ONE)
    def test_the_circle_with_most_holes_lies_outermost(self, page: Page, circles: list[int]) -> None:
        tree = plate(page, circles=circles, circle=circles[0], spaces=3)
        others = of_class(tree, "other")
        radius = {float(ring.get("pathLength", 0)): float(ring.get("data-radius", 0)) for ring in others}
        assert sorted(radius) == circles[1:]
        assert sorted(radius, key=radius.__getitem__) == circles[1:]
        [in_use] = of_class(tree, "in-use")
        assert float(in_use.get("r", 0)) < min(radius.values())

    def test_whole_turns_alone_need_no_arms_and_come_back_to_the_same_hole(self, page: Page) -> None:
        tree = plate(page, circles=SET_ONE[0], circle=20, spaces=0, turns=2)
        assert of_class(tree, "arm") == []
        assert turn_of(of_class(tree, "next")[0]) == turn_of(of_class(tree, "pin")[0]) == 0

    def test_the_direct_plate_has_no_arms(self, page: Page) -> None:
        tree = plate(page, circles=[24], circle=24, spaces=4, direct=True)
        assert of_class(tree, "arm") == []
        assert len(of_class(tree, "hole")) == 24

    def test_a_plate_of_a_hundred_circles_stays_light(self, page: Page) -> None:
        circles = list(range(301, 401))
        tree = plate(page, circles=circles, circle=400, spaces=120)
        assert len(of_class(tree, "ring")) == 100
        assert len(ElementTree.tostring(tree)) < 60_000

    def test_the_explanation_numbers_the_pin_hole_nought(self, page: Page) -> None:
        tree = plate(page, circles=SET_ONE[1], circle=21, spaces=12, explain=True)
        assert [each.text for each in of_class(tree, "count")] == [str(number) for number in range(13)]
        words = " ".join(each.text or "" for each in of_class(tree, "note"))
        assert words == (
            "A space is the step from hole to hole. The pin's own hole is 0: it is left, not stepped into. "
            "12 spaces reach hole 12, so the arms embrace 13 holes."
        )

    def test_it_says_in_words_what_it_shows(self, page: Page) -> None:
        tree = plate(page, circles=[21, 33], circle=21, **{"from": 15}, spaces=12)
        assert tree.findtext("title") == "Plate, circle of 21 holes"
        assert tree.findtext("desc") == (
            "The pin is in hole 15; 12 spaces clockwise on is hole 6. The sector arms embrace 13 holes. "
            "The other circles have 33 holes."
        )

    def test_it_holds_no_style_of_its_own(self, page: Page) -> None:
        tree = plate(page, circles=[21], circle=21, spaces=2, explain=True)
        assert all(each.get("style") is None for each in tree.iter())


def edge(arm: ElementTree.Element) -> float:
    """Where the straight edge of an arm points, from the first two corners of its outline."""
    numbers = [float(each) for each in re.findall(r"-?\d+(?:\.\d+)?", arm.get("d", ""))[:4]]
    return (math.atan2(numbers[2], -numbers[3]) / (2 * math.pi)) % 1


TRAINS = [
    {"spindle": 48, "worm": 28, "stud": None, "idlers": 2, "plate": "against"},
    {"spindle": 100, "worm": 24, "stud": None, "idlers": 1, "plate": "with"},
    {"spindle": 72, "worm": 48, "stud": [64, 24], "idlers": 1, "plate": "against"},
    {"spindle": 24, "worm": 100, "stud": [28, 86], "idlers": 0, "plate": "with"},
]


class TestATrain:
    @pytest.mark.parametrize("gearing", TRAINS, ids=json.dumps)
    def test_gears_stand_to_scale_with_their_teeth(self, page: Page, gearing: dict[str, Any]) -> None:
        tree = drawn(page, "draw-train", "drawTrain", gearing)
        drawn_teeth = of_class(tree, "teeth")
        gears = [(int(each.get("pathLength", 0)), float(each.get("data-radius", 0))) for each in drawn_teeth]
        wanted = [gearing["spindle"], gearing["worm"], *(gearing["stud"] or [])]
        assert sorted(teeth for teeth, _ in gears) == sorted(wanted + [32] * gearing["idlers"])
        assert len({round(radius / teeth, 6) for teeth, radius in gears}) == 1

    @pytest.mark.parametrize("gearing", TRAINS, ids=json.dumps)
    def test_gears_in_mesh_touch_and_turn_opposite_ways(self, page: Page, gearing: dict[str, Any]) -> None:
        tree = drawn(page, "draw-train", "drawTrain", gearing)
        shafts = [(float(each.get("cx", 0)), float(each.get("cy", 0))) for each in of_class(tree, "shaft")]
        stud = gearing["stud"]
        leading = [gearing["spindle"], *[32] * gearing["idlers"]]
        meshes = [*zip(leading, [*leading[1:], stud[1] if stud else gearing["worm"]], strict=True)]
        meshes += [(stud[0], gearing["worm"])] if stud else []
        assert len(shafts) == len(meshes) + 1
        for (one, other), (here, there) in zip(meshes, pairwise(shafts), strict=True):
            assert math.dist(here, there) == pytest.approx((one + other) / 2, abs=0.02)
        heads = [head for sense in of_class(tree, "sense") for head in of_class(sense, "head")][: len(shafts)]
        ways = [not head.get("transform", "").startswith("translate(-") for head in heads]
        assert ways == [order % 2 == 0 for order in range(len(shafts))]

    @pytest.mark.parametrize("gearing", TRAINS, ids=json.dumps)
    def test_it_names_the_gears_and_the_way_of_the_plate(self, page: Page, gearing: dict[str, Any]) -> None:
        tree = drawn(page, "draw-train", "drawTrain", gearing)
        places = [each.text for each in of_class(tree, "place")]
        stud = ["stud, second", "stud, first"] if gearing["stud"] else []
        assert places == ["spindle", *["idler"] * gearing["idlers"], *stud, "worm side", "crank", "plate"]
        assert [each.text for each in of_class(tree, "with-or-against")] == [gearing["plate"]]


class TestARing:
    def test_marks_stand_where_the_cuts_come(self, page: Page) -> None:
        angles = [number * 360 / 73 for number in range(73)]
        tree = drawn(page, "draw-ring", "drawRing", {"angles": angles, "now": 6, "reading": "29°35′"})
        [done], [todo], [now] = of_class(tree, "done"), of_class(tree, "todo"), of_class(tree, "now")
        assert (done.get("data-marks"), todo.get("data-marks")) == ("6", "67")
        assert float(now.get("data-turn", 0)) == pytest.approx(6 / 73, abs=1e-6)
        starts = re.findall(r"M(-?[\d.]+) (-?[\d.]+)", todo.get("d", ""))
        turns = [(math.atan2(float(x), -float(y)) / (2 * math.pi)) % 1 for x, y in starts]
        wanted = [number / 73 for number in range(6, 73)]
        assert all(apart(turn, place) < 0.0005 for turn, place in zip(turns, wanted, strict=True))

    def test_past_what_the_eye_can_part_a_band_stands_for_the_marks(self, page: Page) -> None:
        angles = [number * 360 / 2000 for number in range(2000)]
        tree = drawn(page, "draw-ring", "drawRing", {"angles": angles, "now": 500, "reading": "90°00′"})
        assert of_class(tree, "todo") == []
        assert len(of_class(tree, "band")) == 2

    def test_when_all_is_cut_no_mark_is_the_next(self, page: Page) -> None:
        tree = drawn(page, "draw-ring", "drawRing", {"angles": [0, 90, 180, 270], "now": 4})
        assert of_class(tree, "now") == []
        assert of_class(tree, "done")[0].get("data-marks") == "4"
