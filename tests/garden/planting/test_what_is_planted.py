"""Plugs, pots or seed: what is counted, the cheaper ways beside it, and the care of each."""

from __future__ import annotations

import html
import math
import re
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace as Like

import numpy
import pytest
import shapely

from interview.garden.form.lie import Lie
from interview.garden.opening import plan_of
from interview.garden.planting.cheaper import cheaper_ways, fewest
from interview.garden.planting.costs import costs, plant_count
from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.record import PlantKind
from interview.garden.planting.words import hazard_names
from interview.garden.size import questions as bed
from interview.garden.size.zones import Zone
from interview.garden.store import load
from interview.garden.summary import value_of
from interview.garden.three_sizes import three_sizes
from interview.quantities.units import magnitude
from interview.sheet import dig as dig_page
from interview.sheet import first_year, plants, shopping
from interview.sheet.card import card_text
from interview.sheet.page import page_html
from interview.sheet.report import outside_text, plan_text

SAMPLES = Path(__file__).parents[3] / "sample_answers"
RAINLESS = {"has_rain_record": "no"}
SIZES = ("kinds", "plug", "pot", "large_pot", "seed")


@pytest.fixture
def sample(clock):
    """Return a maker of a finished garden's plan with some answers changed, without its rain."""

    def make(name="finished_us", without=(), **changes):
        answers = load(SAMPLES / f"{name}.yaml")[0].answers
        for key, text in {**RAINLESS, **changes}.items():
            answers = answers.with_text(key, text)
        for key in without:
            answers = answers.without(key)
        return plan_of(answers, SAMPLES, clock.now)

    return make


def said(text):
    return " ".join(text.split())


PARTS = {
    "SHOPPING LIST": shopping.shopping,
    "CHEAPER WAYS": plants.cheaper,
    "PLANTS": plants.plants,
    "FIRST YEAR": first_year.care,
}


def part(plan, title):
    return said("\n".join(PARTS[title](plan)))


def set_by_zone(plan):
    return {zone.zone: sum(one.count for one in zone.picks) for zone in plan.planting.chosen.zones}


# What is counted


def test_without_an_answer_the_count_is_that_of_the_distances_in_the_list(sample):
    old, new = sample(without=("plant_size", "berm_outside")), sample()
    listed = {one.scientific_name: one.spacing_in for one in builtin_plants()}
    assert plant_count(old.planting) == plant_count(new.planting)
    for zone in old.planting.chosen.zones:
        for pick in zone.picks:
            assert pick.plant.spacing_in == listed[pick.plant.scientific_name]


def laid(polygon, spacing):
    """Plants of a real grid of triangles inside ``polygon``: the mean over places it may begin."""
    row = spacing * math.sqrt(3) / 2
    west, south, east, north = polygon.bounds
    across = numpy.arange(-1, (east - west) / spacing + 2)
    up = numpy.arange(-1, (north - south) / row + 2)
    counts = []
    for dx, dy in numpy.random.default_rng(7).random((200, 2)):
        x = west + spacing * (across[None, :] + dx + 0.5 * (up[:, None] % 2))
        y = south + row * (up[:, None] + 2 * dy) + 0 * x
        counts.append(int(shapely.contains_xy(polygon, x.ravel(), y.ravel()).sum()))
    return sum(counts) / len(counts)


@pytest.mark.parametrize("drop", ["0 in", "6 in", "13 in"])
def test_a_grid_of_triangles_laid_into_the_garden_takes_as_many_plants(
    plan_of, sized, level_spot, drop
):
    # Shapely (GEOS) counts what lies inside the crest and the cut edge. Rounding up each of three
    # zones adds less than three plants; the mean over 200 grids is good to about one.
    texts = {**sized, **level_spot, "spots.1.slope_drop": drop, "state": "mn", "country": "us"}
    for size, feet in (("plug", 1.0), ("large_pot", 1.5)):
        plan = plan_of({**texts, "plant_size": size, "keep_out": "none"})
        lie = plan.size.lie
        line = [lie.inside_line, lie.footprint]
        inside, whole = (shapely.Polygon(points) for points in line)
        picks = [pick for zone in plan.planting.chosen.zones for pick in zone.picks]
        assert not any(pick.plant.kind is PlantKind.SHRUB for pick in picks)
        assert plant_count(plan.planting) == pytest.approx(laid(inside, feet) + 1.5, abs=3)
        wider = plan_of({**texts, "plant_size": size, "berm_outside": "plants"})
        assert plant_count(wider.planting) == pytest.approx(laid(whole, feet) + 1.5, abs=3)


