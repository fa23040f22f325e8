"""The first size, before the soil is tested, held against the size that the plan comes to."""

from __future__ import annotations

import math
import random
import re
from itertools import pairwise

import pytest

from interview.asking.question import Unanswered
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Ground
from interview.garden.size import rough_words
from interview.garden.size.basin import drawn, footprint_sides, required_area
from interview.garden.size.rough import (
    Feel,
    Outcome,
    RoughSize,
    Settles,
    feel_of,
    rough_size,
    shallowest_pond,
)
from interview.garden.soak.rates import RAWLS_CM_PER_H, Texture
from interview.garden.summary import rough_line, so_far
from interview.quantities.units import METRIC, US, magnitude, quantity, significant
from interview.sheet.report import plan_text

GARDENS = 14
"""Through the whole plan; few enough to be quick, and raised by hand now and then."""
SAID = {Feel.GRITTY: "sand", Feel.FLOURY: "loam", Feel.STICKY: "clay"}


def ft2(value):
    return magnitude(value, "ft**2")


def holds(found, area):
    """Tell whether an area lies in the range as it is told: low down, high up."""
    low, high = significant(ft2(found.low), 2, "down"), significant(ft2(found.high), 2, "up")
    return low - 1e-6 <= area <= high + 1e-6


def first_words(found, metric=False):
    return rough_words.first_size(found, found, metric)


@pytest.fixture
def untested(roof):
    """Answers up to the first size: 420 square feet of roof and nothing else."""
    return {"units": "us", **roof("rectangle 30 ft by 14 ft")}


@pytest.mark.parametrize("place", range(4))
def test_any_pond_from_the_shallowest_to_the_deepest_lies_in_the_range(place):
    rng = random.Random(place)
    for _ in range(12):
        drains, rain = rng.uniform(100, 2000), rng.uniform(0.5, 2)
        feel, deepest = rng.choice(list(Feel)), rng.choice((4, 6, 8, 10, 12))
        z, rim = rng.choice((2.0, 3.0)), quantity(rng.choice((1, 2, 4, 6)), "in")
        way = Outcome(shallowest_pond(feel), quantity(deepest, "in"), z, rim)
        area, deep = quantity(drains, "ft**2"), quantity(rain, "in")
        weighted = area * 0.95
        found = rough_size(area, weighted, deep, (way,), feel=feel)
        depth = magnitude(found.shallowest, "in")
        while depth <= deepest:
            one = required_area(weighted, deep, quantity(depth, "in"), z, rim)
            assert holds(found, ft2(one.mid_area)), (drains, rain, feel, depth)
            depth += 0.5
        middle = required_area(weighted, deep, found.depth, z, rim).mid_area
        assert ft2(found.middle) == pytest.approx(ft2(middle))
        assert found.low <= found.middle <= found.high


@pytest.mark.parametrize(("system", "unit", "wide"), [(US, "ft", 2.0), (METRIC, "m", 0.6)])
def test_where_the_storm_decides_the_least_is_the_narrowest_floor(system, unit, wide):
    """Plane geometry: sides of slope z run out by z times half the depth on each side."""
    way = Outcome(quantity(4, "in"), quantity(10, "in"), 3.0, quantity(4, "in"))
    areas = quantity(900, "ft**2"), quantity(850, "ft**2")
    more = {"tested": True, "shape": FloorShape.RECTANGLE, "system": system}
    lean = rough_size(*areas, quantity(1, "in"), (way,), lean=True, **more)
    out = 3 * magnitude(lean.shallowest, unit)
    least = (2 * wide + out) * (wide + out)
    assert magnitude(lean.low, f"{unit}**2") == pytest.approx(least)
    usual = rough_size(*areas, quantity(1, "in"), (way,), **more)
    assert magnitude(usual.low, f"{unit}**2") > 1.5 * least


def inch(number):
    return quantity(number, "in")


def sized(*ways, rain=1.0, drains=1000.0, weighted=950.0, **more):
    """The first size of ``ways``, each a shallowest and a deepest pond in inches; sides 3:1."""
    made = [Outcome(inch(first), inch(last), 3.0, inch(4)) for first, last in ways]
    areas = quantity(drains, "ft**2"), quantity(weighted, "ft**2")
    return rough_size(*areas, inch(rain), made, **more)


