"""Areas, volumes and pegs of the outlines of a floor."""

from __future__ import annotations

import math
import random

import numpy
import pytest
from measures import OWN
from scipy.integrate import quad
from shapely import distance, points
from shapely.affinity import translate
from shapely.geometry import LineString, Point, Polygon, box
from shapely.validation import make_valid

from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Ground, Lie, Sets
from interview.garden.form.outline import Outline, Station, own_outline, usual_bend
from interview.garden.form.pegs import (
    Offset,
    ends_along,
    offset_at,
    own_middle,
    stations_along,
    string_height,
)


def string_offsets(outline: Outline, q: float, step: float) -> list[Offset]:
    """Return the pegs of the line ``q`` outside the floor, from the middle to its very end."""
    _, end = ends_along(outline, q)
    places = stations_along(outline, step, end)
    return [offset_at(outline, q, x) for x in dict.fromkeys((*places, end))]


OWN_OUTLINE = own_outline(OWN)
PARALLEL = [shape for shape in FloorShape if shape is not FloorShape.OWN]


def volume(outline: Outline, z: float, depth: float) -> float:
    """Integrate the area over the depth (scipy, an outside reference)."""
    return quad(lambda h: outline.area_at(z * h), 0, depth, epsabs=1e-12)[0]


@pytest.mark.parametrize(
    ("shape", "bend", "area", "perimeter", "pond", "holds"),
    [
        # A floor of 15 by 7.5 ft with sides 2:1 and 6 in of water, worked independently with scipy.
        (FloorShape.RECTANGLE, None, 112.5, 45.0, 161.5, 68.17),
        (FloorShape.ROUNDED, None, 100.429, 38.562, 142.132, 60.378),
        (FloorShape.KIDNEY, 10.0, 100.429, 38.562, 142.132, 60.378),
        (FloorShape.OVAL, None, 88.357, 36.332, 127.831, 53.785),
    ],
)
def test_every_shape_has_the_area_and_the_volume_worked_out_for_it(
    shape: FloorShape, bend: float | None, area: float, perimeter: float, pond: float, holds: float
) -> None:
    one = Outline(shape, 15, 7.5, bend)
    assert one.area == pytest.approx(area, abs=5e-4)
    assert one.perimeter == pytest.approx(perimeter, abs=5e-4)
    assert one.area_at(1.0) == pytest.approx(pond, abs=5e-4)
    assert volume(one, 2, 0.5) == pytest.approx(holds, abs=5e-3)


def test_lines_outside_a_rounded_or_bent_floor_are_those_shapely_draws_around_it() -> None:
    faults = []
    for shape in (FloorShape.ROUNDED, FloorShape.KIDNEY, FloorShape.OVAL):
        one = Outline(shape, 12, 5, 9.0 if shape is FloorShape.KIDNEY else None)
        # Shapely (an outside reference) buffers the floor that the rays draw.
        for q in (0.0, 0.5, 1.5):
            drawn = Polygon(one.line_at(0)).buffer(q, quad_segs=128)
            for got in (one.area_at(q), Polygon(one.line_at(q)).area):
                if abs(got / drawn.area - 1) > 2e-3:
                    faults.append((shape, q, got, drawn.area))
    assert not faults


@pytest.mark.parametrize("long, wide", [(14, 7), (7, 14), (8, 8)])
@pytest.mark.parametrize("q", [0.0, 1.25])
def test_the_line_outside_a_bed_along_or_up_the_slope_is_that_of_shapely(long, wide, q) -> None:
    """A rounded bed is its middle line buffered, a rectangle outside its edge a larger one."""
    half, ends = abs(long - wide) / 2, min(long, wide) / 2
    along = [(-half, 0), (half, 0)] if long > wide else [(0, -half), (0, half)]
    floor = LineString(along) if half else Point(0, 0)
    square = box(-long / 2 - q, -wide / 2 - q, long / 2 + q, wide / 2 + q)
    for shape, meant in [
        (FloorShape.ROUNDED, floor.buffer(ends + q, quad_segs=256)),
        (FloorShape.RECTANGLE, square),
    ]:
        drawn = Polygon(Outline(shape, long, wide).line_at(q))
        assert drawn.length == pytest.approx(meant.length, rel=2e-3)
        # A corner may be met twice within a last digit.
        ring = make_valid(drawn)
        placed = translate(ring, 0, -(ring.bounds[1] + ring.bounds[3]) / 2)
        assert placed.symmetric_difference(meant).area < 0.002 * meant.area


