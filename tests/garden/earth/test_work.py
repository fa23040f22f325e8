"""Hours, barrows, days and people."""

import math
import re

import pytest

from interview.garden.earth.materials import Soil
from interview.garden.earth.work import (
    BARROWS,
    Amounts,
    Span,
    Spell,
    hours_of,
    people_for,
    soilwork,
    span,
    tasks,
)
from interview.garden.figures import BY_KEY, find
from interview.garden.planting.costs import plant_count
from interview.garden.planting.labor import work_of
from interview.quantities.evidence import PRACTICE
from interview.quantities.units import magnitude, quantity
from interview.sheet.card import card_text
from interview.sheet.report import outside_text, plan_text


def cubic(value):
    return magnitude(value, "ft**3")


def test_loam_to_dig_swells_into_loads():
    work = soilwork(quantity(76.08, "ft**3"))
    assert cubic(work.loose) == pytest.approx(95.10)
    assert work.loads == 32
    assert work.hours_quick == pytest.approx(76.08 / 27 / 0.5)
    assert work.hours_slow == pytest.approx(76.08 / 27 / 0.25)


def test_metric_soil_in_a_metric_barrow():
    work = soilwork(quantity(3.017, "m**3"), barrow=quantity(85, "L"))
    assert magnitude(work.loose, "m**3") == pytest.approx(3.771, abs=5e-4)
    assert work.loads == 45


def test_a_barrow_exactly_full_is_one_load():
    assert soilwork(quantity(2.4, "ft**3")).loads == 1
    assert soilwork(quantity(2.41, "ft**3")).loads == 2
    assert soilwork(quantity(0, "ft**3")).loads == 0


MADE = Amounts(
    sod=quantity(225, "ft**2"),
    dug=quantity(92, "ft**3"),
    berm=quantity(26, "ft**3"),
    carried_off=28,
    berm_brought=0,
    laid=11,
    mulch=12,
    channel=quantity(0, "ft**3"),
    trench=quantity(0, "ft"),
    plants=105,
    spouts=1,
)


def test_the_hours_of_a_usual_garden_add_up():
    """Worked by hand: sod 225 / 100, digging 92 / 27 / 0.5, berm 26 / 27, 51 barrows / 12, plants
    105 / 20, one downspout half an hour; at the slow pace each takes twice as long.
    """
    whole = hours_of(tasks(MADE))
    by_hand = 2.25 + 6.8148 + 0.9630 + 4.25 + 5.25 + 0.5
    assert whole.quick == pytest.approx(by_hand, abs=1e-3)
    assert whole.slow == pytest.approx(2 * by_hand, abs=1e-3)
    more = hours_of(tasks(MADE._replace(berm_brought=12)))
    assert more.quick == pytest.approx(by_hand + 1, abs=1e-3)
    steps = [hours_of(tasks(MADE), step) for step in Spell]
    assert sum(one.slow for one in steps) == pytest.approx(whole.slow)


def test_two_people_take_half_as_long_and_days_are_whole():
    one = Span(19.5, 39.1)
    assert one.shared(2) == Span(9.75, 19.55) and one.shared(1) == one
    assert one.days == (4, 7) and one.shared(2).days == (2, 4)
    assert Span(6, 12).days == (1, 2)
    # 39.1 h in three days of six hours: two people have 36 h, three have 54.
    assert people_for(one) == 3 and people_for(Span(10, 36)) == 2 and people_for(Span(0, 0)) == 1


def test_work_that_cannot_be_is_refused():
    for wrong in (
        lambda: span(-1, BARROWS),
        lambda: span(math.nan, BARROWS),
        lambda: Span(1, 2).shared(0),
        lambda: soilwork(quantity(-1, "ft**3")),
        lambda: soilwork(quantity(1, "ft**3"), barrow=quantity(0, "L")),
    ):
        with pytest.raises(ValueError, match=r"\.$"):
            wrong()


@pytest.fixture
def planned(plan_of, sized, level_spot):
    def make(**more):
        slope = {"spots.1.slope_drop": "6 in", "spout_distance": "12 ft", "water_by": "channel"}
        return plan_of({**sized, **level_spot, "state": "mn", "country": "us", **slope, **more})

    return make


