"""The pegs of every shape from one string, in words."""

from __future__ import annotations

import re

import pytest
from measures import OWN

from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Ground, lie_of
from interview.quantities.units import quantity
from interview.sheet.size import pegging
from interview.sheet.stakeout import MOST_ROWS, PegTable, peg_lines


def table(
    shape: FloorShape = FloorShape.ROUNDED,
    fall: float | None = 0.0507,
    long: float = 14,
    wide: float = 7,
    rim: float = 2,
    metric: bool = False,
    bend: float | None = None,
) -> PegTable:
    """Pond 6 in, sides 2 to 1, rim in inches; no ground where there is no fall."""
    own = shape is FloorShape.OWN
    basin = Basin(
        quantity(12 if own else long, "ft"), quantity(6.5 if own else wide, "ft"),
        quantity(6, "in"), 2.0, quantity(rim, "in"), shape,
        None if bend is None else quantity(bend, "ft"), OWN if own else (),
    )  # fmt: skip
    return PegTable(basin, None if fall is None else lie_of(basin, Ground(fall, 0.25)), metric)


def offsets(made: PegTable, line: int, places: range) -> list[float | None]:
    found = [peg_lines(made.basin, made.lie)[line].at(x) for x in places]
    return [None if one is None else round(one.uphill, 2) for one in found]


# Worked by hand: R + q up to the straight's end at 3.5 ft, then the root of (R + q)² - (x - 3.5)².
def test_the_usual_bed_is_pegged_as_worked_by_hand() -> None:
    made = table()
    assert offsets(made, 0, range(8)) == [3.5, 3.5, 3.5, 3.5, 3.46, 3.16, 2.45, 0]
    assert offsets(made, 1, range(8)) == [4.5, 4.5, 4.5, 4.5, 4.47, 4.24, 3.74, 2.83]
    assert offsets(made, 2, range(9)) == [4.83, 4.83, 4.83, 4.83, 4.81, 4.59, 4.14, 3.33, 1.76]
    ends = [line.ends[1] for line in peg_lines(made.basin, made.lie) if line.ends]
    assert ends == pytest.approx([7, 8, 8.333], abs=0.001)


def test_the_table_of_the_usual_bed_reads_as_a_tape_does() -> None:
    rows = table().rows()
    assert rows == [
        ("0 to 3 ft", "each side", "3 ft 6 in", "4 ft 6 in", "4 ft 10 in"),
        ("4 ft", "each side", "3 ft 5 1/2 in", "4 ft 5 1/2 in", "4 ft 9 1/2 in"),
        ("5 ft", "each side", "3 ft 2 in", "4 ft 3 in", "4 ft 7 in"),
        ("6 ft", "each side", "2 ft 5 1/2 in", "3 ft 9 in", "4 ft 1 1/2 in"),
        ("7 ft", "each side", "-", "2 ft 10 in", "3 ft 4 in"),
        ("8 ft", "each side", "-", "-", "1 ft 9 in"),
        ("ends at", "both ways", "7 ft", "8 ft", "8 ft 4 in"),
    ]


def test_a_kidney_of_known_bend_is_pegged_as_worked_by_hand() -> None:
    # 15 by 7.5 ft bent to 10 ft: half angle 0.375, string 10 cos 0.375 = 9.305 below its middle;
    # floor downhill 13.75 - 9.305 = 4.445 and uphill 9.305 - 6.25 = 3.055 at the middle.
    made = table(FloorShape.KIDNEY, None, 15, 7.5, bend=10)
    floor = peg_lines(made.basin, made.lie)[0]
    for x, up, down in ((0, 3.06, 4.44), (2, 3.38, 4.30), (4, 3.73, 3.85), (5, 3.50, 3.50)):
        one = floor.at(x)
        assert one is not None
        assert (one.uphill, one.downhill) == pytest.approx((up, down), abs=0.01)
    said = made.kidney()
    for words in ("from a point 9 ft 3 1/2 in uphill", "an arc of 10 ft", "string 3 ft 8 in each"):
        assert words in said
    assert "Step 3 ft 9 in (floor), 4 ft 9 in (full pond) and 5 ft 1 in (rim)" in said
    assert "hollow side is uphill" in said


