"""Where each plant of a drawing stands."""

import datetime as dt
from pathlib import Path

import pytest
from shapely.geometry import Point, Polygon

from interview.drawing import scene
from interview.drawing.paint import Tone, paint
from interview.drawing.scene import BLOOMS, Label, Material, Sprig
from interview.garden import pictures
from interview.garden.opening import plan_of
from interview.garden.planting.laid_out import letters, mark_of
from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.record import PlantKind
from interview.garden.store import load
from interview.quantities.units import magnitude

SAMPLES = Path(__file__).parents[3] / "sample_answers"
MAY = dt.datetime.fromisoformat("2026-05-30T09:00:00-05:00")


def of(drawing, material):
    """The outline of a material, by another library's polygon."""
    (path,) = [s for s in drawing.shapes if isinstance(s, scene.Path) and s.material is material]
    return Polygon(path.points)


@pytest.fixture(scope="module", params=["finished_us", "finished_metric"])
def plan(request):
    answers = load(SAMPLES / f"{request.param}.yaml")[0].answers
    return plan_of(answers, SAMPLES, MAY)


def test_every_plant_to_buy_is_drawn_in_its_own_zone(plan):
    drawing = pictures.planted_picture(plan)
    sprigs = [shape for shape in drawing.shapes if isinstance(shape, Sprig)]
    zones = plan.planting.chosen.zones
    names = letters(zones)
    lines = [of(drawing, one) for one in (Material.FLOOR, Material.SIDE, Material.RIM)]
    rings = [lines[0], lines[1] - lines[0], lines[2] - lines[1]]
    found = iter(sprigs)
    for zone, ring in zip(zones, rings, strict=True):
        want = {names[p.plant.scientific_name]: p.count for p in zone.picks if p.count}
        mine = [next(found) for _ in range(sum(want.values()))]
        assert {letter: sum(s.letter == letter for s in mine) for letter in want} == want
        for sprig in mine:
            assert ring.buffer(1e-6).contains(Point(sprig.x, sprig.y))
    assert next(found, None) is None


def test_plants_of_a_zone_stand_evenly_apart(plan):
    drawing = pictures.planted_picture(plan)
    sprigs = [(s.x, s.y) for s in drawing.shapes if isinstance(s, Sprig)]
    floor = of(drawing, Material.FLOOR)
    inside = [Point(at) for at in sprigs if floor.contains(Point(at))]
    nearest = [min(a.distance(b) for b in inside if b is not a) for a in inside]
    # A triangular grid of n plants on an area: the side of each triangle is sqrt(A / (0.866 n)).
    even = (floor.area / (0.866 * len(inside))) ** 0.5
    assert min(nearest) > 0.8 * even and max(nearest) < 1.35 * even


def test_areas_drawn_are_those_of_the_figures(plan):
    drawing = pictures.plan_picture(plan)
    unit = "m**2" if plan.metric else "ft**2"
    for material, area in (
        (Material.FLOOR, plan.size.garden.floor_area),
        (Material.SIDE, plan.size.garden.edge_area),
    ):
        assert of(drawing, material).area == pytest.approx(magnitude(area, unit), rel=0.03)


def test_the_overflow_stands_where_its_label_points(plan):
    drawing = pictures.plan_picture(plan)
    label = next(s for s in drawing.shapes if isinstance(s, Label) and "overflow" in s.text)
    stones = [
        s for s in drawing.shapes if isinstance(s, scene.Path) and s.material is Material.STONE
    ]
    xs = [[x for x, _ in stone.points] for stone in stones]
    assert any(min(one) <= label.x <= max(one) for one in xs)
    for columns, rows in ((48, 14), (78, 23), (92, 30)):
        picture = paint(drawing.bare, columns, rows).picture
        row, text = next(
            (at, line)
            for at, line in enumerate("".join(c.char for c in r) for r in picture)
            if "overflow" in line
        )
        start = text.index("↓")
        over = [picture[row - up][start + by].back for up in (1, 2) for by in (-1, 0, 1)]
        stone = [one for one in over if isinstance(one, Tone) and one.material is Material.STONE]
        assert stone, (columns, rows)


def test_water_in_the_section_stands_below_the_pond_level(plan):
    drawing = pictures.section_picture(plan)
    paths = [one for one in drawing.shapes if isinstance(one, scene.Path)]
    (line,) = [one for one in paths if one.stroke is scene.Stroke.WATER]
    (filled,) = [one for one in paths if one.material is Material.WATER]
    (level,) = {y for _, y in line.points}
    assert max(y for _, y in filled.points) == pytest.approx(level)
    picture = paint(drawing, 92, 26).picture
    # A line has an ink of its own; the texture of the water has its tone.
    level = next(
        at
        for at, row in enumerate(picture)
        if any(c.char == "~" and isinstance(c.fore, scene.Ink) for c in row)
    )
    water = [
        at
        for at, row in enumerate(picture)
        for cell in row
        if isinstance(cell.back, Tone) and cell.back.material is Material.WATER
    ]
    assert water and min(water) >= level


def test_letters_are_given_in_the_order_of_the_list(plan):
    zones = plan.planting.chosen.zones
    names = letters(zones)
    assert list(names.values())[:3] == ["a", "b", "c"]
    assert len(set(names.values())) == len(names)


def test_a_flower_is_drawn_in_its_own_color_where_the_list_knows_it(subtests):
    inks = {"yellow": "gold", "orange": "gold", "purple": "violet", "brown": "straw"}
    for plant in builtin_plants():
        with subtests.test(plant=plant.scientific_name):
            _, ink = mark_of(plant, 0)
            assert ink in BLOOMS
            if plant.kind is PlantKind.FORB:
                assert plant.flower_color
                assert ink == inks.get(plant.flower_color, plant.flower_color)
    unknown = builtin_plants()[0]._replace(kind=PlantKind.FORB, flower_color="")
    assert len({mark_of(unknown, place) for place in range(5)}) == 5