def test_rays_run_straight_out_of_an_edge_and_fill_the_corners_of_a_rectangle() -> None:
    for one in (*(Outline(shape, 11, 6) for shape in PARALLEL), Outline(FloorShape.ROUNDED, 6, 11)):
        assert {round(math.hypot(ray.out_x, ray.out_y), 9) for ray in one.rays if ray.width} == {1}
    corners = [ray for ray in Outline(FloorShape.RECTANGLE, 11, 6).rays if not ray.width]
    assert len(corners) > 8
    for ray in corners:
        x, y = ray.at(1.25)
        assert 5.5 - 1e-9 <= abs(x) <= 6.75 + 1e-9 and 3 - 1e-9 <= abs(y - 3) <= 4.25 + 1e-9


def test_the_middle_of_a_floor_is_its_centroid() -> None:
    for one in (*(Outline(shape, 11, 6) for shape in PARALLEL), OWN_OUTLINE):
        assert one.middle == pytest.approx(Polygon(one.line_at(0.0)).centroid.y)
    assert usual_bend(15, 7.5) == 10 and usual_bend(7, 6) == pytest.approx(7.2)


def test_a_kidney_is_the_middle_line_of_its_bed_buffered_by_half_its_width() -> None:
    one = Outline(FloorShape.KIDNEY, 15, 7.5, 10.0)
    half = 7.5 / 10 / 2
    turns = [half * (step / 200 - 1) for step in range(401)]
    bent = LineString([(10 * math.sin(turn), 10 - 10 * math.cos(turn)) for turn in turns])
    floor = bent.buffer(3.75, quad_segs=256)
    assert one.area == pytest.approx(floor.area, rel=1e-4)
    low, high = floor.bounds[1], floor.bounds[3]
    # The rays are a few degrees apart, so the end of the bed is met to a tenth of an inch.
    assert one.rise == pytest.approx(high - low, abs=0.01)


def test_widths_and_spreads_of_the_rays_add_up_to_the_perimeter_and_the_corners() -> None:
    own = own_outline(
        [Station(0, 1, 0.5), Station(3, 2, 2), Station(6, 1.2, 3), Station(9, 0, 0.2)]
    )
    faults = []
    upright = [Outline(shape, 6, 11) for shape in PARALLEL if shape is not FloorShape.KIDNEY]
    for one in (*(Outline(shape, 11, 6) for shape in PARALLEL), *upright, own):
        widths, spreads = sum(ray.width for ray in one.rays), sum(ray.spread for ray in one.rays)
        if abs(widths - one.perimeter) > 1e-9 or abs(spreads / 2 - one.corner) > 1e-9:
            faults.append((one, widths, spreads))
    assert not faults


def test_an_outline_of_ones_own_is_the_polygon_through_its_stations() -> None:
    stations = [
        Station(0, 0, 0), Station(2, 3, 2), Station(5, 2, 3), Station(8, 3, 2), Station(10, 0, 0)
    ]  # fmt: skip
    one = own_outline(stations)
    ring = Polygon([(0, 0), (2, -2), (5, -3), (8, -2), (10, 0), (8, 3), (5, 2), (2, 3)])
    assert one.area == pytest.approx(ring.area)
    assert one.perimeter == pytest.approx(ring.length)
    # Shapely (an outside reference) draws the line outside it, round at the corners.
    assert one.area_at(0.3) == pytest.approx(ring.buffer(0.3, quad_segs=256).area, rel=1e-5)


def test_an_outline_of_ones_own_may_begin_anywhere_on_its_string() -> None:
    one = own_outline([Station(3, 0, 0), Station(5, 1, -0.5), Station(8, 2, 1), Station(9, 0, 0)])
    assert (one.length, one.width) == (6, 3)
    small = own_outline([Station(0, 0, 0), Station(1, 0.5, 0), Station(2, 0, 0)])
    assert small.width == 0.5 and small.area == pytest.approx(0.5)