def test_where_the_cut_rises_over_the_crest_it_is_planted_as_it_is_mulched(
    plan_of, sized, level_spot, figure
):
    texts = {**sized, **level_spot, "spots.1.slope_drop": "13 in"}
    plan = plan_of({**texts, "state": "mn", "country": "us"})
    assert figure("planted_area", plan) == figure("inside_area", plan)
    assert figure("planted_area", plan) > figure("rim_area", plan) * 1.02


def test_plants_of_one_size_stand_alike_and_in_round_numbers(subtests, sample):
    for name, inches in (("finished_us", (12, 18)), ("finished_metric", (300, 450))):
        for size, wanted in zip(("plug", "large_pot"), inches, strict=True):
            with subtests.test(name=name, size=size):
                plan = sample(name, plant_size=size)
                unit = "mm" if plan.metric else "in"
                apart = {
                    round(magnitude(pick.plant.spacing, unit), 6)
                    for zone in plan.planting.chosen.zones
                    for pick in zone.picks
                }
                assert apart == {wanted}
                told = f"{wanted // 10} cm apart" if plan.metric else f"{wanted} in apart"
                assert told in part(plan, "PLANTS")


def test_seed_is_sown_on_the_rim_alone_and_counts_no_plant(sample):
    plan, plugs = sample(plant_size="seed"), sample(plant_size="plug")
    found, dense = set_by_zone(plan), set_by_zone(plugs)
    assert found == {**dense, Zone.RIM: 0} and dense[Zone.RIM] > 0
    sheet = part(plan, "PLANTS")
    rim = sheet[sheet.index("RIM, the driest") :]
    assert "[ ] seed of " in rim and " x " not in rim
    assert "[ ] seed of " not in sheet[: sheet.index("RIM, the driest")]
    assert "[ ] seed: 0.25 to 0.67 oz for 79 ft², native kinds" in part(plan, "SHOPPING LIST")
    assert "RIM (79 ft²): seed of" in said(card_text(plan))
    rim = plan.planting.chosen.zones[2].picks[0].plant
    assert plan.planting.why_plant(rim.scientific_name)[2].startswith("Rim: Sown.")


@pytest.mark.parametrize("name", ["finished_us", "usual_us", "finished_metric"])
def test_where_the_rim_is_sown_no_mulch_is_bought_nor_room_dug_for_it_there(sample, figure, name):
    plugs = {"plant_size": "plug", "berm_outside": "sod"}
    plan, sown = sample(name, **plugs), sample(name, **{**plugs, "plant_size": "seed"})
    beds, deep = figure("bed_count", plan), plan.answers[bed.MULCH_DEPTH]
    foot = magnitude(deep, "m" if plan.metric else "ft")
    pond = magnitude(sown.size.garden.edge_area, "m**2" if plan.metric else "ft**2")
    assert figure("mulch_volume", sown) == pytest.approx(beds * pond * foot)
    bare = figure("inside_area", plan) - pond
    assert figure("mulch_volume", plan) - figure("mulch_volume", sown) == pytest.approx(
        beds * bare * foot
    )
    # What is not dug stands, or is berm that is not built: cut less berm is less by the mulch.
    # Where the soil of the berm or its height sets the floor, that is another garden.
    lie = plan.size.lie
    same = Lie.at_depth(replace(lie, ground=replace(lie.ground, bare_rim=True)), lie.floor_below)
    less = (lie.soil.cut - lie.soil.fill) - (same.soil.cut - same.soil.fill)
    assert less == pytest.approx(
        (lie.inside_area - magnitude(plan.size.garden.edge_area, "ft**2")) * lie.ground.mulch
    )
    assert figure("soil_dug_total", sown) < figure("soil_dug_total", plan)
    assert figure("mulching_hours_slow", sown) <= figure("mulching_hours_slow", plan)
    assert figure("sod_laid", sown) == pytest.approx(figure("sod_laid", plan))
    dig, stripes = said("\n".join(dig_page.dig(sown))), said("\n".join(dig_page.dig(plan)))
    assert "upright step there that holds the mulch" in dig and "seed lies on bare soil" in dig
    assert "sow the rim last" in dig and "sow the rim" not in stripes
    assert "upright step at the rim" in stripes and "bare soil" not in stripes
    ends = {"plug": "up to the rim: shredded", "seed": "up to the full pond: shredded"}
    assert ends["seed"] in part(sown, "SHOPPING LIST") and ends["plug"] in part(
        plan, "SHOPPING LIST"
    )


