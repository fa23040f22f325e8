"""The years of rain in beds: the storm shape chosen, and runoff by each day's own depth."""

import datetime as dt
import itertools
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from interview.garden.form.basin import Basin
from interview.garden.pond.hyetographs import StormShape, storm
from interview.garden.storms.beds import beds_of
from interview.garden.storms.day_by_day import DayByDay
from interview.garden.storms.rainfall_record import replay
from interview.quantities.units import magnitude, quantity
from interview.sheet.report import plan_text

SHAPES = list(StormShape)


def garden(rate, count=1, in_series=False, served=570):
    basin = Basin(quantity(15, "ft"), quantity(7, "ft"), quantity(6, "in"), 3, quantity(4, "in"))
    return beds_of(
        basin.stage, quantity(served, "ft**2"), basin.rim_area, quantity(rate, "in/h"), count,
        in_series,
    )  # fmt: skip


def played(rains, beds, shape=StormShape.UNIFORM, hours=6, **more):
    days = [
        (dt.date(2020, 1, 1) + dt.timedelta(days=place), quantity(rain, "in"))
        for place, rain in enumerate(rains)
    ]
    return replay(
        days,
        beds.pool,
        quantity(hours, "h"),
        beds_below=beds.below,
        shape=shape,
        **more,
    )


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(SHAPES), st.floats(0.05, 5), st.floats(0.05, 2), st.integers(1, 3))
def test_a_record_of_one_day_is_the_storm_of_that_shape(shape, rain, rate, count):
    beds = garden(rate, count, count > 1)
    day = played([rain], beds, shape)
    alone = beds.route(storm(shape, quantity(rain, "in"), quantity(6, "h")))
    came = magnitude(alone.inflow_volume, "ft**3")
    assert magnitude(day.inflow_volume, "ft**3") == pytest.approx(came)
    spilled = magnitude(alone.spill_volume, "ft**3")
    # The years take larger steps.
    assert magnitude(day.spill_volume, "ft**3") == pytest.approx(spilled, abs=1e-5 * came)


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(SHAPES[:2]), st.floats(0.02, 3), st.floats(0.05, 4))
def test_water_stands_in_a_record_of_one_day_as_long_as_in_the_storm(shape, rain, rate):
    beds = garden(rate)
    day = played([rain, 0, 0, 0, 0, 0], beds, shape)
    alone = beds.route(storm(shape, quantity(rain, "in"), quantity(6, "h"))).wettest
    wet = magnitude(day.longest_wet_spell, "h")
    assert wet == pytest.approx(magnitude(alone.hours_on_floor, "h"), abs=1e-3)


RAINS = st.lists(st.sampled_from([0.0, 0.0, 0.1, 0.6, 1.2, 3.0]), min_size=1, max_size=40)


@settings(max_examples=40, deadline=None)
@given(RAINS, st.sampled_from(SHAPES), st.floats(0.02, 2), st.integers(1, 3))
def test_no_water_is_lost_whatever_the_shape_and_the_runoff(rains, shape, rate, count):
    beds = garden(rate, count, count > 1)
    found = played(
        rains, beds, shape, pool_at=lambda rain: beds.for_area(rain * quantity(1200, "ft"))
    )
    own = magnitude(beds.pool.inside, "ft**2")
    came = sum(rain / 12 * (100 * rain + own * count) for rain in rains)
    assert magnitude(found.inflow_volume, "ft**3") == pytest.approx(came)
    assert gone(found) == pytest.approx(came, rel=1e-5, abs=1e-9)


def gone(found):
    return sum(
        magnitude(one, "ft**3")
        for one in (found.soaked_volume, found.spill_volume, found.standing_volume)
    )


def test_a_peaked_day_runs_over_more_than_an_even_one():
    rains = [2.0, 0, 0, 1.5, 0, 0] * 5
    even, peaked = (
        played(rains, garden(0.5), shape).share_held
        for shape in (StormShape.UNIFORM, StormShape.TRIANGLE)
    )
    assert peaked < even