def test_the_ponds_of_the_range_are_in_steps_and_deeper_than_the_rain(subtests):
    # By hand: down to half inches, an inch over the rain at the least; 6 in is the usual pond.
    for ways, rain, shallowest, depth, raised in [
        ([(3.3, 8.2)], 1.0, 3.0, 6.0, False),
        ([(3.0, 8.0)], 2.3, 3.5, 6.0, True),
        ([(3.0, 3.2)], 2.3, 3.0, 3.0, False),
        ([(4.0, 4.7)], 1.0, 4.0, 4.5, False),
        ([(7.0, 9.0)], 1.0, 7.0, 7.0, False),
        ([(6.0, 9.0), (3.0, 9.0)], 2.5, 3.5, 6.0, True),
        ([(3.0, 9.0), (6.0, 9.0)], 2.5, 3.5, 6.0, True),
        ([(3.0, 9.0), (6.0, 9.0)], 1.0, 3.0, 6.0, False),
    ]:
        with subtests.test(ways=ways, rain=rain):
            found = sized(*ways, rain=rain)
            assert magnitude(found.shallowest, "in") == pytest.approx(shallowest)
            assert magnitude(found.depth, "in") == pytest.approx(depth)
            assert found.raised is raised
    with pytest.raises(ValueError, match="deeper than the rain"):
        sized((2, 2), rain=2.0)


def test_the_size_factors_widen_the_range_by_the_rain_until_the_soil_is_tested():
    # Table 2 of GWQ037: 0.15 and 0.19 of the area for sand, 0.32 and 0.43 for clay, for an inch.
    assert ft2(sized((3, 4), rain=0.8, feel=Feel.GRITTY).low) == pytest.approx(0.15 * 1000 * 0.8)
    assert ft2(sized((7, 9), rain=0.8, feel=Feel.STICKY).high) == pytest.approx(0.43 * 1000 * 0.8)
    tested = sized((7, 9), rain=0.8, feel=Feel.STICKY, tested=True)
    assert ft2(tested.high) < 0.2 * 1000 and tested.feel is Feel.STICKY


@pytest.mark.parametrize("beds", [1, 2])
def test_the_range_is_of_every_pond_and_rim_there_may_be(beds):
    """The size of each pond is that of the plan, which is held against hand calculations."""
    way = Outcome(inch(3), inch(12), 3.0, inch(4), lowest_freeboard=inch(1))
    areas = quantity(300, "ft**2"), quantity(280, "ft**2")
    found = rough_size(*areas, inch(1), (way,), tested=True, beds=beds)
    each = quantity(280 / beds, "ft**2")
    ponds = [
        ft2(required_area(each, inch(1), inch(half / 2), 3.0, rim).mid_area) * beds
        for half in range(6, 25)
        for rim in (inch(4), inch(1))
    ]
    assert ft2(found.low) == pytest.approx(min(ponds))
    assert ft2(found.high) == pytest.approx(max(ponds))
    middle = required_area(each, inch(1), inch(6), 3.0, inch(4)).mid_area
    assert ft2(found.middle) == pytest.approx(ft2(middle) * beds)
    assert found.beds == beds


@pytest.mark.parametrize(
    ("spout", "beds", "low"), [(None, 1, 49), (10, 1, 49), (31, 1, 16), (None, 2, 40.5)]
)
def test_soil_that_may_be_fast_begins_the_range_at_the_table(spout, beds, low):
    """0.08 of 1000 sq ft at 8 in, 0.03 over 30 ft away; by hand, in half feet, sides 3:1.

    The full pond of a floor of 5 by 5 ft has 9 x 9 sq ft, of 4.5 by 4.5 only 72; at half depth it
    has 7 x 7. For 30 the narrowest is enough, 2 by 2; for half of 80 it takes 2.5 by 2.5.
    """
    more = {"tested": True, "shape": FloorShape.RECTANGLE, "beds": beds, "length_to_width": 1.0}
    way = None if spout is None else quantity(spout, "ft")
    found = sized((4, 8), fast=True, spout=way, **more)
    assert ft2(found.low) == pytest.approx(low)
    deepest = required_area(
        quantity(950 / beds, "ft**2"), inch(1), inch(8), 3.0, inch(4),
        shape=FloorShape.RECTANGLE, length_to_width=1.0,
    )  # fmt: skip
    assert ft2(sized((4, 8), **more).low) == pytest.approx(beds * ft2(deepest.mid_area))