def test_sod_is_laid_back_only_where_nothing_else_is_to_grow(sample, figure):
    outside = figure("berm_outside_area", sample())
    assert figure("sod_laid", sample(berm_outside="sod")) == pytest.approx(outside)
    for other in ("grass", "plants"):
        assert figure("sod_laid", sample(berm_outside=other)) == 0
    lean = {"how_large": "lean", "floor_length": "12 ft", "floor_width": "6 ft"}
    turfed, sown = sample(**lean), sample(**lean, plant_size="seed")
    rim = figure("inside_area", turfed) - magnitude(turfed.size.garden.edge_area, "ft**2")
    assert rim > 0
    assert figure("sod_laid", turfed) == pytest.approx(figure("berm_outside_area", turfed) + rim)
    assert figure("sod_laid", sown) == pytest.approx(figure("berm_outside_area", sown))
    above = "above it lay lifted sod"
    assert above in said("\n".join(dig_page.dig(turfed)))
    assert above not in said("\n".join(dig_page.dig(sown)))


def test_what_lies_bare_until_it_is_green_is_covered_and_on_the_list(sample, figure):
    def covered(**answers):
        plan = sample(**answers)
        area, listed = figure("cover_area", plan), part(plan, "SHOPPING LIST")
        assert ("[ ] straw or a jute net: " in listed) == (area > 0)
        return area

    two = {"beds": "2", "room_length": "80 ft"}
    plan = sample(**two)
    outside, rim = figure("berm_outside_area", plan), figure("rim_planted_area", plan)
    assert covered(**two) == 0
    assert covered(**two, berm_outside="grass") == pytest.approx(2 * outside)
    assert covered(**two, berm_outside="plants") == pytest.approx(2 * outside)
    assert covered(**two, plant_size="seed") == pytest.approx(rim)
    for both in ("grass", "plants"):
        area = covered(**two, plant_size="seed", berm_outside=both)
        assert area == pytest.approx(rim + 2 * outside)


def test_seed_is_bought_by_weight_for_what_is_sown(sample, figure):
    # 10 kg to the hectare: Tallgrass Ontario, web page. 18 + 5 lb an acre: seeding plan in the
    # records of Orono, Minnesota. 2 to 3 lb on 1000 ft²: University of Minnesota Extension. 6 to 8
    # lb: Cornell University. An acre is 43 560 ft², a hectare 107 639 ft², a pound 453.6 g.
    plan = sample(plant_size="seed", berm_outside="grass")
    rim, berm = figure("rim_planted_area", plan), figure("berm_outside_area", plan)
    assert figure("seed_least", plan) == pytest.approx(10_000 / 28.3495 * rim / 107_639, rel=1e-4)
    assert figure("seed_most", plan) == pytest.approx(23 * 16 * rim / 43_560)
    assert figure("grass_seed_least", plan) == pytest.approx(2 * berm / 1000)
    assert figure("grass_seed_most", plan) == pytest.approx(8 * berm / 1000)
    metric = sample("finished_metric", plant_size="seed")
    assert figure("seed_least", metric) == pytest.approx(figure("rim_planted_area", metric))
    two = sample(plant_size="seed", beds="2", room_length="80 ft")
    assert figure("seed_most", two) == pytest.approx(
        23 * 16 * figure("rim_planted_area", two) / 43_560
    )
    plain = sample()
    for key in ("seed_least", "seed_most", "grass_seed_least", "grass_seed_most"):
        assert figure(key, plain) == "none", key
    assert "seed:" not in part(plain, "SHOPPING LIST")


def test_a_price_of_seed_pays_for_the_thickest_sowing(sample, figure):
    sown = {"plant_size": "seed", "berm_outside": "grass"}
    plan = sample(prices="seed 12 per oz; grass seed 6 per lb", **sown)
    found = costs(plan.planting)
    by_hand = 12 * figure("seed_most", plan) + 6 * figure("grass_seed_most", plan)
    assert found.total == pytest.approx(by_hand) and not found.unused
    assert f"Costs {12 * figure('seed_most', plan):.2f}" in part(plan, "SHOPPING LIST")
    assert "grass seed" in costs(sample(prices="seed 12 per oz", **sown).planting).unpriced
    assert costs(sample(prices="seed 12 per oz").planting).unused == ("seed",)


