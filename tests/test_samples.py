"""The invented gardens that come with the program."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import yaml

from interview.__main__ import main
from interview.asking import route
from interview.garden.opening import plan_of
from interview.garden.path import SAFETY
from interview.garden.store import load
from interview.garden.summary import waiting
from interview.sheet.figures_file import figures_text
from interview.sheet.report import plan_text

FOLDER = Path(__file__).parents[1] / "sample_answers"
ALL = sorted(FOLDER.glob("*.yaml"))
SOUND = [path for path in ALL if not path.name.startswith("faulty_")]
FINISHED = [path for path in SOUND if path.name.startswith(("finished_", "usual_"))]
FAULTY = [path for path in ALL if path.name.startswith("faulty_")]
BANNED = ("invalid", "please", "sorry", "oops", "traceback", "none type")


def named(path: Path) -> str:
    return path.stem


@pytest.fixture
def plan(request, clock):
    loaded, _ = load(request.param)
    return plan_of(loaded.answers, FOLDER, clock.now)


def test_there_are_samples_of_each_sort():
    assert FINISHED and FAULTY and len(SOUND) > len(FINISHED)


def test_a_sound_sample_has_no_fault(subtests):
    for path in SOUND:
        with subtests.test(path=path):
            loaded, _ = load(path)
            assert loaded.troubles == []
            assert loaded.answers.texts


@pytest.mark.parametrize("path", SOUND, ids=named)
def test_a_sound_sample_is_kept_as_the_program_writes_it(path, clock):
    loaded, _ = load(path)
    for step in route.steps(loaded.answers):
        view = step.view(loaded.answers)
        text = view.text(step.question)
        if text is not None and view.get(step.question) is not None:
            assert step.question.kind.settle(text, view) == text, step.address


@pytest.mark.parametrize("plan", FINISHED, ids=named, indirect=True)
def test_a_finished_sample_waits_for_nothing(plan):
    assert waiting(plan) == []
    left = route.open_steps(plan.answers)
    # One of them leaves to the program what has a usual value, and nothing else.
    assert bool(left) == (plan.answers.texts["garden_name"] == "Willow bend")
    for one in left:
        assert one.view(plan.answers).assumed(one.question), one.address
        assert one.question.key not in SAFETY
    assert plan.verdict.value in ("good", "fix")


@pytest.mark.parametrize("plan", SOUND, ids=named, indirect=True)
def test_the_plan_of_a_sample_fits_the_paper_and_speaks_plainly(plan):
    sheet = plan_text(plan)
    assert [line for line in sheet.splitlines() if len(line) > 76] == []
    assert [line for line in sheet.splitlines() if line != line.rstrip()] == []
    for word in BANNED:
        assert not re.search(rf"\b{word}\b", sheet, re.IGNORECASE), word
    assert not re.search(r"\bnan\b|<[a-z_.]+ object|Quantity\(", sheet)
    assert "CAUTION" in sheet and "811" not in plan.answers.texts.values()


@pytest.mark.parametrize("plan", SOUND, ids=named, indirect=True)
def test_the_figures_of_a_sample_are_yaml(plan):
    listed = yaml.safe_load(figures_text(plan))
    assert listed["verdict"] == plan.verdict.value
    assert listed["units"] == plan.system
    for key, one in listed["figures"].items():
        assert ("waits_for" in one) == (one["value"] is None), key
        assert "waits_for" in one or one["source"], key


@pytest.mark.parametrize("path", FAULTY, ids=named)
def test_the_check_of_a_faulty_sample_says_just_this(path, capsys, monkeypatch):
    monkeypatch.chdir(FOLDER)
    expected = path.with_suffix(".expected.txt").read_text()
    status = main(["--check", path.name])
    said = capsys.readouterr()
    text = (said.out + said.err).replace(path.name, "FILE")
    assert text == expected
    assert status == (1 if said.out else 2)


def test_the_sample_that_says_not_here_is_stopped(clock):
    loaded, _ = load(FOLDER / "not_here.yaml")
    assert plan_of(loaded.answers, FOLDER, clock.now).verdict.value == "stop"


def test_the_half_done_sample_waits_for_what_is_missing(clock):
    loaded, _ = load(FOLDER / "halfway_soak_test.yaml")
    plan = plan_of(loaded.answers, FOLDER, clock.now)
    assert waiting(plan)
    assert loaded.stopped_at == "holes.1.readings"
