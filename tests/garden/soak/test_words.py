"""The result of a soak test in words, and its part of the sheet."""

from __future__ import annotations

import math
import re

import pytest
from hypothesis import given as every
from hypothesis import strategies as st

from interview.garden.soak import words as soak_words
from interview.garden.soak.depth import DepthRule
from interview.garden.soak.hole import Hole, HoleShape
from interview.garden.soak.rates import Texture, soak_test, texture_check
from interview.garden.soak.readings import Reading, combine
from interview.quantities.units import magnitude, quantity
from interview.sheet import soil
from interview.sheet.report import plan_text

EIGHT_INCH = (6.875, 5.75, 4.875, 4.125)
SETTLING = (5, 5.5, 5.875, 6, 6.125, 6.125)


def read_hole(*depths, refill=None, width=8.0, hours=1.0, water=8.0):
    full = None if refill is None else quantity(float(refill), "in")
    readings = [
        Reading(quantity(hours * place, "h"), quantity(float(deep), "in"), refilled_to=full)
        for place, deep in enumerate(depths, 1)
    ]
    return soak_test(Hole(HoleShape.ROUND, quantity(width, "in")), quantity(water, "in"), readings)


@pytest.fixture
def eight_inch():
    return read_hole(*EIGHT_INCH)


def rate(number):
    return quantity(number, "in/h")


# Where the water goes


def test_the_picture_says_the_share_of_walls_and_bottom_of_this_hole(eight_inch):
    picture = soak_words.water_picture(eight_inch)
    joined = "\n".join(picture)
    assert "75 % ←─" in joined and "bottom 25 %" in joined
    assert max(len(line) for line in picture) <= 60
    wide = "\n".join(soak_words.water_picture(read_hole(7.5, 7, 6.5, width=48)))
    assert "38 % ←─" in wide and "bottom 62 %" in wide


@every(st.floats(4, 60), st.floats(1, 7.8))
def test_the_two_shares_of_the_picture_make_a_hundred(width, left):
    test = read_hole(left, width=width)
    words = "\n".join(soak_words.water_picture(test)).replace("%", "")
    shares = [int(word) for word in words.split() if word.isdigit()]
    assert sum(shares) == 100


def test_a_hole_without_fall_has_no_picture():
    still = read_hole(8, 8, 8)
    assert soak_words.water_picture(still) == []
    assert "did not fall" in soak_words.why_narrow(still, False)


def test_why_a_narrow_hole_is_faster_than_a_garden_is_said_with_its_own_numbers(eight_inch):
    said = soak_words.why_narrow(eight_inch, False)
    assert "fell 1 in/h (the drop rate)" in said and "75 %" in said
    assert "0.24 in/h (the corrected rate). A pond on this soil" in said
    slowing = read_hole(*SETTLING, refill=8, width=10)
    assert slowing.corrected < slowing.corrected_all
    assert "(the corrected rate, here from the last three readings)" in soak_words.why_narrow(
        slowing, False
    )
    assert "27 mm/h" in soak_words.why_narrow(eight_inch, True)


def test_a_rate_is_written_alike_wherever_it_is_met(plan_of, hole):
    """Arithmetic: 1.065 in/h and 0.2451 in/h, two digits, down."""
    texts = hole("round", "8 in", "8 in", "; ".join(
        f"+{hour}h left {deep} in" for hour, deep in enumerate(EIGHT_INCH, 1)))  # fmt: skip
    plan = plan_of({"units": "us", **texts})
    sheet = " ".join(plan_text(plan).split())
    met = re.findall(r"([\d.]+ in/h) \((?:the )?(drop|corrected) rate\)", sheet)
    met += [
        (rate, kind)
        for kind, rate in re.findall(r"([Dd]rop|[Cc]orrected) rate ([\d.]+ in/h)", sheet)
    ]
    met += [(rate, "drop") for rate in re.findall(r"the water drops ([\d.]+ in/h)", sheet)]
    met += [(rate, "drop") for rate in re.findall(r"Drop rate in the hole: +([\d.]+ in/h)", sheet)]
    assert len(met) >= 4
    assert {(rate, kind.lower()) for rate, kind in met} == {
        ("1 in/h", "drop"), ("0.24 in/h", "corrected")
    }  # fmt: skip
    for word in ("1.1 in/h", "0.97 in/h", "0.25 in/h (the"):
        assert word not in sheet


# How sure


