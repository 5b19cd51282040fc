"""Published values for gears, geometry, tilt, helices and graduating, each with its source.

The rows stand in data/check_values_parts.json. A row is known by what it gives; none is left out.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from math import cos, pi, radians, tan
from typing import Any

import pytest

from dividing.indexing.head import TWELVE_GEARS, Head, Screw
from dividing.parts.bevel_gear import bevel_gear
from dividing.parts.carry import at_rim, pitch_limits
from dividing.parts.dial import dial
from dividing.parts.end_teeth import end_teeth
from dividing.parts.flats import flats
from dividing.parts.form_cutters import form_cutter
from dividing.parts.helical_gear import helical_gear
from dividing.parts.helix import helix, square_lead
from dividing.parts.lead_block import angle_at
from dividing.parts.lead_gearing import LeadTrain, lead_of_machine, nearest_ratios, trains
from dividing.parts.short_lead import by_spindle, teeth_per_index
from dividing.parts.sizes import Part
from dividing.parts.spur_gear import module_from_outside, spur_gear
from tests.parts.figures import ROWS, size, value

Row = dict[str, Any]


def printed(text: str) -> Any:
    """A value as near as its printed decimals can tell."""
    decimals = len(text.partition(".")[2])
    return pytest.approx(float(text), abs=0.5000001 * 10**-decimals)


def to_digits(number: float, decimals: int) -> Any:
    """A value as near as the number of decimals in the table."""
    return pytest.approx(number, abs=0.5000001 * 10**-decimals)


def screw_of(row: Row) -> Screw:
    return Screw(Fraction(row["given"]["screw_pitch_mm"]), "mm")


# Helices


def lead_of_a_train(row: Row) -> None:
    given = row["given"]
    train = LeadTrain(given["worm_driven"], given["screw_driver"], (given["stud1_driver"], given["stud2_driven"]))
    assert float(train.ratio * given["machine_lead_in"]) == printed(row["expected"]["lead_in"])
    if "arrangement" in row["locator"]:
        # The treatise: of the four arrangements only the first physically goes on.
        assert train.clears == (row["locator"] == "p.62 arrangement 1")


def lead_of_two_pairs(row: Row) -> None:
    # The value is cut off in the source; computed there by hand: 27 inches.
    (worm, second), (first, screw) = row["given"]["driven"], row["given"]["drivers"]
    assert LeadTrain(worm, screw, (first, second)).ratio * row["given"]["machine_lead_in"] == 27


def short_lead_through_the_spindle(row: Row) -> None:
    # The same train, moved from the worm to the spindle, gives the lead divided by the ratio.
    lead, ratio = Fraction(row["given"]["lead_in"]), row["given"]["ratio"]
    screw = Screw(Fraction(1, 4), "in")
    train = lead / lead_of_machine(ratio, screw, "in")
    assert float(train * lead_of_machine(1, screw, "in")) == printed(row["expected"]["lead_in"])


def table_lead_for_a_short_lead(row: Row) -> None:
    lead = Fraction(row["given"]["wanted_lead"]) * row["given"]["ratio"]
    assert float(lead) == printed(row["expected"]["table_lead"])
    found = by_spindle(Fraction(row["given"]["wanted_lead"]), 9, Screw(Fraction(1, 4), "in"), "in", TWELVE_GEARS)
    assert found is not None
    assert found["spindle"] == 72


def published_slip_in_a_lead(row: Row) -> None:
    # The table prints 10.467; with 72 on the worm the nearest is 450/43, 10.46512.
    gears, wanted = tuple(row["given"]["gears"]), Fraction(row["given"]["table_lead"])
    with_72 = [
        ratio
        for ratio in nearest_ratios(gears, wanted / 10, limit=10)
        if any(train.worm == row["given"]["gear_on_worm"] for train in trains(gears, ratio))
    ]
    assert with_72[0] * 10 == Fraction(450, 43)


def slipping_gear_teeth(row: Row) -> None:
    given = row["given"]
    assert teeth_per_index(given["gear_on_spindle"], given["divisions"]) == row["expected"]["teeth_per_index"]


def flutes_square_to_a_thread(row: Row) -> None:
    diameter = float(row["given"]["circumference_in"]) / pi
    lead = square_lead(diameter=diameter, thread_lead=float(row["given"]["thread_lead_in"]))
    assert lead == pytest.approx(169 / 12)
    assert round(lead) == 14


def rule_of_the_helix_angle(row: Row) -> None:
    assert row["expected"]["rule"].startswith("tangent of the helix angle = circumference of the work / lead")
    for diameter, lead in ((1.0, 10.0), (2.5, 3.6), (40.0, 500.0)):
        assert tan(radians(angle_at(lead, diameter))) == pytest.approx(pi * diameter / lead)


def machine_lead(row: Row) -> None:
    assert lead_of_machine(row["given"]["ratio"], screw_of(row), "mm") == row["expected"]["machine_lead_mm"]


def metric_helical_gear(row: Row) -> None:
    given, expected = row["given"], row["expected"]
    head = Head(ratio=given["ratio"], change_gears=TWELVE_GEARS, screw=screw_of(row))
    part = helical_gear(
        teeth=given["z"], module=given["mn"], helix_angle=given["beta_deg"], hand="right", unit="mm", head=head
    )
    lead: Any = part.lead
    best = expected["best_train"]
    ratio = Fraction(best["driven"][0] * best["driven"][1], best["drivers"][0] * best["drivers"][1])
    assert lead["wanted"] == to_digits(expected["lead_mm"], 4)
    assert lead["lead_of_machine"] == expected["machine_lead_mm"]
    assert Fraction(lead["train"]) == ratio
    noted = re.search(r"lead obtained ([\d.]+) mm;.* at fixed pitch dia: ([\d.]+) deg", row["note"])
    assert noted is not None
    assert lead["achieved"] == printed(noted[1])
    assert lead["helix_angle"] == printed(noted[2])


# Gears


def navy_unit_values(row: Row) -> None:
    part = spur_gear(teeth=24, diametral_pitch=1, unit="in", whole_depth="2.157")
    assert value(part, "Pitch diameter") == pytest.approx(value(part, "Addendum") * 24)
    assert value(part, "Outside diameter") == pytest.approx(value(part, "Addendum") * 26)
    assert value(part, "Dedendum") == to_digits(row["expected"]["dedendum_unit"], 3)
    assert value(part, "Whole depth") == printed("2.1570")


def navy_constants(row: Row) -> None:
    part = spur_gear(teeth=24, diametral_pitch=6, unit="in")
    circular_pitch = 2 * value(part, "Tooth thickness along the pitch circle")
    small, large, whole = row["expected"]["constants"]
    assert value(part, "Pitch diameter") / 24 / circular_pitch == to_digits(small, 4)
    gap = value(part, "Outside diameter") - value(part, "Pitch diameter")
    assert gap / circular_pitch == to_digits(large, 4)
    assert circular_pitch * 6 == to_digits(whole, 4)


def helical_blank_grows(row: Row) -> None:
    degrees, minutes = re.findall(r"\d+", row["given"]["helix"])
    helical = helical_gear(
        teeth=20, module=3, unit="in", hand="left", helix_angle=int(degrees) + Fraction(int(minutes), 60)
    )
    straight = spur_gear(teeth=20, module=3, unit="in")
    grown = value(helical, "Pitch diameter") / value(straight, "Pitch diameter") * row["given"]["straight_in"]
    assert grown == to_digits(row["expected"]["helical_in"], 1)


def diametral_pitch(row: Row) -> None:
    part = spur_gear(teeth=row["given"]["teeth"], diametral_pitch=row["expected"]["diametral_pitch"], unit="in")
    assert value(part, "Pitch diameter") == pytest.approx(row["given"]["pitch_dia_in"])


def gear_by_its_outside(row: Row) -> None:
    # The manual's answers are cut off; computed by hand: P 8, pitch 3.000, depth 0.2696 (0.2813 at 2.250/P).
    given = {"outside_diameter": Fraction(str(row["given"]["OD_in"])), "teeth": row["given"]["teeth"], "unit": "in"}
    older, usual = spur_gear(**given, whole_depth="2.157"), spur_gear(**given)
    assert value(older, "Diametral pitch") == pytest.approx(8)
    assert value(older, "Pitch diameter") == pytest.approx(3)
    assert value(older, "Whole depth") == printed("0.2696")
    assert value(usual, "Whole depth") == printed("0.2813")


def form_cutter_ranges(row: Row) -> None:
    # 14 teeth are printed in both No. 7 and No. 8: in general use No. 8 ends at 13.
    for number, text in row["expected"]["cutters"].items():
        lowest, highest = text.split(" ")[0].split("-")
        top = 500 if highest == "rack" else 13 if number == "8" else int(highest)
        for teeth in (int(lowest), top):
            cutter = form_cutter(teeth)
            assert cutter is not None
            assert cutter.number == int(number)


def helical_in_the_normal_plane(row: Row) -> None:
    given, expected = row["given"], row["expected"]
    part = helical_gear(
        teeth=given["z"],
        module=given["mn"],
        pressure_angle=given["alpha_n"],
        helix_angle=given["beta"],
        profile_shift=given["xn"],
        hand="right",
        unit="mm",
    )
    assert value(part, "Addendum") == pytest.approx(given["ha"])
    assert value(part, "Tooth thickness along the pitch circle") == to_digits(expected["sn"], 4)
    assert value(part, "Formative teeth") == to_digits(expected["zv"], 4)
    assert value(part, "Chordal thickness") == to_digits(expected["sj"], 4)
    assert value(part, "Chordal addendum") == to_digits(expected["hj"], 4)


def helical_in_the_transverse_plane(row: Row) -> None:
    given, expected = row["given"], row["expected"]
    degrees, minutes = re.findall(r"\d+", given["beta"])
    part = helical_gear(
        teeth=given["z"],
        module=given["mt"],
        plane="transverse",
        pressure_angle=given["alpha_t"],
        helix_angle=int(degrees) + Fraction(int(minutes), 60),
        profile_shift=given["xt"],
        hand="right",
        unit="mm",
    )
    thickness, formative = value(part, "Tooth thickness along the pitch circle"), value(part, "Formative teeth")
    assert thickness == to_digits(expected["sn"], 4)
    assert formative == to_digits(expected["zv"], 3)
    formative_pitch = formative * given["mt"] * cos(radians(22.5))
    assert thickness / formative_pitch * 180 / pi == to_digits(expected["theta_v"], 5)


def pair_at_a_centre_distance(row: Row) -> None:
    teeth = row["expected"]["z1"], row["expected"]["z2"]
    pair = [spur_gear(teeth=count, module=row["given"]["m"], unit="mm") for count in teeth]
    assert sum(value(gear, "Pitch diameter") for gear in pair) / 2 == pytest.approx(row["given"]["centre_mm"])


def span_of_a_shifted_gear(row: Row) -> None:
    given = row["given"]
    part = spur_gear(
        teeth=given["z"],
        module=given["m"],
        pressure_angle=given["alpha"],
        profile_shift=Fraction(str(given["x"])),
        unit="mm",
    )
    assert value(part, f"Span over {given['teeth_spanned']} teeth") == to_digits(row["expected"]["Sm"], 4)


def third_depth_convention(row: Row) -> None:
    part = spur_gear(teeth=30, module=row["given"]["module"], unit="mm", whole_depth="2.166")
    assert value(part, "Whole depth") == to_digits(row["expected"]["whole_depth"], 2)


def pitch_diameter_of_a_module(row: Row) -> None:
    part = spur_gear(**row["given"], unit="mm")
    assert value(part, "Pitch diameter") == row["expected"]["computed"]["pitch_diameter"]


def module_of_a_blank(row: Row) -> None:
    assert module_from_outside(**row["given"], unit="mm") == Fraction(str(row["expected"]["computed"]["module"]))


def where_the_ranges_come_from(row: Row) -> None:
    # Sixteen cutters are each true at one tooth number; every second of them opens a range of the set of eight.
    true_at = row["expected"]["true_at"]
    numbers = {teeth: cutter.number for teeth in range(200) if (cutter := form_cutter(teeth))}
    lowest = [min(teeth for teeth in numbers if numbers[teeth] == number) for number in range(8, 0, -1)]
    for place, teeth in enumerate(lowest):
        assert true_at[2 * place] <= teeth <= true_at[2 * place + 1]


# Geometry, tilt and graduating


def flats_of_a_round(row: Row) -> None:
    part = flats(sides=row["given"]["sides"], stock=1000, unit="mm")
    corners = value(part, "Across corners") / value(part, "Across flats")
    assert corners == to_digits(row["expected"]["corners_over_flats"], 6)
    assert value(part, "Depth of each flat from the round") / 1000 == to_digits(
        row["expected"]["depth_of_flat_per_unit_round"], 6
    )


def rounded_steps_add_up(row: Row) -> None:
    given, expected = row["given"], row["expected"]
    part = dial(divisions=given["divisions"], diameter=given["diameter_in"], unit="in")
    spacing = value(part, "From line to line on the rim")
    assert spacing == to_digits(expected["spacing_in"], 4)
    lost = given["divisions"] * Fraction(given["error_per_step_in"]) / spacing
    assert int(lost) == expected["teeth_lost_or_gained"]
    assert [given["divisions"] - int(lost), given["divisions"] + int(lost)] == expected["range"]


def tilt(row: Row) -> None:
    forms = {"end-mill": "end_mill", "saw-tooth": "saw_tooth", "V-tooth": "v_clutch"}
    form = forms[row["locator"].split()[0]]
    part = end_teeth(teeth=row["given"]["teeth"], form=form, cutter_angle=row["given"]["cutter_angle"])
    assert part.tilt == to_digits(row["expected"]["spindle_elevation_deg"], 5)


def bevel_pair(row: Row) -> None:
    given, expected = row["given"], row["expected"]
    part = bevel_gear(teeth=given["z1"], mate=given["z2"], diametral_pitch=given["P"], unit="in", whole_depth="2.157")
    assert value(part, "Pitch angle") == to_digits(expected["pitch_angle"], 5)
    assert part.tilt == value(part, "Root angle") == to_digits(expected["cutting_angle"], 5)
    assert value(part, "Face angle") == to_digits(expected["face_angle"], 5)
    assert value(part, "Cone distance") == to_digits(expected["cone_distance"], 4)
    assert value(part, "Formative teeth") == to_digits(expected["formative_teeth"], 4)


def ruled(head: Head, spacing: str, unit: str) -> Part:
    return dial(form="linear", divisions=10, spacing=Fraction(spacing), unit=unit, head=head)


def scale_of_the_treatise(row: Row) -> None:
    given, expected = row["given"], row["expected"]
    head = Head(plates=((given["circle"],),), screw=Screw(Fraction(1, 4), "in"))
    part = ruled(head, given["spacing_in"], "in")
    assert value(part, "Table travel in one crank turn") == float(given["per_turn_in"])
    move = f"{expected['turns']} turns and {expected['holes']} spaces on the circle of {given['circle']}, plate 1"
    assert size(part, "Space as it comes out").note == move
    assert value(part, "Space as it comes out") == printed("0.02179878")
    assert value(part, "Error of one space") == printed("-0.00000122")
    assert size(part, "Crank turns for one space").note == "436/125"
    remainder = value(part, "Space as it comes out") - expected["turns"] * float(given["per_turn_in"])
    assert remainder == printed(expected["table"])


def table_travel(row: Row) -> None:
    part = ruled(Head(ratio=row["given"]["ratio"], screw=Screw(Fraction(1, 4), "in")), "0.1", "in")
    assert value(part, "Table travel in one crank turn") == float(row["expected"]["table_per_turn"])


def metric_table_travel(row: Row) -> None:
    part = ruled(Head(ratio=row["given"]["ratio"], screw=screw_of(row)), "2", "mm")
    assert value(part, "Table travel in one crank turn") == row["expected"]["table_per_turn_mm"]


def grade_table(row: Row) -> None:
    for grade in range(9):
        for place, kind in enumerate(("single_pitch", "accumulated")):
            slope, base = row["expected"][kind][str(grade)].split("W + ")
            for diameter, module in ((8.0, 1.0), (100.0, 2.0), (343.0, 6.5)):
                width = diameter ** (1 / 3) + 0.65 * module
                limit = pitch_limits(diameter=diameter, module=module, grade=grade)[place]
                assert limit == pytest.approx(float(slope) * width + float(base))


def grade_example(row: Row) -> None:
    given = row["given"]
    single, accumulated = pitch_limits(diameter=given["d_mm"], module=given["module"], grade=given["grade"])
    assert single == to_digits(row["expected"]["single_pitch_um"], 1)
    assert accumulated == to_digits(row["expected"]["accumulated_um"], 1)


CHECKS: dict[tuple[str, str], Callable[[Row], None]] = {
    ("helical", "machine_lead_in worm_driven stud1_driver stud2_driven screw_driver"): lead_of_a_train,
    ("helical", "machine_lead_in driven drivers"): lead_of_two_pairs,
    ("helical", "lead_in ratio"): short_lead_through_the_spindle,
    ("helical", "wanted_lead ratio"): table_lead_for_a_short_lead,
    ("helical", "table_lead gear_on_worm gears"): published_slip_in_a_lead,
    ("helical", "gear_on_spindle divisions"): slipping_gear_teeth,
    ("helical", "circumference_in thread_lead_in"): flutes_square_to_a_thread,
    ("helical", ""): rule_of_the_helix_angle,
    ("helical", "screw_pitch_mm ratio gears"): machine_lead,
    ("helical", "z mn beta_deg screw_pitch_mm ratio"): metric_helical_gear,
    ("gears", "AIV-2"): navy_unit_values,
    ("gears", "AIII-1"): navy_constants,
    ("gears", "straight_in helix"): helical_blank_grows,
    ("gears", "teeth pitch_dia_in"): diametral_pitch,
    ("gears", "OD_in teeth"): gear_by_its_outside,
    ("gears", "table of eight involute cutters"): form_cutter_ranges,
    ("gears", "mn alpha_n beta z xn ha"): helical_in_the_normal_plane,
    ("gears", "mt alpha_t beta z xt"): helical_in_the_transverse_plane,
    ("gears", "m centre_mm ratio"): pair_at_a_centre_distance,
    ("gears", "m alpha z x teeth_spanned"): span_of_a_shifted_gear,
    ("gears", "module"): third_depth_convention,
    ("gears", "module teeth"): pitch_diameter_of_a_module,
    ("gears", "outside_diameter teeth"): module_of_a_blank,
    ("gears", "smallest largest cutters"): where_the_ranges_come_from,
    ("geometry", "sides"): flats_of_a_round,
    ("geometry", "diameter_in divisions error_per_step_in"): rounded_steps_add_up,
    ("tilt", "teeth cutter_angle"): tilt,
    ("tilt", "z1 z2 P"): bevel_pair,
    ("graduating", "spacing_in per_turn_in circle"): scale_of_the_treatise,
    ("graduating", "ratio gears"): table_travel,
    ("graduating", "ratio screw_pitch_mm"): metric_table_travel,
    ("accuracy", "unit"): grade_table,
    ("accuracy", "d_mm module grade"): grade_example,
}


def known_by(row: Row) -> tuple[str, str]:
    given = " ".join(row["given"])
    if not given and row["category"] == "gears":
        given = row["locator"]
    return row["category"], given


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['category']}: {row['source'][:40]} {row['locator']}")
def test_a_value_with_its_source_is_met(row: Row) -> None:
    CHECKS[known_by(row)](row)


def test_every_check_has_its_row() -> None:
    assert {known_by(row) for row in ROWS} == set(CHECKS)


def test_a_helix_and_a_gear_of_the_same_lead_take_the_same_train() -> None:
    head = Head(change_gears=TWELVE_GEARS, screw=Screw(Fraction(5), "mm"))
    gear = helical_gear(teeth=30, module=2, helix_angle=15, hand="left", unit="mm", head=head)
    plain = helix(
        starts=30, diameter=value(gear, "Pitch diameter"), lead=value(gear, "Lead"), hand="left", unit="mm", head=head
    )
    assert plain.lead is not None
    assert gear.lead is not None
    assert plain.lead["gearing"] == gear.lead["gearing"]


def test_an_angle_at_the_rim_is_the_arc_between_two_radii() -> None:
    # One degree on a circle of 360/pi is an arc of one.
    assert at_rim(3600, 360 / pi) == pytest.approx(1)
