"""Plant counts from spacing.

Step 6: Choose the Right Time, Right Plant, Right Place, Alabama Cooperative Extension System
(ACES), spacing equations; read in a second copy. Its worked example: 100 square feet at 2 feet,
25 plants in squares (2 x 2 = 4 square feet each) and 29 in triangles (2 x 0.866 x 2 = 3.4 square
feet each). Counts are whole plants, so the tolerance is none.
"""

import pytest

from interview.garden.planting.count import ROW_SHARE, Pattern, plant_count
from interview.quantities.units import quantity


@pytest.mark.parametrize(("pattern", "printed"), [(Pattern.SQUARE, 25), (Pattern.TRIANGULAR, 29)])
def test_the_example_of_100_square_feet_at_2_feet(pattern, printed):
    assert plant_count(quantity(100, "ft**2"), quantity(2, "ft"), pattern) == printed


def test_the_row_share_is_the_one_printed():
    assert ROW_SHARE.value == 0.866
    assert "Alabama" in ROW_SHARE.source.title
    # Printed cut short, not rounded: 3.464 stands as 3.4.
    assert int(2 * ROW_SHARE.value * 2 * 10) / 10 == 3.4


@pytest.mark.parametrize(("pattern", "count"), [(Pattern.SQUARE, 40), (Pattern.TRIANGULAR, 47)])
def test_arithmetic_of_the_same_equations_at_90_square_feet_and_18_inches(pattern, count):
    """Computed by hand from the equations, not printed."""
    assert plant_count(quantity(90, "ft**2"), quantity(18, "in"), pattern) == count


def test_a_one_foot_grid_of_plugs_is_one_a_square_foot():
    """Step 3: Planting and Maintaining the Rain Garden, University of Wisconsin-Extension."""
    assert plant_count(quantity(64, "ft**2"), quantity(1, "ft"), Pattern.SQUARE) == 64
