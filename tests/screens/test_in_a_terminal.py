"""The program in a real pseudo-terminal: it starts, obeys signals, and leaves all as it was."""

from __future__ import annotations

import os
import re
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from tube import Tube

LIMIT = 20.0
"""Seconds after which an end is given up."""
pytestmark = pytest.mark.usefixtures("compiled_once")
ROOT = Path(__file__).parents[2]


@pytest.fixture
def tube(tmp_path: Path, hears: Callable[[], None]) -> Iterator[object]:
    tubes: list[Tube] = []

    def begin(*words: str, start: tuple[str, ...] = ("-m", "interview")) -> Tube:
        tubes.append(Tube(*words, folder=tmp_path, start=start, hears=hears))
        return tubes[-1]

    yield begin
    for one in tubes:
        one.close()


def test_the_start_page_appears_and_a_request_to_end_restores_the_terminal(tube) -> None:
    program = tube()
    program.read("Begin a new garden")
    program.program.send_signal(signal.SIGTERM)
    assert program.ended() == 143
    assert program.is_as_before()


ENDED_EARLY = """
import os, signal, sys
from interview.garden import opening
from interview.plain import clock
from interview.screens.run import run

def ended(*args):
    os.kill(os.getpid(), signal.SIGTERM)
    return opened(*args)

opened, opening._open = opening._open, ended
sys.exit(run(sys.argv[1], clock.now, "test"))
"""
"""Asks the program to end while it opens the file and holds its lock."""


def test_a_request_to_end_while_the_file_is_opened_leaves_no_lock(tube, write) -> None:
    path = write("garden.yaml", {"garden_name": "Oak"})
    program = tube("garden.yaml", start=("-c", ENDED_EARLY))
    assert program.ended() == 143
    assert "Your answers are in garden.yaml." in program.shown()
    assert not path.with_name(".garden.yaml.lock").exists()


def test_a_lock_another_computer_left_is_asked_about_at_the_start(tube, write) -> None:
    path = write("garden.yaml", {"garden_name": "Oak"})
    path.with_name(".garden.yaml.lock").write_text("pid: 4\nhost: somewhere-else\n")
    program = tube("garden.yaml")
    program.read("may be open on another computer")
    program.type(b"y")
    program.read("Which state")


AN_HOUR_ON = """
import datetime as dt, os, sys
os.environ.update({environ})
from interview.screens.run import run
now = dt.datetime(2026, 5, 28, 10, 0, 30, tzinfo=dt.timezone(dt.timedelta(hours=-5)))
sys.exit(run(sys.argv[1], lambda: now, "test"))
"""
"""Runs the program with a clock that stands an hour after the water stood at the mark."""


@pytest.mark.parametrize(
    ("environ", "notified"),
    [({"TERM_PROGRAM": "WezTerm"}, True), ({"TERM_PROGRAM": "WezTerm", "TMUX": "x"}, False)],
)
def test_a_terminal_gets_the_bell_the_title_and_a_notification_it_can_show(
    tube, write, located, environ: dict[str, str], notified: bool
) -> None:
    hole = {
        "hole_depth": "15 in",
        "hole_shape": "round",
        "hole_width": "8 in",
        "soaked_already": "yes",
        "water_at_mark": "8 in",
        "test_start": "now",
    }
    path = write("garden.yaml", {**located, **{f"holes.1.{key}": hole[key] for key in hole}})
    # A session of the person who runs the tests must not show through.
    environ = {"TMUX": "", "STY": "", **environ}
    program = tube(str(path), start=("-c", AN_HOUR_ON.format(environ=environ)))
    program.read("READING DUE NOW")
    program.type(b"\x11")
    assert program.ended() == 0
    assert b"\x1b]2;READING DUE" in program.sent
    called = re.findall(rb"\x1b\]777;notify;Soak test;test hole 1: [^\x1b]*\x1b\\", program.sent)
    assert len(called) == notified
    bare = re.sub(rb"\x1b\][^\x07\x1b]*(?:\x07|\x1b\\)", b"", program.sent)
    assert bare.count(b"\x07") == 1


@pytest.mark.parametrize("name", ["SIGHUP", "SIGINT", "SIGQUIT"])
def test_any_signal_to_end_keeps_the_last_answer(tube, tmp_path: Path, name: str) -> None:
    program = tube("garden.yaml")
    program.read("What do you call this garden?")
    program.type(b"Maple corner\r")
    program.read("Which state is the garden in")
    number = getattr(signal, name)
    program.program.send_signal(number)
    assert program.ended() == 128 + number
    assert program.is_as_before()
    assert "garden_name: Maple corner" in (tmp_path / "garden.yaml").read_text()


