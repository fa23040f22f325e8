"""Damaged gardens are read or refused in a sentence, and no sheet of one holds foreign markup.

``.ci/files`` does the same with many.
"""

from __future__ import annotations

from pathlib import Path

import any_file
import pytest

from interview.garden import store
from interview.garden.opening import plan_of
from interview.sheet.page import card_html, page_html

FILES, TOLD = 120, 2
SAMPLES = Path(__file__).parents[2] / "sample_answers"
HOSTILE = "<script>\"'><img src=x onerror=a>&lt;-->"
"""As long as a name may be."""


@pytest.fixture(scope="module")
def names():
    return sorted(SAMPLES.glob("*.yaml"))


@pytest.fixture
def sound(clock):
    """A reader of pages that knows the markup of the samples."""
    page = any_file.Page()
    for name in ("finished_us", "finished_metric", "not_here"):
        plan = plan_of(store.load(SAMPLES / f"{name}.yaml")[0].answers, SAMPLES, clock.now)
        page.learn(page_html(plan))
        page.learn(card_html(plan))
    return page


def test_damaged_gardens_are_read_or_refused(names):
    read = 0
    for seed in range(FILES):
        data = any_file.Damage(seed).answers(names[seed % len(names)].read_bytes())
        read += any_file.read(data) is not None
    # Damage that nothing survives, or that changes nothing, would try nothing.
    assert FILES / 10 < read < FILES


def test_every_sheet_of_a_damaged_garden_is_made(names, sound, clock, tmp_path):
    told, seed = 0, 0
    while told < TOLD:
        damage = any_file.Damage(seed)
        loaded = any_file.read(damage.answers(names[seed % len(names)].read_bytes()))
        seed += 1
        if loaded is None:
            continue
        for name in ("invented_rain.csv", "own_plants.csv"):
            (tmp_path / name).write_bytes(damage.table((SAMPLES / name).read_bytes()))
        any_file.tell(loaded, tmp_path, clock.now, sound)
        told += 1


def test_hostile_names_are_words_on_the_printed_pages(sound, clock, tmp_path):
    text = (SAMPLES / "finished_us.yaml").read_text()
    for name in ("Maple corner", "back lawn", "north end", "south roof", "patio", "Ann"):
        text = text.replace(f": {name}\n", ": '{}'\n".format(HOSTILE.replace("'", "''")))
    text = text.replace("T-0412 (invented)", "<b onload=x>").replace(
        "Invented garden for practice.", "<iframe src=x>"
    )
    for name in ("invented_rain.csv", "own_plants.csv"):
        (tmp_path / name).write_bytes((SAMPLES / name).read_bytes())
    loaded = any_file.read(text.encode())
    assert loaded is not None and "<script>" in loaded.answers.texts["garden_name"]
    plan = plan_of(loaded.answers, tmp_path, clock.now)
    for page in (page_html(plan, working=True), card_html(plan)):
        assert "&lt;script&gt;" in page and "<script" not in page
    for page in (page_html(plan), card_html(plan)):
        assert sound.strange(page) == set()
