"""Lean, usual and generous beside each other, and what else the size has to say."""

from __future__ import annotations

import random
from itertools import pairwise

import pytest

from interview.garden.place import questions as start
from interview.garden.scenarios import LEVERS
from interview.garden.size import questions as bed
from interview.garden.size.answered import resized
from interview.garden.size.basin import footprint_area
from interview.garden.suggest import value_for
from interview.garden.summary import changed_defaults
from interview.garden.three_sizes import easily_enough, floor_is_own, still_caught, three_sizes
from interview.quantities.evidence import Grade
from interview.quantities.units import magnitude
from interview.reading import Refused
from interview.sheet.report import plan_text

ANSWERED = ("side_slope", "length_to_width", "freeboard")


@pytest.fixture
def usual(sized, level_spot):
    """The roof of the sized garden on ground that falls 5 %, nothing else said of the bed."""
    texts = {key: text for key, text in sized.items() if key not in ANSWERED}
    return {
        **texts,
        **level_spot,
        "spots.1.slope_run": "10 ft",
        "spots.1.slope_drop": "6 in",
        "children": "no",
    }


def feet(value):
    return magnitude(value, "ft**2")


def test_lean_is_no_larger_than_usual_and_usual_than_generous(plan_of, usual):
    rng = random.Random(5)
    faults = []
    for _ in range(8):
        drawn = {
            "surfaces.1.pieces": f"rectangle {rng.randint(10, 40)} ft by {rng.randint(8, 30)} ft",
            "known_rate": f"{rng.choice([0.15, 0.3, 0.8, 2.5, 6])} in/h",
            "spots.1.slope_drop": f"{rng.choice([0, 2, 6, 11])} in",
            "floor_shape": rng.choice(["rounded", "oval", "kidney", "rectangle"]),
        }
        rows = three_sizes(plan_of({**usual, **drawn}))
        areas = [feet(row.garden.floor_area) for row in rows]
        held = [magnitude(row.rain_held, "in") for row in rows]
        over_all = [magnitude(row.over_all[0], "ft") for row in rows]
        caught = [row.caught for row in rows]
        for name, values in (
            ("area", areas), ("held", held), ("over all", over_all), ("caught", caught),
        ):  # fmt: skip
            if any(b < a - 1e-9 for a, b in pairwise(values)):
                faults.append((name, values, drawn))
    assert not faults


def test_a_lean_garden_does_not_run_over_in_its_storm_and_has_no_margin(plan_of, usual):
    lean, middle, large = three_sizes(plan_of(usual))
    assert magnitude(lean.spilled, "ft**3") == 0
    assert magnitude(lean.rain_held, "in") < 1 <= magnitude(middle.rain_held, "in")
    assert magnitude(large.rain_held, "in") >= 1.25 - 1e-9
    assert lean.caught < middle.caught < large.caught
    assert magnitude(lean.compost, "ft**3") == 0 < magnitude(middle.compost, "ft**3")


def test_the_three_stand_beside_each_other_on_the_sheet(plan_of, usual):
    sheet = plan_text(plan_of(usual))
    part = sheet.split("LEAN, USUAL, GENEROUS")[1].split("TO TAKE OUTSIDE")[0]
    rows = {line[:25].strip(): line[25:].split("  ") for line in part.splitlines()}
    assert "usual (yours)" in part
    assert rows["floor, wide"][0].endswith("ft") or "in" in rows["floor, wide"][0]
    assert "counts on the soil" in " ".join(part.split())


def test_of_several_beds_the_lengths_are_told_as_those_of_one(plan_of, usual):
    # Soil, plants and cost are of all the beds: beside them a length must say whose it is.
    for beds, label in (("1", "floor, long"), ("2", "a bed's floor, long")):
        part = plan_text(plan_of({**usual, "beds": beds})).split("LEAN, USUAL, GENEROUS")[1]
        assert label in [line[:25].strip() for line in part.splitlines()]


def test_what_is_chosen_is_what_is_drawn(plan_of, usual):
    rows = {row.name: row for row in three_sizes(plan_of(usual))}
    for name, row in rows.items():
        drawn = plan_of({**usual, "how_large": name}).size.garden
        assert drawn.floor_width == row.garden.floor_width