def test_only_a_kidney_is_laid_on_an_arc_and_only_a_rectangle_by_its_diagonals() -> None:
    for shape in FloorShape:
        made = table(shape)
        assert bool(made.kidney()) == (shape is FloorShape.KIDNEY)
        named = [row for row in made.rows() if row[0] == "diagonal"]
        assert bool(named) == (shape is FloorShape.RECTANGLE)
        if named:
            assert ("8 ft", "each side", "-", "4 ft 6 in", "4 ft 10 in") in made.rows()
            # The roots of 14² + 7² and 16² + 9²: 15.652 and 18.358 ft.
            assert named[0][2:4] == ("15 ft 8 in", "18 ft 4 1/2 in")


def test_a_rim_cut_into_the_hill_is_pegged_farther_uphill_than_down() -> None:
    made = table(fall=0.11)
    # 3.5 ft and twice the cut: (t + 0.11 x 7) / (1 - 0.22), t the floor below the lawn.
    assert made.lie is not None
    cut = (made.lie.floor_below + 0.77) / 0.78
    rim = peg_lines(made.basin, made.lie)[2].at(0)
    assert rim is not None
    assert rim.uphill == pytest.approx(3.5 + 2 * cut, abs=0.01)
    assert rim.downhill == pytest.approx(3.5 + 4 / 3, abs=0.01)
    assert {row[1] for row in made.rows()} == {"uphill", "downhill", "both ways"}
    assert table(FloorShape.RECTANGLE, 0.11).rows()[-1][-1] == "-"


def test_an_outline_of_ones_own_keeps_its_own_stations_and_sides() -> None:
    rows = table(FloorShape.OWN).rows(99)
    floor = {(row[0], row[1]): row[2] for row in rows}
    assert floor["6 ft", "uphill"] == "2 ft 6 in" and floor["6 ft", "downhill"] == "3 ft 6 in"
    assert rows[-2][:4] == ("left end", "", "0", "-1 ft")
    assert rows[-1][:4] == ("right end", "", "12 ft", "13 ft")
    assert "where it lay when you measured" in table(FloorShape.OWN).string()


@pytest.mark.parametrize("metric", [False, True])
@pytest.mark.parametrize("shape", list(FloorShape))
@pytest.mark.parametrize("fall", [None, 0.0, 0.0507, 0.11])
@pytest.mark.parametrize("long", [4, 14, 35, 80])
def test_the_table_of_every_shape_fits_the_page(
    shape: FloorShape, fall: float | None, metric: bool, long: float
) -> None:
    made = table(shape, fall, long, long / 2, metric=metric)
    rows = made.rows()
    assert 3 <= len(rows) <= MOST_ROWS
    lines = list(made.text(rows))
    assert max(map(len, lines)) <= 75
    for line in lines:
        assert line[26] == " " and all(line[at : at + 1] in ("", " ") for at in (42, 58)), line
    told = " ".join((*lines, made.kidney(), made.reach(), made.string()))
    assert not re.search(r"\d (ft|in)\b" if metric else r"\d (m|mm|cm)\b", told)


def test_what_is_built_is_told_from_the_string_and_only_where_the_slope_is_known() -> None:
    made = table()
    # The toe is 50.96 in beyond the floor, so 3.5 + 4.247 = 7.747 ft below the string; uphill
    # 3.5 + 1.333; along half of 20.288.
    assert made.reach() == (
        "Dug or built, berm too: 7 ft 9 in downhill and 4 ft 10 in uphill of the string, 10 ft "
        "1 1/2 in each way along it. Keep all of that clear."
    )
    assert table(fall=None).reach() == ""
    assert "berm" not in table(fall=0.0, rim=1).reach()


def test_the_string_is_as_long_as_the_rim() -> None:
    assert "a peg string 16 ft 8 in long level across the slope" in table().string()
    assert "two round ends" in table(FloorShape.KIDNEY).string()


def test_the_sheet_pegs_as_the_table_says(plan_of, sized, located, level_spot):  # type: ignore[no-untyped-def]
    for shape in ("rounded", "oval", "kidney", "rectangle"):
        plan = plan_of({**located, **level_spot, **sized, "floor_shape": shape})
        made = PegTable(plan.size.garden, plan.size.lie, plan.metric)
        lines = list(pegging(plan))
        for line in made.text(made.rows()):
            assert line in lines, shape
        assert max(map(len, lines)) <= 76
        assert ("With a hose" in " ".join(lines)) == (shape == "kidney")


def test_a_bed_is_pegged_before_its_slope_is_measured(plan_of, sized, located):  # type: ignore[no-untyped-def]
    lines = list(pegging(plan_of({**located, **sized})))
    said = " ".join(" ".join(lines).split())
    assert "ends at" in said and "Stretch a peg string" in said
    assert "The slope is not measured yet: no berm is drawn." in said
    assert "Dug or built" not in said
