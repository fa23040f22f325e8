"""What to do about slow soil, each way with the numbers that would follow."""

from __future__ import annotations

import pytest

from interview.garden import slow_soil
from interview.garden.soak.depth import NO_POND_HERE
from interview.garden.summary import waiting
from interview.quantities.evidence import Grade
from interview.quantities.units import magnitude
from interview.sheet import soil
from interview.sheet.report import plan_text


@pytest.fixture
def slow_plan(plan_of, sized):
    """Return a maker of plans for 570 square feet of weighted roof on soil of a given rate."""

    def make(rate: str, **more: str):
        texts = {key: text for key, text in sized.items() if key != "deepest_pond"}
        return plan_of({**texts, "known_rate": rate, "drain_rule": "strict", **more})

    return make


@pytest.fixture
def still(plan_of, hole, roof):
    """A plan whose hole did not fall at all."""
    return plan_of(
        {
            "units": "us",
            **roof("rectangle 20 ft by 30 ft"),
            **hole("round", "8 in", "8 in", "+1h left 8 in; +14h left 8 in"),
        }
    )


def words(plan) -> dict[str, str]:
    return {remedy.label: remedy.words for remedy in slow_soil.remedies(plan)}


def test_the_compost_is_a_third_of_the_mix_and_not_of_the_soil_under_it():
    whole, loosened, compost = slow_soil.mix_layers("us")
    assert magnitude(whole, "in") == pytest.approx(12)
    assert magnitude(loosened, "in") == pytest.approx(7.8)
    assert magnitude(compost, "in") == pytest.approx(4.2)
    assert magnitude(compost / whole, "") == pytest.approx(0.35)
    metric = slow_soil.mix_layers("metric")
    assert [magnitude(one, "mm") for one in metric] == pytest.approx([300, 195, 105])


def test_the_rate_wanted_follows_the_rule_chosen(slow_plan, plan_of, hole, roof):
    report = slow_plan("0.1 in/h")
    assert magnitude(slow_soil.rate_wanted(report), "in/h") == pytest.approx(6 / 24)
    dug = {
        "units": "us",
        **roof("rectangle 20 ft by 30 ft"),
        **hole("round", "8 in", "8 in", "+1h left 7 3/4 in; +2h left 7 1/2 in"),
    }
    both = plan_of(dug)
    assert magnitude(slow_soil.rate_wanted(both), "in/h") == pytest.approx(6 / 48)
    strict = plan_of({**dug, "drain_rule": "strict"})
    assert magnitude(slow_soil.rate_wanted(strict), "in/h") == pytest.approx(6 / 24)


def test_slow_soil_gets_every_way_with_its_number(slow_plan):
    found = words(slow_plan("0.15 in/h"))
    assert list(found) == [
        "Shallower and larger",
        "Test again",
        "Improve the soil",
        "Sand only with compost",
        "Test the improved soil",
        "Take less roof",
        "Plant a shallow wet meadow",
        "Move",
    ]
    assert "3.5 in" in found["Shallower and larger"] and "ft²" in found["Shallower and larger"]
    assert "48 hours" in found["Test again"] and "new hole" in found["Test again"]
    mend = found["Improve the soil"]
    for number in ("7.8 in", "4.2 in", "12 in", "35 %", "0.25 in/h", "0.15 in/h", "24 hours"):
        assert number in mend, number
    assert "ft²" in mend
    assert "set like brick" in found["Sand only with compost"]
    assert "finished floor" in found["Test the improved soil"]
    assert "10 in is gone in 72 hours" in found["Plant a shallow wet meadow"]
    assert "0.25 in/h" in found["Move"] and "6 in" in found["Move"]


def test_the_numbers_of_the_shallower_pond_are_those_of_the_plan(slow_plan):
    plan = slow_plan("0.15 in/h")
    area = magnitude(plan.size.required.recommended, "ft**2")
    assert f"{area:.0f} ft²" in words(plan)["Shallower and larger"]


def test_the_pond_after_mending_is_the_area_of_the_usual_pond(slow_plan):
    quick = slow_plan("0.25 in/h", deepest_pond="6 in")
    area = magnitude(quick.size.required.recommended, "ft**2")
    assert f"{area:.0f} ft²" in words(slow_plan("0.15 in/h"))["Improve the soil"]


def test_quick_soil_needs_no_advice(slow_plan):
    assert words(slow_plan("0.5 in/h")) == {}
    assert words(slow_plan("0.41 in/h", deepest_pond="10 in")) != {}


