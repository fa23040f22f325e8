"""The plan and the section of the garden."""

import re
import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from measures import ft, inch

from interview.drawing.canvas import cells
from interview.drawing.scene import Hatch, Path, Stroke
from interview.drawing.vector import svg
from interview.drawing.words import column_width
from interview.garden.earth.above import plan_view
from interview.garden.earth.profile import level_lines, level_table
from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Ground, Sets, lie_of, winged
from interview.garden.planting.section import cross_section
from interview.quantities.units import magnitude, quantity


def joined(lines):
    return " ".join(" ".join(lines).split())


@pytest.fixture
def basin():
    """Floor 15 by 7 ft, pond 6 in, sides 3 in 1, rim 4 in higher: rim 20 by 12 ft."""
    return Basin(ft(15), ft(7), inch(6), 3, inch(4))


def lying(basin, fall=0.08, mulch=3, compost=0, top=12):
    """Return the basin as it lies in ground of this fall; mulch, compost and top in inches."""
    return lie_of(basin, Ground(fall, mulch / 12, compost / 12, top=top / 12))


def plan_of(basin, **more):
    lie = more.pop("lie", None)
    given_ = {"slope_direction": "s", "notch_width": ft(1.5), "spout_distance": ft(22)}
    return plan_view(basin, lie, **(given_ | more))


@pytest.mark.parametrize("columns", [56, 76])
@pytest.mark.parametrize("braille", [False, True])
def test_every_size_of_the_plan_is_written(basin, columns, braille):
    house = [("house", ft(14.5))]
    lines = cells(plan_of(basin, setbacks=house), columns, 24, braille)
    shown = joined(lines).replace("×", "x")
    for words in (
        "rim 20 ft", "rim 12 ft", "floor 15 ft", "floor 7 ft", "full pond 18 ft x 10 ft",
        "overflow notch 1 ft 6 in wide", "22 ft from the downspout", "level floor",
        "house 14 ft 6 in", "scale: 5 ft", "Downhill is to the south.",
    ):  # fmt: skip
        assert words in shown, words
    assert max(map(len, lines)) <= columns
    assert len(lines) <= 24


def test_lines_that_fall_together_are_told_on_screen_but_not_in_print(basin):
    said = "too near to show apart"
    assert said not in joined(cells(plan_of(basin), 76, 40))
    long = Basin(ft(30), ft(5), inch(3), 1, inch(3))
    assert said in joined(cells(plan_of(long), 56, 20))
    assert said not in svg(plan_of(long), 170)


def test_metric_sizes_are_in_metres():
    basin = Basin(
        quantity(5.8, "m"), quantity(2.7, "m"), quantity(110, "mm"), 3, quantity(100, "mm")
    )
    shown = joined(
        cells(
            plan_view(basin, None, "n", quantity(0.5, "m"), quantity(7, "m"), "pipe", (), True),
            76,
            26,
        )
    )
    for words in ("rim 7.06 m × 3.96 m", "full pond 6.46 m × 3.36 m", "floor 5.8 m", "500 mm wide"):
        assert words in shown
    assert "ft" not in shown.replace("left", "")


def test_the_rectangles_of_the_plan_are_the_sizes_given(basin):
    boxes = [
        shape
        for shape in plan_of(basin).shapes
        if isinstance(shape, Path) and shape.closed and shape.stroke
    ]
    sizes = [
        (max(x for x, _ in box.points) * 2, max(y for _, y in box.points) * 2) for box in boxes
    ]
    assert sorted(sizes) == [pytest.approx(size) for size in ((15, 7), (18, 10), (20, 12))]


def test_the_notch_is_its_own_width_in_the_downhill_side(basin):
    (notch,) = [s for s in plan_of(basin).shapes if getattr(s, "stroke", None) is Stroke.NOTCH]
    (x0, y0), (x1, y1) = notch.points[0], notch.points[-1]
    assert x1 - x0 == pytest.approx(1.5)
    assert {y for _, y in notch.points} == {y0} and y0 == y1 == pytest.approx(-6)


@pytest.mark.parametrize(
    ("downhill", "arrow"),
    [("s", "↑"), ("n", "↓"), ("e", "→"), ("w", "←"), ("se", "↗"), ("sw", "↖"), ("ne", "↘")],
)
def test_north_turns_with_the_slope_as_downhill_is_at_the_bottom(basin, downhill, arrow):
    shown = joined(cells(plan_of(basin, slope_direction=downhill), 76, 26))
    assert f"{arrow} north" in shown
    assert "↓ downhill" in shown


def test_level_ground_has_no_downhill_arrow(basin):
    shown = joined(cells(plan_of(basin, slope_direction="flat"), 76, 26))
    assert "↓ downhill" not in shown
    assert "The ground is level" in shown


