"""What lies in the way and is not the program's: it is left as it is, and nothing is lost by it."""

from __future__ import annotations

import errno
import os
import stat
from pathlib import Path

import pytest

from interview.answers_file import Changed, NotSaved, lock_of, own_files, put, remove_stray_temps
from interview.asking.statuses import IN_USE, UNUSABLE
from interview.garden import store
from interview.garden.opening import Opened, Refusal, open_session

BY = "rain-garden-interview test"
ELSEWHERE = b"pid: 4\nhost: somewhere-else\nuser: ann\nsince: noon\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    place = tmp_path / "garden"
    place.mkdir()
    return place


@pytest.fixture
def garden(folder: Path, clock) -> Path:
    """An answers file of an earlier session."""
    path = folder / "g.yaml"
    answered(path, clock, "Maple")
    return path


def answered(path: Path, clock, name: str) -> str:
    """Hold a session that names the garden anew; return what it tells of saving."""
    opened = open_session(str(path), clock, BY)
    assert isinstance(opened, Opened), opened
    with opened.lock:
        opened.session.offer(opened.session.jump("garden_name"), name)
        assert opened.session.not_kept == ""
        return opened.session.note


def kept_name(path: Path) -> str:
    return store.load(path)[0].answers.texts["garden_name"]


def names(folder: Path) -> list[str]:
    return sorted(one.name for one in folder.iterdir())


# The backup


@pytest.mark.parametrize("there", [True, False])
def test_a_link_with_the_name_of_the_backup_is_not_written_through(garden, clock, tmp_path, there):
    victim = tmp_path / "victim"
    if there:
        victim.write_bytes(garden.read_bytes())
    link = garden.with_name("g.yaml.bak")
    link.symlink_to(victim)
    said = answered(garden, clock, "Oak")
    assert "g.yaml.bak is not known to be a copy" in said and "g.yaml.2.bak" in said
    assert link.is_symlink() and victim.exists() == there
    assert not there or kept_name(victim) == "Maple"
    assert kept_name(garden.with_name("g.yaml.2.bak")) == "Maple" and kept_name(garden) == "Oak"


@pytest.mark.parametrize("own", ["notes", "a copy of an hour ago"])
def test_a_backup_the_person_made_is_kept_and_that_is_told_once(garden, clock, own):
    theirs = garden.with_name("g.yaml.bak")
    theirs.write_bytes(b"Buy mulch." if own == "notes" else garden.read_bytes())
    before = theirs.read_bytes()
    tale = [answered(garden, clock, name) for name in ("Oak", "Elm", "Ash")]
    assert [bool(said) for said in tale].count(True) == 1
    assert theirs.read_bytes() == before
    assert kept_name(garden.with_name("g.yaml.2.bak")) == "Elm"
    assert names(garden.parent) == ["g.yaml", "g.yaml.2.bak", "g.yaml.bak"]


@pytest.mark.parametrize("make", [Path.mkdir, os.mkfifo])
def test_a_folder_or_a_pipe_in_the_place_of_the_backup_stops_no_save(garden, clock, make):
    make(garden.with_name("g.yaml.bak"))
    assert "g.yaml.2.bak" in answered(garden, clock, "Oak")
    assert kept_name(garden.with_name("g.yaml.2.bak")) == "Maple"


def test_a_backup_of_our_own_is_replaced_and_nothing_is_told(garden, clock):
    assert [answered(garden, clock, name) for name in ("Oak", "Elm", "Ash")] == ["", "", ""]
    assert kept_name(garden.with_name("g.yaml.bak")) == "Elm"
    assert names(garden.parent) == ["g.yaml", "g.yaml.bak"]


def test_a_backup_of_our_own_that_may_not_be_written_is_kept(garden, clock, monkeypatch):
    answered(garden, clock, "Oak")
    copy = garden.with_name("g.yaml.bak")
    before = copy.read_bytes()
    monkeypatch.setattr("os.access", lambda path, how: Path(path) != copy)
    assert "g.yaml.2.bak" in answered(garden, clock, "Elm")
    assert copy.read_bytes() == before


def test_where_every_name_of_a_backup_is_taken_the_answers_are_saved_all_the_same(
    garden, clock, monkeypatch
):
    monkeypatch.setattr("interview.answers_file.saving.NUMBERS", 1)
    garden.with_name("g.yaml.bak").write_text("Buy mulch.")
    assert "not copied" in answered(garden, clock, "Oak")
    assert kept_name(garden) == "Oak"


def test_without_a_home_the_backup_is_made_and_no_copy_is_ever_replaced(garden, clock, monkeypatch):
    monkeypatch.setattr(own_files, "write", lambda *_: False)
    for name in ("Oak", "Elm"):
        answered(garden, clock, name)
    assert kept_name(garden.with_name("g.yaml.bak")) == "Maple"
    assert kept_name(garden.with_name("g.yaml.2.bak")) == "Oak"


def test_an_old_file_removed_before_the_first_change_is_written_again(garden, clock):
    opened = open_session(str(garden), clock, BY)
    with opened.lock:
        garden.unlink()
        opened.session.offer(opened.session.jump("garden_name"), "Oak")
        assert opened.session.not_kept == ""
    assert kept_name(garden) == "Oak"


