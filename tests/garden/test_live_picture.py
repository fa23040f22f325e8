"""What is pictured beside a page: from the answers alone, dashed where none is, nothing unasked."""

import pytest

from interview.asking import path, route
from interview.drawing.scene import Ink, Label, Material, Path, Stroke
from interview.garden.live_picture import live_picture
from interview.garden.path import PATH
from interview.garden.scenes import Scene, scene_of

YARD = {
    "spots.1.near_spot": "basement, property_line, tree",
    "spots.1.basement_distance": "25 ft",
    "spots.1.property_line_distance": "3 ft",
}
"""An invented yard; the tree is not measured."""


def pictured(plan_of, address, texts):
    """Return the picture beside the question at ``address``."""
    plan = plan_of(texts)
    place = path.place_of(address, plan.answers, False)
    step = route.step_at(address, plan.answers)
    assert place is not None and step is not None
    return live_picture(plan, place, step)


def words(drawing):
    return [one.text for one in drawing.shapes if isinstance(one, Label)]


def label(drawing, start):
    return next(one for one in drawing.shapes if isinstance(one, Label) and start in one.text)


def dashed(drawing):
    return [one for one in drawing.shapes if isinstance(one, Path) and one.stroke is Stroke.DASHED]


@pytest.mark.parametrize(
    ("key", "scene"),
    [
        ("name", None),
        ("place", None),
        ("water_from", None),
        ("roof_size", Scene.PIECES),
        ("share", Scene.PIECES),
        ("slope", Scene.STRING),
        ("outline", Scene.YARD),
        ("near", Scene.YARD),
        ("tree_distance", Scene.YARD),
        ("local_tree", Scene.YARD),
        ("spout_distance", Scene.YARD),
        ("marks", Scene.YARD),
        ("below", None),
        ("permission", None),
        ("ticket", None),
        ("hole", Scene.HOLE),
        ("timer", Scene.HOLE),
        ("to_learn", None),
        ("usual_bed", Scene.SECTION),
        ("pipe_fall", Scene.SECTION),
        ("peg_out", Scene.ABOVE),
        ("usual_plants", Scene.ABOVE),
        ("the_plan", Scene.ABOVE),
        ("rough_size", Scene.ROOM),
        ("name", None),
        ("storm", None),
    ],
)
def test_what_is_measured_at_a_page_is_what_it_pictures(key, scene):
    page = next(one for one in PATH if one.key == key)
    assert scene_of(path.Place(page, 1)) is scene


def test_without_a_page_nothing_is_pictured():
    assert scene_of(None) is None


def test_the_yard_holds_what_was_ticked_and_nothing_else(plan_of):
    drawing = pictured(plan_of, "spots.1.tree_distance", YARD)
    names = [one for one in words(drawing) if one != "the spot"]
    assert len(names) == 3
    assert {one.split()[0] for one in names} == {"house", "property", "tree"}
    nothing = pictured(plan_of, "spots.1.stands_after_rain", {})
    assert words(nothing) == ["the spot"]


def test_a_distance_that_is_not_known_is_dashed_and_the_one_asked_for_is_marked(plan_of):
    drawing = pictured(plan_of, "spots.1.tree_distance", YARD)
    tree = label(drawing, "tree")
    assert tree.text == "tree ?" and tree.ink is Ink.DUE
    lines = [one for one in drawing.shapes if isinstance(one, Path) and one.ink is Ink.DUE]
    assert [one.stroke for one in lines] == [Stroke.DASHED]
    assert "house 25 ft ✓" in words(drawing)
    # 3 ft is less than any rule asks for; the verdict itself is checked with the setbacks.
    assert label(drawing, "property").text.startswith("property line 3 ft ")
    assert label(drawing, "property").ink in (Ink.LOOK, Ink.STOP)


def test_the_distance_asked_for_stands_in_the_ink_of_its_verdict_and_heavy(plan_of):
    for far, ink in (("2 ft", {Ink.LOOK, Ink.STOP}), ("90 ft", {Ink.GOOD})):
        texts = {**YARD, "spots.1.tree_distance": far, "spots.1.drip_line": "10 ft"}
        drawing = pictured(plan_of, "spots.1.tree_distance", texts)
        assert label(drawing, "tree").ink in ink
        heavy = [one for one in drawing.shapes if getattr(one, "stroke", None) is Stroke.HEAVY]
        assert [one.ink for one in heavy] == [label(drawing, "tree").ink]


