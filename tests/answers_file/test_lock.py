"""One session at a time: who holds the answers file, and what becomes of the lock."""

from __future__ import annotations

import errno
import os
import signal
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest

from interview.answers_file import AlreadyOpen, Fingerprint, Lock, lock_of, locking, render, save

ROOT = Path(__file__).parents[2]
TEXT = render({"start": {"garden_name": "x"}}, lambda path: "")


@pytest.fixture
def garden(tmp_path: Path) -> Path:
    path = tmp_path / "garden.yaml"
    save(path, TEXT, expect=None)
    return path


@pytest.fixture
def holder(garden):
    """Another process that holds the lock until it is ended."""
    code = """
        import sys
        from interview.answers_file import Lock
        lock = Lock.take(sys.argv[1], since="9:05 this morning")
        print(lock.held, flush=True)
        sys.stdin.read()
    """
    child = subprocess.Popen(
        [sys.executable, "-c", textwrap.dedent(code), str(garden)],
        env={"PYTHONPATH": str(ROOT), "USER": "ann"},
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
    )
    assert child.stdout and child.stdout.readline() == b"True\n"
    yield child
    child.kill()
    child.communicate()


def test_a_second_session_is_told_who_has_the_file_and_since_when(garden, holder):
    with pytest.raises(AlreadyOpen) as caught:
        Lock.take(garden)
    said = caught.value.sentence
    assert caught.value.certain and str(garden) in said
    assert f"process {holder.pid} of ann" in said and "since 9:05 this morning" in said


def test_a_link_or_another_spelling_of_the_path_is_the_same_file(garden, holder, monkeypatch):
    link = garden.with_name("link.yaml")
    link.symlink_to(garden)
    monkeypatch.chdir(garden.parent)
    for path in (link, Path("garden.yaml"), garden.parent / "." / "garden.yaml"):
        with pytest.raises(AlreadyOpen):
            Lock.take(path)


def test_a_killed_session_leaves_no_lock_that_holds(garden, holder):
    holder.kill()
    holder.wait()
    assert Lock.take(garden).held


def test_a_paused_session_is_said_to_be_paused(garden, holder):
    if not Path("/proc/self/stat").exists():
        pytest.skip("this system does not show whether a process is paused")
    holder.send_signal(signal.SIGSTOP)
    os.waitpid(holder.pid, os.WUNTRACED)
    with pytest.raises(AlreadyOpen, match="paused"):
        Lock.take(garden)


def test_the_lock_outlives_the_saves_that_put_a_new_file_in_place(garden):
    with Lock.take(garden) as lock:
        now = Fingerprint.of(TEXT.encode())
        for number in range(10):
            text = TEXT.replace("x", f"x{number}", 1)
            now = save(garden, text, expect=now).fingerprint
        assert lock.held
        with pytest.raises(AlreadyOpen):
            Lock.take(garden)
    assert not lock.held


def test_a_released_lock_leaves_nothing_behind_and_can_be_taken_again(garden):
    for _ in range(3):
        with Lock.take(garden) as lock:
            assert lock.held and lock.notice == "" and lock_of(garden).exists()
        lock.release()
        assert not lock_of(garden).exists()


def test_a_lock_file_removed_between_opening_and_locking_does_not_count(garden, monkeypatch):
    real, turns = locking.fcntl.flock, []

    def flock(fd, how):
        real(fd, how)
        if not turns:
            turns.append(lock_of(garden).unlink())

    monkeypatch.setattr(locking.fcntl, "flock", flock)
    with Lock.take(garden):
        assert turns and lock_of(garden).exists()
        with pytest.raises(AlreadyOpen):
            Lock.take(garden)


@pytest.mark.parametrize(
    "content",
    [b"", b"\0" * 60, b"pid: 1\n", b"pid: 99999999999999999999\nhost: \n",
     b"pid: 1\nhost: \nuser: \x1b[2J\xff\nsince: \n"],
)  # fmt: skip
def test_what_a_dead_lock_file_says_does_not_matter(garden, content):
    lock_of(garden).write_bytes(content)
    with Lock.take(garden) as lock:
        assert lock.held and lock.notice == ""
    assert not lock_of(garden).exists()