def test_without_named_kinds_the_places_follow_what_is_planted(sample):
    bare = {"own_plants": "none"}
    usual = sample("finished_metric", **bare).planting
    gallon = sample("finished_metric", plant_size="large_pot", **bare).planting
    plug = sample("finished_metric", plant_size="plug", **bare).planting
    assert plant_count(usual) == pytest.approx(plant_count(gallon), rel=0.05)
    area = magnitude(plug.planted_area, "m**2")
    assert plant_count(plug) == pytest.approx(area / (0.866 * 0.3**2) + 1.5, abs=2)
    assert "plants 30 cm apart" in said(
        card_text(sample("finished_metric", plant_size="plug", **bare))
    )


# The cheaper ways


def test_each_way_counts_what_the_plan_would_count_if_it_were_chosen(sample, figure):
    plan = sample()
    gallon, seed = sample(plant_size="large_pot"), sample(plant_size="seed")
    zones, large = set_by_zone(plan), set_by_zone(gallon)
    assert figure("plants_large_pots", plan) == plant_count(gallon.planting) == sum(large.values())
    assert figure("plants_with_seed", plan) == plant_count(seed.planting)
    assert figure("plants_pond_line", plan) == zones[Zone.FLOOR] + zones[Zone.SIDE]
    assert figure("plants_large_pots_pond_line", plan) == large[Zone.FLOOR] + large[Zone.SIDE]
    total = figure("plants_total", plan)
    assert total <= 2 * figure("plants_first_half", plan) <= total + 1
    grasses = [
        pick.count
        for zone in plan.planting.chosen.zones
        for pick in zone.picks
        if pick.plant.kind in (PlantKind.GRASS, PlantKind.SEDGE, PlantKind.RUSH)
    ]
    assert figure("clumps_to_divide", plan) == sum(-(-count // 3) for count in grasses)
    assert figure("rim_planted_area", plan) == pytest.approx(
        magnitude(plan.size.inside, "ft**2") - magnitude(plan.size.garden.edge_area, "ft**2")
    )
    ways = {way.name: way.count for way in cheaper_ways(plan.planting)}
    assert ways["grasses and sedges from friends"] == total - sum(grasses)
    for name, season in (("finished_us", "fall"), ("finished_metric", "autumn")):
        sheet = " ".join(plan_text(sample(name)).split())
        assert f"lift each in spring or {season} and cut" in sheet
    assert (
        fewest(plan.planting) == figure("plants_large_pots_pond_line", plan) == min(ways.values())
    )


def test_two_beds_take_twice_the_plants_in_every_way(plan_of, sized, level_spot, figure):
    texts = {**sized, **level_spot, "state": "mn", "country": "us", "beds": "2"}
    plan = plan_of({**texts, "beds_how": "side_by_side"})
    each = set_by_zone(plan)
    assert figure("plants_total", plan) == 2 * sum(each.values())
    assert figure("plants_pond_line", plan) == 2 * (each[Zone.FLOOR] + each[Zone.SIDE])


def test_nobody_is_told_a_count_of_plants_without_the_cheaper_ways(subtests, sample):
    for name in ("finished_us", "finished_metric"):
        for size in SIZES:
            with subtests.test(name=name, size=size):
                plan = sample(name, plant_size=size)
                text = part(plan, "CHEAPER WAYS")
                assert f"The plan counts {plant_count(plan.planting)} plants" in text
                for way in cheaper_ways(plan.planting):
                    assert way.count < plant_count(plan.planting)
                    assert f": {way.count}" in text and plan.answers.told(way.name) in text
                assert "half now, half next year" in text
                assert "Mulch the gaps" in text and "pull weeds there every week" in text
                least = fewest(plan.planting)
                short = f"{plant_count(plan.planting)}; with cheaper ways from {least}"
                assert value_of("Plants", plan) == short


def test_the_sheets_to_take_outside_tell_the_cheaper_ways_beside_the_count(subtests, sample):
    for name, size in (("finished_us", "kinds"), ("finished_metric", "seed")):
        plan = sample(name, plant_size=size)
        ways = cheaper_ways(plan.planting)
        assert "half now, half next year" in {way.name for way in ways}
        text = said(outside_text(plan).partition("\nPLANTS -")[2].partition("\nFIRST YEAR -")[0])
        page = said(html.unescape(re.sub(r"<[^>]*>", "", page_html(plan))))
        total, least = plant_count(plan.planting), fewest(plan.planting)
        assert f"{total} plants, with cheaper ways from {least}" in said(card_text(plan))
        for where, told in (("text", text), ("page", page)):
            with subtests.test(name=name, where=where):
                assert f"The plan counts {plant_count(plan.planting)} plants" in told
                for way in ways:
                    called = plan.answers.told(way.name)
                    assert f"{called}: {way.count}" in told or f"{way.count} {called}" in told


def test_a_hazard_is_named_in_a_word_on_every_list(subtests, sample):
    plan = sample(keep_out="none", swap_out="prairie ironweed for bluejacket")
    picks = [pick.plant for zone in plan.planting.chosen.zones for pick in zone.picks]
    named = {hazard_names(one).upper() for one in picks} - {""}
    assert "TOXIC" in named
    page = said(html.unescape(re.sub(r"<[^>]*>", "", page_html(plan))))
    for where, told in (("text", said(outside_text(plan))), ("page", page)):
        with subtests.test(where=where):
            assert all(f"{one}: " in told for one in named)


def test_costs_agree_wherever_they_stand(sample, figure):
    plan = sample()
    found, count = costs(plan.planting), figure("plants_total", plan)
    assert found.of("plants").amount == 4 * count
    shopping = part(plan, "SHOPPING LIST")
    assert f"plants: {count} in all, listed below. Costs {4 * count:.2f} at 4 each" in shopping
    assert f"Together: {figure('cost_total', plan):.2f}" in shopping
    usual = three_sizes(plan)[1]
    assert usual.name == "usual" and usual.plants == count
    assert usual.cost == pytest.approx(figure("cost_total", plan))
    assert usual.fewest == figure("plants_large_pots_pond_line", plan)
    text = part(plan, "CHEAPER WAYS")
    assert f"counts {count} plants, {4 * count:.2f}:" in text
    half, line = figure("plants_first_half", plan), figure("plants_pond_line", plan)
    assert f"half now, half next year: {half}, {4 * half:.2f}." in text
    assert f"plants to the pond line only: {line}, {4 * line:.2f}." in text
    for way in cheaper_ways(plan.planting):
        # The price of a plant of one size is not taken for that of another.
        assert (way.cost is None) != (way.pays_below is None)
        if way.cost is None:
            assert way.count * way.pays_below == pytest.approx(4 * count)
            assert f"{way.count}; costs less while one is under {way.pays_below:.2f}" in text


def test_without_a_price_no_cost_of_a_way_is_made_up(sample):
    plan = sample(prices="mulch 38 per yd3")
    assert {way.cost for way in cheaper_ways(plan.planting)} == {None}
    assert {way.pays_below for way in cheaper_ways(plan.planting)} == {None}
    assert not re.search(r"\d\.\d\d", part(plan, "CHEAPER WAYS"))


def test_the_outside_of_the_berm_is_counted_only_where_it_is_planted(sample, figure):
    # No season is asked for: else flowers of a larger rim may spare a kind on the side.
    outside = ("sod", "grass", "plants")
    sod, grass, full = (sample(berm_outside=one, bloom="none") for one in outside)
    assert plant_count(sod.planting) == plant_count(grass.planting) < plant_count(full.planting)
    beyond = figure("footprint_area", sod) - figure("inside_area", sod)
    assert figure("berm_outside_area", sod) == pytest.approx(beyond)
    assert figure("planted_area", full) == pytest.approx(figure("footprint_area", sod))
    below = (Zone.FLOOR, Zone.SIDE)
    assert [set_by_zone(sod)[zone] for zone in below] == [set_by_zone(full)[zone] for zone in below]
    for plan, words in (
        (sod, "is not counted: its own sod is laid back there"),
        (grass, "is not counted: grass is sown there"),
        (full, "is counted with the rim"),
    ):
        assert f"The outside of the berm {words}." in part(plan, "CHEAPER WAYS")


# The first two years


def test_the_first_two_years_are_told_for_what_is_planted(sample):
    told = {size: part(sample(plant_size=size), "FIRST YEAR") for size in SIZES}
    for size, words in (
        ("plug", "Water plugs every other day"),
        ("large_pot", "Loosen or cut roots that go round the pot"),
        ("seed", "Sow the rim in late fall or early spring"),
    ):
        assert [one for one in SIZES if words in told[one]] == [size]
    assert all("Second year: " in text for text in told.values())
    # What was read nowhere says so.
    assert "dries out in two days." in told["plug"] and "common practice, no source" in told["plug"]


def test_a_part_without_named_kinds_is_counted_by_its_places_beside_parts_that_have_some():
    zones = (Like(picks=(), places=9), Like(picks=(Like(count=8), Like(count=7)), places=15))
    found = Like(chosen=Like(zones=zones, total=15), size=Like(bed_count=4))
    assert plant_count(found) == 4 * (9 + 15)
