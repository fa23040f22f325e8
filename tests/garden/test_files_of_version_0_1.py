"""Files as version 0.1 wrote them, never written anew: they open whole and mean what they did."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest
import yaml

from interview.asking import route
from interview.asking.question import Status
from interview.garden.store import load
from interview.plain import from_code
from interview.quantities.units import magnitude

FILES = sorted(Path(__file__).with_name("version_0_1").glob("*.yaml"))
ABOUT_THE_FILE = ("format", "format_version", "written_by", "stopped_at", "end_of_answers")


def written(held: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    """Yield each answer of a file with its address, by the rules of YAML alone."""
    for key, below in held.items():
        if isinstance(below, dict):
            yield from written(below)
        elif isinstance(below, list) and below and isinstance(below[0], dict):
            for number, item in enumerate(below, 1):
                yield from ((f"{key}.{number}.{one}", text) for one, text in written(item))
        elif isinstance(below, list):
            yield key, "\n".join(str(one) for one in below)
        elif key not in ABOUT_THE_FILE:
            yield key, str(below).strip()


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_answer_of_the_file_is_there_word_for_word_and_counts(path):
    loaded, _ = load(path)
    assert loaded.troubles == [] and loaded.taken == []
    tree = yaml.safe_load(path.read_text(encoding="utf-8"))
    texts = dict(written(tree))
    assert len(texts) > 30
    assert {key: " ".join(text.split()) for key, text in loaded.answers.texts.items()} == {
        key: " ".join(text.split()) for key, text in texts.items()
    }
    assert route.set_aside(loaded.answers) == []
    steps = route.steps(loaded.answers)
    assert not [s.address for s in steps if route.standing(s, loaded.answers) is Status.FAULTY]
    assert set(texts) <= {step.address for step in steps} | {"stopped_at"}


def test_there_are_files_of_both_units_of_a_test_begun_and_of_a_spot_to_leave():
    assert [path.stem for path in FILES] == [
        "finished_metric", "finished_us", "halfway_soak_test", "not_here",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("stem", "address", "unit", "value"),
    [
        ("finished_us", "rain_depth", "in", 1),
        ("finished_us", "mark_distance", "ft", 12),
        ("finished_us", "spots.1.basement_distance", "ft", 14.5),
        ("finished_us", "holes.1.hole_width", "in", 8),
        ("finished_metric", "rain_depth", "mm", 25),
        ("finished_metric", "holes.1.hole_width", "mm", 300),
    ],
)
def test_a_measure_has_the_value_that_its_words_say(stem, address, unit, value):
    loaded, _ = load(FILES[[path.stem for path in FILES].index(stem)])
    step = route.step_at(address, loaded.answers)
    found = step.view(loaded.answers).get(step.question)
    assert magnitude(found, unit) == pytest.approx(value)


@pytest.mark.parametrize(
    ("stem", "key", "value"),
    [
        ("finished_us", "slope", 100 * (9.25 + 9) / 2 / (15 * 12)),
        ("finished_us", "mean_drop_rate", (8 - 4.125) / 4),
        ("finished_metric", "slope", 100 * (212 + 204) / 2 / 4500),
    ],
)
def test_a_figure_read_off_its_measures_alone_is_what_it_was(stem, key, value):
    """Worked by hand from the answers of the file, with the formulas of version 0.1."""
    garden = from_code.load(Path(FILES[0]).with_name(f"{stem}.yaml"), dt.date(2026, 5, 29))
    assert from_code.figures(garden.plan)[key].value == pytest.approx(value)


@pytest.mark.parametrize(
    ("stem", "day"),
    [
        # Asked on a Wednesday: Thursday, Friday, and Tuesday, as Monday is a holiday of the file.
        ("finished_us", "2026-05-27"),
        # Asked on a Monday: four days to Friday, and the Monday after.
        ("finished_metric", "2026-03-10"),
    ],
)
def test_digging_opens_on_the_day_it_did(stem, day):
    garden = from_code.load(Path(FILES[0]).with_name(f"{stem}.yaml"), dt.date(2026, 5, 29))
    assert from_code.figures(garden.plan)["earliest_dig_day"].value == day
