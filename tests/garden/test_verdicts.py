"""The verdict at once: from the finding of the plan, on both sides of each limit."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from interview.asking import route
from interview.asking.answers import NO_CLOCK
from interview.garden import verdict_rows
from interview.garden.opening import text_opener
from interview.garden.plan import RECORDS, Plan
from interview.garden.site import spot_questions as ground
from interview.garden.stages import QUESTIONS, new_answers
from interview.garden.store import load
from interview.garden.verdict_rows import DECIDED_AT, KEEP, LEARN, TABLE, WAYS, WAYS_OUT
from interview.garden.verdicts import preview, stops, verdict
from interview.quantities.evidence import Grade
from interview.quantities.units import magnitude

SAMPLES = Path(__file__).parents[2] / "sample_answers"
GARDENS = 12
"""Random ones; few enough to be quick, and raised by hand now and then."""
RANK = {Grade.GOOD: 0, Grade.FIX: 1, Grade.STOP: 2}

WITH_VERDICT = {question.key for question in TABLE}
"""Keys of the questions that a limit stands for."""
WITHOUT = {
    "no limit stands for it": """
        garden_name units country state lines_ticket spot_name hole_name known_rate_by
        hole_set_aside_why hole_spot walker_name surface_name notes storm_seen storm_rain barrow
        prices
        has_rain_record rain_date_column rain_depth_column downhill_direction measured_by read_as
        surface_north plant_region wetland_list_region hardiness_zone sun natives_only keep_out
        bloom road_salt plant_size berm_outside tallest_floor tallest_rim favourites swap_out
        levels_read levels_from prefer_plants""",
    "another question of the same list has the verdict": """
        near_spot local_rules another_spot chosen_spot rate_from another_hole another_walker
        another_surface""",
    "the gate tells it, with the day": """
        lines_requested lines_asked_on lines_business_days lines_holidays lines_answered
        lines_finished_on lines_valid_days lines_valid_kind private_lines hole_dug_on
        hole_cleared test_to_learn""",
    "its limits refuse at once, or it is doubted before it is kept": """
        hole_shape hole_width hole_length hole_top_width hole_top_height
        hard_digging pace_line pace_counts soaked_already first_fill_start first_fill_empty
        second_fill_start second_fill_empty water_at_mark test_start ruler_mark hole_left""",
    "it is a part of the area, which only the size is held against": """
        surface_kind falls_on gutter_outlets outlets_here share_known gutter_this_side
        gutter_whole share_percent spout_percent roof_valley lawn_cover surface_basis
        surface_pitch roof_sides pieces runoff_local runoff_by soil_group""",
    "it shapes a bed whose size the floor, the room and the rim are held against": """
        beds_how how_large side_slope floor_shape kidney_bend floor_outline length_to_width
        berm_top amend compost_depth mulch_depth storm_hours storm_shape""",
}


@pytest.fixture
def told(plan_of, level_spot):
    """Return a teller of the verdict at an address, of a level spot with other answers."""

    def tell(address, texts=None, **more):
        plan = plan_of({**level_spot, **(texts or {}), **more})
        return verdict(plan, step_at(plan, address))

    return tell


def step_at(plan, address):
    return next(one for one in route.steps(plan.answers) if one.address == address)


def sample(name):
    answers = new_answers(load(SAMPLES / name)[0].answers.texts, NO_CLOCK)
    return Plan(route.in_force(answers), NO_CLOCK, text_opener(SAMPLES))


def test_every_question_has_a_verdict_or_a_reason_for_none():
    named = [key for keys in WITHOUT.values() for key in keys.split()]
    assert sorted([*named, *WITH_VERDICT]) == sorted(QUESTIONS)


def near(key, far, metric=False, **more):
    """Return a spot with one thing in the yard, so far away."""
    texts = {"units": "metric" if metric else "us", "spots.1.near_spot": key}
    texts[f"spots.1.{key}_distance"] = far
    return texts | {f"spots.1.{name}": text for name, text in more.items()}


def test_a_right_to_the_ground_is_not_told_as_leave_to_dig(told, subtests):
    for owner in ("own", "written"):
        with subtests.test(owner=owner):
            line = told("permission", permission=owner).line
            assert "the right to make a garden" in line and "dig" not in line


def test_a_hole_no_deeper_than_the_garden_is_dug_is_told_at_once_and_in_the_plan(
    told, plan_of, level_spot, subtests
):
    # Until the size is known: a pond of 6 in by the children's limit, 3 in of mulch, 2 of compost.
    for key, near, far in (("children", "11 in", "11 1/4 in"), ("floor", "9 in", "10 in")):
        with subtests.test(key=key):
            texts = {"holes.1.floor_depth": "9 in"} if key == "floor" else {"children": "yes"}
            for depth, grade in ((near, Grade.FIX), (far, None)):
                dug = {**texts, "holes.1.hole_depth": depth}
                found = told("holes.1.hole_depth", dug)
                assert (found and found.grade) == grade
                assert not found or found.ways[0].target == "holes.1.hole_depth"
                plan = plan_of({**level_spot, **dug})
                assert ("hole_1_depth" in {one.key for one in plan.findings}) == bool(grade)


def test_a_deeper_pond_is_a_way_out_only_where_the_wish_keeps_it_shallow(told):
    slow = {"rate_from": "report", "known_rate": "0.03 in/h"}
    quick = {"rate_from": "report", "known_rate": "1 in/h", "deepest_pond": "2 in"}
    for texts, ways in ((slow, 0), (quick, 1)):
        found = told("known_rate", texts)
        assert found.key == "pond_depth" and found.grade is Grade.STOP
        assert len([way for way in found.ways if way.target == "deepest_pond"]) == ways


NEAREST = [
    # The limits as their sources print them. Cautious ones said to be from memory are told too.
    # Rain Garden Handbook for Western Washington, WSU Extension, 2013, p. 13: 10 ft, 50 ft, 50 ft.
    ("basement", {}, "10 ft", "9 ft 11 in", "3 m", "2.99 m", Grade.STOP, "WSU"),
    ("septic", {"septic_uphill": "yes"}, "50 ft", "49 ft", "15 m", "14.9 m", Grade.STOP, "WSU"),
    ("slope_crest", {}, "50 ft", "49 ft", "15 m", "14.9 m", Grade.STOP, "WSU"),
    # Step 1: Sizing and Siting the Rain Garden, University of Wisconsin-Extension: 10 ft.
    ("slab", {}, "10 ft", "9 ft", "3 m", "2.9 m", Grade.FIX, "Wisconsin"),
    # Clemson Extension, 2009, read in a second copy: 25 ft.
    ("septic", {"septic_uphill": "no"}, "25 ft", "24 ft", "7.5 m", "7.4 m", Grade.STOP, "Clemson"),
    # Minimum setback requirements, Minnesota Stormwater Manual, web page: 50 ft.
    ("well", {}, "50 ft", "49 ft", "15 m", "14.9 m", Grade.STOP, "Minnesota"),
    # Portland area handout, read in a second copy: 5 ft, 3 ft, 3 ft.
    ("property_line", {}, "5 ft", "4 ft", "1.5 m", "1.4 m", Grade.FIX, "Portland"),
    ("pavement", {}, "3 ft", "2 ft", "0.9 m", "0.8 m", Grade.FIX, "Portland"),
    ("retaining_wall", {}, "3 ft", "2 ft", "0.9 m", "0.8 m", Grade.FIX, "Portland"),
    # Stormwater and your home, City of Mississauga, Ontario, web page: 3 m.
    ("tree", {}, "10 ft", "9 ft", "3 m", "2.9 m", Grade.FIX, "Mississauga"),
    # From memory, not checked.
    ("water", {}, "25 ft", "24 ft", "7.5 m", "7.4 m", Grade.FIX, "from memory"),
]


def test_each_distance_is_fine_at_its_limit_and_too_near_under_it(subtests, told):
    for key, more, *sides, grade, source in NEAREST:
        for metric, (far, close) in ((False, sides[:2]), (True, sides[2:])):
            with subtests.test(key=key, metric=metric):
                at = f"spots.1.{key}_distance"
                good = told(at, near(key, far, metric, **more))
                assert good.grade is Grade.GOOD and not good.stays and not good.ways
                assert good.line.startswith(f"Fine: {far}; {far} needed")
                bad = told(at, near(key, close, metric, **more))
                assert bad.grade is grade and bad.stays
                assert bad.line == f"TOO NEAR: {close}, {far} needed."
                assert source in str(bad.source) and source in str(good.source)


def test_the_line_is_short_and_names_the_cautious_distance_and_the_ways_on(told):
    # The wordings of the house wall: 10 ft needed, 20 ft cautious.
    fine = told("spots.1.basement_distance", near("basement", "14 ft 6 in"))
    assert fine.line == "Fine: 14 ft 6 in; 10 ft needed, 20 ft cautious." and fine.near
    assert not told("spots.1.basement_distance", near("basement", "20 ft")).near
    bad = told("spots.1.basement_distance", near("basement", "8 ft"))
    assert bad.line == "TOO NEAR: 8 ft, 10 ft needed."
    assert [(way.label, way.target) for way in bad.ways] == [
        ("Move the hose 2 ft, measure again", "spots.1.basement_distance"),
        ("Try another spot", "spots.1.another_spot"),
        ("Keep it: the plan will say so", KEEP),
    ]
    far = told("spots.1.overflow_line_distance", {"spots.1.overflow_line_distance": "4 ft"})
    assert far.ways[0].label == "Lead the overflow 6 ft farther away, measure again"


def test_a_slab_under_five_feet_stops(told):
    # Our own stop under half of the 10 ft of University of Wisconsin-Extension.
    assert told("spots.1.slab_distance", near("slab", "5 ft")).grade is Grade.FIX
    assert told("spots.1.slab_distance", near("slab", "4 ft 11 in")).grade is Grade.STOP


def test_what_bears_on_a_distance_gives_its_verdict_anew(told):
    texts = near("septic", "30 ft", septic_uphill="yes")
    uphill = told("spots.1.septic_uphill", texts)
    assert uphill.line == "TOO NEAR: 30 ft, 50 ft needed."
    assert uphill.ways[0].target == "spots.1.septic_distance"
    assert told("spots.1.septic_uphill", {**texts, "spots.1.septic_uphill": "no"}).near
    texts = near("tree", "12 ft", drip_line="15 ft")
    assert told("spots.1.drip_line", texts).line == "TOO NEAR: 12 ft, 15 ft needed."
    texts = near("retaining_wall", "4 ft", wall_height="6 ft")
    assert told("spots.1.wall_height", texts).line == "TOO NEAR: 4 ft, 6 ft needed."
    texts = {**near("well", "60 ft"), "local_rules": "well", "local_well": "75 ft"}
    rule = told("local_well", texts)
    assert rule.line == "TOO NEAR: 60 ft, 75 ft needed by your local rule."
    assert str(rule.source) == "local rule (as you gave it)"
    assert rule.ways[0].target == "spots.1.well_distance"
    unmeasured = {**texts, "spots.1.well_distance": "don't know yet"}
    del unmeasured["spots.1.well_distance"]
    assert told("local_well", unmeasured) is None


def test_the_overflow_stays_ten_feet_from_a_line_and_a_building(subtests, told):
    # WSU Extension, 2013, p. 13, there of the bed: 10 ft. Village code of Kenilworth, Illinois,
    # section 0-0-0-8028: 10 ft from a property line.
    for key, grade, source in (
        ("overflow_building_distance", Grade.STOP, "WSU"),
        ("overflow_line_distance", Grade.FIX, "Kenilworth"),
    ):
        for units, far, close in (("us", "10 ft", "9 ft 11 in"), ("metric", "3 m", "2.99 m")):
            with subtests.test(key=key, units=units):
                at = f"spots.1.{key}"
                assert told(at, {at: far}, units=units).grade is Grade.GOOD
                bad = told(at, {at: close}, units=units)
                assert bad.grade is grade and source in str(bad.source)
                assert bad.line == f"TOO NEAR: {close}, {far} needed."


def test_the_slope_is_fine_to_eight_percent_and_stops_past_twelve(subtests, told):
    # University of Rhode Island and University of Connecticut, slope table: over 12 % elsewhere;
    # 8 % is ours. Portland area handout: over 10 % where the ground slides.
    for run, drops, unit in (("100 ft", 12, "in"), ("25 m", 250, "mm")):
        for percent, slides, grade, line in (
            (5.1, "none", Grade.GOOD, "5.1 %: fine, up to 8 %."),
            (8, "none", Grade.GOOD, "8 %: fine, up to 8 %."),
            (8.2, "none", Grade.FIX, "8.2 %: steep. Fine up to 8 %, STOP past 12 %."),
            (12, "none", Grade.FIX, "12 %: steep. Fine up to 8 %, STOP past 12 %."),
            (12.2, "none", Grade.STOP, "STOP here: slope 12.2 %. Move, or try another spot."),
            (10, "slides", Grade.FIX, "10 %: steep. Fine up to 8 %, STOP past 10 %."),
            (10.2, "slides", Grade.STOP, "STOP here: slope 10.2 %. Move, or try another spot."),
        ):
            with subtests.test(run=run, percent=percent, slides=slides):
                drop = f"{round(percent * drops, 3):g} {unit}"
                found = told(
                    "spots.1.slope_drop",
                    {"spots.1.slope_run": run, "spots.1.slope_drop": drop}
                    | {"spots.1.unstable_ground": slides},
                    units="us" if unit == "in" else "metric",
                )
                assert (found.grade, found.line) == (grade, line)
                assert found.stays is (grade is not Grade.GOOD)


def test_a_slope_has_no_verdict_before_both_lengths_are_known(plan_of):
    plan = plan_of({"spots.1.slope_run": "10 ft"})
    assert verdict(plan, step_at(plan, "spots.1.slope_run")) is None
    assert verdict(plan, step_at(plan, "spots.1.slope_drop")) is None


def test_water_and_rock_lie_two_feet_below_the_dig(subtests, told):
    # Rain Gardens, Elk County, Pennsylvania, web page: 2 ft to rock; the same to water after
    # extension slides. Cautious: Minnesota Stormwater Manual, 3 ft. Until more is known the dig is
    # 10 in of pond, 3 in of mulch and 2 in of compost; 250, 75 and 50 mm.
    for key in ("wet_season_depth", "rock_depth"):
        at = f"spots.1.{key}"
        for units, needed, careful, close, less in (
            ("us", "39 in", "51 in", "38 in", "Dig 1 in less deep"),
            ("metric", "975 mm", "1375 mm", "965 mm", "Dig 10 mm less deep"),
        ):
            with subtests.test(key=key, units=units):
                good = told(at, {at: needed}, units=units)
                assert good.grade is Grade.GOOD and good.near
                assert not told(at, {at: careful}, units=units).near
                bad = told(at, {at: close}, units=units)
                assert bad.grade is Grade.STOP
                limit = "24 in" if units == "us" else "600 mm"
                assert bad.line.startswith("TOO NEAR: ") and f"{limit} needed" in bad.line
                assert (bad.ways[0].label, bad.ways[0].target) == (less, "deepest_pond")


def test_a_mark_nearer_than_the_strip_shuts_digging(subtests, told, located):
    # USA North 811 and Virginia 811, web pages; LG&E and KU, 2024: 24 in each side of a mark.
    for units, needed, far, close in (
        ("us", "2 ft", "2 ft", "1 ft 11 in"),
        ("metric", "0.61 m", "0.61 m", "0.6 m"),
    ):
        with subtests.test(units=units):
            good = told("mark_distance", {**located, "mark_distance": far}, units=units)
            assert good.line == f"Fine: {far}; {needed} needed."
            bad = told("mark_distance", {**located, "mark_distance": close}, units=units)
            assert bad.line == f"TOO NEAR: {close}, {needed} needed."
            assert bad.grade is Grade.STOP and bad.ways[-1].label == "Keep it: digging stays shut"
    assert told("mark_distance", {**located, "mark_distance": "no marks"}).line == "Fine: no marks."


def test_choices_that_stop_say_so_with_the_way_on(subtests, told):
    for key, text, grade in (
        ("stands_after_rain", "never", Grade.GOOD),
        ("stands_after_rain", "few", Grade.FIX),
        ("stands_after_rain", "often", Grade.STOP),
        ("unstable_ground", "slides", Grade.STOP),
        ("unstable_ground", "karst", Grade.STOP),
        ("contamination", "none", Grade.GOOD),
        ("contamination", "fuel", Grade.STOP),
        ("overflow_to", "own_lawn", Grade.GOOD),
        ("overflow_to", "undecided", Grade.FIX),
        ("overflow_to", "neighbour", Grade.STOP),
    ):
        with subtests.test(key=key, text=text):
            at = f"spots.1.{key}"
            found = told(at, {at: text})
            assert found.grade is grade
            assert found.line.startswith("STOP. ") is (grade is Grade.STOP)
            if grade is not Grade.GOOD:
                assert "spots.1.another_spot" in [way.target for way in found.ways]
    lab = told("spots.1.contamination", {"spots.1.contamination": "fuel"})
    assert lab.ways[0].target == "spots.1.soil_lab"


def test_hours_of_sun_are_told_as_the_planting_takes_them(told):
    # Common practice, no source: 6 hours and 3 hours.
    for hours, words in (("6", "6 hours or more"), ("5.9", "3 to 6"), ("2.9", "less than 3")):
        found = told("spots.1.sun_hours", {"spots.1.sun_hours": hours})
        assert found.grade is Grade.GOOD and words in found.line


def test_a_storm_gone_in_48_hours_is_fine_and_a_longer_one_is_not(told):
    # The 48 h limit of the Royal Horticultural Society.
    seen = {"storm_seen": "yes"}
    assert told("storm_empty_after", seen, storm_empty_after="48 h").line.startswith("Fine: 48 h")
    slow = told("storm_empty_after", seen, storm_empty_after="49 h")
    assert slow.line == "TOO LONG: 49 h, 48 h at the most." and slow.grade is Grade.FIX


def test_the_rate_tells_the_pond_the_garden_and_whether_it_fits(told, sized):
    room = {"room_length": "60 ft", "room_width": "40 ft"}
    fits = told("known_rate", {**sized, **room})
    # 570 sq ft of weighted roof and a pond of 6 in, by the shape of the report's own rate.
    assert fits.line.startswith("The soil takes 0.25 in/h: pond 6 in, garden ")
    assert fits.line.endswith("It fits.") and fits.grade is Grade.GOOD
    assert "fits" not in told("known_rate", sized).line
    tight = told("known_rate", {**sized, "room_length": "18 ft", "room_width": "13 ft"})
    assert tight.grade is Grade.FIX and tight.line.startswith(
        "The soil takes 0.25 in/h: pond 6 in."
    )
    assert "What fits the outline holds 0.9" in tight.line


def test_a_test_tells_how_fast_the_water_drops(told, hole):
    readings = "10:30 7 in; 11:00 6 in; 11:30 5 in; 12:00 4 in"
    texts = hole("round", "8 in", "8 in", readings.replace("; ", "\n"), read_as="left")
    found = told("holes.1.readings", texts)
    assert found.grade is Grade.GOOD and found.line.startswith("Water drops 2 in/h: pond ")


def test_less_than_the_least_pond_stops(told, sized):
    # Ours: under 3 in (75 mm) cannot be dug level enough. By the report alone, 48 h of the rate.
    for units, enough, little in (
        ("us", "0.063 in/h", "0.055 in/h"),
        ("metric", "1.7 mm/h", "1.4 mm/h"),
    ):
        texts = {**sized, "units": units, "rain_depth": "1/2 in"}
        assert told("known_rate", {**texts, "known_rate": enough}).grade is not Grade.STOP
        bad = told("known_rate", {**texts, "known_rate": little})
        assert bad.grade is Grade.STOP and bad.key == "pond_depth"
        assert bad.line.startswith("STOP: the soil empties ") and len(bad.line) <= 60
        assert ("3 in needed" if units == "us" else "75 mm needed") in bad.line


def test_a_deep_pond_by_small_children_is_told_at_the_pond(told, sized):
    # Ours: 6 in (150 mm) is deep enough near small children.
    texts = {**sized, "children": "yes", "known_rate": "1 in/h"}
    assert told("deepest_pond", {**texts, "deepest_pond": "6 in"}).grade is Grade.GOOD
    deep = told("deepest_pond", {**texts, "deepest_pond": "7 in"})
    assert deep.grade is Grade.FIX and deep.key == "pond_and_children"
    assert deep.ways[0].target == "deepest_pond"


def test_a_room_and_a_floor_too_small_by_two_feet_say_so(told, sized, plan_of, level_spot):
    wide = {**sized, "room_length": "60 ft", "room_width": "60 ft", "floor_length": "20 ft"}
    wide["floor_width"] = "10 ft"
    fits = told("floor_length", wide)
    assert fits.line.startswith("It fits: ")
    length, width = plan_of({**level_spot, **wide}).size.over_all
    for at, which, side in (("room_length", "long", length), ("room_width", "wide", width)):
        exact = math.ceil(magnitude(side, "in"))
        assert told("floor_width", {**wide, at: f"{exact} in"}).key != "room"
        less = magnitude(side, "in") - 23.5
        bad = told("floor_width", {**wide, at: f"{less:.1f} in"})
        assert bad.line == f"2 ft too {which} for the outline." and bad.grade is Grade.FIX
        assert [way.target for way in bad.ways] == ["room_length", WAYS_OUT, KEEP]


def test_room_for_no_garden_at_all_is_told_though_there_is_no_size(told, sized):
    bad = told("room_width", {**sized, "room_length": "20 ft", "room_width": "5 ft"})
    assert bad.grade is Grade.FIX and "too narrow" in bad.line
    assert bad.ways[0].target == "room_length"


def test_words_follow_the_country_and_the_units(told):
    us = told("spots.1.overflow_to", {"spots.1.overflow_to": "neighbour"})
    uk = told("spots.1.overflow_to", {"spots.1.overflow_to": "neighbour"}, country="uk")
    assert "a neighbor" in us.line and "a neighbour" in uk.line
    metric = told("children", {"children": "yes"}, units="metric")
    assert "150 mm" in metric.line and "6 in" not in metric.line


def test_nothing_is_told_of_what_is_not_known(plan_of):
    plan = plan_of({})
    assert [verdict(plan, step) for step in route.steps(plan.answers) if step.number] == [
        None for step in route.steps(plan.answers) if step.number
    ]
    assert stops(plan) == ()


def plan_findings(plan, number):
    """Return by key the worst grade that the plan finds, of the garden and of one spot."""
    worst = {}
    spot = next((one for one in plan.checks.spots if one.number == number), None)
    chosen = ground.chosen_spot(plan.answers).scope
    spots = spot.findings if spot else ()
    garden = plan.findings
    if spot and chosen and chosen[1] != number:
        own = {one.key for one in spot.findings}
        garden = [one for one in garden if one.key not in own]
    for one in (*spots, *garden):
        if one.key not in worst or RANK[one.grade] > RANK[worst[one.key]]:
            worst[one.key] = one.grade
    return worst


def keys_at(step):
    return [key.format(n=step.number) for key in verdict_rows.TABLE[step.question].keys]


def assert_not_better(plan):
    chosen = ground.chosen_spot(plan.answers).scope
    for step in route.steps(plan.answers):
        found = verdict(plan, step)
        if found is None:
            continue
        number = step.number if step.question.group == "spots" else (chosen or ("", 1))[1]
        grades = plan_findings(plan, number)
        for key in keys_at(step):
            if key in grades:
                assert RANK[found.grade] >= RANK[grades[key]], (step.address, key, found)
        if found.key in grades and step.question.key != "mark_distance":
            assert found.grade is grades[found.key], (step.address, found)
        asked = {one.address for one in route.steps(plan.answers)} | {KEEP, WAYS_OUT}
        assert {way.target for way in found.ways} <= asked
    for stop in stops(plan):
        assert stop.grade is Grade.STOP and stop.line.startswith("STOP here")
        assert KEEP not in [way.target for way in stop.ways] and stop.ways


@pytest.mark.parametrize(
    "name", ["finished_us.yaml", "finished_metric.yaml", "usual_us.yaml", "halfway_soak_test.yaml"]
)
def test_a_verdict_is_never_better_than_the_plan_of_a_sample(name):
    assert_not_better(sample(name))


@pytest.mark.parametrize("place", range(GARDENS))
def test_a_verdict_is_never_better_than_the_plan_of_a_garden_by_chance(
    place, chance, given, plan_of
):
    assert_not_better(plan_of(chance(place).answers(given())))


def test_every_stop_before_a_hole_names_the_page_and_the_other_spot(plan_of, level_spot):
    steep = plan_of({**level_spot, "spots.1.slope_drop": "18 in"})
    (stop,) = stops(steep)
    assert stop.line == "STOP here: slope 15 %. Move, or try another spot."
    assert [way.target for way in stop.ways] == ["spots.1.slope_run", "spots.1.another_spot", LEARN]


def test_no_test_only_to_learn_by_a_bank_a_slide_a_septic_system_or_a_well(
    subtests, plan_of, level_spot
):
    for texts in (
        near("slope_crest", "10 ft"),
        near("septic", "10 ft"),
        near("septic", "30 ft", septic_uphill="yes"),
        near("well", "10 ft"),
        {"spots.1.unstable_ground": "slides"},
        {"spots.1.unstable_ground": "karst"},
        {"spots.1.contamination": "fuel"},
        {"permission": "no"},
    ):
        with subtests.test(texts=texts):
            # A steep slope too, which alone may be tested to learn.
            plan = plan_of({**level_spot, **texts, "spots.1.slope_drop": "18 in"})
            found = stops(plan)
            assert len(found) == 2
            assert LEARN not in [way.target for stop in found for way in stop.ways]
    for texts in (
        {"spots.1.stands_after_rain": "often"},
        {"spots.1.overflow_to": "building"},
        {"spots.1.wet_season_depth": "20 in"},
        near("basement", "4 ft"),
    ):
        with subtests.test(texts=texts):
            (stop,) = stops(plan_of({**level_spot, **texts}))
            assert stop.ways[-1].target == LEARN


def test_a_stop_of_a_spot_not_chosen_is_not_told_before_the_hole(plan_of, level_spot):
    other = {a.replace("spots.1", "spots.2"): t for a, t in level_spot.items()}
    texts = {**level_spot, "spots.1.slope_drop": "18 in", "spots.1.another_spot": "yes", **other}
    assert stops(plan_of({**texts, "chosen_spot": "2"})) == ()
    (stop,) = stops(plan_of({**texts, "chosen_spot": "1"}))
    assert "chosen_spot" in [way.target for way in stop.ways]


def test_what_is_typed_has_the_verdict_that_it_will_have_when_kept(subtests, chance, clock):
    plan = sample("finished_us.yaml")
    _ = plan.findings
    luck = chance(5)
    for step in route.steps(plan.answers):
        if step.question.key not in WITH_VERDICT or not verdict_rows.TABLE[step.question].live:
            continue
        with subtests.test(address=step.address):
            text = luck.text(step, plan.answers)
            typed = preview(plan, step, text)
            if typed is None:
                continue
            taken = step.question.take(text, step.view(plan.answers))
            later = plan.with_answers(plan.answers.with_text(step.address, taken.kept))
            kept = verdict(later, step)
            assert kept._replace(ways=()) == typed


def test_words_that_cannot_be_read_have_no_verdict_and_change_nothing(plan_of, level_spot):
    plan = plan_of({**level_spot, **near("basement", "12 ft")})
    step = step_at(plan, "spots.1.basement_distance")
    for text in ("", "12 fo", "don't know yet", "5000 ft"):
        assert preview(plan, step, text) is None
    assert preview(plan, step, "8 ft").line == "TOO NEAR: 8 ft, 10 ft needed."
    assert verdict(plan, step).line.startswith("Fine: 12 ft")


def test_a_preview_reads_the_words_and_makes_one_finding(subtests, calls_of, chance):
    plan = sample("finished_us.yaml")
    whole = calls_of(lambda: sample("finished_us.yaml").findings)
    _ = plan.findings
    luck, seen = chance(3), 0
    for step in route.steps(plan.answers):
        with subtests.test(address=step.address):
            text, found = luck.text(step, plan.answers), []
            calls = calls_of(lambda a=step, t=text, f=found: f.append(preview(plan, a, t)))
            seen += found != [None]
            assert calls < whole / 30
    assert seen > 15


def test_a_preview_of_the_spot_makes_no_later_record(monkeypatch):
    made = []
    plan = sample("finished_us.yaml")  # nothing of it is worked out
    for name in RECORDS:
        work = getattr(Plan, name)

        def noted(self, name=name, work=work):
            made.append(name)
            return work.__get__(self, Plan)

        monkeypatch.setattr(Plan, name, property(noted))
    for key, text in (("slope_drop", "9 in"), ("overflow_line_distance", "8 ft")):
        assert preview(plan, step_at(plan, f"spots.1.{key}"), text) is not None
    assert made == []
    assert plan.findings and set(made) == set(RECORDS) - {"rough"}


def test_every_finding_that_has_ways_is_decided_at_a_question():
    assert set(WAYS) <= set(DECIDED_AT)
