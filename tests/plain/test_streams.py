"""The plain streams: closed, full, cut, in odd encodings; and who asks the program to end."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from interview.__main__ import main
from interview.asking.statuses import CRASHED, INPUT_ENDED, UNSAVED, UNWRITTEN
from interview.garden import store
from interview.sheet import report

ROOT = Path(__file__).parents[2]
SAMPLE = ROOT / "sample_answers" / "finished_us.yaml"
PROGRAM = (sys.executable, "-m", "interview")


def shell(line: str, folder: Path, typed: bytes = b"", **env: str) -> subprocess.CompletedProcess:
    """Run the program, named $RUN in ``line``, in a shell."""
    return subprocess.run(
        ["bash", "-c", line],
        input=typed,
        capture_output=True,
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT), "RUN": " ".join(PROGRAM), **env},
        timeout=60,
        check=False,
    )


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no /dev/full")
@pytest.mark.parametrize("way", [f"--plan {SAMPLE}", f"--check {SAMPLE}", "--questions"])
def test_an_output_that_is_full_is_told_in_one_line(tmp_path, way):
    done = shell(f"$RUN {way} > /dev/full", tmp_path)
    assert done.returncode == UNWRITTEN
    assert done.stderr.decode().count("\n") == 1
    assert b"The disk is full" in done.stderr


@pytest.mark.parametrize(
    ("way", "closed"),
    [("", "<&-"), ("--plain", "<&-"), ("--plain", ">&-"), ("--check", "<&- >&- 2>&-")],
)
def test_a_closed_stream_brings_no_traceback(tmp_path, way, closed):
    file = tmp_path / "g.yaml"
    file.write_bytes(SAMPLE.read_bytes())
    rain = SAMPLE.with_name("invented_rain.csv")
    (tmp_path / rain.name).write_bytes(rain.read_bytes())
    done = shell(f"$RUN {way} g.yaml {closed}", tmp_path)
    assert done.returncode == (0 if way else 2)
    assert b"Traceback" not in done.stderr + done.stdout
    assert file.read_bytes() == SAMPLE.read_bytes()


def test_a_refusal_never_goes_to_the_output(tmp_path):
    done = shell("$RUN --figures nowhere.yaml 2>&-", tmp_path)
    assert (done.returncode, done.stdout) == (2, b"")


def test_letters_are_read_where_only_plain_ones_are_announced(tmp_path):
    typed = "Café\nus\n".encode()
    done = shell("$RUN --plain g.yaml", tmp_path, typed, PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    assert done.returncode == INPUT_ENDED
    assert store.load(tmp_path / "g.yaml")[0].answers.texts["garden_name"] == "Café"


def test_bytes_that_are_no_text_are_refused_and_the_next_line_is_read(tmp_path):
    typed = b"G\xff\xc3arden\nMaple\n"
    done = shell("$RUN --plain g.yaml", tmp_path, typed, PYTHONIOENCODING="utf-8", PYTHONUTF8="0")
    assert done.returncode == INPUT_ENDED
    assert b"cannot be shown" in done.stdout
    assert store.load(tmp_path / "g.yaml")[0].answers.texts == {"garden_name": "Maple"}


def test_a_plant_file_of_nobody_is_told_by_the_check(tmp_path, capsys):
    assert main(["--check", "--plants", "~nobody of this name/x.csv", str(SAMPLE)]) == 1
    assert "x.csv" in capsys.readouterr().out


def test_a_fault_of_the_program_is_one_line_without_any_answer(monkeypatch, capsys):
    def broken(plan):
        raise KeyError("secret of the garden")

    monkeypatch.setattr(report, "outside_text", broken)
    assert main(["--plan", str(SAMPLE)]) == CRASHED
    said = capsys.readouterr().err
    assert "KeyError at test_streams.py" in said
    assert "secret" not in said
    assert said.count("\n") == 1


def test_a_file_removed_meanwhile_is_written_again_at_the_end(talk, tmp_path):
    one = talk("g.yaml")
    one.until("> ")
    one.answer("Maple corner", "> ")
    (tmp_path / "g.yaml").unlink()
    status, _ = one.ended_by("SIGTERM")
    assert status == 128 + signal.SIGTERM
    assert store.load(tmp_path / "g.yaml")[0].answers.texts == {"garden_name": "Maple corner"}


def test_nothing_answered_makes_no_file_and_names_none(tmp_path):
    done = shell("$RUN --plain g.yaml", tmp_path)
    assert b"no file was made" in done.stdout
    assert b"g.yaml" not in done.stdout
    assert list(tmp_path.glob("*.yaml")) == []


@pytest.mark.parametrize(
    ("typed", "page", "status"),
    [
        (b"", b"Name (0 of", INPUT_ENDED),
        (b"Maple corner\nmn\n", b"What brings the water (2 of", INPUT_ENDED),
        (b"Maple corner\nmn", b"What brings the water (2 of", INPUT_ENDED),
        (b"Maple corner\n:quit\n", b"Place (1 of", 0),
    ],
    ids=["nothing", "lines", "cut within a line", "told to quit"],
)
def test_an_input_that_ends_says_where_and_has_a_status_of_its_own(tmp_path, typed, page, status):
    done = shell("$RUN --plain g.yaml", tmp_path, typed)
    assert done.returncode == status
    assert b"Stopped at: " + page in done.stdout
    said = b"rain-garden-interview: the input ended at: " + page
    assert done.stderr.startswith(said) if status else done.stderr == b""


def test_an_input_that_ends_where_nothing_is_open_is_no_failure(tmp_path):
    (tmp_path / "g.yaml").write_bytes(SAMPLE.read_bytes())
    (tmp_path / "invented_rain.csv").write_bytes(SAMPLE.with_name("invented_rain.csv").read_bytes())
    done = shell("$RUN --plain g.yaml", tmp_path)
    assert (done.returncode, done.stderr) == (0, b"")


ENDED_EARLY = """
import os, signal, sys
from interview.garden import opening

