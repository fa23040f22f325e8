"""The overflow notch and the pipe."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from interview.garden.earth.overflow import (
    MANNING_CORRUGATED,
    MANNING_SMOOTH,
    head_finding,
    notch,
    peak_flow,
    pipe_fall,
    pipe_finding,
    pipe_full_flow,
    weir_head,
    weir_width,
)
from interview.quantities.evidence import Grade
from interview.quantities.units import magnitude, quantity


def inch(number):
    return quantity(number, "in")


def flow(value):
    return magnitude(value, "ft**3/s")


ROOF = peak_flow(quantity(600, "ft**2"), 0.95, quantity(7, "in/h"))
METRIC = quantity(4.0, "L/s")


def test_a_roof_in_a_cloudburst():
    assert flow(ROOF) == pytest.approx(0.09236, abs=5e-6)
    made = notch(ROOF)
    assert magnitude(made.width_needed, "ft") == pytest.approx(0.522, abs=5e-4)
    assert magnitude(made.width, "ft") == 1.0
    run = weir_head(ROOF, quantity(1.5, "ft"))
    assert magnitude(run, "in") == pytest.approx(0.99, abs=5e-3)


def test_a_metric_roof_in_a_cloudburst():
    rain = peak_flow(quantity(80, "m**2"), 1.0, quantity(180, "mm/h"))
    assert magnitude(rain, "L/s") == pytest.approx(4.0)
    wide = weir_width(rain, quantity(50, "mm"), metric=True)
    assert magnitude(wide, "m") == pytest.approx(0.2485, abs=5e-5)
    assert magnitude(notch(rain, metric=True).width, "m") == pytest.approx(0.3)


@pytest.mark.parametrize(("area", "needed", "head"), [(810, 0.7419, 1.251), (881.3, 0.8072, 1.323)])
def test_a_notch_of_eighteen_inches(area, needed, head):
    peak = peak_flow(quantity(area, "ft**2"), 1.0, quantity(7, "in/h"))
    made = notch(peak, width=quantity(1.5, "ft"))
    assert magnitude(made.width_needed, "ft") == pytest.approx(needed, rel=5e-4)
    assert magnitude(made.head, "in") == pytest.approx(head, rel=5e-4)


def test_a_trickle_still_gets_a_notch_of_a_foot():
    assert magnitude(notch(quantity(0.005, "ft**3/s")).width, "ft") == 1.0
    assert magnitude(notch(quantity(0.1, "L/s"), metric=True).width, "m") == pytest.approx(0.3)


def test_a_wide_notch_is_raised_to_half_a_foot():
    peak = quantity(0.25, "ft**3/s")
    assert magnitude(notch(peak).width, "ft") == 1.5
    assert magnitude(notch(peak).head, "in") < 2


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
    made = notch(ROOF, width=quantity(1.5, "ft"))
    assert head_finding(made, inch(4)).grade is Grade.GOOD
    low = head_finding(made, inch(1.9))
    assert low.grade is Grade.FIX
    assert low.change


def test_a_pipe_of_eighteen_feet_falls_enough():
    fall = pipe_fall(quantity(18, "ft"), inch(7), inch(6.56), inch(6))
    assert magnitude(fall.available, "in") == pytest.approx(7.56)
    assert magnitude(fall.needed, "in") == pytest.approx(5.16)
    assert pipe_finding(fall).grade is Grade.GOOD


def test_a_pipe_on_flat_ground_lacks_fall():
    fall = pipe_fall(quantity(40, "ft"), inch(1), inch(6), inch(6))
    found = pipe_finding(fall)
    assert found.grade is Grade.FIX
    assert "lacks 6.8 in" in found.change
    assert "mm" in pipe_finding(fall, metric=True).said


def test_a_four_inch_pipe_carries_the_roof():
    smooth = pipe_full_flow(inch(4), 0.01, MANNING_SMOOTH.value)
    rough = pipe_full_flow(inch(4), 0.01, MANNING_CORRUGATED.value)
    assert flow(smooth) == pytest.approx(0.2249, rel=5e-4)
    assert flow(rough) == pytest.approx(0.1031, rel=5e-4)
    assert magnitude(smooth, "L/s") == pytest.approx(6.369, rel=5e-4)


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: peak_flow(quantity(600, "ft**2"), 1.2, quantity(7, "in/h")),
        lambda: peak_flow(quantity(600, "ft**2"), 0.9, quantity(0, "in/h")),
        lambda: peak_flow(quantity(-6, "ft**2"), 0.9, quantity(7, "in/h")),
        lambda: weir_width(ROOF, inch(0)),
        lambda: weir_head(ROOF, inch(-1)),
        lambda: pipe_full_flow(inch(4), 0.0, 0.011),
        lambda: pipe_fall(quantity(-1, "ft"), inch(7), inch(6), inch(6)),
    ],
)
def test_what_cannot_be_is_refused(wrong):
    with pytest.raises(ValueError, match=r"\.$"):
        wrong()
