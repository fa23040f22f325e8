"""The overflow by the form of the garden, and the buried pipe by one datum."""

from __future__ import annotations

import pytest
from measures import inch, mm

from interview.garden.earth.overflow import (
    MANNING_PIPE,
    allowed_head,
    head_finding,
    notch,
    peak_flow,
    pipe_choice,
    pipe_fall,
    pipe_finding,
    pipe_full_flow,
    weir_head,
    wide_finding,
)
from interview.garden.site.setbacks import SETBACKS, setback_finding
from interview.quantities.evidence import Grade
from interview.quantities.units import magnitude, quantity
from interview.sheet.report import plan_text


def cfs(number):
    return quantity(number, "ft**3/s")


@pytest.mark.parametrize(
    ("rim", "lip", "head"),
    [(2, False, 1), (3, False, 2), (6, False, 2), (1, True, 1), (4, True, 2)],
)
def test_the_rim_sets_the_head(rim, lip, head):
    assert magnitude(allowed_head(inch(rim), lip), "in") == pytest.approx(head)


@pytest.mark.parametrize(
    ("rim", "lip", "head"), [(50, False, 25), (75, False, 50), (150, False, 50), (25, True, 25)]
)
def test_the_rim_sets_the_head_in_metric(rim, lip, head):
    assert magnitude(allowed_head(mm(rim), lip, metric=True), "mm") == pytest.approx(head)


def test_at_a_head_of_an_inch_the_width_is_sixteen_times_the_flow():
    # 1 / (2.6 x (1/12)^1.5) = 15.99, by hand; the weir coefficient is that of HEC-22.
    for lip, rim in ((False, 2), (True, 1)):
        made = notch(cfs(0.4), inch(rim), lip=lip)
        assert magnitude(made.width_needed, "ft") == pytest.approx(16 * 0.4, rel=1e-3)
        assert magnitude(made.width, "ft") == 6.5


def test_a_usual_garden_gets_a_notch_of_two_feet_under_a_rim_of_two_inches():
    # 482.29 ft² of weighted roof and 141 ft² inside the crest in 7 in/h, worked by hand:
    # 0.1010 ft³/s, over 2 ft 0.87 in deep.
    flow = peak_flow(quantity(482.29 + 141.06, "ft**2"), 1.0, quantity(7, "in/h"))
    assert magnitude(flow, "ft**3/s") == pytest.approx(0.1010, rel=5e-4)
    made = notch(flow, inch(2))
    assert magnitude(made.width, "ft") == 2
    assert magnitude(made.head, "in") == pytest.approx(0.87, abs=0.005)
    assert head_finding(made, inch(2)).grade is Grade.GOOD


def test_a_lip_is_three_feet_wide_or_more():
    made = notch(cfs(0.05), inch(1), lip=True)
    assert made.lip and magnitude(made.width, "ft") == 3
    metric = notch(quantity(1, "L/s"), mm(25), lip=True, metric=True)
    assert magnitude(metric.width, "m") == pytest.approx(0.9)


def test_water_over_a_lip_may_rise_to_the_lawn_and_under_a_berm_may_not():
    lip = notch(cfs(16 / 16), inch(1), lip=True)
    assert head_finding(lip, inch(1)).grade is Grade.GOOD
    low = notch(cfs(0.1), inch(1))
    assert head_finding(low, inch(1)).grade is Grade.FIX


def test_no_rim_lets_the_peak_flow_come_within_an_inch_of_the_crest():
    for rim in (2, 2.5, 3, 4, 6, 12):
        for flow in (0.01, 0.1, 0.4, 1.5):
            made = notch(cfs(flow), inch(rim))
            assert magnitude(made.head, "in") <= min(rim - 1, 2) + 1e-9
            again = weir_head(cfs(flow), made.width)
            assert magnitude(made.head, "in") == pytest.approx(magnitude(again, "in"))


def test_a_wide_notch_tells_what_a_higher_rim_would_do():
    made = notch(cfs(0.4), inch(2))
    found = wide_finding(made, inch(2))
    # 0.4 / (2.6 (2/12)^1.5) = 2.26 ft, raised to 2 1/2.
    assert "6 ft 6 in" in found.said and "notch of 2 ft 6 in" in found.change
    assert "3 in above the full pond" in found.change
    assert wide_finding(notch(cfs(0.25), inch(2)), inch(2)) is None
    assert wide_finding(made, inch(3)) is None
    assert wide_finding(notch(cfs(0.4), inch(1), lip=True), inch(1)) is None
    wide = notch(quantity(10, "L/s"), mm(50), metric=True)
    change = wide_finding(wide, mm(50), metric=True).change
    # 0.01 / (1.44 x 0.05^1.5) = 0.62 m, raised to 0.7; under 50 mm it is 1.76 m, raised to 1.8.
    assert change.startswith("With a rim 75 mm above") and "notch of 0.7 m is enough" in change
    narrow = notch(quantity(6.5, "L/s"), mm(50), metric=True)
    assert magnitude(narrow.width, "m") == pytest.approx(1.2)
    assert wide_finding(narrow, mm(50), metric=True) is None
    assert magnitude(wide.width_needed, "m") == pytest.approx(0.01 / (1.44 * 0.025**1.5))
    head = (0.01 / (1.44 * 1.8)) ** (2 / 3)
    assert magnitude(wide.head, "m") == pytest.approx(head)
    # 3 in are more than 75 mm: a rim between the two is still lower than the one that is told.
    assert wide_finding(notch(cfs(1.0), inch(2.96)), inch(2.96)) is not None


