"""Where the garden does not fit: what could be done, each with its numbers."""

from __future__ import annotations

import pytest

from interview.garden.remedies import ways_out
from interview.garden.size.basin import Basin, rain_held
from interview.quantities.units import magnitude, quantity
from interview.sheet.report import plan_text


@pytest.fixture
def cramped(plan_of, sized, level_spot):
    """The worked garden in a room of 16 by 11 ft."""

    def make(**more):
        room = {"room_length": "16 ft", "room_width": "11 ft"}
        return plan_of({**sized, **level_spot, **room, **more})

    return make


def by_label(plan):
    return {way.label: way for way in ways_out(plan)}


def found(plan, start):
    return next(way for label, way in by_label(plan).items() if label.startswith(start))


def test_the_room_holds_what_was_worked_by_hand(cramped):
    """A rim of 16 x 11 ft leaves a floor of 11 x 6 ft, 47.25 cubic feet: 0.76 in of rain."""
    way = found(cramped(), "Take what the room holds")
    assert magnitude(way.garden.floor_length, "ft") == pytest.approx(11)
    assert magnitude(way.garden.floor_width, "ft") == pytest.approx(6)
    assert magnitude(way.garden.volume, "ft**3") == pytest.approx(47.25)
    assert magnitude(way.rain_held, "in") == pytest.approx(0.7601, abs=5e-5)
    assert way.fits


def test_every_way_says_what_it_holds_whole_of_the_ladder(cramped):
    plan = cramped()
    for way in ways_out(plan):
        assert 0 <= way.storms_held <= len(plan.storms.ladder)
        assert way.record_share is None
    assert found(plan, "Take").storms_held < found(plan, "2 beds side by side").storms_held


def test_the_numbers_of_a_way_are_those_of_the_plan_it_leads_to(cramped, plan_of, sized):
    way = found(cramped(deepest_pond="5 in", known_rate="1 in/h"), "Let the pond be as deep")
    deep = f"{magnitude(way.garden.depth, 'in')} in"
    other = plan_of({**sized, "deepest_pond": deep, "known_rate": "1 in/h"})
    assert way.garden == other.size.garden
    assert way.rain_held == other.size.rain_held


def test_a_deeper_pond_is_offered_only_where_the_soil_empties_it(cramped):
    assert "Let the pond be as deep as the soil allows" not in by_label(
        cramped(deepest_pond="12 in", known_rate="0.25 in/h")
    )
    assert "Let the pond be as deep as the soil allows" in by_label(
        cramped(deepest_pond="5 in", known_rate="0.25 in/h")
    )


def test_two_beds_each_fit_the_room_and_share_the_water(cramped):
    plan = cramped()
    way = found(plan, "2 beds side by side")
    assert way.beds == 2 and way.fits
    served = quantity(magnitude(plan.survey.catchment.weighted, "ft**2") / 2, "ft**2")
    assert way.rain_held == rain_held(way.garden, served)
    assert way.rain_held >= quantity(1, "in")
    assert magnitude(way.garden.rim_length, "ft") <= 16 + 1e-9
    row = found(plan, "2 beds one below")
    assert (row.garden, row.rain_held) == (way.garden, way.rain_held)


def test_beds_are_added_until_the_rain_is_held(cramped):
    plan = cramped(room_length="12 ft", room_width="8 ft")
    counts = [way.beds for way in ways_out(plan) if "beds" in way.label]
    held = [way.rain_held >= quantity(1, "in") for way in ways_out(plan) if "beds" in way.label]
    assert counts == sorted(counts) and counts[0] == 2
    assert counts[-1] == 4 or held[-1]
    assert not any(held[:-2])


def test_a_way_fits_where_its_rim_is_no_larger_than_the_room(cramped):
    plan = cramped()
    for way in ways_out(plan):
        long, wide = (
            magnitude(side, "ft") for side in (way.garden.rim_length, way.garden.rim_width)
        )
        assert way.fits == (long <= 16 + 1e-6 and wide <= 11 + 1e-6), way.label
    assert {way.fits for way in ways_out(plan)} == {True, False}


def test_half_of_the_water_needs_less_garden(cramped):
    plan = cramped()
    way = found(plan, "Send half")
    assert way.beds == 1
    needed = magnitude(plan.size.needed_basin.rim_area, "ft**2")
    assert magnitude(way.garden.rim_area, "ft**2") < 0.75 * needed


def test_a_floor_of_ones_own_does_not_stand_in_the_way(cramped):
    plan = cramped(floor_length="5 ft", floor_width="3 ft")
    assert by_label(plan) == by_label(cramped())


