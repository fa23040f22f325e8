"""Plant counts from spacing.

Step 6: Choose the Right Time, Right Plant, Right Place, Alabama Cooperative Extension System
(ACES), spacing equation of shifted rows; read in a second copy. Its worked example: 100 square
feet at 2 feet, 29 plants (2 x 0.866 x 2 = 3.4 square feet each). Counts are whole plants, so the
tolerance is none.
"""

from interview.garden.planting.count import ROW_SHARE, plant_count
from interview.quantities.units import quantity


def test_the_example_of_100_square_feet_at_2_feet():
    assert plant_count(quantity(100, "ft**2"), quantity(2, "ft")) == 29


def test_the_row_share_is_the_one_printed():
    assert ROW_SHARE.value == 0.866
    assert "Alabama" in ROW_SHARE.source.title
    # Printed cut short, not rounded: 3.464 stands as 3.4.
    assert int(2 * ROW_SHARE.value * 2 * 10) / 10 == 3.4


def test_arithmetic_of_the_same_equation_at_90_square_feet_and_18_inches():
    """Computed by hand from the equation, not printed."""
    assert plant_count(quantity(90, "ft**2"), quantity(18, "in")) == 47