def test_the_pipe_of_the_code_table_drains_its_printed_area():
    # A plumbing code's table, read in a second copy: 6 in at 1/8 in to the foot drains 21,400 ft²
    # at 1 in an hour.
    full = pipe_full_flow(inch(6), 1 / 96, MANNING_PIPE.value)
    area = magnitude(full, "ft**3/s") * 43_200
    assert area == pytest.approx(21_400, rel=0.003)


def test_a_four_inch_pipe_at_its_least_fall():
    assert magnitude(pipe_choice(cfs(0.168)).width, "in") == 4
    assert magnitude(pipe_choice(cfs(0.169)).width, "in") == 6


def test_a_covered_pipe_needs_its_cover_its_width_and_its_fall():
    # 6 in of soil, 4.2 in of pipe, 12 ft at 1/8 in: 11.7 in, by hand.
    fall = pipe_fall(quantity(12, "ft"), inch(7), inch(4))
    assert magnitude(fall.needed, "in") == pytest.approx(11.7)
    assert magnitude(fall.available, "in") == pytest.approx(7)
    assert not fall.enough
    found = pipe_finding(fall)
    assert found.grade is Grade.FIX
    assert (
        found.said == "No pipe here, because the ground falls only 7 in and a pipe needs 11.7 in."
    )
    assert found.change == "Use a grass or stone channel."
    assert pipe_fall(quantity(12, "ft"), inch(11.7), inch(4)).enough
    assert not pipe_fall(quantity(12, "ft"), inch(11.6), inch(4)).enough


def test_a_metric_pipe_needs_its_own_round_numbers():
    # 150 + 110 + 4 m / 96.
    fall = pipe_fall(quantity(4, "m"), mm(310), mm(100), metric=True)
    assert magnitude(fall.needed, "mm") == pytest.approx(260 + 4000 / 96)
    assert fall.enough
    assert "mm" in pipe_finding(fall, metric=True).said


@pytest.mark.parametrize(
    ("key", "feet", "grade"),
    [
        ("overflow_building", 10, Grade.GOOD),
        ("overflow_building", 9.9, Grade.STOP),
        ("overflow_outlet", 10, Grade.GOOD),
        ("overflow_outlet", 9.9, Grade.FIX),
        ("overflow_outlet", 0, Grade.FIX),
    ],
)
def test_the_way_of_the_overflow_stays_away(key, feet, grade):
    found = setback_finding(SETBACKS[key], quantity(feet, "ft"))
    assert found.grade is grade
    assert found.said.startswith("The overflow's way is ")


def test_metric_distances_of_the_overflow_are_three_meters():
    near, far = (
        setback_finding(SETBACKS["overflow_building"], quantity(one, "m"), metric=True)
        for one in (2.99, 3.0)
    )
    assert (near.grade, far.grade) == (Grade.STOP, Grade.GOOD)


@pytest.fixture
def here(sized, level_spot):
    """Answers about a garden on level ground, its rim, sides and beds by their defaults."""
    return {key: text for key, text in {**sized, **level_spot}.items() if key != "freeboard"}


def found_at(plan, key):
    return next((one for one in plan.findings if one.key == key), None)


def test_a_file_that_does_not_say_where_the_overflow_comes_near_is_told_so(plan_of, here):
    for key, address in (
        ("overflow_building_distance", "spots.1.overflow_building_distance"),
        ("overflow_outlet_distance", "spots.1.overflow_line_distance"),
    ):
        texts = {one: text for one, text in here.items() if one != address}
        found = found_at(plan_of(texts), key)
        assert found.grade is Grade.FIX
        assert "not measured yet" in found.said
        assert found_at(plan_of({**texts, address: "40 ft"}), key).grade is Grade.GOOD
    near = {**here, "spots.1.overflow_building_distance": "6 ft"}
    assert found_at(plan_of(near), "overflow_building_distance").grade is Grade.STOP


def sheet_of(plan) -> str:
    return " ".join(plan_text(plan).split())


def test_level_lawn_gets_a_lip_and_its_words(plan_of, here):
    plan = plan_of(here)
    made = plan.earth.notch
    assert made.lip and magnitude(made.width, "ft") >= 3
    said = sheet_of(plan)
    assert "The lawn is the rim." in said and "below the lawn" in said
    assert "From the lip the water goes over my own lawn." in said
    assert "stone apron" not in said
    assert "10 ft (3 m) or more from every building" in said


@pytest.mark.parametrize(("drop", "length"), [("1.2 in", 6), ("2.4 in", 0)])
def test_a_lawn_over_the_notch_gets_a_swale(plan_of, here, drop, length):
    # Rule 2 of the floor at 1 % puts the lawn over the notch for about 6 ft, at 2 % nowhere.
    plan = plan_of({**here, "spots.1.slope_drop": drop, "freeboard": "2 in", "side_slope": "2:1"})
    assert not plan.earth.notch.lip
    swale = plan.earth.swale
    assert (swale is not None) == (length > 0)
    if swale is not None:
        assert magnitude(swale, "ft") == pytest.approx(plan.size.lie.swale)
        assert 1 < magnitude(swale, "ft") < 9
        assert found_at(plan, "overflow_swale").change.startswith("Shape a grass swale ")
        assert "grass swale" in sheet_of(plan)


def test_where_no_pipe_can_be_covered_the_sheet_sizes_none(plan_of, here, figure):
    way = {"water_by": "pipe", "spout_distance": "12 ft", "spout_fall": "7 in"}
    plan = plan_of({**here, **way})
    said = sheet_of(plan)
    assert "the ground falls only 7 in and a pipe needs 11.7 in: use a grass" in said
    assert "Pipe:" not in said
    assert figure("pipe_width", plan) == "no pipe: too little fall"
    steep = plan_of({**here, **way, "spout_fall": "14 in"})
    assert "comes out in the open before the bed" in sheet_of(steep)
    assert figure("pipe_width", steep) == pytest.approx(4)