def test_rates_that_agree_at_last_are_settled_however_they_began():
    said = soak_words.trend_words(read_hole(*SETTLING, refill=8, width=10))
    assert said.startswith("Settled: the last three corrected rates")
    assert "fall" not in said and "easing" not in said


@every(st.lists(st.floats(1, 7.9), min_size=1, max_size=9), st.sampled_from([None, 8.0]))
def test_one_verdict_is_given_on_whether_the_rate_has_settled(depths, refill):
    test = read_hole(*(depths if refill else sorted(depths, reverse=True)), refill=refill)
    said = soak_words.trend_words(test)
    verdicts = ("Settled:", "Not settled:", "Too few readings")
    assert sum(said.count(one) for one in verdicts) == 1
    assert said.startswith("Settled:") is test.settled
    assert ("and they are falling" in said) is test.still_wetting
    assert not (test.settled and test.still_wetting)


def test_a_rate_that_falls_is_still_wetting():
    test = read_hole(*SETTLING[:4], refill=8, width=10)
    said = soak_words.trend_words(test)
    assert "falling, so the soil is still getting wet" in said
    assert test.still_wetting and not test.settled


def test_a_steady_rate_is_settled_though_the_drops_get_smaller(eight_inch):
    said = soak_words.trend_words(eight_inch)
    assert said.startswith("Settled:")
    assert "The drops still get smaller, and they must" in said
    level = read_hole(7, 7, 7, 7, refill=8)
    assert "get smaller" not in soak_words.trend_words(level)
    assert "Too few" in soak_words.trend_words(read_hole(7, 6))


def test_rates_that_go_down_one_by_one_are_no_blur_of_the_ruler():
    """Within the ruler's error over three readings, yet lower at each of six."""
    easing = read_hole(7.125, 6.375, 5.75, 5.25, 4.75, 4.375)
    said = soak_words.trend_words(easing)
    assert said.startswith("Not settled") and "falling" in said and "ruler" not in said


def test_readings_the_ruler_cannot_tell_apart_count_as_settled():
    said = soak_words.trend_words(read_hole(7.875, 7.875, 7.75))
    assert "ruler" in said


def test_the_error_band_is_two_standard_uncertainties_each_way(eight_inch):
    low = magnitude(eight_inch.corrected - 2 * eight_inch.standard_error, "in/h")
    assert low == pytest.approx(0.226, abs=5e-4)
    assert "between 0.22 and 0.27 in/h" in soak_words.error_words(eight_inch, False)


def test_the_texture_is_held_against_the_test(subtests):
    for tested_at, words in [
        (0.3, "agrees with the test"),
        (20.0, "roots, cracks"),
        (0.01, "smeared wall"),
    ]:
        with subtests.test(tested_at=tested_at, words=words):
            said = soak_words.texture_words(texture_check(rate(tested_at), Texture.LOAM), False)
            assert "loam" in said and "0.52 in/h" in said and words in said


# Depth


def test_each_check_and_each_rule_says_its_pond_and_its_span_to_empty(eight_inch):
    drop, corrected = eight_inch.drop_rate, eight_inch.corrected
    cap = quantity(10.0, "in")
    text = "\n".join(soak_words.depth_lines(drop, corrected, cap, False, DepthRule.BOTH))
    assert "24 h:    25 in" in text and "48 h:      11 in" in text
    assert "* both checks" in text and "9.4 to 41 h" in text
    assert "5.5 in" in text and "corrected rate" in text
    assert max(len(line) for line in text.splitlines()) <= 76
    assert "more than 48 h here" not in text


def test_the_custom_alone_is_cautioned_where_it_goes_past_two_days():
    lines = list(soak_words.depth_lines(rate(1.0), rate(0.1), None, False))
    assert "more than 48 h here" in lines[-1]
    assert not any(line.startswith("*") for line in lines)


def test_soil_that_takes_nothing_has_no_pond_and_no_endless_numbers():
    text = "\n".join(soak_words.depth_lines(rate(0.0), rate(0.0), None, True))
    assert "inf" not in text and "nan" not in text and "0 mm" in text
    slow = "\n".join(soak_words.depth_lines(rate(1.0), rate(0.0), None, True))
    assert "never" in slow and "inf" not in slow
    months = list(soak_words.depth_lines(rate(1.0), rate(0.005), None, True))
    assert "9.9 to over 1000 h" in "\n".join(months)
    assert max(map(len, months)) <= 76


