"""Opening an interview: the file's name, its lock, its faults, and files it names."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from interview.answers_file.named_files import SIZE_LIMIT, NoFile
from interview.garden.opening import Opened, Refusal, open_session, plan_of, text_opener
from interview.garden.stages import new_answers

BY = "rain-garden-interview 0.1.0"
HEAD = "format: rain-garden-interview\nformat_version: '1.0'\n"


@pytest.fixture(autouse=True)
def in_folder(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)


def opened(name, clock) -> Opened:
    found = open_session(name, clock, BY)
    assert isinstance(found, Opened), found
    return found


def test_a_new_interview_has_no_file_until_the_first_answer(tmp_path, clock):
    with (one := opened("g.yaml", clock)).lock:
        assert one.new and not Path("g.yaml").exists()
        one.session.offer(one.session.step, "Maple corner")
        assert "Maple corner" in Path("g.yaml").read_text()


def test_without_a_name_the_next_free_one_is_taken(clock):
    with (one := opened(None, clock)).lock:
        assert str(one.path) == "rain_garden.yaml"
        one.session.offer(one.session.step, "Maple corner")
    with (two := opened(None, clock)).lock:
        assert two.path != one.path
        assert two.new


def test_an_interview_goes_on_where_it_stopped(clock):
    with (one := opened("g.yaml", clock)).lock:
        one.session.offer(one.session.step, "Maple corner")
        one.session.go_on_open()
        one.session.offer(one.session.step, "mn")
        one.session.go_on_open()
        one.session.save()
    with (two := opened("g.yaml", clock)).lock:
        assert not two.new
        assert two.session.step.address == "surfaces.1.surface_kind"
        place = {"state": "mn", "country": "us", "units": "us"}
        assert two.session.answers.texts == {"garden_name": "Maple corner", **place}


def test_faults_are_told_when_it_opens(clock):
    Path("g.yaml").write_text(HEAD + "start:\n  unit: us\nend_of_answers: true\n")
    with (one := opened("g.yaml", clock)).lock:
        assert one.notices == [
            "line 4: start.unit: This name is not one of the interview's. "
            "It is kept, but not used. Did you mean units?"
        ]


@pytest.mark.parametrize(
    ("name", "status", "words"),
    [
        ("", 2, "empty"),
        ("a\0b", 2, ""),
        ("no_such_folder/g.yaml", 2, "there is no folder"),
        (".", 3, ""),
        ("broken.yaml", 3, "broken.yaml"),
        ("other.yaml", 3, "other.yaml"),
        ("binary.yaml", 3, "binary.yaml"),
    ],
)
def test_a_file_that_cannot_be_opened_is_refused_in_one_sentence(clock, name, status, words):
    Path("broken.yaml").write_text(HEAD + "start: [us\n")
    Path("other.yaml").write_text("- just\n- a list\n")
    Path("binary.yaml").write_bytes(b"\x89PNG\r\n\x1a\n\0\0")
    before = {path.name: path.read_bytes() for path in Path().iterdir() if path.is_file()}
    found = open_session(name, clock, BY)
    assert isinstance(found, Refusal)
    assert found.status == status
    assert words in found.sentence and "\n" not in found.sentence
    after = {path.name: path.read_bytes() for path in Path().iterdir() if path.is_file()}
    assert after == before, "a refused file leaves no lock and no change behind"


def test_a_file_open_elsewhere_is_refused_and_free_again_afterwards(clock):
    first = opened("g.yaml", clock)
    with first.lock:
        second = open_session("g.yaml", clock, BY)
        assert isinstance(second, Refusal) and second.status == 4
    with opened("g.yaml", clock).lock:
        pass


def test_the_command_to_go_on_is_safe_to_paste(clock, monkeypatch):
    monkeypatch.setattr("shutil.which", lambda name: f"/usr/bin/{name}")
    for name, words in (
        ("my garden.yaml", "rain-garden-interview --plain 'my garden.yaml'"),
        ("-x.yaml", "rain-garden-interview --plain ./-x.yaml"),
        ("$(rm).yaml", "rain-garden-interview --plain '$(rm).yaml'"),
    ):
        with (one := opened(name, clock)).lock:
            assert one.resume_command("rain-garden-interview", "--plain") == words


def test_a_file_named_in_an_answer_is_looked_for_beside_the_answers(tmp_path):
    (tmp_path / "rain.csv").write_bytes(b"\xef\xbb\xbfdate,in\n")
    (tmp_path / "old.csv").write_bytes("date,caf\xe9\n".encode("latin-1"))
    look = text_opener(tmp_path)

    def read(name):
        return look(name).text(1000)

    assert read("rain.csv") == "date,in\n"
    assert read(str(tmp_path / "rain.csv")) == "date,in\n"
    assert "café" in read("old.csv")


@pytest.mark.parametrize(
    "name", ["gone.csv", ".", "a\0b", "~nobody_at_all/x.csv", "binary.csv", "pipe"]
)
def test_a_file_that_cannot_be_read_says_so_in_one_sentence(tmp_path, name):
    (tmp_path / "binary.csv").write_bytes(b"\0\1")
    os.mkfifo(tmp_path / "pipe")
    with pytest.raises(NoFile) as refused:
        text_opener(tmp_path)(name).text(1000)
    assert str(refused.value).endswith(".")
    assert "\0" not in str(refused.value)


def test_a_huge_file_is_not_read(tmp_path):
    with (tmp_path / "big.csv").open("wb") as file:
        file.truncate(SIZE_LIMIT + 1)
    with pytest.raises(NoFile, match="50 MB"):
        text_opener(tmp_path)("big.csv")


def test_the_plan_uses_only_answers_in_force(tmp_path, clock):
    answers = new_answers({"lines_requested": "not_yet", "lines_ticket": "W-1"})
    assert dict(plan_of(answers, tmp_path, clock.now).answers.texts) == {
        "lines_requested": "not_yet"
    }


def test_a_file_named_in_an_answer_cannot_steer_the_terminal(tmp_path):
    (tmp_path / "rain.csv").write_text("date,mm\n\x1b[31m\u202e2024-01-01\t,1\r\n", newline="")
    text = text_opener(tmp_path)("rain.csv").text(1000)
    assert text == "date,mm\n\ufffd[31m\ufffd2024-01-01\t,1\n"