def test_the_downspout_is_there_once_it_is_asked_for(plan_of, sized):
    texts = {**sized, **YARD}
    texts.pop("spout_distance", None)
    assert not any("downspout" in one for one in words(pictured(plan_of, "room_length", texts)))
    assert "downspout ?" in words(pictured(plan_of, "spout_distance", texts))
    told = words(pictured(plan_of, "spout_distance", {**texts, "spout_distance": "12 ft"}))
    assert "downspout 12 ft" in told


def test_the_room_is_dashed_until_both_sides_are_measured(plan_of):
    one = pictured(plan_of, "room_width", {"room_length": "30 ft"})
    both = pictured(plan_of, "room_width", {"room_length": "30 ft", "room_width": "16 ft"})
    assert len(dashed(one)) == 1 and not dashed(both)
    assert {"↔ 30 ft", "↕ how far?"} <= set(words(one))
    assert {"↔ 30 ft", "↕ 16 ft"} <= set(words(both))
    assert label(one, "↕").ink is Ink.DUE


def test_the_string_is_dashed_where_nothing_is_typed_and_whole_where_all_is(plan_of):
    none = pictured(plan_of, "spots.1.slope_run", {})
    assert {"how long?", "how much lower?"} <= set(words(none))
    assert label(none, "how long").ink is Ink.DUE
    assert label(none, "how much").ink is Ink.MUTED
    grass = [one for one in none.shapes if getattr(one, "material", None) is Material.GRASS]
    assert not grass
    # String, ground, drop, and the level line that is no measure.
    assert len(dashed(none)) == 4
    texts = {"spots.1.slope_run": "10 ft", "spots.1.slope_drop": "6 in"}
    whole = pictured(plan_of, "spots.1.slope_drop", texts)
    assert len(dashed(whole)) == 1
    # 6 in of 120 in.
    assert {"10 ft", "6 in", "5 % ✓"} <= set(words(whole))
    assert label(whole, "5 %").ink is Ink.GOOD


def test_steeper_ground_is_drawn_steeper_and_level_ground_level(plan_of):
    def fall(drop):
        texts = {"spots.1.slope_run": "10 ft", "spots.1.slope_drop": drop}
        drawing = pictured(plan_of, "spots.1.slope_drop", texts)
        soil = next(one for one in drawing.shapes if one.material is Material.SOIL)
        return soil.points[1][1] - soil.points[2][1]

    assert fall("level") == 0 < fall("1 in") < fall("6 in") < fall("14 in")


def test_the_slope_pictured_is_the_mean_of_the_two_drops_as_the_plan_has_it(plan_of):
    texts = {
        "spots.1.slope_run": "10 ft",
        "spots.1.slope_drop": "7 in",
        "spots.1.slope_drop_turned": "5 in",
    }
    assert label(pictured(plan_of, "spots.1.slope_drop", texts), " %").text.startswith("5 % ")


def test_a_roof_is_dashed_until_its_first_piece_and_then_drawn_to_scale(plan_of, roof):
    texts = roof("rectangle 30 ft by 14 ft")
    empty = {one: text for one, text in texts.items() if not one.endswith(".pieces")}
    before = pictured(plan_of, "surfaces.1.pieces", empty)
    assert words(before) == ["how long?", "how wide?"] and len(dashed(before)) == 1
    after = pictured(plan_of, "surfaces.1.pieces", texts)
    assert {"30 ft", "14 ft"} <= set(words(after))


def test_the_hole_is_dashed_until_it_is_measured(plan_of, located):
    drawing = pictured(plan_of, "holes.1.hole_depth", located)
    assert "not measured yet" in words(drawing) and len(dashed(drawing)) == 1
    texts = {**located, "holes.1.hole_depth": "15 in"}
    drawing = pictured(plan_of, "holes.1.hole_depth", texts)
    assert "15 in deep" in words(drawing)


def test_a_garden_without_a_size_has_no_picture(plan_of):
    plan = plan_of({})
    for key in ("peg_out", "pipe_fall"):
        page = next(one for one in PATH if one.key == key)
        assert live_picture(plan, path.Place(page), None) is None