def test_a_hollow_corner_takes_back_what_both_its_sides_reach() -> None:
    """By hand: sides rising 2 in 3 from the corner; they overlap up to two thirds along each."""
    one = own_outline([Station(0, 3, 0), Station(3, 1, 0), Station(6, 3, 0)])
    hollow = [ray for ray in one.rays if ray.spread < 0]
    far = math.sqrt(13)
    parts = [2 / 3 * (step + 0.5) / 4 for step in range(4)]
    meant = [
        (side * (3 * part - 2) / far, (3 + 2 * part) / far) for side in (-1, 1) for part in parts
    ]
    assert sorted((ray.out_x, ray.out_y) for ray in hollow) == [
        pytest.approx(way) for way in sorted(meant)
    ]
    assert [ray.spread for ray in hollow] == pytest.approx([-2 / 3 / 4] * 8)
    assert {(ray.x, ray.y, ray.width) for ray in hollow} == {(0.0, 1.0, 0.0)}


def test_where_sides_meet_in_a_narrow_hollow_the_pond_is_right_and_the_rim_small_as_told() -> None:
    """The documented limit, against every point whose cut lies under the lawn or the crest."""
    hollow = [Station(0, 0, 0), Station(2, 4, 2), Station(4, 2, 1.5), Station(6, 4, 1.5),
              Station(8, 0, 0)]  # fmt: skip
    one = own_outline(hollow)
    floor = Polygon(one.line_at(0.0)).buffer(0)
    far = 10 / 3
    assert one.area_at(far) == pytest.approx(floor.buffer(far, quad_segs=64).area, rel=1e-3)
    lie = Lie(one, 2 / 3, 1 / 3, 5.0, Ground(0.089, 1 / 6), 0.8, Sets.BERM)
    step = 0.2
    x, y = numpy.meshgrid(numpy.arange(-20, 20, step), numpy.arange(-15, 35, step))
    lawn = lie.floor_below + lie.ground.fall * y
    inside = distance(floor, points(x, y)) / lie.side_slope <= numpy.maximum(lie.height, lawn)
    assert lie.inside_area == pytest.approx(inside.sum() * step**2 * 0.914, rel=0.005)


@pytest.mark.parametrize("factor", [0.5, 3.0])
def test_an_outline_scaled_is_as_much_larger_in_every_length(factor: float) -> None:
    for one in (*(Outline(shape, 12, 5) for shape in PARALLEL),
                Outline(FloorShape.KIDNEY, 12, 5, 9.0), OWN_OUTLINE):  # fmt: skip
        other = one.scaled(factor)
        assert (other.length, other.width) == (one.length * factor, one.width * factor)
        assert other.radius_of_bend == pytest.approx(one.radius_of_bend * factor)
        for q in (0.0, 1.5):
            assert other.area_at(q * factor) == pytest.approx(one.area_at(q) * factor**2)
            for far, near in zip(other.line_at(q * factor), one.line_at(q), strict=True):
                assert far == pytest.approx((near[0] * factor, near[1] * factor), abs=1e-9)


def test_the_pegs_of_an_outline_of_ones_own_are_its_stations_and_between_them_chords() -> None:
    late = own_outline([Station(one.along + 3, one.uphill, one.downhill) for one in OWN])
    for one in (OWN_OUTLINE, late):
        assert stations_along(one, 1.0, 99.0) == [-6, -4, -2, 0, 2, 4, 6]
        assert ends_along(one, 0.0) == pytest.approx((-6, 6))
        assert string_height(one) == 3.5
        for x, uphill, downhill in [(0, 2.5, 3.5), (1, 2.75, 3.5), (-3, 2.5, 2.25)]:
            assert offset_at(one, 0.0, x) == pytest.approx(Offset(x, uphill, downhill))
        assert offset_at(one, 0.0, 6.5) is None
    assert own_middle(late) == 9


def test_the_pegs_of_a_bed_end_where_its_line_does() -> None:
    kidney = Outline(FloorShape.KIDNEY, 15, 7.5, 10.0)
    for one in (Outline(FloorShape.ROUNDED, 14, 7), kidney):
        left, right = ends_along(one, 0.0)
        assert left == -right
        assert ends_along(one, 1.0) == pytest.approx((left - 1, right + 1))
        assert offset_at(one, 0.0, right + 0.01) is None
        assert offset_at(one, 0.0, right).along == right
    assert string_height(Outline(FloorShape.OVAL, 14, 7)) == 3.5
    # As worked for the pegs of the same kidney.
    assert string_height(kidney) == pytest.approx(4.44, abs=0.005)
    assert stations_along(kidney, 0.5, 7.0) == [n / 2 for n in range(15)]
    assert stations_along(kidney, 0.1, 0.3) == pytest.approx([0, 0.1, 0.2, 0.3])


