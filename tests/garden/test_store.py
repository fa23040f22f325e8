"""Answers kept in a file: what a person added stays, and what was wrong is told by its line."""

from __future__ import annotations

from pathlib import Path

import pytest

from interview import answers_file as af
from interview.asking.keeping import NotKept
from interview.garden import store
from interview.garden.session import Session
from interview.garden.soak.reading_lines import Readings
from interview.garden.stages import every_question, new_answers
from interview.garden.survey.piece_lines import Pieces

SAMPLES = Path(__file__).parents[2] / "sample_answers"
BY = "rain-garden-interview 0.1.0"
HEAD = "format: rain-garden-interview\nformat_version: '1.0'\n"


def opened(path: Path):
    loaded, mark = store.load(path)
    return loaded, store.FileKeeper(path, BY, loaded, mark)


def read(text: str):
    return store.interpret(af.parse((HEAD + text + "end_of_answers: true\n").encode()))


def test_what_is_kept_loads_the_same(tmp_path, given, sized, located):
    answers = given({**sized, **located, "lines_holidays": "2026-05-25; 2026-07-03"})
    path = tmp_path / "g.yaml"
    store.FileKeeper(path, BY).keep(answers, "rain_depth")
    loaded, _ = store.load(path)
    assert loaded.answers.texts == answers.texts
    assert loaded.troubles == []
    assert loaded.stopped_at == "rain_depth"


def test_a_walk_kept_in_a_real_file_loads_the_same_at_every_step(tmp_path, clock, sized, located):
    path = tmp_path / "g.yaml"
    session = Session(new_answers(), store.FileKeeper(path, BY), clock)
    for address, text in {**sized, **located}.items():
        session.offer(session.jump(address), text)
        assert session.not_kept == ""
        assert store.load(path)[0].answers.texts == session.answers.texts
    session.remove_item("surfaces", 1)
    session.clear(session.jump("rain_depth"))
    assert store.load(path)[0].answers.texts == session.answers.texts
    assert sorted(one.name for one in tmp_path.iterdir()) == ["g.yaml"]


def test_each_list_of_a_file_that_is_on_lines_is_read_once(monkeypatch):
    taken: list[str] = []
    for kind in (Readings, Pieces):
        take = kind.take

        def counted(self, text, answers, take=take):
            taken.append(text)
            return take(self, text, answers)

        monkeypatch.setattr(kind, "take", counted)
    loaded, _ = store.load(SAMPLES / "finished_us.yaml")
    assert loaded.troubles == [] and len(taken) > 2
    assert sorted(taken) == sorted(set(taken))
    readings = loaded.answers.texts["holes.1.readings"]
    assert len(readings.splitlines()) > 2 and readings in taken


def test_each_question_stands_over_its_answer(tmp_path, given):
    path = tmp_path / "g.yaml"
    store.FileKeeper(path, BY).keep(given({"rain_depth": "1 in"}), "")
    text = path.read_text()
    assert "# How much rain should the garden hold before it overflows?\n  rain_depth: 1 in" in text
    assert "# A. Start" in text
    assert text.rstrip().endswith("end_of_answers: true")


def test_answers_stand_in_the_order_of_the_questions(tmp_path, given):
    path = tmp_path / "g.yaml"
    answers = given({"notes": "z", "rain_depth": "1 in", "spots.1.spot_name": "a", "units": "us"})
    store.FileKeeper(path, BY).keep(answers, "")
    places = [
        path.read_text().index(word) for word in ("units:", "rain_depth:", "spot_name:", "notes:")
    ]
    assert places == sorted(places)


def test_what_a_person_added_is_kept(tmp_path, clock):
    path = tmp_path / "g.yaml"
    path.write_text(
        HEAD + "# my own remark\nstart:\n  units: us   # as on my tape\n  colour: green\n"
        "site:\n  spots:\n    - spot_name: back\n      view: good\n"
        "mine:\n  - 1\nend_of_answers: true\n"
    )
    loaded, keeper = opened(path)
    session = Session(loaded.answers, keeper, clock)
    session.offer(session.jump("rain_depth"), "1 in")
    session.offer(session.jump("spots.1.spot_name"), "front")
    text = path.read_text()
    for words in (
        "# my own remark",
        "# as on my tape",
        "colour: green",
        "view: good",
        "mine:\n  - 1",
    ):
        assert words in text, words
    assert "spot_name: front" in text
    assert (tmp_path / "g.yaml.bak").exists()


