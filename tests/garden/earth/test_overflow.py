"""The overflow notch and the pipe."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from measures import inch

from interview.garden.earth.overflow import (
    MANNING_CORRUGATED,
    MANNING_PIPE,
    Notch,
    PipeFall,
    head_finding,
    no_pipe_sold_finding,
    no_pipe_words,
    notch,
    peak_flow,
    pipe_choice,
    pipe_fall,
    pipe_finding,
    pipe_full_flow,
    swale_finding,
    weir_head,
    weir_width,
    widest_pipe,
)
from interview.quantities.evidence import Grade
from interview.quantities.units import magnitude, quantity


def flow(value):
    return magnitude(value, "ft**3/s")


ROOF = peak_flow(quantity(600, "ft**2"), 0.95, quantity(7, "in/h"))
METRIC = quantity(4.0, "L/s")


def test_a_roof_in_a_cloudburst():
    assert flow(ROOF) == pytest.approx(0.09236, abs=5e-6)
    assert flow(peak_flow(quantity(600, "ft**2"), 0, quantity(7, "in/h"))) == 0
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
    assert low.said.endswith("the rim stands 1 3/4 in above the notch.")


def test_the_rim_over_the_peak_flow_is_told(subtests):
    for unit, runs, rim, lip, grade, limit, says in [
        ("in", 1, 2, False, Grade.GOOD, "1 in or more to spare", "2 in above the notch."),
        ("in", 1.5, 1.5, True, Grade.GOOD, "no deeper than the lawn is high", "above the lip."),
        ("in", 1.5, 1.4, True, Grade.FIX, "no deeper than the lawn is high", "above the lip."),
        ("mm", 25, 50, False, Grade.GOOD, "25 mm or more to spare", "50 mm above the notch."),
        ("mm", 25, 49, False, Grade.FIX, "25 mm or more to spare", "49 mm above the notch."),
    ]:
        with subtests.test(unit=unit, runs=runs, rim=rim):
            head, high = quantity(runs, unit), quantity(rim, unit)
            made = Notch(ROOF, inch(12), inch(12), head, lip)
            found = head_finding(made, high, metric=unit == "mm")
            assert (found.grade, found.limit) == (grade, limit)
            assert found.said.endswith(says)
            assert found.said.startswith("At the peak the overflow runs 25 mm" if unit == "mm"
                                         else "At the peak the overflow runs 1")  # fmt: skip
            assert found.brief.line.startswith("Fine:" if grade is Grade.GOOD else "TOO LOW:")


def test_a_four_inch_pipe_carries_the_roof():
    smooth = pipe_full_flow(inch(4), 1 / 96, MANNING_PIPE.value)
    rough = pipe_full_flow(inch(4), 1 / 96, MANNING_CORRUGATED.value)
    # Manning by hand: A 0.08727 ft², R 1/12 ft, 1.486 / 0.015 x A x R^(2/3) x sqrt(1/96).
    assert flow(smooth) == pytest.approx(0.1683, rel=5e-4)
    assert flow(rough) == pytest.approx(0.1683 * 15 / 24, rel=5e-4)
    assert magnitude(smooth, "L/s") == pytest.approx(4.768, rel=5e-4)


def manning(inner_m, roughness=0.015):
    """Manning's formula for a pipe just full, in m³/s: R is a quarter of the width."""
    area = math.pi * inner_m**2 / 4
    return area * (inner_m / 4) ** (2 / 3) * math.sqrt(1 / 96) / roughness


def test_the_narrowest_pipe_that_carries_the_flow_is_taken(subtests):
    for sold, metric, unit, m in [
        ((4, 6, 8), False, "in", 0.0254), ((100, 150, 200), True, "mm", 1e-3),
    ]:  # fmt: skip
        can = [manning(width * m) for width in sold]
        assert magnitude(widest_pipe(metric), unit) == pytest.approx(sold[-1])
        for flow_m3, place in [(0.9 * can[0], 0), (1.01 * can[0], 1), (0.99 * can[2], 2),
                               (1.01 * can[2], None)]:  # fmt: skip
            with subtests.test(metric=metric, place=place):
                found = pipe_choice(quantity(flow_m3, "m**3/s"), 1 / 96, metric)
                at = 2 if place is None else place
                wide = found.width and magnitude(found.width, unit)
                assert wide == (None if place is None else pytest.approx(sold[place]))
                smooth, rough = manning(sold[at] * m), manning(sold[at] * m, 0.024)
                assert magnitude(found.smooth, "m**3/s") == pytest.approx(smooth)
                assert magnitude(found.corrugated, "m**3/s") == pytest.approx(rough)
                assert magnitude(found.four, "m**3/s") == pytest.approx(can[0])


