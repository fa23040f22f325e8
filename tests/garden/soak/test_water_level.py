"""The water between two readings, and the hole and the chart that are drawn from it."""

from __future__ import annotations

import datetime as dt

import pytest

from interview.drawing.grid import Look
from interview.drawing.layout import lay_out
from interview.drawing.paint import DOWN, Tone, paint
from interview.drawing.scene import LabelSpot, Material, Path, Stroke
from interview.garden.live_picture import hole_picture
from interview.garden.soak import words
from interview.garden.soak.hole_view import finest_step
from interview.garden.soak.noted import noted
from interview.garden.soak.water_level import estimated, fills, latest_rate
from interview.garden.storms.charts import Coming, running_chart
from interview.quantities.units import magnitude, quantity

ZONE = dt.timezone(dt.timedelta(hours=-5))
BEGAN = dt.datetime(2026, 5, 27, 10, tzinfo=ZONE)
READ = "+1h left 7 1/8 in; +2h left 6 3/8 in"
SIZES = [(36, 11), (36, 12), (55, 15), (74, 22)]
LOWER = " ▁▂▃▄▅▆▇█"


def view_of(plan_of, hole, readings=READ):
    texts = hole("round", "8 in", "8 in", readings)
    texts |= {"holes.1.hole_depth": "15 in", "holes.1.test_start": BEGAN.isoformat()}
    return plan_of(texts).answers.at("holes", 1)


@pytest.fixture
def view(plan_of, hole):
    """A hole of 15 in whose water stood at 8 in, and at 6 3/8 in two hours later."""
    return view_of(plan_of, hole)


def after(**span) -> dt.datetime:
    return BEGAN + dt.timedelta(**span)


