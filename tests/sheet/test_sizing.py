"""What the sheet says of size, storms and earth: the figures, the drawings and the levels."""

from __future__ import annotations

import re

import pytest

from interview.garden import summary
from interview.garden.earth.overflow import pipe_choice
from interview.garden.figures import BY_KEY, find
from interview.garden.pictures import levels, plan_picture, pond_pictures, section_picture
from interview.quantities.shown import PLAIN, sides_words
from interview.quantities.units import magnitude, quantity
from interview.sheet.report import plan_text
from interview.sheet.size import ways


@pytest.fixture
def sheet(plan_of, sized, level_spot):
    def make(**more):
        texts = {**sized, **level_spot, "spots.1.slope_drop": "6 in", **more}
        plan = plan_of({**texts, "spots.1.downhill_direction": "s"})
        return plan, plan_text(plan)

    return make


def part(text, title):
    """The lines of one part of the sheet."""
    lines = text.splitlines()
    begin = lines.index(title)
    rest = lines[begin + 2 :]
    ends = [place for place, line in enumerate(rest) if line and set(line) == {"-"}]
    return rest[: ends[0] - 1] if ends else rest


def test_the_sheet_stays_within_its_columns(subtests, sheet):
    for beds in ["1", "3"]:
        for units in ["us", "metric"]:
            with subtests.test(units=units, beds=beds):
                _, text = sheet(units=units, beds=beds, beds_how="in_a_row", water_by="pipe")
                assert [line for line in text.splitlines() if len(line) > 76] == []


def test_recommended_area_and_rule_of_thumb_stand_in_one_line(sheet):
    _, text = sheet()
    line = next(one for one in text.splitlines() if one.startswith("Recommended area, rule"))
    assert "140 ft²" in line and "100 ft²" in line
    assert "What decides the size:" in text


@pytest.mark.parametrize("beds", ["1", "2"])
def test_one_sentence_says_which_of_the_areas_is_the_garden(beds, sheet):
    plan, text = sheet(beds=beds)
    said = " ".join(" ".join(part(text, "IN SHORT")).split())
    over, floor = plan.size.over_all, plan.size.garden
    size = f"{sides_words(*over, False)} over all, with a flat floor of "
    assert size + sides_words(floor.floor_length, floor.floor_width, False) in said
    # A pond with upright walls holds its area times its depth.
    feet = magnitude(floor.volume, "ft**3") * int(beds) / magnitude(floor.depth, "ft")
    told = float(re.search(r"the work of an? ([\d,]+) ft² pond", said)[1].replace(",", ""))
    assert 0.9 * feet < told <= feet
    assert ("A garden " if beds == "1" else "2 beds, each ") + size in said


@pytest.mark.parametrize(
    ("work", "said"),
    [("80 ft²", "an 80"), ("8.5 m²", "an 8.5"), ("11 m²", "an 11"), ("18 m²", "an 18"),
     ("110 ft²", "a 110"), ("1.8 m²", "a 1.8"), ("100 ft²", "a 100")],
)  # fmt: skip
def test_the_size_is_told_as_it_is_spoken(sheet, monkeypatch, work, said):
    plan, _ = sheet()
    monkeypatch.setattr(summary, "figure_words", lambda _plan, _key: work)
    assert f"the work of {said} " in summary.size_sentence(plan)


def test_a_storm_held_easily_is_said_to_be(sheet):
    quick = {"rate_from": "report", "known_rate": "2 in/h", "known_rate_by": "invented"}
    plan, text = sheet(**quick, how_large="generous")
    assert plan.storms.held_storm.peak < 0.5 * plan.size.garden.depth
    said = " ".join(" ".join(part(text, "STORMS")).split())
    assert "Held easily: the water stands" in said and "see lean" in said
    slow, text = sheet(**{**quick, "known_rate": "0.3 in/h"})
    assert slow.storms.held_storm.peak > 0.5 * slow.size.garden.depth
    assert "Held easily" not in text


