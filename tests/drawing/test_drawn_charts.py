"""Charts of the soak test, of a storm, and bars."""

import re
import xml.etree.ElementTree as ET

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from measures import depth_at, h, inch

from interview.drawing.canvas import cells
from interview.drawing.scale import round_step, ticks
from interview.drawing.scene import Mark, Path, Stroke, Symbol
from interview.drawing.vector import svg
from interview.garden.form.basin import Basin
from interview.garden.pond.hyetographs import triangle_storm, uniform_storm
from interview.garden.pond.pool import pool
from interview.garden.pond.routing import route
from interview.garden.soak.hole import Hole, HoleShape
from interview.garden.soak.rates import soak_test
from interview.garden.soak.readings import Reading
from interview.garden.storms.charts import bars, drop_chart, pond_chart
from interview.quantities.units import magnitude, quantity


def joined(lines):
    return " ".join(" ".join(lines).split())


@pytest.fixture
def worked_test():
    """A round hole 8 in wide, read each hour."""
    readings = [Reading(h(i), inch(d)) for i, d in ((1, 6.9), (2, 5.75), (3, 4.9), (4, 4.125))]
    return soak_test(Hole(HoleShape.ROUND, inch(8)), inch(8), readings)


@pytest.fixture
def worked_pond():
    """Floor 15 by 7 ft, 6 in deep, 570 ft2, 0.25 in/h."""
    basin = Basin(quantity(15, "ft"), quantity(7, "ft"), inch(6), 3, inch(4))
    return pool(basin.stage, quantity(570, "ft**2"), basin.rim_area, quantity(0.25, "in/h"))


def test_the_drop_chart_is_readable_on_small_screens(subtests, worked_test):
    for braille in [False, True]:
        for columns, rows in [(76, 18), (56, 14)]:
            with subtests.test(columns=columns, rows=rows, braille=braille):
                lines = cells(drop_chart(worked_test), columns, rows, braille)
                assert len(lines) <= rows and max(map(len, lines)) <= columns
                shown = joined(lines)
                assert "water left, in" in shown and "hours" in shown
                # The first reading stands on the axis; the sixth mark is in the legend.
                assert shown.count("●") >= 6
                axis = next(line for line in lines if re.fullmatch(r" +1 +2 +3 +4", line))
                assert len(axis) >= columns - 2
                assert [line.split()[0] for line in lines if re.match(r" *\d+ [●o+┼]", line)] == [
                    "8", "6", "4", "2", "0",
                ]  # fmt: skip


def test_the_mean_line_falls_at_the_drop_rate_of_the_test(worked_test):
    (mean,) = [
        shape for shape in drop_chart(worked_test).shapes
        if isinstance(shape, Path) and shape.stroke is Stroke.DASHED
    ]  # fmt: skip
    (x0, y0), (x1, y1) = mean.points
    rate = magnitude(worked_test.drop_rate, "in/h")
    assert (y0 - y1) / (x1 - x0) == pytest.approx(rate)
    assert (x0, y0) == (0, 8)
    assert "average drop rate 1 in/h" in joined(cells(drop_chart(worked_test), 76, 18))


def test_every_reading_is_a_mark_and_an_unused_one_a_cross():
    readings = [
        Reading(h(0.5), inch(7)),
        Reading(h(1), inch(6), inch(8)),
        Reading(h(1.5), inch(7.5), spoiled="rain"),
        Reading(h(2.5), inch(6)),
    ]
    test = soak_test(Hole(HoleShape.ROUND, inch(8)), inch(8), readings)
    drawing = drop_chart(test)
    marks = [shape for shape in drawing.shapes if isinstance(shape, Mark)]
    dots = {(m.x, m.y) for m in marks if m.symbol is Symbol.POINT}
    assert {(0, 8), (0.5, 7), (1, 6), (1, 8), (2.5, 6)} <= {
        (round(x, 9), round(y, 9)) for x, y in dots
    }
    assert [(m.x, m.y) for m in marks if m.symbol is Symbol.CROSS] == [(1.5, 7.5)]
    means = [s for s in drawing.shapes if getattr(s, "stroke", None) is Stroke.DASHED]
    assert len(means) == 2
    assert "a reading not used" in joined(cells(drawing, 76, 18))