def test_a_soil_that_limits_a_usual_pond_is_held_against_the_pond_wanted(slow_plan):
    plan = slow_plan("0.3 in/h", deepest_pond="10 in", children="no")
    assert magnitude(plan.size.depth.depth, "in") == pytest.approx(7)
    assert magnitude(slow_soil.rate_wanted(plan), "in/h") == pytest.approx(10 / 24)
    assert "0.42 in/h" in words(plan)["Improve the soil"]
    # Where small children may play no soil is mended for a pond of more than 6 in.
    plan = slow_plan("0.3 in/h", deepest_pond="10 in", children="yes")
    assert magnitude(slow_soil.rate_wanted(plan), "in/h") == pytest.approx(6 / 24)
    assert "Improve the soil" not in words(plan) and "Move" not in words(plan)


def test_soil_too_slow_for_any_pond_says_so(slow_plan):
    plan = slow_plan("0.05 in/h")
    assert plan.size.depth.too_shallow
    found = words(plan)
    assert "1.2 in of pond" in found["Not in this soil"]
    assert "Shallower and larger" not in found and "Take less roof" not in found


@pytest.mark.parametrize(
    ("rate", "rain"), [("0.05 in/h", "1 in"), ("0.07 in/h", "1.2 in"), ("0.12 in/h", "1 in")]
)
def test_soil_under_the_least_pond_is_told_with_one_voice_and_asks_for_nothing(
    slow_plan, rate, rain
):
    # 1 in of pond is no more than the rain, 1.5 and 2.5 in are more: all under the least, 3 in.
    plan = slow_plan(rate, rain_depth=rain)
    stop = next(one for one in plan.findings if one.key == "pond_depth")
    assert stop.grade is Grade.STOP and stop.change == NO_POND_HERE
    assert not any(one.key in ("own_rain", "custom_depth") for one in plan.findings)
    said = " ".join(plan_text(plan).split())
    assert "hallower and larger" not in said and "make the pond shallower" not in said.lower()
    assert waiting(plan) == []
    assert "STILL TO FIND OUT" not in said.replace("See STILL TO FIND OUT", "")


def test_a_pond_wanted_too_shallow_is_not_laid_on_the_soil(slow_plan):
    plan = slow_plan("0.5 in/h", deepest_pond="2 in")
    stop = next(one for one in plan.findings if one.key == "pond_depth")
    assert stop.change == "Allow a deeper pond."


def test_soil_that_takes_nothing_promises_nothing(still):
    found = words(still)
    assert slow_soil.takes_nothing(still)
    assert "no pond is shallow enough" in found["Not in this soil"]
    assert "only into the air" in found["Plant a shallow wet meadow"]
    for said in found.values():
        assert "0 in is gone" not in said and "inf" not in said and "nan" not in said


def test_a_hole_set_aside_does_not_make_the_soil_slow(plan_of, hole, roof):
    good = hole("round", "8 in", "8 in", "+1h left 4 in; +1h 5 min refilled to 8 in; +2h left 4 in")
    bad = hole("round", "8 in", "8 in", "+1h left 8 in", number=2)
    texts = {"units": "us", **roof("rectangle 20 ft by 30 ft"), **good}
    texts |= {"holes.1.another_hole": "yes", **bad}
    assert words(plan_of(texts)) != {}
    aside = {"holes.2.hole_counts": "no", "holes.2.hole_set_aside_why": "smeared"}
    assert words(plan_of({**texts, **aside})) == {}


def test_the_sheet_has_every_way_in_either_units(slow_plan):
    for units in ("us", "metric"):
        lines = list(soil.slow(slow_plan("0.1 in/h", units=units)))
        assert max(map(len, lines)) <= 76
        assert any(line.startswith("- Improve the soil") for line in lines)


@pytest.mark.parametrize(("width", "mended"), [("48 in", False), ("6 in", True)])
def test_soil_that_takes_the_pond_wanted_is_not_to_be_mended(plan_of, hole, roof, width, mended):
    texts = hole("round", width, "8 in", "+1h left 7 1/2 in; +2h left 7 in")
    plan = plan_of({"units": "us", **roof("rectangle 20 ft by 30 ft"), **texts})
    found = words(plan)
    assert ("Improve the soil" in found, "Move" in found) == (mended, mended)
    assert ("Test again" in found) == mended


def test_a_pond_that_is_only_wanted_too_shallow_is_no_slow_soil(slow_plan):
    quick = slow_plan("1 in/h", deepest_pond="2 in")
    assert quick.size.depth.too_shallow and not slow_soil.is_slow(quick)
    assert "IF THE SOIL IS SLOW" not in plan_text(quick)
    assert slow_soil.is_slow(slow_plan("0.05 in/h", deepest_pond="2 in"))


def test_no_meadow_is_planted_in_deep_water(slow_plan):
    """Soil that takes 0.4 in/h is rid of 9.6 in in a day, and of 28.8 in in three."""
    quick = slow_plan("0.4 in/h", deepest_pond="12 in")
    assert slow_soil.is_slow(quick) and "Plant a shallow wet meadow" not in words(quick)
    assert "Plant a shallow wet meadow" in words(slow_plan("0.15 in/h", deepest_pond="12 in"))
