"""Hardiness zones of the map of 2023 as others tell them, against what is held of the states.

Minneapolis, St. Paul and Fairmont 5a, Glenwood and Cambridge 4b: University of Minnesota
Extension, Updated USDA hardiness zoning maps, November 2023. Ranges of whole states, read off the
map of 2023: popsofpetals.com, planting zones by state, web page (its first rows are all that was
read); places without a ZIP code may lie outside ours, never the other way round.
The zones themselves: USDA Plant Hardiness Zone Map: 13 zones of 10 °F from -60 °F, each of two
halves.
"""

from __future__ import annotations

import pytest

from interview.garden.planting.plant_list import builtin_places

PLACES = [("MN", "5a"), ("MN", "4b")]
RANGES = [
    ("AL", "7b", "9b"),
    ("AK", "1a", "8b"),
    ("AZ", "5b", "10a"),
    ("AR", "7a", "8b"),
    ("CA", "5a", "11a"),
    ("CO", "3b", "7b"),
]
COLDEST_F, HALF_F, WARMEST_F = -60, 5, 70


def lowest_f(zone: str) -> int:
    """Return the lowest temperature of a half zone in °F."""
    return COLDEST_F + HALF_F * (2 * (int(zone[:-1]) - 1) + (zone[-1] == "b"))


def held(code):
    return next(one for one in builtin_places() if one.code == code)


@pytest.mark.parametrize(("code", "zone"), PLACES)
def test_a_town_lies_in_the_range_of_its_state(code, zone):
    found = held(code)
    assert lowest_f(found.zone_coldest) <= lowest_f(zone) <= lowest_f(found.zone_warmest)


@pytest.mark.parametrize(("code", "coldest", "warmest"), RANGES)
def test_the_range_of_a_state_lies_in_the_range_of_the_map(code, coldest, warmest):
    found = held(code)
    assert lowest_f(coldest) <= lowest_f(found.zone_coldest)
    assert lowest_f(found.zone_warmest) <= lowest_f(warmest)


def test_every_zone_held_is_one_of_the_map(subtests):
    assert (lowest_f("1a"), lowest_f("4b"), lowest_f("13b")) == (-60, -25, WARMEST_F - HALF_F)
    for one in builtin_places():
        with subtests.test(state=one.code):
            for zone in filter(None, (one.zone_coldest, one.zone_common, one.zone_warmest)):
                assert COLDEST_F <= lowest_f(zone) < WARMEST_F