def test_an_oval_by_stations_comes_out_a_little_small() -> None:
    oval = Outline(FloorShape.OVAL, 15, 7.5)
    for step, short in ((2.0, -3.5), (1.0, -1.6), (0.5, -0.6)):
        places = [-7.5 + step * n for n in range(int(15 / step) + 1)]
        places = [*places, 7.5] if places[-1] < 7.5 else places
        wide = [3.75 * math.sqrt(max(0.0, 1 - (x / 7.5) ** 2)) for x in places]
        own = own_outline([Station(x + 7.5, y, y) for x, y in zip(places, wide, strict=True)])
        percent = 100 * (volume(own, 2, 0.5) / volume(oval, 2, 0.5) - 1)
        assert percent == pytest.approx(short, abs=0.06)


@pytest.mark.parametrize(
    ("q", "offsets", "end"),
    [
        (0.0, [3.50, 3.50, 3.50, 3.50, 3.46, 3.16, 2.45, 0.0], 7.00),
        (1.0, [4.50, 4.50, 4.50, 4.50, 4.47, 4.24, 3.74, 2.83, 0.0], 8.00),
        (4 / 3, [4.83, 4.83, 4.83, 4.83, 4.81, 4.59, 4.14, 3.33, 1.76, 0.0], 25 / 3),
    ],
)
def test_the_pegs_of_the_usual_bed_lie_where_they_were_worked_out(
    q: float, offsets: list[float], end: float
) -> None:
    pegs = string_offsets(Outline(FloorShape.ROUNDED, 14, 7), q, 1.0)
    assert [round(one.uphill, 2) for one in pegs] == offsets
    assert all(one.uphill == one.downhill for one in pegs)
    assert pegs[-1].along == pytest.approx(end)


def test_the_pegs_of_a_kidney_lie_unequally_to_both_sides() -> None:
    pegs = string_offsets(Outline(FloorShape.KIDNEY, 15, 7.5, 10.0), 0.0, 1.0)
    # Worked independently: the radius of the middle line is 10 ft, the hollow side uphill.
    uphill = [3.06, 3.14, 3.38, 3.69, 3.73, 3.50, 2.93, 1.71]
    downhill = [4.44, 4.41, 4.30, 4.11, 3.85, 3.50, 2.93, 1.71]
    assert [round(one.uphill, 2) for one in pegs[:8]] == pytest.approx(uphill, abs=0.011)
    assert [round(one.downhill, 2) for one in pegs[:8]] == pytest.approx(downhill, abs=0.011)


def test_every_peg_lies_on_its_line() -> None:
    rng = random.Random(4)
    faults = []
    for shape in PARALLEL:
        for _ in range(10):
            wide = rng.uniform(2, 12)
            # Ovals longer than twice their width are pegged less well; a kidney is never wider.
            least, most = (1, 4) if shape is FloorShape.KIDNEY else (0.5, 4)
            long = wide * rng.uniform(least, 2 if shape is FloorShape.OVAL else most)
            one, q = Outline(shape, long, wide), rng.uniform(0, 2)
            ring = Polygon(one.line_at(q)).exterior
            string = _string(one)
            for peg in string_offsets(one, q, 1.0):
                for y in (string + peg.uphill, string - peg.downhill):
                    off = ring.distance(Point(peg.along, y))
                    if off > 0.08:
                        faults.append((one, q, peg, off))
    assert not faults


def _string(one: Outline) -> float:
    """Height of the string over the lowest point of the floor."""
    return string_offsets(one, 0.0, 1.0)[0].downhill


def test_an_outline_that_cannot_be_is_refused_in_a_sentence() -> None:
    with pytest.raises(ValueError, match="longer and wider than zero"):
        Outline(FloorShape.OVAL, 0, 3)
    with pytest.raises(ValueError, match="bent tighter"):
        Outline(FloorShape.KIDNEY, 10, 4, 2.0)
    with pytest.raises(ValueError, match="farther along"):
        own_outline([Station(0, 1, 1), Station(0, 1, 1)])
    with pytest.raises(ValueError, match="farther along"):
        own_outline([Station(0, 1, 1), Station(2, 1, 1), Station(1, 1, 1)])
    with pytest.raises(ValueError, match="hold no area"):
        own_outline([Station(0, 1, -1), Station(2, 2, -2)])
    with pytest.raises(ValueError, match="below the edge"):
        own_outline([Station(0, 1, 1), Station(2, -2, 1)])