def test_the_table_is_read_in_millimeters_where_they_are_asked_for():
    """0.08 of 100 sq m at 200 mm: 3.6 x 2.4 m at the edge, 3.4 x 2.3 is less; 3 x 1.8 half up."""
    ways = (Outcome(quantity(100, "mm"), quantity(200, "mm"), 3.0, quantity(100, "mm")),)
    areas = quantity(100, "m**2"), quantity(95, "m**2")
    more = {"tested": True, "shape": FloorShape.RECTANGLE, "length_to_width": 2.0}
    found = rough_size(*areas, quantity(25, "mm"), ways, fast=True, system=METRIC, **more)
    assert magnitude(found.low, "m**2") == pytest.approx(5.4)


@pytest.mark.parametrize("more", [{"fast": True}, {"lean": True}])
def test_the_range_of_a_size_by_storms_reaches_what_is_pegged_out(more):
    shape = {"shape": FloorShape.RECTANGLE, "length_to_width": 3.0}
    pond = required_area(quantity(950, "ft**2"), inch(1), inch(8), 3.0, inch(4), **shape)
    assert ft2(drawn(pond).mid_area) > ft2(pond.mid_area)
    found = sized((8, 8), tested=True, **more, **shape)
    assert ft2(found.high) == pytest.approx(ft2(drawn(pond).mid_area))


def room_of(*beds):
    """The room in feet that takes all of the beds, up to a quarter of a foot."""
    sides = [[magnitude(one, "ft") for one in footprint_sides(*bed)] for bed in beds]
    return [math.ceil(max(side) * 4 - 1e-9) / 4 for side in zip(*sides, strict=True)]


@pytest.mark.parametrize(("weighted", "larger"), [(60, 1), (2000, 0)])
@pytest.mark.parametrize("ground", [None, Ground(0.05)])
def test_the_room_is_that_of_the_largest_bed_up_to_a_quarter_foot(weighted, larger, ground):
    """Of a small bed the deepest takes most room, by its sides; of a large one the shallowest."""
    area = quantity(weighted, "ft**2")
    ways = [Outcome(inch(a), inch(b), 2.0, inch(4)) for a, b in ((3, 12), (6, 6))]
    found = rough_size(area, area, inch(1), ways, ground=ground)
    beds = [
        (drawn(required_area(area, inch(1), inch(d), 2.0, inch(4)), US, ground), ground)
        for d in (3, 12)
    ]
    told = [magnitude(one, "ft") for one in (found.length, found.width)]
    assert told == pytest.approx(room_of(*beds))
    assert told[1] == pytest.approx(room_of(beds[larger])[1])
    assert found.on_slope is (ground is not None)


def test_a_texture_feels_as_its_name_says():
    feels = {Feel.GRITTY: ("sand", "loamy sand", "sandy loam"), Feel.FLOURY: ("loam", "silt loam")}
    for texture in Texture:
        felt = [feel for feel, names in feels.items() if texture.value in names]
        assert feel_of(texture) is (felt[0] if felt else Feel.STICKY)