def test_metric_drops_are_in_millimetres(worked_test):
    shown = joined(cells(drop_chart(worked_test, metric=True), 76, 18))
    assert "water left, mm" in shown and "26 mm/h" in shown and "200" in shown


def test_the_pond_chart_has_the_full_pond_and_a_day(subtests, worked_pond):
    for rain in [0.25, 1.0, 3.0]:
        with subtests.test(rain=rain):
            routed = route(worked_pond, triangle_storm(inch(rain)))
            drawing = pond_chart(routed)
            for columns, rows in ((76, 18), (56, 14)):
                lines = cells(drawing, columns, rows)
                shown = joined(lines)
                assert "24 h" in shown and "full pond 6 in" in shown and "hours since" in shown
                assert len(lines) <= rows and max(map(len, lines)) <= columns
            assert ("nothing runs over" in shown) == (
                magnitude(routed.spill_volume, "ft**3") < 1e-9
            )
            curve = next(s for s in drawing.shapes if getattr(s, "stroke", None) is Stroke.CURVE)
            assert max(y for _, y in curve.points) == pytest.approx(magnitude(routed.peak, "in"))
            for x, y in curve.points:
                assert y == pytest.approx(magnitude(depth_at(routed, x), "in"), abs=1e-6)


def test_a_long_dry_pond_is_drawn_too(worked_pond):
    assert cells(pond_chart(route(worked_pond, uniform_storm(inch(0))), True), 56, 14)


def test_bars_are_as_long_as_their_numbers():
    lines = cells(bars([("Jan", 10.0), ("Feb", 20.0), ("Mar", 0.0)], "in", "RAIN"), 60, 20)
    assert lines[0] == "RAIN"
    assert len(lines) == 4
    long = [line.count("█") for line in lines[1:]]
    assert long[2] == 0
    assert long[1] - 1 == pytest.approx(2 * (long[0] - 1), abs=1)
    assert lines[2].endswith("20 in") and lines[1].startswith("Jan")


def test_every_bar_has_its_own_line_even_on_a_low_screen():
    rows = [(str(year), float(year % 7)) for year in range(1990, 2024)]
    lines = cells(bars(rows, "in"), 40, 10)
    assert [line.split()[0] for line in lines if line[:4].isdigit()] == [name for name, _ in rows]


def test_bars_of_nothing_or_below_nought_are_refused():
    with pytest.raises(ValueError, match="nothing to draw"):
        bars([], "in")
    with pytest.raises(ValueError, match="zero or more"):
        bars([("a", -1.0)], "in")


@given(st.floats(1e-3, 1e6), st.integers(1, 9))
def test_axis_numbers_are_round_and_few(top, parts):
    assert len(ticks(top, parts)) <= parts + 1
    first = f"{round_step(top, parts):e}"[0]
    assert first in "125"


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.tuples(st.floats(0.05, 30), st.floats(0, 1)), min_size=1, max_size=9),
    st.floats(0.5, 40),
    st.integers(30, 100),
    st.booleans(),
    st.booleans(),
)
def test_any_soak_test_can_be_drawn(steps, deep, columns, metric, braille):
    time, depth, readings = 0.0, deep, []
    for hours, part in steps:
        time, depth = time + hours, depth * part
        readings.append(Reading(h(time), inch(depth), inch(deep) if depth < deep / 2 else None))
    try:
        test = soak_test(Hole(HoleShape.ROUND, inch(8)), inch(deep), readings)
    except ValueError:
        assume(False)
    drawing = drop_chart(test, metric)
    lines = cells(drawing, columns, 16, braille)
    assert max(map(len, lines)) <= columns
    ET.fromstring(svg(drawing, 150))


@settings(max_examples=30, deadline=None)
@given(
    st.lists(st.tuples(st.text(max_size=12), st.floats(0, 1e7)), min_size=1, max_size=14),
    st.integers(30, 90),
)
def test_any_bars_keep_their_numbers(rows, columns):
    lines = cells(bars(rows, "in"), columns, 20)
    shown = "".join("".join(lines).split())
    for label in bars(rows, "in").labels:
        assert "".join(label.text.split()) in shown or not label.text.isprintable()
    ET.fromstring(svg(bars(rows, "in"), 150))
