"""Where the garden does not fit: what could be done, each with its numbers."""

from __future__ import annotations

import math

import pytest

from interview.garden.form.basin import Basin
from interview.garden.remedies import ways_out
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


@pytest.mark.parametrize(
    ("shape", "volume", "held"), [("rectangle", 47.25, 0.7601), ("rounded", 41.13, 0.6855)]
)
def test_the_room_holds_what_was_worked_by_hand(cramped, shape, volume, held):
    """A rim of 16 x 11 ft leaves a floor of 11 x 6 ft; on level lawn nothing lies outside it.

    With square corners that holds 0.5 (66 + 1.5 x 17 + 4 / 3 x 2.25) ft3 of what falls on 570 and
    176 ft2. With round ends, 58.27 ft2 and 28.85 ft round it, it holds 29.14 + 10.82 + 1.18 ft3,
    and the rim is 58.27 + 72.12 + 6.25 pi = 150.03 ft2.
    """
    way = found(cramped(floor_shape=shape), "Make it as large as the room allows")
    # The largest floor is sought to 0.005 ft, and never over the room.
    assert 0 <= 11 - magnitude(way.garden.floor_length, "ft") < 0.005
    assert 0 <= 6 - magnitude(way.garden.floor_width, "ft") < 0.005
    assert magnitude(way.garden.volume, "ft**3") == pytest.approx(volume, abs=0.05)
    assert magnitude(way.rain_held, "in") == pytest.approx(held, abs=0.0007)
    assert way.fits


def test_every_way_says_what_it_holds_whole_of_the_ladder(cramped):
    plan = cramped()
    for way in ways_out(plan):
        assert 0 <= way.storms_held <= len(plan.storms.ladder)
        assert way.record_share is None
    assert (
        found(plan, "Make it as large").storms_held < found(plan, "2 beds side by side").storms_held
    )


def test_the_numbers_of_a_way_are_those_of_the_plan_it_leads_to(
    cramped, plan_of, sized, level_spot
):
    way = found(cramped(deepest_pond="5 in", known_rate="1 in/h"), "Let the pond be as deep")
    deep = f"{magnitude(way.garden.depth, 'in')} in"
    other = plan_of({**sized, **level_spot, "deepest_pond": deep, "known_rate": "1 in/h"})
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
    # On level lawn the rain on all inside the rim falls into the garden.
    comes = 570 / 2 + magnitude(way.garden.rim_area, "ft**2")
    held = 12 * magnitude(way.garden.volume, "ft**3") / comes
    assert magnitude(way.rain_held, "in") == pytest.approx(held)
    assert way.rain_held >= quantity(1, "in")
    assert magnitude(way.garden.rim_length, "ft") <= 16 + 1e-9
    # On level lawn no water runs on to the next bed; where the ground falls it does.
    assert not any("one below the other" in label for label in by_label(plan))
    slope = cramped(**{"spots.1.slope_drop": "3 in"})
    row, way = found(slope, "2 beds one below"), found(slope, "2 beds side by side")
    assert (row.garden, row.rain_held) == (way.garden, way.rain_held)


def test_no_pond_is_offered_that_is_too_deep_where_children_play(cramped):
    lifted = "Let the pond be as deep as the soil allows"
    for children, deepest in (("yes", 6), ("no", 12)):
        way = by_label(cramped(deepest_pond="5 in", known_rate="1 in/h", children=children))[lifted]
        assert magnitude(way.garden.depth, "in") == pytest.approx(deepest)


def test_beds_are_added_until_the_rain_is_held(cramped):
    plan = cramped(room_length="12 ft", room_width="8 ft")
    counts = [way.beds for way in ways_out(plan) if "beds" in way.label]
    held = [way.rain_held >= quantity(1, "in") for way in ways_out(plan) if "beds" in way.label]
    assert counts == sorted(counts) and counts[0] == 2
    assert counts[-1] == 4 or held[-1]
    assert not any(held[:-2])


def test_a_way_fits_where_all_that_is_built_is_no_larger_than_the_room(cramped):
    level = cramped()
    for way in ways_out(level):
        long, wide = (
            magnitude(side, "ft") for side in (way.garden.rim_length, way.garden.rim_width)
        )
        assert way.fits == (long <= 16 + 1e-6 and wide <= 11 + 1e-6), way.label
    assert {way.fits for way in ways_out(level)} == {True, False}
    sloping = cramped(**{"spots.1.slope_drop": "6 in"})
    for way in ways_out(sloping):
        # What is built is longer than the rim, by the berm's top and its outside at either end.
        long, wide = (magnitude(side, "ft") for side in way.over_all)
        assert long > magnitude(way.garden.rim_length, "ft") + 1, way.label
        assert way.fits == (long <= 16 + 1e-6 and wide <= 11 + 1e-6), way.label
    assert {way.fits for way in ways_out(sloping)} == {True, False}


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
    assert shares["Make it as large as the room allows"] == pytest.approx(
        plan.storms.real_years.share_held
    )
    assert (
        shares["2 beds side by side, the water shared out"]
        > shares["Make it as large as the room allows"]
    )
    assert "of the record's runoff" in " ".join(plan_text(plan).split())


# A room that is no rectangle