def test_the_temporaries_of_the_backup_are_cleared_away_like_those_of_the_answers(garden):
    stamp = garden.stat().st_mtime_ns - 10**9
    strays = [
        garden.with_name(f".g.yaml{middle}.0000000{n}.part")
        for n, middle in enumerate(("", ".bak", ".2.bak"))
    ]
    for stray in strays:
        stray.write_bytes(garden.read_bytes()[:99])
        os.utime(stray, ns=(stamp, stamp))
    link = garden.with_name(".g.yaml.00000009.part")
    link.symlink_to("nowhere")
    theirs = garden.with_name(".g.yaml.old.bak.00000001.part")
    theirs.touch()
    assert remove_stray_temps(garden) == []
    assert names(garden.parent) == sorted(["g.yaml", link.name, theirs.name])


# Links put in the place of the answers


def test_a_new_file_never_goes_through_a_link(folder):
    (folder / "new.txt").symlink_to(folder / "elsewhere.txt")
    with pytest.raises(Changed):
        put(folder / "new.txt", b"words", expect=None)
    assert names(folder) == ["new.txt"]


def test_a_link_put_where_a_removed_file_was_is_not_written_through(garden, clock, tmp_path):
    (tmp_path / "far").mkdir()
    opened = open_session(str(garden), clock, BY)
    with opened.lock:
        opened.session.offer(opened.session.jump("garden_name"), "Oak")
        garden.unlink()
        garden.symlink_to(tmp_path / "far" / "planted")
        opened.session.offer(opened.session.jump("garden_name"), "Elm")
        assert opened.session.not_kept == ""
        assert opened.keeper.path == garden.with_name("g.mine.yaml")
    assert names(tmp_path / "far") == [] and kept_name(opened.keeper.path) == "Elm"


def test_the_other_version_is_as_private_as_the_file(garden, clock):
    garden.chmod(0o600)
    opened = open_session(str(garden), clock, BY)
    with opened.lock:
        garden.write_text(garden.read_text().replace("Maple", "Birch"))
        opened.session.offer(opened.session.jump("garden_name"), "Oak")
    assert stat.S_IMODE(opened.keeper.path.stat().st_mode) == 0o600
    assert names(garden.parent) == ["g.mine.yaml", "g.yaml"]


# The lock


def test_a_file_of_notes_in_the_place_of_the_lock_is_told_and_left(garden, clock):
    lock_of(garden).write_text("Buy mulch.")
    opened = open_session(str(garden), clock, BY)
    with opened.lock:
        assert str(lock_of(garden)) in opened.notices[0] and opened.lock.held
        second = open_session(str(garden), clock, BY)
        assert isinstance(second, Refusal) and not second.unsure
    assert lock_of(garden).read_text() == "Buy mulch."


def test_a_lock_another_computer_left_is_asked_about_and_gone_on_past(garden, clock):
    lock_of(garden).write_bytes(ELSEWHERE)
    found = open_session(str(garden), clock, BY)
    assert isinstance(found, Refusal) and found.unsure and found.status == IN_USE
    assert ".g.yaml.lock" in found.sentence and "somewhere-else since noon" in found.sentence
    opened = open_session(str(garden), clock, BY, ignore_elsewhere=True)
    with opened.lock:
        assert opened.lock.held and b"somewhere-else" not in lock_of(garden).read_bytes()
    assert not lock_of(garden).exists()


def test_a_fault_while_opening_leaves_no_lock(garden, clock, monkeypatch):
    def broken(path):
        raise ZeroDivisionError

    monkeypatch.setattr(store, "load", broken)
    with pytest.raises(ZeroDivisionError):
        open_session(str(garden), clock, BY)
    assert not lock_of(garden).exists()


def test_a_disk_that_fails_while_opening_is_told_and_leaves_no_lock(garden, clock, monkeypatch):
    def failing(path):
        raise OSError(errno.EIO, "input/output error")

    monkeypatch.setattr(store, "load", failing)
    refused = open_session(str(garden), clock, BY)
    assert isinstance(refused, Refusal) and refused.status == UNUSABLE
    assert "The disk reported a fault" in refused.sentence
    assert not lock_of(garden).exists()


# Rescue


def test_a_rescue_copy_is_for_its_owner_alone(garden, clock, tmp_path, monkeypatch):
    state = tmp_path / "state"
    monkeypatch.setenv("XDG_STATE_HOME", str(state))
    opened = open_session(str(garden), clock, BY)
    old = os.umask(0)
    try:
        for taken in (False, True):
            if taken:  # the first folder takes nothing
                (state / "rain-garden-interview" / "rescued").rename(tmp_path / "first")
                (state / "rain-garden-interview" / "rescued").write_text("in the way")
                monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
            said = opened.rescue()
            assert opened.rescued is not None and str(opened.rescued) in said
            assert stat.S_IMODE(opened.rescued.stat().st_mode) == 0o600
            assert stat.S_IMODE(opened.rescued.parent.stat().st_mode) == 0o700
            assert kept_name(opened.rescued) == "Maple"
            assert str(opened.rescued) in opened.resume_command("program")
    finally:
        os.umask(old)
        opened.lock.release()


def test_a_disk_that_takes_no_backup_saves_nothing_over_the_file(garden, clock, monkeypatch):
    def full(path, *args, **kwargs):
        if str(path).endswith(".bak"):
            raise NotSaved("The disk is full.")
        return put(path, *args, **kwargs)

    monkeypatch.setattr("interview.answers_file.saving.put", full)
    opened = open_session(str(garden), clock, BY)
    with opened.lock:
        opened.session.offer(opened.session.jump("garden_name"), "Oak")
        assert "The disk is full" in opened.session.not_kept
    assert kept_name(garden) == "Maple"