@settings(max_examples=60, deadline=None)
@given(RAINS, st.floats(0.02, 3), st.integers(1, 4), st.sampled_from([0.0, 3.0, 24.0]))
def test_no_water_is_lost_over_the_years_in_beds_in_a_row(rains, rate, count, hours):
    found = played(rains, garden(rate, count, True, 1140), hours=hours)
    came = magnitude(found.inflow_volume, "ft**3")
    assert came == pytest.approx(gone(found), rel=1e-5, abs=1e-9)
    assert sum(part.days for part in found.months) == found.days == len(rains)
    for parts in (found.years, found.months):
        assert sum(part.overflow_days for part in parts) == len(found.overflow_days)
        assert sum(magnitude(part.rain, "in") for part in parts) == pytest.approx(sum(rains))


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize(
    ("rate", "count"), [(0.3, 1), (0.6, 1), (0.9, 1), (1.5, 1), (0.2, 2), (0.8, 3)]
)
def test_a_rain_that_is_not_followed_would_change_nothing_told(shape, rate, count, subtests):
    beds, luck = garden(rate, count, count > 1), random.Random(f"{rate} {count}")
    some_heights = [quantity(height, "in") for height in (0.5, 3, 6)]
    # After a long spell none of many rains lasts the longest, some of which run over.
    rising = [6, 6, 6, *(one for place in range(60) for one in (0, 0, place / 15))]
    for hours, heights in itertools.product((0.5, 6.0, 20.0), (None, (), some_heights)):
        rains = rising + [luck.random() < 0.5 and luck.expovariate(1.5) for _ in range(60)]
        some = played(rains, beds, shape, hours, heights=heights)
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(DayByDay, "_soaks_away", lambda *_: False)
            whole = played(rains, beds, shape, hours, heights=heights)
        with subtests.test(hours=hours, heights=heights):
            assert some.overflow_days == whole.overflow_days
            for ours, theirs in zip(some.spells, whole.spells, strict=True):
                assert magnitude(ours, "h") == pytest.approx(magnitude(theirs, "h"), rel=1e-9)
            assert some.share_held == pytest.approx(whole.share_held, rel=1e-12)
            assert gone(some) == pytest.approx(gone(whole), rel=1e-5)
            left, stood = (magnitude(one.standing_volume, "ft**3") for one in (some, whole))
            assert left == pytest.approx(stood, rel=1e-9)


@settings(max_examples=30, deadline=None)
@given(RAINS, st.floats(0.05, 2))
def test_one_rainy_day_in_a_row_of_beds_is_the_even_storm(rains, rate):
    beds = garden(rate, 2, True, 1140)
    rain = max(rains)
    day = played([rain], beds)
    even = beds.route(storm(StormShape.UNIFORM, quantity(rain, "in"), quantity(6, "h")))
    came, spilled = (magnitude(one, "ft**3") for one in (even.inflow_volume, even.spill_volume))
    assert magnitude(day.spill_volume, "ft**3") == pytest.approx(spilled, abs=1e-5 * came + 1e-9)


def test_more_beds_hold_more():
    rains = [0.5, 2.0, 0.0, 1.0, 3.0] * 6
    held = [played(rains, garden(0.2, count, True, 1140)).share_held for count in (1, 2, 3)]
    assert held == sorted(held) and held[0] < held[-1]


# The plan

LAWN = {
    "surfaces.1.surface_name": "lawn",
    "surfaces.1.surface_kind": "lawn",
    "surfaces.1.pieces": "rectangle 40 ft by 50 ft",
    "soil_group": "d",
}
DEPTHS = (0.1, 0.5, 1.0, 2.0, 3.0, 0.0)


@pytest.fixture
def with_record(plan_of, sized, tmp_path):
    def make(*more):
        rows = [
            f"{dt.date(2021, 1, 1) + dt.timedelta(days=place)},{DEPTHS[place % 6]}"
            for place in range(60)
        ]
        (tmp_path / "rain.csv").write_text("date,rain\n" + "\n".join(rows) + "\n")
        asked = {"has_rain_record": "yes", "rain_record": "rain.csv", "rain_record_unit": "in"}
        together = {**sized, **asked}
        for one in more:
            together |= one
        return plan_of(together)

    return make


def curve(rain, number):
    """TR-55, eq. 2-3 and 2-4, written out here again."""
    storage = 1000 / number - 10
    return max(0.0, rain - 0.2 * storage) ** 2 / (rain + 0.8 * storage)


def test_each_days_lawn_runs_off_by_its_own_depth(with_record):
    plan = with_record(LAWN)
    rim = magnitude(plan.size.garden.rim_area, "ft**2")
    # Good lawn on soil group D has curve number 80.
    came = sum(10 * (2000 * curve(rain, 80) + rain * rim) / 12 for rain in DEPTHS)
    inflow = plan.storms.real_years.inflow_volume
    assert magnitude(inflow, "ft**3") == pytest.approx(came, rel=1e-6)


def test_the_shape_of_the_storm_changes_the_years(with_record):
    shares = {
        shape: with_record({"storm_shape": shape}).storms.real_years.share_held
        for shape in ("uniform", "triangle", "type_ii")
    }
    assert len(set(shares.values())) == 3
    assert shares["triangle"] < shares["uniform"]


def test_the_sheet_says_how_a_day_of_rain_is_reckoned(with_record):
    said = " ".join(plan_text(with_record()).split())
    assert "comes as your storm does (rising to a peak and falling, over its first 6 h)" in said
    assert "the same part of it runs off whatever the depth" in said
    lawn = " ".join(plan_text(with_record(LAWN, {"storm_shape": "type_ii"})).split())
    assert (
        "(NRCS Type II: one sharp burst in 24 hours); the part that runs off is worked out for each"
        in lawn
    )