def test_answers_go_before_lean_and_generous(plan_of, usual):
    for name in ("lean", "generous"):
        plan = plan_of({**usual, "how_large": name, "side_slope": "4:1", "freeboard": "5 in"})
        assert plan.size.garden.side_slope == 4
        assert magnitude(plan.size.garden.freeboard, "in") == pytest.approx(5)
    # What was not answered goes by the size, and the sheet promises no more than that.
    left = three_sizes(plan_of(usual))
    assert left[0].garden.side_slope < left[2].garden.side_slope
    said = " ".join(plan_text(plan_of(usual)).split())
    assert "the sides, rim, mulch and compost that you answered" not in said
    assert "is the same in all three; what you left open goes by the size" in said
    pegged = plan_of({**usual, "how_large": "lean", "floor_length": "20 ft", "floor_width": "9 ft"})
    assert magnitude(pegged.size.garden.floor_length, "ft") == 20


def test_a_garden_with_much_to_spare_says_what_less_would_catch(plan_of, usual):
    large = plan_of({**usual, "floor_length": "26 ft", "floor_width": "13 ft"})
    assert easily_enough(large)
    smaller = still_caught(large)
    assert [one.part for one in smaller] == [0.75, 0.5]
    assert 0 < smaller[1].caught <= smaller[0].caught <= 1
    half = resized(large.size.garden, 0.5)
    assert feet(half.floor_area) == pytest.approx(feet(large.size.garden.floor_area) / 2)
    assert "a smaller floor would still catch" in " ".join(plan_text(large).split())
    assert not easily_enough(plan_of(usual))


def test_fast_soil_takes_the_size_for_sand_and_not_that_of_a_still_pond(plan_of, usual):
    fast = plan_of({**usual, "known_rate": "7.9 in/h", "deepest_pond": "8 in"})
    still = plan_of({**usual, "known_rate": "0.3 in/h", "deepest_pond": "8 in"})
    assert fast.size.by_storms and not still.size.by_storms
    assert feet(fast.size.garden.edge_area) < feet(still.size.garden.edge_area)
    # Published for sandy soil and ponds of 8 in: 0.08 of what drains here (see size_factors).
    drains = feet(fast.survey.catchment.drains_here)
    assert feet(fast.size.garden.edge_area) >= 0.08 * drains
    assert fast.size.takes_the_storm(fast.size.garden, fast.size.served)
    assert fast.size.size_governed_by == "the storm and the size for sandy soil"
    held = found(fast)["rain_held"]
    assert held.grade is Grade.GOOD and "If none soaked in, the garden would hold" in held.said
    assert "\nOPTIONS\n" not in plan_text(fast)
    small = plan_of({**usual, "known_rate": "7.9 in/h", "floor_length": "2 ft",
                     "floor_width": "2 ft"})  # fmt: skip
    assert found(small)["rain_held"].grade is Grade.FIX


def test_what_is_assumed_otherwise_than_before_is_said_once(plan_of, usual):
    begun = plan_of(usual)
    said = changed_defaults(begun.answers)
    assert "the sides (3:1 before)" in said and "a rectangle before" in said
    assert said.split(":")[0] in " ".join(plan_text(begun).split())
    answered = {**usual, "side_slope": "3:1", "freeboard": "6 in", "floor_shape": "rectangle"}
    assert changed_defaults(plan_of(answered).answers) == ""
    # What is assumed as it was before is not told as changed.
    pegged = {**usual, "children": "yes", "floor_length": "15 ft"}
    said = changed_defaults(plan_of(pegged).answers)
    assert "the rim" in said and "the sides" not in said and "the shape" not in said
    assert changed_defaults(plan_of({**usual, "how_large": "usual"}).answers) == ""


def test_a_floor_pegged_without_a_shape_is_a_rectangle(plan_of, usual):
    pegged = {**usual, "floor_length": "14 ft", "floor_width": "7 ft"}
    assert feet(plan_of(pegged).size.garden.floor_area) == pytest.approx(98)
    # Worked by hand: 7 x 7 + pi 3.5².
    round_ends = plan_of({**pegged, "floor_shape": "rounded"}).size.garden
    assert feet(round_ends.floor_area) == pytest.approx(87.48, abs=0.01)


