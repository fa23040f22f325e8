"""What a drawing points at and what it counts by: the notch, and the numbers of an axis."""

from __future__ import annotations

import datetime as dt
from itertools import pairwise
from pathlib import Path

import pytest

from interview.drawing.canvas import cells
from interview.drawing.paint import Tone, paint
from interview.drawing.scene import Material
from interview.garden import pictures
from interview.garden.opening import plan_of
from interview.garden.store import load

SAMPLES = Path(__file__).parents[2] / "sample_answers"
MAY = dt.datetime.fromisoformat("2026-05-30T09:00:00-05:00")
SIZES = [(40, 14), (48, 12), (60, 20), (78, 23), (92, 30), (128, 40)]


@pytest.fixture(scope="module", params=["finished_us", "finished_metric"])
def plan(request):
    return plan_of(load(SAMPLES / f"{request.param}.yaml")[0].answers, SAMPLES, MAY)


@pytest.mark.parametrize("size", SIZES, ids=str)
def test_the_overflow_arrow_stands_at_the_stone_of_its_notch(plan, size):
    rows = paint(pictures.planted_picture(plan).bare, *size).picture
    text = ["".join(cell.char for cell in row) for row in rows]
    at = next(place for place, line in enumerate(text) if "overflow" in line)
    arrow = text[at].index("overflow") - 2
    assert text[at][arrow] in "↓↘↙→←↑"
    stone = [
        place
        for row in rows[at - 4 : at]
        for place, cell in enumerate(row)
        if any(
            isinstance(one, Tone) and one.material is Material.STONE
            for one in (cell.fore, cell.back)
        )
    ]
    assert stone, "no stone above the arrow"
    assert min(stone) - 1 <= arrow <= max(stone) + 1, (arrow, sorted(set(stone)))


@pytest.mark.parametrize("columns", range(44, 120, 7))
def test_the_ticks_of_an_axis_are_as_far_apart_as_one_another(plan, columns):
    for rows in (12, 17, 22):
        lines = cells(pictures.pond_pictures(plan)[0], columns, rows)
        axis = next(line for line in lines if line.lstrip().startswith("0 ┼"))
        along = [place for place, char in enumerate(axis) if char == "┼"]
        gaps = {b - a for a, b in pairwise(along)}
        assert len(along) > 1 and len(gaps) == 1, (axis, gaps)
        upright = [at for at, line in enumerate(lines) if line[along[0] : along[0] + 1] == "┼"]
        steps = {b - a for a, b in pairwise(upright)}
        assert len(upright) > 1 and len(steps) == 1, (upright, lines)