def test_removing_an_item_takes_its_answers_out_of_the_file(tmp_path, given, clock):
    path = tmp_path / "g.yaml"
    three = {f"surfaces.{n}.surface_name": name for n, name in enumerate("abc", 1)}
    session = Session(given(three), store.FileKeeper(path, BY), clock)
    session.save()
    session.remove_item("surfaces", 2)
    session.remove_item("surfaces", 2)
    assert store.load(path)[0].answers.texts == {"surfaces.1.surface_name": "a"}
    session.remove_item("surfaces", 1)
    assert store.load(path)[0].answers.texts == {}
    assert "surfaces" not in path.read_text()


def test_two_items_emptied_at_once_leave_no_empty_item(given):
    texts = {f"holes.{n}.hole_name": "h" for n in (1, 2, 3)}
    answers = given(texts)
    base = store.tree_of(answers, {}, set(), "")
    only = new_answers({"holes.1.hole_name": "h"})
    tree = store.tree_of(only, base, set(texts), "")
    assert tree == {"soak": {"holes": [{"hole_name": "h"}]}}


def test_an_unchanged_file_is_not_written_again(tmp_path, given):
    path = tmp_path / "g.yaml"
    keeper = store.FileKeeper(path, BY)
    keeper.keep(given({"units": "us"}), "units")
    before = path.stat().st_mtime_ns, path.stat().st_ino
    keeper.keep(given({"units": "us"}), "units")
    assert (path.stat().st_mtime_ns, path.stat().st_ino) == before


def test_a_file_changed_by_somebody_else_is_not_written_over(tmp_path, given):
    path = tmp_path / "g.yaml"
    keeper = store.FileKeeper(path, BY)
    keeper.keep(given({"units": "us"}), "")
    path.write_text(path.read_text().replace("units: us", "units: metric"))
    keeper.keep(given({"units": "us", "garden_name": "x"}), "")
    assert "units: metric" in path.read_text()
    assert keeper.path != path
    assert "garden_name: x" in keeper.path.read_text()
    assert keeper.path.name in keeper.note


def test_a_file_of_a_newer_program_is_only_read(tmp_path, given):
    path = tmp_path / "g.yaml"
    path.write_text(
        "format: rain-garden-interview\nformat_version: '9.0'\nstart:\n  units: us\n"
        "end_of_answers: true\n"
    )
    loaded, keeper = opened(path)
    assert loaded.read_only
    assert loaded.answers.texts == {"units": "us"}
    with pytest.raises(NotKept, match="newer"):
        keeper.keep(given({"units": "metric"}), "")


def test_each_fault_is_told_with_its_line_and_its_key(subtests):
    for text, key, words, near in [
        ("start:\n  unit: us\n", "start.unit", "not one of the interview's", "units"),
        ("strat:\n  units: us\n", "strat", "not one of the interview's", "start"),
        ("start:\n  readings: x\n", "start.readings", "belongs elsewhere, under soak", ""),
        ("start:\n  units: [us, metric]\n", "start.units", "One answer belongs here", ""),
        ("start: us\n", "start", "answers by name", ""),
        ("soak:\n  holes: one\n", "soak.holes", "one item for each test hole", ""),
        ("soak:\n  holes:\n    - one\n", "soak.holes.1", "no answers by name", ""),
        ("start:\n  rain_depth: 9 in\n", "start.rain_depth", "too large", ""),
        ("site:\n  lines_asked_on: today\n", "site.lines_asked_on", "in full", ""),
    ]:  # fmt: skip
        with subtests.test(text=text, key=key, words=words, near=near):
            loaded = read(text)
            trouble = next(one for one in loaded.troubles if one.key == key)
            assert words in trouble.sentence
            assert trouble.suggestion == near
            assert trouble.line == 2 + len(text.splitlines()) or trouble.line >= 3


def test_a_faulty_value_is_kept_and_not_used():
    loaded = read("start:\n  rain_depth: 9 in\n")
    assert loaded.answers.texts == {"rain_depth": "9 in"}


def test_an_empty_value_is_no_answer(subtests):
    for value in ["", "~", "null", '""']:
        with subtests.test(value=value):
            assert read(f"start:\n  garden_name: {value}\n").answers.texts == {}