def test_a_room_given_as_an_area_holds_what_fits_into_it(plan_of, sized, level_spot):
    plan = plan_of({**sized, **level_spot, "room_area": "176 sq ft"})
    assert plan.size.too_big
    # Worked by hand, twice as long as wide with round ends: a rim 2.5 ft outside the floor has
    # (1 + pi / 4) W2 + (2 + pi) 2.5 W + 6.25 pi = 176 ft2, so W = 6.427 ft, sought to 0.005 ft.
    assert 0 <= 6.4272 - magnitude(plan.size.garden.floor_width, "ft") < 0.0051
    assert magnitude(plan.size.garden.rim_area, "ft**2") <= 176
    # V = 73.75 x 0.5 + 33.05 x 0.375 + 9 pi x 0.5^3 / 3 = 50.45 ft3, of 570 + 176 ft2.
    assert magnitude(plan.size.rain_held, "in") == pytest.approx(0.811, abs=0.002)
    assert found(plan, "Make it as large as the room allows").garden == plan.size.garden
    assert "You gave the room as an area" in plan_text(plan)


def test_a_room_of_ample_area_changes_nothing(plan_of, sized, level_spot):
    free = plan_of({**sized, **level_spot})
    plan = plan_of({**sized, **level_spot, "room_area": "1000 sq ft"})
    assert not plan.size.too_big and plan.size.garden == free.size.garden


def test_a_room_too_small_for_any_floor_is_refused_in_a_sentence(plan_of, sized, level_spot):
    for room in ({"room_area": "20 sq ft"}, {"room_length": "3 ft", "room_width": "3 ft"}):
        sheet = " ".join(plan_text(plan_of({**sized, **level_spot, **room})).split())
        assert "for the sloping sides and a floor, so find more room" in sheet
        assert "Traceback" not in sheet


def test_steeper_sides_are_offered_down_to_two_to_one_and_near_children_with_a_word(
    cramped, plan_of, sized, level_spot
):
    for side, children, offered, said in (
        ("2:1", "no", False, False), ("3:1", "no", True, True),
        ("3:1", "yes", True, False), ("4:1", "yes", True, True),
    ):  # fmt: skip
        plan = cramped(side_slope=side, children=children)
        ways = [one for label, one in by_label(plan).items() if label.startswith("Steeper")]
        assert bool(ways) is offered, side
        if ways:
            assert ("3:1 is safer where children play" in ways[0].note) is (children == "yes")
        change = next(one.change for one in plan.findings if one.key == "rain_held")
        assert "Find more room" in change and ("sides steeper" in change) is said, (side, children)
        for room in ({"room_area": "20 sq ft"}, {"room_length": "3 ft", "room_width": "3 ft"}):
            small = plan_of({**sized, **level_spot, **room, "side_slope": side})
            assert ("or steeper sides" in small.size.no_bed_fits) is (side != "2:1")


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
    garden = two.size.garden
    long, wide = (magnitude(one, "ft") for one in (garden.floor_length, garden.floor_width))
    # On level lawn the hole is an upright one of 10 in and 5 in more for mulch and compost below
    # the floor; below the sides, 2.5 ft wide, a wedge and 3 in for mulch.
    floor, around = (long - wide) * wide + math.pi * wide**2 / 4, 2 * (long - wide) + math.pi * wide
    sides = around * 2.5 * (10 / 2 + 3) / 12 + math.pi * 2.5**2 * (10 / 3 + 3) / 12
    bank = floor * 15 / 12 + sides
    assert figure("soil_dug_total", two) == pytest.approx(2 * bank, rel=1e-3)
    mulch = {item.name: item.amount for item in two.earth.shopping}["mulch"]
    rim = floor + around * 2.5 + math.pi * 2.5**2
    assert magnitude(mulch, "ft**3") == pytest.approx(2 * rim * 3 / 12)
    assert magnitude(two.size.garden.rim_area, "ft**2") < magnitude(
        one.size.garden.rim_area, "ft**2"
    )
    sheet = plan_text(two)
    assert "2 equal beds" in sheet and "2 beds, each" in sheet


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
    assert "\nOPTIONS\n" in plan_text(plan)
    split = plan_of({**big, "beds": "3"})
    assert "split" not in {finding.key for finding in split.findings}


def test_a_garden_that_fits_has_no_ways_out_on_its_sheet(plan_of, sized, level_spot):
    assert "\nOPTIONS\n" not in plan_text(plan_of({**sized, **level_spot}))


def test_every_way_names_the_answers_that_it_changes(cramped):
    """Taken together they lead to the garden that the way promises."""
    plan = cramped()
    for way in ways_out(plan):
        if way.label.startswith("Send half"):
            assert way.takes is None
            continue
        taken = plan.answers
        for address, text in way.takes.items():
            taken = taken.with_text(address, text)
        garden = plan.with_answers(taken).size
        if way.fits:
            same = magnitude(way.garden.floor_length, "ft")
            assert magnitude(garden.garden.floor_length, "ft") == pytest.approx(same)
        assert garden.bed_count == way.beds


def test_no_two_ways_of_one_size_fit_and_do_not(cramped):
    """An outline of one's own is no way out: the ways are of the shape the plan would draw."""
    own = "0 ft, 0, 0\n4 ft, 2 ft, 2 ft\n9 ft, 2 ft, 3 ft\n13 ft, 0, 0"
    for more in ({}, {"floor_shape": "own", "floor_outline": own}, {"floor_length": "8 ft"}):
        found = ways_out(cramped(**more))
        assert len(found) > 4
        for one in found:
            for two in found:
                if one.beds == two.beds and one.over_all == two.over_all:
                    assert one.fits == two.fits, (one.label, two.label)
