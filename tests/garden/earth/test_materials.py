"""Amounts to move and to buy."""

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from interview.garden.earth.materials import (
    BULKING,
    BedSizes,
    Soil,
    covers,
    layer,
    loosen,
    order,
    shopping_list,
    soilwork,
    stone,
)
from interview.quantities.units import magnitude, quantity


def cubic(value):
    return magnitude(value, "ft**3")


BED = BedSizes(
    floor_area=quantity(105, "ft**2"),
    mulch_area=quantity(240, "ft**2"),
    mulch_depth=quantity(3, "in"),
    compost_depth=quantity(2, "in"),
    notch_width=quantity(2, "ft"),
    apron_length=quantity(4, "ft"),
    pipe_length=quantity(17.2, "ft"),
)


def test_loam_to_dig_swells_into_loads():
    work = soilwork(quantity(76.08, "ft**3"))
    assert cubic(work.loose) == pytest.approx(95.10)
    assert work.loads == 32
    assert work.hours_quick == pytest.approx(76.08 / 27 / 0.5)
    assert work.hours_slow == pytest.approx(76.08 / 27 / 0.25)


def test_two_people_dig_in_half_the_time():
    one, two = (soilwork(quantity(80, "ft**3"), adults=n) for n in (1, 2))
    assert two.hours_slow == pytest.approx(one.hours_slow / 2)
    assert two.loads == one.loads


def test_metric_soil_in_a_metric_barrow():
    work = soilwork(quantity(3.017, "m**3"), barrow=quantity(85, "L"))
    assert magnitude(work.loose, "m**3") == pytest.approx(3.771, abs=5e-4)
    assert work.loads == 45


def test_a_barrow_exactly_full_is_one_load():
    assert soilwork(quantity(2.4, "ft**3")).loads == 1
    assert soilwork(quantity(2.41, "ft**3")).loads == 2
    assert soilwork(quantity(0, "ft**3")).loads == 0


def test_sand_swells_least_and_clay_most():
    dug = quantity(100, "ft**3")
    heaps = [cubic(loosen(dug, soil)) for soil in (Soil.SAND, Soil.LOAM, Soil.CLAY)]
    assert heaps == pytest.approx([115, 125, 140])
    assert BULKING[Soil.CLAY].low == 1.35


def test_mulch_and_compost_are_ordered_in_half_yards():
    mulch = layer(quantity(240, "ft**2"), quantity(3, "in"))
    compost = layer(quantity(105, "ft**2"), quantity(2, "in"))
    assert cubic(mulch) == pytest.approx(60)
    assert magnitude(order(mulch), "yd**3") == 2.5
    assert magnitude(compost, "yd**3") == pytest.approx(0.6481, abs=5e-5)
    assert magnitude(order(compost), "yd**3") == 1.0
    assert magnitude(order(quantity(1.824, "m**3"), metric=True), "m**3") == pytest.approx(1.9)
    assert magnitude(order(quantity(1.5, "yd**3")), "yd**3") == 1.5


@given(st.floats(0, 200), st.booleans())
def test_an_order_is_enough_and_not_much_more(yards, metric):
    wanted = quantity(yards, "yd**3")
    bought = order(wanted, metric)
    over = magnitude(bought, "yd**3") - yards
    assert -1e-6 <= over <= 0.5 + 1e-6


@given(st.floats(1, 500), st.floats(0.5, 6))
def test_a_layer_covers_what_it_was_made_for(area, depth):
    deep = quantity(depth, "in")
    back = covers(layer(quantity(area, "ft**2"), deep), deep)
    assert magnitude(back, "ft**2") == pytest.approx(area)


def test_stone_is_laid_half_a_foot_deep():
    # Worked by hand: 3 x 2 ft, 2 x 4 ft and 12 x 1.5 ft, each 6 in deep.
    feet = [(3, 2, 3.0), (4, 2, 4.0), (12, 1.5, 9.0)]
    for long, wide, cube in feet:
        assert cubic(stone(quantity(long, "ft"), quantity(wide, "ft"))) == pytest.approx(cube)
    pad = stone(quantity(0.9, "m"), quantity(0.6, "m"), metric=True)
    assert magnitude(pad, "m**3") == pytest.approx(0.081)


def test_the_shopping_list_names_each_thing_once_and_no_edging():
    items = {item.name: item for item in shopping_list(BED)}
    assert list(items) == ["mulch", "compost", "stone", "pipe"]
    assert magnitude(items["mulch"].buy, "yd**3") == 2.5
    assert magnitude(items["stone"].amount, "ft**3") == pytest.approx(7)
    assert "700 lb" in items["stone"].note
    assert magnitude(items["pipe"].buy, "ft") == 18


def test_a_channel_of_stone_is_bought_once_for_all_the_beds():
    channel = replace(BED, channel_length=quantity(12, "ft"), pipe_length=None, beds=2)
    items = {item.name: item for item in shopping_list(channel)}
    assert magnitude(items["stone"].amount, "ft**3") == pytest.approx(2 * 7 + 9)


@pytest.mark.parametrize("metric", [False, True])
def test_what_is_bought_is_never_less_than_what_is_wanted(metric):
    for item in shopping_list(BED, metric):
        assert item.buy.m_as("m**3" if item.buy.check("[length]**3") else "m") >= (
            item.amount.m_as("m**3" if item.buy.check("[length]**3") else "m") - 1e-9
        )


def test_no_mulch_no_line_for_mulch():
    bare = BedSizes(BED.floor_area, BED.mulch_area, quantity(0, "in"))
    assert [item.name for item in shopping_list(bare)] == ["stone"]


def test_what_cannot_be_is_refused():
    for wrong in (
        lambda: soilwork(quantity(-1, "ft**3")),
        lambda: soilwork(quantity(1, "ft**3"), barrow=quantity(0, "L")),
        lambda: soilwork(quantity(1, "ft**3"), adults=0),
        lambda: layer(quantity(-1, "ft**2"), quantity(1, "in")),
        lambda: covers(quantity(1, "yd**3"), quantity(0, "in")),
        lambda: stone(quantity(0, "ft"), quantity(1, "ft")),
        lambda: layer(quantity(math.nan, "ft**2"), quantity(1, "in")),
    ):
        with pytest.raises(ValueError, match=r"\.$"):
            wrong()