def test_a_pond_well_deeper_than_the_storm_needs_says_why(sheet):
    why = "Why the pond is deeper than that: the water stands"
    small = {"floor_length": "12 ft", "floor_width": "6 ft"}
    for floor, told in (({}, True), (small, False)):
        plan, text = sheet(**floor)
        part_full = plan.storms.held_storm.peak / plan.size.garden.depth
        assert (float(part_full) <= 0.85) == told
        assert (why in " ".join(text.split())) == told


def test_the_range_names_what_drives_it(sheet):
    said = " ".join(part(sheet()[1], "DEPTH AND SIZE"))
    assert "Range of the area, from the survey:" in said
    assert "measure that again" in " ".join(said.split())


def test_the_same_area_is_told_alike_wherever_it_stands(sheet):
    plan, _ = sheet()
    low, high, dug, sod, inside, mulched = (
        find(BY_KEY[key], plan).shown(plan.metric)
        for key in (
            "area_low", "area_high", "footprint_area", "sod_lifted", "inside_area", "mulched_area",
        )
    )  # fmt: skip
    assert f"{low} to {high};" in " ".join(part(plan_text(plan), "DEPTH AND SIZE"))
    assert (dug, inside) == (sod, mulched)


def test_the_plan_is_drawn_with_its_sizes(sheet):
    plan, text = sheet()
    drawn = "\n".join(part(text, "PEGGING OUT"))
    assert plan_picture(plan).title in drawn
    for words in ("level floor", "full pond", "overflow notch", "over all ", "downhill"):
        assert words in drawn, words


def test_the_section_is_drawn_with_its_levels(sheet):
    plan, text = sheet()
    drawn = part(text, "DIGGING")
    joined = "\n".join(drawn)
    assert section_picture(plan).title in joined
    for words in ("finished floor", "old ground", "full pond", "crest", "mulch"):
        assert words in joined, words
    table = drawn[next(p for p, line in enumerate(drawn) if line.startswith("Point")) :]
    rows = {line[:40].strip(): line[40:] for line in table[1 : 1 + len(levels(plan))]}
    assert set(rows) == {row.point for row in levels(plan)}
    assert "6 in" in rows["Overflow: full pond, top of its stone"]


def test_the_pond_of_the_storm_is_drawn_against_time_with_the_day(sheet):
    plan, text = sheet()
    drawn = "\n".join(part(text, "STORMS"))
    assert pond_pictures(plan)[0].title in drawn
    assert "24 h" in drawn and "full pond" in drawn


def test_hours_under_water_are_told_for_floor_side_and_rim_once_and_again(sheet):
    plan, text = sheet()
    said = part(text, "STORMS")
    floor = next(line for line in said if line.strip().startswith("floor"))
    side = next(line for line in said if line.strip().startswith("half way"))
    rim = next(line for line in said if line.strip().startswith("edge of the full pond"))
    hours = [
        [float(word) for word in line.replace(" h", "").split()[-2:]] for line in (floor, side, rim)
    ]
    held = plan.storms.zone_hours
    assert hours[0][0] == pytest.approx(magnitude(held.floor, "h"), rel=0.05)
    assert hours[1][0] == pytest.approx(magnitude(held.side, "h"), rel=0.05)
    assert hours[0][0] > hours[1][0] >= hours[2][0]
    assert all(again >= once - 1e-9 for once, again in hours)


def test_the_hours_with_the_floor_alone_are_told_as_the_longest(sheet, figure):
    plan, text = sheet(floor_length="15 ft", floor_width="7 ft")
    short, long = figure("storm_hours_on_floor", plan), figure("storm_hours_floor_only", plan)
    assert long > short + 1
    said = " ".join(" ".join(part(text, "STORMS")).split())
    assert (
        f"Water stands on the floor for {PLAIN.write(short)} to {PLAIN.write(long)} hours" in said
    )
    assert f"{PLAIN.write(long)} if it soaks into the level floor alone" in said


