"""What fits a room lies in it with its berm and cut edge; a kidney is longer than wide."""

from __future__ import annotations

from dataclasses import replace

import pytest

from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Ground
from interview.garden.form.outline import Outline
from interview.garden.size.basin import footprint_sides
from interview.garden.size.room import fit_to_room, shaped_to_room
from interview.quantities.units import magnitude, quantity


def kidney(long: float = 10.0, wide: float = 5.0) -> Basin:
    return Basin(
        floor_length=quantity(long, "ft"),
        floor_width=quantity(wide, "ft"),
        depth=quantity(3, "in"),
        side_slope=4.0,
        freeboard=quantity(2, "in"),
        shape=FloorShape.KIDNEY,
    )


@pytest.mark.parametrize("long, wide", [(39.0, 20.3), (20.3, 39.0), (25.0, 14.0), (60.0, 16.0)])
@pytest.mark.parametrize("fall", [0.0, 0.05, 0.12])
def test_the_largest_kidney_lies_within_its_room_and_along_it(long, wide, fall):
    from interview.garden.form.lie import lie_of

    ground = Ground(fall=fall)
    found = fit_to_room(quantity(long, "ft"), quantity(wide, "ft"), kidney(), ground)
    assert found.floor_length >= found.floor_width
    lie = lie_of(found, ground)
    xs, ys = zip(*lie.footprint, strict=True)
    assert max(xs) - min(xs) <= long + 0.01
    assert max(ys) - min(ys) <= wide + 0.01
    # What the floor is told to be is what is drawn: it lies along the slope.
    line = found.outline.line_at(0.0)
    assert max(x for x, _ in line) - min(x for x, _ in line) >= magnitude(found.floor_width, "ft")


def test_a_long_room_takes_a_longer_kidney_than_one_as_long_as_wide():
    found = fit_to_room(quantity(39, "ft"), quantity(20.3, "ft"), kidney(), Ground(fall=0.12))
    assert found.floor_length > found.floor_width * 2


@pytest.mark.parametrize("shape", [FloorShape.OVAL, FloorShape.ROUNDED, FloorShape.RECTANGLE])
def test_no_bed_of_a_grid_that_fits_the_room_is_much_larger_than_the_one_found(shape):
    """Held against every bed of whole and half feet: the widest may have no length left."""
    high = {"depth": quantity(6, "in"), "freeboard": quantity(1, "in"), "side_slope": 2.0}
    bed = replace(kidney(), shape=shape, **high)
    ground = Ground(fall=0.048, mulch=0.25, compost=1 / 12, top=1.0)
    room = 30.1, 17.0
    found = fit_to_room(*(quantity(one, "ft") for one in room), bed, ground)
    for wide in (two / 2 for two in range(4, 28)):
        for long in (two / 2 for two in range(int(found.floor_area.m / wide * 2), 56)):
            tried = replace(
                bed, floor_length=quantity(long, "ft"), floor_width=quantity(wide, "ft")
            )
            sides = (magnitude(one, "ft") for one in footprint_sides(tried, ground))
            if any(one > most for one, most in zip(sides, room, strict=True)):
                break
            assert tried.floor_area.m <= found.floor_area.m * 1.05, (long, wide)


def bed_of(long: float, wide: float, shape: FloorShape = FloorShape.RECTANGLE) -> Basin:
    """Sides 2:1 that rise 8 in: 2 ft 8 in more than the floor, each way."""
    rim = {"depth": quantity(6, "in"), "side_slope": 2.0, "freeboard": quantity(2, "in")}
    return Basin(quantity(long, "ft"), quantity(wide, "ft"), shape=shape, **rim)


def sides_of(bed: Basin | None) -> list[float] | None:
    return bed and [magnitude(one, "ft") for one in (bed.floor_length, bed.floor_width)]


@pytest.mark.parametrize("long, wide", [(8, 30), (30, 8), (12, 12)])
def test_a_bed_of_straight_sides_fills_a_room_of_any_shape(long, wide):
    found = fit_to_room(quantity(long, "ft"), quantity(wide, "ft"), bed_of(20, 10))
    assert sides_of(found) == pytest.approx([long - 8 / 3, wide - 8 / 3], abs=0.02)


@pytest.mark.parametrize(
    ("shape", "wanted", "room", "area", "found"),
    [
        # By hand: 15 ft less 2 ft 8 in leave 12 ft of floor, and 200 / 12 is 16.7.
        (FloorShape.RECTANGLE, (20, 10), (15, 60), 200, [12, 17]),
        (FloorShape.RECTANGLE, (20, 10), (60, 8), 200, [40, 5]),
        # What is enough at once is the side that was wanted, up to a half foot.
        (FloorShape.RECTANGLE, (20.3, 10.2), (15, 60), 1, [12, 10.5]),
        (FloorShape.RECTANGLE, (20.3, 10.2), (60, 8), 1, [20.5, 5]),
        (FloorShape.RECTANGLE, (20, 10), (15, 19), 200, None),
        # A kidney is never wider than long.
        (FloorShape.KIDNEY, (20, 10), (15, 60), 1, [12, 10]),
        (FloorShape.KIDNEY, (20, 12), (15, 60), 1, [12, 12]),
        (FloorShape.KIDNEY, (20, 10), (15, 60), 200, None),
        (FloorShape.KIDNEY, (30, 10), (60, 8), 100, [30, 5]),
    ],
)
def test_the_side_that_fits_grows_until_it_is_enough(shape, wanted, room, area, found):
    sides = tuple(quantity(one, "ft") for one in room)
    most = quantity(area, "ft**2")
    bed = shaped_to_room(bed_of(*wanted, shape), sides, lambda one: one.floor_area >= most)
    assert sides_of(bed) == (found and pytest.approx(found))


def test_a_kidney_wider_than_long_is_no_outline():
    Outline(FloorShape.KIDNEY, 8.0, 8.0)
    with pytest.raises(ValueError, match="longer than wide"):
        Outline(FloorShape.KIDNEY, 5.4, 20.3)
    with pytest.raises(ValueError, match="longer than wide"):
        _ = replace(kidney(), floor_width=quantity(12, "ft")).outline.area


@pytest.mark.parametrize("fall", [0.02, 0.06, 0.114])
@pytest.mark.parametrize("shape", [FloorShape.OVAL, FloorShape.ROUNDED, FloorShape.KIDNEY])
def test_what_is_shaped_to_a_room_fits_it_with_its_berm_and_cut(fall, shape):
    """A narrower floor is dug less deep uphill, so that its berm may reach farther along."""
    ground = Ground(fall=fall, mulch=0.16, top=1.0)
    wanted = replace(kidney(10.0, 2.0), shape=shape, side_slope=5.0)
    for long, wide in ((14.4, 18.8), (15.0, 30.0), (40.0, 14.0), (13.0, 13.0)):
        sides = quantity(long, "ft"), quantity(wide, "ft")
        found = shaped_to_room(wanted, sides, lambda _: True, ground=ground)
        if found is not None:
            taken = footprint_sides(found, ground)
            assert magnitude(taken[0], "ft") <= long + 1e-6, (long, wide, taken)
            assert magnitude(taken[1], "ft") <= wide + 1e-6, (long, wide, taken)
