"""The plan and the section of every shape, as it lies in its ground."""

from __future__ import annotations

import xml.etree.ElementTree as ET

import pytest
from measures import OWN
from shapely.geometry import Polygon
from shapely.ops import unary_union

from interview.drawing.canvas import cells
from interview.drawing.scene import Drawing, Hatch, Label, Path, Stroke
from interview.drawing.vector import svg
from interview.drawing.words import column_width
from interview.garden.earth.above import plan_view
from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Ground, Lie, lie_of
from interview.garden.planting.section import cross_section
from interview.quantities.units import quantity

FOOT_M = 0.3048


def bed(shape: FloorShape, rim: float = 2) -> Basin:
    """Floor 14 by 7 ft, pond 6 in, sides 2 to 1."""
    own = shape is FloorShape.OWN
    return Basin(
        quantity(12 if own else 14, "ft"), quantity(6.5 if own else 7, "ft"), quantity(6, "in"),
        2.0, quantity(rim, "in"), shape, None, OWN if own else (),
    )  # fmt: skip


def lying(basin: Basin, fall: float = 0.0507) -> Lie:
    return lie_of(basin, Ground(fall, mulch=0.25, compost=1 / 6))


def drawn(basin: Basin, lie: Lie | None, metric: bool = False) -> Drawing:
    return plan_view(
        basin, lie, "s", quantity(2, "ft"), quantity(22, "ft"), "channel",
        (("house", quantity(14.5, "ft")),), metric,
    )  # fmt: skip


def rings(drawing: Drawing, stroke: Stroke) -> list[Polygon]:
    return [
        Polygon(one.points)
        for one in drawing.shapes
        if isinstance(one, Path) and one.stroke is stroke and one.closed
    ]


def text_of(drawing: Drawing, columns: int = 76) -> str:
    return " ".join(" ".join(cells(drawing, columns, 26)).split())


@pytest.mark.parametrize("shape", list(FloorShape))
@pytest.mark.parametrize("fall", [None, 0.0, 0.0507, 0.11])
@pytest.mark.parametrize(("columns", "metric"), [(60, True), (76, False)])
def test_every_shape_is_drawn_within_its_width_with_all_its_words(
    shape: FloorShape, fall: float | None, columns: int, metric: bool
) -> None:
    basin = bed(shape)
    lie = None if fall is None else lying(basin, fall)
    made = [drawn(basin, lie, metric)]
    if lie is not None:
        made.append(cross_section(lie, metric))
    for drawing in made:
        for braille in (False, True):
            lines = cells(drawing, columns, 26, braille=braille)
            assert max(map(column_width, lines)) <= columns
            shown = "".join("".join(lines).split())
            for label in drawing.sized(small=False).labels:
                assert label.optional or "".join(label.text.split()) in shown, label.text
        assert cells(drawing, columns, 26, braille=False)
        ET.fromstring(svg(drawing, 170))
        told = f"{text_of(drawing)} {drawing.description}"
        assert not (metric and " ft" in told.replace("left", "")), told


@pytest.mark.parametrize("shape", list(FloorShape))
@pytest.mark.parametrize("fall", [0.0507, 0.11])
def test_the_lines_of_the_plan_are_those_of_the_outline(shape: FloorShape, fall: float) -> None:
    basin = bed(shape)
    drawing = drawn(basin, lying(basin, fall))
    (floor,), (pond,) = rings(drawing, Stroke.SOLID), rings(drawing, Stroke.WATER)
    # Chords of 48 to the half circle; of one's own outline the hollow corners are drawn over.
    assert floor.area == pytest.approx(basin.outline.area, rel=2e-3)
    assert pond.area == pytest.approx(basin.outline.area_at(1.0), rel=5e-3)
    (rim,) = rings(drawing, Stroke.HEAVY)
    assert rim.area == pytest.approx(lying(basin, fall).inside_area, rel=5e-3)
    assert rim.buffer(1e-6).contains(pond) and pond.contains(floor)


@pytest.mark.parametrize("shape", list(FloorShape))
@pytest.mark.parametrize("metric", [False, True])
def test_the_berm_fills_what_lies_between_rim_and_footprint(
    shape: FloorShape, metric: bool
) -> None:
    basin = bed(shape)
    lie, one = lying(basin), FOOT_M**2 if metric else 1.0
    drawing = drawn(basin, lie, metric)
    berm = unary_union(
        [
            Polygon(part.points).buffer(0)
            for part in drawing.shapes
            if isinstance(part, Path) and part.hatch is Hatch.FILL
        ]
    )
    between = Polygon(lie.footprint).buffer(0).area - Polygon(lie.inside_line).buffer(0).area
    assert berm.area == pytest.approx(between * one, rel=0.01)


