"""Which row of the published size table a garden falls in."""

import pytest

from interview.garden.size.size_factors import DepthRow, published_size
from interview.quantities.units import magnitude, quantity


@pytest.mark.parametrize(
    ("depth", "distance", "row", "covered"),
    [
        (4, 10, DepthRow.SHALLOW, True),
        (5.5, 10, DepthRow.SHALLOW, False),
        (6, 30, DepthRow.MIDDLE, True),
        (7.5, 10, DepthRow.MIDDLE, False),
        (8, 10, DepthRow.DEEP, True),
        (10, 10, DepthRow.DEEP, False),
        (2, 10, DepthRow.SHALLOW, False),
        (10, 31, DepthRow.FAR, True),
    ],
)
def test_the_row_follows_depth_and_distance(depth, distance, row, covered):
    found = published_size(quantity(1000, "ft**2"), quantity(depth, "in"), quantity(distance, "ft"))
    assert (found.row, found.covered) == (row, covered)
    assert found.sandy < found.silty < found.clayey


@pytest.mark.parametrize(
    ("depth", "row", "covered"),
    [
        (140, DepthRow.SHALLOW, False),
        (150, DepthRow.MIDDLE, True),
        (170, DepthRow.MIDDLE, True),
        (200, DepthRow.DEEP, True),
        (70, DepthRow.SHALLOW, False),
        (80, DepthRow.SHALLOW, True),
    ],
)
def test_a_metric_pond_falls_in_the_row_it_is_told_beside(depth, row, covered):
    found = published_size(
        quantity(50, "m**2"), quantity(depth, "mm"), quantity(5, "m"), metric=True
    )
    assert (found.row, found.covered) == (row, covered)


def test_a_size_needs_a_surface():
    with pytest.raises(ValueError, match="add one first"):
        published_size(quantity(0, "ft**2"), quantity(6, "in"), quantity(10, "ft"))


def test_the_table_takes_any_unit():
    found = published_size(quantity(100, "m**2"), quantity(150, "mm"), quantity(5, "m"))
    assert magnitude(found.silty, "m**2") == pytest.approx(34)
