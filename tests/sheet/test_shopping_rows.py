"""Every row of the shopping list as it is printed, held against the figures and its cost."""

from __future__ import annotations

import itertools
import math
import re

import pytest

from interview.garden.figures import BY_KEY, find
from interview.garden.planting.costs import costs
from interview.garden.summary import figure_words, unfolded
from interview.sheet.shopping import shopping

HEAP = re.compile(r"([\d.]+) (yd³|ft³|m³) loose(?: or (\d+) bags? of ([\d.]+) (ft³|L))?")
FEET = {"yd³": 27.0, "ft³": 1.0}
WAYS = (
    {"water_by": "channel", "surfaces.1.gutter_outlets": "2", "surfaces.1.outlets_here": "2"},
    {"water_by": "pipe", "spout_fall": "40 in", "soil_dug": "sand", "plant_size": "seed",
     "berm_outside": "grass"},
    {"water_by": "pipe", "spout_fall": "1 in", "amend": "no", "beds": "2"},
    {"water_by": "lawn", "surfaces.1.surface_kind": "paved", "mulch_depth": "0 in"},
)  # fmt: skip


@pytest.fixture
def rows(plan_of, sized, level_spot):
    """Return a maker of a plan and of its shopping list, the words of each row by its name."""

    def make(**texts):
        place = {"state": "mn", "country": "us", "spots.1.slope_drop": "6 in",
                 "spout_distance": "20 ft"}  # fmt: skip
        plan = plan_of({**sized, **level_spot, **place, **texts})
        with unfolded():
            lines = [one for one in shopping(plan) if one.startswith(("[ ] ", "( ) "))]
        bare = [one[4:].removeprefix("if you wish, ") for one in lines]
        return plan, dict(one.split(": ", 1) for one in bare)

    return make


def traced(plan, name, words):
    """Tell whether the numbers a row begins with are those of its figures; raise if it has none."""
    key = name.replace(" ", "_")

    def value(of):
        return find(BY_KEY[of], plan).number(plan.metric)

    if name == "plants":
        return words.startswith(f"{value('plants_total')} in all")
    if name in ("seed", "grass seed"):
        least, most = (figure_words(plan, f"{key}_{end}") for end in ("least", "most"))
        return words.startswith(f"{least.split()[0]} to {most} for ")
    if name == "straw or a jute net":
        return words.startswith(f"{figure_words(plan, 'cover_area')}, ")
    if (heap := HEAP.match(words)) is not None:
        loose, unit, bags, *_ = heap.groups()
        # Half yards are told as such, what lies between them in feet.
        told = float(loose) if unit == "m³" else float(loose) * FEET[unit] / 27
        same = math.isclose(told, value(f"{key}_bought"), rel_tol=5e-3)
        return same and (bags is None or int(bags) == value(f"{key}_bags"))
    return words.startswith((f"{value(f'{key}_pieces')},", f"{value(f'{key}_pieces')} piece"))


EVERY = {
    "mulch", "compost", "stone", "berm soil", "elbow", "strap", "splash stone", "pipe", "adapter",
    "bend", "wye", "guard", "plants", "seed", "grass seed", "straw or a jute net", "diverter",
    "cap",
}  # fmt: skip
"""Every row that a list can have; what is left out of all these gardens fails below."""


def test_every_row_of_the_list_is_told_by_its_figure(subtests, rows):
    met = set()
    two = {"surfaces.1.gutter_outlets": "2", "surfaces.1.outlets_here": "2"}
    gardens = itertools.product(
        ("us", "metric"), ("lean", "usual", "generous"), (*WAYS, {**WAYS[1], **two})
    )
    for units, large, way in gardens:
        plan, listed = rows(units=units, how_large=large, **way)
        for name, words in listed.items():
            with subtests.test(units=units, large=large, name=name, way=way["water_by"]):
                assert traced(plan, name, words), words
        met |= listed.keys()
    assert met == EVERY


SHELF = {
    "mulch": (38, "per yd3"), "compost": (6, "per bag"), "stone": (5, "per bag"),
    "elbow": (7, "each"), "strap": (3, "each"), "splash stone": (12, "each"),
    "plants": (4, "each"), "diverter": (30, "each"),
}  # fmt: skip
"""Prices as on a shelf, invented: by the yard, the bag, the piece and the plant."""


@pytest.mark.parametrize("large", ["lean", "usual", "generous"])
def test_each_row_costs_its_price_times_what_the_row_says_is_taken_home(large, rows):
    prices = "; ".join(f"{name} {price} {by}" for name, (price, by) in SHELF.items())
    plan, listed = rows(how_large=large, prices=prices, **WAYS[0])
    assert ("compost" in listed) == (large != "lean")
    paid = 0
    for name in SHELF.keys() & listed.keys():
        (price, by), words = SHELF[name], listed[name]
        heap = HEAP.match(words)
        # Read off the row: so many bags, so many yards, or so many pieces.
        many = float(heap[3 if by == "per bag" else 1] if heap else re.match(r"\d+", words)[0])
        paid += price * many
        assert f"Costs {price * many:.2f} at {price}" in words
    assert costs(plan.planting).total == pytest.approx(paid)
