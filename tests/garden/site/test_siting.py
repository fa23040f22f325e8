"""What each thing found about the spot means."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st
from measures import ft, inch

from interview.garden.site.setbacks import (
    FIND_PACE,
    SETBACKS,
    distance_words,
    left_of,
    setback_finding,
    setback_limits,
)
from interview.garden.site.siting import (
    Below,
    SoilTest,
    StandingWater,
    below_floor_finding,
    contamination_finding,
    karst_finding,
    slide_finding,
    slope_finding,
    slope_limits,
    slope_unknown,
    standing_water_finding,
    verdict,
)
from interview.garden.site.slope import ground_slope, level_finding, table_depth
from interview.garden.site.surroundings import (
    Destination,
    Owner,
    Rules,
    children_finding,
    overflow_finding,
    ownership_finding,
    permit_finding,
)
from interview.quantities.evidence import Brief, Grade
from interview.quantities.units import magnitude, quantity

EVERY = list(SETBACKS.values())


def slope_of(percent):
    return ground_slope(ft(100), ft(percent))


def test_a_level_turned_end_for_end_averages_out():
    slope = ground_slope(ft(15), inch(9.25), inch(9))
    assert slope.percent == pytest.approx(5.069, abs=5e-4)
    assert magnitude(slope.level_error, "in") == pytest.approx(0.125)
    assert magnitude(slope.standard_error, "percent") == pytest.approx(0.04009, abs=5e-6)


def test_one_reading_is_less_sure():
    once = ground_slope(ft(15), inch(9.25))
    assert once.percent == pytest.approx(5.139, abs=5e-4)
    assert magnitude(once.standard_error, "percent") == pytest.approx(0.04009 * 2**0.5, rel=1e-3)
    assert once.level_error is None
    assert "Turn" in level_finding(once).change


def test_readings_in_millimeters_give_the_slope():
    slope = ground_slope(quantity(4.5, "m"), quantity(212, "mm"), quantity(204, "mm"))
    assert slope.percent == pytest.approx(4.622, abs=5e-4)


def test_the_difference_of_two_readings_is_told_in_the_units_asked_for():
    slope = ground_slope(ft(15), inch(9), inch(10))
    assert "differ by 1 in." in level_finding(slope).said
    assert "differ by 25 mm." in level_finding(slope, metric=True).said


def test_a_bank_as_steep_as_two_to_one_is_still_a_slope():
    assert ground_slope(ft(2), ft(4)).percent == pytest.approx(200)


def test_readings_far_apart_are_to_be_repeated():
    assert level_finding(ground_slope(ft(15), inch(9), inch(9.5))).grade is Grade.GOOD
    assert level_finding(ground_slope(ft(15), inch(9), inch(9.6))).grade is Grade.FIX


def test_ground_that_rises_is_refused():
    with pytest.raises(ValueError, match="swap the two stakes"):
        ground_slope(ft(15), inch(-2))
    with pytest.raises(ValueError, match="run"):
        ground_slope(ft(0), inch(2))
    with pytest.raises(ValueError, match="far more"):
        ground_slope(ft(1), ft(3))


def test_slope_limits(subtests):
    for percent, slides, grade in [
        (0, False, Grade.GOOD),
        (8, False, Grade.GOOD),
        (8.01, False, Grade.FIX),
        (12, False, Grade.FIX),
        (12.01, False, Grade.STOP),
        (10, True, Grade.FIX),
        (10.01, True, Grade.STOP),
    ]:
        with subtests.test(percent=percent, slides=slides, grade=grade):
            assert slope_finding(slope_of(percent), slides).grade is grade


def test_a_distance_over_the_limit_is_told_with_the_cautious_one():
    item = SETBACKS["foundation_deep"]
    enough = setback_finding(item, ft(20))
    assert enough.change == "" and enough.brief.line.startswith("Fine:") and not enough.brief.near
    near = setback_finding(item, ft(12.51))
    assert near.change.startswith("Move it 7 ft 6 in farther away") and near.brief.near
    steep = slope_finding(slope_of(13)).brief
    assert steep.line == steep.stop and steep.line.startswith("STOP here: slope")
    assert slope_finding(slope_of(5)).brief.line.endswith("fine, up to 8 %.")
    assert slope_finding(slope_of(5)).brief.stop.startswith("STOP here")
    assert slope_finding(slope_of(11)).grade is Grade.FIX


def test_exactly_at_the_limit_is_good_and_just_under_is_not(subtests):
    for key in list(SETBACKS):
        with subtests.test(key=key):
            item = SETBACKS[key]
            usual, cautious = setback_limits(item)
            assert setback_finding(item, usual).grade is Grade.GOOD
            assert setback_finding(item, cautious).change == ""
            under = setback_finding(item, usual - inch(0.1))
            assert under.grade is item.below
            assert under.grade is not Grade.GOOD
            assert "1 in farther" in under.change


def test_metric_limits_are_their_own_round_numbers(subtests):
    for key in list(SETBACKS):
        with subtests.test(key=key):
            item = SETBACKS[key]
            at = quantity(item.usual.meters, "m")
            assert setback_finding(item, at, metric=True).grade is Grade.GOOD
            assert setback_finding(item, at - quantity(1, "mm"), metric=True).grade is item.below
            assert item.usual.meters == pytest.approx(item.usual.feet * 0.3048, rel=0.03)


def test_what_too_near_means(subtests):
    for key, grade in [
        ("foundation_deep", Grade.STOP),
        ("septic", Grade.STOP),
        ("septic_uphill", Grade.STOP),
        ("well", Grade.STOP),
        ("buried_line", Grade.STOP),
        ("property_line", Grade.FIX),
        ("pavement", Grade.FIX),
        ("retaining_wall", Grade.FIX),
        ("tree", Grade.FIX),
    ]:
        with subtests.test(key=key, grade=grade):
            assert setback_finding(SETBACKS[key], ft(0.5)).grade is grade


def test_a_local_rule_for_a_slab_leaves_no_other_stop():
    found = setback_finding(SETBACKS["foundation_slab"], ft(4), local_rule=ft(6))
    assert found.grade is Grade.FIX


def test_what_the_garden_reaches_out_is_taken_off_the_distance():
    item = SETBACKS["foundation_deep"]
    assert magnitude(left_of(ft(3), ft(4)), "ft") == 0
    assert setback_finding(item, ft(12), reaches_out=ft(2)).grade is Grade.GOOD
    near = setback_finding(item, ft(12), reaches_out=ft(3))
    assert near.grade is Grade.STOP
    assert near.change == "Move it 1 ft farther away."
    assert "only 9 ft is left" in near.said
    assert "is left" not in setback_finding(item, ft(12), reaches_out=ft(0)).said


def test_a_distance_is_told_less_and_a_move_more_than_it_is():
    assert distance_words(inch(119.9), metric=False) == "9 ft 11 1/2 in"
    assert distance_words(inch(0.4), metric=False, up=True) == "1 in"
    assert distance_words(quantity(2999, "mm"), metric=True) == "2.99 m"
    assert distance_words(quantity(2991, "mm"), metric=True, up=True) == "3 m"


def test_a_slab_allows_five_feet_only_with_care():
    slab = SETBACKS["foundation_slab"]
    assert setback_finding(slab, ft(5)).grade is Grade.FIX
    assert setback_finding(slab, ft(4.9)).grade is Grade.STOP


def test_between_usual_and_cautious_is_good_with_a_note():
    found = setback_finding(SETBACKS["well"], ft(60))
    assert found.grade is Grade.GOOD
    assert found.change == "Move it 40 ft farther away to meet the cautious distance too."


def test_the_change_says_how_far_to_move():
    found = setback_finding(SETBACKS["foundation_deep"], ft(6.5))
    assert found.change == "Move it 3 ft 6 in farther away."


def test_a_local_rule_replaces_the_usual_distance_and_is_named():
    item = SETBACKS["foundation_deep"]
    assert setback_finding(item, ft(6), local_rule=ft(5)).grade is Grade.GOOD
    far = setback_finding(item, ft(12), local_rule=ft(15))
    assert far.grade is Grade.STOP
    assert "local rule" in far.limit
    assert "in place of the usual 10 ft" in far.limit
    with pytest.raises(ValueError, match="leave it empty"):
        setback_finding(item, ft(12), local_rule=ft(0))


def test_a_tall_wall_asks_for_its_own_height():
    wall = SETBACKS["retaining_wall"]
    assert setback_finding(wall, ft(4), wall_height=ft(2)).grade is Grade.GOOD
    assert setback_finding(wall, ft(4), wall_height=ft(5)).grade is Grade.FIX
    usual, cautious = setback_limits(wall, wall_height=ft(12))
    assert magnitude(usual, "ft") == magnitude(cautious, "ft") == 12
    for height in (-1, float("nan")):
        with pytest.raises(ValueError, match="zero or more"):
            setback_limits(wall, wall_height=ft(height))


def test_a_wide_tree_asks_for_its_drip_line():
    tree = SETBACKS["tree"]
    assert setback_finding(tree, ft(12), drip_line=ft(8)).grade is Grade.GOOD
    assert setback_finding(tree, ft(12), drip_line=ft(18)).grade is Grade.FIX
    assert setback_finding(tree, ft(18), drip_line=ft(18)).change.startswith("Move it 5 ft farther")
    _, cautious = setback_limits(tree, metric=True, drip_line=quantity(6, "m"))
    assert magnitude(cautious, "m") == pytest.approx(7.5)


def test_a_distance_not_measured_is_to_be_measured():
    assert setback_finding(SETBACKS["well"], None).grade is Grade.FIX
    with pytest.raises(ValueError, match="zero or more"):
        setback_finding(SETBACKS["well"], ft(-1))


@given(st.sampled_from(EVERY), st.floats(0, 300), st.floats(0, 300), st.booleans())
def test_farther_is_never_worse(item, one, other, metric):
    rank = [Grade.GOOD, Grade.FIX, Grade.STOP]
    near, far = sorted((one, other))
    grades = [rank.index(setback_finding(item, ft(x), metric=metric).grade) for x in (near, far)]
    assert grades[0] >= grades[1]


@given(st.sampled_from(EVERY), st.floats(0, 300))
def test_the_unit_of_the_measure_does_not_matter(item, feet):
    in_meters = setback_finding(item, quantity(feet * 0.3048, "m"))
    assert in_meters.grade is setback_finding(item, ft(feet)).grade


@given(st.sampled_from(EVERY), st.floats(0, 300), st.booleans())
def test_moving_as_told_is_enough(item, feet, metric):
    usual, _ = setback_limits(item, metric)
    found = setback_finding(item, ft(feet), metric=metric)
    if found.grade is Grade.GOOD:
        return
    words = found.change.removeprefix("Move it ").split(" farther")[0].split()
    moved = ft(feet)
    for number, unit in zip(words[::2], words[1::2], strict=True):
        moved = moved + quantity(float(number), unit)
    assert magnitude(moved, "ft") >= magnitude(usual, "ft") - 1e-6


def test_water_two_feet_below_the_dug_bottom_is_enough():
    dug = inch(12)
    assert below_floor_finding(Below.WATER, inch(36), dug).grade is Grade.GOOD
    shallow = below_floor_finding(Below.WATER, inch(35), dug)
    assert shallow.grade is Grade.STOP
    assert shallow.change.startswith("Dig 1 in less deep")
    assert below_floor_finding(Below.BEDROCK, inch(48), dug).change == ""
    half = below_floor_finding(Below.WATER, inch(50.5), dug)
    assert half.said.startswith("There is 38.5 in between the dug bottom and wet-season water")
    by_mm = below_floor_finding(
        Below.WATER, quantity(1300.4, "mm"), quantity(300, "mm"), metric=True
    )
    assert by_mm.said.startswith("There is 1000 mm between")
    assert slope_limits() == (8, 12) and slope_limits(slide_prone=True) == (8, 10)
    between = below_floor_finding(Below.BEDROCK, inch(47), dug)
    assert between.change == "36 in would be cautious." and between.brief.near
    nearly = below_floor_finding(Below.BEDROCK, inch(36.04), dug)
    assert nearly.said == "There is 24 in between the dug bottom and bedrock."
    at_once = below_floor_finding(Below.WATER, inch(6), dug)
    assert at_once.said.endswith("lies 0 in below the dug bottom.")


def test_too_near_to_water_or_rock_is_told_by_its_own_name_and_source():
    dug = inch(12)
    water, rock = (below_floor_finding(what, inch(35), dug) for what in Below)
    assert (water.key, rock.key) == ("water_below", "bedrock_below")
    assert water.source != rock.source == below_floor_finding(Below.BEDROCK, None, dug).source
    assert water.brief == Brief(
        "TOO NEAR: 23 in under the dig, 24 in needed.",
        "STOP here: water 23 in under the dig, 24 in needed.",
        "Dig 1 in less deep",
    )
    assert below_floor_finding(Below.WATER, inch(6), dug).brief.line.startswith("TOO NEAR: 0 in")
    assert water.limit == "24 in below the dug bottom, cautious 36 in"
    by_mm = [quantity(one, "mm") for one in (890, 300)]
    found = below_floor_finding(Below.BEDROCK, *by_mm, metric=True)
    assert found.limit == "600 mm below the dug bottom, cautious 1000 mm"
    # 225 mm less leave the 75 mm of the shallowest pond, 235 mm less do not.
    for depth, said in ((675, "Dig 230 mm less deep, or"), (665, "Choose another spot.")):
        deep = [quantity(one, "mm") for one in (depth, 300 if depth == 665 else 305)]
        assert below_floor_finding(Below.WATER, *deep, metric=True).change.startswith(said)


def test_what_is_not_known_or_not_good_is_told_with_what_to_do():
    above, untested = (
        contamination_finding(True, test) for test in (SoilTest.ABOVE, SoilTest.NOT_TESTED)
    )
    assert above.change == "Choose another spot. Do not dig or soak water in."
    assert untested.change == "Have the soil tested. Do not dig or soak water in."
    assert above.grade is untested.grade is Grade.STOP
    often, some = (
        standing_water_finding(how) for how in (StandingWater.OFTEN, StandingWater.SOMETIMES)
    )
    assert (often.grade, often.change) == (Grade.STOP, "Choose a higher spot.")
    assert some.grade is Grade.FIX and some.change.startswith("Test the soil here with care")
    assert slope_unknown().change.startswith("Measure it with a string")
    assert slope_unknown(paced=True).change == FIND_PACE
    assert setback_finding(SETBACKS["well"], None).said == (
        "The distance from the drinking-water well to the garden is not measured yet."
    )


def test_nobody_is_told_to_dig_less_deep_than_no_garden_could_be():
    # Of 12 in 9 in less leave the 3 in of the shallowest pond; 10 in less leave no garden.
    for depth, said in ((27, "Dig 9 in less deep, or choose"), (26, "Choose another spot.")):
        found = below_floor_finding(Below.WATER, inch(depth), inch(12))
        assert found.grade is Grade.STOP and found.change.startswith(said), found.change
        assert found.brief is not None and said.startswith(found.brief.way)


def test_metric_depths_below_the_floor():
    dug = quantity(300, "mm")
    at = below_floor_finding(Below.BEDROCK, quantity(900, "mm"), dug, metric=True)
    under = below_floor_finding(Below.BEDROCK, quantity(890, "mm"), dug, metric=True)
    assert (at.grade, under.grade) == (Grade.GOOD, Grade.STOP)
    assert under.change.startswith("Dig 10 mm")


def test_surroundings(subtests):
    for found, grade in [
        (standing_water_finding(StandingWater.NEVER), Grade.GOOD),
        (standing_water_finding(StandingWater.SOMETIMES), Grade.FIX),
        (standing_water_finding(StandingWater.OFTEN), Grade.STOP),
        (standing_water_finding(None), Grade.FIX),
        (contamination_finding(False), Grade.GOOD),
        (contamination_finding(True, SoilTest.CLEAR), Grade.GOOD),
        (contamination_finding(True, SoilTest.ABOVE), Grade.STOP),
        (contamination_finding(True, SoilTest.NOT_TESTED), Grade.STOP),
        (contamination_finding(True), Grade.STOP),
        (contamination_finding(None), Grade.FIX),
        (karst_finding(True), Grade.STOP),
        (karst_finding(False), Grade.GOOD),
        (slide_finding(True), Grade.STOP),
        (slide_finding(None), Grade.FIX),
        (overflow_finding(Destination.OWN_LAWN), Grade.GOOD),
        (overflow_finding(Destination.STREET), Grade.GOOD),
        (overflow_finding(Destination.UNDECIDED), Grade.FIX),
        (overflow_finding(None), Grade.FIX),
        (overflow_finding(Destination.NEIGHBOR), Grade.STOP),
        (overflow_finding(Destination.BUILDING), Grade.STOP),
        (overflow_finding(Destination.STEEP_BANK), Grade.STOP),
        (permit_finding(Rules.CLEAR), Grade.GOOD),
        (permit_finding(Rules.PENDING), Grade.FIX),
        (permit_finding(None), Grade.FIX),
        (permit_finding(Rules.REFUSED), Grade.STOP),
        (ownership_finding(Owner.OWN), Grade.GOOD),
        (ownership_finding(None), Grade.FIX),
        (ownership_finding(Owner.NO), Grade.STOP),
        (children_finding(False), Grade.GOOD),
        (below_floor_finding(Below.WATER, None, inch(10)), Grade.FIX),
        (slope_unknown(), Grade.FIX),
    ]:
        with subtests.test(found=found, grade=grade):
            assert found.grade is grade
            assert found.said.endswith(".")
            if grade is not Grade.GOOD:
                assert found.change.endswith(".")


def test_children_are_kept_from_the_open_hole():
    assert "Cover or fill" in children_finding(True).change
    assert "Cover or fill" in children_finding(None).change
    assert children_finding(True).said == "Small children use the yard."
    assert children_finding(None).said == "Small children may use the yard."
    assert children_finding(True).brief.line.startswith("Fine: cover the hole")
    assert permit_finding(Rules.PENDING).change == "Wait for the answer."
    assert permit_finding(Rules.NOT_ASKED).change.startswith("Ask the building office")


def test_the_slope_table_admits_its_gaps(subtests):
    for percent, words in [
        (3.9, "3 to 5 in"),
        (4.0, "no row covers 4 to 5 %"),
        (4.6, "no row covers 4 to 5 %"),
        (5.0, "6 to 7 in"),
        (7.0, "6 to 7 in"),
        (7.5, "no row covers 7 to 8 %"),
        (8.0, "8 in"),
        (12.0, "8 in"),
        (12.5, "another spot"),
    ]:
        with subtests.test(percent=percent, words=words):
            assert words in table_depth(slope_of(percent))


def test_the_verdict_is_the_worst_in_any_order():
    good = karst_finding(False)
    fix = karst_finding(None)
    stop = karst_finding(True)
    for order in itertools.permutations([good, fix, stop]):
        assert verdict(order) is Grade.STOP
    assert verdict([good, fix, good]) is Grade.FIX
    assert verdict([good]) is Grade.GOOD
    assert verdict([]) is Grade.FIX
