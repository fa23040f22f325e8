"""The full screen killed, and ended in odd terminals: no answer is lost, the terminal as before.

``.ci/kills screen`` and ``.ci/terminals`` do the same with every page and every terminal.
"""

from __future__ import annotations

import errno
import importlib.util
import io
import random
import sys
import threading
from pathlib import Path
from types import ModuleType

import pytest
from textual.drivers import linux_driver

from interview.screens.run import write_into_nothing

TESTS = Path(__file__).parents[1]


def _beside(path: Path) -> ModuleType:
    found = importlib.util.spec_from_file_location(path.stem, path)
    assert found is not None and found.loader is not None
    module = importlib.util.module_from_spec(found)
    sys.modules[path.stem] = module
    found.loader.exec_module(module)
    return module


killed = _beside(TESTS / "answers_file" / "killed.py")
_beside(TESTS / "garden" / "simple_way.py")
_beside(TESTS / "screens" / "tube.py")
screen = _beside(TESTS / "screens" / "killed_screen.py")
terminal = _beside(TESTS / "screens" / "any_terminal.py")


@pytest.fixture(scope="module", autouse=True)
def _loaded() -> None:
    killed.loaded()


class AtTheEnd(random.Random):
    """Kills where the last thing typed is on the screen."""

    def randint(self, low: int, high: int) -> int:
        return high

    def random(self) -> float:
        return 0.0


@pytest.mark.parametrize("kind", ["question", "form"])
def test_what_the_screen_has_gone_on_from_is_in_the_file_when_it_is_killed(tmp_path, kind) -> None:
    assert screen.killed_screen(screen.Desk(tmp_path), kind, AtTheEnd(1)).startswith("killed")


@pytest.mark.parametrize(
    "name",
    [
        "suspended, then ended",
        "halted",
        "60 resizes, then ended",
        "ended by two signals",
        "the terminal gone",
    ],
)
def test_the_terminal_is_as_before_whatever_it_is_and_however_it_ends(tmp_path, name) -> None:
    terminal.tried(terminal.CASES[name], tmp_path)


def test_what_is_written_to_a_terminal_that_is_gone_keeps_nobody_waiting(monkeypatch) -> None:
    class Gone(io.StringIO):
        def write(self, text: str) -> int:
            raise OSError(errno.EIO, "gone")

    monkeypatch.setattr(linux_driver, "WriterThread", linux_driver.WriterThread)
    write_into_nothing()
    writer = linux_driver.WriterThread(Gone())
    writer.start()

    def use() -> None:
        for _ in range(100):
            writer.write("x")
        writer.stop()

    user = threading.Thread(target=use, daemon=True)
    user.start()
    user.join(10)
    assert not user.is_alive()


def test_a_mode_that_is_left_changed_is_found() -> None:
    """The check itself."""
    assert terminal.changed(b"\x1b[?1049h\x1b[?25l\x1b[?1000;1006h\x1b[?1006l") == {25, 1000, 1049}
    assert terminal.changed(b"\x1b[?1049h\x1b[?25l\x1b[?25h\x1b[?1049l") == set()