def test_the_toe_of_the_usual_bed_is_told_over_all() -> None:
    basin = bed(FloorShape.ROUNDED)
    shown = text_of(drawn(basin, lying(basin)))
    # Toe to toe 20.288 by 12.580 ft, worked by hand in the tests of how a garden lies.
    for words in (
        "over all 20 ft 3 1/2 in", "over all 12 ft 7 in", "full pond 16 ft × 9 ft",
        "level floor 14 ft × 7 ft", "16 ft 8 in × 9 ft 8 in", "toe of the berm",
        "overflow notch 2 ft wide", "water in by a stone channel",
    ):  # fmt: skip
        assert words in shown, words


def test_where_the_slope_is_not_known_no_berm_is_drawn() -> None:
    drawing = drawn(bed(FloorShape.ROUNDED), None)
    assert "The slope is not measured yet: no berm is drawn." in drawing.notes
    assert "toe" not in text_of(drawing)
    assert rings(drawing, Stroke.HEAVY)[0].bounds == pytest.approx(
        (-8.3333, -4.8333, 8.3333, 4.8333), abs=1e-3
    )


def test_level_ground_has_a_lip_and_no_berm() -> None:
    basin = bed(FloorShape.OVAL, rim=1)
    drawing = drawn(basin, lying(basin, 0.0))
    shown = text_of(drawing)
    assert "overflow lip 2 ft wide" in shown
    assert "berm" not in shown and "berm" not in drawing.description


@pytest.mark.parametrize("shape", list(FloorShape))
def test_water_comes_in_uphill_and_leaves_over_the_rim_downhill(shape: FloorShape) -> None:
    basin = bed(shape)
    drawing = drawn(basin, lying(basin))
    (rim,) = rings(drawing, Stroke.HEAVY)
    (notch,) = (
        one for one in drawing.shapes if isinstance(one, Path) and one.stroke is Stroke.NOTCH
    )
    floor_low = rings(drawing, Stroke.SOLID)[0].centroid.y
    for x, y in notch.points:
        assert y < floor_low
        assert rim.exterior.distance(Polygon([(x, y), (x + 1e-9, y), (x, y + 1e-9)])) < 1e-6
    assert notch.points[-1][0] - notch.points[0][0] == pytest.approx(2)
    way = next(
        one for one in drawing.shapes if isinstance(one, Path) and one.stroke is Stroke.DASHED
    )
    assert all(x == 0 for x, _ in way.points)
    assert way.points[0][1] > floor_low and way.points[1][1] > way.points[0][1]


def test_the_sizes_of_a_kidney_are_told_along_its_bent_middle() -> None:
    basin = bed(FloorShape.KIDNEY)
    drawing = drawn(basin, lying(basin))
    assert any("bent middle line" in note for note in drawing.notes)
    told = [one.text.strip() for one in drawing.sized(small=False).shapes if isinstance(one, Label)]
    # The ends lie 2 x (9.333 sin 0.375 + 3.5) = 13.84 ft apart in a straight line.
    assert "floor 13 ft 10 in" in told


def test_the_section_draws_the_layers_the_dug_surface_and_the_berm() -> None:
    drawing = cross_section(lying(bed(FloorShape.ROUNDED)))
    hatched = {
        one.hatch: Polygon(one.points)
        for one in drawing.shapes
        if isinstance(one, Path) and one.hatch
    }
    taller = 4
    assert f"Heights are drawn {taller} times as tall as lengths." in drawing.notes
    # Mulch 3 in deep, measured upright, over 7 ft of floor and 16 in of side at either end.
    across = 7 + 2 * 16 / 12
    assert hatched[Hatch.MULCH].area == pytest.approx(0.25 * across * taller)
    assert hatched[Hatch.COMPOST].area == pytest.approx(7 / 6 * taller)
    assert Hatch.FILL in hatched
    (dug,) = (
        one for one in drawing.shapes if isinstance(one, Path) and one.stroke is Stroke.DOTTED
    )
    # From rim to rim, 5 in below the floor at the deepest.
    assert dug.points[0][0] == pytest.approx(-16 / 12, abs=1e-3)
    assert min(z for _, z in dug.points) == pytest.approx(-5 / 12 * taller)
    shown = text_of(drawing)
    for words in (
        "crest +8 in", "full pond +6 in", "finished floor 0 in", "mulch 3 in", "compost 2 in",
        "dug to -5 in", "toe +1/4 in", "dug surface", "berm of tamped soil",
        "Dig from the old ground: 12 1/4 in at the uphill edge of the floor, 8 in at the downhill",
        "The berm stands 7 3/4 in from toe to crest", "that step holds the mulch",
        "Uphill there is no berm: the lawn there is as high as the crest.",
    ):  # fmt: skip
        assert words in shown, words
    assert "carry a bank" not in shown and "all round" not in shown
