"""A kidney fits a room by the extent it has there, and is never wider than it is long."""

from __future__ import annotations

from dataclasses import replace

import pytest

from interview.garden.form.basin import Basin
from interview.garden.form.lie import Ground
from interview.garden.form.outline import FloorShape, Outline
from interview.garden.size.room import fit_to_room
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


def test_a_kidney_wider_than_long_is_no_outline():
    Outline(FloorShape.KIDNEY, 8.0, 8.0)
    with pytest.raises(ValueError, match="longer than wide"):
        Outline(FloorShape.KIDNEY, 5.4, 20.3)
    with pytest.raises(ValueError, match="longer than wide"):
        _ = replace(kidney(), floor_width=quantity(12, "ft")).outline.area