@pytest.mark.parametrize(
    "name", ["null", "~", "no", "1e3", "- a", "a: b", "#", "two\nlines", "none"]
)
def test_any_words_come_back_as_they_were(tmp_path, given, name):
    path = tmp_path / "g.yaml"
    answers = new_answers({"garden_name": name, "favourites": name})
    store.FileKeeper(path, BY).keep(answers, "")
    assert store.load(path)[0].answers.texts == answers.texts


def test_every_question_has_its_place_in_the_order():
    places = [store.order(("x", question.key)) for question in every_question()]
    assert places == sorted(places)
    assert store.order(("unheard_of",)) > max(places)
    assert store.order((af.END,)) > store.order(("unheard_of",))


def test_an_old_file_keeps_a_copy_of_itself_once(tmp_path, clock):
    path = tmp_path / "g.yaml"
    path.write_text(HEAD + "start:\n  units: us\nend_of_answers: true\n")
    before = path.read_bytes()
    loaded, keeper = opened(path)
    session = Session(loaded.answers, keeper, clock)
    session.offer(session.jump("units"), "metric")
    session.offer(session.jump("rain_depth"), "25 mm")
    assert (tmp_path / "g.yaml.bak").read_bytes() == before


def test_the_usual_pages_taken_stand_beside_the_place_and_come_back(tmp_path, clock):
    path = tmp_path / "g.yaml"
    keeper = store.FileKeeper(path, BY)
    session = Session(new_answers(), keeper, clock, drafts=keeper.drafts, taken=keeper.taken)
    session.go_to("rough_size")
    session.take()
    text = path.read_text()
    assert "\nusual_taken:\n- rough_size\n" in text.replace("  - ", "- ")
    assert text.index("stopped_at:") < text.index("usual_taken:") < text.index("end_of_answers:")
    assert "rain_depth:" not in text.replace("stopped_at: rain_depth", "")
    loaded, keeper = opened(path)
    assert loaded.troubles == [] and keeper.taken == ["rough_size"]


def test_what_is_strange_among_the_pages_taken_is_kept_and_told(tmp_path, clock):
    path = tmp_path / "g.yaml"
    path.write_text(
        f"{HEAD}usual_taken:\n- rough_size\n- a page of tomorrow\n- [x]\nend_of_answers: true\n"
    )
    loaded, keeper = opened(path)
    assert loaded.taken == ["rough_size", "a page of tomorrow"]
    assert [one.key for one in loaded.troubles] == ["usual_taken.3"]
    session = Session(loaded.answers, keeper, clock, taken=keeper.taken)
    session.go_to("usual_bed")
    session.take()
    again, _ = store.load(path)
    assert again.taken == ["rough_size", "a page of tomorrow", "usual_bed"]
    assert again.parsed.tree["usual_taken"][-1] == ["x"]
    path.write_text(f"{HEAD}usual_taken: rough_size\nend_of_answers: true\n")
    loaded, keeper = opened(path)
    assert "A list of pages" in loaded.troubles[0].sentence and keeper.taken == []


def test_a_file_of_a_somewhat_newer_program_loses_nothing(tmp_path, clock):
    """A program that knows less opens it: what it does not know is told, kept and not used.

    So did version 0.1 with ``usual_taken``, which to it was such a name.
    """
    path = tmp_path / "g.yaml"
    path.write_text(
        HEAD.replace("1.0", "1.9")
        + "pages_of_tomorrow:\n- one\n- two\nstart:\n  units: us\n  wind: strong\n"
        + "end_of_answers: true\n"
    )
    loaded, keeper = opened(path)
    assert {one.key for one in loaded.troubles} >= {"pages_of_tomorrow", "start.wind"}
    session = Session(loaded.answers, keeper, clock, taken=keeper.taken)
    session.offer(session.jump("garden_name"), "Elm")
    assert session.not_kept == ""
    tree = store.load(path)[0].parsed.tree
    assert tree["pages_of_tomorrow"] == ["one", "two"] and tree["format_version"] == "1.9"
    assert tree["start"] == {"garden_name": "Elm", "units": "us", "wind": "strong"}


def test_the_version_of_the_file_is_that_of_version_0_1(tmp_path, given):
    store.FileKeeper(tmp_path / "g.yaml", BY).keep(given(units="us"), "")
    assert 'format_version: "1.0"' in (tmp_path / "g.yaml").read_text()