def test_sloping_ground_without_a_compass_point_is_not_called_level(basin):
    shown = joined(cells(plan_of(basin, lie=lying(basin), slope_direction="flat"), 76, 26))
    assert "The ground is level" not in shown
    assert "Downhill is at the foot of the drawing" in shown


def test_a_way_or_direction_unknown_is_refused(basin):
    with pytest.raises(ValueError, match="compass"):
        plan_of(basin, slope_direction="up")
    with pytest.raises(ValueError, match="pipe"):
        plan_of(basin, water_by="bucket")


def to_the_quarter(depth):
    """Write inches as on a tape, from the quarters of 1 in counted one by one."""
    quarters = round(depth * 4)
    return f"{quarters // 4}{('', ' 1/4', ' 1/2', ' 3/4')[quarters % 4]} in"


def test_the_section_says_its_heights_and_dig_depths(basin):
    lie = lying(basin, 0.08, compost=2)
    shown = joined(cells(cross_section(lie), 76, 30))
    deep = [lie.floor_below * 12 + 5 + rise for rise in (0.08 * 84, 0)]
    near = [to_the_quarter(depth) for depth in deep]
    assert f"Dig from the old ground: {near[0]} at the uphill" in shown
    assert f"{near[1]} at the downhill edge" in shown
    for words in (
        "full pond +6 in", "crest +10 in", "finished floor 0 in", "mulch 3 in", "compost 2 in",
        "dug to -5 in",
    ):  # fmt: skip
        assert words in shown, words
    berm = to_the_quarter(lie.crest_to_toe * 12)
    assert f"The berm stands {berm} from toe to crest" in shown
    assert re.search(r"Heights are drawn \d+ times as tall as lengths\.", shown)


def test_the_exaggeration_stated_is_the_one_drawn(basin):
    drawing = cross_section(lying(basin))
    taller = int(re.search(r"drawn (\d+) times", " ".join(drawing.notes)).group(1))
    (pond,) = [s for s in drawing.shapes if getattr(s, "stroke", None) is Stroke.WATER]
    assert pond.points[0][1] == pytest.approx(0.5 * taller)
    # The full pond at its edge is as long as the pond is wide.
    assert pond.points[1][0] - pond.points[0][0] == pytest.approx(magnitude(basin.edge_width, "ft"))


def test_a_garden_dug_in_is_drawn_without_a_berm(basin):
    drawing = cross_section(lying(basin, 0.005))
    shown = joined(cells(drawing, 76, 30))
    assert "no berm is built" in shown
    assert "toe" not in shown and "crest" not in shown
    assert "lawn, the rim +10 in" in shown
    assert Hatch.FILL not in [getattr(shape, "hatch", None) for shape in drawing.shapes]


def test_what_closes_the_garden_uphill_is_told(basin):
    def told(lie):
        return joined(cross_section(lie).notes)

    gentle = lying(basin, 0.03)
    assert gentle.sets is Sets.UPHILL
    assert "Uphill there is no berm: the lawn there is as high as the crest." in told(gentle)
    assert "up the slope, 11 ft 1 1/2 in each" in told(winged(gentle))
    assert "the lawn there is higher than the crest" in told(lying(basin, 0.12))
    assert "a low bank closes it" in told(lying(replace(basin, shape=FloorShape.KIDNEY), 0.05))


@settings(max_examples=40, deadline=None)
@given(
    st.floats(2, 90), st.floats(2, 30), st.floats(2, 18), st.floats(1, 4.5), st.floats(0, 12),
    st.floats(0, 18), st.floats(0, 8), st.booleans(), st.sampled_from(["n", "sw", "flat"]),
    st.floats(0.2, 60), st.none() | st.floats(0, 400), st.integers(40, 110), st.booleans(),
)  # fmt: skip
def test_any_garden_can_be_drawn(
    long, wide, deep, side, free, fall, mulch, metric, way, notch, spout, columns, braille
):
    shapes = (FloorShape.RECTANGLE, FloorShape.ROUNDED, FloorShape.OVAL)
    basin = Basin(ft(long), ft(wide), inch(deep), side, inch(free), shapes[columns % 3])
    lie = lying(basin, fall / 100, mulch, columns % 4)
    far = None if spout is None else ft(spout)
    near = (("the neighbour's fence & gate", ft(7)),)
    for drawing in (
        plan_view(basin, lie, way, ft(notch), far, "lawn", near, metric),
        cross_section(lie, metric),
    ):
        lines = cells(drawing, columns, 24, braille)
        assert all(column_width(line) <= columns for line in lines)
        shown = "".join("".join(cells(drawing, columns, 24)).split())
        for label in drawing.sized(small=False).labels:
            assert label.optional or "".join(label.text.split()) in shown, label.text
        ET.fromstring(svg(drawing, 170))
    assert max(map(len, level_lines(level_table(lie), metric))) <= 76
