"""The plan held against its figures: what a line of a size spans, and where each word stands.

What a size should be is read from the outlines as they are drawn, with shapely, or from the bed;
how far a line of a size may stand off is our own choice.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from itertools import pairwise

import pytest
from measures import OWN, ft, inch
from shapely import make_valid
from shapely.geometry import LinearRing, LineString, MultiLineString, Point, Polygon
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

from interview.drawing.grid import Look
from interview.drawing.layout import lay_out
from interview.drawing.scene import (
    Drawing,
    Hatch,
    Ink,
    Label,
    LabelSpot,
    Mark,
    Material,
    Path,
    Stroke,
    Symbol,
)
from interview.garden.earth.above import plan_sizes, plan_view
from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Ground, Lie, lie_of

FOOT_M = 0.3048
COMPASS = ("n", "ne", "e", "se", "s", "sw", "w", "nw")
FALLS = (None, 0.0, 0.0507)


def bed(shape: FloorShape = FloorShape.ROUNDED, long: float = 14, wide: float = 7) -> Basin:
    """Pond 6 in, sides 2 to 1, rim 2 in higher."""
    own = shape is FloorShape.OWN
    size = (ft(12), ft(6.5)) if own else (ft(long), ft(wide))
    return Basin(*size, inch(6), 2.0, inch(2), shape, None, OWN if own else ())


BEDS = [bed(shape) for shape in FloorShape] + [
    bed(FloorShape.RECTANGLE, 40, 4), bed(FloorShape.OVAL, 8, 20), bed(FloorShape.OVAL, 60, 30)
]  # fmt: skip
GARDENS = [(one, fall) for one in BEDS for fall in FALLS]
# A steep one, and two with a berm all round.
GARDENS += [(BEDS[1], 0.11), (BEDS[3], 0.02), (BEDS[-1], 0.02)]


def lying(basin: Basin, fall: float | None) -> Lie | None:
    return None if fall is None else lie_of(basin, Ground(fall, mulch=0.25, compost=1 / 6))


class Drawn:
    """A plan, and its parts by what they show."""

    def __init__(self, basin: Basin, fall: float | None, metric: bool = False, **more: object):
        self.basin, self.lie, self.metric = basin, lying(basin, fall), metric
        given = {"slope_direction": "s", "notch_width": ft(2), "spout_distance": ft(22)} | more
        self.drawing: Drawing = plan_view(basin, self.lie, metric=metric, **given)  # type: ignore[arg-type]
        shapes = self.drawing.shapes
        self.paths = [one for one in shapes if isinstance(one, Path)]
        self.labels = [one for one in shapes if isinstance(one, Label)]
        self.rim = self.ring(Stroke.HEAVY)
        self.pond, self.floor = self.ring(Stroke.WATER), self.ring(Stroke.SOLID)
        toes = [one.points for one in self.paths if one.stroke is Stroke.DOTTED]
        self.whole = MultiLineString([*toes, self.rim.coords])
        self.foot = FOOT_M if metric else 1.0

    def ring(self, stroke: Stroke) -> LinearRing:
        (found,) = (one for one in self.paths if one.stroke is stroke and one.closed)
        return LinearRing(found.points)

    @property
    def berms(self) -> list[tuple[tuple[float, float], ...]]:
        return [one.points for one in self.paths if one.hatch is Hatch.FILL]

    def lines(self, stroke: Stroke) -> list[Path]:
        return [one for one in self.paths if one.stroke is stroke and not one.closed]

    def line(self, stroke: Stroke) -> Path:
        (found,) = self.lines(stroke)
        return found

    def label(self, text: str) -> Label:
        (found,) = (one for one in self.labels if text in one.text)
        return found

    def stones(self) -> list[Polygon]:
        return [Polygon(one.points) for one in self.paths if one.material is Material.STONE]

    def name(self, ring: str) -> BaseGeometry:
        return {"over all": self.whole, "rim": self.rim, "floor": self.floor}[ring]


def drawn_sizes(drawing: Drawing) -> dict[str, tuple[Path, Label, list[Mark]]]:
    """Return the dimension lines and the scale among what a small picture leaves out."""
    rows = list(drawing.detail)
    found = {}
    for at, one in enumerate(rows):
        if isinstance(one, Path):
            marks = [mark for mark in rows[at + 1 : at + 3] if isinstance(mark, Mark)]
            label = rows[at + 3]
            assert isinstance(label, Label) and len(marks) == 2
            level = one.points[0][1] == one.points[1][1]
            found["scale" if "scale" in label.text else f"{at:02} {level}"] = one, label, marks
    assert len(found) == 5
    return found


def told_length(text: str) -> tuple[float, float]:
    """Return the length that words end in, in feet or metres, and how far off they may round it."""
    if metric := re.search(r"([\d.]+) m$", text):
        digits = metric[1].replace(".", "").lstrip("0")
        return float(metric[1]), float(metric[1]) * 0.5 / 10 ** (len(digits) - 1)
    feet, inches, half = re.search(r"(?:(\d+) ft)?(?: ?(\d+)?(?: ?(1/2))? in)?$", text).groups()  # type: ignore[union-attr]
    return int(feet or 0) + (int(inches or 0) + (0.5 if half else 0.0)) / 12, 0.25 / 12 + 1e-9


@pytest.mark.parametrize("metric", [False, True])
@pytest.mark.parametrize(("basin", "fall"), GARDENS)
def test_a_line_of_a_size_spans_what_it_says_from_end_to_end_of_what_it_names(
    basin: Basin, fall: float | None, metric: bool
) -> None:
    drawn = Drawn(basin, fall, metric)
    names = []
    for key, (path, label, marks) in drawn_sizes(drawn.drawing).items():
        (x0, y0), (x1, y1) = path.points
        long = math.dist(*path.points)
        assert [(mark.x, mark.y) for mark in marks] == list(path.points), key
        assert {mark.symbol for mark in marks} == {Symbol.TICK}
        if key == "scale":
            number, _ = told_length(label.text)
            assert long == pytest.approx(number, rel=1e-9)
            left, _, right, _ = drawn.whole.bounds
            assert (right - left) / 5 <= long * (1 + 1e-6) and long <= (right - left) / 2
            assert x0 == pytest.approx(left, abs=1e-6) and (label.x, label.y) == path.points[1]
            assert label.place is LabelSpot.RIGHT
            continue
        told, off = told_length(label.text.strip())
        assert told == pytest.approx(long, abs=off), label.text
        name = re.split(r" \d", label.text.strip())[0]
        bounds = drawn.name(name).bounds
        across = y0 == y1
        ends = (x0, x1) if across else (y0, y1)
        want = (bounds[0], bounds[2]) if across else (bounds[1], bounds[3])
        assert ends == pytest.approx(want, abs=0.011 * drawn.foot), label.text
        assert (label.x, label.y) == pytest.approx(((x0 + x1) / 2, (y0 + y1) / 2))
        names.append((name, across))
    over = "rim" if fall is None else "over all"
    assert names == [(over, True), ("floor", True), (over, False), ("floor", False)]


@pytest.mark.parametrize("metric", [False, True])
@pytest.mark.parametrize(("basin", "fall"), GARDENS)
def test_the_lines_of_sizes_stand_clear_of_the_garden_near_it_and_evenly(
    basin: Basin, fall: float | None, metric: bool
) -> None:
    drawn = Drawn(basin, fall, metric)
    left, low, right, high = drawn.whole.bounds
    larger = max(right - left, high - low)
    rows = [path for path, _, _ in drawn_sizes(drawn.drawing).values()]
    level = [one.points[0][1] for one in rows if one.points[0][1] == one.points[1][1]]
    upright = [one.points[0][0] for one in rows if one.points[0][0] == one.points[1][0]]
    first, second, third = (low - one for one in level)
    # Under the garden stand the words of the overflow, then its length, the floor's and the scale.
    assert second - first == pytest.approx(third - second)
    assert second - first <= first <= 2 * (second - first)
    assert third < larger / 2
    beyond = (left - upright[0], upright[1] - right)
    assert beyond[0] == pytest.approx(beyond[1], abs=0.011 * drawn.foot)
    assert 0.02 * larger < beyond[0] < 0.1 * larger
    # On a window of the usual size there is a line of text for each, and a blank one.
    assert second - first > 0.05 * (third + high - low)
    assert second - first > 4 / 60 * (right - left)


@pytest.mark.parametrize("metric", [False, True])
@pytest.mark.parametrize(("basin", "fall"), GARDENS)
def test_the_sizes_beside_a_plan_are_those_of_its_lines(
    basin: Basin, fall: float | None, metric: bool
) -> None:
    drawn = Drawn(basin, fall, metric)
    notch = drawn.line(Stroke.NOTCH).points
    first, *others = plan_sizes(basin, drawn.lie, ft(2), metric)
    assert not first.upright
    assert (first.start, first.end) == pytest.approx((0, (notch[0][0] + notch[-1][0]) / 2))
    kind = "notch" if fall is None or drawn.berms else "lip"
    assert first.words.startswith(f"middle to {kind} ")
    names = ["floor", "rim"] if fall is None else ["floor", "rim", "over all"]
    assert [one.upright for one in others] == [False, True] * len(names)
    for name, *two in zip(names, others[::2], others[1::2], strict=True):
        left, low, right, high = drawn.name(name).bounds
        for one, want in zip(two, ((left, right), (low, high)), strict=True):
            assert (one.start, one.end) == pytest.approx(want, abs=0.011 * drawn.foot)
            assert one.words.startswith(f"{name} ")
    for one in (first, *others):
        told, off = told_length(one.words)
        assert told == pytest.approx(one.end - one.start, abs=off), one.words


@pytest.mark.parametrize("metric", [False, True])
@pytest.mark.parametrize("wide", [2, 200])
@pytest.mark.parametrize(("basin", "fall"), GARDENS)
def test_the_stone_of_the_notch_goes_from_the_water_over_rim_and_berm(
    basin: Basin, fall: float | None, wide: float, metric: bool
) -> None:
    drawn = Drawn(basin, fall, metric, notch_width=ft(wide), water_by="lawn")
    (stone,) = drawn.stones()
    notch = drawn.line(Stroke.NOTCH).points
    left, _, right, _ = drawn.rim.bounds
    x0, _, x1, _ = stone.bounds
    assert (notch[0][0], notch[-1][0]) == pytest.approx((x0, x1))
    # As wide as it is told, and not so wide that no rim is left beside it.
    assert x1 - x0 == pytest.approx(min(wide * drawn.foot, 0.9 * (right - left)))
    # Half way to the end, where it has the room: water crosses the garden before it leaves.
    middle, half_way = (x0 + x1) / 2, (left + right) / 2 + (right - left) / 4
    assert middle == pytest.approx(min(half_way, right - (x1 - x0) / 2), abs=1e-3)
    steps = [b[0] - a[0] for a, b in pairwise(notch)]
    assert len(steps) >= 5 and steps == pytest.approx([steps[0]] * len(steps))
    for x, y in notch:
        assert y == pytest.approx(lowest(drawn.rim, x), abs=1e-6)
    for x, _ in notch[1:-1]:
        low, high = crossings(stone, x)
        water = lowest(drawn.pond, x) or lowest(drawn.rim, x)
        assert high == pytest.approx(water, abs=1e-6)
        assert 0.01 < (lowest(drawn.whole, x) - low) / (right - left) < 0.05
    foot = lowest(drawn.whole, middle)
    label = drawn.label("overflow")
    assert (label.x, label.y) == pytest.approx((middle, foot), abs=0.011 * drawn.foot)
    assert (label.place, label.arrow) == (LabelSpot.BELOW, (0.0, -1.0))
    assert label.brief == "overflow"


def crossings(ring: BaseGeometry, x: float) -> tuple[float, float]:
    cut = ring.intersection(LineString([(x, -1e4), (x, 1e4)]))
    return (0.0, 0.0) if cut.is_empty else (cut.bounds[1], cut.bounds[3])


def lowest(ring: BaseGeometry, x: float) -> float:
    """Where an outline lies lowest at ``x``; the middle of the floor where it has no such place."""
    return crossings(ring, x)[0]


@pytest.mark.parametrize("metric", [False, True])
@pytest.mark.parametrize("spout", [None, 0.5, 22])
@pytest.mark.parametrize("way", ["channel", "lawn"])
@pytest.mark.parametrize("basin", BEDS)
def test_the_way_of_the_water_comes_over_the_rim_uphill_to_the_pond(
    basin: Basin, way: str, spout: float | None, metric: bool
) -> None:
    far = None if spout is None else ft(spout)
    drawn = Drawn(basin, 0.0507, metric, water_by=way, spout_distance=far)
    rim, pond, floor = (crossings(ring, 0)[1] for ring in (drawn.rim, drawn.pond, drawn.floor))
    left, _, right, _ = drawn.whole.bounds
    (x0, start), (x1, end) = drawn.line(Stroke.DASHED).points
    assert (x0, x1) == (0, 0) and start == pytest.approx(pond)
    # Drawn in full, or cut short at about a sixth of the length of the garden.
    outside = end - rim
    most = 0.16 * (right - left)
    whole = spout is not None and spout * drawn.foot <= most
    want = spout * drawn.foot if spout is not None and whole else most
    assert outside == pytest.approx(want, abs=0.01 * drawn.foot)
    keys = [one.words for one in drawn.drawing.keys if one.sample is Stroke.DASHED]
    assert keys == ["way in" if whole else "way in, cut short here"]
    (inlet,) = (one for one in drawn.drawing.shapes if isinstance(one, Mark))
    assert (inlet.x, inlet.y, inlet.symbol) == (0, pytest.approx(rim), Symbol.INLET)
    stones = drawn.stones()[1:]
    beside = 0.0
    if way == "channel":
        (stone,) = stones
        beside = 0.75 * drawn.foot
        # A foot and a half wide, and on to the floor, so that no side is washed out.
        assert stone.bounds == pytest.approx((-beside, floor, beside, end))
        assert stone.area == pytest.approx(2 * beside * (end - floor))
    else:
        assert not stones
    label = drawn.label("water in")
    assert (label.x, label.y) == pytest.approx((beside, end)) and label.place is LabelSpot.RIGHT
    assert (label.brief, label.ink) == ("water in", Ink.WATER)
    under = [one for one in drawn.labels if "downspout" in one.text]
    assert len(under) == (spout is not None)
    for one in under:
        assert (one.x, one.y, one.place) == (label.x, label.y, LabelSpot.RIGHT)
        assert (one.shift, label.shift) == ((0, 1), (0, 0)) and one.brief.isspace()


def test_a_way_just_as_long_as_what_is_drawn_is_not_called_cut_short() -> None:
    """Over all 25 ft long, of which 0.16 are 4 ft."""
    basin = Basin(ft(22), ft(10), inch(6), 2.0, inch(3), FloorShape.RECTANGLE)
    plan = Drawn(basin, 0.0, spout_distance=ft(4))
    assert plan.whole.bounds[2] == 12.5
    assert plan.drawing.keys[-1].words == "way in"
    assert plan.line(Stroke.DASHED).points[1][1] == pytest.approx(6.5 + 4)


@pytest.mark.parametrize("downhill", COMPASS)
@pytest.mark.parametrize("metric", [False, True])
def test_north_stands_at_the_top_left_and_turns_as_the_compass_does(
    downhill: str, metric: bool
) -> None:
    drawn = Drawn(bed(), 0.0507, metric, slope_direction=downhill)
    left, *_ = drawn.whole.bounds
    top = drawn.line(Stroke.DASHED).points[1][1]
    north, down = drawn.label("north"), drawn.label("downhill")
    for one in (north, down):
        assert (one.x, one.y) == pytest.approx((left, top), abs=0.011 * drawn.foot)
        assert one.place is LabelSpot.START
    assert down.arrow == (0.0, -1.0) and north.arrow is not None
    assert (north.shift, down.shift) == ((0, 0), (0, 1)) and down.brief.isspace()
    # From north clockwise to downhill is as far on the page as on the compass.
    turned = math.atan2(*north.arrow) + math.radians(45 * COMPASS.index(downhill))
    assert (math.sin(turned), math.cos(turned)) == pytest.approx(down.arrow)
    assert math.hypot(*north.arrow) == pytest.approx(1)


@pytest.mark.parametrize("metric", [False, True])
@pytest.mark.parametrize(("basin", "fall"), GARDENS)
def test_a_berm_is_drawn_where_one_is_built_and_nowhere_else(
    basin: Basin, fall: float | None, metric: bool
) -> None:
    drawn = Drawn(basin, fall, metric)
    lie = drawn.lie
    built = lie is not None and lie.crest_to_toe > 0.01
    assert bool(drawn.berms) is built
    if lie is None or not built:
        assert not any(one.stroke is Stroke.DOTTED for one in drawn.paths)
        return
    one = FOOT_M**2 if metric else 1.0
    area = unary_union([make_valid(Polygon(part)) for part in drawn.berms]).area
    rings = (make_valid(Polygon(ring)).area for ring in (lie.footprint, lie.inside_line))
    between = next(rings) - next(rings)
    assert area == pytest.approx(between * one, rel=2e-3)
    whole_round = (basin, fall) in ((BEDS[3], 0.02), (BEDS[3], 0.0507), (BEDS[-1], 0.02))
    assert len(drawn.berms) == 1 or basin.shape is FloorShape.OWN
    for part, toe in zip(drawn.berms, drawn.lines(Stroke.DOTTED), strict=True):
        half = len(part) // 2
        crest = part[half:][::-1]
        assert part[:half] == toe.points
        assert all(drawn.rim.distance(Point(at)) < 1e-6 for at in crest)
        if whole_round:
            assert math.dist(toe.points[0], toe.points[-1]) < 1e-9
            continue
        # It runs out to nothing at either end, at the last place where there is none of it.
        wide = [math.dist(*two) / drawn.foot for two in zip(toe.points, crest, strict=True)]
        assert max(wide[0], wide[-1]) <= 0.01 + 1e-9 < min(wide[1], wide[-2])


@pytest.mark.parametrize(("basin", "fall"), GARDENS)
def test_every_line_of_the_plan_has_its_points_once_and_parts_two_materials(
    basin: Basin, fall: float | None
) -> None:
    drawn = Drawn(basin, fall)
    assert drawn.drawing.ground is Material.LAWN
    for stroke in (Stroke.HEAVY, Stroke.WATER, Stroke.SOLID):
        (ring,) = (one.points for one in drawn.paths if one.stroke is stroke and one.closed)
        assert min(math.dist(a, b) for a, b in pairwise([*ring, ring[0]])) > 1e-9
    # Where there is paint it parts them, but for the way in, which is a line by itself.
    for one in drawn.paths:
        assert one.border is (one.hatch is None and one.stroke is not Stroke.DASHED), one
    filled = [(one.material, one.closed) for one in drawn.paths if one.material]
    layers = [Material.RIM, Material.SIDE, Material.FLOOR, Material.STONE, Material.STONE]
    assert filled == [(one, True) for one in [*[Material.BERM] * len(drawn.berms), *layers]]


@pytest.mark.parametrize(("basin", "fall"), GARDENS)
def test_the_floor_is_named_in_its_middle_and_within_it(basin: Basin, fall: float | None) -> None:
    drawn = Drawn(basin, fall)
    label = drawn.label("level floor")
    assert (label.x, label.y) == (0, pytest.approx(sum(crossings(drawn.floor, 0)) / 2, abs=1e-6))
    assert label.outline == tuple(drawn.floor.coords)[:-1]
    (left, _, right, _), (low, high) = drawn.floor.bounds, crossings(drawn.floor, 0)
    assert label.within == pytest.approx((left, low, right, high))


@pytest.mark.parametrize("direction", ["flat", "sw"])
@pytest.mark.parametrize(("basin", "fall"), GARDENS)
def test_key_and_description_name_what_is_drawn(
    basin: Basin, fall: float | None, direction: str
) -> None:
    drawn = Drawn(basin, fall, slope_direction=direction)
    berm = bool(drawn.berms)
    said = drawn.drawing.description
    assert ("A berm stands downhill, outside the rim; with it all is" in said) is berm
    assert ("Downhill is to the southwest" in said) is (direction == "sw")
    assert ("Downhill" in said) is (direction == "sw")
    rim = "rim (crest, and edge of the cut) " if berm else "rim "
    kind = "notch" if berm or fall is None else "lip"
    keys = [(one.sample, one.words, one.material) for one in drawn.drawing.keys]
    want = [
        (Stroke.HEAVY, rim, Material.RIM), (Stroke.WATER, "full pond ", Material.SIDE),
        (Stroke.SOLID, "level floor ", Material.FLOOR),
        (Stroke.NOTCH, f"overflow {kind}", Material.STONE), (Symbol.INLET, "inlet", None),
        (Stroke.DASHED, "way in, cut short here", None),
    ]  # fmt: skip
    toe = (Stroke.DOTTED, "toe of the berm", None)
    want = [toe, (Hatch.FILL, "berm", Material.BERM), *want] if berm else want
    for (sample, words, material), (one, start, filled) in zip(keys, want, strict=True):
        assert (sample, material) == (one, filled)
        assert words.startswith(start) and re.fullmatch(
            r"[\d /×]*( ?(ft|in)[\d /×]*)*", words[len(start) :]
        )


def test_plants_are_drawn_between_the_lines_of_floor_pond_and_rim() -> None:
    given: list[object] = []

    def plants(*lines: object) -> Iterable[Mark]:
        given.extend(lines)
        return [Mark(0, 0, Symbol.CROSS)]

    drawn = Drawn(bed(), 0.0507, planting=plants)
    rings = (drawn.floor, drawn.pond, drawn.rim)
    assert given == [tuple(one.coords)[:-1] for one in rings]
    assert drawn.drawing.shapes[-1] == Mark(0, 0, Symbol.CROSS)


def test_sizes_are_in_feet_unless_metres_are_asked_for() -> None:
    assert plan_sizes(bed(), None, ft(2)) == plan_sizes(bed(), None, ft(2), metric=False)


@pytest.mark.parametrize("fall", FALLS)
@pytest.mark.parametrize("direction", ["flat", "s"])
def test_what_is_said_of_downhill_is_what_is_known(fall: float | None, direction: str) -> None:
    notes = Drawn(bed(), fall, slope_direction=direction).drawing.notes
    if direction == "s":
        assert notes[0] == "Downhill is to the south."
    elif fall:
        assert "no compass point was given" in notes[0]
    else:
        assert "put the notch where the overflow may run" in notes[0]
    assert ("no berm is drawn" in "".join(notes)) is (fall is None)


def side_words(drawn: Drawn) -> dict[str, tuple[int, int, int]]:
    """Return the row, the first and the last column of each text of a plan beside its sizes."""
    placed = lay_out(drawn.drawing.bare, 76, 30, Look(printed=True))
    return {
        one.label.text: (one.row, one.column, one.column + one.columns - 1) for one in placed.texts
    }


@pytest.mark.parametrize("metric", [False, True])
@pytest.mark.parametrize(("basin", "fall"), GARDENS)
def test_where_the_sizes_stand_beside_the_plan_it_tells_the_berm_and_the_overflow(
    basin: Basin, fall: float | None, metric: bool
) -> None:
    def none(*_: object) -> Iterable[Label]:
        return ()

    drawn = Drawn(basin, fall, metric, planting=none, dimensioned=False)
    assert not any(one.text == "level floor" for one in drawn.labels)
    assert drawn.drawing.bounds == Drawn(basin, fall, metric, planting=none).drawing.bounds
    samples = [one.sample for one in drawn.drawing.keys]
    toe = [Stroke.DOTTED] if drawn.berms else []
    assert samples == [*toe, Stroke.HEAVY, Stroke.WATER, Stroke.SOLID]
    assert len(drawn.drawing.detail) == bool(drawn.berms)
    for berm in drawn.drawing.detail:
        assert isinstance(berm, Label) and berm.text.startswith("berm ")
        toe_at, crest = lowest(drawn.whole, 0), lowest(drawn.rim, 0)
        told, off = told_length(berm.text)
        assert told == pytest.approx(crest - toe_at, abs=off + 1e-6)
        assert (berm.x, berm.y) == (0, pytest.approx((crest + toe_at) / 2, abs=1e-6))
        assert berm.on_hatch is Hatch.FILL
    arrow, words = (one for one in drawn.labels if not one.text or "overflow" in one.text)
    assert (arrow.text, arrow.arrow, arrow.place) == ("", (0.0, -1.0), LabelSpot.BELOW)
    assert (arrow.x, arrow.y) == (words.x, words.y) and words.arrow is None
    # One line down, as an arrow under its point is, and two blanks before that.
    assert (words.place, words.shift) == (LabelSpot.LEFT, (-1, 1))
    places = side_words(drawn)
    (row, column, _), told_at = places[""], places[words.text]
    # The words before the arrow, or close by it where they have no room.
    if basin.shape is FloorShape.RECTANGLE and basin.floor_length == ft(14):
        assert told_at[0] == row and 1 <= column - told_at[2] <= 3
    assert abs(told_at[0] - row) <= 2 and -8 <= column - told_at[2] <= 12


@pytest.mark.parametrize("look", [Look(), Look(painted=True)], ids=str)
@pytest.mark.parametrize(("columns", "rows"), [(60, 20), (78, 26)])
@pytest.mark.parametrize("metric", [False, True])
def test_no_words_of_the_plan_lie_on_others_and_each_stands_by_what_it_names(
    columns: int, rows: int, metric: bool, look: Look
) -> None:
    """No nearer than a blank, within the frame; a word may be moved by eight columns, one line."""
    for basin, fall in GARDENS[::4]:
        for dimensioned in (True, False):
            drawn = Drawn(basin, fall, metric, slope_direction="sw", dimensioned=dimensioned)
            placed = lay_out(drawn.drawing, columns, rows, look)
            cells = [
                (one.column + at, one.row) for one in placed.texts for at in range(-1, one.columns)
            ]
            assert len(set(cells)) == len(cells), (basin, fall)
            for one in placed.texts:
                assert one.column >= 0 and one.column + one.columns <= columns
                assert 0 <= one.row < placed.grid.rows
                x, y = placed.frame.at(one.label.x, one.label.y)
                off = max(one.column - x, x - (one.column + one.columns - 1), 0)
                near = one.label.within is not None or one.text.startswith("(")
                assert near or (off <= 8 + 3 and abs(one.row - y) <= 1 + 1 + 1.5), (one, x, y)