def test_an_outline_of_ones_own_is_the_garden(plan_of, usual):
    stations = "0 ft, 0, 0\n4 ft, 4 ft, 3 ft\n10 ft, 4 ft, 3 ft\n14 ft, 0, 0"
    plan = plan_of({**usual, "floor_shape": "own", "floor_outline": stations})
    # Worked by hand: two triangles of 14 ft² and a rectangle of 42 ft².
    assert feet(plan.size.garden.floor_area) == pytest.approx(70)
    assert feet(footprint_area(plan.size.garden, plan.size.ground)) > 70
    assert "your own outline" in plan_text(plan) or "an outline of your own" in plan_text(plan)


def test_a_station_that_cannot_be_is_refused_in_a_sentence(typed, sized):
    session = typed({**sized, "floor_shape": "own"})
    for text, word in (
        ("4 ft, 3 ft", "three lengths"),
        ("0, 1 ft, 1 ft\n0, 2 ft, 1 ft", "farther along"),
        ("0, 1 ft, 1 ft\n900 ft, 2 ft, 1 ft", "too far"),
    ):
        with pytest.raises(Refused, match=word):
            session.offer(session.jump("floor_outline"), text)


# What is found


def found(plan):
    return {one.key: one for one in plan.findings}


def test_a_bed_too_wide_for_its_slope_is_told_a_narrower_one_and_two(plan_of, usual):
    steep = {**usual, "spots.1.slope_drop": "13.2 in",
             "surfaces.1.pieces": "rectangle 60 ft by 45 ft"}  # fmt: skip
    said = found(plan_of(steep))["too_wide"]
    assert "rises" in said.said
    assert "a floor of" in said.change and "two beds" in said.change
    assert "too_wide" not in found(plan_of(usual))


def test_no_bed_is_advised_that_is_cut_as_deep(plan_of, usual):
    """A narrow floor under a deep pond: what makes the cut uphill deep is not its width."""
    deep = {
        **usual, "spots.1.slope_drop": "4.4 in", "deepest_pond": "12 in", "known_rate": "2 in/h",
        "freeboard": "8 in", "floor_length": "20 ft", "floor_width": "4 ft",
    }  # fmt: skip
    plan = plan_of(deep)
    assert plan.size.lie.uphill_cut > 1.5 and plan.size.lie.floor_rise < 0.2
    assert found(plan)["too_wide"].change == "Make the pond shallower, or its rim lower."
    # Nor is a deeper pond then advised for what else is found.
    shed = {
        "surfaces.1.pieces": "rectangle 5 ft by 5 ft",
        "children": "no",
        "deepest_pond": "11 in",
    }
    steep, level = (plan_of({**deep, **shed, "freeboard": one}) for one in ("8 in", "4 in"))
    assert "too_wide" in found(steep) and "deeper" not in found(steep)["own_rain_share"].change
    assert "too_wide" not in found(level) and "deeper" in found(level)["own_rain_share"].change
    shallower = plan_of({**deep, "deepest_pond": "8 in"})
    assert "too_wide" not in found(shallower)


def test_more_rain_on_the_bed_than_from_the_roof_is_told(plan_of, usual):
    shed = {**usual, "surfaces.1.pieces": "rectangle 5 ft by 5 ft"}
    assert "More rain falls on the bed" in found(plan_of(shed))["own_rain_share"].said
    assert "own_rain_share" not in found(plan_of(usual))


