"""The longest unbroken time under water, held against the replay of a rainfall record."""

import datetime as dt
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from interview.garden.form.basin import Basin
from interview.garden.pond import routing as storms
from interview.garden.pond.hyetographs import StormShape, again, storm
from interview.garden.pond.pieces import PoolPiece
from interview.garden.pond.pool import pool
from interview.garden.size.zones import Zone
from interview.garden.storms.rainfall_record import replay
from interview.garden.storms.wet_zones import longest_wet, zone_hours
from interview.quantities.units import magnitude, quantity


def garden(rate):
    basin = Basin(quantity(15, "ft"), quantity(7, "ft"), quantity(6, "in"), 3.0, quantity(4, "in"))
    return pool(basin.stage, quantity(570, "ft**2"), basin.rim_area, quantity(rate, "in/h"))


def test_a_storm_that_drains_before_the_next_leaves_two_spells_and_not_one():
    place = garden(0.5)
    once = storm(StormShape.UNIFORM, quantity(1, "in"), quantity(6, "h"))
    alone, twice = (storms.route(place, each) for each in (once, again(once)))
    floor = quantity(0, "in")
    assert magnitude(longest_wet(twice.pieces, floor), "h") == pytest.approx(
        magnitude(alone.hours_on_floor, "h")
    )
    assert magnitude(twice.hours_on_floor, "h") == pytest.approx(
        2 * magnitude(alone.hours_on_floor, "h")
    )


def test_a_storm_that_has_not_drained_joins_the_next():
    place = garden(0.15)
    once = storm(StormShape.UNIFORM, quantity(1, "in"), quantity(6, "h"))
    alone, twice = (storms.route(place, each) for each in (once, again(once)))
    spell = magnitude(longest_wet(twice.pieces, quantity(0, "in")), "h")
    assert spell > 24 + magnitude(alone.hours_on_floor, "h") - 1e-6
    assert spell == pytest.approx(magnitude(twice.hours_on_floor, "h"))


@settings(max_examples=40, deadline=None)
@given(st.floats(0.05, 2), st.floats(0.1, 3), st.floats(0, 6))
def test_the_spell_of_a_storm_twice_is_that_of_a_record_of_two_days(rate, rain, height):
    place = garden(rate)
    once = storm(StormShape.UNIFORM, quantity(rain, "in"), quantity(6, "h"))
    level = quantity(height, "in")
    routed = storms.route(place, again(once))
    first = dt.date(2025, 6, 1)
    depths = (rain, rain, *([0.0] * 10))
    days = [(first + dt.timedelta(days=n), quantity(each, "in")) for n, each in enumerate(depths)]
    played = replay(days, place, quantity(6, "h"), heights=(level,))
    ours = magnitude(longest_wet(routed.pieces, level), "h")
    theirs = magnitude(played.spells[1], "h")
    # The years take larger steps; a pond just touching the level turns that into seconds.
    assert ours == pytest.approx(theirs, abs=1e-3)


def test_nothing_stands_above_a_height_never_reached():
    routed = storms.route(
        garden(1.0), storm(StormShape.UNIFORM, quantity(0.1, "in"), quantity(6, "h"))
    )
    assert magnitude(longest_wet(routed.pieces, quantity(6, "in")), "h") == 0


def test_the_longer_spell_may_come_after_a_dry_one():
    def piece(start, end, depth):
        return PoolPiece((start, end), (depth, depth), (0.0, 0.0), 0.0)

    pieces = [piece(0, 1, 0.3), piece(1, 5, 0.0), piece(5, 7, 0.3), piece(7, 8, 0.4)]
    assert magnitude(longest_wet(pieces, quantity(0.2, "ft")), "h") == pytest.approx(3)


def test_hours_under_water_follow_the_fall_from_the_pond():
    """(depth - height) / rate: the floor, half way up and the full pond, or heights as given."""
    rate = quantity(0.25, "in/h")
    for deep, heights, hours in [
        (6, (), (24, 12, 0)),
        (6, (quantity(4, "in"), quantity(5, "in")), (24, 8, 4)),
        (6, (quantity(7, "in"), quantity(8, "in")), (24, 0, 0)),
        (0.5, (), (2, 1, 0)),
        (0, (), (0, 0, 0)),
    ]:
        found = zone_hours(quantity(deep, "in"), rate, *heights)
        assert [magnitude(found.of(zone), "h") for zone in Zone] == pytest.approx(hours)
    for wrong in (
        lambda: zone_hours(quantity(-1, "in"), rate),
        lambda: zone_hours(quantity(math.inf, "in"), rate),
        lambda: zone_hours(quantity(6, "in"), quantity(0, "in/h")),
        lambda: zone_hours(quantity(6, "in"), rate, quantity(-1, "in")),
        lambda: zone_hours(quantity(6, "in"), rate, quantity(math.inf, "in")),
    ):
        with pytest.raises(ValueError, match=r"^Give a .*\.$"):
            wrong()
