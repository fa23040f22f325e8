"""Killed at any moment, or kept from writing, the program loses no answer and tears no file.

``.ci/kills`` does the same over and over.
"""

from __future__ import annotations

import random
import tempfile
from pathlib import Path

import killed
import pytest
import simple_way as simple

from interview.garden import store

ANSWERS = {key: text for page in simple.ANSWERS.values() for key, text in page.items()}


@pytest.fixture(scope="module", autouse=True)
def _loaded():
    killed.loaded()


@pytest.fixture
def folder(tmp_path):
    made = killed.Folder(tmp_path / "garden")
    made.begin_anew(random.Random(2))
    return made


@pytest.fixture
def states(tmp_path):
    """The saves of the first lines of an interview."""
    file = tmp_path / "states.yaml"
    run = killed.Run(lambda tell: killed.interview(file, ANSWERS, tell, most=9))
    run.ended()
    return [one for one in run.told if one["what"] == "saving"]


def test_plain_lines_killed_at_any_moment_lose_nothing(folder):
    luck = random.Random(1)
    for _ in range(6):
        killed.killed_talk(folder, ANSWERS, luck)
    assert killed.held(folder.file).texts


def test_a_save_killed_at_any_system_call_loses_nothing(folder, states):
    luck = random.Random(1)
    ended = sum(killed.killed_saves(folder, states, luck) for _ in range(25))
    assert ended < 25


def test_a_system_call_that_fails_while_opening_or_saving_is_told_and_tears_nothing(
    tmp_path, states
):
    room = tmp_path / "failed"
    room.mkdir()
    assert sum(killed.failed_saves(room, states[:2], every=61)) > 24


@pytest.mark.skipif(killed.os.geteuid() != 0, reason="needs root: tried as another user")
@pytest.mark.parametrize("name", ["a sticky folder", "a limit on the size of files"])
def test_where_nothing_can_be_kept_all_is_told_and_rescued(name):
    with tempfile.TemporaryDirectory() as room:  # which another user can get to
        Path(room).chmod(0o755)
        killed.placed(Path(room), name, ANSWERS)


def test_an_answer_that_is_told_and_not_kept_is_found(folder, monkeypatch):
    """The check itself: with a keeper that keeps nothing it speaks."""
    monkeypatch.setattr(store.FileKeeper, "keep", lambda *_: None)
    run = killed.Run(lambda tell: killed.interview(folder.file, ANSWERS, tell, most=3))
    run.ended()
    with pytest.raises(killed.Torn, match="something else"):
        killed.hold_against(run.told, killed.held(folder.file))