def test_the_share_of_the_record_is_told_for_each_way(cramped, tmp_path):
    days = "".join(f"2021-01-{day:02},{(0, 1.8, 0.2)[day % 3]}\n" for day in range(1, 32))
    (tmp_path / "rain.csv").write_text(f"date,rain\n{days}")
    plan = cramped(has_rain_record="yes", rain_record="rain.csv", rain_record_unit="in")
    shares = {label: way.record_share for label, way in by_label(plan).items()}
    assert all(0 < share <= 1 for share in shares.values())
    assert shares["Take what the room holds"] == pytest.approx(plan.storms.real_years.share_held)
    assert shares["2 beds side by side, the water shared out"] > shares["Take what the room holds"]
    assert "of the record's runoff" in " ".join(plan_text(plan).split())


# A room that is no rectangle


def test_a_room_given_as_an_area_holds_what_fits_into_it(plan_of, sized, level_spot):
    plan = plan_of({**sized, **level_spot, "room_area": "176 sq ft"})
    assert plan.size.too_big
    assert magnitude(plan.size.garden.rim_area, "ft**2") == pytest.approx(176)
    assert 0.6 < magnitude(plan.size.rain_held, "in") < 0.9
    assert found(plan, "Take what the room holds").garden == plan.size.garden
    assert "The room was given as an area" in plan_text(plan)


def test_a_room_of_ample_area_changes_nothing(plan_of, sized, level_spot):
    free = plan_of({**sized, **level_spot})
    plan = plan_of({**sized, **level_spot, "room_area": "1000 sq ft"})
    assert not plan.size.too_big and plan.size.garden == free.size.garden


def test_a_room_too_small_for_any_floor_is_refused_in_a_sentence(plan_of, sized, level_spot):
    for room in ({"room_area": "20 sq ft"}, {"room_length": "3 ft", "room_width": "3 ft"}):
        sheet = " ".join(plan_text(plan_of({**sized, **level_spot, **room})).split())
        assert "for the sloping sides and a floor, so find more room" in sheet
        assert "Traceback" not in sheet


# Beds of the plan


@pytest.mark.parametrize("how", ["side_by_side", "in_a_row"])
def test_two_beds_are_counted_in_the_soil_the_shopping_and_the_plants(
    plan_of, sized, level_spot, figure, how
):
    one = plan_of({**sized, **level_spot})
    two = plan_of({**sized, **level_spot, "beds": "2", "beds_how": how})
    assert figure("bed_count", two) == 2
    assert isinstance(two.size.garden, Basin)
    assert figure("rain_held", two) >= 1
    bank = two.earth.level_berm.cut + two.earth.mulch_soil
    assert figure("soil_dug_total", two) == pytest.approx(2 * magnitude(bank, "ft**3"))
    edging = {item.name: item.amount for item in two.earth.shopping}["edging"]
    around = 4 * (
        magnitude(two.size.garden.rim_length, "ft") + magnitude(two.size.garden.rim_width, "ft")
    )
    assert magnitude(edging, "ft") == pytest.approx(around)
    assert magnitude(two.size.garden.rim_area, "ft**2") < magnitude(
        one.size.garden.rim_area, "ft**2"
    )
    sheet = plan_text(two)
    assert "2 equal beds" in sheet and "2 beds of" in sheet


def test_the_last_notch_of_a_row_passes_the_flow_of_the_whole(plan_of, sized, level_spot):
    texts = {**sized, **level_spot, "beds": "2"}
    side = plan_of({**texts, "beds_how": "side_by_side"})
    row = plan_of({**texts, "beds_how": "in_a_row"})
    assert magnitude(row.earth.notch.flow, "ft**3/s") == pytest.approx(
        2 * magnitude(side.earth.notch.flow, "ft**3/s")
    )


def test_a_large_garden_is_split_with_sizes(plan_of, sized, level_spot, roof):
    big = {**sized, **roof("rectangle 60 ft by 40 ft"), **level_spot}
    plan = plan_of(big)
    assert "split" in {finding.key for finding in plan.findings}
    assert any(way.beds == 2 for way in ways_out(plan))
    assert "WAYS OUT" in plan_text(plan)
    split = plan_of({**big, "beds": "3"})
    assert "split" not in {finding.key for finding in split.findings}


def test_a_garden_that_fits_has_no_ways_out_on_its_sheet(plan_of, sized, level_spot):
    assert "WAYS OUT" not in plan_text(plan_of({**sized, **level_spot}))