def test_the_same_storm_again_is_told(sheet, figure):
    plan, text = sheet(rain_depth="1.25 in", floor_length="15 ft", floor_width="7 ft")
    assert figure("again_peak", plan) > figure("storm_peak", plan)
    assert figure("again_hours_on_floor", plan) > figure("storm_hours_on_floor", plan)
    assert "Deepest pond, if that storm comes again:" in text


@pytest.mark.parametrize(
    ("goes", "words"),
    [("own_lawn", "goes over my own lawn."), ("undecided", "not decided where")],
)
def test_where_the_overflow_goes_is_told(sheet, goes, words):
    _, text = sheet(**{"spots.1.overflow_to": goes})
    assert words in " ".join(text.split())


def test_water_of_a_row_of_beds_goes_to_the_bed_below(sheet):
    _, text = sheet(beds="2", beds_how="in_a_row")
    assert "From each notch the water runs to the bed below" in " ".join(text.split())


def test_the_stone_below_the_notch_has_its_size(sheet):
    # By hand: crest 10 in over the floor and the floor 4 in under the lawn at 5 %, so the top of
    # the berm, 1 ft, ends 8.1 in over the lawn; 3:1 to the lawn is 2.382 ft; and 1 ft beyond.
    said = " ".join(sheet()[1].split())
    assert "beyond its foot: 4 ft 4 1/2 in long, 1 ft wide and 6 in thick" in said


# The pipe


def test_a_usual_roof_needs_a_pipe_of_four_inches(sheet, figure):
    plan, text = sheet(water_by="pipe", spout_distance="18 ft", spout_fall="13 in")
    assert figure("pipe_width", plan) == pytest.approx(4)
    assert figure("pipe_flow", plan) == pytest.approx(0.1683, abs=0.00005)
    said = " ".join(text.split())
    assert "Pipe: 4 in inside, smooth, falling 1/8 in to the foot or more" in said
    assert "Fall of the ground it needs: 12.5 in; there is: 13 in" in said


def test_water_that_comes_another_way_needs_no_pipe(sheet, figure):
    plan, text = sheet(water_by="channel")
    assert figure("pipe_width", plan) == "no pipe"
    assert "Pipe:" not in text


def test_more_water_needs_a_wider_pipe_up_to_the_widest_sold():
    flows = [quantity(number, "ft**3/s") for number in (0.0, 0.15, 0.3, 1.0, 50.0)]
    widths = [pipe_choice(flow).width for flow in flows]
    assert [None if one is None else round(magnitude(one, "in")) for one in widths] == [
        4, 4, 6, 8, None,
    ]  # fmt: skip
    assert magnitude(pipe_choice(flows[1], metric=True).width, "mm") == pytest.approx(100)


def test_a_corrugated_pipe_carries_five_eighths_of_a_smooth_one():
    choice = pipe_choice(quantity(0.1, "ft**3/s"))
    share = magnitude(choice.corrugated, "L/s") / magnitude(choice.smooth, "L/s")
    assert share == pytest.approx(0.015 / 0.024)


def test_ways_that_fit_come_first_and_several_beds_want_a_room_each(plan_of, sized):
    small = plan_of({**sized, "room_length": "16 ft", "room_width": "11 ft"})
    said = [line for line in ways(small) if line.startswith("- ")]
    told = " ".join(" ".join(ways(small)).split())
    assert "(fits where there is room for 2 such beds)" in told
    assert "2 beds, each over all" in told and said
    marks = re.findall(r"\((fits|does not fit)", told)
    assert marks == sorted(marks, reverse=True) and set(marks) == {"fits", "does not fit"}
    large = plan_of({**sized, "surfaces.1.pieces": "rectangle 90 ft, 60 ft"})
    told = " ".join(" ".join(ways(large)).split())
    assert "over all" in told and "(fits" not in told  # no room was given
