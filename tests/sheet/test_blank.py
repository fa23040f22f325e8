"""The blank answers file: nothing is answered in it, and filled in it is a garden."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
import yaml
from ruamel.yaml import YAML

from interview import answers_file as af
from interview.__main__ import main
from interview.asking.question import Status
from interview.asking.statuses import UNREADABLE, UNWRITTEN
from interview.garden import store
from interview.garden.opening import plan_of
from interview.garden.path import SAFETY
from interview.garden.session import Session
from interview.garden.stages import GROUPS, QUESTIONS, STAGES, every_question
from interview.sheet.blank import blank_text
from interview.sheet.figures_file import figures_text
from interview.sheet.worksheet import worksheet

SAMPLES = Path(__file__).parents[2] / "sample_answers"
FINISHED = sorted(SAMPLES.glob("finished_*.yaml"))
BY = "rain-garden-interview 0.1.0"


def blank(units: str | None = None, country: str | None = None, state: str | None = None) -> str:
    return blank_text(units, country, state, BY)


def loaded(text: str) -> store.Loaded:
    return store.interpret(af.parse(text.encode()))


@pytest.mark.parametrize(
    ("preset", "texts"),
    [
        ({}, {}),
        ({"units": "metric"}, {"units": "metric"}),
        ({"state": "OH"}, {"state": "oh", "country": "us", "units": "us"}),
        (
            {"state": "Ohio", "units": "metric"},
            {"state": "oh", "country": "us", "units": "metric"},
        ),
        ({"country": "canada"}, {"country": "canada"}),
    ],
)
def test_it_reads_back_with_no_fault_and_no_answer_but_the_preset_ones(preset, texts):
    found = loaded(blank(**preset))
    assert found.troubles == []
    assert found.answers.texts == texts
    assert (found.drafts, found.taken, found.stopped_at) == ({}, [], "")


def test_every_question_stands_in_it_once_in_its_stage_and_in_its_group():
    tree = yaml.safe_load(blank())
    # By YAML 1.1 and by YAML 1.2, from two readers that are not ours.
    assert YAML(typ="safe", pure=True).load(blank()) == tree
    for stage in STAGES:
        section = tree[stage.key]
        plain = [part.key for part in stage.parts]
        assert list(section) == plain
        for key in plain:
            if key in GROUPS:
                assert section[key] == [{one.key: None for one in GROUPS[key]}]
            else:
                assert section[key] is None


def test_the_worksheet_names_the_same_keys():
    keys = re.findall(r"^ *(?:- )?([a-z_0-9]+):$", blank(), re.MULTILINE)
    known = {one.key for one in every_question()}
    on_paper = re.findall(r"^([a-z_0-9]+)(?: \(for each of: [a-z]+\))?$", worksheet(), re.MULTILINE)
    assert known <= set(keys)
    assert set(keys) & known == set(on_paper) & known == known
    assert sorted(one for one in keys if one in known) == sorted(known)


def told(key: str, text: str) -> str:
    """Return the comment over a question."""
    before = re.split(rf"^ +{key}:", text, maxsplit=1, flags=re.MULTILINE)[0]
    lines = before.splitlines()[::-1]
    own = next(place for place, line in enumerate(lines) if not line.lstrip().startswith("#"))
    return " ".join(line.lstrip(" #") for line in lines[:own][::-1])


def test_a_safety_question_is_never_answered_nor_is_its_usual_value_told():
    for state in (None, "oh"):
        text = blank(state=state)
        for key in SAFETY:
            said = told(key, text)
            assert "a safety question: nothing is assumed" in said, key
            assert "usual:" not in said, key
            assert re.search(rf"^ +{key}:$", text, re.MULTILINE), key


def test_a_caution_stands_over_the_question_it_belongs_to(given):
    text, view = blank(), given({})
    digging = [one for one in every_question() if one.digs]
    assert digging
    for question in digging:
        assert "only after the lines are located" in told(question.key, text), question.key
    for question in every_question():
        here = view.at(question.group, 1) if question.group else view
        assert ("CAUTION: " in told(question.key, text)) == bool(question.caution_in(here))
    assert "Never leave the hole open" in told("hole_depth", text)


def test_over_each_question_stand_its_words_how_to_answer_and_what_is_usual():
    text = blank(state="oh")
    flat = " ".join(told("rain_depth", text).split())
    assert flat.startswith("How much rain should the garden hold before it overflows?")
    assert "a bare number is in" in flat and "usual: 1 in" in flat
    assert "a bare number is mm" in told("rain_depth", blank(units="metric"))
    assert "usual: 25 mm" in told("rain_depth", blank(units="metric"))
    for question in every_question():
        assert told(question.key, text), question.key
    assert max(len(line) for line in text.splitlines()) <= 80


def filled(text: str, answers: dict) -> str:
    """Return a blank file with the answers of a file written on its lines, as a script would."""
    lines, found, stage = text.splitlines(), [], ""
    while lines:
        line = lines.pop(0)
        name = line.strip().removesuffix(":")
        if line.endswith(":") and not line.startswith((" ", "#")):
            stage = name
        if name in GROUPS and line == f"  {name}:":
            found.append(line)
            item = [lines.pop(0)]
            while lines and lines[0].startswith("      "):
                item.append(lines.pop(0))
            for one in answers.get(stage, {}).get(name, [{}]):
                found += [answered(each, one) for each in item]
        else:
            found.append(answered(line, answers.get(stage, {})))
    return "\n".join(found) + "\n"


def answered(line: str, answers: dict) -> str:
    name = line.strip().removesuffix(":")
    if not line.endswith(":") or name not in QUESTIONS or name not in answers:
        return line
    return f"{line} {json.dumps(answers[name], ensure_ascii=False)}"


@pytest.mark.parametrize("path", FINISHED, ids=lambda path: path.stem)
def test_filled_with_the_answers_of_a_sample_it_gives_the_same_figures(path, clock):
    tree = yaml.load(path.read_text(encoding="utf-8"), yaml.BaseLoader)
    found, sample = loaded(filled(blank(), tree)), store.load(path)[0]
    assert found.troubles == []
    assert found.answers.texts == sample.answers.texts
    plans = [plan_of(one.answers, SAMPLES, clock.now) for one in (found, sample)]
    assert figures_text(plans[0]) == figures_text(plans[1])


def test_the_interview_goes_on_in_it_and_keeps_every_line(tmp_path, clock):
    path = tmp_path / "g.yaml"
    path.write_text(blank())
    found, mark = store.load(path)
    session = Session(found.answers, store.FileKeeper(path, BY, found, mark), clock)
    given = {"garden_name": "Maple corner", "state": "oh", "surfaces.1.surface_kind": "roof"}
    for address, text in given.items():
        session.offer(session.jump(address), text)
        assert session.not_kept == ""
    again = store.load(path)[0]
    assert again.troubles == []
    assert again.answers.texts == {**given, "country": "us", "units": "us"}
    kept = path.read_text().splitlines()
    gone = [line for line in blank().splitlines() if line not in kept]
    assert [line.strip() for line in gone] == [
        "garden_name:", "units:", "country:", "state:", "surface_kind:",
    ]  # fmt: skip


def test_a_line_that_is_filled_in_is_read_as_if_it_were_typed(subtests):
    for key, words, value in (
        ("rain_depth", "3/4 in", 0.75), ("room_length", "12' 9\"", 153), ("notes", "a: b", None),
    ):  # fmt: skip
        with subtests.test(key=key):
            line = json.dumps(words) if ": " in words else words
            found = loaded(blank().replace(f"\n  {key}:\n", f"\n  {key}: {line}\n"))
            assert found.troubles == []
            assert found.answers.texts[key] == words
            if value is not None:
                assert found.answers[QUESTIONS[key]].m == pytest.approx(value)


def test_a_test_hole_that_is_left_empty_is_no_test_hole():
    found = loaded(blank())
    assert all(found.answers.numbers(key) == [] for key in GROUPS)
    standing = found.answers.standing(QUESTIONS["lines_requested"])
    assert standing is Status.OPEN


def test_it_is_written_to_a_new_file_alone(tmp_path, capsys):
    place = tmp_path / "g.yaml"
    assert main(["--blank", "--state", "OH", "--output", str(place)]) == 0
    text = place.read_text()
    assert "  state: oh\n" in text and capsys.readouterr().out == ""
    assert main(["--blank", "--output", str(place)]) == UNWRITTEN
    assert "There is already a file" in capsys.readouterr().err
    assert place.read_text() == text
    assert main(["--check", str(place)]) == 0
    assert capsys.readouterr().out.startswith("No faults.\n3 answers; ")


def test_what_is_preset_wrongly_is_refused_in_one_sentence(capsys):
    for words in (
        ["--blank", "--state", "Ohiio"], ["--blank", "--units", "parsecs"],
        ["--blank", "--country", "uk", "--state", "oh"], ["--blank", "--state", "no"],
        ["--state", "OH"], ["--blank", "g.yaml"],
    ):  # fmt: skip
        assert main(words) == UNREADABLE
        said = capsys.readouterr()
        assert said.out == "" and len(said.err.splitlines()) == 1
    assert main(["--blank"]) == 0
