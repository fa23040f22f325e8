"""Parts that bring the water from the downspout to the garden."""

import pytest

from interview.garden.earth.materials import spout_parts, wished_parts
from interview.quantities.units import magnitude, quantity


def counted(items):
    return {item.name: item.pieces for item in items}


def test_each_downspout_is_cut_turned_held_and_splashed():
    """Global Green, web page: cut, elbow, secured, splash block. How many: by hand."""
    assert counted(spout_parts(2, None)) == {"elbow": 2, "strap": 2, "splash stone": 2}
    assert counted(wished_parts(2)) == {"diverter": 2, "cap": 2}
    assert counted(wished_parts(1)) == {"diverter": 1, "cap": 1}


def test_a_roof_without_a_downspout_and_paving_have_no_parts():
    assert spout_parts(0, None) == wished_parts(0) == ()


def test_a_pipe_is_bought_in_whole_pieces_with_what_joins_it():
    """Common practice: pieces of 10 ft or 3 m; a wye for every downspout after the first."""
    parts = spout_parts(3, quantity(20.5, "ft"))
    assert counted(parts) == {
        "pipe": 3, "adapter": 3, "strap": 3, "bend": 3, "wye": 2, "guard": 1,
    }  # fmt: skip
    assert magnitude(parts[0].buy, "ft") == pytest.approx(30)
    assert "wye" not in counted(spout_parts(1, quantity(20, "ft")))
    assert counted(spout_parts(1, quantity(6.0, "m"), metric=True))["pipe"] == 2
    assert magnitude(spout_parts(1, quantity(3.1, "m"), metric=True)[0].buy, "m") == 6
    assert counted(spout_parts(1, quantity(0.9, "ft")))["pipe"] == 1
    assert "pipe" not in counted(spout_parts(1, quantity(0, "ft")))
    for spouts in (1, 2):
        note = spout_parts(spouts, quantity(9, "ft"))[0].note
        assert note.startswith("smooth drain pipe")
        assert note.endswith("measure it") == (spouts == 2)


def test_the_parts_follow_the_way_the_water_takes(plan_of, sized, level_spot):
    def names(**more):
        plan = plan_of({**sized, **level_spot, "spout_distance": "24 ft", **more})
        return counted(item for item in plan.earth.shopping if item.piece is not None)

    two = {"surfaces.1.gutter_outlets": "3", "surfaces.1.outlets_here": "2"}
    for way in ("channel", "lawn"):
        assert names(**two, water_by=way) == {"elbow": 2, "strap": 2, "splash stone": 2}
    assert names(water_by="pipe", spout_fall="20 in") == {
        "pipe": 3, "adapter": 1, "strap": 1, "bend": 1, "guard": 1,
    }  # fmt: skip
    # Too little fall for a pipe: none is bought.
    assert "pipe" not in names(water_by="pipe", spout_fall="2 in")
    paving = {"surfaces.1.surface_kind": "paved"}
    assert names(**paving) == {}


def test_an_upper_roof_has_no_downspout_of_its_own(plan_of, sized, roof, level_spot):
    upper = roof("rectangle 10 ft by 10 ft", number=2, falls_on="roof 1")
    texts = {**sized, **level_spot, **upper, "surfaces.1.another_surface": "yes"}
    assert plan_of(texts).earth.spouts_here == 1
    beside = roof("rectangle 10 ft by 10 ft", number=2)
    assert plan_of({**texts, **beside, "surfaces.2.falls_on": "no"}).earth.spouts_here == 2


def test_what_is_by_wish_is_counted_only_where_it_has_a_price(plan_of, sized, level_spot):
    plain = plan_of({**sized, **level_spot}).earth
    assert counted(plain.by_wish) == {"diverter": 1, "cap": 1}
    wished = plan_of({**sized, **level_spot, "prices": "diverter 30 each"}).earth
    assert counted(wished.by_wish) == {"cap": 1}
    assert "diverter" in counted(wished.shopping) and "diverter" not in counted(plain.shopping)


def test_each_part_is_a_figure(plan_of, sized, level_spot, figure):
    two = {"surfaces.1.gutter_outlets": "3", "surfaces.1.outlets_here": "2"}
    texts = {**sized, **level_spot, **two, "spout_distance": "24 ft", "spout_fall": "20 in"}
    every = {
        "channel": {"elbow": 2, "strap": 2, "splash_stone": 2, "diverter": 2, "cap": 2},
        "pipe": {"pipe": 3, "adapter": 2, "strap": 2, "bend": 2, "wye": 1, "guard": 1,
                 "diverter": 2, "cap": 2},
    }  # fmt: skip
    for way, parts in every.items():
        plan = plan_of({**texts, "water_by": way})
        assert figure("spouts_here", plan) == 2
        for key in {**every["channel"], **every["pipe"]}:
            assert figure(f"{key}_pieces", plan) == parts.get(key, "none"), (way, key)