@pytest.mark.parametrize(
    "content",
    [b"Buy mulch.\n", b"\xff\xfe\0", b"pid: 1\nBuy mulch.\n", b"pid: 1\n" + b"x" * 100_000],
)
def test_what_is_no_lock_file_is_left_alone_and_the_lock_takes_another_name(garden, content):
    notes = lock_of(garden)
    notes.write_bytes(content)
    with Lock.take(garden) as lock:
        assert lock.held and ".garden.yaml.2.lock instead" in lock.notice
        assert str(notes) in lock.notice
        with pytest.raises(AlreadyOpen):
            Lock.take(garden)
    assert notes.read_bytes() == content and not lock_of(garden, 2).exists()


def test_a_lock_file_with_a_name_elsewhere_is_left_alone(garden):
    other = garden.with_name("other.lock")
    for content in (b"", b"pid: 1\nhost: \nuser: ann\nsince: noon\n"):
        other.write_bytes(content)
        os.link(other, lock_of(garden))
        with Lock.take(garden) as lock:
            assert lock.held and lock.notice
        assert other.read_bytes() == content and lock_of(garden).samefile(other)
        other.unlink()
        lock_of(garden).unlink()


def test_what_was_written_into_a_lock_file_meanwhile_stays(garden):
    with Lock.take(garden):
        lock_of(garden).write_text("Buy mulch.")
    assert lock_of(garden).read_text() == "Buy mulch."


def test_a_name_with_line_ends_still_makes_a_lock_file_that_is_known_again(garden, monkeypatch):
    monkeypatch.setenv("USER", "ann\nBuy mulch")
    lock = Lock.take(garden)
    os.close(lock._fd)
    assert Lock.take(garden).notice == ""


@pytest.mark.parametrize(
    "content", [b"", b"garbage", b"pid: 99999999999999999999\nuser: \x1b[2J\n"]
)
def test_whatever_a_held_lock_file_says_is_shown_safely(garden, holder, content):
    lock_of(garden).write_bytes(content)
    with pytest.raises(AlreadyOpen) as caught:
        Lock.take(garden)
    assert caught.value.sentence.isprintable()


def test_a_note_from_another_computer_is_asked_about_and_not_removed(garden):
    note = b"pid: 4\nhost: somewhere-else\nuser: ann\nsince: noon\n"
    lock_of(garden).write_bytes(note)
    with pytest.raises(AlreadyOpen, match="somewhere-else since noon") as caught:
        Lock.take(garden)
    assert not caught.value.certain and lock_of(garden).read_bytes() == note
    assert lock_of(garden).name in caught.value.sentence
    assert Lock.take(garden, ignore_elsewhere=True).held


@pytest.mark.parametrize("code", [errno.ENOLCK, errno.EOPNOTSUPP, errno.ENOSYS])
def test_a_folder_without_locks_gives_one_notice(garden, monkeypatch, code):
    def flock(fd, how):
        raise OSError(code, "no locks")

    monkeypatch.setattr(locking.fcntl, "flock", flock)
    lock = Lock.take(garden)
    assert not lock.held and "no locks" in lock.notice
    assert not lock_of(garden).exists()


@pytest.mark.parametrize("code", [errno.EACCES, errno.EROFS, errno.ENOSPC])
def test_a_folder_that_cannot_be_written_gives_a_notice(garden, monkeypatch, code):
    def refuse(*args):
        raise OSError(code, "no")

    monkeypatch.setattr(locking.os, "open", refuse)
    lock = Lock.take(garden)
    assert not lock.held and lock.notice.endswith(".")
    lock.release()


def test_something_else_under_the_name_of_the_lock_is_left_alone(garden):
    victim = garden.with_name("victim")
    victim.write_text("mine")
    place = lock_of(garden)
    makers = (
        lambda: place.symlink_to(victim),
        lambda: place.symlink_to(garden.with_name("nowhere")),
        place.mkdir,
        lambda: os.mkfifo(place),
    )
    for make in makers:
        make()
        before = place.lstat()
        with Lock.take(garden) as lock:
            assert lock.held and lock.notice and victim.read_text() == "mine"
        assert place.lstat() == before
        place.rmdir() if place.is_dir() else place.unlink()
    assert sorted(one.name for one in garden.parent.iterdir()) == ["garden.yaml", "victim"]


def test_a_program_started_from_the_session_does_not_keep_the_lock(garden):
    lock = Lock.take(garden)
    child = subprocess.Popen(["sleep", "30"], close_fds=False)
    try:
        os.close(lock._fd)
        assert Lock.take(garden, ignore_elsewhere=True).held
    finally:
        child.kill()
        child.wait()
