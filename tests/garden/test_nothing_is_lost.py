"""What happens to answers when the file is changed from outside, or the disk refuses them."""

from __future__ import annotations

from pathlib import Path

import pytest

from interview.answers_file import saving
from interview.garden import store
from interview.garden.opening import Opened, open_session

PROGRAM = "rain-garden-interview test"


@pytest.fixture
def opened(tmp_path: Path, clock):
    found = open_session(str(tmp_path / "garden.yaml"), clock, PROGRAM)
    assert isinstance(found, Opened)
    with found.lock:
        yield found


def answer(opened: Opened, text: str) -> None:
    session = opened.session
    assert session.step is not None
    session.offer(session.step, text)
    session.go_on_open()


def test_a_file_changed_from_outside_is_left_and_the_answers_go_on_beside_it(opened, tmp_path):
    answer(opened, "Maple corner")
    other = opened.path.read_text().replace("Maple corner", "Oak corner")
    opened.path.write_text(other)
    answer(opened, "oh")
    assert opened.path.read_text() == other
    assert opened.session.not_kept == ""
    assert "changed by something else" in opened.keeper.note or opened.keeper.path != opened.path
    kept, _ = store.load(opened.keeper.path)
    assert kept.answers.texts == {
        "garden_name": "Maple corner",
        "country": "us",
        "state": "oh",
        "units": "us",
    }
    assert str(opened.keeper.path) in opened.resume_command("program")


def test_answers_the_disk_refuses_are_rescued_into_another_folder(opened, tmp_path, monkeypatch):
    answer(opened, "Maple corner")
    folder = opened.path.parent
    folder.rename(tmp_path.parent / "moved away")
    answer(opened, "oh")
    assert opened.session.not_kept
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path.parent / "state"))
    said = opened.rescue()
    place = next((tmp_path.parent / "state").rglob("*.yaml"))
    assert str(place) in said
    kept, _ = store.load(place)
    assert kept.answers.texts == {
        "garden_name": "Maple corner",
        "country": "us",
        "state": "oh",
        "units": "us",
    }


def test_a_file_that_was_removed_is_written_again_with_all_answers(opened):
    answer(opened, "Maple corner")
    opened.path.unlink()
    answer(opened, "oh")
    kept, _ = store.load(opened.path)
    assert kept.answers.texts == {
        "garden_name": "Maple corner",
        "country": "us",
        "state": "oh",
        "units": "us",
    }
    assert "was removed by something else" in opened.session.note
    answer(opened, "1")
    assert opened.session.note == ""


def test_a_removed_file_is_written_again_though_nothing_new_was_answered(opened):
    answer(opened, "Maple corner")
    opened.session.save()
    before = opened.path.read_bytes()
    opened.path.unlink()
    assert opened.session.save()
    assert opened.path.read_bytes() == before


def test_what_has_taken_the_place_of_a_removed_file_is_left_alone(opened):
    answer(opened, "Maple corner")
    opened.path.unlink()
    opened.path.mkdir()
    answer(opened, "oh")
    assert "not a plain file" in opened.session.not_kept
    assert opened.path.is_dir()
    opened.path.rmdir()
    assert opened.session.save()
    assert store.load(opened.path)[0].answers.texts["country"] == "us"


def test_a_save_broken_off_once_the_file_had_its_name_is_no_change_from_outside(
    opened, monkeypatch
):
    answer(opened, "Maple corner")

    def killed(*_):
        raise KeyboardInterrupt

    with monkeypatch.context() as patched:
        patched.setattr(saving._Placing, "confirmed", killed)
        with pytest.raises(KeyboardInterrupt):
            answer(opened, "oh")
    assert opened.session.save()
    assert opened.session.note == ""
    assert opened.keeper.path == opened.path
    assert store.load(opened.path)[0].answers.texts["country"] == "us"


def test_a_list_half_given_is_in_the_file_and_asked_again(tmp_path, clock, roof):
    path = tmp_path / "garden.yaml"
    first = open_session(str(path), clock, PROGRAM)
    with first.lock:
        for address, text in roof("rectangle 20 ft by 30 ft").items():
            step = first.session.jump(address)
            if address.endswith("pieces"):
                first.session.keep_part(step, text)
            else:
                first.session.offer(step, text)
    again = open_session(str(path), clock, PROGRAM)
    with again.lock:
        step = again.session.step
        assert step.address == "surfaces.1.pieces"
        assert again.session.answers.texts[step.address] == "rectangle 20 ft by 30 ft"
        again.session.offer(step, "rectangle 20 ft by 30 ft")
    third = open_session(str(path), clock, PROGRAM)
    with third.lock:
        assert third.session.step.address != "surfaces.1.pieces"