def test_the_range_holds_the_size_of_the_plan_and_narrows_as_answers_come(subtests, plan_of, roof):
    rng = random.Random(11)
    gardens = by_storms = 0
    while gardens < GARDENS:
        texture = rng.choice(list(Texture))
        # The plan itself doubts a test that is more than three times off the table.
        rate = RAWLS_CM_PER_H[texture] / 2.54 * 3 ** rng.uniform(-1, 1)
        texts = {"units": "us", **roof(f"rectangle {rng.uniform(8, 70):.1f} ft by 20 ft")}
        texts["rain_depth"] = f"{rng.uniform(0.5, 2):.2f} in"
        steps = [
            {},
            {"soil_dug": SAID[feel_of(texture)]},
            {
                "spots.1.slope_run": "10 ft",
                "spots.1.slope_drop": f"{rng.choice((0, 1, 3, 6, 9))} in",
            },
            {"children": rng.choice(("yes", "no"))},
            {"spout_distance": f"{rng.randint(5, 29)} ft"},
        ]
        found = []
        try:
            for step in steps:
                texts |= step
                found.append(plan_of(texts).rough.sized)
            plan = plan_of({**texts, "rate_from": "report", "known_rate": f"{rate:.4f} in/h"})
            size = plan.size
            if size.depth.too_shallow:
                continue
            area, over_all = ft2(size.mid_area_needed), size.over_all
        except Unanswered:
            continue
        gardens, by_storms = gardens + 1, by_storms + size.by_storms
        with subtests.test(**texts, rate=rate):
            assert [one for one in found if not holds(one, area)] == []
            for before, after in pairwise(found):
                assert ft2(before.low) <= ft2(after.low) + 1e-6
                assert ft2(after.high) <= ft2(before.high) + 1e-6
            last = found[-1]
            for side, most in zip(over_all, (last.length, last.width), strict=True):
                assert magnitude(side, "ft") <= magnitude(most, "ft") + 1e-6
            assert ft2(plan.rough.sized.low) <= ft2(size.required.mid_area) * size.bed_count + 1e-6
    assert by_storms


@pytest.mark.parametrize("said", SAID.values())
def test_soil_that_contradicts_its_feel_stays_within_the_second_range(said, plan_of, roof):
    rng = random.Random(said)
    gardens, outside = 0, 0
    while gardens < GARDENS:
        texts = {"units": "us", **roof(f"rectangle {rng.uniform(8, 70):.1f} ft by 20 ft")}
        texts |= {"rain_depth": f"{rng.uniform(0.5, 2):.2f} in", "soil_dug": said}
        texts["children"] = rng.choice(("yes", "no"))
        # From soil that hardly soaks to more than sand does, whatever it feels like.
        rate = 10 ** rng.uniform(-1.7, 1)
        rough = plan_of(texts).rough
        try:
            size = plan_of({**texts, "rate_from": "report", "known_rate": f"{rate:.4f} in/h"}).size
            if size.depth.too_shallow:
                continue
            area = ft2(size.mid_area_needed)
        except Unanswered:
            continue
        gardens, outside = gardens + 1, outside + (not holds(rough.sized, area))
        assert holds(rough.any_soil, area), (texts, rate)
        assert ft2(rough.any_soil.low) <= ft2(rough.sized.low) + 1e-6
        assert ft2(rough.any_soil.high) >= ft2(rough.sized.high) - 1e-6
    # Else nothing would need to be said.
    assert outside


def test_the_second_range_is_told_where_the_soil_was_felt(plan_of, untested):
    rough = plan_of({**untested, "soil_dug": "sand"}).rough
    low, high = (significant(ft2(one), 2, way) for one, way in (
        (rough.any_soil.low, "down"), (rough.any_soil.high, "up")))  # fmt: skip
    assert rough_words.first_size(rough.sized, rough.any_soil, metric=False)[1] == (
        f"The soak test will settle it. If the feel misleads: {low:g} to {high:g} sq ft."
    )
    unfelt = plan_of(untested).rough
    assert unfelt.any_soil.low == unfelt.sized.low
    said = rough_words.first_size(unfelt.sized, unfelt.any_soil, metric=False)
    assert said[1] == "The soak test will settle it."


def test_the_shallowest_pond_follows_the_slowest_soil_that_feels_so():
    # A third of 2.59, 0.68 and 0.06 cm/h for 48 h: 16.3, 4.28 and 0.38 in; 3 to 6 in is kept.
    inches = {feel: magnitude(shallowest_pond(feel), "in") for feel in Feel}
    assert inches == pytest.approx(
        {Feel.GRITTY: 6, Feel.FLOURY: 4, Feel.STICKY: 3, Feel.UNKNOWN: 3}
    )
    # 109 mm, and 3 in is 76.2 mm: in steps of 10 mm.
    assert magnitude(shallowest_pond(Feel.FLOURY, METRIC), "mm") == pytest.approx(100)
    assert magnitude(shallowest_pond(Feel.STICKY, METRIC), "mm") == pytest.approx(80)


