"""The planting zones on the cross-section, with the hours each is under water."""

import pytest

from interview.drawing.canvas import cells
from interview.drawing.vector import svg
from interview.garden.form.basin import Basin
from interview.garden.form.lie import Ground, lie_of
from interview.garden.planting.section import cross_section
from interview.garden.storms.wet_zones import ZoneHours
from interview.quantities.units import quantity


@pytest.fixture
def drawn():
    """Return a maker of the section of one garden, with or without its hours."""
    basin = Basin(quantity(15, "ft"), quantity(7, "ft"), quantity(6, "in"), 3.0, quantity(4, "in"))
    lie = lie_of(basin, Ground(0.06, mulch=0.25))

    def make(*hours, metric=False):
        wet = ZoneHours(*(quantity(one, "h") for one in hours)) if hours else None
        return cross_section(lie, metric, wet)

    return make


@pytest.mark.parametrize("metric", [False, True])
def test_the_hours_of_floor_side_and_rim_are_drawn(drawn, metric):
    drawing = drawn(22.9, 7.6, 0.0, metric=metric)
    text = " ".join(" ".join(cells(drawing, 76, 30)).split())
    unit = "mm" if metric else "in"
    assert f"floor 0 {unit}, wet 23 h" in text
    assert "side, wet 7.6 h" in text
    assert "its edge wet 0 h" in text
    assert "side, wet 7.6 h" in svg(drawing, 180)
    assert "hours under water after the rain the garden holds" in " ".join(drawing.notes)


def test_without_hours_nothing_is_said_of_wetness(drawn):
    drawing = drawn()
    assert "wet" not in " ".join(cells(drawing, 76, 30)).lower()
    assert "under water" not in drawing.description


def test_the_side_is_marked_half_way_up_the_pond(drawn):
    (label,) = [one for one in drawn(20, 9, 1).shapes if getattr(one, "text", "")[:5] == "side,"]
    (pond,) = [
        one for one in drawn(20, 9, 1).shapes if getattr(one, "text", "").startswith("full pond")
    ]
    assert label.y == pytest.approx(pond.y / 2)
