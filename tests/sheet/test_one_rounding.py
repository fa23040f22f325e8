"""Each quantity is told in one way, wherever it stands on the sheet and beside the questions."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from interview.garden import figures, store
from interview.garden.opening import plan_of as plan_from
from interview.garden.summary import so_far
from interview.quantities.shown import HIGH, LOW, PLAIN, SLOPE
from interview.quantities.units import quantity, significant
from interview.sheet.card import card_text
from interview.sheet.report import plan_text

SAMPLES = Path(__file__).parents[2] / "sample_answers"
NAMES = ("finished_us", "finished_metric", "usual_us", "halfway_soak_test", "not_here")

RAW = (
    "THE SOAK TEST",  # the readings and the rates between them, as they were taken
    "WHAT DRAINS HERE",  # the pieces as they were measured
)
"""Parts of the sheet that show what was measured, in more digits than what is made of it."""
OTHERS = {
    "24 h": "a limit of the guides and of the rule",
    "0.25 in/h": "the least rate one guide asks",
    "12 h": "when the pond is empty, counted from the first of the rain",
    "16 h": "the longest wet spell of the side in the record",
    "98 %": "one year of the record by itself",
    "140 ft²": "the floor made half as large again",
    "120 ft³": "the soil to dig of the lean garden",
    "1.3 m³": "the mulch of the lean garden",
    "92 %": "what half the floor holds of the record",
    "170 ft²": "the floor made twice as large",
    "72 h": "the longest that water may stand, as the guides have it",
    "36 h": "when one guide acts",
    "21 h": "the water on the floor of the generous garden",
    "27 h": "the slow hours of the lean garden",
    "150 ft²": "30 % of what drains here, as one guide has it",
}
"""Numbers of their own that happen to be near a figure of a sample."""
TOLD = re.compile(r"(?<![\w.,/-])(\d+(?:\.\d+)?) (in/h|mm/h|ft²|m²|ft³|m³|ft³/s|L/s|%|h)(?![\w/])")


@pytest.fixture(scope="module", params=NAMES)
def garden(request):
    import datetime as dt

    path = SAMPLES / f"{request.param}.yaml"
    loaded, _ = store.load(path)
    now = dt.datetime(2026, 5, 28, 9, tzinfo=dt.UTC)
    return plan_from(loaded.answers, path.parent, now)


def said(plan):
    """Everything told of the plan, less the parts that show what was measured."""
    sheet = plan_text(plan)
    for title in RAW:
        head, found, rest = sheet.partition(f"\n{title}\n")
        if found:
            sheet = head + re.sub(r"\A-+\n(?:.|\n)*?\n(?=[A-Z ]+\n-+\n)", "", rest)
    lines = "\n".join(f"{one.label}: {one.value}" for one in so_far(plan))
    return f"{sheet}\n{card_text(plan)}\n{lines}"


def roundings(exact):
    """Return the number cut short in every other way a sheet might: nearest, up, down."""
    found = set()
    for digits in (2, 3, 4, 5):
        for direction in ("nearest", "up", "down"):
            found.add(round(significant(exact, digits, direction), 9))
    return found


def strays(plan, text):
    """Return what is told of a figure in other digits than the figure's own."""
    numbers, official = {}, set()
    for one in figures.found(plan):
        if one.waits_for is None:
            shown = one.shown(plan.metric)
            official |= {(float(a), unit) for a, unit in TOLD.findall(shown)}
            exact = one.number(plan.metric)
            if isinstance(exact, float) and exact:
                unit = shown.rpartition(" ")[2]
                numbers[one.figure.key] = (exact, unit)
    found = []
    for number, unit in TOLD.findall(text):
        value = float(number)
        single = len(number.replace(".", "").strip("0")) < 2
        if single or (value, unit) in official or f"{number} {unit}" in OTHERS:
            continue
        for key, (exact, own) in numbers.items():
            if own == unit and round(value, 9) in roundings(exact):
                found.append((key, f"{number} {unit}"))
    return found


def test_no_figure_is_told_with_other_digits_anywhere(garden):
    assert strays(garden, said(garden)) == []


def test_the_scan_finds_a_figure_told_with_other_digits(garden):
    exact = garden.site.slope.fall
    wrong = f"The ground falls {significant(exact.m, 4)} %."
    assert strays(garden, wrong) if exact.m != round(exact.m, 1) else True


def test_each_kind_of_number_is_cut_short_on_its_safe_side(subtests):
    for rounding, exact, words in [
        (PLAIN, 71.43, "71"),
        (PLAIN, 0.1197, "0.12"),
        (PLAIN, 2.95, "3"),
        (LOW, 1.0625, "1"),
        (LOW, 0.249, "0.24"),
        (HIGH, 5.61, "5.7"),
        (SLOPE, 5.07, "5.1"),
        (SLOPE, 12.04, "12"),
        (PLAIN, float("inf"), "never"),
        (LOW, 0.0, "0"),
    ]:
        with subtests.test(rounding=rounding, exact=exact, words=words):
            assert rounding.write(exact) == words


def test_a_figure_set_out_with_a_tape_is_told_as_the_tape_shows_it():
    floor = figures.BY_KEY["floor_length_drawn"]
    assert floor.words is not None
    assert floor.words(quantity(14.5, "ft"), False) == "14 ft 6 in"
    assert floor.words(quantity(4.42, "m"), True) == "4.42 m"


def test_the_exact_value_of_a_figure_is_one_step_away(garden):
    key = "slope"
    lines = figures.working(key, garden)
    assert any(line.startswith("  unrounded: ") for line in lines)