def test_the_work_takes_its_amounts_from_the_figures_and_the_list(planned):
    plan = planned()

    def value(key):
        return find(BY_KEY[key], plan).number(False)

    items = {item.name: item for item in plan.earth.shopping}
    loads = {name: math.ceil(cubic(item.amount) / 3 - 1e-9) for name, item in items.items()
             if item.piece is None}  # fmt: skip
    assert value("barrows_in") == sum(loads.values())
    # The whole garden's soil: what is dug and not built stays, swollen by a quarter, in barrows.
    spare = value("soil_dug_total") - value("berm_soil") / 0.9
    assert value("soil_carried_off") == pytest.approx(1.25 * (spare + 12 * 1.5 / 2))
    assert value("barrows_off") == math.ceil(value("soil_carried_off") / 3)
    slow = {one.key: one.hours.slow for one in work_of(plan.planting)}
    assert slow == pytest.approx({
        "sod": value("footprint_area") / 50,
        "dig": value("soil_dug_total") / 27 / 0.25,
        "berm": value("berm_soil") / 0.9 / 27 / 0.5,
        "carry": value("barrows_off") / 6,
        "way": 9 / 27 / 0.25,
        "lay": (loads["compost"] + loads["stone"]) / 6,
        "planting": plant_count(plan.planting) / 10,
        "mulching": loads["mulch"] / 6,
        "spout": value("spouts_here"),
    })  # fmt: skip
    assert value("work_hours_slow") == pytest.approx(sum(slow.values()))
    assert value("work_hours_quick") == pytest.approx(sum(slow.values()) / 2)
    for pace, part in (("slow", 1), ("quick", 2)):
        whole = sum(slow.values()) / part
        assert value(f"work_hours_two_{pace}") == pytest.approx(whole / 2)
        assert value(f"work_hours_heat_{pace}") == pytest.approx(whole * 60 / 45)
    for people, name in ((1, "one"), (2, "two")):
        for pace, part in (("slow", 1), ("quick", 2)):
            days = math.ceil(sum(slow.values()) / part / people / 6)
            assert value(f"days_{name}_{pace}") == days
    assert value("people_for_three_days") == math.ceil(sum(slow.values()) / 18)
    for step, parts in (("dig", ("sod", "dig", "berm", "carry")), ("lay", ("way", "lay")),
                        ("plant", ("planting", "mulching", "spout"))):  # fmt: skip
        whole = sum(slow[one] for one in parts)
        assert value(f"step_{step}_hours_slow") == pytest.approx(whole)
        assert value(f"step_{step}_hours_quick") == pytest.approx(whole / 2)
    for key, task in (("sod_hours", "sod"), ("berm_hours", "berm"), ("carry_hours", "carry"),
                      ("way_hours", "way"), ("lay_hours", "lay"), ("hours", "dig"),
                      ("planting_hours", "planting"), ("mulching_hours", "mulching"),
                      ("spout_hours", "spout")):  # fmt: skip
        assert value(f"{key}_slow") == pytest.approx(slow[task])
        assert value(f"{key}_quick") == pytest.approx(slow[task] / 2)


def test_a_pipe_takes_a_trench_and_leaves_no_soil_of_a_channel(planned, figure):
    plan = planned(water_by="pipe", spout_fall="20 in")
    assert figure("way_hours_slow", plan) == pytest.approx(12 / 5)
    assert figure("channel_soil", plan) == 0
    assert figure("way_hours_slow", planned(water_by="lawn")) == 0


def test_each_downspout_takes_half_an_hour_to_an_hour_and_nobody_is_sent_up_a_ladder(
    planned, figure
):
    # Common practice, no source.
    one, two = (
        planned(**{"surfaces.1.gutter_outlets": str(count), "surfaces.1.outlets_here": str(count)})
        for count in (1, 2)
    )
    for count, plan in ((1, one), (2, two)):
        assert figure("spouts_here", plan) == count
        assert figure("spout_hours_quick", plan) == pytest.approx(count / 2)
        assert figure("spout_hours_slow", plan) == pytest.approx(count)
        assert BY_KEY["spout_hours_slow"].source == PRACTICE
        for sheet in (plan_text(plan), outside_text(plan)):
            flat = " ".join(sheet.split())
            assert "Connect the downspout standing on the ground" in flat
            assert "What asks for a ladder" in flat and "last, from the ground: no ladder." in flat
    more = figure("work_hours_slow", two) - figure("work_hours_slow", one)
    # And the channel of each: its soil, and the barrows of its stone.
    way = sum(
        figure(f"{key}_hours_slow", two) - figure(f"{key}_hours_slow", one)
        for key in ("way", "lay", "carry")
    )
    assert way > 0 and more == pytest.approx(1 + way)
    none = planned(**{"surfaces.1.surface_kind": "paved"})
    assert figure("spout_hours_slow", none) == 0
    assert "standing on the ground" not in " ".join(plan_text(none).split())


def test_sand_makes_no_berm_and_soil_for_it_is_brought(planned, figure):
    plan = planned(soil_dug="sand")
    fill = figure("berm_soil", plan)
    assert figure("soil_spare", plan) == pytest.approx(figure("soil_dug_total", plan))
    assert figure("berm_soil_volume", plan) == pytest.approx(fill / 0.9 * 1.4)
    order = math.ceil(fill / 0.9 * 1.4 / 13.5) / 2
    assert figure("berm_soil_bought", plan) == pytest.approx(order)
    brought = math.ceil(fill / 0.9 * 1.4 / 3)
    off = figure("barrows_off", plan)
    assert figure("carry_hours_slow", plan) == pytest.approx((off + brought) / 6)
    assert figure("barrows_off", plan) == math.ceil(1.15 * (figure("soil_dug_total", plan) + 9) / 3)
    # None of it makes the berm, however thin the mulch.
    thin = plan.earth.laid(thin=True, bare=True)
    assert figure("soil_spare_thin", plan) == pytest.approx(thin.soil.cut)
    flat = " ".join(plan_text(plan).split())
    assert "Do not build the berm of the sand" in flat and "[ ] berm soil:" in flat
    assert Soil(plan.answers.texts["soil_dug"]) is Soil.SAND


def test_the_sheet_tells_the_work_in_three_steps_and_never_by_day_of_rain(planned):
    part = plan_text(planned()).split("THE WORK\n")[1].split("SHOPPING LIST")[0]
    flat = " ".join(part.split())
    for said in ("1. Dig and build", "2. Lay", "3. Plant", "one person", "two people",
                 "Do not leave the floor open to rain", "95 °F", "15 minutes"):  # fmt: skip
        assert said in flat, said
    assert "35 °C" in plan_text(planned(units="metric"))


def test_without_a_list_of_plants_the_work_waits(plan_of):
    assert "THE WORK\n--------\nWaits for" in plan_text(plan_of({"units": "us"}))


def test_the_card_counts_the_barrows_of_the_figures(planned, figure):
    plan = planned()
    card = " ".join(card_text(plan).split())
    brought = sum(int(number) for number in re.findall(r"³, (\d+) loads", card))
    assert brought == figure("barrows_in", plan)
    assert f"{figure('barrow_loads', plan)} barrow-loads" in card