def water_top(drawing, columns, rows) -> float:
    """Return the row, in parts of a row, at which painted water begins under the open hole."""
    picture = paint(drawing, columns, rows).picture
    for column in range(columns // 2 - 3, columns // 2):
        for row, cells in enumerate(picture):
            cell = cells[column]
            tones = [one for one in (cell.fore, cell.back) if isinstance(one, Tone)]
            if any(one.material is Material.WATER for one in tones) and cell.char != "│":
                if isinstance(cell.back, Tone) and cell.back.material is Material.WATER:
                    return float(row)
                return row + 1 - LOWER.index(cell.char) / DOWN
    raise AssertionError("no water")


def test_water_stands_at_the_last_reading_within_an_eighth_of_a_row(view, subtests):
    drawing = hole_picture(view).bare
    for columns, rows in SIZES:
        with subtests.test(f"{columns} by {rows}"):
            small = drawing.sized(columns < 60 or rows < 18)
            frame = lay_out(small, columns, rows, Look(painted=True)).frame
            # A whole number of the frame is the middle of a row; its upper edge is half before.
            wanted = frame.at(0, 6.375)[1] + 0.5
            assert water_top(drawing, columns, rows) == pytest.approx(wanted, abs=1 / DOWN)


def test_readings_stand_one_under_the_other_in_their_order(plan_of, hole, subtests):
    many = "; ".join(f"+{h}h left {8 - h / 4} in" for h in range(1, 8))
    view = view_of(plan_of, hole, many)
    now = estimated(noted(view).timed, after(hours=7, minutes=50))
    drawing = hole_picture(view, now).bare
    for columns, rows in SIZES:
        with subtests.test(f"{columns} by {rows}"):
            small = drawing.sized(columns < 60 or rows < 18)
            texts = lay_out(small, columns, rows, Look(painted=True)).texts
            for side in (LabelSpot.LEFT, LabelSpot.RIGHT):
                found = sorted((t for t in texts if t.label.place is side), key=lambda t: t.row)
                levels = [text.label.y for text in found]
                assert levels == sorted(levels, reverse=True)
                assert len({text.row for text in found}) == len(found) >= 4
            assert any(text.text == "estimate ▸" for text in texts)
            assert any(text.text == "◂ ≈ 6 in" for text in texts)


def test_the_estimate_falls_on_at_the_rate_of_the_last_reading(view):
    timed = noted(view).timed
    assert magnitude(latest_rate(timed), "in/h") == pytest.approx(0.75)
    # By hand: 6.375 in at two hours, then 0.75 in/h for 40 minutes more.
    now = estimated(timed, after(hours=2, minutes=40))
    assert magnitude(now.left, "in") == pytest.approx(6.375 - 0.75 * 40 / 60)
    assert magnitude(estimated(timed, after(days=2)).left, "in") == 0
    assert estimated(timed, after(hours=1)) is None


def test_there_is_no_estimate_before_a_rate_is_known(plan_of, hole):
    assert estimated(noted(view_of(plan_of, hole, "")).timed, after(minutes=30)) is None


def test_the_estimate_moves_by_whole_eighths_of_a_row(view):
    timed, step = noted(view).timed, finest_step(quantity(15.0, "in"), 12)
    seconds = [after(hours=2, seconds=one) for one in range(0, 3600, 10)]
    found = [estimated(timed, now, step) for now in seconds]
    levels = {None if one is None else magnitude(one.left, "in") for one in found}
    # 0.75 in of water in steps of 15 * 1.42 / 11 / 8 = 0.242 in: three moves in the hour.
    assert len({one and one.at for one in found}) == len(levels) == 4
    for left in levels - {None}:
        moved = (6.375 - left) / magnitude(step, "in")
        assert moved == pytest.approx(round(moved))


def test_a_refill_begins_anew_and_is_seen_before_it_is_read(plan_of, hole):
    read = "+1h left 5 in; +2h left 1 in; +2h10m refilled to 8 in"
    timed = noted(view_of(plan_of, hole, read)).timed
    depths = [[magnitude(one.left, "in") for one in fill] for fill in fills(timed)]
    assert depths == [[8, 5, 1], [8]]
    now = estimated(timed, after(hours=2, minutes=40))
    assert magnitude(now.left, "in") == pytest.approx(8 - 4 * 0.5)


def test_the_chart_of_a_running_test_has_what_is_due_by_the_clock(view):
    timed = noted(view).timed
    now = estimated(timed, after(hours=2, minutes=40))
    coming = Coming(after(hours=3), latest_rate(timed), now)
    drawing = running_chart(fills(timed), coming, zone=ZONE)
    due = next(one for one in drawing.labels if one.text.startswith("○"))
    assert (due.text, due.x) == ("○ 13:00", 3.0)
    assert due.y == pytest.approx(6.375 - 0.75)
    assert {"10:00", "11:00", "12:00", "13:00"} <= {one.text for one in drawing.labels}
    water = next(one for one in drawing.shapes if isinstance(one, Path) and one.material)
    assert max(x for x, _ in water.points) == pytest.approx(2 + 40 / 60)
    goes_on = [
        one for one in drawing.shapes if isinstance(one, Path) and one.stroke is Stroke.DOTTED
    ]
    assert goes_on[0].points[0] == pytest.approx((2 + 40 / 60, 5.875))


def test_the_scale_has_the_verdicts_limits_where_they_are():
    # By hand: from 0.3 to 30 in are two powers of ten, so 3 in is half of the way.
    assert words.scale_part(0.3) == 0 and words.scale_part(30) == words.scale_part(500) == 1
    assert words.scale_part(3) == pytest.approx(0.5)
    assert words.scale_part(0) == 0


def test_a_workable_soil_stands_between_the_two_marks_of_the_scale(view, subtests):
    test = noted(view).timed.test
    assert test.band.value == "workable"
    for columns in (34, 50, 70):
        with subtests.test(columns=columns):
            line, under = words.scale_lines(test, columns, False)
            assert len(line) <= columns and len(under) <= columns
            first, second = (at for at, one in enumerate(line[6:-6], 6) if one == "┼")
            assert first < line.index("●") < second
            assert under.index("3 in") <= first <= under.index("3 in") + 4
            assert under.index("10 in") <= second <= under.index("10 in") + 5