def test_a_deeper_pond_is_advised_only_where_it_may_be_deeper(plan_of, usual):
    """Neither against children, nor against the soil, nor more roof where it overflows already."""
    shed = {**usual, "surfaces.1.pieces": "rectangle 5 ft by 5 ft", "children": "no"}

    def change(**more):
        return found(plan_of({**shed, **more}))["own_rain_share"].change

    assert "make the pond deeper" in change(deepest_pond="8 in")
    assert "make the pond deeper" not in change(deepest_pond="8 in", children="yes")
    assert "make the pond deeper" not in change(deepest_pond="8 in", known_rate="0.08 in/h")
    assert "make the pond deeper" not in change(deepest_pond="12 in")
    metric = {"units": "metric", "known_rate": "20 mm/h"}
    for deepest, children, deeper in (("150 mm", "yes", False), ("150 mm", "no", True),
                                      ("300 mm", "no", False)):  # fmt: skip
        said = change(**metric, deepest_pond=deepest, children=children)
        assert ("make the pond deeper" in said) is deeper, (deepest, children)
    # 8 in at 0.2 in/h is 40 h; full at the end of the storm it stands that long after.
    slow = {"deepest_pond": "8 in", "known_rate": "0.2 in/h"}
    assert "make the pond deeper" in change(**slow, storm_hours="8 h")
    assert "make the pond deeper" not in change(**slow, storm_hours="8.5 h")
    assert "send more roof" not in change(**slow, storm_hours="8.5 h")
    tiny = {
        "floor_length": "2 ft",
        "floor_width": "2 ft",
        "side_slope": "1:1",
        "freeboard": "12 in",
    }
    small = change(**tiny, rain_depth="2 in")
    assert "more roof" not in small and "Hold less rain" in small
    assert "more roof" in change(deepest_pond="8 in")
    assert change(deepest_pond="8 in", beds="2") == "Make fewer beds, or smaller ones."
    own = {"floor_shape": "own", "floor_outline": "0 ft, 2 ft, 2 ft\n8 ft, 2 ft, 2 ft"}
    narrow = change(**own, room_length="20 ft", room_width="6 ft")
    assert "shallower" in narrow and "smaller" not in narrow
    # Soil that just empties this pond takes neither a deeper one nor more water.
    slow = change(deepest_pond="6 in", known_rate="0.126 in/h")
    assert slow == "Make the bed smaller."


def test_a_room_counts_from_toe_to_toe(plan_of, usual):
    plan = plan_of(usual)
    lie = plan.size.lie
    wide, long = lie.footprint_width, lie.footprint_length
    fits = {"room_length": f"{long + 1:.0f} ft", "room_width": f"{wide + 1:.0f} ft"}
    assert not plan_of({**usual, **fits}).size.too_big
    # The rim alone would fit into this, its berm does not.
    rim = magnitude(plan.size.garden.rim_width, "ft")
    tight = {"room_length": f"{long:.0f} ft", "room_width": f"{rim + 0.5:.1f} ft"}
    narrower = plan_of({**usual, **tight})
    assert narrower.size.garden.floor_width < plan.size.garden.floor_width


def test_distances_lose_what_the_garden_reaches_beyond_the_edge_they_were_measured_from(
    plan_of, usual
):
    near = {
        **usual,
        "spots.1.near_spot": "slab",
        "spots.1.slab_distance": "12 ft",
    }
    plan = plan_of(near)
    beyond = plan.size.lie.beyond_crest
    assert beyond > 2
    assert magnitude(plan.size.reaches_out, "ft") == pytest.approx(beyond)
    said = [one.said for one in plan.findings if "beyond the place you measured from" in one.said]
    assert said
    # Laid out, and within it: the distance stands as measured.
    laid = plan_of({**near, "room_length": "60 ft", "room_width": "40 ft"})
    assert magnitude(laid.size.reaches_out, "ft") == 0
    assert not [one for one in laid.findings if "beyond where" in one.said]


def test_the_rim_is_low_only_where_both_readings_of_the_slope_call_it_level(plan_of, usual):
    level = plan_of({**usual, "spots.1.slope_drop": "0"})
    assert magnitude(level.size.garden.freeboard, "in") == pytest.approx(1)
    turned = {**usual, "spots.1.slope_drop": "0", "spots.1.slope_drop_turned": "6 in"}
    assert magnitude(plan_of(turned).size.garden.freeboard, "in") == pytest.approx(2)


def test_enter_keeps_a_pegged_floor_the_rectangle_it_was(typed, sized):
    pegged = typed({**sized, "floor_length": "14 ft", "floor_width": "7 ft"})
    assert pegged.offered(pegged.jump("floor_shape")) == "rectangle"
    assert typed(sized).offered(typed(sized).jump("floor_shape")) == "rounded"


def test_a_mark_that_the_berm_comes_near_is_told(plan_of, usual):
    zone = {"country": "us", "state": "mn", "lines_requested": "asked", "lines_answered": "yes"}
    beyond = plan_of(usual).size.lie.beyond_crest
    near = plan_of({**usual, **zone, "mark_distance": f"{beyond + 1:.1f} ft"})
    assert "come within" in found(near)["mark_reach"].said
    assert found(near)["mark_reach"].grade is Grade.FIX
    far = plan_of({**usual, **zone, "mark_distance": f"{beyond + 3:.1f} ft"})
    assert "mark_reach" not in found(far)