def test_the_three_rules_are_the_strict_between_none_and_both():
    both, strict, custom = (pond for _, pond in soak_words.choices(rate(0.9), rate(0.2), None, 0))
    assert strict.depth <= both.depth <= custom.depth


# Several holes


def test_two_and_three_holes_say_which_governs_and_why():
    one, two, three = read_hole(7, 6, 5), read_hole(7.5, 7, 6.5), read_hole(6, 4.5, 3.3)
    slower = soak_words.governs_words(combine([one, two]))
    assert "uses the slower" in slower and "times the slowest" in slower
    assert "the middle rate" in soak_words.governs_words(combine([one, two, three]))
    assert "Only one hole counts" in soak_words.governs_words(combine([one]))
    assert "another none" in soak_words.governs_words(combine([one, read_hole(8, 8)]))


def two_holes(hole, **more):
    first = hole("round", "8 in", "8 in", "+1h left 7 in; +2h left 6 1/8 in; +3h left 5 3/8 in")
    second = hole("round", "8 in", "8 in", "+1h left 7 1/2 in; +2h left 7 in", number=2)
    return {"units": "us", **first, "holes.1.another_hole": "yes", **second, **more}


def test_the_sheet_compares_the_holes_and_marks_the_one_that_governs(plan_of, hole):
    plan = plan_of(two_holes(hole))
    lines = list(soil.soak(plan))
    (marked,) = [line for line in lines if line.endswith("used")]
    assert marked.startswith("hole 2")
    assert plan.soak.soil.standard_error == plan.soak.holes[1].test.standard_error
    assert max(map(len, lines)) <= 76


ASIDE = {"holes.2.hole_counts": "no", "holes.2.hole_set_aside_why": "the spade met an old trench"}


def test_a_hole_set_aside_is_shown_with_its_reason_and_not_used(plan_of, hole, printed):
    plan = plan_of(two_holes(hole, **ASIDE))
    text = "\n".join(soil.soak(plan))
    assert "set aside and not used: the spade met an old trench" in " ".join(text.split())
    assert plan.soak.soil.corrected == plan.soak.holes[0].test.corrected
    assert plan.soak.soil.combined.rule.value == "the only hole"
    found = {one.key: one for one in plan.findings}
    assert "hole_2_set_aside" in found and "hole_2_rate" not in found
    assert printed(plan)["holes"][1]["set_aside"] == "the spade met an old trench"
    assert "hole 2" in text and text.count("WATER LEFT") == 2


def test_the_only_hole_set_aside_leaves_the_plan_waiting_with_a_reason(plan_of, hole):
    texts = hole("round", "8 in", "8 in", "+1h left 7 in")
    plan = plan_of({"units": "us", **texts, "holes.1.hole_counts": "no"})
    assert "Every hole you tested is set aside" in plan_text(plan)


def test_the_sheet_has_table_chart_picture_and_meaning(plan_of, hole):
    texts = hole("round", "8 in", "8 in", "; ".join(f"+{i}h left {d} in" for i, d in enumerate(
        ("6 7/8", "5 3/4", "4 7/8", "4 1/8"), 1)), ribbon="short")  # fmt: skip
    lines = list(soil.soak(plan_of({"units": "us", **texts})))
    text = " ".join(" ".join(lines).split())
    for words in (
        "since fill", "WATER LEFT", "walls all round", "bottom 25 %", "By feel it is loam",
        "Check 2", "shortcut: drop alone",
    ):  # fmt: skip
        assert words in text, words
    assert max(map(len, lines)) <= 76


def test_any_number_of_readings_fits_the_sheet(subtests, plan_of, hole):
    for count in range(1, 7):
        for units in ["us", "metric"]:
            with subtests.test(units=units, count=count):
                levels = ["7", "6 1/4", "5 1/2", "empty", "", ""][:count]
                said = [f"+{i}h " + (f"left {d} in" if d and d != "empty" else "empty")
                        for i, d in enumerate(levels, 1)]  # fmt: skip
                plan = plan_of({"units": units, **hole("round", "8 in", "8 in", "; ".join(said))})
                lines = list(soil.soak(plan))
                assert max(map(len, lines)) <= 76
                assert not any("nan" in line.split() or "inf" in line.split() for line in lines)


def test_an_infinite_spread_is_never_printed():
    both = combine([read_hole(7, 6), read_hole(8, 8)])
    assert math.isinf(both.spread)
    assert "inf" not in soak_words.governs_words(both)
