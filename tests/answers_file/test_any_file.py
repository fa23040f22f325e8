"""Damaged gardens are read or refused in a sentence, and no sheet of one holds foreign markup.

``.ci/files`` does the same with many.
"""

from __future__ import annotations

import gc
from pathlib import Path

import any_file
import any_front
import hostile_files as hostile
import pytest
from textual.dom import DOMNode

from interview.asking import route
from interview.asking.kinds import Note
from interview.garden import store
from interview.garden.opening import plan_of
from interview.sheet import check
from interview.sheet.page import card_html, page_html

FILES, TOLD = 120, 2
SAMPLES = Path(__file__).parents[2] / "sample_answers"
HOSTILE = "<script>\"'><img src=x onerror=a>&lt;-->"
"""As long as a name may be."""
SMALL = 4_000
"""Bytes of a file that means harm, where it is only to be read."""


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


@pytest.mark.parametrize("front", ["on_plain_lines", "on_the_screen"])
def test_a_damaged_garden_is_opened_by_hand(front, names, clock, tmp_path, monkeypatch):
    monkeypatch.setenv("TERM", "xterm-256color")
    came = set()
    for seed in (4, 5):
        damage = any_file.Damage(seed)
        path = tmp_path / f"{seed}.yaml"
        path.write_bytes(damage.answers(names[seed % len(names)].read_bytes()))
        came.add(getattr(any_front, front)(path, damage.rng, clock.now))
    assert came - {"refused"}


def test_a_sitting_on_the_full_screen_leaves_none_of_its_pages_behind(clock, tmp_path, monkeypatch):
    monkeypatch.setenv("TERM", "xterm-256color")
    path = tmp_path / "garden.yaml"
    path.write_bytes((SAMPLES / "usual_us.yaml").read_bytes())
    assert any_front.on_the_screen(path, any_file.Damage(4).rng, clock.now) != "refused"
    gc.collect()
    kept = {type(one).__name__ for one in gc.get_objects() if issubclass(type(one), DOMNode)}
    assert kept == set()


def test_files_that_mean_harm_are_read_or_refused(subtests, clock, tmp_path):
    refused = 0
    for name, make in hostile.HOSTILE_ANSWERS.items():
        with subtests.test(file=name):
            refused += any_file.read(make(SMALL)) is None
    assert len(hostile.HOSTILE_ANSWERS) / 2 < refused < len(hostile.HOSTILE_ANSWERS)
    loaded = any_file.read(hostile.SOUND)
    for kinds, file in ((hostile.HOSTILE_RAIN, "rain"), (hostile.HOSTILE_PLANTS, "plants")):
        for name, make in kinds.items():
            with subtests.test(file=f"{file}: {name}"):
                path = f"{'invented_rain' if file == 'rain' else 'own_plants'}.csv"
                hostile.put(tmp_path, path, make(SMALL))
                plan = plan_of(
                    loaded.answers.with_text("own_plants", "own_plants.csv"), tmp_path, clock.now
                )
                assert all(line.isprintable() for line in check.faults_beside(plan))


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


def test_every_free_text_and_file_is_words_on_the_printed_pages(sound, clock, tmp_path):
    answers = store.load(SAMPLES / "finished_us.yaml")[0].answers
    sound.learn(page_html(plan_of(answers, SAMPLES, clock.now), working=True))
    rain = (SAMPLES / "invented_rain.csv").read_bytes()
    (tmp_path / "<b>.csv").write_bytes(rain.replace(b"date,rain_in", b"<u>date</u>,<s>rain</s>"))
    own = (SAMPLES / "own_plants.csv").read_bytes().replace(b"meadowsweet", b"<em>meadowsweet</em>")
    (tmp_path / "<i>.csv").write_bytes(own.replace(b",irritating sap", b",<a href=x>sap</a>"))
    named = {
        "rain_record": "<b>.csv", "rain_date_column": "<u>date</u>", "own_plants": "<i>.csv",
        "rain_depth_column": "<s>rain</s>", "favourites": f"<em>meadowsweet</em>\n{HOSTILE}",
        "swap_out": "marsh marigold for <em>meadowsweet</em>",
    }  # fmt: skip
    by_report = {"rate_from": "report", "known_rate": "1 in/h"}
    for more in (by_report, {"rate_from": "test", "holes.1.hole_counts": "no"}):
        answers = answers.with_texts({**answers.texts, **more})
        free = [one.address for one in route.steps(answers) if isinstance(one.question.kind, Note)]
        answers = answers.with_texts({**answers.texts, **dict.fromkeys(free, HOSTILE), **named})
        assert {"garden_name", "notes", "lines_ticket"} < set(free)
        plan = plan_of(answers, tmp_path, clock.now)
        for page in (page_html(plan, working=True), card_html(plan)):
            assert sound.strange(page) == set()
            assert "<script" not in page and "&lt;script&gt;" in page
    assert "hole_set_aside_why" in {one.rpartition(".")[2] for one in free}