def test_a_pipe_needs_its_cover_its_own_width_and_its_fall(subtests):
    # By hand: 6 + 4.2 + 480/96 in and 150 + 160 + 4800/96 mm; 8.4 in outside for 8.
    for length, there, width, metric, needed, said in [
        (480, 15.2, 4, False, 15.2, "A covered pipe needs the ground to fall 15.2 in; it falls "),
        (480, 19.3, 8, False, 19.4, "No pipe here, because the ground falls only 19.3 in and a "
         "pipe needs 19.4 in."),
        (481, 19.3, 8, False, 19.410417, "No pipe here, because the ground falls only 19.3 in"),
        (4800, 360, 150, True, 360, "A covered pipe needs the ground to fall 360 mm; it falls "),
        (4825, 359.4, 150, True, 360.260417, "No pipe here, because the ground falls only 359 mm "
         "and a pipe needs 360 mm."),
        (4850, 400, 150, True, 360.520833, "A covered pipe needs the ground to fall 361 mm; "),
    ]:  # fmt: skip
        with subtests.test(length=length, there=there, metric=metric):
            unit = "mm" if metric else "in"
            fall = pipe_fall(
                quantity(length, unit), quantity(there, unit), quantity(width, unit), metric
            )
            assert magnitude(fall.needed, unit) == pytest.approx(needed)
            found = pipe_finding(fall, metric)
            assert found.said.startswith(said)
            assert (found.grade is Grade.FIX) == (there < needed - 1e-9)
            if not fall.enough:
                assert found.change == "Use a grass or stone channel."


def test_a_flow_that_no_pipe_carries_is_told_up():
    assert "0.0924 ft³/s." in no_pipe_sold_finding(ROOF).said
    assert "4.01 L/s." in no_pipe_sold_finding(quantity(4.001, "L/s"), metric=True).said
    assert no_pipe_sold_finding(ROOF).change == "Use a grass or stone channel."


def test_a_swale_is_as_long_as_the_overflow_lies_under_the_lawn():
    assert swale_finding(quantity(3.5, "ft")).change.startswith("Shape a grass swale 3 ft 6 in")
    metric = swale_finding(quantity(1.2, "m"), metric=True)
    assert metric.change.startswith("Shape a grass swale 1.2 m") and metric.grade is Grade.GOOD


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: peak_flow(quantity(600, "ft**2"), 1.2, quantity(7, "in/h")),
        lambda: peak_flow(quantity(600, "ft**2"), 0.9, quantity(0, "in/h")),
        lambda: peak_flow(quantity(-6, "ft**2"), 0.9, quantity(7, "in/h")),
        lambda: weir_width(ROOF, inch(0)),
        lambda: weir_head(ROOF, inch(-1)),
        lambda: pipe_full_flow(inch(4), 0.0, 0.015),
        lambda: pipe_full_flow(inch(4), 0.01, 0.0),
        lambda: pipe_full_flow(inch(4), 1.01, 0.015),
        lambda: pipe_fall(quantity(-1, "ft"), inch(7), inch(4)),
        lambda: pipe_fall(quantity(9, "ft"), inch(7), inch(5)),
        lambda: notch(ROOF, inch(0)),
    ],
)
def test_what_cannot_be_is_refused(wrong):
    with pytest.raises(ValueError, match=r"\.$"):
        wrong()


def test_the_fall_of_a_pipe_is_told_up_and_one_that_lacks_to_a_tenth():
    told = pipe_finding(PipeFall(needed=inch(12.341), available=inch(13.14))).said
    assert told == "A covered pipe needs the ground to fall 12.4 in; it falls 13 1/4 in."
    lacks = PipeFall(needed=inch(12.347), available=inch(3.14))
    assert no_pipe_words(lacks, False).startswith(
        "No pipe here, because the ground falls only 3.1 in and a pipe needs 12.3 in: "
    )


def test_a_pipe_is_of_a_width_that_is_sold_but_for_rounding():
    pipe_fall(inch(100), inch(20), inch(4 + 2e-6))
    with pytest.raises(ValueError, match="No pipe of that width"):
        pipe_fall(inch(100), inch(20), inch(4 + 6e-6))
