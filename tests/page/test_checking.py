"""A setup worked by hand is judged, and angles are turned both ways, on the head that is set in the page."""

from playwright.sync_api import Page, expect


def checked(page: Page, divisions: str, **claim: str) -> None:
    page.locator("#go-check").click()
    page.locator("#check-number").fill(divisions)
    for name, typed in claim.items():
        page.locator(f"#check-{name}").fill(typed)
    page.get_by_role("button", name="Check it").click()


def test_a_right_setup_is_called_right(page: Page) -> None:
    checked(page, "28", turns="1", holes="9", circle="21")
    expect(page.locator("#check-verdict")).to_have_text("Right, and exact")
    expect(page.locator("#check-verdict")).to_be_focused()


def test_the_pin_hole_counted_is_explained_and_put_right(page: Page) -> None:
    checked(page, "28", turns="1", holes="8", circle="21")
    expect(page.locator("#check-verdict")).not_to_have_text("Right, and exact")
    expect(page.locator("#check-result")).to_contain_text("What probably slipped")
    page.get_by_role("button", name="Check that instead").first.click()
    expect(page.locator("#check-verdict")).to_have_text("Right, and exact")
    expect(page.locator("#check-holes")).to_have_value("9")


def test_several_empty_boxes_are_told_by_their_names(page: Page) -> None:
    page.locator("#go-check").click()
    page.locator("#check-method-differential").check(force=True)
    checked(page, "73", holes="10", circle="18")
    told = ["Gear on the spindle: This field is needed.", "Gear on the worm side: This field is needed."]
    expect(page.locator("#problem a")).to_have_text(told)
    page.get_by_role("link", name=told[1]).click()
    expect(page.get_by_label("Gear on the worm side")).to_be_focused()


def test_the_right_setup_beside_it_can_be_used(page: Page) -> None:
    checked(page, "28", turns="1", holes="8", circle="21")
    page.get_by_role("button", name="Use this setup").click()
    expect(page.locator("#move")).to_be_visible()
    expect(page.get_by_label("Divisions")).to_have_value("28")


# 19/17 - 6/18 = 40/51; the page goes 12 spaces on 18 and 2 on 17 instead.
def test_a_right_setup_that_the_page_does_not_tell_is_not_changed_for_another(page: Page) -> None:
    page.locator("#go-check").click()
    page.locator("#check-method-compound").check(force=True)
    checked(page, "51", turns="1", holes="2", circle="17", second_holes="-6", second_circle="18")
    expect(page.locator("#check-verdict")).to_have_text("Right, and exact")
    page.get_by_role("button", name="Use this setup").click()
    expect(page.locator("#check-result .note")).to_contain_text("set the head by it")
    expect(page.locator("#check-use")).to_have_count(0)
    page.locator("#check-second_holes").fill("-5")
    expect(page.locator("#check-result .note")).to_have_count(0)


def test_a_circle_on_no_plate_cannot_be_set(page: Page) -> None:
    checked(page, "28", turns="1", holes="12", circle="28")
    expect(page.locator("#check-verdict")).to_contain_text("set")
    expect(page.locator("#check-result")).to_contain_text("28")


def test_what_is_wrong_in_a_claim_is_said_beside_its_field(page: Page) -> None:
    checked(page, "28", turns="one", holes="9", circle="21")
    expect(page.locator("#problem")).to_be_focused()
    expect(page.locator("#check-turns-wrong")).to_be_visible()


def test_an_angle_gives_its_crank_move_arc_and_chord(page: Page) -> None:
    page.locator("#go-angles").click()
    page.locator("#angles-angle").fill("37°30'")
    page.locator("#angles-diameter").fill("100")
    result = page.locator("#angles-result")
    expect(result).to_contain_text("37°30'00.00\"")
    expect(result).to_contain_text("4 turns and 3 spaces on 18")
    # Arc: 100 x pi x 37.5/360 = 32.7249; chord: 100 x sin(18.75°) = 32.1439.
    expect(result).to_contain_text("32.7249")
    expect(result).to_contain_text("32.1439")


def test_a_crank_move_gives_its_angle(page: Page) -> None:
    page.locator("#go-angles").click()
    page.locator("#angles-from-crank").check()
    page.locator("#angles-turns").fill("4")
    page.locator("#angles-holes").fill("3")
    page.locator("#angles-circle").fill("18")
    expect(page.locator("#angles-result")).to_contain_text("37°30'00.00\"")


def test_what_was_typed_is_still_there_after_a_reload(page: Page) -> None:
    checked(page, "28", turns="1", holes="9", circle="21")
    page.reload()
    page.locator("#go-check").click()
    expect(page.locator("#check-circle")).to_have_value("21")