def ended(*args):
    os.kill(os.getpid(), signal.SIGTERM)
    return opened(*args)

opened, opening._open = opening._open, ended
from interview.__main__ import main
sys.exit(main(sys.argv[1:]))
"""
"""Runs the program, and asks it to end while it opens the file and holds its lock."""


def test_a_request_to_end_while_the_file_is_opened_leaves_no_lock(tmp_path):
    (tmp_path / "early.py").write_text(ENDED_EARLY)
    (tmp_path / "g.yaml").write_bytes(SAMPLE.read_bytes())
    done = shell(f"{sys.executable} early.py --plain g.yaml", tmp_path)
    assert done.returncode == 128 + signal.SIGTERM
    assert not (tmp_path / ".g.yaml.lock").exists()
    assert b"Your answers are in g.yaml." in done.stdout


@pytest.mark.parametrize("typed", [b"", b"no\n", b"yes\n:quit\n"])
def test_a_lock_another_computer_left_is_asked_about_on_plain_lines(tmp_path, typed):
    note = b"pid: 4\nhost: somewhere-else\nuser: ann\nsince: noon\n"
    lock, file = tmp_path / ".g.yaml.lock", tmp_path / "g.yaml"
    lock.write_bytes(note)
    file.write_bytes(SAMPLE.read_bytes())
    done = shell("$RUN --plain g.yaml", tmp_path, typed)
    assert b".g.yaml.lock" in done.stdout and b"somewhere-else since noon" in done.stdout
    if typed.startswith(b"yes"):
        assert done.returncode == 0 and not lock.exists()
    else:
        assert done.returncode == 4 and lock.read_bytes() == note
        assert b".g.yaml.lock" in done.stderr
    assert file.read_bytes() == SAMPLE.read_bytes()


class Talk:
    """A plain interview, held line by line."""

    def __init__(self, folder: Path, file: str, hears: Callable[[], None]) -> None:
        self.program = subprocess.Popen(
            [*PROGRAM, "--plain", file],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            cwd=folder,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
            preexec_fn=hears,
        )
        self.heard = b""

    def until(self, words: str) -> None:
        """Read until the program has said ``words``."""
        assert self.program.stdout is not None
        while words.encode() not in self.heard:
            said = os.read(self.program.stdout.fileno(), 65536)
            assert said, self.heard.decode()
            self.heard += said
        self.heard = self.heard.split(words.encode(), 1)[1]

    def answer(self, line: str, until: str) -> None:
        assert self.program.stdin is not None
        self.program.stdin.write(line.encode() + b"\n")
        self.program.stdin.flush()
        self.until(until)

    def ended_by(self, name: str) -> tuple[int, str]:
        self.program.send_signal(getattr(signal, name))
        output, errors = self.program.communicate(timeout=60)
        self.heard += output
        return self.program.returncode, errors.decode()


@pytest.fixture
def talk(tmp_path: Path, hears: Callable[[], None]) -> Iterator[object]:
    held: list[Talk] = []

    def begin(file: str) -> Talk:
        held.append(Talk(tmp_path, file, hears))
        return held[-1]

    yield begin
    for one in held:
        one.program.kill()
        one.program.communicate()


@pytest.mark.parametrize("name", ["SIGINT", "SIGTERM", "SIGHUP"])
def test_lines_of_a_list_are_kept_when_somebody_ends_the_program(talk, tmp_path, name):
    file = tmp_path / "g.yaml"
    file.write_bytes(SAMPLE.read_bytes())
    one = talk("g.yaml")
    one.until("> ")
    before = store.load(file)[0].answers.texts
    one.answer(":go lines_holidays", "Which public holidays")
    one.until("> ")
    one.answer("2026-07-03", "\n. ")
    one.answer("2026-09-07", "\n. ")
    status, errors = one.ended_by(name)
    assert (status, errors) == (128 + getattr(signal, name), "")
    after = store.load(file)[0].answers.texts
    # With the first change it is noted that the lines were clear when the hole was dug.
    noted = {"holes.1.hole_cleared": "ticket T-0412 (invented)"}
    assert after == {**before, **noted, "lines_holidays": "2026-05-25\n2026-07-03\n2026-09-07"}
    assert not (tmp_path / ".g.yaml.lock").exists()


def test_answers_no_disk_takes_are_rescued_when_the_program_is_ended(talk, tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    folder = tmp_path / "garden"
    folder.mkdir()
    one = talk("garden/g.yaml")
    one.until("> ")
    one.answer("Maple corner", "> ")
    folder.rename(tmp_path / "moved")
    one.answer("mn", "NOT SAVED")
    one.until("> ")
    status, errors = one.ended_by("SIGTERM")
    assert status == 128 + signal.SIGTERM
    rescued = next((tmp_path / "state").rglob("*.yaml"))
    assert errors.startswith("rain-garden-interview: NOT SAVED") and str(rescued) in errors
    assert b"Your answers are in" not in one.heard
    assert f"--plain {rescued}".encode() in one.heard
    texts = store.load(rescued)[0].answers.texts
    place = {"state": "mn", "country": "us", "units": "us"}
    assert texts == {"garden_name": "Maple corner", **place}


def test_answers_are_rescued_when_the_output_breaks(talk, tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    folder = tmp_path / "garden"
    folder.mkdir()
    one = talk("garden/g.yaml")
    one.until("> ")
    folder.rename(tmp_path / "moved")
    one.answer("Maple corner", "NOT SAVED")
    one.until("> ")
    one.program.stdout.close()
    one.program.stdin.write(b"us\nmn\n")
    one.program.stdin.flush()
    assert one.program.wait(60) == UNSAVED
    rescued = next((tmp_path / "state").rglob("*.yaml"))
    texts = store.load(rescued)[0].answers.texts
    assert texts == {"garden_name": "Maple corner"}