def test_rain_nearly_as_deep_as_the_pond_begins_the_range_deeper_and_says_so(plan_of, untested):
    found = plan_of({**untested, "rain_depth": "2.5 in"}).rough.sized
    assert found.raised and magnitude(found.shallowest, "in") == pytest.approx(3.5)
    assert "A pond under 3 1/2 in could not hold" in " ".join(first_words(found))
    assert not plan_of(untested).rough.sized.raised
    with pytest.raises(Unanswered) as gap:
        _ = plan_of({**untested, "rain_depth": "2.5 in", "deepest_pond": "2 in"}).rough.sized
    assert gap.value.address == "deepest_pond" and "deeper than the rain" in gap.value.why


ROUGH = RoughSize(
    drains_here=quantity(420, "ft**2"),
    rain=quantity(1.25, "in"),
    depth=quantity(6, "in"),
    low=quantity(63.9, "ft**2"),
    middle=quantity(101, "ft**2"),
    high=quantity(271, "ft**2"),
    shallowest=quantity(3.5, "in"),
    raised=False,
    length=quantity(20.25, "ft"),
    width=quantity(10, "ft"),
    feel=Feel.GRITTY,
)
"""Invented."""
SIZE = "About 110 sq ft (63 to 280) for 1.25 in of rain from 420 sq ft, with a 6 in pond"
ROOM = "Look for room of 20 ft 3 in by 10 ft"
LEVEL = " on level ground; a slope takes some more."
SOIL = (Settles.SOAK_TEST,)


def test_the_first_size_is_told_in_sentences(subtests):
    for change, said in [
        ({}, [f"{SIZE}.", ROOM + LEVEL]),
        ({"beds": 2}, [f"{SIZE}, in 2 beds.", f"{ROOM} for each bed{LEVEL}"]),
        ({"on_slope": True}, [f"{SIZE}.", f"{ROOM}."]),
        (
            {"raised": True},
            [f"{SIZE}.", "A pond under 3 1/2 in could not hold so much rain in a yard.",
             ROOM + LEVEL],
        ),
        ({"settles": SOIL}, [f"{SIZE}.", "The soak test will settle it.", ROOM + LEVEL]),
        (
            {"settles": SOIL, "feel": Feel.STICKY},
            [f"{SIZE}.", "The soak test will settle it.", rough_words.VERY_SLOW, ROOM + LEVEL],
        ),
        ({"feel": Feel.STICKY}, [f"{SIZE}.", ROOM + LEVEL]),
    ]:  # fmt: skip
        with subtests.test(**change):
            found = ROUGH._replace(**change)
            assert rough_words.first_size(found, found, metric=False) == said
    any_soil = ROUGH._replace(high=quantity(400, "ft**2"))
    felt = rough_words.settling(ROUGH, any_soil, metric=False)
    assert felt == "The soak test will settle it. If the feel misleads: 63 to 400 sq ft."
    assert rough_words.about(ROUGH, False, "–") == "About 110 sq ft (63–280)"


def test_the_first_size_is_told_in_metric(subtests):
    metric = ROUGH._replace(
        length=quantity(6.2, "m"), width=quantity(3.0, "m"), settles=SOIL, raised=True
    )
    any_soil = metric._replace(high=quantity(400, "ft**2"))
    assert rough_words.first_size(metric, any_soil, metric=True) == [
        "About 9.4 m² (5.9 to 26) for 31.8 mm of rain from 39 m², with a 152 mm pond.",
        "A pond under 89 mm could not hold so much rain in a yard.",
        "The soak test will settle it. If the feel misleads: 5.9 to 38 m².",
        "Look for room of 6.2 m by 3 m on level ground; a slope takes some more.",
    ]
    # 3.3 ft is 1.00584 m, in steps of a tenth 1.0; 20.25 ft is 20 ft 3 in.
    for side, is_metric, words in [(3.3, True, "1.0 m"), (20.25, False, "20 ft 3 in")]:
        with subtests.test(side=side):
            assert rough_words.room_side(quantity(side, "ft"), is_metric) == words


def test_it_waits_for_the_first_answer_that_is_missing(plan_of, untested):
    with pytest.raises(Unanswered) as gap:
        _ = plan_of({"units": "us"}).rough.sized
    assert gap.value.address.startswith("surfaces.")
    assert plan_of(untested).rough.sized.settles == tuple(Settles)
    told = {**untested, "soil_dug": "clay", "children": "no"}
    assert plan_of(told).rough.sized.settles == (Settles.SLOPE, Settles.SOAK_TEST)


