"""The spot and what is near it, drawn."""

from __future__ import annotations

from interview.drawing.scene import Material, Path, Stroke, extent
from interview.garden.site.yard import yard


def test_dashes_that_say_not_measured_leave_the_spot_its_colors():
    shapes = [one for one in yard((), None, None).shapes if isinstance(one, Path)]
    spot = next(one for one in shapes if one.material is Material.RIM)
    dashes = next(one for one in shapes if one.stroke is Stroke.DASHED)
    left, low, right, high = extent(spot.points)
    out_left, out_low, out_right, out_high = extent(dashes.points)
    assert min(left - out_left, low - out_low, out_right - right, out_high - high) > 1
    measured = [one for one in yard((), 15.0, 8.0).shapes if isinstance(one, Path)]
    assert not [one for one in measured if one.stroke is Stroke.DASHED]