def test_less_mulch_and_no_compost_leave_less_soil_over(plan_of, usual):
    plan = plan_of(usual)
    thin = plan.earth.laid_thin
    assert thin is not None
    # Worked by hand: 2 in of compost and 1 in of mulch on the floor, and no more than 1 in of mulch
    # on all the sides, of which the berm's lie on soil that is built.
    floor, inside = feet(plan.size.garden.floor_area), thin.inside_area
    saved = magnitude(plan.earth.cut, "ft**3") - thin.soil.cut
    assert floor * 3 / 12 < saved <= floor * 2 / 12 + inside / 12
    assert "no compost about" in found(plan)["berm_soil"].change
    bare = plan_of({**usual, "mulch_depth": "2 in", "amend": "no"})
    assert bare.earth.laid_thin is None


def test_a_metric_pond_of_150_mm_takes_the_printed_row_of_six_inches_on_fast_soil(plan_of, usual):
    """Sandy soil, ponds of 6 to 7 in: 0.15 of what drains here (see size_factors)."""
    fast = plan_of({**usual, "units": "metric", "known_rate": "200 mm/h", "deepest_pond": "150 mm"})
    drains = feet(fast.survey.catchment.drains_here)
    assert fast.size.fast_soil
    # One row up, ponds of 3 to 5 in, would be 0.19.
    assert 0.15 * drains <= feet(fast.size.garden.edge_area) < 0.16 * drains


def test_where_the_room_takes_no_larger_one_the_table_says_why_generous_holds_less(plan_of, usual):
    tight = {**usual, "room_length": "16 ft", "room_width": "14 ft"}
    held = [magnitude(row.rain_held, "in") for row in three_sizes(plan_of(tight))]
    assert held != sorted(held)
    assert "a garden named larger holds less here" in " ".join(plan_text(plan_of(tight)).split())
    assert "a garden named larger" not in " ".join(plan_text(plan_of(usual)).split())


# A floor pegged out as it was worked out


def as_offered(plan_of, texts):
    """The plan once Enter alone has pegged out the floor that is offered."""
    texts = {"floor_shape": "rounded", **texts}
    plan = plan_of(texts)
    sides = {one.key: value_for(one, plan) for one in (bed.FLOOR_LENGTH, bed.FLOOR_WIDTH)}
    return plan_of({**texts, **sides})


def test_a_floor_taken_as_offered_is_none_of_ones_own(plan_of, usual):
    plan = as_offered(plan_of, usual)
    assert bed.pegged(plan.answers) and not floor_is_own(plan)
    assert floor_is_own(plan_of({**usual, "floor_length": "9 ft", "floor_width": "5 ft"}))


def test_a_floor_taken_as_offered_follows_what_is_tried(plan_of, usual):
    plan = as_offered(plan_of, usual)
    (rain,) = (one for one in LEVERS if one.question is start.RAIN_DEPTH)
    (length,) = (one for one in LEVERS if one.question is bed.FLOOR_LENGTH)
    tried = plan.with_answers(rain.moved(plan, 5))
    assert tried.size.as_worked_out and tried.size.garden.floor_area > plan.size.garden.floor_area
    longer = length.moved(plan, 2)
    assert longer.text(bed.FLOOR_WIDTH) == plan.answers.text(bed.FLOOR_WIDTH)
    own = plan_of({**usual, "floor_length": "9 ft", "floor_width": "5 ft"})
    assert rain.moved(own, 5).text(bed.FLOOR_LENGTH) == "9 ft"


def test_a_floor_that_has_become_too_small_is_told_with_the_one_now_worked_out(plan_of, usual):
    plan = as_offered(plan_of, usual)
    assert found(plan)["rain_held"].grade is Grade.GOOD
    more = plan.with_answers(plan.answers.with_text("rain_depth", "1.5 in"))
    change = found(more)["rain_held"].change
    assert change.startswith("Peg out the floor that the plan has worked out now, ")
    assert "Find more room" not in change


def test_a_floor_that_fits_is_not_called_too_long(plan_of, usual):
    plan = as_offered(plan_of, {**usual, "room_length": "16 ft", "room_width": "11 ft"})
    short = found(plan)["room"].brief.line
    assert short.startswith("What fits the outline holds ") and short.endswith(
        " of the 1 in of rain."
    )
    large = plan_of({**plan.answers.texts, "floor_length": "15 ft"})
    assert "too long for the outline" in found(large)["room"].brief.line