def test_quitting_says_where_the_answers_are_and_how_to_go_on(tube, tmp_path: Path) -> None:
    program = tube("my garden.yaml")
    program.read("What do you call this garden?")
    program.type(b"Maple\r")
    program.read("Which state")
    program.type(b"\x11")
    assert program.ended() == 0
    assert "Your answers are in my garden.yaml." in program.shown()
    assert "To go on: " in program.shown() and "'my garden.yaml'" in program.shown()
    assert program.is_as_before()


def test_a_file_removed_meanwhile_is_written_again_on_quitting(tube, tmp_path: Path) -> None:
    program = tube("garden.yaml")
    program.read("What do you call this garden?")
    program.type(b"Maple\r")
    program.read("Saved")
    (tmp_path / "garden.yaml").unlink()
    program.type(b"\x11")
    assert program.ended() == 0
    assert "Your answers are in garden.yaml." in program.shown()
    assert "garden_name: Maple" in (tmp_path / "garden.yaml").read_text()


def test_bytes_that_are_no_text_do_not_stop_the_program(tube) -> None:
    program = tube("garden.yaml")
    program.read("What do you call this garden?")
    program.type(b"Oak\xff\xc3a")
    program.read("Oak\ufffd\ufffda")
    program.type(b"\x15Oak lane\r")
    program.read("Which state")
    program.type(b"\x11")
    assert program.ended() == 0


def test_a_fault_of_the_program_restores_the_terminal_and_says_the_answers_are_safe(
    tube, tmp_path: Path
) -> None:
    faulty = (
        "from interview.asking.walk import Walk\n"
        "def broken(*_): raise KeyError('secret of the garden')\n"
        "Walk.backward = broken\n"
        "from interview.__main__ import main\n"
        "raise SystemExit(main())\n"
    )
    program = tube("garden.yaml", start=("-c", faulty))
    program.read("What do you call this garden?")
    program.type(b"Oak\r")
    program.read("Which state")
    program.type(b"\x02")
    assert program.ended() == 70
    assert program.is_as_before()
    assert "Your answers are in garden.yaml up to the last one saved." in program.shown()
    assert "KeyError" in program.shown() and "secret" not in program.shown()


def test_without_a_terminal_it_refuses_at_once(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "interview"],
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        timeout=60,
        check=False,
    )
    assert done.returncode == 2
    assert "--plain" in done.stderr


def test_a_terminal_that_goes_away_without_a_signal_ends_the_program(tube) -> None:
    program = tube("garden.yaml")
    program.read("What do you call this garden?")
    os.close(program.slave)
    os.close(program.master)
    try:
        assert program.program.wait(LIMIT) == 129
    finally:
        program.master, program.slave = os.openpty()


@pytest.mark.parametrize("name", ["SIGTERM", "SIGHUP"])
def test_a_signal_to_end_keeps_what_is_half_typed_for_the_next_time(
    tube, tmp_path: Path, name: str
) -> None:
    program = tube("garden.yaml")
    program.read("What do you call this garden?")
    program.type(b"Birch la")
    program.read("Birch la")
    program.program.send_signal(getattr(signal, name))
    program.ended()
    assert "garden_name: Birch la" in (tmp_path / "garden.yaml").read_text()
    again = tube("garden.yaml")
    assert "Birch la" in again.read("Birch la")
    again.type(b"\x11")
    assert again.ended() == 0


def test_the_way_back_that_is_printed_names_the_plant_file_given(tube, tmp_path: Path) -> None:
    plants = "scientific_name,common_name,kind,sun,zones,height_max_ft,spacing_in\n"
    (tmp_path / "my plants.csv").write_text(plants)
    program = tube("garden.yaml", "--plants", "my plants.csv")
    program.read("What do you call this garden?")
    program.type(b"Maple\r")
    program.read("Which state")
    program.type(b"\x11")
    program.ended()
    told = "".join(program.shown().split())
    assert f"--plants='{tmp_path}/myplants.csv'garden.yaml" in told


def test_a_paste_with_codes_in_it_types_no_keys(tube, tmp_path: Path) -> None:
    program = tube("garden.yaml")
    program.read("What do you call this garden?")
    program.type(b"\x1b[200~Oak\x1b[31m lane\x1b\rus\x1b[201~")
    program.read("The pasted text has")
    program.type(b"\x1b[200~Oak\x1b[31m lane\x1b[0m\x1b[201~\r")
    program.read("Which state")
    program.type(b"\x11")
    assert program.ended() == 0
    assert "garden_name: Oak lane\n" in (tmp_path / "garden.yaml").read_text()
    assert "half_typed" not in (tmp_path / "garden.yaml").read_text()