def test_the_first_size_in_words_has_its_own_numbers(plan_of, untested, level_spot):
    found = plan_of({**untested, "deepest_pond": "6 in", "children": "no"}).rough.sized
    low, high = significant(ft2(found.low), 2, "down"), significant(ft2(found.high), 2, "up")
    middle = significant(ft2(found.middle), 2, "up")
    said = first_words(found)
    assert said[0] == (
        f"About {middle:g} sq ft ({low:g} to {high:g}) for 1 in of rain from 420 sq ft, with a "
        "6 in pond."
    )
    assert said[1] == "The soak test will settle it."
    assert said[2] == "Very slow clay may allow no garden; the test tells."
    pattern = r"Look for room of (\d+ ft( \d+ in)?) by (\d+ ft( \d+ in)?) on level ground; .*"
    assert re.fullmatch(pattern, said[3])
    on_slope = plan_of({**untested, **level_spot, "soil_dug": "sand"}).rough.sized
    said = first_words(on_slope)
    assert len(said) == 3 and re.fullmatch(pattern.replace(" on level ground; .*", "."), said[-1])
    metric = plan_of({**untested, "units": "metric"}).rough.sized
    said = " ".join(first_words(metric, metric=True))
    assert re.match(r"About [\d.]+ m² \([\d.]+ to [\d.]+\) for 25 mm of rain from 39 m²", said)
    assert "ft" not in said.split()


def test_two_beds_have_the_room_of_each_and_the_size_of_both(plan_of, untested):
    one, two = (plan_of({**untested, **more}).rough.sized for more in ({}, {"beds": "2"}))
    assert two.beds == 2 and two.length < one.length
    assert ft2(two.middle) == pytest.approx(ft2(one.middle), rel=0.1)
    assert "for each bed" in rough_words.room(two, metric=False)
    assert rough_words.basis(two, metric=False).endswith("pond, in 2 beds")


def test_the_rain_of_the_first_size_is_told_to_three_digits(plan_of, untested):
    found = plan_of({**untested, "rain_depth": "1.25 in"}).rough.sized
    assert rough_words.basis(found, metric=False).startswith("for 1.25 in of rain from 420 sq ft")


def test_the_line_of_the_first_size_gives_way_to_the_tested_size(plan_of, untested):
    plan = plan_of(untested)
    line = rough_line(plan)
    assert re.fullmatch(r"About \d+ sq ft \(\d+–\d+\)", line)
    assert [one.value for one in so_far(plan) if one.label == "First size"] == [line]
    tested = plan_of({**untested, "rate_from": "report", "known_rate": "0.2 in/h"})
    assert rough_line(tested) == "" == rough_line(plan_of({"units": "us"}))
    assert "First size" not in [one.label for one in so_far(tested)]
    assert "First size: area" in plan_text(plan)
    assert "First size" not in plan_text(tested)


@pytest.mark.parametrize(("units", "words"), [("us", r"\d+ ft( \d+ in)?"), ("metric", r"[\d.]+ m")])
def test_the_room_for_enter_is_the_outline_and_is_kept(typed, untested, units, words):
    session = typed({**untested, "units": units})
    found = session.plan.rough.sized
    for key, side in (("room_length", found.length), ("room_width", found.width)):
        step = session.jump(key)
        text = session.offered(step)
        assert re.fullmatch(words, text)
        session.offer(step, text)
        kept = session.answers[step.question]
        assert magnitude(kept, "ft") == pytest.approx(magnitude(side, "ft"), abs=1e-6)
    bare = typed({"units": "us"})
    assert not bare.offered(bare.jump("room_length"))


def test_the_handful_of_the_test_hole_goes_before_the_soil_as_it_was_said(plan_of, untested):
    texts = {**untested, "soil_dug": "sand"}
    assert plan_of(texts).rough.feel is Feel.GRITTY
    assert plan_of({**texts, "holes.1.ribbon": "long"}).rough.feel is Feel.STICKY
    assert plan_of(untested).rough.feel is Feel.UNKNOWN
