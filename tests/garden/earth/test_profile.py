"""The cut along the slope and the levels from one string, worked by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon

from interview.garden.earth.profile import (
    Profile,
    level_lines,
    level_table,
    reading_words,
    string_height,
)
from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Ground, Lie, Sets, lie_of, winged
from interview.garden.form.outline import Station, own_outline
from interview.quantities.units import magnitude, quantity


def usual(
    fall: float = 0.0507,
    rim: float = 2,
    shape: FloorShape = FloorShape.ROUNDED,
    mulch: float = 3,
    compost: float = 2,
) -> Lie:
    """Floor 14 by 7 ft, pond 6 in, sides 2 to 1; mulch and compost in inches."""
    basin = Basin(
        quantity(14, "ft"), quantity(7, "ft"), quantity(6, "in"), 2.0, quantity(rim, "in"), shape
    )
    return lie_of(basin, Ground(fall, mulch / 12, compost / 12))


def inches(points: tuple[tuple[float, float], ...]) -> list[tuple[float, float]]:
    return [(x * 12, z * 12) for x, z in points]


def near(points: list[tuple[float, float]]) -> list[object]:
    return [pytest.approx(point, abs=0.005) for point in points]


# By hand, in inches: the floor lies 8 (1 - 2 x 0.0507) - 0.0507 x 84 = 2.93 below the lawn; the
# crest is 16 from the floor, the berm's top ends at 28, and crest to toe is
# (8 - 2.93 + 0.0507 x 28) / (1 - 3 x 0.0507) = 7.6537, so that the toe is 3 x 7.6537 farther.
def test_the_finished_surface_of_the_usual_bed_is_the_one_worked_by_hand() -> None:
    assert inches(Profile(usual()).surface) == near(
        [(-16, 8), (0, 0), (84, 0), (84 + 16, 8), (84 + 28, 8), (84 + 50.961, 0.3463)]
    )


def test_a_rim_that_is_sown_is_dug_to_its_finished_surface_from_the_full_pond_up() -> None:
    lie = usual()
    cut = Profile(replace(lie, ground=replace(lie.ground, bare_rim=True)))
    # The pond of 6 in ends 12 in from the floor's edge: there the step of 3 in, and no mulch above.
    uphill = [(-16, 8), (-12, 6), (-12, 3), (0, -3), (0, -5)]
    downhill = [(84, -5), (84, -3), (96, 3), (96, 6), (100, 8)]
    assert inches(cut.dug) == near([*uphill, *downhill])
    assert sorted(inches(cut.mulch)) == near(
        [(-12, 3), (-12, 6), (0, -3), (0, 0), (84, -3), (84, 0), (96, 3), (96, 6)]
    )
    (berm,) = cut.berms
    assert inches(berm)[:5] == near([(94.768, 2.384), (96, 3), (96, 6), (100, 8), (112, 8)])


def test_the_dug_surface_is_the_mulch_below_the_sides_and_the_compost_below_the_floor() -> None:
    assert inches(Profile(usual()).dug) == near(
        [(-16, 8), (-16, 5), (0, -3), (0, -5), (84, -5), (84, -3), (100, 5), (100, 8)]
    )


def test_the_berm_begins_where_the_soil_under_the_mulch_leaves_the_old_ground() -> None:
    (berm,) = Profile(usual()).berms
    # q / 2 - 3 = 2.93 - 0.0507 q gives q = 5.93 / 0.5507 = 10.768, and there 2.384 over the floor.
    assert inches(berm) == near([(94.768, 2.384), (100, 5), (100, 8), (112, 8), (134.961, 0.3463)])


def test_where_the_soil_sets_the_depth_a_berm_closes_the_garden_uphill_too() -> None:
    lie = winged(usual(0.012, rim=6, shape=FloorShape.KIDNEY, mulch=0, compost=0))
    cut = Profile(lie)
    assert lie.sets is Sets.SOIL and cut.uphill.bermed
    downhill, uphill = cut.berms
    assert (uphill[-1], downhill[-1]) == (cut.surface[0], cut.surface[-1])
    for berm, edge, way in ((downhill, cut.floor, 1), (uphill, 0.0, -1)):
        out = [way * (x - edge) for x, _ in berm]
        assert out == sorted(out) and out[0] > 0
        # It begins and ends on the old ground, and stands over it between.
        over = [z - cut.ground(x) for x, z in berm]
        assert over[0] == pytest.approx(0, abs=1e-9) == over[-1]
        assert min(over[1:-1]) > 0
        assert max(z for _, z in berm) == pytest.approx(lie.height)


def test_level_ground_has_the_lawn_as_its_rim_and_no_berm() -> None:
    cut = Profile(usual(0.0, rim=1))
    assert not cut.bermed and not cut.berms
    assert inches(cut.surface) == near([(-14, 7), (0, 0), (84, 0), (98, 7)])
    assert inches(cut.dug)[1:3] == near([(-14, 4), (0, -3)])


def test_nearly_level_ground_has_no_berm_either() -> None:
    lie = usual(0.008, rim=1)
    assert lie.crest_to_toe == 0
    assert not Profile(lie).bermed
    # Uphill 7 in and 0.008 x 84 in: the side comes out at 7.672 / (1 - 0.016) = 7.797 in.
    assert inches(Profile(lie).surface)[0] == pytest.approx((-15.593, 7.797), abs=0.005)


def test_steep_ground_is_cut_higher_uphill_than_the_crest() -> None:
    cut = Profile(usual(0.11))
    # 0.11: t 3.04, so uphill (3.04 + 9.24) / 0.78 = 15.74 high, twice as far out.
    assert inches(cut.surface)[0] == pytest.approx((-31.49, 15.74), abs=0.01)
    assert cut.downhill.toe * 12 == pytest.approx(28 + 36, abs=0.01)


def test_a_winged_garden_closes_uphill_at_the_full_pond() -> None:
    wings = winged(usual())
    assert wings is not None
    cut = Profile(wings)
    assert cut.open_uphill and not cut.uphill.bermed
    assert inches(cut.surface)[0] == pytest.approx((-12, 6), abs=0.005)
    assert cut.uphill.pond * 12 == pytest.approx(12, abs=0.005)


def test_the_hollow_side_of_a_kidney_is_closed_by_a_low_bank() -> None:
    cut = Profile(usual(shape=FloorShape.KIDNEY))
    assert cut.floor == pytest.approx(7, abs=0.01)
    assert cut.uphill.bermed and len(cut.berms) == 2
    assert cut.uphill.rim_height == pytest.approx(8 / 12)


def test_the_cut_of_an_outline_of_ones_own_goes_through_its_middle() -> None:
    stations = (Station(0, 0, 0), Station(4, 3, 2), Station(8, 2, 4), Station(12, 0, 0))
    one = own_outline(stations)
    basin = Basin(
        quantity(one.length, "ft"), quantity(one.width, "ft"), quantity(6, "in"), 2.0,
        quantity(2, "in"), FloorShape.OWN, stations=stations,
    )  # fmt: skip
    lie = lie_of(basin, Ground(0.05, 0.25, 1 / 6))
    cut = Profile(lie)
    # Half way between the stations at 4 and 8: 2.5 ft uphill and 3 ft downhill of the string.
    assert cut.floor == pytest.approx(5.5)
    # The floor there begins 1 ft over its lowest point, which is 4 ft below the string.
    assert cut.ground(cut.floor) == pytest.approx(lie.floor_below + 0.05 * 1)


@given(st.floats(0, 0.13), st.sampled_from([2, 3, 6]), st.floats(0, 4), st.floats(0, 4))
def test_the_cut_closes_on_the_ground_whatever_the_slope(
    fall: float, rim: float, mulch: float, compost: float
) -> None:
    lie = usual(fall, rim, mulch=mulch, compost=compost)
    cut = Profile(lie)
    for x, z in (cut.surface[0], cut.surface[-1]):
        assert z == pytest.approx(cut.ground(x), abs=1e-6)
    assert [x for x, _ in cut.surface] == sorted(x for x, _ in cut.surface)
    across = cut.surface[-1][0] - cut.surface[0][0]
    assert across == pytest.approx(lie.footprint_width, abs=1e-6)
    # Every berm is a plain outline over the old ground (checked by shapely).
    for corners in cut.berms:
        assert Polygon(corners).is_valid
        assert all(z >= cut.ground(x) - 1e-6 for x, z in corners)


def test_a_berm_of_nothing_to_the_last_bit_is_drawn_from_its_rim() -> None:
    rim = max(z for _, z in Profile(usual()).dug)

    class OnTheRim(Profile):
        def ground(self, x: float) -> float:
            return rim

    # Without mulch the soil has its corner twice there.
    for mulch in (3.0, 0.0):
        assert all(len(corners) > 3 for corners in OnTheRim(usual(mulch=mulch)).berms)
        assert all(one[0] == one[1] for one in OnTheRim(usual(mulch=mulch)).berms)


def test_every_level_of_the_usual_bed_is_read_from_one_string_at_the_crest() -> None:
    rows = {row.point: magnitude(row.below_string, "in") for row in level_table(usual())}
    assert rows == {
        # 8 less (2.93 + 0.0507 x 84).
        "Ground at the uphill edge of the floor": pytest.approx(0.811, abs=0.002),
        # A tenth of 7.654 over the string.
        "Crest where highest, before it settles": pytest.approx(-0.765, abs=0.002),
        "Crest of the berm: the level string": 0,
        "Overflow: full pond, top of its stone": pytest.approx(2),
        "Ground at the downhill edge of the floor": pytest.approx(5.07, abs=0.002),
        "Ground at the outer foot of the berm": pytest.approx(7.654, abs=0.002),
        "Finished floor": pytest.approx(8),
        "Dig to here, at the foot of the sides": pytest.approx(11),
        "Dig to here, under the floor": pytest.approx(13),
    }
    for row in level_table(usual()):
        both = magnitude(row.above_floor, "in") + magnitude(row.below_string, "in")
        assert both == pytest.approx(8), row.point


def test_the_string_of_level_ground_is_at_the_lawn() -> None:
    rows = {row.point: magnitude(row.below_string, "in") for row in level_table(usual(0.0, 1))}
    assert next(iter(rows)) == "Ground at the uphill edge of the floor"
    assert rows["Lawn that is the rim: the level string"] == 0
    assert rows["Overflow, a low lip: the full pond"] == pytest.approx(1)
    assert rows["Dig to here, under the floor"] == pytest.approx(12)
    assert not [point for point in rows if "berm" in point or "Crest" in point]


def test_without_compost_or_mulch_no_level_is_told_of_them() -> None:
    bare = [row.point for row in level_table(usual(mulch=0, compost=0))]
    assert not [point for point in bare if "Dig to here" in point]
    compost = [row.point for row in level_table(usual(mulch=0))]
    assert [point for point in compost if "Dig to here" in point] == [
        "Dig to here, under the floor"
    ]


@pytest.mark.parametrize("metric", [False, True])
@pytest.mark.parametrize("fall", [0.0, 0.0507, 0.11])
def test_the_table_of_levels_fits_the_sheet_and_says_up_or_down(fall: float, metric: bool) -> None:
    lines = level_lines(level_table(usual(fall)), metric)
    assert max(map(len, lines)) <= 76
    assert any("the string" in line and line.endswith("at the string") for line in lines)
    assert any("Finished floor" in line and line.endswith("down") for line in lines)
    if fall == 0.11:
        assert lines[1].endswith("above it")


def test_a_reading_of_nothing_is_at_the_string() -> None:
    assert "-5 in" in level_lines(level_table(usual(mulch=5)))[-2]
    assert reading_words(quantity(0.05, "in"), False) == "at the string"
    assert reading_words(quantity(-20, "mm"), True) == "20 mm above it"


@pytest.mark.parametrize(
    ("below", "us", "metric"),
    [
        (2.93, "3/4 in above the lawn", "21 mm above the lawn"),
        (2.40, "1 1/4 in above the lawn", "34 mm above the lawn"),
        (3.74, "at the lawn", "at the lawn"),
        (4.80, "1 in below the lawn", "27 mm below the lawn"),
    ],
)
def test_the_string_is_tied_so_high_over_the_lawn_uphill(
    below: float, us: str, metric: str
) -> None:
    """By hand: 8 in, less what the floor lies below the lawn and its rise of 0.0507 x 84 = 4.26."""
    lie = usual().at_depth(below / 12)
    assert (string_height(lie, False), string_height(lie, True)) == (us, metric)


def test_the_corners_of_the_mulch_go_round_it() -> None:
    """Between the finished surface and what is dug 3 in below it, along 7 ft of floor and sides."""
    for lie in (usual(), replace(usual(), ground=replace(usual().ground, bare_rim=True))):
        ring = Polygon(Profile(lie).mulch)
        across = 84 + 2 * (12 if lie.ground.bare_rim else 16)
        assert ring.is_valid
        assert ring.area * 144 == pytest.approx(3 * across, abs=0.01)
