"""The overflow notch and the pipe."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from measures import inch

from interview.garden.earth.overflow import (
    MANNING_CORRUGATED,
    MANNING_PIPE,
    head_finding,
    notch,
    peak_flow,
    pipe_fall,
    pipe_full_flow,
    weir_head,
    weir_width,
)
from interview.quantities.evidence import Grade
from interview.quantities.units import magnitude, quantity


def flow(value):
    return magnitude(value, "ft**3/s")


ROOF = peak_flow(quantity(600, "ft**2"), 0.95, quantity(7, "in/h"))
METRIC = quantity(4.0, "L/s")


def test_a_roof_in_a_cloudburst():
    assert flow(ROOF) == pytest.approx(0.09236, abs=5e-6)
    made = notch(ROOF, inch(3))
    assert magnitude(made.width_needed, "ft") == pytest.approx(0.522, abs=5e-4)
    assert magnitude(made.width, "ft") == 1.0
    run = weir_head(ROOF, quantity(1.5, "ft"))
    assert magnitude(run, "in") == pytest.approx(0.99, abs=5e-3)


def test_a_metric_roof_in_a_cloudburst():
    rain = peak_flow(quantity(80, "m**2"), 1.0, quantity(180, "mm/h"))
    assert magnitude(rain, "L/s") == pytest.approx(4.0)
    wide = weir_width(rain, quantity(50, "mm"), metric=True)
    assert magnitude(wide, "m") == pytest.approx(0.2485, abs=5e-5)
    made = notch(rain, quantity(75, "mm"), metric=True)
    assert magnitude(made.width, "m") == pytest.approx(0.3)


def test_a_trickle_still_gets_a_notch_of_a_foot():
    assert magnitude(notch(quantity(0.005, "ft**3/s"), inch(2)).width, "ft") == 1.0
    small = notch(quantity(0.1, "L/s"), quantity(50, "mm"), metric=True)
    assert magnitude(small.width, "m") == pytest.approx(0.3)


def test_a_wide_notch_is_raised_to_half_a_foot():
    peak = quantity(0.25, "ft**3/s")
    assert magnitude(notch(peak, inch(3)).width, "ft") == 1.5
    assert magnitude(notch(peak, inch(3)).head, "in") < 2


@given(st.floats(0.001, 2), st.floats(0.2, 6))
def test_width_and_head_undo_each_other(rate, wide):
    peak = quantity(rate, "ft**3/s")
    back = weir_width(peak, weir_head(peak, quantity(wide, "ft")))
    assert magnitude(back, "ft") == pytest.approx(wide)


@given(st.floats(1, 5000), st.floats(0.1, 1), st.floats(0.5, 12))
def test_the_unit_of_rain_and_roof_does_not_matter(area, part, rain):
    one = peak_flow(quantity(area, "ft**2"), part, quantity(rain, "in/h"))
    other = peak_flow(quantity(area * 0.09290304, "m**2"), part, quantity(rain * 25.4, "mm/h"))
    assert flow(one) == pytest.approx(flow(other))


def test_the_berm_keeps_an_inch_to_spare():
    made = notch(ROOF, inch(2))
    assert head_finding(made, inch(2)).grade is Grade.GOOD
    low = head_finding(made, inch(1.8))
    assert low.grade is Grade.FIX
    assert low.change


def test_a_four_inch_pipe_carries_the_roof():
    smooth = pipe_full_flow(inch(4), 1 / 96, MANNING_PIPE.value)
    rough = pipe_full_flow(inch(4), 1 / 96, MANNING_CORRUGATED.value)
    # Manning by hand: A 0.08727 ft², R 1/12 ft, 1.486 / 0.015 x A x R^(2/3) x sqrt(1/96).
    assert flow(smooth) == pytest.approx(0.1683, rel=5e-4)
    assert flow(rough) == pytest.approx(0.1683 * 15 / 24, rel=5e-4)
    assert magnitude(smooth, "L/s") == pytest.approx(4.768, rel=5e-4)


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: peak_flow(quantity(600, "ft**2"), 1.2, quantity(7, "in/h")),
        lambda: peak_flow(quantity(600, "ft**2"), 0.9, quantity(0, "in/h")),
        lambda: peak_flow(quantity(-6, "ft**2"), 0.9, quantity(7, "in/h")),
        lambda: weir_width(ROOF, inch(0)),
        lambda: weir_head(ROOF, inch(-1)),
        lambda: pipe_full_flow(inch(4), 0.0, 0.015),
        lambda: pipe_fall(quantity(-1, "ft"), inch(7), inch(4)),
        lambda: pipe_fall(quantity(9, "ft"), inch(7), inch(5)),
        lambda: notch(ROOF, inch(0)),
    ],
)
def test_what_cannot_be_is_refused(wrong):
    with pytest.raises(ValueError, match=r"\.$"):
        wrong()
