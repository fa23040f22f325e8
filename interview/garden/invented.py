"""The invented garden that a newcomer may look around in: a finished one, opened as a copy."""

from __future__ import annotations

from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from interview import answers_file as af

GARDEN, RAIN = "finished_us.yaml", "invented_rain.csv"
"""The answers, and the file of daily rain that they name."""
COPY = "invented_garden.yaml"
"""What the copy is called, where that name is free."""
SAID = (
    "This garden is invented: no such place exists. Look around and change what you like; "
    "it is a copy of its own."
)


def packaged(name: str) -> Traversable:
    """Return a file of the invented garden: with the program, or in the folder it is made from."""
    program = files("interview")
    installed = program / "sample_answers" / name
    # A program that runs from its sources has the samples beside it.
    return installed if installed.is_file() else Path(str(program)).parent / "sample_answers" / name


def copied(folder: Path) -> Path:
    """Put a copy of the invented garden into ``folder`` under a free name; return its path.

    Nothing that is there is touched: where another file of rain has that name, the copy gets one
    of its own. Raises ``OSError`` where the folder takes no file.
    """
    rain, answers = packaged(RAIN).read_bytes(), packaged(GARDEN).read_bytes()
    beside = folder / RAIN
    if not (beside.is_file() and beside.read_bytes() == rain):
        beside = af.free_name(folder, RAIN)
        _make(beside, rain)
    path = af.free_name(folder, COPY)
    _make(path, answers.replace(RAIN.encode(), beside.name.encode()))
    return path


def _make(path: Path, content: bytes) -> None:
    with path.open("xb") as file:
        file.write(content)
